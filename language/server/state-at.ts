// The state before and after a line or step, as the follower knows it, and in a writer's words. Follows each procedure of a
// workspace once, however often it is asked. Knows no meaning of its own.
import { createDecisions } from "#analysis/decision.ts";
import type { State } from "#analysis/flow-state.ts";
import { type FollowContext, followProcedure, pass, type Run, stateBefore } from "#analysis/follow.ts";
import type { Node } from "#analysis/graph.ts";
import { createSummaries } from "#analysis/summaries.ts";
import type { Thing } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Procedure } from "#model/procedure.ts";
import type { Workspace } from "#workspace/workspace.ts";

/** One pass of the step or line; several states where several orders lead there, none where nobody ever comes. */
export interface Moment {
  readonly pass: Pass;
  readonly before: readonly State[];
  readonly after: readonly State[];
  /** What the action of this pass is done on, and the second thing it names; nothing for a whole step. */
  readonly things: readonly Thing[];
}

/** What happens at a place of the text. */
export interface Happening {
  readonly run: Run;
  /** In the order of the passes. */
  readonly moments: readonly Moment[];
  readonly of: "line" | "step";
}

/**
 * The procedure followed for who is writing it; null where it is too large to be: the line that is being written makes nothing unknown before it, also where it follows the
 * head and might have belonged to that.
 */
export function runWhileTyped(workspace: Workspace, procedure: Procedure): Run | null {
  if (procedure.unknownAtStart.length === 0) return workspace.run(procedure);
  const known = begun.get(procedure);
  if (known !== undefined) return known;
  const { expandedOf } = workspace;
  const expanded = workspace.expanded(procedure);
  const context: FollowContext = { decisions: createDecisions(), expandedOf, chosen: {}, summaries: createSummaries() };
  const sound = { ...expanded, procedure: { ...procedure, unknownAtStart: [] } };
  const made = expanded.tooLarge === null ? followProcedure(sound, context) : null;
  begun.set(procedure, made);
  return made;
}

const begun = new WeakMap<Procedure, Run | null>();

/** The line at an offset, or the step where no line of its own happens there; null between steps. */
export function happeningAt(run: Run, offset: number): Happening | null {
  const line = run.graph.nodes.filter((node) => holds(lineSpan(node), offset));
  // A block's own condition is asked where it begins; what stands in it is nearer.
  const nearest = narrowest(line);
  if (nearest.length > 0) return { run, moments: momentsOf(run, nearest.map(alone)), of: "line" };
  const step = run.graph.nodes.find(
    ({ operation }) => operation.kind === "enter" && holds(operation.step.step.span, offset),
  );
  if (step?.operation.kind !== "enter") return null;
  const { span } = step.operation.step.step;
  const entries = run.graph.entries.get(`${span.path}:${span.start}`) ?? [];
  const stretches = entries.map(({ node, leave, pass: of }) => ({ first: node, last: leave, pass: of }));
  return { run, moments: momentsOf(run, stretches), of: "step" };
}

/** What is so where a statement is being written: before the line there, else after the last line that ends before it. */
export function statesWhereTyped(run: Run, offset: number): readonly State[] {
  const here = narrowest(run.graph.nodes.filter((node) => holds(lineSpan(node), offset)));
  if (here.length > 0) return here.flatMap((node) => stateBefore(run, node.id) ?? []);
  let last: Node[] = [];
  let end = -1;
  for (const node of run.graph.nodes) {
    const to = lineSpan(node)?.end ?? -1;
    if (to < 0 || to > offset || to < end) continue;
    last = to > end ? [node] : [...last, node];
    end = to;
  }
  if (last.length === 0) last = run.graph.nodes.filter(({ operation }) => operation.kind === "begin").slice(-1);
  if (last.length === 0) last = run.graph.nodes.slice(0, 1);
  return last.flatMap((node) => stateAfter(run, node.id) ?? []);
}

interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly pass: Pass;
  readonly things?: readonly Thing[];
}

function alone({ id, operation, step }: Node): Stretch {
  if (!("line" in operation)) return { first: id, last: id, pass: step?.pass ?? [] };
  const { line } = operation;
  const things = [...line.objects, ...(line.second === null ? [] : [line.second])];
  return { first: id, last: id, pass: line.pass, things };
}

function momentsOf(run: Run, stretches: readonly Stretch[]): readonly Moment[] {
  const byPass = new Map<string, { pass: Pass; before: State[]; after: State[]; things: Thing[] }>();
  for (const { first, last, pass: of, things = [] } of stretches) {
    const key = of.map(({ variable, value }) => `${variable}=${value}`).join(",");
    const moment = byPass.get(key) ?? { pass: of, before: [], after: [], things: [...things] };
    byPass.set(key, moment);
    const before = stateBefore(run, first);
    const after = stateAfter(run, last);
    if (before !== undefined) moment.before.push(before);
    if (after !== undefined) moment.after.push(after);
  }
  return [...byPass.values()];
}

/** What is so once the node is done; a performed procedure asks first and acts then. */
function stateAfter(run: Run, id: number): State | undefined {
  const node = run.graph.nodes[id];
  const before = node === undefined ? undefined : stateBefore(run, id);
  return node === undefined || before === undefined ? undefined : pass(run, node, before);
}

interface Place {
  readonly path: string;
  readonly start: number;
  readonly end: number;
}

function lineSpan({ operation }: Node): Place | null {
  switch (operation.kind) {
    case "act":
      return operation.line.action.span;
    case "damaged":
      return operation.damaged.span;
    case "jump":
    case "stop":
      return operation.jump.span;
    default:
      return null;
  }
}

function holds(span: Place | null, offset: number): boolean {
  return span !== null && span.start <= offset && offset <= span.end;
}

/** Where two lines touch at the offset, the one that begins there. */
function narrowest(nodes: readonly Node[]): readonly Node[] {
  const starts = nodes.map((node) => lineSpan(node)?.start ?? -1);
  const latest = Math.max(-1, ...starts);
  return nodes.filter((_, at) => starts[at] === latest);
}
