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
import { fillDeclaration, lowerTerm } from "./lower-declarations.ts";
import { lowerHeadless, lowerProcedure } from "./lower-procedure.ts";
import { type Lowering, type Reach, type Scope, spanOf } from "./lowering.ts";
import { misplace } from "./misplaced.ts";
import { propertySpan } from "./names.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel, Procedure } from "./procedure.ts";
import { unusedIn } from "./unused.ts";

/**
 * The models of these files, which must be linked (`linkFiles`).
 * @param files keyed by path from the workspace root
 * @param isPresent whether a file is at that path, for `use` and `figure`
 */
export function lowerFiles(
  files: ReadonlyMap<string, ParsedFile>,
  isPresent: (path: string) => boolean,
): ReadonlyMap<string, FileModel> {
  const lowering: Lowering = {
    files,
    isPresent,
    records: new Map(),
    scopes: new Map(),
    workedOut: new Set(),
    inHand: new Set(),
  };
  const opened = new Map([...files].map(([path, parsed]) => [path, openFile(lowering, parsed)]));
  for (const file of opened.values()) fillDeclarations(file);
  const filled = [...opened.values()].map((file) => lowerFile(file, opened));
  const procedures = filled.flatMap((file) => file.model.procedures);
  const cycles = [...cyclicUses(filled.map((file) => file.model)), ...cyclicPerforms(procedures)];
  return new Map(
    filled.map(({ model, opened: file }) => {
      const own = cycles.filter((problem) => problem.span.path === model.path);
      const problems = [...file.scope.problems, ...own, ...unusedIn(file.scope, model, isUsed(model.path, filled))];
      const untold = problems.filter(isOnSoundLine(file.scope.parsed));
      return [model.path, { ...model, problems: untold.sort((a, b) => a.span.start - b.span.start) }];
    }),
  );
}

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
interface Filled {
  readonly model: FileModel;
  readonly opened: Opened;
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

function lowerFile(opened: Opened, all: ReadonlyMap<string, Opened>): Filled {
  const { containers, declared, scope, uses } = opened;
  const { file, path } = scope.parsed;
  const terms = termsIn(scope, file.items);
  const outer = inReachOf(opened, all);
  const procedures: Procedure[] = [];
  const declarations = recordsOf(scope, declared);
  for (const { declared: inner, node, scope: own } of containers) {
    const records = recordsOf(own, inner);
    declarations.push(...records);
    if (ast.isDamaged(node)) lowerHeadless(own, node);
    else {
      const ownTerms = termsIn(own, node.items);
      terms.push(...ownTerms);
      const inReach = { declarations: [...records, ...outer.declarations], terms: [...ownTerms, ...outer.terms] };
      procedures.push(lowerProcedure(own, node, inReach));
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
    problems: [],
    damaged: scope.parsed.damage.length > 0,
  };
  return { model, opened };
}

function recordsOf(scope: Scope, nodes: readonly AstNode[]): Declaration[] {
  return nodes.map((node) => scope.lowering.records.get(node)).filter((record) => record !== undefined);
}

function termsIn(scope: Scope, items: readonly AstNode[]): Term[] {
  return items.filter(ast.isTerm).map((term) => lowerTerm(scope, term));
}

/** What the file and those it uses declare outside procedures. */
function inReachOf(opened: Opened, all: ReadonlyMap<string, Opened>) {
  const paths = new Set(
    opened.uses.map(({ path }) => path).filter((path) => path !== null && path !== opened.scope.parsed.path),
  );
  const used = [...paths].map((path) => all.get(path ?? "")).filter((file) => file !== undefined);
  const reached = [opened, ...used];
  return {
    declarations: reached.flatMap((file) => recordsOf(file.scope, file.declared)),
    // Of a used file's terms the problems are told there.
    terms: reached.flatMap((file) => termsIn({ ...file.scope, problems: [] }, file.scope.parsed.file.items)),
  };
}

function isUsed(path: string, filled: readonly Filled[]): boolean {
  return filled.some(({ model }) => model.path !== path && model.uses.some((use) => use.path === path));
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
