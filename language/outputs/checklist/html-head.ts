// What stands above the work in the HTML checklist: title block, check result, signal words, cautions, lists.
// Knows the document only.
import { type Document, type Fact, FINDINGS_LANGUAGE, type OpenOption, type StockLine } from "../document.ts";
import { unparted } from "../formats/unparted.ts";
import { conditionId, optionId } from "../record/ids.ts";
import type { Words } from "../words/en.ts";
import { arrangementHtml } from "./html-arrangements.ts";
import { type Markup, markup, nothing } from "./html-markup.ts";
import { tableBlockHtml } from "./html-table.ts";

export function headHtml(document: Document, words: Words): Markup {
  const { head, title, draft } = document;
  const banner = draft
    ? markup`<p class="banner"><strong>${words.labels.draft}</strong> ${words.labels.draftMeaning}</p>`
    : nothing;
  return markup`<header>
${banner}
<h1>${title}</h1>
<dl class="facts">${head.facts.map(factHtml)}</dl>${document.filledBy === undefined ? nothing : tableBlockHtml(document.filledBy, (own) => own)}
${findingsHtml(document, words)}
${allowsHtml(document, words)}
</header>`;
}

export function listsHtml(document: Document, words: Words): Markup {
  const { labels } = words;
  return markup`<div class="lists">
${signalsHtml(document, words)}
<section><h2>${labels.cautions}</h2><ul>${document.cautions.map((caution) => markup`<li>${caution}</li>`)}</ul></section>
${document.tools.length === 0 ? nothing : toolsHtml(document, words)}
${document.parts.length === 0 ? nothing : partsHtml(document, words)}
${document.consumables.length === 0 ? nothing : consumablesHtml(document, words)}${document.arrangements.map((block) => arrangementHtml(block, words))}
${startHtml(document, words)}
</div>`;
}

function factHtml({ label, values, long }: Fact): Markup {
  return markup`<div${long === true ? markup` class="wide"` : nothing}><dt>${label}</dt>${values.map((value) => markup`<dd>${value}</dd>`)}</div>`;
}

function findingsHtml({ head }: Document, { labels, head: { findingsLanguage } }: Words): Markup {
  if (head.findings.length === 0) return nothing;
  const language = findingsLanguage === "" ? nothing : markup` lang="${FINDINGS_LANGUAGE}"`;
  const rows = head.findings.map((finding) => [
    markup`${finding.severity}`,
    markup`${finding.code}`,
    markup`${finding.place}`,
    markup`<div${language}><b>${finding.message}</b>${finding.why === null ? nothing : markup` ${finding.why}`}${finding.remedy === null ? nothing : markup`<i class="line">${finding.remedy}</i>`}</div>`,
  ]);
  const title = head.findings.some((finding) => finding.error) ? labels.errors : labels.findings;
  return markup`<section><h2>${title}</h2>${findingsLanguage === "" ? nothing : markup`<p class="source">${findingsLanguage}</p>`}${table([labels.severity, labels.code, labels.place, labels.message], rows)}</section>`;
}

function allowsHtml({ head }: Document, { labels }: Words): Markup {
  if (head.allows.length === 0) return nothing;
  const rows = head.allows.map((allow) =>
    [allow.code, allow.place, allow.reason, allow.by ?? ""].map((text) => markup`${text}`),
  );
  return markup`<section><h2>${labels.allowed}</h2>${table([labels.code, labels.place, labels.reason, labels.by], rows)}</section>`;
}

function signalsHtml({ signals }: Document, words: Words): Markup {
  if (signals.length === 0) return nothing;
  const rows = signals.map(
    (signal) =>
      markup`<div><dt><span class="word ${signal}">${words.signals[signal]}</span></dt><dd>${words.signalKey[signal]}</dd></div>`,
  );
  return markup`<section><h2>${words.labels.keyToSignals}</h2><dl class="key">${rows}</dl></section>`;
}

function toolsHtml({ tools, stockNotes }: Document, words: Words): Markup {
  const { labels, lists } = words;
  const rows = tools.map((tool) => [
    named(tool),
    lines(tool.asked, lists.noRequirement),
    lines([...tool.lifts, ...tool.used], lists.noRequirement),
    ...(tool.stock === null ? [] : [stockHtml(tool.stock, words)]),
  ]);
  const heads = [labels.tool, labels.asked, labels.used, ...(stockNotes.length === 0 ? [] : [words.stock.heading])];
  return markup`<section><h2>${labels.tools}</h2>${table(heads, rows)}${stockNotes.map((note) => markup`<p class="source">${note}</p>`)}</section>`;
}

/** An item by its label, and below it what it is set to. */
function stockHtml(stock: readonly StockLine[], words: Words): Markup {
  if (stock.length === 0) return markup`${words.stock.none}`;
  return markup`${stock.map(
    ({ label, remarks, settings }) =>
      markup`<div class="item"><b>${label}</b>${remarks.length === 0 ? nothing : markup` ${words.comma(remarks)}`}${settings.map((text) => markup`<span class="line">${pieces(text)}</span>`)}</div>`,
  )}`;
}

function partsHtml({ parts }: Document, { labels }: Words): Markup {
  const rows = parts.map((part) => [named(part), markup`${part.count}`, lines(part.remarks, "")]);
  return markup`<section><h2>${labels.parts}</h2>${table([labels.part, labels.count, labels.remarks], rows)}</section>`;
}

function consumablesHtml({ consumables }: Document, { labels }: Words): Markup {
  const rows = consumables.map((one) => [named(one), lines(one.amounts, "")]);
  return markup`<section><h2>${labels.consumables}</h2>${table([labels.consumable, labels.amount], rows)}</section>`;
}

function startHtml({ start, openOptions, record }: Document, { labels, page }: Words): Markup {
  const options = record === null || openOptions.length === 0 ? nothing : optionsHtml(openOptions, page.options);
  if (start.length === 0) return options;
  return markup`${options}<section><h2>${labels.beforeStart}</h2>${conditionTicksHtml(start, "start")}</section>`;
}

/** Buttons for each choice; without the page's script, a list to be marked by hand. */
function optionsHtml(options: readonly OpenOption[], title: string): Markup {
  const rows = options.map(
    ({ name, title: option, choices }) =>
      markup`<div class="option" role="group" aria-label="${option}" data-of="${optionId(name)}"><span class="text">${option}</span>${choices.map(
        (choice) => markup`<button type="button" class="choice" data-choice="${choice.name}">${choice.title}</button>`,
      )}</div>`,
  );
  return markup`<section><h2>${title}</h2>${rows}</section>`;
}

/** What has to hold before the first step, or after the last. */
export function conditionTicksHtml(conditions: readonly string[], where: "start" | "end"): Markup {
  const rows = conditions.map(
    (text, at) =>
      markup`<li><label class="tick"><input type="checkbox" data-of="${conditionId(where, at)}"><span class="text">${text}</span></label></li>`,
  );
  return markup`<ul class="plain">${rows}</ul>`;
}

/** A title, and below it the name by which the procedure's text knows it. */
function named({ title, name }: { readonly title: string; readonly name: string }): Markup {
  return markup`${title}<code class="line">${name}</code>`;
}

function lines(texts: readonly string[], none: string): Markup {
  if (texts.length === 0) return markup`${none}`;
  return markup`${texts.map((text) => markup`<span class="line">${pieces(text)}</span>`)}`;
}

/** A text whose numbers stay with their units, where the screen is wide enough for that. */
function pieces(text: string): Markup {
  const words = unparted(text).split(" ");
  return markup`${words.map((word, at) => {
    const piece = word.replaceAll("\u00a0", " ");
    const gap = at === 0 ? "" : " ";
    return piece === word ? markup`${gap}${word}` : markup`${gap}<span class="whole">${piece}</span>`;
  })}`;
}

/** The first cell of each row is its heading. */
function table(heads: readonly string[], rows: readonly (readonly Markup[])[]): Markup {
  const body = rows.map(
    (cells) =>
      markup`<tr>${cells.map((cell, at) => (at === 0 ? markup`<th scope="row">${cell}</th>` : markup`<td>${cell}</td>`))}</tr>`,
  );
  return markup`<table><thead><tr>${heads.map((head) => markup`<th scope="col">${head}</th>`)}</tr></thead><tbody>${body}</tbody></table>`;
}
