// The sample folder as the one workspace it is: its texts, what else lies there, and checks of it with some texts
// replaced. With check.ts the only place where tests touch the façade.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import type { ReportedFinding } from "#workspace/report.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import { readMarks } from "./marks.ts";

const folder = join(import.meta.dirname, "..", "..", "samples");
const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"))
  .filter((path) => !path.startsWith("out/"))
  .sort();

/** Text by path from the sample folder, as it stands on disk. */
export const sampleTexts: ReadonlyMap<string, string> = new Map(
  paths.filter((path) => path.endsWith(".sprag")).map((path) => [path, readFileSync(join(folder, path), "utf8")]),
);

/** The same with the marks of faulty samples taken out. */
export const plainTexts: ReadonlyMap<string, string> = new Map(
  [...sampleTexts].map(([path, text]) => [path, readMarks(text)[0]?.text ?? text]),
);

/** The tables that arrangements name. */
export const tables: ReadonlyMap<string, string> = new Map(
  paths.filter((path) => path.endsWith(".csv")).map((path) => [path, readFileSync(join(folder, path), "utf8")]),
);

export const isFaulty = (path: string): boolean => path.startsWith("faulty/");
/** The procedures of the shop: what a newcomer reads. */
export const isShopProcedure = (path: string): boolean => !path.includes("/");

/**
 * The samples, with these texts in place of or beside their own.
 * @param only the files that count, where not all do
 */
export function openSamples(
  changed: ReadonlyMap<string, string> = new Map(),
  only: readonly string[] = [...plainTexts.keys()],
  before?: Workspace,
): Workspace {
  const texts = new Map([...only.map((path) => [path, plainTexts.get(path) ?? ""] as const), ...tables, ...changed]);
  const present = new Set(paths.filter((path) => !path.endsWith(".sprag")));
  return openWorkspace({ texts, present, absent: new Set(), today: "2026-05-04" }, before);
}

/** The findings in these files, each with its path. */
export function findingsAt(workspace: Workspace, files: readonly string[]): readonly PlacedFinding[] {
  return workspace.check(files).files.flatMap(({ path, findings }) => findings.map((finding) => ({ path, finding })));
}

export interface PlacedFinding {
  readonly path: string;
  readonly finding: ReportedFinding;
}
