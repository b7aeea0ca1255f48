// What a condition says where it fails, where it can hold, and what is so after it was taken as met.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";

const HEAD = `ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Hub "hub"
part Cover "cover"
part Bolt[1..2] "bolt" { seats in Circle }
part Screw "screw" { secures Cover }
temporary part Cap[1..2] "cap"
energy Supply "supply" { voltage 400 V AC }
consumable Grease "grease"
tool Heater "heater" { heats to 300 °C }
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part }
`;

function work(steps: string): readonly string[] {
  return found(`${HEAD}procedure Work "Work" {\n${steps}\n}`, { damaged: true });
}
const ask = (condition: string): string => `step { needs ${condition}  do "Look." }`;
const unmet = (condition: string): string => `order.unmet-need: ${condition}`;

describe("of what has no such state nothing is said", () => {
  test.each([
    "Circle is clean",
    "Circle is installed",
    "Circle is at most 30 °C",
    "Grease is clean",
    "Grease is installed",
    "Grease is at most 30 °C",
    "Heater is clean",
    "Hub is open",
    "Hub at 3 o'clock",
    "Supply is at most 30 °C",
  ])("%s", (condition) => {
    expect(work(ask(condition))).toEqual([]);
    expect(work(ask(`not (${condition})`))).toEqual([]);
    expect(work(`when ${condition} { step "a." } otherwise { step "b." }`)).toEqual([]);
    expect(work(`when not (${condition}) { step "a." } otherwise { step "b." }`)).toEqual([]);
    expect(work(`${ask(condition)}\nstep install Hub\nstep install Hub`)).toEqual([
      "order.already-installed: install Hub",
    ]);
  });
});

describe("can it fail", () => {
  test.each<[condition: string, before: string, fails: boolean]>([
    ["Hub is installed or Cover is installed", "", true],
    ["Hub is installed or Cover is installed", "step install Cover", false],
    ["Hub is installed or Cover is installed", "step install Hub", false],
    ["Hub is installed or (Cover is installed or Signed)", "", true],
    ["Hub is installed or (Cover is installed or Signed)", 'step { do "It."  gives Signed }', false],
    ["Hub is installed or Hub is removed", "", false],
    ["Hub is installed or Hub is removed", "when Extent is Full { step install Hub }", false],
    ["Signed or Hub is installed or Hub is removed", "when Extent is Full { step install Hub }", false],
    ["Hub is installed and Cover is installed", "step install Hub, Cover", false],
    ["Hub is installed and Cover is installed", "step install Cover", true],
    ["not (Hub is installed or Cover is installed)", "", false],
    ["not (Hub is installed or Cover is installed)", "step install Cover", true],
    ["not (Hub is removed and Cover is removed)", "", true],
    ["not (Hub is removed and Cover is removed)", "step install Cover", false],
    ["not (not Signed)", "", true],
    ["not (not Signed)", 'step { do "It."  gives Signed }', false],
    ["Screw is not tightened", "", false],
    ["Screw is not tightened", "step install Cover, Screw", false],
    ["Screw is not tightened", "step install Cover, Screw\nstep tighten Screw", true],
    ["Cover is not secured", "", false],
    ["Cover is not secured", "step install Cover, Screw", false],
    ["Cover is not secured", "step install Cover, Screw\nstep tighten Screw", true],
    ["Cover is secured", "step install Cover, Screw\nstep tighten Screw", false],
    ["Cover is secured", "step install Cover, Screw", true],
    ["no temporary parts", "", false],
    ["no temporary parts", "step install Cap[2]", true],
    ["no temporary parts", "step install Cap\nstep remove Cap", false],
    ["Hub is lubricated", "step lubricate Hub with Grease", false],
    ["Hub is lubricated", "", true],
    ["Hub is not at most 30 °C", "step heat Hub to 60 °C with Heater", false],
    ["Hub is not at most 30 °C", "", true],
    ["Hub is not at least 60 °C", "", false],
    ["Hub is not at least 60 °C", "step heat Hub to 60 °C with Heater", true],
  ])("%s, after “%s”", (condition, before, fails) => {
    expect(work(`${before}\n${ask(condition)}`)).toEqual(fails ? [unmet(condition)] : []);
  });
});

describe("can it hold", () => {
  test.each<[condition: string, first: boolean, otherwise: boolean]>([
    ["Hub is removed", true, false],
    ["Hub is installed", false, true],
    ["Hub is installed and Hub is removed", false, true],
    ["Hub is installed or Hub is removed", true, false],
    ["Hub is installed or Signed", false, true],
    ["Hub is removed or Signed", true, false],
    ["Hub is at least 60 °C and Hub is at most 30 °C", false, true],
    ["Hub is at least 10 °C and Hub is at most 30 °C", true, false],
    ["not Extent is Full and Extent is Full", false, true],
    ["Extent is Full", true, true],
    ["Extent is Full and Hub is installed", false, true],
    ["Extent is Full or Hub is removed", true, false],
    ["Screw is tightened", false, true],
    ["Cover is secured", false, true],
  ])("%s", (condition, first, otherwise) => {
    const reached = ["a", "b"].filter(
      (name) =>
        !work(`when ${condition} { step "a." } otherwise { step "b." }`).includes(`flow.unreachable: step "${name}."`),
    );
    expect(reached).toEqual([...(first ? ["a"] : []), ...(otherwise ? ["b"] : [])]);
  });
  test("what one value allows is not what several allow together", () => {
    const either = 'when Extent is Full { step install Hub }\nwhen Hub is installed and Hub is removed { step "a." }';
    expect(work(either)).toContain('flow.unreachable: step "a."');
  });
});

describe("taken as met", () => {
  test("of alternatives none is chosen: each may be so", () => {
    const either = ask("Hub is installed or Cover is installed");
    for (const next of ["install Hub", "remove Hub", "install Cover", "remove Cover"])
      expect(work(`${either}\nstep ${next}`)).toEqual([unmet("Hub is installed or Cover is installed")]);
  });
  test("an alternative that is so stays so", () => {
    expect(work(`step install Hub\n${ask("Hub is installed or Cover is installed")}\nstep install Hub`)).toEqual([
      "order.already-installed: install Hub",
    ]);
  });
  test("of what is only taken as met nothing is held against what comes later", () => {
    for (const [condition, next] of [
      ["Hub is installed and Cover is installed", "install Hub"],
      ["Screw is tightened", "install Screw"],
      ["Signed", "inspect Hub"],
    ])
      expect(work(`${ask(condition ?? "")}\nstep ${next}`)).toEqual([unmet(condition ?? "")]);
  });
  test.each([
    "Hub is installed",
    "Hub is installed and Cover is installed",
    "Hub is at least 60 °C",
    "Signed",
    "Hub is clean",
    "Hub is lubricated",
    "Hub is aligned",
    "Supply is isolated",
    "Screw is installed",
    "Screw is tightened",
    "Cover is secured",
  ])("asked once, not again: %s", (condition) => {
    expect(work(`${ask(condition)}\n${ask(condition)}`)).toEqual([unmet(condition)]);
  });
});

describe("said of the beginning", () => {
  test.each<[said: string, steps: string, told: readonly string[]]>([
    ["Hub is installed", "step install Hub", ["order.already-installed: install Hub"]],
    ["Hub is installed and Cover is installed", "step install Hub", ["order.already-installed: install Hub"]],
    ["Hub is installed and Cover is installed", "step remove Hub, Cover", []],
    ["Hub is installed or Cover is installed", "step install Hub, Cover", []],
    ["Hub is installed or Cover is installed", "step remove Hub, Cover", []],
    ["not (Hub is removed)", "step install Hub", []],
    ["Signed", ask("not Signed"), [unmet("not Signed")]],
    ["not Signed", ask("Signed"), [unmet("Signed")]],
    ["Supply is isolated", ask("Supply is live"), [unmet("Supply is live")]],
    ["Supply is live", ask("Supply is isolated"), [unmet("Supply is isolated")]],
    ["not Supply is isolated", ask("Supply is isolated"), [unmet("Supply is isolated")]],
    ["not Supply is live", ask("Supply is live"), [unmet("Supply is live")]],
    ["Hub is at least 60 °C", ask("Hub is at least 90 °C"), [unmet("Hub is at least 90 °C")]],
    ["Hub is at least 60 °C", ask("Hub is at least 50 °C"), []],
    ["Hub is not at most 60 °C", ask("Hub is at least 60 °C"), []],
    ["Hub is not at least 60 °C", ask("Hub is at most 60 °C"), []],
    ["Hub is aligned", ask("Hub is not aligned"), [unmet("Hub is not aligned")]],
    ["Hub is clean", ask("Hub is not clean"), [unmet("Hub is not clean")]],
    ["Cover is installed, Screw is tightened", "step install Screw", ["order.already-installed: install Screw"]],
    ["Cover is installed, Screw is loose", ask("Screw is tightened"), [unmet("Screw is tightened")]],
    ["Cover is secured", ask("Screw is loose"), [unmet("Screw is loose")]],
    ["Cover is secured", "step install Cover", ["order.already-installed: install Cover"]],
    ["Bolt[1] is installed", "step install Bolt[1] in Circle[1]", ["order.already-installed: install Bolt[1]"]],
  ])("%s", (said, steps, told) => {
    expect(found(`${HEAD}procedure Work "Work" {\nbegin with ${said}\n${steps}\n}`)).toEqual(told);
  });
});
