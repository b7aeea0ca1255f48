// The ways through a block that may be done in any order: what is taken after what has been done. Knows no graph and no work: what
// it is to take a child, and where ways meet, is given.

/** First all orders of some children, or of runs of children that come one after the other; then the others, in one order. */
export interface Trial {
  readonly every: readonly (readonly number[])[];
  readonly after: readonly number[];
}

/** Loose ends of ways; none where nothing goes on. */
type Ends<End> = readonly End[];

interface Making<End> {
  readonly meet: (ends: Ends<End>) => Ends<End>;
  /** The last of `done` is done now, the others before it. */
  readonly take: (done: readonly number[], ends: Ends<End>) => Ends<End>;
}

/** Of up to so many runs each order is written out, and what is found shows in just that order; of more, sets of them. */
const WRITTEN_OUT = 4;

/** Each trial by itself; returns where they all end. */
export function waysThrough<End>(trials: readonly Trial[], from: Ends<End>, making: Making<End>): Ends<End> {
  return trials.flatMap(({ every, after }) => {
    const start = making.meet(from);
    const open = every.length <= WRITTEN_OUT ? eachOrder(every, [], start, making) : everySet(every, start, making);
    const met = open.length > 1 ? making.meet(open) : open;
    return oneAfterAnother(every.flat(), after, met, making);
  });
}

/** Orders that begin alike share what they have in common. */
function eachOrder<End>(
  runs: Trial["every"],
  done: readonly number[],
  ends: Ends<End>,
  making: Making<End>,
): Ends<End> {
  if (runs.length === 0 || ends.length === 0) return ends;
  const met = ends.length > 1 ? making.meet(ends) : ends;
  return runs.flatMap((run) => {
    const open = oneAfterAnother(done, run, met, making);
    const others = runs.filter((other) => other !== run);
    return eachOrder(others, [...done, ...run], open, making);
  });
}

/**
 * All orders without writing out each: what has been done so far is a set, and every set of k runs is reached from those
 * of k - 1. With three runs a, b, c:
 *
 *   {} ─ a ─ {a} ─ b ─ {a,b} ─ c ─ {a,b,c}
 *    ├─ b ─ {b} ┬ a ───┘              │
 *    └─ c ─ {c} ┴ …  each set is one meeting of ways
 */
function everySet<End>(runs: Trial["every"], ends: Ends<End>, making: Making<End>): Ends<End> {
  const full = 2 ** runs.length - 1;
  const arriving = new Map<number, Ends<End>>([[0, ends]]);
  const sets = Array.from({ length: full + 1 }, (_, set) => set).sort((a, b) => size(a) - size(b) || a - b);
  for (const set of sets) {
    const open = arriving.get(set) ?? [];
    if (set === full || open.length === 0) continue;
    const met = making.meet(open);
    const done = runs.filter((_, at) => (set & (1 << at)) !== 0).flat();
    runs.forEach((run, at) => {
      if ((set & (1 << at)) !== 0) return;
      const after = set | (1 << at);
      arriving.set(after, [...(arriving.get(after) ?? []), ...oneAfterAnother(done, run, met, making)]);
    });
  }
  return arriving.get(full) ?? [];
}

function size(set: number): number {
  let count = 0;
  for (let rest = set; rest > 0; rest &= rest - 1) count++;
  return count;
}

/** Some children in the order given, once others are done. */
function oneAfterAnother<End>(
  before: readonly number[],
  order: readonly number[],
  ends: Ends<End>,
  { take }: Making<End>,
): Ends<End> {
  return order.reduce((open, _, at) => take([...before, ...order.slice(0, at + 1)], open), ends);
}
