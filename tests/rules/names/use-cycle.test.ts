// names.use-cycle: files, procedures and values in a circle.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("two files that use each other, each told in its own place", () => {
  expectFindings(`// file: a.sprag
use "b.sprag"
//  ^^^^^^^^^ names.use-cycle

part Cover "cover"
// file: b.sprag
use "a.sprag"
//  ^^^^^^^^^ names.use-cycle

part Seal "seal"
`);
});

test("a procedure that performs itself through another", () => {
  const text = `part Filter "oil filter"

procedure Look "Look over the filter" {
  step inspect Filter
  perform Bleed
//^^^^^^^^^^^^^ names.use-cycle
}
procedure Bleed "Bleed the filter" {
  perform Look
//^^^^^^^^^^^^ names.use-cycle
}`;
  expectFindings(text);
  expect(told(text, "names.use-cycle")).toMatchInlineSnapshot(`
    "This procedure comes back to itself.
      Look → Bleed → Look
    → Take one “perform” out of the circle."
  `);
});

test("a value worked out from itself", () => {
  const text = `value Low = High - 2 N·m
value High = Low + 2 N·m
//           ^^^ names.use-cycle
`;
  expectFindings(text);
});

test("silent: two that use a third, one procedure performed twice", () => {
  expectFindings(`// file: a.sprag
use "b.sprag"
use "c.sprag"

part Plug "plug" { needs Cover, Seal }
// file: b.sprag
use "c.sprag"

part Cover "cover" { needs Seal }
// file: c.sprag
part Seal "seal"
`);
  expectFindings(`part Filter "oil filter"

procedure Whole "Whole work" {
  perform Look
  perform Look
}
procedure Look "Look over the filter" {
  step inspect Filter
}`);
});
