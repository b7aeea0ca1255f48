// From trees to records, many files together: makes every record first, then fills them in, so that they may speak of each
// other in any order. Pure and total: a tree with damage gives what could be read. Knows no severity and no wording.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { linesOf } from "#syntax/lines.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import { declaredNames } from "#syntax/scope.ts";
import { cyclicPerforms, cyclicUses } from "./cycles.ts";
import type { Declaration, Term } from "./declarations.ts";
import { declareAll, declaringNodes } from "./declare.ts";
import { duplicatesIn } from "./duplicates.ts";
import { resolvePath } from "./files.ts";
import { fillDeclaration, lowerTerm, lowerVerb } from "./lower-declarations.ts";
import { lowerHeadless, lowerProcedure } from "./lower-procedure.ts";
import { type Lowering, type Reach, type Scope, spanOf } from "./lowering.ts";
import { misplace } from "./misplaced.ts";
import { propertySpan } from "./names.ts";
import { ownWordsIn, type Wording } from "./own-words.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel, Procedure } from "./procedure.ts";
import { unusedIn } from "./unused.ts";

/** The models of some files, and what a later lowering of mostly the same files may take over. */
export interface Lowered {
  readonly models: ReadonlyMap<string, FileModel>;
  readonly kept: ReadonlyMap<string, Kept>;
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
 * its records, as long as every table is the same.
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
  const kept = stillRight(files, isPresent, tableText, before);
  for (const one of kept.values()) takeOver(lowering, one);
  if (kept.size > 0) {
    for (const [path, answer] of before?.presence ?? []) presence.set(path, answer);
    for (const [path, text] of before?.tables ?? []) tables.set(path, text);
  }
  const opened = [...files.values()].filter(({ path }) => !kept.has(path)).map((parsed) => openFile(lowering, parsed));
  for (const file of opened) fillDeclarations(file);
  const outer = new Map([...kept].map(([path, { outer: own }]) => [path, own]));
  for (const file of opened) outer.set(file.scope.parsed.path, outerOf(file));
  const lowered = opened.map((file) => lowerFile(file, outer));
  const all = new Map([...kept, ...lowered.map((one) => [one.parsed.path, one] as const)]);
  return { models: finished([...files.keys()].map((path) => all.get(path) as Kept)), kept: all, presence, tables };
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

/** A lowered file, without anything that leads back to the other files of its time. */
interface Kept {
  readonly parsed: ParsedFile;
  /** With the problems of the file alone. */
  readonly model: FileModel;
  readonly unused: { readonly ifUsed: readonly ModelProblem[]; readonly ifAlone: readonly ModelProblem[] };
  readonly outer: Outer;
  /** Its declaring nodes, each with its record. */
  readonly records: readonly (readonly [AstNode, Declaration])[];
  /** Its procedures and what stands for them. */
  readonly containers: readonly AstNode[];
  readonly finished: { used?: FileModel; alone?: FileModel };
}

/** Those whose text, and the text of each file behind them, is the same. */
function stillRight(
  files: ReadonlyMap<string, ParsedFile>,
  isPresent: (path: string) => boolean,
  tableText: (path: string) => string | null,
  before: Lowered | null,
): Map<string, Kept> {
  const kept = new Map<string, Kept>();
  if (before === null) return kept;
  for (const [path, answer] of before.presence) if (isPresent(path) !== answer) return kept;
  for (const [path, text] of before.tables) if (tableText(path) !== text) return kept;
  const users = new Map<string, string[]>();
  const changed = [...files.keys()].filter((path) => before.kept.get(path)?.parsed !== files.get(path));
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

function takeOver(lowering: Lowering, { containers, parsed, records }: Kept): void {
  const scope = {
    lowering,
    parsed,
    problems: [],
    used: new Set<AstNode>(),
    reach: NOTHING,
    procedure: null,
    loops: [],
  };
  for (const [node, record] of records) {
    lowering.records.set(node, record);
    lowering.scopes.set(node, scope);
    lowering.workedOut.add(node);
  }
  for (const node of containers) lowering.scopes.set(node, scope);
}

/* ---- one file ---- */

/** A file with its records declared. */
interface Opened {
  readonly scope: Scope;
  readonly declared: readonly AstNode[];
  readonly containers: readonly {
    readonly node: ast.Procedure | ast.Damaged;
    readonly scope: Scope;
    readonly declared: readonly AstNode[];
  }[];
  readonly uses: readonly { readonly node: ast.Use; readonly path: string | null }[];
}

function openFile(lowering: Lowering, parsed: ParsedFile): Opened {
  const problems: ModelProblem[] = [];
  const bare: Scope = { lowering, parsed, problems, used: new Set(), reach: NOTHING, procedure: null, loops: [] };
  const uses = parsed.file.items
    .filter(ast.isUse)
    .map((node) => ({ node, path: resolvePath(bare, node.path, propertySpan(bare, node, "path")) }));
  for (const node of lateUses(parsed.file))
    misplace(bare, node, "use", "at the top of the file, before the declarations");
  const others = uses.filter(({ path }) => path !== parsed.path).map(({ path }) => lowering.files.get(path ?? ""));
  const used = [...new Set(others.filter((file) => file !== undefined))];
  const reach = reachOf(parsed, used, others.includes(undefined));
  const scope: Scope = { ...bare, reach };
  const declared = declaringNodes(parsed.file);
  declareAll(scope, declared);
  const containers = parsed.file.items
    .filter((item) => ast.isProcedure(item) || ast.isDamaged(item))
    .map((node) => {
      const name = ast.isProcedure(node) ? node.name : `damaged@${spanOf(scope, node).start}`;
      const inner: Scope = {
        ...scope,
        procedure: name,
        reach: { ...reach, layers: [namesOf(node), ...reach.layers], steps: stepsOf(node) },
      };
      lowering.scopes.set(node, inner);
      const own = declaringNodes(node);
      declareAll(inner, own);
      return { node, scope: inner, declared: own };
    });
  return { scope, declared, containers, uses };
}

const NOTHING: Reach = { layers: [], steps: new Map(), isHidden: () => false, isDamaged: false };

/** Behind a declaration or procedure; what could not be read may have been anything. */
function lateUses({ items }: ast.File): readonly ast.Use[] {
  const first = items.findIndex((item) => !ast.isUse(item) && !ast.isDamaged(item));
  return first < 0 ? [] : items.slice(first).filter(ast.isUse);
}

/** @param isMissing whether a used file is not there, so that any name may be its */
function reachOf(parsed: ParsedFile, used: readonly ParsedFile[], isMissing: boolean): Reach {
  const damage = [parsed, ...used].flatMap((file) => file.damage);
  const isAnyHidden = isMissing || damage.some(({ lostName }) => lostName);
  const hidden = damage.flatMap(({ declares }) => declares);
  return {
    layers: [parsed, ...used].map(({ file }) => namesOf(file)),
    steps: new Map(),
    // Where a sign was lost behind a name, what follows has become a part of it.
    isHidden: (name) => isAnyHidden || hidden.some((declared) => declared.startsWith(name.normalize("NFC"))),
    isDamaged: damage.length > 0,
  };
}

function namesOf(container: AstNode): ReadonlyMap<string, AstNode> {
  return firstOfEach(declaredNames(container));
}

function stepsOf(container: AstNode): ReadonlyMap<string, AstNode> {
  return firstOfEach(declaredNames(container, "steps"));
}

function firstOfEach(declared: ReturnType<typeof declaredNames>): ReadonlyMap<string, AstNode> {
  const first = new Map<string, AstNode>();
  for (const { name, node } of declared) if (!first.has(name)) first.set(name, node);
  return first;
}

/** Before any procedure, which may speak of what another file declares. */
function fillDeclarations({ containers, declared, scope }: Opened): void {
  for (const node of declared) fillDeclaration(scope, node as ast.Declaration);
  for (const { declared: inner, scope: own } of containers) {
    for (const node of inner) fillDeclaration(own, node as ast.Declaration | ast.Measure);
  }
}

function lowerFile(opened: Opened, outerOfFiles: ReadonlyMap<string, Outer>): Kept {
  const { containers, declared, scope, uses } = opened;
  const { file, path } = scope.parsed;
  const terms = termsIn(scope, file.items);
  const outer = inReachOf(opened, outerOfFiles);
  const procedures: Procedure[] = [];
  const outside = file.items.filter((item) => ast.isDeclaration(item));
  const verbs = new Set([...verbsIn(scope, file.items), ...outer.verbs]);
  const wording: Wording[] = [{ procedure: null, terms: outer.terms, verbs, texts: ownWordsIn(scope, outside) }];
  const declarations = recordsOf(scope, declared);
  for (const { declared: inner, node, scope: own } of containers) {
    const records = recordsOf(own, inner);
    declarations.push(...records);
    if (ast.isDamaged(node)) lowerHeadless(own, node);
    else {
      const ownTerms = termsIn(own, node.items);
      terms.push(...ownTerms);
      const inReach = { declarations: [...records, ...outer.declarations], terms: [...ownTerms, ...outer.terms] };
      const procedure = lowerProcedure(own, node, inReach);
      procedures.push(procedure);
      const ownVerbs = new Set([...verbsIn(own, node.items), ...verbs]);
      wording.push({ procedure, terms: inReach.terms, verbs: ownVerbs, texts: ownWordsIn(own, [node]) });
    }
  }
  const nodes = containers.map((container) => container.node);
  scope.problems.push(...duplicatesIn(scope, nodes));
  const model: FileModel = {
    path,
    uses: uses.map(({ node, path: used }) => ({ path: used, span: propertySpan(scope, node, "path") })),
    declarations,
    terms,
    procedures,
    wording,
    problems: scope.problems,
    damaged: scope.parsed.damage.length > 0,
    hasSlip: scope.parsed.problems.length > 0 || scope.parsed.damage.length > 0,
  };
  return {
    parsed: scope.parsed,
    model,
    unused: { ifUsed: unusedIn(scope, model, true), ifAlone: unusedIn(scope, model, false) },
    outer: outerOfFiles.get(path) as Outer,
    records: [...declared, ...containers.flatMap((container) => container.declared)].flatMap((node) => {
      const record = scope.lowering.records.get(node);
      return record === undefined ? [] : [[node, record] as const];
    }),
    containers: nodes,
    finished: {},
  };
}

function recordsOf(scope: Scope, nodes: readonly AstNode[]): Declaration[] {
  return nodes.map((node) => scope.lowering.records.get(node)).filter((record) => record !== undefined);
}

function termsIn(scope: Scope, items: readonly AstNode[]): Term[] {
  return items.filter(ast.isTerm).map((term) => lowerTerm(scope, term));
}

function verbsIn(scope: Scope, items: readonly AstNode[]): readonly string[] {
  return items.filter(ast.isVerb).flatMap((verb) => lowerVerb(scope, verb));
}

/** What a file declares outside procedures. */
interface Outer {
  readonly declarations: readonly Declaration[];
  readonly terms: readonly Term[];
  readonly verbs: ReadonlySet<string>;
}

function outerOf({ declared, scope }: Opened): Outer {
  // The problems of its terms are told when the file itself is lowered.
  const silent = { ...scope, problems: [] };
  const { items } = scope.parsed.file;
  return {
    declarations: recordsOf(scope, declared),
    terms: termsIn(silent, items),
    verbs: new Set(verbsIn(silent, items)),
  };
}

/** What the file and those it uses declare outside procedures. */
function inReachOf({ scope, uses }: Opened, outer: ReadonlyMap<string, Outer>): Outer {
  const own = scope.parsed.path;
  const paths = new Set([own, ...uses.map(({ path }) => path)]);
  const reached = [...paths].map((path) => outer.get(path ?? "")).filter((one) => one !== undefined);
  return {
    declarations: reached.flatMap(({ declarations }) => declarations),
    terms: reached.flatMap(({ terms }) => terms),
    verbs: new Set(reached.flatMap(({ verbs }) => [...verbs])),
  };
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
