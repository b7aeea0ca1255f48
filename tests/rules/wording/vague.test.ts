// wording.vague: with and without a criterion in the sentence. More sentences: `tests/analysis/wording/`.
import { test } from "vitest";
import { expectFindings } from "#harness/check.ts";

test("the words that leave it open", () => {
  expectFindings(`part Seal "seal"

procedure P "Grease the seal" {
  begin with Seal is installed

  warning eye "Sufficient oil can spray out." avoid "Use suitable glasses." wear "glasses"
//             ^^^^^^^^^^ wording.vague information
//                                                       ^^^^^^^^ wording.vague
  note "The lip needs enough oil. A lip that is properly greased runs quietly for a few years."
//                    ^^^^^^ wording.vague
  step "If necessary, put grease on the lip."
//      ^^^^^^^^^^^^ wording.vague
  step inspect Seal "for excessive wear"
//                       ^^^^^^^^^ wording.vague
  step { check "The lip is properly greased" }
//                         ^^^^^^^^ wording.vague
  step "Put grease on the lip until it shows all round, as required."
  step "Put 5 g of grease on the lip as needed."
  step "Put sufficient grease on the lip to fill the groove."
}
`);
});
