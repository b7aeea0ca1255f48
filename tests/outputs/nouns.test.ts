// Titles in sentences: plurals as English has them, and German labels that are not the same for two things. The plurals are those
// of any dictionary (memory).
import { expect, test } from "vitest";
import { de } from "#outputs/words/de.ts";
import { instructionsIn, make } from "./make.ts";
import { around } from "./procedures.ts";

test.each([
  ["foot", "the feet (left, right)"],
  ["rubber foot, front", "the rubber feet, front (left, right)"],
  ["coupling half", "the coupling halves (left, right)"],
  ["gear tooth", "the gear teeth (left, right)"],
  ["scraper knife", "the scraper knives (left, right)"],
  ["spring leaf", "the spring leaves (left, right)"],
  ["box with root", "the boxes with root (left, right)"],
  // Near misses: words that only end alike.
  ["belief", "the beliefs (left, right)"],
  ["square root", "the square roots (left, right)"],
])("several of “%s” are “%s”", (title, said) => {
  const text = around("step install Two[left, right]", `part Two[left, right] "${title}"`);
  expect(instructionsIn(make(text).document)).toEqual([`Install ${said}.`]);
});

test("in German the box for a sign-off and the place for the signature have words of their own", () => {
  expect(de.labels.sign).not.toBe(de.labels.signature);
});
