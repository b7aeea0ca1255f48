// The façade: a snapshot of a workspace in, findings and outputs out, as plain data. Command line, server and browser all
// come through here, so they cannot differ. Knows no files, no editor, no clock.
import { createDecisions } from "#analysis/decision.ts";
import { type FollowContext, followProcedure } from "#analysis/follow.ts";
import { optionsAsked } from "#analysis/mentioned.ts";
import { factsOf } from "#analysis/report.ts";
import type { Option } from "#model/declarations.ts";
import { expandProcedure } from "#model/expand.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { Allow, FileModel, Item, Procedure } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import type { AnyFact } from "#rules/rule.ts";
import { byPlace, findingsOf } from "#rules/run.ts";
import { type Loaded, load } from "./load.ts";
import { withSteps } from "./place.ts";
import { type CheckReport, reportOf } from "./report.ts";
import type { Snapshot, Wanted } from "./snapshot.ts";

export interface Workspace {
  readonly snapshot: Snapshot;
  readonly loaded: Loaded;
  /** Files that would be needed and are neither given nor known to be absent. */
  readonly wanted: readonly Wanted[];
  /** The findings in these files, in the order of their places. */
  readonly findings: (paths: readonly string[], settings?: CheckSettings) => readonly Finding[];
  readonly check: (paths: readonly string[], settings?: CheckSettings) => CheckReport;
  /** The options that the procedures of these files ask about. */
  readonly options: (paths: readonly string[]) => readonly Option[];
  readonly expanded: (procedure: Procedure) => ExpandedProcedure;
  readonly expandedOf: (procedureId: string) => ExpandedProcedure | null;
}

export interface CheckSettings {
  /** Choices made before the work starts: option name to choice. */
  readonly set?: Readonly<Record<string, string>>;
}

/** Codes that speak of a text as it stands, not of one way through it. */
const WHATEVER_IS_CHOSEN: ReadonlySet<string> = new Set([
  "flow.impossible-condition",
  "flow.unreachable",
  "trace.unused-allow",
]);

/** @param before an earlier workspace of the same folder, to save work */
export function openWorkspace(snapshot: Snapshot, before: Workspace | null = null): Workspace {
  const loaded = load(snapshot, before?.loaded ?? null);
  const procedures = new Map<string, Procedure>();
  for (const model of loaded.models.values())
    for (const procedure of model.procedures) procedures.set(procedure.id, procedure);
  const expansions = new Map<string, ReturnType<typeof expandProcedure>>();
  const expand = (procedure: Procedure): ReturnType<typeof expandProcedure> => {
    const known = expansions.get(procedure.id) ?? expandProcedure(procedure);
    expansions.set(procedure.id, known);
    return known;
  };
  const expandedOf = (id: string): ExpandedProcedure | null => {
    const procedure = procedures.get(id);
    return procedure === undefined ? null : expand(procedure).expanded;
  };
  const followAll = (models: readonly FileModel[], settings: CheckSettings): readonly AnyFact[] => {
    const context: FollowContext = {
      decisions: createDecisions(),
      expandedOf,
      chosen: settings.set ?? {},
      summaries: new Map(),
    };
    return models.flatMap((model) =>
      model.procedures.flatMap((procedure) => procedureFacts(expand(procedure), context)),
    );
  };
  const findings = (paths: readonly string[], settings: CheckSettings = {}): readonly Finding[] => {
    const found = findingsFor(paths, settings);
    if (Object.keys(settings.set ?? {}).length === 0) return found;
    // That a choice leaves a branch out, or an `allow` without work, is no fault of the text.
    const always = findingsFor(paths, {}).filter(({ code }) => WHATEVER_IS_CHOSEN.has(code));
    return [...found.filter(({ code }) => !WHATEVER_IS_CHOSEN.has(code)), ...always].sort(byPlace);
  };
  const findingsFor = (paths: readonly string[], settings: CheckSettings): readonly Finding[] => {
    const models = chosen(loaded, paths);
    const facts: AnyFact[] = [];
    for (const path of paths) facts.push(...(loaded.parsed.get(path)?.problems ?? []));
    for (const model of models) facts.push(...model.problems);
    facts.push(...followAll(models, settings));
    const allows = models.flatMap((model) => model.procedures.flatMap(allowsOf));
    // Where a line could not be read, an `allow` may silence what that line would have brought.
    const doubtful = new Set(models.filter((model) => model.damaged).map((model) => model.path));
    const asked = new Set(paths);
    return withSteps(findingsOf(facts, allows, snapshot.texts), models).filter(
      ({ code, span }) => asked.has(span.path) && !(code === "trace.unused-allow" && doubtful.has(span.path)),
    );
  };
  return {
    snapshot,
    loaded,
    wanted: loaded.wanted,
    findings,
    check: (paths, settings = {}) => {
      const models = chosen(loaded, paths);
      const steps = models
        .flatMap((model) => model.procedures)
        .reduce((so, procedure) => so + expand(procedure).expanded.steps, 0);
      const count = models.reduce((so, model) => so + model.procedures.length, 0);
      return reportOf(paths, findings(paths, settings), snapshot.texts, { procedures: count, steps });
    },
    options: (paths) => optionsIn(chosen(loaded, paths), (procedure) => expand(procedure).expanded),
    expanded: (procedure) => expand(procedure).expanded,
    expandedOf,
  };
}

function chosen(loaded: Loaded, paths: readonly string[]): readonly FileModel[] {
  return paths.flatMap((path) => loaded.models.get(path) ?? []);
}

function procedureFacts(
  { expanded, problems }: ReturnType<typeof expandProcedure>,
  context: FollowContext,
): readonly AnyFact[] {
  if (expanded.tooLarge === null) return [...problems, ...factsOf(followProcedure(expanded, context))];
  return [...problems, { kind: "too large", ...expanded.tooLarge, pass: [], more: 0 }];
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
