// Whether records of two states of some texts say the same, but for places that a change has moved. What was worked out from the
// ones then holds for the others, with its places moved. Knows no record in particular.
import { editBetween } from "#syntax/edit.ts";
import type { Span } from "#syntax/span.ts";
import { createMoving, isSpan, type Moving } from "./moving.ts";

/** Where a place of an earlier text lies in a later one; null where that cannot be told. */
export type Move = (start: number, end: number) => Pick<Span, "start" | "end"> | null;

export interface Comparison {
  /** Whether the two say the same, each record in them standing for one of the other. Once it is not so, it never is again. */
  readonly isAlike: (before: object, after: object) => boolean;
  /** Plain data that was worked out from records that are alike, with the records and places of now. */
  readonly carried: Moving;
}

/** What stands in front of the change stays, what stands behind it moves along, what goes over it grows or shrinks. */
export function moveBetween(before: string, after: string): Move {
  if (before === after) return (start, end) => ({ start, end });
  const { end: behind, start: front } = editBetween(before, after);
  const by = after.length - before.length;
  return (start, end) => {
    const stays = end <= front;
    const moves = start >= behind;
    // An empty place where something was put in may be in front of it or behind it.
    if (stays && moves) return null;
    if (stays) return { start, end };
    if (moves) return { start: start + by, end: end + by };
    return start <= front && end >= behind ? { start, end: end + by } : null;
  };
}

/** @param moveIn how places moved in a file; null where one of its two texts is not known */
export function createComparison(moveIn: (path: string) => Move | null): Comparison {
  const pairs = new Map<object, object>();
  const paired = new Set<object>();
  let differs = false;
  const place = ({ path, start, end }: Span) => moveIn(path)?.(start, end) ?? null;
  const isPlaceAlike = (before: Span, after: Span): boolean => {
    const now = place(before);
    return now !== null && now.start === after.start && now.end === after.end;
  };
  /** Whether two records may be a pair; what they hold is still to be compared. */
  const pair = (before: object, after: object): "known" | "new" | "none" => {
    const known = pairs.get(before);
    if (known !== undefined) return known === after ? "known" : "none";
    if (paired.has(after)) return "none";
    pairs.set(before, after);
    paired.add(after);
    return "new";
  };
  return {
    isAlike: (before, after) => {
      // A list of our own: records may lead from one to the next as often as the writer likes.
      const waiting: unknown[] = [before, after];
      while (waiting.length > 0 && !differs) {
        const other = waiting.pop();
        const one = waiting.pop();
        if (!isRecord(one) || !isRecord(other)) differs = !Object.is(one, other);
        else if (isSpan(one)) differs = !isSpan(other) || one.path !== other.path || !isPlaceAlike(one, other);
        // Of lists nobody asks whether two are the same one.
        else if (Array.isArray(one)) differs = !Array.isArray(other) || !addAll(waiting, one, other);
        else {
          const how = pair(one, other);
          // A record that is the same one holds what it held.
          differs = how === "none" || (how === "new" && one !== other && !addHeld(waiting, one, other));
        }
      }
      return !differs;
    },
    carried: createMoving(place, pairs),
  };
}

function isRecord(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

/** Puts what two records hold on the list, side by side; false where they do not hold the same sort of things. */
function addHeld(list: unknown[], one: object, other: object): boolean {
  if (Object.getPrototypeOf(one) !== Object.getPrototypeOf(other)) return false;
  if (one instanceof Set || one instanceof Map) return addAll(list, [...one], [...(other as typeof one)]);
  const keys = Object.keys(one);
  const others = Object.keys(other);
  if (keys.length !== others.length) return false;
  for (let at = 0; at < keys.length; at++) {
    const key = keys[at] as string;
    if (key !== others[at]) return false;
    list.push(one[key as keyof typeof one], other[key as keyof typeof other]);
  }
  return true;
}

function addAll(list: unknown[], one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) list.push(one[at], other[at]);
  return true;
}
