// A procedure as plain immutable records: what is written, with names resolved and quantities read, before repeats are
// written out. Knows no tree, no severity, no wording.

import type { Span } from "#syntax/span.ts";
import type {
  Citation,
  Consumable,
  Declaration,
  Fact,
  Reading,
  Role,
  Source,
  Term,
  Tool,
  Value,
} from "./declarations.ts";
import type { Wording } from "./own-words.ts";
import type { ModelProblem } from "./problem.ts";

export interface FileModel {
  readonly path: string;
  readonly uses: readonly { readonly path: string | null; readonly span: Span }[];
  /** All declarations of the file, those inside procedures too. */
  readonly declarations: readonly Declaration[];
  readonly terms: readonly Term[];
  readonly procedures: readonly Procedure[];
  /** What is written in own words: outside procedures, then in each. */
  readonly wording: readonly Wording[];
  readonly problems: readonly ModelProblem[];
  /** A line of it could not be read. */
  readonly damaged: boolean;
  /** A slip of form stands in it, also one that leaves little doubt of what was meant. */
  readonly hasSlip: boolean;
}

export interface Procedure {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly path: string;
  /** The name. */
  readonly span: Span;
  readonly extent: Span;
  readonly document: {
    readonly number: string;
    readonly revision: string | null;
    readonly date: string | null;
    readonly span: Span;
  } | null;
  readonly applies: readonly {
    readonly model: string;
    readonly firstSerial: number | null;
    readonly lastSerial: number | null;
    readonly span: Span;
  }[];
  readonly basedOn: readonly { readonly source: Source | null; readonly revision: string; readonly span: Span }[];
  readonly ambient: Value | null;
  /** True where the line itself is there, even if unreadable. */
  readonly hasAmbient: boolean;
  /** The air of the room that the work is done in. */
  readonly room: Value | null;
  readonly crew: number | null;
  readonly begin: readonly Condition[];
  readonly finish: readonly Condition[];
  /** True where the line itself is there, even if empty or unreadable. */
  readonly hasFinish: boolean;
  readonly declarations: readonly Declaration[];
  /** Terms that hold here: of the file, of used files. */
  readonly terms: readonly Term[];
  readonly cites: readonly Citation[];
  readonly statements: readonly Statement[];
  readonly notes: readonly Text[];
  readonly allows: readonly Allow[];
  readonly items: readonly Item[];
  /** Things that unreadable head lines mention; their state at the start is unknown. */
  readonly unknownAtStart: readonly Declaration[];
}

export interface Text {
  readonly text: string;
  readonly span: Span;
}

/** `danger`, `warning` and `caution` statements; `note` is a `Text`. */
export interface Statement {
  readonly signal: "danger" | "warning" | "caution";
  readonly hazards: readonly { readonly name: string; readonly span: Span }[];
  readonly text: string;
  readonly avoid: string | null;
  readonly wear: readonly string[];
  readonly span: Span;
}

export interface Allow {
  readonly code: string;
  readonly codeSpan: Span;
  readonly reason: string;
  readonly by: string | null;
  readonly span: Span;
  /** What it holds for: the step, task or procedure. */
  readonly scope: Span;
  /** What it silences may hang on a line that could not be read. */
  readonly inDoubt: boolean;
}

/** What stands in a procedure, a task, or a block between steps. */
export type Item =
  | Task
  | Step
  | RepeatBlock<Item>
  | WhenBlock<Item>
  | AnyOrderBlock<Item>
  | { readonly kind: "perform"; readonly action: PerformAction; readonly span: Span; readonly number: string }
  | Jump
  | Statement_
  | Damaged;
/** What stands in a step. */
export type Line =
  | Action
  | Check
  | RepeatBlock<Line>
  | WhenBlock<Line>
  | AnyOrderBlock<Line>
  | Jump
  | Statement_
  | Damaged;

/** A statement or note in its place among the items or lines. */
export type Statement_ =
  | { readonly kind: "statement"; readonly statement: Statement; readonly span: Span }
  | { readonly kind: "note"; readonly note: Text; readonly span: Span };

export interface RepeatBlock<T> {
  readonly kind: "repeat";
  readonly variable: string;
  readonly range: RepeatRange;
  readonly items: readonly T[];
  readonly span: Span;
}
export interface WhenBlock<T> {
  readonly kind: "when";
  readonly arms: readonly { readonly condition: Condition; readonly items: readonly T[] }[];
  readonly otherwise: readonly T[] | null;
  readonly span: Span;
  readonly otherwiseSpan: Span | null;
}
export interface AnyOrderBlock<T> {
  readonly kind: "any order";
  readonly items: readonly T[];
  readonly span: Span;
}

export type RepeatRange =
  | {
      readonly form: "from";
      readonly first: IndexExpression;
      readonly last: IndexExpression;
      readonly down: boolean;
      readonly stride: IndexExpression | null;
    }
  | { readonly form: "in"; readonly values: readonly IndexItem[] };

export interface Task {
  readonly kind: "task";
  /** As `2.1`: its place among tasks and steps, in the order of the text. */
  readonly number: string;
  readonly name: string | null;
  readonly title: string;
  readonly span: Span;
  /** Name or title. */
  readonly headSpan: Span;
  readonly cites: readonly Citation[];
  readonly allows: readonly Allow[];
  readonly items: readonly Item[];
}

export interface Step {
  readonly kind: "step";
  /** As `2.3`: its place in its task, in the order of the text; the same in each pass of a repeat. */
  readonly number: string;
  readonly name: string | null;
  readonly words: string | null;
  readonly span: Span;
  /** `step` and its name or first words. */
  readonly headSpan: Span;
  readonly needs: readonly Condition[];
  readonly gives: readonly Condition[];
  readonly lines: readonly Line[];
  readonly records: readonly RecordField[];
  readonly signs: readonly Role[];
  /** Of each of these, where it is named. */
  readonly signSpans: readonly Span[];
  readonly hold: Role | null;
  /** The line that says so. */
  readonly holdSpan: Span | null;
  readonly by: Role | null;
  readonly bySpan: Span | null;
  /** Whether a role that signs it, holds it or does it is named and not known. */
  readonly hasUnknownRole: boolean;
  readonly critical: boolean;
  /** The word that says so. */
  readonly criticalSpan: Span | null;
  readonly takes: Value | null;
  readonly within: { readonly value: Value; readonly step: StepRef; readonly span: Span } | null;
  readonly after: readonly OrderRef[];
  readonly before: readonly OrderRef[];
  readonly raises: readonly { readonly name: string; readonly span: Span }[];
  readonly cites: readonly Citation[];
  readonly whys: readonly string[];
  readonly figures: readonly { readonly path: string; readonly caption: string | null; readonly span: Span }[];
  readonly allows: readonly Allow[];
}

/** A named step or task; `target` null where no such name is. */
export interface StepRef {
  readonly name: string;
  readonly span: Span;
  /** Span of the step or task it names: its identity. */
  readonly target: Span | null;
}

/** A step that another says it comes `after` or `before`; `said` is from that word to the name. */
export interface OrderRef extends StepRef {
  readonly said: Span;
}

export interface RecordField {
  readonly label: string;
  readonly expect: Value | null;
  readonly tools: readonly Tool[];
  readonly span: Span;
}

export interface Check {
  readonly kind: "check";
  /** From the word to what is looked at: where its findings stand. */
  readonly place: Span;
  readonly words: string;
  readonly tools: readonly ToolUse[];
  readonly expect: Value | null;
  readonly record: boolean;
  /** What is done if it fails; null where the check has no failing path. */
  readonly fails: readonly Line[] | null;
  readonly span: Span;
}

export type Jump =
  | { readonly kind: "return" | "go"; readonly step: StepRef; readonly span: Span }
  | { readonly kind: "stop"; readonly text: string; readonly span: Span };

/** A line or item that could not be read: what it mentions may be in any state afterwards. */
export interface Damaged {
  readonly kind: "damaged";
  readonly mentions: readonly Declaration[];
  /** The verb where it is known, so that it has done that or nothing: of a line that lost what it works on, or one that moves nothing. */
  readonly verb?: string;
  /** It is a note or warning, whatever it says: nothing is done in it. */
  readonly noWork?: true;
  /** It may have been a wait, as it says a time and no verb: for so many seconds at most, if it says nothing else. */
  readonly mayWait?: number;
  readonly span: Span;
}

export interface ToolUse {
  readonly tool: Tool;
  readonly span: Span;
}

/** Parts, places or energies that an action or condition names; the index is worked out for each pass. */
export interface Target {
  readonly thing: Declaration | null;
  readonly name: string;
  readonly index: readonly IndexItem[] | null;
  readonly span: Span;
  /** The brackets' content. */
  readonly indexSpan: Span | null;
}
export type IndexItem =
  | { readonly form: "all"; readonly span: Span }
  | { readonly form: "same"; readonly span: Span }
  | { readonly form: "one"; readonly value: IndexExpression; readonly span: Span }
  | { readonly form: "range"; readonly first: IndexExpression; readonly last: IndexExpression; readonly span: Span };
export type IndexExpression =
  | { readonly form: "number"; readonly value: number }
  | { readonly form: "name"; readonly name: string; readonly span: Span }
  | {
      readonly form: "sum";
      readonly operator: "+" | "-" | "*";
      readonly left: IndexExpression;
      readonly right: IndexExpression;
    };

export type Condition =
  | { readonly form: "all" | "any"; readonly operands: readonly Condition[]; readonly span: Span }
  | { readonly form: "not"; readonly operand: Condition; readonly span: Span }
  | { readonly form: "no temporary parts"; readonly span: Span }
  /** `Part is STATE`, `Energy is isolated`, `Option is Choice`; `negated` for `is not`. */
  | {
      readonly form: "state";
      readonly subject: Target;
      readonly state: string;
      readonly stateSpan: Span;
      readonly negated: boolean;
      readonly span: Span;
    }
  | { readonly form: "fact"; readonly fact: Fact; readonly span: Span }
  | {
      readonly form: "bound";
      readonly subject: Target;
      readonly bound: Value;
      readonly negated: boolean;
      readonly span: Span;
    }
  | {
      readonly form: "clock";
      readonly subject: Target;
      readonly clock: Value;
      readonly negated: boolean;
      readonly span: Span;
    }
  /** Could not be read or resolved: never true, never false. */
  | { readonly form: "unknown"; readonly span: Span };

interface ActionBase {
  readonly kind: "action";
  /** From the verb to the last object: where its findings stand. */
  readonly place: Span;
  readonly span: Span;
}
/** Where hands are on a load: before the body, above the floor where the lift begins and ends, and how far the body is turned. */
export interface Hands {
  readonly reach: Value | null;
  readonly height: Value | null;
  readonly endHeight: Value | null;
  readonly turned: Value | null;
}
/** How many legs, and their angle to the horizontal; null what could not be read. */
export interface SlingLegs {
  readonly count: number | null;
  readonly angle: Value | null;
  readonly span: Span;
}
/** An amount of a consumable. */
export type Dose = { readonly consumable: Consumable | null; readonly amount: Value | null };

export type Action =
  | (ActionBase & {
      readonly verb: "install";
      readonly objects: readonly Target[];
      readonly fresh: boolean;
      readonly relation: "in" | "on" | "over" | null;
      readonly on: Target | null;
      readonly clock: Value | null;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "press";
      readonly objects: readonly Target[];
      /** As with install: one that has not been used before. */
      readonly fresh: boolean;
      readonly relation: "over" | "in" | "on";
      readonly on: Target;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "remove" | "discard";
      readonly objects: readonly Target[];
      readonly tools: readonly ToolUse[];
    })
  | TightenAction
  | (ActionBase & {
      readonly verb: "loosen";
      readonly objects: readonly Target[];
      /** By how much it is set back, not undone. */
      readonly back: Value | null;
      /** Whether it is: also where the angle could not be read. */
      readonly setBack: boolean;
      readonly reverse: boolean;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "heat" | "cool";
      readonly objects: readonly Target[];
      readonly to: Value | null;
      readonly by: Value | null;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & { readonly verb: "wait"; readonly time: Value | null; readonly until: Condition | null })
  | (ActionBase & {
      readonly verb: "clean" | "lubricate";
      readonly objects: readonly Target[];
      readonly with: Consumable | null;
    })
  | (ActionBase & {
      readonly verb: "apply";
      readonly objects: readonly Target[];
      readonly dose: Dose;
      readonly cure: Value | null;
    })
  | (ActionBase & {
      readonly verb: "drain" | "bleed";
      readonly objects: readonly Target[];
      readonly into: Declaration | null;
    })
  | (ActionBase & { readonly verb: "fill"; readonly objects: readonly Target[]; readonly dose: Dose })
  | (ActionBase & {
      readonly verb: "turn";
      readonly objects: readonly Target[];
      readonly put: Target | null;
      readonly clock: Value | null;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "align";
      readonly objects: readonly Target[];
      readonly other: Target;
      readonly mark: string | null;
    })
  | (ActionBase & {
      readonly verb: "lift" | "support" | "set down";
      readonly objects: readonly Target[];
      readonly byHand: boolean;
      /** How hands are on it; null where nothing of that is said. */
      readonly hands: Hands | null;
      /** The legs of the sling that it hangs on. */
      readonly legs: SlingLegs | null;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "isolate" | "release" | "prove" | "restore";
      readonly objects: readonly Target[];
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "inspect";
      readonly objects: readonly Target[];
      readonly words: string | null;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & {
      readonly verb: "measure";
      readonly reading: Reading | null;
      readonly words: string;
      readonly expect: Value | null;
      readonly record: boolean;
      readonly tools: readonly ToolUse[];
    })
  | (ActionBase & { readonly verb: "do"; readonly words: string; readonly tools: readonly ToolUse[] })
  | (ActionBase & {
      readonly verb: "choose";
      readonly subject: Target;
      readonly reading: Reading | null;
      /** What is to remain of the reading beside the value that is chosen. */
      readonly leaving: Value | null;
      readonly rows: readonly ChooseRow[];
    })
  | PerformAction;

export interface TightenAction extends ActionBase {
  readonly verb: "tighten";
  readonly objects: readonly Target[];
  readonly pattern: "cross" | "circular" | "order" | null;
  readonly byHand: boolean;
  readonly stages: readonly Value[];
  readonly stagesSpan: Span | null;
  readonly angle: Value | null;
  readonly toSeat: boolean;
  readonly tools: readonly ToolUse[];
}
export interface PerformAction extends ActionBase {
  readonly verb: "perform";
  readonly procedure: { readonly id: string; readonly name: string } | null;
}
export interface ChooseRow {
  readonly range: Value | null;
  readonly result: Value | Target | null;
  readonly span: Span;
}
