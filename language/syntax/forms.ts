// The grammar's rules as plain forms: tokens, calls of rules, sequences, choices, optional parts and loops, each with its place in its
// rule and the tokens it can begin with. Knows nothing of Sprag, and reads no text.
import type { TokenType } from "chevrotain";
import { GrammarAST } from "langium";

export type Form = (
  | { readonly form: "token"; readonly type: TokenType }
  | { readonly form: "call"; readonly rule: RuleForm }
  | { readonly form: "sequence"; readonly parts: readonly Form[] }
  | { readonly form: "choice"; readonly parts: readonly Form[] }
  | { readonly form: "optional" | "many" | "some"; readonly part: Form }
) & {
  /** Distinct among all forms of a grammar. */
  readonly id: number;
  /** What it is a part of, and as which of a sequence. */
  up: Form | RuleForm;
  index: number;
  first?: First;
};
export type SequenceForm = Extract<Form, { readonly form: "sequence" }>;
export type ChoiceForm = Extract<Form, { readonly form: "choice" }>;
export type CallForm = Extract<Form, { readonly form: "call" }>;
export type TokenForm = Extract<Form, { readonly form: "token" }>;

export interface RuleForm {
  readonly form: "rule";
  readonly name: string;
  readonly calls: CallForm[];
  body: Form;
  first?: First;
}

/** Types of the tokens that can begin it, by their index, and whether it may be nothing at all. */
export interface First {
  readonly types: ReadonlySet<number>;
  readonly empty: boolean;
}

export interface Forms {
  /** By name, in the order of the grammar. */
  readonly rules: ReadonlyMap<string, RuleForm>;
  /** By the element that says it, its cardinality included. */
  readonly of: ReadonlyMap<GrammarAST.AbstractElement, Form>;
  /** Types that the rules ask for, by name, in the order of the grammar. */
  readonly types: ReadonlyMap<string, TokenType>;
  /** How many forms there are. */
  readonly count: number;
}

/** @param tokens by the names of terminals, and keywords as written */
export function createForms(grammar: GrammarAST.Grammar, tokens: Readonly<Record<string, TokenType>>): Forms {
  const making: Making = { tokens, rules: new Map(), of: new Map(), types: new Map(), count: 0 };
  const parserRules = grammar.rules.filter(GrammarAST.isParserRule);
  for (const { name } of parserRules) {
    making.rules.set(name, { form: "rule", name, calls: [], body: sequence(making, []) });
  }
  for (const { definition, name } of parserRules) {
    const rule = making.rules.get(name) as RuleForm;
    rule.body = formOf(making, definition) ?? rule.body;
    rule.body.up = rule;
  }
  return making;
}

interface Making extends Forms {
  readonly tokens: Readonly<Record<string, TokenType>>;
  readonly rules: Map<string, RuleForm>;
  readonly of: Map<GrammarAST.AbstractElement, Form>;
  readonly types: Map<string, TokenType>;
  count: number;
}

/** Undefined where nothing is read. */
function formOf(making: Making, element: GrammarAST.AbstractElement): Form | undefined {
  const once = formOnce(making, element);
  const { cardinality } = element;
  const form = once !== undefined && cardinality !== undefined ? repeated(making, cardinality, once) : once;
  if (form !== undefined) making.of.set(element, form);
  return form;
}

function formOnce(making: Making, element: GrammarAST.AbstractElement): Form | undefined {
  if (GrammarAST.isKeyword(element)) return token(making, element.value);
  if (GrammarAST.isRuleCall(element)) return call(making, element);
  if (GrammarAST.isCrossReference(element)) return call(making, element.terminal as GrammarAST.RuleCall);
  if (GrammarAST.isAssignment(element)) return formOf(making, element.terminal);
  if (GrammarAST.isAction(element)) return undefined;
  if (GrammarAST.isAlternatives(element)) return choice(making, element.elements);
  if (GrammarAST.isGroup(element)) {
    const parts = element.elements.map((part) => formOf(making, part));
    return sequence(
      making,
      parts.filter((part) => part !== undefined),
    );
  }
  throw new Error(`No form for ${element.$type}`);
}

function call(making: Making, { rule: { $refText: name } }: GrammarAST.RuleCall): Form {
  const rule = making.rules.get(name);
  if (rule === undefined) return token(making, name);
  const made: CallForm = { form: "call", rule, id: making.count++, up: NOWHERE, index: 0 };
  rule.calls.push(made);
  return made;
}

function token(making: Making, name: string): Form {
  const type = making.tokens[name];
  if (type === undefined) throw new Error(`No token ${name}`);
  making.types.set(name, type);
  return { form: "token", type, id: making.count++, up: NOWHERE, index: 0 };
}

function repeated(making: Making, cardinality: "?" | "*" | "+", part: Form): Form {
  const form: Form = { form: CARDINALITIES[cardinality], part, id: making.count++, up: NOWHERE, index: 0 };
  part.up = form;
  return form;
}

/** Until a form is made part of another. */
const NOWHERE = { form: "rule", name: "", calls: [] } as unknown as RuleForm;

const CARDINALITIES = { "?": "optional", "*": "many", "+": "some" } as const;

function sequence(making: Making, parts: readonly Form[]): Form {
  return holding({ form: "sequence", parts, id: making.count++, up: NOWHERE, index: 0 });
}

function choice(making: Making, elements: readonly GrammarAST.AbstractElement[]): Form {
  const parts = elements.map((element) => formOf(making, element) ?? sequence(making, []));
  return holding({ form: "choice", parts, id: making.count++, up: NOWHERE, index: 0 });
}

/** Of a single part, that part. */
function holding(form: SequenceForm | ChoiceForm): Form {
  const { parts } = form;
  if (parts.length === 1) return parts[0] as Form;
  for (let index = 0; index < parts.length; index++) {
    const part = parts[index] as Form;
    part.up = form;
    part.index = index;
  }
  return form;
}

/* ---- beginnings ---- */

export function firstOf(form: Form | RuleForm): First {
  form.first ??= findFirst(form);
  return form.first;
}

function findFirst(form: Form | RuleForm): First {
  switch (form.form) {
    case "token":
      return { types: new Set([form.type.tokenTypeIdx as number]), empty: false };
    case "call":
      return firstOf(form.rule);
    case "rule":
      return firstOf(form.body);
    case "optional":
    case "many":
      return { ...firstOf(form.part), empty: true };
    case "some":
      return firstOf(form.part);
    case "choice": {
      const firsts = form.parts.map(firstOf);
      return { types: union(firsts), empty: firsts.some((first) => first.empty) };
    }
    case "sequence": {
      const firsts = beginningsOf(form.parts).map(firstOf);
      return { types: union(firsts), empty: firsts.every((first) => first.empty) };
    }
  }
}

/** The parts of a sequence that it can begin with. */
export function beginningsOf(parts: readonly Form[]): readonly Form[] {
  const until = parts.findIndex((part) => !firstOf(part).empty);
  return until < 0 ? parts : parts.slice(0, until + 1);
}

function union(firsts: readonly First[]): ReadonlySet<number> {
  const types = new Set<number>();
  for (const first of firsts) for (const type of first.types) types.add(type);
  return types;
}

/* ---- what follows ---- */

/** Sets of the types of tokens that can follow each rule, whoever called it. */
export type Follows = ReadonlyMap<RuleForm, ReadonlySet<First["types"]>>;

export function followsOf({ rules }: Forms): Follows {
  const follows = new Map<RuleForm, Set<First["types"]>>();
  for (const rule of rules.values()) follows.set(rule, new Set());
  /** What follows the first follows the second too. */
  const ends: (readonly [RuleForm, RuleForm])[] = [];
  for (const [rule, sets] of follows) {
    for (const call of rule.calls) {
      const end = addRest(call, sets);
      if (end !== null && end !== rule) ends.push([end, rule]);
    }
  }
  for (let isDone = false; !isDone; ) {
    isDone = true;
    for (const [outer, inner] of ends) {
      const sets = follows.get(inner) as Set<First["types"]>;
      const before = sets.size;
      for (const types of follows.get(outer) as Set<First["types"]>) sets.add(types);
      if (sets.size > before) isDone = false;
    }
  }
  return follows;
}

/** Whether a token of one of these types can follow a form. */
export function canFollow(follows: Follows, form: Form, types: First["types"]): boolean {
  const sets = new Set<First["types"]>();
  const end = addRest(form, sets);
  const ofRule = end === null ? [] : (follows.get(end) as ReadonlySet<First["types"]>);
  return [...sets, ...ofRule].some((set) => [...types].some((type) => set.has(type)));
}

/** Adds what can follow a form within its rule; gives that rule where it may be at its end then. */
function addRest(form: Form, sets: Set<First["types"]>): RuleForm | null {
  for (let done = form; ; ) {
    const { index, up } = done;
    if (up.form === "rule") return up;
    if (up.form === "sequence") {
      for (let at = index + 1; at < up.parts.length; at++) {
        const first = firstOf(up.parts[at] as Form);
        sets.add(first.types);
        if (!first.empty) return null;
      }
    } else if (up.form === "many" || up.form === "some") sets.add(firstOf(up.part).types);
    done = up;
  }
}
