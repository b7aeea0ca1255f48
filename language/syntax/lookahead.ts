// Which way a rule goes on: whether an optional part follows, or which of several does. Reads ahead as far as it takes, along every way
// that the rule leaves open at once (Parr, Harwell and Fisher, "Adaptive LL(*) Parsing", 2014), and keeps what it found. Knows no rule.
import type { IToken } from "chevrotain";
import type { GrammarAST } from "langium";
import {
  type CallForm,
  type ChoiceForm,
  canFollow,
  type Follows,
  type Form,
  type Forms,
  firstOf,
  followsOf,
  type SequenceForm,
  type TokenForm,
} from "./forms.ts";

/** The tokens, and the one to be read next. */
export interface Reading {
  readonly tokens: readonly IToken[];
  readonly at: number;
}

export interface Lookahead {
  /** The number of the choice, or -1 where none fits. */
  choice(of: GrammarAST.Alternatives): (reading: Reading) => number;
  /** Whether an optional part follows, or a loop goes on. */
  part(of: GrammarAST.AbstractElement): (reading: Reading) => boolean;
}

export function createLookahead(forms: Forms): Lookahead {
  const looking: Looking = { forms, calls: { id: 0, inner: new Map() }, callsMade: 1 };
  const formOf = (element: GrammarAST.AbstractElement) => forms.of.get(element) as Form;
  return {
    choice: (element) => {
      const form = formOf(element);
      const { parts } = ("part" in form ? form.part : form) as ChoiceForm;
      const decision = decisionOf((reached) => {
        for (const [way, part] of parts.entries()) enter({ looking, reached, way }, part, looking.calls);
      });
      return (reading) => decide(looking, decision, reading);
    },
    part: (element) => {
      const form = formOf(element) as Repeat;
      let guess: ((reading: Reading) => boolean) | undefined;
      return (reading) => {
        guess ??= guessPart(looking, form);
        return guess(reading);
      };
    },
  };
}

type Repeat = Extract<Form, { readonly part: Form }>;

function guessPart(looking: Looking, form: Repeat): (reading: Reading) => boolean {
  const { types } = firstOf(form.part);
  looking.follows ??= followsOf(looking.forms);
  if (!canFollow(looking.follows, form, types)) {
    return ({ tokens, at }) => {
      const token = tokens[at];
      return token !== undefined && types.has(token.tokenTypeIdx);
    };
  }
  const decision = decisionOf((reached) => {
    enter({ looking, reached, way: GO_IN }, form.part, looking.calls);
    leave({ looking, reached, way: GO_PAST }, form, looking.calls);
  });
  return (reading) => decide(looking, decision, reading) === GO_IN;
}

const GO_IN = 0;
const GO_PAST = 1;

/* ---- every way at once ---- */

interface Looking {
  readonly forms: Forms;
  /** Worked out when first asked for. */
  follows?: Follows;
  /** No call: the rule that asks. */
  readonly calls: Calls;
  callsMade: number;
}

/** Calls of rules that are open, the innermost first. Each such chain is made once. */
interface Calls {
  readonly id: number;
  readonly call?: CallForm;
  readonly outer?: Calls;
  readonly inner: Map<CallForm, Calls>;
}

/** A token that can come next, in the calls it is then in, and the alternatives that lead there. */
interface Place {
  readonly token: TokenForm;
  readonly calls: Calls;
  readonly ways: Set<number>;
}

/** What can come next. */
interface Outlook {
  /** The type of token that it is limited to; null where it holds all. */
  readonly only: number | null;
  readonly places: Map<number, Place>;
  /** Alternatives after which the rule is at its end. */
  readonly out: Set<number>;
  /** What each type of token makes of it: another outlook, or the alternative it must be, or `NONE`. */
  readonly after: Map<number, Outlook | number>;
}

interface Decision {
  /** What can come next of a type, in each of the alternatives. */
  begin(reached: Outlook): void;
  /** What each type of token makes of the beginning. */
  readonly after: Outlook["after"];
  /** Outlooks that were come to, so that a loop in the text does not make ever new ones. */
  readonly known: Map<string, Outlook>;
}

const NONE = -1;
/** What stands behind the last token. */
const END = -1;

function decisionOf(begin: Decision["begin"]): Decision {
  return { begin, after: new Map(), known: new Map() };
}

function emptyOutlook(only: number | null): Outlook {
  return { only, places: new Map(), out: new Set(), after: new Map() };
}

function decide(looking: Looking, decision: Decision, { tokens, at }: Reading): number {
  let outlook: Outlook | null = null;
  for (let next = at; ; next++) {
    const type = tokens[next]?.tokenTypeIdx ?? END;
    const known: Outlook["after"] = (outlook ?? decision).after;
    let after = known.get(type);
    if (after === undefined) {
      after = outlookAfter(looking, decision, outlook ?? beginning(decision, type), type);
      known.set(type, after);
    }
    if (typeof after === "number") return after;
    outlook = after;
  }
}

/** There are many beginnings, and most texts ask for a few of them only. */
function beginning(decision: Decision, type: number): Outlook {
  const outlook = emptyOutlook(type);
  decision.begin(outlook);
  return outlook;
}

function outlookAfter(looking: Looking, decision: Decision, { out, places }: Outlook, type: number): Outlook | number {
  const fitting = [...places.values()].filter((place) => place.token.type.tokenTypeIdx === type);
  const [first = NONE, ...others] = new Set(fitting.flatMap((place) => [...place.ways]));
  if (others.length === 0 && out.size === 0) return first;
  const reached = emptyOutlook(null);
  for (const { calls, token, ways } of fitting) {
    for (const way of ways) leave({ looking, reached, way }, token, calls);
  }
  // Whoever called the rule may go on with any token; a way that reads the rule to its end goes before.
  if (reached.out.size === 0) for (const way of out) reached.out.add(way);
  const groups = [...[...reached.places.values()].map((place) => place.ways), reached.out];
  const ways = new Set(groups.flatMap((group) => [...group]));
  // Ways that lead to the same places will never part: the first is taken.
  const isOne = reached.places.size === 0 || groups.every(({ size }) => size === 0 || size === ways.size);
  if (isOne) return Math.min(...ways);
  const key = `${groups.map((group) => [...group]).join(";")}|${[...reached.places.keys()].join(" ")}`;
  const known = decision.known.get(key) ?? reached;
  decision.known.set(key, known);
  return known;
}

interface Walk {
  readonly looking: Looking;
  readonly reached: Outlook;
  readonly way: number;
}

/** Along one way, into a form. */
function enter(walk: Walk, form: Form, calls: Calls): void {
  const { looking, reached, way } = walk;
  const { empty, types } = firstOf(form);
  if (reached.only !== null && !empty && !types.has(reached.only)) return;
  switch (form.form) {
    case "token": {
      const key = calls.id * looking.forms.count + form.id;
      const place = reached.places.get(key);
      if (place === undefined) reached.places.set(key, { token: form, calls, ways: new Set([way]) });
      else place.ways.add(way);
      return;
    }
    case "call":
      enter(walk, form.rule.body, within(looking, calls, form));
      return;
    case "sequence":
      goOn(walk, form, 0, calls);
      return;
    case "choice":
      for (const part of form.parts) enter(walk, part, calls);
      return;
    default:
      enter(walk, form.part, calls);
      if (form.form !== "some") leave(walk, form, calls);
  }
}

function goOn(walk: Walk, sequence: SequenceForm, at: number, calls: Calls): void {
  const next = sequence.parts[at];
  if (next === undefined) leave(walk, sequence, calls);
  else enter(walk, next, calls);
}

/** What comes when a form has been read. */
function leave(walk: Walk, form: Form, calls: Calls): void {
  const { index, up } = form;
  if (up.form === "rule") {
    const { call, outer } = calls;
    if (call === undefined || outer === undefined) walk.reached.out.add(walk.way);
    else leave(walk, call, outer);
  } else if (up.form === "sequence") goOn(walk, up, index + 1, calls);
  else {
    if (up.form === "many" || up.form === "some") enter(walk, up.part, calls);
    leave(walk, up, calls);
  }
}

function within(looking: Looking, outer: Calls, call: CallForm): Calls {
  let calls = outer.inner.get(call);
  if (calls === undefined) {
    calls = { id: looking.callsMade++, call, outer, inner: new Map() };
    outer.inner.set(call, calls);
  }
  return calls;
}
