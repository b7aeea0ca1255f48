// What an output says, as plain data in one language: head, lists, and the work as nested blocks and rows. Every format
// renders this. Knows no format, and no procedure.
import type { Span } from "#syntax/span.ts";
import type { CircleFigure } from "./drawings/circle-figure.ts";
import type { Amount, Limits, Plan, UnitChoice } from "./record/plan.ts";

export interface Document {
  /** What it is for; also the output's name. */
  readonly use: "checklist" | "trainee" | "assessor" | "kit";
  readonly title: string;
  /** Set where an error is left or a draft was asked for: every page has to say so. */
  readonly draft: boolean;
  readonly head: Head;
  /** Signal words that occur, the gravest first. */
  readonly signals: readonly Signal[];
  readonly cautions: readonly string[];
  /** What has to hold before the first step. */
  readonly start: readonly string[];
  readonly parts: readonly PartRow[];
  readonly tools: readonly ToolRow[];
  /** Which crib, on which day, and what its settings hold for; empty where no crib is given. */
  readonly stockNotes: readonly string[];
  readonly consumables: readonly ConsumableRow[];
  /** Who goes where on a ring. */
  readonly arrangements: readonly ArrangementBlock[];
  readonly blocks: readonly Block[];
  /** Who fills it in, at its head; absent where that is asked step by step or not at all. */
  readonly filledBy?: TableBlock;
  /** What has to hold when the work is done. */
  readonly end: readonly string[];
  /** Options that are still to be decided. */
  readonly openOptions: readonly OpenOption[];
  /** What a filled record has to hold; null for what is not filled in: a draft, a trainee's sheet. */
  readonly record: Plan | null;
}

export interface OpenOption {
  readonly name: string;
  readonly title: string;
  readonly choices: readonly { readonly name: string; readonly title: string }[];
}

export type Signal = "danger" | "warning" | "caution" | "note";

export interface Head {
  /** Number and revision for the head of each page. */
  readonly page: string;
  /** ISO date of the document; null where it has none. */
  readonly date: string | null;
  /** Label and value, in the order to be shown. */
  readonly facts: readonly Fact[];
  readonly findings: readonly FindingRow[];
  readonly allows: readonly AllowRow[];
}

export interface Fact {
  readonly label: string;
  readonly values: readonly string[];
  /** Wants a line of its own. */
  readonly long?: true;
}

/** What is found is told in this language, whatever that of the document. */
export const FINDINGS_LANGUAGE = "en";

export interface FindingRow {
  readonly error: boolean;
  readonly severity: string;
  readonly code: string;
  readonly place: string;
  readonly message: string;
  readonly why: string | null;
  readonly remedy: string | null;
}

export interface AllowRow {
  readonly code: string;
  readonly place: string;
  readonly reason: string;
  readonly by: string | null;
}

export interface PartRow {
  readonly title: string;
  readonly name: string;
  readonly count: number;
  /** How many of them have to be new. */
  readonly fresh: number;
  readonly remarks: readonly string[];
}

export interface ToolRow {
  readonly title: string;
  readonly name: string;
  /** What any tool that serves must be able to do. */
  readonly asked: readonly string[];
  /** What is lifted or held with it. */
  readonly lifts: readonly string[];
  /** The values that the procedure uses of it. */
  readonly used: readonly string[];
  /** Items of the crib that meet it; null where no crib is given. */
  readonly stock: readonly StockLine[] | null;
}

/** An item of the crib that may serve. */
export interface StockLine {
  readonly label: string;
  /** What it is good for and what is in doubt: each a phrase. */
  readonly remarks: readonly string[];
  /** What it is to be set to with its own arm. */
  readonly settings: readonly string[];
}

export interface ConsumableRow {
  readonly title: string;
  readonly name: string;
  readonly amounts: readonly string[];
}

/** The parts of one ring by position, with what unbalance they leave and may leave. */
export interface ArrangementBlock {
  readonly title: string;
  readonly name: string;
  /** How the positions are numbered, where no drawing says it. */
  readonly view: string | null;
  /** What the last column gives. */
  readonly measure: string;
  readonly rows: readonly { readonly position: string; readonly serial: string; readonly weight: string }[];
  readonly residual: string;
  readonly limits: readonly string[];
  readonly caution: string;
  readonly figure: CircleFigure | null;
}

export type Block =
  | Section
  | StatementBlock
  | NoteBlock
  | StepRow
  | Branch
  | Group
  | Direction
  | Instruction
  | TableBlock;

/** A task, or a procedure that is performed inside another. */
export interface Section {
  readonly kind: "section";
  readonly number: string;
  readonly title: string;
  readonly pass: string | null;
  /** Where it comes from, if from another procedure. */
  readonly origin: string | null;
  readonly citations: readonly string[];
  readonly blocks: readonly Block[];
  /** Where it is written. */
  readonly at: Span;
}

export interface StatementBlock {
  readonly kind: "statement";
  readonly signal: Exclude<Signal, "note">;
  readonly hazards: readonly string[];
  readonly text: string;
  readonly avoid: string | null;
  readonly wear: readonly string[];
}

export interface NoteBlock {
  readonly kind: "note";
  readonly text: string;
}

export interface StepRow {
  readonly kind: "step";
  /** Unique in the document; for links. */
  readonly id: string;
  readonly number: string;
  readonly name: string | null;
  /** The pass of a repeat, where each is written out. */
  readonly pass: string | null;
  /** Own words, where instructions stand below them. */
  readonly words: string | null;
  readonly critical: boolean;
  /** Who, when, and on what condition: each a sentence. */
  readonly terms: readonly string[];
  readonly blocks: readonly Block[];
  readonly fields: readonly Field[];
  readonly signs: readonly SignOff[];
  /** Nothing after this step may begin before it is signed. */
  readonly hold: readonly SignOff[];
  readonly citations: readonly string[];
  /** As text. */
  readonly figures: readonly string[];
  /** The same, each with its picture where it is at hand. */
  readonly pictures: readonly Picture[];
  /** Reasons, for those who learn it; empty where the bench does not ask. */
  readonly whys: readonly string[];
  /** Where it is written. */
  readonly at: Span;
}

export interface Picture {
  readonly text: string;
  readonly image: { readonly type: string; readonly bytes: Uint8Array } | null;
}

/** One thing to do, with a place to tick for each pass. */
export interface Instruction {
  readonly kind: "instruction";
  readonly text: string;
  readonly details: readonly string[];
  /** The places it goes round, in their order. */
  readonly figure?: CircleFigure;
  /** Values of rounds that are ticked one by one; empty where there is one. */
  readonly rounds: readonly string[];
  readonly ticks: readonly Tick[];
  /** Entries of the record: for each round, else for each tick. */
  readonly ids: readonly string[];
  /** What depends on readings taken before. */
  readonly computed: readonly Computed[];
  readonly fields: readonly Field[];
  /** What to do if a check fails. */
  readonly failing: { readonly heading: string; readonly blocks: readonly Block[] } | null;
  /** A procedure that is done here, step by step. */
  readonly performed: Section | null;
}

/** `label` tells passes apart, as `3`; null where there is one. */
export interface Tick {
  readonly label: string | null;
  /** Of the part that goes in there. Where ticks have one, the last of the details says them all. */
  readonly serial?: string;
}

/** A value worked out from readings, or what is chosen by one. */
export type Computed =
  | {
      readonly kind: "value";
      readonly low: Amount | null;
      readonly nominal: Amount | null;
      readonly high: Amount | null;
      readonly units: readonly UnitChoice[];
    }
  | {
      readonly kind: "choice";
      readonly reading: string;
      readonly rows: readonly { readonly limits: Limits | null; readonly text: string }[];
    };

export interface Field {
  /** Entry of the record. */
  readonly id: string;
  readonly label: string;
  readonly limits: string | null;
  readonly tools: string | null;
}

export interface SignOff {
  /** Entry of the record. */
  readonly id: string;
  readonly role: string;
  readonly pass: string | null;
}

export interface Branch {
  readonly kind: "branch";
  readonly arms: readonly Arm[];
}

export interface Arm {
  readonly heading: string;
  readonly blocks: readonly Block[];
  /** Entries of the record in which a person may have to say whether it holds, one for each pass; none for `otherwise`. */
  readonly ids: readonly string[];
}

/** Steps with one heading: a repeat, or any order. */
export interface Group {
  readonly kind: "group";
  readonly heading: string;
  readonly blocks: readonly Block[];
}

/** Where to go on, or that something is left out; `link` is the id of the step, where it is one row. */
export interface Direction {
  readonly kind: "direction";
  readonly sense: "jump" | "stop" | "left out" | "unreadable";
  readonly text: string;
  readonly link: string | null;
}

/** Rows of one form: what an assessor marks, the answers of a trainee. The first cell of each row is its heading. */
export interface TableBlock {
  readonly kind: "table";
  readonly title: string | null;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly cells: readonly Cell[]; readonly grave?: true }[];
  /** Sentences below it. */
  readonly notes: readonly string[];
}

/** A text, a count, a box to tick, or a line to write on. */
export type Cell = string | number | { readonly fill: "box" | "line" };
