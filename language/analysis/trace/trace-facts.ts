// What is wrong with sources, revisions, records and reasons, told from what is written: no step is followed. Knows no wording.
import type { Allow, FileModel, Procedure, Step } from "#model/procedure.ts";
import { damagedIn, linesOf, stepsOf } from "#model/written-steps.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { foundAt } from "../found-at.ts";
import { isPlaceholder } from "../placeholder.ts";
import { keepSilent, wasSilent } from "../silent-tasks.ts";
import type { TraceFact } from "./trace-fact.ts";
import { type OfTask, type Traced, tracedIn } from "./traced.ts";

/** What is found of the sources, revisions and records of a file. */
export function traceFactsOf(model: FileModel): readonly TraceFact[] {
  return [
    ...tracedIn(model, unlessSilent).flatMap(unsourced),
    ...model.procedures.flatMap((procedure) => [...oldRevisions(procedure), ...unrecorded(procedure)]),
  ];
}

/** Each `allow` whose reason says nothing. */
export function weakAllows(allows: readonly Allow[]): readonly TraceFact[] {
  return allows
    .filter(({ reason }) => isPlaceholder(reason))
    .map(({ code, codeSpan, reason, span }) => ({
      kind: "weak allow",
      ...foundAt({ ...span, end: codeSpan.end }),
      ...{ code, reason },
    }));
}

/** Whether anything in a task lacks a source hangs on what it stands in by no more than this. */
const unlessSilent: OfTask = (task, { citations, inDoubt }, make) => {
  const asked = `sources ${citations.length > 0} ${inDoubt}`;
  if (wasSilent(task, asked)) return [];
  const all = make();
  if (all.every((one) => unsourced(one).length === 0)) keepSilent(task, asked);
  return all;
};

function unsourced({ value, citations, inDoubt }: Traced): readonly TraceFact[] {
  if (value === null || !value.due || inDoubt || citations.length > 0) return [];
  const { what, of } = value;
  const [named] = "named" in value.value ? (value.value.named ?? []) : [];
  const byName = named === undefined ? null : { name: named.name, span: named.span };
  return [{ kind: "no source", ...foundAt(value.value.span), what, of, named: byName }];
}

/** Only where the library says which revision is current. */
function oldRevisions({ basedOn }: Procedure): readonly TraceFact[] {
  return basedOn.flatMap(({ source, revision, span }): readonly TraceFact[] => {
    if (source === null || source.revision === null || source.revision === revision) return [];
    const { title, revision: current, span: declaredAt } = source;
    return [{ kind: "old revision", ...foundAt(span), source: title, used: revision, current, declaredAt }];
  });
}

function unrecorded(procedure: Procedure): readonly TraceFact[] {
  return [...stepsOf(procedure.items)].filter(({ critical }) => critical).flatMap(unrecordedIn);
}

function unrecordedIn(step: Step): readonly TraceFact[] {
  return [...linesOf(step.lines)].flatMap((line): readonly TraceFact[] => {
    const isReading = line.kind === "check" || (line.kind === "action" && line.verb === "measure");
    if (!isReading || line.expect === null || line.record || mayRecord(step, line.expect.quantity)) return [];
    return [{ kind: "no record", ...foundAt(line.place), limits: line.expect.span }];
  });
}

/** Whether a line of the step's own may be there for this reading, or one could not be read. */
function mayRecord({ records, lines }: Step, { kind }: Quantity): boolean {
  const fits = records.some(({ expect }) => expect === null || expect.quantity.kind === kind);
  return fits || !damagedIn(lines).next().done;
}
