// All that a procedure raises, each with where it stands and what warns of it: gathered in one pass over what the follower
// knows. Knows no finding.
import type { ExpandedAction } from "#model/expanded.ts";
import type { Statement } from "#model/procedure.ts";
import { NEVER } from "../decision.ts";
import { type Run, stateBefore } from "../follow.ts";
import type { Node } from "../graph.ts";
import { declared } from "../limits/at-node.ts";
import { HAZARDS } from "./catalogue.ts";
import type { Raise, Site } from "./raise.ts";
import { raisedAt } from "./raising.ts";
import { inForce, isDoubtful, type Placed, type Scopes, type Standing, scopesOf, tooLate } from "./scope.ts";

/** One thing that is raised. */
export interface Seen {
  readonly raise: Raise;
  readonly standing: Standing | undefined;
  /** What a statement warns of that stands too late for it. */
  readonly late: ReadonlyMap<Placed, readonly string[]>;
  /** What no statement at all warns of. */
  readonly open: readonly string[];
}

export interface Gathered {
  readonly scopes: Scopes;
  /** In the order of the work. */
  readonly raises: readonly Seen[];
  /** Hazards that something raises, with a statement wanted or not. */
  readonly names: ReadonlySet<string>;
  /** Statements that something in their scope calls for, or may. */
  readonly called: ReadonlySet<Placed>;
}

/** Worked out once for each run. */
export function gathered(run: Run): Gathered {
  const known = gatherings.get(run) ?? gather(run);
  gatherings.set(run, known);
  return known;
}

const gatherings = new WeakMap<Run, Gathered>();

function gather(run: Run): Gathered {
  const scopes = scopesOf(run.expanded.procedure);
  const own = new Set(declared(run, "hazard").map(({ name }) => name));
  const isKnown = (name: string): boolean => HAZARDS.has(name) || own.has(name);
  const names = new Set<string>();
  // A threshold that cannot be read may be passed anywhere.
  const isUnsure = declared(run, "threshold").some(({ damaged }) => damaged);
  const called = new Set(isUnsure ? scopes.statements : scopes.open);
  const raises: Seen[] = [];
  const admit = (site: Site, hazards: readonly string[]): void => {
    for (const name of hazards) names.add(name);
    for (const placed of inForce(scopes.of(site))) if (warnsOf(placed.statement, hazards)) called.add(placed);
  };
  const raise = (what: Raise): void => {
    const hazards = what.hazards.filter(isKnown);
    admit(what.site, hazards);
    const where = run.decisions.and(what.where, run.given);
    if (where !== NEVER && hazards.length > 0)
      raises.push(seen({ ...what, hazards, where }, scopes.of(what.site), isKnown));
  };
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    const doubtful = state === undefined ? actionAt(node) : unknownAt(run, node);
    for (const placed of doubtful === null ? [] : inForce(scopes.of(doubtful.action))) called.add(placed);
    if (state === undefined) continue;
    const callee = run.calleeAt(node);
    const line = actionAt(node);
    if (callee !== null && line !== null) admit(line.action, [...gathered(callee.run).names]);
    raisedAt({ run, node, state, admit, raise });
  }
  return { scopes, raises, names, called };
}

function actionAt({ operation }: Node): ExpandedAction | null {
  return operation.kind === "act" ? operation.line : null;
}

/** The action of a node that may raise anything: a procedure that cannot be followed, a thing whose declaration cannot be read. */
function unknownAt(run: Run, node: Node): ExpandedAction | null {
  const line = actionAt(node);
  if (line === null) return null;
  const isLost = line.action.verb === "perform" && run.calleeAt(node) === null;
  return isLost || isDamaged(line) ? line : null;
}

function isDamaged({ action, objects }: ExpandedAction): boolean {
  const consumable = "dose" in action ? action.dose.consumable : "with" in action ? action.with : null;
  return (
    consumable?.damaged === true ||
    objects.some((thing) =>
      thing.kind === "part"
        ? thing.part.damaged || thing.part.drivenBy.some(({ damaged }) => damaged)
        : thing.kind === "other" && thing.thing.damaged,
    )
  );
}

function seen(raise: Raise, standing: Standing | undefined, isKnown: (name: string) => boolean): Seen {
  const late = new Map<Placed, readonly string[]>();
  let open = openOf(raise, standing, isKnown);
  for (const placed of open.length === 0 ? [] : tooLate(standing)) {
    const hazards = open.filter((name) => warnsOf(placed.statement, [name]));
    if (hazards.length === 0) continue;
    late.set(placed, hazards);
    open = raise.anyOf ? [] : open.filter((name) => !hazards.includes(name));
  }
  return { raise, standing, late, open };
}

function openOf(raise: Raise, standing: Standing | undefined, isKnown: (name: string) => boolean): readonly string[] {
  if (isDoubtful(standing)) return [];
  const statements = [...inForce(standing)].map(({ statement }) => statement);
  // What one warns of cannot be read.
  if (statements.some(({ hazards }) => hazards.some(({ name }) => !isKnown(name)))) return [];
  return uncovered(raise, statements);
}

/** What none of the statements warns of, of what is wanted. */
export function uncovered({ anyOf, hazards }: Raise, statements: readonly Statement[]): readonly string[] {
  if (anyOf && statements.some((statement) => warnsOf(statement, hazards))) return [];
  return hazards.filter((name) => !statements.some((statement) => warnsOf(statement, [name])));
}

export function warnsOf(statement: Statement, hazards: readonly string[]): boolean {
  return statement.hazards.some(({ name }) => hazards.includes(name));
}
