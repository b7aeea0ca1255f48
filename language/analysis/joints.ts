// Parts joined by a fit: whether they touch. Knows no actions.
import type { PartInstance } from "#model/declarations.ts";
import { carrierOf, isInstalled } from "./state-values.ts";
import type { Test } from "./update.ts";
import { instanceKey, type World } from "./world.ts";

/** When the two sides of a fit touch: one goes on the other, or both are in the machine. */
export function joined(world: World, one: PartInstance, other: PartInstance): readonly (readonly Test[])[] {
  const place = (side: PartInstance): number => world.part(side.part, side.index, "place");
  const rides = (side: PartInstance, carrier: PartInstance): readonly Test[] => {
    const key = instanceKey(carrier.part, carrier.index);
    return [{ variable: place(side), test: (value) => carrierOf(value) === key }];
  };
  const isIn = (side: PartInstance): Test => ({ variable: place(side), test: isInstalled });
  return [rides(one, other), rides(other, one), [isIn(one), isIn(other)]];
}
