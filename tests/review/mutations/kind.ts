// What a kind of change is and what the contract expects of its review.
import type { Group, Mutate } from "./edit.ts";

export interface Kind {
  readonly name: string;
  readonly group: Group;
  /** Gives the text that is changed, where no sample has what the change needs. */
  readonly from?: Mutate;
  readonly mutate: Mutate;
  /** The `kind` its entry must have, where the contract names one. */
  readonly says?: "restated";
  /** Groups that the contract would bear as well, as it does not say where such a change belongs; why is said beside it. */
  readonly orIn?: readonly Group[];
  /**
   * Why an entry of `safety` may come with it: it takes something away that a hazard's cover hangs on, so that a hazard is no longer
   * covered. The findings that such an entry names must be there.
   */
  readonly uncovers?: string;
  /** The file of the shop's library that is changed; else a procedure. */
  readonly library?: string;
  /** What the changed thing of the library is called, and which procedures that name it are reached by the change. */
  readonly reaches?: { readonly name: RegExp; readonly only?: RegExp };
  /** Nobody says what must be reported: nothing above the group may be. */
  readonly silent?: true;
}
