// The order of work as one HTML file: which document it is, the drawing, its key. Knows the document only.
import { raw } from "hono/html";
import { markup } from "../checklist/html-markup.ts";
import type { Document } from "../document.ts";
import { foundRows } from "../head-rows.ts";
import type { Words } from "../words/en.ts";
import { drawing } from "./svg.ts";

/** The whole file. Same document, same bytes. */
export function diagramHtml(document: Document, words: Words): string {
  const { diagram, labels } = words;
  const { head, title, draft } = document;
  const name = diagram.title(title);
  return markup`<!doctype html>
<html lang="${words.language}" dir="${words.direction}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<title>${draft ? `${labels.draft} · ` : ""}${head.page} · ${name}</title>
<style>${raw(STYLE)}</style>
</head>
<body>
<h1>${name}</h1>
<p>${draft ? markup`<strong>${labels.draft}</strong> ${labels.draftMeaning} ` : ""}${head.page}</p>
<dl>${head.facts.map(({ label, values }) => markup`<div><dt>${label}</dt><dd>${words.comma(values)}</dd></div>`)}</dl>
${foundRows(document, words).map(({ label, text }) => markup`<p class="found"><strong>${label}:</strong> ${text}</p>`)}
${document.cautions.map((caution) => markup`<p class="caution">${caution}</p>`)}
<h2>${diagram.key}</h2>
<ul class="key"><li><i class="step"></i>${diagram.step}</li><li><i class="critical"></i>${diagram.critical}</li><li><i class="hold"></i>${diagram.holdPoint}</li><li><i class="back"></i>${diagram.back}</li></ul>
<main>${drawing(document, words)}</main>
</body>
</html>
`.toString();
}

const STYLE = `body { font: 16px/1.4 sans-serif; color: #111; background: #fff; margin: 1rem auto; max-width: 70rem; padding: 0 1rem; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(16rem, 1fr)); gap: .3rem 1rem; }
dt { font-size: .85rem; color: #444; } dd { margin: 0; overflow-wrap: anywhere; }
.caution, .found { margin: .2rem 0; font-size: .92rem; }
main { overflow-x: auto; }
.key { list-style: none; display: flex; flex-wrap: wrap; gap: .3rem 1.5rem; padding: 0; }
.key i { display: inline-block; width: 2rem; height: 1rem; vertical-align: -.15rem; margin-inline-end: .5rem; border: 1px solid #333; }
.key .critical { border-width: 3px; } .key .hold { background: #111; } .key .back { border: 0; border-top: 2px dashed #a00; height: .3rem; }
@media print { main { overflow: visible; } main svg { max-width: 100%; height: auto; } }
`;
