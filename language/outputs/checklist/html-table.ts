// Tables that are part of the work: what an assessor marks, the answers of a trainee. Knows the document only.
import type { Cell, TableBlock } from "../document.ts";
import { type Markup, markup, nothing } from "./html-markup.ts";

/** @param heading puts the title in its level */
export function tableBlockHtml(block: TableBlock, heading: (title: Markup) => Markup): Markup {
  const { title, columns, rows, notes } = block;
  const heads = columns.map((column) => markup`<th scope="col">${column}</th>`);
  const body = rows.map(({ cells, grave }) => {
    const [first = ""] = cells;
    const label = typeof first === "object" ? "" : first;
    return markup`<tr${grave === true ? markup` class="grave"` : nothing}>${cells.map((cell, at) => cellHtml(cell, at, `${label} ${columns[at] ?? ""}`))}</tr>`;
  });
  return markup`<section class="table">
${title === null ? nothing : heading(markup`${title}`)}
<table><thead><tr>${heads}</tr></thead><tbody>${body}</tbody></table>
${notes.map((note) => markup`<p>${note}</p>`)}
</section>
`;
}

function cellHtml(cell: Cell, at: number, name: string): Markup {
  if (typeof cell === "object") {
    return cell.fill === "box"
      ? markup`<td class="mark"><label class="tick small"><input type="checkbox" aria-label="${name}"></label></td>`
      : markup`<td class="blank"><input type="text" aria-label="${name}"></td>`;
  }
  return at === 0 ? markup`<th scope="row">${cell}</th>` : markup`<td>${cell}</td>`;
}
