// Putting in and taking out: the place, what must be in before, what retains, single use, clock positions, fits.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const RING = `ring Circle "circle" { count 4 numbered clockwise seen from "drive end" position 1 at 12 o'clock }
`;
type Case = [steps: string, ...told: string[]];
const work = (declarations: string, steps: string): readonly string[] =>
  found(`${declarations}procedure Work "Work" { ${steps} }`);
const whole = (declarations: string, steps: string): readonly object[] =>
  wholeFacts(`${declarations}procedure Work "Work" { ${steps} }`);

describe("in already, or not in", () => {
  const PARTS = 'part Base "base" part Shaft "shaft" part Nut "nut" { secures Base }\n';
  test.each<Case>([
    ["step install Shaft"],
    ["step install Shaft step install Shaft", "order.already-installed: install Shaft"],
    ["step install Shaft on Base step install Shaft", "order.already-installed: install Shaft"],
    ["step press Shaft in Base step press Shaft in Base", "order.already-installed: press Shaft"],
    ["begin with Shaft is installed step install Shaft", "order.already-installed: install Shaft"],
    ["step install Shaft step remove Shaft step install Shaft"],
    ["step remove Shaft", "order.not-installed: remove Shaft"],
    ["step discard Shaft", "order.not-installed: discard Shaft"],
    ["step install Shaft on Base step remove Shaft"],
    ["step install Shaft step remove Shaft step remove Shaft", "order.not-installed: remove Shaft"],
    // Whatever it was, it is in, or out, afterwards; a fastener is loose, or absent.
    ['step remove Shaft step A { needs Shaft is removed do "Look." }', "order.not-installed: remove Shaft"],
    ['step install Base, Nut step A { needs Nut is loose do "Look." }'],
    [
      'step install Base, Nut step remove Nut step A { needs Nut is loose do "Look." }',
      "order.unmet-need: Nut is loose",
    ],
    [
      'step install Base, Nut step tighten Nut step install Nut step A { needs Nut is loose do "Look." }',
      "order.already-installed: install Nut",
    ],
    [
      'step install Base, Shaft step tighten Shaft step install Shaft step A { needs Shaft is tightened do "Look." }',
      "order.already-installed: install Shaft",
    ],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  const twice = {
    kind: "already installed",
    part: "Shaft",
    span: "install Shaft",
    since: { step: "1", span: "install Shaft" },
  };
  test.each<[steps: string, spare: string | null]>([
    ["step install Shaft step install Shaft", "step install Shaft"],
    ["step install Shaft step install Shaft takes 3 s", null],
    ["step install Shaft step A { install Shaft }", null],
    ["step install Shaft step { install Shaft clean Base }", "install Shaft"],
    ["step install Shaft step A { clean Base install Shaft }", "install Shaft"],
    ["step install Shaft step { install Shaft }", null],
    ['step install Shaft step "Once more." { install Shaft }', null],
  ])("%s: what can go is %s", (steps, spare) => {
    expect(whole(PARTS, steps)).toEqual([{ ...twice, spare }]);
  });
  test("what can go is nothing where others go in with it", () => {
    expect(whole(PARTS, "step install Shaft step install Shaft, Base")).toEqual([
      { ...twice, span: "install Shaft, Base", spare: null },
    ]);
  });
  test("what can go is nothing where it is in on some path only, or in a line that may not be read", () => {
    const some = "when Extent is Full { step install Shaft } step install Shaft";
    expect(whole(`${PARTS}option Extent "extent" { Full Part } `, some)).toMatchObject([
      { ...twice, spare: null, options: [{ Extent: "Full" }] },
    ]);
    const within = "step install Shaft step A { when Extent is Full { install Shaft } }";
    expect(whole(`${PARTS}option Extent "extent" { Full Part } `, within)).toMatchObject([{ ...twice, spare: null }]);
  });
  test("says since when it is out", () => {
    expect(whole(PARTS, "step discard Shaft")).toEqual([
      {
        kind: "not installed",
        part: "Shaft",
        verb: "discard",
        by: null,
        span: "discard Shaft",
        since: { step: null, span: "Work" },
      },
    ]);
  });
});

describe("the place", () => {
  const PARTS = `${RING}holes Feet "feet" { count 2 }
part Pin "pin" { seats in Circle } part Cap "cap" { seats in Circle at 2, 4 } part Screw[1..4] "screw" { seats in Circle by number }
temporary part Even[1..2] "even" { seats in Circle equally spaced } part Peg "peg" part Base "base"
part Nut[1..4] "nut" { seats in Circle by number needs Screw[same] }
`;
  const taken = "order.occupied: install Peg";
  test.each<Case>([
    ["step install Pin in Circle[2] step install Peg in Circle[2]", taken],
    ["step install Pin in Circle[2] step install Peg in Circle[3]"],
    ["step install Peg in Feet[1] step install Pin in Circle[1]"],
    ["step install Screw[2] step install Peg in Circle[2]", taken],
    ["step install Screw[2] in Circle step install Peg in Circle[2]", taken],
    ["step install Pin in Circle step install Peg in Circle[1]"],
    ["step install Cap step install Peg in Circle[2]", taken],
    ["step install Even[1] step install Peg in Circle[1] step remove Even[1]"],
    ["step install Screw[2], Nut[2] step install Peg in Circle[2]", taken],
    [
      "step install Even[1] in Circle[1] step install Even[2] in Circle[1] step remove Even[all]",
      "order.occupied: install Even[2]",
    ],
    // What is put elsewhere leaves its place.
    [
      "step install Peg in Circle[1] step install Peg in Circle[2] step install Pin in Circle[1]",
      "order.already-installed: install Peg",
    ],
    [
      "step install Peg in Circle[1] step install Peg step install Pin in Circle[1]",
      "order.already-installed: install Peg",
    ],
    [
      "step install Peg in Circle[1] step install Peg in Circle[1] step install Pin in Circle[1]",
      "order.already-installed: install Peg",
      "order.occupied: install Pin",
    ],
    [
      "step install Peg in Circle[1] step install Peg on Base step install Pin in Circle[1]",
      "order.already-installed: install Peg",
    ],
    // Where it belongs.
    ["step install Screw[2] in Circle[2]"],
    ["step install Screw[2] in Circle[3]", "order.wrong-place: install Screw[2]"],
    ["step install Screw[2] in Feet[2]", "order.wrong-place: install Screw[2]"],
    ["step install Pin in Circle[4]"],
    ["step install Pin in Feet[1]", "order.wrong-place: install Pin"],
    ["step install Cap in Circle[4]"],
    ["step install Cap in Circle[3]", "order.wrong-place: install Cap"],
    ["step install Even[1] in Circle[3] step remove Even[1]"],
    ["step install Peg in Feet[2]"],
    ["step install Screw[2] on Base"],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  test.each<[steps: string, fact: object]>([
    [
      "step install Pin in Circle[2] step install Peg in Circle[2]",
      { kind: "occupied", part: "Peg", place: "Circle[2]", by: "Pin", since: { step: "1", span: "install Pin" } },
    ],
    [
      "step install Screw[2] step install Peg in Circle[2]",
      {
        kind: "occupied",
        part: "Peg",
        place: "Circle[2]",
        by: "Screw[2]",
        since: { step: "1", span: "install Screw[2]" },
      },
    ],
    [
      "step install Screw[2] in Circle[3]",
      {
        kind: "wrong place",
        part: "Screw[2]",
        place: "Circle[3]",
        own: "Circle[2]",
        seats: "seats in Circle by number",
      },
    ],
    [
      "step install Cap in Circle[3]",
      { kind: "wrong place", part: "Cap", place: "Circle[3]", own: "Circle[2, 4]", seats: "seats in Circle at 2, 4" },
    ],
    [
      "step install Pin in Feet[1]",
      { kind: "wrong place", part: "Pin", place: "Feet[1]", own: "Circle", seats: "seats in Circle" },
    ],
  ])("%s: says where, and what is there", (steps, fact) => {
    const [told] = whole(PARTS, steps);
    expect({ ...told, span: undefined }).toEqual({ ...fact, span: undefined });
  });
});

describe("what must be in before", () => {
  const PARTS =
    'part Base "base" part Shaft "shaft" part Bearing[1..2] "bearing" { needs Shaft } part Cap "cap" { needs Bearing[2] } part Frame "frame" { needs Base, Shaft }\n';
  test.each<Case>([
    ["step install Shaft step install Bearing[1]"],
    ["step install Bearing[1]", "order.missing-support: install Bearing[1]"],
    ["step press Bearing[1] in Base", "order.missing-support: press Bearing[1]"],
    // On it, on the bench; on anything else the other must be in, and on the bench it is not.
    ["step install Bearing[1] over Shaft"],
    ["step press Bearing[1] over Shaft"],
    ["step install Bearing[1] on Base", "order.missing-support: install Bearing[1]"],
    ["step install Shaft on Base step install Bearing[1]", "order.missing-support: install Bearing[1]"],
    ["step install Bearing[1] over Shaft step install Cap over Bearing[1]", "order.missing-support: install Cap"],
    ["step install Bearing[2] over Shaft step install Cap over Bearing[2]"],
    // Where nobody knows whether it is in, nothing is said.
    [
      'step { needs Shaft is installed or Base is installed do "Look." } step install Bearing[1]',
      "order.unmet-need: Shaft is installed or Base is installed",
    ],
    // Each that is missing is told.
    ["step install Frame", "order.missing-support: install Frame", "order.missing-support: install Frame"],
    [
      'step { needs Shaft is installed or Base is installed do "Look." } step install Bearing[1] on Base step { needs Bearing[1] is installed do "Look." }',
      "order.unmet-need: Shaft is installed or Base is installed",
    ],
    // A support is not put in by its being missed.
    [
      "step install Bearing[1] step install Bearing[2]",
      "order.missing-support: install Bearing[1]",
      "order.missing-support: install Bearing[2]",
    ],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  const missing = {
    kind: "missing support",
    part: "Bearing[1]",
    needs: "Shaft",
    declaredAt: "Shaft",
    span: "install Bearing[1]",
    stepSpan: "step install Bearing[1]",
  };
  const start = { step: null, span: "Work" };
  test.each<[steps: string, fact: object]>([
    ["step install Bearing[1]", { since: start, laterAt: null }],
    ["step install Bearing[1] step install Shaft", { since: start, laterAt: { step: "2", span: "install Shaft" } }],
    ["step install Bearing[1] step press Shaft in Base", { since: start, laterAt: { step: "2", span: "press Shaft" } }],
    [
      "begin with Shaft is installed step remove Shaft step install Bearing[1] finish with Shaft is removed",
      { since: { step: "1", span: "remove Shaft" }, laterAt: null },
    ],
    [
      "step install Shaft step remove Shaft step install Bearing[1] step remove Shaft step install Shaft step install Base",
      { since: { step: "2", span: "remove Shaft" }, laterAt: { step: "5", span: "install Shaft" } },
    ],
  ])("%s: says what, since when it is out and where it comes", (steps, fact) => {
    expect(whole(PARTS, steps)[0]).toEqual({ ...missing, ...fact });
  });
});

describe("what keeps it in", () => {
  const PARTS =
    'part Base "base" part Shaft "shaft" part Clip "clip" { retains Shaft } part Nut "nut" { secures Shaft }\n';
  const IN = "begin with Shaft is installed";
  const kept = "order.retained: remove Shaft";
  test.each<Case>([
    [`${IN} step install Clip step remove Shaft`, kept],
    [`${IN} step install Clip step remove Clip step remove Shaft`],
    [`${IN} step install Clip on Base step remove Shaft`],
    [`${IN} step install Nut step remove Shaft`, kept],
    [`${IN} step install Nut step tighten Nut step remove Shaft`, kept],
    [`${IN} step install Nut step tighten Nut step loosen Nut by 90° step remove Shaft`, kept],
    [`${IN} step install Nut step tighten Nut by hand step remove Shaft`, kept],
    [`${IN}, Nut is installed step remove Shaft`, kept],
    [`${IN} step install Nut on Base step discard Shaft`, "order.retained: discard Shaft"],
    [`${IN} step install Nut step remove Nut step remove Shaft`],
    // Tightened though it is out, it keeps nothing in.
    [`${IN} step tighten Nut step remove Shaft`, "order.not-installed: tighten Nut"],
    ["step install Clip, Nut step remove Shaft", "order.not-installed: remove Shaft", kept, kept],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  const fact = { kind: "retained", part: "Shaft", declaredAt: "Shaft", span: "remove Shaft" };
  test.each<[steps: string, told: object]>([
    ["step install Clip", { by: "Clip", how: "retains", since: { step: "1", span: "install Clip" } }],
    ["step install Nut", { by: "Nut", how: "loose", since: { step: "1", span: "install Nut" } }],
    ["step install Nut step tighten Nut", { by: "Nut", how: "tightened", since: { step: "2", span: "tighten Nut" } }],
  ])("%s: says what, and how", (steps, told) => {
    expect(
      whole(PARTS, `${IN} ${steps} step remove Shaft`).filter((each) => "kind" in each && each.kind === "retained"),
    ).toEqual([{ ...fact, ...told }]);
  });
});

describe("of single use", () => {
  const PARTS = 'part Base "base" part Seal "seal" { single use } part Shaft "shaft"\n';
  test.each<Case>([
    ["step install Seal step remove Seal step install Seal", "order.reused: install Seal"],
    ["step install Seal step discard Seal step install Seal", "order.reused: install Seal"],
    ["step install Seal step remove Seal step press Seal in Base", "order.reused: press Seal"],
    ["step install Seal step remove Seal step install new Seal"],
    ["step install Seal step remove Seal step press new Seal in Base"],
    ["step install Shaft step remove Shaft step install Shaft"],
    ["begin with Seal is installed step remove Seal step install Seal", "order.reused: install Seal"],
    // Out already, it is used by being taken out all the same.
    ["step remove Seal step install Seal", "order.not-installed: remove Seal", "order.reused: install Seal"],
    // Each new one may be used once.
    [
      "step install Seal step remove Seal step install new Seal step remove Seal step install Seal",
      "order.reused: install Seal",
    ],
    [
      "step install Seal step remove Seal step install Seal step remove Seal step install new Seal",
      "order.reused: install Seal",
    ],
    // Told once, it is taken as new.
    [
      "step install Seal step remove Seal step install Seal step install Seal",
      "order.reused: install Seal",
      "order.already-installed: install Seal",
    ],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  test.each(["install", "press"])("says how it was used: %s", (verb) => {
    expect(whole(PARTS, `step install Seal step discard Seal step ${verb} Seal in Base`)).toEqual([
      {
        kind: "reused",
        part: "Seal",
        how: "removed",
        verb,
        verbSpan: verb,
        span: `${verb} Seal`,
        since: { step: "2", span: "discard Seal" },
      },
    ]);
  });
});

describe("a place at a clock position", () => {
  const PARTS = `${RING}ring Free "free" { count 4 numbered clockwise seen from "drive end" } ring Blank "blank" { count 4 position 1 at 12 o'clock }
holes Feet "feet" { count 2 }
part Pin "pin" part Screw[1..4] "screw" { seats in Circle by number }
`;
  const off = (part: string): string => `order.position: install ${part}`;
  test.each<Case>([
    ["step install Pin in Circle[1] at 12 o'clock"],
    ["step install Pin in Circle[2] at 3 o'clock"],
    ["step install Pin in Circle[2] at 12 o'clock", off("Pin")],
    ["step install Pin in Circle[4] at 9 o'clock"],
    ["step install Screw[3] at 6 o'clock"],
    ["step install Screw[3] at 7 o'clock", off("Screw[3]")],
    ["step turn Circle[2] to 12 o'clock step install Pin in Circle[2] at 12 o'clock"],
    ["step turn Circle to put Circle[2] at 12 o'clock step install Pin in Circle[2] at 12 o'clock"],
    ["step turn Circle[2] to 12 o'clock step install Pin in Circle[1] at 12 o'clock", off("Pin")],
    // Nothing is taken as met.
    ["step install Screw[2] at 12 o'clock step install Screw[3] at 12 o'clock", off("Screw[2]"), off("Screw[3]")],
    // Where nothing is known of the turn nothing is said.
    ["step install Pin in Free[2] at 12 o'clock"],
    ["step turn Free[1] to 3 o'clock step install Pin in Free[2] at 12 o'clock", off("Pin")],
    ["step install Pin in Blank[2] at 12 o'clock"],
    ["step install Pin at 12 o'clock"],
    ["step install Pin in Feet[2] at 12 o'clock"],
    ["step install Screw[3] at 6 o'clock step remove Screw[3] step press Screw[3] in Circle[3]"],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  test("says where it stands, and where it should", () => {
    const fact = { kind: "position", part: "Pin", ring: "Circle", place: "Circle[2]", span: "install Pin" };
    expect(whole(PARTS, "step install Pin in Circle[2] at 12 o'clock")).toEqual([
      {
        ...fact,
        wanted: 0,
        now: 3,
        since: { step: null, span: "Work" },
        stepSpan: "step install Pin in Circle[2] at 12 o'clock",
      },
    ]);
    expect(whole(PARTS, "step turn Circle[1] to 4 o'clock step A { install Pin in Circle[2] at 5 o'clock }")).toEqual([
      {
        ...fact,
        wanted: 5,
        now: 7,
        since: { step: "1", span: "turn Circle[1]" },
        stepSpan: "step A { install Pin in Circle[2] at 5 o'clock }",
      },
    ]);
  });
});

describe("a fit that needs heat, cold or a press", () => {
  const declared = (
    fit: string,
  ): string => `part Gear "gear" part Hub "hub" part Base "base" tool Heater "heater" { heats to 200 °C }
fit Gear over Hub { ${fit} }
`;
  const TIGHT = declared("interference 10 .. 30 µm");
  const cold = (part: string): string => `order.cold-fit: install ${part}`;
  const heat = (part: string, to = "21 .. 100 °C"): string => `step heat ${part} to ${to} with Heater`;
  test.each<Case>([
    ["step install Gear over Hub", cold("Gear")],
    ["step install Hub in Gear", cold("Hub")],
    ["step press Gear over Hub"],
    ["step press Hub in Gear"],
    [`${heat("Gear")} step install Gear over Hub`],
    [`${heat("Hub")} step install Gear over Hub`, cold("Gear")],
    [`${heat("Gear")} step install Hub in Gear`],
    ["step cool Hub to -60 .. -50 °C step install Gear over Hub"],
    ["step cool Gear to -60 .. -50 °C step install Gear over Hub", cold("Gear")],
    ["step cool Hub to -60 .. -50 °C step install Hub in Gear"],
    // At the ends of what the shop has.
    [`${heat("Gear", "20 °C")} step install Gear over Hub`, cold("Gear")],
    ["step cool Hub to 20 °C step install Gear over Hub", cold("Gear")],
    ["step cool Hub to 19 °C step install Gear over Hub"],
    [`ambient 15 .. 25 °C ${heat("Gear", "20 .. 25 °C")} step install Gear over Hub`, cold("Gear")],
    [`ambient 15 .. 25 °C ${heat("Gear", "20 .. 26 °C")} step install Gear over Hub`],
    ["ambient 15 .. 25 °C step cool Hub to 15 °C step install Gear over Hub", cold("Gear")],
    ["ambient 15 .. 25 °C step cool Hub to 14 .. 25 °C step install Gear over Hub"],
    // What may be hot, or cold, is not known to be neither.
    [
      'step { needs Gear is at most 10 °C or Base is installed do "Feel it." } step install Gear over Hub',
      "order.unmet-need: Gear is at most 10 °C or Base is installed",
    ],
    [
      'step { needs Hub is at most 10 °C or Base is installed do "Feel it." } step install Gear over Hub',
      "order.unmet-need: Hub is at most 10 °C or Base is installed",
    ],
    // Hot and cooled down again by time alone is no cold fit.
    [`${heat("Gear")} step wait 1 h step install Gear over Hub`],
    // With nothing named, the other must be in; elsewhere than on the other it is no matter.
    ["step install Hub step install Gear", cold("Gear")],
    ["step install Gear step install Hub", cold("Hub")],
    ["step install Gear"],
    ["step install Hub on Base step install Gear", cold("Gear")],
    ["step install Hub step install Gear on Base"],
  ])("%s", (steps, ...told) => {
    expect(work(TIGHT, steps)).toEqual(told);
  });
  test.each<[fit: string, isTight: boolean]>([
    ["interference 1 µm", true],
    ["interference 0 .. 30 µm", false],
    ["interference -5 .. 30 µm", false],
    ["interference at least 5 µm", true],
    ["interference at most 5 µm", false],
    ['tolerance "H7/s6"', true],
    ['tolerance "H7/h6"', false],
    ["diameter 50 mm", false],
  ])("%s: %s", (fit, isTight) => {
    expect(work(declared(fit), "step install Gear over Hub")).toEqual(isTight ? [cold("Gear")] : []);
  });
  test("says which two, and which fit", () => {
    const fit = "Gear over Hub";
    expect(whole(TIGHT, "step install Hub step install Gear")).toEqual([
      { kind: "cold fit", part: "Gear", mate: "Hub", declaredAt: fit, span: "install Gear" },
    ]);
    expect(
      whole(
        'part Gear "gear" part Hub[1..2] "hub" fit Gear over Hub { interference 10 .. 30 µm } ',
        "step install Gear over Hub[2]",
      ),
    ).toEqual([{ kind: "cold fit", part: "Gear", mate: "Hub[2]", declaredAt: fit, span: "install Gear" }]);
  });
});

describe("what is shut in", () => {
  const PARTS =
    'temporary part Plug[1..2] "plug" part Gasket "gasket" part Base "base" part Lid "lid" { encloses Plug[1] encloses Gasket }\n';
  const behind = "order.left-behind: install Plug[1]";
  test.each<Case>([
    ["step install Plug[1] step install Lid step remove Lid step remove Plug[1]", behind],
    ["step install Plug[1] step press Lid in Base step remove Lid step remove Plug[1]", behind],
    ["step install Plug[1] on Base step install Lid step remove Lid step remove Plug[1]", behind],
    ["step install Plug[1] step remove Plug[1] step install Lid"],
    ["step install Plug[2] step install Lid step remove Plug[2]"],
    ["step install Gasket step install Lid"],
    ["step install Plug[1] step install Lid finish with Plug[1] is installed"],
    // Closed over, and left: told once.
    ["step install Plug[1] step install Lid", behind],
  ])("%s", (steps, ...told) => {
    expect(work(PARTS, steps)).toEqual(told);
  });
  test("says by what, and where it could have come out", () => {
    const fact = {
      kind: "left behind",
      what: "Plug[1]",
      nature: "temporary",
      closedBy: "Lid",
      closedAt: "install Lid",
      removeText: "remove Plug[1]",
      span: "install Plug[1]",
      mendAt: { before: "step A { install Lid }" },
    };
    expect(whole(PARTS, "step install Plug[1] step A { install Lid }")).toEqual([fact]);
    // Taken out behind it: that line has to be moved, and one more would come to what is out.
    const end = "step remove Lid step remove Plug[1]";
    expect(whole(PARTS, `step install Plug[1] step A { install Lid } ${end}`)).toEqual([{ ...fact, mendAt: null }]);
    const some = `when Extent is Full { step install Plug[1] } step A { install Lid } step remove Lid
      when Extent is Full { step remove Plug[1] }`;
    expect(whole(`option Extent "extent" { Full Part } ${PARTS}`, some)).toEqual([
      { ...fact, mendAt: null, options: [{ Extent: "Full" }] },
    ]);
  });
});
