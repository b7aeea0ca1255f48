// Readings that later branches depend on. A reading falls in one of the regions that its bounds part the scale into; the
// region is a hidden variable of the decisions, so that two branches on one reading are never taken independently.
import type { Reading } from "#model/declarations.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import type { Decision, Decisions } from "./decision.ts";

export interface Readings {
  /** Where the reading lies within the bound. */
  readonly where: (reading: Reading, bound: Quantity) => Decision;
  /** The hidden variable of a reading; null where no branch asks for it. */
  readonly variable: (reading: Reading) => number | null;
}

/** The value as a number in the kind's coherent unit, for comparing; null for none. */
export function magnitudeNumber(magnitude: Magnitude | null): number | null {
  return magnitude === null ? null : toNumber(magnitude.base);
}

/** The lower end, or the one value there is, in the kind's coherent unit; null where there is no lower end. */
export function lowEnd(quantity: Quantity | null | undefined): number | null {
  return magnitudeNumber(quantity?.low ?? quantity?.nominal ?? null);
}

/** The upper end, or the one value there is. */
export function highEnd(quantity: Quantity | null | undefined): number | null {
  return magnitudeNumber(quantity?.high ?? quantity?.nominal ?? null);
}

/** Gathers the bounds of every reading from all conditions of the procedure first. */
export function createReadings(decisions: Decisions, conditions: Iterable<ExpandedCondition>): Readings {
  const bounds = new Map<string, Set<number>>();
  for (const condition of conditions) gather(condition, bounds);
  const scales = new Map<string, { level: number; points: readonly number[] }>();
  for (const [id, points] of bounds) {
    const sorted = [...points].sort((a, b) => a - b);
    // Regions: below the first point, at it, between it and the next, at that …, above the last.
    const regions = Array.from({ length: 2 * sorted.length + 1 }, (_, at) => String(at));
    scales.set(id, { level: decisions.variable(`reading:${id}`, id, regions, true), points: sorted });
  }
  return {
    where: (reading, bound) => {
      const scale = scales.get(reading.id);
      if (scale === undefined) return decisions.or(0, 1);
      const low = magnitudeNumber(bound.low) ?? Number.NEGATIVE_INFINITY;
      const high = magnitudeNumber(bound.high) ?? Number.POSITIVE_INFINITY;
      return decisions.where(scale.level, (_, region) => {
        const [from, to] = regionEnds(scale.points, region);
        return from >= low && to <= high;
      });
    },
    variable: (reading) => scales.get(reading.id)?.level ?? null,
  };
}

function gather(condition: ExpandedCondition, bounds: Map<string, Set<number>>): void {
  if (condition.form === "all" || condition.form === "any")
    for (const operand of condition.operands) gather(operand, bounds);
  if (condition.form === "not") gather(condition.operand, bounds);
  if (condition.form !== "reading") return;
  const points = bounds.get(condition.reading.id) ?? new Set<number>();
  bounds.set(condition.reading.id, points);
  for (const end of [condition.source.bound.quantity.low, condition.source.bound.quantity.high]) {
    const value = magnitudeNumber(end);
    if (value !== null) points.add(value);
  }
}

function regionEnds(points: readonly number[], region: number): readonly [number, number] {
  const at = points[(region - 1) / 2];
  if (region % 2 === 1 && at !== undefined) return [at, at];
  return [points[region / 2 - 1] ?? Number.NEGATIVE_INFINITY, points[region / 2] ?? Number.POSITIVE_INFINITY];
}
