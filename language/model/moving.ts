// Plain records of an earlier state of some texts as they are now, with their places moved: what was worked out from the one state holds
// for the other. Knows no record in particular.
import type { Span } from "#syntax/span.ts";

/** Where a place of the earlier state lies now; null where that cannot be told. */
export type Place = (span: Span) => Pick<Span, "start" | "end"> | null;

/** Plain data of the earlier state as it is now; null where a place in it cannot be told. What did not move stays the same record. */
export type Moving = <T extends object>(records: T) => T | null;

/** @param known records of the earlier state with those that stand for them now; those that are made are added */
export function createMoving(place: Place, known: Map<object, object> = new Map()): Moving {
  // Declarations may lead from one to the next as often as the writer likes: they are filled in one after the other.
  const unfilled: (readonly [from: object, made: object])[] = [];
  const added: object[] = [];
  /** How many places, or records that have some, were met so far. */
  let met = 0;
  const keep = (from: object, made: object): void => {
    known.set(from, made);
    added.push(from);
  };
  const now = (value: unknown): unknown => {
    if (typeof value !== "object" || value === null) return value;
    // Places are most of what there is to look at, and none is kept: whoever asks for one looks at where it is.
    if (isSpan(value)) {
      met++;
      return spanNow(value);
    }
    if (Array.isArray(value)) return value.length === 0 ? value : listNow(value);
    if (placeless.has(value)) return value;
    const before = met;
    const one = movedNow(value);
    if (met === before) placeless.add(value);
    return one;
  };
  const movedNow = (value: object): unknown => {
    const made = known.get(value);
    if (made === undefined && Object.getPrototypeOf(value) !== Object.prototype) return lost();
    if (made === undefined && !isDeclared(value)) return recordNow(value);
    met++;
    return made ?? declaredNow(value as { readonly extent: Span });
  };
  const listNow = (list: readonly unknown[]): readonly unknown[] => {
    let made: unknown[] | null = null;
    for (let at = 0; at < list.length; at++) {
      const one = now(list[at]);
      if (one === list[at]) continue;
      made ??= list.slice();
      made[at] = one;
    }
    return made ?? list;
  };
  const spanNow = (span: Span): Span => {
    const { start, end } = place(span) ?? lost();
    if (start === span.start && end === span.end) return span;
    return { path: span.path, start, end };
  };
  const recordNow = (record: object): object => {
    let made: Record<string, unknown> | null = null;
    for (const key in record) {
      const held = record[key as keyof object] as unknown;
      if (typeof held !== "object" || held === null) continue;
      const one = now(held);
      if (one === held) continue;
      made ??= { ...record };
      made[key] = one;
    }
    if (made !== null) keep(record, made);
    return made ?? record;
  };
  const declaredNow = (record: object & { readonly extent: Span }): object => {
    if (spanNow(record.extent) === record.extent) return record;
    const made = { ...record };
    keep(record, made);
    unfilled.push([record, made]);
    return made;
  };
  return <T extends object>(records: T): T | null => {
    added.length = 0;
    unfilled.length = 0;
    try {
      const made = now(records) as T;
      for (const [from, one] of unfilled)
        for (const key in from) (one as Record<string, unknown>)[key] = now(from[key as keyof object]);
      return made;
    } catch (error) {
      if (!(error instanceof LostPlace)) throw error;
      // Half filled, they stand for nothing.
      for (const one of added) known.delete(one);
      return null;
    }
  };
}

/** Records and lists in which no place stands, at whatever depth: they are the same wherever what holds them moves. */
const placeless = new WeakSet<object>();

class LostPlace extends Error {}

const LOST = new LostPlace("A place cannot be told");

function lost(): never {
  throw LOST;
}

export function isSpan(value: object): value is Span {
  return "path" in value && "start" in value && "end" in value;
}

/** Whether it is one of the records that others speak of, a declaration or a procedure: it moves as a whole, or not at all. */
function isDeclared(value: object): value is { readonly extent: Span } {
  return "id" in value && "extent" in value;
}
