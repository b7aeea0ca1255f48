// Spoils the layout of a text without touching what it says, and looks at texts without the project's own lexer. For the
// tests of the formatter only.
import fc from "fast-check";
import { allFiles } from "../guards/source-files.ts";

/** All samples that are to be read without a problem of form. */
export const sampleTexts = allFiles.filter(({ path }) => /^samples\/.*\.sprag$/.test(path) && !/\/syntax\./.test(path));

/** Strings, comments, blanks, and what else stands between them. */
function piecesOf(text: string): string[] {
  return text.match(PIECE) ?? [];
}

/** The text without its blanks, character by character, but strings and comments whole: what formatting must not change. */
export function squeezed(text: string): string[] {
  return piecesOf(text)
    .filter((piece) => !isBlank(piece))
    .flatMap((piece) => {
      if (isComment(piece)) return [piece.replace(/\s+/g, " ").trim()];
      return piece.startsWith('"') ? [piece] : [...piece];
    });
}

/** For each `//` comment, whether words stand before it on its line. */
export function trailingComments(text: string): boolean[] {
  let line = "";
  const found: boolean[] = [];
  for (const piece of piecesOf(text)) {
    if (piece.startsWith("//")) found.push(line.trim() !== "");
    line = (line + piece).replace(/[\s\S]*[\r\n]/, "");
  }
  return found;
}

/** A canonical text with other blanks between its words; where a blank line stood, one stays. */
export function mangled(text: string): fc.Arbitrary<string> {
  const pieces = piecesOf(text);
  return fc
    .noShrink(fc.array(fc.nat(), { minLength: pieces.length, maxLength: pieces.length }))
    .map((picks) => picks.map((pick, at) => spoiled(pieces, at, pick)).join(""));
}

/** The text with a few comments put in where blanks stand, though not between a number and its unit. */
export function commented(text: string): fc.Arbitrary<string> {
  const pieces = piecesOf(text);
  const gaps = pieces.flatMap((piece, at) =>
    isBlank(piece) && !isComment(pieces[at - 1] ?? "") && !isBeforeUnit(pieces, at) ? [at] : [],
  );
  return fc
    .array(fc.tuple(fc.constantFrom(...gaps), fc.constantFrom(...COMMENTS)), { minLength: 1, maxLength: 8 })
    .map((put) => {
      const spoilt = [...pieces];
      for (const [at, comment] of put) spoilt[at] = comment;
      return spoilt.join("");
    });
}

const PIECE = /"""[\s\S]*?"""|"(?:\\.|[^"\\\n])*"|\/\/[^\r\n]*|\/\*[\s\S]*?\*\/|\s+|(?:(?!\/\/|\/\*)[^\s"])+/g;

const COMMENTS = [
  "\n// own line\n",
  "\n\n  // set off\n\n",
  " // at the end\n",
  " // at the end\n  // and below\n",
  " /* within */ ",
  " /* one */ /* and two */ ",
  " /* within */ // and at the end\n",
  "\n /* in front */ // of its line\n /* and more */ ",
  "\n/* own */\n",
  " /* at the end */\n",
  "\n  /* in front */ ",
  " /* over\n two lines */ ",
  "\n    /* set in\n       over two lines\n     out */\n",
];

function isBlank(piece: string): boolean {
  return piece.trim() === "";
}

function isComment(piece: string): boolean {
  return piece.startsWith("//") || piece.startsWith("/*");
}

/** Between a number and its unit, or within a unit of two words. */
function isBeforeUnit(pieces: readonly string[], at: number): boolean {
  return /\d$/.test(pieces[at - 1] ?? "") || /^(?:AC|DC|absolute)$/.test(pieces[at + 1] ?? "");
}

function spoiled(pieces: readonly string[], at: number, pick: number): string {
  const piece = pieces[at] ?? "";
  const before = pieces[at - 1] ?? "";
  const after = pieces[at + 1] ?? "";
  const one = (...choices: string[]): string => choices[pick % choices.length] ?? "";
  if (!isBlank(piece)) {
    const isCode = !piece.startsWith('"') && !isComment(piece);
    return isCode ? piece.replace(/[[\],]/g, (sign) => one(sign, `${sign} `, ` ${sign}`, `\n${sign}\t`)) : piece;
  }
  const isMixedNumber = /^\d+$/.test(before) && /^\d+\/\d/.test(after);
  // The lines of a comment keep their place beside its first.
  if (isMixedNumber || (after.startsWith("/*") && after.includes("\n"))) return piece;
  if (piece.includes("\n\n")) return one("\n\n", "\r\n\r\n\t", "\n   \n\n\n  ");
  if (isComment(before) || after === "") return one("\n", "\r\n", "\n\t", "  \n      ");
  if (isComment(after)) return piece.includes("\n") ? one("\n", "\n   ", "\r\n\t") : one(" ", "\t", "     ");
  if (isBeforeUnit(pieces, at) && !piece.includes("\n")) return one(" ", "  ", "\u00a0", "\t");
  if (piece.includes("\n")) return one("\n", " ", "\n\t\t", "\r\n   ", "  ");
  return one(" ", "\n", "\t", "\r\n\t", "\n\n\n", "   ");
}
