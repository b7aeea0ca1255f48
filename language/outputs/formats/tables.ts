// The tables that a document holds, for a workbook: its lists, what is marked in it, and what it is. Knows no format.
import type { Block, Document, TableBlock } from "../document.ts";
import { headRows } from "../head-rows.ts";
import type { Table, TableValue } from "../table.ts";
import type { Words } from "../words/en.ts";
import { type CellContent, type Column, chaptersBefore, type TableContent, tableContent } from "./chapters.ts";

/** What is marked comes first, what the document says of itself last. */
export function tablesIn(document: Document, words: Words): readonly Table[] {
  const lists = chaptersBefore(document, words).flatMap(({ title, body }) =>
    body.flatMap((passage) => (passage.kind === "table" ? [tableOf(title, passage)] : [])),
  );
  const head = headRows(document, words).map(({ label, text }) => [label, text]);
  const own: Table = { title: words.labels.document, columns: [words.table.kind, words.table.text], rows: head };
  return [...document.blocks.flatMap((block) => tablesAt(block, document.title)), ...lists, own];
}

/** @param title of what it stands in */
function tablesAt(block: Block, title: string): readonly Table[] {
  if (block.kind === "table") return [marked(block, title)];
  if (block.kind === "section") return block.blocks.flatMap((inner) => tablesAt(inner, block.title));
  return block.kind === "group" ? block.blocks.flatMap((inner) => tablesAt(inner, title)) : [];
}

/** What is said below it stands in rows of its own. */
function marked(block: TableBlock, title: string): Table {
  const { rows, ...rest } = tableOf(block.title ?? title, tableContent(block));
  const blank = block.columns.slice(1).map(() => "");
  return { ...rest, rows: [...rows, ...block.notes.map((note) => [note, ...blank])] };
}

function tableOf(title: string, { columns, rows }: TableContent): Table {
  return {
    title,
    columns: columns.map((column) => column.title),
    rows: rows.map((cells) => cells.map((cell, at) => valueIn(columns[at], cell))),
  };
}

function valueIn(column: Column | undefined, cell: CellContent): TableValue {
  const text = typeof cell === "string" ? "" : cell.map(({ text }) => text).join("");
  return column?.counts === true && text !== "" ? Number(text) : text;
}
