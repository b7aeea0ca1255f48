// The façade: a snapshot of a workspace in, findings and outputs out, as plain data. Command line, server and browser all
// come through here, so they cannot differ. Knows no files, no editor, no clock.
import type { Stock } from "#analysis/crib/crib-facts.ts";
import type { Run } from "#analysis/follow.ts";
import { optionsAsked } from "#analysis/mentioned.ts";
import type { Option } from "#model/declarations.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { FileModel, Procedure } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import {
  type CheckSettings,
  checkInSteps,
  findingsInSteps,
  modelsOf,
  type Opened,
  type Steps,
  stockIn,
  toEnd,
} from "./checking.ts";
import { load } from "./load.ts";
import type { CheckReport } from "./report.ts";
import { expand, expandedIn, followContext, followed } from "./runs.ts";
import type { Snapshot, Wanted } from "./snapshot.ts";

export interface Workspace extends Opened {
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
  /** The procedure followed for all choices, or for those made; null where it is too large to be. */
  readonly run: (procedure: Procedure, settings?: CheckSettings) => Run | null;
  /** The cribs of a file on the day of the snapshot; null where it has none. */
  readonly stock: (path: string | undefined) => Stock | null;
}

/** @param before an earlier workspace of the same folder, to save work */
export function openWorkspace(snapshot: Snapshot, before: Workspace | null = null): Workspace {
  const loaded = load(snapshot, before?.loaded ?? null);
  const kept: Opened["kept"] = before?.kept ?? new Map();
  for (const path of kept.keys()) if (!loaded.parsed.has(path)) kept.delete(path);
  const expandedOf = expandedIn(loaded);
  const opened: Opened = { snapshot, loaded, expandedOf, kept };
  return {
    ...opened,
    wanted: loaded.wanted,
    findings: (paths, settings) => toEnd(findingsInSteps(opened, paths, settings)),
    check: (paths, settings) => toEnd(checkInSteps(opened, paths, settings)),
    checkInSteps: (paths, settings) => checkInSteps(opened, paths, settings),
    options: (paths) => optionsIn(modelsOf(opened, paths)),
    expanded: (procedure) => expand(procedure).expanded,
    run: (procedure, { set = {} } = {}) =>
      followed(procedure, followContext(loaded, [procedure.path], expandedOf, set)),
    stock: (path) => stockIn(opened, path),
  };
}

function optionsIn(models: readonly FileModel[]): readonly Option[] {
  const options = new Set<Option>();
  for (const model of models) {
    for (const declared of model.declarations) if (declared.kind === "option") options.add(declared);
    for (const procedure of model.procedures)
      for (const option of optionsAsked(expand(procedure).expanded)) options.add(option);
  }
  return [...options];
}
