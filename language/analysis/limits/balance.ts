// Who goes where on a ring: whether each position has exactly one part, and what unbalance is left against what may be. Looks at
// declarations, at no step.
import { permissibleUnbalance, residualUnbalance } from "#engineering/balance.ts";
import { fromNumber, type Given, quantityOf } from "#engineering/ends.ts";
import type { Explanation } from "#engineering/explanation.ts";
import type { ArrangementRow } from "#model/arrangement-table.ts";
import type { Arrangement, Declaration, Ring, Value } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { add, eq, toNumber, ZERO } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import type { Span } from "#syntax/span.ts";
import { limitBase, topOf } from "./at-node.ts";
import type { BalanceFact, GradeUsed, OccupancyFault } from "./limit-fact.ts";
import type { Unchecked } from "./unchecked.ts";

/** An arrangement whose table could be read and whose ring is known. */
export interface Arranged {
  readonly arrangement: Arrangement;
  readonly ring: Ring;
  /** In the order of the table. */
  readonly rows: readonly ArrangementRow[];
  /** Why it is no arrangement yet; empty where each position has exactly one part. */
  readonly faults: readonly OccupancyFault[];
  /** What is left; null where it is not known. */
  readonly residual: Residual | null;
  /** What may be left, the smallest first. */
  readonly limits: readonly Limit[];
  /** Of all parts together; null where moments are given. */
  readonly mass: Quantity | null;
  readonly lacks: readonly (BalanceFact & { readonly kind: "balance data" })["lacks"][];
}

export interface Residual {
  readonly value: Quantity;
  readonly explanation: Explanation;
  /** In positions from 1; null where nothing is left. */
  readonly direction: number | null;
}

export interface Limit {
  readonly how: "limit" | "grade";
  readonly value: Quantity;
  readonly span: Span;
  readonly grade: GradeUsed | null;
  /** How a grade became a limit; null for one that is written. */
  readonly explanation: Explanation | null;
}

/** What is wrong with the arrangements among these. */
export function balanceFacts(declarations: readonly Declaration[]): readonly BalanceFact[] {
  return declarations.flatMap((declared): readonly BalanceFact[] => {
    if (declared.kind !== "arrangement" || declared.damaged) return [];
    const common = { span: declared.span, pass: [], more: 0, arrangement: declared.name } as const;
    const arranged = arrangedBy(declared);
    if (arranged === null) return unreadableGrade(declared).map((fact) => ({ ...common, ...fact }));
    const { ring, faults, residual, limits, lacks } = arranged;
    const table = declared.from?.path ?? "";
    return [
      ...faults.map((fault) => ({
        ...common,
        kind: "occupancy" as const,
        ring: ring.name,
        count: ring.count,
        table,
        fault,
      })),
      ...lacks.map((lack) => ({
        ...common,
        kind: "balance data" as const,
        lacks: lack,
        given: declared.grade?.text ?? null,
      })),
      ...limits.flatMap(({ how, value, span, grade }) =>
        residual === null || residual.direction === null || !exceeds(residual.value, value)
          ? []
          : [
              {
                ...common,
                kind: "unbalance" as const,
                how,
                residual: toExceed(residual.value, value),
                limit: value,
                direction: residual.direction,
                count: ring.count,
                radius: isByMoment(arranged.rows) ? null : (declared.radius?.quantity ?? null),
                limitAt: span,
                grade,
                explanation: residual.explanation,
              },
            ],
      ),
    ];
  });
}

/** An arrangement with what can be said of it; null where its table, its part or its ring is not known. */
export function arrangedBy(arrangement: Arrangement): Arranged | null {
  const { rows, ring, part } = arrangement;
  if (rows === null || ring === null || part === null || ring.damaged || ring.count < 1) return null;
  const faults = faultsOf(rows, ring.count);
  const { limits, lacks } = limitsOf(arrangement, rows);
  const isPlaced = faults.length === 0;
  const noRadius = !isByMoment(rows) && arrangement.radius === null;
  return {
    arrangement,
    ring,
    rows,
    faults,
    residual: isPlaced ? residualOf(arrangement, ring, rows, unitOf(limits[0]?.value)) : null,
    limits,
    mass: massOfAll(rows),
    lacks: [...(noRadius ? ["radius" as const] : []), ...lacks],
  };
}

/** How the residual came about, and what a grade permits. */
export function explanationsOf(arrangement: Arrangement): readonly Explanation[] {
  const arranged = arrangedBy(arrangement);
  if (arranged === null) return [];
  const all = [arranged.residual, ...arranged.limits].map((one) => one?.explanation ?? null);
  return all.filter((one) => one !== null);
}

/** What is not checked for want of data: an arrangement without a limit, or without a table. */
export function uncheckedBalance(declared: Declaration, leaveOut: (unchecked: Unchecked) => void): void {
  if (declared.kind !== "arrangement" || declared.damaged) return;
  const { name, span, unbalance, grade, from } = declared;
  const lacks = from === null ? "table" : unbalance === null && grade === null ? "unbalance or grade" : null;
  if (lacks !== null) leaveOut({ matter: "balance", of: name, lacks, when: null, in: name, span });
}

/** Whether the residual is above the limit, by more than rounding. */
export function exceeds(residual: Quantity, limit: Quantity): boolean {
  const [found, most] = [limitBase(residual), topOf(limit) ?? limitBase(limit)];
  return found !== null && most !== null && toNumber(found) > toNumber(most) * (1 + ROUNDING);
}

const ROUNDING = 1e-9;

function isByMoment(rows: readonly ArrangementRow[]): boolean {
  return rows[0]?.weight.kind === "mass moment";
}

/** In the unit of the limit, so that both can be compared by eye. */
function unitOf(limit: Quantity | undefined): Unit {
  return (limit?.high ?? limit?.nominal)?.unit ?? unitNamed("g·mm");
}

/** With as many digits as it takes to be seen above the limit. */
function toExceed(residual: Quantity, limit: Quantity): Quantity {
  const base = limitBase(residual) ?? ZERO;
  const most = limit.high ?? limit.nominal;
  for (let digits = 4; digits < 12; digits++) {
    const shown = quantityOf("mass moment", { low: base, nominal: base, high: base }, unitOf(limit), digits);
    const step = 10 ** (shown.nominal?.digit ?? 0);
    const rounded = Math.round(toNumber(shown.nominal?.written ?? ZERO) / step) * step;
    if (rounded > toNumber(most?.written ?? ZERO) + step / 2) return shown;
  }
  return residual;
}

function residualOf(
  { radius }: Arrangement,
  { count }: Ring,
  rows: readonly ArrangementRow[],
  unit: Unit,
): Residual | null {
  const parts = rows.map(({ position, weight }) => ({ position: position ?? 0, weight: { value: weight } }));
  const { computed, direction } = residualUnbalance({ count, radius: given(radius) }, parts, unit);
  if (!computed.ok) return null;
  const at = direction === null ? null : Number((((direction * count) % count) + 1).toFixed(6));
  return { value: computed.value, explanation: computed.explanation, direction: at };
}

function given(value: Value | null): Given | null {
  return value === null ? null : { value: value.quantity };
}

function limitsOf(
  { unbalance, grade, mass, speed, span }: Arrangement,
  rows: readonly ArrangementRow[],
): Pick<Arranged, "limits" | "lacks"> {
  const limits: Limit[] = [];
  const lacks: Arranged["lacks"][number][] = [];
  if (unbalance !== null) {
    const { quantity, span: at } = unbalance;
    limits.push({ how: "limit", value: quantity, span: at, grade: null, explanation: null });
  }
  if (grade === null) return { limits, lacks: speed === null ? [] : ["grade"] };
  const rotor = mass?.quantity ?? massOfAll(rows);
  if (speed === null) lacks.push("speed");
  if (rotor === null) lacks.push("mass");
  const probe = permissibleUnbalance(
    grade.text,
    { value: rotor ?? ONE_KILOGRAM },
    { value: speed?.quantity ?? ONE_RPM },
  );
  if (!probe.ok && probe.refusal.why === "not known") return { limits, lacks: ["known grade"] };
  if (probe.ok && speed !== null && rotor !== null) {
    const used = { grade: grade.text, speed: speed.quantity, mass: rotor, ofSet: mass === null };
    const { value, explanation } = probe;
    limits.push({ how: "grade", value, span: grade.span ?? span, grade: used, explanation });
  }
  const size = ({ value }: Limit): number => toNumber(topOf(value) ?? limitBase(value) ?? ZERO);
  return { limits: limits.sort((a, b) => size(a) - size(b)), lacks };
}

const one = (kind: "mass" | "rotational speed", unit: string): Quantity => {
  const base = fromNumber(1) ?? ZERO;
  return quantityOf(kind, { low: base, nominal: base, high: base }, unitNamed(unit));
};
const ONE_KILOGRAM = one("mass", "kg");
const ONE_RPM = one("rotational speed", "rpm");

/** A grade that is none is told also where there is no table. */
function unreadableGrade({ grade }: Arrangement) {
  if (grade === null) return [];
  const probe = permissibleUnbalance(grade.text, { value: ONE_KILOGRAM }, { value: ONE_RPM });
  return probe.ok ? [] : [{ kind: "balance data" as const, lacks: "known grade" as const, given: grade.text }];
}

/** The mass of the set, which is less than that of the rotor it is on; null where moments are given. */
function massOfAll(rows: readonly ArrangementRow[]): Quantity | null {
  const [first] = rows;
  if (first === undefined || isByMoment(rows)) return null;
  const base = rows.reduce((sum, { weight }) => add(sum, weight.nominal?.base ?? ZERO), ZERO);
  return eq(base, ZERO)
    ? null
    : quantityOf("mass", { low: base, nominal: base, high: base }, first.weight.nominal?.unit ?? unitNamed("kg"), 6);
}

function faultsOf(rows: readonly ArrangementRow[], count: number): readonly OccupancyFault[] {
  const faults: OccupancyFault[] = [];
  const bySerial = new Map<string, ArrangementRow>();
  const byPosition = new Map<number, ArrangementRow>();
  const nowhere = rows.filter(({ position }) => position === null);
  for (const row of rows) {
    const same = bySerial.get(row.serial);
    if (same !== undefined) faults.push({ how: "same serial", serial: row.serial, lines: [same.line, row.line] });
    else bySerial.set(row.serial, row);
    const { position, serial, line } = row;
    if (position === null) continue;
    const before = byPosition.get(position);
    if (position < 1 || position > count) faults.push({ how: "outside", position, serial, line });
    else if (before === undefined) byPosition.set(position, row);
    else faults.push({ how: "twice", position, serials: [before.serial, serial], lines: [before.line, line] });
  }
  if (nowhere.length > 0)
    faults.push({ how: "nowhere", serials: nowhere.map(({ serial }) => serial), line: nowhere[0]?.line ?? 0 });
  const positions = Array.from({ length: count }, (_, at) => at + 1).filter((position) => !byPosition.has(position));
  if (positions.length > 0 && faults.length === 0) faults.push({ how: "empty", positions });
  return faults;
}
