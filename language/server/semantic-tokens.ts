// What each word is, for colours: standard token types, which every editor knows, and modifiers that say which sort of thing a
// name stands for. One pass over the tokens of the tree.
import { type AstNode, type CstNode, GrammarAST, type LeafCstNode } from "langium";
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import type { Range } from "#syntax/lines.ts";
import { meantAt } from "#syntax/scope.ts";
import { typeName } from "#syntax/statements.ts";
import type { Feature } from "./feature.ts";
import { indexMeaning } from "./name-meaning.ts";
import { tokensOf } from "./tree-at.ts";
import { type FileView, offsetOf } from "./view.ts";

/** In the order of their numbers. Verbs are methods, procedures functions, steps and tasks labels. */
export const TOKEN_TYPES = [
  ...(["keyword", "method", "variable", "class", "type", "enum", "enumMember", "event", "namespace"] as const),
  ...(["function", "property", "parameter", "label", "string", "number", "operator", "comment"] as const),
] as const;
/** In the order of their bits. */
export const TOKEN_MODIFIERS = [
  ...(["declaration", "unknown", "safety", "unit", "part", "fastener", "place", "tool", "consumable"] as const),
  ...(["energy", "option", "choice", "state", "hazard", "role", "source", "material", "value", "fact"] as const),
] as const;

type TokenType = (typeof TOKEN_TYPES)[number];
type TokenModifier = (typeof TOKEN_MODIFIERS)[number];

export const semanticTokens: Feature = {
  capabilities: () => ({
    semanticTokensProvider: {
      legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
      full: { delta: true },
      range: true,
    },
  }),
  start: (session) => {
    const { semanticTokens: on } = session.connection.languages;
    const sent = createSent();
    const none: SemanticTokens = { data: [] };
    // A client that lays these colours over its own has finer ones for words of the language, numbers and texts.
    const isAdded = session.client.textDocument?.semanticTokens?.augmentsSyntaxTokens === true;
    const tokensIn = (view: FileView, range?: Range): readonly number[] => tokensOver(view, isAdded, range);
    on.on(({ textDocument: { uri } }, token) =>
      session.ask<SemanticTokens>(uri, token, (view) => sent.keep(uri, [...tokensIn(view)]), none),
    );
    on.onDelta(({ textDocument: { uri }, previousResultId }, token) =>
      session.ask<SemanticTokens | SemanticTokensDelta>(
        uri,
        token,
        (view) => sent.since(uri, previousResultId, [...tokensIn(view)]),
        none,
      ),
    );
    on.onRange(({ textDocument: { uri }, range }, token) =>
      session.ask<SemanticTokens>(uri, token, (view) => ({ data: [...tokensIn(view, range)] }), none),
    );
  },
};

/**
 * Five numbers for each token, as the protocol has them; in a range those that begin in it.
 * @param namesOnly leaves out what can be told from the text alone
 */
function tokensOver(view: FileView, namesOnly: boolean, range?: Range): readonly number[] {
  const from = range === undefined ? 0 : offsetOf(view, range.start);
  const to = range === undefined ? Number.POSITIVE_INFINITY : offsetOf(view, range.end);
  const data: number[] = [];
  let [line, character] = [0, 0];
  for (const token of tokensOf(view.parsed)) {
    if (token.offset >= to) break;
    if (token.end <= from) continue;
    const kind = kindOf(token);
    if (kind === null || (namesOnly && PLAIN.has(kind.type))) continue;
    // Few editors take a token of several lines.
    for (const piece of piecesOf(view, token)) {
      const isLater = piece.line > line;
      data.push(piece.line - line, isLater ? piece.character : piece.character - character);
      data.push(piece.length, numberOf(kind.type), bitsOf(kind.modifiers));
      [line, character] = [piece.line, piece.character];
    }
  }
  return data;
}

interface Kind {
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

function kind(type: TokenType, ...modifiers: readonly TokenModifier[]): Kind {
  return { type, modifiers };
}

const KEYWORD = kind("keyword");
const PLAIN: ReadonlySet<TokenType> = new Set(["keyword", "method", "string", "number", "operator", "comment"]);
const BY_TOKEN: Readonly<Record<string, Kind>> = {
  STRING: kind("string"),
  TEXT_BLOCK: kind("string"),
  NUMBER: kind("number"),
  DATE: kind("number"),
  DECIMAL_COMMA: kind("number"),
  UNIT: kind("number", "unit"),
  UNKNOWN_UNIT: kind("number", "unit", "unknown"),
};

/** Null for what has no colour of its own: brackets, commas, what could not be read. */
function kindOf(token: LeafCstNode): Kind | null {
  if (token.hidden) return kind("comment");
  const name = typeName(token);
  if (name === "DAMAGED") return null;
  const known = BY_TOKEN[name];
  if (known !== undefined) return known;
  const word = wordOf(token);
  if (word !== null) return kindOfWord(token, word);
  if (/^[\p{L}_]/u.test(token.text)) return KEYWORD;
  return /^(?:\.\.|[-+*/=±−–—…])/.test(token.text) ? kind("operator") : null;
}

/** What a word was read as. */
interface WordUse {
  readonly feature: string;
  readonly isReference: boolean;
  readonly node: AstNode;
}

/** Up from a token through the rules that read mere text, to what the text was kept as. */
function wordOf(token: LeafCstNode): WordUse | null {
  for (let cst: CstNode | undefined = token; cst !== undefined; cst = cst.container) {
    const { astNode, grammarSource }: CstNode = cst;
    if (grammarSource === undefined || astNode === undefined) return null;
    if (cst !== token && astNode.$cstNode === cst) return null;
    const feature = featureOf(grammarSource);
    if (feature !== null) return { feature, isReference: GrammarAST.isCrossReference(grammarSource), node: astNode };
  }
  return null;
}

const features = new WeakMap<AstNode, string | null>();

/** The feature that an element of the grammar is kept as; null where it is part of a bigger text, or of nothing. */
function featureOf(element: AstNode): string | null {
  const known = features.get(element);
  if (known !== undefined) return known;
  let at: AstNode | undefined = element;
  while (at !== undefined && !GrammarAST.isAssignment(at) && !GrammarAST.isParserRule(at)) at = at.$container;
  const found = GrammarAST.isAssignment(at) ? at.feature : null;
  features.set(element, found);
  return found;
}

function kindOfWord({ text }: LeafCstNode, { feature, isReference, node }: WordUse): Kind {
  if (isReference) {
    const isStep = ast.isReturnJump(node) || ast.isGoJump(node) || ast.isOrderLine(node) || ast.isWithinLine(node);
    const meant = meantAt(node, text, isStep ? "steps" : "things");
    return meant === undefined ? UNKNOWN : kindOfNamed(meant);
  }
  switch (feature) {
    case "name": {
      const named = kindOfName(node);
      const isUse = ast.isIndexName(node) || ast.isHazardUse(node);
      return isUse ? named : kind(named.type, "declaration", ...named.modifiers);
    }
    case "verb":
      return ast.isStateCondition(node) ? KEYWORD : kind("method");
    case "signal":
      return kind("keyword", "safety");
    case "state":
      return ast.isStateCondition(node) && ast.isOption(meantAt(node, node.subject.thing.$refText))
        ? kind("enumMember", "choice")
        : kind("enumMember", "state");
    case "threshold":
    case "code":
      return kind("property");
    case "operator":
    case "sign":
    case "plusMinus":
    case "dash":
      return kind("operator");
    default:
      return KEYWORD;
  }
}

const UNKNOWN = kind("variable", "unknown");

function kindOfName(node: AstNode): Kind {
  if (ast.isChoice(node)) return kind("enumMember", "choice");
  if (ast.isStateName(node)) return kind("enumMember", "state");
  if (ast.isInstanceName(node)) return kind("enumMember", "part");
  if (ast.isHazardUse(node)) return kind("type", "hazard");
  if (ast.isIndexName(node) && ast.isInstanceName(indexMeaning(node, node.name.normalize("NFC"))))
    return kind("enumMember", "part");
  if (ast.isLoopVariable(node) || ast.isIndexName(node)) return kind("parameter");
  return kindOfNamed(node);
}

/** Of what a name stands for. */
function kindOfNamed(node: AstNode): Kind {
  if (ast.isPart(node)) return isFastener(node) ? kind("variable", "part", "fastener") : kind("variable", "part");
  return BY_DECLARATION[node.$type] ?? kind("variable");
}

const BY_DECLARATION: Readonly<Record<string, Kind>> = {
  Procedure: kind("function"),
  Step: kind("label"),
  Task: kind("label"),
  Ring: kind("property", "place"),
  Holes: kind("property", "place"),
  Tool: kind("class", "tool"),
  Consumable: kind("type", "consumable"),
  Energy: kind("event", "energy"),
  Option: kind("enum", "option"),
  Hazard: kind("type", "hazard"),
  Role: kind("namespace", "role"),
  Source: kind("namespace", "source"),
  Material: kind("type", "material"),
  ValueDeclaration: kind("variable", "value"),
  Measure: kind("variable", "value"),
  FactDeclaration: kind("variable", "fact"),
};

/** As the model has it: says what it secures, or its thread. */
function isFastener({ properties }: ast.Part): boolean {
  return properties.some(
    (one) =>
      (ast.isRelationProperty(one) && one.keyword === "secures") ||
      (ast.isTextProperty(one) && one.keyword === "thread"),
  );
}

interface Piece {
  readonly line: number;
  readonly character: number;
  readonly length: number;
}

function* piecesOf({ lines }: FileView, { offset, end }: LeafCstNode): Generator<Piece> {
  const first = lines.position(offset);
  const last = lines.position(end);
  for (let { line, character } = first; line <= last.line; line++) {
    const upTo = line === last.line ? last.character : lines.text(line).length;
    if (upTo > character) yield { line, character, length: upTo - character };
    character = 0;
  }
}

const TYPE_NUMBERS: ReadonlyMap<TokenType, number> = new Map(TOKEN_TYPES.map((type, at) => [type, at]));
const MODIFIER_BITS: ReadonlyMap<TokenModifier, number> = new Map(TOKEN_MODIFIERS.map((one, at) => [one, 1 << at]));

function numberOf(type: TokenType): number {
  return TYPE_NUMBERS.get(type) ?? 0;
}

function bitsOf(modifiers: readonly TokenModifier[]): number {
  return modifiers.reduce((bits, one) => bits | (MODIFIER_BITS.get(one) ?? 0), 0);
}

// ---- what was sent before

interface Sent {
  readonly keep: (uri: string, data: number[]) => SemanticTokens;
  /** What is to change in what was sent under this id; all of it where that is no longer known. */
  readonly since: (uri: string, id: string, data: number[]) => SemanticTokens | SemanticTokensDelta;
}

/** The last answer for so many files is remembered. */
const MOST_FILES = 20;

function createSent(): Sent {
  const last = new Map<string, { readonly id: string; readonly data: readonly number[] }>();
  let count = 0;
  const remember = (uri: string, data: readonly number[]): string => {
    const id = String(++count);
    last.delete(uri);
    last.set(uri, { id, data });
    const [oldest] = last.keys();
    if (last.size > MOST_FILES && oldest !== undefined) last.delete(oldest);
    return id;
  };
  return {
    keep: (uri, data) => ({ resultId: remember(uri, data), data }),
    since: (uri, id, data) => {
      const before = last.get(uri);
      const resultId = remember(uri, data);
      if (before === undefined || before.id !== id) return { resultId, data };
      return { resultId, edits: [...editBetween(before.data, data)] };
    },
  };
}

/** One edit between the beginning and the end that both share; none where they are the same. */
function editBetween(before: readonly number[], after: readonly number[]): SemanticTokensDelta["edits"] {
  const shortest = Math.min(before.length, after.length);
  let start = 0;
  while (start < shortest && before[start] === after[start]) start++;
  let tail = 0;
  while (tail < shortest - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  if (start === before.length && start === after.length) return [];
  return [{ start, deleteCount: before.length - start - tail, data: after.slice(start, after.length - tail) }];
}
