// How wide a text is about, and where it is broken, where no typeface can be asked. Knows no place.
import { unparted } from "../formats/unparted.ts";

/** Pixels of a text of 14 px in a usual sans serif, on the wide side: letters by sort (DejaVu Sans, measured), all else as its widest. */
export function widthOf(text: string): number {
  let width = 0;
  for (const sign of text) width += WIDE.test(sign) ? 14 : NARROW.test(sign) ? 5.5 : CAPITAL.test(sign) ? 10.5 : 8.8;
  return width;
}

const NARROW = /[ ijlI.,:;'’|!()[\]ftr-]/;
const CAPITAL = /[A-ZÄÖÜmw%@–—]/;
// Scripts whose signs fill a square.
const WIDE = /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60]/;

/** Broken between words into lines of at most `most` signs, numbers with their units; a longer word is broken in itself. */
export function linesOf(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of unparted(text)
    .split(/[ \n]+/)
    .flatMap((long) => piecesOf(long, most))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (longer.length <= most) {
      line = longer;
      continue;
    }
    lines.push(line);
    line = word;
  }
  return line === "" ? lines : [...lines, line];
}

function piecesOf(word: string, most: number): readonly string[] {
  const signs = [...word];
  const pieces: string[] = [];
  for (let at = 0; at < signs.length; at += most) pieces.push(signs.slice(at, at + most).join(""));
  return pieces;
}
