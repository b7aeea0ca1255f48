// Where something could not be read nobody knows what it raises, or what it warns of: silence then, in both directions, and only as far
// as it reaches (checks.md: a rule is quiet where it cannot know).
import { describe, expect, test } from "vitest";
import { CUT, told } from "./hazards-on-paper.ts";

const BLADE = "step install Blade[1]";
const isMissing = (lines: string): boolean =>
  told(lines, { damaged: true }).some((one) => one.startsWith("not covered cutting of Blade"));

describe("a line that could not be read may be a statement", () => {
  test.each<[title: string, lines: string, missing: boolean]>([
    ["a statement without its text, before it", `warning cutting\n${BLADE}`, false],
    ["the same, in the step", "step {\n  warning cutting\n  install Blade[1]\n}", false],
    ["the same, in the block around", `warning cutting\ntask A "A" { step inspect Seat\n ${BLADE} }`, false],
    ["the same, behind it", `${BLADE}\nwarning cutting`, true],
    ["the same, in another block", `task A "A" { warning cutting\n step inspect Seat }\n${BLADE}`, true],
    ["words that mean nothing", `xyzzy plugh\n${BLADE}`, false],
    ["words that mean nothing, behind it", `${BLADE}\nxyzzy plugh`, true],
    ["a line of work", `step { install }\n${BLADE}`, true],
    ["a line that speaks of a part", `step { Seat xyzzy }\n${BLADE}`, true],
  ])("%s", (_title, lines, missing) => {
    expect(isMissing(lines)).toBe(missing);
  });
  test.each<[title: string, lines: string, missing: boolean]>([
    ["a hazard that is not known may be this one", `warning cuting "Sharp." avoid "Hold it."\n${BLADE}`, false],
    ["one of two that is not known", `warning eye, cuting "Sharp." avoid "Hold it."\n${BLADE}`, false],
    ["both are known, and are not this one", `warning eye, skin "Sharp." avoid "Hold it."\n${BLADE}`, true],
  ])("%s", (_title, lines, missing) => {
    expect(isMissing(lines)).toBe(missing);
  });
});

describe("what could not be read may raise what a statement warns of", () => {
  const BURN = 'warning burn "Hot." avoid "Keep off."\n';
  const isIdle = (lines: string, more = ""): boolean =>
    told(BURN + lines, { damaged: true }, more).some((one) => one.startsWith("idle burn"));
  test.each<[title: string, lines: string, more: string, idle: boolean]>([
    ["nothing is wrong", "step clean Seat", "", true],
    ["a part", "step clean Hurt", 'part Hurt "part" { mass }\n', false],
    ["a part that is only looked at", "step inspect Seat", 'part Hurt "part" { mass }\n', true],
    [
      "an energy that drives it",
      "step clean Driven",
      'energy Hot "heater" { hot }\npart Driven "part" { driven by Hot }\n',
      false,
    ],
    ["an energy itself", "step isolate Hot", 'energy Hot "heater" { hot }\n', false],
    ["a consumable that is put on", "step apply Hurt to Seat", 'consumable Hurt "oil" { flash point }\n', false],
    ["a consumable that is filled in", "step fill Seat with Hurt", 'consumable Hurt "oil" { flash point }\n', false],
    ["a consumable that cleans", "step clean Seat with Hurt", 'consumable Hurt "oil" { flash point }\n', false],
    ["a consumable that lubricates", "step lubricate Seat with Hurt", 'consumable Hurt "oil" { flash point }\n', false],
    [
      "a consumable that is whole",
      "step lubricate Seat with Oil",
      'consumable Oil "oil" { flash point 210 °C }\n',
      true,
    ],
    ["a line of its own", "step { clean }", "", false],
    ["a line in another block", 'step clean Seat\ntask A "A" { step { clean } }', "", false],
    ["a line before it, in another block", "", "", true],
  ])("%s", (_title, lines, more, idle) => {
    if (lines === "") {
      const text = `task A "A" { step { clean } }\ntask B "B" { ${BURN} step clean Seat }`;
      expect(told(text, { damaged: true }).some((one) => one.startsWith("idle burn"))).toBe(idle);
    } else expect(isIdle(lines, more)).toBe(idle);
  });
  test("a procedure that is performed and is not known", () => {
    expect(isIdle("perform Nothing")).toBe(false);
  });
});

test("of hazards of which one is enough, one that comes too late is told alone", () => {
  const late = 'step {\n  lift Cover with Hoist\n  warning crush "Load." avoid "Stand clear."\n}\nstep install Cover';
  expect(told(late)).toEqual([expect.stringContaining("too late crush of Cover")]);
});

test("of several statements that come too late, each is told for what it warns of, the rest is missing", () => {
  const late = `step {
  inspect Seat with Grinder
  ${CUT}
  warning eye "Splinters." avoid "Look away."
  warning noise "Loud." avoid "Keep off."
}`;
  expect(told(late).filter((one) => one.startsWith("too late"))).toEqual([
    expect.stringContaining("too late eye of Grinder"),
    expect.stringContaining("too late noise of Grinder"),
  ]);
  // Of the blade nothing is raised: the statement of it has nothing to come too late for.
  expect(told(late).filter((one) => one.startsWith("idle"))).toEqual([expect.stringContaining("idle cutting")]);
});
