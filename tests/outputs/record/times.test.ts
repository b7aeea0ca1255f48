// Times of a record: which timers and deadlines a procedure gives, when a timer may be started, what `within` comes to by the times of
// the entries, on the page and when the record is verified.
import { describe, expect, test } from "vitest";
import type { FilledRecord, RecordEvent } from "#outputs/record/record.ts";
import { emptyFilling, type Filling, reduce } from "#outputs/record/reduce.ts";
import { durationText, keptOf } from "#outputs/record/times.ts";
import { verifyRecord } from "#outputs/record/verify.ts";
import { around } from "../procedures.ts";
import { type Act, doing, planFor, recordFrom, tried } from "./fill.ts";

const tick = (of: string): Act => ({ kind: "tick", of });
const start = (of: string): Act => ({ kind: "start", of });

const OVEN = 'equipment Oven "oven" { heats to 150 °C }';
const text = around(
  `step Heat { heat Base to 110 °C with Oven  takes 6 .. 8 min  record "bearing" 100 .. 120 °C }
   step Fit { install Cover  within 60 s after Heat  takes 30 s  record "room" 10 .. 30 °C }
   step { apply 2 ml of Oil to Cover  cure 20 min  wait 90 s }`,
  OVEN,
);
const plan = planFor(text);

/** A record whose events come at these seconds. */
function timed(events: readonly (readonly [number, Act])[]): FilledRecord {
  const at = (second: number): string => new Date(Date.UTC(2026, 4, 4, 8, 0, 0, second * 1000)).toISOString();
  const filled = events.map(([second, act]) => ({ ...act, at: at(second) }) as RecordEvent);
  return { ...recordFrom(plan, emptyFilling(plan)), events: filled };
}

function filled(record: FilledRecord): Filling {
  return record.events.reduce((filling, event) => {
    const outcome = reduce(plan, filling, event);
    if (!outcome.ok) throw new Error(`${JSON.stringify(event)}: ${outcome.refusal.why}`);
    return outcome.filling;
  }, emptyFilling(plan));
}

const read = (of: string, value: string): Act => ({ kind: "read", of, text: value, unit: "°C", passed: true });
const HEATED = [
  [0, tick("1:1")],
  [10, read("1:record-1", "110")],
] as const;

describe("which times there are", () => {
  test("of what a step takes, of a wait and of a coat that cures; a step that waits has no other", () => {
    expect(plan.timers.map(({ id, of, entries }) => [id, of, entries])).toEqual([
      ["1:takes", "takes", ["1:1", "1:record-1"]],
      ["2:takes", "takes", ["2:1", "2:record-1"]],
      ["3:1:cure", "cure", ["3:1"]],
      ["3:2:wait", "wait", ["3:2"]],
    ]);
    expect(plan.timers.map(({ limits }) => [limits.low, limits.high])).toEqual([
      ["360", "480"],
      ["30", "30"],
      ["1200", "1200"],
      ["90", "90"],
    ]);
  });

  test("within counts from the last entry of the one to the end of the other's work, and not of its records", () => {
    expect(plan.deadlines).toEqual([
      { step: "2", after: "1", afterEntries: ["1:1", "1:record-1"], entries: ["2:1"], most: "60" },
    ]);
  });

  test("in a repeat each pass has its own", () => {
    const twice = planFor(
      around(
        "repeat n in 1, 2 { step A { inspect Screw[n] } step { inspect Foot[n] within 1 min after A takes 10 s } }",
      ),
    );
    expect(twice.timers.map(({ id }) => id)).toEqual(["2:takes@n=1", "2:takes@n=2"]);
    expect(twice.deadlines.map(({ afterEntries, entries }) => [afterEntries, entries])).toEqual([
      [["1:1@n=1"], ["2:1@n=1"]],
      [["1:1@n=2"], ["2:1@n=2"]],
    ]);
  });

  test("within may count from a task", () => {
    const task = planFor(
      around('task Warm "Warm" { step "Heat." step "Look." } step "Fit." { within 1 min after Warm }'),
    );
    expect(task.deadlines).toMatchObject([
      { step: "2", after: "1", afterEntries: ["1.1:0", "1.2:0"], entries: ["2:0"] },
    ]);
  });
});

describe("a timer", () => {
  test("is started while its step is in hand, again and again, and undone", () => {
    expect(tried(plan, emptyFilling(plan), start("2:takes"))).toMatchObject({ why: "not next", next: ["1:1"] });
    expect(tried(plan, emptyFilling(plan), start("9:takes"))).toEqual({ why: "unknown" });
    const running = filled(
      timed([
        [0, start("1:takes")],
        [5, start("1:takes")],
      ]),
    );
    expect([...running.started]).toEqual([["1:takes", "2026-05-04T08:00:05.000Z"]]);
    expect([...doing(plan, [{ kind: "undo" }], running).started.values()]).toEqual(["2026-05-04T08:00:00.000Z"]);
    const done = filled(timed(HEATED));
    expect(tried(plan, done, start("1:takes"))).toEqual({ why: "done" });
  });

  test("of a coat is started once it is on too", () => {
    const coated = doing(plan, [
      tick("1:1"),
      read("1:record-1", "110"),
      tick("2:1"),
      read("2:record-1", "20"),
      tick("3:1"),
    ]);
    expect(doing(plan, [start("3:1:cure")], coated).started.has("3:1:cure")).toBe(true);
  });

  test("that belongs to work which is to be done again is forgotten", () => {
    const again = planFor(
      around('step A { inspect Base takes 1 min } step { check "ok" if it fails { return to A } }'),
    );
    const failed = doing(again, [start("1:takes"), tick("1:1"), { kind: "judge", of: "2:1", passed: false }]);
    expect([failed.position.next, failed.started.size]).toEqual([["1:1"], 0]);
  });
});

describe("within", () => {
  const [deadline] = plan.deadlines;
  const kept = (record: FilledRecord) => deadline && keptOf(plan, filled(record), deadline);

  test("counts from the last entry of the step it names, and ends with the work", () => {
    expect(kept(timed(HEATED.slice(0, 1)))).toBeNull();
    expect(kept(timed(HEATED))).toEqual({ from: "2026-05-04T08:00:10.000Z", most: 60, taken: null });
    expect(kept(timed([...HEATED, [52.5, tick("2:1")]]))).toMatchObject({ taken: 42.5 });
  });

  test("a record that kept it is well, to the second; one that did not is told", () => {
    const codes = (second: number) =>
      verifyRecord(plan, timed([...HEATED, [second, tick("2:1")]])).findings.filter(
        ({ code }) => code === "record.late",
      );
    expect(codes(70)).toEqual([]);
    expect(codes(70.4)).toEqual([
      {
        code: "record.late",
        message: "Step 2: it was done 61 s after the end of 1, and at most 60 s are allowed.",
        event: null,
        step: "2",
      },
    ]);
  });

  test("work that was done again counts by its last time", () => {
    const again = planFor(
      around(
        'step A { inspect Base } step { inspect Cover within 1 min after A } step { check "ok" if it fails { return to A } }',
      ),
    );
    const at = (minute: number): string => `2026-05-04T08:0${minute}:00Z`;
    const first: RecordEvent[] = [
      { kind: "tick", of: "1:1", at: at(0) },
      { kind: "tick", of: "2:1", at: at(2) },
    ];
    const late = { ...recordFrom(again, emptyFilling(again)), events: first };
    expect(verifyRecord(again, late).findings.map(({ code }) => code)).toContain("record.late");
    const mended: RecordEvent[] = [
      { kind: "judge", of: "3:1", passed: false, at: at(3) },
      { kind: "tick", of: "1:1", at: at(4) },
      { kind: "tick", of: "2:1", at: at(5) },
      { kind: "judge", of: "3:1", passed: true, at: at(6) },
    ];
    expect(verifyRecord(again, { ...late, events: [...first, ...mended] }).findings).toEqual([]);
  });
});

test("a wait that was marked before its timer had run down is told; without a timer nothing is known", () => {
  const before: readonly (readonly [number, Act])[] = [
    ...HEATED,
    [20, tick("2:1")],
    [21, read("2:record-1", "20")],
    [22, tick("3:1")],
  ];
  const codes = (...events: readonly (readonly [number, Act])[]) =>
    verifyRecord(plan, timed([...before, ...events])).findings.map(({ code, message }) => `${code} ${message}`);
  expect(codes([30, start("3:2:wait")], [120, tick("3:2")])).toEqual([]);
  expect(codes([30, tick("3:2")])).toEqual([]);
  expect(codes([30, start("3:2:wait")], [100, tick("3:2")])).toEqual([
    "record.early Step 3: it was marked 70 s after its timer was started, and 90 s are to be waited.",
  ]);
});

test.each([
  [0, "0 s"],
  [59.9, "59 s"],
  [60, "60 s"],
  [119, "119 s"],
  [120, "2 min"],
  [245, "4 min 05 s"],
  [3600, "1 h 00 min"],
  [4803, "1 h 20 min 03 s"],
  [-3, "0 s"],
])("%d seconds read as %s", (seconds, shown) => {
  expect(durationText(seconds)).toBe(shown);
});
