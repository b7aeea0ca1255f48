// The tokens of a text up to a place, as the parser's own lexer gives them. Knows no grammar rule.
import { theLexer } from "#syntax/parse.ts";
import { typeName } from "#syntax/statements.ts";

export interface Token {
  /** A keyword as written in the grammar, or a terminal such as `ID`. */
  readonly type: string;
  readonly image: string;
  readonly start: number;
  /** Exclusive. */
  readonly end: number;
  readonly line: number;
  /** Whether it is the first of its line. */
  readonly opensLine: boolean;
}

export interface TokensBefore {
  readonly tokens: readonly Token[];
  /** What the place lies within, where that is no statement. */
  readonly inside: "text" | "comment" | null;
}

/** @param key of the file: what is the same as when it was last asked for is not read again */
export function tokensBefore(text: string, offset: number, key: object = NO_FILE): TokensBefore {
  const before = text.slice(0, offset);
  const known = key === NO_FILE ? undefined : last.get(key);
  const kept = known === undefined ? [] : keptTokens(known, before);
  const from = kept[kept.length - 1]?.end ?? 0;
  const { tokens: read, hidden } = theLexer().read(before.slice(from));
  const lines = kept[kept.length - 1]?.line ?? 1;
  const tokens = [...kept];
  for (const token of read) {
    const previous = tokens[tokens.length - 1];
    const line = lines - 1 + (token.startLine ?? 1);
    const start = from + token.startOffset;
    const opensLine = previous === undefined || previous.line + linesIn(previous.image) < line;
    tokens.push({
      type: typeName(token),
      image: token.image,
      start,
      end: start + token.image.length,
      line,
      opensLine,
    });
  }
  const comment = hidden[hidden.length - 1];
  const inComment =
    comment !== undefined &&
    comment.tokenType.name === "SL_COMMENT" &&
    from + comment.startOffset + comment.image.length === offset;
  const inside = inComment || hasOpenComment(tokens) ? "comment" : isInText(tokens, offset) ? "text" : null;
  if (key !== NO_FILE) last.set(key, { before, tokens });
  return { tokens, inside };
}

const NO_FILE = {};
const last = new WeakMap<object, Read>();

interface Read {
  readonly before: string;
  readonly tokens: readonly Token[];
}

/** Those of lines that did not change. A sign that may open a text or comment over lines makes all in doubt. */
function keptTokens({ before, tokens }: Read, now: string): readonly Token[] {
  if (OPENS.test(before) || OPENS.test(now)) return [];
  let same = 0;
  const most = Math.min(before.length, now.length);
  while (same < most && before.charCodeAt(same) === now.charCodeAt(same)) same++;
  // A unit or number may have been read by what follows it on its line; of two lines the first is surely whole.
  const lineStart = now.lastIndexOf("\n", now.lastIndexOf("\n", same - 1) - 1);
  let [low, high] = [0, tokens.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((tokens[middle] as Token).end <= lineStart) low = middle + 1;
    else high = middle;
  }
  return tokens.slice(0, low);
}

const OPENS = /\/\*|"""/;

function linesIn(image: string): number {
  return image.includes("\n") ? image.split("\n").length - 1 : 0;
}

/** An open `/*` is read as two signs that can stand nowhere side by side. */
function hasOpenComment(tokens: readonly Token[]): boolean {
  return tokens.some(
    ({ type, start }, at) => type === "*" && tokens[at - 1]?.type === "/" && tokens[at - 1]?.start === start - 1,
  );
}

/** Behind an opening quote; behind `"""` that nothing closes also on later lines. */
function isInText(tokens: readonly Token[], offset: number): boolean {
  let openBlock = false;
  for (let at = 0; at < tokens.length; at++) {
    const [token, next] = [tokens[at], tokens[at + 1]];
    const isOpening = token?.image === '""' && next?.type === "STRING" && next.start === token.end;
    if (isOpening) openBlock = true;
  }
  const last = tokens[tokens.length - 1];
  if (openBlock) return true;
  return last?.type === "STRING" && last.end === offset && !/^"(?:\\.|[^"\\])*"$/.test(last.image);
}
