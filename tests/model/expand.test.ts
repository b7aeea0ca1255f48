// Repeats written out and indices worked out, held against a plain enumeration.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expandProcedure } from "#model/expand.ts";
import { fillWords } from "#model/fill-words.ts";
import { expandedOf, problemsIn, procedureOf, stepsIn, workIn } from "./model-of.ts";

const SHOP = `ring Ring { count 16 numbered clockwise position 1 at 6 o'clock }
ring Filled { count 8 numbered clockwise fill counterclockwise }
ring Along { count 8 numbered counterclockwise fill counterclockwise }
holes Holes { count 4 }
part Segment[1..16] { seats in Ring by number }
part Some[1..4] { seats in Ring by number }
part Tooth[1..8] { seats in Filled by number }
part Cog[1..8] { seats in Along by number }
part Bolt[1..4] { seats in Holes by number }
part Plug[1..4]
part Foot[left, right]
part Cover
`;

/** What the steps of a procedure work on, step by step. */
function work(body: string): readonly string[] {
  return stepsIn(expandedOf(`${SHOP}procedure P { ${body} }`).items).flatMap((step) => workIn(step.lines));
}
/** The indices that a target comes to, outside any repeat. */
function indices(target: string): readonly string[] {
  const [line] = work(`step inspect ${target}`);
  return [...(line ?? "").matchAll(/\[([^\]]*)\]/g)].map((match) => match[1] ?? "");
}

describe("repeats", () => {
  test.each([
    ["up", "from 1 to 3", [1, 2, 3]],
    ["down", "from 4 down to 2", [4, 3, 2]],
    ["by two", "from 1 to 6 by 2", [1, 3, 5]],
    ["down by three", "from 16 down to 4 by 5", [16, 11, 6]],
    ["a list", "in 1, 5, 3, 7", [1, 5, 3, 7]],
    ["a list with a stretch", "in 9, 1..3, 5", [9, 1, 2, 3, 5]],
    ["one", "from 2 to 2", [2]],
    ["no pass", "from 3 to 2", []],
    ["worked out bounds", "from 2 * 2 - 1 to (1 + 1) * 3", [3, 4, 5, 6]],
  ])("%s", (_title, range, numbers) => {
    expect(work(`repeat n ${range} { step install Segment[n] }`)).toEqual(numbers.map((n) => `install Segment[${n}]`));
  });

  test("nest, in tasks and in steps, the outer first", () => {
    const body =
      "repeat a from 1 to 2 { step { repeat b in 3, 4 { inspect Segment[a * 4 + b] } } task T { step install Segment[a] } }";
    expect(work(body)).toEqual([
      ...["inspect Segment[7]", "inspect Segment[8]", "install Segment[1]"],
      ...["inspect Segment[11]", "inspect Segment[12]", "install Segment[2]"],
    ]);
  });
  test("each pass says the values of its variables, outermost first", () => {
    const { items } = expandedOf('procedure P { repeat a from 1 to 2 { repeat b in 7 { step "x" } } }');
    expect(
      stepsIn(items).map(({ pass }) => pass.map(({ variable, value }) => `${variable}${value}`).join(" ")),
    ).toEqual(["a1 b7", "a2 b7"]);
  });
  test("an inner variable hides an outer one of its name", () => {
    expect(work("repeat n from 1 to 2 { repeat n from 5 to 5 { step install Segment[n] } }")).toEqual([
      "install Segment[5]",
      "install Segment[5]",
    ]);
  });
  test("a step has one number in all its passes", () => {
    const steps = stepsIn(expandedOf('procedure P { step "a" repeat n from 1 to 3 { step "b" } step "c" }').items);
    expect(steps.map(({ step }) => step.number)).toEqual(["1", "2", "2", "2", "3"]);
  });
  test.each([
    [
      "a bound that is a variable",
      "repeat n from 1 to k",
      "misplaced «k»: `k` belongs in the brackets of a part; the bounds of a repeat are numbers",
    ],
    [
      "an outer variable too",
      "repeat k from 1 to 2 { repeat n from 1 to k",
      "misplaced «k»: `k` belongs in the brackets of a part; the bounds of a repeat are numbers",
    ],
    ["no step at all", "repeat n from 1 to 3 by 0", "whole number «0» of 1..10000"],
    ["half a bound", "repeat n from 1 to 2.5", "whole number «2.5» of 0..1000000000"],
    ["all", "repeat n in all", "misplaced «all»: `all` belongs in the brackets of a part; a repeat counts numbers"],
  ])("%s is told once", (_title, head, problem) => {
    const close = "}".repeat(head.split("{").length);
    const text = `procedure P { ${head} { step "x" step "y" ${close} }`;
    expect(problemsIn(text)).toEqual([problem]);
  });
  test("of a repeat without numbers all it speaks of is in doubt", () => {
    const { items } = expandedOf(`${SHOP}procedure P { repeat n from 1 to k { step install Cover } }`);
    expect(items).toMatchObject([{ kind: "damaged", damaged: { mentions: [{ name: "Cover" }] } }]);
  });
});

describe("what a target means", () => {
  test.each([
    ["Segment[all]", Array.from({ length: 16 }, (_, at) => String(at + 1))],
    ["Segment[2..4]", ["2", "3", "4"]],
    ["Segment[9, 1, 5]", ["1", "5", "9"]],
    ["Segment[3, 1..4, 3]", ["1", "2", "3", "4"]],
    ["Foot[all]", ["left", "right"]],
    ["Foot[right, left]", ["left", "right"]],
    ["Tooth[all]", ["1", "8", "7", "6", "5", "4", "3", "2"]],
    ["Tooth[1..4]", ["1", "4", "3", "2"]],
    ["Tooth[6, 2, 7]", ["6", "2", "7"]],
    ["Cog[3..5, 1]", ["3", "4", "5", "1"]],
    ["Cover", []],
  ])("%s", (target, wanted) => {
    expect(indices(target)).toEqual(wanted);
  });
  test("several objects one after the other", () => {
    expect(work("step inspect Plug[2, 1], Cover")).toEqual(["inspect Plug[1] Plug[2] Cover"]);
  });
  test("a second thing, and a ring without a position", () => {
    expect(work("step install Plug[1] in Ring[3]")).toEqual(["install Plug[1] Ring[3]"]);
    expect(work("step install Segment[1..2] in Ring[1..2]")).toEqual(["install Segment[1] Segment[2] Ring"]);
    expect(work("step turn Ring to put Ring[2] at 6 o'clock")).toEqual(["turn Ring Ring[2]"]);
  });
  test("in a condition all are meant where no index stands", () => {
    const { begin } = expandedOf(`${SHOP}procedure P { begin with Plug are installed, Foot[left] is installed }`);
    expect(begin.map((condition) => ("things" in condition ? condition.things.length : 0))).toEqual([4, 1]);
  });
});

describe("an index that holds a loop variable", () => {
  test("wraps round on a ring and for a part by number in one", () => {
    expect(
      work("repeat n from 1 to 1 { step inspect Segment[n - 2], Segment[n + 20] step turn Ring[n - 1] to 6 o'clock }"),
    ).toEqual(["inspect Segment[15] Segment[5]", "turn Ring[16]"]);
  });
  test("a stretch wraps too", () => {
    expect(work("repeat n from 15 to 15 { step inspect Segment[n .. n + 2] }")).toEqual([
      "inspect Segment[1] Segment[15] Segment[16]",
    ]);
  });
  test.each([
    ["of holes", "Bolt[n + 2]", "no instance 5 at «Bolt[n + 2]» of 1..4 for n = 3 and 1 more"],
    ["of a part anywhere", "Plug[n + 3]", "no instance 5 at «Plug[n + 3]» of 1..4 for n = 2 and 2 more"],
    [
      "of a part that fills some of a ring",
      "Some[n + 1]",
      "no instance 5 at «Some[n + 1]» of 1..4 for n = 4 and 0 more",
    ],
    ["of names", "Foot[n]", "no instance 1 at «Foot[n]» of left, right for n = 1 and 3 more"],
  ])("does not wrap %s: told once, with its first pass", (_title, target, problem) => {
    expect(
      problemsIn(`${SHOP}procedure P { repeat n from 1 to 4 { step inspect ${target} } }`).filter((told) =>
        told.startsWith("no"),
      ),
    ).toEqual([problem]);
  });
  test("and none that does not is told where the text is read", () => {
    expect(
      problemsIn(`${SHOP}procedure P { step inspect Segment[17] }`).filter((told) => told.startsWith("no")),
    ).toEqual(["no instance 17 at «Segment[17]» of 1..16"]);
    expect(
      problemsIn(`${SHOP}procedure P { step inspect Segment[4..2] }`).filter((told) => told.startsWith("no")),
    ).toEqual(["no instance 4..2 at «Segment[4..2]» of 1..16"]);
  });

  test("agrees with walking round the ring place by place", () => {
    const ring = (count: number) => `ring R { count ${count} }\npart S[1..${count}] { seats in R by number }\n`;
    const walked = (count: number, from: number, steps: number): number => {
      let at = from;
      for (let step = 0; step < Math.abs(steps); step++) {
        at += Math.sign(steps);
        if (at > count) at = 1;
        if (at < 1) at = count;
      }
      return at;
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 24 }),
        fc.nat(23),
        fc.integer({ min: -60, max: 60 }),
        (count, start, by) => {
          const from = (start % count) + 1;
          const index = by < 0 ? `n - ${-by}` : `n + ${by}`;
          const text = `${ring(count)}procedure P { repeat n from ${from} to ${from} { step inspect S[${index}] } }`;
          const steps = stepsIn(expandedOf(text).items);
          expect(steps.flatMap(({ lines }) => workIn(lines))).toEqual([`inspect S[${walked(count, from, by)}]`]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test("a set on a ring that says fill is worked through as the ring is filled, whatever the set", () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { minLength: 1 }), fc.boolean(), (set, against) => {
      const [part, way] = against ? ["Tooth", -1] : ["Cog", 1];
      const wanted: string[] = [];
      for (let step = 0, at = set[0] as number; step < 8; step++, at = ((at - 1 + way + 8) % 8) + 1) {
        if (set.includes(at)) wanted.push(String(at));
      }
      expect(indices(`${part}[${set.join(", ")}]`)).toEqual(wanted);
    }),
    { numRuns: 40 },
  );
});

test("passes come in the order of a plain loop", () => {
  const bound = fc.integer({ min: 0, max: 12 });
  fc.assert(
    fc.property(bound, bound, fc.integer({ min: 1, max: 4 }), fc.boolean(), (first, last, by, down) => {
      const wanted: number[] = [];
      if (down) for (let n = first; n >= last; n -= by) wanted.push(n);
      else for (let n = first; n <= last; n += by) wanted.push(n);
      const text = `procedure P { repeat n from ${first} ${down ? "down " : ""}to ${last} by ${by} { step "x" } }`;
      const steps = stepsIn(expandedOf(text).items);
      expect(steps.map(({ pass }) => pass[0]?.value)).toEqual(wanted);
      expect(expandedOf(text).steps).toBe(wanted.length);
    }),
    { numRuns: 60 },
  );
});

describe("too large", () => {
  const tooLarge = (text: string, limit?: number) => {
    const { items, steps, tooLarge: found } = expandedOf(text, limit);
    return {
      items: items.length,
      steps,
      at: found === null ? null : text.slice(found.span.start, found.span.end),
      wanted: found?.wanted ?? null,
    };
  };
  test.each([
    [
      "a zero too many",
      'procedure P { repeat n from 1 to 1_000_000 { step "x" } }',
      "repeat n from 1 to 1_000_000",
      1_000_000,
    ],
    [
      "two that multiply",
      'procedure P { repeat a from 1 to 1000 { repeat b from 1 to 1000 { step "x" } } }',
      "repeat a from 1 to 1000",
      1_000_000,
    ],
    [
      "the inner alone",
      'procedure P { repeat a from 1 to 2 { repeat b from 1 to 500_000 { step "x" } } }',
      "repeat b from 1 to 500_000",
      1_000_000,
    ],
    [
      "beyond all numbers",
      `procedure P { ${"repeat n from 1 to 999_999 { ".repeat(8)} step "x" ${"}".repeat(8)} }`,
      "repeat n from 1 to 999_999",
      null,
    ],
    [
      "lines in a step",
      "part A\nprocedure P { step { repeat n from 1 to 9_000_000 { inspect A } } }",
      "repeat n from 1 to 9_000_000",
      1,
    ],
    [
      "passes without a step",
      "procedure P { repeat n from 1 to 900_000_000 { } }",
      "repeat n from 1 to 900_000_000",
      0,
    ],
  ])("%s", (_title, text, at, wanted) => {
    expect(tooLarge(text)).toEqual({ items: 0, steps: 0, at, wanted });
  });
  test("several repeats that are too much together: the largest", () => {
    const text = 'procedure P { repeat a from 1 to 60 { step "x" } task T { repeat b from 1 to 70 { step "x" } } }';
    expect(tooLarge(text, 100)).toEqual({ items: 0, steps: 0, at: "repeat b from 1 to 70", wanted: 130 });
    expect(tooLarge(text, 130)).toMatchObject({ steps: 130, at: null });
  });
  test("the limit itself is not too many, and is written out in a moment", () => {
    const text = `${SHOP}procedure P { repeat a from 1 to 250 { repeat b from 1 to 400 { step "{a}" { inspect Segment[a + b] check "x" } } } }`;
    const procedure = procedureOf(text);
    const start = performance.now();
    const { expanded, problems } = expandProcedure(procedure);
    const time = performance.now() - start;
    expect([expanded.steps, expanded.tooLarge, problems]).toEqual([100_000, null, []]);
    expect(time).toBeLessThan(5_000);
  });
});

describe("own words", () => {
  const pass = [
    { variable: "n", value: 3 },
    { variable: "Größe", value: 12 },
    { variable: "n", value: 4 },
  ];
  test.each([
    ["Push segment {n} in.", "Push segment 4 in."],
    ["{ Größe } and {n}{n}", "12 and 44"],
    ["{m} stays, {} and {1} too", "{m} stays, {} and {1} too"],
    ["no braces", "no braces"],
  ])("%s", (text, filled) => {
    expect(fillWords(text, pass)).toBe(filled);
  });
  test("outside a repeat stay as they are", () => {
    expect(fillWords("{n}", [])).toBe("{n}");
  });
});
