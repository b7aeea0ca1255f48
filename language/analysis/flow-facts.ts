// What is wrong with the ways through a procedure: steps that no path reaches, conditions that can never hold.
import { conditionText } from "#model/condition-text.ts";
import type { Span } from "#syntax/span.ts";
import { ALWAYS, NEVER } from "./decision.ts";
import { spanKey } from "./entries.ts";
import type { Run } from "./follow.ts";
import type { Arm, Node } from "./graph.ts";
import { idleRepeats } from "./idle-repeats.ts";
import type { Raw } from "./raw-fact.ts";

export function flowFacts(run: Run): readonly Raw[] {
  const dead = new Map<Arm, true>();
  const raws: Raw[] = [];
  // What is taken in one pass of a repeat is not dead, though later passes may leave no case for it.
  const taken = new Set<string>();
  for (const arm of run.graph.arms) if (run.reachAt(arm.edge.to) !== NEVER) taken.add(spanKey(arm.span));
  for (const arm of run.graph.arms) {
    if (run.reachAt(arm.fork) === NEVER || taken.has(spanKey(arm.span))) continue;
    dead.set(arm, true);
    const condition = arm.condition === null ? "" : conditionText(arm.condition);
    raws.push({
      fact: { kind: "impossible condition", span: arm.span, arm: arm.which, condition },
      // Never taken, whatever is chosen.
      where: ALWAYS,
      pass: [],
      subject: "",
    });
  }
  const idle = idleRepeats(run.expanded.procedure.items).map(
    ({ repeat, first, steps }): Raw => ({
      fact: { kind: "unreachable", span: first, why: "no pass", cause: repeat, steps },
      where: ALWAYS,
      pass: [],
      subject: "",
    }),
  );
  return [...raws, ...idle, ...unreachable(run, dead)];
}

/** Each run or branch that nothing leads into is told once, at its first step. */
function unreachable(run: Run, dead: ReadonlyMap<Arm, true>): readonly Raw[] {
  const isLeft = ({ id, operation }: Node): boolean => operation.kind === "enter" && run.reachAt(id) === NEVER;
  if (!run.graph.nodes.some(isLeft)) return [];
  const told = new Map<string, { raw: Raw; steps: number }>();
  const done = new Set<string>();
  for (const { id, operation } of run.graph.nodes)
    if (operation.kind === "enter" && run.reachAt(id) !== NEVER) done.add(spanKey(operation.step.step.span));
  let left: WayOut | null = null;
  for (const node of run.graph.nodes) {
    const { operation } = node;
    const reached = run.reachAt(node.id) !== NEVER;
    if (reached) left = wayOut(run, node) ?? left;
    if (operation.kind !== "enter" || done.has(spanKey(operation.step.step.span))) continue;
    const arm = node.arms.map((at) => run.graph.arms[at]).find((within) => within !== undefined && dead.has(within));
    const key = arm === undefined ? `after ${left?.node}` : `arm ${arm.edge.to}`;
    const known = told.get(key);
    if (known !== undefined) {
      known.steps++;
      continue;
    }
    const why = arm === undefined ? left?.why : "condition";
    const cause = arm === undefined ? left?.cause : arm.span;
    if (why === undefined || why === null || cause === undefined) continue;
    told.set(key, {
      steps: 1,
      raw: {
        fact: { kind: "unreachable", span: operation.step.step.headSpan, why, cause, steps: 1 },
        where: ALWAYS,
        pass: operation.step.pass,
        subject: "",
      },
    });
  }
  return [...told.values()].map(({ raw, steps }) => ({ ...raw, fact: { ...raw.fact, steps } }));
}

/** Where the work does not go on with what stands next. */
interface WayOut {
  readonly node: number;
  readonly cause: Span;
  readonly why: "stop" | "jump" | null;
}

/** A stop, a jump, or the performing of a procedure that stops on every path. */
function wayOut(run: Run, { id, operation, next }: Node): WayOut | null {
  // A jump that cannot be followed is told as such; what stands behind it is no further mistake.
  if (operation.kind === "jump" && next.length === 0) return { node: id, cause: operation.jump.span, why: null };
  if (operation.kind === "stop" || operation.kind === "jump")
    return { node: id, cause: operation.jump.span, why: operation.kind };
  if (operation.kind !== "act" || operation.line.action.verb !== "perform") return null;
  const goesOn = next.some((edge) => run.reachAt(edge.to) !== NEVER);
  return goesOn ? null : { node: id, cause: operation.line.action.place, why: "stop" };
}
