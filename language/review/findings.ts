// Findings that came and went, and the change that each belongs to. Knows codes by their family only.
import type { Finding } from "#rules/finding.ts";
import type { Span } from "#syntax/span.ts";
import type { Change, Group } from "./change.ts";
import type { Choices } from "./choices.ts";
import type { Entry } from "./describe.ts";
import type { Node } from "./record.ts";
import type { Words } from "./words.ts";

/** What tells where a finding stands: the same text for the same step on both sides. */
export type PlaceOf = (
  finding: Finding,
  side: "old" | "new",
) => { readonly procedure: string; readonly step: string | null };

export interface Turnover {
  readonly came: readonly Finding[];
  readonly went: readonly Finding[];
  /** Found on both sides, but graver now or less so, or for other choices of the options. */
  readonly altered: readonly Altered[];
}

interface Altered {
  readonly old: Finding;
  readonly new: Finding;
  /** Whether it now holds for a choice that it did not hold for. */
  readonly more: boolean;
}

/**
 * What is found on one side only, and what is another matter now. What is said of the same step by the same rule is the same finding,
 * though its numbers may be others; what an `allow` silences is no finding.
 */
export function turnover(
  old: readonly Finding[],
  now: readonly Finding[],
  placeOf: PlaceOf,
  choices: Choices,
): Turnover {
  const placed = (all: readonly Finding[], side: "old" | "new"): Placed[] =>
    all.flatMap((finding) => {
      if (finding.allowed !== undefined) return [];
      const { procedure, step } = placeOf(finding, side);
      return [{ finding, step, key: JSON.stringify([finding.code, procedure, step]) }];
    });
  let [went, came] = [placed(old, "old"), placed(now, "new")];
  const isAlike = (one: Finding, other: Finding): boolean =>
    one.severity === other.severity && choices.same(one, other);
  const altered: Altered[] = [];
  // What is nearest first: the same finding must not be taken for the one beside it.
  for (const isSame of [
    (a: Placed, b: Placed) => a.finding.message === b.finding.message && isAlike(a.finding, b.finding),
    (a: Placed, b: Placed) => a.step !== null && isAlike(a.finding, b.finding),
    (a: Placed, b: Placed) => a.step !== null || a.finding.message === b.finding.message,
  ]) {
    const { pairs, left } = paired(went, came, isSame);
    for (const [{ finding }, { finding: next }] of pairs)
      if (!isAlike(finding, next)) altered.push({ old: finding, new: next, more: choices.more(finding, next) });
    [went, came] = left;
  }
  return { came: came.map(({ finding }) => finding), went: went.map(({ finding }) => finding), altered };
}

interface Placed {
  readonly finding: Finding;
  readonly step: string | null;
  readonly key: string;
}

/** Those of the same rule at the same place that are the same, each once, and what is left of both. */
function paired(a: readonly Placed[], b: readonly Placed[], isSame: (one: Placed, other: Placed) => boolean) {
  const byKey = new Map<string, Placed[]>();
  for (const one of b) put(byKey, one.key, one);
  const pairs: (readonly [Placed, Placed])[] = [];
  const left = a.filter((one) => {
    const some = byKey.get(one.key) ?? [];
    const at = some.findIndex((other) => isSame(one, other));
    const [other] = at < 0 ? [] : some.splice(at, 1);
    if (other === undefined) return true;
    pairs.push([one, other]);
    return false;
  });
  const taken = new Set(pairs.map(([, other]) => other));
  return { pairs, left: [left, b.filter((one) => !taken.has(one))] as [Placed[], Placed[]] };
}

const BY_FAMILY: Readonly<Record<string, Group>> = {
  safety: "safety",
  limits: "values",
  units: "values",
  order: "order",
  flow: "order",
  syntax: "order",
  wording: "words",
};

function groupOfCode(code: string): Group {
  return BY_FAMILY[code.slice(0, code.indexOf("."))] ?? "items";
}

/** Codes that say of a hazard that nobody is warned of it in time. */
const UNCOVERED: ReadonlySet<string> = new Set(["safety.missing", "safety.too-late"]);

/**
 * Adds each finding to the change whose step or place it belongs to; what belongs to none is told by itself. A hazard that is no
 * longer covered is a matter of safety, whatever change brought it.
 */
export function withFindings(
  entries: readonly Entry[],
  { came, went, altered }: Turnover,
  standsIn: StandsIn,
  words: Words,
): readonly Entry[] {
  const added = new Map<Entry, { came: Finding[]; went: Finding[] }>();
  const alone: Entry[] = [];
  const owners = createOwners(entries);
  const ownerOf = (one: Finding | null, side: "old" | "new"): Entry | null =>
    one === null ? null : owners(one, side, standsIn(one, side));
  for (const told of [
    ...came.map((finding): Told => ({ old: null, new: finding, more: true })),
    ...went.map((finding): Told => ({ old: finding, new: null, more: false })),
    ...altered,
  ]) {
    const owner = ownerOf(told.new, "new") ?? ownerOf(told.old, "old");
    if (owner === null || (isUncovered(told) && owner.change.group !== "safety")) {
      // A hint is about the text as it stands, such as a spelling: alone it is nothing to review.
      if ((told.new ?? told.old)?.severity !== "hint") alone.push(aloneEntry(told, words));
      continue;
    }
    const own = added.get(owner) ?? { came: [], went: [] };
    added.set(owner, own);
    if (told.new !== null) own.came.push(told.new);
    if (told.old !== null) own.went.push(told.old);
  }
  const told = entries.map((entry) => {
    const findings = added.get(entry);
    return findings === undefined ? entry : { ...entry, change: { ...entry.change, findings } };
  });
  return [...told, ...alone];
}

/** What came, went, or is another matter now. */
interface Told {
  readonly old: Finding | null;
  readonly new: Finding | null;
  readonly more: boolean;
}

function isUncovered({ new: now, more }: Told): boolean {
  return now !== null && more && UNCOVERED.has(now.code);
}

/** The procedure, by the name that its changes have, and the step that a finding stands in. */
export type StandsIn = (
  finding: Finding,
  side: "old" | "new",
) => { readonly procedure: string; readonly step: Node | null };

type Owners = (finding: Finding, side: "old" | "new", stands: ReturnType<StandsIn>) => Entry | null;

/** By the step, by the place, by a place that the finding speaks of; else the one change that there is. */
function createOwners(entries: readonly Entry[]): Owners {
  const byStep = new Map<Node, Entry[]>();
  const byProcedure = new Map<string, Entry[]>();
  for (const entry of entries) {
    for (const step of entry.steps.flatMap((one) => [one.old, one.new])) if (step !== null) put(byStep, step, entry);
    put(byProcedure, entry.change.procedure, entry);
  }
  return (finding, side, { procedure, step }) => {
    const group = groupOfCode(finding.code);
    const best = (some: readonly Entry[]): Entry | null =>
      some.find(({ change }) => change.group === group) ?? some.find(({ change }) => change.group !== "words") ?? null;
    const inStep = best((step === null ? undefined : byStep.get(step)) ?? []);
    if (inStep !== null) return inStep;
    const near = procedure === "" ? entries : [...(byProcedure.get(procedure) ?? []), ...(byProcedure.get("") ?? [])];
    const at = (span: Span): readonly Entry[] =>
      near.filter(({ change, node }) => touches(change[side]?.span, span) || touches(node[side]?.span, span));
    const related = [...(finding.related ?? []), ...(finding.witness ?? [])].map(({ span }) => span);
    const grave = near.filter(isCause);
    const only = grave.length === 1 ? (grave[0] ?? null) : null;
    return best(at(finding.span)) ?? best(related.flatMap(at)) ?? only;
  };
}

/** What was changed, not what went along with it. */
function isCause({ change: { group, kind }, alongside }: Entry): boolean {
  return GRAVE.has(group) && kind !== "restated" && alongside !== true;
}

const GRAVE: ReadonlySet<Group> = new Set<Group>(["safety", "values", "order", "items"]);

function put<Key, One>(lists: Map<Key, One[]>, key: Key, one: One): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [one]);
  else list.push(one);
}

/** Whether one lies in the other; a procedure holds too much to be meant. */
function touches(a: Span | undefined, b: Span): boolean {
  if (a === undefined || a.path !== b.path) return false;
  return (a.start >= b.start && a.end <= b.end) || (b.start >= a.start && b.end <= a.end);
}

function aloneEntry(told: Told, words: Words): Entry {
  const { old, new: now } = told;
  const { code, message, procedure = "", step } = (now ?? old) as Finding;
  const how = isUncovered(told) ? "hazard-uncovered" : howOf(old, now);
  const change: Change = {
    group: groupOfCode(code),
    kind: how,
    message: `${words.found[how]}: ${message}`,
    procedure,
    ...(step === undefined ? {} : { step }),
    ...(old === null ? {} : { old: { span: old.span } }),
    ...(now === null ? {} : { new: { span: now.span } }),
    findings: { came: now === null ? [] : [now], went: old === null ? [] : [old] },
    edits: [],
  };
  return { change, steps: [], node: { old: null, new: null }, label: null };
}

function howOf(old: Finding | null, now: Finding | null): keyof Words["found"] {
  if (old === null) return "finding-came";
  if (now === null) return "finding-went";
  const graver = SEVERITIES.indexOf(now.severity) - SEVERITIES.indexOf(old.severity);
  if (graver === 0) return "finding-choices-changed";
  return graver > 0 ? "finding-graver" : "finding-milder";
}

const SEVERITIES = ["hint", "information", "warning", "error"];
