// order.unmet-need: `needs` and `begin with` on every path, what would give them, and the step that can be put in.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("given too late: says which step gives it", () => {
  const text = `fact OilIn "the oil is in"

procedure Start "Start the pump" {
  step "Start the pump." {
    needs OilIn
    //    ^^^^^ order.unmet-need
  }
  step "Pour the oil in." { gives OilIn }
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toMatchInlineSnapshot(`
    "“OilIn” does not hold here.
      Wanted: OilIn
      Found: OilIn is not given, from the start
    → Step 2 gives it, and has to come first on every path.
    @3 At the start: OilIn is not given.
    &7 Step 2 gives it"
  `);
});

test("given by nothing: says so", () => {
  const text = `fact OilIn "the oil is in"

procedure Start "Start the pump" {
  step "Start the pump." { needs OilIn }
  //                             ^^^^^ order.unmet-need
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toMatchInlineSnapshot(`
    "“OilIn” does not hold here.
      Wanted: OilIn
      Found: OilIn is not given, from the start
    → Nothing here gives it. Add the step that does, or say so in “begin with”.
    @3 At the start: OilIn is not given."
  `);
});

test("silent: given before, at the start, or by the action it needs", () => {
  expectFindings(`fact OilIn "the oil is in"
part Cover "cover"
energy Supply "motor supply" { voltage 400 V AC }

procedure Start "Start the pump" {
  begin with OilIn
  finish with Supply is isolated
  step install Cover
  step isolate Supply
  step "Turn the pump by hand." { needs OilIn, Cover is installed, Supply is isolated }
}`);
});

test("each need of a list has its own place", () => {
  expectFindings(`part Cover "cover"
part Seal "seal"

procedure Start "Start the pump" {
  step "Look through the port." { needs Cover is removed, Seal is installed }
  //                                                      ^^^^^^^^^^^^^^^^^ order.unmet-need
  step install Cover
}`);
});

test("on one option, and after a failed check", () => {
  const text = `part Seal "seal"
option Extent "extent of work" { Full Look }

procedure Start "Start the pump" {
  when Extent is Full { step install Seal }
  step "Fill the pump." { needs Seal is installed }
  //                            ^^^^^^^^^^^^^^^^^ order.unmet-need
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toContain("This happens when Extent is Look.");
  expectFindings(`part Seal "seal"

procedure Start "Start the pump" {
  step install Seal
  step { check "The seal is dry" if it fails { discard Seal } }
  step "Fill the pump." { needs Seal is installed }
  //                            ^^^^^^^^^^^^^^^^^ order.unmet-need
}`);
});

test("silent: the option that lacks it does not come here", () => {
  expectFindings(`part Seal "seal"
option Extent "extent of work" { Full Look }

procedure Start "Start the pump" {
  when Extent is Full { step install Seal }
  when Extent is not Look { step "Fill the pump." { needs Seal is installed } }
}`);
});

test("“or” holds where one side does", () => {
  expectFindings(`part Seal "seal"
fact Dry "the pump runs dry"

procedure Start "Start the pump" {
  step install Seal
  step "Start it." { needs (Seal is installed or Dry) and not Dry }
  step "Start it." { needs Dry or Seal is removed }
  //                       ^^^^^^^^^^^^^^^^^^^^^^ order.unmet-need
}`);
});

test("in a repeat: the pass in which it first lacks", () => {
  const text = `part Screw[1..4] "screw"

procedure Look "Look at the screws" {
  step install Screw[1..2]
  repeat n from 1 to 4 {
    step "Mark screw {n}." { needs Screw[n] is installed }
    //                             ^^^^^^^^^^^^^^^^^^^^^ order.unmet-need
  }
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toContain("This happens for n = 3, and 1 more.");
});

test("a performed procedure's begin: at the perform", () => {
  const text = `part Cover "cover"
part Screw[1..2] "cover screw" { secures Cover }

procedure Whole "Whole work" {
  step install Cover
  perform Run
//^^^^^^^^^^^ order.unmet-need
}
procedure Run "Run it" {
  begin with Cover is secured
  step inspect Cover
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toMatchInlineSnapshot(`
    "Run needs “Cover is secured”, which does not hold here.
      Wanted: Cover is secured
      Found: Screw[1] is removed, from the start
    → Nothing here gives it. Add the step that does, or say so in “begin with”.
    @4 At the start: Screw[1] is removed.
    &9 Run asks for it here"
  `);
});

test("what a performed procedure touches must be as at a start: once for all screws", () => {
  const text = `part Cover "cover"
part Screw[1..4] "cover screw" { secures Cover }

procedure Whole "Whole work" {
  begin with Cover is secured
  perform Close
//^^^^^^^^^^^^^ order.unmet-need
//^^^^^^^^^^^^^ order.unmet-need
}
procedure Close "Close it" {
  step install Cover
  step install Screw[all]
  step tighten Screw[all]
}`;
  expectFindings(text);
  expect(told(text, "order.unmet-need")).toMatchInlineSnapshot(`
    "Close needs “Cover is removed”, which does not hold here.
      Wanted: Cover is removed
      Found: Cover is installed, from the start
      What it touches and its “begin with” does not mention has to be as at a start.
    → Make it so before this, or mention it in the “begin with” of Close.
    @5 At the start: Cover is installed.
    &9 Close works on it here"
  `);
});

test("taken as met afterwards: one mistake, one finding", () => {
  expectFindings(`fact OilIn "the oil is in"

procedure Start "Start the pump" {
  step "Start the pump." { needs OilIn }
  //                             ^^^^^ order.unmet-need
  step "Run it up." { needs OilIn }
}`);
});

test("the fix puts in the step that gives it, with the comment left where it belongs", () => {
  const text = `part Cover "cover"

procedure Start "Start the pump" {
  step inspect Cover

  // Slowly, the first time.
  step "Start the pump." { needs Cover is installed }
}
`;
  const [found] = findingsIn(text);
  expect(found?.code).toBe("order.unmet-need");
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("\n\n  step install Cover\n  // Slowly, the first time.\n");
  expect(findingsIn(mended)).toEqual([]);
});

test.each([
  ["only on one option", "when Kept is no { step install Cover }", "needs Cover is installed"],
  [
    "only after a failed check",
    'step install Cover\n  step { check "Dry" if it fails { remove Cover } }\n  when Kept is no { step inspect Cover }',
    "needs Cover is installed",
  ],
  [
    "what one step cannot give",
    "when Kept is no { step inspect Cover }",
    "needs Cover is installed, Screw[all] are tightened",
  ],
])("no fix: %s", (_title, before, need) => {
  const text = `part Cover "cover"
part Screw[1..2] "cover screw" { secures Cover }
option Kept "the cover is kept" { yes no }

procedure Start "Start the pump" {
  ${before}
  step "Start the pump." { ${need} }
}`;
  const found = findingsIn(text).filter(({ code }) => code === "order.unmet-need");
  expect(found.length).toBeGreaterThan(0);
  expect(found.at(-1)?.fixes).toBeUndefined();
});

test("a place that is taken where a performed procedure wants it free, in the words of the writer", () => {
  const text = `ring Circle "bolt circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Cover "cover"
part Bolt[1..4] "bolt" { seats in Circle by number  secures Cover }
temporary part Guide "guide" { seats in Circle }
procedure PutIn "Put the bolts in" {
  begin with Cover is installed
  finish with Bolt[all] are loose
  step install Bolt[all]
}
procedure Work "Work" {
  begin with Cover is installed
  finish with Bolt[all] are loose, Guide is installed
  step install Guide in Circle[1]
  perform PutIn
}`;
  const [found] = findingsIn(text).filter(({ code }) => code === "order.unmet-need");
  expect(found?.message).toBe("PutIn needs “Circle[1] is free”, which does not hold here.");
  expect(found?.why).toContain("Found: Guide is in Circle[1], since step 1");
});

test.each([
  ["removed", "begin with Cover is installed, Screw[all] are removed\n  finish with Cover is removed", "remove Cover"],
  ["installed", "begin with Cover is removed\n  finish with Cover is installed", "install Cover"],
])("no fix for what a later line does: it has to come first, and once: %s", (state, ends, later) => {
  const text = `part Cover "cover"
part Screw[1..2] "cover screw" { secures Cover }

procedure Start "Start the pump" {
  ${ends}
  step "Start the pump." { needs Cover is ${state} }
  step ${later}
}`;
  const [found, ...others] = findingsIn(text);
  expect([found?.code, found?.remedy, others]).toEqual([
    "order.unmet-need",
    "Step 2 gives it, and has to come first on every path.",
    [],
  ]);
  expect(found?.fixes).toBeUndefined();
});

test("what is in and no fastener is not told to be out", () => {
  const text = `part Cover "cover"

procedure Start "Start the pump" {
  begin with Cover is installed
  step "Start the pump." { needs Cover is tightened }
}`;
  expect(findingsIn(text).map(({ why }) => why)).toEqual([
    "Wanted: Cover is tightened\nFound: Cover is not tightened, from the start",
  ]);
});

// “`perform OtherProcedure`: … (what it touches and does not mention must be as at a start)”: a need that is met only since everything is
// as at a start there is not met where the caller has it otherwise.
const CALLED = `energy Supply "supply" { voltage 24 V DC }
fact Signed "the sheet is signed"
part Valve "valve" { states shut, half, open }
part Plug "plug"
`;
test.each([
  ["a state of its own", "Valve is shut", "Valve is installed, Valve is open", "Valve is shut"],
  ["an energy", "Supply is live", "Valve is installed, Supply is isolated", "Supply is live"],
  ["a fact", "not Signed", "Valve is installed, Signed", "Signed is not given"],
  ["a part that is out", "Plug is removed", "Valve is installed, Plug is installed", "Plug is removed"],
  // As at a start, or otherwise and right as well, or of no need any more.
  ["as at a start", "Valve is shut", "Valve is installed", null],
  ["not as at a start, and not what is asked", "Valve is not open", "Valve is installed, Valve is half", null],
])("a need in a performed procedure: %s", (_title, need, begin, told) => {
  const called = `${CALLED}procedure Look "Look" {
  begin with Valve is installed
  step inspect Valve
  step "Look on." { needs ${need} }
}
procedure Between "Between" {
  begin with Valve is installed
  perform Look
}
`;
  const main = (by: string): string => `${called}procedure Main "Main" {
  begin with ${begin}
  finish with Valve is installed
  perform ${by}
}`;
  for (const by of ["Look", "Between"]) {
    const found = findingsIn(main(by)).filter(({ code }) => code.startsWith("order."));
    expect(found.map(({ code, message }) => [code, message])).toEqual(
      told === null ? [] : [["order.unmet-need", `${by} needs “${told}”, which does not hold here.`]],
    );
  }
});

test("a need that the performed procedure itself has made so, or speaks of in its “begin with”, is asked there alone", () => {
  const found = findingsIn(`${CALLED}procedure Look "Look" {
  begin with Valve is open
  step "Look on." { needs Valve is open  gives Signed }
  step "Look again." { needs Signed }
}
procedure Main "Main" {
  begin with Valve is installed, Valve is open, Supply is isolated
  finish with Supply is isolated
  perform Look
}`);
  expect(found.filter(({ code }) => code.startsWith("order."))).toEqual([]);
});
