// A record against its plan: what is well gives nothing, each thing that can be wrong its own finding, and nothing an exception.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readRecord, recordText } from "#outputs/record/read-record.ts";
import type { FilledRecord, RecordEvent } from "#outputs/record/record.ts";
import { verifyRecord } from "#outputs/record/verify.ts";
import { around, COVER } from "../procedures.ts";
import { doing, FITTER, fillIn, planFor, recordFrom } from "./fill.ts";

const plan = planFor(COVER);
const GIVEN = { "1.6:1": "0.02", "1.6:record-1": "20" };
const whole = recordFrom(plan, fillIn(plan, GIVEN));

function codes(record: FilledRecord, of = plan): readonly string[] {
  return verifyRecord(of, record).findings.map(({ code }) => code);
}

/** The same with another event in place of one; null leaves it out. */
function changed(
  find: (event: RecordEvent) => boolean,
  change: (event: RecordEvent) => RecordEvent | null,
): FilledRecord {
  const at = whole.events.findIndex(find);
  expect(at).toBeGreaterThanOrEqual(0);
  return { ...whole, events: whole.events.flatMap((event, nth) => (nth === at ? (change(event) ?? []) : [event])) };
}

const isAt = (id: string) => (event: RecordEvent) => "of" in event && event.of === id;

test("a record that was filled in as it should be is well", () => {
  expect(verifyRecord(plan, whole)).toMatchObject({ findings: [], filling: { position: { isComplete: true } } });
});

describe("each thing that can be wrong", () => {
  test("other inputs, and then nothing else is compared", () => {
    expect(codes({ ...whole, hash: "0", events: [] })).toEqual(["record.other-inputs"]);
    expect(codes({ ...whole, procedure: "Other" })).toEqual(["record.other-inputs"]);
  });

  test("other options", () => {
    const [finding] = verifyRecord(plan, { ...whole, options: { Extent: "Full" } }).findings;
    expect(finding).toMatchObject({ code: "record.options", message: "Extent is Full in the record and open here." });
  });

  test("an end that is missing", () => {
    const [finding] = verifyRecord(plan, { ...whole, events: whole.events.slice(0, -2) }).findings;
    expect(finding).toMatchObject({ code: "record.incomplete", step: "1.6" });
    expect(finding?.message).toContain("the first in step 1.6");
  });

  test("a step that is missing in the middle: all behind it is out of order", () => {
    const { findings } = verifyRecord(
      plan,
      changed(isAt("1.2:1"), () => null),
    );
    // One cause is told once, however many entries wait for it.
    expect(findings).toMatchObject([
      { code: "record.order", message: "Step 1.3: step 1.2 came first. Likewise 16 more entries after it.", event: 3 },
      { code: "record.incomplete", step: "1.2" },
    ]);
  });

  test("a value out of limits that is marked good", () => {
    const record = changed(isAt("1.6:1"), (event) => ({ ...event, text: "0.5" }) as RecordEvent);
    const [finding, ...more] = verifyRecord(plan, record).findings;
    expect(finding).toMatchObject({
      code: "record.limits",
      message: "Step 1.6: the record says within limits, and it is not.",
      step: "1.6",
    });
    // What it really came to is a failed check, so what follows is out of order.
    expect(more.map(({ code }) => code)).toContain("record.order");
  });

  test("a value within limits that is marked bad", () => {
    const record = changed(isAt("1.6:record-1"), (event) => ({ ...event, passed: false }) as RecordEvent);
    expect(codes(record)).toEqual(["record.limits"]);
  });

  test("a value out of limits, truly said, with nothing after it", () => {
    const gap = planFor(around('step { record "gap" 0.2 .. 1.2 mm }'));
    const filling = doing(gap, [{ kind: "read", of: "1:record-1", text: "1.5", unit: "mm", passed: false }]);
    expect(codes(recordFrom(gap, filling), gap)).toEqual(["record.limits", "record.incomplete"]);
    const better = doing(gap, [{ kind: "read", of: "1:record-1", text: "1.1", unit: "mm", passed: true }], filling);
    expect(codes(recordFrom(gap, better), gap)).toEqual([]);
  });

  test("a hold point that was signed by who did the work", () => {
    const record = changed(isAt("1.5:hold"), (event) => ({ ...event, name: "FITTER one" }) as RecordEvent);
    expect(verifyRecord(plan, record).findings[0]).toMatchObject({ code: "record.person", step: "1.5" });
  });

  test("a hold point that was left out", () => {
    expect(codes(changed(isAt("1.5:hold"), () => null))[0]).toBe("record.order");
  });

  test("a place that does not exist, a choice or unit that is none", () => {
    expect(codes(changed(isAt("1.1:1"), (event) => ({ ...event, of: "__proto__" }) as RecordEvent))[0]).toBe(
      "record.unknown",
    );
    expect(codes(changed(isAt("1.6:1"), (event) => ({ ...event, unit: "N" }) as RecordEvent))[0]).toBe(
      "record.unknown",
    );
  });

  test("times that run backwards", () => {
    const record = changed(isAt("1.3:1"), (event) => ({ ...event, at: "2020-01-01T00:00:00Z" }));
    expect(codes(record)).toEqual(["record.time"]);
  });

  test("work that was stopped", () => {
    const stop = planFor(around('step { check "ok" if it fails { stop "Call the foreman." } }'));
    const { findings } = verifyRecord(stop, recordFrom(stop, fillIn(stop, { "1:1": false })));
    expect(findings).toMatchObject([{ code: "record.stopped", message: "The work was stopped: Call the foreman." }]);
  });

  test("what was taken back and done again is well", () => {
    const undone = doing(plan, [FITTER, { kind: "tick", of: "start:1" }, { kind: "undo" }]);
    expect(codes(recordFrom(plan, fillIn(plan, GIVEN, undone)))).toEqual([]);
  });
});

describe("the file", () => {
  test("comes back as it was written", () => {
    expect(readRecord(recordText(whole))).toEqual({ ok: true, record: whole });
    expect(readRecord(recordText({ ...whole, events: [] }))).toMatchObject({ ok: true });
  });

  test.each<[string, string, object]>([
    ["no JSON", "{", { kind: "no json" }],
    ["another thing", "[]", { kind: "no record" }],
    ["null", "null", { kind: "no record" }],
    ["another version", JSON.stringify({ ...whole, version: 2 }), { kind: "other version", version: "2" }],
    ["no hash", JSON.stringify({ ...whole, hash: undefined }), { kind: "part", part: "hash" }],
    ["events that are none", JSON.stringify({ ...whole, events: {} }), { kind: "part", part: "events" }],
    ["an option that is none", JSON.stringify({ ...whole, options: { A: 1 } }), { kind: "part", part: "options.A" }],
    [
      "an event without a time",
      JSON.stringify({ ...whole, events: [{ kind: "undo" }] }),
      { kind: "part", part: "events[0].at" },
    ],
    [
      "a day that is none",
      JSON.stringify({ ...whole, events: [{ kind: "undo", at: "2026-13-45T00:00:00Z" }] }),
      { kind: "part", part: "events[0].at" },
    ],
    [
      "an event of another kind",
      JSON.stringify({ ...whole, events: [{ kind: "toString", at: "" }] }),
      { kind: "part", part: "events[0].kind" },
    ],
    ["an event that is none", JSON.stringify({ ...whole, events: [7] }), { kind: "part", part: "events[0]" }],
    ["a huge file", `"${"x".repeat(9_000_000)}"`, { kind: "too large" }],
    [
      "too many events",
      JSON.stringify({ ...whole, events: Array(50_001).fill({ kind: "undo", at: "2026-05-04T08:00:00Z" }) }),
      { kind: "too large" },
    ],
  ])("%s is refused", (_title, text, fault) => {
    expect(readRecord(text)).toEqual({ ok: false, fault });
  });

  test("whatever stands in it, there is an answer", () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(readRecord(text).ok).toBe(false);
      }),
    );
    const kinds = ["name", "tick", "place", "read", "judge", "answer", "choose", "sign", "start", "undo"] as const;
    const ids = plan.entries.map(({ id }) => id);
    const event = fc.record({
      kind: fc.constantFrom(...kinds),
      at: fc.constant("2026-05-04T08:00:00Z"),
      of: fc.oneof(fc.constantFrom(...ids), fc.string()),
      role: fc.constantFrom("Fitter", "Inspector", "constructor"),
      name: fc.string(),
      badge: fc.string(),
      text: fc.oneof(fc.string(), fc.constantFrom("0.02", "1/0", "9".repeat(80))),
      unit: fc.constantFrom("mm", "in", ""),
      passed: fc.boolean(),
      holds: fc.boolean(),
      choice: fc.string(),
    });
    fc.assert(
      fc.property(fc.array(event, { maxLength: 30 }), (events) => {
        const read = readRecord(JSON.stringify({ ...whole, events }));
        expect(read.ok).toBe(true);
        if (read.ok) expect(verifyRecord(plan, read.record).findings.length).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});
