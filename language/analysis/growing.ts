// Lists that grow while they are asked for. What was made of an answer is to be made again once the list has grown since; this knows
// which that is. Knows nothing of what is in the lists.

export interface Growing<One> {
  readonly all: One[];
  /** Those that were told all of it, as it was. */
  readonly askers: Asker[];
}

/** What is made of answers, and whether all of them are still so. */
export interface Asker {
  isTrue: boolean;
}

export interface Watched<Made> {
  readonly made: Made;
  readonly told: Asker;
}

export interface Watch {
  /** All that is in the list; whoever is watched just now is an asker from then on. */
  readonly told: <One>(list: Growing<One>) => readonly One[];
  readonly add: <One>(list: Growing<One>, one: One) => void;
  readonly watched: <Made>(make: () => Made) => Watched<Made>;
}

export function growing<One>(): Growing<One> {
  return { all: [], askers: [] };
}

export function createWatch(): Watch {
  let asker: Asker | null = null;
  return {
    told: ({ all, askers }) => {
      if (asker !== null && askers.at(-1) !== asker) askers.push(asker);
      return all;
    },
    add: ({ all, askers }, one) => {
      all.push(one);
      for (const told of askers) told.isTrue = false;
      askers.length = 0;
    },
    watched: (make) => {
      const told: Asker = { isTrue: true };
      const outer = asker;
      asker = told;
      try {
        return { made: make(), told };
      } finally {
        asker = outer;
      }
    },
  };
}
