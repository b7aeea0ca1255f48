// names.outside-workspace: a path that is absolute, leaves the workspace, or leads to no file.
import type { Span } from "#syntax/span.ts";
import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const outsideWorkspace = rule({
  code: "names.outside-workspace",
  severity: "error",
  about: "outside workspace",
  page: {
    finds:
      "A path of a “use” or “figure” line, or of an arrangement, that begins at the root of a disk, leads out of the workspace, or leads to no file. Paths are relative to the file they stand in and are written with “/”.",
    why: "A procedure must mean the same on every machine. A file outside the workspace is on one of them only.",
    fails: 'use "../tools.sprag"\n\npart Cover "bearing cover"\n',
    mended: 'use "shop/tools.sprag"\n\npart Cover "bearing cover"\n',
    files: { "shop/tools.sprag": 'tool Puller "bearing puller"\n' },
  },
  say: ({ path, why, span }) =>
    why === "absent" && hasBackslash(path, span)
      ? { message: "Folders in a path are parted by “/”, not by “\\”.", remedy: "Write “/” in place of “\\”." }
      : { ...SAYINGS[why], message: `${quoted(path)} ${SAYINGS[why].message}` },
});

/** In a text a backslash takes the sign behind it as it stands: what is said is shorter than what is written between the quotes. */
function hasBackslash(path: string, { start, end }: Span): boolean {
  return path.includes("\\") || (path !== "" && end - start > path.length + 2);
}

const SAYINGS = {
  absolute: {
    message: "begins at the root of a disk.",
    why: "The path would be right on one machine only.",
    remedy: "Write the path from this file, with “/”, inside the workspace folder.",
  },
  leaves: {
    message: "leads out of the workspace folder.",
    why: "What lies outside may not be there on another machine.",
    remedy: "Move the file into the workspace, and write the path from this file, with “/”.",
  },
  absent: {
    message: "is not there.",
    why: "No file of the workspace has this path, seen from this file.",
    remedy: "Correct the path, or add the file.",
  },
} as const;
