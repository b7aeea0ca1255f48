// Positions on a circle that lie equally far apart. Whole numbers, exact. Knows no parts.

/**
 * The equally spaced sets of `wanted` positions among 1 to `count`, each rising, by their first position: count/wanted of
 * them where `wanted` divides `count`, else none. None for anything but whole numbers above zero either.
 */
export function equallySpacedSets(count: number, wanted: number): readonly (readonly number[])[] {
  if (!Number.isInteger(count) || !Number.isInteger(wanted) || wanted < 1 || wanted > count) return [];
  if (count % wanted !== 0) return [];
  const apart = count / wanted;
  return upTo(apart).map((first) => upTo(wanted).map((at) => first + (at - 1) * apart));
}

/** Whether different positions of 1 to `count` lie equally far apart round the circle. One alone does, and none do. */
export function isEquallySpaced(count: number, positions: readonly number[]): boolean {
  const sorted = [...positions].sort((a, b) => a - b);
  const sets = equallySpacedSets(count, positions.length);
  return positions.length === 0 || sets.some((set) => set.every((position, at) => position === sorted[at]));
}

function upTo(count: number): readonly number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}
