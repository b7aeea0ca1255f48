// From the paths of a call to the files they mean: a file as it is, a folder with all `.sprag` files in it. Leaves out what
// `.gitignore` leaves out, hidden folders and node_modules. Reads no procedure.
import { existsSync, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { type IgnoreRules, ignoreRules, isIgnored, isSkipped } from "#server/ignore-rules.ts";
import { Refusal, type Trouble } from "./refusal.ts";
import { codeOf, systemWords } from "./system-error.ts";

export interface Found {
  /** From the root, with `/`, sorted, each once. */
  readonly paths: readonly string[];
  readonly troubles: readonly Trouble[];
  /** The folders that were looked through, from the root. */
  readonly folders: readonly string[];
}

/**
 * The workspace root as an absolute path: the one given, else the working directory; where the paths of the call lie
 * outside that, the folder that holds them all.
 * @throws Refusal where it is no folder
 */
export function rootFolder(given: string | undefined, cwd: string, paths: readonly string[]): string {
  const root = resolve(cwd, given ?? commonFolder(paths, cwd) ?? ".");
  try {
    if (statSync(root).isDirectory()) return realpathSync(root);
  } catch (error) {
    throw new Refusal(`The root ${given ?? root} ${systemWords(error)}`);
  }
  throw new Refusal(`The root ${given} is a file. Give the folder it lies in.`);
}

/** The deepest folder that holds all paths; null where that is the working directory's affair, or no folder of a person's. */
function commonFolder(paths: readonly string[], cwd: string): string | null {
  const places = paths.map((path) => resolve(cwd, path)).filter((path) => existsSync(path));
  if (!places.some((path) => leavesRoot(relative(realpathSync(cwd), realpathSync(dirname(path)))))) return null;
  const folders = places.map((path) => (isFolder(path) ? path : dirname(path)));
  const common = folders.reduce((so, folder) => {
    let held = so;
    while (leavesRoot(relative(held, folder))) held = dirname(held);
    return held;
  });
  return dirname(common) === common ? null : common;
}

/** @param root absolute, without links in it */
export function findFiles(given: readonly string[], root: string, cwd: string): Found {
  const search: Search = { root, paths: new Set(), troubles: [], folders: new Set() };
  for (const path of given) lookAt(path, resolve(cwd, path), search);
  return { paths: [...search.paths].sort(), troubles: search.troubles, folders: [...search.folders] };
}

/** Where a file really lies, from the root; null where that is outside. */
export function insideRoot(path: string, root: string): string | null {
  const inside = relative(root, join(realpathSync(dirname(path)), basename(path)));
  const real = relative(root, realpathSync(path));
  return leavesRoot(inside) || leavesRoot(real) ? null : inside.split(sep).join("/");
}

/** Whether a folder is there, or a link to one. */
export function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function leavesRoot(path: string): boolean {
  return path === ".." || path.startsWith(`..${sep}`) || resolve(path) === path;
}

interface Search {
  readonly root: string;
  readonly paths: Set<string>;
  readonly troubles: Trouble[];
  readonly folders: Set<string>;
}

function lookAt(given: string, path: string, search: Search): void {
  const trouble = (message: string): void => void search.troubles.push({ path: given, message });
  if (given === "") return void search.troubles.push({ path: "A path", message: "is empty. Give a file or a folder." });
  try {
    const stats = statSync(path);
    const inside = insideRoot(path, search.root);
    if (inside === null) {
      const lies = isLink(path) ? "is a link that leads outside" : "lies outside";
      trouble(`${lies} the root ${search.root}. Name a folder that holds it with --root.`);
    } else if (stats.isDirectory()) {
      const before = search.paths.size;
      const seen = walk({ inside, rules: rulesAbove(inside, search.root) }, search);
      if (search.paths.size === before && !seen.some) {
        trouble(seen.ignored ? "holds no .sprag file that .gitignore does not leave out." : "holds no .sprag file.");
      }
    } else if (stats.isFile() && /\.csv$/i.test(inside))
      trouble("is a table. Give the .sprag file that declares its arrangement.");
    else if (stats.isFile()) search.paths.add(inside);
    else trouble("is a pipe or a device, not a file.");
  } catch (error) {
    trouble(codeOf(error) === "ENOENT" && isLink(path) ? "is a link to a file that is not there." : systemWords(error));
  }
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

interface Folder {
  /** From the root, with `/`; empty for the root. */
  readonly inside: string;
  readonly rules: readonly IgnoreRules[];
}
interface Seen {
  some: boolean;
  ignored: boolean;
}

/** Adds every `.sprag` file of the folder and those in it. Follows no link to a folder, so it comes to an end. */
function walk(folder: Folder, search: Search): Seen {
  const seen: Seen = { some: false, ignored: false };
  search.folders.add(folder.inside);
  const rules = [...folder.rules, ...rulesIn(folder.inside, search.root)];
  for (const entry of entriesOf(folder.inside, search)) {
    const inside = folder.inside === "" ? entry.name : `${folder.inside}/${entry.name}`;
    if (isSkipped(entry.name)) continue;
    if (!entry.isDirectory() && !entry.name.endsWith(".sprag")) continue;
    if (isIgnored(entry.isDirectory() ? `${inside}/` : inside, rules)) {
      seen.ignored = true;
    } else if (entry.isDirectory()) {
      const below = walk({ inside, rules }, search);
      seen.some ||= below.some;
      seen.ignored ||= below.ignored;
    } else {
      seen.some = true;
      // A link or a pipe is looked at like a path of the call.
      if (entry.isFile()) search.paths.add(inside);
      else if (!isFolder(join(search.root, inside))) lookAt(inside, join(search.root, inside), search);
    }
  }
  return seen;
}

function entriesOf(inside: string, search: Search) {
  try {
    return readdirSync(join(search.root, inside), { withFileTypes: true });
  } catch (error) {
    search.troubles.push({ path: inside === "" ? "." : inside, message: systemWords(error) });
    return [];
  }
}

/** The rules of the folders above; none where they leave out this folder itself, for it was asked for by name. */
function rulesAbove(inside: string, root: string): readonly IgnoreRules[] {
  if (inside === "") return [];
  const above = inside.split("/").map((_, at, names) => names.slice(0, at).join("/"));
  const rules = above.flatMap((folder) => rulesIn(folder, root));
  return isIgnored(`${inside}/`, rules) ? [] : rules;
}

function rulesIn(base: string, root: string): readonly IgnoreRules[] {
  try {
    return [ignoreRules(base, readFileSync(join(root, base, ".gitignore"), "utf8"))];
  } catch {
    // Without rules everything counts, which is the safe side.
    return [];
  }
}
