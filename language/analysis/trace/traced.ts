// Every value and step of a file, and what it cites: itself, what it is made of, its step, its tasks, its procedure, its
// declaration. The one answer for the rule and for the matrix. Knows no wording.
import type { Citation, Declaration, Fit, NamedValue, Part } from "#model/declarations.ts";
import type { Action, Condition, FileModel, Item, Line, Procedure, Step, Task } from "#model/procedure.ts";
import { blocksOf, damagedIn, linesOf } from "#model/written-steps.ts";
import { isWithin, type Span } from "#syntax/span.ts";
import { conditionValues, declaredValues, given, type Listed, ownValues, stepValues } from "./values.ts";

/** A value, or a step, with what it cites. */
export interface Traced {
  /** Null outside procedures. */
  readonly procedure: Procedure | null;
  /** The number of its step. */
  readonly step: string | null;
  /** What the step is called, where it is the step itself; else empty. */
  readonly title: string;
  /** Null for the step itself. */
  readonly value: Listed | null;
  readonly span: Span;
  /** The nearest that it cites; empty where it cites nothing. */
  readonly citations: readonly Citation[];
  /** A line that could not be read may have held what it cites. */
  readonly inDoubt: boolean;
}

/** What is made of a task. `around`: what it inherits, before what it says itself. */
export type OfTask = (task: Task, around: Around, make: () => readonly Traced[]) => readonly Traced[];

/** Every value and every step of a file, in the order of the text. */
export function tracedIn(model: FileModel, ofTask: OfTask = (_task, _around, make) => make()): readonly Traced[] {
  const around = model.procedures.map(aroundIn);
  const declared = model.declarations.flatMap((one) => tracedDeclaration(one, around));
  const inProcedures = around.flatMap((each) => tracedProcedure(each, ofTask));
  return [...declared, ...inProcedures].sort((a, b) => a.span.start - b.span.start);
}

/** What a place inherits from what it stands in. */
export interface Around {
  readonly procedure: Procedure;
  readonly step: string | null;
  readonly citations: readonly Citation[];
  readonly inDoubt: boolean;
}

function tracedDeclaration(declared: Declaration, procedures: readonly Around[]): readonly Traced[] {
  const around = procedures.find(({ procedure }) => isWithin(declared.extent, procedure.extent));
  const procedure = around?.procedure ?? null;
  const inDoubt = declared.damaged || (around?.inDoubt ?? false);
  return declaredValues(declared).map((value) => {
    const own = declared.kind === "fit" ? fitCitations(declared) : citationsOf(value.value);
    const citations = nearest(own, listOf(declared.per), around?.citations ?? []);
    return { procedure, step: null, title: "", value, span: value.value.span, citations, inDoubt };
  });
}

/** The numbers of a fit are one fact: what one of them cites holds for all. */
function fitCitations({
  interference,
  tolerance,
  diameter,
  slipClearance,
  length,
  friction,
}: Fit): readonly Citation[] {
  const values = [interference, tolerance, diameter, slipClearance, length, friction];
  return [...new Set(values.flatMap((value) => listOf(value?.per ?? null)))];
}

function tracedProcedure(around: Around, ofTask: OfTask): readonly Traced[] {
  const { procedure } = around;
  const conditions = (what: string, list: readonly Condition[]) =>
    list.flatMap((condition) => conditionValues(what, condition));
  const head = [
    ...given("ambient", "", procedure.ambient),
    ...given("room", "", procedure.room),
    ...conditions("begin with", procedure.begin),
    ...conditions("finish with", procedure.finish),
  ];
  return [...head.map((value) => traced(around, value)), ...tracedItems(around, procedure.items, ofTask)];
}

function tracedItems(around: Around, items: readonly Item[], ofTask: OfTask): readonly Traced[] {
  return items.flatMap((item): readonly Traced[] => {
    if (item.kind === "task")
      return ofTask(item, around, () => tracedItems(inside(around, item.cites, item.items), item.items, ofTask));
    if (item.kind === "step") return tracedStep(inside({ ...around, step: item.number }, item.cites, item.lines), item);
    if (item.kind === "perform")
      return [itself(around, item.number, item.action.procedure?.name ?? "", item.action.place)];
    const values = ownValues(item).map((value) => traced(around, value));
    return [...values, ...blocksOf(item).flatMap((block) => tracedItems(around, block, ofTask))];
  });
}

function tracedStep(around: Around, step: Step): readonly Traced[] {
  const values = stepValues(step).map((value) => traced(around, value));
  const own = itself(around, step.number, step.words ?? step.name ?? "", step.headSpan);
  return [own, ...values, ...tracedLines(around, step.lines)];
}

function tracedLines(around: Around, lines: readonly Line[]): readonly Traced[] {
  return [...linesOf(lines)].flatMap((line) => ownValues(line).map((value) => traced(around, value, line)));
}

/** The step alone. */
function itself({ procedure, citations, inDoubt }: Around, step: string, title: string, span: Span): Traced {
  return { procedure, step, title, value: null, span, citations, inDoubt };
}

function traced({ procedure, step, citations, inDoubt }: Around, value: Listed, line?: Line): Traced {
  const parts = line?.kind === "action" && value.what === "torque" ? fastenersOf(line) : [];
  const made = "named" in value.value ? (value.value.named ?? []) : [];
  // Of a fastener that is not known, nobody knows what it cites.
  const isUnclear =
    parts.some(({ damaged }) => damaged) ||
    (line?.kind === "action" && line.verb === "tighten" && line.objects.some(({ thing }) => thing === null));
  return {
    ...{ procedure, step, title: "", value, span: value.value.span },
    citations: nearest(citationsOf(value.value), citations, parts.flatMap(torqueCitations)),
    inDoubt: inDoubt || isUnclear || made.some(({ damaged }) => damaged),
  };
}

/** What a fastener's own torque cites: a step only says it again, and whether rightly is asked elsewhere. */
function torqueCitations({ torques, per }: Part): readonly Citation[] {
  return torques.flatMap((declared) => nearest(citationsOf(declared.value), listOf(per)));
}

/** The fasteners that get their torque there; seating them is no torque of theirs. */
function fastenersOf(action: Action): readonly Part[] {
  if (action.verb !== "tighten" || action.toSeat) return [];
  return action.objects.flatMap(({ thing }) => (thing?.kind === "part" ? [thing] : []));
}

/** What a value cites itself, or the named values that it is made of. */
function citationsOf(value: Listed["value"]): readonly Citation[] {
  if (value.per !== null) return [value.per];
  const named: readonly NamedValue[] = "named" in value ? (value.named ?? []) : [];
  return [...new Set(named.flatMap(({ per, value: made }) => (made === null ? listOf(per) : citationsOf(made))))];
}

function aroundIn(procedure: Procedure): Around {
  const none: Around = { procedure, step: null, citations: [], inDoubt: false };
  return inside(none, procedure.cites, procedure.items);
}

function inside(around: Around, cites: readonly Citation[], content: readonly (Item | Line)[]): Around {
  return {
    ...around,
    citations: nearest(cites, around.citations),
    inDoubt: around.inDoubt || mayCite(content),
  };
}

/** Whether a line of its own that could not be read may have cited something. */
function mayCite(content: readonly (Item | Line)[]): boolean {
  return [...damagedIn(content)].some(
    ({ mentions, noWork, mayWait, verb }) =>
      verb === undefined &&
      (mentions.some(({ kind }) => kind === "source") ||
        (mentions.length === 0 && noWork !== true && mayWait === undefined)),
  );
}

/** The first that is not empty. */
function nearest(...levels: readonly (readonly Citation[])[]): readonly Citation[] {
  return levels.find((level) => level.length > 0) ?? [];
}

function listOf(citation: Citation | null): readonly Citation[] {
  return citation === null ? [] : [citation];
}
