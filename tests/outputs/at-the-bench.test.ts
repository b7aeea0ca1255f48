// What a fitter would misread: a formula in another language, a number that is missing, rows that run into each other, a coat that
// nobody says cures, a condition turned round.
import { expect, test } from "vitest";
import { openSamples } from "#harness/samples.ts";
import { checklistTable } from "#outputs/checklist/table.ts";
import { de } from "#outputs/words/de.ts";
import { en } from "#outputs/words/en.ts";
import { blocksIn, documentAs, instructionsIn, make, makeFrom, stepsIn, type Wishes } from "./make.ts";
import { around } from "./procedures.ts";
import { planFor } from "./record/fill.ts";

const GAP = 'step measure Gap "gap at the flange" with Depth expect 0.2 .. 1.2 mm';

/** The limits of the check behind the reading. */
function limits(expect: string, wishes: Wishes = {}, words = en): string | null | undefined {
  const { document } = make(around(`${GAP}\nstep { check "Rest" with Depth expect ${expect} }`), wishes, words);
  const [block] = stepsIn(document)[1]?.blocks ?? [];
  return block?.kind === "instruction" ? block.fields[0]?.limits?.replace(/, (?:with|mit) Gap = .*$/, "") : undefined;
}

test.each<[string, Wishes, string]>([
  // 0.1 mm is 0.003937 in (25.4 mm to the inch, exactly): added above, so rounded down; taken away above, so up.
  ["at most Gap + 0.1 mm", {}, "at most Gap + 0.1 mm (0.0039 in)"],
  ["at most Gap - 0.1 mm", { units: "us" }, "at most Gap - 0.0040 in"],
  ["at least Gap - 0.1 mm", { units: "us" }, "at least Gap - 0.0039 in"],
  ["0 mm .. Gap + 0.1 mm", {}, "0 mm .. Gap + 0.1 mm (0.0039 in)"],
  ["Gap - 0.1 mm .. Gap + 0.1 mm", { units: "us" }, "Gap - 0.0039 in .. Gap + 0.0039 in"],
  ["at most Gap + 0.1 mm", { units: "si" }, "at most Gap + 0.1 mm"],
  ["at most Gap + 0.004 in", { units: "si" }, "at most Gap + 0.101 mm"],
  // Which factor is a length, nobody can tell.
  ["at most 2 * Gap", { units: "us" }, "at most 2 × Gap"],
  // A reading by itself is no less one than with something added.
  ["at most Gap", {}, "at most Gap"],
  ["0 mm .. Gap", { units: "us" }, "0.000 in .. Gap"],
  ["Gap ± 0.1 mm", { units: "us" }, "Gap ± 0.0039 in"],
])("limits from a reading in the units asked for: %s %o", (written, wishes, shown) => {
  expect(limits(written, wishes)).toBe(shown);
});

test("a single value worked out from a reading is a limit on both sides", () => {
  const plan = planFor(around(`${GAP}\nstep { check "Rest" with Depth expect Gap + 0.1 mm record }`));
  const [, rest] = plan.entries.filter(({ kind }) => kind === "reading");
  const ends = { op: "+", left: { reading: expect.anything() }, right: "1/10000" };
  expect(rest).toMatchObject({ limits: { low: ends, high: ends } });
});

test("limits from a reading in the language asked for", () => {
  expect(limits("at most Gap + 0.1 mm", { units: "si" }, de)).toBe("höchstens Gap + 0.1 mm");
  expect(limits("at least Gap - 0.1 mm", {}, de)).toBe("mindestens Gap - 0.1 mm (0.0039 in)");
});

test("a procedure that is performed beside steps has its number where it is ticked", () => {
  const text = `${around("step install Base\nperform Other")}\nprocedure Other "Set the shim" { step install Shim }\n`;
  expect(instructionsIn(make(text).document)).toContain("Step 2: Do all of “Set the shim”.");
  expect(instructionsIn(make(text, {}, de).document)).toContain("Schritt 2: „Set the shim“ ganz ausführen.");
});

test("a procedure that is performed says which document and revision is worked to", () => {
  const text = `${around("perform Other")}
    procedure Other "Set the shim" { document "WI-7" revision "C" dated 2026-05-04  step install Shim }\n`;
  const details = (words = en): readonly string[] =>
    [...blocksIn(make(text, {}, words).document.blocks)].flatMap((block) =>
      block.kind === "instruction" && block.performed !== null ? block.details : [],
    );
  expect(details()).toEqual(["Document: WI-7 · revision C"]);
  expect(details(de)).toEqual(["Dokument: WI-7 · Revision C"]);
});

test("a finding in a performed procedure is at that procedure's step, not at the one of the same number here", () => {
  const text = `${around("step install Base\nperform Other\nstep install Base")}
    procedure Other "Set the shim" { step install Shim  step install Shim }\n`;
  const places = make(text, { draft: true }).document.head.findings.map(({ code, place }) => `${code}: ${place}`);
  expect(places).toEqual(
    expect.arrayContaining(["order.already-installed: step 3", "order.already-installed: Set the shim, step 2"]),
  );
});

test("a value to be written down says its pass once", () => {
  const labels = (record: string): readonly string[] =>
    stepsIn(make(around(`repeat n from 1 to 3 by 2 { step { record ${record} } }`)).document).flatMap(({ fields }) =>
      fields.map(({ label }) => label),
    );
  expect(labels('"depth of screw {n}"')).toEqual(["depth of screw 1", "depth of screw 3"]);
  expect(labels('"depth"')).toEqual(["depth (1)", "depth (3)"]);
  // A number that is another's is none of the pass.
  expect(labels('"depth at 1 o\'clock"')).toEqual(["depth at 1 o'clock (1)", "depth at 1 o'clock (3)"]);
});

const SEAL = 'consumable Seal "sealant" { cure 30 min }';

test("a coat says how long it cures, and has a timer, whether the step or the consumable gives the time", () => {
  const details = (line: string): readonly string[] =>
    stepsIn(make(around(line, SEAL)).document).flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === "instruction" ? block.details : [])),
    );
  expect(details("step apply 5 mL of Seal to Base")).toEqual(["It needs 30 min to cure."]);
  expect(details("step apply 5 mL of Seal to Base cure 2 h")).toEqual(["Let it cure for 2 h."]);
  expect(details("step apply 5 mL of Oil to Base")).toEqual([]);
  const timers = (line: string) => planFor(around(line, SEAL)).timers.map(({ of, limits: { low } }) => [of, low]);
  // In seconds.
  expect(timers("step apply 5 mL of Seal to Base")).toEqual([["cure", "1800"]]);
  expect(timers("step apply 5 mL of Seal to Base cure 2 h")).toEqual([["cure", "7200"]]);
  expect(timers("step apply 5 mL of Oil to Base")).toEqual([]);
});

test.each([
  ["Kept is no", "If “the seals are kept” is “no”", "Wenn „the seals are kept“ ist „nein“"],
  ["Kept is yes", "If the seals are kept", "Wenn the seals are kept"],
  [
    "not (Extent is Full and Kept is yes)",
    "If extent of work is not “full overhaul” or “the seals are kept” is “no”",
    "",
  ],
  [
    "not (Extent is Full or Kept is yes)",
    "If extent of work is not “full overhaul” and “the seals are kept” is “no”",
    "",
  ],
  [
    "Cover is clean and not (Extent is Full and Kept is yes)",
    "If the cover is clean and (extent of work is not “full overhaul” or “the seals are kept” is “no”)",
    "",
  ],
  ["not Ready", "If “all is ready” does not hold", "„all is ready“ gilt nicht"],
])("the opposite of a condition is said plainly: %s", (condition, english, german) => {
  const text = around(`when ${condition} { step clean Base }`, 'fact Ready "all is ready"');
  const heading = (words = en): string => {
    const [block] = make(text, {}, words).document.blocks;
    return block?.kind === "branch" ? (block.arms[0]?.heading ?? "") : "";
  };
  expect(heading()).toContain(english);
  expect(heading(de)).toContain(german.replace(/^Wenn /, ""));
});

test("a title that is a clause takes no article", () => {
  const text = around(
    'step measure Rest "what is left of the gap" with Depth expect 0 .. 1 mm\nwhen Rest at most 0.1 mm { step clean Base }',
  );
  expect(make(text).md).toContain("If what is left of the gap is at most 0.1 mm");
});

/** What stands in a column of each row of a step. */
function cells(text: string, step: string, column: "Text" | "Round or item"): readonly string[] {
  const { columns, rows } = checklistTable(documentAs("checklist", text), en);
  const at = columns.indexOf(column);
  expect(at).toBeGreaterThan(0);
  return rows.filter(([number]) => number === step).map((row) => String(row[at]));
}

test("in a table the rows of a choice are parted", () => {
  const text = around(`${GAP}\nstep choose Shim by Gap { 0.2 .. 0.6 mm: 0.5 mm  0.6 .. 1.2 mm: 1.0 mm }`);
  expect(cells(text, "2", "Text")).toEqual([
    "Choose the shim by the gap at the flange: 0.2 .. 0.6 mm (0.008 .. 0.024 in): 0.5 mm (0.020 in) · 0.6 .. 1.2 mm (0.024 .. 0.047 in): 1.0 mm (0.039 in)",
  ]);
});

test("in a table each row of a repeat says its own serial, and no other", () => {
  const workspace = openSamples();
  const { document } = makeFrom(workspace, "sprocket-segments.sprag");
  const rows = checklistTable(document, en).rows.filter((row) => String(row[2]).includes("Serial"));
  expect(rows.length).toBeGreaterThan(10);
  for (const row of rows) expect(String(row[2]).match(/SG-\d+/g)).toHaveLength(1);
  expect(new Set(rows.map((row) => /SG-\d+/.exec(String(row[2]))?.[0])).size).toBe(rows.length);
});

test("the answers are the last thing on a trainee's sheet, so that they can be taken off", () => {
  const text = around(`finish with Base is clean\n${GAP}`);
  const { blocks, end } = documentAs("trainee", text, { answers: true });
  expect(end).toEqual([]);
  expect(blocks.slice(-2)).toMatchObject([
    { kind: "table", title: en.labels.atTheEnd, rows: [{ cells: ["The base is clean.", { fill: "box" }] }] },
    { kind: "table", title: en.trainee.answers },
  ]);
  expect(documentAs("trainee", text).end).toEqual(["The base is clean."]);
});
