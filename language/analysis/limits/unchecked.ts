// What could not be checked for want of data: told beside the findings, so that silence is not read as a pass. Data, no wording
// but the shop's names.
import type { Span } from "#syntax/span.ts";

/** What a check would have looked at. */
type CheckedMatter =
  | "preload"
  | "torque condition"
  | "tool range"
  | "tool accuracy"
  | "temperature to fit"
  | "load"
  | "oxygen"
  | "measurement range"
  | "heating range"
  | "remainder"
  | "balance";

/** Why there is no answer: which value of which thing is not declared, or cannot be read. */
export interface Unchecked {
  readonly matter: CheckedMatter;
  /** Of what: `CoverScrew`, `Bearing over Shaft`. */
  readonly of: string;
  /** The value that is wanted: `nut factor`, `thread`, `class or grade`, `expansion`, `mass`, `range`. */
  readonly lacks: string;
  /** What the value would be for: the consumable on the thread, `dry`; null where nothing is to be added. */
  readonly when: string | null;
  /** The thing whose declaration lacks it. */
  readonly in: string;
  readonly span: Span;
}

/** Each once, in the order in which they were met. */
export function createUnchecked(): {
  readonly add: (one: Unchecked) => void;
  readonly all: () => readonly Unchecked[];
} {
  const known = new Map<string, Unchecked>();
  return {
    add: (one) => {
      const key = `${one.matter}|${one.of}|${one.lacks}|${one.when}|${one.in}`;
      if (!known.has(key)) known.set(key, one);
    },
    all: () => [...known.values()],
  };
}
