// Rework loops with no way out: from the jump that closes one neither the end nor a stop is reached, whatever checks and
// readings say. Knows no state but what each edge is taken with.
import { type Decision, NEVER } from "./decision.ts";
import type { Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import { headOf } from "./named-steps.ts";
import type { Raw } from "./raw-fact.ts";
import { type Sets, spread, spreadBack, type Ways, waysOf } from "./ways.ts";

export function endlessFacts(run: Run): readonly Raw[] {
  const jumps = run.graph.nodes.filter(({ id, operation }) => isReturn(operation) && run.reachAt(id) !== NEVER);
  if (jumps.length === 0) return [];
  const ways = waysOf(run);
  const canEnd = spreadBack(ways, pathEnds(run, ways), () => true);
  return jumps.flatMap((node): readonly Raw[] => {
    const { operation } = node;
    const where = withoutWayOut(ways, canEnd, node.id, jumps);
    if (where === NEVER || operation.kind !== "jump" || operation.jump.kind === "stop") return [];
    const { step, span } = operation.jump;
    const toSpan = headOf(run.expanded.procedure, step);
    const fact = { kind: "endless", span, to: step.name, toSpan } as const;
    return [{ fact, where, pass: node.step?.pass ?? [], subject: "" }];
  });
}

function isReturn(operation: Node["operation"]): boolean {
  return operation.kind === "jump" && operation.jump.kind === "return";
}

/**
 * Where paths end: at the end, at a stop, at a jump that is not followed, in a performed procedure that can stop or that
 * never comes back (which is told where it stands).
 */
function pathEnds(run: Run, ways: Ways): Sets {
  const { and, or, not } = run.decisions;
  const ends = new Map<number, Decision>();
  for (const node of run.graph.nodes) {
    const goesOn = (ways.out[node.id] ?? []).reduce((so, { when }) => or(so, when), NEVER);
    const callee = run.calleeAt(node);
    const stops = callee === null ? NEVER : stopsIn(callee.run, new Set());
    const ending = and(run.reachAt(node.id), or(not(goesOn), stops));
    if (ending !== NEVER) ends.set(node.id, ending);
  }
  return ends;
}

/** For which choices a procedure can stop, itself or in what it performs. */
function stopsIn(run: Run, seen: Set<Run>): Decision {
  const { and, or, visible } = run.decisions;
  if (seen.has(run)) return NEVER;
  seen.add(run);
  return run.graph.nodes.reduce((so, node) => {
    const callee = run.calleeAt(node);
    const stops = node.operation.kind === "stop" ? run.reachAt(node.id) : NEVER;
    const deeper = callee === null ? NEVER : and(run.reachAt(node.id), stopsIn(callee.run, seen));
    return or(so, visible(or(stops, deeper)));
  }, NEVER);
}

/**
 * The assignments with which the jump leads back for ever: all that follows it leads to it again, and none of it to an end. Of
 * several jumps of one loop it is the last: where that led on, there would be a way out.
 */
function withoutWayOut(ways: Ways, canEnd: Sets, jump: number, jumps: readonly Node[]): Decision {
  const { run, out } = ways;
  const { and, not, visible } = run.decisions;
  const caught = and(run.reachAt(jump), not(canEnd.get(jump) ?? NEVER));
  const [back] = out[jump] ?? [];
  if (caught === NEVER || back === undefined) return NEVER;
  const after = spread(ways, new Map([[back.to, and(caught, back.when)]]), () => true);
  // What leads on into another loop, which is the one without a way out, has a way out itself.
  const again = spreadBack(ways, new Map([[jump, caught]]), (node) => after.has(node));
  const away = new Map<number, Decision>();
  for (const [node, when] of after) {
    const gone = and(when, not(again.get(node) ?? NEVER));
    if (gone !== NEVER) away.set(node, gone);
  }
  const leaves = spreadBack(ways, away, (node) => after.has(node));
  const closed = visible(and(caught, not(leaves.get(back.to) ?? NEVER)));
  const own = placeOf(run.graph.nodes[jump]);
  return jumps
    .filter((other) => placeOf(other) > own)
    .reduce((so, { id }) => and(so, not(visible(after.get(id) ?? NEVER))), closed);
}

function placeOf(node: Node | undefined): number {
  return node?.operation.kind === "jump" ? node.operation.jump.span.start : 0;
}
