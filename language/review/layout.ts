// Files whose texts differ though nothing that they mean does. Knows no model.
import type { Change } from "./change.ts";
import type { ReviewSide } from "./side.ts";
import type { Words } from "./words.ts";

/** @param known files that are the same by what they hold, as old and new path */
export function layoutChanges(
  changes: readonly Change[],
  old: ReviewSide,
  now: ReviewSide,
  known: readonly (readonly [string, string])[],
  words: Words,
): readonly Change[] {
  const told = {
    old: new Set(changes.map((change) => change.old?.span.path)),
    new: new Set(changes.map((change) => change.new?.span.path)),
  };
  return [...filePairs(old, now, known)].flatMap(([path, before]): readonly Change[] => {
    const sides = { old: sideOf(before), new: sideOf(path) };
    const isRenamed = path !== before && old.files.length + now.files.length > 2;
    const procedure = now.files.find((file) => file.path === path)?.procedures[0]?.name ?? "";
    const change = { group: "layout", procedure, ...sides, edits: [] } as const;
    const renamed = { ...change, kind: "file-renamed", message: `${words.renamedFile(before, path)}.` };
    const isTold = told.old.has(before) || told.new.has(path);
    const isSame = old.textOf(before) === now.textOf(path);
    const layout = { ...change, kind: "layout", message: words.onlyLayout };
    return [...(isRenamed ? [renamed] : []), ...(isTold || isSame ? [] : [layout])];
  });
}

/** The old path of each new one. */
function filePairs(
  old: ReviewSide,
  now: ReviewSide,
  known: readonly (readonly [string, string])[],
): ReadonlyMap<string, string> {
  const before = new Set([...old.files, ...old.used].map(({ path }) => path));
  const after = [...now.files, ...now.used].map(({ path }) => path);
  const pairs = new Map<string, string>();
  for (const path of after) if (before.has(path)) pairs.set(path, path);
  for (const [was, is] of known) if (!pairs.has(is)) pairs.set(is, was);
  const [one, other] = [old.files[0]?.path, now.files[0]?.path];
  const isOneEach = old.files.length === 1 && now.files.length === 1;
  if (isOneEach && one !== undefined && other !== undefined && !pairs.has(other)) pairs.set(other, one);
  return pairs;
}

function sideOf(path: string) {
  return { span: { path, start: 0, end: 0 } };
}
