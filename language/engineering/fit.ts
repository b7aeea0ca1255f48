// Fits between two parts: how much larger the inner is than the outer, and whether the outer has to be forced, or heated,
// over the inner. Exact. Knows no procedures.
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, ZERO } from "#quantity/rational.ts";
import type { Given } from "./ends.ts";
import { type Computed, explained, refused } from "./explanation.ts";
import { interferenceByClasses } from "./iso-286.ts";

/** What is said of a fit: its interference, or its tolerance letters as `H7/s6`, which tell it with the diameter. */
export interface FitData {
  readonly interference: { readonly quantity: Quantity } | null;
  readonly tolerance: { readonly text: string } | null;
  readonly diameter?: { readonly quantity: Quantity } | null;
}

/** The interference of a fit at 20 °C: as declared, else by its letters at its diameter (ISO 286-1). */
export function interferenceOf({ interference, tolerance, diameter }: FitData): Computed {
  if (interference !== null) {
    return explained({
      result: { name: "interference", symbol: "δ", value: interference.quantity },
      formula: "δ as declared",
      inputs: [],
      source: "declared",
      caution: "At 20 °C.",
    });
  }
  if (tolerance === null) return refused({ why: "missing", input: "interference" });
  if (!diameter) return refused({ why: "missing", input: "diameter" });
  const given: Given = { value: diameter.quantity };
  return interferenceByClasses(tolerance.text, given);
}

/**
 * Whether even the smallest interference is above zero. By letters: computed at the diameter where that is known and the
 * table holds it; else a hole H6 or H7 with a shaft from r upwards, whose lower deviation lies above the hole's tolerance
 * at all sizes over 3 mm (ISO 286-1; second). False where it is not known.
 */
export function isInterference(fit: FitData): boolean {
  const computed = interferenceOf(fit);
  if (computed.ok) {
    const { form, low, nominal } = computed.value;
    const smallest = form === "nominal" ? nominal : low;
    return smallest !== null && cmp(smallest.base, ZERO) > 0;
  }
  return fit.tolerance !== null && /^H[67]\/[rstuvxyz][5-7]$/.test(fit.tolerance.text.replaceAll(" ", ""));
}
