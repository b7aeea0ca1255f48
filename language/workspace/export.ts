// From a procedure to an output: gathers what the output is made from, and hands it on. Knows no format.
import { toolStocksOf } from "#analysis/crib/crib-facts.ts";
import type { Run } from "#analysis/follow.ts";
import { remindersOf } from "#analysis/hazards/reminders.ts";
import { joiningsIn } from "#analysis/limits/joining.ts";
import { uncheckedIn } from "#analysis/limits/limits.ts";
import type { Procedure } from "#model/procedure.ts";
import type { BuildInput } from "#outputs/build.ts";
import { type Content, type Means, OUTPUTS, type Output, type Write } from "#outputs/index.ts";
import type { Words } from "#outputs/words/en.ts";
import { WORDS } from "#outputs/words/index.ts";
import { concerns, filesBehind } from "./concerned.ts";
import { figureIn } from "./figures.ts";
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
  /** Whether the answers stand with a trainee's sheet. */
  readonly answers?: boolean;
  /** Code of the language of fixed words; English if absent. */
  readonly language?: string;
  readonly fonts: Means["fonts"];
  /** The file with the shop's crib: the tool list then names the items that meet each requirement. */
  readonly crib?: string;
}

export type ExportResult =
  | { readonly kind: "done"; readonly content: Content; readonly draft: boolean }
  | { readonly kind: "unknown output"; readonly known: readonly string[] }
  | { readonly kind: "unknown format"; readonly known: readonly string[] }
  | { readonly kind: "unknown language"; readonly known: readonly string[] }
  | { readonly kind: "no file" }
  | { readonly kind: "which procedure"; readonly known: readonly string[] }
  /** The procedure, one that it performs or what they declare has errors, and no draft was asked for. */
  | { readonly kind: "errors"; readonly report: CheckReport };

/** Every output by name with the formats it is written in. */
export function outputFormats(): readonly { readonly as: string; readonly formats: readonly string[] }[] {
  return [...OUTPUTS].map(([as, { formats }]) => ({ as, formats: [...formats.keys()] }));
}

/** The output; total, the same bytes for the same snapshot and request. */
export function exportAs(workspace: Workspace, request: ExportRequest): ExportResult {
  const sought = soughtBy(workspace, request);
  if (sought.kind !== "found") return sought;
  const { procedure, output, write, words } = sought;
  const checked = checkedFor(workspace, procedure, request);
  const paths = filesBehind(workspace.loaded, request.path);
  const { steps } = workspace.expanded(procedure);
  const report = reportOf(paths, checked.findings, workspace.snapshot.texts, { procedures: 1, steps });
  if (report.summary.errors > 0 && !request.draft) return { kind: "errors", report };
  const document = output.build(inputFor(workspace, procedure, request, checked), words);
  return { kind: "done", content: write(document, { words, fonts: request.fonts }), draft: document.draft };
}

/** What a request names, found; or why it cannot be. */
export type Sought =
  | {
      readonly kind: "found";
      readonly procedure: Procedure;
      readonly output: Output;
      readonly write: Write;
      readonly words: Words;
    }
  | Exclude<ExportResult, { readonly kind: "done" | "errors" }>;

export function soughtBy(workspace: Workspace, request: Omit<ExportRequest, "fonts" | "draft">): Sought {
  const output = OUTPUTS.get(request.as);
  if (output === undefined) return { kind: "unknown output", known: [...OUTPUTS.keys()] };
  const write = output.formats.get(request.format);
  if (write === undefined) return { kind: "unknown format", known: [...output.formats.keys()] };
  const words = WORDS.get(request.language ?? "en");
  if (words === undefined) return { kind: "unknown language", known: [...WORDS.keys()] };
  const model = workspace.loaded.models.get(request.path);
  if (model === undefined) return { kind: "no file" };
  const procedure = theProcedure(model.procedures, request.procedure);
  if (procedure === null) return { kind: "which procedure", known: namesOf(model.procedures) };
  return { kind: "found", procedure, output, write, words };
}

/** What a procedure has to be followed for before it is written out. */
export type Checked = Pick<BuildInput, "findings" | "unchecked" | "reminders" | "joinings" | "stock">;

export function checkedFor(
  workspace: Workspace,
  procedure: Procedure,
  { path, set, crib = workspace.snapshot.crib }: Pick<ExportRequest, "path" | "set" | "crib">,
): Checked {
  const settings = { ...(set === undefined ? {} : { set }), ...(crib === undefined ? {} : { crib }) };
  const findings = workspace
    .findings(filesBehind(workspace.loaded, path), settings)
    .filter(concerns(workspace.loaded, procedure));
  const run = workspace.run(procedure);
  const stock = workspace.stock(crib);
  const chosen = stock === null ? null : workspace.run(procedure, settings);
  return {
    findings,
    ...(run === null ? { unchecked: [] } : toldOf(run)),
    ...(stock === null || chosen === null ? {} : { stock: { ...stock, tools: toolStocksOf(chosen, stock) } }),
  };
}

type Told = Pick<BuildInput, "unchecked" | "reminders" | "joinings">;

const told = new WeakMap<Run, Told>();

/** What outputs say of a run beside its findings; looked for once. */
function toldOf(run: Run): Told {
  const known = told.get(run);
  if (known !== undefined) return known;
  const found = { unchecked: uncheckedIn(run), reminders: remindersOf(run), joinings: joiningsIn(run) };
  told.set(run, found);
  return found;
}

/** All that an output is made from. */
export function inputFor(
  workspace: Workspace,
  procedure: Procedure,
  request: Omit<ExportRequest, "fonts" | "as" | "format">,
  checked: Checked,
): BuildInput {
  const { path, set = {}, units, repeats, draft, answers = false, crib = workspace.snapshot.crib } = request;
  return {
    expanded: workspace.expanded(procedure),
    hash: contentHash(workspace, path, crib),
    options: set,
    units,
    repeats,
    draft,
    answers,
    expandedOf: workspace.expandedOf,
    figure: figureIn(workspace),
    ...checked,
  };
}

function theProcedure(procedures: readonly Procedure[], name: string | undefined): Procedure | null {
  if (name === undefined) return procedures.length === 1 ? (procedures[0] ?? null) : null;
  return procedures.find((procedure) => procedure.name === name) ?? null;
}

/** Those that have a name, and so can be asked for. */
function namesOf(procedures: readonly Procedure[]): readonly string[] {
  return procedures.map(({ name }) => name).filter((name) => name !== "");
}
