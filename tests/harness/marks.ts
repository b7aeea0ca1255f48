// Sprag texts with marks: a comment with carets under the exact place names the code that is to be found there. Reads and
// writes marks; does not check anything.

/*
 *   step lubricate Bearing with Grease
 *   //   ^^^^^^^^^^^^^^^^^ order.enclosed        also: `… order.retained warning`, `… order.enclosed allowed`
 *
 * A line `// file: shop/tools.sprag` begins another file; what stands before the first is `main.sprag`.
 */

export interface Mark {
  /** From 0, in the text without marks. */
  readonly line: number;
  readonly character: number;
  /** To the end of the line for a place that goes on. */
  readonly length: number;
  readonly code: string;
  /** `warning`, `allowed`: looked at only where the mark says so. */
  readonly remarks: readonly string[];
}

export interface MarkedFile {
  readonly path: string;
  readonly text: string;
  readonly marks: readonly Mark[];
}

const FILE = /^\/\/ file: (\S+)\s*$/;
const MARK = /^(\s*\/\/\s*)(\^+)\s+([a-z]+\.[a-z-]+)((?: [a-z]+)*)\s*$/;

export function readMarks(source: string): readonly MarkedFile[] {
  const files: { path: string; lines: string[]; marks: Mark[] }[] = [{ path: "main.sprag", lines: [], marks: [] }];
  for (const line of source.split("\n")) {
    const begun = FILE.exec(line)?.[1];
    const file = files[files.length - 1];
    if (begun !== undefined) files.push({ path: begun, lines: [], marks: [] });
    else if (file !== undefined) takeLine(file, line);
  }
  return files
    .filter(({ lines }, at) => at > 0 || lines.some((line) => line.trim() !== ""))
    .map(({ path, lines, marks }) => ({ path, text: lines.join("\n"), marks }));
}

function takeLine(file: { lines: string[]; marks: Mark[] }, line: string): void {
  const [, before, carets, code, remarks] = MARK.exec(line) ?? [];
  if (before === undefined || carets === undefined || code === undefined) {
    file.lines.push(line);
    return;
  }
  const place = { line: file.lines.length - 1, character: before.length, length: carets.length };
  file.marks.push({ ...place, code, remarks: (remarks ?? "").split(" ").filter((word) => word !== "") });
}

/** The text with its marks put in again, in the order of their places. */
export function writeMarks({ path, text, marks }: MarkedFile): string {
  const lines = text.split("\n");
  const ordered = [...marks].sort(
    (a, b) => a.character - b.character || a.length - b.length || (a.code < b.code ? -1 : 1),
  );
  const marked = lines.flatMap((line, at) => [line, ...ordered.filter((mark) => mark.line === at).map(markText)]);
  return [`// file: ${path}`, ...marked].join("\n");
}

function markText({ character, length, code, remarks }: Mark): string {
  const carets = "^".repeat(length);
  // Where the sign of the comment would cover the place, it stands behind it.
  const place = character < 2 ? `${" ".repeat(character)}${carets} //` : `//${" ".repeat(character - 2)}${carets}`;
  return [place, code, ...remarks].join(" ");
}
