// Holds the review of one changed text against what its kind expects. Works out by itself which findings came and went, and
// which steps the change concerns.
import * as ast from "#grammar/generated/ast.ts";
import type { Item, Step, Task } from "#model/procedure.ts";
import { blocksOf } from "#model/written-steps.ts";
import type { ReportedFinding, ReviewReport, Workspace } from "#workspace/index.ts";
import { type Change, type Edit, GROUPS, rangeOf, type Sample } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { taskOf } from "./place.ts";

interface Side {
  readonly workspace: Workspace;
  readonly paths: readonly string[];
}

export interface Made {
  readonly kind: Kind;
  readonly sample: Sample;
  readonly change: Change;
  readonly old: Side;
  readonly now: Side;
  readonly report: ReviewReport;
}

type Entry = ReviewReport["changes"][number];

/** What is wrong with the report, in plain lines; none where nothing is. */
export function faultsOf(made: Made): readonly string[] {
  const { kind, report } = made;
  const moved = findingsMoved(made);
  const concerned = placesConcerned(made);
  return [
    ...[...moved.came]
      .filter((key) => /^(names\.(?!unused)|syntax\.)/.test(key))
      .map((key) => `the change itself: ${key}`),
    ...(kind.silent === true ? [] : unreported(made, concerned)),
    ...report.changes.flatMap((entry) => [
      ...tooGrave(made, entry, moved),
      ...(kind.library === undefined ? elsewhere(entry, concerned, moved) : []),
    ]),
    ...report.changes.flatMap((entry) => unsigned(made, entry)),
    ...untold(report, moved),
    ...miscounted(report),
  ];
}

const isExpected = ({ kind }: Made, { group, kind: said }: Entry): boolean =>
  (group === kind.group || (kind.orIn ?? []).includes(group)) && (kind.says === undefined || said === kind.says);

/** At least one entry of its group names the step, or the procedure where the change stands in no step. */
function unreported(made: Made, concerned: Concerned): readonly string[] {
  const { kind, report } = made;
  const found = report.changes.filter((entry) => isExpected(made, entry) && (entry.old ?? entry.new) !== undefined);
  const missing = proceduresReached(made).filter((procedure) => {
    const here = found.filter((entry) => entry.procedure === procedure);
    return !here.some((entry) => !concerned.mustName || (entry.step !== undefined && isOf(entry.step, concerned)));
  });
  return missing.map(
    (procedure) =>
      `nothing in ${kind.group}${kind.says === undefined ? "" : ` (${kind.says})`} names ${concerned.mustName ? `step ${shown(concerned)} of ` : ""}${procedure}`,
  );
}

function proceduresReached({ kind, sample, old }: Made): readonly string[] {
  const files = kind.library === undefined ? [sample.path] : old.paths;
  return files.flatMap((path) => {
    const text = old.workspace.snapshot.texts.get(path) ?? "";
    const { name, only } = kind.reaches ?? { name: /^/ };
    const isReached = name.test(text) && (only === undefined || only.test(text));
    return isReached ? (old.workspace.loaded.models.get(path)?.procedures ?? []).map((one) => one.name) : [];
  });
}

function tooGrave(made: Made, entry: Entry, moved: Moved): readonly string[] {
  const { kind } = made;
  const bar = Math.min(...[kind.group, ...(kind.orIn ?? [])].map((group) => GROUPS.indexOf(group)));
  if (GROUPS.indexOf(entry.group) >= bar) return [];
  const uncovered =
    entry.findings?.came.filter(
      ({ code, message }) => code.startsWith("safety.") && moved.came.has(keyOf({ code, message })),
    ) ?? [];
  if (kind.uncovers !== undefined && entry.group === "safety" && uncovered.length > 0) return [];
  return [`graver than ${kind.group}: ${line(entry)}`];
}

/** An entry for a step that the change does not concern, and no finding that moved there. */
function elsewhere(entry: Entry, concerned: Concerned, moved: Moved): readonly string[] {
  if (entry.step === undefined || entry.group === "layout" || isOf(entry.step, concerned)) return [];
  const { came = [], went = [] } = entry.findings ?? {};
  const told = came.some((one) => moved.came.has(keyOf(one))) || went.some((one) => moved.went.has(keyOf(one)));
  return told ? [] : [`of another step: ${line(entry)}`];
}

/** What changes in a critical step says who must look again; a value that is restated did not change. */
function unsigned({ sample, old, now }: Made, entry: Entry): readonly string[] {
  const { step, group, kind, signAgain = [] } = entry;
  const isNothing = group === "words" || group === "layout" || kind === "restated";
  if (step === undefined || isNothing || signAgain.length > 0) return [];
  const side = entry.new === undefined ? old : now;
  const isCritical = placesIn(side, sample.path).some(
    (place) => place.kind === "step" && place.number === step.number && place.critical,
  );
  return isCritical ? [`nobody signs again: ${line(entry)}`] : [];
}

function miscounted({ changes, summary }: ReviewReport): readonly string[] {
  const restated = changes.filter(({ kind }) => kind === "restated").length;
  return [
    ...(summary.restated === restated ? [] : [`${summary.restated} restated, of ${restated}`]),
    ...GROUPS.flatMap((group) => {
      const count = changes.filter((entry) => entry.group === group).length;
      return summary[group] === count ? [] : [`${summary[group]} in ${group}, of ${count}`];
    }),
  ];
}

/** A hint that a unit is spelled otherwise than the formatter would: layout, which nobody needs to look at. */
const OF_LAYOUT = /^units\.style /;

/** Each finding that came or went stands with some entry. */
function untold({ changes }: ReviewReport, moved: Moved): readonly string[] {
  return (["came", "went"] as const).flatMap((way) => {
    const told = new Set(changes.flatMap(({ findings }) => (findings?.[way] ?? []).map(keyOf)));
    return [...moved[way]]
      .filter((key) => !told.has(key) && !OF_LAYOUT.test(key))
      .map((key) => `${way}, and not told: ${key}`);
  });
}

export const line = ({ group, kind, message, step, findings }: Entry): string =>
  `${group}/${kind} ${step?.number ?? "-"} ${step?.name ?? ""} ${message}${findings === undefined ? "" : ` +[${findings.came.map(({ code }) => code)}] -[${findings.went.map(({ code }) => code)}]`}`;

/* ---- findings ---- */

interface Moved {
  readonly came: ReadonlySet<string>;
  readonly went: ReadonlySet<string>;
}

const keyOf = ({ code, message }: Pick<ReportedFinding, "code" | "message">): string => `${code} ${message}`;

/** By what they say, so that a finding at another line stays the same. */
function findingsMoved({ old, now }: Made): Moved {
  const [before, after] = [countsOf(old), countsOf(now)];
  const more = (of: ReadonlyMap<string, number>, than: ReadonlyMap<string, number>): ReadonlySet<string> =>
    new Set([...of].filter(([key, count]) => count > (than.get(key) ?? 0)).map(([key]) => key));
  return { came: more(after, before), went: more(before, after) };
}

function countsOf({ workspace, paths }: Side): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const path of paths)
    for (const { findings } of workspace.check([path]).files)
      for (const finding of findings) counts.set(keyOf(finding), (counts.get(keyOf(finding)) ?? 0) + 1);
  return counts;
}

/* ---- steps ---- */

interface Concerned {
  readonly old: readonly Place[];
  readonly now: readonly Place[];
  /** The change stands in steps, so that its entry must name one. */
  readonly mustName: boolean;
}

const isOf = (step: NonNullable<Entry["step"]>, { old, now }: Concerned): boolean =>
  [...old, ...now].some(
    ({ name, number }) => number === step.number && (name === null || step.name === undefined || name === step.name),
  );

const shown = ({ old, now }: Concerned): string =>
  [...new Set([...old, ...now].map(({ number }) => number))].join(", ");

/** The steps that the change is of, as numbered before and after it; the tasks too, where it stands in no step. */
function placesConcerned({ kind, sample, change, old, now }: Made): Concerned {
  const { at, edits } = change;
  const isOfSteps = at.every(ast.isStep);
  const isPlace = (place: Place): boolean => !isOfSteps || place.kind === "step";
  const marked = at.flatMap((node) => {
    const task = ast.isStep(node) ? undefined : taskOf(node);
    return [rangeOf(node), ...(task === undefined ? [] : [rangeOf(task)])];
  });
  const oldPlaces = placesIn(old, sample.path).filter(
    (place) => isPlace(place) && marked.some((range) => isInside(place.span, range) || isIn(range, place)),
  );
  const kept = oldPlaces.filter(({ span }) => !edits.some((edit) => isInside(span, edit)));
  const starts = kept.map(({ span }) => shift(edits, span.start));
  const written = writtenBy(edits);
  const nowPlaces = placesIn(now, sample.path).filter(
    (place) =>
      isPlace(place) &&
      (starts.some((start) => Math.abs(start - place.span.start) <= 1) ||
        written.some((range) => isInside(place.span, range) || isIn(range, place))),
  );
  const mustName = isOfSteps && kind.library === undefined;
  return { old: oldPlaces, now: nowPlaces, mustName };
}

/** Within a step; a task holds more than what is changed in it. */
const isIn = (range: Range, { kind, span }: Place): boolean => kind === "step" && isInside(range, span);

type Place =
  | Pick<Task, "kind" | "name" | "number" | "span">
  | Pick<Step, "kind" | "name" | "number" | "span" | "critical">;

const placesIn = ({ workspace }: Side, path: string): readonly Place[] =>
  (workspace.loaded.models.get(path)?.procedures ?? []).flatMap(({ items }) => [...placesOf(items)]);

function* placesOf(items: readonly Item[]): Generator<Place> {
  for (const item of items) {
    if (item.kind === "task" || item.kind === "step") yield item;
    const blocks = item.kind === "task" ? [item.items] : item.kind === "step" ? [] : blocksOf(item);
    for (const inside of blocks) yield* placesOf(inside);
  }
}

interface Range {
  readonly start: number;
  readonly end: number;
}

const isInside = (inner: Range, outer: Range): boolean => outer.start <= inner.start && inner.end <= outer.end;

const shift = (edits: readonly Edit[], at: number): number =>
  edits.filter(({ end }) => end <= at).reduce((so, { start, end, text }) => so + text.length - (end - start), at);

/** Where the text that was put in stands. */
const writtenBy = (edits: readonly Edit[]): readonly Range[] =>
  edits
    .filter(({ text }) => text !== "")
    .map((edit) => {
      const others = edits.filter((one) => one !== edit && one.start < edit.start);
      const start = shift(others, edit.start);
      return { start, end: start + edit.text.length };
    });
