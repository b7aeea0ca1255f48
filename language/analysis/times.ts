// `within Q after STEP`: whether the declared times can keep it, from the end of that step to the end of this one's actions.
import type { Pass } from "#model/problem.ts";
import type { Step } from "#model/procedure.ts";
import { type Decision, NEVER } from "./decision.ts";
import { nearest, passText, samePass, spanKey } from "./entries.ts";
import type { Origin } from "./fact.ts";
import type { Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import { createTiming, type Longest, longestBetween } from "./longest.ts";
import { headOf } from "./named-steps.ts";
import { originOf } from "./origin.ts";
import type { Raw } from "./raw-fact.ts";
import { upperSeconds } from "./step-times.ts";

export function tooLateFacts(run: Run): readonly Raw[] {
  const timing = createTiming();
  const jumps = run.graph.nodes.filter(({ operation }) => operation.kind === "jump");
  return timedSteps(run).flatMap(({ step, pass, ends }) => {
    const { within } = step;
    const limit = within === null ? null : upperSeconds(within.value);
    const starts = within?.step.target == null ? [] : endsOf(run, jumps, spanKey(within.step.target), pass);
    if (within === null || limit === null || starts.length === 0) return [];
    const found = (from: readonly number[], to: readonly number[]): Found =>
      sorted(run, limit, longestBetween(timing, run, new Set(from), new Set(to), limit * (1 + ROUNDING)));
    return factsFor(run, { step, pass, ends, starts, limit, found });
  });
}

/** Times are summed as they are written, so that sums that are equal may differ in their last bits. */
const ROUNDING = 1e-9;

interface TimedStep {
  readonly step: Step;
  readonly pass: Pass;
  /** Where its actions end: at its end, or where it stops or leads elsewhere. */
  readonly ends: readonly number[];
}

/** Each pass of each step that says `within`. In any order, one pass stands at several places of the graph. */
function timedSteps(run: Run): readonly TimedStep[] {
  const found = new Map<string, { step: Step; pass: Pass; ends: number[] }>();
  for (const node of run.graph.nodes) {
    if (node.step === null || node.step.step.within === null || !endsStep(node)) continue;
    const { step, pass } = node.step;
    const key = `${spanKey(step.span)} ${passText(pass)}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, { step, pass, ends: [node.id] });
    else known.ends.push(node.id);
  }
  return [...found.values()];
}

function endsStep({ operation: { kind } }: Node): boolean {
  return kind === "leave" || kind === "stop" || kind === "jump";
}

/** Where the step or task ends that a name means, seen from a pass: at its end, or where a jump leads out of it. */
function endsOf(run: Run, jumps: readonly Node[], key: string, pass: Pass): readonly number[] {
  const places = run.graph.entries.get(key) ?? [];
  return samePass(places, nearest(places, pass)).flatMap(({ node: first, leave }) => {
    // What leads back to where it begins, begins it anew.
    const isInside = (node: number): boolean => node > first && node <= leave;
    const out = jumps.filter(({ id, next }) => isInside(id) && next.some(({ to }) => !isInside(to)));
    return [leave, ...out.map(({ id }) => id)];
  });
}

/** Where it is too late for certain, where that is not known, and what lies behind it. */
interface Found {
  readonly late: Decision;
  readonly open: Decision;
  readonly longest: Longest;
}

function sorted(run: Run, limit: number, longest: Longest): Found {
  const { and, not, or } = run.decisions;
  const tooLong = longest.worst.filter(({ time }) => time > limit * (1 + ROUNDING));
  const late = tooLong.reduce((so, { when }) => or(so, when), longest.loop);
  const open = longest.open.reduce((so, { when }) => or(so, and(when, not(late))), NEVER);
  return { late, open, longest };
}

interface Question extends TimedStep {
  readonly starts: readonly number[];
  readonly limit: number;
  readonly found: (from: readonly number[], to: readonly number[]) => Found;
}

function factsFor(run: Run, question: Question): readonly Raw[] {
  const { step, pass, starts, ends, limit, found } = question;
  const { within } = step;
  if (within === null) return [];
  const { late, open, longest } = found(starts, ends);
  const raw = (certain: boolean): Raw => ({
    fact: {
      kind: "too late",
      span: within.span,
      after: within.step.name,
      limit,
      // The longest of all stands first; any number where there is a loop.
      time: certain && longest.loop === NEVER ? (longest.worst[0]?.time ?? null) : null,
      undeclared: openSteps(run, longest, certain ? late : open),
      certain,
      afterSpan: headOf(run.expanded.procedure, within.step),
    },
    where: certain ? late : open,
    pass,
    subject: certain ? "late" : "not known",
    ...witness(run, question, (part) => (certain ? part.late : part.open) !== NEVER),
  });
  return [...(late === NEVER ? [] : [raw(true)]), ...(open === NEVER ? [] : [raw(false)])];
}

/** More turns than this are not looked through for one that shows it. */
const MOST_TURNS = 40;

/** In which turns of blocks in any order it shows; nothing where it shows in the order of the text. */
function witness(
  run: Run,
  { starts, ends, found }: Question,
  shows: (part: Found) => boolean,
): { readonly node?: number; readonly from?: number } {
  const turnsOf = (node: number): Node["turns"] => run.graph.nodes[node]?.turns ?? [];
  if ([...starts, ...ends].every((node) => turnsOf(node).length === 0)) return {};
  const isWritten = (node: number): boolean =>
    turnsOf(node).every(({ done, group }) => done.every((child, at) => child === group[at]));
  if (shows(found(starts.filter(isWritten), ends.filter(isWritten)))) return {};
  // The most lies between where the one comes early and the other late.
  const before = (node: number): number => turnsOf(node).reduce((so, { done }) => so + done.length, 0);
  const early = [...starts].sort((a, b) => before(a) - before(b)).slice(0, MOST_TURNS);
  const late = [...ends].sort((a, b) => before(b) - before(a)).slice(0, MOST_TURNS);
  const from = early.find((start) => shows(found([start], ends)));
  const node = from === undefined ? undefined : late.find((end) => shows(found([from], [end])));
  return from === undefined || node === undefined ? {} : { node, from };
}

function openSteps(run: Run, found: Longest, where: Decision): readonly Origin[] {
  const origins = new Map<number, Origin>();
  for (const { node, when } of found.open) {
    if (run.decisions.and(when, where) === NEVER) continue;
    const origin = originOf(run, node);
    origins.set(origin.span.start, origin);
  }
  return [...origins.values()].sort((a, b) => a.span.start - b.span.start);
}
