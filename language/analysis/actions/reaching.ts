// Whether hands and tools get at a part: nothing installed encloses it, no energy that drives it is live. Knows no verb.
import type { Part } from "#model/declarations.ts";
import { ISOLATED, isInstalled, LIVE, OFF, proved } from "../state-values.ts";
import type { Test } from "../update.ts";
import { type Index, instanceName, type World } from "../world.ts";
import { both, type Move, type Need, NOTHING } from "./move.ts";

/** Work on a part that lies on the bench is free; one that is in must be reachable and dead. */
export function workOn(world: World, part: Part, index: Index, verb: string): Move {
  const isIn: Test = { variable: world.part(part, index, "place"), test: isInstalled };
  return both(behind(world, part, index, verb, [isIn]), dead(world, part, index, verb, [isIn]));
}

/** Looking is not work: an energy may be live, but what is enclosed cannot be seen. */
export function lookAt(world: World, part: Part, index: Index, verb: string): Move {
  return behind(world, part, index, verb, [{ variable: world.part(part, index, "place"), test: isInstalled }]);
}

/** The place of a part to be installed must be reachable wherever the part is now. */
export function workAtPlaceOf(world: World, part: Part, index: Index, verb: string): Move {
  return both(behind(world, part, index, verb, []), dead(world, part, index, verb, []));
}

function behind(world: World, part: Part, index: Index, verb: string, only: readonly Test[]): Move {
  const enclosing = world.related("encloses", part, index);
  if (enclosing.length === 0) return NOTHING;
  const needs = enclosing.map(({ part: by, index: at, relation }) => ({
    bad: [{ variable: world.part(by, at, "place"), test: isInstalled }, ...only],
    trouble: {
      kind: "enclosed" as const,
      part: instanceName(part, index),
      by: instanceName(by, at),
      verb,
      declaredAt: relation.span,
    },
  }));
  return { needs, updates: [] };
}

/** Once told, the energy is taken as off, and as shown to be so: one mistake is not told at every further line. */
function dead(world: World, part: Part, index: Index, verb: string, only: readonly Test[]): Move {
  if (part.drivenBy.length === 0) return NOTHING;
  return both(
    ...part.drivenBy.map((energy): Move => {
      const variable = world.energy(energy);
      const when = only.length === 0 ? {} : { when: [only] };
      const need = (kind: "energised" | "not proved", bad: string): Need => ({
        bad: [{ variable, test: (value) => value === bad }, ...only],
        trouble: { kind, part, index, energy, verb },
      });
      return {
        needs: [need("energised", LIVE), need("not proved", ISOLATED)],
        updates: [
          { variable, assumed: true, keepsOrigin: "always", ...when, change: proved },
          { variable, assumed: true, ...when, change: (value) => (value === LIVE ? OFF : value) },
        ],
      };
    }),
  );
}
