// Contracts of procedures, made once for all that perform them. Those that perform each other in a circle find each other under way, each in
// another state of that: what is made so holds for the procedure that was begun with and is let go with it, so that no finding hangs on which
// procedure was followed first.
import type { Summary } from "./summary.ts";

export interface Summaries {
  /** The contract; null where the procedure is under way, `undefined` where it is still to be followed. */
  readonly of: (id: string) => Summary | null | undefined;
  /** Follows one, with what it performs. */
  readonly following: <Made>(id: string, follow: () => Made) => Made;
  /** The contract of one that was followed. */
  readonly keep: (id: string, summary: Summary) => void;
}

export function createSummaries(): Summaries {
  const kept = new Map<string, Summary>();
  /** Made in a circle, or with one that was. */
  const inDoubt = new Map<string, Summary>();
  const underWay = new Set<string>();
  /** Whether something in doubt was asked for by the one that is followed now; of which ones, each time they were followed last. */
  let doubtful = false;
  const doubted = new Set<string>();
  return {
    of: (id) => {
      const known = kept.get(id);
      if (known !== undefined) return known;
      const passing = underWay.has(id) ? null : inDoubt.get(id);
      if (passing !== undefined) doubtful = true;
      return passing;
    },
    following: (id, follow) => {
      const before = doubtful;
      doubtful = false;
      underWay.add(id);
      const made = follow();
      underWay.delete(id);
      if (underWay.size === 0) inDoubt.clear();
      if (doubtful) doubted.add(id);
      else doubted.delete(id);
      // The one that performs it hangs on the same.
      doubtful ||= before;
      return made;
    },
    keep: (id, summary) => {
      if (!doubted.has(id)) kept.set(id, summary);
      // Asked for when nothing is under way, it is for the one that asks alone.
      else if (underWay.size > 0) inDoubt.set(id, summary);
    },
  };
}
