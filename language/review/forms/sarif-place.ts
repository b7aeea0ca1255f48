// What all logs in SARIF 2.1.0 have in common: their head, and places in files. Knows no change and no finding.
import type { Range } from "#syntax/lines.ts";

export const SARIF_HEAD = { $schema: "https://json.schemastore.org/sarif-2.1.0.json", version: "2.1.0" } as const;

/** How columns are counted. */
export const COLUMN_KIND = "utf16CodeUnits";

/** @param path relative to the root, parted by `/` */
export function locationOf(path: string, range: Range) {
  return { physicalLocation: { artifactLocation: artifactOf(path), region: regionOf(range) } };
}

export function artifactOf(path: string) {
  return { uri: path.split("/").map(encodeURIComponent).join("/") };
}

/** Lines and columns count from 1, and the last column is behind the place. */
export function regionOf({ start, end }: Range) {
  const [startLine, startColumn] = [start.line + 1, start.character + 1];
  return { startLine, startColumn, endLine: end.line + 1, endColumn: end.character + 1 };
}
