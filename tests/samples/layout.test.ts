// The samples and the formatter: what a newcomer copies is in canonical layout, and laying out a text costs no finding.
import { expect, test } from "vitest";
import { findingsAt, isFaulty, isShopProcedure, openSamples, plainTexts, sampleTexts } from "#harness/samples.ts";
import { formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";

const canonical = [...sampleTexts].filter(([path]) => isShopProcedure(path) || path.startsWith("shop/"));
const others = [...plainTexts.keys()].filter((path) => isFaulty(path) || path.startsWith("language/"));

test.each(canonical)("%s is in canonical layout", (path, text) => {
  const formatted = formatText(parseText(text, path));
  expect(formatted).toEqual({ ok: true, text });
});

test("formatted samples have the findings they had, but for spellings that are put right", () => {
  const formatted = new Map<string, string>();
  for (const path of others) {
    const result = formatText(parseText(plainTexts.get(path) ?? "", path));
    if (result.ok) formatted.set(path, result.text);
  }
  // Texts with a problem of form stay untouched.
  const untouched = others.filter((path) => !formatted.has(path));
  expect(untouched.filter((path) => !path.startsWith("faulty/syntax."))).toEqual([]);
  expect(untouched.length).toBeGreaterThan(0);

  const before = findingsIn(new Map()).filter((finding) => !finding.includes(" units.style "));
  expect(before.length).toBeGreaterThan(30);
  expect(findingsIn(formatted)).toEqual(before);
});

/** Code and text of the place of each finding, laid out on one line. */
function findingsIn(changed: ReadonlyMap<string, string>): string[] {
  return findingsAt(openSamples(changed), others).map(({ path, finding }) => {
    const lines = (changed.get(path) ?? plainTexts.get(path) ?? "").split("\n");
    const { start, end } = finding.range;
    const place = lines.slice(start.line, end.line + 1);
    place[place.length - 1] = (place.at(-1) ?? "").slice(0, end.character);
    place[0] = (place[0] ?? "").slice(start.character);
    return `${path} ${finding.code} ${finding.severity} ${place.join(" ").replace(/\s+/g, " ")}`;
  });
}
