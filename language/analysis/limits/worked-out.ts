// What is worked out from the same records is worked out once: for all instances of a part, for each pass, and from one text to the next,
// since a value that is spelt alike is one record wherever it stands (`model/evaluate-once.ts`). Knows no value.

export interface WorkedOut<Result> {
  /** As `make`, which hangs on these records alone, in this order. None of what it makes may hang on a place in a text. */
  readonly of: (from: readonly (object | null)[], make: () => Result) => Result;
}

export function createWorkedOut<Result>(): WorkedOut<Result> {
  const root = newBranch<Result>();
  return {
    of: (from, make) => {
      let branch = root;
      for (const one of from) {
        const key = one ?? NONE;
        const next = branch.next.get(key) ?? newBranch<Result>();
        branch.next.set(key, next);
        branch = next;
      }
      branch.made ??= { result: make() };
      return branch.made.result;
    },
  };
}

interface Branch<Result> {
  readonly next: WeakMap<object, Branch<Result>>;
  made: { readonly result: Result } | null;
}

function newBranch<Result>(): Branch<Result> {
  return { next: new WeakMap(), made: null };
}

const NONE = {};
