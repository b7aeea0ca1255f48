// The pictures that outputs show: which of them a caller still has to hand in, and how outputs ask for one. Knows no file.
import { resolveUse } from "#syntax/scope.ts";
import { filesBehind } from "./concerned.ts";
import { figuresIn } from "./load.ts";
import type { Wanted } from "./snapshot.ts";
import { openWorkspace, type Workspace } from "./workspace.ts";

/** The figures of a file and of all it uses that are there and whose bytes were not given yet, in the order of their paths. */
export function figuresWanted({ loaded, snapshot }: Workspace, path: string): readonly Wanted[] {
  const paths = filesBehind(loaded, path).flatMap((from) => {
    const parsed = loaded.parsed.get(from);
    return parsed === undefined ? [] : figuresIn(parsed.file).flatMap((named) => resolveUse(from, named) ?? []);
  });
  return [...new Set(paths)]
    .filter((one) => !snapshot.absent.has(one) && snapshot.bytes?.has(one) !== true)
    .sort()
    .map((one) => ({ path: one, need: "bytes" }));
}

/** The same workspace with these bytes beside those that it has; null for a file that could not be read or is too large. */
export function withFigures(workspace: Workspace, bytes: ReadonlyMap<string, Uint8Array | null>): Workspace {
  const { snapshot } = workspace;
  return openWorkspace({ ...snapshot, bytes: new Map([...(snapshot.bytes ?? []), ...bytes]) }, workspace);
}

/** The bytes of a figure that the text at a path names; null where they were not given. */
export function figureIn({ snapshot }: Workspace): (from: string, named: string) => Uint8Array | null {
  return (from, named) => snapshot.bytes?.get(resolveUse(from, named) ?? "") ?? null;
}
