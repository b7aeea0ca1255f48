// Which files have to be checked again when one of them changed: the file and all that use it, directly or through others.
import { resolveUse } from "#syntax/scope.ts";
import type { Workspace } from "#workspace/workspace.ts";

/** In no particular order; with the changed files themselves. All files are checked against the crib. A figure or table counts as used by the files that show it. */
export function dependentsOf(
  { loaded: { models, parsed }, snapshot: { crib } }: Workspace,
  changed: readonly string[],
): ReadonlySet<string> {
  const usedBy = new Map<string, string[]>();
  const note = (path: string | null, user: string): void => {
    if (path === null) return;
    const known = usedBy.get(path);
    if (known === undefined) usedBy.set(path, [user]);
    else known.push(user);
  };
  for (const [path, { uses }] of models) for (const use of uses) note(use.path, path);
  const shown = changed.filter((path) => !parsed.has(path));
  for (const file of shown.length === 0 ? [] : parsed.values())
    for (const [, quoted] of file.text.matchAll(/"((?:[^"\\\r\n]|\\.)+)"/g)) {
      const meant = resolveUse(file.path, quoted ?? "");
      if (meant !== null && shown.includes(meant)) note(meant, file.path);
    }
  const found = new Set(changed);
  for (const path of found) for (const user of usedBy.get(path) ?? []) found.add(user);
  if (crib !== undefined && found.has(crib)) for (const path of models.keys()) found.add(path);
  return found;
}
