// What is found in files of an open workspace, in parts after each of which its caller may let others have their turn. What did not change
// since a file was last checked is not followed again.
import { cribFactsOf, type Stock, stockOf } from "#analysis/crib/crib-facts.ts";
import { dualMaintenanceFacts } from "#analysis/dual-maintenance.ts";
import type { FollowContext } from "#analysis/follow.ts";
import { hazardFactsOf } from "#analysis/hazards/hazards.ts";
import { limitFactsOf } from "#analysis/limits/limits.ts";
import { factsOf } from "#analysis/report.ts";
import { weakAllows } from "#analysis/trace/trace-facts.ts";
import type { Allow, FileModel, Item, Procedure } from "#model/procedure.ts";
import type { Moves } from "#model/taken-over.ts";
import type { Finding } from "#rules/finding.ts";
import type { AnyFact } from "#rules/rule.ts";
import { byPlace, findingsOf } from "#rules/run.ts";
import { type KeptFacts, stillTrue, surroundingsOf } from "./kept-facts.ts";
import type { Loaded } from "./load.ts";
import { withSteps } from "./place.ts";
import { type CheckReport, reportOf } from "./report.ts";
import { type ExpandedOf, expand, followContext, followed } from "./runs.ts";
import type { Snapshot } from "./snapshot.ts";
import { writtenFactsOf } from "./written-facts.ts";

/** What files are checked in. */
export interface Opened {
  readonly snapshot: Snapshot;
  readonly loaded: Loaded;
  readonly expandedOf: ExpandedOf;
  /** What was found last in each file that was checked by itself, handed on from one state of the folder to the next. */
  readonly kept: Map<string, KeptFacts>;
}

export interface CheckSettings {
  /** Choices made before the work starts: option name to choice. */
  readonly set?: Readonly<Record<string, string>>;
  /** The file with the shop's crib, which is then held against what is used of tools. */
  readonly crib?: string;
}

/** Work that its caller may put down for a while, or for good, each time that it yields. */
export type Steps<T> = Generator<void, T, void>;

export function toEnd<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

/** Codes that speak of a text as it stands, not of one way through it. */
const WHATEVER_IS_CHOSEN: ReadonlySet<string> = new Set([
  "flow.impossible-condition",
  "flow.unreachable",
  "trace.unused-allow",
]);

const OF_THE_CRIB: ReadonlySet<string> = new Set(["trace.no-crib-item", "trace.calibration"]);

export function* checkInSteps(
  opened: Opened,
  paths: readonly string[],
  settings: CheckSettings = {},
): Steps<CheckReport> {
  const findings = yield* findingsInSteps(opened, paths, settings);
  const models = modelsOf(opened, paths);
  const procedures = models.reduce((so, model) => so + model.procedures.length, 0);
  const steps = models.reduce((so, model) => so + stepsIn(model, opened.loaded.movesIn(model.path)), 0);
  return reportOf(paths, findings, opened.snapshot.texts, { procedures, steps });
}

/** Steps of all its procedures, written out. One that moved has as many as it had. */
function stepsIn({ procedures }: FileModel, moves: Moves | null): number {
  return procedures.reduce((so, procedure) => {
    const before = moves?.before.get(procedure);
    const steps = counted.get(procedure) ?? (before && counted.get(before)) ?? expand(procedure).expanded.steps;
    counted.set(procedure, steps);
    return so + steps;
  }, 0);
}

const counted = new WeakMap<Procedure, number>();

/** In the order of their places. */
export function* findingsInSteps(
  opened: Opened,
  paths: readonly string[],
  settings: CheckSettings = {},
): Steps<readonly Finding[]> {
  if (Object.keys(settings.set ?? {}).length === 0) return yield* asWritten(opened, paths, settings);
  const found = yield* findingsFor(opened, paths, settings);
  // That a choice leaves a branch out, or an `allow` without work, is no fault of the text.
  const always = (yield* asWritten(opened, paths, settings)).filter(({ code }) => WHATEVER_IS_CHOSEN.has(code));
  return [...found.filter(({ code }) => !WHATEVER_IS_CHOSEN.has(code)), ...always].sort(byPlace);
}

/** A file by itself has the findings that it had, as long as its model is the same: nothing behind it changed then. */
function* asWritten(
  opened: Opened,
  paths: readonly string[],
  { crib = opened.snapshot.crib }: CheckSettings,
): Steps<readonly Finding[]> {
  const { loaded, snapshot } = opened;
  const [model, ...others] = modelsOf(opened, paths);
  const isAlone = model !== undefined && others.length === 0 && paths.length === 1;
  const stock = crib === undefined ? null : (loaded.models.get(crib) ?? null);
  const known = isAlone ? found.get(model) : undefined;
  if (known !== undefined && known.stock === stock && (stock === null || known.day === snapshot.today))
    return known.findings;
  const findings = yield* findingsFor(opened, paths, crib === undefined ? {} : { crib });
  if (isAlone) found.set(model, { stock, day: snapshot.today, findings });
  return findings;
}

/** With the crib that they were found with, and for that the day. */
const found = new WeakMap<
  FileModel,
  { readonly stock: FileModel | null; readonly day: string; readonly findings: readonly Finding[] }
>();

function* findingsFor(opened: Opened, paths: readonly string[], settings: CheckSettings): Steps<readonly Finding[]> {
  const { loaded, snapshot } = opened;
  const models = modelsOf(opened, paths);
  yield;
  const stock = stockIn(opened, settings.crib);
  const followed = yield* factsFor(opened, models, settings, stock);
  const all = models.flatMap((model) => model.procedures.flatMap(allowsOf));
  const facts = [
    ...paths.flatMap((path): readonly AnyFact[] => loaded.parsed.get(path)?.problems ?? []),
    ...models.flatMap((model) => writtenFactsOf(model, loaded.movesIn(model.path))),
    ...[...followed.values()].flat(),
    ...weakAllows(all),
  ];
  // Without a crib nothing can be said of what an `allow` of its codes silences.
  const allows = all.filter(({ code }) => stock !== null || !OF_THE_CRIB.has(code));
  // Where a line has a slip of form, an `allow` may silence what that line would have brought.
  const doubtful = new Set(models.filter((model) => model.hasSlip).map((model) => model.path));
  const asked = new Set(paths);
  return withSteps(findingsOf(facts, allows, snapshot.texts), models).filter(
    ({ code, span }) => asked.has(span.path) && !(code === "trace.unused-allow" && doubtful.has(span.path)),
  );
}

/** The cribs of a file on the day of the snapshot; null where it has none. */
export function stockIn({ loaded, snapshot }: Opened, path = snapshot.crib): Stock | null {
  return path === undefined ? null : stockOf(loaded.models.get(path), snapshot.today);
}

type Facts = ReadonlyMap<Procedure, readonly AnyFact[]>;

/** Of a file by itself, as written, only what changed since it was last checked is followed. */
function* factsFor(
  { expandedOf, kept, loaded, snapshot }: Opened,
  models: readonly FileModel[],
  { crib = snapshot.crib, set = {} }: CheckSettings,
  stock: Stock | null,
): Steps<Facts> {
  const paths = models.map(({ path }) => path);
  const context = followContext(loaded, paths, expandedOf, set);
  const [path, ...others] = paths;
  if (path === undefined || others.length > 0 || Object.keys(set).length > 0)
    return yield* factsIn(models, context, stock, () => null);
  const ofCrib = stock === null ? undefined : loaded.models.get(crib ?? "");
  const now = surroundingsOf(loaded, path, ofCrib ?? null, snapshot.today);
  const before = kept.get(path);
  const known = before === undefined ? () => null : stillTrue(before, now, loaded.movesIn(path));
  const facts = yield* factsIn(models, context, stock, known);
  kept.set(path, { ...now, facts });
  return facts;
}

/** @param known what is known of a procedure already; null where it is to be followed */
function* factsIn(
  models: readonly FileModel[],
  context: FollowContext,
  stock: Stock | null,
  known: (procedure: Procedure) => readonly AnyFact[] | null,
): Steps<Facts> {
  const facts = new Map<Procedure, readonly AnyFact[]>();
  for (const procedure of models.flatMap((model) => model.procedures)) {
    facts.set(procedure, known(procedure) ?? (yield* factsOfOne(procedure, context, stock)));
    yield;
  }
  return facts;
}

function* factsOfOne(procedure: Procedure, context: FollowContext, stock: Stock | null): Steps<readonly AnyFact[]> {
  const { expanded, problems } = expand(procedure);
  yield;
  const run = followed(procedure, context);
  yield;
  const { tooLarge } = expanded;
  if (run === null)
    return tooLarge === null ? problems : [...problems, { kind: "too large", ...tooLarge, pass: [], more: 0 }];
  return [
    ...problems,
    ...[factsOf(run), limitFactsOf(run), hazardFactsOf(run), dualMaintenanceFacts(run)].flat(),
    ...(stock === null ? [] : cribFactsOf(run, stock)),
  ];
}

export function modelsOf({ loaded }: Pick<Opened, "loaded">, paths: readonly string[]): readonly FileModel[] {
  return paths.flatMap((path) => loaded.models.get(path) ?? []);
}

/** Every `allow` of a procedure, its tasks and steps. */
function allowsOf(procedure: Procedure): readonly Allow[] {
  return [...procedure.allows, ...allowsIn(procedure.items)];
}

function allowsIn(items: readonly Item[]): readonly Allow[] {
  return items.flatMap((item) => {
    switch (item.kind) {
      case "task":
        return [...item.allows, ...allowsIn(item.items)];
      case "step":
        return item.allows;
      case "repeat":
      case "any order":
        return allowsIn(item.items);
      case "when":
        return [...item.arms.flatMap((arm) => allowsIn(arm.items)), ...allowsIn(item.otherwise ?? [])];
      default:
        return [];
    }
  });
}
