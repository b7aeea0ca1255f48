// The built-in hazards: whom each harms, whether facts of the language tell of it, what is worn against it. Knows no
// procedure, no threshold and no wording but what is worn.

/** What the language knows of a hazard. */
export interface HazardKind {
  readonly harms: "people" | "equipment";
  /** Whether values and marks that can be declared raise it; others only by `hazard` on a thing, or `raises`. */
  readonly raisedByFacts: boolean;
  /** What is worn against it; null where nothing worn helps. */
  readonly protection: string | null;
}

const person = (raisedByFacts: boolean, protection: string | null = null): HazardKind => ({
  harms: "people",
  raisedByFacts,
  protection,
});
const EQUIPMENT: HazardKind = { harms: "equipment", raisedByFacts: false, protection: null };

/** By name, in the order of the language: those to people first. */
export const HAZARDS: ReadonlyMap<string, HazardKind> = new Map([
  ["burn", person(true, "heat-resistant gloves")],
  ["cold", person(true, "cold-insulating gloves")],
  ["fire", person(true)],
  ["explosion", person(false)],
  ["pressure", person(true)],
  ["electric", person(true)],
  ["lifting", person(true)],
  ["crush", person(true)],
  ["cutting", person(true, "cut-resistant gloves")],
  ["rotating", person(true)],
  ["spring", person(true)],
  ["fall", person(false)],
  ["dropped", person(true)],
  ["eye", person(false, "eye protection")],
  ["skin", person(false, "chemical-resistant gloves")],
  ["fumes", person(false, "respiratory protection")],
  ["noise", person(false, "hearing protection")],
  ["damage", EQUIPMENT],
  ["contamination", EQUIPMENT],
  ["overheating", EQUIPMENT],
  ["overtorque", EQUIPMENT],
  ["debris", EQUIPMENT],
]);
