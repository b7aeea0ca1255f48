// Findings that came and went, and the change that each belongs to. Knows codes by their family only.
import type { Finding } from "#rules/finding.ts";
import type { Span } from "#syntax/span.ts";
import type { Change, Group } from "./change.ts";
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
}

/**
 * What is found on one side only. What is said of the same step by the same rule is the same finding, though its numbers may be
 * others; what an `allow` silences is no finding.
 */
export function turnover(old: readonly Finding[], now: readonly Finding[], placeOf: PlaceOf): Turnover {
  const open = (all: readonly Finding[]) => all.filter(({ allowed }) => allowed === undefined);
  let [went, came] = [open(old), open(now)];
  const keyed =
    (side: "old" | "new", withMessage: boolean) =>
    (finding: Finding): string | null => {
      const { procedure, step } = placeOf(finding, side);
      if (!withMessage && step === null) return null;
      return JSON.stringify([finding.code, procedure, step, withMessage ? finding.message : ""]);
    };
  for (const withMessage of [true, false]) {
    const left = without(went, keyed("old", withMessage), came, keyed("new", withMessage));
    [went, came] = left;
  }
  return { came, went };
}

type KeyOf = (finding: Finding) => string | null;

/** Both without what they have in common. */
function without(a: readonly Finding[], keyA: KeyOf, b: readonly Finding[], keyB: KeyOf): [Finding[], Finding[]] {
  const counts = new Map<string, number>();
  for (const one of b) {
    const key = keyB(one);
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const common = new Map<string, number>();
  const take = (key: string | null, from: Map<string, number>): boolean => {
    const count = key === null ? 0 : (from.get(key) ?? 0);
    if (key === null || count === 0) return false;
    from.set(key, count - 1);
    return true;
  };
  const leftA = a.filter((one) => {
    const key = keyA(one);
    const isCommon = take(key, counts);
    if (isCommon && key !== null) common.set(key, (common.get(key) ?? 0) + 1);
    return !isCommon;
  });
  return [leftA, b.filter((one) => !take(keyB(one), common))];
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
  { came, went }: Turnover,
  standsIn: StandsIn,
  words: Words,
): readonly Entry[] {
  const added = new Map<Entry, { came: Finding[]; went: Finding[] }>();
  const alone: Entry[] = [];
  const owners = createOwners(entries);
  for (const [side, findings] of [
    ["new", came],
    ["old", went],
  ] as const) {
    for (const finding of findings) {
      const owner = owners(finding, side, standsIn(finding, side));
      const isUncovered = side === "new" && UNCOVERED.has(finding.code);
      if (owner === null || (isUncovered && owner.change.group !== "safety")) {
        // A hint is about the text as it stands, such as a spelling: alone it is nothing to review.
        if (finding.severity !== "hint") alone.push(aloneEntry(finding, side, words));
        continue;
      }
      const own = added.get(owner) ?? { came: [], went: [] };
      added.set(owner, own);
      own[side === "new" ? "came" : "went"].push(finding);
    }
  }
  const told = entries.map((entry) => {
    const findings = added.get(entry);
    return findings === undefined ? entry : { ...entry, change: { ...entry.change, findings } };
  });
  return [...told, ...alone];
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

function put<Key>(lists: Map<Key, Entry[]>, key: Key, entry: Entry): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [entry]);
  else list.push(entry);
}

/** Whether one lies in the other; a procedure holds too much to be meant. */
function touches(a: Span | undefined, b: Span): boolean {
  if (a === undefined || a.path !== b.path) return false;
  return (a.start >= b.start && a.end <= b.end) || (b.start >= a.start && b.end <= a.end);
}

function aloneEntry(finding: Finding, side: "old" | "new", words: Words): Entry {
  const { code, span, message, procedure = "", step } = finding;
  const isUncovered = side === "new" && UNCOVERED.has(code);
  const head = isUncovered ? words.uncovered : side === "new" ? words.findingCame : words.findingWent;
  const findings = side === "new" ? { came: [finding], went: [] } : { came: [], went: [finding] };
  const change: Change = {
    group: groupOfCode(code),
    kind: isUncovered ? "hazard-uncovered" : side === "new" ? "finding-came" : "finding-went",
    message: `${head}: ${message}`,
    procedure,
    ...(step === undefined ? {} : { step }),
    ...(side === "new" ? { new: { span } } : { old: { span } }),
    findings,
    edits: [],
  };
  return { change, steps: [], node: { old: null, new: null }, label: null };
}
