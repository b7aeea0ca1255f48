// Short procedures that are the same every time: each thing that the themes do one after the other, by itself, in a branch, in any
// order, passed over, twice over. What a long random procedure shows only now and then shows here. Knows nothing of the checker.
import { MORE_THEMES } from "./more-themes.ts";
import { type Picker, pickerOf } from "./picker.ts";
import type { Sequence } from "./sequences.ts";
import { actsIn, type SimItem, type SimProcedure, type SimStep } from "./shop.ts";
import { inOrder } from "./spoil.ts";
import { simText } from "./text.ts";
import { type Scene, sceneOf, THEMES, type Theme } from "./themes.ts";
import { beginning, linesOf } from "./walk.ts";

/** Themes that have something to do with each other. */
const TOGETHER: readonly (readonly Theme[])[] = [
  ["fill", "wasted", "energy"],
  ["places", "turning", "fill"],
  ["single use", "locks", "grip"],
  ["stacks", "energy", "cure"],
];
const SHAPES = 2;
const SHORT = 4;
/** Neighbours are much alike, so they are taken far from each other: what is wrong shows soon. No divisor of how many there are. */
const STRIDE = 1009;

export function drills(): readonly SimProcedure[] {
  const drawn = new Map<string, SimProcedure>();
  const alone = [...THEMES, ...MORE_THEMES].map((theme) => [theme]);
  for (const themes of [...alone, ...TOGETHER])
    for (let shape = 0; shape < SHAPES; shape++) {
      const scene = sceneOf(new Set([...themes, "planted"]), drawing(shape));
      for (const [at, sequence] of [...scene.customs, ...scene.mistakes].entries())
        for (const items of waysOf(sequence)) {
          const made = drill(scene, items, drawing(shape + at));
          drawn.set(simText(made).text, made);
        }
    }
  const list = [...drawn.values()];
  return list.map((_, at) => list[(at * STRIDE) % list.length] as SimProcedure);
}

/** Always the same numbers. */
function drawing(which: number): Picker {
  return pickerOf(Array.from({ length: 80 }, (_, at) => ((which + 3) * (at + 5) * 7919) % 9973));
}

function drill(scene: Scene, items: readonly SimItem[], pick: Picker): SimProcedure {
  const performs = actsIn(items).flatMap((act) => (act.verb === "perform" ? [act.procedure] : []));
  return {
    ...scene.shop,
    begin: beginning(scene, pick),
    finish: [],
    items: inOrder(items),
    performed: scene.performed.filter(({ name }) => performs.includes(name)),
  };
}

/**
 * The same steps in several ways of getting through them. Two orders, and one step that may be passed over before a few others: with
 * more of either, what depends on two things at once is more than the checker follows (it keeps each by itself).
 */
function waysOf(sequence: Sequence): readonly (readonly SimItem[])[] {
  const steps = sequence.map((step, at): SimStep => ({ kind: "step", name: `Drill${at}`, lines: linesOf(step) }));
  const [first, second] = steps;
  if (first === undefined || second === undefined) return [steps];
  const half = Math.floor(steps.length / 2);
  const [early, late] = [steps.slice(0, half), steps.slice(half)];
  const jump = { way: "go to", to: second.name } as const;
  const look: SimStep = { kind: "step", name: "Look", lines: [{ kind: "check", fails: [], jump }] };
  const ways: SimItem[][] = [
    steps,
    [{ kind: "when", option: "Extent", value: "Full", inside: early, otherwise: null }, ...late],
    [{ kind: "any order", children: [task(early), task(late)] }],
  ];
  if (steps.length <= SHORT) ways.push([look, ...steps]);
  if (!isHeatingOn(steps)) ways.push([{ kind: "repeat", variable: "m", values: [1, 2], items: steps }]);
  return ways;
}

function task(items: readonly SimItem[]): SimItem {
  const [only] = items;
  return items.length === 1 && only !== undefined ? only : { kind: "task", items };
}

/** Its temperature goes up with every pass. */
function isHeatingOn(steps: readonly SimItem[]): boolean {
  return actsIn(steps).some(({ verb }) => verb === "heat by");
}
