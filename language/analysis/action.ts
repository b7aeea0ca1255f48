// What each action needs and does, verb by verb: the one place to look up what a verb of the language means. Knows no paths,
// no severities, no wording.
import type { Energy } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import { coat, coatOf, lifting, loading, rested } from "./actions/curing.ts";
import { isolate, prove, restore } from "./actions/energies.ts";
import { loosen, tighten } from "./actions/fastening.ts";
import { coolDown, heated } from "./actions/heating.ts";
import { setDown, takeUp } from "./actions/loads.ts";
import { both, type Move } from "./actions/move.ts";
import { type Ambient, install, remove } from "./actions/placing.ts";
import { lookAt, workOn } from "./actions/reaching.ts";
import { cleanedOff, cooledOff, filmed, turnedOnce, uses, warmedUp } from "./actions/wasting.ts";
import { UNKNOWN } from "./cell.ts";
import { lowEnd } from "./readings.ts";
import { withCoat } from "./state-values.ts";
import { clockTurns, orientationVariable, turnedTo } from "./turning.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

export type { Move, Need, Trouble } from "./actions/move.ts";

/** The moves of one action, one for each instance in working order; before them what the action makes use of. */
export function movesOf(world: World, line: ExpandedAction, ambient: Ambient): readonly Move[] {
  const used = uses(world, line);
  const moves = meaningOf(world, line, ambient);
  return used.updates.length === 0 ? moves : [used, ...moves];
}

function meaningOf(world: World, line: ExpandedAction, ambient: Ambient): readonly Move[] {
  const { action } = line;
  const parts = line.objects.filter((thing) => thing.kind === "part");
  const each = (move: (thing: (typeof parts)[number]) => Move): readonly Move[] => parts.map(move);
  const work = ({ part, index }: (typeof parts)[number], updates: readonly Update[] = []): Move =>
    both(workOn(world, part, index, action.verb), { needs: [], updates });
  const set = (
    { part, index }: (typeof parts)[number],
    aspect: "surface" | "aligned" | "contents" | "coats",
    to: string,
  ): Update => ({ variable: world.part(part, index, aspect), renews: "where supposed", change: () => to });
  switch (action.verb) {
    case "install":
    case "press":
      return each(({ part, index }) => install(world, part, index, action, line.second, ambient));
    case "remove":
    case "discard":
      return each(({ part, index }) => remove(world, part, index, action.verb));
    case "tighten": {
      const isRunIn = action.byHand && action.stages.length === 0;
      const grip = action.toSeat ? "seated" : isRunIn ? "run in" : "tight";
      return each(({ part, index }) => tighten(world, part, index, grip));
    }
    case "loosen":
      return each(({ part, index }) => loosen(world, part, index, action.setBack ? "set" : "loose"));
    case "heat":
    case "cool": {
      const isCooling = action.verb === "cool";
      const to = action.to?.quantity ?? null;
      const by = action.by?.quantity ?? null;
      return each((thing) => {
        const updates = heated(world, thing.part, thing.index, to, by, isCooling);
        const { part, index } = thing;
        return isCooling
          ? both(work(thing, updates), cooledOff(world, part, index))
          : work(thing, [...updates, ...warmedUp(world, part, index)]);
      });
    }
    case "wait": {
      const time = action.time?.quantity;
      const seconds = lowEnd(time) ?? 0;
      return action.until === null
        ? [{ needs: [], updates: [...coolDown(world, ambient.low), ...rested(world, seconds)] }]
        : [];
    }
    case "clean":
      return each((thing) =>
        both(
          work(thing, [set(thing, "surface", "clean"), set(thing, "coats", "")]),
          cleanedOff(world, thing.part, thing.index),
        ),
      );
    case "lubricate": {
      const film = `lubricated ${action.with?.id ?? ""}`;
      return each((thing) =>
        work(thing, [set(thing, "surface", film), ...filmed(world, thing.part, thing.index, "lubricated")]),
      );
    }
    case "apply": {
      const rest = coatOf(action);
      return each((thing) =>
        work(thing, [
          ...coat(world, thing.part, thing.index, rest),
          {
            variable: world.part(thing.part, thing.index, "coats"),
            commutes: true,
            change: (value) => withCoat(value, action.dose.consumable?.id ?? null),
          },
          ...filmed(world, thing.part, thing.index, "coated"),
        ]),
      );
    }
    case "drain":
    case "bleed":
      return each((thing) => work(thing, [set(thing, "contents", action.verb === "drain" ? "drained" : "bled")]));
    case "fill":
      return each((thing) =>
        both(work(thing, [set(thing, "contents", "filled")]), loading(world, thing, thing.part.name)),
      );
    case "inspect":
      return each(({ part, index }) => lookAt(world, part, index, action.verb));
    case "turn":
      return turn(world, line);
    case "align":
      return [...parts, ...(line.second?.kind === "part" ? [line.second] : [])].map((thing) =>
        work(thing, [set(thing, "aligned", "yes")]),
      );
    case "lift":
      return each((thing) => both(lifting(world, thing), takeUp(world, thing.part, thing.index, action.tools)));
    case "support":
      return each(({ part, index }) => takeUp(world, part, index, []));
    case "set down":
      return each(({ part, index }) => setDown(world, part, index));
    case "isolate":
      return energies(line.objects).map((energy) => isolate(world, energy));
    case "prove":
      return energies(line.objects).map((energy) => prove(world, energy));
    case "restore":
      return energies(line.objects).map((energy) => restore(world, energy));
    default:
      return [];
  }
}

function energies(things: readonly Thing[]): readonly Energy[] {
  return things.flatMap((thing) => (thing.kind === "other" && thing.thing.kind === "energy" ? [thing.thing] : []));
}

function turn(world: World, line: ExpandedAction): readonly Move[] {
  const { action } = line;
  if (action.verb !== "turn") return [];
  const what = line.second ?? line.objects[0];
  if (what?.kind !== "place" || what.places.kind !== "ring") return [];
  const hours = action.clock === null ? null : clockTurns(action.clock.quantity);
  const { places } = what;
  const value = hours === null ? UNKNOWN : turnedTo(places, what.position ?? 1, hours);
  return [
    both(
      {
        needs: [],
        updates: [{ variable: orientationVariable(world, places), renews: "where supposed", change: () => value }],
      },
      turnedOnce(world, places),
    ),
  ];
}
