// Exact rational numbers on BigInt: the arithmetic under every quantity. Knows no unit.

/** A fraction in lowest terms with a positive denominator. Build it with {@link rational}, never by hand. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

/** The fraction `n/d` in lowest terms. Throws a RangeError for `d = 0`: callers test a divisor first. */
export function rational(n: bigint | number, d: bigint | number = 1n): Rational {
  return reduce(BigInt(n), BigInt(d));
}

export const ZERO: Rational = { n: 0n, d: 1n };
export const ONE: Rational = { n: 1n, d: 1n };

export function add(a: Rational, b: Rational): Rational {
  return a.d === b.d ? reduce(a.n + b.n, a.d) : reduce(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function sub(a: Rational, b: Rational): Rational {
  return add(a, neg(b));
}

export function mul(a: Rational, b: Rational): Rational {
  return reduce(a.n * b.n, a.d * b.d);
}

/** `a / b`. Throws a RangeError where `b` is zero. */
export function div(a: Rational, b: Rational): Rational {
  return reduce(a.n * b.d, a.d * b.n);
}

export function neg(a: Rational): Rational {
  return { n: -a.n, d: a.d };
}

export function abs(a: Rational): Rational {
  return a.n < 0n ? neg(a) : a;
}

/** `a` to an integer power. Throws a RangeError for zero to a negative power. */
export function power(a: Rational, exponent: number): Rational {
  const e = BigInt(Math.abs(exponent));
  // Lowest terms stay lowest.
  const [n, d] = exponent < 0 ? [a.d ** e, a.n ** e] : [a.n ** e, a.d ** e];
  if (d === 0n) throw new RangeError(NO_ZERO);
  return d < 0n ? { n: -n, d: -d } : { n, d };
}

/** `10` to an integer power. */
export function tenTo(exponent: number): Rational {
  return power({ n: 10n, d: 1n }, exponent);
}

/** -1, 0 or 1, as `a` is below, equal to or above `b`. */
export function cmp(a: Rational, b: Rational): -1 | 0 | 1 {
  const left = a.n * b.d;
  const right = b.n * a.d;
  return left < right ? -1 : left > right ? 1 : 0;
}

export function eq(a: Rational, b: Rational): boolean {
  return a.n === b.n && a.d === b.d;
}

export function min(a: Rational, b: Rational): Rational {
  return cmp(a, b) <= 0 ? a : b;
}

export function max(a: Rational, b: Rational): Rational {
  return cmp(a, b) >= 0 ? a : b;
}

export function isZero(a: Rational): boolean {
  return a.n === 0n;
}

export function isNegative(a: Rational): boolean {
  return a.n < 0n;
}

/** The largest whole number not above `a`. */
export function floor(a: Rational): bigint {
  const quotient = a.n / a.d;
  return a.n < 0n && quotient * a.d !== a.n ? quotient - 1n : quotient;
}

/** Reads `12`, `-0.5`, `1.25e-6`; null for any other text. */
export function fromDecimal(text: string): Rational | null {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d{1,4}))?$/.exec(text);
  if (match === null) return null;
  const [, sign, whole = "", decimals = "", exponent = "0"] = match;
  const digits = BigInt(whole + decimals);
  return mul(rational(sign === "-" ? -digits : digits), tenTo(Number(exponent) - decimals.length));
}

/** The nearest floating-point number, for drawing and display only: never compared, never rounded further. */
export function toNumber(a: Rational): number {
  const direct = Number(a.n) / Number(a.d);
  if (Number.isFinite(direct) && (direct !== 0 || a.n === 0n)) return direct;
  // Beyond the range of a double in one part: keep 60 significant bits of each.
  const shiftN = Math.max(0, bits(a.n) - 60);
  const shiftD = Math.max(0, bits(a.d) - 60);
  return (Number(a.n >> BigInt(shiftN)) / Number(a.d >> BigInt(shiftD))) * 2 ** (shiftN - shiftD);
}

/** How many bits the larger part takes: a measure of the cost of going on with it. */
export function size(a: Rational): number {
  return Math.max(bits(a.n), bits(a.d));
}

function bits(value: bigint): number {
  return (value < 0n ? -value : value).toString(16).length * 4;
}

const NO_ZERO = "a fraction has no zero denominator";

function reduce(n: bigint, d: bigint): Rational {
  if (d === 0n) throw new RangeError(NO_ZERO);
  if (d === 1n) return { n, d };
  const common = gcd(n < 0n ? -n : n, d < 0n ? -d : d);
  const divisor = d < 0n ? -common : common;
  return divisor === 1n ? { n, d } : { n: n / divisor, d: d / divisor };
}

function gcd(a: bigint, b: bigint): bigint {
  let [high, low] = [a, b];
  while (low !== 0n) [high, low] = [low, high % low];
  return high;
}
