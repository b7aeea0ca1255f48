// What timers and deadlines come to: by the times of the entries that are marked. Pure; knows neither clock nor words.
import { toNumber } from "#quantity/rational.ts";
import { amountNow } from "./amount.ts";
import type { Amount, Deadline, Plan, Timer } from "./plan.ts";
import { type Held, isMarked, readingsIn } from "./reduce.ts";

/** How long a timer is to run, in seconds; an end that is open or not known yet is null. */
export interface Bounds {
  readonly low: number | null;
  readonly high: number | null;
}

export function boundsOf(plan: Plan, filling: Held, { limits }: Timer): Bounds {
  return { low: secondsOf(plan, filling, limits.low), high: secondsOf(plan, filling, limits.high) };
}

/** A deadline that counts. */
export interface Kept {
  /** When what it counts from came to its end. */
  readonly from: string;
  /** In seconds. */
  readonly most: number;
  /** In seconds; null while the work is not done. */
  readonly taken: number | null;
}

/** Null while what it counts from is not at its end, and where the way does not come by one of the two. */
export function keptOf(plan: Plan, filling: Held, { afterEntries, entries, most }: Deadline): Kept | null {
  const from = endOf(filling, afterEntries);
  const limit = secondsOf(plan, filling, most);
  if (from === null || limit === null || entries.every((id) => filling.position.leftOut.has(id))) return null;
  const end = endOf(filling, entries);
  return { from, most: limit, taken: end === null ? null : secondsBetween(from, end) };
}

export function secondsBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 1000;
}

/** When the last of the entries was marked; null while one is not, or where none is on the way. */
export function endOf(filling: Held, entries: readonly string[]): string | null {
  const onTheWay = entries.filter((id) => !filling.position.leftOut.has(id));
  const times = onTheWay.flatMap((id) => (isMarked(filling, id) ? (filling.marks.get(id)?.at ?? []) : []));
  if (times.length < onTheWay.length) return null;
  return times.sort((a, b) => secondsBetween(b, a)).at(-1) ?? null;
}

function secondsOf(plan: Plan, { marks }: Held, amount: Amount | null): number | null {
  const value = amount === null ? null : amountNow(amount, readingsIn(plan, marks));
  return value === null ? null : toNumber(value);
}

/** As people read it, in full seconds: `90 s`, `4 min 05 s`, `1 h 20 min`. */
export function durationText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (number: number): string => String(number).padStart(2, "0");
  if (hours > 0) return `${hours} h ${two(minutes)} min${rest === 0 ? "" : ` ${two(rest)} s`}`;
  // A minute or so is said in seconds, as procedures do.
  if (whole < 120) return `${whole} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${two(rest)} s`;
}
