// Statements that were read long before the step that they are for, so that an output can say them again there. Knows no output.
import type { Procedure, Statement } from "#model/procedure.ts";
import { stepsOf } from "#model/written-steps.ts";
import type { Run } from "../follow.ts";
import { gathered, type Seen, warnsOf } from "./gathering.ts";
import { inForce } from "./scope.ts";

/** By the step that they are said again at: see {@link stepKey}. */
export type Reminders = ReadonlyMap<string, readonly Statement[]>;

/** After so many steps, as written, what was read is to be said again (practice). */
const FAR = 5;

export function stepKey(procedure: Pick<Procedure, "id">, number: string): string {
  return `${procedure.id} ${number}`;
}

/** Of a procedure and all that it performs. */
export function remindersOf(run: Run): Reminders {
  const reminders = new Map<string, readonly Statement[]>();
  const seen = new Set<string>();
  const runs = [run];
  for (const one of runs) {
    const { procedure } = one.expanded;
    if (seen.has(procedure.id)) continue;
    seen.add(procedure.id);
    for (const [number, statements] of inProcedure(one)) reminders.set(stepKey(procedure, number), statements);
    runs.push(...one.graph.nodes.flatMap((node) => one.calleeAt(node)?.run ?? []));
  }
  return reminders;
}

function* inProcedure(run: Run): Generator<readonly [number: string, statements: readonly Statement[]]> {
  const steps = [...stepsOf(run.expanded.procedure.items)];
  const { raises } = gathered(run);
  const wanted = steps.map(({ span }) =>
    raises.filter(({ raise }) => span.start <= raise.span.start && raise.span.end <= span.end).flatMap(nearestOf),
  );
  /** At how many steps a statement was last read. */
  const read = new Map<Statement, number>();
  for (const [at, step] of steps.entries()) {
    const again = [...new Set(wanted[at])].filter((statement) => {
      const before = read.get(statement) ?? steps.filter(({ span }) => span.start < statement.span.start).length;
      return at - before >= FAR;
    });
    for (const statement of again) read.set(statement, at);
    if (again.length > 0) yield [step.number, again];
  }
}

/** What warns of it, for each hazard the statement that was read last. */
function nearestOf({ raise, standing }: Seen): readonly Statement[] {
  const statements = [...inForce(standing)].map(({ statement }) => statement);
  const wanted = raise.anyOf ? [raise.hazards] : raise.hazards.map((name) => [name]);
  return wanted.flatMap((hazards) => statements.find((statement) => warnsOf(statement, hazards)) ?? []);
}
