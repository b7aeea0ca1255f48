// `within` in work that may come in any order: too late in one order is too late, and that order is shown; what is late as it is
// written needs none (language.md: every order must be right, and one that is not is shown as the witness). Times added up by hand.
import { describe, expect, test } from "vitest";
import { onPaper } from "./run-on-paper.ts";

const SHOP = `option Deep { yes no }
part Pot "pot"
part Lid "lid"
part Rim "rim"
part Cap "cap"
`;
const step = (name: string, part: string, minutes: number): string =>
  `step ${name} { clean ${part} takes ${minutes} min }\n`;
const A = step("A", "Pot", 1);
const LONG = step("Long", "Lid", 10);
/** One minute that counts with what lies between. */
const last = (limit: number, after = "A"): string =>
  `step Last { clean Cap takes 1 min within ${limit} min after ${after} }\n`;
const inAnyOrder = (...children: readonly string[]): string => `in any order {\n${children.join("")}}\n`;

interface Late {
  /** In seconds. */
  readonly time: number | null;
  /** The names of the steps in the order that is shown; null where the text's own shows it. */
  readonly order: readonly string[] | null;
  readonly options?: readonly object[];
}

function late(lines: string, before = ""): readonly Late[] {
  const text = `${SHOP}${before}procedure Work "Work" {\n${lines}}\n`;
  return onPaper(text).facts.flatMap(({ fact }) => {
    if (fact.kind !== "too late") return [];
    const order = fact.inOrder?.map(
      ({ span }) => /^step (\w+)/.exec(text.slice(span.start, span.end))?.[1] ?? text.slice(span.start, span.end),
    );
    return [
      { time: fact.time, order: order ?? null, ...(fact.options === undefined ? {} : { options: fact.options }) },
    ];
  });
}

describe("the limit ends in the block", () => {
  test("as written", () => {
    expect(late(A + inAnyOrder(LONG, last(5)))).toEqual([{ time: 660, order: null }]);
  });
  test("only in the other order", () => {
    expect(late(A + inAnyOrder(last(5), LONG))).toEqual([{ time: 660, order: ["Long", "Last"] }]);
  });
  test("within the limit in every order", () => {
    expect(late(A + inAnyOrder(last(11), LONG))).toEqual([]);
    expect(late(A + inAnyOrder(LONG, last(11)))).toEqual([]);
  });
  test("only after two others: with its own minute 3 and 4 min are more than 7, each of them alone is not", () => {
    const others = [step("Three", "Lid", 3), step("Four", "Rim", 4)];
    const [found, ...more] = late(A + inAnyOrder(last(7), ...others));
    expect(more).toEqual([]);
    expect(found?.time).toBe(480);
    expect(found?.order?.at(-1)).toBe("Last");
    expect([...(found?.order ?? [])].sort()).toEqual(["Four", "Last", "Three"]);
    expect(late(A + inAnyOrder(last(8), ...others))).toEqual([]);
  });
  test("for the choice in which the other one takes so long", () => {
    const lines = A + inAnyOrder(last(5), `when Deep is yes { ${LONG} } otherwise { ${step("Short", "Lid", 1)} }\n`);
    expect(late(lines)).toMatchObject([{ time: 660, options: [{ Deep: "yes" }] }]);
  });
});

describe("the limit begins in the block", () => {
  test("as written, and only in the other order", () => {
    expect(late(inAnyOrder(A, LONG) + last(5))).toEqual([{ time: 660, order: null }]);
    expect(late(inAnyOrder(LONG, A) + last(5))).toEqual([{ time: 660, order: ["A"] }]);
    expect(late(inAnyOrder(LONG, A) + last(11))).toEqual([]);
  });
  test("what lies behind the block counts with it", () => {
    expect(late(inAnyOrder(LONG, A) + step("More", "Rim", 1) + last(11))).toEqual([{ time: 720, order: ["A"] }]);
  });
});

describe("it begins and ends in the block", () => {
  test("in two children, with the third between them", () => {
    expect(late(inAnyOrder(A, last(5), LONG))).toMatchObject([{ time: 660, order: ["A", "Long", "Last"] }]);
    expect(late(inAnyOrder(A, LONG, last(5)))).toMatchObject([{ time: 660, order: null }]);
  });
  test("in one child, whatever the others take", () => {
    const pair = `task Pair "Pair" {\n${A}${last(5)}}\n`;
    expect(late(inAnyOrder(LONG, pair))).toEqual([]);
    expect(late(inAnyOrder(LONG, `task Pair "Pair" {\n${A}${step("Slow", "Rim", 6)}${last(5)}}\n`))).toMatchObject([
      { time: 420, order: null },
    ]);
  });
});

describe("one block in another", () => {
  test("late in an order of the inner one", () => {
    expect(late(A + inAnyOrder(inAnyOrder(last(5), LONG), step("Short", "Rim", 1)))).toMatchObject([{ time: 720 }]);
    expect(
      late(A + inAnyOrder(`task In "In" {\n${inAnyOrder(last(5), LONG)}}\n`, step("Short", "Rim", 1))),
    ).toMatchObject([{ time: 720 }]);
  });
});

describe("what a performed procedure takes counts, too", () => {
  const inner = `procedure Inner "Inner" {\n${LONG}}\n`;
  test("in the block, in the other order", () => {
    expect(late(A + inAnyOrder(last(5), "perform Inner\n"), inner)).toMatchObject([{ time: 660 }]);
    expect(late(A + inAnyOrder(last(11), "perform Inner\n"), inner)).toEqual([]);
  });
});
