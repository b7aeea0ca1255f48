// Short procedures that are the same every time: each thing that the themes do one after the other, by itself, in a branch, in any
// order, passed over, twice over. What a long random procedure shows only now and then shows here. Knows nothing of the checker.
import { MORE_THEMES } from "./more-themes.ts";
import { drawing, type Picker } from "./picker.ts";
import type { Sequence } from "./sequences.ts";
import { actsIn, partOf, type SimAct, type SimItem, type SimProcedure, type SimShop, type SimStep } from "./shop.ts";
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
  ["perform", "fits"],
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
        for (const items of waysOf(scene.shop, sequence)) {
          const plain = drill(scene, items, drawing(shape + at));
          for (const made of [plain, ...wantingAids(plain)]) drawn.set(simText(made).text, made);
        }
    }
  const list = [...drawn.values()];
  return list.map((_, at) => list[(at * STRIDE) % list.length] as SimProcedure);
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

/** Once more, with the aids that it puts in to be in at the end. */
function wantingAids(made: SimProcedure): readonly SimProcedure[] {
  const aids = actsIn(made.items).flatMap((act) =>
    act.verb === "install" && partOf(made, act.part)?.temporary === true ? [act.part] : [],
  );
  const finish = [...new Set(aids)].map((part) => ({ part, state: "installed" as const }));
  return finish.length === 0 ? [] : [{ ...made, finish }];
}

/**
 * The same steps in several ways of getting through them. Two orders, and one step that may be passed over before a few others: with
 * more of either, what depends on two things at once is more than the checker follows (it keeps each by itself).
 */
function waysOf(shop: Pick<SimShop, "parts">, sequence: Sequence): readonly (readonly SimItem[])[] {
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
  // A way that ends where it stops, with the first step done.
  if (steps.length === 2) ways.push([stopping(actsIn([first])), ...steps]);
  const [, , third] = steps;
  if (steps.length === 3 && third !== undefined) {
    const out: SimStep = { ...look, lines: [{ kind: "check", fails: [], jump: { ...jump, to: third.name } }] };
    ways.push([{ kind: "any order", children: [first, second] }, third]);
    ways.push([{ kind: "any order", children: [out, first] }, second, third]);
  }
  if (steps.length <= 3 && !isHeatingOn(steps) && !changesReach(shop, steps)) ways.push([...steps, again(first.name)]);
  if (isHeating(steps)) ways.push([{ kind: "task", items: early }, ...late]);
  if (!isHeatingOn(steps)) ways.push([{ kind: "repeat", variable: "m", values: [1, 2], items: steps }]);
  return ways;
}

function task(items: readonly SimItem[]): SimItem {
  const [only] = items;
  return items.length === 1 && only !== undefined ? only : { kind: "task", items };
}

function stopping(fails: readonly SimAct[]): SimStep {
  return { kind: "step", name: "Stop", lines: [{ kind: "check", fails, jump: "stop" }] };
}

function again(to: string): SimStep {
  return { kind: "step", name: "Again", lines: [{ kind: "check", fails: [], jump: { way: "return to", to } }] };
}

/** A driven part that goes on another: in the second pass the energy is live only where the part is not yet there. */
function changesReach(shop: Pick<SimShop, "parts">, steps: readonly SimItem[]): boolean {
  return actsIn(steps).some(
    (act) => "over" in act && act.over !== undefined && partOf(shop, act.part)?.driven.length !== 0,
  );
}

/** What is hot cools at the end of a task. */
function isHeating(steps: readonly SimItem[]): boolean {
  return actsIn(steps).some(({ verb }) => verb === "heat");
}

/** Its temperature goes up with every pass. */
function isHeatingOn(steps: readonly SimItem[]): boolean {
  return actsIn(steps).some(({ verb }) => verb === "heat by");
}
