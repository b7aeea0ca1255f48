// What people may lift by hand: one person's limit, lowered by where hands are on the load, for the rule of limits and for the
// hazard alike. Knows no load.
import type { Explanation } from "#engineering/explanation.ts";
import { handLimit, type LiftFactor, travelBetween } from "#engineering/lifting.ts";
import type { Value } from "#model/declarations.ts";
import type { Hands } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Run } from "../follow.ts";
import { hazardThreshold, type Threshold } from "../hazards/thresholds.ts";

/** What one person may lift. */
export interface OnePerson {
  /** The published or the shop's own, lowered. */
  readonly threshold: Threshold;
  /** What lowered it; empty where nothing is said of hands. */
  readonly factors: readonly LiftFactor[];
  /** Null where nothing lowered it. */
  readonly explanation: Explanation | null;
  /** What is said of hands and cannot be counted: an open end. */
  readonly lacks: string | null;
}

/** Null where the shop's own limit cannot be read. */
export function onePersonLimit(run: Run, hands: Hands | null): OnePerson | null {
  const threshold = hazardThreshold(run, "lifting");
  if (threshold === null || threshold.value.kind !== "mass") return null;
  const ideal: OnePerson = { threshold, factors: [], explanation: null, lacks: null };
  if (hands === null) return ideal;
  const { reach, height, endHeight, turned } = hands;
  const travel = height === null || endHeight === null ? null : travelBetween(given(height), given(endHeight));
  const limit = handLimit(
    { value: threshold.value },
    { horizontal: reach && given(reach), height: height && given(height), travel, twist: turned && given(turned) },
  );
  if (!limit.ok) return { ...ideal, lacks: limit.refusal.input };
  const { explanation, factors, value } = limit;
  const lacks = endHeight !== null && travel === null ? "travel" : null;
  return { threshold: { ...threshold, value }, factors, explanation, lacks };
}

function given({ quantity }: Value): { readonly value: Quantity } {
  return { value: quantity };
}
