// Needs of actions that are not met, each as a fact with its place, its subject and where the state came from.
import type { Action } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { Need, Trouble } from "./action.ts";
import type { Entry } from "./cell.ts";
import { type Decision, NEVER } from "./decision.ts";
import type { Origin } from "./fact.ts";
import { cellOf, type State, whereShown } from "./flow-state.ts";
import type { Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import { isSaidAtEnd } from "./leaving.ts";
import { knownCell, originOf } from "./origin.ts";
import { base, type Collect, type Raw } from "./raw-fact.ts";
import { holders, shows, standsFor } from "./state-values.ts";
import { stepSpanOf, type Unmet, workFact, workSubject } from "./work-facts.ts";
import { instanceName } from "./world.ts";

/** Tells a need that is not met where it is not; `state` is that before the instance's turn. */
export function missing(run: Run, node: Node, state: State, need: Need, collect: Collect): void {
  if (need.trouble.kind === "closed over") {
    closedOver(run, node, state, need, need.trouble, collect);
    return;
  }
  let where: Decision = state.reach;
  for (const { variable, test } of need.bad) {
    where = run.decisions.and(where, whereShown(run, state, variable, test));
    if (where === NEVER) return;
  }
  if (node.operation.kind !== "act" && node.operation.kind !== "ask") return;
  const { line } = node.operation;
  const [first] = need.bad;
  const entry = first === undefined ? undefined : firstEntry(run, state, first.variable, first.test, where);
  const from = entry?.from ?? 0;
  const unmet = { node, action: line.action, need, value: entry?.value ?? "", since: originOf(run, from) };
  collect({ ...told(run, state, unmet, need.trouble), where, pass: line.pass, node: node.id, from });
}

type Told = Pick<Raw, "fact" | "subject">;

function told(run: Run, state: State, unmet: Unmet, trouble: Exclude<Trouble, { kind: "closed over" }>): Told {
  const { node, action, need, value, since } = unmet;
  const span = action.place;
  switch (trouble.kind) {
    case "not installed":
      return { fact: { ...trouble, span, since }, subject: base(trouble.part) };
    case "already installed": {
      const spare = isCertain(run, state, need) ? spareText(node, action) : null;
      return { fact: { ...trouble, span, since, spare }, subject: base(trouble.part) };
    }
    case "occupied": {
      const { kind, part, place } = trouble;
      const [least = ""] = standsFor(value);
      const [key] = holders(least).filter((other) => other !== trouble.key);
      const holder = run.world.partOf(key ?? "");
      const by = holder === undefined ? (key ?? "") : instanceName(holder.part, holder.index);
      return { fact: { kind, part, place, by, span, since }, subject: base(part) };
    }
    case "wrong place":
      return { fact: { ...trouble, span }, subject: base(trouble.part) };
    case "missing support": {
      const { variable, ...rest } = trouble;
      const laterAt = laterGiver(run, node, variable);
      const stepSpan = stepSpanOf(node, action);
      return {
        fact: { ...rest, span, since, laterAt, stepSpan },
        subject: `${base(trouble.part)} ${base(trouble.needs)}`,
      };
    }
    case "enclosed":
    case "retained":
      return { fact: { ...trouble, span, since }, subject: `${base(trouble.part)} ${base(trouble.by)}` };
    default:
      return { fact: workFact(run, unmet, trouble), subject: workSubject(trouble) };
  }
}

/** Each place that put the aid in has a finding of its own. */
function closedOver(
  run: Run,
  node: Node,
  state: State,
  need: Need,
  trouble: Extract<Trouble, { kind: "closed over" }>,
  collect: Collect,
): void {
  const [inside] = need.bad;
  if (inside === undefined || node.operation.kind !== "act") return;
  for (const entry of cellOf(run, state, inside.variable)) {
    if (!inside.test(entry.value) || run.isSupposed(entry.from)) continue;
    if (isSaidAtEnd(run, inside.variable, entry.value)) continue;
    const { what, closedBy } = trouble;
    collect({
      fact: {
        kind: "left behind",
        span: originOf(run, entry.from).span,
        what,
        nature: "temporary",
        closedBy,
        closedAt: node.operation.line.action.place,
        removeText: `remove ${what}`,
        // A later line that takes it out has to be moved: with one more it would come to what is out already.
        mendAt:
          isCertain(run, state, need) &&
          node.step !== null &&
          later(run, node, inside.variable, TAKES_OUT) === undefined
            ? { before: node.step.step.span }
            : null,
      },
      where: run.decisions.and(state.reach, entry.when),
      pass: run.graph.nodes[entry.from]?.step?.pass ?? [],
      subject: base(what),
      node: node.id,
      from: entry.from,
    });
  }
}

/** Whether the need is unmet on every path that leads here. */
function isCertain(run: Run, state: State, need: Need): boolean {
  return need.bad.every(({ variable, test }) => {
    const sound = run.cells.where(cellOf(run, state, variable), (value) => !shows(value, test));
    return run.decisions.and(state.reach, sound) === NEVER;
  });
}

/** What can go without taking anything else along: the whole step where it says no more than this. */
function spareText(node: Node, action: Action): Span | null {
  const step = node.step?.step;
  if (step === undefined || !("objects" in action) || action.objects.length !== 1 || !step.lines.includes(action))
    return null;
  if (step.lines.length > 1) return action.span;
  return step.name === null && step.words === null && step.span.end === action.span.end ? step.span : null;
}

function firstEntry(
  run: Run,
  state: State,
  variable: number,
  test: (value: string) => boolean,
  where: Decision,
): Entry | undefined {
  return knownCell(run, state, variable).find(
    (entry) => shows(entry.value, test) && run.decisions.and(entry.when, where) !== NEVER,
  );
}

const PUTS_IN: ReadonlySet<string> = new Set(["install", "press"]);
const TAKES_OUT: ReadonlySet<string> = new Set(["remove", "discard"]);

/** Where, after this, the part is put in for the first time: the step that should come earlier. */
function laterGiver(run: Run, node: Node, variable: number): Origin | null {
  const giver = later(run, node, variable, PUTS_IN);
  return giver === undefined ? null : originOf(run, giver.id);
}

/** The first line after this that does one of these and changes the variable by it. */
function later(run: Run, node: Node, variable: number, verbs: ReadonlySet<string>): Node | undefined {
  return run
    .changedAt(variable)
    .find(({ id, operation }) => id > node.id && operation.kind === "act" && verbs.has(operation.line.action.verb));
}
