// Ways through a flow graph under path conditions: for which assignments one place leads to another, what lies between,
// and what goes round in a loop. Knows nodes and edges, no state and no time.
import { ALWAYS, type Decision, NEVER } from "./decision.ts";
import type { Run } from "./follow.ts";

/** An edge that is taken for some assignments. */
export interface Way {
  readonly from: number;
  readonly to: number;
  readonly when: Decision;
}

/** The ways of one run that the choices fixed from outside leave, both ways round. */
export interface Ways {
  readonly run: Run;
  readonly out: readonly (readonly Way[])[];
  readonly into: readonly (readonly Way[])[];
  /** Nodes in an order in which only what closes a loop leads back, and where each stands in it. */
  readonly order: readonly number[];
  readonly position: readonly number[];
  /** What is left of a set when the node is passed: a new reading may fall anywhere. */
  readonly passed: (node: number, when: Decision) => Decision;
}

export function waysOf(run: Run): Ways {
  const { nodes } = run.graph;
  const out: Way[][] = nodes.map(() => []);
  const into: Way[][] = nodes.map(() => []);
  const measured = new Map<number, number>();
  for (const { id, operation, next } of nodes) {
    for (const edge of next) {
      const when = run.decisions.and(run.reachOver(edge), run.given);
      const way: Way = { from: id, to: edge.to, when };
      if (way.when === NEVER) continue;
      out[id]?.push(way);
      into[edge.to]?.push(way);
    }
    if (operation.kind !== "act" || operation.line.action.verb !== "measure") continue;
    const { reading } = operation.line.action;
    const variable = reading === null ? null : run.readings.variable(reading);
    if (variable !== null) measured.set(id, variable);
  }
  const passed = (node: number, when: Decision): Decision => {
    const variable = measured.get(node);
    return variable === undefined ? when : run.decisions.forget(when, variable);
  };
  const order = sorted(out);
  const position: number[] = nodes.map(() => -1);
  order.forEach((node, at) => {
    position[node] = at;
  });
  return { run, out, into, order, position, passed };
}

/** For each node the assignments with which it is entered; those not named, none. */
export type Sets = ReadonlyMap<number, Decision>;

/**
 * From where the seeds stand, along the ways.
 * @param isOpen whether a way is gone on from the node
 */
export function spread(ways: Ways, seeds: Sets, isOpen: (node: number) => boolean): Sets {
  const { and } = ways.run.decisions;
  return settle(ways, seeds, 1, (node, here, give) => {
    if (!isOpen(node)) return;
    const after = ways.passed(node, here);
    for (const { to, when } of ways.out[node] ?? []) give(to, and(after, when));
  });
}

/** Against the ways, to the open nodes from which a seed can be reached. */
export function spreadBack(ways: Ways, seeds: Sets, isOpen: (node: number) => boolean): Sets {
  const { and } = ways.run.decisions;
  return settle(ways, seeds, -1, (node, here, give) => {
    for (const { from, when } of ways.into[node] ?? [])
      if (isOpen(from)) give(from, ways.passed(from, and(here, when)));
  });
}

/** What lies on the ways from behind some nodes to others. A start is an end only where one comes back to it. */
export interface Section {
  readonly ways: Ways;
  /** The first of it: the edges out of the starts. */
  readonly first: readonly Way[];
  readonly isStart: (node: number) => boolean;
  /** Of all nodes on the way. */
  readonly order: readonly number[];
  /** With which assignments the node is entered on a way from a start to an end. */
  readonly through: Sets;
  /** With which an end can be reached from it. */
  readonly leads: Sets;
  /** Nodes that can be gone through again and again, each time those of all loops through one node; looked for as they are asked for. */
  readonly loops: () => Iterable<Sets>;
}

export function sectionBetween(ways: Ways, starts: ReadonlySet<number>, ends: ReadonlySet<number>): Section {
  const { and, or } = ways.run.decisions;
  const first = [...starts].flatMap((start) => ways.out[start] ?? []);
  const isOpen = (node: number): boolean => !starts.has(node);
  const ahead = new Map<number, Decision>();
  for (const { to, when } of first) ahead.set(to, or(ahead.get(to) ?? NEVER, when));
  const reached = spread(ways, ahead, isOpen);
  const behind = new Map([...ends].filter((end) => reached.has(end)).map((end) => [end, ALWAYS]));
  const leads = spreadBack(ways, behind, (node) => isOpen(node) && reached.has(node));
  const through = new Map<number, Decision>();
  for (const [node, when] of reached) {
    const both = and(when, leads.get(node) ?? NEVER);
    if (both !== NEVER) through.set(node, both);
  }
  const order = [...through.keys()].sort((a, b) => (ways.position[a] ?? 0) - (ways.position[b] ?? 0));
  const section = { ways, first, isStart: (node: number) => starts.has(node), order, through, leads };
  return { ...section, loops: () => loopsIn(ways, order, (node) => isOpen(node) && through.has(node), through) };
}

/**
 * The loops among open nodes. A loop has one node that stands first in the order, and something leads back to that; so those
 * through each such node, among the nodes behind it, are all.
 */
function* loopsIn(ways: Ways, among: readonly number[], isOpen: (node: number) => boolean, at: Sets): Generator<Sets> {
  const { and, or } = ways.run.decisions;
  const place = (node: number): number => ways.position[node] ?? 0;
  for (const head of among) {
    const isBehind = (node: number): boolean => isOpen(node) && place(node) >= place(head);
    if (!isBehind(head) || !(ways.into[head] ?? []).some(({ from }) => isBehind(from))) continue;
    const back = spreadBack(ways, new Map([[head, ALWAYS]]), isBehind);
    const start = at.get(head) ?? NEVER;
    const forth = spread(ways, new Map([[head, start]]), (node) => back.has(node));
    let closed: Decision = NEVER;
    for (const { from, when } of ways.into[head] ?? [])
      if (back.has(from)) closed = or(closed, and(ways.passed(from, forth.get(from) ?? NEVER), when));
    if (closed === NEVER) continue;
    const loop = new Map<number, Decision>();
    for (const [node, when] of forth) {
      const both = node === head ? closed : and(when, back.get(node) ?? NEVER);
      if (both !== NEVER) loop.set(node, both);
    }
    yield loop;
  }
}

/** Gives on what stands at each node until nothing grows, in the order of the nodes so that each is mostly done once. */
function settle(
  { order, position, run }: Ways,
  seeds: Sets,
  direction: 1 | -1,
  give: (node: number, here: Decision, to: (node: number, when: Decision) => void) => void,
): Sets {
  const sets = new Map(seeds);
  const waiting = new Set(seeds.keys());
  let at = direction === 1 ? order.length : -1;
  const goBack = (node: number): void => {
    const place = position[node] ?? -1;
    if (place >= 0 && (place - at) * direction < 0) at = place;
  };
  for (const node of waiting) goBack(node);
  while (waiting.size > 0 && at >= 0 && at < order.length) {
    const node = order[at];
    at += direction;
    if (node === undefined || !waiting.delete(node)) continue;
    give(node, sets.get(node) ?? NEVER, (to, when) => {
      const old = sets.get(to) ?? NEVER;
      const now = run.decisions.or(old, when);
      if (now === old) return;
      sets.set(to, now);
      waiting.add(to);
      goBack(to);
    });
  }
  return sets;
}

/** The nodes that something leads to. Their numbers rise on every way but those of jumps back. */
function sorted(out: Ways["out"]): readonly number[] {
  const seen = new Set([0]);
  const open = [0];
  for (let node = open.pop(); node !== undefined; node = open.pop())
    for (const { to } of out[node] ?? []) {
      if (seen.has(to)) continue;
      seen.add(to);
      open.push(to);
    }
  return [...seen].sort((a, b) => a - b);
}
