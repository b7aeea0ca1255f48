// Words that stand where somebody has still to say something. Knows no statement and no rule.

/** Whether a text says nothing yet: it is empty, has no letter and no number, or is one of the words that are put in for later. */
export function isPlaceholder(text: string): boolean {
  const plain = text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
  return plain === "" || LATER.has(plain) || /^x+$/.test(plain);
}

const LATER: ReadonlySet<string> = new Set([
  ...["todo", "to do", "tbd", "tba", "tbc", "tbs", "fixme", "later", "n a", "na", "nn", "none", "text", "reason"],
  ...["to be done", "to be defined", "to be decided", "to be determined", "to be confirmed", "to be added"],
  ...["to be advised", "placeholder", "fill in", "lorem ipsum", "because", "why", "asdf", "test", "temp"],
]);
