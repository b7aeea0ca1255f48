// The place of a completion in half-typed text: the block, what may follow, and that reading only what changed gives the same.
import { describe, expect, test } from "vitest";
import { plainTexts } from "#harness/samples.ts";
import { placeAt } from "#server/completion/place.ts";
import { tokensBefore } from "#server/completion/tokens.ts";

function placeIn(marked: string): NonNullable<ReturnType<typeof placeAt>> {
  const offset = marked.indexOf("<|>");
  const place = placeAt(marked.replace("<|>", ""), offset);
  if (place === null) throw new Error("in a comment");
  return place;
}

describe("the block", () => {
  test.each([
    ["of the file", "part A {}\n<|>", "file"],
    ["of a part", "part A { mass 3 kg <|>", "part"],
    ["of a part inside a procedure", "procedure P { part A { <|>", "part"],
    ["of a procedure", "procedure P { part A { } <|>", "procedure"],
    ["of a task", "procedure P { task { step { } <|>", "flow"],
    ["of a step", "procedure P { step { <|>", "step"],
    ["of a repeat between steps", "procedure P { repeat n in 1 { <|>", "flow"],
    ["of a repeat in a step", "procedure P { step { repeat n in 1 { <|>", "step"],
    ["of a check's failing path", 'procedure P { step { check "x" if it fails { <|>', "step"],
    ["of an otherwise", "procedure P { when A is b { } otherwise { <|>", "flow"],
    ["round the rows of a choice", "procedure P { step { choose A by B { <|>", "step"],
    ["of a crib's item", 'crib C { item "1" for W { <|>', "crib item"],
    ["past a procedure that was left open", "procedure P { step {\nprocedure Q {\n  <|>", "procedure"],
    ["past a step that was left open", "procedure P {\n  step {\n    do\n  step {\n  }\n  <|>", "procedure"],
    ["past braces that open nothing", "} } }\nprocedure P { <|>", "procedure"],
  ])("%s", (_, text, block) => {
    expect(placeIn(text).block).toBe(block);
  });
  test("the variables of the repeats round it", () => {
    expect(placeIn("procedure P { repeat n in 1 { repeat m from 1 to 2 { step install A[<|>").loops).toEqual([
      "n",
      "m",
    ]);
  });
  test("the word that has been begun", () => {
    expect(placeIn("procedure P { step ins<|>").prefix).toBe("ins");
    expect(placeIn("value A = 45 N·<|>").prefix).toBe("N·");
    expect(placeIn("value A = 45 <|>").prefix).toBe("");
  });
});

describe("reading only what changed", () => {
  const texts = [...plainTexts.values()].filter((text) => text.length > 400).slice(0, 12);
  test.each([
    ["a word is typed", (text: string, at: number) => `${text.slice(0, at)} x${text.slice(at)}`],
    ["a line goes", (text: string, at: number) => text.slice(0, at) + text.slice(text.indexOf("\n", at) + 1)],
    ["a comment is opened", (text: string, at: number) => `${text.slice(0, at)}/*${text.slice(at)}`],
    ["a text is opened", (text: string, at: number) => `${text.slice(0, at)}"${text.slice(at)}`],
    ["a number stands before it", (text: string, at: number) => `${text.slice(0, at)}12 ${text.slice(at)}`],
  ])("gives what reading all gives where %s", (_, change) => {
    let compared = 0;
    for (const [which, text] of texts.entries())
      for (let step = 1; step < 8; step++) {
        const key = {};
        const at = Math.floor((text.length * step) / 8) + which;
        tokensBefore(text, Math.min(at + 40, text.length), key);
        const changed = change(text, at);
        for (const offset of [at, Math.min(at + 60, changed.length), changed.length]) {
          expect(tokensBefore(changed, offset, key)).toEqual(tokensBefore(changed, offset));
          compared++;
        }
      }
    expect(compared).toBeGreaterThan(100);
  });
});
