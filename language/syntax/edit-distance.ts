// How far two words are apart, counted in letters to change, add, drop or swap, and which of many are near one.

/** The number of single letters to change, add or drop, or of neighbours to swap, that turns one word into the other. */
export function editDistance(from: string, to: string): number {
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let least = Math.min(
        (last[j] as number) + 1,
        (row[j - 1] as number) + 1,
        (last[j - 1] as number) + (same ? 0 : 1),
      );
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        least = Math.min(least, (before[j - 2] as number) + 1);
      }
      row.push(least);
    }
    before = last;
    last = row;
  }
  return last[to.length] as number;
}

/**
 * The nearest of the names: one that differs in capitals only, then those a slip or two away. At most three; none of a name that
 * nobody types.
 */
export function nearestNames(name: string, names: Iterable<string>): readonly string[] {
  if (name.length > LONGEST) return [];
  const small = name.toLowerCase();
  // Of a single letter any other would be near.
  const most = small.length < 2 ? 0 : small.length < 4 ? 1 : 2;
  const letters = lettersOf(small);
  const found: { readonly name: string; readonly distance: number }[] = [];
  for (const candidate of new Set(names)) {
    if (Math.abs(candidate.length - name.length) > most) continue;
    const other = candidate.toLowerCase();
    // A slip takes one letter away and brings another at most, so most names need no closer look.
    if (bitsIn(letters ^ lettersOf(other)) > 2 * most) continue;
    const distance = editDistance(small, other);
    if (distance <= most) found.push({ name: candidate, distance });
  }
  found.sort((a, b) => a.distance - b.distance);
  return found.slice(0, 3).map((entry) => entry.name);
}

/** Two names are compared letter by letter: the time grows with the square of their length. */
const LONGEST = 200;

/** Which letters a word has, as bits; some share one. */
function lettersOf(word: string): number {
  let letters = 0;
  for (let at = 0; at < word.length; at++) letters |= 1 << (word.charCodeAt(at) & 31);
  return letters;
}

function bitsIn(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}
