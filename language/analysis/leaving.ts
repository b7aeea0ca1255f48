// What is wrong at the end of a procedure: aids left in, energies left off, `finish with` not so.
import { conditionText } from "#model/condition-text.ts";
import type { Cell, Entry } from "./cell.ts";
import { type Decision, NEVER } from "./decision.ts";
import { describe } from "./describe.ts";
import { cellOf } from "./flow-state.ts";
import { type Run, stateBefore } from "./follow.ts";
import { canFail, culprit } from "./formula.ts";
import { knownCell, originOf } from "./origin.ts";
import { base, type Raw } from "./raw-fact.ts";
import { stateAtEnd } from "./state-at-end.ts";
import { isAttached, isCutOff, OFF } from "./state-values.ts";
import { instanceName, kindOf } from "./world.ts";

/** All that is wrong with how the procedure ends; of two codes for one mistake the more telling. */
export function endFacts(run: Run): readonly Raw[] {
  const left = findLeftBehind(run);
  const all = [...left.raws, ...unfinishedFacts(run, left), ...stateAtEnd(run)];
  // In the order in which it was done, so that of several passes the first is told.
  return all.sort((a, b) => (a.from ?? 0) - (b.from ?? 0));
}

interface LeftBehind {
  readonly raws: readonly Raw[];
  /** Of each variable, what is not held against `finish with` again: where it comes from has been told, or is another's mistake. */
  readonly told: ReadonlyMap<number, ReadonlySet<number>>;
}

/** Whether `finish with` says that the variable has this value. */
export function isSaidAtEnd(run: Run, variable: number, value: string): boolean {
  return run.expanded.finish
    .flatMap((condition) => run.atoms(condition))
    .some((atom) => atom.variable === variable && atom.good(value));
}

function findLeftBehind(run: Run): LeftBehind {
  const raws: Raw[] = [];
  const told = new Map<number, Set<number>>();
  const end = stateBefore(run, run.graph.end);
  if (end === undefined) return { raws, told };
  const look = (
    variable: number,
    what: string,
    nature: "temporary" | "isolated",
    test: (value: string) => boolean,
    removeText: string,
  ): void => {
    const known = new Set<number>();
    told.set(variable, known);
    for (const entry of cellOf(run, end, variable)) {
      if (!test(entry.value) || isSaidAtEnd(run, variable, entry.value)) continue;
      const where: Decision = run.decisions.and(end.reach, entry.when);
      if (where === NEVER || (nature === "isolated" && isGiven(run, entry.from))) continue;
      known.add(entry.from);
      if (run.isSupposed(entry.from)) continue;
      const at = originOf(run, entry.from);
      const pass = run.graph.nodes[entry.from]?.step?.pass ?? [];
      const otherwise = run.cells.where(cellOf(run, end, variable), (value) => !test(value));
      const isCertain = run.decisions.and(end.reach, otherwise) === NEVER;
      const mendAt = isCertain ? { lastIn: run.expanded.procedure.extent } : null;
      raws.push({
        fact: { kind: "left behind", span: at.span, what, nature, closedBy: null, closedAt: null, removeText, mendAt },
        where,
        pass,
        subject: base(what),
        from: entry.from,
      });
    }
  };
  for (const { part, index } of run.world.temporaryParts()) {
    const name = instanceName(part, index);
    look(run.world.part(part, index, "place"), name, "temporary", isAttached, `remove ${name}`);
  }
  for (const energy of run.energies) {
    const variable = run.world.energy(energy);
    if (!isFoundOff(run, variable)) look(variable, energy.name, "isolated", isCutOff, `restore ${energy.name}`);
  }
  return { raws, told };
}

/** Whether the energy starts dead, so that off again it is as it was found. */
function isFoundOff(run: Run, variable: number): boolean {
  const said = run.expanded.begin.flatMap((condition) => run.atoms(condition));
  return run.world.initial(variable) === OFF && said.every((atom) => atom.variable !== variable || atom.good(OFF));
}

function unfinishedFacts(run: Run, left: LeftBehind): readonly Raw[] {
  const end = stateBefore(run, run.graph.end);
  if (end === undefined) return [];
  const isEnergy = (variable: number): boolean => kindOf(run.world.keyOf(variable)) === "energy";
  const read = (variable: number): Cell => {
    const told = left.told.get(variable);
    const cell = knownCell(run, end, variable);
    // What work took as off after it was told that it is live, nobody switched off.
    const isTakenAsOff = ({ value, from }: Entry): boolean =>
      value === OFF && isEnergy(variable) && run.graph.nodes[from]?.operation.kind === "act";
    return run.cells.of(cell.filter((entry) => told?.has(entry.from) !== true && !isTakenAsOff(entry)));
  };
  return run.expanded.finish.map((condition) => {
    const formula = run.formula(condition);
    const bad = culprit(read, formula);
    return {
      fact: {
        kind: "unfinished",
        span: condition.span,
        condition: conditionText(condition),
        state: bad === null ? "" : describe(run.world, bad.variable, bad.value),
        since: originOf(run, bad?.from ?? 0),
      },
      where: run.decisions.and(end.reach, canFail(run.cells, run.decisions, read, formula)),
      pass: [],
      subject: "",
      from: bad?.from ?? 0,
    };
  });
}

/** What was so at the start, or is so by the word of a step, is nothing that the procedure did. */
function isGiven(run: Run, from: number): boolean {
  const { kind } = run.graph.nodes[from]?.operation ?? { kind: "start" };
  return kind === "start" || kind === "begin" || kind === "leave";
}
