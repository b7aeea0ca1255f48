// limits.spacing: k parts sit equally apart on n positions where k divides n (arithmetic), and then n/k apart.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (count: number, pins: readonly number[], marks: readonly number[] = []): string => `ring Circle {
  count ${count}
  numbered clockwise seen from "above"
  position 1 at 12 o'clock
}
temporary part Pin[1..${pins.length}] "pin" { seats in Circle equally spaced }
procedure Guide {
  finish with Pin[all] are installed
${pins
  .map(
    (at, n) =>
      `  step install Pin[${n + 1}] in Circle[${at}]\n${marks.includes(n + 1) ? "  //   ^^^^^^^^^^^^^^ limits.spacing error\n" : ""}`,
  )
  .join("")}}`;

test.each([
  [8, [1, 4], [2]],
  [8, [1, 3, 5, 8], [4]],
  [8, [1, 4, 7], [1, 2, 3]],
  [12, [2, 6, 11], [3]],
  [12, [12, 1], [2]],
])("not spaced: %i positions, %j", (count, pins, marks) => {
  expectFindings(text(count, pins, marks));
});

test.each([
  [8, [1, 5]],
  [8, [7, 3]],
  [8, [1, 3, 5, 7]],
  [12, [2, 6, 10]],
  [12, [12, 6]],
  [7, [4]],
])("silent: %i positions, %j", (count, pins) => {
  expectFindings(text(count, pins));
});

test("silent: taken out and put elsewhere", () => {
  expectFindings(
    text(8, [1, 4]).replace(
      "step install Pin[2] in Circle[4]",
      "step remove Pin[1]\n  step install Pin[2] in Circle[4]\n  step install Pin[1] in Circle[8]",
    ),
  );
});

test("it says where the other one could go", () => {
  expect(told(text(8, [1, 4], [2]), "limits.spacing")).toMatchInlineSnapshot(`
    "Pin[2] and Pin[1] are not equally spaced.
      Pin[1] is in Circle[1], and Pin[2] goes into Circle[4]. On 8 positions 2 of them stand 4 apart.
    → Put Pin[2] into Circle[5].
    &6 Equal spacing is asked for here"
  `);
  expect(told(text(8, [1, 4, 7], [1, 2, 3]), "limits.spacing")).toMatchInlineSnapshot(`
    "3 of these cannot be equally spaced on Circle.
      Circle has 8 positions, and 3 does not divide 8.
    → Put in as many as divide the count, or seat the part without “equally spaced”.
    &6 Equal spacing is asked for here"
  `);
});
