// limits.choice: rows compared exactly after conversion. 1 in = 25.4 mm exactly (NIST SP 811, B.8), so 0.25 in = 6.35 mm.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

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

/* What is left, at each end of the row: the reading less the value (arithmetic). 0.05 in = 1.27 mm exactly. */
const left = (wanted: string, row: string, expected = ""): string =>
  `${row.endsWith("Thin") ? "value Thin = 2 mm\n" : ""}${text(expected, `    ${row}`)}`.replace(
    "by Gap {",
    `by Gap leaving ${wanted} {`,
  );
const remainders = (given: string): readonly string[] =>
  findingsIn(given)
    .filter(({ code }) => code === "limits.choice")
    .map(({ severity, message }) => `${severity}: ${message}`);

test.each([
  ["both ends reached", "1 .. 2 mm", "3 .. 4 mm: 2 mm", ""],
  ["in the other unit", "0.05 .. 0.1 in", "2.54 .. 3.81 mm: 1.27 mm", ""],
  ["below zero", "-0.05 .. 0 mm", "2 .. 2.05 mm: 2.05 mm", ""],
  ["one end only", "at most 2 mm", "at most 4 mm: 2 mm", ""],
  ["the other end only", "at least 1 mm", "at least 3 mm: 2 mm", ""],
  ["a row that reaches further than is expected", "1 .. 2 mm", "2 .. 9 mm: 2 mm", "3 .. 4 mm"],
  ["an open row, as far as is expected", "1 .. 2 mm", "at least 3 mm: 2 mm", "3 .. 4 mm"],
  ["a value by name", "1 .. 2 mm", "3 .. 4 mm: Thin", ""],
  ["a row in which nothing is expected", "1 .. 2 mm", "3 .. 4 mm: 2 mm\n    4 .. 9 mm: 9 mm", "3 .. 4 mm"],
])("left as wanted: %s", (_, wanted, row, expected) => {
  expect(remainders(left(wanted, row, expected))).toEqual([]);
});

test.each([
  ["too much", "1 .. 1.999 mm", "3 .. 4 mm: 2 mm", "", "2 mm leaves 1 .. 2 mm of Gap."],
  ["too little", "1.001 .. 2 mm", "3 .. 4 mm: 2 mm", "", "2 mm leaves 1 .. 2 mm of Gap."],
  [
    "too much after conversion",
    "0.05 .. 0.1 in",
    "2.54 .. 3.82 mm: 1.27 mm",
    "",
    "1.27 mm leaves 0.05000 .. 0.10039 in of Gap.",
  ],
  [
    "too little after conversion",
    "0.05 .. 0.1 in",
    "2.53 .. 3.81 mm: 1.27 mm",
    "",
    "1.27 mm leaves 0.04961 .. 0.10000 in of Gap.",
  ],
  ["in inches, too much", "0.05 .. 0.1 in", "0.1 .. 0.151 in: 0.05 in", "", "0.05 in leaves 0.050 .. 0.101 in of Gap."],
  ["a value by name", "0 .. 1.5 mm", "3 .. 4 mm: Thin", "", "2 mm leaves 1 .. 2 mm of Gap."],
  ["a row without an end", "1 .. 2 mm", "at least 3 mm: 2 mm", "", "2 mm leaves at least 1 mm of Gap."],
  [
    "expected further than the limit reaches",
    "1 .. 2 mm",
    "2 .. 9 mm: 2 mm",
    "3 .. 4.1 mm",
    "2 mm leaves 1.0 .. 2.1 mm of Gap.",
  ],
])("left otherwise: %s", (_, wanted, row, expected, message) => {
  expect(remainders(left(wanted, row, expected))).toEqual([`error: ${message}`]);
});

test("it says what would do, or that nothing does", () => {
  expectFindings(
    `${left("1 .. 2 mm", "3 .. 4 mm: 3 mm").replace("    3 .. 4 mm: 3 mm", "    3 .. 4 mm: 3 mm\n    //         ^^^^ limits.choice error")}`,
  );
  expect(told(left("1 .. 2.5 mm", "3 .. 4 mm: 3 mm"), "limits.choice")).toMatchInlineSnapshot(`
    "3 mm leaves 0 .. 1 mm of Gap.
      In this row Gap is 3 .. 4 mm.
      wanted: 1 .. 2.5 mm
      left:   0 .. 1 mm
    → Choose 1.5 .. 2.0 mm in this row.
    &5 This is to be left"
  `);
  expect(told(left("1 .. 1.5 mm", "3 .. 4 mm: 2 mm"), "limits.choice")).toMatchInlineSnapshot(`
    "2 mm leaves 1 .. 2 mm of Gap.
      In this row Gap is 3 .. 4 mm.
      wanted: 1 .. 1.5 mm
      left:   1 .. 2 mm
    → No one value does for the whole row: part it into narrower rows.
    &5 This is to be left"
  `);
});

test("all three are of one kind", () => {
  const kinds = (given: string): readonly string[] => findingsIn(given).map(({ code }) => code);
  expect(kinds(left("1 .. 2 N·m", "3 .. 4 mm: 2 mm"))).toEqual(["units.mismatch"]);
  expect(kinds(left("1 .. 2 mm", "3 .. 4 mm: 2 N·m"))).toEqual(["units.mismatch"]);
  expect(kinds(left("1 .. 2 mm", "3 .. 4 mm: 2 mm"))).toEqual([]);
});
