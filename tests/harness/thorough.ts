// How much is tried of what takes long: in each test run a share, in the gate (`.ci/run`, `SPRAG_THOROUGH=1`) far more.

export const isThorough = process.env.SPRAG_THOROUGH === "1";

/** One in `share` of them, evenly; in a thorough run one in `thorough`. */
export function oneIn<One>(share: number, of: readonly One[], thorough = 1): readonly One[] {
  const step = isThorough ? thorough : share;
  return of.filter((_, at) => at % step === 0);
}

/** Offsets of a text from its start to its end: in each run one in some, in a thorough one every one. */
export function offsetsIn(text: string, share: number): readonly number[] {
  return oneIn(
    share,
    Array.from({ length: text.length + 1 }, (_, at) => at),
  );
}
