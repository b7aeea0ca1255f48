// A quantity in both unit systems, rounded as an export rounds it. Knows no place in the tree.
import type { Value } from "#model/declarations.ts";
import { type Role, show, showIn } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { shownUnit } from "#quantity/shown-unit.ts";
import { blocks, plain, strong } from "./markup.ts";

export type Units = "si" | "us" | "both";

export function quantityText({ quantity, workedOut, per }: Value, role: Role, units: Units): string {
  const source = per?.source ? `Source: ${plain(`${per.source.name} ${per.section}`)}` : null;
  if (workedOut !== undefined)
    return blocks([
      `${strong(workedOut.text)} (${quantity.kind}, worked out from a reading)`,
      `It lies in ${plain(show(quantity))}.`,
      source,
    ]);
  const own = `${strong(show(quantity))} (${quantity.kind})`;
  return blocks([own, units === "both" || isOther(quantity, units) ? otherText(quantity, role) : null, source]);
}

/** A value in a sentence: `45 ± 2 N·m (32.0 .. 34.6 lbf·ft)`. */
export function inBoth({ quantity }: Value, role: Role): string {
  return quantityInBoth(quantity, role);
}

/** The same of what no text says: a value that is worked out. */
export function quantityInBoth(quantity: Quantity, role: Role): string {
  const other = inOther(quantity, role);
  return plain(other === null ? show(quantity) : `${show(quantity)} (${other.shown})`);
}

function otherText(quantity: Quantity, role: Role): string | null {
  const other = inOther(quantity, role);
  if (other === null) return null;
  const { shown, band } = other;
  return band === null ? `≈ ${plain(shown)}` : `≈ ${plain(band)}, ${ROUNDED[role] ?? "rounded"}`;
}

const ROUNDED: Partial<Record<Role, string>> = {
  "must be met": "rounded inwards: keeping it keeps the original",
  occurs: "rounded outwards: what occurs lies in it",
  "at least safe": "rounded up, to the safe side",
  "at most safe": "rounded down, to the safe side",
};

function inOther(quantity: Quantity, role: Role): { readonly shown: string; readonly band: string | null } | null {
  const ends = [quantity.nominal, quantity.low, quantity.high].filter((end) => end !== null);
  const system = ends[0]?.unit.system ?? "shared";
  const largest = ends[ends.length - 1];
  if (system === "shared" || largest === undefined) return null;
  const unit = shownUnit(quantity.kind, largest.base, system === "metric" ? "customary" : "metric");
  if (unit === null) return null;
  const isBand = quantity.form !== "nominal";
  const banded: Quantity =
    quantity.nominal !== null && isBand ? { ...quantity, form: "range", nominal: null } : quantity;
  const shown = showIn(banded, unit, isBand || role !== "must be met" ? role : "nominal");
  return { shown, band: isBand ? shown : null };
}

/** Whether the reader wants another system than the writer's. */
function isOther(quantity: Quantity, units: Units): boolean {
  const system = (quantity.nominal ?? quantity.low ?? quantity.high)?.unit.system;
  return (units === "si" && system === "customary") || (units === "us" && system === "metric");
}
