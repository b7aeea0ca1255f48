// What a procedure speaks of, wherever in it that stands: conditions, actions, parts, energies, options, steps that time is counted from.
import { describe, expect, test } from "vitest";
import {
  gatherActions,
  gatherConditions,
  gatherEnergies,
  gatherParts,
  optionsAsked,
  spokenParts,
  timedSteps,
} from "#analysis/mentioned.ts";
import { conditionText } from "#model/condition-text.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import { onPaper } from "../run-on-paper.ts";

const HEAD = `part Hub "hub"
part Cover "cover"
part Screw "screw" { secures Cover }
part Plate "plate" { locks Screw }
part Shaft "shaft"
part Bearing "bearing"
energy Supply "supply" { voltage 400 V AC }
energy Air "air" { pressure 6 bar }
option Extent "extent of work" { Full Part }
option Kind "kind" { Wet Dry }
option Season "season" { Warm Cold }
fact Signed "the sheet is signed"
fact Seen "it was seen"
procedure Inner "Inner" { step "i." }
`;

function expanded(body: string): ExpandedProcedure {
  const run = onPaper(`${HEAD}procedure Work "Work" {\n${body}\n}`).runs.find(
    (one) => one.expanded.procedure.name === "Work",
  );
  if (run === undefined) throw new Error(body);
  return run.expanded;
}
const conditions = (body: string): readonly string[] => [...gatherConditions(expanded(body))].map(conditionText);
const verbs = (body: string): readonly string[] => [...gatherActions(expanded(body))].map(({ action }) => action.verb);
const names = (set: Iterable<{ readonly name: string }>): readonly string[] => [...set].map(({ name }) => name);

describe("conditions", () => {
  test.each<[where: string, body: string, found: readonly string[]]>([
    ["none", 'step "a."', []],
    ["begin with", 'begin with Hub is installed\nstep "a."', ["Hub is installed"]],
    ["finish with", "finish with Hub is installed\nstep install Hub", ["Hub is installed"]],
    ["needs and gives", 'step { needs Signed  do "a."  gives Seen }', ["Signed", "Seen"]],
    ["a task", 'task "T" { step { needs Signed  do "a." } }', ["Signed"]],
    ["any order", 'in any order { step { needs Signed  do "a." }  step { needs Seen  do "b." } }', ["Signed", "Seen"]],
    [
      "the arms of a when, and in them",
      'when Signed { step { needs Seen  do "a." } } otherwise { step { needs Hub is removed  do "b." } }',
      ["Signed", "Seen", "Hub is removed"],
    ],
    ["a when among lines", 'step { when Signed { do "a." } }', ["Signed"]],
    ["a wait", "step wait until Signed", ["Signed"]],
    ["a wait after a check", 'step { check "It is so" if it fails { wait until Signed } }', ["Signed"]],
    ["any order among lines", 'step { in any order { wait until Signed  do "b." } }', ["Signed"]],
  ])("%s", (_where, body, found) => {
    expect(conditions(body)).toEqual(found);
  });
  test("those inside others come after them", () => {
    expect(conditions('step { needs not (Signed or Seen and Hub is removed)  do "a." }').slice(1)).toEqual([
      "Signed or Seen and Hub is removed",
      "Signed",
      "Seen and Hub is removed",
      "Seen",
      "Hub is removed",
    ]);
  });
});

describe("actions", () => {
  test.each<[where: string, body: string, found: readonly string[]]>([
    ["one after the other", "step { install Hub  lubricate Hub }\nstep clean Hub", ["install", "lubricate", "clean"]],
    ["a task", 'task "T" { step install Hub }', ["install"]],
    ["both arms", "when Extent is Full { step install Hub } otherwise { step clean Hub }", ["install", "clean"]],
    ["any order", "in any order { step install Hub  step clean Cover }", ["install", "clean"]],
    ["after a check", 'step { check "It is so" if it fails { clean Hub } install Hub }', ["clean", "install"]],
    ["a check that leads nowhere", 'step { check "It is so"  clean Hub }', ["clean"]],
    ["a performed procedure", "perform Inner\nstep install Hub", ["perform", "install"]],
  ])("%s", (_where, body, found) => {
    expect(verbs(body)).toEqual(found);
  });
  test("of the lines of a step alone", () => {
    const [step] = expanded("step { install Hub  clean Hub }\nstep lubricate Hub").items;
    if (step?.kind !== "step") throw new Error("no step");
    expect([...gatherActions(step)].map(({ action }) => action.verb)).toEqual(["install", "clean"]);
  });
});

describe("parts", () => {
  test.each<[body: string, spoken: readonly string[], with_: readonly string[]]>([
    ['step "a."', [], []],
    ["step install Hub", ["Hub"], ["Hub"]],
    ["step press Bearing on Shaft", ["Bearing", "Shaft"], ["Bearing", "Shaft"]],
    ['step { needs Hub is installed  do "a." }', ["Hub"], ["Hub"]],
    ['step { needs Signed  do "a." }', [], []],
    ["step install Cover", ["Cover"], ["Cover", "Screw"]],
    ["step install Screw", ["Screw"], ["Screw", "Plate"]],
    ["step install Plate", ["Plate"], ["Plate"]],
    ["step install Cover, Screw", ["Cover", "Screw"], ["Cover", "Screw", "Plate"]],
    ["step isolate Supply", [], []],
  ])("%s", (body, spoken, with_) => {
    expect(names(spokenParts(expanded(body)))).toEqual(spoken);
    expect(names(gatherParts(expanded(body)))).toEqual(with_);
  });
});

describe("energies and options", () => {
  test.each<[body: string, energies: readonly string[], options: readonly string[]]>([
    ['step "a."', [], []],
    ["step isolate Supply, Air", ["Supply", "Air"], []],
    ['step { needs Air is isolated  do "a." }', ["Air"], []],
    ['step { needs Hub is installed and Signed  do "a." }', [], []],
    ["step install Hub", [], []],
    ['when Extent is Full { step "a." }', [], ["Extent"]],
    [
      'when Extent is Full and not (Kind is Wet) { step "a." } otherwise { when Extent is Full { step "b." } }',
      [],
      ["Extent", "Kind"],
    ],
    ['step { when Season is Cold { do "a." } }', [], ["Season"]],
  ])("%s", (body, energies, options) => {
    expect(names(gatherEnergies(expanded(body)))).toEqual(energies);
    expect(names(optionsAsked(expanded(body)))).toEqual(options);
  });
});

describe("steps that time is counted from", () => {
  const within = (name: string): string => `step { install Hub  within 5 min after ${name} }`;
  test.each<[body: string, named: readonly string[]]>([
    ['step First "a."', []],
    [`step First "a."\n${within("First")}`, ["step First"]],
    [`task "T" { step First "a."\nstep Second "b." }\n${within("Second")}`, ["step Second"]],
    [`step First "a."\nin any order { ${within("First")}\nstep "c." }`, ["step First"]],
    [`step First "a."\nwhen Extent is Full { ${within("First")} }`, ["step First"]],
  ])("%s", (body, named) => {
    const text = `${HEAD}procedure Work "Work" {\n${body}\n}`;
    const places = named.map((words) => `work.sprag:${text.indexOf(words)}`);
    expect([...timedSteps(expanded(body))]).toEqual(places);
  });
});
