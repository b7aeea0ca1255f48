// The files below a folder that count: those the command would find there. Knows how files are asked for, and no text of Sprag.
import type { Files } from "./files.ts";
import { type IgnoreRules, ignoreRules, isIgnored, isSkipped } from "./ignore-rules.ts";

export interface Listing {
  readonly files: readonly { readonly uri: string; readonly path: string }[];
  /** Whether a path below the folder does not count. */
  readonly leavesOut: (path: string) => boolean;
}

/** A path by its names alone, as long as no rules are known. */
export function leftOutByName(path: string): boolean {
  return path.split("/").some(isSkipped);
}

/** @param pathOf from the folder, with `/`; null where it lies outside */
export async function listFiles(
  files: Files,
  folder: string,
  pathOf: (uri: string) => string | null,
): Promise<Listing> {
  const found = (await files.list(folder)).flatMap((uri) => {
    const path = pathOf(uri);
    return path === null ? [] : [{ uri, path }];
  });
  const leavesOut = leftOutBy(
    await rulesIn(
      files,
      found.filter(({ path }) => isRulesFile(path)),
    ),
  );
  return { files: found.filter(({ path }) => path.endsWith(".sprag") && !leavesOut(path)), leavesOut };
}

export function isRulesFile(pathOrUri: string): boolean {
  return pathOrUri === RULES_FILE || pathOrUri.endsWith(`/${RULES_FILE}`);
}

const RULES_FILE = ".gitignore";

type Rules = ReadonlyMap<string, IgnoreRules>;

/** By the folder that holds them. */
async function rulesIn(files: Files, found: Listing["files"]): Promise<Rules> {
  const texts = await files.read(found.map(({ uri }) => uri));
  return new Map(
    found.flatMap(({ path }, at) => {
      const base = path.slice(0, -RULES_FILE.length).replace(/\/$/, "");
      const text = texts[at] ?? null;
      // Without rules everything counts, which is the safe side.
      return text === null || (base !== "" && leftOutByName(base)) ? [] : [[base, ignoreRules(base, text)] as const];
    }),
  );
}

/** What is in a folder that is left out is left out with it. */
function leftOutBy(rules: Rules): (path: string) => boolean {
  /** Of each folder, whether it is left out, else the rules that hold in it. */
  const known = new Map<string, readonly IgnoreRules[] | null>();
  const inFolder = (folder: string): readonly IgnoreRules[] | null => {
    const before = known.get(folder);
    if (before !== undefined) return before;
    const own = rules.get(folder);
    const above = folder === "" ? [] : inFolder(parentOf(folder));
    const isOut = above === null || (folder !== "" && isIgnored(`${folder}/`, above));
    const held = isOut ? null : own === undefined ? above : [...above, own];
    known.set(folder, held);
    return held;
  };
  return (path) => {
    if (leftOutByName(path)) return true;
    const held = inFolder(parentOf(path));
    return held === null || isIgnored(path, held);
  };
}

function parentOf(path: string): string {
  const end = path.lastIndexOf("/");
  return end < 0 ? "" : path.slice(0, end);
}
