// Filling in without a page: order, hold points, readings, checks that fail, branches, undo.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isSamePerson } from "#outputs/record/person.ts";
import type { Plan } from "#outputs/record/plan.ts";
import { emptyFilling, type Filling } from "#outputs/record/reduce.ts";
import { around, COVER } from "../procedures.ts";
import { type Act, doing, FITTER, fillIn, planFor, tried } from "./fill.ts";

const tick = (of: string): Act => ({ kind: "tick", of });
const next = ({ position }: Filling): readonly string[] => position.next;
const read = (of: string, text: string, passed: boolean | null, unit = "mm"): Act => ({
  kind: "read",
  of,
  text,
  unit,
  passed,
});

describe("order", () => {
  const plan = planFor(COVER);

  test("what comes next is one after the other, to the end", () => {
    const filling = fillIn(plan, { "1.6:1": "0.02", "1.6:record-1": "20" });
    expect(filling.position.isComplete).toBe(true);
    // The way after a failed check was never needed.
    expect([...filling.position.leftOut]).toEqual(["1.6:2"]);
  });

  test("something else is refused, and the refusal says what comes first", () => {
    const filling = doing(plan, [FITTER, tick("start:1")]);
    expect(tried(plan, filling, tick("1.2:1"))).toEqual({ why: "not next", next: ["1.1:1"] });
    expect(tried(plan, filling, tick("start:1"))).toEqual({ why: "done" });
    expect(tried(plan, filling, tick("9.9:1"))).toEqual({ why: "unknown" });
    expect(tried(plan, filling, { kind: "judge", of: "1.1:1", passed: true })).toEqual({ why: "wrong kind" });
  });

  test("nothing is ticked before somebody is named", () => {
    expect(tried(plan, emptyFilling(plan), tick("start:1"))).toEqual({ why: "no name" });
    expect(tried(plan, emptyFilling(plan), { ...FITTER, name: "  " } as Act)).toEqual({ why: "no name" });
    expect(tried(plan, emptyFilling(plan), { ...FITTER, role: "Cook" } as Act)).toEqual({ why: "unknown role" });
  });

  test("in any order, each one complete before the next", () => {
    const any = planFor(around("in any order { step { inspect Base inspect Cover } step inspect Shim }"));
    expect(next(emptyFilling(any))).toEqual(["1:1", "2:1"]);
    const begun = doing(any, [tick("1:1")]);
    expect(next(begun)).toEqual(["1:2"]);
    expect(tried(any, begun, tick("2:1"))).toMatchObject({ why: "not next" });
    expect(next(doing(any, [tick("2:1")]))).toEqual(["1:1"]);
  });

  test("a round goes screw by screw, or all at once", () => {
    const work = planFor(around("step tighten Screw[all] in cross pattern to 5 N·m, 10 N·m with Wrench"));
    const place: Act = { kind: "place", of: "1:1#1" };
    const five = doing(work, [place, place, place, place, place]);
    expect(next(five)).toEqual(["1:1#1"]);
    expect(next(doing(work, [place], five))).toEqual(["1:1#2"]);
    expect(next(doing(work, [tick("1:1#1")]))).toEqual(["1:1#2"]);
  });
});

describe("hold points", () => {
  const plan = planFor(COVER);
  const atHold = fillIn(
    plan,
    {},
    doing(plan, [FITTER]),
    plan.entries.findIndex(({ id }) => id === "1.5:sign-1"),
  );
  const signed = doing(plan, [{ kind: "sign", of: "1.5:sign-1", name: "A. Moran", badge: "11" }], atHold);
  const hold = (name: string, badge: string): Act => ({ kind: "sign", of: "1.5:hold", name, badge });

  test("nothing behind opens before it is signed", () => {
    expect(next(signed)).toEqual(["1.5:hold"]);
    expect(tried(plan, signed, read("1.6:1", "0.02", true))).toMatchObject({ why: "not next" });
  });

  test.each([
    ["the same name", "A. Moran", ""],
    ["the same name in another spelling", " a.MORAN ", "12"],
    ["the same badge", "B. Other", "11"],
    ["the same badge in another spelling", "B. Other", " 1 1 "],
  ])("%s is refused", (_title, name, badge) => {
    expect(tried(plan, signed, hold(name, badge))).toEqual({ why: "same person", role: "Fitter" });
  });

  test("somebody else signs, and may do no work from there on", () => {
    const held = doing(plan, [hold("B. Okafor", "12")], signed);
    expect(next(held)).toEqual(["1.6:1"]);
    expect(tried(plan, held, { ...FITTER, name: "b. okafor" } as Act)).toEqual({
      why: "same person",
      role: "Inspector",
    });
    expect(tried(plan, signed, hold("", ""))).toEqual({ why: "no name" });
  });

  test("somebody who once did the work does not sign, though another has taken over", () => {
    const other = doing(plan, [{ kind: "name", role: "Fitter", name: "C. Third", badge: "" }], signed);
    expect(tried(plan, other, hold("A. Moran", ""))).toMatchObject({ why: "same person" });
  });

  test("where only the inspector has a role, who does the work is named all the same", () => {
    const inspected = planFor(around("step { inspect Base hold for Fitter }"));
    expect(tried(inspected, emptyFilling(inspected), tick("1:1"))).toEqual({ why: "no name" });
    const done = doing(inspected, [{ kind: "name", role: "", name: "A. Moran", badge: "" }, tick("1:1")]);
    const own: Act = { kind: "sign", of: "1:hold", name: "A. MORAN", badge: "" };
    expect(tried(inspected, done, own)).toEqual({ why: "same person", role: "" });
    expect(doing(inspected, [{ ...own, name: "B. Okafor" } as Act], done).position.isComplete).toBe(true);
  });

  test("people are one however they are spelt, and only then", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z. ]{1,12}$/), (name) => {
        const person = { name, badge: "" };
        const isNamed = name.trim() !== "";
        expect(isSamePerson(person, { name: ` ${name.toUpperCase()}\u00a0`, badge: "7" })).toBe(isNamed);
        expect(isSamePerson(person, { name: `${name}x`, badge: "" })).toBe(false);
      }),
    );
    expect(isSamePerson({ name: "", badge: "" }, { name: "", badge: "" })).toBe(false);
  });
});

describe("readings", () => {
  const plan = planFor(around('step { record "gap" 0.2 .. 1.2 mm } step "Go on."'));
  const of = "1:record-1";

  test.each([
    ["0.2", "mm", true],
    ["0,2", "mm", true],
    ["1.2", "mm", true],
    ["1.2001", "mm", false],
    ["0.19", "mm", false],
    ["-0.5", "mm", false],
    ["−0.5", "mm", false],
    // 3/100 in is 0.762 mm: exact, 1 in = 25.4 mm.
    ["3/100", "in", true],
    ["0.0472", "in", true],
    ["0.0473", "in", false],
    ["0.03 in", "mm", true],
    ["0.8 mm", "in", true],
  ])("%s %s: %s", (text, unit, passed) => {
    const filling = doing(plan, [read(of, text, passed, unit)]);
    expect(filling.marks.get(of)?.passed).toBe(passed);
    // Out of limits with no work to mend it: the work does not go on.
    expect(next(filling)).toEqual([passed ? "2:0" : of]);
  });

  test("another result than the value gives is refused", () => {
    expect(tried(plan, emptyFilling(plan), read(of, "5", true))).toEqual({ why: "other result", passed: false });
  });

  test.each([
    ["", "no text"],
    ["about 1", "no number"],
    ["1.2.3", "no number"],
    ["1e3", "no number"],
  ])("%j is refused", (text, why) => {
    expect(tried(plan, emptyFilling(plan), read(of, text, null))).toEqual({ why });
  });

  test("a unit that the place does not have is refused", () => {
    expect(tried(plan, emptyFilling(plan), read(of, "1", true, "N"))).toEqual({ why: "unknown unit" });
  });

  test("what has no limits takes any text", () => {
    const free = planFor(around('step { record "serial number" }'));
    const filling = doing(free, [read("1:record-1", " SN 7-b ", null, "")]);
    expect(filling.marks.get("1:record-1")).toMatchObject({ text: "SN 7-b", passed: null });
  });
});

describe("values from readings", () => {
  const measured = (lines: string): Plan =>
    planFor(around(`step { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record }\n${lines}`));

  test("limits follow the reading", () => {
    const plan = measured('step { check "rest" expect at most Gap - 0.1 mm record }');
    const filling = doing(plan, [read("1:1", "0.5", true)]);
    expect(doing(plan, [read("2:1", "0.4", true)], filling).marks.get("2:1")?.passed).toBe(true);
    expect(tried(plan, filling, read("2:1", "0.41", true))).toEqual({ why: "other result", passed: false });
  });

  test("a branch on a reading needs no answer", () => {
    const plan = measured('when Gap at most 0.6 mm { step "Thin." } otherwise { step "Thick." } step "End."');
    expect(next(doing(plan, [read("1:1", "0.6", true)]))).toEqual(["2:0"]);
    const thick = doing(plan, [read("1:1", "0.7", true)]);
    expect(next(thick)).toEqual(["3:0"]);
    expect(thick.position.leftOut).toEqual(new Set(["2:0"]));
  });
});

describe("checks that fail", () => {
  const text = around(`step One { inspect Base }
    step Two { inspect Cover check "All is well" if it fails { inspect Shim return to One } }
    step inspect Shim`);
  const plan = planFor(text);
  const failed = doing(plan, [tick("1:1"), tick("2:1"), { kind: "judge", of: "2:2", passed: false }]);

  test("the work to mend it opens, then all from the step on is open again", () => {
    expect(next(failed)).toEqual(["2:3"]);
    const again = doing(plan, [tick("2:3")], failed);
    expect(next(again)).toEqual(["1:1"]);
    expect(again.again).toEqual(["1:1", "2:1", "2:2", "2:3"]);
    expect(again.marks.size).toBe(0);
    // What was done before stays in the events.
    expect(again.events).toHaveLength(4);
    const passed = doing(plan, [tick("1:1"), tick("2:1"), { kind: "judge", of: "2:2", passed: true }], again);
    expect(next(passed)).toEqual(["3:1"]);
  });

  test("going back can be undone", () => {
    const undone = doing(plan, [tick("2:3"), { kind: "undo" }], failed);
    expect(next(undone)).toEqual(["2:3"]);
    expect([...undone.marks.keys()]).toEqual(["1:1", "2:1", "2:2"]);
  });

  test("a reading out of limits opens it too", () => {
    const measured = planFor(
      around(
        'step Two { check "gap" with Depth expect at most 1 mm record if it fails { stop "Call the foreman." } } step "End."',
      ),
    );
    const stopped = doing(measured, [read("1:1", "1.5", false)]);
    expect(stopped.position.stopped).toBe("Call the foreman.");
    expect(tried(measured, stopped, tick("2:0"))).toEqual({ why: "stopped" });
    expect(next(doing(measured, [read("1:1", "1", true)]))).toEqual(["2:0"]);
  });

  test("a way forward leaves out what lies between", () => {
    const forward = planFor(around('when Extent is Full { go to Last } step "Between." step Last "Last."'));
    const full = doing(forward, [{ kind: "choose", of: "option:Extent", choice: "Full" }]);
    expect(next(full)).toEqual(["2:0"]);
    expect(full.position.leftOut).toEqual(new Set(["1:0"]));
  });

  test("in a repeat the pass goes back to its own", () => {
    const passes = planFor(
      around('repeat n from 1 to 2 { step A { inspect Screw[n] } step { check "ok" if it fails { return to A } } }'),
    );
    const second = fillIn(passes, {}, emptyFilling(passes), 3);
    expect(next(second)).toEqual(["2:1@n=2"]);
    const back = doing(passes, [{ kind: "judge", of: "2:1@n=2", passed: false }], second);
    expect(back.again).toEqual(["1:1@n=2", "2:1@n=2"]);
  });
});

describe("options and answers", () => {
  const plan = planFor(
    around('when Extent is Full { step "Full." } otherwise { step "Part." } when Base is clean { step "Clean." }'),
  );

  test("an option that is left open is decided first", () => {
    expect(next(emptyFilling(plan))).toEqual(["option:Extent"]);
    expect(tried(plan, emptyFilling(plan), { kind: "choose", of: "option:Extent", choice: "Half" })).toEqual({
      why: "unknown choice",
    });
    expect(next(doing(plan, [{ kind: "choose", of: "option:Extent", choice: "Reseal" }]))).toEqual(["2:0"]);
  });

  test("what no record tells, a person says", () => {
    const asked = doing(plan, [{ kind: "choose", of: "option:Extent", choice: "Full" }, tick("1:0")]);
    const [ask = ""] = next(asked);
    expect(ask).toBe("when-2.1");
    expect(next(doing(plan, [{ kind: "answer", of: ask, holds: true }], asked))).toEqual(["3:0"]);
    expect(doing(plan, [{ kind: "answer", of: ask, holds: false }], asked).position.isComplete).toBe(true);
  });
});

describe("undo", () => {
  test("takes back one event after the other, to the beginning", () => {
    const plan = planFor(COVER);
    let filling = fillIn(plan, { "1.6:1": "0.02", "1.6:record-1": "20" });
    const before = filling.events.length;
    for (let turn = 0; turn < before; turn++) filling = doing(plan, [{ kind: "undo" }], filling);
    expect(filling.marks.size).toBe(0);
    expect(next(filling)).toEqual(next(emptyFilling(plan)));
    expect(filling.events).toHaveLength(2 * before);
    expect(tried(plan, filling, { kind: "undo" })).toEqual({ why: "nothing to undo" });
  });

  test("after any acts and an undo, all holds as before the last of them", () => {
    const plan = planFor(COVER);
    const acts: readonly Act[] = [
      FITTER,
      ...plan.entries.map(({ id }) => tick(id)),
      { kind: "place", of: "1.5:1#1" },
      { kind: "sign", of: "1.5:sign-1", name: "A. Moran", badge: "" },
      { kind: "sign", of: "1.5:hold", name: "B. Okafor", badge: "" },
      read("1.6:1", "0.02", true),
      read("1.6:1", "0.2", false),
    ];
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: acts.length - 1 }), { maxLength: 60 }), (order) => {
        let filling = doing(plan, [FITTER]);
        for (const at of order) {
          const outcome = tried(plan, filling, acts[at] as Act);
          if ("why" in outcome) continue;
          const undone = doing(plan, [{ kind: "undo" }], outcome);
          expect([...undone.marks]).toEqual([...filling.marks]);
          expect(undone.position).toEqual(filling.position);
          filling = outcome;
        }
      }),
      { numRuns: 40 },
    );
  });
});
