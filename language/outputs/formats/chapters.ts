// What stands before and after the work, as chapters of a few forms that each paged format draws: the same content and columns in
// all of them. Knows the document only.
import {
  type ArrangementBlock,
  type Cell,
  type Document,
  FINDINGS_LANGUAGE,
  type Signal,
  type StockLine,
  type TableBlock,
} from "../document.ts";
import type { CircleFigure } from "../drawings/circle-figure.ts";
import type { Words } from "../words/en.ts";

/** Text of one look; a new line in it begins a new line. */
export interface Span {
  readonly text: string;
  readonly bold?: boolean;
  /** `#rrggbb` */
  readonly colour?: string;
}

export interface Chapter {
  readonly title: string;
  readonly body: readonly Passage[];
}

export type Passage =
  | ({ readonly kind: "table" } & TableContent)
  | { readonly kind: "signals"; readonly signals: readonly Signal[] }
  | { readonly kind: "bullets"; readonly texts: readonly string[] }
  | { readonly kind: "ticks"; readonly texts: readonly string[] }
  | { readonly kind: "remark"; readonly text: string }
  | { readonly kind: "figure"; readonly figure: CircleFigure };

/** The first cell of each row is its heading. */
export interface TableContent {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly CellContent[])[];
}

export interface Column {
  readonly title: string;
  /** Of the width, beside those of the others. */
  readonly share: number;
  /** Of its texts, where it is not that of the document. */
  readonly language?: string;
  /** Its texts are whole numbers. */
  readonly counts?: boolean;
}

/** Text, a box to tick, or room to write. */
export type CellContent = readonly Span[] | "box" | "line";

/** Ahead of the work; chapters that would be empty are not there. */
export function chaptersBefore(document: Document, words: Words): readonly Chapter[] {
  const { labels } = words;
  return [
    ...findings(document, words),
    ...(document.signals.length === 0
      ? []
      : [{ title: labels.keyToSignals, body: [{ kind: "signals" as const, signals: document.signals }] }]),
    ...listed(labels.cautions, "bullets", document.cautions),
    ...tools(document, words),
    ...parts(document, words),
    ...consumables(document, words),
    ...document.arrangements.map((block) => arrangement(block, words)),
    ...listed(labels.beforeStart, "ticks", document.start),
  ];
}

/** Behind the work. */
export function chaptersAfter({ end }: Document, { labels }: Words): readonly Chapter[] {
  return listed(labels.atTheEnd, "ticks", end);
}

/** A table of a document, with columns as wide as their texts want. */
export function tableContent({ columns, rows }: TableBlock): TableContent {
  return {
    columns: columns.map((title, at) => ({
      title,
      // The first cell is bold and often a number of several levels, which is not parted.
      share: Math.max(9, title.length, ...rows.map(({ cells }) => lengthOf(cells[at]) * (at === 0 ? WIDER : 1))),
      counts: rows.some(({ cells }) => typeof cells[at] === "number"),
    })),
    rows: rows.map(({ cells, grave = false }) =>
      cells.map((cell, at) =>
        typeof cell === "object" ? cell.fill : [{ text: String(cell), bold: at === 0 || grave }],
      ),
    ),
  };
}

const WIDER = 1.5;

/** In letters, within bounds: a longer text is broken into lines. */
function lengthOf(cell: Cell | undefined): number {
  if (typeof cell !== "object") return Math.min(44, String(cell ?? "").length);
  return cell.fill === "line" ? 26 : 8;
}

function listed(title: string, kind: "bullets" | "ticks", texts: readonly string[]): readonly Chapter[] {
  return texts.length === 0 ? [] : [{ title, body: [{ kind, texts }] }];
}

/** A chapter with a table; none where there are no rows. */
function tabled(
  title: string,
  columns: readonly (readonly [title: string, share: number, more?: Pick<Column, "language" | "counts">])[],
  rows: TableContent["rows"],
  remarks: readonly string[] = [],
): readonly Chapter[] {
  if (rows.length === 0) return [];
  const table: Passage = {
    kind: "table",
    columns: columns.map(([name, share, more]) => ({ title: name, share, ...more })),
    rows,
  };
  return [{ title, body: [table, ...remarks.map((text): Passage => ({ kind: "remark", text }))] }];
}

function findings({ head }: Document, { labels, head: { findingsLanguage } }: Words): readonly Chapter[] {
  const found = tabled(
    head.findings.some(({ error }) => error) ? labels.errors : labels.findings,
    [
      [labels.severity, 14],
      [labels.code, 22],
      [labels.place, 16],
      findingsLanguage === "" ? [labels.message, 48] : [labels.message, 48, { language: FINDINGS_LANGUAGE }],
    ],
    head.findings.map(({ severity, code, place, message, why, remedy }) => [
      ...[severity, code, place].map(plain),
      [
        { text: message, bold: true },
        ...[why, remedy].flatMap((text) => (text === null ? [] : [{ text: `\n${text}` }])),
      ],
    ]),
  );
  const notice: readonly Passage[] = findingsLanguage === "" ? [] : [{ kind: "remark", text: findingsLanguage }];
  return [
    ...found.map((chapter) => ({ ...chapter, body: [...notice, ...chapter.body] })),
    ...tabled(
      labels.allowed,
      [
        [labels.code, 26],
        [labels.place, 18],
        [labels.reason, 38],
        [labels.by, 18],
      ],
      head.allows.map(({ code, place, reason, by }) => [code, place, reason, by ?? ""].map(plain)),
    ),
  ];
}

function tools({ tools: rows, stockNotes }: Document, words: Words): readonly Chapter[] {
  const { labels, lists, stock } = words;
  const hasStock = stockNotes.length > 0;
  const orNone = (texts: readonly string[]): CellContent => lines(texts.length === 0 ? [lists.noRequirement] : texts);
  return tabled(
    labels.tools,
    [[labels.tool, 26], [labels.asked, 26], [labels.used, 26], ...(hasStock ? [[stock.heading, 38] as const] : [])],
    rows.map((tool) => [
      named(tool),
      orNone(tool.asked),
      orNone([...tool.lifts, ...tool.used]),
      ...(hasStock ? [stockSpans(tool.stock ?? [], words)] : []),
    ]),
    stockNotes,
  );
}

/** An item by its label, and below it what it is set to. */
function stockSpans(items: readonly StockLine[], { stock, comma }: Words): CellContent {
  if (items.length === 0) return plain(stock.none);
  return items.flatMap(({ label, remarks, settings }, at) => [
    { text: `${at === 0 ? "" : "\n"}${label}`, bold: true },
    ...(remarks.length === 0 ? [] : [{ text: ` ${comma(remarks)}` }]),
    ...settings.map((setting) => ({ text: `\n${setting}` })),
  ]);
}

function parts({ parts: rows }: Document, { labels }: Words): readonly Chapter[] {
  return tabled(
    labels.parts,
    [
      [labels.part, 44],
      [labels.count, 14, { counts: true }],
      [labels.remarks, 42],
    ],
    rows.map((part) => [named(part), plain(String(part.count)), lines(part.remarks)]),
  );
}

function consumables({ consumables: rows }: Document, { labels }: Words): readonly Chapter[] {
  return tabled(
    labels.consumables,
    [
      [labels.consumable, 50],
      [labels.amount, 50],
    ],
    rows.map((one) => [named(one), lines(one.amounts)]),
  );
}

function arrangement(block: ArrangementBlock, { arrangement: say, comma }: Words): Chapter {
  const limit = block.limits.length === 0 ? say.noLimit : comma(block.limits);
  const table = tabled(
    block.title,
    [
      [say.position, 20],
      [say.serialNumber, 45],
      [block.measure, 35],
    ],
    block.rows.map(({ position, serial, weight }) => [position, serial, weight].map(plain)),
  );
  return {
    title: block.title,
    body: [
      ...(block.view === null ? [] : [{ kind: "remark" as const, text: block.view }]),
      ...(block.figure === null ? [] : [{ kind: "figure" as const, figure: block.figure }]),
      ...table.flatMap(({ body }) => body),
      { kind: "bullets", texts: [`${say.residual}: ${block.residual}`, `${say.limit}: ${limit}`] },
      { kind: "remark", text: block.caution },
    ],
  };
}

/** A title, and below it the name by which the procedure's text knows it. */
function named({ title, name }: { readonly title: string; readonly name: string }): CellContent {
  return [
    { text: title, bold: true },
    { text: `\n${name}`, colour: "#444444" },
  ];
}

function plain(text: string): CellContent {
  return [{ text }];
}

function lines(texts: readonly string[]): CellContent {
  return plain(texts.join("\n"));
}
