// What is kept by a text is what is made from it, and no more is kept than is said.
import fc from "fast-check";
import { expect, test } from "vitest";
import { keptByText } from "#analysis/kept-by-text.ts";

test("the same text has the same record, made once", () => {
  const made: string[] = [];
  const of = keptByText((text) => ({ text, at: made.push(text) }));
  expect(of("a")).toBe(of("a"));
  expect(of("b")).toEqual({ text: "b", at: 2 });
  expect(made).toEqual(["a", "b"]);
});

test("whatever is asked in whatever order, each text has its own; of the last ones none is made again", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }).map(String)), fc.integer({ min: 1, max: 5 }), (texts, most) => {
      const made: string[] = [];
      const of = keptByText((text) => ({ text: made.push(text) && text }), most);
      for (const [at, text] of texts.entries()) {
        const before = made.length;
        expect(of(text).text).toBe(text);
        const last = new Set<string>();
        for (let back = at - 1; back >= 0 && last.size < most; back--) last.add(texts[back] ?? "");
        if (last.has(text)) expect(made).toHaveLength(before);
      }
    }),
  );
});

test("texts that were not asked for in a long time are let go", () => {
  let made = 0;
  const of = keptByText(() => ({ at: ++made }), 2);
  for (const text of ["a", "b", "c", "d", "e"]) of(text);
  expect(of("a")).toEqual({ at: 6 });
});
