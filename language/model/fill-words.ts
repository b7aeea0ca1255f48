// Loop variables in own words: `Push segment {n} into its seat.` Knows nothing else of a text.
import type { Pass } from "./problem.ts";

/** The text with `{n}` filled in for each loop variable of the pass; anything else in braces stays. */
export function fillWords(text: string, pass: Pass): string {
  if (pass.length === 0 || !text.includes("{")) return text;
  return text.replace(/\{\s*([\p{L}_][\p{L}\p{N}\p{M}_]*)\s*\}/gu, (whole, name: string) => {
    const value = valueIn(pass, name.normalize("NFC"));
    return value === null ? whole : String(value);
  });
}

/** The value of a loop variable in a pass: the innermost of that name; null where there is none. */
export function valueIn(pass: Pass, name: string): number | null {
  for (let at = pass.length - 1; at >= 0; at--) {
    const loop = pass[at];
    if (loop?.variable === name) return loop.value;
  }
  return null;
}
