// For each kind of change a pair of texts, and the entry that is expected; nothing else may be told.
import { expect, test } from "vitest";
import { canonical, carriedOut } from "./carry-out.ts";
import { changesFrom, linesOf, reviewed, reviewedFrom, workspaceOf } from "./compare-texts.ts";
import { LIBRARY, MAIN } from "./shop.ts";

const OLD = workspaceOf({ "main.sprag": MAIN, "used/library.sprag": LIBRARY });

/** Puts one text in place of another that stands there exactly once. */
function edited(text: string, from: string, to: string): string {
  expect(text.split(from).length, `“${from}” stands there once`).toBe(2);
  return text.replace(from, () => to);
}

type Row = readonly [from: string, to: string, ...lines: readonly string[]];

/** Without the words of findings, which belong to the rules. */
const PROCEDURE: readonly Row[] = [
  // safety
  [
    `    warning burn "The bearing is hot." avoid "Do not touch it." wear "gloves"\n`,
    "",
    "safety statement-dropped [1] +safety.missing",
  ],
  ["warning burn", "caution burn", "safety signal-word-weakened [1] +safety.signal-word"],
  ["caution overheating", "warning overheating", "safety signal-word-strengthened [1] +safety.signal-word"],
  ["warning skin", "danger skin", "safety signal-word-strengthened [2]"],
  ["warning burn ", "warning burn, fire ", "safety hazard-added [1]"],
  [` avoid "Wipe it off."`, "", "safety avoidance-dropped [2] +safety.no-avoidance"],
  ["Do not touch it.", "Keep your hands off.", "safety avoidance-changed [1]"],
  [` wear "gloves"`, "", "safety protection-dropped [1] +safety.protection"],
  [`wear "gloves"`, `wear "thin gloves"`, "safety protection-changed [1]"],
  ["The bearing is hot.", "The bearing is warm.", "safety statement-text-changed [1]"],
  [
    `expect at most 0.05 mm record\n      critical\n`,
    "expect at most 0.05 mm record\n",
    "safety critical-dropped [1.4] (again: fitter, inspector)",
  ],
  [
    '      hold for Inspector\n      per Manual "5.4"',
    '      per Manual "5.4"',
    "safety hold-dropped [1.4] +safety.no-second-check (again: fitter, inspector)",
  ],
  [
    "      sign Fitter\n      hold for Inspector\n      per",
    "      hold for Inspector\n      per",
    "safety sign-off-dropped [1.4] (again: fitter, inspector)",
  ],
  [
    "      takes 4 min\n",
    `      takes 4 min\n      allow limits.no-tool because "tried on the bench"\n`,
    "safety allow-added [2.4] +trace.unused-allow (again: fitter, inspector)",
  ],
  ["      by Fitter\n", "", "safety done-by-dropped [2.5]"],
  ["      by Fitter\n", "      by Inspector\n", "safety done-by-changed [2.5]"],
  ["      by Fitter\n", "      by Fitter\n      raises noise\n", "safety raises-added [2.5] +safety.missing"],
  // values
  ["105 .. 115 °C", "105 .. 118 °C", "values temperature-changed [1.1]"],
  ["within 60 s", "within 90 s", "values time-limit-changed [1.2]"],
  ["takes 6 min", "takes 8 min", "values time-changed [1.1]"],
  ["at most 40 °C", "at most 50 °C", "values wait-changed [1.3]"],
  ["expect at most 0.05 mm", "expect at most 0.08 mm", "values expected-changed [1.4] (again: fitter, inspector)"],
  ["41 .. 49 N·m", "40 .. 50 N·m", "values expected-changed [2.5]"],
  ["ambient 15 .. 25 °C", "ambient 10 .. 25 °C", "values ambient-changed"],
  ["crew 2", "crew 3", "values crew-changed"],
  ["value Final = 45 ± 4 N·m", "value Final = 45 ± 3 N·m", "values value-changed (again: fitter, inspector)"],
  ["interference 2 .. 30 µm", "interference 2 .. 20 µm", "values interference-changed"],
  ["mass 8 kg", "mass 9 kg", "values mass-changed"],
  ["heat limit 120 °C", "heat limit 125 °C", "values heat-limit-changed"],
  [`class "8.8"`, `class "10.9"`, "values property-class-changed (again: fitter, inspector)"],
  ["nut factor 0.20 dry", "nut factor 0.19 dry", "values nut-factor-changed (again: fitter, inspector)"],
  ["heat limit 120 °C", "heat limit 248 °F", "values restated"],
  ["105 .. 115 °C", "221 .. 239 °F", "values restated [1.1]"],
  ["0.05 mm record", "50 µm record", "values restated [1.4]"],
  // order
  [`    step Look "Look at the seat." {\n      inspect Cover "for scratches"\n    }\n`, "", "order step-removed [2.2]"],
  [`    step Look "Look`, `    step inspect Shaft "for rust"\n    step Look "Look`, "order step-added [2.2]"],
  [
    `      inspect Cover "for scratches"\n`,
    `      inspect Cover "for scratches"\n      inspect Shaft "for rust"\n`,
    "order action-added [2.2]",
  ],
  ["      needs Bearing is installed\n", "", "order precondition-dropped [2.1]"],
  [
    "      needs Bearing is installed\n",
    "      needs Bearing is installed, Signed\n",
    "order precondition-added [2.1]",
  ],
  ["begin with Shaft is installed, Signed", "begin with Shaft is installed", "order start-condition-dropped"],
  ["finish with Cover is secured", "finish with Cover is secured, Bearing is installed", "order end-condition-added"],
  ["in 1, 3, 2, 4", "in 1, 2, 3, 4", "order passes-changed [2.3]"],
  ["in cross pattern", "in circular pattern", "order pattern-changed [2.4] (again: fitter, inspector)"],
  ["mm record\n", "mm\n", "order record-dropped [1.4] +trace.no-record (again: fitter, inspector)"],
  [`record "torque used" 41 .. 49 N·m with Wrench\n`, "", "order record-removed [2.5]"],
  ["encloses Bearing", "", "order encloses-dropped"],
  ["numbered clockwise", "numbered counterclockwise", "order numbering-changed (again: fitter, inspector)"],
  [
    `mm record\n`,
    `mm record if it fails { stop "Call the foreman." }\n`,
    "order failing-added [1.4] (again: fitter, inspector)",
  ],
  // items
  ["of Final with Wrench", "of Final with LongWrench", "items tool-changed [2.4] (again: fitter, inspector)"],
  [`takes 30 s\n      per Manual "5.3"`, `takes 30 s\n      per Manual "5.5"`, "items source-changed [1.2]"],
  ["serial 10 .. 99", "serial 10 .. 199", "items applies-to-changed"],
  [`based on Manual revision "7"`, `based on Manual revision "6"`, "items based-on-changed +trace.old-revision"],
  [
    'part Shaft "shaft" { material Steel }',
    'part Shaft "shaft" { material Steel }\npart Spare "spare part"',
    "items declaration-added +names.unused",
  ],
  // words
  ["Slide the bearing home.", "Push the bearing home.", "words own-words-changed [1.2]"],
  ["Gap at the shoulder", "Gap behind the shoulder", "words own-words-changed [1.4]"],
  ['Fit the bearing"', 'Fit the hot bearing"', "words title-changed [1]"],
  ["Keep the parts in order.", "Keep the parts clean.", "words note-text-changed"],
  ["It widens.", "It grows.", "words why-changed [1.1]"],
  [`revision "A" dated`, `revision "B" dated`, "words revision-changed"],
  [`not "lid"`, `not "lid", "cap"`, "words replaced-added"],
  // layout
  ["  crew 2\n", "  crew 2 // both trained\n", "layout layout"],
  [
    "      sign Fitter\n      hold for Inspector\n      per",
    "      hold for Inspector\n      sign Fitter\n      per",
    "layout layout",
  ],
];

const USED: readonly Row[] = [
  ["burn 55 °C", "burn 60 °C", "safety threshold-raised"],
  ["burn 55 °C", "burn 50 °C", "values threshold-lowered"],
  ["burn 55 °C", "burn 131 °F", "values restated"],
  ["cold -5 °C", "cold -10 °C", "safety threshold-lowered"],
  ["cold -5 °C", "cold 0 °C", "values threshold-raised"],
  ['threshold burn 55 °C per Rules "4.1"\n', "", "safety declaration-removed"],
  ["{ hazard skin }\nconsumable Oil", "\nconsumable Oil", "safety raises-dropped"],
  ["heats to 150 °C", "heats to 120 °C", "values heats-to-changed"],
  [
    'tool LongWrench "long torque wrench" {\n  torque 8 .. 90 N·m',
    'tool LongWrench "long torque wrench" {\n  torque 8 .. 80 N·m',
    "values tool-torque-changed",
  ],
  ["heat limit 200 °C", "heat limit 190 °C", "values heat-limit-changed"],
  [
    `manual" revision "7"`,
    `manual" revision "8"`,
    "items source-revision-changed +trace.old-revision (again: fitter, inspector)",
  ],
  [`"partial overhaul"`, `"partial overhaul"\n  None "no overhaul"`, "items choice-added"],
  [`"torque wrench"`, `"click wrench"`, "words title-changed"],
];

/** Group, kind, step, findings and who signs again. */
function short(line: string): string {
  const [, head, step = "", tail = ""] =
    /^(\S+ \S+)( \[[^\]]*\])?.*?((?: [+-][a-z]+\.[a-z-]+)*(?: \(again: [^)]*\))?)$/.exec(line) ?? [];
  return `${head}${step}${tail}`;
}

test.each(
  PROCEDURE.map(
    (row) => [row[1] === "" ? `without “${row[0].trim()}”` : `“${row[0].trim()}” → “${row[1].trim()}”`, row] as const,
  ),
)("%s", (_title, [from, to, ...expected]) => {
  const now = workspaceOf({ "main.sprag": edited(MAIN, from, to), "used/library.sprag": LIBRARY });
  expect(linesOf(reviewedFrom(OLD, now)).map(short)).toEqual(expected);
  const { changes, plain } = changesFrom(OLD, now);
  expect(canonical(carriedOut(plain.old, changes))).toEqual(canonical(plain.new));
});

test.each(USED.map((row) => [`“${row[0].trim()}” → “${row[1].trim()}”`, row] as const))(
  "in the library: %s",
  (_title, [from, to, ...expected]) => {
    const now = workspaceOf({ "main.sprag": MAIN, "used/library.sprag": edited(LIBRARY, from, to) });
    expect(linesOf(reviewedFrom(OLD, now)).map(short)).toEqual(expected);
    const { changes, plain } = changesFrom(OLD, now);
    expect(canonical(carriedOut(plain.old, changes))).toEqual(canonical(plain.new));
  },
);

test("a value is told in both unit systems, with difference, per cent and margins", () => {
  const text = edited(MAIN, "value Final = 45 ± 4 N·m", "value Final = 60 ± 4 N·m");
  const now = workspaceOf({ "main.sprag": text, "used/library.sprag": LIBRARY });
  const [first] = reviewedFrom(OLD, now).changes;
  expect(first?.message).toBe(
    "Value Final: 45 ± 4 N·m (30.3 .. 36.1 lbf·ft) → 60 ± 4 N·m (41.4 .. 47.2 lbf·ft): +15 N·m (+33 %). " +
      "Used in step 2.4 (Torque). Preload of Screw: 72.8 % → 95.1 % of proof.",
  );
});

test("what is left to the heat limit stands beside a heating", () => {
  const now = workspaceOf({
    "main.sprag": edited(MAIN, "105 .. 115 °C", "105 .. 118 °C"),
    "used/library.sprag": LIBRARY,
  });
  expect(reviewedFrom(OLD, now).changes[0]?.message).toBe(
    "Heat Bearing, temperature: 105 .. 115 °C (221 .. 239 °F) → 105 .. 118 °C (221 .. 244 °F): " +
      "high end +3 K, band widened from 10 K to 13 K. " +
      "Bearing: 5 K → 2 K below the heat limit. Bearing: 85 K → 82 K below the heat limit of Shaft.",
  );
});

/** A procedure with these lines in place of those, told. */
function told(from: string, to: string): readonly string[] {
  const [old, now] = [from, to].map((lines) => workspaceOf({ "a.sprag": SMALL.replace("LINES", () => lines) }));
  if (old === undefined || now === undefined) throw new Error("two sides are needed");
  const { changes, plain } = changesFrom(old, now);
  expect(canonical(carriedOut(plain.old, changes))).toEqual(canonical(plain.new));
  return linesOf(reviewedFrom(old, now)).filter((line) => !line.includes(" finding-"));
}

const SMALL = `part Bearing "bearing" { mass 2 kg }
part Cover "cover" { mass 2 kg }
role Fitter "fitter"
option Steam "used for steam" { yes no }
procedure P "Do it" { LINES }`;

test.each([
  [
    "a branch put round a step",
    "task A { step inspect Bearing step inspect Cover }",
    "task A { step inspect Bearing when Steam is no { step inspect Cover } }",
    "order when-added [1.2] Branch added: when Steam is no. Now done only in some cases: step 1.2.",
  ],
  [
    "a branch put round many steps, one of them critical",
    `task A { ${many("step inspect Cover critical sign Fitter")} }`,
    `task A { when Steam is no { ${many("step inspect Cover critical sign Fitter")} } }`,
    "order when-added [1.1] Branch added: when Steam is no. Now done only in some cases: " +
      "step 1.1, step 1.2, step 1.3, step 1.4, step 1.5, step 1.6 and 2 more. (again: fitter)",
  ],
  [
    "a branch taken from round a step that is signed",
    "task A { step inspect Bearing when Steam is no { step inspect Cover sign Fitter } }",
    "task A { step inspect Bearing step inspect Cover sign Fitter }",
    "order when-removed [1.2] Branch removed: when Steam is no. No longer tied to that branch: step 1.2.",
  ],
  [
    "another case for a branch",
    "task A { step inspect Bearing when Steam is no { step inspect Cover } }",
    "task A { step inspect Bearing when Steam is no { step inspect Cover } otherwise { step clean Cover } }",
    "order arm-added [1.3] Case of the branch added: otherwise.",
    "order step-added [1.3] Step added: Clean the cover.",
  ],
  [
    "a branch with its steps, one of them signed",
    "task A { step inspect Bearing }",
    "task A { step inspect Bearing when Steam is no { step X { inspect Cover sign Fitter } } }",
    "order when-added [1.2] Branch added: when Steam is no.",
    "order step-added [1.2] Step added: Inspect the cover.",
  ],
  [
    "the same taken away",
    "task A { step inspect Bearing when Steam is no { step X { inspect Cover sign Fitter } } }",
    "task A { step inspect Bearing }",
    "safety sign-off-dropped [1.2] Dropped with its step: sign-off by fitter. (again: fitter)",
    "order when-removed [1.2] Branch removed: when Steam is no.",
    "order step-removed [1.2] Step removed: Inspect the cover.",
  ],
  [
    "a precondition with a value",
    "step { needs Bearing is at least 95 °C install Bearing }",
    "step { install Bearing }",
    "order precondition-dropped [1] Precondition dropped: Bearing is at least 95 °C.",
  ],
  [
    "another value in a precondition",
    "step { needs Bearing is at least 95 °C install Bearing }",
    "step { needs Bearing is at least 90 °C install Bearing }",
    "values condition-value-changed [1] Precondition “Bearing is at least 90 °C”, value: at least 95 °C (at least 203 °F) → at least 90 °C (at least 194 °F): −5 K.",
  ],
  [
    "another part acted on",
    "step inspect Bearing",
    "step inspect Cover",
    "items object-changed [1] Inspect Cover instead of Bearing.",
  ],
  [
    "a statement narrowed to one task",
    `caution damage "It breaks." avoid "Go slowly." task A "a" { step inspect Cover } task B "b" { step inspect Bearing }`,
    `task A "a" { caution damage "It breaks." avoid "Go slowly." step inspect Cover } task B "b" { step inspect Bearing }`,
    "safety statement-moved [1] Safety statement moved: caution (damage): It breaks. It now holds only for task 1 “a”. " +
      "It now comes first in task 1 “a”. It now comes before step 1.1.",
  ],
  [
    "a statement put behind a step",
    `task A "a" { caution damage "It breaks." avoid "Go slowly." step inspect Cover step inspect Bearing }`,
    `task A "a" { step inspect Cover caution damage "It breaks." avoid "Go slowly." step inspect Bearing }`,
    "safety statement-moved [1] Safety statement moved: caution (damage): It breaks. It now stands behind what it guarded. " +
      "It now comes after step 1.1. It now comes before step 1.2.",
  ],
  [
    "a failing path with all it held",
    `step { check "Cover is whole." if it fails { inspect Cover clean Cover stop "Call the foreman." } }`,
    `step { check "Cover is whole." }`,
    'order failing-dropped [1] Path for a failed check removed: Inspect the cover. Clean the cover. stop "Call the foreman."',
  ],
  [
    "a repeat put round steps",
    "task A { step inspect Bearing step clean Cover }",
    "task A { repeat n in 1..2 { step inspect Bearing step clean Cover } }",
    "order repeat-added [1.1] Repeat added: repeat n in 1..2. Now repeated: step 1.1, step 1.2.",
  ],
  [
    "any order put round steps",
    "task A { step inspect Bearing step clean Cover }",
    "task A { in any order { step inspect Bearing step clean Cover } }",
    "order any-order-added [1.1] Block added: in any order. Now in any order: step 1.1, step 1.2.",
  ],
  [
    "any order taken from round steps",
    "task A { in any order { step inspect Bearing step clean Cover } }",
    "task A { step inspect Bearing step clean Cover }",
    "order any-order-removed [1.1] Block removed: in any order. Now only in the order written: step 1.1, step 1.2.",
  ],
  [
    "a repeat put round lines of a step",
    "step { inspect Bearing clean Cover }",
    "step { repeat n in 1..2 { inspect Bearing clean Cover } }",
    "order repeat-added [1] Repeat added: repeat n in 1..2. Now repeated: “Inspect the bearing.”, “Clean the cover.”",
  ],
  [
    "a declared order",
    "step A { inspect Bearing } step B { inspect Cover }",
    "step A { inspect Bearing } step B { inspect Cover after A }",
    "order declared-order-added [2] Declared order added: after A.",
  ],
  [
    "another place to go on from",
    'step A { inspect Bearing } step B { check "Cover is whole." if it fails { return to A } }',
    'step A { inspect Bearing } step B { check "Cover is whole." if it fails { return to B } }',
    "order jump-changed [2] Jump: return to A → return to B.",
  ],
  [
    "another signal word",
    `step { caution damage "It breaks." avoid "Go slowly." inspect Cover }`,
    `step { warning damage "It breaks." avoid "Go slowly." inspect Cover }`,
    "safety signal-word-strengthened [1] Signal word for damage strengthened: caution → warning.",
  ],
  [
    "another action on the same part",
    'step inspect Cover "for cracks"',
    "step clean Cover",
    "order action-added [1] Action added: Clean the cover.",
    "order action-removed [1] Action removed: Inspect the cover for cracks.",
  ],
  [
    "an allowed finding with a sentence for a reason",
    `task A "a" { step inspect Cover allow wording.vague because "It says so." }`,
    `task A "a" { allow wording.vague because "It says so." step inspect Cover }`,
    "safety allow-widened [1] Allowed finding widened from step 1.1 to task 1 “a”: wording.vague, because “It says so.”",
  ],
  [
    "other words",
    'step "Sweep the bench."',
    'step "Sweep it."',
    "words own-words-changed [1] Wording: “Sweep the bench.” → “Sweep it.”",
  ],
] as const)("%s", (_title, from, to, ...expected) => {
  expect(told(from, to).map((line) => line.replace(/(?: [+-][a-z]+\.[a-z-]+)+/, ""))).toEqual(expected);
});

function many(step: string): string {
  return Array.from({ length: 8 }, () => step).join(" ");
}

test("a margin that is the same in two steps is told once", () => {
  const twice = MAIN.replace(
    "    step Record",
    "    step Again { tighten Screw[all] to Final with Wrench }\n    step Record",
  );
  const texts = [twice, edited(twice, "value Final = 45 ± 4 N·m", "value Final = 60 ± 4 N·m")].map((text) => ({
    "main.sprag": text,
    "used/library.sprag": LIBRARY,
  }));
  const [first] = reviewed(texts[0] ?? {}, texts[1] ?? {}).changes;
  expect(first?.message.match(/Preload of Screw/g)).toHaveLength(1);
});

test("a threshold is told to those procedures that reach it", () => {
  const cold = `use "used/library.sprag"\nprocedure Tidy "Tidy up" { step "Sweep the bench." }`;
  const sideWith = (library: string) =>
    workspaceOf({ "main.sprag": MAIN, "tidy.sprag": cold, "used/library.sprag": library });
  const reached = (from: string, to: string) =>
    reviewedFrom(sideWith(LIBRARY), sideWith(edited(LIBRARY, from, to)))
      .changes.filter(({ kind }) => kind === "threshold-raised")
      .map(({ group, procedure }) => `${group} ${procedure}`);
  expect(reached("burn 55 °C", "burn 60 °C")).toEqual(["safety Close"]);
  // Nothing there is as cold: said once, of no procedure.
  expect(reached("cold -5 °C", "cold 0 °C")).toEqual(["values "]);
});
