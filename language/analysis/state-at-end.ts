// How a procedure leaves fasteners, locks, parts and rings where `finish with` has no word on them: loose, only seated, without
// their lock, taken out, with a place passed over. Each is found at the action that left it so.
import type { Part, PartInstance } from "#model/declarations.ts";
import type { Thing } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import type { Span } from "#syntax/span.ts";
import { nextPosition, passedOver } from "./actions/filling.ts";
import type { Entry } from "./cell.ts";
import { type Decision, NEVER } from "./decision.ts";
import type { BareFact } from "./fact.ts";
import { cellOf, type State } from "./flow-state.ts";
import { type Run, stateBefore } from "./follow.ts";
import type { Node } from "./graph.ts";
import { originOf } from "./origin.ts";
import { base, type Raw } from "./raw-fact.ts";
import { isAttached, isSlack, isTight, OUT } from "./state-values.ts";
import { instanceName, kindOf, ownPosition } from "./world.ts";

interface End {
  readonly run: Run;
  readonly state: State;
  /** Variables on which `finish with` has a word. */
  readonly said: ReadonlySet<number>;
}

export function stateAtEnd(run: Run): readonly Raw[] {
  const state = stateBefore(run, run.graph.end);
  if (state === undefined) return [];
  const atoms = run.expanded.finish.flatMap((condition) => run.atoms(condition));
  const said = new Set(atoms.map(({ variable }) => variable));
  // Where a part is to be out, so are the fasteners that held it; where a fastener is to be loose, so is what locked it.
  for (const { variable, good } of atoms)
    if (good(kindOf(run.world.keyOf(variable)) === "place" ? OUT : "loose"))
      for (const fastener of run.world.fastening(variable))
        said.add(run.world.part(fastener.part, fastener.index, "place"));
  const end: End = { run, state, said };
  const instances = run.world.parts.flatMap(partInstances);
  const locks = instances.flatMap((lock) => withoutLock(end, lock));
  // What is told of a lock that was taken out is not told of it once more as a part.
  const told = new Map<number, Decision>();
  for (const { raw, removed } of locks)
    if (removed) told.set(raw.from ?? -1, run.decisions.or(told.get(raw.from ?? -1) ?? NEVER, raw.where));
  const untold = (raw: Raw): Raw => {
    const known = told.get(raw.from ?? -1);
    return known === undefined ? raw : { ...raw, where: run.decisions.and(raw.where, run.decisions.not(known)) };
  };
  return [
    ...locks.map(({ raw }) => raw),
    ...instances.flatMap((instance) => [...seated(end, instance), ...loose(end, instance)]),
    ...instances.flatMap((instance) => leftOut(end, instance).map(untold)),
    ...skipped(end),
  ];
}

function raw({ run, state }: End, from: number, fact: BareFact, where: Decision, subject: string): Raw {
  const pass = run.graph.nodes[from]?.step?.pass ?? [];
  return { fact, where: run.decisions.and(state.reach, where), pass, subject: base(subject), from };
}

/** The action that gave the state; null where nobody in this procedure did. */
function actionAt({ run }: End, { from }: Entry): Extract<Node["operation"], { kind: "act" }>["line"]["action"] | null {
  const operation = run.graph.nodes[from]?.operation;
  return operation?.kind === "act" ? operation.line.action : null;
}

/* ---- locks ---- */

/** A part that is tightened, or put in, and whose lock is not in. */
function withoutLock(end: End, lock: PartInstance): readonly { raw: Raw; removed: boolean }[] {
  const { run, state, said } = end;
  const { world, cells, decisions } = run;
  const locked = world.targets("locks", lock.part, lock.index);
  if (locked.length === 0) return [];
  const lockPlace = world.part(lock.part, lock.index, "place");
  if (said.has(lockPlace)) return [];
  const out = cellOf(run, state, lockPlace).filter(({ value }) => value === OUT);
  return locked.flatMap(({ part, index, relation }) => {
    const place = cellOf(run, state, world.part(part, index, "place"));
    const grip = cellOf(run, state, world.part(part, index, "grip"));
    const isIn = cells.where(place, isAttached);
    const isFast = part.fastener ? decisions.and(isIn, cells.where(grip, isTight)) : isIn;
    const fact = (from: number, since: number): BareFact => ({
      kind: "locked",
      part: instanceName(part, index),
      by: instanceName(lock.part, lock.index),
      verb: "",
      atEnd: true,
      declaredAt: relation.span,
      since: originOf(run, since),
      span: originOf(run, from).span,
      mendAt: isCertain(end, decisions.and(cells.where(cellOf(run, state, lockPlace), isOutside), isFast))
        ? lastIn(end)
        : null,
    });
    const subject = `${base(instanceName(part, index))} ${lock.part.name}`;
    return out.flatMap((missing): { raw: Raw; removed: boolean }[] => {
      const verb = actionAt(end, missing)?.verb;
      if (verb === "remove" || verb === "discard") {
        const where = decisions.and(missing.when, isFast);
        return [{ raw: raw(end, missing.from, fact(missing.from, missing.from), where, subject), removed: true }];
      }
      if (verb !== undefined) return [];
      const made = part.fastener ? grip.filter(({ value }) => isTight(value)) : place.filter(isPutIn);
      return made
        .filter((entry) => isOwn(actionAt(end, entry)?.verb))
        .map((entry) => {
          const where = decisions.and(missing.when, decisions.and(entry.when, isFast));
          return { raw: raw(end, entry.from, fact(entry.from, missing.from), where, subject), removed: false };
        });
    });
  });
}

function isOutside(value: string): boolean {
  return value === OUT;
}

/** Whether it is so on every path to the end. */
function isCertain({ run, state }: End, where: Decision): boolean {
  return run.decisions.and(state.reach, run.decisions.not(where)) === NEVER;
}

function lastIn({ run }: End): { readonly lastIn: Span } {
  return { lastIn: run.expanded.procedure.extent };
}

function isPutIn({ value }: Entry): boolean {
  return isAttached(value);
}

/** Done here, not by a procedure that is performed. */
function isOwn(verb: string | undefined): boolean {
  return verb !== undefined && verb !== "perform";
}

/* ---- fasteners and parts ---- */

function seated(end: End, { part, index }: PartInstance): readonly Raw[] {
  const { run, state, said } = end;
  if (!part.fastener) return [];
  // An aid that is still in is told as that: it has to come out, however tight it is.
  if (part.temporary && !said.has(run.world.part(part, index, "place"))) return [];
  return cellOf(run, state, run.world.part(part, index, "grip"))
    .filter((entry) => entry.value === "seated" && isOwn(actionAt(end, entry)?.verb))
    .map((entry) => {
      const name = instanceName(part, index);
      const { span } = originOf(run, entry.from);
      const mendAt = isCertain(end, entry.when) ? lastIn(end) : null;
      return raw(end, entry.from, { kind: "left seated", part: name, span, mendAt }, entry.when, name);
    });
}

function loose(end: End, { part, index }: PartInstance): readonly Raw[] {
  const { run, state, said } = end;
  // An aid that is still in is told as that.
  if (!part.fastener || part.temporary) return [];
  const gripAt = run.world.part(part, index, "grip");
  const placeAt = run.world.part(part, index, "place");
  if (said.has(gripAt) || said.has(placeAt)) return [];
  const places = cellOf(run, state, placeAt).filter(isPutIn);
  return cellOf(run, state, gripAt)
    .filter(({ value }) => isSlack(value))
    .flatMap((grip) =>
      places.flatMap((place) => {
        const performed = performedWithWord(end, grip, [gripAt, placeAt]);
        const verb = actionAt(end, place)?.verb;
        const isMine = (verb === "install" || verb === "press") && isOwn(actionAt(end, grip)?.verb);
        if (!isMine && performed === null) return [];
        const where = run.decisions.and(grip.when, place.when);
        return [notFinal(end, grip, part, index, "loose", performed, where)];
      }),
    );
}

function leftOut(end: End, { part, index }: PartInstance): readonly Raw[] {
  const { run, state, said } = end;
  const variable = run.world.part(part, index, "place");
  if (part.temporary || said.has(variable)) return [];
  // What was out from the start is left as it was found: a trial fit leaves nothing out.
  const start = run.before[run.graph.nodes.findIndex(({ operation }) => !IS_START.has(operation.kind))];
  const atFirst = start === undefined ? [] : cellOf(run, start, variable);
  // A loop may lead back to where the work begins: what is so then is no beginning.
  const given = atFirst.filter(({ from }) => IS_START.has(run.graph.nodes[from]?.operation.kind ?? "start"));
  const wasIn = run.cells.where(run.cells.of(given), isAttached);
  if (wasIn === NEVER) return [];
  return cellOf(run, state, variable)
    .filter(({ value }) => value === OUT)
    .flatMap((entry) => {
      const verb = actionAt(end, entry)?.verb;
      const performed = performedWithWord(end, entry, [variable]);
      if (verb !== "remove" && verb !== "discard" && performed === null) return [];
      return [notFinal(end, entry, part, index, "out", performed, run.decisions.and(entry.when, wasIn))];
    });
}

const IS_START: ReadonlySet<string> = new Set(["start", "begin"]);

function notFinal(
  end: End,
  entry: Entry,
  part: Part,
  index: PartInstance["index"],
  how: "loose" | "out",
  performed: string | null,
  where: Decision,
): Raw {
  const name = instanceName(part, index);
  const { span } = originOf(end.run, entry.from);
  return raw(end, entry.from, { kind: "not final", part: name, how, performed, span }, where, name);
}

/** The performed procedure that left it so and says so itself: without a word of its own it has been told there. */
function performedWithWord(end: End, entry: Entry, variables: readonly number[]): string | null {
  const { run } = end;
  const node = run.graph.nodes[entry.from];
  const callee = node === undefined ? null : run.calleeAt(node);
  if (callee === null) return null;
  const keys = new Set(variables.map((variable) => run.world.keyOf(variable)));
  const hasWord = callee.finish.some((condition) =>
    callee.run.atoms(condition).some(({ variable }) => keys.has(callee.run.world.keyOf(variable))),
  );
  return hasWord ? callee.run.expanded.procedure.name : null;
}

/* ---- rings ---- */

/** The one of several that went into the position. */
function nameIn(things: readonly Thing[], part: Part, position: number): string {
  const found = things.find(
    (thing) => thing.kind === "part" && thing.part === part && ownPosition(part, thing.index)?.position === position,
  );
  return found?.kind === "part" ? instanceName(part, found.index) : part.name;
}

/** A place that was passed over and never filled, told once for a ring, where it was passed. */
function skipped(end: End): readonly Raw[] {
  const { run, state } = end;
  return run.world.arcs().flatMap(({ ring, part, variable }) =>
    cellOf(run, state, variable).flatMap((entry) => {
      const [gap] = passedOver(entry.value);
      const action = run.graph.nodes[gap?.by ?? -1]?.operation;
      if (gap === undefined || ring.fill === null || action?.kind !== "act") return [];
      if (action.line.action.verb !== "install" && action.line.action.verb !== "press") return [];
      let next = nextPosition(ring, gap.position);
      while (passedOver(entry.value).some(({ position }) => position === next)) next = nextPosition(ring, next);
      const fact: BareFact = {
        kind: "direction",
        part: nameIn(action.line.objects, part, next),
        place: `${ring.name}[${next}]`,
        wanted: ring.fill,
        skipped: `${ring.name}[${gap.position}]`,
        declaredAt: ring.span,
        span: action.line.action.place,
      };
      return [raw(end, gap.by, fact, entry.when, `${ring.name} skipped`)];
    }),
  );
}
