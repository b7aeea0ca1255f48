// Quantities as a page needs them: exact ends, or how they are worked out, and the units that a reading may be taken in. Knows no
// procedure.
import type { Value } from "#model/declarations.ts";
import { roundedEnds } from "#quantity/display.ts";
import type { Formula } from "#quantity/formula.ts";
import { band, type Magnitude, type Quantity } from "#quantity/quantity.ts";
import { abs, max, type Rational, ZERO } from "#quantity/rational.ts";
import { shownUnit } from "#quantity/shown-unit.ts";
import { scaleOf, type Unit } from "#quantity/unit.ts";
import type { Amount, Limits, UnitChoice } from "./plan.ts";

/** The limits that a value sets; null where they cannot be told: a clock position, or a formula that nothing can carry. */
export function limitsOf({ quantity, workedOut }: Value): Limits | null {
  // Positions of a clock go round.
  if (quantity.kind === "clock position") return null;
  if (workedOut === undefined) {
    const { low, high } = band(quantity);
    return { low: low && fractionText(low), high: high && fractionText(high) };
  }
  const { ends } = workedOut;
  if (ends === null) return null;
  // A single value is met by itself alone, however wide the reading it is made of may be.
  const isSingle = ends.low === null && ends.high === null;
  const [low, high] = isSingle ? [ends.nominal, ends.nominal] : [ends.low, ends.high];
  return { low: low && formulaAmount(low), high: high && formulaAmount(high) };
}

/** The units of a quantity: the writer's own, then that of the other system. */
export function unitChoices(quantity: Quantity): readonly UnitChoice[] {
  const ends = [quantity.nominal, quantity.low, quantity.high].filter((end) => end !== null);
  const own = ends.map(({ unit }) => unit);
  const size = ends.map(({ base }: Magnitude) => abs(base)).reduce(max, ZERO);
  const systems = new Set(own.map(({ system }) => system));
  const other = systems.has("shared") || systems.size > 1 ? null : systems.has("metric") ? "customary" : "metric";
  const shown = other === null ? null : shownUnit(quantity.kind, size, other);
  const units = new Map([...own, ...(shown === null ? [] : [shown])].map((unit) => [unit.text, unit]));
  return [...units.values()].map((unit) => choiceOf(quantity, unit));
}

function fractionText({ n, d }: Rational): string {
  return d === 1n ? String(n) : `${n}/${d}`;
}

function choiceOf(quantity: Quantity, unit: Unit): UnitChoice {
  const { low, nominal, high } = roundedEnds(quantity, unit, "must be met");
  const digits = [low, nominal, high].flatMap((end) => (end === null ? [] : [end.digit]));
  const zero = quantity.kind === "temperature" ? unit.offset : ZERO;
  return {
    text: unit.text,
    scale: fractionText(scaleOf(unit)),
    zero: fractionText(zero),
    digit: Math.min(0, ...digits),
  };
}

export function formulaAmount(formula: Formula): Amount {
  if (formula.op === "number") return fractionText(formula.value);
  if (formula.op === "reading") return { reading: formula.id };
  return { op: formula.op, left: formulaAmount(formula.left), right: formulaAmount(formula.right) };
}
