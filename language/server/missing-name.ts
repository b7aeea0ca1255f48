// What would make a name known that no declaration gives: a `use` of the file that declares it, or a declaration. Knows no rule and
// no protocol.
import type { Declaration } from "#model/declarations.ts";
import type { ModelProblem } from "#model/problem.ts";
import type { FileModel } from "#model/procedure.ts";
import type { Range } from "#syntax/lines.ts";
import { relativeTo } from "./completion/files.ts";
import { lineBehind, paragraphBefore } from "./own-line.ts";
import { type FileView, offsetOf } from "./view.ts";
import type { TextChange } from "./workspace-edit.ts";

export interface MissingNameFix {
  readonly title: string;
  readonly edit: Omit<TextChange, "path">;
}

/** Nothing where no unknown name stands at the place, and no declaration where the name is probably a slip for another. */
export function missingNameFixes(view: FileView, range: Range, asSnippet: boolean): readonly MissingNameFix[] {
  const [start, end] = [offsetOf(view, range.start), offsetOf(view, range.end)];
  const problem = view.model.problems.find(
    (one): one is Unknown => one.kind === "unknown name" && one.span.start === start && one.span.end === end,
  );
  if (problem === undefined) return [];
  const sorts = problem.wanted.split(/, | or /).map((words) => words.replace(/^an? /, ""));
  const uses = filesWith(view, problem.name, sorts).map((path) => useFix(view, path));
  if (uses.length > 0 || problem.nearest.length > 0) return uses;
  return sorts.filter(isPlain).map((sort) => declareFix(view, problem, sort, asSnippet));
}

type Unknown = ModelProblem & { readonly kind: "unknown name" };

/** Sorts that one line can declare, by how the tree calls it. */
const PLAIN = {
  part: "Part",
  tool: "Tool",
  consumable: "Consumable",
  energy: "Energy",
  material: "Material",
  source: "Source",
  role: "Role",
  fact: "FactDeclaration",
} as const satisfies { readonly [Sort in Declaration["kind"]]?: string };
type Plain = keyof typeof PLAIN;

function isPlain(sort: string): sort is Plain {
  return Object.hasOwn(PLAIN, sort);
}

/** More would be no choice but a list. */
const MOST_FILES = 3;

/** Files of the folder that declare it for others, and that this one does not use. */
function filesWith({ path, model, workspace }: FileView, name: string, sorts: readonly string[]): readonly string[] {
  const known = new Set([path, ...model.uses.map((use) => use.path)]);
  return [...workspace.loaded.models.values()]
    .filter((other) => !known.has(other.path) && declares(other, name, sorts))
    .map((other) => other.path)
    .sort()
    .slice(0, MOST_FILES);
}

function declares({ path, declarations, procedures }: FileModel, name: string, sorts: readonly string[]): boolean {
  if (sorts.includes("procedure") && procedures.some((one) => one.name === name)) return true;
  // What is declared in a procedure is for that alone, and has another id.
  return declarations.some(({ id, kind }) => id === `${path}#${name}` && sorts.includes(kind));
}

function useFix(view: FileView, path: string): MissingNameFix {
  const line = `use "${relativeTo(view.path, path)}"`;
  const last = view.parsed.file.items.findLast(({ $type }) => $type === "Use")?.$cstNode?.end;
  const first = view.parsed.file.items[0]?.$cstNode?.offset ?? 0;
  const edit = last === undefined ? paragraphBefore(view, first, line) : lineBehind(view, last, line);
  return { title: `Put in ${line}`, edit };
}

function declareFix(view: FileView, { name, span }: Unknown, sort: Plain, asSnippet: boolean): MissingNameFix {
  const { items } = view.parsed.file;
  const last = items.findLast(({ $type }) => $type === PLAIN[sort])?.$cstNode?.end;
  const around = items.findLast(({ $cstNode }) => ($cstNode?.offset ?? span.end) <= span.start)?.$cstNode?.offset ?? 0;
  const line = `${sort} ${name}${instancesFor(view, span.end)} "${asSnippet ? `\${1:${titleOf(name)}}` : titleOf(name)}"`;
  const edit = last === undefined ? paragraphBefore(view, around, line) : lineBehind(view, last, line);
  return { title: `Declare ${sort} ${name}`, edit: { ...edit, isSnippet: asSnippet } };
}

/** `[1..4]` where the name stands with an index. */
function instancesFor({ text }: FileView, end: number): string {
  const index = /^\[\s*(\d+)?/.exec(text.slice(end, end + 20));
  return index === null ? "" : `[1..${index[1] ?? 4}]`;
}

/** `cover screw` of `CoverScrew`. */
function titleOf(name: string): string {
  return name
    .replaceAll("_", " ")
    .replace(/(?<=\p{Ll})(?=\p{Lu})/gu, " ")
    .toLowerCase();
}
