// Random procedures for the brute-force run: sound ones, made by walking through what the shop allows at each point, and
// some of them with faults planted. Knows nothing of the checker.
import fc from "fast-check";
import { pickerOf } from "./paper/picker.ts";
import type { SimProcedure } from "./paper/shop.ts";
import { inOrder, spoilt } from "./paper/spoil.ts";
import { sceneOf, THEMES } from "./paper/themes.ts";
import { soundProcedure } from "./paper/walk.ts";

/** Those whose faults show less easily are drawn more often. */
const OFTEN = [
  "energy",
  "energy",
  "energy",
  "energy",
  "places",
  "places",
  "heavy",
  "fill",
  "fits",
  "wasted",
  "wasted",
  "wasted",
  "single use",
  "locks",
  "locks",
] as const;

/** A procedure from numbers: the same numbers give the same one. About half are meant to be sound. */
export const procedures: fc.Arbitrary<SimProcedure> = fc
  .record({
    themes: fc.uniqueArray(fc.constantFrom(...THEMES, ...OFTEN), { minLength: 2, maxLength: 4 }),
    shape: numbers(60),
    walk: numbers(200),
    faults: fc.option(numbers(40), { nil: null, freq: 2 }),
  })
  .map(({ themes, shape, walk, faults }) => {
    const scene = sceneOf(new Set(themes), pickerOf(shape));
    const sound = soundProcedure(scene, pickerOf(walk));
    if (faults === null) return { ...sound, items: inOrder(sound.items) };
    return spoilt(sound, scene, pickerOf(faults));
  });

/** Plain ones, not small by preference: each is a choice out of a list. */
function numbers(count: number): fc.Arbitrary<number[]> {
  return fc.noBias(fc.array(fc.nat({ max: 9999 }), { minLength: count, maxLength: count }));
}
