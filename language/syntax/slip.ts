// Names the mistake in a statement that does not fit, where many writers make it; the words for each are in the rules.
import type { IToken } from "chevrotain";
import type { Slip, SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { isDeclaringWord, NAME_SLIPS, quotesMissing, twice } from "./slip-names.ts";
import { dateSlip, NUMBER_SLIPS, takesAmount, verbAt } from "./slip-numbers.ts";
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
  const slip: Recognised | null = misfit.slip ?? slipOf(place.grammar, misfit);
  const first = tokens[slip?.first ?? -1] ?? shown;
  const last = tokens[slip?.last ?? -1] ?? (slip?.first === undefined ? shown : first);
  const found = at < end && shown === tokens[at] ? place.text.slice(first.startOffset, endOf(last)) : "";
  const before = slip?.first ?? at;
  return {
    kind: "unexpected",
    span: { path: place.path, start: first.startOffset, end: endOf(last) },
    found,
    expected: expectedWords(misfit),
    within: withinOf(tokens, start),
    after: before > start ? (tokens[before - 1]?.image ?? "") : "",
    slip: slip && { name: slip.name, mended: slip.mended },
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

export type Recognise = (misfit: Misfit, grammar: Recogniser) => Recognised | null;

/** A slip, and the tokens that its mended text takes the place of, where they are others than the one that does not fit. */
export interface Recognised extends Slip {
  readonly first?: number;
  readonly last?: number;
}

function slipOf(grammar: Recogniser, misfit: Misfit): Recognised | null {
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
  twice,
  foundWord({
    else: slip("other word", "otherwise"),
    elseif: slip("other word", "otherwise when"),
    elsif: slip("other word", "otherwise when"),
    end: slip("end of block"),
    endif: slip("end of block"),
    done: slip("end of block"),
    foreach: slip("other word", "repeat"),
    until: slip("until without wait", "wait until"),
    goto: slip("other word", "go to"),
    crosswise: slip("other word", "in cross pattern"),
    diagonally: slip("other word", "in cross pattern"),
  }),
  // `tighten Nut hand tight`
  ({ tokens, start, at, end }) => {
    const isTight =
      /^(?:hand|finger|fingers)$/.test(tokens[at]?.image ?? "") &&
      typeName(tokens[verbAt(tokens, start)]) === "tighten";
    const last = [at + 1, at + 2].find((i) => i < end && tokens[i]?.image === "tight");
    return isTight && last !== undefined ? { ...slip("other word", "by hand"), last } : null;
  },
  // `go to step First`, `wait for 5 min`
  ({ tokens, at, end, expected }) => {
    const [before, word, next] = [typeName(tokens[at - 1]), typeName(tokens[at]), tokens[at + 1]];
    const isNamed = /^(?:step|task)$/.test(word) && /^(?:to|after|before|perform)$/.test(before);
    const isFor = word === "for" && before === "wait" && isNumber(next);
    const isOver = (isNamed && isName(next) && expected.includes("name")) || isFor;
    return isOver && at + 1 < end ? slip("word too many", "") : null;
  },
  ({ tokens, at, expected }) =>
    tokens[at]?.image === "using" && expected.includes("with") ? slip("other word", "with") : null,
  ({ tokens, at, start }) => (at === start && typeName(tokens[at]) === "for" ? slip("other word", "repeat") : null),
  ({ tokens, at, expected }) =>
    typeName(tokens[at]) === "(" && expected.includes("[") ? slip("round brackets") : null,
  ({ tokens, at, expected }) => {
    if (typeName(tokens[at]) !== "=" || !expected.includes("is")) return null;
    let last = at;
    while (typeName(tokens[last + 1]) === "=") last++;
    return { ...slip("is for equals", "is"), last };
  },
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
  ...NUMBER_SLIPS,
  clauseTooLate,
  ({ tokens, at, end }) => (typeName(tokens[at]) === "}" && at < end ? slip("brace too many", "") : null),
  ...NAME_SLIPS,
  dateSlip,
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
  // `mass 2 kg, sharp`
  ({ tokens, at, end, block, expected }, grammar) => {
    const next = tokens[at + 1];
    if (typeName(tokens[at]) !== "," || expected.includes(",") || at >= end || next === undefined) return null;
    return grammar.canStart(STATEMENT_RULE[block], next.tokenType) ? slip("comma at the end", "") : null;
  },
  ({ tokens, at, expected }) => {
    if (typeName(tokens[at]) !== "=") return null;
    const isNameless = typeName(tokens[at - 1]) === "value" && expected.includes("name");
    return isNameless ? slip("name missing") : slip("equals sign", "");
  },
  ({ tokens, at }) => (typeName(tokens[at]) === ":" ? slip("colon", "") : null),
  ({ tokens, at, expected }) =>
    expected.includes("=") ? slip("equals missing", `= ${tokens[at]?.image ?? ""}`) : null,
  noAction,
  quotesMissing,
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
  ({ tokens, start, at, end, expected }) => {
    // Two names in a row are two things; a name behind a value is not one of a list.
    const names = isName(tokens[at]) && (isName(tokens[at - 1]) || typeName(tokens[at - 1]) === "]");
    // `tighten Nut to FinalTorque Wrench`: behind a value a tool is likelier.
    if (expected.includes("with") && tokens.slice(start, at).some((token) => typeName(token) === "to")) return null;
    return at < end && names && expected.includes(",") && !opensLine(tokens, at)
      ? slip("comma missing", `, ${tokens[at]?.image}`)
      : null;
  },
  wordMissing,
  ({ tokens, at, end, expected }) =>
    at < end && isDeclaringWord(tokens[at - 1]) && expected.includes("name") ? slip("name missing") : null,
  // `50 mm` among properties
  ({ tokens, start, at, end, block }) =>
    at === start && at < end && isNumber(tokens[at]) && !isFlowBlock(block) && !/^(?:file|step|crib)$/.test(block)
      ? slip("property word missing")
      : null,
  ({ at, end }) => (at >= end ? slip("unfinished") : null),
];

/** A word between two others: the one with which the statement reads on. */
function wordMissing({ block, tokens, start, at, end, expected }: Misfit, grammar: Recogniser): Slip | null {
  const found = tokens[at];
  if (at >= end || found === undefined || opensLine(tokens, at)) return null;
  const isInLine = block === "step" || isFlowBlock(block) || block === "file";
  const share = (isInLine || isWord(found)) && mayBeShare(tokens, start, at) ? ["of"] : [];
  for (const word of [...share, ...CONNECTING]) {
    if (!expected.includes(word)) continue;
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

/** `check "…"`, `sign Fitter`: a line that cannot be a step by itself, unless its word names a step with a block. */
export function isLineOfStep(grammar: Recogniser, tokens: readonly IToken[], at: number): boolean {
  const token = tokens[at];
  if (token === undefined || !grammar.canStart("PlainLine", token.tokenType)) return false;
  const behind = typeName(tokens[at + 1]) === "STRING" ? at + 2 : at + 1;
  return typeName(tokens[behind]) !== "{";
}

/**
 * `step fasten Screw[all]`: the verb was taken for the name of a step. Where words go on to the end of the line, it is a text without
 * its quotation marks.
 */
function noAction({ tokens, start, at, end, block }: Misfit): Recognised | null {
  const isNamed = isFlowBlock(block) && at - start === 2 && at < end && typeName(tokens[start]) === "step";
  if (!isNamed || !isName(tokens[at - 1]) || !isName(tokens[at]) || opensLine(tokens, at)) return null;
  const rest = tokens.slice(at, end);
  const last = rest.findIndex((_, i) => i > 0 && opensLine(rest, i));
  const isWords = rest.slice(0, last < 0 ? rest.length : last).every((token) => isWord(token) || token.image === ".");
  return isWords ? null : { ...slip("no action"), first: at - 1, last: at - 1 };
}

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

const CONNECTING = [
  "is",
  "to",
  "at",
  "with",
  "over",
  "in",
  "on",
  "by",
  "from",
  "for",
  "it",
  "dated",
  "revision",
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
