// One file as plain lines: the canonical text without comments and braces, so that two of them differ only in what is said. Knows
// no other file: what it uses may not be at hand.
import { formatText } from "#syntax/format.ts";
import { wordsOf } from "#syntax/format-words.ts";
import { parseText } from "#syntax/parse.ts";

/** Total: of a text that cannot be read as a procedure, its lines without the white space round them. */
export function outlineOf(text: string): string {
  const formatted = formatText(parseText(withoutComments(text), PATH));
  if (!formatted.ok) return linesOf(text, (line) => line.trim());
  return linesOf(formatted.text, (line) => line.replace(/\s*\{$/, "").replace(/^\s*\}$/, ""));
}

const PATH = "outline.sprag";

function linesOf(text: string, plain: (line: string) => string): string {
  const lines = text.split(/\r\n?|\n/).map(plain);
  return lines.flatMap((line) => (line.trim() === "" ? [] : [`${line}\n`])).join("");
}

/** With a blank in place of each comment. */
function withoutComments(text: string): string {
  const root = parseText(text, PATH).file.$cstNode;
  if (root === undefined) return text;
  const { words, last } = wordsOf(root, text);
  const comments = [...words.flatMap(({ before }) => before.comments), ...last.comments];
  let at = 0;
  let plain = "";
  for (const { start, end } of comments) {
    plain += `${text.slice(at, start)} `;
    at = end;
  }
  return plain + text.slice(at);
}
