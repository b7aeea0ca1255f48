// Text of others made fit for a terminal: nothing in it may move the cursor, change a colour or turn the reading direction.
// And how wide it stands there.
import { codeText, printable, UNSHOWABLE } from "#outputs/printable.ts";

export { printable };

const WIDE =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]|\p{Emoji_Presentation}/u;
const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

/** For a name or path: on one line, whatever is in it. */
export function printableName(text: string): string {
  return text.replace(UNSHOWABLE, codeText);
}

/** One character as a reader sees it, however many code units it takes. */
export interface Cell {
  readonly text: string;
  readonly width: number;
  /** Offset of its first code unit in the line. */
  readonly from: number;
}

const TAB = 4;

/** A line as it stands on a terminal; tabs go on to the next multiple of four. */
export function cellsOf(line: string): readonly Cell[] {
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of graphemes.segment(line)) {
    const text = segment === "\t" ? " ".repeat(TAB - (column % TAB)) : printable(segment);
    const width = text === segment ? widthOfOne(segment) : text.length;
    cells.push({ text, width, from: index });
    column += width;
  }
  return cells;
}

/** Breaks between words so that no line is wider, unless one word is; lines that are there stay lines. */
export function wrapped(text: string, width: number): readonly string[] {
  return text.split("\n").flatMap((line) => {
    const lines: string[] = [];
    let current = "";
    for (const word of line.split(" ")) {
      const longer = current === "" ? word : `${current} ${word}`;
      if (current !== "" && widthOf(longer) > width) {
        lines.push(current);
        current = word;
      } else current = longer;
    }
    return [...lines, current];
  });
}

/** Columns that a text takes. */
function widthOf(text: string): number {
  return /^[\x20-\x7e]*$/.test(text) ? text.length : cellsOf(text).reduce((so, cell) => so + cell.width, 0);
}

function widthOfOne(grapheme: string): number {
  return WIDE.test(grapheme) ? 2 : /^[\p{Mn}\p{Me}\p{Cf}]+$/u.test(grapheme) ? 0 : 1;
}
