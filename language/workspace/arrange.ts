// From an arrangement to a better one: reads its table, has the least unbalance worked out, and writes the same table with the
// positions filled in. Knows no file and no arguments.
import { arrangedBy, exceeds, type Limit } from "#analysis/limits/balance.ts";
import { arrange, type Proposal, type ToPlace, unbalanceOf } from "#engineering/arrange.ts";
import { fromNumber, quantityOf } from "#engineering/ends.ts";
import { type ArrangementRow, type ReadTable, readTable } from "#model/arrangement-table.ts";
import type { Arrangement, Ring } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { toNumber, ZERO } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { csvLine } from "#syntax/csv.ts";
import { resolveUse } from "#syntax/scope.ts";
import { type CheckReport, reportOf } from "./report.ts";
import type { Workspace } from "./workspace.ts";

export interface Arrangements {
  readonly arrangement: string;
  readonly ring: string;
  readonly parts: number;
  /** How many are where they were. */
  readonly stay: number;
  /** What is left as the table has it; null where it is no arrangement yet. A mass at the radius, where no radius is given. */
  readonly before: Quantity | null;
  readonly after: Quantity;
  /** No arrangement leaves less. */
  readonly bound: Quantity;
  readonly gap: Quantity;
  readonly exact: boolean;
  readonly limits: readonly { readonly value: Quantity; readonly kept: boolean }[];
}

export type ArrangeResult =
  | { readonly kind: "done"; readonly csv: string; readonly told: Arrangements }
  | { readonly kind: "no file" }
  | { readonly kind: "which arrangement"; readonly known: readonly string[] }
  | { readonly kind: "no table"; readonly arrangement: string }
  | {
      readonly kind: "not as many";
      readonly table: string;
      readonly parts: number;
      readonly ring: string;
      readonly count: number;
    }
  | { readonly kind: "fixed twice"; readonly table: string }
  /** The table cannot be read, or what it is for is not known. */
  | { readonly kind: "errors"; readonly report: CheckReport };

/** The least unbalance that could be found; total, the same bytes for the same snapshot. */
export function arrangeTable(workspace: Workspace, path: string, name?: string): ArrangeResult {
  const model = workspace.loaded.models.get(path);
  if (model === undefined) return { kind: "no file" };
  const all = model.declarations.filter((one) => one.kind === "arrangement");
  const named = name === undefined ? all : all.filter((one) => one.name === name);
  const [arrangement] = named;
  if (arrangement === undefined || named.length > 1)
    return { kind: "which arrangement", known: all.map((one) => one.name) };
  if (arrangement.from === null) return { kind: "no table", arrangement: arrangement.name };
  const arranged = arrangedBy(arrangement);
  const doubled = arranged?.faults.some(({ how }) => how === "same serial") ?? false;
  if (arranged === null || doubled) return { kind: "errors", report: errorsOf(workspace, path, arrangement) };
  const { ring, rows, limits } = arranged;
  const table = arrangement.from.path;
  if (rows.length !== ring.count)
    return { kind: "not as many", table, parts: rows.length, ring: ring.name, count: ring.count };
  const parts = rows.map(toPlace);
  const proposal = arrange(parts);
  if (proposal === null) return { kind: "fixed twice", table };
  const text = workspace.snapshot.texts.get(resolveUse(path, table) ?? "") ?? "";
  return {
    kind: "done",
    csv: tableText(readTable(text), proposal),
    told: toldOf({ arrangement, ring, rows, limits }, parts, proposal, arranged.faults.length === 0),
  };
}

/** What is found of the arrangement itself, and of the path of its table. */
function errorsOf(workspace: Workspace, path: string, { extent }: Arrangement): CheckReport {
  const findings = workspace
    .findings([path])
    .filter(({ span }) => span.path === extent.path && span.start >= extent.start && span.end <= extent.end);
  return reportOf([path], findings, workspace.snapshot.texts, { procedures: 0, steps: 0 });
}

function toPlace({ fixed, position, weight }: ArrangementRow): ToPlace {
  return {
    moment: toNumber(weight.nominal?.base ?? ZERO),
    fixed: fixed ? position : null,
    now: position,
  };
}

interface Known {
  readonly arrangement: Arrangement;
  readonly ring: Ring;
  readonly rows: readonly ArrangementRow[];
  readonly limits: readonly Limit[];
}

function toldOf(
  { arrangement, ring, rows, limits }: Known,
  parts: readonly ToPlace[],
  { positions, residual, bound, exact }: Proposal,
  isPlaced: boolean,
): Arrangements {
  const byMass = rows[0]?.weight.kind === "mass";
  const { nominal, low, high } = arrangement.radius?.quantity ?? {};
  const radius = nominal ?? low ?? high ?? null;
  const limit = limits[0]?.value;
  const unit = (limit?.high ?? limit?.nominal)?.unit ?? unitNamed("g·mm");
  const shown = (moment: number): Quantity => {
    const isMass = byMass && radius === null;
    const size = byMass && radius !== null ? moment * toNumber(radius.base) : moment;
    const base = fromNumber(size) ?? ZERO;
    const ends = { low: base, nominal: base, high: base };
    // With as many digits as a finding has, so that one unbalance is one number.
    return isMass ? quantityOf("mass", ends, unitNamed("g")) : quantityOf("mass moment", ends, unit);
  };
  const before = isPlaced
    ? unbalanceOf(
        parts,
        rows.map(({ position }) => position ?? 0),
      )
    : null;
  const after = shown(residual);
  return {
    arrangement: arrangement.name,
    ring: ring.name,
    parts: rows.length,
    stay: rows.filter(({ position }, at) => position === positions[at]).length,
    before: before === null ? null : shown(before < NEGLIGIBLE ? 0 : before),
    after,
    bound: shown(bound),
    gap: shown(residual - bound),
    exact,
    limits: after.kind === "mass" ? [] : limits.map(({ value }) => ({ value, kept: !exceeds(after, value) })),
  };
}

/** In kg, or kg·m: less than any scale shows. */
const NEGLIGIBLE = 1e-12;

/** The same columns, in the order of the positions. */
function tableText({ csv, columns, rows }: ReadTable, { positions }: Proposal): string {
  const [header, ...records] = csv.records;
  const width = header?.cells.length ?? 0;
  const at = columns.position;
  const lines = rows
    .map((_, row) => ({ cells: records[row]?.cells ?? [], position: positions[row] ?? 0 }))
    .sort((a, b) => a.position - b.position)
    .map(({ cells, position }) => {
      const whole = Array.from({ length: Math.max(width, cells.length) }, (_, nth) => cells[nth] ?? "");
      return at === undefined ? [String(position), ...whole] : whole.with(at, String(position));
    });
  const first = at === undefined ? ["position", ...(header?.cells ?? [])] : (header?.cells ?? []);
  return [first, ...lines].map((cells) => csvLine(cells, csv.separator) + csv.lineEnd).join("");
}
