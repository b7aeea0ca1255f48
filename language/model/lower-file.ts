// One file from tree to records: makes every record first, then fills them in. Of a file that was lowered before, procedures that are the
// same keep their records. Knows of other files only what they declare.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import { declaredNames } from "#syntax/scope.ts";
import type { Declaration, Term } from "./declarations.ts";
import { declareAll, declaringNodes } from "./declare.ts";
import { duplicatesInFile, duplicatesInProcedure } from "./duplicates.ts";
import { resolvePath } from "./files.ts";
import { createTaskLowering, type KeptTasks, type MovedTasks } from "./kept-tasks.ts";
import { fillDeclaration, lowerTerm, lowerVerb } from "./lower-declarations.ts";
import { lowerHeadless, lowerProcedure } from "./lower-procedure.ts";
import { type Doubt, type Lowering, type Reach, type Scope, spanOf, watched } from "./lowering.ts";
import { misplace } from "./misplaced.ts";
import { propertySpan } from "./names.ts";
import { ownWordsIn, type Wording } from "./own-words.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel, Procedure } from "./procedure.ts";
import { type PlacedItem, placesOf } from "./same-items.ts";
import { type Taken, takenOver } from "./taken-over.ts";
import { unusedIn } from "./unused.ts";

/** A lowered file, without anything that leads back to the other files of its time. */
export interface Kept {
  readonly parsed: ParsedFile;
  /** The tree that it was made from. */
  readonly root: ast.File;
  readonly places: readonly PlacedItem[];
  /** With the problems of the file alone. */
  readonly model: FileModel;
  readonly unused: { readonly ifUsed: readonly ModelProblem[]; readonly ifAlone: readonly ModelProblem[] };
  readonly outer: Outer;
  readonly outside: Piece;
  /** Its procedures, and what stands for them. */
  readonly pieces: readonly (Piece & { readonly node: Container })[];
  /** Whether all of it and of the files it uses could be read. */
  readonly isSound: boolean;
  readonly finished: { used?: FileModel; alone?: FileModel };
}

/** What a file declares outside procedures. */
export interface Outer {
  readonly declarations: readonly Declaration[];
  readonly terms: readonly Term[];
  readonly verbs: ReadonlySet<string>;
}

/** What was made of a procedure, or of all that stands outside. */
export interface Piece {
  /** Its declaring nodes, each with its record. */
  readonly records: readonly (readonly [AstNode, Declaration])[];
  /** Null outside, and of what could not be read as one. */
  readonly procedure: Procedure | null;
  readonly terms: readonly Term[];
  /** Null of what could not be read as a procedure. */
  readonly wording: Wording | null;
  readonly used: Scope["used"];
  /** Whether there was nothing to tell of it. */
  readonly isSilent: boolean;
  /** Whether it was asked what the lines that could not be read may hide. */
  readonly asksOfDamage: boolean;
  /** Null where they are to be lowered again, should another part of it change. */
  readonly tasks: KeptTasks | null;
}

export type Container = ast.Procedure | ast.Damaged;

/** A file with its records declared. */
export interface Opened {
  readonly scope: Scope;
  readonly outside: Part;
  readonly parts: readonly (Part & { readonly node: Container })[];
  readonly uses: readonly { readonly node: ast.Use; readonly path: string | null }[];
  readonly isSound: boolean;
  readonly taken: Taken | null;
}

/** One container of names, on the way. */
interface Part {
  readonly scope: Scope;
  readonly declared: readonly AstNode[];
  /** What it was before and still is. */
  readonly same: Piece | null;
  readonly doubt: Doubt;
}

/**
 * @param before of an earlier text of the file, as long as all that is asked of the workspace has the same answers
 * @param isSame whether a file is the same since then, as are all behind it
 */
export function openFile(
  lowering: Lowering,
  parsed: ParsedFile,
  before: Kept | null,
  isSame: (path: string) => boolean,
): Opened {
  const bare: Scope = {
    ...{ lowering, parsed, problems: [], used: new Set<Declaration | string>() },
    ...{ reach: NOTHING, procedure: null, loops: [] },
  };
  const uses = parsed.file.items
    .filter(ast.isUse)
    .map((node) => ({ node, path: resolvePath(bare, node.path, propertySpan(bare, node, "path")) }));
  for (const node of lateUses(parsed.file))
    misplace(bare, node, "use", "at the top of the file, before the declarations");
  const others = uses.filter(({ path }) => path !== parsed.path).map(({ path }) => lowering.files.get(path ?? ""));
  const used = [...new Set(others.filter((file) => file !== undefined))];
  const reach = reachOf(parsed, used, others.includes(undefined));
  const isSound = !reach.isDamaged && !others.includes(undefined);
  const taken =
    before !== null && used.every(({ path }) => isSame(path)) ? takenOver(before, { parsed, uses, isSound }) : null;
  const scope: Scope = { ...bare, reach };
  const outside = partOf(scope, { layers: reach.layers, steps: reach.steps }, parsed.file, taken?.outside ?? null);
  const parts = parsed.file.items
    .filter((item) => ast.isProcedure(item) || ast.isDamaged(item))
    .map((node) => {
      const name = ast.isProcedure(node) ? node.name : `damaged@${spanOf(scope, node).start}`;
      const same = taken?.pieces.get(node) ?? null;
      const names = same === null ? { layers: [namesOf(node), ...reach.layers], steps: stepsOf(node) } : NOTHING;
      return { ...partOf({ ...scope, procedure: name }, names, node, same), node };
    });
  return { scope, outside, parts, uses, isSound, taken };
}

function partOf(
  scope: Scope,
  { layers, steps }: Pick<Reach, "layers" | "steps">,
  node: ast.File | Container,
  same: Piece | null,
): Part {
  const { doubt, reach } = watched({ ...scope.reach, layers, steps });
  // Whoever asks first what a value of this part is, what there is to tell of it is told here.
  const own: Scope = { ...scope, reach, used: new Set(), problems: [] };
  const { records, scopes, workedOut } = scope.lowering;
  if (!ast.isFile(node)) scopes.set(node, own);
  const declared = declaringNodes(node);
  if (same === null) {
    declareAll(own, declared);
    return { scope: own, declared, same, doubt };
  }
  const kept = declared.map((declaring, at) => [declaring, (same.records[at] as Piece["records"][number])[1]] as const);
  for (const [declaring, record] of kept) {
    records.set(declaring, record);
    scopes.set(declaring, own);
    workedOut.add(declaring);
  }
  return { scope: own, declared, same: { ...same, records: kept }, doubt };
}

export const NOTHING: Reach = { layers: [], steps: new Map(), isHidden: () => false, isDamaged: false };

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
export function fillDeclarations({ outside, parts }: Opened): void {
  for (const part of [outside, ...parts]) {
    if (part.same !== null) continue;
    for (const node of part.declared) fillDeclaration(part.scope, node as ast.Declaration | ast.Measure);
  }
}

/** What the file declares outside procedures. */
export function outerOf({ outside, scope, taken }: Opened): Outer {
  if (taken !== null) return taken.outer;
  // The problems of its terms are told when the file itself is lowered.
  const silent = { ...outside.scope, problems: [] };
  const { items } = scope.parsed.file;
  return {
    declarations: recordsOf(outside),
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

/** A lowered file; its procedures that are the same as before have their records, moved where they stand elsewhere. */
export function lowerFile(opened: Opened, outerOfFiles: ReadonlyMap<string, Outer>): Kept {
  const { isSound, outside, parts, scope, taken, uses } = opened;
  const { path } = scope.parsed;
  const inReach = inReachOf(opened, outerOfFiles);
  const outer = outside.same ?? pieceOutside(outside, inReach);
  const verbs = outer.wording?.verbs ?? inReach.verbs;
  const pieces = parts.map((part) => ({ ...(part.same ?? pieceOf(part, inReach, verbs, taken)), node: part.node }));
  const all: readonly Piece[] = [outer, ...pieces];
  const problems = [scope, outside.scope, ...parts.map((part) => part.scope)].flatMap((one) => one.problems);
  problems.push(...duplicatesInFile(outside.scope));
  const model: FileModel = {
    path,
    uses: uses.map(({ node, path: used }) => ({ path: used, span: propertySpan(scope, node, "path") })),
    declarations: all.flatMap(({ records }) => records.map(([, record]) => record)),
    terms: all.flatMap(({ terms }) => terms),
    procedures: pieces.flatMap(({ procedure }) => procedure ?? []),
    wording: all.flatMap(({ wording }) => wording ?? []),
    problems,
    damaged: scope.parsed.damage.length > 0,
    hasSlip: scope.parsed.problems.length > 0 || scope.parsed.damage.length > 0,
  };
  const ofAll: Scope = { ...scope, used: new Set(all.flatMap(({ used }) => [...used])) };
  return {
    parsed: scope.parsed,
    root: scope.parsed.file,
    places: placesOf(scope.parsed),
    model,
    unused: { ifUsed: unusedIn(ofAll, model, true), ifAlone: unusedIn(ofAll, model, false) },
    outer: outerOfFiles.get(path) as Outer,
    outside: outer,
    pieces,
    isSound,
    finished: {},
  };
}

function pieceOutside(part: Part, inReach: Outer): Piece {
  const { scope } = part;
  const { items } = scope.parsed.file;
  const outside = items.filter((item) => ast.isDeclaration(item));
  const terms = termsIn(scope, items);
  const verbs = new Set([...verbsIn(scope, items), ...inReach.verbs]);
  const wording: Wording = { procedure: null, terms: inReach.terms, verbs, texts: ownWordsIn(scope, outside) };
  return pieceWith(part, { procedure: null, terms, wording, tasks: null });
}

function pieceOf(
  part: Part & { readonly node: Container },
  outer: Outer,
  verbs: ReadonlySet<string>,
  taken: Taken | null,
): Piece {
  const { node, scope } = part;
  let lowered: Lowered = { procedure: null, terms: [], wording: null, tasks: null };
  if (ast.isProcedure(node)) lowered = lowerPart(part, node, outer, verbs, taken?.tasks.get(node) ?? null);
  else lowerHeadless(scope, node);
  scope.problems.push(...duplicatesInProcedure(scope, node));
  return pieceWith(part, lowered);
}

function lowerPart(
  part: Part,
  node: ast.Procedure,
  outer: Outer,
  verbs: ReadonlySet<string>,
  moved: MovedTasks | null,
): Lowered {
  const { scope } = part;
  const own = termsIn(scope, node.items);
  const terms = [...own, ...outer.terms];
  const records = recordsOf(part);
  const tasks = createTaskLowering(node, new Set(records), moved);
  const procedure = lowerProcedure(scope, node, { declarations: [...records, ...outer.declarations], terms }, tasks);
  const ownVerbs = new Set([...verbsIn(scope, node.items), ...verbs]);
  const texts = ownWordsIn(scope, [node], tasks.textsOf);
  return { procedure, terms: own, wording: { procedure, terms, verbs: ownVerbs, texts }, tasks: tasks.kept() };
}

type Lowered = Pick<Piece, "procedure" | "tasks" | "terms" | "wording">;

/** Once all of it is lowered. */
function pieceWith({ declared, doubt, scope }: Part, lowered: Lowered): Piece {
  const { problems, used } = scope;
  const records = declared.map((node) => [node, recordOf(scope, node)] as const);
  return { ...lowered, records, used, isSilent: problems.length === 0, asksOfDamage: doubt.isAskedOf };
}

function recordsOf({ declared, scope }: Part): Declaration[] {
  return declared.map((node) => recordOf(scope, node));
}

/** Each declaring node has one. */
function recordOf({ lowering }: Scope, node: AstNode): Declaration {
  return lowering.records.get(node) as Declaration;
}

function termsIn(scope: Scope, items: readonly AstNode[]): Term[] {
  return items.filter(ast.isTerm).map((term) => lowerTerm(scope, term));
}

function verbsIn(scope: Scope, items: readonly AstNode[]): readonly string[] {
  return items.filter(ast.isVerb).flatMap((verb) => lowerVerb(scope, verb));
}
