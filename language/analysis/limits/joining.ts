// At which temperatures parts that are fitted hot or cold go together, so that an output can say what to measure. Knows no output.
import { cmp } from "#quantity/rational.ts";
import { NEVER } from "../decision.ts";
import { type Run, stateBefore } from "../follow.ts";
import { stepKey } from "../hazards/reminders.ts";
import { instanceKey } from "../world.ts";
import { type At, type JoinedAt, partsOf } from "./at-node.ts";
import { fittingFacts } from "./fitting.ts";

/** Two parts as they go together. */
export interface Joining extends JoinedAt {
  /** Which of the two is installed: its {@link instanceKey}. */
  readonly installed: string;
}

/** By the step that joins them, not by place, which changes with every key: see {@link stepKey}. */
export type Joinings = ReadonlyMap<string, readonly Joining[]>;

/** Of a procedure and all that it performs, each pair once in its step: of ways that options leave open the one with the coolest outer part. */
export function joiningsIn(run: Run): Joinings {
  const found = new Map<string, Map<string, Joining>>();
  const runs = new Set([run]);
  for (const one of runs)
    for (const node of one.graph.nodes) {
      const callee = one.calleeAt(node);
      if (callee !== null) runs.add(callee.run);
      const state = stateBefore(one, node.id);
      if (state === undefined || node.step === null) continue;
      const key = stepKey(one.expanded.procedure, node.step.step.number);
      const inStep = found.get(key) ?? new Map<string, Joining>();
      for (const joining of joiningsAt({ run: one, node, state, collect: () => {}, leaveOut: () => {} })) {
        const pair = pairKey(joining);
        const known = inStep.get(pair);
        if (known === undefined || isCooler(joining, known)) inStep.set(pair, joining);
      }
      if (inStep.size > 0) found.set(key, inStep);
    }
  return new Map([...found].map(([key, inStep]) => [key, [...inStep.values()]]));
}

function joiningsAt(at: At): readonly Joining[] {
  const { operation } = at.node;
  if (operation.kind !== "act" || operation.line.action.verb !== "install") return [];
  const { line } = operation;
  const found: Joining[] = [];
  for (const { part, index } of partsOf(line)) {
    const joining: At["joining"] = (joined, where) => {
      if (at.run.decisions.and(where, at.run.given) !== NEVER)
        found.push({ ...joined, installed: instanceKey(part, index) });
    };
    fittingFacts({ ...at, joining }, line, { part, index });
  }
  return found;
}

function pairKey({ outer, inner }: Joining): string {
  return [outer, inner].map(({ part, index }) => instanceKey(part, index)).join(" ");
}

function isCooler(one: Joining, known: Joining): boolean {
  const [a, b] = [one, known].map(({ outerAtLeast }) => outerAtLeast.low);
  return a != null && b != null && cmp(a.base, b.base) < 0;
}
