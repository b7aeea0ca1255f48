// Puts words and comments together for printing: each comment stays with the words it stood beside. Knows no statement.
import type { Place, Separator } from "./format-plan.ts";
import { spelled } from "./format-spelling.ts";
import type { Comment, Gap, Word, Words } from "./format-words.ts";
import { buildDoc, type Doc, type DocBuilder, newLine, softBreak } from "./layout.ts";

/** @param places one for each word */
export function docOf({ words, last }: Words, places: readonly Place[]): readonly Doc[] {
  const doc = buildDoc();
  let before: Word | null = null;
  words.forEach((word, at) => {
    const place = places[at];
    if (place === undefined) return;
    for (let count = 0; count < place.indents; count++) doc.open("indent");
    putGap(doc, word.before, joinOf(before, word, place));
    for (let count = 0; count < place.groups; count++) doc.open("group");
    doc.put(spelled(word));
    for (let count = 0; count < place.closes; count++) doc.close();
    before = word;
  });
  putGap(doc, { ...last, newLines: 1 }, joinOf(before, null, END));
  return doc.parts();
}

const END: Place = { separator: "line", apart: false, outdents: 0, indents: 0, groups: 0, closes: 0 };

/** What is known of the words on both sides of a gap. */
interface Join {
  readonly separator: Separator;
  readonly outdents: number;
  /** Whether an empty line belongs here, written or not. */
  readonly apart: boolean;
  /** What stands before: nothing, the brace that opens a block, another word. */
  readonly first: "none" | "brace" | "word";
  /** What stands behind: nothing, the brace that ends a block, another word. */
  readonly second: "none" | "brace" | "word";
  /** How much further in a word goes that a comment pushes to a new line. */
  readonly deeper: number;
}

function joinOf(before: Word | null, word: Word | null, { separator, apart, outdents }: Place): Join {
  const right = word?.leaf.tokenType.name;
  const goesOn = separator === "blank" || separator === "close";
  return {
    separator,
    apart,
    outdents,
    first: before === null ? "none" : before.leaf.tokenType.name === "{" ? "brace" : "word",
    second: word === null ? "none" : right === "}" ? "brace" : "word",
    deeper: goesOn && right !== "{" && right !== "otherwise" ? 1 : 0,
  };
}

/** Comments that stood on one line, and the new lines in front of it. */
interface Row {
  readonly comments: readonly Comment[];
  readonly newLines: number;
}

function putGap(doc: DocBuilder, gap: Gap, join: Join): void {
  const rows = rowsOf(gap.comments);
  const isInner = rows.length === 1 && rows[0]?.newLines === 0 && gap.newLines === 0;
  const trails = join.first !== "none" && rows[0]?.newLines === 0 && !(isInner && join.first === "brace");
  const trailing = trails ? rows.shift() : undefined;
  const leading = gap.newLines === 0 && join.second !== "none" ? rows.pop() : undefined;
  const blanks = blankLines(rows, leading?.newLines ?? gap.newLines, join, trailing !== undefined);
  const turns = rows.length > 0 || (trailing?.comments.some((comment) => comment.toLineEnd) ?? false);

  if (trailing !== undefined) putTrailing(doc, trailing, turns || join.separator === "line");
  rows.forEach((row, at) => {
    if (at > 0 || join.first !== "none") doc.put(newLine(blanks[at] ?? false, join.deeper));
    putRow(doc, row, join.deeper);
  });
  for (let count = 0; count < join.outdents; count++) doc.close();
  if (join.second === "none") return;
  if (join.first !== "none" || rows.length > 0)
    putSeparator(doc, join, turns, blanks[rows.length] ?? false, leading !== undefined);
  if (leading !== undefined) {
    putRow(doc, leading, turns ? join.deeper : 0);
    doc.put(" ");
  }
}

function rowsOf(comments: readonly Comment[]): Row[] {
  const rows: { comments: Comment[]; newLines: number }[] = [];
  for (const comment of comments) {
    const row = rows[rows.length - 1];
    if (row === undefined || comment.newLines > 0) rows.push({ comments: [comment], newLines: comment.newLines });
    else row.comments.push(comment);
  }
  return rows;
}

/** Whether an empty line stands before each row, and before the word: as written, none at the edges of a block. */
function blankLines(rows: readonly Row[], beforeWord: number, join: Join, trailed: boolean): readonly boolean[] {
  if (join.separator !== "line") return [];
  const blanks = [...rows.map((row) => row.newLines), beforeWord].map((newLines) => newLines > 1);
  if (join.first === "none" || (join.first === "brace" && !trailed)) blanks[0] = false;
  if (join.second !== "word") blanks[rows.length] = false;
  if (join.apart && join.first !== "none" && !blanks.includes(true)) blanks[0] = true;
  return blanks;
}

function putTrailing(doc: DocBuilder, row: Row, endsLine: boolean): void {
  const text = row.comments.map(commentText).join(" ");
  if (endsLine && !text.includes("\n")) doc.put({ kind: "aside", text: `  ${text}` });
  else doc.put(` ${text}`);
}

function putSeparator(doc: DocBuilder, join: Join, turns: boolean, blank: boolean, leads: boolean): void {
  if (turns || join.separator === "line") doc.put(newLine(blank, join.deeper));
  else if (join.separator === "soft") doc.put(softBreak(" "));
  else if (join.separator === "blank" || leads) doc.put(" ");
}

/** A comment of several lines keeps its shape when it moves sideways. */
function putRow(doc: DocBuilder, row: Row, deeper: number): void {
  row.comments.forEach((comment, at) => {
    if (at > 0) doc.put(" ");
    commentText(comment)
      .split("\n")
      .forEach((line, number) => {
        if (number > 0) doc.put(newLine(false, deeper));
        doc.put(number === 0 ? line : line.slice(Math.min(comment.column, indentOf(line))));
      });
  });
}

function commentText(comment: Comment): string {
  const lines = comment.text.split(/\r\n?|\n/);
  return lines
    .map((line) => line.trimEnd())
    .join("\n")
    .normalize("NFC");
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}
