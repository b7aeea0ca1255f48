// Choices out of a list of random numbers, so that the same numbers give the same choices.

export interface Picker {
  /** One of a list that is not empty. */
  readonly of: <T>(list: readonly T[]) => T;
  readonly below: (count: number) => number;
  readonly isDone: () => boolean;
}

/** By the next number; the first when the numbers have run out. */
export function pickerOf(numbers: readonly number[]): Picker {
  let at = 0;
  const below = (count: number): number => (numbers[at++] ?? 0) % Math.max(count, 1);
  const of = <T>(list: readonly T[]): T => {
    if (list.length === 0) throw new Error("nothing to choose from");
    return list[below(list.length)] as T;
  };
  return { below, of, isDone: () => at >= numbers.length };
}

/** Always the same numbers. */
export function drawing(which: number): Picker {
  return pickerOf(Array.from({ length: 80 }, (_, at) => ((which + 3) * (at + 5) * 7919) % 9973));
}
