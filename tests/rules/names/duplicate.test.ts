// names.duplicate: one name twice in one scope, and where it may stand twice.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("two declarations of any sort", () => {
  const text = `part Seal "front seal"
tool Seal "seal driver"
//   ^^^^ names.duplicate
`;
  expectFindings(text);
  expect(told(text, "names.duplicate")).toMatchInlineSnapshot(`
    "Seal is declared twice.
      Lines that say the name could mean either.
    → Give one of the two another name.
    &1 Seal is declared first here"
  `);
});

test("a name that a used file declares, at the one that comes later", () => {
  expectFindings(`use "shop/tools.sprag"

part Puller "puller plate"
//   ^^^^^^ names.duplicate

procedure Look "Look at it" {
  step inspect Puller with Lamp
}
// file: shop/tools.sprag
tool Puller "bearing puller"
tool Lamp "lamp"
`);
});

test("steps and tasks of one procedure, choices, states, instances", () => {
  expectFindings(`part Lever "lever" { states open, closed, open }
//                                        ^^^^ names.duplicate
part Foot[left, left] "foot"
//              ^^^^ names.duplicate
option Extent "extent of work" { Full Full }
//                                    ^^^^ names.duplicate

procedure Look "Look at it" {
  task Look "Look" {
    step Look "Look closely."
//       ^^^^ names.duplicate
  }
  step {
    needs Lever is open or Foot[left] is removed
    when Extent is Full { inspect Lever }
  }
}`);
});

test("silent: the same name in two procedures, in two namespaces, or hiding an outer one", () => {
  expectFindings(`part Seal "seal"

procedure One "Look at one" {
  part Seal "seal of its own"
  step Look { inspect Seal }
}
procedure Two "Look at two" {
  step Look { inspect Seal }
}`);
});
