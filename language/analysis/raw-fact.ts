// A fact as it is found, before the passes and paths of one place are put together.
import type { Pass } from "#model/problem.ts";
import type { Decision } from "./decision.ts";
import type { BareFact } from "./fact.ts";

/** `subject`: what tells it from another of the same kind at the same place. */
export interface Raw {
  readonly fact: BareFact;
  readonly where: Decision;
  readonly pass: Pass;
  readonly subject: string;
  /** Where it shows, and where what makes it so came from: for telling in which order of work it happens. */
  readonly node?: number;
  readonly from?: number;
}
export type Collect = (raw: Raw) => void;

/** The part without its number: several of one kind at one place are one finding. */
export function base(name: string): string {
  const at = name.indexOf("[");
  return at < 0 ? name : name.slice(0, at);
}
