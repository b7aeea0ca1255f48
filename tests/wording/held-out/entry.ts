// How one sentence of the held-out set is written down. Says nothing of how the sentences are to be told apart.

export const LONG = "wording.long-sentence";
export const MANY = "wording.many-actions";
export const NOT_IMPERATIVE = "wording.not-imperative";
export const PASSIVE = "wording.passive";
export const VAGUE = "wording.vague";

/** A finding that a reader may have on a sentence. */
export type Code = typeof LONG | typeof MANY | typeof NOT_IMPERATIVE | typeof PASSIVE | typeof VAGUE;

/** A sentence and what a careful reader finds wrong with it. */
export interface Entry {
  text: string;
  as: "instruction" | "description";
  wrong: readonly Code[];
  /** What careful readers would differ on: neither asked for nor counted wrong. */
  open: readonly Code[];
  /** Why it is labelled so, where that is a close call. */
  why?: string;
}

/** A text that tells the fitter to do something. A passive one has no imperative either: one mistake, one label. */
export function instruction(text: string, ...wrong: Code[]): Entry {
  return { text, as: "instruction", wrong, open: wrong.includes(PASSIVE) ? [NOT_IMPERATIVE] : [] };
}

/** A note, a why, or what a warning tells of. */
export function description(text: string, ...wrong: Code[]): Entry {
  return { text, as: "description", wrong, open: [] };
}

/** A close call, with the reason; `open` is what readers would differ on. */
export function close(entry: Entry, why: string, ...open: Code[]): Entry {
  return { ...entry, why, open: [...entry.open, ...open] };
}
