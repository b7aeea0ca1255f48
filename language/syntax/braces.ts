// Makes braces balance before statements are looked at: a block left open is closed where its lines end, a missing `{` is
// put in behind its header, a stray `}` is dropped. Goes by indentation where the text has any, else by what can hold what.
import type { IToken } from "chevrotain";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { type Block, blockOpened, isInlineBlock, openerOf, opensLine, STATEMENT_RULE, typeName } from "./statements.ts";
import { endOf, missingAfter, missingBefore } from "./virtual-token.ts";

/** Tokens whose braces balance, and what was wrong. Untouched where nothing was. */
export interface BalancedTokens {
  readonly tokens: readonly IToken[];
  readonly problems: readonly SyntaxProblem[];
}

/** More than this many blocks left open are told once. */
const MOST_TOLD = 8;

export function balanceBraces(
  grammar: Recogniser,
  tokens: readonly IToken[],
  text: string,
  path: string,
): BalancedTokens {
  if (isBalanced(tokens)) return { tokens, problems: [] };
  return run({
    grammar,
    tokens,
    text,
    path,
    indented: isIndented(tokens),
    out: [],
    lineStart: 0,
    closedIndent: 1,
    open: [],
    problems: [],
  });
}

function isBalanced(tokens: readonly IToken[]): boolean {
  let depth = 0;
  for (const token of tokens) {
    const name = typeName(token);
    if (name === "{") depth++;
    else if (name === "}" && --depth < 0) return false;
  }
  return depth === 0;
}

interface OpenBlock {
  readonly brace: IToken;
  /** Column of the first token of the header's line. */
  readonly indent: number;
  readonly opener: string;
  readonly header: string;
}

interface Balance {
  readonly grammar: Recogniser;
  readonly tokens: readonly IToken[];
  readonly text: string;
  readonly path: string;
  /** Whether indentation shows what belongs where. */
  readonly indented: boolean;
  readonly out: IToken[];
  /** Where in `out` the line of the current token begins. */
  lineStart: number;
  /** Of the block that was closed last. */
  closedIndent: number;
  readonly open: OpenBlock[];
  readonly problems: SyntaxProblem[];
}

function run(state: Balance): BalancedTokens {
  let surplus = state.tokens.reduce((so, token) => so + closing(token), 0);
  state.tokens.forEach((token, at) => {
    const name = typeName(token);
    const mayGo = name === "}" && surplus > state.open.length;
    const tooMany = mayGo && endsTooEarly(state, at);
    surplus -= closing(token);
    if (mayGo && cannotGoOn(state, at)) drop(state, token);
    else if (name === "}") close(state, at, opensLine(state.tokens, at), tooMany);
    else {
      closeWhatEndsBefore(state, token, opensLine(state.tokens, at));
      if (opensLine(state.tokens, at)) state.lineStart = state.out.length;
      state.out.push(token);
      if (name === "{") push(state, token);
    }
  });
  while (state.open.length > 0) closeMissing(state);
  return { tokens: state.out, problems: state.problems };
}

function closing(token: IToken): number {
  const name = typeName(token);
  return name === "}" ? 1 : name === "{" ? -1 : 0;
}

/** Whether the next line stands deeper than the header of the block that this `}` would close, or closes that block itself. */
function endsTooEarly({ indented, open, tokens }: Balance, at: number): boolean {
  const top = open[open.length - 1];
  if (!indented || top === undefined || tokens[at + 1] === undefined) return false;
  // A source may stand behind the block on its line.
  let below = at + 1;
  if (typeName(tokens[below]) === "per") while (below < tokens.length && !opensLine(tokens, below)) below++;
  const next = tokens[below];
  if (next === undefined || !opensLine(tokens, below)) return false;
  const column = next.startColumn ?? 1;
  if (typeName(next) === "}") return column === top.indent && !opensLine(tokens, at);
  return typeName(next) !== "per" && column > top.indent;
}

/** Whether what stands behind this `}` on its line can neither follow a block nor begin a statement where that ends. */
function cannotGoOn({ grammar, indented, open, tokens }: Balance, at: number): boolean {
  const [top, next] = [open[open.length - 1], tokens[at + 1]];
  if (top === undefined || next === undefined || opensLine(tokens, at + 1)) return false;
  // At the beginning of a line its indent tells more.
  if (indented && opensLine(tokens, at)) return false;
  if (typeName(next) === "otherwise") return top.opener !== "when" && top.opener !== "otherwise";
  if (/^(?:\}|per)$/.test(typeName(next))) return false;
  if (typeName(next) === "in") return typeName(tokens[at + 2]) !== "any";
  return !grammar.canStart(STATEMENT_RULE[blockIn(open.slice(0, -1))], next.tokenType);
}

function push(state: Balance, brace: IToken): void {
  const at = state.out.length - 1;
  const first = state.out[state.lineStart];
  // A line that begins with `otherwise` lacks the `}` before it: the blocks it parts have one indent.
  const indent = (typeName(first) === "otherwise" ? state.closedIndent : first?.startColumn) ?? 1;
  state.open.push({ brace, indent, opener: openerOf(state.out, at), header: headerBefore(state, at) });
}

function headerBefore(state: Balance, at: number): string {
  let from = at;
  while (from > state.lineStart && !BRACES.has(typeName(state.out[from - 1]))) from--;
  const first = state.out[from];
  const brace = state.out[at] as IToken;
  return first === undefined ? "" : state.text.slice(first.startOffset, brace.startOffset).trim();
}

/**
 * The `}` at `at` of the tokens: closes a block, opens one that has no `{`, or is dropped.
 * @param tooMany whether the text holds a `}` too many, and what follows this one still stands in its block
 */
function close(state: Balance, at: number, opensItsLine: boolean, tooMany: boolean): void {
  const brace = state.tokens[at] as IToken;
  const top = state.open[state.open.length - 1];
  if (state.indented && opensItsLine) {
    const column = brace.startColumn ?? 1;
    if (tooMany && top !== undefined && column <= top.indent) {
      drop(state, brace);
      return;
    }
    const same = state.open.findLastIndex((block) => block.indent === column);
    while (same >= 0 && state.open.length - 1 > same) closeMissing(state);
    const stray = same < 0 && (top === undefined || top.indent < column);
    if (stray && !openBehindHeader(state, brace, column)) {
      drop(state, brace);
      return;
    }
  } else if (top === undefined || (state.indented && isOverfullLine(state, brace))) {
    if (!openOnLine(state, brace) && (top === undefined || tooMany)) {
      drop(state, brace);
      return;
    }
  } else if (tooMany && (typeName(state.out[state.lineStart]) === "}" || !isComplete(state, at))) {
    drop(state, brace);
    return;
  }
  state.open.pop();
  if (opensItsLine) state.lineStart = state.out.length;
  state.out.push(brace);
}

/** Whether the block that opens on this line ends here with something in it, and nothing behind it on the line. */
function isComplete(state: Balance, at: number): boolean {
  const top = state.open[state.open.length - 1];
  const isOnLine = top?.brace.startLine === state.tokens[at]?.startLine;
  return isOnLine && typeName(state.tokens[at - 1]) !== "{" && opensLine(state.tokens, at + 1);
}

/** Whether the line holds more `}` than `{` so far and does not begin with one. */
function isOverfullLine(state: Balance, brace: IToken): boolean {
  let depth = -1;
  for (let at = state.out.length - 1; at >= 0 && state.out[at]?.startLine === brace.startLine; at--) {
    const name = typeName(state.out[at]);
    depth += name === "{" ? 1 : name === "}" ? -1 : 0;
    if (opensLine(state.out, at)) return depth < 0 && name !== "}";
  }
  return false;
}

function closeWhatEndsBefore(state: Balance, token: IToken, opensItsLine: boolean): void {
  if (!opensItsLine) return;
  if (typeName(token) === "otherwise") {
    // Only the block of its `when` can have been left open here.
    const opened = state.open.findLastIndex((block) => block.opener === "when" || block.opener === "otherwise");
    while (opened >= 0 && state.open.length > opened) closeMissing(state);
    return;
  }
  for (let top = state.open[state.open.length - 1]; top !== undefined; top = state.open[state.open.length - 1]) {
    const ended = state.indented
      ? (token.startColumn ?? 1) <= top.indent && typeName(token) !== "{"
      : cannotStandIn(typeName(token), top.opener);
    if (!ended) return;
    closeMissing(state);
  }
}

function closeMissing(state: Balance): void {
  const block = state.open.pop() as OpenBlock;
  state.closedIndent = block.indent;
  const last = state.out[state.out.length - 1] as IToken;
  const close = missingAfter(state.grammar.type("}"), last);
  state.out.push(close);
  if (state.problems.length >= MOST_TOLD) return;
  state.problems.push({
    kind: "unclosed",
    what: "block",
    header: block.header,
    span: span(state, block.brace),
    closeAt: { path: state.path, start: close.startOffset, end: close.startOffset },
  });
}

/** The header of a block of several lines stands on the last line of the same indent that opens none. */
function openBehindHeader(state: Balance, brace: IToken, column: number): boolean {
  if (state.problems.length >= MOST_TOLD) return false;
  const floor =
    state.open.length === 0 ? -1 : state.out.lastIndexOf((state.open[state.open.length - 1] as OpenBlock).brace);
  for (let at = state.out.length - 1; at > floor; at--) {
    if (!opensLine(state.out, at) || state.out[at]?.startColumn !== column) continue;
    let last = at;
    while (last + 1 < state.out.length && !opensLine(state.out, last + 1)) last++;
    if (BRACES.has(typeName(state.out[last])) || last === state.out.length - 1) return false;
    insertOpening(state, last + 1);
    return true;
  }
  return openOnLine(state, brace);
}

/** The header of a block of one line ends where what follows reads as the block's first line. */
function openOnLine(state: Balance, brace: IToken): boolean {
  if (state.problems.length >= MOST_TOLD) return false;
  let start = state.out.length;
  while (
    start > 0 &&
    state.out[start - 1]?.startLine === brace.startLine &&
    !BRACES.has(typeName(state.out[start - 1]))
  )
    start--;
  const block = blockHere(state);
  for (let at = state.out.length - 1; at > start; at--) {
    if (!readsAsBlock(state, block, start, at, brace)) continue;
    insertOpening(state, at);
    return true;
  }
  return false;
}

/** Whether what stands from `start` reads as a header up to `at` and as the lines of its block from there to the `}`. */
function readsAsBlock(state: Balance, block: Block, start: number, at: number, close: IToken): boolean {
  const grammar = state.grammar;
  const open = missingBefore(grammar.type("{"), close);
  const header = state.out.slice(start, at);
  const lines = state.out.slice(at);
  const rule = STATEMENT_RULE[block];
  if (isInlineBlock([...header, open], header.length)) {
    const whole = [...header, open, ...lines, close];
    return grammar.fit(rule, whole, 0).end === whole.length;
  }
  const empty = [...header, open, close];
  const inner = STATEMENT_RULE[blockOpened(empty, 0, header.length, block)];
  if (!grammar.canStart(inner, (lines[0] as IToken).tokenType)) return false;
  return grammar.fit(rule, empty, 0).end === empty.length && readsAsLines(grammar, inner, lines);
}

function readsAsLines(grammar: Recogniser, rule: string, lines: readonly IToken[]): boolean {
  for (let at = 0; at < lines.length; ) {
    const { end } = grammar.fit(rule, lines, at);
    if (end <= at) return false;
    at = end;
  }
  return true;
}

function blockHere(state: Balance): Block {
  return blockIn(state.open);
}

function blockIn(open: readonly OpenBlock[]): Block {
  // What a `when` or `repeat` holds is what the block round it holds.
  const round = open.findLast((block) => !/^(?:when|otherwise|repeat|in any order)$/.test(block.opener));
  switch (round?.opener) {
    case undefined:
      return "file";
    case "procedure":
    case "crib":
      return round.opener;
    case "step":
    case "check":
      return "step";
    default:
      return "flow";
  }
}

function insertOpening(state: Balance, at: number): void {
  const before = state.out[at - 1] as IToken;
  const brace = missingAfter(state.grammar.type("{"), before);
  state.out.splice(at, 0, brace);
  if (at <= state.lineStart) state.lineStart++;
  const opened = state.out.slice(0, at + 1);
  state.open.push({ brace, indent: before.startColumn ?? 1, opener: openerOf(opened, at), header: "" });
  state.problems.push({
    kind: "unexpected",
    span: span(state, before),
    found: before.image,
    expected: ["{"],
    within: openerOf(opened, at),
    after: "",
    slip: { name: "brace missing", mended: `${before.image} {` },
  });
}

function drop(state: Balance, brace: IToken): void {
  if (state.problems.length >= MOST_TOLD) return;
  state.problems.push({
    kind: "unexpected",
    span: span(state, brace),
    found: "}",
    expected: [],
    within: "",
    after: "",
    slip: { name: "brace too many", mended: "" },
  });
}

function span(state: Balance, token: IToken) {
  return { path: state.path, start: token.startOffset, end: endOf(token) };
}

const BRACES = new Set(["{", "}"]);

/** Whether lines inside blocks stand deeper than their headers, by and large. */
function isIndented(tokens: readonly IToken[]): boolean {
  let deeper = 0;
  let all = 0;
  let indent = 1;
  tokens.forEach((token, at) => {
    const first = opensLine(tokens, at);
    if (first && at > 0 && typeName(tokens[at - 1]) === "{" && typeName(token) !== "}") {
      all++;
      if ((token.startColumn ?? 1) > indent) deeper++;
    }
    if (first) indent = token.startColumn ?? 1;
  });
  return deeper >= 0.8 * all;
}

/** Without indentation: words that show that the block before them must have ended. */
function cannotStandIn(word: string, opener: string): boolean {
  if (word === "procedure" || word === "use") return opener !== "";
  if (word === "task") return opener === "step" || opener === "check" || isDeclared(opener);
  if (word === "step") return opener === "step" || opener === "check" || isDeclared(opener);
  if (DECLARING.has(word)) return isDeclared(opener) && opener !== "crib";
  return false;
}

function isDeclared(opener: string): boolean {
  return DECLARING.has(opener) || opener === "option" || opener === "choose";
}

const DECLARING = new Set([
  "part",
  "ring",
  "holes",
  "fit",
  "tool",
  "consumable",
  "energy",
  "arrangement",
  "crib",
  "temporary",
  "role",
  "source",
]);
