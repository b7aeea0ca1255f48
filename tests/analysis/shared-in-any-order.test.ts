// What two children of `in any order` may share although neither works on what the other works on: what uses up all that was done, what a
// performed procedure asks and leaves, time that a coat needs, a line that could not be read. Each block is written in the order
// that is right; what is found in the other one, and by the same lines written so without the block, is the same.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const SHOP = `consumable Oil "oil"
consumable Sealant "sealant"
tool Gauge "gauge" { measures 0 .. 9 mm }
energy Supply "supply" { voltage 400 V AC }
part Pot "pot"
part Sump "sump"
part Cap "cap" { needs Sump }
part Cover "cover"
part Lid "lid" { encloses Sump }
part Rotor "rotor" { driven by Supply }
`;
const INNER = (lines: string, head = ""): string => `procedure Inner "Inner" {\n${head}\n${lines}\n}\n`;

const cases: readonly [
  title: string,
  before: string,
  children: readonly [string, string],
  code: string,
  inner?: string,
][] = [
  [
    "a check uses what was done",
    "step lubricate Pot with Oil",
    ['step { check "gap" }', "step clean Pot"],
    "order.wasted",
  ],
  [
    "own words use what was done",
    "step lubricate Pot with Oil",
    ['step "Look at it." { inspect Cover }', "step clean Pot"],
    "order.wasted",
  ],
  [
    "a record with a tool uses what was done",
    "step lubricate Pot with Oil",
    ['step { inspect Cover record "gap" 1 .. 2 mm with Gauge }', "step clean Pot"],
    "order.wasted",
  ],
  [
    "what a step takes lets a coat cure",
    "step install Sump\nstep apply Sealant to Sump cure 10 min",
    ["step { inspect Cover takes 10 min }", "step install Lid"],
    "order.uncured",
  ],
  [
    "a wait lets a coat cure",
    "step install Sump\nstep apply Sealant to Sump cure 10 min",
    ["step wait 10 min", "step install Lid"],
    "order.uncured",
  ],
  [
    "what a performed procedure takes lets a coat cure",
    "step install Sump\nstep apply Sealant to Sump cure 10 min",
    ["perform Inner", "step install Lid"],
    "order.uncured",
    INNER("step { inspect Cover takes 10 min }"),
  ],
  [
    "what a performed procedure begins with",
    "",
    ["step install Cover", "perform Inner"],
    "order.unmet-need",
    INNER("step inspect Cover", "begin with Cover is installed"),
  ],
  [
    "what a performed procedure finds as at a start",
    "",
    ["perform Inner", "step install Cover"],
    "order.unmet-need",
    INNER("step install Cover\nstep remove Cover"),
  ],
  [
    "what a performed procedure leaves",
    "",
    ['step { needs Cover is removed do "Look." }', "perform Inner"],
    "order.unmet-need",
    INNER("step install Cover"),
  ],
  [
    "what a performed procedure finishes with",
    "",
    ["perform Inner", 'step { needs Cover is installed do "Look." }'],
    "order.unmet-need",
    INNER("step install Cover", "finish with Cover is installed"),
  ],
  [
    "what a performed procedure isolates",
    "begin with Rotor is installed",
    ["perform Inner", "step clean Rotor"],
    "order.energised",
    INNER("step isolate Supply\nstep prove Supply dead", "finish with Supply is isolated"),
  ],
  ["a task is done at its end", "", ['task A "A" { step install Sump }', "step install Cap"], "order.missing-support"],
  ["after a step of another child", "", ["step A { inspect Cover }", "step { inspect Pot after A }"], "order.declared"],
  [
    "before a step of another child",
    "",
    ["step { inspect Pot before A }", "step A { inspect Cover }"],
    "order.declared",
  ],
];

describe.each(cases)("%s", (_title, before, children, code, inner = "") => {
  const codes = (block: string): readonly string[] =>
    found(`${SHOP}${inner}procedure Work "Work" {\n${before}\n${block}\n}\n`, { ending: false })
      .map((one) => one.slice(0, one.indexOf(":")))
      .filter((one) => one === code);
  const [first, second] = children;
  test("found in the other order, and so in any order", () => {
    expect(codes(`${first}\n${second}`)).toEqual([]);
    expect(codes(`${second}\n${first}`)).not.toEqual([]);
    expect(codes(`in any order {\n${first}\n${second}\n}`)).not.toEqual([]);
    expect(codes(`in any order {\n${second}\n${first}\n}`)).not.toEqual([]);
  });
});

test("what a line that could not be read leaves in doubt is not so before it", () => {
  const asks = 'step { needs Cover is installed do "Look." }';
  const work = (block: string): readonly string[] =>
    found(`${SHOP}procedure Work "Work" {\n${block}\n}\n`, { damaged: true, ending: false }).filter((one) =>
      one.includes("Cover"),
    );
  expect(work(`step { put the Cover on }\n${asks}`)).toEqual([]);
  expect(work(`${asks}\nstep { put the Cover on }`)).toHaveLength(1);
  expect(work(`in any order {\nstep { put the Cover on }\n${asks}\n}`)).toHaveLength(1);
});

test("what shares nothing is tried in no other order", () => {
  expect(found(`${SHOP}procedure Work "Work" {\nin any order {\nstep clean Pot\nstep clean Cover\n}\n}\n`)).toEqual([]);
});
