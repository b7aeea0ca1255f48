// How a value is worked out from readings, as a small tree that can be carried to where the readings are taken. Knows no syntax
// node and no page.
import { readNumber } from "./number-text.ts";
import { isZero, mul, type Rational, ZERO } from "./rational.ts";
import type { Expression, Written } from "./tree.ts";
import { BARE, readUnit, scaleOf } from "./unit.ts";

/** All numbers are in coherent units. */
export type Formula =
  | { readonly op: "number"; readonly value: Rational }
  /** A reading, by the id of its declaration. */
  | { readonly op: "reading"; readonly id: string }
  | { readonly op: "+" | "-" | "*" | "/"; readonly left: Formula; readonly right: Formula };

/** The ends of a value as formulas; null where there is no such end. */
export interface FormulaEnds {
  readonly low: Formula | null;
  readonly nominal: Formula | null;
  readonly high: Formula | null;
}

/** The ends of a value place; null where a part of it cannot be carried so: a temperature with its own zero, a band as a name. */
export function formulaEnds<At>(written: Written<At>): FormulaEnds | null {
  switch (written.form) {
    case "nominal": {
      const nominal = formulaOf(written.value);
      return nominal && { low: null, nominal, high: null };
    }
    case "at least": {
      const low = formulaOf(written.value);
      return low && { low, nominal: null, high: null };
    }
    case "at most": {
      const high = formulaOf(written.value);
      return high && { low: null, nominal: null, high };
    }
    case "tolerance": {
      const [nominal, half] = [formulaOf(written.value), formulaOf(written.tolerance)];
      return nominal && half && { low: binary("-", nominal, half), nominal, high: binary("+", nominal, half) };
    }
    case "range":
    case "nominal in range": {
      const [low, high] = [formulaOf(written.low), formulaOf(written.high)];
      const nominal = written.form === "range" ? null : formulaOf(written.value);
      return low && high && { low, nominal, high };
    }
  }
}

function formulaOf<At>(of: Expression<At>): Formula | null {
  switch (of.op) {
    case "name":
      return of.formula ?? numberOf(of.value?.form === "nominal" ? (of.value.nominal?.base ?? null) : null);
    case "literal": {
      const [number, unit] = [readNumber(of.number), of.unit === null ? null : readUnit(of.unit, null)];
      if (!number.ok || unit?.ok === false) return null;
      const { unit: known } = unit ?? { unit: BARE };
      return isZero(known.offset) ? numberOf(mul(number.value, scaleOf(known))) : null;
    }
    case "negate": {
      const inner = formulaOf(of.of);
      return inner && binary("-", { op: "number", value: ZERO }, inner);
    }
    case "percent of": {
      const [share, whole] = [formulaOf(of.share), formulaOf(of.of)];
      return share && whole && binary("*", share, whole);
    }
    default: {
      const [left, right] = [formulaOf(of.left), formulaOf(of.right)];
      return left && right && binary(of.op, left, right);
    }
  }
}

function numberOf(value: Rational | null): Formula | null {
  return value && { op: "number", value };
}

function binary(op: "+" | "-" | "*" | "/", left: Formula, right: Formula): Formula {
  return { op, left, right };
}
