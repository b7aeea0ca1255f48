// Whether a new name can be had: whether it is a name at all, and whether it means something else already in reach of any
// place where it would stand. Answers in sentences for the writer; null where nothing speaks against it.
import { type AstNode, AstUtils } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { HAZARDS } from "#model/names.ts";
import { PART_STATES } from "#syntax/built-in-states.ts";
import { parseText } from "#syntax/parse.ts";
import { meantAt } from "#syntax/scope.ts";
import { type Declaring, indexMeaning, loopVariable, meaningOf, statesOf } from "./name-meaning.ts";
import { type NameSite, sitesIn } from "./name-sites.ts";
import { declarationOf, fileOf, type Use } from "./references.ts";
import { tokensOf } from "./tree-at.ts";
import { type FileView, rangeOf } from "./view.ts";

/** Why this cannot be the name of such a thing anywhere. */
export function unfitFor(declared: Declaring, name: string): string | null {
  const isWord = ast.isChoice(declared) || ast.isStateName(declared);
  // The grammar itself says what a name is.
  const probe = isWord ? `option Probe { ${name} }` : `role ${name}`;
  const { file, problems } = parseText(probe, "");
  const [item] = file.items;
  const read = ast.isOption(item) ? item.choices.map((choice) => choice.name) : ast.isRole(item) ? [item.name] : [];
  if (problems.length === 0 && file.items.length === 1 && read.length === 1 && read[0] === name) {
    if (ast.isStateName(declared) && PART_STATES.includes(name))
      return ofTheLanguage(name, "a state that every part has");
    if (ast.isHazard(declared) && HAZARDS.includes(name)) return ofTheLanguage(name, "a hazard of the language");
    return null;
  }
  if (/^[\p{L}_][\p{L}\p{N}\p{M}_]*$/u.test(name) && !/[\u{10000}-\u{10FFFF}]/u.test(name))
    return ofTheLanguage(name, "a word of the language");
  return `“${name}” cannot be a name. A name is a letter, then letters, digits and _.`;
}

/** Whether it is no keyword anywhere. */
export function isPlainName(name: string): boolean {
  return [...tokensOf(parseText(`role ${name}`, ""))][1]?.tokenType.name === "ID";
}

/** What bears the name already where this is declared or used, so that a text would come to mean something else. */
export function takenBy(view: FileView, declared: Declaring, uses: readonly Use[], name: string): string | null {
  const other = otherOf(view, declared, uses, name);
  if (other === undefined || other === declared) return null;
  const found = declarationOf(view, other);
  if (found === undefined) return `“${name}” is taken here. Choose another name.`;
  const { path } = found.parsed;
  const { line } = rangeOf(view, { path, start: found.site.start, end: found.site.end }).start;
  return `“${name}” is taken: ${path}, line ${line + 1}. Choose another name.`;
}

function ofTheLanguage(name: string, what: string): string {
  return `“${name}” is ${what}. Choose another name.`;
}

function otherOf(view: FileView, declared: Declaring, uses: readonly Use[], name: string): Declaring | undefined {
  const { $container: container } = declared as AstNode;
  const isSame = (one: { readonly name?: string }): boolean => one !== declared && one.name?.normalize("NFC") === name;
  if (ast.isChoice(declared)) return declared.$container.choices.find(isSame);
  if (ast.isStateName(declared)) {
    const part = AstUtils.getContainerOfType(declared, ast.isPart);
    return part === undefined ? undefined : statesOf(part).find(isSame);
  }
  if (ast.isInstanceName(declared))
    return (
      declared.$container.names.find(isSame) ??
      firstOf(uses, ({ site }) => (site.use === "index" ? indexMeaning(site.node, name) : undefined))
    );
  if (ast.isLoopVariable(declared)) return otherVariable(view, declared, name);
  if (ast.isStep(declared) || ast.isTask(declared)) return meantAt(declared, name, "steps");
  return (
    firstOf(uses, ({ site }) => meantAt(site.node, name)) ??
    (ast.isFile(container) ? firstOf(filesThatSee(view, declared), (file) => meantAt(file, name)) : undefined)
  );
}

function firstOf<One, Found>(list: readonly One[], find: (one: One) => Found | undefined): Found | undefined {
  for (const one of list) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The files that can name what a file declares: all that use it. */
function filesThatSee(view: FileView, declared: Declaring): readonly ast.File[] {
  const own = fileOf(view, declared);
  const { models, parsed } = view.workspace.loaded;
  return [...models.values()].flatMap(({ path, uses }) => {
    const file = uses.some((use) => use.path === own?.path) ? parsed.get(path)?.file : undefined;
    return file === undefined ? [] : [file];
  });
}

/** A variable of that name round the repeat or in it, or what a name in it means that would become this variable. */
function otherVariable(view: FileView, declared: ast.LoopVariable, name: string): Declaring | undefined {
  const repeat = declared.$container;
  const outer = loopVariable(repeat, name);
  const parsed = fileOf(view, declared);
  if (outer !== undefined || parsed === undefined) return outer;
  const isInside = ({ start }: NameSite): boolean =>
    start > (repeat.$cstNode?.offset ?? 0) && start < (repeat.$cstNode?.end ?? 0);
  return firstOf(sitesIn(parsed).byName.get(name)?.filter(isInside) ?? [], (site) => {
    const { use } = site;
    if (use === "declares") return ast.isLoopVariable(site.node) ? site.node : undefined;
    return use === "index" || use === "words" ? meaningOf(site) : undefined;
  });
}
