// A review as one HTML page, the two sides beside each other. Needs no script and nothing from outside; all text is escaped.
import { diffWordsWithSpace } from "diff";
import { html, raw } from "hono/html";
import { en, type Words } from "../words.ts";
import { STYLE } from "./html-style.ts";
import {
  afterTexts,
  groupsOf,
  placeText,
  type Report,
  type ReportedChange,
  type ReportedSide,
  summaryText,
  whereText,
} from "./report.ts";

type Markup = ReturnType<typeof raw>;

/** @param words of the reader's language */
export function reviewHtml(report: Report, words: Words = en): string {
  const groups = groupsOf(report).map(
    ([group, changes]) =>
      markup`<section class="${group}"><h2>${words.groups[group]} <span class="count">${changes.length}</span></h2>
${changes.map((change) => changeMarkup(change, words))}</section>
`,
  );
  return `${markup`<!doctype html>
<html lang="${words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${words.title}</title>
<style>${raw(STYLE)}</style>
</head>
<body>
<main>
<h1>${words.title}</h1>
<p class="summary">${summaryText(report, words)}</p>
${groups}</main>
</body>
</html>
`}`;
}

function changeMarkup(change: ReportedChange, words: Words): Markup {
  const after = afterTexts(change, words);
  const list = after.length === 0 ? raw("") : markup`<ul>${after.map((text) => markup`<li>${text}</li>`)}</ul>`;
  return markup`<article>
<h3>${whereText(change, words)} <code>${change.kind}</code></h3>
<p>${change.message}</p>
${list}
<div class="sides">${sideMarkup(change, "old", words)}${sideMarkup(change, "new", words)}</div>
</article>
`;
}

function sideMarkup(change: ReportedChange, side: "old" | "new", words: Words): Markup {
  const own = change[side];
  const name = markup`<span class="side">${words[side]}</span>`;
  if (own === undefined) return markup`<div class="none">${name} –</div>`;
  const text = own.text === undefined ? raw("") : markup`<p>${wordsMarkup(change, side, own.text)}</p>`;
  return markup`<div>${name} <a href="${linkTo(own)}">${placeText(own)}</a>${text}</div>`;
}

/** The text of a side, with what the other has not marked. */
function wordsMarkup({ old, new: now }: ReportedChange, side: "old" | "new", text: string): Markup | readonly Markup[] {
  if (old?.text === undefined || now?.text === undefined || old.text === now.text) return markup`${text}`;
  return diffWordsWithSpace(old.text, now.text).flatMap(({ value, added, removed }): readonly Markup[] => {
    if (added) return side === "new" ? [markup`<ins>${value}</ins>`] : [];
    if (removed) return side === "old" ? [markup`<del>${value}</del>`] : [];
    return [markup`${value}`];
  });
}

function linkTo({ path, range }: ReportedSide): string {
  // A path that begins like an address stays a path.
  return `./${path.split("/").map(encodeURIComponent).join("/")}#L${range.start.line + 1}`;
}

function markup(
  strings: TemplateStringsArray,
  ...values: readonly (string | number | Markup | readonly Markup[])[]
): Markup {
  // The library answers with a promise only where a value is one.
  return html(strings, ...values) as Markup;
}
