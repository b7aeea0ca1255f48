// Which files of a call use some of its files, found without opening all of them at once. Knows no findings.
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import type { CheckJob } from "./check-files.ts";
import { diskSource } from "./open-files.ts";

/**
 * To each of these files that another uses, one that does: among the files of the call outside this part of it, and all that those use.
 * @param known this part as it is open: what its files use is seen to already
 */
export function usersOf(
  used: ReadonlySet<string>,
  { all, day, root }: CheckJob,
  known: Workspace,
): ReadonlyMap<string, string> {
  const source = diskSource(root);
  const users = new Map<string, string>();
  const waiting = new Set(all.filter((path) => !known.snapshot.texts.has(path)));
  for (const path of waiting) {
    if (users.size === used.size) break;
    const read = source.text(path);
    if (!read.ok) continue;
    for (const named of usedBy(path, read.text, day)) {
      if (used.has(named) && !users.has(named)) users.set(named, path);
      else if (!known.snapshot.texts.has(named) && source.isThere(named)) waiting.add(named);
    }
  }
  return users;
}

/** What a file by itself is lacking. */
function usedBy(path: string, text: string, today: string): readonly string[] {
  const { wanted } = openWorkspace({
    ...{ texts: new Map([[path, text]]), present: new Set(), absent: new Set(), today },
  });
  return wanted.filter(({ need }) => need === "text").map((one) => one.path);
}
