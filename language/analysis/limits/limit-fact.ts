// What is found of values that do not hold: torques, temperatures, tools, loads, positions. Data, each with how its computed
// value came about. No wording, no severity.
import type { Explanation } from "#engineering/explanation.ts";
import type { LiftFactor } from "#engineering/lifting.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import type { Found } from "../fact.ts";

/** A text that would put it right, in place of what stands at `span`. */
export interface Instead {
  readonly span: Span;
  readonly text: string;
}

/** The state of a thread, or what a torque is stated for: dry, with a consumable by name, with one that is not named. */
export type ThreadState = { readonly dry: true } | { readonly with: string | null };

export type TorqueFact =
  /** `stage`: the one that falls, after `other`; or the last, which is not `other`, the final value. */
  | (Found & {
      readonly kind: "torque stages";
      readonly how: "falls" | "last";
      readonly part: string;
      readonly stage: Quantity;
      readonly other: Quantity;
      readonly instead: Instead | null;
    })
  | (Found & {
      readonly kind: "torque disagrees";
      readonly part: string;
      readonly torque: Quantity;
      readonly declared: Quantity;
      readonly declaredAt: Span;
      readonly instead: Instead | null;
    })
  | (Found & {
      readonly kind: "torque condition";
      readonly part: string;
      readonly stated: ThreadState;
      readonly found: ThreadState;
      /** The declared torque that is meant, and the one for the thread as it is, where there is one. */
      readonly torque: Quantity;
      readonly fitting: Quantity | null;
      readonly declaredAt: Span;
      readonly instead: Instead | null;
    })
  | (Found & { readonly kind: "no condition"; readonly part: string; readonly torque: Quantity })
  /** `how`: above the proof load, above the shop's share of it, under two fifths of it. */
  | (Found & {
      readonly kind: "preload";
      readonly how: "above proof" | "above share" | "low";
      readonly part: string;
      readonly torque: Quantity;
      readonly preload: Quantity;
      readonly proof: Quantity;
      readonly share: Quantity;
      readonly limit: Quantity;
      /** The torque at which the preload is at the limit; null where none is. */
      readonly atLimit: Quantity | null;
      readonly explanation: Explanation;
    });

export type HeatFact =
  /** `of`: whose limit it is; `as`: how it comes to be hot. */
  | (Found & {
      readonly kind: "overheat";
      readonly part: string;
      readonly of: string;
      readonly as: "part" | "material" | "mate" | "consumable";
      readonly hottest: Quantity;
      readonly limit: Quantity;
      readonly declaredAt: Span;
      readonly instead: Instead | null;
    })
  | (Found & { readonly kind: "no heat limit"; readonly part: string })
  | (Found & {
      readonly kind: "flash point";
      readonly how: "reached" | "near";
      readonly part: string;
      readonly consumable: string;
      readonly hottest: Quantity;
      readonly flashPoint: Quantity;
      /** The temperature to stay under. */
      readonly most: Quantity;
      readonly declaredAt: Span;
      readonly since: Span;
    })
  /** `how`: the outer was heated, or the inner cooled, and is the part named. `needed` null where no temperature is enough. */
  | (Found & {
      readonly kind: "too cool to fit";
      readonly how: "heated" | "cooled";
      readonly part: string;
      readonly mate: string;
      readonly temperature: Quantity;
      readonly growth: Quantity;
      readonly wanted: Quantity;
      readonly needed: Quantity | null;
      /** What forbids that temperature: the heat limit of the part, or how far the tools that are named get. */
      readonly barred?: { readonly by: "part" | "tool"; readonly of: string; readonly limit: Quantity };
      /** Whether the heating gives enough, and a wait or the end of a task may have taken it again. */
      readonly lost: boolean;
      /** Seconds on the way that were counted, with the part's own rate. */
      readonly cooling: { readonly seconds: number; readonly rate: Quantity } | null;
      /** Whether 20 °C had to be taken for the shop. */
      readonly ambientTaken: boolean;
      readonly installAt: Span;
      readonly fitAt: Span;
      readonly instead: Instead | null;
      readonly explanation: Explanation;
    });

export type ToolFact =
  /** `explanation`: of a wrench, how the setting came about; null where the value itself is what the tool is set to. */
  | (Found & {
      readonly kind: "tool range";
      readonly how: "below" | "above";
      readonly what: "setting" | "torque" | "reading" | "temperature";
      readonly tool: string;
      readonly asked: Quantity;
      readonly value: Quantity;
      readonly range: Quantity;
      readonly declaredAt: Span;
      readonly fitting: string | null;
      readonly instead: Instead | null;
      readonly explanation: Explanation | null;
    })
  | (Found & {
      readonly kind: "arm unknown";
      readonly part: string;
      readonly wrench: string;
      readonly adapter: string;
      readonly declaredAt: Span;
    })
  /** `least`, `most`: the settings that would keep the low and the high end. */
  | (Found & {
      readonly kind: "tool accuracy";
      readonly part: string;
      readonly tool: string;
      readonly torque: Quantity;
      readonly accuracy: Quantity;
      readonly least: Quantity;
      readonly most: Quantity;
      readonly declaredAt: Span;
      readonly fitting: string | null;
      readonly instead: Instead | null;
    })
  | (Found & {
      readonly kind: "no tool";
      readonly what: "torque" | "reading" | "heating";
      readonly value: Quantity;
      /** Tools that are named, and do something else. */
      readonly named: readonly string[];
      readonly fitting: string | null;
      /** What is to be added, and behind what. */
      readonly addAt: Span | null;
    })
  | (Found & {
      readonly kind: "precision";
      readonly tool: string;
      readonly value: Quantity;
      readonly width: Quantity;
      readonly resolution: Quantity;
      readonly declaredAt: Span;
      readonly fitting: string | null;
      readonly instead: Instead | null;
    });

export type LoadFact =
  | (Found & {
      readonly kind: "overload";
      readonly how: "tool" | "leg" | "leg angle" | "hands" | "hands with care";
      readonly part: string;
      readonly mass: Quantity;
      /** What came along. */
      readonly with: readonly string[];
      readonly limit: Quantity;
      /** Null: by hand. */
      readonly tool: string | null;
      /** What hangs on a sling. */
      readonly legs: LegsFound | null;
      readonly people: number;
      /** What lowered the limit of one person, and to what; null where nothing is said of hands. */
      readonly lowered: { readonly one: Quantity; readonly factors: readonly LiftFactor[] } | null;
      readonly limitAt: Span | null;
      readonly fitting: string | null;
      readonly instead: Instead | null;
    })
  /** `with`: the other one, and where it stands; null where the count of the ring allows no such spacing. */
  | (Found & {
      readonly kind: "spacing";
      readonly part: string;
      readonly place: string;
      readonly ring: string;
      readonly count: number;
      readonly wanted: number;
      readonly with: { readonly part: string; readonly place: string } | null;
      readonly could: readonly number[];
      readonly declaredAt: Span;
      readonly instead: Instead | null;
    });

/** The legs of a sling; `load` on one of them, null where none may hang so. */
export interface LegsFound {
  readonly count: number;
  readonly angle: Quantity;
  readonly load: Quantity | null;
}

/** Of an arrangement; `table` is the path of its rows as written, `lines` count from 1. */
export type BalanceFact =
  /** `direction`: in positions from 1, with a fraction where it is between two. */
  | (Found & {
      readonly kind: "unbalance";
      readonly arrangement: string;
      readonly how: "limit" | "grade";
      readonly residual: Quantity;
      readonly limit: Quantity;
      readonly direction: number;
      readonly count: number;
      /** Null where moments are given. */
      readonly radius: Quantity | null;
      readonly limitAt: Span;
      /** For a grade: at which speed, of which rotor, and whether its mass had to be taken as that of the set. */
      readonly grade: GradeUsed | null;
      readonly explanation: Explanation;
    })
  | (Found & {
      readonly kind: "occupancy";
      readonly arrangement: string;
      readonly ring: string;
      readonly table: string;
      readonly count: number;
      readonly fault: OccupancyFault;
    })
  /** What it would need to be checked. */
  | (Found & {
      readonly kind: "balance data";
      readonly arrangement: string;
      readonly lacks: "radius" | "speed" | "grade" | "known grade" | "mass";
      /** The grade as written. */
      readonly given: string | null;
    });

export interface GradeUsed {
  readonly grade: string;
  readonly speed: Quantity;
  readonly mass: Quantity;
  readonly ofSet: boolean;
}

export type OccupancyFault =
  | { readonly how: "empty"; readonly positions: readonly number[] }
  | { readonly how: "nowhere"; readonly serials: readonly string[]; readonly line: number }
  | { readonly how: "outside"; readonly position: number; readonly serial: string; readonly line: number }
  | {
      readonly how: "twice";
      readonly position: number;
      readonly serials: readonly [string, string];
      readonly lines: readonly [number, number];
    }
  | { readonly how: "same serial"; readonly serial: string; readonly lines: readonly [number, number] };

/** Of the rows by which something is chosen. */
export type ChoiceFact = RowFact | RemainderFact;

export interface RowFact extends Found {
  readonly kind: "choice";
  /** Between two rows, in two rows at once, or expected below or above all rows. */
  readonly how: "gap" | "overlap" | "below" | "above";
  readonly reading: string;
  readonly chosen: string;
  readonly of: Kind;
  /** The values it is about lie between these; null is open. */
  readonly from: Magnitude | null;
  readonly to: Magnitude | null;
  /** The row before, or what is expected. */
  readonly declaredAt: Span;
}

/** What a row leaves of the reading is not what is to be left. */
export interface RemainderFact extends Found {
  readonly kind: "choice";
  readonly how: "remainder";
  readonly reading: string;
  readonly chosen: string;
  readonly value: Quantity;
  /** The readings of the row, as far as they are expected. */
  readonly readings: Quantity;
  readonly remainder: Quantity;
  readonly limit: Quantity;
  /** Values that would do in this row; null where none would. */
  readonly fitting: Quantity | null;
  readonly declaredAt: Span;
}

export type LimitFact = TorqueFact | HeatFact | ToolFact | LoadFact | BalanceFact | ChoiceFact;
