// Follows the grammar over a few tokens along every path at once: how far they fit, and what could stand where they stop.
// Used only where the parser has failed; knows the grammar's form and nothing of Sprag.
import type { IToken, TokenType } from "chevrotain";
import { beginningsOf, type ChoiceForm, type Form, type Forms, firstOf, type RuleForm } from "./forms.ts";

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
export function createRecogniser(forms: Forms, asOne: ReadonlyMap<string, string>): Recogniser {
  const grammar: Grammar = { asOne, labels: new Map(), open: new Map() };
  const rule = (name: string): RuleForm => {
    const found = forms.rules.get(name);
    if (found === undefined) throw new Error(`No rule ${name} in the grammar`);
    return found;
  };
  return {
    fit: (name, tokens, start) => fitRule(grammar, rule(name), tokens, start),
    canStart: (name, type) => firstOf(rule(name).body).types.has(type.tokenTypeIdx as number),
    type: (name) => forms.types.get(name) as TokenType,
    words: [...forms.types.keys()].filter((name) => /^[a-z]/.test(name)),
  };
}

/* ---- what is told of it ---- */

interface Grammar {
  readonly asOne: ReadonlyMap<string, string>;
  /** What each form can begin with, as it is told; filled as asked. */
  readonly labels: Map<Form | RuleForm, ReadonlySet<string>>;
  /** Which parts of a choice go on with a type of token; filled as asked. */
  readonly open: Map<Form, Map<number, readonly Form[]>>;
}

function labelsOf(grammar: Grammar, form: Form | RuleForm): ReadonlySet<string> {
  let labels = grammar.labels.get(form);
  if (labels === undefined) {
    labels = new Set(findLabels(grammar, form));
    grammar.labels.set(form, labels);
  }
  return labels;
}

function findLabels(grammar: Grammar, form: Form | RuleForm): Iterable<string> {
  switch (form.form) {
    case "token":
      return [form.type.name];
    case "call":
      return labelsOf(grammar, form.rule);
    case "rule": {
      const label = grammar.asOne.get(form.name);
      return label === undefined ? labelsOf(grammar, form.body) : [label];
    }
    case "choice":
      return form.parts.flatMap((part) => [...labelsOf(grammar, part)]);
    case "sequence":
      return beginningsOf(form.parts).flatMap((part) => [...labelsOf(grammar, part)]);
    default:
      return labelsOf(grammar, form.part);
  }
}

/* ---- following it ---- */

interface Walk {
  readonly grammar: Grammar;
  readonly tokens: readonly IToken[];
  /** Ends of a rule from a position on; each is worked out once. */
  readonly known: Map<RuleForm, Map<number, readonly number[]>>;
  furthest: number;
  /** What could stand at `furthest`; null where nobody has asked. */
  expected: Set<string> | null;
}

function fitRule(grammar: Grammar, rule: RuleForm, tokens: readonly IToken[], start: number): Fit {
  const walk: Walk = { grammar, tokens, known: new Map(), furthest: start, expected: null };
  const ends = endsOf(walk, rule, start);
  const end = ends.length === 0 ? -1 : Math.max(...ends);
  let expected: readonly string[] | undefined;
  return {
    end,
    furthest: Math.max(walk.furthest, end),
    // Most statements fit, and then nobody asks: those that do not are walked again.
    get expected() {
      expected ??= walk.furthest >= end ? expectedFrom(grammar, rule, tokens, start) : [];
      return expected;
    },
  };
}

function expectedFrom(grammar: Grammar, rule: RuleForm, tokens: readonly IToken[], start: number): readonly string[] {
  const expected = new Set<string>();
  endsOf({ grammar, tokens, known: new Map(), furthest: start, expected }, rule, start);
  return [...expected];
}

function endsOf(walk: Walk, node: Form | RuleForm, at: number): readonly number[] {
  const first = firstOf(node);
  const token = walk.tokens[at];
  if (token === undefined || !first.types.has(token.tokenTypeIdx)) {
    missed(walk, node, at);
    return first.empty ? [at] : [];
  }
  switch (node.form) {
    case "token":
      return [at + 1];
    case "call":
      return ruleEnds(walk, node.rule, at);
    case "rule":
      return ruleEnds(walk, node, at);
    case "sequence": {
      let ends: readonly number[] = [at];
      for (const part of node.parts) {
        ends = after(walk, part, ends);
        if (ends.length === 0) return ends;
      }
      return ends;
    }
    case "choice": {
      const open = openParts(walk.grammar, node, token.tokenTypeIdx);
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

function after(walk: Walk, node: Form, starts: readonly number[]): readonly number[] {
  if (starts.length === 1) {
    const at = starts[0] as number;
    const first = firstOf(node);
    const token = walk.tokens[at];
    if (token !== undefined && first.types.has(token.tokenTypeIdx)) return endsOf(walk, node, at);
    missed(walk, node, at);
    return first.empty ? starts : [];
  }
  return distinct(starts.flatMap((start) => endsOf(walk, node, start)));
}

function repeated(walk: Walk, node: Form, starts: readonly number[]): readonly number[] {
  const all = new Set(starts);
  let fresh = starts;
  while (fresh.length > 0) {
    const next = after(walk, node, fresh).filter((end) => !all.has(end));
    for (const end of next) all.add(end);
    fresh = next;
  }
  return [...all];
}

function ruleEnds(walk: Walk, rule: RuleForm, at: number): readonly number[] {
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
function openParts(grammar: Grammar, choice: ChoiceForm, type: number): readonly Form[] {
  let ofChoice = grammar.open.get(choice);
  if (ofChoice === undefined) {
    ofChoice = new Map();
    grammar.open.set(choice, ofChoice);
  }
  let open = ofChoice.get(type);
  if (open === undefined) {
    open = choice.parts.filter((part) => firstOf(part).empty || firstOf(part).types.has(type));
    ofChoice.set(type, open);
  }
  return open;
}

function missedIn(walk: Walk, parts: readonly Form[], type: number, at: number): void {
  if (at > walk.furthest || (at === walk.furthest && walk.expected !== null))
    for (const part of parts) if (!firstOf(part).types.has(type)) missed(walk, part, at);
}

function missed(walk: Walk, form: Form | RuleForm, at: number): void {
  if (at < walk.furthest) return;
  if (at > walk.furthest) {
    walk.furthest = at;
    walk.expected?.clear();
  }
  if (walk.expected !== null) for (const label of labelsOf(walk.grammar, form)) walk.expected.add(label);
}

function distinct(ends: readonly number[]): readonly number[] {
  return ends.length < 2 ? ends : [...new Set(ends)];
}
