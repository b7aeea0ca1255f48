// Every place of a file where a name stands, found in one walk of its tree and kept with it, so that files that did not
// change are not walked again. Knows what a name is for, not what it means (name-meaning.ts).
import { type AstNode, type CstNode, GrammarUtils, type Reference } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { damageOf } from "#syntax/damage.ts";
import type { ParsedFile } from "#syntax/parse.ts";

/** One place of a name. */
export interface NameSite {
  readonly start: number;
  readonly end: number;
  /** In NFC. */
  readonly name: string;
  /** The node it stands in; that which bears it, where it is declared. */
  readonly node: AstNode;
  /**
   * What it does there: declares; refers, as a reference of the tree; names a hazard, an index, a state or choice; is a loop
   * variable in own words; or is mentioned in a line that could not be read.
   */
  readonly use: "declares" | "refers" | "hazard" | "index" | "state" | "words" | "mention";
  readonly reference?: Reference;
}

/** A path that a `use`, a figure or an arrangement names; the place is that of the string with its quotes. */
export interface PathSite {
  readonly start: number;
  readonly end: number;
  readonly path: string;
  readonly node: ast.Use | ast.FigureLine | ast.TextProperty;
}

export interface FileSites {
  /** In the order of the text; none overlaps another. */
  readonly all: readonly NameSite[];
  readonly byName: ReadonlyMap<string, readonly NameSite[]>;
  /** In the order of the text. */
  readonly paths: readonly PathSite[];
}

export function sitesIn(parsed: ParsedFile): FileSites {
  const known = found.get(parsed) ?? collect(parsed);
  found.set(parsed, known);
  return known;
}

/** The site that holds the offset, or that ends there. */
export function siteAt(parsed: ParsedFile, offset: number): NameSite | undefined {
  const { all } = sitesIn(parsed);
  let low = 0;
  let high = all.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((all[middle] as NameSite).start <= offset) low = middle + 1;
    else high = middle;
  }
  const site = all[low - 1];
  return site !== undefined && offset <= site.end ? site : undefined;
}

const found = new WeakMap<ParsedFile, FileSites>();

function collect(parsed: ParsedFile): FileSites {
  const all: NameSite[] = [];
  const paths: PathSite[] = [];
  // A stack of our own: nesting is as deep as the writer likes.
  const waiting: AstNode[] = [parsed.file];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    sitesOfNode(parsed, node, all);
    addPath(node, paths);
    for (const key in node) {
      if (key.startsWith("$")) continue;
      const value = (node as unknown as Record<string, unknown>)[key];
      if (typeof value === "object" && value !== null) {
        for (const each of Array.isArray(value) ? value : [value]) {
          if (typeof each !== "object" || each === null) continue;
          if ("$refText" in each) addReference(node, each as Reference, all);
          else if ("$type" in each) waiting.push(each as AstNode);
        }
      }
      if (WORDS.has(key) && holdsBrace(value)) all.push(...variablesIn(node, key));
    }
  }
  // What was mended does not stand in the text as it is read, and could not be changed there.
  const written = all.filter(({ start, end, name }) => parsed.text.slice(start, end).normalize("NFC") === name);
  written.sort((a, b) => a.start - b.start);
  const byName = new Map<string, NameSite[]>();
  for (const site of written) {
    const same = byName.get(site.name);
    if (same === undefined) byName.set(site.name, [site]);
    else same.push(site);
  }
  return { all: written, byName, paths: paths.sort((a, b) => a.start - b.start) };
}

function addPath(node: AstNode, into: PathSite[]): void {
  const isTable = ast.isTextProperty(node) && node.keyword === "from";
  if (!isTable && !ast.isUse(node) && !ast.isFigureLine(node)) return;
  const [property, path] = ast.isTextProperty(node) ? ["text", node.text] : ["path", node.path];
  const cst = GrammarUtils.findNodeForProperty(node.$cstNode, property);
  if (cst !== undefined && cst.end > cst.offset) into.push({ start: cst.offset, end: cst.end, path, node });
}

function addReference(node: AstNode, reference: Reference, into: NameSite[]): void {
  const cst = reference.$refNode;
  if (cst !== undefined) into.push({ ...siteOf(cst, node, "refers"), reference });
}

function sitesOfNode(parsed: ParsedFile, node: AstNode, into: NameSite[]): void {
  if (ast.isDamaged(node)) into.push(...mentionsIn(parsed, node));
  const use = USES[node.$type];
  if (use !== undefined) addProperty(node, "name", use, into);
  if (ast.isStateCondition(node) && node.state !== undefined) addProperty(node, "state", "state", into);
}

function addProperty(node: AstNode, property: string, use: NameSite["use"], into: NameSite[]): void {
  if (typeof (node as unknown as Record<string, unknown>)[property] !== "string") return;
  const cst = GrammarUtils.findNodeForProperty(node.$cstNode, property);
  if (cst !== undefined && cst.end > cst.offset) into.push(siteOf(cst, node, use));
}

function siteOf({ offset, end, text }: CstNode, node: AstNode, use: NameSite["use"]): NameSite {
  return { start: offset, end, name: text.normalize("NFC"), node, use };
}

/** What a node's property `name` is for. */
const USES: Readonly<Record<string, NameSite["use"]>> = {
  ...Object.fromEntries(
    [
      ...["Material", "Source", "Role", "Ring", "Holes", "Part", "Tool", "Consumable", "Energy", "Hazard", "Option"],
      ...["FactDeclaration", "ValueDeclaration", "Arrangement", "Crib", "Procedure", "Measure", "Step", "Task"],
      ...["Choice", "StateName", "InstanceName", "LoopVariable"],
    ].map((type) => [type, "declares"] as const),
  ),
  HazardUse: "hazard",
  IndexName: "index",
};

/* ---- own words ---- */

/** Properties that hold a writer's own words. */
const WORDS: ReadonlySet<string> = new Set(["words", "text", "title", "avoid", "wear", "label", "caption"]);

function holdsBrace(value: unknown): boolean {
  return typeof value === "string" ? value.includes("{") : Array.isArray(value) && value.some(holdsBrace);
}

function variablesIn(node: AstNode, property: string): readonly NameSite[] {
  return GrammarUtils.findNodesForProperty(node.$cstNode, property).flatMap(({ offset, text }) =>
    [...text.matchAll(/\{\s*([\p{L}_][\p{L}\p{N}\p{M}_]*)\s*\}/gu)].map((match): NameSite => {
      const name = match[1] ?? "";
      const start = offset + match.index + match[0].indexOf(name);
      return { start, end: start + name.length, name: name.normalize("NFC"), node, use: "words" };
    }),
  );
}

/* ---- lines that could not be read ---- */

function mentionsIn(parsed: ParsedFile, node: ast.Damaged): readonly NameSite[] {
  const damage = damageOf(parsed.damage, node);
  if (damage === undefined) return [];
  const { span } = damage;
  const names = new Set(damage.names);
  const sites: NameSite[] = [];
  for (const match of parsed.text.slice(span.start, span.end).matchAll(WORD_OR_NONE)) {
    if (match.groups?.name === undefined) continue;
    const start = span.start + match.index;
    const name = match[0].normalize("NFC");
    if (names.has(name)) sites.push({ start, end: start + match[0].length, name, node, use: "mention" });
  }
  return sites;
}

/** Strings, comments and numbers with their units are stepped over. */
const WORD_OR_NONE =
  /"""[\s\S]*?(?:"""|$)|"(?:\\.|[^"\\\n\r])*"?|\/\/[^\n\r]*|\/\*[\s\S]*?(?:\*\/|$)|\d[\d_./]*[ \t]*[^\s,;{}[\]"]*|(?<name>[\p{L}_][\p{L}\p{N}\p{M}_]*)/gu;
