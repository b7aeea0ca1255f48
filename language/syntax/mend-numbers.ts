// Numbers that are written otherwise: commas for points, dashes for `..`, `+-` for `±`, days that the calendar does not have. They
// are told here and read as they were meant. Knows no statement.
import type { IToken } from "chevrotain";
import { withoutThousandsMark } from "#quantity/number-text.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { TAKES_TEXT, typeName } from "./statements.ts";
import { endOf, readAs } from "./virtual-token.ts";

type Note = (problem: SyntaxProblem) => void;

/** `40 +- 2 N·m` would be a sum: it is read as `±`. */
export function readPlusMinus(
  grammar: Recogniser,
  tokens: readonly IToken[],
  path: string,
  note: Note,
): readonly IToken[] {
  const isSign = (at: number) => {
    if (typeName(tokens[at]) !== "+") return false;
    const [before, plus, minus, after] = [tokens[at - 1], tokens[at], tokens[at + 1], tokens[at + 2]];
    if (plus === undefined || typeName(minus) !== "-" || typeName(after) !== "NUMBER") return false;
    return endOf(plus) === minus?.startOffset && /^(?:NUMBER|DECIMAL_COMMA|UNIT)$/.test(typeName(before));
  };
  if (!tokens.some((_, at) => isSign(at))) return tokens;
  return tokens.flatMap((token, at) => {
    if (isSign(at - 1)) return [];
    if (!isSign(at)) return [token];
    const place = { path, start: token.startOffset, end: endOf(token) + 1 };
    const slip = { name: "plus minus", mended: "±" };
    note({ kind: "unexpected", span: place, found: "+-", expected: [], within: "", after: "", slip });
    return [readAs(grammar.type("±"), token, "±")];
  });
}

/** Decimal commas and dashes between numbers, which the grammar reads as what they are meant to be. */
export function tellNumbers(
  grammar: Recogniser,
  tokens: readonly IToken[],
  text: string,
  path: string,
  note: Note,
): readonly IToken[] {
  let read: IToken[] | null = null;
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    const name = typeName(token);
    if (name === "DATE" && !isDay(token.image)) noteDate(token, path, note);
    else if (name === "DECIMAL_COMMA") {
      // Beside a dash it is told with that, unless nobody can know what it means.
      const isUnclear = withoutThousandsMark(token.image) !== null;
      if (isUnclear || (!isDashAt(tokens, at - 1) && !isDashAt(tokens, at + 1))) noteComma(token, path, note);
    } else if (name === "DASH" || isDash(tokens, at)) {
      if (name === "-") {
        read ??= [...tokens];
        read[at] = readAs(grammar.type("DASH"), token);
      }
      noteDash(tokens, at, text, path, note);
    }
  }
  return read ?? tokens;
}

function isDashAt(tokens: readonly IToken[], at: number): boolean {
  return typeName(tokens[at]) === "DASH" || isDash(tokens, at);
}

function noteComma(token: IToken, path: string, note: Note): void {
  const text = token.image;
  const mended = text.replace(",", ".");
  note({ kind: "decimal comma", span: span(path, token), text, mended, whole: withoutThousandsMark(text) });
}

/** Whether the calendar has the day. */
function isDay(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split("-").map(Number);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const last = month === 2 && leap ? 29 : (LAST_DAYS[month - 1] ?? 0);
  return day >= 1 && day <= last;
}

const LAST_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function noteDate(token: IToken, path: string, note: Note): void {
  const slip = { name: "no such day", mended: null };
  const place = { found: token.image, expected: [], within: "", after: "", slip };
  note({ kind: "unexpected", span: span(path, token), ...place });
}

/**
 * `38-42`: two plain numbers with nothing between them but a hyphen are no sum that anyone would write, nor is `38 - 42 N·m`, where
 * only the second has a unit; `2026-5-4` is a date, `WI-220-14` a text.
 */
function isDash(tokens: readonly IToken[], at: number): boolean {
  if (typeName(tokens[at]) !== "-") return false;
  if (isHyphened(tokens, at))
    return !isHyphened(tokens, at - 2) && !isHyphened(tokens, at + 2) && !isOfText(tokens, at - 1);
  const [low, high] = [tokens[at - 1], tokens[at + 1]];
  if (!isPlainNumber(low) || !isPlainNumber(high) || !/UNIT$/.test(typeName(tokens[at + 2]))) return false;
  return numberOf(low) < numberOf(high) && !RECKONS.has(typeName(tokens[at - 2]));
}

const RECKONS = new Set(["+", "-", "−", "*", "/", "±", "+/-", "..", "DASH"]);

function isHyphened(tokens: readonly IToken[], at: number): boolean {
  if (typeName(tokens[at]) !== "-") return false;
  const [before, hyphen, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (hyphen === undefined || !isPlainNumber(before) || !isPlainNumber(after)) return false;
  return endOf(before) === hyphen.startOffset && endOf(hyphen) === after.startOffset;
}

function isPlainNumber(token: IToken | undefined): token is IToken {
  return /^(?:NUMBER|DECIMAL_COMMA)$/.test(typeName(token));
}

function numberOf({ image }: IToken): number {
  return Number(image.replaceAll("_", "").replace(",", "."));
}

/** Whether the number at `at` goes on from something it touches, or stands where a text belongs: `revision 3-4`, `thread 3/8-16`. */
function isOfText(tokens: readonly IToken[], at: number): boolean {
  const [before, number] = [tokens[at - 1], tokens[at]];
  if (before === undefined || number === undefined) return false;
  const touching = endOf(before) === number.startOffset && /^(?:ID|-|\.|\/)$/.test(typeName(before));
  return touching || TAKES_TEXT.has(typeName(before));
}

function noteDash(tokens: readonly IToken[], at: number, text: string, path: string, note: Note): void {
  const dash = tokens[at] as IToken;
  const before = startOfValue(tokens, at - 1) ?? dash;
  const after = tokens[at + 1];
  const isNumber = after !== undefined && /^[0-9]/.test(after.image);
  const end = endOf(isNumber ? after : dash);
  const from = `${asNumber(before)}${text.slice(endOf(before), dash.startOffset)}`.trim();
  const to = isNumber ? asNumber(after) : "";
  const inBrackets = typeName(tokens[at - 2]) === "[" || typeName(tokens[at - 2]) === ",";
  note({
    kind: "dash range",
    span: { path, start: before.startOffset, end },
    text: text.slice(before.startOffset, end),
    mended: inBrackets ? `${from}..${to}` : `${from} .. ${to}`.trim(),
    dash: span(path, dash),
  });
}

/** As the language writes it; a comma that may part thousands stays, for the writer to say. */
function asNumber({ image }: IToken): string {
  return withoutThousandsMark(image) === null ? image.replace(",", ".") : image;
}

function startOfValue(tokens: readonly IToken[], at: number): IToken | undefined {
  const token = tokens[at];
  return token !== undefined && /UNIT$/.test(typeName(token)) ? tokens[at - 1] : token;
}

function span(path: string, token: IToken) {
  return { path, start: token.startOffset, end: endOf(token) };
}
