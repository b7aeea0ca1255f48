// What a name in a text stands for: name maps, one for each container, inner before outer, then what the file uses.
// Knows the tree and nothing of kinds, indices or quantities.
import { type AstNode, AstUtils, type CstNode, type Reference } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "./parse.ts";

/** A named thing and the node that declares it, in the order of the text; the same name may come twice. */
export interface DeclaredName {
  /** In NFC. */
  readonly name: string;
  readonly node: ast.Named | ast.StepOrTask;
}

/**
 * Lets references resolve (`.ref`) across these files, lazily and without a document builder. Files whose surroundings
 * changed since they were last linked forget what they had resolved.
 * @param files keyed by path from the workspace root
 */
export function linkFiles(files: ReadonlyMap<string, ParsedFile>): void {
  for (const parsed of files.values()) {
    const used = usedFiles(parsed, files);
    const before = usedBy.get(parsed.file);
    if (before !== undefined && sameFiles(before, used)) continue;
    usedBy.set(parsed.file, used);
    forget(parsed);
  }
}

/** Lets names in a tree mean what they mean in another of the same text. */
export function linkAs(file: ast.File, other: ast.File): void {
  const used = usedBy.get(other);
  if (used !== undefined) usedBy.set(file, used);
}

/**
 * The path from the root that a `use` (or a figure) means, or null where it is absolute or leaves the workspace.
 * @param fromPath of the file it stands in, from the root
 */
export function resolveUse(fromPath: string, usePath: string): string | null {
  if (usePath === "" || /^(?:[/\\]|[A-Za-z][A-Za-z0-9+.-]*:)/.test(usePath)) return null;
  const segments = fromPath.split("/").slice(0, -1);
  for (const segment of usePath.split("/")) {
    if (segment === "" || segment === ".") continue;
    if (segment !== "..") segments.push(segment);
    else if (segments.pop() === undefined) return null;
  }
  return segments.length === 0 ? null : segments.join("/");
}

/**
 * The names that a container declares: a file its declarations and procedures; a procedure its declarations and
 * readings, and, asked for `steps`, its steps and tasks.
 */
export function declaredNames(container: AstNode, what: "things" | "steps" = "things"): readonly DeclaredName[] {
  const held = tablesOf(container);
  return (what === "things" ? held.things : held.steps).all;
}

type Flow = ast.Procedure | ast.Damaged;

/** The statements of a procedure and all that stand inside them, in the order of the text. */
export function statementsIn(container: Flow): readonly AstNode[] {
  const found: AstNode[] = [];
  // A stack of our own: nesting is as deep as the writer likes.
  const waiting: AstNode[] = [...container.items].reverse();
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    found.push(node);
    const inner = innerItems(node);
    for (let at = inner.length - 1; at >= 0; at--) waiting.push(inner[at] as AstNode);
  }
  return found;
}

/** The container whose steps, tasks, readings and inner declarations are in reach of a node. */
export function procedureOf(node: AstNode): ast.Procedure | ast.Damaged | undefined {
  for (let at: AstNode | undefined = node; at !== undefined; at = at.$container) {
    if (ast.isProcedure(at)) return at;
    if (ast.isDamaged(at) && ast.isFile(at.$container)) return at;
  }
  return undefined;
}

/** What a name means at a node of a linked file: a thing, or, asked for `steps`, a step or task of the procedure. */
export function meantAt(
  at: AstNode,
  name: string,
  what: "things" | "steps" = "things",
): DeclaredName["node"] | undefined {
  const key = name.normalize("NFC");
  const procedure = procedureOf(at);
  if (what === "steps") return procedure && tablesOf(procedure).steps.first.get(key)?.node;
  const file = AstUtils.findRootNode(at);
  const thing = (container: AstNode | undefined) => container && tablesOf(container).things.first.get(key)?.node;
  const own = thing(procedure) ?? thing(file);
  if (own !== undefined) return own;
  for (const used of usedBy.get(file) ?? []) {
    const found = thing(used.file);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A name in a text that means a thing, or a step or task. What it means is looked up when it is first asked for. */
export function referenceFrom(from: AstNode, what: "things" | "steps", $refText: string, $refNode: CstNode): Reference {
  return new NameReference(from, what, $refText, $refNode);
}

class NameReference implements Reference {
  readonly $refText: string;
  readonly $refNode: CstNode;
  private readonly from: AstNode;
  private readonly what: "things" | "steps";
  /** Undefined where nobody has asked yet, null where the name means nothing. */
  private meant: AstNode | null | undefined;

  constructor(from: AstNode, what: "things" | "steps", $refText: string, $refNode: CstNode) {
    this.from = from;
    this.what = what;
    this.$refText = $refText;
    this.$refNode = $refNode;
  }

  get ref(): AstNode | undefined {
    if (this.meant === undefined) {
      this.meant = meantAt(this.from, this.$refText, this.what) ?? null;
      AstUtils.findRootNode(this.from).$document?.references.push(this);
    }
    return this.meant ?? undefined;
  }

  forget(): void {
    this.meant = undefined;
  }
}

/* ---- the tables ---- */

interface NameTable {
  readonly all: readonly DeclaredName[];
  readonly first: ReadonlyMap<string, DeclaredName>;
}
interface Tables {
  readonly things: NameTable;
  readonly steps: NameTable;
}

const usedBy = new WeakMap<AstNode, readonly ParsedFile[]>();
const tables = new WeakMap<AstNode, Tables>();

function usedFiles(parsed: ParsedFile, files: ReadonlyMap<string, ParsedFile>): ParsedFile[] {
  const used = new Set<ParsedFile>();
  for (const item of parsed.file.items) {
    if (!ast.isUse(item)) continue;
    const path = resolveUse(parsed.path, item.path);
    const file = path === null ? undefined : files.get(path);
    if (file !== undefined && file !== parsed) used.add(file);
  }
  return [...used];
}

function sameFiles(before: readonly ParsedFile[], now: readonly ParsedFile[]): boolean {
  return before.length === now.length && before.every((file, at) => file === now[at]);
}

function forget(parsed: ParsedFile): void {
  for (const reference of parsed.document.references) (reference as NameReference).forget();
  parsed.document.references = [];
}

function tablesOf(container: AstNode): Tables {
  let found = tables.get(container);
  if (found === undefined) {
    const things: DeclaredName[] = [];
    const steps: DeclaredName[] = [];
    if (ast.isFile(container)) collectFromFile(container, things);
    else if (ast.isProcedure(container) || ast.isDamaged(container)) collectFromFlow(container, things, steps);
    found = { things: table(things), steps: table(steps) };
    tables.set(container, found);
  }
  return found;
}

function table(all: readonly DeclaredName[]): NameTable {
  const first = new Map<string, DeclaredName>();
  for (const entry of all) if (!first.has(entry.name)) first.set(entry.name, entry);
  return { all, first };
}

function collectFromFile(file: ast.File, into: DeclaredName[]): void {
  for (const item of file.items) {
    if (ast.isProcedure(item) || ast.isDeclaration(item)) add(item, into);
  }
}

function collectFromFlow(container: Flow, things: DeclaredName[], steps: DeclaredName[]): void {
  for (const node of statementsIn(container)) {
    if (ast.isStep(node) || ast.isTask(node)) add(node, steps);
    else if (ast.isMeasure(node) || ast.isDeclaration(node)) add(node, things);
  }
}

function innerItems(node: AstNode): readonly AstNode[] {
  if (ast.isStep(node)) return node.lines;
  if (ast.isCheck(node)) return node.fails;
  if (ast.isWhen(node)) return node.otherwise === undefined ? node.items : [...node.items, node.otherwise];
  if (ast.isTask(node) || ast.isRepeat(node) || ast.isAnyOrder(node) || ast.isOtherwise(node) || ast.isDamaged(node)) {
    return node.items;
  }
  return [];
}

function add(node: AstNode, into: DeclaredName[]): void {
  const { name } = node as { name?: unknown };
  if (typeof name !== "string" || name === "") return;
  into.push({ name: name.normalize("NFC"), node: node as DeclaredName["node"] });
}
