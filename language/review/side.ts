// What a review is given of one side: models, what was found in them, and what others worked out. Data and functions over it;
// knows no files and no history.
import type { FileModel, Procedure } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import type { Reading } from "./reading.ts";

export interface ReviewSide extends Pick<Reading, "textAt" | "say"> {
  /** The files that are compared. */
  readonly files: readonly FileModel[];
  /** Further files that these use. */
  readonly used: readonly FileModel[];
  readonly findings: readonly Finding[];
  readonly textOf: (path: string) => string;
  /** Whether something in the procedure is at or past that threshold, or may be; of one that is about no hazard always. */
  readonly passes: (procedure: Procedure, threshold: string) => boolean;
  readonly margins: (procedure: Procedure) => readonly Margin[];
  readonly kit: (procedure: Procedure) => Kit;
}

/** How far a value is from what it must not exceed, as the check worked it out. */
export interface Margin {
  readonly of: "preload" | "heat";
  readonly part: string;
  /** Whose limit it is. */
  readonly limitOf: string;
  /** In the step with that number. */
  readonly step: string;
  /** As text: a share, or how much is left; `over` where it is exceeded. */
  readonly text: string;
  readonly over: boolean;
}

/** What stores lay out for a procedure, and how long it takes at most. */
export interface Kit {
  /** By name; a tool counts once. */
  readonly items: ReadonlyMap<string, { readonly title: string; readonly count: number }>;
  /** The longest time as text; null where it is not known. */
  readonly time: string | null;
}
