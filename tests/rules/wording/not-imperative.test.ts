// wording.not-imperative: what an instruction begins with, and the verbs of the shop. More sentences: `tests/analysis/wording/`.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

test("at the word where the verb should stand", () => {
  expectFindings(`procedure P "Clean the sump" {
  step "The fitter cleans the strainer with the brush."
//      ^^^ wording.not-imperative information
  step "After the run, the fitter must look at the strainer."
//                     ^^^ wording.not-imperative
  step { do "Removal of the strainer from the sump." }
//           ^^^^^^^ wording.not-imperative
  step "After the run, look at the strainer."
  step "Torque the plug with the key."
  step "Torque." { do "Slowly, turn the plug in." }
  note "The strainer is behind the plug."
}
`);
});

const codes = (text: string): readonly string[] => findingsIn(text).map(({ code }) => code);

test("a verb of the shop is known where it is declared: in the file, in the procedure, in a used file", () => {
  const procedure = 'procedure P "Fit the bushes" {\n  step "Cement bushes into the bores."\n}\n';
  expect(codes(procedure)).toEqual(["wording.not-imperative"]);
  expect(codes(`verb "glaze", "Cement"\n${procedure}`)).toEqual([]);
  expect(codes(procedure.replace("{\n", '{\n  verb "cement"\n'))).toEqual([]);
  expect(codes(`${procedure.replace("{\n", '{\n  verb "cement"\n')}${procedure.replace(" P ", " Q ")}`)).toEqual([
    "wording.not-imperative",
  ]);
  const using = `use "shop.sprag"\n\n${procedure}`;
  expect(findingsIn(using, { "shop.sprag": 'verb "cement"\n' }).map(({ code }) => code)).toEqual([]);
});

test("a passive order is told of once, and other languages are left alone", () => {
  expect(codes('procedure P "Clean" {\n  step "The strainer must be cleaned."\n}\n')).toEqual(["wording.passive"]);
  expect(codes('procedure P "Reinigen" {\n  step "Der Filter wird vom Monteur gereinigt."\n}\n')).toEqual([]);
});

test("what is said", () => {
  expect(told('procedure P "Clean" {\n  step "The fitter cleans the strainer."\n}\n', "wording.not-imperative")).toBe(
    `This instruction begins with “The”, not with what is to be done.
  A statement leaves open who does it, and whether it is still to be done.
→ Begin with the verb.`,
  );
  expect(told('procedure P "Clean" {\n  step "Fitter cleans the strainer."\n}\n', "wording.not-imperative")).toContain(
    'If “Fitter” is one in your shop, add it to the library: verb "fitter".',
  );
});
