// Records that were changed after they were saved, or come from elsewhere: what is told of them, and that one cause is told once.
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { isSamePerson } from "#outputs/record/person.ts";
import { readRecord, recordText } from "#outputs/record/read-record.ts";
import type { FilledRecord, RecordEvent } from "#outputs/record/record.ts";
import { verifyRecord } from "#outputs/record/verify.ts";
import { contentHash } from "#workspace/hash.ts";
import { verify } from "#workspace/index.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import { COVER } from "../procedures.ts";
import { fillIn, planFor, recordFrom } from "./fill.ts";

const plan = planFor(COVER);
const whole = recordFrom(plan, fillIn(plan, { "1.6:1": "0.02", "1.6:record-1": "20" }));

const told = (record: FilledRecord): readonly string[] => verifyRecord(plan, record).findings.map((one) => one.message);

test("a record whose document or title was changed is not held against anything", () => {
  for (const [change, said, own] of [
    [{ document: "WI-9" }, "WI-9", "WI-1 · revision C"],
    [{ title: "Open the cover" }, "Open the cover", "Close the cover"],
  ] as const)
    expect(told({ ...whole, ...change })).toEqual([
      `It says that it is of “${said}”, and the checklist of these inputs is “${own}”: the record was changed. Ask for it as it was saved.`,
    ]);
});

test("a record of other inputs says with what it is to be verified", () => {
  const [message] = told({ ...whole, hash: "0".repeat(64) });
  expect(message).toContain("Verify it with the texts, tables, pictures and crib as they were then.");
});

test("the same entry many times over is one finding", () => {
  const again: RecordEvent = { kind: "tick", of: "start:1", at: whole.events.at(-1)?.at ?? "" };
  expect(told({ ...whole, events: [...whole.events, ...Array<RecordEvent>(40).fill(again)] })).toEqual([
    "Before the start: it was marked already. Likewise 39 more entries after it.",
  ]);
  expect(told({ ...whole, events: [...whole.events, again, again] })).toEqual([
    "Before the start: it was marked already. Likewise one more entry after it.",
  ]);
});

test("what the checklist does not have is named", () => {
  const change = (of: string, by: object): FilledRecord => ({
    ...whole,
    events: whole.events.map((event) =>
      "of" in event && event.of === of ? ({ ...event, ...by } as RecordEvent) : event,
    ),
  });
  expect(told(change("1.6:1", { unit: "N" }))[0]).toBe("Step 1.6: the checklist takes no reading in this unit there.");
  expect(told(change("1.1:1", { of: "9:1" }))[0]).toBe("9:1: the checklist has no such place.");
  expect(told(change("1.1:1", { kind: "judge", passed: true }))[0]).toBe(
    "Step 1.1: the checklist has nothing there for “judge”.",
  );
});

test("times with and without parts of a second are in order", () => {
  const [first, second, ...others] = whole.events;
  const events = [{ ...first, at: "2026-05-04T07:00:00Z" }, { ...second, at: "2026-05-04T07:00:00.500Z" }, ...others];
  expect(told({ ...whole, events: events as readonly RecordEvent[] })).toEqual([]);
});

test("a version that is no number is a part that is wrong", () => {
  expect(readRecord(recordText({ ...whole, version: "1" } as unknown as FilledRecord))).toEqual({
    ok: false,
    fault: { kind: "part", part: "version" },
  });
});

test("points and hyphens make nobody another person", () => {
  const one = { name: "A. Moran", badge: "47-11" };
  for (const name of ["A Moran", "a.moran", "A.-Moran"]) expect(isSamePerson(one, { name, badge: "" })).toBe(true);
  expect(isSamePerson(one, { name: "B. Okafor", badge: "4711" })).toBe(true);
  expect(isSamePerson(one, { name: "A. Morans", badge: "471" })).toBe(false);
  // What is nothing but such signs is still compared.
  expect(isSamePerson({ name: "…", badge: "" }, { name: "…", badge: "" })).toBe(true);
  expect(isSamePerson({ name: "…", badge: "" }, { name: "-", badge: "" })).toBe(false);
});

/** The same files, with the workspace opened at another folder. */
function workspaceAt(folder: string): Workspace {
  const [parts = "", procedure = ""] = COVER.split("procedure ");
  const texts = new Map([
    [`${folder}a/parts.sprag`, parts],
    [`${folder}work/cover.sprag`, `use "../a/parts.sprag"\nuse "z.sprag"\nprocedure ${procedure}`],
    [`${folder}work/z.sprag`, 'role Extra "extra"\n'],
  ]);
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
}

test("the content hash is the same from whichever folder the workspace is opened, and another for another text", () => {
  const hash = contentHash(workspaceAt(""), "work/cover.sprag");
  expect(hash).toMatch(/^[0-9a-f]{64}$/);
  for (const folder of ["shop/", "shop/b/", "work/"])
    expect(contentHash(workspaceAt(folder), `${folder}work/cover.sprag`)).toBe(hash);
  expect(contentHash(workspaceAt(""), "a/parts.sprag")).not.toBe(hash);
});

test("a record from a checklist in another language is of this procedure all the same", () => {
  const path = "work/cover.sprag";
  const html = exportText(workspaceAt(""), {
    path,
    as: "checklist",
    format: "html",
    units: "both",
    repeats: "compact",
    language: "de",
    draft: true,
  });
  expect(html).toContain("WI-1 · Revision C");
  const record = { ...whole, hash: contentHash(workspaceAt(""), path), document: "WI-1 · Revision C" };
  const result = verify(workspaceAt("shop/"), { path: `shop/${path}`, record: recordText(record) });
  expect(result).toMatchObject({ kind: "done", report: { findings: [], summary: { complete: true } } });
});
