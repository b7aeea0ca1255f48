// What a review finds: one change, with the places it stands at, and all that is needed to carry it out. Data; no format.
import type { Finding } from "#rules/finding.ts";
import type { Span } from "#syntax/span.ts";
import type { Edit } from "./edit.ts";

/** Most grave first. */
export const GROUPS = ["safety", "values", "order", "items", "words", "layout"] as const;
export type Group = (typeof GROUPS)[number];

export interface Change {
  readonly group: Group;
  /** What sort of change: `hold-dropped`, `time-changed`, `restated`. */
  readonly kind: string;
  readonly message: string;
  /** On the new side, or on the old one where it is no longer there. */
  readonly step?: StepName;
  /** By name; empty where no procedure is concerned. */
  readonly procedure: string;
  readonly old?: Side;
  readonly new?: Side;
  readonly findings?: { readonly came: readonly Finding[]; readonly went: readonly Finding[] };
  /** Roles that signed, and have to look again. */
  readonly signAgain?: readonly string[];
  /** Carried out on the old record, all of them together give the new one. */
  readonly edits: readonly Edit[];
}

export interface StepName {
  readonly name?: string;
  readonly number: string;
}

/** One side of a change: where it stands, and what it says there. */
export interface Side {
  readonly span: Span;
  readonly text?: string;
}
