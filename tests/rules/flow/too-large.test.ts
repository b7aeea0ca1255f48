// flow.too-large: repeats that come to more than anyone will do, told at once.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

test("a zero too many", () => {
  const text = `procedure Count "Count the strokes" {
  repeat n from 1 to 1_000_000 { step "Read stroke {n}." }
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^ flow.too-large
}`;
  expectFindings(text);
  expect(told(text, "flow.too-large")).toMatchInlineSnapshot(`
    "This repeat comes to too many steps.
      It comes to 1,000,000 steps.
      The limit is 100,000.
    → Repeat less often, or split the procedure."
  `);
});

test("silent just at the limit", () => {
  expectFindings(`procedure Count "Count the strokes" {
  repeat n from 1 to 100_000 { step "Read stroke {n}." }
}`);
});

test("nested repeats multiply, and take no time over it", () => {
  const deep = (depth: number): string =>
    depth === 0 ? 'step "Look."' : `repeat n${depth} from 1 to 1000 { ${deep(depth - 1)} }`;
  const began = performance.now();
  const codes = findingsIn(`procedure Count "Count" {\n  ${deep(8)}\n}\n`).map(({ code }) => code);
  expect(codes).toEqual(["flow.too-large"]);
  expect(performance.now() - began).toBeLessThan(1000);
});
