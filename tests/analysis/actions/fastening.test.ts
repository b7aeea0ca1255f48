// Tightening and loosening: what grip it leaves, what must be in, locks, fasteners of single use.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `part Flange "flange"
part Nut "nut" { secures Flange }
part Bolt "bolt" { secures Flange  single use }
part Key "key"
part Tab "tab washer" { locks Key }
`;
const procedure = (steps: string): string => `${PARTS}procedure Work "Work" { ${steps} }`;
const work = (steps: string): readonly string[] => found(procedure(steps));
const whole = (steps: string): readonly object[] => wholeFacts(procedure(steps));

/** What is done, and what is found then. */
type Case = [steps: string, ...told: string[]];
/** The nut is in, and then. */
const NUT = "step install Flange, Nut";
const BOLT = "step install Flange, Bolt";

describe("the grip that is left", () => {
  const TIGHT = "needs Nut is tightened";
  const LOOSE = "needs Nut is loose";
  test.each<Case>([
    [`${NUT} step A { ${LOOSE} do "Look." }`],
    [`${NUT} step tighten Nut step A { ${TIGHT} do "Look." }`],
    [`${NUT} step tighten Nut step A { ${LOOSE} do "Look." }`, "order.unmet-need: Nut is loose"],
    [`${NUT} step tighten Nut to 20 N·m step A { ${TIGHT} do "Look." }`],
    [`${NUT} step tighten Nut by hand step A { ${LOOSE} do "Look." }`],
    [`${NUT} step tighten Nut by hand step A { ${TIGHT} do "Look." }`, "order.unmet-need: Nut is tightened"],
    [`${NUT} step tighten Nut by hand to 2 N·m step A { ${TIGHT} do "Look." }`],
    [`${NUT} step tighten Nut to seat step A { ${TIGHT} do "Look." } step loosen Nut`],
    [`${NUT} step tighten Nut by hand to seat step A { ${TIGHT} do "Look." } step loosen Nut`],
    [`${NUT} step tighten Nut step loosen Nut step A { ${LOOSE} do "Look." }`],
    [`${NUT} step tighten Nut step loosen Nut by 90° step A { ${TIGHT} do "Look." }`],
    [`begin with Nut is installed step A { ${LOOSE} do "Look." }`],
    [`begin with Nut is installed step A { ${TIGHT} do "Look." }`, "order.unmet-need: Nut is tightened"],
    [`step A { ${LOOSE} do "Look." }`, "order.unmet-need: Nut is loose"],
    [`${NUT} step tighten Nut step remove Nut step A { ${TIGHT} do "Look." }`, "order.unmet-need: Nut is tightened"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test.each<Case>([
    [`${NUT} step tighten Nut to seat`, "order.left-seated: tighten Nut"],
    [`${NUT} step tighten Nut by hand to seat`, "order.left-seated: tighten Nut"],
    [`${NUT} step tighten Nut to seat step tighten Nut`],
    [`${NUT} step tighten Nut to seat step loosen Nut by 30°`],
    [`${NUT} step tighten Nut by hand`],
  ])("only seated: %s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
});

describe("what is not in", () => {
  test.each<Case>([
    [`${NUT} step tighten Nut`],
    ["step tighten Nut", "order.not-installed: tighten Nut", "order.not-installed: tighten Nut"],
    ["step install Nut step tighten Nut", "order.not-installed: tighten Nut"],
    ["step install Flange step tighten Nut", "order.not-installed: tighten Nut"],
    // To loosen it, what it secures need not be in.
    ["step loosen Nut", "order.not-installed: loosen Nut"],
    ["begin with Nut is tightened step loosen Nut"],
    // Tightened though it is out: it is out still.
    [
      "step install Flange step tighten Nut step loosen Nut",
      "order.not-installed: tighten Nut",
      "order.not-installed: loosen Nut",
    ],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says which part, what was done and since when it is out", () => {
    expect(whole(`${NUT} step remove Nut step remove Flange step tighten Nut`)).toEqual([
      {
        kind: "not installed",
        part: "Nut",
        verb: "tighten",
        by: null,
        span: "tighten Nut",
        since: { step: "2", span: "remove Nut" },
      },
      {
        kind: "not installed",
        part: "Flange",
        verb: "tighten",
        by: "Nut",
        span: "tighten Nut",
        since: { step: "3", span: "remove Flange" },
      },
    ]);
  });
});

describe("what is not tightened", () => {
  test.each<Case>([
    [`${NUT} step tighten Nut step loosen Nut`],
    [`${NUT} step loosen Nut`, "order.not-tightened: loosen Nut"],
    [`${NUT} step loosen Nut by 90°`, "order.not-tightened: loosen Nut"],
    [`${NUT} step loosen Nut by 90° step loosen Nut`, "order.not-tightened: loosen Nut"],
    [`${NUT} step tighten Nut step loosen Nut step loosen Nut`, "order.not-tightened: loosen Nut"],
    [`${NUT} step tighten Nut step loosen Nut by 90° step loosen Nut`],
    [`${NUT} step tighten Nut by hand step loosen Nut`, "order.not-tightened: loosen Nut"],
    [`${NUT} step tighten Nut to seat step loosen Nut`],
    ["begin with Flange is installed, Nut is installed step loosen Nut"],
    ["begin with Flange is installed, Nut is loose step loosen Nut", "order.not-tightened: loosen Nut"],
    ["begin with Flange is installed, Nut is tightened step loosen Nut"],
    // On a part that lies on the bench it is in as well.
    ["step install Nut on Flange step loosen Nut", "order.not-tightened: loosen Nut"],
    [`${NUT} step tighten Nut step remove Nut step loosen Nut`, "order.not-installed: loosen Nut"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says which, and what left it loose", () => {
    expect(whole(`${NUT} step tighten Nut by hand step loosen Nut finish with Nut is loose`)).toEqual([
      { kind: "not tightened", part: "Nut", span: "loosen Nut", since: { step: "2", span: "tighten Nut" } },
    ]);
  });
  test("where it may be tight or loose, says what may have left it loose", () => {
    const steps = `${NUT} step tighten Nut step { check "It turns" if it fails { loosen Nut } } step loosen Nut finish with Nut is loose`;
    expect(whole(steps)).toEqual([
      { kind: "not tightened", part: "Nut", span: "loosen Nut", since: { step: "3", span: "loosen Nut" } },
    ]);
  });
});

describe("a lock that is in", () => {
  const KEY = "step install Key";
  test.each<Case>([
    [`${KEY} step tighten Key step install Tab`],
    [`${KEY} step install Tab step tighten Key`, "order.locked: tighten Key"],
    [`${KEY} step install Tab step loosen Key`, "order.locked: loosen Key"],
    [`${KEY} step tighten Key step install Tab step loosen Key by 90°`, "order.locked: loosen Key"],
    [`${KEY} step install Tab step remove Tab step tighten Key step install Tab`],
    // A lock that lies on the bench with another part locks nothing.
    [`${KEY} step install Tab on Flange step tighten Key step install Flange`],
    // Neither does one whose part is out.
    ["step install Tab step tighten Key", "order.not-installed: tighten Key"],
    ["step install Tab step loosen Key", "order.not-installed: loosen Key"],
    // A part that stands on another on the bench is in.
    ["step install Key on Flange step install Tab step tighten Key", "order.locked: tighten Key"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test.each(["tighten", "loosen"])("says by what, where that was put in and where it is declared: %s", (verb) => {
    expect(whole(`${KEY} step install Tab step ${verb} Key`)).toEqual([
      {
        kind: "locked",
        part: "Key",
        by: "Tab",
        verb,
        atEnd: false,
        declaredAt: "Key",
        span: `${verb} Key`,
        since: { step: "2", span: "install Tab" },
        mendAt: null,
      },
    ]);
  });
});

describe("a fastener of single use", () => {
  test.each<Case>([
    [`${BOLT} step tighten Bolt step tighten Bolt`],
    [`${BOLT} step tighten Bolt step loosen Bolt step tighten Bolt`, "order.reused: tighten Bolt"],
    [`${BOLT} step tighten Bolt step loosen Bolt by 90° step tighten Bolt`],
    [`${NUT} step tighten Nut step loosen Nut step tighten Nut`],
    // Told once, it is taken as new.
    [`${BOLT} step tighten Bolt step loosen Bolt step tighten Bolt step tighten Bolt`, "order.reused: tighten Bolt"],
    [`${BOLT} step tighten Bolt step loosen Bolt step remove Bolt step install new Bolt step tighten Bolt`],
    // While it is out nothing is tightened again, and nothing is taken as new.
    [
      `${BOLT} step tighten Bolt step loosen Bolt step remove Bolt step tighten Bolt step install Bolt`,
      "order.not-installed: tighten Bolt",
      "order.reused: install Bolt",
    ],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says how it was used, and where", () => {
    expect(whole(`${BOLT} step tighten Bolt step loosen Bolt step tighten Bolt to 9 N·m`)).toEqual([
      {
        kind: "reused",
        part: "Bolt",
        how: "loosened",
        verb: "tighten",
        verbSpan: "tighten",
        span: "tighten Bolt",
        since: { step: "3", span: "loosen Bolt" },
      },
    ]);
  });
});
