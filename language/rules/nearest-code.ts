// The code that was probably meant by one that no rule has. Knows no rule.
import { editDistance } from "#syntax/edit-distance.ts";

/** The nearest code, or the one whose second part was given alone; null where none is near. */
export function nearestCode(text: string, codes: Iterable<string>): string | null {
  const wanted = text.toLowerCase().replaceAll(/[\s_]+/g, "-");
  let best: string | null = null;
  let least = MOST_SLIPS + 1;
  for (const code of codes) {
    const name = code.slice(code.indexOf(".") + 1);
    if (name === wanted.slice(wanted.indexOf(".") + 1)) return code;
    if (Math.abs(code.length - wanted.length) >= least) continue;
    const distance = editDistance(wanted, code);
    if (distance < least) [best, least] = [code, distance];
  }
  return best;
}

const MOST_SLIPS = 4;
