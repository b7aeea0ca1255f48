// Which part goes where on a ring so that the least unbalance is left: exact for small sets, a search with a bound for others.
// Works on plain numbers and positions; knows no arrangement, no file and no unit.

/** A part to be placed: its moment about the axis (mass, where all sit at one radius), and the position that it has to keep. */
export interface ToPlace {
  /** In any unit, the same for all. */
  readonly moment: number;
  /** From 1; null where it may go anywhere. */
  readonly fixed: number | null;
  /** Where it is now, from 1; null where it has no place yet. */
  readonly now: number | null;
}

export interface Proposal {
  /** The position of each part, from 1, in the order given. */
  readonly positions: readonly number[];
  /** What is left, in the unit of the moments. */
  readonly residual: number;
  /** No arrangement leaves less than this. */
  readonly bound: number;
  /** Whether every arrangement was looked at or shown to be no better. */
  readonly exact: boolean;
}

/**
 * Places each part on one of as many equally spaced positions so that `|Σ mᵢ·(cos θᵢ, sin θᵢ)|` is least, θ = 360°·(position − 1)/n.
 *
 * Up to {@link EXACT} parts branch and bound: parts with the largest difference from the mean first, the first of them in position 1
 * unless some part is fixed (turning all of them changes nothing), like parts once. A branch is left where what is placed, u its
 * direction, cannot be outweighed: the rest adds at least `Σ dⱼ·(u·e)` with the differences and the projections sorted against each
 * other (rearrangement inequality, Hardy, Littlewood, Pólya 1934, theorem 368; memory). Larger sets: descent by exchanging two parts,
 * begun again from changed arrangements with a fixed seed, and ended after a number of exchanges, so that the same input gives the
 * same answer on every machine. The bound is that of the first branches, with the direction that shows most. The project's own method.
 *
 * Of the arrangements that are the same but for a turn or a mirror image, the one that moves fewest parts. Null where no arrangement
 * is possible: two parts fixed in one position, a position that is not there, a moment that is no finite number.
 */
export function arrange(parts: readonly ToPlace[]): Proposal | null {
  const ring = ringOf(parts);
  if (ring === null) return null;
  const start = startOf(ring);
  const size = Math.max(...parts.map(({ moment }) => Math.abs(moment)), 0);
  const found = ring.free.length <= EXACT ? branches(ring, start) : search(ring, start);
  const exact = ring.free.length <= EXACT;
  const positions = nearest(ring, better(ring, found, start, size));
  const left = residualOf(ring, positions);
  const rounding = NEGLIGIBLE * size * ring.count;
  const residual = left <= rounding ? 0 : left;
  const least = exact ? residual : boundOf(ring);
  const bound = least + rounding < residual ? least : residual;
  return { positions: positions.map((at) => at + 1), residual, bound, exact: bound === residual };
}

/** What these positions leave, for the same parts. */
export function unbalanceOf(parts: readonly ToPlace[], positions: readonly number[]): number {
  const ring = ringOf(parts.map(({ moment }) => ({ moment, fixed: null, now: null })));
  return ring === null
    ? Number.NaN
    : residualOf(
        ring,
        positions.map((at) => at - 1),
      );
}

/** Sets up to this size are solved exactly: eleven parts are at most 1,814,400 arrangements that differ. */
export const EXACT = 11;
/** Exchanges that a search looks at. */
const MOST_EXCHANGES = 4_000_000;
/** Rounding of the sines, as a share of what was added up. */
const NEGLIGIBLE = 1e-12;

interface Ring {
  readonly count: number;
  readonly parts: readonly ToPlace[];
  /** Moments less their mean: like moments all round leave nothing. */
  readonly differences: readonly number[];
  /** Unit vectors of the positions, from 0. */
  readonly cos: readonly number[];
  readonly sin: readonly number[];
  /** Parts that may go anywhere, by the size of their difference, the largest first. */
  readonly free: readonly number[];
  /** Positions that no part is fixed in. */
  readonly open: readonly number[];
  /** What the fixed parts leave. */
  readonly fixed: Vector;
}
type Vector = readonly [x: number, y: number];

function ringOf(parts: readonly ToPlace[]): Ring | null {
  const count = parts.length;
  const kept = parts.flatMap(({ fixed }) => (fixed === null ? [] : [fixed]));
  const isSound = kept.every((at) => Number.isInteger(at) && at >= 1 && at <= count);
  if (count === 0 || !isSound || new Set(kept).size < kept.length) return null;
  if (!parts.every(({ moment }) => Number.isFinite(moment))) return null;
  // One part by itself has nothing across from it.
  const mean = count === 1 ? 0 : parts.reduce((sum, { moment }) => sum + moment, 0) / count;
  const differences = parts.map(({ moment }) => moment - mean);
  const turns = Array.from({ length: count }, (_, at) => (2 * Math.PI * at) / count);
  const [cos, sin] = [turns.map(Math.cos), turns.map(Math.sin)];
  const size = (part: number): number => Math.abs(differences[part] ?? 0);
  // Like parts beside each other.
  const free = parts
    .flatMap(({ fixed }, part) => (fixed === null ? [part] : []))
    .sort((a, b) => size(b) - size(a) || (differences[b] ?? 0) - (differences[a] ?? 0));
  const open = turns.flatMap((_, at) => (kept.includes(at + 1) ? [] : [at]));
  let [x, y] = [0, 0];
  parts.forEach(({ fixed }, part) => {
    if (fixed === null) return;
    x += (differences[part] ?? 0) * (cos[fixed - 1] ?? 0);
    y += (differences[part] ?? 0) * (sin[fixed - 1] ?? 0);
  });
  return { count, parts, differences, cos, sin, free, open, fixed: [x, y] };
}

/** As it is now where every part has a place of its own; else in the order given, round what is fixed. */
function startOf({ parts, count, open }: Ring): number[] {
  const now = parts.map(({ fixed, now: at }) => (fixed ?? at ?? 0) - 1);
  const isWhole = new Set(now).size === count && now.every((at) => Number.isInteger(at) && at >= 0 && at < count);
  if (isWhole) return now;
  const left = [...open];
  return parts.map(({ fixed }) => (fixed === null ? (left.shift() ?? 0) : fixed - 1));
}

/** The arrangement found, unless what is there leaves no more. */
function better(ring: Ring, found: readonly number[], start: readonly number[], size: number): readonly number[] {
  return residualOf(ring, start) <= residualOf(ring, found) + NEGLIGIBLE * size * ring.count ? start : found;
}

function residualOf({ differences, cos, sin }: Ring, positions: readonly number[]): number {
  let [x, y] = [0, 0];
  positions.forEach((at, part) => {
    x += (differences[part] ?? 0) * (cos[at] ?? 0);
    y += (differences[part] ?? 0) * (sin[at] ?? 0);
  });
  return Math.hypot(x, y);
}

/* ---- exact ---- */

function branches(ring: Ring, start: readonly number[]): readonly number[] {
  const { differences, cos, sin, free, open, count } = ring;
  const least = leastOf(ring);
  const positions = [...start];
  const taken = new Set<number>();
  let best: readonly number[] = start;
  let smallest = residualOf(ring, start);
  const place = (depth: number, x: number, y: number): void => {
    const part = free[depth];
    if (part === undefined) {
      const left = Math.hypot(x, y);
      if (left < smallest) [smallest, best] = [left, [...positions]];
      return;
    }
    if (least(depth, taken, x, y) >= smallest) return;
    const own = differences[part] ?? 0;
    // Like parts stand in rising positions: exchanging them changes nothing.
    const before = depth > 0 ? free[depth - 1] : undefined;
    const from = before !== undefined && differences[before] === own ? (positions[before] ?? -1) : -1;
    for (const at of open) {
      if (taken.has(at) || at <= from) continue;
      // Turned and mirrored alike: the first in position 1, the second in its half of the circle.
      if (open.length === count && (depth === 0 ? at > 0 : depth === 1 && at > count / 2)) return;
      taken.add(at);
      positions[part] = at;
      place(depth + 1, x + own * (cos[at] ?? 0), y + own * (sin[at] ?? 0));
      taken.delete(at);
    }
  };
  place(0, ...ring.fixed);
  return best;
}

/** The least that can be left once the parts up to `depth` are placed, together at (x, y), and the positions taken. */
function leastOf(ring: Ring) {
  const { cos, sin, free, open } = ring;
  const rest = free.map((_, depth) => restFrom(ring, depth));
  return (depth: number, taken: ReadonlySet<number>, x: number, y: number): number => {
    const size = Math.hypot(x, y);
    if (size === 0) return 0;
    const left = open.filter((at) => !taken.has(at));
    const projections = left.map((at) => ((cos[at] ?? 0) * x + (sin[at] ?? 0) * y) / size);
    return Math.max(0, size + opposed(rest[depth] ?? [], projections));
  };
}

/** The differences of the parts from this depth on, rising. */
function restFrom({ differences, free }: Ring, depth: number): readonly number[] {
  return free
    .slice(depth)
    .map((part) => differences[part] ?? 0)
    .sort((a, b) => a - b);
}

/** The least sum of products: the largest difference where the projection is smallest. */
function opposed(rising: readonly number[], projections: number[]): number {
  projections.sort((a, b) => b - a);
  return rising.reduce((sum, own, nth) => sum + own * (projections[nth] ?? 0), 0);
}

/** What the first branches leave at least: two parts deep, or one where the place of the first is not a matter of turning. */
function boundOf(ring: Ring): number {
  const { differences, cos, sin, free, open, count, fixed } = ring;
  const isFree = open.length === count;
  const leaves = isFree ? open.filter((at) => at > 0 && at <= count / 2).map((at) => [0, at]) : open.map((at) => [at]);
  const depth = isFree ? 2 : 1;
  const rest = restFrom(ring, depth);
  let bound = Number.POSITIVE_INFINITY;
  for (const leaf of leaves) {
    let [x, y] = fixed;
    leaf.forEach((at, nth) => {
      const own = differences[free[nth] ?? -1] ?? 0;
      x += own * (cos[at] ?? 0);
      y += own * (sin[at] ?? 0);
    });
    const left = open.filter((at) => !leaf.includes(at));
    const along = (angle: number): number => {
      const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
      return (
        x * ux +
        y * uy +
        opposed(
          rest,
          left.map((at) => (cos[at] ?? 0) * ux + (sin[at] ?? 0) * uy),
        )
      );
    };
    // Each direction gives a bound; this looks for a good one.
    bound = Math.min(bound, highest(along, 4 * count));
    if (bound <= 0) return 0;
  }
  return Number.isFinite(bound) ? bound : 0;
}

/** The largest of samples round the circle, and of ever closer ones beside it. */
function highest(f: (angle: number) => number, samples: number): number {
  let step = (2 * Math.PI) / samples;
  let best = 0;
  for (let at = 1; at < samples; at++) if (f(at * step) > f(best)) best = at * step;
  for (; step > 1e-9; step /= 2) for (const next of [best - step, best + step]) if (f(next) > f(best)) best = next;
  return f(best);
}

/* ---- search ---- */

function search(ring: Ring, start: readonly number[]): readonly number[] {
  const { free } = ring;
  const random = randomFrom(SEED);
  const budget = { left: MOST_EXCHANGES };
  let best = descend(ring, [...start], budget);
  let smallest = residualOf(ring, best);
  while (budget.left > 0 && smallest > 0) {
    const changed = [...best];
    // Three exchanges are enough to leave a dip, and few enough not to lose what was found.
    for (let nth = 0; nth < 3; nth++) exchange(changed, pick(free, random), pick(free, random));
    const next = descend(ring, changed, budget);
    const left = residualOf(ring, next);
    if (left < smallest) [smallest, best] = [left, next];
  }
  return best;
}

const SEED = 21940;

/** The best exchange of two parts, again and again until none makes it less. */
function descend(ring: Ring, positions: number[], budget: { left: number }): number[] {
  const { differences, cos, sin, free } = ring;
  let [x, y] = [0, 0];
  positions.forEach((at, part) => {
    x += (differences[part] ?? 0) * (cos[at] ?? 0);
    y += (differences[part] ?? 0) * (sin[at] ?? 0);
  });
  for (;;) {
    let smallest = Math.hypot(x, y);
    let best: { readonly a: number; readonly b: number; readonly to: Vector } | null = null;
    for (let i = 0; i < free.length; i++) {
      const a = free[i] ?? 0;
      for (let j = i + 1; j < free.length; j++) {
        const b = free[j] ?? 0;
        const [pa, pb] = [positions[a] ?? 0, positions[b] ?? 0];
        const change = (differences[b] ?? 0) - (differences[a] ?? 0);
        const to: Vector = [
          x + change * ((cos[pa] ?? 0) - (cos[pb] ?? 0)),
          y + change * ((sin[pa] ?? 0) - (sin[pb] ?? 0)),
        ];
        const left = Math.hypot(...to);
        if (left < smallest) [smallest, best] = [left, { a, b, to }];
      }
    }
    budget.left -= (free.length * (free.length - 1)) / 2;
    if (best === null || budget.left <= 0) return positions;
    exchange(positions, best.a, best.b);
    [x, y] = best.to;
  }
}

function exchange(positions: number[], a: number, b: number): void {
  [positions[a], positions[b]] = [positions[b] ?? 0, positions[a] ?? 0];
}

function pick(from: readonly number[], random: () => number): number {
  return from[Math.floor(random() * from.length)] ?? 0;
}

/** Numbers from 0 to below 1, always the same ones (linear congruence modulo 2³²; Numerical Recipes, second). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}

/* ---- of many that are alike ---- */

/** Turned, and mirrored, so that most parts stay where they are; as it is where a part is fixed or has no place. */
function nearest({ parts, count, free }: Ring, positions: readonly number[]): readonly number[] {
  if (free.length < count) return positions;
  const stays = (one: readonly number[]): number =>
    parts.filter(({ now }, part) => now !== null && one[part] === now - 1).length;
  let best: readonly number[] = positions;
  for (const way of [1, -1]) {
    for (let by = 0; by < count; by++) {
      const turned = positions.map((at) => (((way * at + by) % count) + count) % count);
      if (stays(turned) > stays(best)) best = turned;
    }
  }
  return best;
}
