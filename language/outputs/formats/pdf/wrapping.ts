// Breaks text into lines of a given width. Knows no format: how wide a word is comes from outside.
import type { Span } from "../chapters.ts";
import { unparted } from "../unparted.ts";

/** Words of one look that stand together, from `x` on. */
export interface Run extends Span {
  readonly x: number;
}

export type TextLine = readonly Run[];

/** Width of a text without breaks. */
export type WidthOf = (text: string, bold: boolean) => number;

/** At least one line; breaks between words, and within a word that is wider than a line. */
export function linesIn(spans: readonly Span[], width: number, widthOf: WidthOf): readonly TextLine[] {
  const lines: TextLine[] = [];
  let line: Growing[] = [];
  let x = 0;
  const end = (): void => {
    lines.push(line);
    line = [];
    x = 0;
  };
  let spaced = false;
  for (const span of spans) {
    const bold = span.bold === true;
    const space = widthOf(" ", bold);
    for (const token of unparted(span.text).split(/([ \t\n]+)/)) {
      if (token === "") continue;
      if (/^[ \t\n]/.test(token)) {
        spaced = true;
        if (token.includes("\n") && x > 0) end();
        continue;
      }
      let word = token;
      let wide = widthOf(word, bold);
      let before = spaced && x > 0 ? space : 0;
      if (x > 0 && x + before + wide > width) {
        end();
        before = 0;
      }
      while (wide > width) {
        const head = fitting(word, width, bold, widthOf);
        line.push({ ...span, text: head, x });
        end();
        word = word.slice(head.length);
        wide = widthOf(word, bold);
      }
      if (word !== "") {
        const last = line.at(-1);
        // Words of one look are one run, with the space between them in it.
        const joins = last !== undefined && last.bold === span.bold && last.colour === span.colour;
        if (joins) last.text += before > 0 ? ` ${word}` : word;
        else line.push({ ...span, text: word, x: x + before });
        x += before + wide;
      }
      spaced = false;
    }
  }
  if (line.length > 0 || lines.length === 0) end();
  return lines;
}

type Growing = Omit<Run, "text"> & { text: string };

/** As many of its characters as fit, one at least. */
function fitting(word: string, width: number, bold: boolean, widthOf: WidthOf): string {
  let head = "";
  for (const character of word) {
    if (head !== "" && widthOf(head + character, bold) > width) return head;
    head += character;
  }
  return head;
}
