// `sprag verify`: a record that was filled in on the checklist of the command itself, whole and spoiled; and its published schema.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import type { Plan } from "#outputs/record/plan.ts";
import { recordText } from "#outputs/record/read-record.ts";
import { COVER } from "../outputs/procedures.ts";
import { fillIn, recordFrom } from "../outputs/record/fill.ts";

const GIVEN = { "1.6:1": "0.02", "1.6:record-1": "20" };

/** A folder with a procedure, and the record of its checklist as somebody saved it. */
function shop(change: (text: string) => string = (text) => text, files: Readonly<Record<string, string>> = {}): Folder {
  const folder = folderWith({ "cover.sprag": COVER });
  const { out, err } = folder.sprag("export", "cover.sprag");
  const plan = planIn(out, err);
  return folderWith({
    "cover.sprag": COVER,
    "record.json": change(recordText(recordFrom(plan, fillIn(plan, GIVEN)))),
    ...files,
  });
}

function planIn(html: string, err: string): Plan {
  const data = /<script type="application\/json" id="data">(.*?)<\/script>/s.exec(html)?.[1];
  if (data === undefined) throw new Error(`the checklist is not filled in: ${err}`);
  return (JSON.parse(data) as { readonly plan: Plan }).plan;
}

test("a record that was filled in as it should be is well", () => {
  const { status, out } = shop().sprag("verify", "record.json", "--for", "cover.sprag");
  expect(out).toMatch(
    /^WI-1 · revision C \(CloseCover\), content hash [0-9a-f]{12}\n20 places marked, complete: nothing to be said against it\n$/,
  );
  expect(status).toBe(0);
});

test("what is wrong is told, with the entry that it is about", () => {
  const spoiled = shop((text) => text.replace('"text":"0.02"', '"text":"0.5"'));
  const { status, out } = spoiled.sprag("verify", "record.json", "--for", "cover.sprag");
  expect(out).toContain("  Step 1.6: the record says within limits, and it is not. (entry 19)  [record.limits]\n");
  expect(status).toBe(1);
});

test("as JSON", () => {
  const spoiled = shop((text) => text.replace('"name":"Inspector One"', '"name":"fitter  ONE"'));
  const { status, out } = spoiled.sprag("verify", "record.json", "--for", "cover.sprag", "--format", "json");
  const report = JSON.parse(out);
  expect(report).toMatchObject({
    version: 1,
    procedure: "CloseCover",
    findings: [{ code: "record.person", step: "1.5", event: 17 }, {}, {}],
    summary: { complete: false, findings: report.findings.length },
  });
  expect(status).toBe(1);
});

test("a procedure that was changed since is another", () => {
  const folder = shop((text) => text, { "cover.sprag": COVER.replace("3 min", "4 min") });
  const { status, out } = folder.sprag("verify", "record.json", "--for", "cover.sprag");
  expect(out).toContain("It was filled in on a checklist made from other inputs");
  expect(out).toMatch(/^Not compared: 1 finding$/m);
  expect(status).toBe(1);
});

test("so is one whose picture was changed", () => {
  const text = COVER.replace("takes 3 min", 'takes 3 min figure "a.svg"');
  const folder = folderWith({ "cover.sprag": text, "a.svg": "<svg/>" });
  const { out, err } = folder.sprag("export", "cover.sprag");
  const plan = planIn(out, err);
  const held = (picture: string): string =>
    folderWith({
      "cover.sprag": text,
      "a.svg": picture,
      "record.json": recordText(recordFrom(plan, fillIn(plan, GIVEN))),
    }).sprag("verify", "record.json", "--for", "cover.sprag").out;
  expect(held("<svg/>")).not.toContain("made from other inputs");
  expect(held("<svg> </svg>")).toContain("made from other inputs");
});

describe("what cannot be used", () => {
  test.each<[string, (text: string) => string, string]>([
    ["no JSON", () => "{", "record.json is no JSON. Give the file that the checklist saved."],
    ["another JSON", () => "{}", "record.json is no record of a checklist. Give the file that the checklist saved."],
    [
      "another version",
      (text) => text.replace('"version": 1', '"version": 9'),
      "record.json is a record of version 9; this command reads version 1.",
    ],
    [
      "a part that is missing",
      (text) => text.replace('"hash"', '"cash"'),
      "record.json is damaged: hash is missing or is not what it should be. Give the file as the checklist saved it.",
    ],
    [
      "an entry that is none",
      (text) => text.replace(/"at": *"[^"]*"/, '"at": "yesterday"'),
      "record.json is damaged: at of entry 1 is missing or is not what it should be. Give the file as the checklist saved it.",
    ],
    [
      "another procedure",
      (text) => text.replace('"CloseCover"', '"\\u001b[2JOther"'),
      "cover.sprag holds no procedure <1B>[2JOther, which the record is of. There is: CloseCover.",
    ],
  ])("%s", (_title, change, message) => {
    const { status, err, out } = shop(change).sprag("verify", "record.json", "--for", "cover.sprag");
    expect({ status, out, err: err.replace(/^sprag: /, "").trim() }).toEqual({ status: 2, out: "", err: message });
  });

  test("a record that is not there, and a call without --for", () => {
    const folder = folderWith({ "cover.sprag": COVER });
    expect(folder.sprag("verify", "none.json", "--for", "cover.sprag")).toMatchObject({ status: 2, out: "" });
    expect(folder.sprag("verify", "none.json")).toMatchObject({ status: 2, out: "" });
  });
});

describe("the schema of records", () => {
  const path = join(import.meta.dirname, "..", "..", "language", "schema", "record.schema.json");
  const validate = new Ajv2020({ allErrors: true, strict: true, strictRequired: false }).compile(
    JSON.parse(readFileSync(path, "utf8")) as object,
  );

  interface Loose {
    [key: string]: unknown;
    events: Record<string, unknown>[];
  }

  const record = (): Loose => JSON.parse(shop().read("record.json")) as Loose;

  test("a saved record is as it says", () => {
    expect(validate(record()), JSON.stringify(validate.errors)).toBe(true);
  });

  test.each<[string, (loose: Loose) => void]>([
    ["another version", (loose) => (loose.version = 2)],
    ["no hash", (loose) => delete loose.hash],
    ["a part that is not known", (loose) => (loose.hours = 3)],
    ["an option that is no text", (loose) => (loose.options = { Extent: 1 })],
    ["an event of another kind", (loose) => loose.events.push({ kind: "skip", at: "2026-05-04T08:00:00Z" })],
    ["an event without a time", (loose) => loose.events.push({ kind: "undo" })],
    ["a time that is none", (loose) => loose.events.push({ kind: "undo", at: "yesterday" })],
    [
      "a reading without its result",
      (loose) => loose.events.push({ kind: "read", at: "2026-05-04T08:00:00Z", of: "1", text: "1", unit: "mm" }),
    ],
  ])("refuses %s", (_title, spoil) => {
    const loose = record();
    spoil(loose);
    expect(validate(loose)).toBe(false);
  });
});

describe("the schema of reports", () => {
  const path = join(import.meta.dirname, "..", "..", "language", "schema", "verify.schema.json");
  const schema = JSON.parse(readFileSync(path, "utf8")) as {
    $defs: { finding: { properties: { code: { enum: readonly string[] } } } };
  };
  const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);

  interface Loose {
    [key: string]: unknown;
    findings: Record<string, unknown>[];
    summary: Record<string, unknown>;
  }

  const reportOf = (folder: Folder, ...args: string[]): Loose =>
    JSON.parse(folder.sprag("verify", "record.json", "--for", "cover.sprag", "--format", "json", ...args).out) as Loose;

  /** With a time to be kept and a wait, and a way to be stopped. */
  const TIMED = COVER.replace(
    "step Seated {",
    `step Before { inspect Cover takes 1 s }
    step { inspect Cover inspect Base within 1 s after Before takes 1 s }
    step { wait 9 min }
    step { check "It runs." if it fails { stop "Call." } }
    step Seated {`,
  );

  test("every sort of finding is as it says, and it names no other", () => {
    const folder = folderWith({ "cover.sprag": TIMED });
    const { out, err } = folder.sprag("export", "cover.sprag");
    const plan = planIn(out, err);
    const whole = recordFrom(plan, fillIn(plan, { ...GIVEN, "1.9:1": true, "1.10:1": "0.02", "1.10:record-1": "20" }));
    const held = (record: typeof whole): Loose =>
      reportOf(folderWith({ "cover.sprag": TIMED, "record.json": recordText(record) }));
    const spoilt = (of: string, part: object): typeof whole => ({
      ...whole,
      events: whole.events.map((event) =>
        "of" in event && event.of === of ? ({ ...event, ...part } as typeof event) : event,
      ),
    });
    const at = whole.events.findIndex((event) => "of" in event && event.of === "1.8:1");
    const wait = { kind: "start", of: "1.8:1:wait", at: whole.events[at]?.at ?? "" } as const;
    const reports = [
      held(whole),
      held({ ...whole, hash: "0".repeat(64) }),
      held({ ...whole, options: { Extent: "Full" } }),
      held(spoilt("1.1:1", { of: "9:9" })),
      held(spoilt("1.10:1", { passed: false })),
      held(spoilt("1.5:hold", { name: "Fitter One" })),
      held(spoilt("1.2:1", { at: "2020-01-01T00:00:00Z" })),
      held({ ...whole, events: [...whole.events.slice(0, at), wait, ...whole.events.slice(at)] }),
      held(recordFrom(plan, fillIn(plan, { "1.9:1": false }))),
    ];
    for (const report of reports) expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    const codes = new Set(reports.flatMap(({ findings }) => findings.map(({ code }) => code)));
    expect([...codes].sort()).toEqual([...schema.$defs.finding.properties.code.enum].sort());
  });

  test.each<[string, (report: Loose) => void]>([
    ["another version", (report) => (report.version = 2)],
    ["a part that is not known", (report) => (report.hours = 3)],
    ["a hash that is none", (report) => (report.hash = "5f3a")],
    ["no summary", (report) => delete (report as Partial<Loose>).summary],
    ["less than no event", (report) => (report.summary.events = -1)],
    [
      "a finding of another sort",
      (report) => report.findings.push({ code: "record.colour", message: "Red.", event: null, step: null }),
    ],
    ["a finding without a place", (report) => report.findings.push({ code: "record.time", message: "Late." })],
  ])("refuses %s", (_title, spoil) => {
    const report = reportOf(shop());
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    spoil(report);
    expect(validate(report)).toBe(false);
  });
});
