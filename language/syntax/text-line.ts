// Where the line of an offset begins and ends.

/** The offset of the first character of the line that holds `offset`. */
export function lineStart(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && !isBreak(text, at - 1)) at--;
  return at;
}

/** The offset behind the last character of the line that holds `offset`, its break left out. */
export function lineEnd(text: string, offset: number): number {
  let at = offset;
  while (at < text.length && !isBreak(text, at)) at++;
  return at;
}

function isBreak(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === 10 || code === 13;
}
