// `sprag format`: the canonical layout and spelling of a text, from its tree. Changes no meaning: what it cannot be sure
// of stays as it is. Knows no file and no editor.
import { docOf } from "./format-doc.ts";
import { planLayout } from "./format-plan.ts";
import { spelled } from "./format-spelling.ts";
import { type Words, wordsOf } from "./format-words.ts";
import { printDoc } from "./layout.ts";
import { type ParsedFile, parseText } from "./parse.ts";
import type { Span } from "./span.ts";

export type Formatted = { readonly ok: true; readonly text: string } | { readonly ok: false };

/**
 * The canonical text: two-space indentation, one fact a line, canonical units, NFC, LF, one new line at the end.
 * `ok: false` where the text has any problem of form; such a text stays untouched.
 */
export function formatText(file: ParsedFile): Formatted {
  const result = format(file);
  return result === null ? { ok: false } : { ok: true, text: result.after.text };
}

/** A piece of the text and what replaces it. */
export interface TextEdit {
  readonly span: Span;
  readonly newText: string;
}

/** The changes to the canonical text, each as small as a blank or a unit, in order; none where the text stays untouched. */
export function formatEdits(file: ParsedFile): readonly TextEdit[] {
  const result = format(file);
  if (result === null) return [];
  const { path, text } = file;
  const edits: TextEdit[] = [];
  const replace = (start: number, end: number, newText: string): void => {
    if (text.slice(start, end) !== newText) edits.push({ span: { path, start, end }, newText });
  };
  const before = stretches(result.words);
  const after = stretches(result.after.words);
  let from = 0;
  let newFrom = 0;
  before.forEach(({ start, end }, at) => {
    const now = after[at] ?? { start: newFrom, end: newFrom };
    replace(from, start, result.after.text.slice(newFrom, now.start));
    replace(start, end, result.after.text.slice(now.start, now.end));
    from = end;
    newFrom = now.end;
  });
  replace(from, text.length, result.after.text.slice(newFrom));
  return edits;
}

const WIDTH = 100;
const INDENTATION = "  ";

interface Result {
  readonly words: Words;
  readonly after: { readonly text: string; readonly words: Words };
}

function format(file: ParsedFile): Result | null {
  const words = readWords(file);
  if (words === null) return null;
  const printed = printDoc(docOf(words, planLayout(file.file, words.words)), WIDTH, INDENTATION);
  const text = printed === "" ? "" : `${printed}\n`;
  const again = text === file.text ? words : readWords(parseText(text, file.path));
  // Blanks matter in few places (a unit after its number); should one go wrong, the text stays as it is.
  return again !== null && saysTheSame(words, again) ? { words, after: { text, words: again } } : null;
}

function readWords({ file, text, problems, damage }: ParsedFile): Words | null {
  const root = file.$cstNode;
  return problems.length > 0 || damage.length > 0 || root === undefined ? null : wordsOf(root, text);
}

/** Whether both are the same words, but for spelling, with the same comments between them. */
function saysTheSame(before: Words, after: Words): boolean {
  const rest = after.words;
  return (
    before.words.length === rest.length &&
    before.words.every((word, at) => {
      const other = rest[at];
      return other !== undefined && other.text === spelled(word) && sameComments(word.before, other.before);
    }) &&
    sameComments(before.last, after.last)
  );
}

function sameComments(before: Words["last"], after: Words["last"]): boolean {
  const plain = (gap: Words["last"]) =>
    gap.comments.map((comment) => comment.text.normalize("NFC").replace(/\s+/g, " ").trim()).join("\n");
  return plain(before) === plain(after);
}

/** Words and comments in order. */
function stretches({ words, last }: Words): readonly { readonly start: number; readonly end: number }[] {
  return [...words.flatMap((word) => [...word.before.comments, word]), ...last.comments];
}
