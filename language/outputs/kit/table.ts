// A kit list as one table: rows that say what it is, then a row for each tool, part and consumable. Knows no format.
import type { Document } from "../document.ts";
import { headRows } from "../head-rows.ts";
import { stockText } from "../stock.ts";
import type { Table } from "../table.ts";
import type { Words } from "../words/en.ts";

export function kitTable(document: Document, words: Words): Table {
  const { title, tools, parts, consumables } = document;
  const { labels, table, stock } = words;
  const head = headRows(document, words);
  return {
    title,
    columns: [
      table.kind,
      table.text,
      labels.nameInText,
      labels.count,
      labels.amount,
      labels.remarks,
      labels.used,
      stock.heading,
    ],
    rows: [
      ...head.map(({ label, text }) => [label, text, "", "", "", "", "", ""]),
      ...tools.map((tool) => [
        labels.tool,
        tool.title,
        tool.name,
        1,
        "",
        tool.asked.join("; "),
        [...tool.lifts, ...tool.used].join("; "),
        tool.stock === null ? "" : stockText(tool.stock, words),
      ]),
      ...parts.map((part) => [labels.part, part.title, part.name, part.count, "", part.remarks.join("; "), "", ""]),
      ...consumables.map((one) => [labels.consumable, one.title, one.name, "", one.amounts.join("; "), "", "", ""]),
    ],
  };
}
