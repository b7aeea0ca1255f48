// The look of the HTML checklist on a tablet and on paper. Colours are those of ANSI Z535.6 / ISO 3864-2, each with a text
// colour of at least 4.5 to 1. Knows no blocks.
import type { Document } from "../document.ts";
import { signalColours } from "../signal-colours.ts";
import type { Words } from "../words/en.ts";
import { FILLING, FILLING_PRINT } from "./html-style-filling.ts";

/** The style sheet; the head of every printed page names the document, and says DRAFT where it is one. */
export function styleSheet(document: Document, words: Words): string {
  const left = document.draft ? `${words.labels.draft} · ${document.head.page}` : document.head.page;
  const right = document.draft ? words.labels.draft : words.head.uncontrolled;
  return `${SCREEN}${document.record === null ? "" : FILLING}
@page { size: A4; margin: 20mm 14mm 16mm;
  @top-left { content: ${cssString(cut(left, 60))}; font-size: 9pt; }
  @top-right { content: ${cssString(cut(document.title, 140))}; font-size: 9pt; }
  @bottom-left { content: ${cssString(right)}; }
  @bottom-right { content: counter(page) " / " counter(pages); }
}
${document.draft ? `body.draft::before { content: ${cssString(words.labels.draft)}; }\n${DRAFT}` : ""}${PRINT}${document.record === null ? "" : FILLING_PRINT}`;
}

/** As much as the head of a page has room for, without growing over the page. */
function cut(text: string, most: number): string {
  const signs = [...text];
  return signs.length <= most ? text : `${signs.slice(0, most).join("")}…`;
}

/** A text as a CSS string that can end neither the string nor the style element. */
function cssString(text: string): string {
  return `"${[...text].map((character) => (SAFE.test(character) ? character : `\\${(character.codePointAt(0) ?? 0).toString(16)} `)).join("")}"`;
}

const SAFE = /^[A-Za-z0-9 .,·-]$/;

const { danger, warning, caution, note } = signalColours;

const LIGHT =
  ":root { color-scheme: light; --ink: #111; --ground: #fff; --rule: #555; --soft: #f1f1ee; --quiet: #444; --link: #0a3d91; --next: #0a3d91; --next-ground: #eaf1fd; --good: #14602a; --bad: #a3121a; --bad-ground: #fdecec; --danger: #b3141d; }";
const DARK =
  "color-scheme: dark; --ink: #f0f0ee; --ground: #16181b; --rule: #8b8f94; --soft: #24282d; --quiet: #c2c5c8; --link: #9cc2ff; --next: #8fbaff; --next-ground: #1b2a43; --good: #7fd598; --bad: #ff9a95; --bad-ground: #40191b; --danger: #ff7b74;";

const SCREEN = `
${LIGHT}
@media screen and (prefers-color-scheme: dark) { :root:not([data-theme="light"]) { ${DARK} } }
@media screen { :root[data-theme="dark"] { ${DARK} } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; color: var(--ink); background: var(--ground); font: 1.05rem/1.45 system-ui, sans-serif; }
p, ul, dl { margin: .35rem 0; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: .3rem 0 .6rem; }
h2 { font-size: 1.25rem; margin: 1.6rem 0 .5rem; padding-bottom: .15rem; border-bottom: 2px solid var(--ink); }
h3, h4, h5, h6 { font-size: 1.05rem; margin: .2rem 0; }
.task > h3 { font-size: 1.2rem; margin: 1.3rem 0 .4rem; border-bottom: 1px solid var(--ink); }
table { border-collapse: collapse; width: 100%; margin: .4rem 0; }
th, td { border: 1px solid var(--rule); padding: .3rem .5rem; text-align: start; vertical-align: top; }
thead th { background: var(--soft); }
tbody th { font-weight: 600; }
code, .name { font: .85em/1.4 ui-monospace, monospace; color: var(--quiet); }
a { color: var(--link); }
.line { display: block; }
.whole { white-space: nowrap; }
@media screen and (max-width: 48rem) { .whole { white-space: normal; } }
td { white-space: pre-line; }
.aside { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); border: 2px solid var(--ink); margin: 0; }
.facts > .wide { grid-column: 1 / -1; }
.facts > div { border: 1px solid var(--rule); padding: .3rem .5rem; }
dt { font-size: .85rem; color: var(--quiet); }
dd { margin: 0; overflow-wrap: anywhere; }
.key > div { display: flex; gap: .75rem; align-items: baseline; margin: .25rem 0; }
.word { display: inline-block; min-width: 7rem; padding: .1rem .5rem; text-align: center; font-weight: 700; border: 1px solid var(--ink); }
.banner { border: 3px solid var(--danger); padding: .5rem .75rem; font-size: 1.1rem; }
.banner strong { color: var(--danger); font-size: 1.4rem; margin-inline-end: .5rem; }
.plain { list-style: none; padding: 0; }
.step { position: relative; border: 1px solid var(--rule); border-inline-start: 6px solid var(--ink); margin: .5rem 0; padding: .2rem .7rem .2rem 4.4rem; scroll-margin-top: 1rem; }
.step.deep { padding-inline-start: 7rem; }
.step > :is(h3, h4, h5, h6) { position: absolute; inset-inline-start: .7rem; top: .8rem; margin: 0; padding: 0; border: 0; font-size: 1.05rem; font-variant-numeric: tabular-nums; }
.step > .hold { margin-inline-start: -3.7rem; }
.step.deep > .hold { margin-inline-start: -6.3rem; }
.marks { display: flex; flex-wrap: wrap; gap: .2rem .8rem; align-items: baseline; }
.step:target { outline: 3px solid var(--link); }
.number { font-variant-numeric: tabular-nums; margin-inline-end: .4rem; }
.pass { font-weight: 400; background: var(--soft); padding: 0 .4rem; }
.critical { border: 2px solid var(--ink); padding: 0 .4rem; font-size: .85rem; text-transform: uppercase; }
.words { font-weight: 600; }
.term { color: var(--quiet); }
.source { color: var(--quiet); font-size: .92rem; }
.detail { margin: .1rem 0; }
.tick + .detail { padding-inline-start: 3.6rem; }
.tick { display: flex; gap: .75rem; align-items: center; min-height: 48px; }
.tick input { appearance: none; display: grid; place-content: center; flex: none; width: 44px; height: 44px; margin: 2px; border: 2px solid var(--ink); background: var(--ground); }
.tick input:checked::before { content: ""; width: 30px; height: 30px; background: var(--ink); clip-path: polygon(12% 46%, 0 61%, 40% 100%, 100% 14%, 84% 2%, 38% 70%); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.ticks { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; padding-inline-start: .25rem; }
.small { gap: .4rem; }
.circle { margin: .4rem 0; break-inside: avoid; }
.ring > .circle { flex: 0 1 19rem; }
.tick ~ .circle { margin-inline-start: 3.6rem; }
.circle svg { display: block; max-width: 100%; height: auto; }
.ring { display: flex; flex-wrap: wrap; gap: .5rem 2rem; align-items: flex-start; }
.ring > table { flex: 1 1 20rem; width: auto; }
.ring th, .ring td { padding: .15rem .5rem; }
.serial { font-weight: 600; }
.rounds { width: auto; min-width: 60%; }
.rounds td, .rounds th { vertical-align: middle; }
.field, .sign { display: flex; flex-wrap: wrap; gap: .3rem .75rem; align-items: center; margin: .35rem 0; }
.field input, .entry input, .blank input { min-height: 44px; font: inherit; padding: .2rem .4rem; border: 1px solid var(--rule); border-bottom: 2px solid var(--ink); background: var(--ground); }
.field input { width: 9rem; }
.blank input { width: 100%; }
.limits { color: var(--quiet); }
.sign { border-top: 1px dotted var(--rule); padding-top: .35rem; }
.role { font-weight: 700; min-width: 7rem; }
.role::first-letter { text-transform: uppercase; }
.entry { display: flex; gap: .35rem; align-items: center; flex: 1 1 11rem; }
.entry input { flex: 1; min-width: 5rem; width: 5rem; }
.hold { border: 3px double var(--ink); background: var(--soft); margin: .6rem 0 .3rem; padding: .4rem .7rem; }
.branch, .group, .failing { border-inline-start: 3px dashed var(--rule); padding-inline-start: .8rem; margin: .6rem 0; }
.if { font-weight: 600; }
.direction { font-weight: 600; }
.stop { border: 2px solid var(--danger); padding: .3rem .6rem; }
.left-out { color: var(--quiet); font-weight: 400; font-style: italic; }
.statement { border: 2px solid var(--ink); margin: .7rem 0; }
.signal { display: flex; gap: .6rem; align-items: center; margin: 0; padding: .15rem .6rem; font-size: 1.1rem; }
.signal strong { letter-spacing: .06em; }
.said { padding: .2rem .6rem; }
.alert { width: 1.5rem; height: 1.4rem; flex: none; fill: none; stroke: currentColor; stroke-width: 2; stroke-linejoin: round; }
.note { border: 1px solid var(--rule); padding: .3rem .6rem; }
.danger .signal, .word.danger { background: ${danger.panel}; color: ${danger.text}; }
.warning .signal, .word.warning { background: ${warning.panel}; color: ${warning.text}; }
.caution .signal, .word.caution { background: ${caution.panel}; color: ${caution.text}; }
.word.note { background: ${note.panel}; color: ${note.text}; }
`;

const DRAFT = `body.draft::before { position: fixed; inset: 0; display: grid; place-items: center; pointer-events: none; font: 700 9rem/1 sans-serif; color: ${danger.panel}; opacity: .12; transform: rotate(-30deg); z-index: 1; }
`;

const PRINT = `@media print {
  body { max-width: none; padding: 0; font-size: 10pt; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  h1, h2, h3, h4, h5, h6, .if, .lead { break-after: avoid; }
  .step, .guarded, .statement, .hold, .failing, tr, li, h1, h2, h3, h4, h5, h6, .if { break-inside: avoid; }
  .statement, .note, .task > .source { break-after: avoid; }
  .step > :is(h3, h4, h5, h6) { top: .4rem; }
  .entry { flex-basis: 8rem; }
  .role { min-width: 5rem; }
  .field input, .entry input { min-width: 3rem; }
  .tick { min-height: 0; }
  .tick input { width: 6mm; height: 6mm; border-width: 1px; }
  .tick input:checked::before { width: 4mm; height: 4mm; }
  .field input, .entry input, .blank input { border: 0; border-bottom: 1px solid var(--ink); min-height: 7mm; }
  a { color: inherit; text-decoration: none; }
}
`;
