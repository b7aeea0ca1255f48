// One name in two spellings, é as one sign and as e with its accent behind it, is one name: declared in one and used in the
// other, for every sort of name there is.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { fillWords } from "#model/fill-words.ts";
import { expandedOf, modelOf, stepsIn } from "./model-of.ts";

const COMPOSED = "\u00e9";
const DECOMPOSED = "e\u0301";

/** The first é of a pair declares, the second one uses. */
const PAIRS: readonly (readonly [string, string])[] = [
  ["a part", 'part Cé "c"\nprocedure P "p" {\n  begin with Cé is installed\n  step inspect Cé\n}\n'],
  [
    "a state of its own",
    'part Valve "valve" { states ouverté, ferméo }\nprocedure P "p" {\n  step { inspect Valve  needs Valve is ouverté }\n}\n',
  ],
  [
    "a choice",
    'part C "c"\noption Extent "extent" { Révise "all"  Reseal "seal" }\nprocedure P "p" {\n  when Extent is Révise { step inspect C }\n}\n',
  ],
  ["a named instance", 'part Foot[drivé, other] "foot"\nprocedure P "p" {\n  step inspect Foot[drivé]\n}\n'],
  ["a loop variable", 'part S[1..2] "s"\nprocedure P "p" {\n  repeat né in 1, 2 { step inspect S[né] }\n}\n'],
  ["a step", 'part C "c"\nprocedure P "p" {\n  step Révise { inspect C }\n  step { inspect C  after Révise }\n}\n'],
  ["a procedure", 'part C "c"\nprocedure Révise "r" { step inspect C }\nprocedure P "p" { perform Révise }\n'],
  [
    "a hazard",
    'hazard Poussiéro "dust"\npart C "c"\nprocedure P "p" {\n  step { inspect C  caution Poussiéro "Dust."  avoid "Wear it." }\n}\n',
  ],
];

/** The text with its é of each number (from 0, taking turns) in one spelling, the others in the other. */
function spelt(text: string, declares: string, uses: string): string {
  let nth = 0;
  return text.replaceAll("é", () => (nth++ === 0 ? declares : uses));
}

test.each(PAIRS)("%s", (_sort, text) => {
  const plain = findingsIn(text).map(({ code }) => code);
  expect(plain.filter((code) => code.startsWith("names.unknown") || code.startsWith("syntax"))).toEqual([]);
  for (const [declares, uses] of [
    [COMPOSED, DECOMPOSED],
    [DECOMPOSED, COMPOSED],
    [DECOMPOSED, DECOMPOSED],
  ] as const) {
    const mixed = spelt(text, declares, uses);
    expect(mixed).not.toBe(text);
    expect(findingsIn(mixed).map(({ code }) => code)).toEqual(plain);
  }
});

test("twice the same name in two spellings is twice the same name", () => {
  const twice = (one: string, other: string): string =>
    `option Extent "extent" { R${one}vise "all"  R${other}vise "again" }\n`;
  for (const [one, other] of [
    [COMPOSED, COMPOSED],
    [COMPOSED, DECOMPOSED],
    [DECOMPOSED, COMPOSED],
  ] as const)
    expect(modelOf(twice(one, other)).problems.map(({ kind }) => kind)).toContain("duplicate name");
});

test("a loop variable fills own words in either spelling", () => {
  const text = `procedure P "p" {\n  repeat n${DECOMPOSED} in 1, 2 { step "Push {n${COMPOSED}} and {n${DECOMPOSED}}." }\n}\n`;
  expect(stepsIn(expandedOf(text).items).map(({ step, pass }) => fillWords(step.words ?? "", pass))).toEqual([
    "Push 1 and 1.",
    "Push 2 and 2.",
  ]);
});
