// The pictures that outputs show: which of them a caller still has to hand in, and how outputs ask for one. Knows no file.
import { resolveUse } from "#syntax/scope.ts";
import { filesBehind } from "./concerned.ts";
import { figuresIn } from "./load.ts";
import type { Wanted } from "./snapshot.ts";
import { openWorkspace, type Workspace } from "./workspace.ts";

/** The figures of a file and of all it uses that are there, in the order of their paths. */
export function figuresBehind({ loaded, snapshot }: Workspace, path: string): readonly string[] {
  const paths = filesBehind(loaded, path).flatMap((from) => {
    const parsed = loaded.parsed.get(from);
    return parsed === undefined ? [] : figuresIn(parsed.file).flatMap((named) => resolveUse(from, named) ?? []);
  });
  return [...new Set(paths)].filter((one) => !snapshot.absent.has(one)).sort();
}

/** Those whose bytes were not given yet. */
export function figuresWanted(workspace: Workspace, path: string): readonly Wanted[] {
  return figuresBehind(workspace, path)
    .filter((one) => workspace.snapshot.bytes?.has(one) !== true)
    .map((one) => ({ path: one, need: "bytes" }));
}

/** In bytes. Outputs leave out smaller ones already; a caller need not read a larger one. */
export const LARGEST_FIGURE = 24_000_000;

/** The same workspace with these bytes beside those that it has; null for a file that could not be read or is too large. */
export function withFigures(workspace: Workspace, bytes: ReadonlyMap<string, Uint8Array | null>): Workspace {
  const { snapshot } = workspace;
  const given = [...bytes].map(
    ([path, one]) => [path, one !== null && one.length > LARGEST_FIGURE ? null : one] as const,
  );
  return openWorkspace({ ...snapshot, bytes: new Map([...(snapshot.bytes ?? []), ...given]) }, workspace);
}

/** The bytes of a figure that the text at a path names; null where they were not given. */
export function figureIn({ snapshot }: Workspace): (from: string, named: string) => Uint8Array | null {
  return (from, named) => snapshot.bytes?.get(resolveUse(from, named) ?? "") ?? null;
}
