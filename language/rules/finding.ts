// A finding: what a person is told. Plain data, the same for command line, server and outputs.
import type { Assignment } from "#analysis/fact.ts";
import type { Span } from "#syntax/span.ts";

export type Severity = "error" | "warning" | "information" | "hint";

export interface Finding {
  /** `family.name`. */
  readonly code: string;
  readonly severity: Severity;
  /** What is wrong, in the shop's terms. */
  readonly message: string;
  /** Why it matters or how it came; wanted and found stand on lines of their own. */
  readonly why?: string;
  /** What makes it right. */
  readonly remedy?: string;
  readonly span: Span;
  readonly options?: readonly Assignment[];
  /** How many further assignments are not listed. */
  readonly moreOptions?: number;
  readonly procedure?: string;
  readonly step?: { readonly name?: string; readonly number: string };
  /** How the state came about, in order. */
  readonly witness?: readonly Remark[];
  /** Other places that play a part, each with its own part in it. */
  readonly related?: readonly Remark[];
  readonly fixes?: readonly Fix[];
  readonly allowed?: { readonly reason: string; readonly by?: string };
}

export interface Remark {
  readonly message: string;
  readonly span: Span;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly { readonly span: Span; readonly newText: string }[];
}
