// The cosine of an angle in turns, exact where it is a whole or a half: 0°, 60°, 90° and their like. Knows no formula.
import {
  add,
  cmp,
  floor,
  max,
  min,
  mul,
  neg,
  ONE,
  type Rational,
  rational,
  sub,
  toNumber,
  ZERO,
} from "#quantity/rational.ts";
import { type Ends, fromNumber } from "./ends.ts";

/** The cosines of all angles between the ends; exact at the multiples of 60° and 90°, else to 16 digits. */
export function cosine(angle: Ends): Ends {
  const [a, b] = [cosineOf(angle.low), cosineOf(angle.high)];
  return {
    low: holds(angle, HALF) ? neg(ONE) : min(a, b),
    nominal: angle.nominal && cosineOf(angle.nominal),
    high: holds(angle, ZERO) ? ONE : max(a, b),
  };
}

/** The sines, likewise: exact at the multiples of 90°, at 30° and its like. */
export function sine({ low, nominal, high }: Ends): Ends {
  return cosine({ low: sub(low, QUARTER), nominal: nominal && sub(nominal, QUARTER), high: sub(high, QUARTER) });
}

const HALF = rational(1, 2);
const QUARTER = rational(1, 4);
const TWELVE = rational(12);

/** At the twelfths of a turn; null where it has a root in it. */
const AT_TWELFTHS: readonly (Rational | null)[] = [ONE, null, HALF, ZERO, neg(HALF), null, neg(ONE)];

function cosineOf(turns: Rational): Rational {
  const part = sub(turns, rational(floor(turns)));
  const folded = cmp(part, HALF) > 0 ? sub(ONE, part) : part;
  const twelfths = mul(folded, TWELVE);
  const known = twelfths.d === 1n ? AT_TWELFTHS[Number(twelfths.n)] : null;
  return known ?? fromNumber(Math.cos(2 * Math.PI * toNumber(folded))) ?? ONE;
}

/** Whether some whole number of turns and `beyond` lies between the ends. */
function holds({ low, high }: Ends, beyond: Rational): boolean {
  const turns = floor(sub(high, beyond));
  return cmp(add(rational(turns), beyond), low) >= 0;
}
