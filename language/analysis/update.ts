// A change of one state variable, and tests on several: what actions, conditions and events are made of. Knows no verb.

/** That a variable has a value of some sort. */
export interface Test {
  readonly variable: number;
  readonly test: (value: string) => boolean;
}

/**
 * A change of one variable: `change` gets its value, with `by` the value of that other variable, the node it happens at, and whether
 * that other was only taken as so.
 */
export interface Update {
  readonly variable: number;
  readonly by?: number;
  /** Only where one of these can be so, each a list of what must be so at once. */
  readonly when?: readonly (readonly Test[])[];
  /** Only says that something is taken as met, where it was not: nobody did it. */
  readonly assumed?: true;
  /** Uses up all films and heat; `variable` stands for all of them. */
  readonly usesFilms?: true;
  /** Several of this kind come to the same in any order. */
  readonly commutes?: true;
  /**
   * The value counts as given here, also where it was the same before: who did it last, did it. Or only where it was so by
   * nobody's doing, but taken as met.
   */
  readonly renews?: "always" | "where supposed";
  /** The value counts as given by what gave it before; or only where what changes it is itself only taken as so. */
  readonly keepsOrigin?: "always" | "where supposed";
  readonly change: (value: string, other: string, at: number, isOtherTaken: boolean) => string;
}

/** What a variable becomes, and what goes along: some of it before the variable changes, some after. */
export interface Outcome {
  readonly change: (value: string) => string;
  readonly before?: readonly Update[];
  readonly after?: readonly Update[];
}
