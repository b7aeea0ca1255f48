// A drawing of numbered places as SVG text: lines and letters in the colour of the text round it, so that it can be read on a light
// and on a dark ground and on paper. Pure; knows no document.
import type { CircleFigure } from "./circle-figure.ts";
import { DISC, laidOut, type Place, round } from "./circle-layout.ts";

/** One `svg` element. Same figure, same text. Numbers never touch each other, up to 60 places. */
export function circleSvg(figure: CircleFigure): string {
  const { title, text } = figure;
  const { width, height, scale, places, ring } = laidOut(figure);
  const size = `width="${round(width * scale)}" height="${round(height * scale)}" viewBox="0 0 ${round(width)} ${round(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="places" role="img" aria-label="${escaped(`${title}. ${text}`.trim())}" ${size} fill="none" stroke="currentColor" stroke-width="1.2" font-family="system-ui, sans-serif" text-anchor="middle">`,
    `<title>${escaped(title)}</title>`,
    ...(ring === null
      ? []
      : [`<circle cx="${round(ring.x)}" cy="${round(ring.y)}" r="${round(ring.radius)}" stroke-dasharray="2 3"/>`]),
    ...places.map(placeSvg),
    "</svg>",
  ].join("");
}

/** A position in its disc; the first to be done stands out. The ground of the page hides the line beneath. */
function placeSvg({ position, order, x, y, orderX, orderY }: Place): string {
  const isFirst = order === 1;
  const disc = `<circle cx="${round(x)}" cy="${round(y)}" r="${DISC}" style="fill:Canvas" stroke-width="${isFirst ? 3 : 1.2}"/>`;
  const number = letters(String(position), x, y, 12, 700);
  const turn = order === null ? "" : letters(`${order}.`, orderX, orderY, 11, 400);
  return `<g data-place="${position}">${disc}${number}${turn}</g>`;
}

function letters(text: string, x: number, y: number, size: number, weight: number): string {
  // 0.36 of the size below the middle: half the height of a figure.
  return `<text x="${round(x)}" y="${round(y + size * 0.36)}" font-size="${size}" font-weight="${weight}" fill="currentColor" stroke="none">${text}</text>`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
