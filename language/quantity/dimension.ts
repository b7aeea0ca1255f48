// Dimensions as exponents over base quantities. Angle, clock position and sound level are bases of their own, so that
// a rotational speed is no frequency and a clock position no angle. Knows no unit and no kind.

const BASES = ["length", "mass", "time", "current", "temperature", "angle", "clock", "level"] as const;

export type Base = (typeof BASES)[number];

/** One exponent for each base, in the order of the bases; a string, so that dimensions compare and serve as keys. */
export type Dimension = string & { readonly brand: "Dimension" };

/** The dimension with these exponents; `dimension({})` is that of a bare number. */
export function dimension(exponents: Partial<Record<Base, number>>): Dimension {
  return BASES.map((base) => exponents[base] ?? 0).join(" ") as Dimension;
}

export const DIMENSIONLESS: Dimension = dimension({});

/** The dimension of a product: `times(a, b, -1)` is that of `a / b`. */
export function times(a: Dimension, b: Dimension, exponent = 1): Dimension {
  const right = b.split(" ");
  return a
    .split(" ")
    .map((own, index) => Number(own) + exponent * Number(right[index]))
    .join(" ") as Dimension;
}

/** The exponent of one base. */
export function exponentOf(of: Dimension, base: Base): number {
  return Number(of.split(" ")[BASES.indexOf(base)]);
}
