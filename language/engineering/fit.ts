// Fits between two parts: whether the outer has to be forced, or heated, over the inner. Knows no procedures.
import type { Quantity } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";

/** What is said of a fit: its interference, or its tolerance letters as `H7/s6`. */
export interface FitData {
  readonly interference: { readonly quantity: Quantity } | null;
  readonly tolerance: { readonly text: string } | null;
}

/**
 * Whether even the smallest interference is above zero. By letters: a hole H6 or H7 with a shaft from r upwards, whose lower
 * deviation lies above the hole's tolerance at all sizes (ISO 286-2; memory). False where it is not known.
 */
export function isInterference({ interference, tolerance }: FitData): boolean {
  if (interference !== null) {
    const { low, nominal, high } = interference.quantity;
    const smallest = low ?? (high === null ? nominal : null);
    return smallest !== null && toNumber(smallest.base) > 0;
  }
  return tolerance !== null && /^H[67]\/[rstuvxyz][5-7]$/.test(tolerance.text.replaceAll(" ", ""));
}
