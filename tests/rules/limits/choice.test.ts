// limits.choice: rows compared exactly after conversion. 1 in = 25.4 mm exactly (NIST SP 811, B.8), so 0.25 in = 6.35 mm.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const HEAD = `part Shim "shim"
tool Gauge "gauge" { measures 0 .. 50 mm  resolution 0.001 mm }
procedure Fit {
`;
/** @param rows with what is to be found under each */
function text(expected: string, rows: string, at = ""): string {
  return `${HEAD}  step measure Gap "gap" with Gauge${expected === "" ? "" : ` expect ${expected}`}
  step choose Shim by Gap {
${at}${rows}
  }
  step install Shim
}`;
}
const AT = "  //   ^^^^^^^^^^^ limits.choice warning\n";
/** Under the line before, which begins four columns in. */
const under = (row: string): string => `  //${"^".repeat(row.indexOf(":"))} limits.choice warning`;
const rows = (...all: readonly (string | readonly [string])[]): string =>
  all.map((row) => (typeof row === "string" ? `    ${row}` : `    ${row[0]}\n${under(row[0])}`)).join("\n");

test.each([
  ["rows that meet", "2 .. 8 mm", rows("2 .. 6 mm: 1 mm", "6 .. 8 mm: 2 mm")],
  ["rows in any order", "2 .. 8 mm", rows("6 .. 8 mm: 2 mm", "2 .. 6 mm: 1 mm")],
  ["rows that meet in two units", "2 .. 8 mm", rows("2 .. 6.35 mm: 1 mm", "0.25 .. 0.5 in: 2 mm")],
  ["open ends", "", rows("at most 6 mm: 1 mm", "at least 6 mm: 2 mm")],
  ["open ends reach as far as is expected", "2 .. 8 mm", rows("at most 6 mm: 1 mm", "at least 6 mm: 2 mm")],
  ["nothing is expected", "", rows("2 .. 6 mm: 1 mm", "6 .. 8 mm: 2 mm")],
  ["just what is expected, in the other unit", "0.25 .. 0.5 in", rows("6.35 .. 12.7 mm: 1 mm")],
  ["expected with one end", "at most 8 mm", rows("2 .. 8 mm: 1 mm")],
])("silent: %s", (_, expected, given) => {
  expectFindings(text(expected, given));
});

test.each([
  ["a gap", "", rows("2 .. 6 mm: 1 mm", ["6.001 .. 8 mm: 2 mm"])],
  ["a gap in any order", "", rows(["6.001 .. 8 mm: 2 mm"], "2 .. 6 mm: 1 mm")],
  ["a gap after conversion: 0.251 in is 6.3754 mm", "", rows("2 .. 6.375 mm: 1 mm", ["0.251 .. 0.5 in: 2 mm"])],
  ["an overlap", "", rows("2 .. 6 mm: 1 mm", ["5.999 .. 8 mm: 2 mm"])],
  ["an overlap after conversion", "", rows("2 .. 6.351 mm: 1 mm", ["0.25 .. 0.5 in: 2 mm"])],
  ["a row inside another, and one behind both", "", rows("2 .. 6 mm: 1 mm", ["3 .. 4 mm: 2 mm"], "6 .. 8 mm: 3 mm")],
])("%s", (_, expected, given) => {
  expectFindings(text(expected, given));
});

test.each([
  ["2 .. 8.001 mm", "at the upper end"],
  ["1.999 .. 8 mm", "at the lower end"],
  ["0.07 .. 0.314 in", "in the other unit: 0.07 in is 1.778 mm"],
])("%s is not covered: %s", (expected) => {
  const given = text(expected, rows("2 .. 6 mm: 1 mm", "6 .. 8 mm: 2 mm"));
  expectFindings(given.replace("{\n    2 ..", `{\n${AT}    2 ..`));
});

test("it says between which values, and where", () => {
  expect(told(text("", rows("2 .. 6 mm: 1 mm", ["7 .. 8 mm: 2 mm"])), "limits.choice")).toMatchInlineSnapshot(`
    "No Shim is chosen between 6 mm and 7 mm.
      One row ends at 6 mm, the next begins at 7 mm; Gap may lie between them.
    → Let each row begin at the value where the one before it ends, in the same unit.
    &6 The row before it stands here"
  `);
  expect(told(text("", rows("2 .. 6 mm: 1 mm", ["5 .. 8 mm: 2 mm"])), "limits.choice")).toMatchInlineSnapshot(`
    "Two rows choose Shim from 5 mm to 6 mm.
      Where Gap is from 5 mm to 6 mm, both rows hold.
    → Let each row begin at the value where the one before it ends, in the same unit.
    &6 The row before it stands here"
  `);
  expect(told(text("2 .. 9 mm", rows("2 .. 8 mm: 1 mm")), "limits.choice")).toMatchInlineSnapshot(`
    "No Shim is chosen above 8 mm.
      Gap is expected up to 9 mm, and the highest row ends at 8 mm.
    → Add a row for it, or let the row at that end reach as far as is expected.
    &4 This is expected"
  `);
  expect(told(text("1 .. 8 mm", rows("2 .. 8 mm: 1 mm")), "limits.choice")).toMatchInlineSnapshot(`
    "No Shim is chosen below 2 mm.
      Gap is expected from 1 mm, and the lowest row begins at 2 mm.
    → Add a row for it, or let the row at that end reach as far as is expected.
    &4 This is expected"
  `);
});
