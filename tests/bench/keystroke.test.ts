// The keystrokes are as many as they say, each a small change of the text; those that should leave it readable do.
import { expect, test } from "vitest";
import { parseText } from "#syntax/parse.ts";
import { keystrokesIn } from "./keystroke.ts";
import { procedureOfLines } from "./procedure-text.ts";

test("edits at different places, half of them in the middle of a line", () => {
  const text = procedureOfLines(500);
  const keystrokes = keystrokesIn(text, 3);
  expect(keystrokes.length).toBeGreaterThan(20);
  expect(new Set(keystrokes.map((one) => one.text)).size).toBe(keystrokes.length);
  for (const { text: now, whole } of keystrokes) {
    expect(now.length).toBeGreaterThan(text.length);
    if (whole) expect(parseText(now, "a.sprag").problems).toEqual([]);
  }
  expect(keystrokes.filter((one) => parseText(one.text, "a.sprag").problems.length > 0).length).toBeGreaterThan(5);
});
