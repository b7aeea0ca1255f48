// Offsets in a text as lines and characters, both counted from 0, characters in UTF-16 code units, as in LSP.

export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Lines {
  readonly position: (offset: number) => Position;
  readonly range: (start: number, end: number) => Range;
  /** Where a line begins; the end of the text behind the last line. */
  readonly offset: (line: number) => number;
  /** The text of a line without its end. */
  readonly text: (line: number) => string;
  readonly count: number;
}

/** Lines end at LF, CR LF or CR. */
export function linesOf(text: string): Lines {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
  }
  const position = (offset: number): Position => {
    const within = Math.max(0, Math.min(offset, text.length));
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= within) low = middle;
      else high = middle - 1;
    }
    return { line: low, character: within - (starts[low] ?? 0) };
  };
  return {
    position,
    range: (start, end) => ({ start: position(start), end: position(end) }),
    offset: (line) => starts[Math.max(line, 0)] ?? text.length,
    text: (line) => text.slice(starts[line] ?? text.length, starts[line + 1] ?? text.length).replace(/[\r\n]+$/, ""),
    count: starts.length,
  };
}
