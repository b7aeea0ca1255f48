// How closed lists of words are written as data. Knows no word.

/** The words of a text, each once. */
export function wordList(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}
