// From trees to records, many files together: makes every record first, then fills them in, so that they may speak of each
// other in any order. Pure and total: a tree with damage gives what could be read. Knows no severity and no wording.
import { linesOf } from "#syntax/lines.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import { cyclicPerforms, cyclicUses } from "./cycles.ts";
import { fillDeclarations, type Kept, lowerFile, NOTHING, openFile, outerOf } from "./lower-file.ts";
import type { Lowering, Scope } from "./lowering.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel } from "./procedure.ts";
import type { Moves } from "./taken-over.ts";

/** The models of some files, and what a later lowering of mostly the same files may take over. */
export interface Lowered {
  readonly models: ReadonlyMap<string, FileModel>;
  readonly kept: ReadonlyMap<string, Kept>;
  /** Of each file that took procedures over, how they moved since the lowering before. */
  readonly moves: ReadonlyMap<string, Moves>;
  /** Every path that it was asked for whether a file is there, and the answer. */
  readonly presence: ReadonlyMap<string, boolean>;
  /** Every table that it was asked for, and its text. */
  readonly tables: ReadonlyMap<string, string | null>;
}

/**
 * The models of these files, which must be linked (`linkFiles`).
 * @param files keyed by path from the workspace root
 * @param isPresent whether a file is at that path, for `use` and `figure`
 * @param tableText the text of a table, for arrangements
 */
export function lowerFiles(
  files: ReadonlyMap<string, ParsedFile>,
  isPresent: (path: string) => boolean,
  tableText: (path: string) => string | null = () => null,
): ReadonlyMap<string, FileModel> {
  return lowerAgain(files, isPresent, tableText, null).models;
}

/**
 * The same after some of the files changed: a file of which neither the text nor that of any file behind it is another keeps
 * its records, as long as every table is the same. In one that changed itself, procedures that did not keep theirs.
 * @param before of an earlier set of files
 */
export function lowerAgain(
  files: ReadonlyMap<string, ParsedFile>,
  isPresent: (path: string) => boolean,
  tableText: (path: string) => string | null,
  before: Lowered | null,
): Lowered {
  const presence = new Map<string, boolean>();
  const tables = new Map<string, string | null>();
  const lowering: Lowering = {
    files,
    isPresent: (path) => {
      const answer = presence.get(path) ?? isPresent(path);
      presence.set(path, answer);
      return answer;
    },
    tableText: (path) => {
      const text = tableText(path);
      tables.set(path, text);
      return text;
    },
    records: new Map(),
    scopes: new Map(),
    workedOut: new Set(),
    inHand: new Set(),
  };
  const earlier = before !== null && hasSameAnswers(before, isPresent, tableText) ? before : null;
  const kept = earlier === null ? new Map<string, Kept>() : stillRight(files, earlier);
  for (const one of kept.values()) takeOver(lowering, one);
  for (const [path, answer] of earlier?.presence ?? []) presence.set(path, answer);
  for (const [path, text] of earlier?.tables ?? []) tables.set(path, text);
  const opened = [...files.values()]
    .filter(({ path }) => !kept.has(path))
    .map((parsed) => openFile(lowering, parsed, earlier?.kept.get(parsed.path) ?? null, (path) => kept.has(path)));
  for (const file of opened) fillDeclarations(file);
  const outer = new Map([...kept].map(([path, { outer: own }]) => [path, own]));
  for (const file of opened) outer.set(file.scope.parsed.path, outerOf(file));
  const lowered = opened.map((file) => lowerFile(file, outer));
  const all = new Map([...kept, ...lowered.map((one) => [one.parsed.path, one] as const)]);
  const models = finished([...files.keys()].map((path) => all.get(path) as Kept));
  const moves = new Map(
    opened.flatMap(({ scope, taken }) => (taken === null ? [] : [[scope.parsed.path, taken.moves]])),
  );
  return { models, kept: all, moves, presence, tables };
}

/** The models with the problems that only all files together show. */
function finished(all: readonly Kept[]): ReadonlyMap<string, FileModel> {
  const cycles = new Map<string, ModelProblem[]>();
  const problems = [
    ...cyclicUses(all.map(({ model }) => model)),
    ...cyclicPerforms(all.flatMap(({ model }) => model.procedures)),
  ];
  for (const problem of problems) {
    const { path } = problem.span;
    const own = cycles.get(path);
    if (own === undefined) cycles.set(path, [problem]);
    else own.push(problem);
  }
  const used = new Set(all.flatMap(({ model }) => model.uses.map(({ path }) => (path === model.path ? null : path))));
  return new Map(
    all.map((one) => {
      const { path } = one.model;
      const own = cycles.get(path);
      return [path, own === undefined ? modelOf(one, used.has(path)) : withProblems(one, used.has(path), own)];
    }),
  );
}

/** The same record as long as nothing about it changes, so that what was worked out from it holds. */
function modelOf(one: Kept, isUsed: boolean): FileModel {
  const known = isUsed ? one.finished.used : one.finished.alone;
  if (known !== undefined) return known;
  const made = withProblems(one, isUsed, []);
  one.finished[isUsed ? "used" : "alone"] = made;
  return made;
}

function withProblems({ model, parsed, unused }: Kept, isUsed: boolean, cycles: readonly ModelProblem[]): FileModel {
  const problems = [...model.problems, ...cycles, ...(isUsed ? unused.ifUsed : unused.ifAlone)];
  const untold = problems.filter(isOnSoundLine(parsed));
  return { ...model, problems: untold.sort((a, b) => a.span.start - b.span.start) };
}

/* ---- what a later lowering takes over ---- */

function hasSameAnswers(
  before: Lowered,
  isPresent: (path: string) => boolean,
  tableText: (path: string) => string | null,
): boolean {
  for (const [path, answer] of before.presence) if (isPresent(path) !== answer) return false;
  for (const [path, text] of before.tables) if (tableText(path) !== text) return false;
  return true;
}

/** Those whose text, and the text of each file behind them, is the same. */
function stillRight(files: ReadonlyMap<string, ParsedFile>, before: Lowered): Map<string, Kept> {
  const kept = new Map<string, Kept>();
  const users = new Map<string, string[]>();
  // Of a text whose tree was taken over by a later one, the records speak of nodes that stand in that.
  const isKnown = ({ parsed, root }: Kept): boolean => files.get(parsed.path) === parsed && parsed.file === root;
  const changed = [...files.keys()].filter((path) => {
    const one = before.kept.get(path);
    return one === undefined || !isKnown(one);
  });
  changed.push(...[...before.kept.keys()].filter((path) => !files.has(path)));
  for (const [path, one] of before.kept) {
    if (files.has(path)) kept.set(path, one);
    for (const { path: used } of one.model.uses) {
      if (used === null) continue;
      const known = users.get(used);
      if (known === undefined) users.set(used, [path]);
      else known.push(path);
    }
  }
  const seen = new Set(changed);
  for (const path of seen) {
    kept.delete(path);
    for (const user of users.get(path) ?? []) seen.add(user);
  }
  return kept;
}

function takeOver(lowering: Lowering, { outside, parsed, pieces }: Kept): void {
  const scope: Scope = {
    ...{ lowering, parsed, problems: [], used: new Set() },
    ...{ reach: NOTHING, procedure: null, loops: [] },
  };
  for (const { records } of [outside, ...pieces]) {
    for (const [node, record] of records) {
      lowering.records.set(node, record);
      lowering.scopes.set(node, scope);
      lowering.workedOut.add(node);
    }
  }
  for (const { node } of pieces) lowering.scopes.set(node, scope);
}

/** A line whose form is wrong is told of once: what it seems to mean is no second mistake. */
function isOnSoundLine(parsed: ParsedFile): (problem: ModelProblem) => boolean {
  const wrong = parsed.problems.filter(
    ({ kind }) => kind === "unexpected" || kind === "character" || kind === "reserved word",
  );
  if (wrong.length === 0) return () => true;
  const lines = linesOf(parsed.text);
  const told = new Set(wrong.map(({ span }) => lines.position(span.start).line));
  return ({ span }) => !told.has(lines.position(span.start).line);
}
