// Goes through the order of work with what is marked so far: what comes next, what is left out, where the work goes back or stops.
// Pure; knows neither how marks are made nor how they are shown.
import { isWithin, type Readings } from "./amount.ts";
import type { Entry, Op, Plan, Test } from "./plan.ts";

/** What the walk has to know of a record. */
export interface Marked {
  /** Whether an entry is marked so that the work goes on behind it. */
  readonly isDone: (id: string) => boolean;
  readonly hasFailed: (id: string) => boolean;
  /** Whether anything of it is marked, be it one screw of a round. */
  readonly isBegun: (id: string) => boolean;
  /** What a person said of a condition; null where nothing. */
  readonly answer: (id: string) => boolean | null;
  readonly choice: (option: string) => string | null;
  readonly readings: Readings;
}

export interface Position {
  /** Entries that may be marked now. */
  readonly next: readonly string[];
  /** Entries that the way does not come by. */
  readonly leftOut: ReadonlySet<string>;
  /** Where the branches went, by the entry that asks about their condition. */
  readonly taken: ReadonlyMap<string, boolean>;
  /** Set where a `stop` was reached. */
  readonly stopped: string | null;
  /** Set where the work goes back: what is marked in this part of the program is to be done again. */
  readonly back: { readonly from: number; readonly end: number } | null;
  /** Whether the end was reached. */
  readonly isComplete: boolean;
}

export function walk({ program }: Plan, marked: Marked): Position {
  const walking: Walking = { program, marked, leftOut: new Set(), taken: new Map() };
  const end = through(walking, 0, program.length);
  const { leftOut, taken } = walking;
  const found = { next: [], leftOut, taken, stopped: null, back: null, isComplete: false };
  switch (end.kind) {
    case "at":
      return { ...found, isComplete: true };
    case "back":
      // Nothing lies round the whole: a jump that leads nowhere leaves nothing to do.
      return found;
    case "again":
      return { ...found, back: { from: end.from, end: end.end } };
    case "stopped":
      return { ...found, stopped: end.text };
    case "next":
      return { ...found, next: end.ids };
  }
}

interface Walking {
  readonly program: readonly Op[];
  readonly marked: Marked;
  readonly leftOut: Set<string>;
  readonly taken: Map<string, boolean>;
}

type End =
  /** Went on to a place at or beyond the end of the part. */
  | { readonly kind: "at"; readonly at: number }
  | { readonly kind: "next"; readonly ids: readonly string[] }
  | { readonly kind: "stopped"; readonly text: string }
  /** Goes back to a place before the part. */
  | { readonly kind: "back"; readonly to: number }
  | { readonly kind: "again"; readonly from: number; readonly end: number };

/** @param from where the part begins, `end` where it is over */
function through(walking: Walking, from: number, end: number): End {
  const { program, marked } = walking;
  let at = from;
  const goTo = (to: number): void => {
    for (let between = at + 1; between < Math.min(to, program.length); between++) leaveOut(walking, between);
    at = to;
  };
  while (at < end) {
    const op = program[at] as Op;
    switch (op.op) {
      case "mark":
        if (!marked.isDone(op.of)) return { kind: "next", ids: [op.of] };
        at++;
        break;
      case "unless": {
        const holds = testNow(op.test, op.ask, marked);
        if (holds === null) return { kind: "next", ids: [op.ask] };
        walking.taken.set(op.ask, holds);
        if (holds) at++;
        else goTo(op.to);
        break;
      }
      case "unless failed":
        if (marked.hasFailed(op.of)) at++;
        else goTo(op.to);
        break;
      case "go":
        goTo(op.to);
        break;
      case "back":
        return op.to < from ? { kind: "back", to: op.to } : { kind: "again", from: op.to, end };
      case "stop":
        return { kind: "stopped", text: op.text };
      case "any": {
        const inside = throughParts(walking, op.parts);
        if (inside === null) at = op.to;
        else if (inside.kind === "at") goTo(inside.at);
        else if (inside.kind === "back" && inside.to >= from) return { kind: "again", from: inside.to, end };
        else return inside;
      }
    }
  }
  return { kind: "at", at };
}

/** One that is begun comes first; null where all are complete. */
function throughParts(walking: Walking, parts: readonly (readonly [number, number])[]): End | null {
  const open: string[] = [];
  for (const [from, end] of parts) {
    const inside = through(walking, from, end);
    if (inside.kind === "at" && inside.at <= end) continue;
    if (inside.kind !== "next" || isBegun(walking, from, end)) return inside;
    open.push(...inside.ids);
  }
  return open.length === 0 ? null : { kind: "next", ids: open };
}

function isBegun({ program, marked }: Walking, from: number, end: number): boolean {
  return program.slice(from, end).some((op) => op.op === "mark" && marked.isBegun(op.of));
}

function leaveOut({ program, leftOut }: Walking, at: number): void {
  const op = program[at];
  if (op?.op === "mark") leftOut.add(op.of);
}

/** What a test comes to; what no record tells, a person has to have said. */
function testNow(test: Test, ask: string, marked: Marked): boolean | null {
  const known = knownOf(test, marked);
  return known ?? marked.answer(ask);
}

function knownOf(test: Test, marked: Marked): boolean | null {
  switch (test.form) {
    case "all":
    case "any": {
      const settling = test.form === "any";
      const parts = test.of.map((part) => knownOf(part, marked));
      if (parts.includes(settling)) return settling;
      return parts.includes(null) ? null : !settling;
    }
    case "not": {
      const inner = knownOf(test.of, marked);
      return inner === null ? null : !inner;
    }
    case "option": {
      const choice = marked.choice(test.option);
      return choice === null ? null : choice === test.choice;
    }
    case "reading": {
      const value = marked.readings(test.reading);
      return value === null ? null : isWithin(value, test.limits, marked.readings);
    }
    case "ask":
      return null;
  }
}

/** The entries of a part of the program: all that is marked there, and all that was answered. */
export function entriesBetween({ program }: Plan, from: number, end: number): ReadonlySet<Entry["id"]> {
  return new Set(
    program.slice(from, end).flatMap((op) => (op.op === "mark" ? [op.of] : op.op === "unless" ? [op.ask] : [])),
  );
}
