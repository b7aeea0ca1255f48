// Names the mistake in a statement that does not fit, where many writers make it; the words for each are in the rules.
import type { IToken } from "chevrotain";
import type { Slip, SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { type Block, isKeyword, isWord, opensLine, STATEMENT_RULE, startsAction, typeName } from "./statements.ts";
import { endOf, isMissing, missingBefore } from "./virtual-token.ts";

/** A statement that does not fit, and where. */
export interface Misfit {
  readonly block: Block;
  readonly tokens: readonly IToken[];
  readonly start: number;
  /** The first token that does not fit; `end` where something is missing at the end. */
  readonly at: number;
  /** Where the statement ends (exclusive). */
  readonly end: number;
  readonly expected: readonly string[];
  /** Where it is known already. */
  readonly slip: Slip | null;
}

interface Place {
  readonly grammar: Recogniser;
  readonly path: string;
  readonly text: string;
}

/** At most this many things that could stand there are named. */
const MOST_EXPECTED = 6;

/** The one problem of a statement that does not fit. */
export function problemOf(place: Place, misfit: Misfit): SyntaxProblem {
  const { tokens, start, at, end } = misfit;
  const shown = shownToken(tokens, start, at, end);
  const slip = misfit.slip ?? slipOf(place.grammar, misfit);
  const last = slip === null ? shown : lastOf(slip, misfit, shown);
  const found = at < end && shown === tokens[at] ? place.text.slice(shown.startOffset, endOf(last)) : "";
  return {
    kind: "unexpected",
    span: { path: place.path, start: shown.startOffset, end: endOf(last) },
    found,
    expected: expectedWords(misfit),
    within: withinOf(tokens, start),
    after: at > start ? (tokens[at - 1]?.image ?? "") : "",
    slip,
  };
}

/** The token that does not fit, or the last one before the place where something is missing. */
function shownToken(tokens: readonly IToken[], start: number, at: number, end: number): IToken {
  for (let i = Math.min(at, end - 1); i > start; i--) {
    const token = tokens[i] as IToken;
    if (!isMissing(token)) return token;
  }
  return tokens[start] as IToken;
}

function withinOf(tokens: readonly IToken[], start: number): string {
  const first = tokens[start];
  if (typeName(first) === "step" && isKeyword(tokens[start + 1])) return tokens[start + 1]?.image ?? "step";
  return isKeyword(first) ? (first?.image ?? "") : "";
}

function expectedWords({ expected, tokens, at }: Misfit): readonly string[] {
  const words = expected.map((label) => (label === "name" ? nounFor(tokens[at - 1]) : label));
  const isBehindQuantity = isNumber(tokens[at - 1]) || typeName(tokens[at - 1]) === "UNIT";
  return [...new Set(words)]
    .filter((word) => !UNTOLD.has(word) && !(isBehindQuantity && RECKONING.has(word)))
    .slice(0, MOST_EXPECTED);
}

/** Behind a quantity anything can be reckoned on: that is seldom what was meant. */
const RECKONING = new Set(["of", "*", "/", "+", "-", "..", "±", "+/-", "("]);

/** What the grammar reads and no writer is told to write. */
const UNTOLD = new Set(["DASH", "−", "DAMAGED", "DECIMAL_COMMA", "UNKNOWN_UNIT", "RECORD"]);

/** What kind of name belongs behind a word. */
function nounFor(before: IToken | undefined): string {
  return NOUN_BEHIND[typeName(before)] ?? "name";
}

const NOUN_BEHIND: Readonly<Record<string, string>> = {
  with: "tool",
  sign: "role",
  hold: "role",
  for: "role",
  per: "source",
  perform: "procedure",
  after: "step",
  before: "step",
  install: "part",
  press: "part",
  remove: "part",
  discard: "part",
  tighten: "part",
  loosen: "part",
  heat: "part",
  cool: "part",
  clean: "part",
  lubricate: "part",
  drain: "part",
  fill: "part",
  bleed: "part",
  align: "part",
  lift: "part",
  support: "part",
  down: "part",
  turn: "ring",
  isolate: "energy",
  release: "energy",
  prove: "energy",
  restore: "energy",
  raises: "hazard",
  hazard: "hazard",
  danger: "hazard",
  warning: "hazard",
  caution: "hazard",
  secures: "part",
  encloses: "part",
  needs: "part",
  retains: "part",
  locks: "part",
  up: "part",
  material: "material",
  over: "part",
};

/* ---- the table of slips ---- */

type Recognise = (misfit: Misfit, grammar: Recogniser) => Slip | null;

function slipOf(grammar: Recogniser, misfit: Misfit): Slip | null {
  for (const recognise of SLIPS) {
    const slip = recognise(misfit, grammar);
    if (slip !== null) return slip;
  }
  return null;
}

function slip(name: string, mended: string | null = null): Slip {
  return { name, mended };
}

const foundWord =
  (words: Readonly<Record<string, Slip>>): Recognise =>
  ({ tokens, at }) => {
    const image = tokens[at]?.image ?? "";
    return Object.hasOwn(words, image) ? (words[image] as Slip) : null;
  };

const SLIPS: readonly Recognise[] = [
  foundWord({
    else: slip("other word", "otherwise"),
    elseif: slip("other word", "otherwise when"),
    elsif: slip("other word", "otherwise when"),
    end: slip("end of block"),
    endif: slip("end of block"),
    done: slip("end of block"),
    foreach: slip("other word", "repeat"),
    until: slip("until without wait", "wait until"),
  }),
  ({ tokens, at, expected }) =>
    tokens[at]?.image === "using" && expected.includes("with") ? slip("other word", "with") : null,
  ({ tokens, at, start }) => (at === start && typeName(tokens[at]) === "for" ? slip("other word", "repeat") : null),
  ({ tokens, at, expected }) =>
    typeName(tokens[at]) === "(" && expected.includes("[") ? slip("round brackets") : null,
  ({ tokens, at, expected }) =>
    typeName(tokens[at]) === "=" && expected.includes("is") ? slip("is for equals", "is") : null,
  ({ tokens, start, at, end, block }, grammar) =>
    isFlowBlock(block) &&
    at < end &&
    at - start === 2 &&
    typeName(tokens[start]) === "step" &&
    (startsAction(grammar, tokens[at] as IToken) || grammar.canStart("PlainLine", (tokens[at] as IToken).tokenType))
      ? slip("name before action")
      : null,
  ({ tokens, start, at, block }, grammar) =>
    isFlowBlock(block) && at === start + 1 && typeName(tokens[start]) === "step" && isLineOfStep(grammar, tokens, at)
      ? slip("step without action")
      : null,
  ({ tokens, start, at }) => {
    const isFailing = typeName(tokens[at]) === "if" && /^(?:it|not)$/.test(typeName(tokens[at + 1]));
    if (!isFailing || at === start) return null;
    const verb = verbAt(tokens, start);
    const isNameless = typeName(tokens[verb]) === "measure" && typeName(tokens[verb + 1]) === "STRING";
    return slip(isNameless ? "measure that fails" : "line that fails");
  },
  ({ tokens, at }) =>
    /^(?:,|and|&|\+)$/.test(tokens[at]?.image ?? "") &&
    isWord(tokens[at - 1]) &&
    typeName(tokens[at - 2]) === "by" &&
    isWord(tokens[at + 1])
      ? slip("one role", `by ${tokens[at - 1]?.image} sign ${tokens[at + 1]?.image}`)
      : null,
  amountBehind,
  limitBehind,
  clauseTooLate,
  ({ tokens, at, end }) => (typeName(tokens[at]) === "}" && at < end ? slip("brace too many", "") : null),
  ({ tokens, at, end, expected }) =>
    typeName(tokens[at]) === "STRING" &&
    at < end &&
    expected.includes("name") &&
    isWord(tokens[at + 1]) &&
    !opensLine(tokens, at + 1)
      ? slip("title before name", `${tokens[at + 1]?.image} ${tokens[at]?.image}`)
      : null,
  ({ tokens, at, end, expected }) =>
    at < end && typeName(tokens[at]) === "NUMBER" && expected.includes("name") && isDeclaringWord(tokens[at - 1])
      ? slip("name begins with a digit")
      : null,
  ({ tokens, at }) =>
    typeName(tokens[at]) === "-" &&
    touches(tokens, at - 1) &&
    touches(tokens, at) &&
    isWord(tokens[at - 1]) &&
    isWord(tokens[at + 1])
      ? slip("hyphen in name", "_")
      : null,
  ({ tokens, at, expected }) =>
    expected.includes("DATE") && /^[0-9]/.test(tokens[at]?.image ?? "") ? slip("date", isoDate(tokens, at)) : null,
  ({ tokens, start, at, expected }) => {
    if (typeName(tokens[start]) !== "repeat") return null;
    if (typeName(tokens[at]) === "=" && expected.includes("from")) return slip("equals sign", "from");
    return typeName(tokens[at]) === ".." && expected.includes("to") ? slip("range in repeat", "to") : null;
  },
  ({ tokens, start, at, expected }) => {
    const name = typeName(tokens[at]);
    if (name !== "and" && name !== "," && name !== "&") return null;
    if (expected.includes("+") && isAmongTools(tokens, at)) return slip("plus between tools", "+");
    if (typeName(tokens[start]) === "value" && name === ",") return slip("one value");
    return name === "and" && expected.includes(",") ? slip("comma between things", ",") : null;
  },
  ({ tokens, at }) => (typeName(tokens[at]) === "=" ? slip("equals sign", "") : null),
  ({ tokens, at }) => (typeName(tokens[at]) === ":" ? slip("colon", "") : null),
  ({ tokens, at, expected }) =>
    expected.includes("=") ? slip("equals missing", `= ${tokens[at]?.image ?? ""}`) : null,
  ({ tokens, start, at, end, expected }) =>
    at < end && typeName(tokens[start]) === "use" && at === start + 1 && expected.includes("text")
      ? slip("quotes missing", `"${lineFrom(tokens, at, end)}"`)
      : null,
  ({ tokens, at, end, expected }) =>
    at < end &&
    typeName(tokens[at]) === "ID" &&
    expected.includes("text") &&
    !opensLine(tokens, at) &&
    !expected.includes(",")
      ? slip("quotes missing", `"${wordsFrom(tokens, at, end)}"`)
      : null,
  ({ block, tokens, at, start }) =>
    block === "step" && at === start && /^(?:task|step|procedure)$/.test(typeName(tokens[at]))
      ? slip("step inside step")
      : null,
  ({ block, tokens, at, start }, grammar) =>
    (block === "flow" || block === "procedure") &&
    at === start &&
    tokens[at] !== undefined &&
    grammar.canStart("PlainLine", (tokens[at] as IToken).tokenType)
      ? slip("line outside step")
      : null,
  ({ block, tokens, at, start }, grammar) =>
    (block === "flow" || block === "step") &&
    at === start &&
    tokens[at] !== undefined &&
    grammar.canStart("Declaration", (tokens[at] as IToken).tokenType)
      ? slip("declaration inside")
      : null,
  ({ block, tokens, at, start }, grammar) =>
    block === "file" &&
    at === start &&
    tokens[at] !== undefined &&
    (startsAction(grammar, tokens[at] as IToken) || grammar.canStart("FlowItem", (tokens[at] as IToken).tokenType))
      ? slip("outside procedure")
      : null,
  ({ tokens, at, end, expected }) =>
    at < end && isNumber(tokens[at]) && isNumber(tokens[at - 1]) && expected.includes(",") && !opensLine(tokens, at)
      ? slip("comma missing", `, ${tokens[at]?.image}`)
      : null,
  ({ tokens, at, end, expected }) => {
    // Two names in a row are two things; a name behind a value is not one of a list.
    const names = isName(tokens[at]) && (isName(tokens[at - 1]) || typeName(tokens[at - 1]) === "]");
    return at < end && names && expected.includes(",") && !opensLine(tokens, at)
      ? slip("comma missing", `, ${tokens[at]?.image}`)
      : null;
  },
  wordMissing,
  ({ tokens, at, end, expected }) =>
    at < end && isDeclaringWord(tokens[at - 1]) && expected.includes("name") ? slip("name missing") : null,
  ({ at, end }) => (at >= end ? slip("unfinished") : null),
];

/** A word between two others: the one with which the statement reads on. */
function wordMissing({ block, tokens, start, at, end, expected }: Misfit, grammar: Recogniser): Slip | null {
  const found = tokens[at];
  if (at >= end || found === undefined || opensLine(tokens, at)) return null;
  for (const word of CONNECTING) {
    if (!expected.includes(word) || (word === "of" && !mayBeShare(tokens, start, at))) continue;
    const window = [...tokens.slice(start, at), missingBefore(grammar.type(word), found), ...tokens.slice(at, end)];
    const fit = grammar.fit(STATEMENT_RULE[block], window, 0);
    if (fit.end > at - start + 1 || fit.furthest > at - start + 2)
      return slip("word missing", `${word} ${found.image}`);
  }
  return null;
}

/** Of a share or an amount: `30 %` of a value, `3 mL` of a consumable. */
function mayBeShare(tokens: readonly IToken[], start: number, at: number): boolean {
  const unit = tokens[at - 1];
  return typeName(unit) === "UNIT" && (unit?.image === "%" || (isWord(tokens[at]) && takesAmount(tokens, start)));
}

function takesAmount(tokens: readonly IToken[], start: number): boolean {
  return /^(?:apply|fill)$/.test(typeName(tokens[verbAt(tokens, start)]));
}

/** Where the verb of an action stands: behind the `step` of a step in one line. */
function verbAt(tokens: readonly IToken[], start: number): number {
  return typeName(tokens[start]) === "step" ? start + 1 : start;
}

/** `check "…"`, `sign Fitter`: a line that cannot be a step by itself, unless its word names a step with a block. */
export function isLineOfStep(grammar: Recogniser, tokens: readonly IToken[], at: number): boolean {
  const token = tokens[at];
  if (token === undefined || !grammar.canStart("PlainLine", token.tokenType)) return false;
  const behind = typeName(tokens[at + 1]) === "STRING" ? at + 2 : at + 1;
  return typeName(tokens[behind]) !== "{";
}

/** `fill Tank with Oil 5 L`: what is filled in stands behind its amount. */
function amountBehind({ tokens, start, at, end }: Misfit): Slip | null {
  const [number, unit] = [tokens[at], tokens[at + 1]];
  if (at + 1 >= end || !isNumber(number) || typeName(unit) !== "UNIT" || !takesAmount(tokens, start)) return null;
  const verb = verbAt(tokens, start);
  const isFill = typeName(tokens[verb]) === "fill";
  const of = isFill ? tokens[at - 1] : tokens[verb + 1];
  if (!isWord(of) || opensLine(tokens, at)) return null;
  return slip("amount behind", `${isFill ? "with" : "apply"} ${number?.image} ${unit?.image} of ${of?.image}`);
}

/** `expect 1 mm max`, `expect max 1 mm`: a limit is a word before its value. */
function limitBehind({ tokens, at, end }: Misfit): Slip | null {
  if (at >= end || opensLine(tokens, at)) return null;
  const isBehind = isNumber(tokens[at - 1]) || typeName(tokens[at - 1]) === "UNIT";
  const word = isBehind ? tokens[at] : isNumber(tokens[at]) ? tokens[at - 1] : undefined;
  const limit = LIMITS[word?.image.toLowerCase() ?? ""];
  return limit === undefined ? null : slip("limit behind", limit);
}

const LIMITS: Readonly<Record<string, string>> = {
  max: "at most",
  maximum: "at most",
  min: "at least",
  minimum: "at least",
};

/** A part of a line that stands behind one it has to stand before. */
function clauseTooLate({ tokens, start, at, end }: Misfit): Slip | null {
  const order = CLAUSES[typeName(tokens[verbAt(tokens, start)])];
  const own = order?.indexOf(typeName(tokens[at])) ?? -1;
  if (order === undefined || own < 0 || at >= end) return null;
  const before = tokens.slice(verbAt(tokens, start) + 1, at).find((token) => order.indexOf(typeName(token)) > own);
  return before === undefined ? null : slip("clause too late", `${tokens[at]?.image} … ${before.image} …`);
}

const CLAUSES: Readonly<Record<string, readonly string[]>> = {
  check: ["with", "expect", "record", "if"],
  measure: ["with", "expect", "record"],
  tighten: ["in", "by", "to", "with"],
  loosen: ["by", "in", "with"],
  heat: ["to", "by", "with"],
  cool: ["to", "by", "with"],
};

/** Whether only names joined by `+` stand between the place and a `with`. */
function isAmongTools(tokens: readonly IToken[], at: number): boolean {
  let before = at - 1;
  while (isName(tokens[before]) && typeName(tokens[before - 1]) === "+") before -= 2;
  return isName(tokens[before]) && typeName(tokens[before - 1]) === "with";
}

/** All that stands on the line, with its blanks, as a path is written. */
function lineFrom(tokens: readonly IToken[], at: number, end: number): string {
  let text = "";
  for (let i = at; i < end && (i === at || !opensLine(tokens, i)); i++)
    text += `${i === at || touches(tokens, i - 1) ? "" : " "}${tokens[i]?.image ?? ""}`;
  return text.replaceAll("\\", "/");
}

const CONNECTING = [
  "is",
  "to",
  "at",
  "with",
  "over",
  "in",
  "on",
  "of",
  "by",
  "from",
  "for",
  "it",
  "dated",
  "pattern",
  "factor",
  "limit",
  "point",
  "until",
  "seen",
  "not",
];

function isName(token: IToken | undefined): boolean {
  return typeName(token) === "ID";
}

function isNumber(token: IToken | undefined): boolean {
  return typeName(token) === "NUMBER";
}

function isFlowBlock(block: Block): boolean {
  return block === "flow" || block === "procedure";
}

function isDeclaringWord(token: IToken | undefined): boolean {
  return /^(?:material|source|role|ring|holes|part|tool|consumable|energy|hazard|option|fact|value|threshold|arrangement|crib|procedure|task|step)$/.test(
    typeName(token),
  );
}

function touches(tokens: readonly IToken[], at: number): boolean {
  const token = tokens[at];
  const next = tokens[at + 1];
  return token !== undefined && next !== undefined && endOf(token) === next.startOffset;
}

/** The words in a row on one line, as one text. */
function wordsFrom(tokens: readonly IToken[], at: number, end: number): string {
  const words: string[] = [];
  for (let i = at; i < end && isWord(tokens[i]) && (i === at || !opensLine(tokens, i)); i++)
    words.push((tokens[i] as IToken).image);
  return words.join(" ");
}

/** Tokens that the mended text of a slip takes the place of. */
function lastOf(slip: Slip, { tokens, at, end }: Misfit, shown: IToken): IToken {
  let last = at;
  if (slip.name === "quotes missing" && typeName(tokens[at - 1]) === "use")
    while (last + 1 < end && !opensLine(tokens, last + 1)) last++;
  else if (slip.name === "quotes missing")
    while (last + 1 < end && isWord(tokens[last + 1]) && !opensLine(tokens, last + 1)) last++;
  else if (slip.name === "is for equals") while (typeName(tokens[last + 1]) === "=") last++;
  else if (slip.name === "title before name" || slip.name === "amount behind") last = at + 1;
  else if (slip.name === "date")
    while (touches(tokens, last) && /^[0-9./-]/.test(tokens[last + 1]?.image ?? "")) last++;
  else return shown;
  return tokens[last] ?? shown;
}

/** `2026/05/04` and `2026.05.04` as ISO 8601; day and month in another order are not guessed. */
function isoDate(tokens: readonly IToken[], at: number): string | null {
  let written = "";
  for (let i = at; i < at + 6 && tokens[i] !== undefined; i++) {
    written += tokens[i]?.image ?? "";
    if (!touches(tokens, i)) break;
  }
  const parts = /^(\d{4})[./-](\d{1,2})[./-](\d{1,2})$/.exec(written);
  if (parts === null) return null;
  return `${parts[1]}-${parts[2]?.padStart(2, "0")}-${parts[3]?.padStart(2, "0")}`;
}
