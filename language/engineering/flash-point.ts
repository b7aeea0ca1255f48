// How near a liquid may come to its flash point. Knows no part and no procedure.
import { cmp, type Rational, rational, sub } from "#quantity/rational.ts";

/** 30 °F as an interval, in kelvin (29 CFR 1910.106(a)(19); read). */
const NEAR = rational(167, 10);

/** Temperatures in kelvin: the highest that is not yet within 30 °F (16.7 K) of the flash point. */
export function nearFlashPoint(flashPoint: Rational): Rational {
  return sub(flashPoint, NEAR);
}

/** Whether a liquid at this temperature is within 30 °F (16.7 K) of its flash point, or past it; both in kelvin. */
export function isNearFlashPoint(temperature: Rational, flashPoint: Rational): boolean {
  return cmp(temperature, nearFlashPoint(flashPoint)) >= 0;
}
