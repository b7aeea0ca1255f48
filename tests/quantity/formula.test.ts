// Values worked out from readings, carried as formulas: which can be, and with which exact numbers.
import { expect, test } from "vitest";
import { type Formula, formulaEnds } from "#quantity/formula.ts";
import { readQuantityText } from "#quantity/quantity-text.ts";
import { rational } from "#quantity/rational.ts";
import type { Expression, Written } from "#quantity/tree.ts";

const GAP: Expression<null> = { op: "name", value: null, at: null, formula: { op: "reading", id: "Gap" } };

function literal(number: string, unit: string | null): Expression<null> {
  return { op: "literal", number, unit, at: null, unitAt: null };
}

const less: Expression<null> = { op: "-", left: GAP, right: literal("0.05", "mm"), at: null };
// 0.05 mm is 1/20,000 m.
const lessFormula: Formula = {
  op: "-",
  left: { op: "reading", id: "Gap" },
  right: { op: "number", value: rational(1, 20_000) },
};

test.each<[string, Written<null>, Partial<Record<"low" | "nominal" | "high", Formula>>]>([
  ["a value", { form: "nominal", value: less, at: null }, { nominal: lessFormula }],
  ["at least", { form: "at least", value: less, at: null }, { low: lessFormula }],
  ["at most", { form: "at most", value: less, at: null }, { high: lessFormula }],
  [
    "a range",
    { form: "range", low: less, high: GAP, at: null },
    { low: lessFormula, high: { op: "reading", id: "Gap" } },
  ],
])("%s", (_title, written, ends) => {
  expect(formulaEnds(written)).toEqual({ low: null, nominal: null, high: null, ...ends });
});

test("a tolerance is taken off and put on", () => {
  const { low, high } = formulaEnds({ form: "tolerance", value: GAP, tolerance: literal("1", "in"), at: null }) ?? {};
  // 1 in is 0.0254 m.
  const half: Formula = { op: "number", value: rational(254, 10_000) };
  expect([low, high]).toEqual([
    { op: "-", left: GAP.op === "name" ? GAP.formula : null, right: half },
    { op: "+", left: GAP.op === "name" ? GAP.formula : null, right: half },
  ]);
});

test("a share and a negative are products and differences", () => {
  const share: Written<null> = {
    form: "nominal",
    value: { op: "percent of", share: literal("30", "%"), of: GAP, at: null },
    at: null,
  };
  expect(formulaEnds(share)?.nominal).toMatchObject({ op: "*", left: { op: "number", value: rational(3, 10) } });
  const negative: Written<null> = { form: "nominal", value: { op: "negate", of: GAP, at: null }, at: null };
  expect(formulaEnds(negative)?.nominal).toMatchObject({ op: "-", left: { op: "number", value: rational(0) } });
});

test.each([
  ["a temperature with its own zero", literal("5", "°C")],
  ["a unit that is none", literal("5", "foo")],
  ["a number that is none", literal("1/0", "mm")],
  ["a name that hangs on nothing known", { op: "name", value: null, at: null } as Expression<null>],
])("%s cannot be carried", (_title, right) => {
  expect(formulaEnds({ form: "nominal", value: { op: "+", left: GAP, right, at: null }, at: null })).toBeNull();
});

test("what is written without a reading is exact", () => {
  const read = readQuantityText("3/8 in .. 12 mm");
  if (!read.ok) throw new Error("not read");
  expect(formulaEnds(read.written)).toMatchObject({
    low: { op: "number", value: rational(9525, 1_000_000) },
    high: { op: "number", value: rational(12, 1000) },
  });
});
