// How a procedure leaves what it worked on: loose, seated only, without its lock, out, an aid left in, an energy left off, a
// `finish with` that does not hold. Each whole, with its place and what would mend it.
import { describe, expect, test } from "vitest";
import { wholeFacts } from "./actions/whole-facts.ts";
import { found } from "./run-on-paper.ts";

const PARTS = `part Flange "flange"
part Nut[1..2] "nut" { secures Flange }
part Key "key"
part Tab "tab" { locks Key }
part Plate "plate" { locks Nut[1] }
temporary part Pin[1..2] "pin"
energy Supply "supply" { pressure 6 bar }
part Motor "motor" { driven by Supply }
option Extent "extent" { Full Part }
`;
const FULL = (steps: string): string => `when Extent is Full { ${steps} }`;
const procedure = (steps: string, more = ""): string => `${PARTS}procedure Work "Work" { ${steps} } ${more}`;
const work = (steps: string, more = ""): readonly string[] => found(procedure(steps, more), { ending: true });
const whole = (steps: string, more = ""): readonly object[] => wholeFacts(procedure(steps, more));
/** Where a last step could stand: in the whole procedure. */
const lastIn = (steps: string): object => ({ lastIn: `procedure Work "Work" { ${steps} }` });

type Case = [steps: string, ...told: string[]];

describe("a lock", () => {
  test.each<Case>([
    ["step install Key step tighten Key step install Tab"],
    ["step install Key step tighten Key", "order.locked: install Key"],
    // What is no fastener is not only seated.
    ["step install Key step tighten Key to seat step install Tab"],
    // A part that is no fastener needs its lock as soon as it is put in.
    ["step install Key", "order.locked: install Key"],
    ["step install Flange step press Key in Flange", "order.locked: press Key"],
    ["step press Key in Flange", "order.locked: press Key"],
    ["step install Key finish with Tab is removed"],
    ["step install Key finish with Tab is not installed"],
    ["step install Key finish with Key is installed", "order.locked: install Key"],
    // One that was in before, without its lock, is not this procedure's.
    ["begin with Key is installed step clean Key"],
    ["begin with Key is installed step tighten Key"],
    ["begin with Key is installed, Tab is installed step remove Tab", "order.locked: remove Tab"],
    ["begin with Key is installed, Tab is installed step discard Tab", "order.locked: discard Tab"],
    ["begin with Key is installed, Tab is installed step remove Tab step install Tab"],
    ["begin with Key is installed, Tab is installed step remove Tab finish with Tab is removed"],
    // A lock on the bench with another part is in, as far as it is left.
    ["step install Key step install Tab on Flange"],
  ])("of a part: %s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  const NUT = "begin with Flange is installed step install Nut[1]";
  test.each<Case>([
    [`${NUT} step tighten Nut[1] step install Plate`],
    [`${NUT} step tighten Nut[1]`, "order.locked: tighten Nut[1]"],
    [`${NUT} step tighten Nut[1] step loosen Nut[1] by 90°`, "order.locked: loosen Nut[1]"],
    [`${NUT} step tighten Nut[1] to seat`, "order.locked: tighten Nut[1]", "order.left-seated: tighten Nut[1]"],
    // Loose it has no need of a lock.
    [NUT, "order.not-final: install Nut[1]"],
    [`${NUT} step tighten Nut[1] by hand`, "order.not-final: tighten Nut[1]"],
    [`${NUT} step tighten Nut[1] step loosen Nut[1]`, "order.not-final: loosen Nut[1]"],
    // Tightened, and out.
    [`${NUT} step tighten Nut[1] step remove Nut[1]`],
    // Tightened before.
    ["begin with Flange is installed, Nut[1] is tightened step clean Flange"],
    [
      "begin with Flange is installed, Nut[1] is tightened, Plate is installed step remove Plate",
      "order.locked: remove Plate",
    ],
    // What is loose has no need of the lock; it is left out as any part is.
    [
      "begin with Flange is installed, Nut[1] is loose, Plate is installed step remove Plate",
      "order.not-final: remove Plate",
    ],
    [
      `begin with Flange is installed, Nut[1] is loose, Plate is installed step remove Plate ${FULL("step tighten Nut[1]")}`,
      "order.locked: remove Plate | Extent Full",
      "order.not-final: remove Plate | Extent Part",
    ],
    // The one that has no lock.
    ["begin with Flange is installed step install Nut[2] step tighten Nut[2]"],
  ])("of a fastener: %s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  const fact = { kind: "locked", verb: "", atEnd: true };
  test.each<[steps: string, fact: object]>([
    [
      "step install Key",
      {
        part: "Key",
        by: "Tab",
        declaredAt: "Key",
        span: "install Key",
        since: { step: null, span: "Work" },
        mendAt: true,
      },
    ],
    [
      `${NUT} step tighten Nut[1] to 9 N·m`,
      {
        part: "Nut[1]",
        by: "Plate",
        declaredAt: "Nut[1]",
        span: "tighten Nut[1]",
        since: { step: null, span: "Work" },
        mendAt: true,
      },
    ],
    [
      "begin with Key is installed, Tab is installed step remove Tab",
      {
        part: "Key",
        by: "Tab",
        declaredAt: "Key",
        span: "remove Tab",
        since: { step: "1", span: "remove Tab" },
        mendAt: true,
      },
    ],
    [
      `step install Key ${FULL("step install Tab")}`,
      {
        part: "Key",
        by: "Tab",
        declaredAt: "Key",
        span: "install Key",
        since: { step: null, span: "Work" },
        options: [{ Extent: "Part" }],
        mendAt: false,
      },
    ],
    [
      `begin with Key is installed, Tab is installed ${FULL("step remove Tab")}`,
      {
        part: "Key",
        by: "Tab",
        declaredAt: "Key",
        span: "remove Tab",
        since: { step: "1", span: "remove Tab" },
        options: [{ Extent: "Full" }],
        mendAt: false,
      },
    ],
  ])("says where, by what, and where it could go in: %s", (steps, { mendAt, ...rest }: { mendAt?: boolean }) => {
    expect(whole(steps)).toEqual([{ ...fact, ...rest, mendAt: mendAt === true ? lastIn(steps) : null }]);
  });
});

describe("only seated", () => {
  const NUT = "begin with Flange is installed step install Nut[2]";
  test.each<Case>([
    [`${NUT} step tighten Nut[2] to seat`, "order.left-seated: tighten Nut[2]"],
    [`${NUT} step tighten Nut[2] to 9 N·m to seat`, "order.left-seated: tighten Nut[2]"],
    [`${NUT} step tighten Nut[2] to seat step tighten Nut[2]`],
    [`${NUT} step tighten Nut[2] to seat step loosen Nut[2] finish with Nut[2] is loose`],
    [`${NUT} step tighten Nut[2] to seat step loosen Nut[2] by 90°`],
    [`${NUT} step tighten Nut[2] to seat step remove Nut[2]`],
    [`${NUT} step tighten Nut[2] to seat finish with Nut[2] is tightened`, "order.left-seated: tighten Nut[2]"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says which and where another turn could stand", () => {
    const fact = { kind: "left seated", part: "Nut[2]", span: "tighten Nut[2]" };
    const steps = `${NUT} step tighten Nut[2] to seat`;
    expect(whole(steps)).toEqual([{ ...fact, mendAt: lastIn(steps) }]);
    expect(whole(`${steps} ${FULL("step tighten Nut[2]")}`)).toEqual([
      { ...fact, mendAt: null, options: [{ Extent: "Part" }] },
    ]);
  });
});

describe("a fastener left loose", () => {
  const IN = "begin with Flange is installed";
  const NUT = `${IN} step install Nut[2]`;
  test.each<Case>([
    [NUT, "order.not-final: install Nut[2]"],
    [`${IN} step press Nut[2] in Flange`, "order.not-final: press Nut[2]"],
    [`${NUT} step tighten Nut[2] by hand`, "order.not-final: tighten Nut[2]"],
    [`${NUT} step tighten Nut[2] step loosen Nut[2]`, "order.not-final: loosen Nut[2]"],
    [`${NUT} step tighten Nut[2]`],
    [`${NUT} step remove Nut[2]`],
    // Put in by somebody else.
    [`${IN}, Nut[2] is tightened step loosen Nut[2]`],
    [`${IN}, Nut[2] is loose step clean Flange`],
    // Any word on it, on its place or its grip.
    [`${NUT} finish with Nut[2] is loose`],
    [`${NUT} finish with Nut[2] is installed`],
    [`${NUT} finish with Nut[2] is tightened`, "order.unfinished: Nut[2] is tightened"],
    [`${NUT} finish with Flange is secured`, "order.unfinished: Flange is secured"],
    [`${NUT} finish with Flange is installed`, "order.not-final: install Nut[2]"],
    [`${NUT} finish with Flange is not removed`, "order.not-final: install Nut[2]"],
    [`${NUT} finish with Nut[1] is removed`, "order.not-final: install Nut[2]"],
    // What is no fastener has nothing to be tightened.
    ["step install Motor", "order.energised: install Motor"],
    // Both, each by itself; one action is told once.
    [
      `${IN} step install Nut[2] step install Nut[1]`,
      "order.not-final: install Nut[2]",
      "order.not-final: install Nut[1]",
    ],
    [`${IN} step install Nut[all]`, "order.not-final: install Nut[all]"],
    [`${IN} ${FULL("step install Nut[2]")}`, "order.not-final: install Nut[2] | Extent Full"],
    [`${NUT} ${FULL("step tighten Nut[2]")}`, "order.not-final: install Nut[2] | Extent Part"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says which, and how", () => {
    expect(whole(`${NUT} step tighten Nut[2] by hand`)).toEqual([
      { kind: "not final", part: "Nut[2]", how: "loose", performed: null, span: "tighten Nut[2]" },
    ]);
  });
});

describe("a part left out", () => {
  const IN = "begin with Flange is installed, Motor is installed";
  test.each<Case>([
    [`${IN} step remove Flange`, "order.not-final: remove Flange"],
    [`${IN} step discard Flange`, "order.not-final: discard Flange"],
    [`${IN} step remove Flange step install Flange`],
    [`${IN} step remove Flange finish with Flange is removed`],
    [`${IN} step remove Flange finish with Flange is not installed`],
    [`${IN} step remove Flange finish with Flange is installed`, "order.unfinished: Flange is installed"],
    [`${IN} step remove Flange finish with Flange is secured`, "order.unfinished: Flange is secured"],
    [`${IN} step remove Flange finish with Motor is installed`, "order.not-final: remove Flange"],
    [`${IN}, Pin[1] is installed step remove Pin[1]`],
    // Out from the start it is left as it was.
    ["step install Flange step remove Flange"],
    ["step remove Flange", "order.not-installed: remove Flange"],
    // What says that a part is out says it of what held it, too.
    [`${IN}, Nut[1] is installed step remove Nut[1] step remove Flange finish with Flange is removed`],
    [`${IN}, Nut[1] is installed step remove Nut[1] finish with Flange is installed`, "order.not-final: remove Nut[1]"],
    [`${IN} ${FULL("step remove Flange")}`, "order.not-final: remove Flange | Extent Full"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says which, and how", () => {
    expect(whole(`${IN} step A { discard Flange }`)).toEqual([
      { kind: "not final", part: "Flange", how: "out", performed: null, span: "discard Flange" },
    ]);
  });
});

describe("what a performed procedure leaves", () => {
  const sub = (steps: string): string => `procedure Sub "Sub" { ${steps} }`;
  const subOnly = (steps: string, rest: string): readonly object[] =>
    whole(steps, sub(rest)).filter((fact) => "span" in fact && fact.span === "perform Sub");
  const performed = { kind: "not final", performed: "Sub", span: "perform Sub" };
  test.each<[steps: string, sub: string, facts: readonly object[]]>([
    // Only what it has a word of itself: all else is told in it.
    [
      "begin with Flange is installed perform Sub",
      "begin with Flange is installed step remove Flange finish with Flange is removed",
      [{ ...performed, part: "Flange", how: "out" }],
    ],
    ["begin with Flange is installed perform Sub", "begin with Flange is installed step remove Flange", []],
    [
      "begin with Flange is installed perform Sub finish with Flange is removed",
      "begin with Flange is installed step remove Flange finish with Flange is removed",
      [],
    ],
    [
      "begin with Flange is installed perform Sub",
      "begin with Flange is installed step install Nut[2] finish with Nut[2] is loose",
      [{ ...performed, part: "Nut[2]", how: "loose" }],
    ],
    [
      "begin with Flange is installed perform Sub",
      "begin with Flange is installed step install Nut[2] finish with Nut[2] is installed",
      [{ ...performed, part: "Nut[2]", how: "loose" }],
    ],
    ["begin with Flange is installed perform Sub", "begin with Flange is installed step install Nut[2]", []],
    [
      "begin with Flange is installed perform Sub step tighten Nut[2]",
      "begin with Flange is installed step install Nut[2] finish with Nut[2] is loose",
      [],
    ],
    // Seated, or without a lock: told in it.
    [
      "begin with Flange is installed perform Sub",
      "begin with Flange is installed step install Nut[2] step tighten Nut[2] to seat",
      [],
    ],
    ["perform Sub", "step install Key finish with Key is installed", []],
  ])("%s { %s }", (steps, rest, facts) => {
    expect(subOnly(steps, rest)).toEqual(facts);
  });
  test.each<[sub: string, what: string, nature: string]>([
    ["step install Pin[1] finish with Pin[1] is installed", "Pin[1]", "temporary"],
    ["step isolate Supply finish with Supply is isolated", "Supply", "isolated"],
  ])("%s: is left behind here", (rest, what, nature) => {
    expect(whole("perform Sub", sub(rest))).toEqual([
      {
        kind: "left behind",
        what,
        nature,
        closedBy: null,
        closedAt: null,
        removeText: `${nature === "temporary" ? "remove" : "restore"} ${what}`,
        mendAt: lastIn("perform Sub"),
        span: "perform Sub",
      },
    ]);
  });
});

describe("an aid or an energy left behind", () => {
  test.each<Case>([
    ["step install Pin[1]", "order.left-behind: install Pin[1]"],
    ["step install Pin[1] on Flange", "order.left-behind: install Pin[1]"],
    ["step press Pin[1] in Flange", "order.left-behind: press Pin[1]"],
    ["step install Pin[1] step remove Pin[1]"],
    ["step install Pin[1..2] step remove Pin[2]", "order.left-behind: install Pin[1..2]"],
    ["step install Pin[1] finish with Pin[1] is installed"],
    ["step install Pin[1] finish with Pin[2] is not installed", "order.left-behind: install Pin[1]"],
    ["step install Pin[1] finish with no temporary parts", "order.left-behind: install Pin[1]"],
    ["step install Pin[1] finish with Pin[1] is removed", "order.left-behind: install Pin[1]"],
    ["begin with Pin[1] is installed step clean Flange", "order.left-behind: Pin[1] is installed"],
    ["step isolate Supply", "order.left-behind: isolate Supply"],
    ["step isolate Supply step restore Supply"],
    ["step isolate Supply finish with Supply is isolated"],
    ["step isolate Supply finish with Supply is live", "order.left-behind: isolate Supply"],
    ["begin with Supply is isolated step clean Flange"],
    ['step A { do "Switch it off." gives Supply is isolated }'],
    [`step isolate Supply ${FULL("step restore Supply")}`, "order.left-behind: isolate Supply | Extent Part"],
    // After a stop nothing is asked.
    ['step install Pin[1] step A { check "It is well" if it fails { stop "Call." } } step remove Pin[1]'],
    ['step install Pin[1] stop "Call."'],
    // What was only taken as so nobody left.
    ['step A { needs Pin[1] is installed do "Look." }', "order.unmet-need: Pin[1] is installed"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says what, and where it could come out", () => {
    const fact = {
      kind: "left behind",
      what: "Pin[2]",
      nature: "temporary",
      closedBy: null,
      closedAt: null,
      removeText: "remove Pin[2]",
      span: "install Pin[2]",
    };
    expect(whole("step install Pin[2]")).toEqual([{ ...fact, mendAt: lastIn("step install Pin[2]") }]);
    expect(whole(`step install Pin[2] ${FULL("step remove Pin[2]")}`)).toEqual([
      { ...fact, mendAt: null, options: [{ Extent: "Part" }] },
    ]);
    const pass = [{ variable: "n", value: 1 }];
    expect(whole("repeat n from 2 down to 1 { step install Pin[n] }")).toMatchObject([
      { what: "Pin[2]", span: "install Pin[n]", pass: [{ variable: "n", value: 2 }], more: 1 },
    ]);
    expect(whole("repeat n in 1, 2 { step install Pin[n] }")).toMatchObject([
      { what: "Pin[1]", span: "install Pin[n]", pass, more: 1 },
    ]);
  });
});

describe("what is to be so at the end, and is not", () => {
  const unfinished = (condition: string): string => `order.unfinished: ${condition}`;
  test.each<Case>([
    ["step install Flange finish with Flange is installed"],
    ["step clean Flange finish with Flange is installed", unfinished("Flange is installed")],
    ["step clean Flange finish with Flange is clean, Key is clean", unfinished("Key is clean")],
    ["step clean Flange finish with Flange is clean or Key is clean"],
    [
      `${FULL("step install Flange")} finish with Flange is installed`,
      `${unfinished("Flange is installed")} | Extent Part`,
    ],
    ['step A { check "It is well" if it fails { stop "Call." } } finish with Flange is removed'],
    ['step clean Flange stop "Call." finish with Flange is installed'],
    ["step clean Flange finish with Supply is isolated", unfinished("Supply is isolated")],
    ["begin with Supply is isolated step clean Flange finish with Supply is live", unfinished("Supply is live")],
    // What was only taken as so is held against nobody.
    [
      'step A { needs Flange is installed do "Look." } finish with Flange is removed',
      "order.unmet-need: Flange is installed",
    ],
    ["begin with Motor is installed step clean Motor finish with Supply is live", "order.energised: clean Motor"],
    ["begin with Motor is installed step clean Motor finish with Supply is isolated", "order.energised: clean Motor"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test.each<[steps: string, fact: object]>([
    [
      "begin with Flange is installed step remove Flange finish with Flange is installed",
      { condition: "Flange is installed", state: "Flange is removed", since: { step: "1", span: "remove Flange" } },
    ],
    [
      "step clean Flange finish with Key is clean",
      { condition: "Key is clean", state: "Key is as it was found", since: { step: null, span: "Work" } },
    ],
    [
      "begin with Flange is installed, Nut[2] is installed, Nut[1] is tightened step loosen Nut[2] finish with Flange is secured",
      { condition: "Flange is secured", state: "Nut[2] is loose", since: { step: "1", span: "loosen Nut[2]" } },
    ],
  ])("says what, and since when it is otherwise: %s", (steps, fact) => {
    expect(whole(steps)).toEqual([{ kind: "unfinished", span: (fact as { condition: string }).condition, ...fact }]);
  });
});
