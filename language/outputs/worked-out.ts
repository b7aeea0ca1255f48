// A value that is worked out from readings as it is printed: the formula in the words of the language, each amount in it in the
// units asked for. Knows no format.
import type { Value } from "#model/declarations.ts";
import type { Kind } from "#quantity/kind.ts";
import { readNumber } from "#quantity/number-text.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { isZero, mul, ZERO } from "#quantity/rational.ts";
import { readUnit, scaleOf } from "#quantity/unit.ts";
import { unitNames } from "./unit-names.ts";
import type { Writer } from "./writer.ts";

/** `at most Gap - 0.05 mm (0.0020 in), with Gap = gap at the flange`; `at most 2 × Gap, with …`. */
export function workedOutText(
  { quantity }: Pick<Value, "quantity">,
  { text, readings }: NonNullable<Value["workedOut"]>,
  writer: Writer,
): string {
  const { words } = writer;
  const amounts = unitNames(inUnits(text.replace(/\s+/g, " "), quantity.kind, writer));
  const formula = words.quantity(amounts.replace(/ ?\* ?/g, " × "));
  return words.records.workedOut(
    formula,
    readings.map(({ name, title }) => [name, title]),
  );
}

/** A sum of names and amounts alone: of a product nobody knows which of its amounts is of the kind of the whole. */
const SUM = /^[^*/%()]*$/;

/** An amount, with what stands before it: a sign, the dots of a range, `at most`. */
const AMOUNT = /(^|[-+±]|\.\.|\bat (?:most|least))( ?)(\d[\d_]*(?:\.\d+)?)( ?)([\p{L}µ°][^\s+±]*)(?=$| )/gu;

function inUnits(text: string, kind: Kind, writer: Writer): string {
  if (!SUM.test(text)) return text;
  const dots = text.indexOf("..");
  return text.replace(
    AMOUNT,
    (whole, sign: string, space: string, number: string, gap: string, unit: string, at: number) => {
      const amount = quantityFrom(number, unit, kind);
      if (amount === null) return whole;
      const isUpper = /^at most/.test(text) || (dots >= 0 && at > dots);
      // Rounded so that no band grows: what is added to its upper end down, what is taken from it up, and likewise below.
      const role = sign === "±" || isUpper === (sign !== "-") ? "at most safe" : "at least safe";
      const shown = writer.value(amount, role);
      const [beside] = / \(.*\)$/.exec(shown) ?? [];
      const own = `${number}${gap}${unit}`;
      // Nought is nought in either unit, and no answer for a trainee.
      if (isZero(amount.nominal?.base ?? ZERO) && !/^[\d.]+ [^(]*$/.test(shown)) return whole;
      return sign + space + (beside !== undefined ? own + beside : shown.endsWith(` ${unit}`) ? own : shown);
    },
  );
}

/** An amount with a digit more than it is written with, so that rounding takes nothing away that counts. */
function quantityFrom(number: string, unitText: string, kind: Kind): Quantity | null {
  const read = readNumber(number);
  const unit = readUnit(unitText, kind);
  if (!read.ok || !unit.ok || !unit.unit.kinds.includes(kind) || !isZero(unit.unit.offset)) return null;
  const base = mul(read.value, scaleOf(unit.unit));
  const nominal = { base, written: read.value, unit: unit.unit, digit: read.digit - 1 };
  return { kind, form: "nominal", low: null, nominal, high: null, qualifier: null, computed: true };
}
