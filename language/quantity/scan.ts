// How far a unit reaches after a number, for the lexer: called once for every number, so the common case is one pattern
// and one look-up. Knows no word of the language.
import { readUnit } from "./unit.ts";
import { spacedSpellings } from "./unit-spellings.ts";

/**
 * The unit that begins at `offset`, the first non-blank character after a number on the same line. `known: true` is the
 * longest unit of the table, with its qualifier (`V AC`); `known: false` a word shaped like a unit, which may be a word of
 * the language; null where nothing like a unit stands. Operators that are no part of the unit are left alone.
 */
export function scanUnit(text: string, offset: number): { end: number; known: boolean } | null {
  if (text[offset] === '"') return isInchSign(text, offset) ? { end: offset + 1, known: true } : null;
  RUN.lastIndex = offset;
  const run = RUN.exec(text)?.[0];
  if (run === undefined) return null;
  const end = offset + run.length;
  if (endsAt(text, end, run)) {
    const spaced = spacedEnd(text, offset, end, run);
    if (spaced > 0) return { end: spaced, known: true };
    if (isKnown(run)) return { end: qualifiedEnd(text, offset, end), known: true };
  }
  return beforeOperator(run, offset) ?? unknownWord(text, offset, end);
}

const NAME =
  /dB\([Aa]\)|(?:psi|bar)\([ag]\)|o['’]clock|[A-Za-zµμ]*H[2₂]O(?![A-Za-z0-9])|[°º](?:[CFRcf](?![A-Za-z]))?|[A-Za-zµμΩΩ]+|[%‰′″'℃℉]/
    .source;
const POWER = /(?:\^[-−]?\d|⁻?[¹²³⁴⁵⁶]|[23](?![\w.]))?/.source;
const TERM = String.raw`(?:(?:${NAME})|\([^()\r\n]{1,40}\))${POWER}`;
// `1/min` begins with its one: a number stands before it.
const RUN = new RegExp(`(?:1/${TERM}|(?:${NAME})${POWER})(?:[·⋅∙•*.×/-]${TERM})*`, "y");
const QUALIFIER = /[ \t\u00a0]+(?:AC|DC|ac|dc|absolute|abs|gauge|gage)(?![A-Za-z0-9_])/y;
// What may follow a blank-separated `… in` for the `in` to be inches: `12 kg in Seat` is no torque.
const VALUE_END = /[ \t\u00a0]*(?:$|[\r\n,;)}\]+±]|\.\.|\/\/|\/\*)/y;

const SPACED = new Map<string, readonly string[]>();
for (const spelling of spacedSpellings()) {
  const first = spelling.slice(0, spelling.indexOf(" "));
  SPACED.set(
    first,
    [...(SPACED.get(first) ?? []), spelling].sort((a, b) => b.length - a.length),
  );
}

/** `3/4"`: the sign touches its number, as no text does. */
function isInchSign(text: string, offset: number): boolean {
  return /\d/.test(text[offset - 1] ?? "") && text[offset + 1] !== '"';
}

function isKnown(text: string): boolean {
  return readUnit(text, null).ok;
}

/** Whether a run ends as a word does: `m` in `m_2` is no metre. */
function endsAt(text: string, end: number, run: string): boolean {
  return !isWordCharacter(text.charCodeAt(end)) || !isWordCharacter(run.charCodeAt(run.length - 1));
}

function isWordCharacter(code: number): boolean {
  return (
    (code >= 97 && code <= 122) ||
    (code >= 65 && code <= 90) ||
    (code >= 48 && code <= 57) ||
    code === 95 ||
    (code > 0x370 && !isSign(code))
  );
}

/** Dashes, minus signs, arrows and the like; Ω has a code of its own among them. */
function isSign(code: number): boolean {
  return code >= 0x2000 && code <= 0x2bff && code !== 0x2126;
}

function spacedEnd(text: string, offset: number, end: number, run: string): number {
  const blank = text.charCodeAt(end);
  if (blank !== 32 && blank !== 0xa0) return 0;
  for (const spelling of SPACED.get(run) ?? []) {
    const reach = offset + spelling.length;
    const found = text.slice(offset, reach).replaceAll("\u00a0", " ").replaceAll("’", "'");
    if (found !== spelling || !endsAt(text, reach, spelling)) continue;
    VALUE_END.lastIndex = reach;
    if (spelling.endsWith(" in") && !VALUE_END.test(text)) continue;
    return reach;
  }
  return 0;
}

function qualifiedEnd(text: string, offset: number, end: number): number {
  const blank = text.charCodeAt(end);
  if (blank !== 32 && blank !== 9 && blank !== 0xa0) return end;
  QUALIFIER.lastIndex = end;
  const qualifier = QUALIFIER.exec(text)?.[0];
  if (qualifier === undefined) return end;
  return isKnown(text.slice(offset, end + qualifier.length)) ? end + qualifier.length : end;
}

/** `mm*Gap`, `N·m/Length`: the longest known unit before an operator, where a plain name or a parenthesis follows it. */
function beforeOperator(run: string, offset: number): { end: number; known: boolean } | null {
  for (let cut = run.length - 1; cut > 0; cut--) {
    if (!"*/-".includes(run[cut] ?? " ") || !/^\(?[A-Za-z_][\w\s+*/.()-]*$/.test(run.slice(cut + 1))) continue;
    if (isKnown(run.slice(0, cut))) return { end: offset + cut, known: true };
  }
  return null;
}

function unknownWord(text: string, offset: number, end: number): { end: number; known: boolean } {
  let reach = end;
  // The pattern may have stopped inside a word (`x2b`, `m_2`).
  while (isWordCharacter(text.charCodeAt(reach)) && isWordCharacter(text.charCodeAt(reach - 1))) reach++;
  return { end: Math.max(reach, offset + 1), known: false };
}
