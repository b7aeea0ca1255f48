// names.no-such-instance: indices outside what is declared; those with a loop variable go round a ring.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const RING = `ring Circle "bolt circle" {
  count 8
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
`;

test("past the end, below the beginning, in a range and in a list", () => {
  const text = `part Screw[1..8] "cover screw"

procedure Fit "Fit the screws" {
  step inspect Screw[9]
  //           ^^^^^^^^ names.no-such-instance
  step inspect Screw[0]
  //           ^^^^^^^^ names.no-such-instance
  step inspect Screw[7..9]
  //           ^^^^^^^^^^^ names.no-such-instance
  step inspect Screw[1, 8, 12]
  //           ^^^^^^^^^^^^^^^ names.no-such-instance
}`;
  expectFindings(text);
  expect(told(text, "names.no-such-instance")).toMatchInlineSnapshot(`
    "There is no Screw[9].
      Wanted: Screw[1..8]
      Found: Screw[9]
    → Write one that is declared, or declare more.
    &1 Screw is declared here with 1..8"
  `);
});

test("a position the ring does not have", () => {
  expectFindings(`${RING}part Pin "dowel pin" { seats in Circle }

procedure Fit "Fit the pin" {
  step install Pin in Circle[9]
  //                  ^^^^^^^^^ names.no-such-instance
}`);
});

test("silent: counted from a loop variable it goes round the ring", () => {
  expectFindings(`${RING}part Screw[1..8] "cover screw" { seats in Circle by number }

procedure Fit "Fit the screws" {
  repeat n from 5 to 12 { step install Screw[n] }
  repeat n from 1 to 8 { step inspect Screw[n - 1] }
}`);
});

test("a part that is on no ring does not go round: said once, with its first pass", () => {
  const text = `part Screw[1..4] "cover screw"

procedure Fit "Fit the screws" {
  repeat n from 1 to 4 { step inspect Screw[n + 1] }
  //                                  ^^^^^^^^^^^^ names.no-such-instance
}`;
  expectFindings(text);
  expect(told(text, "names.no-such-instance")).toContain("This happens for n = 4.");
});

test("silent: the whole range, all, and numbers that do not begin at 1", () => {
  expectFindings(`part Screw[3..6] "cover screw"
part Foot[left, right] "foot"

procedure Fit "Fit the screws" {
  step inspect Screw[3], Screw[3..6], Screw[all]
  step inspect Foot[left], Foot[all]
}`);
});
