// Every rule's page is run: its first example has exactly its code, the second nothing at all, and both stand as formatted.
import { expect, test } from "vitest";
import { findingsIn, formatted } from "#harness/check.ts";
import { explain, pageMarkdown, pageText } from "#rules/explain.ts";
import { RULES } from "#rules/index.ts";

const pages = RULES.map((rule) => [rule.code, rule.page] as const);

test("the list has rules, and no code twice", () => {
  expect(pages.length).toBeGreaterThan(30);
  expect(new Set(pages.map(([code]) => code)).size).toBe(pages.length);
});

test.each(pages)("%s: the first example fails with exactly its code", (code, { fails, files = {}, crib }) => {
  const codes = findingsIn(fails, files, settingsOf(crib)).map((finding) => `${finding.code} ${finding.message}`);
  expect(codes.length).toBeGreaterThan(0);
  expect(codes.filter((found) => !found.startsWith(`${code} `))).toEqual([]);
});

test.each(pages)("%s: the mended example is silent", (_code, { mended, files = {}, crib }) => {
  expect(findingsIn(mended, files, settingsOf(crib))).toEqual([]);
});

test.each(pages)("%s: the mended example stands as the formatter writes it", (_code, { mended }) => {
  expect(formatted(mended)).toBe(mended);
});

test.each(RULES)("$code: its page can be read as text and as Markdown", (rule) => {
  expect(explain(rule.code)).toEqual({ known: true, code: rule.code, severity: rule.severity, page: rule.page });
  expect(pageText(rule)).toContain(rule.page.mended.trim().split("\n")[0]);
  expect(pageMarkdown(rule)).toContain(rule.page.fails.trim());
});

test.each(RULES)("$code: what it says fits a line and blames nobody", ({ code, page }) => {
  const found = findingsIn(page.fails, page.files, settingsOf(page.crib)).filter((finding) => finding.code === code);
  for (const { message, why = "", remedy = "" } of found) {
    expect(message.split(/\s+/).length).toBeLessThanOrEqual(14);
    expect(message).toMatch(/[.?]$/);
    expect(`${message} ${why} ${remedy}`).not.toMatch(/\binvalid\b|\byou\b|\bwrong\b|undefined|null|NaN/i);
  }
  expect(found.some(({ why, remedy }) => why !== undefined || remedy !== undefined)).toBe(true);
});

const MARKS = ["read", "second hand", "from memory: not verified", "common practice", "arithmetic"];

test("one set: how a source was read is said in one of a few ways, and no page addresses anybody", () => {
  const said = pages.flatMap(([, { source = "" }]) =>
    [...source.matchAll(/\(([^()]*)\)/g)].map(([, words = ""]) => words.replace(/^.*, /, "")),
  );
  const marks = said.filter((words) => /\b(?:read|second|memory|practice|verified|quoted?)\b/.test(words));
  expect(marks.length).toBeGreaterThan(30);
  expect(marks.filter((words) => !MARKS.includes(words))).toEqual([]);
  for (const [code, { finds, why, source = "" }] of pages) {
    expect(`${finds} ${why} ${source}`, code).not.toMatch(/\b(?:you|your|he|him|his|she|invalid|please|quiet)\b/i);
    for (const text of [finds, why, ...(source === "" ? [] : [source])]) expect(text, code).toMatch(/[.”]$/);
  }
});

/** The crib of an example stands in the example. */
function settingsOf(crib: true | undefined): { readonly crib?: string } {
  return crib === undefined ? {} : { crib: "main.sprag" };
}
