// One thing that completion offers, before the protocol's form of it.
import type { CompletionItemKind } from "vscode-languageserver";

export interface Candidate {
  readonly label: string;
  readonly kind: CompletionItemKind;
  /** What is written in; the label if absent. */
  readonly insert?: string;
  /** The same with places to fill in, for clients that can. */
  readonly snippet?: string;
  /** A few words beside the label. */
  readonly detail?: string;
  /** Markdown. */
  readonly about?: string;
  /** Smaller ones come first; within one, `rank`. */
  readonly group: number;
  readonly rank?: number;
  /** Offset from which it replaces, where that is not the begun word's start. */
  readonly from?: number;
}

/** Groups in their order. */
export const GROUP = {
  best: 0,
  fitting: 1,
  plain: 2,
  doubtful: 3,
  starter: 4,
  snippet: 5,
  other: 6,
} as const;
