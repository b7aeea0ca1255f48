// What a Sprag text declares, as plain immutable records. Knows no tree, no severity, no wording.
import type { FormulaEnds } from "#quantity/formula.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import type { ArrangementRow } from "./arrangement-table.ts";

/** A place in a source document, at the revision the source is declared with. */
export interface Citation {
  readonly source: Source | null;
  readonly section: string;
  readonly span: Span;
}

/** A quantity where it was written. */
export interface Value {
  readonly quantity: Quantity;
  readonly span: Span;
  readonly per: Citation | null;
  /** The named values it is made of; absent where there is none. */
  readonly named?: readonly NamedValue[];
  /** Set where it is worked out from readings: the quantity is then only the band it can lie in. */
  readonly workedOut?: {
    readonly text: string;
    readonly readings: readonly Reading[];
    /** How; null where no formula can carry it. */
    readonly ends: FormulaEnds | null;
  };
  /** Set for a stage that is a share of a whole, as written: `30 %` of `FinalTorque`. */
  readonly share?: { readonly text: string; readonly of: string; readonly whole: Quantity };
}

/** A text that says a value in a way of its own, such as `H7/s6`. */
export interface CitedText {
  readonly text: string;
  readonly span: Span;
  readonly per: Citation | null;
}

interface Declared {
  /** Unique over all files: `path#name`, or `path#Procedure.name` inside a procedure. */
  readonly id: string;
  readonly name: string;
  /** The title as written, or the name where there is none. */
  readonly title: string;
  /** The name. */
  readonly span: Span;
  /** The whole declaration. */
  readonly extent: Span;
  readonly per: Citation | null;
  /** A line of it could not be read or names nothing known: what it says is not all that was written. */
  readonly damaged: boolean;
}

export interface Material extends Declared {
  readonly kind: "material";
  readonly expansion: Value | null;
  readonly expansionRange: Value | null;
  readonly heatLimit: Value | null;
}
export interface Source extends Declared {
  readonly kind: "source";
  readonly revision: string | null;
}
export interface Role extends Declared {
  readonly kind: "role";
}

export type Direction = "clockwise" | "counterclockwise";

/** Numbered places on a circle. */
export interface Ring extends Declared {
  readonly kind: "ring";
  /** 0 where it is not known. */
  readonly count: number;
  readonly numbered: Direction | null;
  readonly seenFrom: string | null;
  /** Where one position stands at the start. */
  readonly start: { readonly position: number; readonly clock: Value } | null;
  readonly fill: Direction | null;
}
/** Numbered places that are no circle. */
export interface Holes extends Declared {
  readonly kind: "holes";
  /** 0 where it is not known. */
  readonly count: number;
  readonly order: readonly number[] | null;
}
export type Places = Ring | Holes;

/** How many of a part there are: one, `first..last`, or by name. */
export type Instances =
  | { readonly form: "single" }
  | { readonly form: "numbered"; readonly first: number; readonly last: number }
  | { readonly form: "named"; readonly names: readonly string[] };

/** One part of several; `index` null for a part without instances (in a fit also: for each of them). */
export interface PartInstance {
  readonly part: Part;
  readonly index: number | string | null;
}

/** A relation to another part: all its instances, some, or its like-numbered partner. */
export interface Relation {
  readonly part: Part;
  readonly which: "all" | "same" | readonly (number | string)[];
  readonly span: Span;
}

export type SeatRule = "any" | "by number" | "equally spaced" | readonly number[];

/** The condition a torque, nut factor or friction holds for: dry threads, a consumable, or not said. */
export type ThreadCondition = { readonly dry: true } | { readonly with: Consumable } | null;

export interface Conditioned {
  readonly value: Value;
  readonly condition: ThreadCondition;
}

export interface Part extends Declared {
  readonly kind: "part";
  readonly temporary: boolean;
  readonly instances: Instances;
  readonly material: Material | null;
  readonly mass: Value | null;
  readonly heatLimit: Value | null;
  readonly cools: Value | null;
  readonly seats: { readonly places: Places; readonly rule: SeatRule; readonly span: Span } | null;
  readonly needs: readonly Relation[];
  readonly encloses: readonly Relation[];
  readonly retains: readonly Relation[];
  readonly secures: readonly Relation[];
  readonly locks: readonly Relation[];
  /** Parts that do the work of this one where it fails. */
  readonly backsUp: readonly Relation[];
  readonly singleUse: boolean;
  readonly sharp: boolean;
  /** Unfastened, it stays where it is by itself. */
  readonly stands: boolean;
  /** Says `secures` or `thread`. */
  readonly fastener: boolean;
  readonly thread: string | null;
  readonly propertyClass: string | null;
  readonly grade: string | null;
  readonly nutFactors: readonly Conditioned[];
  readonly frictions: readonly Conditioned[];
  readonly prevailingTorque: Value | null;
  readonly torques: readonly Conditioned[];
  readonly drivenBy: readonly Energy[];
  readonly hazards: readonly string[];
  /** Own states, the first is the initial one. */
  readonly states: readonly string[];
}

/** Its name is `Bearing over Shaft`. */
export interface Fit extends Declared {
  readonly kind: "fit";
  readonly outer: PartInstance | null;
  readonly inner: PartInstance | null;
  readonly diameter: Value | null;
  readonly interference: Value | null;
  readonly tolerance: CitedText | null;
  readonly slipClearance: Value | null;
  readonly length: Value | null;
  readonly friction: Value | null;
}

export interface Tool extends Declared {
  readonly kind: "tool";
  readonly capability: Capability;
  readonly hazards: readonly string[];
}
/** What a tool can do, as a requirement or as a crib item's data. */
export interface Capability {
  readonly torque: Value | null;
  readonly accuracy: Value | null;
  readonly accuracyOfFullScale: boolean;
  readonly arm: Value | null;
  readonly offset: Value | null;
  readonly angle: Value | null;
  readonly heatsTo: Value | null;
  readonly coolsTo: Value | null;
  readonly lifts: Value | null;
  /** Of a sling. */
  readonly legLifts: Value | null;
  readonly measures: Value | null;
  readonly resolution: Value | null;
  readonly force: Value | null;
}

export interface Consumable extends Declared {
  readonly kind: "consumable";
  readonly flashPoint: Value | null;
  readonly heatLimit: Value | null;
  readonly cure: Value | null;
  readonly density: Value | null;
  readonly expands: Value | null;
  /** Of a gas, as it leaves the nozzle. */
  readonly pressure: Value | null;
  readonly hazards: readonly string[];
}

export interface Energy extends Declared {
  readonly kind: "energy";
  /** Starts dead. */
  readonly off: boolean;
  readonly marks: readonly ("vacuum" | "spring" | "height" | "rotating")[];
  readonly voltage: Value | null;
  readonly pressure: Value | null;
  readonly hot: Value | null;
  readonly stored: Value | null;
  readonly hazards: readonly string[];
}

export interface Hazard extends Declared {
  readonly kind: "hazard";
}
export interface Option extends Declared {
  readonly kind: "option";
  readonly choices: readonly { readonly name: string; readonly title: string; readonly span: Span }[];
}
export interface Fact extends Declared {
  readonly kind: "fact";
}
export interface NamedValue extends Declared {
  readonly kind: "value";
  readonly value: Value | null;
}
/** A reading that a step takes and later values and branches use. */
export interface Reading extends Declared {
  readonly kind: "reading";
  readonly expect: Value | null;
}
export interface Term {
  readonly kind: "term";
  readonly approved: string;
  readonly replaces: readonly string[];
  readonly span: Span;
}
export interface Threshold extends Declared {
  readonly kind: "threshold";
  readonly value: Value | null;
}
export interface Arrangement extends Declared {
  readonly kind: "arrangement";
  readonly part: Part | null;
  readonly ring: Ring | null;
  readonly radius: Value | null;
  readonly unbalance: Value | null;
  readonly speed: Value | null;
  /** Of the whole rotor, for the grade. */
  readonly mass: Value | null;
  readonly grade: { readonly text: string; readonly span: Span } | null;
  readonly from: { readonly path: string; readonly span: Span } | null;
  /** The rows of its table; null where there is none, or one that could not be read. */
  readonly rows: readonly ArrangementRow[] | null;
}
export interface Crib extends Declared {
  readonly kind: "crib";
  readonly items: readonly CribItem[];
}
export interface CribItem {
  readonly label: string;
  readonly tool: Tool | null;
  readonly capability: Capability;
  readonly calibratedUntil: string | null;
  readonly span: Span;
}

/** Everything that a name can mean, but procedures. */
export type Declaration =
  | Material
  | Source
  | Role
  | Ring
  | Holes
  | Part
  | Fit
  | Tool
  | Consumable
  | Energy
  | Hazard
  | Option
  | Fact
  | NamedValue
  | Reading
  | Threshold
  | Arrangement
  | Crib;
