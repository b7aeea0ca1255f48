// Reads a text that the parser could not: statement by statement and block by block, so that a mistake costs no more than
// the statement it stands in. Gives the parser tokens it can read; what cannot be read becomes one `DAMAGED` token.
import type { IToken } from "chevrotain";
import { type Damage, damageFrom } from "./damage.ts";
import { mendLineEnd, mendStatement } from "./mend.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Fit, Recogniser } from "./recognise.ts";
import { type Misfit, problemOf } from "./slip.ts";
import {
  type Block,
  beginsStatement,
  blockOpened,
  isInlineBlock,
  isWord,
  opensLine,
  STATEMENT_RULE,
  startsAction,
  typeName,
} from "./statements.ts";
import { lineEnd, lineStart } from "./text-line.ts";
import { asOneToken, endOf } from "./virtual-token.ts";

export interface Recovered {
  readonly tokens: readonly IToken[];
  readonly problems: readonly SyntaxProblem[];
  readonly damage: readonly Damage[];
}

export interface Source {
  readonly grammar: Recogniser;
  readonly text: string;
  readonly path: string;
  /** Places that have their problem already; a statement that holds one gets no second. */
  readonly told: readonly number[];
}

/** Deeper blocks than this are damage: the parser calls itself for each. */
const DEEPEST = 60;

/** @param tokens with balanced braces */
export function recover(source: Source, tokens: readonly IToken[]): Recovered {
  const reading: Reading = { ...source, out: [], problems: [], damage: [] };
  readBlock(reading, "file", tokens, 0);
  return { tokens: reading.out, problems: reading.problems, damage: reading.damage };
}

interface Reading extends Source {
  readonly out: IToken[];
  readonly problems: SyntaxProblem[];
  readonly damage: Damage[];
}

/** The statements of one block, the insides of their blocks left out: `{` stands beside its `}`. */
interface Flat {
  readonly block: Block;
  readonly depth: number;
  readonly tokens: IToken[];
  /** What stands inside, by the `{`. */
  readonly inside: ReadonlyMap<IToken, readonly IToken[]>;
}

function readBlock(reading: Reading, block: Block, tokens: readonly IToken[], depth: number): void {
  const flat = flatten(block, tokens, depth);
  let at = 0;
  while (at < flat.tokens.length) at = readStatement(reading, flat, at);
}

/** Reads one statement, damaged or not; returns where the next begins. */
function readStatement(reading: Reading, flat: Flat, start: number): number {
  const { grammar } = reading;
  const rule = STATEMENT_RULE[flat.block];
  const fit = grammar.fit(rule, flat.tokens, start);
  if (fit.end > start && standsAlone(reading, flat, start, fit)) return take(reading, flat, start, fit.end);
  // A complete statement is not to blame for what follows on the next line.
  const complete = fit.end > start;
  if (complete && fit.furthest === fit.end && opensLine(flat.tokens, fit.end) && !goesOn(reading, flat, start, fit)) {
    return take(reading, flat, start, fit.end);
  }
  const mended = mendStatement(reading, flat, start, fit);
  if (mended !== null) {
    const { lostHeader } = mended;
    if (lostHeader !== undefined) reading.damage.push(damageFrom(reading.path, flat.block, lostHeader));
    flat.tokens.splice(start, mended.end - start, ...mended.tokens);
    tell(reading, mended.problem, flat.tokens, start, start + mended.tokens.length, flat.inside);
    return take(reading, flat, start, start + mended.tokens.length);
  }
  const line = splitAtLine(reading, flat, start, fit);
  if (line !== null) return line;
  // Nor is one that ends in a block.
  if (!complete || typeName(flat.tokens[fit.end - 1]) !== "}") return damageStatement(reading, flat, start, fit);
  take(reading, flat, start, fit.end);
  return fit.furthest > fit.end ? damageStatement(reading, flat, fit.end, fit) : fit.end;
}

/** Whether what follows a complete statement is a statement too, or nothing. */
function standsAlone(reading: Reading, flat: Flat, start: number, fit: Fit): boolean {
  const { grammar } = reading;
  const next = flat.tokens[fit.end];
  if (next === undefined) return true;
  // A pattern of tightening behind its place, not what may come in any order.
  if (typeName(next) === "in" && typeName(flat.tokens[fit.end + 1]) !== "any" && !opensLine(flat.tokens, fit.end))
    return false;
  const rule = STATEMENT_RULE[flat.block];
  if (grammar.canStart(rule, next.tokenType)) {
    if (fit.furthest === fit.end || opensLine(flat.tokens, fit.end)) return true;
    return grammar.fit(rule, flat.tokens, fit.end).end > fit.end;
  }
  // A second action behind a one-line step gets its own `step`.
  return (
    isFlow(flat.block) &&
    typeName(flat.tokens[start]) === "step" &&
    startsAction(grammar, next) &&
    fit.furthest === fit.end
  );
}

/**
 * A keyword at the start of a line may have been swallowed as a name by the statement before, which then stops in that
 * line. Reads or damages only what stands before the line; null where the line is no statement of its own.
 */
function splitAtLine(reading: Reading, flat: Flat, start: number, fit: Fit): number | null {
  const { tokens, block } = flat;
  let line = Math.max(fit.furthest, start);
  while (line > start && !opensLine(tokens, line)) line--;
  const rule = STATEMENT_RULE[block];
  const first = tokens[line];
  if (line === start || first === undefined || !reading.grammar.canStart(rule, first.tokenType)) return null;
  if (!beginsStatement(reading.grammar, block, tokens, start, line)) return null;
  const before = tokens.slice(start, line);
  const fitBefore = reading.grammar.fit(rule, before, 0);
  if (fitBefore.end === before.length) return take(reading, flat, start, line);
  if (reading.grammar.fit(rule, tokens, line).end <= line || fitBefore.furthest < before.length) return null;
  const misfit: Misfit = { block, tokens, start, at: line, end: line, expected: fitBefore.expected, slip: null };
  tell(reading, problemOf(reading, misfit), tokens, start, line);
  putDamage(reading, flat, start, line);
  return line;
}

/** Whether the next line goes on with this statement, but for a word or a comma that was left out. */
function goesOn(reading: Reading, flat: Flat, start: number, fit: Fit): boolean {
  return mendLineEnd(reading, flat, start, fit) !== null;
}

/* ---- statements that can be read ---- */

function take(reading: Reading, flat: Flat, start: number, end: number): number {
  for (let at = start; at < end; at++) {
    const token = flat.tokens[at] as IToken;
    reading.out.push(token);
    const inside = flat.inside.get(token);
    if (inside !== undefined) readInside(reading, flat, blockOpened(flat.tokens, start, at, flat.block), inside);
  }
  return end;
}

function readInside(reading: Reading, flat: Flat, block: Block, inside: readonly IToken[]): void {
  if (inside.length === 0) return;
  if (flat.depth < DEEPEST) {
    readBlock(reading, block, inside, flat.depth + 1);
    return;
  }
  const deep: Flat = { block, depth: flat.depth + 1, tokens: [...inside], inside: new Map() };
  tell(
    reading,
    problemOf(reading, {
      block,
      tokens: inside,
      start: 0,
      at: 0,
      end: 1,
      expected: [],
      slip: { name: "too deep", mended: null },
    }),
    inside,
    0,
    1,
  );
  putDamage(reading, deep, 0, inside.length);
}

/* ---- statements that cannot ---- */

function damageStatement(reading: Reading, flat: Flat, start: number, fit: Fit): number {
  const { tokens } = flat;
  const wrong = Math.max(fit.furthest, start);
  const header = keptHeader(reading, flat, start, wrong);
  const end = header ?? damageEnd(reading, flat, start, wrong);
  const misfit: Misfit = {
    block: flat.block,
    tokens,
    start,
    at: Math.min(wrong, end),
    end,
    expected: fit.expected,
    slip: null,
  };
  tell(reading, problemOf(reading, misfit), tokens, start, end);
  if (header === null) {
    putDamage(reading, flat, start, end);
    return end;
  }
  return takeUnderDamage(reading, flat, start, header);
}

/** Where a damaged header ends whose block is worth keeping: at its `{`; null where there is none. */
function keptHeader(reading: Reading, flat: Flat, start: number, wrong: number): number | null {
  if (!isFlow(flat.block) && flat.block !== "file") return null;
  for (let at = start; at < flat.tokens.length; at++) {
    const token = flat.tokens[at] as IToken;
    const inside = flat.inside.get(token);
    if (inside !== undefined)
      return at > start && at >= wrong && holdsFlow(reading, flat, start, at, inside) ? at : null;
    if (at > start && beginsStatement(reading.grammar, flat.block, flat.tokens, start, at)) return null;
  }
  return null;
}

function holdsFlow(reading: Reading, flat: Flat, start: number, at: number, inside: readonly IToken[]): boolean {
  if (isDeclaring(reading, flat.tokens[start])) return false;
  const first = inside[0];
  if (first === undefined) return false;
  if (
    flat.block !== "file" &&
    typeName(flat.tokens[start]) !== "step" &&
    blockOpened(flat.tokens, start, at, flat.block) === "flow"
  ) {
    return reading.grammar.canStart("FlowItem", first.tokenType);
  }
  return inside.some((token) => typeName(token) === "step" || typeName(token) === "task");
}

function isDeclaring(reading: Reading, token: IToken | undefined): boolean {
  return token !== undefined && reading.grammar.canStart("Declaration", token.tokenType);
}

/** Puts the header out as damage and keeps the block, and those that follow it with `otherwise`. */
function takeUnderDamage(reading: Reading, flat: Flat, start: number, brace: number): number {
  putDamage(reading, flat, start, brace);
  const token = flat.tokens[brace] as IToken;
  const close = flat.tokens[brace + 1] as IToken;
  reading.out.push(token);
  readInside(reading, flat, flat.block === "file" ? "procedure" : "flow", flat.inside.get(token) ?? []);
  reading.out.push(close);
  const next = brace + 2;
  if (typeName(flat.tokens[next]) !== "otherwise") return next;
  const following = flat.tokens.findIndex((each, at) => at > next && flat.inside.has(each));
  return following < 0 ? next : takeUnderDamage(reading, flat, next, following);
}

/** The damage ends where the next statement begins, or behind its block. */
function damageEnd(reading: Reading, flat: Flat, start: number, wrong: number): number {
  const { tokens } = flat;
  for (let at = start; at < tokens.length; at++) {
    if (at >= wrong && at > start && beginsStatement(reading.grammar, flat.block, tokens, start, at)) return at;
    if (typeName(tokens[at]) !== "{") continue;
    at = matching(tokens, at);
    if (at >= wrong && typeName(tokens[at + 1]) !== "otherwise") return behindCitation(flat, at + 1);
  }
  return tokens.length;
}

/** A declaration's source stands behind its block and goes with it. */
function behindCitation(flat: Flat, at: number): number {
  const { tokens } = flat;
  if (flat.block === "flow" || typeName(tokens[at]) !== "per" || opensLine(tokens, at)) return at;
  let end = at + 1;
  if (isWord(tokens[end])) end++;
  return typeName(tokens[end]) === "STRING" && !opensLine(tokens, end) ? end + 1 : end;
}

function putDamage(reading: Reading, flat: Flat, start: number, end: number): void {
  const whole = flat.tokens.slice(start, end).flatMap((token) => [token, ...(flat.inside.get(token) ?? [])]);
  const first = whole[0] as IToken;
  const last = whole[whole.length - 1] as IToken;
  reading.out.push(asOneToken(reading.grammar.type("DAMAGED"), reading.text, first, last));
  reading.damage.push(damageFrom(reading.path, flat.block, whole));
}

/** @param inside what stands in its blocks, where that is read for itself: what was told of that is not told of the statement */
function tell(
  reading: Reading,
  problem: SyntaxProblem,
  tokens: readonly IToken[],
  start: number,
  end: number,
  inside: Flat["inside"] = new Map(),
): void {
  // Characters that mean nothing are no tokens: those beside the statement on its lines belong to it too.
  const first = (tokens[start] as IToken).startOffset;
  const last = endOf(tokens[end - 1] as IToken);
  const before = tokens[start - 1];
  const after = tokens[end];
  const from = Math.max(before === undefined ? 0 : endOf(before), lineStart(reading.text, first));
  const to = Math.min(after === undefined ? reading.text.length : after.startOffset, lineEnd(reading.text, last));
  const blocks: (readonly [from: number, to: number])[] = [];
  for (let at = start; at < end; at++) {
    const open = tokens[at] as IToken;
    if (inside.has(open)) blocks.push([open.startOffset, (tokens[at + 1] ?? open).startOffset]);
  }
  const isOwn = (offset: number): boolean => blocks.every(([open, close]) => offset <= open || offset >= close);
  if (!reading.told.some((offset) => offset >= from && offset <= Math.max(last, to) && isOwn(offset)))
    reading.problems.push(problem);
}

/* ---- blocks laid flat ---- */

function flatten(block: Block, tokens: readonly IToken[], depth: number): Flat {
  const flat: IToken[] = [];
  const inside = new Map<IToken, readonly IToken[]>();
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    flat.push(token);
    if (typeName(token) !== "{") continue;
    const close = matching(tokens, at);
    if (isInlineBlock(flat, flat.length - 1)) for (let i = at + 1; i < close; i++) flat.push(tokens[i] as IToken);
    else inside.set(token, tokens.slice(at + 1, close));
    flat.push(tokens[close] as IToken);
    at = close;
  }
  return { block, depth, tokens: flat, inside };
}

function matching(tokens: readonly IToken[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    const name = typeName(tokens[at]);
    depth += name === "{" ? 1 : name === "}" ? -1 : 0;
    if (depth === 0) return at;
  }
  return tokens.length - 1;
}

function isFlow(block: Block): boolean {
  return block === "flow" || block === "procedure";
}
