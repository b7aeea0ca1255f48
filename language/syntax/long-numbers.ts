// Long numbers in groups, `1 000 N`, `1'000 N`, `1.000,5 N`, and hours with minutes, `3:30 o'clock`, `1:30 h`: each is told once and
// read as one number. `1,000 N` is none of them: nobody can know what it means (mend-numbers.ts).
import type { ILexingError, IToken } from "chevrotain";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { typeName } from "./statements.ts";
import { asOneToken, endOf } from "./virtual-token.ts";

interface Source {
  readonly grammar: Recogniser;
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

/** @returns the tokens with each such number as one, and the errors that do not lie within it */
export function readLongNumbers(
  source: Source,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] } {
  const { text } = source;
  const read: IToken[] = [];
  const spans: (readonly [number, number])[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const first = tokens[at] as IToken;
    const found = isPlain(first) ? foundAt(text, first.startOffset) : null;
    const end = found === null ? 0 : first.startOffset + found.written.length;
    let last = at;
    while (found !== null && last + 1 < tokens.length && (tokens[last + 1] as IToken).startOffset < end) last++;
    const whole = found !== null && last > at && endOf(tokens[last] as IToken) === end;
    if (!whole || isIndex(tokens[at - 1])) {
      read.push(first);
      continue;
    }
    const one = asOneToken(source.grammar.type("NUMBER"), text, first, tokens[last] as IToken);
    read.push({ ...one, image: found.image });
    spans.push([first.startOffset, end]);
    const mayBeTwo = /\s/.test(found.written) && LISTS.has(typeName(tokens[at - 1]));
    tell(source, first.startOffset, mayBeTwo ? { ...found, mended: null } : found);
    at = last;
  }
  if (spans.length === 0) return { tokens, errors };
  const isOutside = ({ offset }: ILexingError) => spans.every(([from, to]) => offset < from || offset >= to);
  return { tokens: read, errors: errors.filter(isOutside) };
}

interface Found {
  readonly written: string;
  /** The same number of characters, as the language reads it. */
  readonly image: string;
  readonly slip: "long number" | "hours and minutes";
  readonly mended: string | null;
}

// A unit behind it, or the other end of a range, shows that it is one number: `order 1 400` could be two.
const UNIT = /(?=[ \t\u00a0\u202f]*(?:[A-Za-zµμΩ°%′″]|\.\.|±|\+\/-|[-\u2013\u2014]\s*\d))/;
const GROUPS =
  /[1-9]\d{0,2}(?:(?:[ \u00a0\u2009\u202f]\d{3})+(?:[.,]\d+)?|(?:['’]\d{3})+(?:[.,]\d+)?|(?:\.\d{3})+,\d+|,\d{3}\.\d+)(?![\d_.,/:])/;
const GROUPED = new RegExp(`${GROUPS.source}${UNIT.source}`, "y");
const HOURS = /\d{1,2}:[0-5]\d(?![\d.:])(?=[ \t\u00a0]*(?:o['’]?\s?clock|h(?![A-Za-z])|hr|hour))/y;

function foundAt(text: string, at: number): Found | null {
  GROUPED.lastIndex = at;
  const grouped = GROUPED.exec(text)?.[0];
  if (grouped !== undefined) {
    const point = Math.max(grouped.lastIndexOf("."), grouped.lastIndexOf(","));
    const isDecimal = /\d{3}[.,]\d+$/.test(grouped);
    const image = [...grouped]
      .map((sign, i) => (/\d/.test(sign) ? sign : isDecimal && i === point ? "." : "_"))
      .join("");
    return { written: grouped, image, slip: "long number", mended: image.replaceAll("_", "") };
  }
  HOURS.lastIndex = at;
  const written = HOURS.exec(text)?.[0];
  if (written === undefined) return null;
  const [hours = "", minutes = ""] = written.split(":");
  const hundredths = Math.round((Number(minutes) * 100) / 60);
  const image = `${hours}.${String(hundredths).padStart(2, "0")}`;
  const isExact = hundredths * 60 === Number(minutes) * 100;
  return { written, image, slip: "hours and minutes", mended: isExact ? String(Number(image)) : null };
}

/** Behind these, numbers stand in a list, and a comma may have been left out: `to 30 100 N·m`. */
const LISTS: ReadonlySet<string> = new Set(["to", ","]);

function isPlain(token: IToken): boolean {
  return typeName(token) === "NUMBER" || typeName(token) === "DECIMAL_COMMA";
}

function isIndex(before: IToken | undefined): boolean {
  return typeName(before) === "[";
}

function tell({ path, note }: Source, start: number, { written, slip, mended }: Found): void {
  note({
    kind: "unexpected",
    span: { path, start, end: start + written.length },
    found: written,
    expected: [],
    within: "",
    after: "",
    slip: { name: slip, mended },
  });
}
