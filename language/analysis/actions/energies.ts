// Energies: off, shown to be off, on again. Knows the verbs isolate, prove and restore.
import type { Energy, PartInstance } from "#model/declarations.ts";
import { ISOLATED, isAttached, isDead, isInstalled, isSlack, LIVE, OUT, proved } from "../state-values.ts";
import type { Test } from "../update.ts";
import { instanceName, type World } from "../world.ts";
import { driving } from "./curing.ts";
import { both, type Move, type Need } from "./move.ts";

export function isolate(world: World, energy: Energy): Move {
  const change = (value: string): string => (value === LIVE ? ISOLATED : value);
  return { needs: [], updates: [{ variable: world.energy(energy), change }] };
}

/** Shown to be dead; what is live cannot be. It is still off by what isolated it. */
export function prove(world: World, energy: Energy): Move {
  return { needs: [], updates: [{ variable: world.energy(energy), keepsOrigin: "always", change: proved }] };
}

/** Nothing that it drives may be open: no cover off, no fastener loose, no temporary part in. */
export function restore(world: World, energy: Energy): Move {
  const variable = world.energy(energy);
  const needs = world.driven(energy).flatMap((driven) => opened(world, energy, driven));
  return both({ needs, updates: [] }, driving(world, energy), {
    needs: [],
    updates: [{ variable, renews: "where supposed", change: () => LIVE }],
  });
}

function opened(world: World, energy: Energy, driven: PartInstance): readonly Need[] {
  const installed = ({ part, index }: PartInstance): Test => ({
    variable: world.part(part, index, "place"),
    test: isInstalled,
  });
  const only: Test[] = [{ variable: world.energy(energy), test: isDead }, installed(driven)];
  const covers = world.related("encloses", driven.part, driven.index);
  const need = (what: PartInstance, how: "out" | "loose" | "temporary", bad: readonly Test[]): Need => ({
    bad: [...bad, ...only],
    trouble: {
      kind: "restored open",
      energy: energy.name,
      part: instanceName(driven.part, driven.index),
      what: instanceName(what.part, what.index),
      how,
    },
  });
  const off = covers
    .filter(({ part }) => world.isSpokenOf(part))
    .map((cover) => {
      const variable = world.part(cover.part, cover.index, "place");
      return need(cover, "out", [{ variable, test: (value) => value === OUT }]);
    });
  const loose = [driven, ...covers].flatMap((held) =>
    world
      .related("secures", held.part, held.index)
      .filter(({ part }) => world.isSpokenOf(part))
      .flatMap((fastener) => {
        const grip = world.part(fastener.part, fastener.index, "grip");
        const place = world.part(fastener.part, fastener.index, "place");
        return [
          need(fastener, "loose", [{ variable: grip, test: isSlack }, installed(held)]),
          need(fastener, "out", [{ variable: place, test: (value) => value === OUT }, installed(held)]),
        ];
      }),
  );
  const aids = world.temporaryParts().map((aid) => {
    const variable = world.part(aid.part, aid.index, "place");
    return need(aid, "temporary", [{ variable, test: isAttached }]);
  });
  return [...off, ...loose, ...aids];
}
