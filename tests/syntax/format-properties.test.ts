// The formatter over all samples, spoilt in many ways: one text comes out, nothing is said differently, each comment
// stays between the words it stood between.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isThorough } from "#harness/thorough.ts";
import { formatEdits, formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";
import { procedureOfLines } from "../bench/procedure-text.ts";
import { commented, mangled, sampleTexts, squeezed, trailingComments } from "./format-mangle.ts";

/** Layouts that each sample is spoilt to. */
const RUNS = isThorough ? 12 : 3;

test("there are samples to try", () => {
  expect(sampleTexts.length).toBeGreaterThan(30);
});

test.each(sampleTexts)("$path: formatting twice is formatting once, and says the same", ({ text }) => {
  const once = formatted(text);
  expect(formatted(once)).toBe(once);
  expect(treeOf(once)).toEqual(treeOf(canonicallySpelled(text)));
  expect(trailingComments(once)).toEqual(trailingComments(text));
});

test.each(sampleTexts)("$path: one text comes out, however it was laid out", ({ text }) => {
  const canonical = formatted(text);
  fc.assert(
    fc.property(mangled(canonical), (spoilt) => {
      expect(formatted(spoilt)).toBe(canonical);
    }),
    { numRuns: RUNS },
  );
});

test.each(sampleTexts)("$path: comments anywhere stay between the same words", ({ text }) => {
  fc.assert(
    fc.property(commented(formatted(text)), (spoilt) => {
      const once = formatted(spoilt);
      expect(squeezed(once)).toEqual(squeezed(spoilt));
      expect(trailingComments(once)).toEqual(trailingComments(spoilt));
      expect(formatted(once)).toBe(once);
    }),
    { numRuns: RUNS },
  );
});

test.each(sampleTexts)("$path: the edits lead to the formatted text", ({ text, path }) => {
  const canonical = formatted(text);
  fc.assert(
    fc.property(mangled(canonical), (spoilt) => {
      let edited = spoilt;
      for (const { span, newText } of [...formatEdits(parseText(spoilt, path))].reverse()) {
        expect(span.path).toBe(path);
        edited = edited.slice(0, span.start) + newText + edited.slice(span.end);
      }
      expect(edited).toBe(canonical);
    }),
    { numRuns: isThorough ? 6 : 1 },
  );
  expect(formatEdits(parseText(canonical, path))).toEqual([]);
});

test("a text cut off anywhere is either formatted whole or left alone", () => {
  const { text } = sampleTexts.find(({ path }) => path.endsWith("04-steps.sprag")) ?? { text: "" };
  fc.assert(
    fc.property(fc.nat({ max: text.length }), (length) => {
      const file = parseText(text.slice(0, length), "cut.sprag");
      const result = formatText(file);
      expect(result.ok).toBe(file.problems.length === 0);
      if (result.ok) expect(squeezed(result.text)).toEqual(squeezed(file.text));
      else expect(formatEdits(file)).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test("5,000 lines are formatted in less than two seconds", () => {
  const file = parseText(procedureOfLines(5000), "long.sprag");
  const start = performance.now();
  expect(formatText(file).ok).toBe(true);
  expect(performance.now() - start).toBeLessThan(2000);
});

test("one long comment, or very many, are handled in time", () => {
  const comment = `/*${" ".repeat(200_000)}*/`;
  const many = "part A /* a */ ".repeat(5000);
  const start = performance.now();
  expect(formatted(`${comment} part B`)).toBe(`${comment} part B\n`);
  expect(formatted(many).split("\n").length).toBe(5001);
  expect(performance.now() - start).toBeLessThan(3000);
});

function formatted(text: string): string {
  const file = parseText(text, "any.sprag");
  const result = formatText(file);
  if (!result.ok) throw new Error(`left alone: ${JSON.stringify(file.problems[0] ?? "for no problem")}\n${text}`);
  return result.text;
}

/** The one spelling in the samples that is not canonical: it shows `units.style`. */
function canonicallySpelled(text: string): string {
  return text
    .replaceAll("N*m", "N·m")
    .replaceAll("+/-", "±")
    .replaceAll(" degC", " °C")
    .replaceAll(" um", " µm")
    .replaceAll("−", "-");
}

/** The tree as plain data, without places. */
function treeOf(text: string): unknown {
  const { file } = parseText(text, "any.sprag");
  return JSON.parse(
    JSON.stringify(file, (key, value) => {
      if (key.startsWith("$") && key !== "$type") return undefined;
      return value !== null && typeof value === "object" && "$refText" in value ? value.$refText : value;
    }),
  );
}
