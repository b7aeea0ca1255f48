// Whether values hold at one node: every check of limits that looks at what happens there. Knows which check is for which verb.

import type { Explanation } from "#engineering/explanation.ts";
import type { Declaration, Part } from "#model/declarations.ts";
import type { TightenAction } from "#model/procedure.ts";
import { show } from "#quantity/display.ts";
import type { Span } from "#syntax/span.ts";
import { NEVER } from "../decision.ts";
import type { AnalysisFact } from "../fact.ts";
import { type Run, stateBefore } from "../follow.ts";
import type { Collect, Raw } from "../raw-fact.ts";
import { together } from "../report.ts";
import { type At, declared, type Instance, isAbove, type Margin, partsOf, topOf } from "./at-node.ts";
import { explanationsOf, uncheckedBalance } from "./balance.ts";
import { choiceFacts } from "./choice.ts";
import { fittingFacts } from "./fitting.ts";
import { heatFacts } from "./heating.ts";
import { liftFacts } from "./lifts.ts";
import { oxygenFacts } from "./oxygen.ts";
import { preloadFacts } from "./preload.ts";
import { spacingFacts } from "./spacing.ts";
import { keyOfWays, threadWays } from "./thread-state.ts";
import { heaterFacts, readingFacts, wrenchFacts } from "./tools.ts";
import { torqueFacts } from "./torques.ts";
import { createUnchecked, type Unchecked } from "./unchecked.ts";

/** Every value of the procedure that does not hold. */
export function limitFactsOf(run: Run): readonly AnalysisFact[] {
  const raws: Raw[] = [];
  walk(run, (raw) => {
    const where = run.decisions.and(raw.where, run.given);
    if (where !== NEVER) raws.push({ ...raw, where });
  });
  return together(run, raws);
}

/** What could not be checked for want of data, each once, here and in what is performed. */
export function uncheckedIn(run: Run): readonly Unchecked[] {
  const unchecked = createUnchecked();
  const runs = new Set([run]);
  for (const one of runs) {
    walk(one, () => {}, unchecked.add);
    for (const arrangement of declared(one, "arrangement")) uncheckedBalance(arrangement, unchecked.add);
    for (const node of one.graph.nodes) {
      const callee = one.calleeAt(node);
      if (callee !== null) runs.add(callee.run);
    }
  }
  return unchecked.all();
}

/** What is worked out of arrangements among these. */
export function computedOf(declarations: readonly Declaration[]): readonly ComputedValue[] {
  return declarations.flatMap((declared) => {
    if (declared.kind !== "arrangement" || declared.damaged) return [];
    const { name: of, span, extent } = declared;
    return explanationsOf(declared).map((explanation): ComputedValue => {
      return { of, span, line: span, around: extent, step: null, explanation };
    });
  });
}

/** A value that is worked out, how, and in which line and step. */
export interface ComputedValue {
  /** Whose: `Wrench60 for CoverScrew`. */
  readonly of: string;
  /** The value or action it is worked out for. */
  readonly span: Span;
  /** The whole line. */
  readonly line: Span;
  /** What a line stands in that a reader takes as one: the step, or the declaration. */
  readonly around: Span;
  /** The number of the step; null for a declaration. */
  readonly step: string | null;
  readonly explanation: Explanation;
}

/** Every value that is worked out on the way through the procedure, each once, in the order of the text. */
export function computedIn(run: Run): readonly ComputedValue[] {
  const known = computed.get(run);
  if (known !== undefined) return known;
  const found = new Map<string, ComputedValue>();
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    if (state === undefined || node.operation.kind !== "act") continue;
    const { action } = node.operation.line;
    const step = node.step?.step ?? null;
    const explain: At["explain"] = ({ of, span, explanation }) => {
      const { name, value } = explanation.result;
      const key = `${span.path} ${span.start} ${of} ${name} ${show(value)}`;
      if (!found.has(key))
        found.set(key, {
          ...{ of, span, line: action.span, explanation },
          ...{ around: step?.span ?? action.span, step: step?.number ?? null },
        });
    };
    limitsAt({ run, node, state, collect: () => {}, leaveOut: () => {}, explain });
  }
  const all = [...found.values()].sort((a, b) => a.line.start - b.line.start || a.span.start - b.span.start);
  computed.set(run, all);
  return all;
}

const computed = new WeakMap<Run, readonly ComputedValue[]>();

/** A margin, and the number of the step it is kept in. */
export type StepMargin = Margin & { readonly step: string };

/** How far the values of each step are from their limits, as they are worked out for the findings: each once, the least of all passes. */
export function marginsIn(run: Run): readonly StepMargin[] {
  const found = new Map<string, StepMargin>();
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    const step = node.step?.step.number;
    if (state === undefined || step === undefined || node.operation.kind !== "act") continue;
    const margin: At["margin"] = (one) => {
      const key = `${step} ${one.kind} ${one.part} ${one.limitOf}`;
      const known = found.get(key);
      if (known === undefined || isTighter(one, known)) found.set(key, { ...one, step });
    };
    limitsAt({ run, node, state, collect: () => {}, leaveOut: () => {}, margin });
  }
  return [...found.values()];
}

/** A share is the tighter the larger it is, a distance the smaller. */
function isTighter(one: Margin, known: Margin): boolean {
  const [a, b] = [one, known].map(({ value }) => topOf(value));
  return one.kind === "preload" ? isAbove(a ?? null, b ?? null) : isAbove(b ?? null, a ?? null);
}

function walk(run: Run, collect: Collect, leaveOut: (unchecked: Unchecked) => void = () => {}): void {
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    if (state !== undefined) limitsAt({ run, node, state, collect, leaveOut });
  }
}

/** What is found at the node; `state` is that before it. */
function limitsAt(at: At): void {
  const { operation } = at.node;
  if (operation.kind === "look") {
    const { expect, tools, place } = operation.check;
    readingFacts(at, { expect, tools, place, needsTool: true });
  }
  if (operation.kind === "leave")
    for (const { expect, tools, span } of operation.step.step.records)
      readingFacts(at, {
        expect,
        tools: tools.map((tool) => ({ tool, span: tool.span })),
        place: span,
        needsTool: false,
      });
  if (operation.kind !== "act") return;
  const { line } = operation;
  const { action } = line;
  switch (action.verb) {
    case "tighten":
      tightenedFacts(at, action, partsOf(line));
      break;
    case "heat":
    case "cool":
      for (const heated of partsOf(line)) {
        heaterFacts(at, action, heated);
        if (action.verb === "heat") heatFacts(at, action, heated);
      }
      break;
    case "install":
      for (const own of partsOf(line)) {
        fittingFacts(at, line, own);
        spacingFacts(at, line, own);
      }
      break;
    case "lift":
    case "support":
      for (const lifted of partsOf(line)) liftFacts(at, line, action, lifted);
      break;
    case "apply":
    case "fill":
      oxygenFacts(at, action);
      break;
    case "choose":
      choiceFacts(at, action);
      break;
    case "measure":
      readingFacts(at, { expect: action.expect, tools: action.tools, place: action.place, needsTool: true });
      break;
    default:
  }
}

/** Of fasteners of one sort, in one condition, of which there is nothing to tell, there is nothing to tell of the others. */
function tightenedFacts(at: At, action: TightenAction, fasteners: readonly Instance[]): void {
  const silent = new Map<Part, string>();
  for (const fastener of fasteners) {
    const ways = threadWays(at, fastener);
    const condition = keyOfWays(ways);
    if (silent.get(fastener.part) === condition) continue;
    let tells = false;
    const listening: At = {
      ...at,
      collect: (raw) => {
        tells = true;
        at.collect(raw);
      },
      hangsOnWhichOne: () => {
        tells = true;
      },
    };
    wrenchFacts(listening, action, fastener);
    torqueFacts(listening, action, fastener, ways);
    preloadFacts(listening, action, fastener, ways);
    if (!tells) silent.set(fastener.part, condition);
  }
}
