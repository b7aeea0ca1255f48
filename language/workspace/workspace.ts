// The façade: a snapshot of a workspace in, findings and outputs out, as plain data. Command line, server and browser all
// come through here, so they cannot differ. Knows no files, no editor, no clock.
import { cribFactsOf, type Stock, stockOf } from "#analysis/crib/crib-facts.ts";
import { createDecisions } from "#analysis/decision.ts";
import { dualMaintenanceFacts } from "#analysis/dual-maintenance.ts";
import { type FollowContext, followProcedure, optionVariable, type Run } from "#analysis/follow.ts";
import { hazardFactsOf } from "#analysis/hazards/hazards.ts";
import { limitFactsOf } from "#analysis/limits/limits.ts";
import { optionsAsked } from "#analysis/mentioned.ts";
import { factsOf } from "#analysis/report.ts";
import { weakAllows } from "#analysis/trace/trace-facts.ts";
import type { Option } from "#model/declarations.ts";
import { type Expansion, expandProcedure } from "#model/expand.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { Allow, FileModel, Item, Procedure } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import type { AnyFact } from "#rules/rule.ts";
import { byPlace, findingsOf } from "#rules/run.ts";
import { filesBehind, idsPerformed } from "./concerned.ts";
import { type KeptFacts, stillTrue, surroundingsOf } from "./kept-facts.ts";
import { type Loaded, load } from "./load.ts";
import { withSteps } from "./place.ts";
import { type CheckReport, reportOf } from "./report.ts";
import type { Snapshot, Wanted } from "./snapshot.ts";
import { writtenFactsOf } from "./written-facts.ts";

export interface Workspace {
  readonly snapshot: Snapshot;
  readonly loaded: Loaded;
  /** What was found last in each file that was checked by itself, handed on from one state of the folder to the next. */
  readonly kept: Map<string, KeptFacts>;
  /** Files that would be needed and are neither given nor known to be absent. */
  readonly wanted: readonly Wanted[];
  /** The findings in these files, in the order of their places. */
  readonly findings: (paths: readonly string[], settings?: CheckSettings) => readonly Finding[];
  readonly check: (paths: readonly string[], settings?: CheckSettings) => CheckReport;
  /**
   * The same, yielding after each part of the work, two or three times for each procedure: the caller may let others have their turn
   * then, or never go on.
   */
  readonly checkInSteps: (paths: readonly string[], settings?: CheckSettings) => Steps<CheckReport>;
  /** The options that the procedures of these files ask about. */
  readonly options: (paths: readonly string[]) => readonly Option[];
  readonly expanded: (procedure: Procedure) => ExpandedProcedure;
  readonly expandedOf: (procedureId: string) => ExpandedProcedure | null;
  /** The procedure followed for all choices, or for those made; null where it is too large to be. */
  readonly run: (procedure: Procedure, settings?: CheckSettings) => Run | null;
  /** The cribs of a file on the day of the snapshot; null where it has none. */
  readonly stock: (path: string | undefined) => Stock | null;
}

export interface CheckSettings {
  /** Choices made before the work starts: option name to choice. */
  readonly set?: Readonly<Record<string, string>>;
  /** The file with the shop's crib, which is then held against what is used of tools. */
  readonly crib?: string;
}

/** Codes that speak of a text as it stands, not of one way through it. */
const WHATEVER_IS_CHOSEN: ReadonlySet<string> = new Set([
  "flow.impossible-condition",
  "flow.unreachable",
  "trace.unused-allow",
]);

const OF_THE_CRIB: ReadonlySet<string> = new Set(["trace.no-crib-item", "trace.calibration"]);

/** @param before an earlier workspace of the same folder, to save work */
export function openWorkspace(snapshot: Snapshot, before: Workspace | null = null): Workspace {
  const loaded = load(snapshot, before?.loaded ?? null);
  const kept = before?.kept ?? new Map<string, KeptFacts>();
  for (const path of kept.keys()) if (!loaded.parsed.has(path)) kept.delete(path);
  let procedures: ReadonlyMap<string, Procedure> | null = null;
  const expandedOf = (id: string): ExpandedProcedure | null => {
    procedures ??= proceduresIn(loaded);
    const procedure = procedures.get(id);
    return procedure === undefined ? null : expand(procedure).expanded;
  };
  /** Options have the order of files and lines, so that several are told in the same one whatever was followed before. */
  const contextFor = (paths: readonly string[], { set = {} }: CheckSettings): FollowContext => {
    const decisions = createDecisions();
    const behind = new Set(paths.flatMap((path) => filesBehind(loaded, path)));
    for (const path of [...behind].sort())
      for (const declared of loaded.models.get(path)?.declarations ?? [])
        if (declared.kind === "option") optionVariable(decisions, declared);
    return { decisions, expandedOf, chosen: set, summaries: new Map() };
  };
  const stockIn = (path = snapshot.crib): Stock | null =>
    path === undefined ? null : stockOf(loaded.models.get(path), snapshot.today);
  const findingsInSteps = function* (
    paths: readonly string[],
    settings: CheckSettings = {},
  ): Steps<readonly Finding[]> {
    if (Object.keys(settings.set ?? {}).length === 0) return yield* asWritten(paths, settings);
    const found = yield* findingsFor(paths, settings);
    // That a choice leaves a branch out, or an `allow` without work, is no fault of the text.
    const always = (yield* asWritten(paths, settings)).filter(({ code }) => WHATEVER_IS_CHOSEN.has(code));
    return [...found.filter(({ code }) => !WHATEVER_IS_CHOSEN.has(code)), ...always].sort(byPlace);
  };
  /** A file by itself has the findings that it had, as long as its model is the same: nothing behind it changed then. */
  const asWritten = function* (
    paths: readonly string[],
    { crib = snapshot.crib }: CheckSettings,
  ): Steps<readonly Finding[]> {
    const [model, ...others] = chosen(loaded, paths);
    const isAlone = model !== undefined && others.length === 0 && paths.length === 1;
    const stock = crib === undefined ? null : (loaded.models.get(crib) ?? null);
    const known = isAlone ? found.get(model) : undefined;
    if (known !== undefined && known.stock === stock && (stock === null || known.day === snapshot.today))
      return known.findings;
    const findings = yield* findingsFor(paths, crib === undefined ? {} : { crib });
    if (isAlone) found.set(model, { stock, day: snapshot.today, findings });
    return findings;
  };
  const findingsFor = function* (paths: readonly string[], settings: CheckSettings): Steps<readonly Finding[]> {
    const models = chosen(loaded, paths);
    yield;
    const stock = stockIn(settings.crib);
    const followed = yield* factsFor(models, settings, stock);
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
  };
  /** Of a file by itself, as written, only what changed since it was last checked is followed. */
  const factsFor = function* (
    models: readonly FileModel[],
    settings: CheckSettings,
    stock: Stock | null,
  ): Steps<Facts> {
    const context = contextFor(
      models.map(({ path }) => path),
      settings,
    );
    const [model, ...others] = models;
    if (model === undefined || others.length > 0 || Object.keys(context.chosen).length > 0)
      return yield* factsIn(models, context, stock, () => null);
    const { path } = model;
    const crib = stock === null ? undefined : loaded.models.get(settings.crib ?? snapshot.crib ?? "");
    const now = surroundingsOf(loaded, path, crib ?? null, snapshot.today);
    const before = kept.get(path);
    const known = before === undefined ? () => null : stillTrue(before, now, loaded.movesIn(path));
    const facts = yield* factsIn(models, context, stock, known);
    kept.set(path, { ...now, facts });
    return facts;
  };
  const checkInSteps = function* (paths: readonly string[], settings: CheckSettings = {}): Steps<CheckReport> {
    const findings = yield* findingsInSteps(paths, settings);
    const checked = chosen(loaded, paths).flatMap((model) => model.procedures);
    const steps = checked.reduce((so, procedure) => so + expand(procedure).expanded.steps, 0);
    return reportOf(paths, findings, snapshot.texts, { procedures: checked.length, steps });
  };
  return {
    snapshot,
    loaded,
    kept,
    wanted: loaded.wanted,
    findings: (paths, settings) => toEnd(findingsInSteps(paths, settings)),
    check: (paths, settings) => toEnd(checkInSteps(paths, settings)),
    checkInSteps,
    options: (paths) => optionsIn(chosen(loaded, paths), (procedure) => expand(procedure).expanded),
    expanded: (procedure) => expand(procedure).expanded,
    expandedOf,
    run: (procedure, settings = {}) => followed(procedure, contextFor([procedure.path], settings)),
    stock: stockIn,
  };
}

/** Work that its caller may put down for a while, or for good, each time that it yields. */
export type Steps<T> = Generator<void, T, void>;

function toEnd<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

const expansions = new WeakMap<Procedure, Expansion>();
/** With the crib that they were found with, and for that the day. */
const found = new WeakMap<
  FileModel,
  { readonly stock: FileModel | null; readonly day: string; readonly findings: readonly Finding[] }
>();

/** Worked out once for each record of a procedure. */
function expand(procedure: Procedure): Expansion {
  const known = expansions.get(procedure) ?? expandProcedure(procedure);
  expansions.set(procedure, known);
  return known;
}

function proceduresIn({ models }: Loaded): ReadonlyMap<string, Procedure> {
  const procedures = new Map<string, Procedure>();
  // Of two with one name the first is performed.
  for (const procedure of [...models.values()].flatMap((model) => model.procedures))
    if (!procedures.has(procedure.id)) procedures.set(procedure.id, procedure);
  return procedures;
}

type Facts = ReadonlyMap<Procedure, readonly AnyFact[]>;

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

/** A run is large, so that few are kept, of a procedure the last: an editor asks for the state in what it has just checked. */
const MOST_RUNS = 8;
const recent = new Map<string, { readonly madeOf: readonly (ExpandedProcedure | null)[]; readonly run: Run }>();

function followed(procedure: Procedure, context: FollowContext): Run | null {
  const { expanded } = expand(procedure);
  if (expanded.tooLarge !== null) return null;
  if (Object.keys(context.chosen).length > 0) return followProcedure(expanded, context);
  const { id } = procedure;
  const known = recent.get(id);
  const performed = idsPerformed(procedure, (one) => context.expandedOf(one)?.procedure);
  const madeOf = [expanded, ...[...performed].map(context.expandedOf)];
  // What it was before the change is let go before the new one is made.
  recent.delete(id);
  const isSame = known?.madeOf.length === madeOf.length && madeOf.every((one, at) => known.madeOf[at] === one);
  const run = isSame ? known.run : followProcedure(expanded, context);
  recent.set(id, { madeOf, run });
  for (const oldest of recent.keys()) {
    if (recent.size <= MOST_RUNS) break;
    recent.delete(oldest);
  }
  return run;
}

function chosen(loaded: Loaded, paths: readonly string[]): readonly FileModel[] {
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

function optionsIn(
  models: readonly FileModel[],
  expand: (procedure: Procedure) => ExpandedProcedure,
): readonly Option[] {
  const options = new Set<Option>();
  for (const model of models) {
    for (const declared of model.declarations) if (declared.kind === "option") options.add(declared);
    for (const procedure of model.procedures) for (const option of optionsAsked(expand(procedure))) options.add(option);
  }
  return [...options];
}
