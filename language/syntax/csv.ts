// Comma-separated values as spreadsheets write them: RFC 4180, and also semicolons or tabs between the cells. Reads and writes
// cells; knows no columns.

export interface Csv {
  /** What stands between two cells. */
  readonly separator: string;
  /** How its lines end. */
  readonly lineEnd: "\n" | "\r\n";
  readonly records: readonly CsvRecord[];
  /** The line, from 1, of a quotation mark that nothing closes; null where all are closed. */
  readonly unclosed: number | null;
}

export interface CsvRecord {
  /** Where it begins, from 1. */
  readonly line: number;
  /** Without the blanks round them. */
  readonly cells: readonly string[];
}

/**
 * The records of a text; lines with nothing in them are left out. The separator is the one of `,`, `;` and tab that stands most
 * often in the first line, unless a line `sep=;` names it. A mark before a `=`, `+`, `-` or `@` that {@link csvLine} put there goes.
 */
export function readCsv(text: string): Csv {
  const plain = text.startsWith("\ufeff") ? text.slice(1) : text;
  const named = /^sep=([,;\t])(?:\r\n|\n|\r|$)/i.exec(plain);
  const body = named === null ? plain : plain.slice(named[0].length);
  const separator = named?.[1] ?? likelySeparator(body);
  const { records, unclosed } = recordsOf(body, separator, named === null ? 1 : 2);
  return { separator, lineEnd: /\r\n/.test(plain) ? "\r\n" : "\n", records, unclosed };
}

/** One line without its end. Cells that a spreadsheet would take for a formula get a mark, others are quoted where they have to be. */
export function csvLine(cells: readonly string[], separator: string): string {
  return cells
    .map((cell) => {
      const safe = FORMULA.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
      return safe.includes(separator) || /["\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
    })
    .join(separator);
}

const FORMULA = /^[=+\-@\t\r]/;
const MARKED = /^'(?=[=+\-@])/;
const PLAIN_NUMBER = /^[+-]?\d+(?:[.,]\d+)?$/;

function likelySeparator(text: string): string {
  const first = /^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(text.trimStart())?.[0] ?? "";
  const bare = first.replace(/"(?:[^"]|"")*"/g, "");
  const counts = [",", ";", "\t"].map((sign) => ({ sign, count: bare.split(sign).length }));
  return counts.reduce((best, next) => (next.count > best.count ? next : best)).sign;
}

function recordsOf(text: string, separator: string, firstLine: number): Pick<Csv, "records" | "unclosed"> {
  const records: CsvRecord[] = [];
  let [line, begun, quoteLine] = [firstLine, firstLine, firstLine];
  let cells: string[] = [];
  let [cell, quoted, inQuotes] = ["", false, false];
  const endCell = (): void => {
    cells.push((quoted ? cell : cell.trim()).replace(MARKED, ""));
    [cell, quoted] = ["", false];
  };
  const endRecord = (): void => {
    endCell();
    if (cells.some((one) => one !== "")) records.push({ line: begun, cells });
    cells = [];
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] ?? "";
    const isEnd = sign === "\n" || sign === "\r";
    const end = sign === "\r" && text[at + 1] === "\n" ? "\r\n" : sign;
    if (isEnd) {
      at += end.length - 1;
      line++;
    }
    if (inQuotes) {
      if (sign !== '"') cell += isEnd ? end : sign;
      else if (text[at + 1] === '"') cell += text[at++];
      else inQuotes = false;
    } else if (sign === '"' && cell.trim() === "" && !quoted) {
      [cell, quoted, inQuotes, quoteLine] = ["", true, true, line];
    } else if (sign === separator) endCell();
    else if (isEnd) {
      endRecord();
      begun = line;
    } else if (!quoted || sign.trim() !== "") cell += sign;
  }
  endRecord();
  return { records, unclosed: inQuotes ? quoteLine : null };
}
