// The ways through a graph against a plain walk of it with each assignment by itself. The graphs are made up: two options with two
// choices each, edges that ask for one of them, and places where the second is read anew.
import fc from "fast-check";
import { expect, test } from "vitest";
import { ALWAYS, createDecisions, type Decision, NEVER } from "#analysis/decision.ts";
import type { Run } from "#analysis/follow.ts";
import { type Sets, sectionBetween, spread, spreadBack, type Ways, waysOf } from "#analysis/ways.ts";

interface Made {
  readonly edges: readonly { readonly from: number; readonly to: number; readonly asks: Ask }[];
  /** Where the second option is read anew. */
  readonly reads: readonly number[];
  readonly some: readonly number[];
  readonly others: readonly number[];
}
type Ask = "nothing" | "a" | "not a" | "b" | "not b";
/** One assignment: the choice of a and of b. */
type So = readonly [a: boolean, b: boolean];

const NODES = 7;
const ALL_SO: readonly So[] = [
  [true, true],
  [true, false],
  [false, true],
  [false, false],
];
const node = fc.nat(NODES - 1);
const graphs = (reading: boolean): fc.Arbitrary<Made> =>
  fc.record({
    edges: fc.array(
      fc.record({ from: node, to: node, asks: fc.constantFrom<Ask>("nothing", "nothing", "a", "not a", "b", "not b") }),
      { minLength: 9, maxLength: 18, size: "max" },
    ),
    reads: reading ? fc.uniqueArray(node, { maxLength: 2 }) : fc.constant([]),
    some: fc.uniqueArray(node, { minLength: 1, maxLength: 2 }),
    others: fc.uniqueArray(node, { minLength: 1, maxLength: 2 }),
  });

const isOpenTo = (asks: Ask, [a, b]: So): boolean => ({ nothing: true, a, "not a": !a, b, "not b": !b })[asks];

function waysIn(made: Made): { ways: Ways; has: (when: Decision, so: So) => boolean } {
  const decisions = createDecisions();
  const [a, b] = ["a", "b"].map((name) => decisions.variable(name, name, ["yes", "no"], name === "b")) as [
    number,
    number,
  ];
  const is = (variable: number, yes: boolean): Decision =>
    decisions.where(variable, (value) => (value === "yes") === yes);
  const decisionOf = (asks: Ask): Decision =>
    ({ nothing: ALWAYS, a: is(a, true), "not a": is(a, false), b: is(b, true), "not b": is(b, false) })[asks];
  const nodes = Array.from({ length: NODES }, (_, id) => ({
    id,
    operation: made.reads.includes(id)
      ? { kind: "act", line: { action: { verb: "measure", reading: { id: "b" } } } }
      : { kind: "meet" },
    next: made.edges.filter(({ from }) => from === id),
  }));
  const run = {
    graph: { nodes },
    decisions,
    given: ALWAYS,
    reachOver: ({ asks }: { asks: Ask }) => decisionOf(asks),
    readings: { variable: () => b },
  } as unknown as Run;
  const has = (when: Decision, so: So): boolean =>
    decisions.and(when, decisions.and(is(a, so[0]), is(b, so[1]))) !== NEVER;
  return { ways: waysOf(run), has };
}

/** A place with one assignment, as text. */
const stateOf = (at: number, [a, b]: So): string => `${at} ${a} ${b}`;

/** From which state to which one step leads, whatever is asked. */
function steps(made: Made): readonly (readonly [from: string, to: string, fromNode: number, toNode: number])[] {
  return made.edges.flatMap(({ from, to, asks }) =>
    ALL_SO.flatMap((so) => {
      const after: readonly So[] = made.reads.includes(from)
        ? [
            [so[0], true],
            [so[0], false],
          ]
        : [so];
      return after
        .filter((now) => isOpenTo(asks, now))
        .map((now) => [stateOf(from, so), stateOf(to, now), from, to] as const);
    }),
  );
}

/** All states that are come to from some, where a step is taken. */
function walked(
  made: Made,
  seeds: Iterable<string>,
  taken: (from: number, to: number) => boolean,
  back = false,
): Set<string> {
  const seen = new Set(seeds);
  for (let before = -1; before !== seen.size; ) {
    before = seen.size;
    for (const [from, to, fromNode, toNode] of steps(made)) {
      if (!taken(fromNode, toNode)) continue;
      const [here, there] = back ? [to, from] : [from, to];
      if (seen.has(here)) seen.add(there);
    }
  }
  return seen;
}

function statesIn(sets: Sets, has: (when: Decision, so: So) => boolean): readonly string[] {
  return [...sets].flatMap(([at, when]) => ALL_SO.filter((so) => has(when, so)).map((so) => stateOf(at, so))).sort();
}
const sorted = (states: Iterable<string>): readonly string[] => [...states].sort();
const everySo = (nodes: readonly number[]): readonly string[] =>
  nodes.flatMap((at) => ALL_SO.map((so) => stateOf(at, so)));
const atNode = (state: string): number => Number(state.split(" ")[0]);
/** What nothing leads to from the first node stands in no order, and is of no account. */
const inOrder = (ways: Ways, nodes: readonly number[]): readonly number[] =>
  nodes.filter((at) => ways.order.includes(at));

test("forth and back, over the open nodes", () => {
  let count = 0;
  fc.assert(
    fc.property(graphs(true), (made) => {
      const { ways, has } = waysIn(made);
      const seeds = inOrder(ways, made.some);
      const isOpen = (at: number): boolean => !made.others.includes(at);
      const start = new Map(seeds.map((at) => [at, ALWAYS]));
      const forth = statesIn(spread(ways, start, isOpen), has);
      expect(forth).toEqual(sorted(walked(made, everySo(seeds), (from) => isOpen(from))));
      const known = new Set(ways.order);
      const back = statesIn(spreadBack(ways, start, isOpen), has).filter((state) => known.has(atNode(state)));
      const wanted = walked(made, everySo(seeds), (from) => isOpen(from), true);
      expect(back).toEqual(sorted(wanted).filter((state) => known.has(atNode(state))));
      count += forth.length + back.length;
    }),
    { numRuns: 300 },
  );
  expect(count).toBeGreaterThan(2000);
});

test("what lies between, and from where the end is come to", () => {
  let count = 0;
  fc.assert(
    fc.property(graphs(true), (made) => {
      const { ways, has } = waysIn(made);
      const starts = new Set(inOrder(ways, made.some));
      const ends = new Set(made.others);
      const section = sectionBetween(ways, starts, ends);
      const isOpen = (from: number): boolean => !starts.has(from);
      const first = new Set(
        made.edges
          .filter(({ from }) => starts.has(from))
          .flatMap(({ to, asks }) => ALL_SO.filter((so) => isOpenTo(asks, so)).map((so) => stateOf(to, so))),
      );
      const reached = walked(made, first, isOpen);
      const nodesReached = new Set([...reached].map(atNode));
      const leading = walked(
        made,
        everySo([...ends].filter((end) => nodesReached.has(end))),
        (from) => isOpen(from) && nodesReached.has(from),
        true,
      );
      expect(statesIn(section.leads, has)).toEqual(sorted(leading));
      const through = sorted(reached).filter((state) => leading.has(state));
      expect(statesIn(section.through, has)).toEqual(through);
      expect(section.order).toEqual([...new Set(through.map(atNode))].sort((one, other) => one - other));
      expect([...starts].every((at) => section.isStart(at))).toBe(true);
      expect(section.first.map(({ from, to }) => `${from} ${to}`).sort()).toEqual(
        made.edges.flatMap(({ from, to }) => (starts.has(from) ? [`${from} ${to}`] : [])).sort(),
      );
      count += through.length;
    }),
    { numRuns: 400 },
  );
  expect(count).toBeGreaterThan(1000);
});

test("what goes round lies on a loop, with each assignment by itself", () => {
  let count = 0;
  fc.assert(
    fc.property(graphs(false), (made) => {
      const { ways, has } = waysIn(made);
      const starts = new Set(inOrder(ways, made.some));
      const section = sectionBetween(ways, starts, new Set(made.others));
      const through = new Set(statesIn(section.through, has));
      const isOpen = (state: string): boolean => through.has(state) && !starts.has(atNode(state));
      const among = steps(made).filter(([from, to]) => isOpen(from) && isOpen(to));
      const ahead = (of: string): Set<string> => {
        const seen = new Set<string>();
        for (let open = [of]; open.length > 0; )
          open = open.flatMap((at) =>
            among.flatMap(([from, to]) => {
              if (from !== at || seen.has(to)) return [];
              seen.add(to);
              return [to];
            }),
          );
        return seen;
      };
      const found = new Set([...section.loops()].flatMap((loop) => statesIn(loop, has)));
      expect(sorted(found)).toEqual(sorted(through).filter((state) => ahead(state).has(state)));
      count += found.size;
    }),
    { numRuns: 400 },
  );
  expect(count).toBeGreaterThan(300);
});

test("the order is of what something leads to, by number, and what is never taken is no way", () => {
  const { ways } = waysIn({
    edges: [
      { from: 0, to: 4, asks: "a" },
      { from: 4, to: 2, asks: "nothing" },
      { from: 6, to: 1, asks: "nothing" },
    ],
    ...{ reads: [], some: [], others: [] },
  });
  expect(ways.order).toEqual([0, 2, 4]);
  expect(ways.position).toEqual([0, -1, 1, -1, 2, -1, -1]);
  expect(ways.out.map((out) => out.map(({ to }) => to))).toEqual([[4], [], [], [], [2], [], [1]]);
  expect(ways.into.map((into) => into.map(({ from }) => from))).toEqual([[], [6], [4], [], [0], [], []]);
});
