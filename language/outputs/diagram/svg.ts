// The order of work as SVG: read downwards, each box with the id of its step for links. All text is escaped; nothing is loaded.
// Knows the document only.
import { type Markup, markup, nothing } from "../checklist/html-markup.ts";
import type { Document } from "../document.ts";
import { type HeadRow, headRows } from "../head-rows.ts";
import type { Words } from "../words/en.ts";
import { legalXml } from "../xml.ts";
import { graphOf } from "./graph.ts";
import { LINE, type Placed, type PlacedBox, type PlacedWay, type Point, placed, type Rectangle } from "./layout.ts";
import { linesOf } from "./text-size.ts";

/** The whole file. Same document, same bytes. */
export function diagramSvg(document: Document, words: Words): string {
  return legalXml(`<?xml version="1.0" encoding="UTF-8"?>\n${drawing(document, words, headRows(document, words))}\n`);
}

/** The drawing, for a page. @param below what the document says of itself, where nothing else beside the drawing says it */
export function drawing(document: Document, words: Words, below: readonly HeadRow[] = []): Markup {
  const all = placed(graphOf(document, words));
  const width = Math.max(Math.ceil(all.width), below.length === 0 ? 0 : NARROWEST);
  const top = Math.ceil(all.height);
  const lines = below.flatMap(({ label, text }, row) =>
    linesOf(below[row - 1]?.label === label ? text : `${label}: ${text}`, Math.floor((width - 2 * MARGIN) / SIGN)),
  );
  const height = top + (lines.length === 0 ? 0 : lines.length * LINE + MARGIN);
  const title = words.diagram.title(document.title);
  const name = document.draft ? `${words.labels.draft} · ${title}` : title;
  return markup`<svg xmlns="http://www.w3.org/2000/svg" class="order" role="img" aria-label="${name}" lang="${words.language}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">
<title>${name}</title>
<style>${STYLE}</style>
<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="8" markerHeight="8" orient="auto"><path d="M0 0L8 4L0 8z"/></marker></defs>
${framesSvg(all)}
${all.ways.map(waySvg)}
${all.boxes.map(boxSvg)}
${lines.map((line, index) => markup`<text class="about" x="${MARGIN}" y="${top + (index + 0.5) * LINE}">${line}</text>`)}
${document.draft ? markup`<text class="draft" x="${width / 2}" y="${top / 2}">${words.labels.draft}</text>` : nothing}
</svg>`;
}

/** Pixels: of what stands below the drawing. */
const NARROWEST = 560;
const MARGIN = 16;
/** A sign of it, on the wide side. */
const SIGN = 7.2;

const STYLE =
  "svg.order{background:#fff;font:14px 'DejaVu Sans',Verdana,sans-serif;color:#111}" +
  ".order rect,.order path.box{fill:#fff;stroke:#333;stroke-width:1.2}" +
  ".order .frame{fill:#0000000a;stroke:#999;stroke-dasharray:5 4}" +
  ".order text{fill:#111;text-anchor:middle;dominant-baseline:central}" +
  ".order .heading text{font-weight:700}.order .heading rect{fill:none;stroke:none}" +
  ".order .critical rect{stroke-width:3}" +
  ".order .hold rect{fill:#111}.order .hold text{fill:#fff;font-weight:700}" +
  ".order .stop rect{stroke:#a00;stroke-width:3}" +
  ".order .way{fill:none;stroke:#333;stroke-width:1.4;marker-end:url(#tip)}" +
  ".order .back{stroke:#a00;stroke-dasharray:6 4}" +
  ".order .label text{font-size:13px;font-style:italic;paint-order:stroke;stroke:#fff;stroke-width:5px;stroke-linejoin:round}" +
  ".order .about{font-size:12px;text-anchor:start}" +
  ".order .draft{font-size:120px;font-weight:700;fill:#a00;opacity:.12}";

function framesSvg({ frames }: Placed): readonly Markup[] {
  return frames.map((frame) => markup`<rect class="frame" ${corner(frame)} rx="8"/>`);
}

function boxSvg({ box, lines, ...place }: PlacedBox): Markup {
  const { id, kind, critical } = box;
  const step = kind === "step" ? markup` data-step="${id.slice("box-".length)}"` : nothing;
  return markup`<g class="${kind}${critical ? " critical" : ""}" id="${id}"${step}>${shapeOf(box.kind, place)}${textSvg(lines, place)}</g>`;
}

function shapeOf(kind: PlacedBox["box"]["kind"], place: Rectangle): Markup {
  const { x, y, width, height } = place;
  if (kind === "parting") {
    const [w, h] = [width / 2, height / 2];
    return markup`<path class="box" d="M${at(x)} ${at(y - h)}L${at(x + w)} ${at(y)}L${at(x)} ${at(y + h)}L${at(x - w)} ${at(y)}z"/>`;
  }
  const round = kind === "start" || kind === "end" ? height / 2 : kind === "step" ? 4 : 0;
  return markup`<rect ${corner(place)} rx="${at(round)}"/>`;
}

function waySvg({ way, points, lines, label }: PlacedWay): Markup {
  const path = markup`<path class="way${way.back ? " back" : ""}" d="${pathOf(points)}"/>`;
  if (label === null) return path;
  const size = { ...label, width: 0, height: 0 };
  return markup`${path}<g class="label">${textSvg(lines, size)}</g>`;
}

/** Round where it turns: through the middles between its points. */
function pathOf(points: readonly Point[]): string {
  const [first, ...more] = points;
  if (first === undefined) return "";
  let path = `M${at(first.x)} ${at(first.y)}`;
  more.forEach((point, index) => {
    const next = more[index + 1];
    if (next === undefined) path += `L${at(point.x)} ${at(point.y)}`;
    else path += `Q${at(point.x)} ${at(point.y)} ${at((point.x + next.x) / 2)} ${at((point.y + next.y) / 2)}`;
  });
  return path;
}

function textSvg(lines: readonly string[], { x, y }: Point): readonly Markup[] {
  const top = y - ((lines.length - 1) * LINE) / 2;
  return lines.map((line, index) => markup`<text x="${at(x)}" y="${at(top + index * LINE)}">${line}</text>`);
}

function corner({ x, y, width, height }: Rectangle): Markup {
  return markup`x="${at(x - width / 2)}" y="${at(y - height / 2)}" width="${at(width)}" height="${at(height)}"`;
}

/** To a tenth of a pixel. */
function at(value: number): number {
  return Math.round(value * 10) / 10;
}
