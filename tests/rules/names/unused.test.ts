// names.unused: a hint where nothing uses what is declared, and silence where that cannot be known.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("a part, a tool, an option, a fact and a value", () => {
  const text = `part Seal "seal"
part SpareSeal "spare seal"
//   ^^^^^^^^^ names.unused hint
tool Driver "seal driver"
//   ^^^^^^ names.unused
option Extent "extent of work" { Full Reseal }
//     ^^^^^^ names.unused
fact Dry "it is dry"
//   ^^^ names.unused
value Torque = 40 N·m
//    ^^^^^^ names.unused

procedure Fit "Fit the seal" {
  step install Seal
}`;
  expectFindings(text);
  expect(told(text, "names.unused")).toMatchInlineSnapshot(`
    "The part SpareSeal is not used.
    → Take it out, or write the step that uses it."
  `);
});

test("an energy is used by what it drives, or by being switched", () => {
  const text = (drives: string): string => `energy Oil "oil pressure" { pressure 90 bar }
part Seal "seal"${drives}

procedure Fit "Fit the seal" {
  step inspect Seal
}`;
  expect(told(text(""), "names.unused")).toMatchInlineSnapshot(`
    "The energy Oil is not used.
    → Say which part it drives (“driven by”) or isolate it; else take it out."
  `);
  expectFindings(text(" { driven by Oil }"));
});

test("a use of which nothing is used", () => {
  const text = `use "shop/tools.sprag"
//  ^^^^^^^^^^^^^^^^^^ names.unused

part Seal "seal"

procedure Fit "Fit the seal" {
  step install Seal
}
// file: shop/tools.sprag
tool Driver "seal driver"
`;
  expectFindings(text);
});

test("silent: libraries, what another declaration uses, screws of a cover that is used", () => {
  expectFindings('part Seal "seal"\npart SpareSeal "spare seal"\n');
  expectFindings(`material Rubber "rubber"
part Seal "seal" { material Rubber }
part Screw[1..2] "screw" { secures Seal }
value Half = 20 N·m
value Whole = 2 * Half

procedure Fit "Fit the seal" {
  finish with Seal is secured
  step install Seal
  step install Screw[all]
  step tighten Screw[all] by hand to Whole
}`);
});
