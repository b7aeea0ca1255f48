// Which step is which: by name, by what it does, by place; what moved; and that 5,000 steps are no trouble.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isThorough } from "#harness/thorough.ts";
import { longestRising } from "#review/rising.ts";
import { linesOf, reviewed, type Texts } from "./compare-texts.ts";

test("the longest rising run is as long as any", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 12 }), (numbers) => {
      const kept = [...longestRising(numbers)].sort((a, b) => a - b).map((at) => numbers[at] ?? 0);
      expect(kept.every((number, at) => at === 0 || number > (kept[at - 1] ?? 0))).toBe(true);
      expect(kept.length).toBe(longestByTrying(numbers));
    }),
  );
});

/** Every subset. */
function longestByTrying(numbers: readonly number[]): number {
  let best = 0;
  for (let bits = 0; bits < 1 << numbers.length; bits++) {
    const some = numbers.filter((_, at) => (bits & (1 << at)) !== 0);
    if (some.every((number, at) => at === 0 || number > (some[at - 1] ?? 0))) best = Math.max(best, some.length);
  }
  return best;
}

const PARTS = "part A part B part C part D";

function steps(...all: readonly string[]): Texts {
  return { "main.sprag": `${PARTS}\nprocedure P {\n${all.map((step) => `  ${step}\n`).join("")}}` };
}

/** Without findings and who signs. */
function told(old: Texts, now: Texts): readonly string[] {
  return reviewed(old, now)
    .changes.filter(({ kind }) => !kind.startsWith("finding"))
    .map(({ kind, step }) => `${kind} ${step?.number ?? ""}`.trim());
}

test.each<[string, Texts, Texts, readonly string[]]>([
  [
    "a step moved over two others is one move",
    steps("step inspect A", "step inspect B", "step inspect C"),
    steps("step inspect B", "step inspect C", "step inspect A"),
    ["step-moved 3"],
  ],
  [
    "a named step is known though all of it is another",
    steps("step S { inspect A }", "step inspect B"),
    steps("step inspect B", "step S { inspect C }"),
    ["object-changed 2", "step-moved 1"],
  ],
  [
    "an unnamed step is known by what it does",
    steps("step inspect A takes 1 min", "step inspect B takes 1 min"),
    steps("step inspect B takes 2 min", "step inspect A takes 3 min"),
    ["time-changed 1", "time-changed 2", "step-moved 1"],
  ],
  [
    "a step in own words is known by its place",
    steps('step "Sweep."', "step inspect B"),
    steps('step "Sweep well."', "step inspect B"),
    ["own-words-changed 1"],
  ],
  [
    "what has nothing in common is not the same",
    steps("step inspect A"),
    steps("step clean B"),
    ["step-added 1", "step-removed 1"],
  ],
  [
    "two alike are told apart by their order",
    steps("step inspect A", "step inspect A"),
    steps("step inspect A", "step inspect A", "step inspect A"),
    ["step-added 3"],
  ],
  [
    "a step moved to another task",
    steps("task X { step inspect A step inspect B }", "task Y { step inspect C }"),
    steps("task X { step inspect A }", "task Y { step inspect C step inspect B }"),
    ["step-moved 2.2"],
  ],
  [
    "a task by another name is known by its steps",
    steps("task X { step inspect A }"),
    steps("task Z { step inspect A }"),
    ["name-changed 1", "title-changed 1"],
  ],
  [
    "a block put round steps moves none of them",
    steps("step inspect A", "step inspect B"),
    steps("in any order { step inspect A step inspect B }"),
    ["any-order-added 1"],
  ],
  [
    "an action moved to another step",
    steps("step X { inspect A inspect B }", "step Y { inspect C }"),
    steps("step X { inspect A }", "step Y { inspect C inspect B }"),
    ["action-moved 2"],
  ],
  [
    "a loop with another body is the same loop",
    steps("repeat n in 1, 2 { step inspect A }"),
    steps("repeat n in 1, 2 { step inspect A takes 1 min }"),
    ["time-added 1"],
  ],
  [
    "a loop dropped is one entry",
    steps("repeat n in 1, 2 { step inspect A }", "step inspect B"),
    steps("step inspect B"),
    ["repeat-removed 1"],
  ],
])("%s", (_title, old, now, expected) => {
  expect(told(old, now).toSorted()).toEqual(expected.toSorted());
});

test("a move says what it now stands behind and before", () => {
  const [line] = linesOf(
    reviewed(
      steps("step A1 { inspect A }", "step B1 { inspect B }", "step C1 { inspect C }"),
      steps("step B1 { inspect B }", "step A1 { inspect A }", "step C1 { inspect C }"),
    ),
  );
  expect(line).toBe(
    "order step-moved [1] Step moved: Inspect the B. It now comes first in procedure P. It now comes before step 2 (A1).",
  );
});

function many(count: number, line: (at: number) => string): Texts {
  return steps(...Array.from({ length: count }, (_, at) => line(at)));
}

/** Steps of one procedure. */
const COUNT = isThorough ? 5000 : 500;

test.each<[string, (at: number) => string, (at: number) => string, number]>([
  ["every step changed", (at) => `step inspect A takes ${at + 1} s`, (at) => `step inspect A takes ${at + 2} s`, 1],
  ["all reversed", (at) => `step S${at} { inspect A }`, (at) => `step S${COUNT - 1 - at} { inspect A }`, COUNT - 1],
  ["all others", (at) => `step S${at} { inspect A }`, (at) => `step T${at} { clean B }`, COUNT],
])(
  `${COUNT} steps, %s`,
  (_title, old, now, least) => {
    const { changes } = reviewed(many(COUNT, old), many(COUNT, now));
    expect(changes.filter(({ group }) => group !== "layout").length).toBeGreaterThanOrEqual(least);
  },
  120_000,
);
