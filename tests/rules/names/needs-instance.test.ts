// names.needs-instance: which of several, and brackets where there is one.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("work on one of several without saying which", () => {
  const text = `part Screw[1..8] "cover screw"

procedure Fit "Fit the screws" {
  step install Screw[all]
  step inspect Screw
  //           ^^^^^ names.needs-instance
}`;
  expectFindings(text);
  expect(told(text, "names.needs-instance")).toMatchInlineSnapshot(`
    "Which Screw? There are several.
      Screw is declared with 1..8.
    → Say which in brackets, or write Screw[all].
    &1 Screw is declared here with 1..8"
  `);
});

test("brackets behind a single part", () => {
  const text = `part Cover "bearing cover"

procedure Fit "Fit the cover" {
  step inspect Cover[1]
  //           ^^^^^^^^ names.needs-instance
  step inspect Cover[all]
  //           ^^^^^^^^^^ names.needs-instance
}`;
  expectFindings(text);
  expect(told(text, "names.needs-instance")).toMatchInlineSnapshot(`
    "There is only one Cover, so it takes no brackets.
    → Write Cover, or declare several, as in Cover[1..4].
    &1 Cover is declared here as one part"
  `);
});

test("silent: in conditions and relations the bare name means all of them", () => {
  expectFindings(`part Screw[1..8] "cover screw"
part Guard "guard" {
  needs Screw
  encloses Screw
}

procedure Fit "Fit the screws" {
  finish with Screw are installed
  step install Screw[all]
  step install Guard
}`);
});
