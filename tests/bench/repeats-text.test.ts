// The generated procedures are as long as they say when written out, and nothing is wrong with them.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { expandProcedure } from "#model/expand.ts";
import { lowerFiles } from "#model/lower.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";
import { blockOf, procedureOfPasses, stepsPerPass } from "./repeats-text.ts";

function stepsIn(text: string): number {
  const parsed = new Map([["main.sprag", parseText(text, "main.sprag")]]);
  linkFiles(parsed);
  const [procedure] = lowerFiles(parsed, () => false).get("main.sprag")?.procedures ?? [];
  return procedure === undefined ? 0 : expandProcedure(procedure).expanded.steps;
}

test("as many steps as asked for, or less than one pass fewer", () => {
  for (const wanted of [1_000, 10_000]) {
    expect(stepsIn(procedureOfPasses(wanted))).toBeLessThanOrEqual(wanted);
    expect(stepsIn(procedureOfPasses(wanted))).toBeGreaterThan(wanted - stepsPerPass);
  }
  for (const inAnyOrder of [false, true]) expect(stepsIn(blockOf(20, "independent", inAnyOrder))).toBe(20);
});

test("nothing of the order of work is wrong with them", () => {
  const texts = [procedureOfPasses(100), blockOf(20, "independent", true), blockOf(8, "dependent", true)];
  for (const text of texts) {
    const codes = findingsIn(text).map(({ code }) => code);
    expect(
      codes.filter((code) => /^(syntax|names|order|flow)\./.test(code)),
      text,
    ).toEqual([]);
  }
});
