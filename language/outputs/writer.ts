// What every sentence needs at hand: the fixed words of a language, the units asked for, and which titles are not clear
// by themselves. Knows no format.
import type { Declaration } from "#model/declarations.ts";
import { type Role, show, showIn } from "#quantity/display.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { abs, cmp, type Rational, ZERO } from "#quantity/rational.ts";
import { shownUnit } from "#quantity/shown-unit.ts";
import { unitNames } from "./unit-names.ts";
import type { Words } from "./words/en.ts";

/** Metric, customary, or the writer's own first and the other system's behind it. */
export type Units = "si" | "us" | "both";

export interface Writer {
  readonly words: Words;
  /** A value in the units asked for, rounded to the side that its role makes safe. */
  readonly value: (quantity: Quantity, role: Role) => string;
  /** Values of one kind, all in the same units, as rounds of one tightening are. */
  readonly alike: (quantities: readonly Quantity[], role: Role) => readonly string[];
  /** Whether several declarations share this title, so that the name has to stand beside it. */
  readonly ambiguous: (title: string) => boolean;
}

/** @param declarations those that the procedure can name */
export function writerOf(words: Words, units: Units, declarations: readonly Declaration[]): Writer {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const { title } of declarations) (seen.has(title) ? twice : seen).add(title);
  const alike: Writer["alike"] = (quantities, role) => {
    const size = sizeOf(quantities);
    return quantities.map((quantity) => words.quantity(unitNames(valueIn(quantity, role, units, size))));
  };
  return {
    words,
    value: (quantity, role) => alike([quantity], role)[0] ?? "",
    alike,
    ambiguous: (title) => twice.has(title),
  };
}

/** @param size by which the unit of the other system is chosen */
function valueIn(quantity: Quantity, role: Role, units: Units, size: Rational): string {
  const systems = new Set(endsOf(quantity).map((end) => end.unit.system));
  const own = systems.has("customary") && !systems.has("metric") ? "customary" : "metric";
  const wanted =
    units === "both" ? (own === "metric" ? "customary" : "metric") : units === "si" ? "metric" : "customary";
  if (units !== "both" && !systems.has(wanted === "metric" ? "customary" : "metric")) return show(quantity);
  const unit = systems.has("metric") || systems.has("customary") ? shownUnit(quantity.kind, size, wanted) : null;
  if (unit === null) return show(quantity);
  return units === "both"
    ? `${show(quantity)} (${showIn(bandOnly(quantity), unit, role)})`
    : showIn(quantity, unit, role);
}

/** A band says all that is to be kept: in the second unit its nominal value is not repeated. */
function bandOnly(quantity: Quantity): Quantity {
  const banded = quantity.form === "tolerance" || quantity.form === "nominal in range";
  return banded ? { ...quantity, form: "range", nominal: null } : quantity;
}

function sizeOf(quantities: readonly Quantity[]): Rational {
  const sizes = quantities.flatMap(endsOf).map((end) => abs(end.base));
  return sizes.reduce((a, b) => (cmp(a, b) > 0 ? a : b), ZERO);
}

function endsOf({ low, nominal, high }: Quantity): readonly Magnitude[] {
  return [low, nominal, high].filter((end) => end !== null);
}
