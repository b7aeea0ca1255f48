// From a procedure to an output: gathers what the output is made from, and hands it on. Knows no format.
import { toolStocksOf } from "#analysis/crib/crib-facts.ts";
import { uncheckedIn } from "#analysis/limits/limits.ts";
import type { Procedure } from "#model/procedure.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { concerns, filesBehind } from "./concerned.ts";
import { contentHash } from "./hash.ts";
import { type CheckReport, reportOf } from "./report.ts";
import type { Workspace } from "./workspace.ts";

export interface ExportRequest {
  readonly path: string;
  /** By name; not needed where the file has one procedure. */
  readonly procedure?: string;
  /** `checklist`. */
  readonly as: string;
  /** One of the output's formats. */
  readonly format: string;
  readonly set?: Readonly<Record<string, string>>;
  readonly units: "si" | "us" | "both";
  readonly repeats: "compact" | "full";
  readonly draft: boolean;
  /** The file with the shop's crib: the tool list then names the items that meet each requirement. */
  readonly crib?: string;
}

export type ExportResult =
  | { readonly kind: "done"; readonly text: string; readonly draft: boolean }
  | { readonly kind: "unknown output"; readonly known: readonly string[] }
  | { readonly kind: "unknown format"; readonly known: readonly string[] }
  | { readonly kind: "no file" }
  | { readonly kind: "which procedure"; readonly known: readonly string[] }
  /** The procedure, one that it performs or what they declare has errors, and no draft was asked for. */
  | { readonly kind: "errors"; readonly report: CheckReport };

/** Every output by name with the formats it is written in. */
export function outputFormats(): readonly { readonly as: string; readonly formats: readonly string[] }[] {
  return [...OUTPUTS].map(([as, { formats }]) => ({ as, formats: [...formats.keys()] }));
}

/** The output as text; total, the same bytes for the same snapshot and request. */
export function exportAs(workspace: Workspace, request: ExportRequest): ExportResult {
  const output = OUTPUTS.get(request.as);
  if (output === undefined) return { kind: "unknown output", known: [...OUTPUTS.keys()] };
  const render = output.formats.get(request.format);
  if (render === undefined) return { kind: "unknown format", known: [...output.formats.keys()] };
  const model = workspace.loaded.models.get(request.path);
  if (model === undefined) return { kind: "no file" };
  const procedure = theProcedure(model.procedures, request.procedure);
  if (procedure === null) return { kind: "which procedure", known: namesOf(model.procedures) };
  const { set, crib = workspace.snapshot.crib } = request;
  const settings = { ...(set === undefined ? {} : { set }), ...(crib === undefined ? {} : { crib }) };
  const paths = filesBehind(workspace.loaded, request.path);
  const findings = workspace.findings(paths, settings).filter(concerns(workspace.loaded, procedure));
  const expanded = workspace.expanded(procedure);
  const report = reportOf(paths, findings, workspace.snapshot.texts, { procedures: 1, steps: expanded.steps });
  if (report.summary.errors > 0 && !request.draft) return { kind: "errors", report };
  const run = workspace.run(procedure);
  const stock = workspace.stock(crib);
  const chosen = stock === null ? null : workspace.run(procedure, settings);
  const document = output.build({
    expanded,
    findings,
    hash: contentHash(workspace.loaded, request.path, crib),
    options: request.set ?? {},
    units: request.units,
    repeats: request.repeats,
    draft: request.draft,
    expandedOf: workspace.expandedOf,
    unchecked: run === null ? [] : uncheckedIn(run),
    ...(stock === null || chosen === null ? {} : { stock: { ...stock, tools: toolStocksOf(chosen, stock) } }),
  });
  return { kind: "done", text: render(document), draft: document.draft };
}

function theProcedure(procedures: readonly Procedure[], name: string | undefined): Procedure | null {
  if (name === undefined) return procedures.length === 1 ? (procedures[0] ?? null) : null;
  return procedures.find((procedure) => procedure.name === name) ?? null;
}

/** Those that have a name, and so can be asked for. */
function namesOf(procedures: readonly Procedure[]): readonly string[] {
  return procedures.map(({ name }) => name).filter((name) => name !== "");
}
