// What became of a value: the same, said in another way, or another one, and by how much. Knows no step and no words.
import type { Value } from "#model/declarations.ts";
import { show } from "#quantity/display.ts";
import { factsOf, type Kind } from "#quantity/kind.ts";
import { band, type Magnitude, type Quantity, sameQuantity } from "#quantity/quantity.ts";
import { abs, cmp, div, eq, isZero, mul, type Rational, rational, sub, tenTo } from "#quantity/rational.ts";
import { roundTo } from "#quantity/rounding.ts";
import { scaleOf, type Unit, unitNamed } from "#quantity/unit.ts";

export type ValueChange =
  | { readonly how: "same" }
  /** Another unit or form that keeps the value within the last digit given; `ends`: what rounding has moved by a hundredth or more. */
  | { readonly how: "restated"; readonly ends: readonly EndChange[] }
  | { readonly how: "changed"; readonly ends: readonly EndChange[]; readonly width: WidthChange | null };

/** By how much one end is another; `both` where low and high end move alike, or there is one value. */
export interface EndChange {
  readonly end: "low" | "high" | "both";
  readonly by: Quantity;
  readonly rises: boolean;
  /** Of the old value, without a sign, in tenths; null where a share means nothing, as of a temperature. */
  readonly percent: number | null;
}

export interface WidthChange {
  readonly wider: boolean;
  readonly old: Quantity;
  readonly new: Quantity;
}

export function valueChange(old: Value, now: Value): ValueChange {
  if (old.workedOut !== undefined || now.workedOut !== undefined) {
    const isSame = old.workedOut?.text === now.workedOut?.text && old.workedOut !== undefined;
    return isSame ? { how: "same" } : { how: "changed", ends: [], width: null };
  }
  const [a, b] = [old.quantity, now.quantity];
  if (sameQuantity(a, b)) return unitsOf(a) === unitsOf(b) ? { how: "same" } : { how: "restated", ends: [] };
  if (isRestated(a, b)) return { how: "restated", ends: endsChanged(a, b, "old").filter(isPlain) };
  return { how: "changed", ends: a.kind === b.kind ? endsChanged(a, b) : [], width: widthChange(a, b) };
}

/** A coarse unit can hide much: 90 s is 2 min to the nearest. In tenths of a per cent. */
function isPlain({ percent }: EndChange): boolean {
  return percent !== null && percent >= 10;
}

function unitsOf(quantity: Quantity): string {
  return endsOf(quantity)
    .map((end) => end?.unit.text ?? "")
    .join(" ");
}

/** Each end keeps its value, within what rounding to the last digit given can have moved it. */
function isRestated(a: Quantity, b: Quantity): boolean {
  if (a.kind !== b.kind || a.qualifier !== b.qualifier || isOpen(a) !== isOpen(b)) return false;
  const [old, now] = [bandEnds(a), bandEnds(b)];
  const keeps = (["low", "high"] as const).every((end) => isKept(old[end], now[end]));
  if (!keeps) return false;
  return a.nominal === null || b.nominal === null || isKept(a.nominal, b.nominal);
}

function isOpen(quantity: Quantity): string {
  const { low, high } = band(quantity);
  return `${low === null} ${high === null}`;
}

/** A writer rounds to the nearest, or a limit inwards: by less than one of the last digit; what was there had half of its own in doubt. */
function isKept(old: Magnitude | null, now: Magnitude | null): boolean {
  if (old === null || now === null) return old === now;
  const moved = abs(sub(old.base, now.base));
  if (isZero(moved)) return true;
  if (old.unit.text === now.unit.text) return false;
  return cmp(moved, digitOf(now)) < 0 || cmp(mul(moved, rational(2)), digitOf(old)) <= 0;
}

/** One of the last digit given, in the coherent unit. */
function digitOf({ digit, unit }: Magnitude): Rational {
  return abs(mul(tenTo(digit), scaleOf(unit)));
}

interface Ends {
  readonly low: Magnitude | null;
  readonly high: Magnitude | null;
}

function bandEnds({ form, low, nominal, high }: Quantity): Ends {
  return form === "nominal" ? { low: nominal, high: nominal } : { low, high };
}

function endsOf({ low, nominal, high }: Quantity): readonly (Magnitude | null)[] {
  return [low, nominal, high];
}

/** @param beside in whose unit the differences are given */
function endsChanged(a: Quantity, b: Quantity, beside: "old" | "new" = "new"): readonly EndChange[] {
  const [old, now] = [bandEnds(a), bandEnds(b)];
  const low = endChange("low", old.low, now.low, b.kind, beside);
  const high = endChange("high", old.high, now.high, b.kind, beside);
  if (low === null || high === null) return [low ?? high].filter((end) => end !== null).map(alone(a, b));
  const [x, y] = [low, high].map(({ by, rises }) => `${rises} ${by.nominal?.base.n}/${by.nominal?.base.d}`);
  if (x !== y) return [low, high];
  const nominal =
    a.nominal !== null && b.nominal !== null ? endChange("both", a.nominal, b.nominal, b.kind, beside) : null;
  return [{ ...(nominal ?? low), end: "both", percent: nominal?.percent ?? low.percent }];
}

/** Of one-sided values there is only that side to speak of. */
function alone(a: Quantity, b: Quantity): (end: EndChange) => EndChange {
  const isOne = a.form === b.form && (a.form === "at least" || a.form === "at most");
  return (end) => (isOne ? { ...end, end: "both" } : end);
}

function endChange(
  end: EndChange["end"],
  old: Magnitude | null,
  now: Magnitude | null,
  kind: Kind,
  beside: "old" | "new",
): EndChange | null {
  if (old === null || now === null || eq(old.base, now.base)) return null;
  const moved = sub(now.base, old.base);
  const share = HAS_ZERO_OF_ITS_OWN.has(kind) || isZero(old.base) ? null : abs(div(moved, old.base));
  const tenths = share === null ? null : Number(roundTo(mul(share, rational(1000)), 0, "nearest").n);
  return {
    end,
    by: differenceOf(moved, kind, beside === "old" ? old : now, [old, now]),
    rises: moved.n > 0n,
    percent: tenths,
  };
}

/** Scales that begin somewhere by agreement: 20 °C is not twice 10 °C. */
const HAS_ZERO_OF_ITS_OWN: ReadonlySet<Kind> = new Set<Kind>(["temperature", "clock position", "sound level"]);

/** A difference as a quantity without a sign, in the unit beside it, as fine as any that it lies between, and never as nothing. */
function differenceOf(
  moved: Rational,
  kind: Kind,
  beside: Magnitude,
  between: readonly Magnitude[],
  least = Number.POSITIVE_INFINITY,
): Quantity {
  const isTemperature = kind === "temperature";
  const own = isTemperature ? unitNamed(beside.unit.text === "°F" ? "°F" : "K") : beside.unit;
  const size = abs(moved);
  const of = isTemperature ? "temperature difference" : kind;
  const unit: Unit = own.kinds.includes(of) ? own : unitNamed(factsOf(of).coherent);
  const written = div(size, scaleOf(unit));
  const alike = between.filter(({ unit: { text } }) => text === beside.unit.text);
  let digit = Math.min(beside.digit, least, ...alike.map((one) => one.digit));
  while (!isZero(size) && isZero(roundTo(written, digit, "nearest"))) digit--;
  const nominal: Magnitude = { base: size, written, unit, digit };
  return { kind: of, form: "nominal", low: null, nominal, high: null, qualifier: null, computed: true };
}

function widthChange(a: Quantity, b: Quantity): WidthChange | null {
  const [old, now] = [bandEnds(a), bandEnds(b)];
  if (old.low === null || old.high === null || now.low === null || now.high === null || a.kind !== b.kind) return null;
  const before = abs(sub(old.high.base, old.low.base));
  const after = abs(sub(now.high.base, now.low.base));
  if (eq(before, after)) return null;
  const all = [old.low, old.high, now.low, now.high];
  const widths = (least?: number) =>
    [before, after].map((width) => differenceOf(width, b.kind, now.high as Magnitude, all, least)) as [
      Quantity,
      Quantity,
    ];
  let shown = widths();
  // Where the last digit does not tell them apart, more of them do.
  for (let more = 1; more <= MORE_DIGITS && show(shown[0]) === show(shown[1]); more++)
    shown = widths(now.high.digit - more);
  return { wider: cmp(after, before) > 0, old: shown[0], new: shown[1] };
}

const MORE_DIGITS = 6;
