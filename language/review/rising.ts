// The longest run of numbers that rises: what stays in place when others are moved. Knows nothing of steps.

/** The places in the list of a longest strictly rising subsequence. O(n log n). */
export function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  /** Where the best run of each length ends; and what each place comes behind. */
  const ends: number[] = [];
  const behind: number[] = [];
  numbers.forEach((number, at) => {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((numbers[ends[middle] ?? 0] ?? 0) < number) low = middle + 1;
      else high = middle;
    }
    behind[at] = ends[low - 1] ?? -1;
    ends[low] = at;
  });
  const found = new Set<number>();
  for (let at = ends.at(-1) ?? -1; at >= 0; at = behind[at] ?? -1) found.add(at);
  return found;
}
