// How far two words are apart, counted in letters to change, add, drop or swap.

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
