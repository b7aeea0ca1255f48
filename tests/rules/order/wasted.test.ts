// order.wasted: done and undone with nothing between; and what counts as a use of it.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SHOP = `consumable Grease "bearing grease"
tool Heater "induction heater" { heats to 150 °C }
ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Shaft "pump shaft"
part Bearing "drive-end bearing" {
  needs Shaft
  heat limit 120 °C
}
part Segment[1..4] "tooth segment" { seats in Seat by number }
`;
/** A procedure in which each thing of the shop is used once, so that only its lines tell. */
const work = (...lines: readonly string[]): string => `${SHOP}
procedure Work "Work on the bearing" {
  begin with Shaft is installed
  finish with Bearing is removed
  ${lines.join("\n  ")}
  step install Segment[all]
  step lubricate Shaft with Grease
  step "Put the heater away." { do "Switch it off." with Heater }
  step inspect Bearing
}
`;
const CLEANED = ["step clean Bearing", "//   ^^^^^^^^^^^^^ order.wasted information"];

test("greased, then cleaned", () => {
  const text = work("step lubricate Bearing with Grease", ...CLEANED);
  expectFindings(text);
  expect(told(text, "order.wasted")).toMatchInlineSnapshot(`
    "Bearing is cleaned before its lubricant is used.
      Bearing is lubricated since step 1, and nothing between the two makes use of that.
    → Take one of the two lines out, or move the work that needs the first between them.
    @18 Step 1: Bearing is lubricated."
  `);
});

test("coated, then cleaned", () => {
  const text = work("step apply Grease to Bearing", ...CLEANED);
  expectFindings(text);
  expect(told(text, "order.wasted")).toContain("Bearing is cleaned before what was applied is used.");
});

test("heated, then cooled", () => {
  const text = work(
    "step heat Bearing to 100 .. 110 °C with Heater",
    "step cool Bearing to 20 °C",
    "//   ^^^^^^^^^^^^ order.wasted",
  );
  expectFindings(text);
  expect(told(text, "order.wasted")).toContain("Bearing is cooled before its heat is used.");
});

test("turned, then turned again", () => {
  const text = work(
    "step turn Seat[2] to 6 o'clock",
    "step turn Seat[3] to 6 o'clock",
    "//   ^^^^^^^^^^^^ order.wasted",
  );
  expectFindings(text);
  expect(told(text, "order.wasted")).toContain("Seat is turned again before its position is used.");
});

test.each([
  ["it is put in", "step install Bearing\n  step remove Bearing"],
  ["it is looked at", "step inspect Bearing"],
  ["something is checked", 'step { check "The bearing turns freely" }'],
  ["something is measured", 'step measure "play"'],
  ["work in own words", 'step "Turn the bearing by hand." { do "Turn it ten times." }'],
  ["work on a part that it needs", "step align Shaft with Segment[1]"],
])("silent: between the two %s", (_title, line) => {
  expectFindings(work("step lubricate Bearing with Grease", line, "step clean Bearing"));
});

test.each([["work on what has nothing to do with it", "step install Segment[1]\n  step remove Segment[1]"]])(
  "no use: %s",
  (_title, line) => {
    expectFindings(work("step lubricate Bearing with Grease", line, ...CLEANED));
  },
);

test.each([
  ["cleaned, then greased", ["step clean Bearing", "step lubricate Bearing with Grease"]],
  ["left to soak", ["step lubricate Bearing with Grease", "step wait 5 min", "step clean Bearing"]],
  ["greased twice", ["step lubricate Bearing with Grease", "step lubricate Bearing with Grease"]],
  ["heated on", ["step heat Bearing to 60 .. 70 °C with Heater", "step heat Bearing to 100 .. 110 °C with Heater"]],
  ["greased here, cleaned there", ["step lubricate Bearing with Grease", "step clean Shaft"]],
])("silent: %s", (_title, lines) => {
  expectFindings(work(...lines));
});

test("a ring turned in each pass of a repeat, with and without work at it", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  begin with Shaft is installed
  step lubricate Bearing with Grease
  step inspect Bearing with Heater
  repeat n from 1 to 4 {
    step turn Seat[n] to 6 o'clock
    step install Segment[n]
  }
}`);
  const text = `${SHOP}
procedure Fit "Fit the segments" {
  begin with Shaft is installed
  step lubricate Bearing with Grease
  step inspect Bearing with Heater
  repeat n from 1 to 4 { step turn Seat[n] to 6 o'clock }
  //                          ^^^^^^^^^^^^ order.wasted
  step install Segment[all]
}`;
  expectFindings(text);
  expect(told(text, "order.wasted")).toContain("This happens for n = 2, and 2 more.");
});

test("used on one option only", () => {
  const text = `consumable Grease "bearing grease"
part Bearing "drive-end bearing"
option Extent "extent of work" { Full Trial }

procedure Work "Work on the bearing" {
  step lubricate Bearing with Grease
  when Extent is Trial { step "Turn it." { do "Turn the bearing by hand." } }
  step clean Bearing
  //   ^^^^^^^^^^^^^ order.wasted
}`;
  expectFindings(text);
  expect(told(text, "order.wasted")).toContain("This happens when Extent is Full.");
});

test("silent: cleaned on the way back from a check", () => {
  expectFindings(`consumable Grease "bearing grease"
part Bearing "drive-end bearing"

procedure Work "Work on the bearing" {
  step Greasing { lubricate Bearing with Grease }
  step {
    check "The grease is even" if it fails {
      clean Bearing
      return to Greasing
    }
  }
  step install Bearing
}`);
});
