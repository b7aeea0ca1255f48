// Where two texts differ, over texts longer than the pieces they are compared in: put together again they must give the later one, and
// no sign more may be the same.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editBetween } from "#syntax/edit.ts";

/** Signs that are often the same. */
const few = (most: number) => fc.array(fc.constantFrom("a", "b"), { maxLength: most }).map((signs) => signs.join(""));

describe("the stretch in which two texts differ", () => {
  it("is all that differs, and no more", () => {
    fc.assert(
      fc.property(fc.nat(3_000), fc.nat(3_000), few(5), few(5), (front, behind, was, is) => {
        const [head, tail] = ["ab".repeat(front), "ba".repeat(behind)];
        const [before, now] = [head + was + tail, head + is + tail];
        const { end, start } = editBetween(before, now);
        const same = before.length - end;
        expect(before.slice(0, start)).toBe(now.slice(0, start));
        expect(before.slice(end)).toBe(now.slice(now.length - same));
        expect(start).toBeLessThanOrEqual(end);
        expect(start + same).toBeLessThanOrEqual(now.length);
        const [left, right] = [before.slice(start, end), now.slice(start, now.length - same)];
        if (left === "" || right === "") return;
        expect(left[0]).not.toBe(right[0]);
        expect(left.at(-1)).not.toBe(right.at(-1));
      }),
    );
  });

  it("is empty where nothing does", () => {
    const text = "step one\n".repeat(1_000);
    const { end, start } = editBetween(text, text);
    expect(end).toBe(start);
  });
});
