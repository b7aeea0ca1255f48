// Hazards against statements: what is raised and nobody is warned of, what comes too late, what nothing raises.
import type { Statement } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { ALWAYS, type Decision, NEVER } from "../decision.ts";
import type { AnalysisFact } from "../fact.ts";
import type { Run } from "../follow.ts";
import { declared } from "../limits/at-node.ts";
import type { Raw } from "../raw-fact.ts";
import { together } from "../report.ts";
import { HAZARDS } from "./catalogue.ts";
import { type Gathered, gathered, type Seen, uncovered } from "./gathering.ts";
import type { HazardFact, HeadPlace, Raised } from "./hazard-fact.ts";
import type { Raise } from "./raise.ts";
import { type Block, inForce, type Standing } from "./scope.ts";

/** Every hazard that no statement in force covers, and every statement that is out of place. */
export function hazardFactsOf(run: Run): readonly AnalysisFact[] {
  const found = gathered(run);
  return together(run, [...missing(run, found), ...late(found), ...idle(found)]);
}

/**
 * What a statement at a place would have to warn of: all that is raised behind it in the block that it stands in, and that no other
 * statement covers. In the order of the text, each once.
 */
export function wantedAt(run: Run, block: Span, offset: number): readonly string[] {
  const wanted = new Set<string>();
  const isHere = ({ span }: Statement): boolean => span.start <= offset && offset <= span.end;
  for (const { raise, standing } of gathered(run).raises) {
    if (raise.span.start < offset || raise.span.end > block.end) continue;
    const others = [...inForce(standing)].map(({ statement }) => statement).filter((one) => !isHere(one));
    for (const hazard of uncovered(raise, others)) wanted.add(hazard);
  }
  return [...wanted];
}

/** Thresholds that something in the procedure is at or past, or may be. */
export function thresholdsPassed(run: Run): ReadonlySet<string> {
  const { names, raises } = gathered(run);
  // A hazard has the name of its threshold, but for what else a threshold makes a hazard.
  return new Set([...names, ...raises.flatMap(({ raise }) => raise.passed?.threshold.name ?? [])]);
}

function* late({ raises }: Gathered): Generator<Raw> {
  for (const { raise, late: statements } of raises)
    for (const [{ statement }, hazards] of statements) {
      const raised = raisedOf(raise, hazards);
      const fact = { kind: "statement too late" as const, span: statement.span, raised, raisedAt: raise.span };
      yield { fact, where: raise.where, pass: raise.pass, subject: hazards.join(" ") };
    }
}

/** One for each source of a hazard, at its first line on each way through. */
function* missing(run: Run, { raises }: Gathered): Generator<Raw> {
  const lines = linesBySource(raises);
  const told = new Map<string, Told[]>();
  for (const { raise, open } of raises)
    for (const [where, hazards] of untold(run, raise, open, told)) {
      const { grave, span, anyOf } = raise;
      for (const hazard of hazards) listAt(told, sourceKey(raise, hazard)).push({ span, where, grave });
      const standings = hazards.flatMap((hazard) => [...(lines.get(sourceKey(raise, hazard)) ?? [])]);
      const raised = raisedOf(raise, hazards);
      const titles = titlesOf(run, hazards);
      const fact: Bare = {
        kind: "hazard not covered",
        span,
        raised,
        grave,
        anyOf,
        places: headPlaces(standings),
        titles,
      };
      yield { fact, where, pass: raise.pass, subject: `${raise.of.name} ${hazards.join(" ")}` };
    }
}

/** Where a source of a hazard has been told of. */
interface Told {
  readonly span: Span;
  readonly where: Decision;
  readonly grave: boolean;
}

/** The hazards that have not been told of this source at another line, by the choices for which they have not. */
function untold(
  run: Run,
  raise: Raise,
  open: readonly string[],
  told: Map<string, Told[]>,
): ReadonlyMap<Decision, string[]> {
  const { and, not, or } = run.decisions;
  const byWhere = new Map<Decision, string[]>();
  for (const hazard of open) {
    // Where one of them is enough, one that was told is; a warning does not stand for an error.
    const before = (raise.anyOf ? open : [hazard])
      .flatMap((one) => listAt(told, sourceKey(raise, one)))
      .filter(({ span, grave }) => span.start !== raise.span.start && (grave || !raise.grave));
    const where = and(raise.where, not(before.reduce((so, one) => or(so, one.where), NEVER as Decision)));
    if (where !== NEVER) listAt(byWhere, where).push(hazard);
  }
  return byWhere;
}

type Bare = Omit<Extract<HazardFact, { kind: "hazard not covered" }>, "options" | "pass" | "more">;

function raisedOf({ cause, of: { name, title }, passed }: Raise, hazards: readonly string[]): Raised {
  return { cause, of: { name, title }, hazards, passed };
}

function sourceKey({ of }: Raise, hazard: string): string {
  return `${hazard} ${of.name}`;
}

function listAt<Key, One>(lists: Map<Key, One[]>, key: Key): One[] {
  const known = lists.get(key) ?? [];
  lists.set(key, known);
  return known;
}

function linesBySource(raises: readonly Seen[]): ReadonlyMap<string, ReadonlySet<Standing>> {
  const lines = new Map<string, Set<Standing>>();
  for (const { raise, standing, open } of raises) {
    if (standing === undefined) continue;
    for (const hazard of open) {
      const key = sourceKey(raise, hazard);
      lines.set(key, (lines.get(key) ?? new Set<Standing>()).add(standing));
    }
  }
  return lines;
}

/** The heads of the blocks that hold all the lines, innermost first. */
function headPlaces([first, ...others]: readonly Standing[]): readonly HeadPlace[] {
  const places: HeadPlace[] = [];
  for (let here: Standing | null = first ?? null; here !== null; here = here.outer) {
    const { block } = here;
    if (block.kind === "inner" || block.first === null || !others.every((other) => isIn(other, block))) continue;
    places.push({ block: block.kind, before: block.first });
  }
  return places;
}

function isIn(standing: Standing, block: Block): boolean {
  for (let here: Standing | null = standing; here !== null; here = here.outer) if (here.block === block) return true;
  return false;
}

function titlesOf(run: Run, hazards: readonly string[]): Readonly<Record<string, string>> {
  const own = declared(run, "hazard").filter(({ name }) => hazards.includes(name));
  return Object.fromEntries(own.map(({ name, title }) => [name, title]));
}

/** Statements of hazards that facts can raise, of which nothing in their scope raises any. */
function* idle({ scopes, raises, called }: Gathered): Generator<Raw> {
  const late = new Set(raises.flatMap((seen) => [...seen.late.keys()]));
  for (const placed of scopes.statements) {
    if (called.has(placed) || late.has(placed)) continue;
    const { hazards, span } = placed.statement;
    const names = hazards.map(({ name }) => name);
    if (!names.every((name) => HAZARDS.get(name)?.raisedByFacts === true)) continue;
    const fact = { kind: "idle statement" as const, span, hazards: names };
    yield { fact, where: ALWAYS, pass: [], subject: names.join(" ") };
  }
}
