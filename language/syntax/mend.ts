// Mistakes that leave no doubt of what was meant: the statement is read as meant, and only the mistake is told.
import type { IToken } from "chevrotain";
import { ENERGY_STATES, PART_STATES } from "./built-in-states.ts";
import { editDistance } from "./edit-distance.ts";
import { wordFor } from "./other-words.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Fit, Recogniser } from "./recognise.ts";
import { isLineOfStep, problemOf } from "./slip.ts";
import { standsTwice } from "./slip-names.ts";
import { type Block, isKeyword, openerOf, opensLine, STATEMENT_RULE, startsAction, typeName } from "./statements.ts";
import { endOf, isMissing, missingAfter, missingBefore, readAs } from "./virtual-token.ts";

/** The tokens to read in place of those from `start` to `end`. */
export interface Mended {
  readonly tokens: readonly IToken[];
  readonly end: number;
  readonly problem: SyntaxProblem;
  /** A header of which only the keyword was read. */
  readonly lostHeader?: readonly IToken[];
}

interface Place {
  readonly grammar: Recogniser;
  readonly path: string;
  readonly text: string;
  readonly block: Block;
  readonly tokens: readonly IToken[];
  readonly start: number;
  /** What stands in the blocks, by their `{`. */
  readonly inside: ReadonlyMap<IToken, readonly IToken[]>;
  readonly fit: Fit;
  /** Where the reading stopped. */
  readonly at: number;
}

/** @param fit how far the statement could be read */
export function mendStatement(
  source: Pick<Place, "grammar" | "path" | "text">,
  flat: Pick<Place, "block" | "tokens" | "inside">,
  start: number,
  fit: Fit,
): Mended | null {
  const place = placeOf(source, flat, start, fit);
  return (
    closeBracket(place) ??
    dropTwice(place) ??
    readAsName(place) ??
    readAsRange(place) ??
    endUse(place) ??
    addLink(place) ??
    addOtherwise(place) ??
    dropPattern(place) ??
    readAsKeyword(place) ??
    addOpener(place) ??
    mendAnyOrder(place) ??
    mendHeader(place)
  );
}

/** The same for a complete statement whose next line may belong to it. */
export function mendLineEnd(
  source: Pick<Place, "grammar" | "path" | "text">,
  flat: Pick<Place, "block" | "tokens" | "inside">,
  start: number,
  fit: Fit,
): Mended | null {
  return addLink(placeOf(source, flat, start, fit));
}

function placeOf(
  { grammar, path, text }: Pick<Place, "grammar" | "path" | "text">,
  { block, tokens, inside }: Pick<Place, "block" | "tokens" | "inside">,
  start: number,
  fit: Fit,
): Place {
  return { grammar, path, text, block, tokens, inside, start, fit, at: Math.max(fit.furthest, start) };
}

/** Reads the statement with some tokens put in place of `drop` tokens at `at`; the result, where it is complete then. */
function attempt(
  place: Place,
  at: number,
  drop: number,
  put: readonly IToken[],
): Pick<Mended, "tokens" | "end"> | null {
  const { grammar, block, tokens, start } = place;
  // A statement is short; its neighbours only matter for what may follow it.
  const window = [...tokens.slice(start, at), ...put, ...tokens.slice(at + drop, at + drop + WINDOW)];
  const fit = grammar.fit(STATEMENT_RULE[block], window, 0);
  const next = window[fit.end];
  if (fit.end < at - start + put.length) return null;
  const follows =
    next === undefined || grammar.canStart(STATEMENT_RULE[block], next.tokenType) || opensLine(window, fit.end);
  if (!follows) return null;
  return { tokens: window.slice(0, fit.end), end: start + fit.end - put.length + drop };
}

const WINDOW = 200;

/* ---- brackets ---- */

function closeBracket(place: Place): Mended | null {
  const { fit, grammar, tokens, start, at, path } = place;
  const close = fit.expected.includes("]") ? "]" : fit.expected.includes(")") ? ")" : null;
  if (close === null || at <= start) return null;
  const opening = unmatched(tokens, start, at, close === "]" ? "[" : "(", close);
  if (opening === null) return null;
  const before = tokens[at - 1] as IToken;
  const put = missingAfter(grammar.type(close), before);
  const read = attempt(place, at, 0, [put]);
  if (read === null) return null;
  const problem: SyntaxProblem = {
    kind: "unclosed",
    what: close === "]" ? "bracket" : "parenthesis",
    header: place.text.slice((tokens[start] as IToken).startOffset, endOf(before)),
    span: { path, start: opening.startOffset, end: endOf(opening) },
    closeAt: { path, start: endOf(before), end: endOf(before) },
  };
  return { ...read, problem };
}

function unmatched(tokens: readonly IToken[], start: number, at: number, open: string, close: string): IToken | null {
  let depth = 0;
  for (let i = at - 1; i >= start; i--) {
    const name = typeName(tokens[i]);
    if (name === close) depth++;
    else if (name === open && depth-- === 0) return tokens[i] as IToken;
  }
  return null;
}

/* ---- words ---- */

/** A word, number or text that stands twice: read as if it stood once. */
function dropTwice(place: Place): Mended | null {
  const { tokens, start, at } = place;
  for (const again of [at, at - 1, start + 1]) {
    if (again <= start || !standsTwice(tokens, again)) continue;
    // `step step { … }` may be a step of that name.
    if (again === start + 1 && /^(?:\{|STRING)$/.test(typeName(tokens[again + 1]))) continue;
    const read = attempt(place, again, 1, []);
    if (read !== null && read.end > at) return { ...read, problem: told(place, again, "word twice", "") };
  }
  return null;
}

/** A keyword where only a name can stand is meant as a name. */
function readAsName(place: Place): Mended | null {
  const { fit, grammar, tokens, at, start, path } = place;
  const token = tokens[at];
  if (token === undefined || at === start || !isKeyword(token) || opensLine(tokens, at)) return null;
  if (!fit.expected.includes("name")) return null;
  // `step check "No leak"` is no step of that name.
  if (typeName(tokens[start]) === "step" && at === start + 1 && isLineOfStep(grammar, tokens, at)) return null;
  const read = attempt(place, at, 1, [readAs(grammar.type("ID"), token)]);
  if (read === null) return null;
  const word = token.image;
  const suggestion = word.charAt(0).toUpperCase() + word.slice(1);
  const begins = Object.values(STATEMENT_RULE).some((rule) => grammar.canStart(rule, token.tokenType));
  return { ...read, problem: { kind: "reserved word", span: spanOf(path, token), word, begins, suggestion } };
}

/** A word that is nearly a keyword, where that keyword fits. */
function readAsKeyword(place: Place): Mended | null {
  const { grammar, tokens, start, at } = place;
  for (const wrong of [at, at - 1]) {
    const token = tokens[wrong];
    if (wrong < start || token === undefined) continue;
    const called = wordFor(token.image);
    if (typeName(token) !== "ID" && called === null) continue;
    for (const word of [...(called === null ? [] : [called]), ...nearestWords(grammar, token.image)]) {
      const read = attempt(place, wrong, 1, [readAs(grammar.type(word), token, word)]);
      // Only where the mended word takes the reading past the place where it stopped.
      if (read === null || read.end <= at) continue;
      return { ...read, problem: told(place, wrong, word === called ? "other word" : "misspelt", word) };
    }
  }
  return null;
}

/** `38 to 42 N·m`, `Screw[1 to 4]` */
function readAsRange(place: Place): Mended | null {
  const { fit, grammar, tokens, at } = place;
  const token = tokens[at];
  if (token === undefined || !/^(?:to|through|thru)$/.test(token.image) || opensLine(tokens, at)) return null;
  if (!/^(?:NUMBER|UNIT)$/.test(typeName(tokens[at - 1])) || !/^(?:NUMBER|-|−)$/.test(typeName(tokens[at + 1])))
    return null;
  // `..` is expected wherever a number can go on, and told nowhere.
  const read = attempt(place, at, 1, [readAs(grammar.type(".."), token, "..")]);
  return read === null || read.end <= at || fit.expected.includes("to")
    ? null
    : { ...read, problem: told(place, at, "range in words", "..") };
}

function nearestWords(grammar: Recogniser, image: string): string[] {
  const written = image.toLowerCase();
  const most = written.length < 3 ? 0 : written.length <= 5 ? 1 : 2;
  return grammar.words
    .map((word) => ({
      word,
      distance: Math.abs(word.length - written.length) > most ? 99 : editDistance(word, written),
    }))
    .filter(({ word, distance }) => distance <= most && word.length > 1 && isLikelier(written, word))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 4)
    .map(({ word }) => word);
}

/** Of three letters too many words are near: only those with one letter more, or the same letters. */
function isLikelier(written: string, word: string): boolean {
  const letters = (text: string) => [...text].sort().join("");
  return written.length > 3 || word.length > written.length || letters(word) === letters(written);
}

/** `use "a.sprag", "b.sprag"`: each has a line of its own; what else stands behind a path is left out. */
function endUse(place: Place): Mended | null {
  const { grammar, tokens, start, at } = place;
  if (typeName(tokens[start]) !== "use" || at !== start + 2 || tokens[at] === undefined || opensLine(tokens, at))
    return null;
  let end = at + 1;
  while (end < tokens.length && !opensLine(tokens, end)) end++;
  const paths = tokens.slice(at, end).filter((token) => typeName(token) === "STRING");
  const more = paths.flatMap((path) => [missingBefore(grammar.type("use"), path), path]);
  return { tokens: [...tokens.slice(start, at), ...more], end, problem: told(place, at, "more than a path", null) };
}

/* ---- words left out in the middle ---- */

/** `avoid` or `wear` before a text, a comma between conditions: what is meant is plain, also on the next line. */
function addLink(place: Place): Mended | null {
  const { grammar, fit, tokens, start, at } = place;
  const token = tokens[at];
  if (token === undefined || at === start || standsTwice(tokens, at)) return null;
  const link = linksBefore(token, typeName(tokens[start])).find((each) => fit.expected.includes(each));
  if (link === undefined) return null;
  if (link === "," && startsOwnLine(place)) return null;
  const read = attempt(place, at, 0, [missingBefore(grammar.type(link), token)]);
  if (read === null || read.end <= at || (link === "," && !endsLine(tokens, read.end))) return null;
  const slip = link === "," ? "comma missing" : "word missing";
  return { ...read, problem: told(place, at, slip, link === "," ? `, ${token.image}` : `${link} ${token.image}`) };
}

function linksBefore(token: IToken, opener: string): readonly string[] {
  if (typeName(token) === "STRING") return ["avoid", "wear"];
  if (!LISTS_CONDITIONS.has(opener)) return [];
  return [...PART_STATES, ...ENERGY_STATES].includes(token.image) ? ["is"] : [","];
}

/** Whether the line of the place begins with the keyword of another statement, taken for a name. */
function startsOwnLine({ grammar, block, tokens, start, at }: Place): boolean {
  let line = at;
  while (line > start && !opensLine(tokens, line)) line--;
  return line > start && grammar.canStart(STATEMENT_RULE[block], (tokens[line] as IToken).tokenType);
}

function endsLine(tokens: readonly IToken[], end: number): boolean {
  return tokens[end] === undefined || opensLine(tokens, end);
}

const LISTS_CONDITIONS = new Set(["begin", "finish", "needs", "gives"]);

/** `in cross pattern` behind the stages: without it the line can be read. */
function dropPattern(place: Place): Mended | null {
  const { tokens, start, at } = place;
  const verb = tokens.slice(start, start + 2).some((token) => /^(?:tighten|loosen)$/.test(typeName(token)));
  if (!verb || typeName(tokens[at]) !== "in") return null;
  const length = typeName(tokens[at + 1]) === "order" ? 2 : 3;
  if (!/^(?:order|pattern)$/.test(typeName(tokens[at + length - 1]))) return null;
  const read = attempt(place, at, length, []);
  return read === null
    ? null
    : { ...read, problem: problemOf(place, { ...place, end: at + length, expected: place.fit.expected, slip: null }) };
}

/* ---- words left out in front ---- */

/** An action or a header whose opening keyword is missing. */
function addOpener(place: Place): Mended | null {
  const { grammar, block, tokens, start, at } = place;
  const first = tokens[start];
  if (first === undefined || at !== start) return null;
  const name = typeName(first);
  if (block === "file" && name === "STRING" && /\.sprag"$/.test(first.image))
    return opened(place, "use", "word missing");
  const flow = block === "flow" || block === "procedure";
  if (flow && startsAction(grammar, first)) return opened(place, "step", "step missing");
  if ((block !== "file" && !flow) || !NAMING.has(name)) return null;
  const brace = tokens[headerEnd(tokens, start)];
  const held = (brace === undefined ? undefined : place.inside.get(brace)) ?? [];
  if (held.some((token) => typeName(token) === "step" || typeName(token) === "task")) {
    return opened(place, block === "file" ? "procedure" : "task", "keyword missing");
  }
  const lines = held[0] !== undefined && grammar.canStart("StepLine", held[0].tokenType);
  return flow && (lines || name === "STRING") ? opened(place, "step", "keyword missing") : null;
}

/** What the header of a step or task holds beside its keyword. */
const NAMING = new Set(["ID", "STRING", "{"]);

function opened(place: Place, word: string, slip: string): Mended | null {
  const { grammar, tokens, start } = place;
  const read = attempt(place, start, 0, [missingBefore(grammar.type(word), tokens[start] as IToken)]);
  return read === null ? null : { ...read, problem: told(place, start, slip, `${word} ${tokens[start]?.image ?? ""}`) };
}

function headerEnd(tokens: readonly IToken[], start: number): number {
  let at = start;
  while (at < start + 4 && typeName(tokens[at]) !== "{") at++;
  return at;
}

/** A second block behind a `when`. */
function addOtherwise(place: Place): Mended | null {
  const { grammar, tokens, start, at } = place;
  const brace = tokens[start];
  if (at !== start || brace === undefined || typeName(tokens[start - 1]) !== "}") return null;
  if (!/^(?:when|otherwise)$/.test(openerOf(tokens, start - 2))) return null;
  if (ELSE.has(brace.image) && typeName(tokens[start + 1]) === "{") {
    const read = [readAs(grammar.type("otherwise"), brace, "otherwise"), ...tokens.slice(start + 1, start + 3)];
    return { tokens: read, end: start + 3, problem: told(place, start, "other word", "otherwise") };
  }
  if (typeName(brace) !== "{") return null;
  const close = tokens[start + 1] as IToken;
  const put = missingBefore(grammar.type("otherwise"), brace);
  return {
    tokens: [put, brace, close],
    end: start + 2,
    problem: told(place, start, "otherwise missing", "otherwise {"),
  };
}

const ELSE = new Set(["else", "Else", "ELSE"]);

/** `in any order` with one of its words left out. */
function mendAnyOrder(place: Place): Mended | null {
  const { grammar, tokens, start, at } = place;
  const brace = headerEnd(tokens, start);
  const words = tokens.slice(start, brace).map(typeName);
  if (words.length !== 2 || !ANY_ORDER.filter((word) => words.includes(word)).every((word, i) => words[i] === word))
    return null;
  const missing = ANY_ORDER.findIndex((word) => !words.includes(word));
  const word = ANY_ORDER[missing] as string;
  const next = tokens[start + missing];
  if (next === undefined) return null;
  const read = attempt(place, start + missing, 0, [missingBefore(grammar.type(word), next)]);
  return read === null ? null : { ...read, problem: told(place, Math.max(at, start), "word missing", "in any order") };
}

const ANY_ORDER = ["in", "any", "order"];

/** A task, step or procedure with something odd in its header: its block and its title are read, its name is not. */
function mendHeader(place: Place): Mended | null {
  const { grammar, tokens, start, at } = place;
  const opener = typeName(tokens[start]);
  if (!Object.hasOwn(HELD_BY, opener)) return null;
  let brace = start + 1;
  while (typeName(tokens[brace]) !== "{" && tokens[brace] !== undefined && !opensLine(tokens, brace)) brace++;
  const held = place.inside.get(tokens[brace] as IToken);
  if (held === undefined || at > brace || !startsLine(grammar, HELD_BY[opener] as string, held[0])) return null;
  const title = tokens.slice(start + 1, brace).filter((token) => typeName(token) === "STRING");
  const kept = title.length === 1 ? title : [];
  const named = opener === "procedure" ? [missingBefore(grammar.type("ID"), kept[0] ?? (tokens[brace] as IToken))] : [];
  const read = attempt(place, start + 1, brace - start - 1, [...named, ...kept]);
  if (read === null) return null;
  const problem = problemOf(place, { ...place, at, end: brace, expected: place.fit.expected, slip: null });
  return { ...read, problem, lostHeader: tokens.slice(start, brace) };
}

const HELD_BY: Readonly<Record<string, string>> = { task: "FlowItem", step: "StepLine", procedure: "ProcedureItem" };

function startsLine(grammar: Recogniser, rule: string, token: IToken | undefined): boolean {
  return token === undefined || grammar.canStart(rule, token.tokenType);
}

/* ---- telling ---- */

function told(place: Place, at: number, name: string, mended: string | null): SyntaxProblem {
  return problemOf(place, { ...place, at, end: at + 1, expected: place.fit.expected, slip: { name, mended } });
}

function spanOf(path: string, token: IToken) {
  return { path, start: token.startOffset, end: isMissing(token) ? token.startOffset : endOf(token) };
}
