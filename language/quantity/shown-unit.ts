// Which unit shows a value of a kind, by system and size. Knows no writer's unit.
import { factsOf, type Kind, type ShownUnit } from "./kind.ts";
import { abs, type Rational, toNumber } from "./rational.ts";
import { type Unit, unitNamed } from "./unit.ts";

/** The unit in which outputs show a value of this size (coherent unit) in a system; null where the kind has none of its own. */
export function shownUnit(kind: Kind, size: Rational, system: "metric" | "customary"): Unit | null {
  const choices: readonly ShownUnit[] = factsOf(kind)[system];
  const value = toNumber(abs(size));
  const fitting = choices.filter((choice) => choice.from <= value);
  const chosen = fitting[fitting.length - 1];
  return chosen === undefined ? null : unitNamed(chosen.unit);
}

/** The unit for a computed value that has none: that of the system, or the coherent one. */
export function unitForResult(kind: Kind, size: Rational, system: Unit["system"]): Unit {
  const shown = shownUnit(kind, size, system === "customary" ? "customary" : "metric");
  return shown ?? unitNamed(factsOf(kind).coherent);
}
