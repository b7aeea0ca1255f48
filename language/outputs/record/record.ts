// A filled checklist as it is kept and saved: what it was made from, and everything that was done to it, in the order in which it
// was done. Knows no page.

export interface FilledRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly version: typeof RECORD_VERSION;
  /** The content hash of the inputs of its checklist. */
  readonly hash: string;
  readonly procedure: string;
  readonly title: string;
  /** Number and revision. */
  readonly document: string;
  readonly options: Readonly<Record<string, string>>;
  readonly events: readonly RecordEvent[];
}

export const RECORD_FORMAT = "sprag record";
export const RECORD_VERSION = 1;

/** `at` is the time of day of the tablet, in UTC, as `2026-05-04T10:32:00.000Z`; `of` the id of an entry. */
export type RecordEvent = { readonly at: string } & (
  | { readonly kind: "name"; readonly role: string; readonly name: string; readonly badge: string }
  | { readonly kind: "tick"; readonly of: string }
  /** One more place of a round. */
  | { readonly kind: "place"; readonly of: string }
  /** As typed, in one of the units; `passed` is null where nothing limits it. */
  | {
      readonly kind: "read";
      readonly of: string;
      readonly text: string;
      readonly unit: string;
      readonly passed: boolean | null;
    }
  | { readonly kind: "judge"; readonly of: string; readonly passed: boolean }
  | { readonly kind: "answer"; readonly of: string; readonly holds: boolean }
  | { readonly kind: "choose"; readonly of: string; readonly choice: string }
  | { readonly kind: "sign"; readonly of: string; readonly name: string; readonly badge: string }
  /** A timer begins to run; `of` is its id. */
  | { readonly kind: "start"; readonly of: string }
  /** Takes the last event that still holds back. */
  | { readonly kind: "undo" }
);
