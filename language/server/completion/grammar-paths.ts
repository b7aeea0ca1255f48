// Follows the grammar over the tokens before a place along every path at once, with the rules each path is in: what may
// stand there, and what for. Knows the grammar's form and nothing of Sprag.
import { GrammarAST } from "langium";
import { SpragGrammar } from "#grammar/generated/grammar.ts";
import type { Token } from "./tokens.ts";

/** The rules a token stands in, innermost first. */
export interface Within {
  readonly rule: string;
  /** The property of the outer rule that it fills, where it fills one. */
  readonly property: string | null;
  readonly isReference: boolean;
  /** The token with which the rule begins. */
  readonly at: number;
  readonly outer: Within | null;
}

/** One thing that may stand next. */
export interface Expected {
  /** A keyword or terminal as the lexer names it, or one of the rules in `WHOLE`. */
  readonly token: string;
  /** The property it fills; null for a keyword that is only form. */
  readonly property: string | null;
  readonly isReference: boolean;
  readonly within: Within;
  /** A keyword with those that must follow it: `begin with`; empty for what is no keyword. */
  readonly phrases: string[];
}

export interface Paths {
  readonly expected: readonly Expected[];
  /** The first token that no path could take; null where all were taken. */
  readonly stoppedAt: number | null;
}

/** Rules whose tokens are one thing to a writer. */
const WHOLE: ReadonlySet<string> = new Set(["Name", "Word", "Text", "UnitText", "NumberText", "CodeWord"]);

/** What may stand behind the tokens, read as any number of this rule one after the other. */
export function pathsOver(rule: string, tokens: readonly Token[], from: number): Paths {
  const walk: Walk = { contexts: new Map(), at: from };
  const outer: Within = { rule: "", property: null, isReference: false, at: from, outer: null };
  let heads = settle(walk, [startOf(rule, outer)]);
  for (let at = from; at < tokens.length; at++) {
    const { type } = tokens[at] as Token;
    const taken = heads.filter((head) => accepts(head.node, type)).flatMap((head) => head.next ?? []);
    if (taken.length === 0) return { expected: told(heads), stoppedAt: at };
    walk.at = at + 1;
    walk.contexts.clear();
    heads = settle(walk, taken);
  }
  return { expected: told(heads), stoppedAt: null };
}

/** Whether a statement of the rule can begin with the token. */
export function canBegin(rule: string, type: string): boolean {
  const known = beginnings.get(rule) ?? settle({ contexts: new Map(), at: 0 }, [startOf(rule, TOP)]);
  beginnings.set(rule, known);
  return known.some((head) => accepts(head.node, type));
}

const TOP: Within = { rule: "", property: null, isReference: false, at: 0, outer: null };
const beginnings = new Map<string, readonly Head[]>();

/* ---- the grammar, compiled ---- */

type Node =
  | { readonly form: "token"; readonly token: string; readonly property: string | null }
  | {
      readonly form: "rule";
      readonly rule: string;
      readonly property: string | null;
      readonly isReference: boolean;
    }
  | { readonly form: "sequence" | "choice"; readonly parts: readonly Node[] }
  | { readonly form: "optional" | "many"; readonly part: Node };

interface Grammar {
  readonly rules: ReadonlyMap<string, Node>;
  /** For each of {@link WHOLE} the tokens it may be. */
  readonly whole: ReadonlyMap<string, ReadonlySet<string>>;
}

let compiled: Grammar | undefined;

function theGrammar(): Grammar {
  if (compiled !== undefined) return compiled;
  const rules = new Map<string, Node>();
  for (const rule of SpragGrammar().rules)
    if (GrammarAST.isParserRule(rule)) rules.set(rule.name, compile(rule.definition, null));
  const tokensOf = (node: Node): string[] => {
    if (node.form === "token") return [node.token];
    if (node.form === "rule") return tokensOf(rules.get(node.rule) as Node);
    return "parts" in node ? node.parts.flatMap(tokensOf) : tokensOf(node.part);
  };
  const whole = new Map([...WHOLE].map((name) => [name, new Set(tokensOf(rules.get(name) as Node))]));
  compiled = { rules, whole };
  return compiled;
}

function compile(element: GrammarAST.AbstractElement, property: string | null): Node {
  const once = compileOnce(element, property);
  switch (element.cardinality) {
    case "?":
      return { form: "optional", part: once };
    case "*":
      return { form: "many", part: once };
    case "+":
      return { form: "sequence", parts: [once, { form: "many", part: once }] };
    default:
      return once;
  }
}

function compileOnce(element: GrammarAST.AbstractElement, property: string | null): Node {
  if (GrammarAST.isKeyword(element)) return { form: "token", token: element.value, property };
  if (GrammarAST.isRuleCall(element)) return callOf(element, property, false);
  if (GrammarAST.isAssignment(element)) return compile(element.terminal, element.feature);
  if (GrammarAST.isCrossReference(element)) {
    const name = element.terminal;
    return GrammarAST.isRuleCall(name) ? callOf(name, property, true) : EMPTY;
  }
  if (GrammarAST.isAlternatives(element))
    return { form: "choice", parts: element.elements.map((part) => compile(part, property)) };
  if (GrammarAST.isGroup(element))
    return { form: "sequence", parts: element.elements.map((part) => compile(part, property)) };
  // An action makes a node of the tree and takes no token.
  return EMPTY;
}

const EMPTY: Node = { form: "sequence", parts: [] };

function callOf({ rule }: GrammarAST.RuleCall, property: string | null, isReference: boolean): Node {
  const called = rule.ref;
  return called === undefined || GrammarAST.isTerminalRule(called)
    ? { form: "token", token: called?.name ?? "", property }
    : { form: "rule", rule: called.name, property, isReference };
}

/* ---- following it ---- */

/** What is still to come on one path: a part of the grammar and what follows it. */
interface Path {
  readonly node: Node;
  readonly within: Within;
  readonly next: Path | null;
}
/** A path whose first part is a token. */
type Head = Path & { readonly node: Extract<Node, { form: "token" | "rule" }> };

interface Walk {
  /** Rules begun at this token, so that two ways into one rule are one path. */
  readonly contexts: Map<Within, Map<Node, Within>>;
  at: number;
}

function startOf(rule: string, within: Within): Path {
  return {
    node: { form: "many", part: { form: "rule", rule, property: null, isReference: false } },
    within,
    next: null,
  };
}

/** Opens up each path until it begins with a token; paths that come to the same are kept once. */
function settle(walk: Walk, paths: readonly Path[]): Head[] {
  const { rules } = theGrammar();
  const heads: Head[] = [];
  const seen = new Map<Node, { within: Within; next: Path | null }[]>();
  const stack = [...paths].reverse();
  for (let path = stack.pop(); path !== undefined; path = stack.pop()) {
    const { node, within, next } = path;
    const same = seen.get(node) ?? [];
    if (same.some((one) => one.within === within && isSame(one.next, next))) continue;
    same.push({ within, next });
    seen.set(node, same);
    switch (node.form) {
      case "token":
        heads.push(path as Head);
        break;
      case "rule": {
        if (WHOLE.has(node.rule)) heads.push(path as Head);
        else stack.push({ node: rules.get(node.rule) as Node, within: entered(walk, node, within), next });
        break;
      }
      case "sequence": {
        let rest = next;
        for (let at = node.parts.length - 1; at >= 0; at--) rest = { node: node.parts[at] as Node, within, next: rest };
        if (rest !== null) stack.push(rest);
        break;
      }
      case "choice":
        for (let at = node.parts.length - 1; at >= 0; at--) stack.push({ node: node.parts[at] as Node, within, next });
        break;
      case "optional":
        if (next !== null) stack.push(next);
        stack.push({ node: node.part, within, next });
        break;
      case "many":
        if (next !== null) stack.push(next);
        stack.push({ node: node.part, within, next: path });
        break;
    }
  }
  return heads;
}

function entered(walk: Walk, node: Node & { form: "rule" }, outer: Within): Within {
  const known = walk.contexts.get(outer) ?? new Map<Node, Within>();
  walk.contexts.set(outer, known);
  const made = known.get(node) ?? {
    rule: node.rule,
    property: node.property,
    isReference: node.isReference,
    at: walk.at,
    outer,
  };
  known.set(node, made);
  return made;
}

/** Whether the same is still to come; the ends of paths are rarely longer than a rule is deep. */
function isSame(a: Path | null, b: Path | null): boolean {
  let [one, other] = [a, b];
  while (one !== other) {
    if (one === null || other === null || one.node !== other.node || one.within !== other.within) return false;
    [one, other] = [one.next, other.next];
  }
  return true;
}

function accepts(node: Head["node"], type: string): boolean {
  return node.form === "token" ? node.token === type : theGrammar().whole.get(node.rule)?.has(type) === true;
}

/* ---- what is told ---- */

function told(heads: readonly Head[]): readonly Expected[] {
  const found: Expected[] = [];
  for (const head of heads) {
    const { node, within } = head;
    const token = node.form === "token" ? node.token : node.rule;
    const isReference = node.form === "rule" && node.isReference;
    const phrases = phrasesOf(head);
    const known = found.find(
      (one) =>
        one.token === token &&
        one.property === node.property &&
        one.within === within &&
        one.isReference === isReference,
    );
    if (known === undefined) found.push({ token, property: node.property, isReference, within, phrases });
    else known.phrases.push(...phrases.filter((phrase) => !known.phrases.includes(phrase)));
  }
  return found;
}

/** A keyword with the keywords that alone may follow it: `begin with`, `at least` and `at most`. */
function phrasesOf(head: Head, words = 1): string[] {
  const { node, next } = head;
  if (node.form !== "token" || !isWord(node.token)) return [];
  const following = words < LONGEST_PHRASE && next !== null ? followersOf(next) : null;
  if (following === null) return [node.token];
  return following.flatMap((follower) =>
    phrasesOf(follower, words + 1).map((rest) => `${(node as { token: string }).token} ${rest}`),
  );
}

const LONGEST_PHRASE = 4;
const MOST_FOLLOWERS = 3;

/** What may follow, where that is a few keywords and nothing else. */
function followersOf(next: Path): readonly Head[] | null {
  const heads = settle({ contexts: new Map(), at: 0 }, [next]);
  const words = new Set(heads.map(({ node }) => (node.form === "token" && isWord(node.token) ? node.token : "")));
  const isFew = !words.has("") && words.size <= MOST_FOLLOWERS;
  const distinct = heads.filter((head, at) => heads.findIndex((other) => other.node === head.node) === at);
  return isFew ? distinct : null;
}

export function isWord(token: string): boolean {
  return /^[a-z]/.test(token);
}
