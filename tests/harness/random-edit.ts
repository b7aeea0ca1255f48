// Edits at any place of a text, as a writer makes them. Knows nothing of what the text says but where its procedures begin.
import fc from "fast-check";

export interface RandomEdit {
  /** In thousandths of the way. */
  readonly place: number;
  /** So many characters go. */
  readonly drop: number;
  readonly put: string;
}

/** Any as likely as another; of fractions fast-check makes mostly the ends. */
export const anyPlace = fc.nat(1_000);

/** @param from all in front of it stays */
export function typedInto(text: string, { drop, place, put }: RandomEdit, from = 0): string {
  const at = from + Math.floor((place * (text.length - from)) / 1_000);
  return text.slice(0, at) + put + text.slice(at + drop);
}

/** Where the first procedure begins; 0 where there is none. */
export function firstProcedure(text: string): number {
  return Math.max(0, text.search(/^procedure /m));
}
