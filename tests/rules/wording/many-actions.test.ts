// wording.many-actions: what is joined and what is done together; the place is the second action. More sentences: `tests/analysis/wording/`.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("one finding for a text, at its second action", () => {
  expectFindings(`procedure P "Clean the sump" {
  step "Drain the sump, clean the strainer and fit the plug."
//                      ^^^^^ wording.many-actions information
  step Fill {
    do "Pour the oil in. Close the cap."
//                       ^^^^^ wording.many-actions
  }
  step "Remove the plug." { do "Lay the plug on a clean rag." }
  step "Hold the shaft and turn the nut with the key."
  step "Open and lock the vent."
  step "Turn the shaft by hand and feel for play."
}
`);
});

test("what is said", () => {
  expect(
    told('procedure P "Clean" {\n  step "Drain the sump, then clean the strainer."\n}\n', "wording.many-actions"),
  ).toBe(
    `This step asks for two actions: “drain” and “clean”.
  Somebody who is called away after the first cannot see by the words what is left to do.
→ Give each action a step of its own.`,
  );
});

// Each line of a step has a box of its own: what is said has to hold there too.
test("nothing is said of boxes over two lines", () => {
  const text = `part Seat "seat"
procedure P "Clean" {
  step "Clean the seat and inspect it." {
    clean Seat
    inspect Seat
  }
}
`;
  expect(told(text, "wording.many-actions")).toContain("This step asks for two actions");
  expect(told(text, "wording.many-actions")).not.toMatch(/tick|box/);
});
