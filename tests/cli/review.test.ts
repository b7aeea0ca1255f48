// `sprag review` between files and folders: every form, the exit status, and calls that cannot be used.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import { sarifTroubles } from "#harness/sarif.ts";
import { CLOSING, SHOP, TOOLS } from "./review-texts.ts";

const SCHEMA = join(import.meta.dirname, "..", "..", "language", "schema", "review.schema.json");
const validate = new Ajv2020({ allErrors: true, strict: true }).compile(JSON.parse(readFileSync(SCHEMA, "utf8")));

/** A hold point less, another torque, other words. */
const CHANGED = CLOSING.replace("    hold for Inspector\n", "")
  .replace("to 40 ± 3 N·m", "to 58 ± 3 N·m")
  .replace("Close the cover", "Close the <b>cover</b> @all");

function shop(now = CHANGED): Folder {
  return folderWith({ ...SHOP, "new.sprag": now });
}

function review(folder: Folder, ...args: string[]) {
  return folder.sprag("review", "close.sprag", "new.sprag", ...args);
}

test("text: a heading for each group, the places, what came with it and who signs again", () => {
  const { out, err, status } = review(shop());
  expect({ err, status }).toEqual({ err: "", status: 0 });
  expect(out).toBe(`Safety (1)

  Close, step 3 (Torque)
    Hold point dropped: inspector.
    came: warning safety.no-second-check: ${lineOf(out, "no-second-check")}
    To be signed again by: fitter, inspector
    Old close.sprag:19

Values (1)

  Close, step 3 (Torque)
    Tighten Screw, torque: 40 ± 3 N·m (27.3 .. 31.7 lbf·ft) → 58 ± 3 N·m (40.6 .. 44.9 lbf·ft): +18 N·m (+45 %).
    came: error limits.tool-range: ${lineOf(out, "tool-range")}
    came: error limits.torque-disagrees: ${lineOf(out, "torque-disagrees")}
    To be signed again by: fitter, inspector
    Old close.sprag:16, New new.sprag:16

Words (1)

  Close
    Title: “Close the cover” → “Close the <b>cover</b> @all”.
    Old close.sprag:10, New new.sprag:10

safety 1, values 1, words 1.
`);
});

/** The message of a finding belongs to its rule. */
function lineOf(out: string, code: string): string {
  return new RegExp(`${code}: (.*)`).exec(out)?.[1] ?? "";
}

test("json: as the schema says, with places on both sides", () => {
  const report = JSON.parse(review(shop(), "--format", "json").out);
  expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
  expect(report.summary).toEqual({ safety: 1, values: 1, order: 0, items: 0, words: 1, layout: 0, restated: 0 });
  const [hold, torque] = report.changes;
  expect(hold).toMatchObject({
    group: "safety",
    kind: "hold-dropped",
    step: { name: "Torque", number: "3" },
    procedure: "Close",
  });
  expect(torque.old).toEqual({
    path: "close.sprag",
    range: { start: { line: 15, character: 21 }, end: { line: 15, character: 31 } },
    text: "40 ± 3 N·m (27.3 .. 31.7 lbf·ft)",
  });
  expect(torque.findings.went).toEqual([]);
  const spoilt = [
    { ...report, version: 2 },
    { ...report, changes: [{ ...hold, group: "grave" }] },
    { ...report, changes: [{ ...hold, more: 1 }] },
  ];
  expect(spoilt.map((one) => validate(one))).toEqual([false, false, false]);
});

test("md: what would be markup, a link or a call for somebody is escaped", () => {
  const { out } = review(shop(), "--format", "md");
  expect(out).toContain("### Safety (1)\n\n- **Close, step 3 (Torque)**: Hold point dropped: inspector.\n");
  expect(out).toContain("Old `close.sprag:16` → New `new.sprag:16`");
  expect(out).toContain("\\<b\\>cover\\</b\\> @\u200ball");
  expect(out).not.toContain("<b>");
});

test("html: one page without a script, all text escaped, links to both places", () => {
  const { out } = review(shop(), "--format", "html");
  expect(out).toMatch(/^<!doctype html>/);
  expect(out).not.toMatch(/<script|<b>|\son\w+=|https?:/);
  expect(out).toContain('<a href="./close.sprag#L16">close.sprag:16</a>');
  expect(out).toContain('<a href="./new.sprag#L16">new.sprag:16</a>');
  expect(out).toContain("&lt;b&gt;");
  expect(out).toMatch(/<del>40<\/del>/);
  expect(out).toMatch(/<ins>58<\/ins>/);
});

test("sarif: a result for each change, graver ones with a graver level, at its line", () => {
  const log = JSON.parse(review(shop(), "--format", "sarif").out);
  const { results, tool } = log.runs[0];
  expect(sarifTroubles(log)).toEqual([]);
  expect(sarifTroubles({ ...log, version: "2.2.0" })).toHaveLength(1);
  expect(
    sarifTroubles({ ...log, runs: [{ ...log.runs[0], results: [{ ...results[0], level: "grave" }] }] }),
  ).toHaveLength(1);
  expect(results.map(({ ruleId, level }: { ruleId: string; level: string }) => `${ruleId} ${level}`)).toEqual([
    "review.safety.hold-dropped error",
    "review.values.torque-changed warning",
    "review.words.title-changed note",
  ]);
  const ids: string[] = tool.driver.rules.map(({ id }: { id: string }) => id);
  for (const { ruleId, ruleIndex } of results) expect(ids[ruleIndex]).toBe(ruleId);
  expect(results[1].locations[0].physicalLocation).toEqual({
    artifactLocation: { uri: "new.sprag" },
    region: { startLine: 16, startColumn: 22, endLine: 16, endColumn: 32 },
  });
});

test.each<[string, string, number]>([
  ["none", CHANGED, 0],
  ["safety", CHANGED, 1],
  ["safety", CLOSING.replace("to 40 ± 3 N·m", "to 41 ± 3 N·m"), 0],
  ["values", CLOSING.replace("to 40 ± 3 N·m", "to 41 ± 3 N·m"), 1],
  ["order", CLOSING.replace("to 40 ± 3 N·m", "to 41 ± 3 N·m"), 1],
  ["values", CLOSING.replace("to 40 ± 3 N·m", "to 40000 ± 3000 N·mm"), 0],
  ["words", CLOSING, 0],
  ["layout", `// a word\n${CLOSING}`, 1],
])("--fail-on %s", (level, now, expected) => {
  expect(review(shop(now), "--fail-on", level).status).toBe(expected);
});

test("two folders: files by their paths, a shared thing told for each procedure that it reaches", () => {
  const second = CLOSING.replace("procedure Close", "procedure Again");
  const other = CLOSING.replace(" with Wrench", "").replace("procedure Close", "procedure ByHand");
  const side = (tools: string) => ({
    "shop/tools.sprag": tools,
    "a.sprag": CLOSING,
    "b.sprag": second,
    "c.sprag": other,
  });
  const under = (folder: string, files: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`${folder}/${path}`, text]));
  const folder = folderWith({
    ...under("old", side(TOOLS)),
    ...under("new", side(TOOLS.replace("8 .. 60", "8 .. 50"))),
  });
  const { changes } = JSON.parse(folder.sprag("review", "old", "new", "--format", "json").out);
  expect(changes.map(({ kind, procedure }: { kind: string; procedure: string }) => `${kind} ${procedure}`)).toEqual([
    "tool-torque-changed Close",
    "tool-torque-changed Again",
  ]);
  expect(changes[0].new.path).toBe("shop/tools.sprag");
});

test.each<[string, readonly string[], string]>([
  ["one file alone", ["close.sprag"], "Give the old and the new one"],
  ["three files", ["close.sprag", "new.sprag", "new.sprag"], "Two can be compared"],
  ["a file and a folder", ["close.sprag", "shop"], "one is a file, the other a folder"],
  ["a file that is not there", ["close.sprag", "none.sprag"], "none.sprag"],
  ["two files and a revision", ["close.sprag", "new.sprag", "--against", "HEAD"], "give one file or folder"],
  ["a form that is not known", ["close.sprag", "new.sprag", "--format", "pdf"], "--format cannot be “pdf”"],
  ["a group that is not known", ["close.sprag", "new.sprag", "--fail-on", "error"], "--fail-on cannot be “error”"],
])("%s is refused", (_title, args, words) => {
  const { out, err, status } = shop().sprag("review", ...args);
  expect({ out, status }).toEqual({ out: "", status: 2 });
  expect(err).toContain(words);
});
