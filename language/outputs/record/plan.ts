// What a filled checklist has to hold, as plain data that a page can carry as JSON: the entries to be marked, and the order of work
// as a short program over them. Knows no procedure, no words and no page.

export interface Plan {
  /** Of the inputs that the checklist was made from. */
  readonly hash: string;
  readonly procedure: string;
  readonly title: string;
  /** Number and revision. */
  readonly document: string;
  /** Choices made when the checklist was made. */
  readonly options: Readonly<Record<string, string>>;
  readonly roles: readonly PlanRole[];
  readonly entries: readonly Entry[];
  readonly program: readonly Op[];
  readonly timers: readonly Timer[];
  readonly deadlines: readonly Deadline[];
}

/** A time that is started by hand and runs down: what a step takes, a wait, a coat that cures. */
export interface Timer {
  readonly id: string;
  readonly step: string;
  readonly of: "takes" | "wait" | "cure";
  /** It may be started as soon as one of these is next. */
  readonly entries: readonly string[];
  /** In seconds. */
  readonly limits: Limits;
}

/** How soon after the end of one step or task the work of another step has to be done. */
export interface Deadline {
  readonly step: string;
  readonly entries: readonly string[];
  /** The number of the one that it counts from. */
  readonly after: string;
  readonly afterEntries: readonly string[];
  /** In seconds. */
  readonly most: Amount;
}

/**
 * Who signs; `inspects` where it signs a hold point, and so may be nobody who does the work. Role and title are empty for who does the work
 * where only inspectors have a role.
 */
export interface PlanRole {
  readonly role: string;
  readonly title: string;
  readonly inspects: boolean;
}

/** One place to be marked. `id` is the same in every export of the same inputs; `step` is the number of its step, empty outside. */
export type Entry = { readonly id: string; readonly step: string } & (
  | { readonly kind: "tick" }
  /** Places to be gone round, in their order. */
  | { readonly kind: "round"; readonly places: readonly number[] }
  | ReadingEntry
  /** A check without a value: a person says whether it is passed. */
  | { readonly kind: "judgement" }
  /** A person says whether the condition of a branch holds. */
  | { readonly kind: "answer" }
  /** An option that was left open. */
  | { readonly kind: "option"; readonly option: string; readonly choices: readonly string[] }
  | { readonly kind: "sign"; readonly role: string; readonly hold: boolean }
);

export interface ReadingEntry {
  readonly kind: "reading";
  /** The declared reading that it gives; null where nothing else uses it. */
  readonly reading: string | null;
  readonly limits: Limits | null;
  /** The units it may be read in, the writer's own first; empty where any text will do. */
  readonly units: readonly UnitChoice[];
  /** Whether there is work to be done where it is out of limits; otherwise the work cannot go on. */
  readonly fails: boolean;
}

/** Ends in the coherent unit; null is open. */
export interface Limits {
  readonly low: Amount | null;
  readonly high: Amount | null;
}

/** An exact fraction `n/d` or whole number, or how it is worked out from readings. */
export type Amount =
  | string
  | { readonly reading: string }
  | { readonly op: "+" | "-" | "*" | "/"; readonly left: Amount; readonly right: Amount };

/** The value in the coherent unit is `number · scale + zero`, all exact fractions. */
export interface UnitChoice {
  readonly text: string;
  readonly scale: string;
  readonly zero: string;
  /** The power of ten of the last digit to be shown. */
  readonly digit: number;
}

/** Jumps go to a place in the program. */
export type Op =
  | { readonly op: "mark"; readonly of: string }
  /** Goes to `to` unless the test holds; `ask` is the entry where a person says so if nothing else does. */
  | { readonly op: "unless"; readonly test: Test; readonly ask: string; readonly to: number }
  | { readonly op: "unless failed"; readonly of: string; readonly to: number }
  | { readonly op: "go"; readonly to: number }
  /** Back: what stands from there on is to be done again. */
  | { readonly op: "back"; readonly to: number }
  | { readonly op: "stop"; readonly text: string }
  /** Parts in any order, each one complete before the next; then on at `to`. */
  | { readonly op: "any"; readonly parts: readonly (readonly [from: number, end: number])[]; readonly to: number };

export type Test =
  | { readonly form: "all" | "any"; readonly of: readonly Test[] }
  | { readonly form: "not"; readonly of: Test }
  | { readonly form: "option"; readonly option: string; readonly choice: string }
  | { readonly form: "reading"; readonly reading: string; readonly limits: Limits }
  | { readonly form: "ask" };
