// The slips that writers make: one problem for each, at its place, and words that help with it.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { layOut } from "#rules/lay-out.ts";
import { character } from "#rules/syntax/character.ts";
import { dashRange } from "#rules/syntax/dash-range.ts";
import { decimalComma } from "#rules/syntax/decimal-comma.ts";
import { reservedWord } from "#rules/syntax/reserved-word.ts";
import { unclosed } from "#rules/syntax/unclosed.ts";
import { unexpected } from "#rules/syntax/unexpected.ts";
import { linesOf } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import type { SyntaxProblem } from "#syntax/problem.ts";
import { meaningSlips } from "./meaning-slips.ts";
import { numberSlips } from "./number-slips.ts";
import { placeOf } from "./slip-texts.ts";
import { slips as formSlips } from "./slips.ts";
import { wordSlips } from "./word-slips.ts";

const all = [...formSlips, ...numberSlips, ...wordSlips];
const slips = all.filter(({ code }) => code.startsWith("syntax."));

const rules = [character, dashRange, decimalComma, reservedWord, unclosed, unexpected];

function ruleOf(problem: SyntaxProblem) {
  const found = rules.find((rule) => [rule.about].flat().includes(problem.kind));
  if (found === undefined) throw new Error(`No rule for ${problem.kind}`);
  return found;
}

test("the table holds at least thirty slips of form", () => {
  expect(slips.length).toBeGreaterThanOrEqual(30);
});

test.each(slips.map((slip) => [slip.slip, slip] as const))("%s", (_title, slip) => {
  const { problems } = parseText(slip.text, "a.sprag");
  const { offset, end } = placeOf(slip);
  expect(
    problems.map((problem) => ({ code: ruleOf(problem).code, start: problem.span.start, end: problem.span.end })),
  ).toEqual([{ code: slip.code, start: offset, end }]);
  const [problem] = problems as [SyntaxProblem];
  const { message, why, remedy } = ruleOf(problem).say(problem);
  expect([message, why, remedy].join("\n")).toMatch(slip.message);
});

test.each([...all, ...meaningSlips].map((slip) => [slip.slip, slip] as const))(
  "one finding of the whole check: %s",
  (_title, slip) => {
    const { offset, end } = placeOf(slip);
    const found = findingsIn(slip.text);
    expect(found.map(({ code, range }) => ({ code, range }))).toEqual([
      { code: slip.code, range: linesOf(slip.text).range(offset, end) },
    ]);
    const [{ message, why, remedy } = { message: "" }] = found;
    expect([message, why, remedy].join("\n")).toMatch(slip.message);
  },
);

test("what is said is short, names a remedy and blames nobody", () => {
  for (const slip of slips) {
    for (const problem of parseText(slip.text, "a.sprag").problems) {
      const { message, why, remedy } = ruleOf(problem).say(problem);
      expect(message.split(/\s+/).length, message).toBeLessThanOrEqual(13);
      expect(remedy, message).toBeTruthy();
      expect([message, why, remedy].join(" ")).not.toMatch(/invalid|illegal|you |your |wrong|error|token|parse/i);
    }
  }
});

/** The first fix done, or null where only the writer can mend it. */
function fixed(text: string, problem: SyntaxProblem): string | null {
  const [mend] = ruleOf(problem).fix?.(problem) ?? [];
  if (mend === undefined) return null;
  const fix = layOut(mend, () => text);
  if (fix === null) throw new Error("A mend of form finds its place in any text.");
  let mended = text;
  for (const edit of [...fix.edits].reverse()) {
    mended = mended.slice(0, edit.span.start) + edit.newText + mended.slice(edit.span.end);
  }
  return mended;
}

test("a fix takes its problem away and brings none", () => {
  let tried = 0;
  for (const slip of slips) {
    const [problem] = parseText(slip.text, "a.sprag").problems as [SyntaxProblem];
    const mended = fixed(slip.text, problem);
    if (mended === null) continue;
    tried++;
    expect(parseText(mended, "a.sprag").problems, `${slip.slip}:\n${mended}`).toEqual([]);
  }
  expect(tried).toBeGreaterThanOrEqual(25);
});

test("the examples of the pages show their problem, and are mended by what stands beside them", () => {
  for (const rule of rules) {
    expect(parseText(rule.page.fails, "a.sprag").problems.map((problem) => ruleOf(problem).code)).toEqual([rule.code]);
    expect(parseText(rule.page.mended, "a.sprag").problems).toEqual([]);
  }
});

test.each([
  ["step", "A statement can begin with “step”."],
  ["seat", "The language says other things with “seat”."],
])("why %s cannot be a name is true of it", (word, why) => {
  expect(findingsIn(`part ${word} "part"\n`).map((found) => found.why)).toEqual([why]);
});
