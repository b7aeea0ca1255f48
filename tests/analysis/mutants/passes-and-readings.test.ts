// Which pass of a step a name means, and in which regions of its scale a reading lies.
import { describe, expect, test } from "vitest";
import { createDecisions, NEVER } from "#analysis/decision.ts";
import { type Entry, nearest, passText, samePass } from "#analysis/entries.ts";
import { createReadings } from "#analysis/readings.ts";
import type { Reading } from "#model/declarations.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { onPaper } from "../run-on-paper.ts";

const pass = (...values: readonly number[]): Pass =>
  values.map((value, at) => ({ variable: ["n", "m"][at] ?? "", value }));
const entry = (node: number, of: Pass): Entry => ({ node, leave: node, pass: of, turns: [] });

describe("passes", () => {
  const places = [
    entry(1, pass(1, 1)),
    entry(2, pass(1, 2)),
    entry(3, pass(2, 1)),
    entry(4, pass(2, 2)),
    entry(5, pass(1, 2)),
  ];
  test("as text, one apart from the other", () => {
    expect(passText(pass())).toBe("");
    expect(passText(pass(1, 2))).toBe("n=1,m=2");
    expect(passText(pass(1, 12))).not.toBe(passText(pass(11, 2)));
  });
  test("the nearest shares most, and of those it is the last", () => {
    expect(nearest(places, pass(2, 1))?.node).toBe(3);
    expect(nearest(places, pass(1, 2))?.node).toBe(5);
    expect(nearest(places, pass(2))?.node).toBe(4);
    expect(nearest(places, pass(2, 9))?.node).toBe(4);
    expect(nearest(places, pass(9, 9))?.node).toBe(5);
    expect(nearest(places, pass())?.node).toBe(5);
    expect(nearest([entry(1, pass(1))], pass(1, 2))?.node).toBe(1);
  });
  test("none where there is none", () => {
    expect(nearest(undefined, pass(1))).toBeNull();
    expect(nearest([], pass(1))).toBeNull();
    expect(samePass(places, null)).toEqual([]);
  });
  test("all turns of one pass, in their order", () => {
    expect(samePass(places, entry(9, pass(1, 2))).map(({ node }) => node)).toEqual([2, 5]);
    expect(samePass(places, entry(9, pass(2, 2))).map(({ node }) => node)).toEqual([4]);
    expect(samePass(places, entry(9, pass(3, 3)))).toEqual([]);
  });
});

describe("readings", () => {
  /** Conditions on a reading as the text has them, taken from a procedure. */
  function conditionsOf(conditions: readonly string[]): readonly (ExpandedCondition & { form: "reading" })[] {
    const body = conditions.map((condition) => `when ${condition} { step "a." }`).join("\n");
    const text = `tool Caliper "caliper" { measures 0 .. 150 mm }
procedure Work "Work" {\nstep measure Gap "gap" with Caliper\nstep measure Play "play" with Caliper\n${body}\n}`;
    const items = onPaper(text, { damaged: true }).runs[0]?.expanded.items ?? [];
    return items.flatMap((item) =>
      item.kind === "when"
        ? item.arms.flatMap(({ condition }) => (condition.form === "reading" ? [condition] : []))
        : [],
    );
  }
  const bounds = ["Gap at most 2 mm", "Gap at least 3 mm", "Gap at most 1 mm", "Gap at least 1 mm"];
  const conditions = conditionsOf(bounds);
  const decisions = createDecisions();
  const readings = createReadings(decisions, conditions);
  const quantities = conditions.map(({ source }) => source.bound.quantity);
  const where = (quantity: Quantity | undefined): number =>
    readings.where(conditions[0]?.reading as Reading, quantity as Quantity);
  test("the text gives the four bounds", () => {
    expect(conditions).toHaveLength(4);
  });
  test("what lies in two bounds, in one, in none", () => {
    const [most2, least3, most1] = quantities.map(where) as [number, number, number];
    const from1to2 = where({ ...quantities[0], low: quantities[3]?.low } as Quantity);
    const { and, or, not } = decisions;
    expect(and(most2, least3)).toBe(NEVER);
    expect(and(from1to2, most2)).toBe(from1to2);
    expect(or(from1to2, most1)).toBe(most2);
    // The bound itself belongs to both.
    expect(and(from1to2, most1)).not.toBe(NEVER);
    expect(and(from1to2, not(most1))).not.toBe(NEVER);
    expect(and(not(most2), not(least3))).not.toBe(NEVER);
    expect(and(most1, not(from1to2))).not.toBe(NEVER);
  });
  test("of a reading that no branch asks for nothing is known, and none is another", () => {
    const [first] = conditions;
    const other = { id: "elsewhere" } as Reading;
    expect(readings.variable(other)).toBeNull();
    expect(readings.where(other, first?.source.bound.quantity as Quantity)).toBe(1);
    const two = conditionsOf(["Gap at most 2 mm", "Play at most 2 mm"]);
    const both = createReadings(createDecisions(), two);
    const [gap, play] = two.map(({ reading }) => both.variable(reading));
    expect(gap).not.toBeNull();
    expect(play).not.toBeNull();
    expect(gap).not.toBe(play);
  });
  test("bounds within others count as well", () => {
    const [inner] = conditions as [ExpandedCondition];
    const { span } = inner;
    const wrapped: readonly ExpandedCondition[] = [
      { form: "all", operands: [inner], span },
      { form: "any", operands: [inner], span },
      { form: "not", operand: inner, span },
    ];
    for (const one of wrapped) {
      const made = createReadings(createDecisions(), [one]);
      expect(made.variable((inner as ExpandedCondition & { form: "reading" }).reading)).not.toBeNull();
    }
  });
});
