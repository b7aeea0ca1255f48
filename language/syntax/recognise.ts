// Follows the grammar over a few tokens along every path at once: how far they fit, and what could stand where they stop.
// Used only where the parser has failed; knows the grammar's form and nothing of Sprag.
import { Alternation, type IToken, Option, Repetition, RepetitionMandatory, type TokenType } from "chevrotain";
import type { LangiumParser } from "langium";

/** How a rule fits the tokens from a start on. */
export interface Fit {
  /** Where the longest complete reading ends (exclusive), or -1 where none is complete. */
  readonly end: number;
  /** The first token that no path could take, at or after `end`. */
  readonly furthest: number;
  /** What could have stood at `furthest`: keywords as written, token names, the names in `asOne`. */
  readonly expected: readonly string[];
}

export interface Recogniser {
  fit(rule: string, tokens: readonly IToken[], start: number): Fit;
  /** Whether a statement of this rule can begin with this type of token. */
  canStart(rule: string, type: TokenType): boolean;
  /** The type of a keyword or terminal by its name. */
  type(name: string): TokenType;
  /** All keywords that are words. */
  readonly words: readonly string[];
}

/** @param asOne rules that are named as one thing in `expected`, not by the tokens they begin with, and that name */
export function createRecogniser(parser: LangiumParser, asOne: ReadonlyMap<string, string>): Recogniser {
  const productions = (
    parser as unknown as { wrapper: { getGAstProductions(): Record<string, Production> } }
  ).wrapper.getGAstProductions();
  const types = new Map<string, TokenType>();
  const rules = compileRules(productions, asOne, types);
  const rule = (name: string): RuleNode => {
    const found = rules.get(name);
    if (found === undefined) throw new Error(`No rule ${name} in the grammar`);
    return found;
  };
  return {
    fit: (name, tokens, start) => fitRule(rule(name), tokens, start),
    canStart: (name, type) => firstOf(rule(name)).types.has(typeIndex(type)),
    type: (name) => types.get(name) as TokenType,
    words: [...types.keys()].filter((name) => /^[a-z]/.test(name)),
  };
}

/* ---- the grammar, compiled ---- */

interface Production {
  readonly name?: string;
  readonly definition?: readonly Production[];
  readonly terminalType?: TokenType;
  readonly nonTerminalName?: string;
}
interface First {
  readonly types: ReadonlySet<number>;
  readonly labels: ReadonlySet<string>;
  readonly empty: boolean;
}
type Node = (
  | { readonly form: "token"; readonly type: number; readonly label: string }
  | { readonly form: "rule"; readonly rule: RuleNode }
  | { readonly form: "sequence"; readonly parts: readonly Node[] }
  | Choice
  | { readonly form: "optional" | "many" | "some"; readonly part: Node }
) & { first?: First };
interface Choice {
  readonly form: "choice";
  readonly parts: readonly Node[];
  first?: First;
  /** Which parts go on with a type of token; filled as asked. */
  open?: Map<number, readonly Node[]>;
}
interface RuleNode {
  readonly name: string;
  readonly label: string | null;
  body: Node;
  first?: First;
}

function typeIndex(type: TokenType): number {
  return type.tokenTypeIdx as number;
}

function compileRules(
  productions: Record<string, Production>,
  asOne: ReadonlyMap<string, string>,
  types: Map<string, TokenType>,
): Map<string, RuleNode> {
  const rules = new Map<string, RuleNode>();
  const nothing: Node = { form: "sequence", parts: [] };
  const plainName = (name: string) => name.replace(/\u200B$/, "");
  for (const key of Object.keys(productions)) {
    const name = plainName(key);
    rules.set(name, { name, label: asOne.get(name) ?? null, body: nothing });
  }
  const sequence = (parts: readonly Production[]): Node => {
    const compiled = parts.map(compile);
    return compiled.length === 1 ? (compiled[0] as Node) : { form: "sequence", parts: compiled };
  };
  const compile = (production: Production): Node => {
    if (production.terminalType !== undefined) {
      const { terminalType } = production;
      types.set(terminalType.name, terminalType);
      return { form: "token", type: typeIndex(terminalType), label: terminalType.name };
    }
    if (production.nonTerminalName !== undefined) {
      return { form: "rule", rule: rules.get(plainName(production.nonTerminalName)) as RuleNode };
    }
    const parts = production.definition ?? [];
    if (production instanceof Alternation) return { form: "choice", parts: parts.map(compile) };
    if (production instanceof Option) return { form: "optional", part: sequence(parts) };
    if (production instanceof Repetition) return { form: "many", part: sequence(parts) };
    if (production instanceof RepetitionMandatory) return { form: "some", part: sequence(parts) };
    return sequence(parts);
  };
  for (const [key, production] of Object.entries(productions)) {
    (rules.get(plainName(key)) as RuleNode).body = sequence(production.definition ?? []);
  }
  return rules;
}

function firstOf(node: Node | RuleNode): First {
  node.first ??= "body" in node ? ruleFirst(node) : nodeFirst(node);
  return node.first;
}

function ruleFirst(rule: RuleNode): First {
  const body = firstOf(rule.body);
  return rule.label === null ? body : { ...body, labels: new Set([rule.label]) };
}

function nodeFirst(node: Node): First {
  switch (node.form) {
    case "token":
      return { types: new Set([node.type]), labels: new Set([node.label]), empty: false };
    case "rule":
      return firstOf(node.rule);
    case "optional":
    case "many":
      return { ...firstOf(node.part), empty: true };
    case "some":
      return firstOf(node.part);
    case "choice": {
      const firsts = node.parts.map(firstOf);
      return { ...union(firsts), empty: firsts.some((first) => first.empty) };
    }
    case "sequence": {
      const until = node.parts.findIndex((part) => !firstOf(part).empty);
      const firsts = (until < 0 ? node.parts : node.parts.slice(0, until + 1)).map(firstOf);
      return { ...union(firsts), empty: until < 0 };
    }
  }
}

function union(firsts: readonly First[]): Omit<First, "empty"> {
  return {
    types: new Set(firsts.flatMap((first) => [...first.types])),
    labels: new Set(firsts.flatMap((first) => [...first.labels])),
  };
}

/* ---- following it ---- */

interface Walk {
  readonly tokens: readonly IToken[];
  /** Ends of a rule from a position on; each is worked out once. */
  readonly known: Map<RuleNode, Map<number, readonly number[]>>;
  furthest: number;
  /** What could stand at `furthest`; null where nobody has asked. */
  expected: Set<string> | null;
}

function fitRule(rule: RuleNode, tokens: readonly IToken[], start: number): Fit {
  const walk: Walk = { tokens, known: new Map(), furthest: start, expected: null };
  const ends = endsOf(walk, { form: "rule", rule }, start);
  const end = ends.length === 0 ? -1 : Math.max(...ends);
  let expected: readonly string[] | undefined;
  return {
    end,
    furthest: Math.max(walk.furthest, end),
    // Most statements fit, and then nobody asks: those that do not are walked again.
    get expected() {
      expected ??= walk.furthest >= end ? expectedFrom(rule, tokens, start) : [];
      return expected;
    },
  };
}

function expectedFrom(rule: RuleNode, tokens: readonly IToken[], start: number): readonly string[] {
  const expected = new Set<string>();
  endsOf({ tokens, known: new Map(), furthest: start, expected }, { form: "rule", rule }, start);
  return [...expected];
}

function endsOf(walk: Walk, node: Node, at: number): readonly number[] {
  const first = firstOf(node);
  const token = walk.tokens[at];
  if (token === undefined || !first.types.has(token.tokenTypeIdx)) {
    missed(walk, first, at);
    return first.empty ? [at] : [];
  }
  switch (node.form) {
    case "token":
      return [at + 1];
    case "rule":
      return ruleEnds(walk, node.rule, at);
    case "sequence": {
      let ends: readonly number[] = [at];
      for (const part of node.parts) {
        ends = after(walk, part, ends);
        if (ends.length === 0) return ends;
      }
      return ends;
    }
    case "choice": {
      const open = openParts(node, token.tokenTypeIdx);
      if (open.length < node.parts.length) missedIn(walk, node.parts, token.tokenTypeIdx, at);
      const [only] = open;
      if (only !== undefined && open.length === 1) return endsOf(walk, only, at);
      return distinct(open.flatMap((part) => endsOf(walk, part, at)));
    }
    case "optional":
      return distinct([at, ...endsOf(walk, node.part, at)]);
    case "many":
      return repeated(walk, node.part, [at]);
    case "some":
      return repeated(walk, node.part, endsOf(walk, node.part, at));
  }
}

function after(walk: Walk, node: Node, starts: readonly number[]): readonly number[] {
  if (starts.length === 1) {
    const at = starts[0] as number;
    const first = firstOf(node);
    const token = walk.tokens[at];
    if (token !== undefined && first.types.has(token.tokenTypeIdx)) return endsOf(walk, node, at);
    missed(walk, first, at);
    return first.empty ? starts : [];
  }
  return distinct(starts.flatMap((start) => endsOf(walk, node, start)));
}

function repeated(walk: Walk, node: Node, starts: readonly number[]): readonly number[] {
  const all = new Set(starts);
  let fresh = starts;
  while (fresh.length > 0) {
    const next = after(walk, node, fresh).filter((end) => !all.has(end));
    for (const end of next) all.add(end);
    fresh = next;
  }
  return [...all];
}

function ruleEnds(walk: Walk, rule: RuleNode, at: number): readonly number[] {
  let byStart = walk.known.get(rule);
  if (byStart === undefined) {
    byStart = new Map();
    walk.known.set(rule, byStart);
  }
  let ends = byStart.get(at);
  if (ends === undefined) {
    ends = endsOf(walk, rule.body, at);
    byStart.set(at, ends);
  }
  return ends;
}

/** The parts of a choice that a token of this type lets go on: those that can begin with it, and those that may be empty. */
function openParts(choice: Choice, type: number): readonly Node[] {
  choice.open ??= new Map();
  let open = choice.open.get(type);
  if (open === undefined) {
    open = choice.parts.filter((part) => firstOf(part).empty || firstOf(part).types.has(type));
    choice.open.set(type, open);
  }
  return open;
}

function missedIn(walk: Walk, parts: readonly Node[], type: number, at: number): void {
  if (at > walk.furthest || (at === walk.furthest && walk.expected !== null))
    for (const part of parts) if (!firstOf(part).types.has(type)) missed(walk, firstOf(part), at);
}

function missed(walk: Walk, first: First, at: number): void {
  if (at < walk.furthest) return;
  if (at > walk.furthest) {
    walk.furthest = at;
    walk.expected?.clear();
  }
  if (walk.expected !== null) for (const label of first.labels) walk.expected.add(label);
}

function distinct(ends: readonly number[]): readonly number[] {
  return ends.length < 2 ? ends : [...new Set(ends)];
}
