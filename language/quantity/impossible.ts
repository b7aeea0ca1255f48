// What no quantity of a kind can be: below absolute zero, negative, off the clock.
import { factsOf } from "./kind.ts";
import type { Impossibility } from "./problem.ts";
import type { Magnitude, Quantity } from "./quantity.ts";
import { cmp, isNegative, rational, ZERO } from "./rational.ts";

/**
 * Why a quantity cannot be, with the end that shows it; null where it can. `place` tells whether its place wants a
 * definite kind: a reading (`record "offset" -0.1 .. 0.1 mm`) may lie on either side of zero.
 */
export function impossibility(
  q: Quantity,
  place: boolean,
): { readonly why: Impossibility; readonly end: Magnitude } | null {
  const ends = [q.low, q.nominal, q.high].filter((end) => end !== null);
  for (const end of ends) {
    const why = whyNot(q, end, place);
    if (why !== null) return { why, end };
  }
  const { low, nominal, high } = q;
  if (q.form !== "nominal in range" || nominal === null || q.kind === "clock position") return null;
  const outside = (low && cmp(nominal.base, low.base) < 0) || (high && cmp(nominal.base, high.base) > 0);
  return outside ? { why: "nominal outside its range", end: nominal } : null;
}

const CLOCK_END = rational(13);

function whyNot(q: Quantity, end: Magnitude, place: boolean): Impossibility | null {
  if (q.kind === "clock position") {
    return cmp(end.base, ZERO) <= 0 || cmp(end.base, CLOCK_END) >= 0 ? "no such clock position" : null;
  }
  if (!isNegative(end.base)) return null;
  if (q.kind === "temperature") return "below absolute zero";
  if (q.qualifier === "absolute" && place) return "negative";
  if (factsOf(q.kind).negative || !place) return null;
  return isAllowedBelow(q, end) ? null : "negative";
}

/** The low end of a tolerance, or of a computed band, may run below zero where its other end does not: the value need not. */
function isAllowedBelow(q: Quantity, end: Magnitude): boolean {
  const reaches = q.high !== null && !isNegative(q.high.base);
  return end === q.low && reaches && (q.form === "tolerance" || q.computed);
}
