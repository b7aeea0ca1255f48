// What happens beside actions: time that a step takes, a look at the work, own words that may use anything. Knows no paths.
import type { ExpandedLine } from "#model/expanded.ts";
import { coatOf, rested } from "./actions/curing.ts";
import { usesAll } from "./actions/wasting.ts";
import type { Operation } from "./graph.ts";
import { gatherActions } from "./mentioned.ts";
import { lowEnd } from "./readings.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

export function passing(world: World, operation: Operation): readonly Update[] {
  switch (operation.kind) {
    case "look":
      return usesAll(world);
    case "enter":
      return operation.step.step.words === null ? [] : usesAll(world);
    case "leave": {
      const { step, lines } = operation.step;
      const looks = step.records.some((record) => record.tools.length > 0);
      const seconds = lowEnd(step.takes?.quantity) ?? 0;
      const rests = seconds > 0 && world.all("cure").length > 0;
      return [...(looks ? usesAll(world) : []), ...(rests ? rested(world, seconds, coatedIn(world, lines)) : [])];
    }
    default:
      return [];
  }
}

/** What a step itself coats has not rested while it was coated. */
function coatedIn(world: World, lines: readonly ExpandedLine[]): ReadonlySet<number> {
  const coated = new Set<number>();
  for (const line of gatherActions({ lines }))
    if (line.action.verb === "apply" && coatOf(line.action) !== null)
      for (const thing of line.objects)
        if (thing.kind === "part") coated.add(world.part(thing.part, thing.index, "cure"));
  return coated;
}
