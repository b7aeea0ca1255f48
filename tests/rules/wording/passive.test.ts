// wording.passive: orders in the passive, beside conditions and checks that may be. More sentences: `tests/analysis/wording/`.
import { test } from "vitest";
import { expectFindings } from "#harness/check.ts";

test("from the helping verb to the participle", () => {
  expectFindings(`procedure P "Clean the sump" {
  step "The strainer must be thoroughly cleaned."
//                   ^^^^^^^^^^^^^^^^^^^^^^^^^^ wording.passive information
  step "If the seal is torn, it is to be replaced."
//                              ^^^^^^^^^^^^^^^^^ wording.passive
  step { do "The plug is tightened by hand." }
//                    ^^^^^^^^^^^^ wording.passive
  step "Look that the plug is seated. It is closed under WI-160-02."
  step "When the oil is drained, look at the plug."
  note "The strainer is cleaned by the night shift."
}
`);
});
