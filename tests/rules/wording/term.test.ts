// wording.term: in which texts and forms, which terms hold where, and the fix. More forms: `tests/analysis/wording/texts.test.ts`.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, withFix } from "#harness/check.ts";

test("in steps, notes, titles and labels; not in codes, quotes, sources and reasons", () => {
  expectFindings(`term "housing" not "casing"
source Manual "casing manual" revision "1"
part Housing "pump casing"
//                 ^^^^^^ wording.term warning

procedure P "Open the casing" {
//                    ^^^^^^ wording.term
  begin with Housing is installed

  step "Look into the casing's bore at CASING-12." {
//                    ^^^^^^^^ wording.term
    record "number on the casing"
//                        ^^^^^^ wording.term
    per Manual "casing"
  }
  note """
    The label says \\"CASING\\".
    Casings are grey.
//  ^^^^^^^ wording.term
    """
}
`);
});

test("a term of a procedure holds in it, one of a used file in all", () => {
  const text = `use "shop.sprag"

procedure A "A" {
  term "guard" not "shroud"
  step "Look at the shroud of the casing."
}
procedure B "B" {
  step "Look at the shroud of the casing."
}
`;
  const messages = findingsIn(text, { "shop.sprag": 'term "housing" not "casing"\n' }).map(({ message }) => message);
  expect(messages).toEqual([
    "“shroud” is called “guard” here.",
    "“casing” is called “housing” here.",
    "“casing” is called “housing” here.",
  ]);
});

test("the fix writes the approved word in the form that fits, with its article", () => {
  const text = 'term "apron" not "shroud"\n\nprocedure P "Look" {\n  step "Look at a shroud. Shrouds are grey."\n}\n';
  const [first, second] = findingsIn(text);
  expect(first && withFix(text, first)).toContain("Look at an apron. Shrouds");
  expect(second && withFix(text, second)).toContain("Aprons are grey.");
});
