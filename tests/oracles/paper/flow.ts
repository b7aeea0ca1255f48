// What is wrong with the ways through a procedure, whatever is done on them: from what the brute-force run has come past, and from how
// the text is nested. Knows no state.
import type { Outline, Program } from "./program.ts";
import type { SimItem } from "./shop.ts";

/** Under one assignment: what was come past, and where it led: instructions, each with what was read by then. */
export interface Course {
  readonly so: Readonly<Record<string, string>>;
  readonly ways: ReadonlyMap<string, ReadonlySet<string>>;
}

export function placeOf(at: number, read: string): string {
  return `${at} ${read}`;
}

/** `so`: the assignment under which it is so; null for whatever is chosen. */
export interface FlowTrouble {
  readonly code: string;
  readonly at: string;
  readonly so: Readonly<Record<string, string>> | null;
}

export function flowTroubles(
  items: readonly SimItem[],
  { outline, instructions }: Program,
  courses: readonly Course[],
): readonly FlowTrouble[] {
  const always = (code: string, at: string): FlowTrouble => ({ code: `flow.${code}`, at, so: null });
  const reached = courses.map(({ so, ways }) => ({ so, at: new Set([...ways.keys()].map(instructionOf)) }));
  const isReached = (at: number): boolean => reached.some((under) => under.at.has(at));
  const dead = deadArms(outline, isReached);
  const end = instructions.length - 1;
  return [
    ...emptyBlocks(items).map((at) => always("empty", at)),
    ...dead.map((at) => always("impossible-condition", at)),
    ...unreached(outline, dead, isReached).map((at) => always("unreachable", at)),
    ...badJumps(outline, reached),
    ...courses.flatMap(({ so, ways }) => endless(outline, ways, end).map((at) => ({ code: "flow.endless", at, so }))),
  ];
}

interface Reached {
  readonly so: Course["so"];
  readonly at: ReadonlySet<number>;
}

function instructionOf(place: string): number {
  return Number(place.split(" ")[0]);
}

/** Branches to whose fork the work comes, and which it never takes, in no pass of a repeat. */
function deadArms({ arms }: Outline, isReached: (at: number) => boolean): readonly string[] {
  const taken = new Set(arms.filter(({ to }) => isReached(to)).map(({ at }) => at));
  return [...new Set(arms.filter(({ fork, at }) => isReached(fork) && !taken.has(at)).map(({ at }) => at))];
}

/**
 * Steps that nothing comes to: the first of each branch, or of those that follow one another. Behind a jump that nobody can follow they
 * are no further mistake.
 */
function unreached(
  { stations }: Outline,
  dead: readonly string[],
  isReached: (at: number) => boolean,
): readonly string[] {
  const done = new Set(stations.filter(({ first }) => isReached(first)).map(({ at }) => at));
  const told = new Map<string, string>();
  let run = 0;
  let isAfterBad = false;
  for (const { kind, at, first, arms, isBad } of stations) {
    if (isReached(first)) {
      run++;
      isAfterBad = isBad;
    }
    if (kind !== "step" || done.has(at)) continue;
    const arm = arms.find((one) => dead.includes(one));
    const key = arm ?? `run ${run}`;
    if (!told.has(key) && (arm !== undefined || !isAfterBad)) told.set(key, at);
  }
  return [...new Set(told.values())];
}

/** Where it is come to, under those assignments; else it is a mistake all the same. */
function badJumps({ stations }: Outline, reached: readonly Reached[]): readonly FlowTrouble[] {
  const bad = new Map<string, Reached[]>();
  for (const { kind, at, first, isBad } of stations) {
    if (kind === "step" || !isBad) continue;
    const under = reached.filter((one) => one.at.has(first));
    bad.set(at, [...(bad.get(at) ?? []), ...under]);
  }
  return [...bad].flatMap(([at, under]): FlowTrouble[] => {
    const code = "flow.bad-jump";
    return under.length === 0 ? [{ code, at, so: null }] : under.map(({ so }) => ({ code, at, so }));
  });
}

/** Jumps back from which neither the end nor a stop can be come to; of several in one loop the last. */
function endless({ stations }: Outline, ways: Course["ways"], end: number): readonly string[] {
  const isEnd = (place: string): boolean => instructionOf(place) === end || ways.get(place)?.size === 0;
  const back = new Map(stations.filter(({ kind }) => kind === "return to").map(({ first, at }) => [first, at]));
  const caught = [...ways.keys()].flatMap((place) => {
    const first = instructionOf(place);
    const at = back.get(first);
    const after = at === undefined ? null : reachedFrom(ways, place);
    return at === undefined || after === null || [...after].some(isEnd) || !after.has(place)
      ? []
      : [{ at, first, after }];
  });
  const last = caught.filter(
    ({ first, after }) =>
      !caught.some((other) => other.first > first && [...after].some((place) => instructionOf(place) === other.first)),
  );
  return [...new Set(last.map(({ at }) => at))];
}

function reachedFrom(ways: Course["ways"], start: string): ReadonlySet<string> {
  const found = new Set<string>();
  const open = [...(ways.get(start) ?? [])];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    if (found.has(place)) continue;
    found.add(place);
    open.push(...(ways.get(place) ?? []));
  }
  return found;
}

/** The heads of blocks without a step or a jump, the outermost of each. */
function emptyBlocks(items: readonly SimItem[]): readonly string[] {
  const found: string[] = [];
  let head = 0;
  const hasWork = (item: SimItem): boolean => {
    if (item.kind === "step" || item.kind === "jump") return true;
    return blocksOf(item, "").some(({ inside }) => inside.some(hasWork));
  };
  const look = (list: readonly SimItem[], isTold: boolean): void => {
    for (const item of list) {
      if (item.kind === "jump") continue;
      const at = `head ${head++}`;
      for (const block of item.kind === "step" ? [] : blocksOf(item, at)) {
        const isEmpty = !block.inside.some(hasWork);
        if (isEmpty && !isTold) found.push(block.at);
        look(block.inside, isTold || isEmpty);
      }
    }
  };
  look(items, false);
  return found;
}

function blocksOf(
  item: Exclude<SimItem, { kind: "step" | "jump" }>,
  at: string,
): readonly { readonly at: string; readonly inside: readonly SimItem[] }[] {
  switch (item.kind) {
    case "any order":
      return [{ at, inside: item.children }];
    case "when":
    case "when read":
      return [
        { at, inside: item.inside },
        ...(item.otherwise === null ? [] : [{ at: `otherwise ${at}`, inside: item.otherwise }]),
      ];
    default:
      return [{ at, inside: item.items }];
  }
}
