// Ways through a procedure against graphology, a graph library: what is reached, which loops have no way out, what is passed
// on every path, the longest time, and declared order. The graphs are built here from what was made up, not from the checker's.
import fc from "fast-check";
import { DirectedGraph } from "graphology";
import { stronglyConnectedComponents } from "graphology-components";
import { topologicalSort } from "graphology-dag";
import { expect, test } from "vitest";
import { NEVER } from "#analysis/decision.ts";
import { onPaper } from "../analysis/run-on-paper.ts";

/** A step as it is made up; jumps lead to steps by number. */
interface MadeStep {
  /** Seconds. */
  readonly takes: number;
  /** What a failed check does, before the end of the step. */
  readonly fails: Exit | null;
  /** What is always done behind the step. */
  readonly always: Exit | null;
}
type Exit = { readonly kind: "stop" } | { readonly kind: "jump"; readonly to: number };

/** One step in the graph: where it is entered, and behind its end. */
const entry = (at: number): string => `in ${at}`;
const behind = (at: number): string => `out ${at}`;
const START = "start";
const END = "end";

const SIZE = { minLength: 2, maxLength: 9 };

const exit: fc.Arbitrary<(size: number) => Exit> = fc.oneof(
  { weight: 1, arbitrary: fc.constant(() => ({ kind: "stop" }) as const) },
  { weight: 4, arbitrary: fc.nat(999).map((to) => (size: number) => ({ kind: "jump", to: to % size }) as const) },
);
const among = <T>(some: fc.Arbitrary<T>, weight: number, none: number): fc.Arbitrary<T | null> =>
  fc.oneof({ weight, arbitrary: some }, { weight: none, arbitrary: fc.constant(null) });
const madeSteps: fc.Arbitrary<readonly MadeStep[]> = fc
  .array(
    fc.record({
      takes: fc.integer({ min: 2, max: 60 }),
      fails: among(exit, 1, 1),
      always: among(exit, 1, 4),
    }),
    { ...SIZE, size: "max" },
  )
  .map((steps) =>
    steps.map(({ takes, fails, always }) => ({
      takes,
      fails: fails?.(steps.length) ?? null,
      always: always?.(steps.length) ?? null,
    })),
  );

function graphOf(steps: readonly MadeStep[]): DirectedGraph {
  const graph = new DirectedGraph();
  for (const node of [START, END, ...steps.flatMap((_, at) => [entry(at), behind(at)])]) graph.addNode(node);
  const leave = (from: string, to: Exit, at: number): void => {
    const stop = `stop ${from} ${at}`;
    if (to.kind === "stop") graph.addNode(stop);
    graph.mergeEdge(from, to.kind === "stop" ? stop : entry(to.to));
  };
  graph.addEdge(START, entry(0));
  steps.forEach(({ fails, always }, at) => {
    graph.addEdge(entry(at), behind(at));
    if (fails !== null) leave(entry(at), fails, at);
    if (always !== null) leave(behind(at), always, at);
    else graph.addEdge(behind(at), at + 1 < steps.length ? entry(at + 1) : END);
  });
  return graph;
}

/** All that can be reached from the node, itself only where a loop leads back. */
function reachedFrom(graph: DirectedGraph, from: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const waiting = [from];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop())
    for (const next of graph.outNeighbors(node)) {
      if (seen.has(next)) continue;
      seen.add(next);
      waiting.push(next);
    }
  return seen;
}

/** The text, one step a line, jumps behind it on a line of their own. `also`: further lines of a step. */
function textOf(
  steps: readonly MadeStep[],
  also: (at: number) => readonly string[] = () => [],
): { text: string; lineOf: ReadonlyMap<string, number> } {
  const lines = ['procedure Work "Work" {'];
  const lineOf = new Map<string, number>();
  const words = (at: number, to: Exit): string => {
    if (to.kind === "stop") return 'stop "Ask."';
    return `${to.to <= at ? "return" : "go"} to S${to.to}`;
  };
  steps.forEach(({ takes, fails, always }, at) => {
    lines.push(`step S${at} { takes ${takes} s`);
    for (const line of also(at)) {
      lineOf.set(`${at} ${line}`, lines.length);
      lines.push(line);
    }
    lineOf.set(`fails ${at}`, lines.length);
    lines.push(fails === null ? "}" : `check "It is so" if it fails { ${words(at, fails)} } }`);
    lineOf.set(`always ${at}`, lines.length);
    if (always !== null) lines.push(words(at, always));
  });
  return { text: [...lines, "}"].join("\n"), lineOf };
}

const RUNS = { numRuns: 250 };

test("what is reached, and how many steps are not", () => {
  let compared = 0;
  let unreached = 0;
  fc.assert(
    fc.property(madeSteps, (steps) => {
      const reached = reachedFrom(graphOf(steps), START);
      const { facts, runs } = onPaper(textOf(steps).text);
      const ours = new Map<string, boolean>();
      for (const node of runs[0]?.graph.nodes ?? [])
        if (node.operation.kind === "enter")
          ours.set(node.operation.step.step.name ?? "", runs[0]?.reachAt(node.id) !== NEVER);
      expect([...ours]).toEqual(steps.map((_, at) => [`S${at}`, reached.has(entry(at))]));
      const missed = steps.filter((_, at) => !reached.has(entry(at))).length;
      const told = facts.flatMap(({ fact }) => (fact.kind === "unreachable" ? [fact.steps] : []));
      expect(told.reduce((sum, one) => sum + one, 0)).toBe(missed);
      compared += steps.length;
      unreached += missed;
    }),
    RUNS,
  );
  console.log(`graphology: ${compared} steps reached or not, ${unreached} of them not`);
  expect(compared).toBeGreaterThan(900);
  expect(unreached).toBeGreaterThan(50);
});

test("loops with no way out, at the jumps that close them", () => {
  let compared = 0;
  let found = 0;
  fc.assert(
    fc.property(madeSteps, (steps) => {
      const graph = graphOf(steps);
      const reached = reachedFrom(graph, START);
      const { text, lineOf } = textOf(steps);
      const wanted: number[] = [];
      for (const loop of stronglyConnectedComponents(graph)) {
        const inside = new Set(loop);
        if (loop.some((node) => graph.outNeighbors(node).some((next) => !inside.has(next)))) continue;
        const closing = steps.flatMap(({ fails, always }, at) =>
          (
            [
              [fails, entry(at), `fails ${at}`],
              [always, behind(at), `always ${at}`],
            ] as const
          ).flatMap(([exitOf, from, line]) => {
            const leadsBack = exitOf?.kind === "jump" && exitOf.to <= at && inside.has(from) && reached.has(from);
            return leadsBack ? [lineOf.get(line) ?? -1] : [];
          }),
        );
        // Of one loop the last jump is told.
        wanted.push(...closing.slice(-1));
      }
      const ours = onPaper(text).facts.flatMap(({ code, line }) => (code === "flow.endless" ? [line] : []));
      expect(ours.sort((a, b) => a - b)).toEqual(wanted.sort((a, b) => a - b));
      compared += steps.filter(({ fails, always }) => fails !== null || always !== null).length;
      found += wanted.length;
    }),
    { numRuns: 400 },
  );
  console.log(`graphology: ${compared} steps that jump, ${found} loops without a way out`);
  expect(found).toBeGreaterThan(40);
});

test("after and before: broken where one can be done without the other, and the other comes then", () => {
  let compared = 0;
  let found = 0;
  let dominated = 0;
  fc.assert(
    fc.property(
      madeSteps,
      fc.array(fc.tuple(fc.nat(99), fc.nat(99), fc.boolean()), { size: "max", maxLength: 8 }),
      (steps, wishes) => {
        const graph = graphOf(steps);
        const said = new Map<string, { at: number; line: string; earlier: number; later: number }>();
        for (const [one, other, isAfter] of wishes) {
          const [at, to] = [one % steps.length, other % steps.length];
          const line = `${isAfter ? "after" : "before"} S${to}`;
          if (at !== to) said.set(`${at} ${line}`, { at, line, earlier: isAfter ? to : at, later: isAfter ? at : to });
        }
        const { text, lineOf } = textOf(steps, (at) =>
          [...said.values()].filter((wish) => wish.at === at).map(({ line }) => line),
        );
        const wanted = [...said].flatMap(([key, { earlier, later }]) => {
          // The earlier one's end is taken out of the graph: what is still reached does not need it.
          const without = graph.copy();
          without.dropNode(behind(earlier));
          const isDominated = !reachedFrom(without, START).has(entry(later));
          if (isDominated) dominated++;
          const comesThen = reachedFrom(without, entry(later)).has(entry(earlier));
          return !isDominated && comesThen ? [lineOf.get(key) ?? -1] : [];
        });
        const ours = onPaper(text).facts.flatMap(({ code, line }) => (code === "order.declared" ? [line] : []));
        expect(ours.sort((a, b) => a - b)).toEqual(wanted.sort((a, b) => a - b));
        compared += said.size;
        found += wanted.length;
      },
    ),
    RUNS,
  );
  console.log(
    `graphology: ${compared} declared orders, ${found} broken; ${dominated} of steps that every path passes first`,
  );
  expect(found).toBeGreaterThan(50);
  expect(compared - found).toBeGreaterThan(50);
});

const LEFT = "left";

/** Seconds from where one step is left to the end of another on the longest path; null for any number, undefined where none leads. */
function longest(
  graph: DirectedGraph,
  steps: readonly MadeStep[],
  from: number,
  to: number,
): number | null | undefined {
  const way = graph.copy();
  way.addNode(LEFT);
  // It is left at its end and by a jump; where it is come to once more, the time begins anew.
  for (const next of [behind(from), entry(from)].flatMap((node) => graph.outNeighbors(node)))
    if (next !== behind(from)) way.mergeEdge(LEFT, next);
  for (const next of graph.outNeighbors(entry(from))) way.dropEdge(entry(from), next);
  const ahead = reachedFrom(way, LEFT);
  if (!ahead.has(entry(to))) return undefined;
  for (const node of graph.nodes()) {
    const leads = node === entry(to) || reachedFrom(way, node).has(entry(to));
    if (!ahead.has(node) || !leads) way.dropNode(node);
  }
  if (
    stronglyConnectedComponents(way).some((loop) => loop.length > 1) ||
    way.nodes().some((node) => way.hasEdge(node, node))
  )
    return null;
  const time = new Map([[LEFT, 0]]);
  let most: number | undefined;
  for (const node of topologicalSort(way)) {
    const here = time.get(node);
    if (here === undefined) continue;
    const after = here + (node.startsWith("in ") ? (steps[Number(node.slice(3))]?.takes ?? 0) : 0);
    if (node === entry(to)) most = Math.max(most ?? 0, after);
    for (const next of way.outNeighbors(node)) time.set(next, Math.max(time.get(next) ?? 0, after));
  }
  return most;
}

test("within: silent at the longest path, found a second below it, always found with a loop on the way", () => {
  let compared = 0;
  let loops = 0;
  fc.assert(
    fc.property(madeSteps, fc.array(fc.nat(99), { minLength: 9, maxLength: 9 }), (steps, wishes) => {
      const graph = graphOf(steps);
      const reached = reachedFrom(graph, START);
      const limits = steps.map((_, at) => {
        const from = (wishes[at] ?? 0) % steps.length;
        return { from, most: reached.has(behind(from)) ? longest(graph, steps, from, at) : undefined };
      });
      for (const less of [0, 1]) {
        const line = (at: number): string => `within ${(limits[at]?.most ?? 9999) - less} s after S${limits[at]?.from}`;
        const { text, lineOf } = textOf(steps, (at) => [line(at)]);
        const ours = onPaper(text).facts.flatMap((one) => (one.code === "order.too-late" ? [one.line] : []));
        const wanted = limits.flatMap(({ most }, at) => {
          const isLate = most === null || (most !== undefined && less === 1);
          return isLate ? [lineOf.get(`${at} ${line(at)}`) ?? -1] : [];
        });
        expect(ours.sort((a, b) => a - b)).toEqual(wanted.sort((a, b) => a - b));
      }
      compared += limits.filter(({ most }) => typeof most === "number").length;
      loops += limits.filter(({ most }) => most === null).length;
    }),
    { numRuns: 400 },
  );
  console.log(`graphology: ${compared} longest paths, ${loops} with a loop on the way`);
  expect(compared).toBeGreaterThan(300);
  expect(loops).toBeGreaterThan(100);
});

test("declared order on up to 300 steps: found exactly where the order breaks it, and nowhere in topological order", () => {
  let compared = 0;
  let broken = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 300 }).chain((size) =>
        fc.record({
          // Where each task stands in the order that is hidden behind the graph, and in that of the text.
          hidden: fc.shuffledSubarray([...Array(size).keys()], { minLength: size }),
          laidOut: fc.shuffledSubarray([...Array(size).keys()], { minLength: size }),
          pairs: fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1), fc.boolean()), {
            minLength: size,
            maxLength: size,
          }),
        }),
      ),
      ({ hidden, laidOut, pairs }) => {
        const tasks = new DirectedGraph();
        for (const task of hidden) tasks.addNode(`S${task}`);
        const lines = new Map<string, string[]>();
        for (const [one, other, isAfter] of pairs) {
          const [first, second] = [Math.min(one, other), Math.max(one, other)].map((place) => `S${hidden[place]}`);
          if (first === second || first === undefined || second === undefined || tasks.hasEdge(first, second)) continue;
          tasks.addEdge(first, second);
          const [says, said] = isAfter ? [second, `after ${first}`] : [first, `before ${second}`];
          lines.set(says, [...(lines.get(says) ?? []), said]);
        }
        const check = (order: readonly string[]): { ours: readonly string[]; wanted: readonly string[] } => {
          const place = new Map(order.map((task, at) => [task, at]));
          const text = `procedure Work "Work" {\n${order
            .map((task) => `step ${task} {\n${(lines.get(task) ?? []).join("\n")}\n}`)
            .join("\n")}\n}`;
          const source = text.split("\n");
          const named = (line: number): string =>
            `${source.slice(0, line).findLast((one) => one.startsWith("step "))} ${source[line]}`;
          const ours = onPaper(text).facts.map(({ code, line }) => `${code} ${named(line)}`);
          const wanted = tasks
            .mapEdges((_, __, first, second) => [first, second] as const)
            .filter(([first, second]) => (place.get(first) ?? 0) > (place.get(second) ?? 0))
            .map(([first, second]) => {
              const isAfter = lines.get(second)?.includes(`after ${first}`) === true;
              return `order.declared step ${isAfter ? second : first} { ${isAfter ? `after ${first}` : `before ${second}`}`;
            });
          return { ours: [...ours].sort(), wanted: wanted.sort() };
        };
        const random = check(laidOut.map((task) => `S${task}`));
        expect(random.ours).toEqual(random.wanted);
        const sound = check(topologicalSort(tasks));
        expect(sound).toEqual({ ours: [], wanted: [] });
        compared += 2 * tasks.size;
        broken += random.wanted.length;
      },
    ),
    { numRuns: 40 },
  );
  console.log(`graphology: ${compared} declared orders on task graphs, ${broken} broken`);
  expect(broken).toBeGreaterThan(200);
});
