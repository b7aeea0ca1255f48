// The longest time that the work can take on its way between two places, for each assignment of options: upper times on the
// worst path. Knows no findings.
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";
import type { Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import { type StepTime, stepTime, upperSeconds } from "./step-times.ts";
import { type Section, sectionBetween, type Ways, waysOf } from "./ways.ts";

export interface Longest {
  /** Where a loop that takes time lies on the way, so that it may take any time. */
  readonly loop: Decision;
  /** Elsewhere: the most seconds, as far as times are said. The sets are disjoint; longest first. */
  readonly worst: readonly Timed[];
  /** Steps on the way that do not say how long they take, and with which assignments they lie on it. */
  readonly open: readonly { readonly node: number; readonly when: Decision }[];
}

export interface Timed {
  readonly time: number;
  readonly when: Decision;
}

/** What is worked out once for all that is asked of the runs. */
export interface Timing {
  readonly ways: Map<Run, Ways>;
  readonly whole: Map<Run, Longest>;
  readonly steps: Map<unknown, StepTime>;
}

export function createTiming(): Timing {
  return { ways: new Map(), whole: new Map(), steps: new Map() };
}

/**
 * From behind the starts to the ends, those with what they take.
 * @param limit in seconds; times that stay within it need not be told apart
 */
export function longestBetween(
  timing: Timing,
  run: Run,
  starts: ReadonlySet<number>,
  ends: ReadonlySet<number>,
  limit: number,
): Longest {
  const section = sectionBetween(waysIn(timing, run), starts, ends);
  const { and, or, not, visible } = run.decisions;
  let loop: Decision = NEVER;
  const open: { node: number; when: Decision }[] = [];
  const look = (at: number, when: Decision): void => {
    const node = run.graph.nodes[at];
    if (node === undefined) return;
    const { endless, unsaid } = doubtAt(timing, run, node);
    loop = or(loop, visible(and(when, endless)));
    const unknown = visible(and(when, unsaid));
    if (unknown !== NEVER) open.push({ node: at, when: unknown });
  };
  for (const at of section.order) look(at, section.through.get(at) ?? NEVER);
  const whole = [...ends].reduce((so, end) => or(so, visible(section.through.get(end) ?? NEVER)), NEVER);
  for (const one of section.loops()) {
    // Where it can take any time whatever is chosen, more loops tell nothing.
    if (and(whole, not(loop)) === NEVER) break;
    for (const [at, when] of one) {
      const node = run.graph.nodes[at];
      if (node !== undefined) loop = or(loop, visible(and(when, takesTime(timing, run, node))));
    }
  }
  return { loop, worst: worstOf(timing, run, section, ends, limit, and(whole, not(loop))), open };
}

/** What a whole procedure takes, from its start to its end. */
function longestOf(timing: Timing, run: Run): Longest {
  const known = timing.whole.get(run);
  if (known !== undefined) return known;
  const made = longestBetween(timing, run, new Set([0]), new Set([run.graph.end]), Number.NEGATIVE_INFINITY);
  timing.whole.set(run, made);
  return made;
}

function waysIn(timing: Timing, run: Run): Ways {
  const made = timing.ways.get(run) ?? waysOf(run);
  timing.ways.set(run, made);
  return made;
}

function timeOf(timing: Timing, node: Node): StepTime | null {
  const { operation } = node;
  if (operation.kind !== "enter") return null;
  const made = timing.steps.get(operation.step) ?? stepTime(operation.step);
  timing.steps.set(operation.step, made);
  return made;
}

function waitAt({ operation }: Node): number {
  if (operation.kind !== "act" || operation.line.action.verb !== "wait") return 0;
  return upperSeconds(operation.line.action.time) ?? 0;
}

/** For which choices the node goes round in a loop of a performed procedure, or does not say how long it takes. */
function doubtAt(timing: Timing, run: Run, node: Node): { endless: Decision; unsaid: Decision } {
  const callee = run.calleeAt(node)?.run;
  if (callee === undefined) return { endless: NEVER, unsaid: timeOf(timing, node)?.isOpen === true ? ALWAYS : NEVER };
  const { loop, open } = longestOf(timing, callee);
  // A step that performs it may say how long all of that takes.
  const isSaid = upperSeconds(node.step?.step.takes ?? null) !== null;
  return { endless: loop, unsaid: isSaid ? NEVER : open.reduce((so, { when }) => run.decisions.or(so, when), NEVER) };
}

function takesTime(timing: Timing, run: Run, node: Node): Decision {
  const callee = run.calleeAt(node)?.run;
  if (callee === undefined) return waitAt(node) > 0 || (timeOf(timing, node)?.takes ?? 0) > 0 ? ALWAYS : NEVER;
  const { loop, worst } = longestOf(timing, callee);
  return worst.reduce((so, { time, when }) => (time > 0 ? run.decisions.or(so, when) : so), loop);
}

/*
 * A step takes what it says or what its waits and what it performs come to, whichever is more. Which of the two that is, is known at its end; so
 * both are carried through it, as two ways to do it: by the clock of the whole step, or by that of its waits.
 */
interface Carried extends Timed {
  readonly byWaits: boolean;
}

function worstOf(
  timing: Timing,
  run: Run,
  section: Section,
  ends: ReadonlySet<number>,
  limit: number,
  where: Decision,
): readonly Timed[] {
  if (where === NEVER) return [];
  const { decisions, graph } = run;
  const { and, or, visible } = decisions;
  const { order, through, leads, ways } = section;
  const still = stillToCome(timing, run, section);
  const place = new Map(order.map((node, at) => [node, at]));
  const arrived = new Map<number, readonly Carried[]>();
  const sides = new Map<number, Decision>();
  const waiting = new Set<number>();
  let at = 0;
  let spent = 0;
  const arrive = (to: number, list: readonly Carried[], over: Decision): void => {
    if (!through.has(to)) return;
    const way = and(and(over, leads.get(to) ?? NEVER), where);
    const left = list.flatMap((one): readonly Carried[] => {
      const when = and(one.when, way);
      return when === NEVER || one.time + (still.get(to) ?? Infinity) <= limit ? [] : [{ ...one, when }];
    });
    const old = arrived.get(to) ?? [];
    if (old.length > 0) spent += old.length + left.length;
    const most = spent > COSTLY ? MOST_WHEN_COSTLY : MOST_TIMES;
    const so = sides.get(to) ?? NEVER;
    const areApart = and(so, way) === NEVER;
    const now = old.length === 0 ? left : longestFirst(decisions, [...old, ...left], limit, most, areApart);
    if (left.length === 0 || isSame(old, now)) return;
    sides.set(to, or(so, way));
    arrived.set(to, now);
    waiting.add(to);
    at = Math.min(at, place.get(to) ?? at);
  };
  for (const { to, when } of section.first) arrive(to, [{ time: 0, when: ALWAYS, byWaits: true }], when);
  while (waiting.size > 0 && at < order.length) {
    const node = graph.nodes[order[at++] ?? -1];
    if (node === undefined || !waiting.delete(node.id) || section.isStart(node.id)) continue;
    const after = passing(timing, run, node, arrived.get(node.id) ?? [], limit).map((one) => ({
      ...one,
      when: ways.passed(node.id, one.when),
    }));
    for (const { to, when } of ways.out[node.id] ?? []) arrive(to, after, when);
  }
  const done = [...ends].flatMap((end) => arrived.get(end) ?? []);
  const shown = done.map(({ time, when }) => ({ time, when: visible(when), byWaits: true }));
  return longestFirst(decisions, shown, limit).map(({ time, when }) => ({ time, when }));
}

/** What has been carried to the node, with what happens at it. */
function passing(timing: Timing, run: Run, node: Node, list: readonly Carried[], limit: number): readonly Carried[] {
  const { decisions } = run;
  const callee = run.calleeAt(node)?.run;
  if (callee !== undefined) {
    const { worst } = longestOf(timing, callee);
    const performed = (one: Carried): readonly Carried[] =>
      worst.map(({ time, when }) => ({ ...one, time: one.time + time, when: decisions.and(one.when, when) }));
    const both = list.flatMap((one) => (one.byWaits ? performed(one) : [one]));
    return longestFirst(decisions, both, limit);
  }
  const step = timeOf(timing, node);
  if (step !== null && step.takes !== null) {
    const whole = list.map((one) => ({ ...one, time: one.time + (step.takes ?? 0), byWaits: !step.waits }));
    return step.waits ? [...whole, ...list] : whole;
  }
  const waited = waitAt(node);
  if (waited > 0) return list.map((one) => (one.byWaits ? { ...one, time: one.time + waited } : one));
  const isLeft = node.operation.kind === "leave" || node.operation.kind === "jump";
  if (!isLeft || list.every(({ byWaits }) => byWaits)) return list;
  const left = list.map((one) => ({ ...one, byWaits: true }));
  return longestFirst(decisions, left, limit);
}

/** The most seconds that can come behind each node, whatever is chosen; none are given where a loop makes it any number. */
function stillToCome(timing: Timing, run: Run, section: Section): ReadonlyMap<number, number> {
  const backwards = [...section.order].reverse();
  const still = new Map<number, number>();
  // Mostly settled by the first pass, but where a way leads back to before the start.
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    let isSettled = true;
    for (const at of backwards) {
      const later = (section.isStart(at) ? [] : (section.ways.out[at] ?? [])).map(({ to }) => still.get(to) ?? 0);
      const most = mostAt(timing, run, at) + later.reduce((so, one) => Math.max(so, one), 0);
      if (still.get(at) === most) continue;
      still.set(at, most);
      isSettled = false;
    }
    if (isSettled) return still;
  }
  return new Map();
}

const MOST_PASSES = 10;

function mostAt(timing: Timing, run: Run, at: number): number {
  const node = run.graph.nodes[at];
  if (node === undefined) return 0;
  const callee = run.calleeAt(node)?.run;
  if (callee !== undefined) return longestOf(timing, callee).worst[0]?.time ?? 0;
  return waitAt(node) + (timeOf(timing, node)?.takes ?? 0);
}

/**
 * More different times than this at one place are not told apart, so that some choices that just make it too late may not be
 * named; far fewer where telling them apart has cost much already. Of times that are too long anyway only few are.
 */
const MOST_TIMES = 400;
const MOST_WHEN_COSTLY = 24;
const COSTLY = 4_000;
const MOST_TOO_LONG = 4;

/**
 * For each assignment only the longest time is left; both clocks are kept apart.
 * @param areApart no assignment is in two of them
 */
function longestFirst(
  decisions: Decisions,
  list: readonly Carried[],
  limit: number,
  mostTimes = MOST_TIMES,
  areApart = false,
): readonly Carried[] {
  if (list.length < 2) return list;
  const { and, or, not } = decisions;
  const sorted = [...list].sort((a, b) => Number(a.byWaits) - Number(b.byWaits) || b.time - a.time);
  const kept: { time: number; when: Decision; readonly byWaits: boolean }[] = [];
  let covered: Decision = NEVER;
  let first = 0;
  for (const { time, when, byWaits } of sorted) {
    const last = kept[kept.length - 1];
    if (last !== undefined && last.byWaits !== byWaits) {
      covered = NEVER;
      first = kept.length;
    }
    const left = areApart ? when : and(when, not(covered));
    if (left === NEVER) continue;
    if (!areApart) covered = or(covered, left);
    const most = time > limit && Number.isFinite(limit) ? MOST_TOO_LONG : mostTimes;
    const isAlike = last?.byWaits === byWaits && (last.time === time || kept.length - first >= most);
    if (last !== undefined && isAlike) {
      last.when = or(last.when, left);
      last.time = time;
    } else kept.push({ time, when: left, byWaits });
  }
  return kept;
}

function isSame(a: readonly Carried[], b: readonly Carried[]): boolean {
  return (
    a.length === b.length &&
    a.every((one, at) => {
      const other = b[at];
      return one.time === other?.time && one.when === other.when && one.byWaits === other.byWaits;
    })
  );
}
