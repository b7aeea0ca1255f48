// Contracts of procedures: what was made in a circle does not outlive the procedure that was begun with.
import { expect, test } from "vitest";
import { createSummaries, type Summaries } from "#analysis/summaries.ts";
import type { Summary } from "#analysis/summary.ts";

/** Follows a procedure as `analysis/follow.ts` does: each that it performs once, by its contract. Says which were followed, in which order. */
function follow(summaries: Summaries, id: string, performs: Readonly<Record<string, string>>): string {
  let order = "";
  const one = (of: string): void => {
    order += of;
    summaries.following(of, () => {
      for (const performed of performs[of] ?? "")
        if (summaries.of(performed) === undefined) {
          one(performed);
          summaries.keep(performed, { of: performed } as unknown as Summary);
        }
    });
  };
  one(id);
  return order;
}

test("what hangs on no circle is followed once for all", () => {
  const summaries = createSummaries();
  const performs = { a: "bc", b: "c" };
  expect(follow(summaries, "a", performs)).toBe("abc");
  expect(follow(summaries, "b", performs)).toBe("b");
  expect(summaries.of("c")).toEqual({ of: "c" });
});

test("in a circle the next one begins anew, also with what performs the circle, and nothing is followed twice in one", () => {
  const summaries = createSummaries();
  // a performs the circle b, c, d; e stands outside.
  const performs = { a: "bcd", b: "ce", c: "de", d: "bc" };
  expect(follow(summaries, "a", performs)).toBe("abcde");
  expect(["b", "c", "d"].map(summaries.of)).toEqual([undefined, undefined, undefined]);
  expect(summaries.of("e")).toEqual({ of: "e" });
  expect(follow(summaries, "c", performs)).toBe(follow(createSummaries(), "c", performs).replace("e", ""));
  expect(follow(summaries, "a", performs)).toBe("abcd");
});

test("one that is asked for when nothing is under way leaves nothing of its circle behind", () => {
  const summaries = createSummaries();
  const performs = { b: "c", c: "b" };
  follow(summaries, "b", performs);
  summaries.keep("b", { of: "b" } as unknown as Summary);
  expect(summaries.of("b")).toBeUndefined();
});
