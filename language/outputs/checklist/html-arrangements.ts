// Who goes where on a ring, and drawings of numbered places, in the HTML checklist. Knows the document only.
import { raw } from "hono/html";
import type { ArrangementBlock } from "../document.ts";
import type { CircleFigure } from "../drawings/circle-figure.ts";
import { circleSvg } from "../drawings/circle-svg.ts";
import type { Words } from "../words/en.ts";
import { type Markup, markup, nothing } from "./html-markup.ts";

export function figureHtml(figure: CircleFigure): Markup {
  return markup`<figure class="circle">${raw(circleSvg(figure)) as Markup}<figcaption class="source">${figure.legend}</figcaption></figure>`;
}

export function arrangementHtml(block: ArrangementBlock, { arrangement, comma }: Words): Markup {
  const { title, view, measure, rows, residual, limits, caution, figure } = block;
  const cells = rows.map(
    ({ position, serial, weight }) =>
      markup`<tr><th scope="row">${position}</th><td class="serial">${serial}</td><td class="value">${weight}</td></tr>`,
  );
  const facts = [
    [arrangement.residual, residual],
    [arrangement.limit, limits.length === 0 ? arrangement.noLimit : comma(limits)],
  ].map(([label, value]) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`);
  return markup`<section class="arrangement"><h2>${title}</h2>
${view === null ? nothing : markup`<p>${view}</p>`}<div class="ring">${figure === null ? nothing : figureHtml(figure)}
<table><thead><tr><th scope="col">${arrangement.position}</th><th scope="col">${arrangement.serialNumber}</th><th scope="col">${measure}</th></tr></thead><tbody>${cells}</tbody></table></div>
<dl class="facts">${facts}</dl>
<p class="source">${caution}</p></section>`;
}
