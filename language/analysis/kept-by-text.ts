// What is worked out from a text alone, kept for the next time the same text is met: while a writer types, all others stay as they are.
// Knows no words.

/** More texts than a long file has. */
const MOST = 4_000;

/**
 * The same as `make`, which hangs on the text alone and does not change what it made; no more is kept than twice as many texts as `MOST`.
 * @param most texts that are kept at least
 */
export function keptByText<Made extends object>(make: (text: string) => Made, most = MOST): (text: string) => Made {
  let recent = new Map<string, Made>();
  let before = new Map<string, Made>();
  return (text) => {
    const known = recent.get(text);
    if (known !== undefined) return known;
    const made = before.get(text) ?? make(text);
    if (recent.size >= most) {
      before = recent;
      recent = new Map();
    }
    recent.set(text, made);
    return made;
  };
}
