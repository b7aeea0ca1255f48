// The checklist as one HTML file for a tablet or the printer: nothing is loaded, nothing runs but the page's own script where the
// checklist is filled in, all text is escaped. Knows the document only, no procedure.
import { raw, html as template } from "hono/html";
import type {
  Block,
  Branch,
  Direction,
  Document,
  Field,
  Group,
  Instruction,
  Picture,
  Section,
  SignOff,
  StatementBlock,
  StepRow,
} from "../document.ts";
import { rowAsMade } from "../kept-rows.ts";
import { base64 } from "../pictures.ts";
import type { Words } from "../words/en.ts";
import { figureHtml } from "./html-arrangements.ts";
import { fillingHtml, policyOf } from "./html-filling.ts";
import { conditionTicksHtml, headHtml, listsHtml } from "./html-head.ts";
import { type Markup, markup, nothing } from "./html-markup.ts";
import { styleSheet } from "./html-style.ts";
import { tableBlockHtml } from "./html-table.ts";

/** The whole file. Same document, same bytes. */
export function checklistHtml(document: Document, words: Words): string {
  const { head, title } = document;
  const page: Markup = markup`<!doctype html>
<html lang="${words.language}" dir="${words.direction}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policyOf(document)}">
<title>${document.draft ? `${words.labels.draft} · ` : ""}${head.page} · ${title}</title>
<style>${raw(styleSheet(document, words))}</style>
</head>
<body${document.draft ? markup` class="draft"` : nothing}>
${headHtml(document, words)}
<main>
${listsHtml(document, words)}
${document.blocks.length === 0 ? nothing : markup`<h2>${words.labels.work}</h2>`}
${document.record === null ? nothing : markup`<div id="people"></div>`}
${blocksHtml(document.blocks, { words, level: 3, where: "" })}
</main>
${endHtml(document, words)}
${fillingHtml(document, words)}</body>
</html>
`;
  return page.toString();
}

/** Where a block stands: its heading level, and the step whose boxes it holds. */
interface At {
  readonly words: Words;
  readonly level: number;
  /** The number of the step, for the names of boxes and fields. */
  readonly where: string;
}

/** Statements are kept on one page with the step they guard. */
function blocksHtml(blocks: readonly Block[], at: At): readonly Markup[] {
  const out: Markup[] = [];
  let waiting: Markup[] = [];
  for (const block of blocks) {
    if (block.kind === "statement" || block.kind === "note") {
      waiting.push(blockHtml(block, at));
    } else if (waiting.length > 0 && (block.kind === "step" || block.kind === "instruction")) {
      out.push(markup`<div class="guarded">${waiting}${blockHtml(block, at)}</div>`);
      waiting = [];
    } else {
      out.push(...waiting, blockHtml(block, at));
      waiting = [];
    }
  }
  return [...out, ...waiting];
}

function blockHtml(block: Block, at: At): Markup {
  switch (block.kind) {
    case "section":
      return sectionHtml(block, at);
    case "statement":
      return statementHtml(block, at);
    case "note":
      return markup`<p class="note" role="note"><strong>${at.words.signals.note}</strong> ${block.text}</p>`;
    case "step":
      return stepHtml(block, at);
    case "branch":
      return branchHtml(block, at);
    case "group":
      return groupHtml(block, at);
    case "direction":
      return directionHtml(block);
    case "instruction":
      return instructionHtml(block, at);
    case "table":
      return tableBlockHtml(block, (title) => heading(at.level, title));
  }
}

function sectionHtml(section: Section, at: At): Markup {
  const { words } = at;
  const title =
    section.origin === null
      ? markup`<span class="number">${section.number}</span> ${section.title}`
      : markup`${words.flow.performed(section.origin)}`;
  const pass = section.pass === null ? nothing : markup` <span class="pass">${section.pass}</span>`;
  return markup`<section class="task">
${heading(at.level, markup`${title}${pass}`)}
${sourcesHtml(section.citations, words)}
${blocksHtml(section.blocks, { ...at, level: at.level + 1 })}
</section>
`;
}

function statementHtml(statement: StatementBlock, { words }: At): Markup {
  const { signal, hazards, text, avoid, wear } = statement;
  return markup`<div class="statement ${signal}" role="note" aria-label="${words.signals[signal]}">
<p class="signal">${signal === "caution" ? nothing : alertSymbol}<strong>${words.signals[signal]}</strong> <span class="hazards">${words.comma(hazards)}</span></p>
<div class="said"><p>${text}</p>${avoid === null ? nothing : markup`<p><b>${words.labels.avoid}:</b> ${avoid}</p>`}${
    wear.length === 0 ? nothing : markup`<p><b>${words.labels.wear}:</b> ${words.comma(wear)}</p>`
  }</div>
</div>
`;
}

/** A triangle with a mark; the word beside it says the same. */
const alertSymbol = raw(
  '<svg class="alert" viewBox="0 0 24 22" aria-hidden="true"><path d="M12 1 23 21H1Z"/><path class="mark" d="M12 8v6M12 17v1.5"/></svg>',
) as Markup;

/** As it was written before, where its row stands in one document after the other. */
function stepHtml(step: StepRow, at: At): Markup {
  const { words, level } = at;
  const row = rowAsMade(step);
  const known = written.get(row);
  if (known?.words === words && known.level === level) return known.html;
  const html = stepAnew(step, at);
  written.set(row, { words, level, html });
  return html;
}

const written = new WeakMap<StepRow, Omit<At, "where"> & { readonly html: Markup }>();

function stepAnew(step: StepRow, at: At): Markup {
  const { labels } = at.words;
  const where = step.pass === null ? step.number : `${step.number}, ${step.pass}`;
  const inside = { ...at, level: at.level + 1, where };
  const number = markup`<span class="aside">${labels.step} </span>${step.number}`;
  return markup`<section class="step${step.number.length > LONG_NUMBER ? " deep" : ""}" id="${step.id}">
${heading(at.level, number)}
<div class="body">
${marksHtml(step, at)}${step.terms.length === 0 ? nothing : markup`<p class="term">${step.terms.join(" ")}</p>`}${
  step.words === null ? nothing : markup`<p class="words">${step.words}</p>`
}
${blocksHtml(step.blocks, inside)}
${fieldsHtml(step.fields, labels.records, inside)}
${step.whys.map((why) => markup`<p class="why">${labels.why}: ${why}</p>`)}${step.pictures.map((picture) => pictureHtml(picture, labels.figure))}${sourcesHtml(step.citations, at.words)}
${signsHtml(step.signs, inside)}
</div>
${holdHtml(step.hold, inside)}
</section>
`;
}

// As many characters as the margin holds.
const LONG_NUMBER = 5;

/** Name, pass and importance, where a step has any. */
function marksHtml({ name, pass, critical }: StepRow, { words }: At): Markup {
  if (name === null && pass === null && !critical) return nothing;
  const marks = [
    critical ? markup`<strong class="critical">${words.labels.critical}</strong>` : nothing,
    pass === null ? nothing : markup`<span class="pass">${pass}</span>`,
    name === null ? nothing : markup`<span class="name">${name}</span>`,
  ];
  return markup`<p class="marks">${marks}</p>`;
}

function branchHtml(branch: Branch, at: At): Markup {
  const arms = branch.arms.map(
    (arm) =>
      markup`<div class="arm"${ofAll("ask", arm.ids)}><p class="if">${arm.heading}</p>${blocksHtml(arm.blocks, at)}</div>`,
  );
  return markup`<div class="branch">${arms}</div>
`;
}

function groupHtml(group: Group, at: At): Markup {
  return markup`<div class="group"><p class="if">${group.heading}</p>${blocksHtml(group.blocks, at)}</div>
`;
}

function directionHtml({ sense, text, link }: Direction): Markup {
  const kind = sense.replace(" ", "-");
  if (link === null) return markup`<p class="direction ${kind}">${text}</p>`;
  return markup`<p class="direction ${kind}"><a href="#${link}">${text}</a></p>`;
}

function instructionHtml(row: Instruction, at: At): Markup {
  const { words } = at;
  const one = row.ticks.length === 1 && row.rounds.length === 0;
  const text = markup`<span class="text">${row.text}</span>`;
  const performed = row.performed === null ? nothing : sectionHtml(row.performed, at);
  const lead = one
    ? markup`<label class="tick">${box(words, at.where, row.ids[0])}${text}</label>`
    : markup`<p class="lead">${text}</p>`;
  const computed = row.computed.length === 0 ? nothing : markup`<p class="computed" data-computed="${row.ids[0]}"></p>`;
  return markup`<div class="instruction">
${lead}
${detailsHtml(row.details)}${computed}${row.figure === undefined ? nothing : markup`<div class="round"${ofAll("rounds", row.ids)}>${figureHtml(row.figure)}</div>`}${one ? nothing : ticksHtml(row, at)}
${fieldsHtml(row.fields, null, at)}
${failingHtml(row, at)}${performed}
</div>
`;
}

function detailsHtml(details: readonly string[]): Markup {
  if (details.length === 0) return nothing;
  if (details.length === 1) return markup`<p class="detail">${details[0]}</p>`;
  return markup`<ul class="detail">${details.map((detail) => markup`<li>${detail}</li>`)}</ul>`;
}

/** A tick for each pass, or for each round of tightening. */
function ticksHtml(row: Instruction, { words, where }: At): Markup {
  if (row.rounds.length === 0) {
    const ticks = row.ticks.map(
      ({ label }, at) =>
        markup`<label class="tick small">${box(words, where, row.ids[at])}<span class="text">${label ?? ""}</span></label>`,
    );
    return markup`<div class="ticks">${ticks}</div>`;
  }
  const rounds = row.rounds.map(
    (value, at) =>
      markup`<tr><th scope="row">${at + 1}</th><td class="value">${value}</td><td><label class="tick small"><span class="aside">${words.labels.round} ${at + 1}</span>${box(words, where, row.ids[at])}</label></td></tr>`,
  );
  return markup`<table class="rounds"><thead><tr><th scope="col">${words.labels.round}</th><th scope="col">${words.labels.value}</th><th scope="col">${words.labels.done}</th></tr></thead><tbody>${rounds}</tbody></table>`;
}

/** A box to tick; `where` tells a screen reader which step it belongs to. */
function box(words: Words, where: string, id: string | undefined): Markup {
  return markup`<input type="checkbox"${id === undefined ? nothing : of(id)}><span class="aside">${where === "" ? words.labels.done : `${words.labels.done}, ${words.labels.step} ${where}`}: </span>`;
}

function fieldsHtml(fields: readonly Field[], title: string | null, { words, where }: At): Markup {
  if (fields.length === 0) return nothing;
  const rows = fields.map((field) => {
    const limits =
      field.limits === null ? nothing : markup`<span class="limits">${words.records.mustBe(field.limits)}</span>`;
    const tools =
      field.tools === null ? nothing : markup`<span class="limits">${words.labels.measuredWith}: ${field.tools}</span>`;
    return markup`<label class="field"><span><span class="aside">${words.labels.step} ${where}: </span>${field.label}</span> <input type="text" autocomplete="off"${of(field.id)}> ${limits}${tools}</label>`;
  });
  const name = title ?? words.labels.reading;
  return markup`<div class="fields" role="group" aria-label="${name}">${rows}</div>`;
}

function failingHtml({ failing, ids }: Instruction, at: At): Markup {
  if (failing === null) return nothing;
  return markup`<div class="failing"${ofAll("failing", ids)}><p class="if">${failing.heading}:</p>${blocksHtml(failing.blocks, at)}</div>`;
}

function signsHtml(signs: readonly SignOff[], at: At): Markup {
  if (signs.length === 0) return nothing;
  return markup`<div class="signs" role="group" aria-label="${at.words.labels.sign}">${signs.map((sign) => signHtml(sign, at))}</div>`;
}

function signHtml({ id, role, pass }: SignOff, { words, where }: At): Markup {
  const who = pass === null ? role : words.records.unit(role, pass);
  // Where the page is filled in on a screen, its script asks for a name and a badge; the rest is for the pen.
  const entry = (label: string, look: string): Markup =>
    markup`<label class="${look}"><span><span class="aside">${words.labels.step} ${where}, ${who}: </span>${label}</span><input type="text" autocomplete="off"></label>`;
  return markup`<div class="sign"${of(id)}><span class="role">${who}</span>${entry(words.labels.name, "entry")}${entry(words.labels.signature, "entry pen")}${entry(words.labels.date, "entry pen")}</div>`;
}

function holdHtml(hold: readonly SignOff[], at: At): Markup {
  const [first] = hold;
  if (first === undefined) return nothing;
  const { words } = at;
  return markup`<div class="hold" role="group" aria-label="${words.labels.holdPoint}">
<p><strong>${words.labels.holdPoint}</strong> ${words.signOff.hold(first.role)}</p>
${hold.map((sign) => signHtml(sign, at))}
</div>`;
}

function sourcesHtml(citations: readonly string[], words: Words): Markup {
  if (citations.length === 0) return nothing;
  return markup`<p class="source">${words.labels.source}: ${citations.join("; ")}</p>`;
}

function endHtml(document: Document, words: Words): Markup {
  const { head, end } = document;
  const rows = conditionTicksHtml(end, "end");
  const list = end.length === 0 ? nothing : markup`<h2>${words.labels.atTheEnd}</h2>${rows}`;
  return markup`<footer>
${list}
<p class="source">${head.page} · ${document.draft ? `${words.labels.draft} · ` : ""}${words.head.uncontrolled}</p>
</footer>`;
}

function heading(level: number, inner: Markup): Markup {
  const depth = Math.min(level, 6);
  return template`${raw(`<h${depth}>`)}${inner}${raw(`</h${depth}>`)}` as Markup;
}

/** Which entry of the record a place to be marked is; `ofAll` of several. */
function of(id: string): Markup {
  return markup` data-of="${id}"`;
}

function ofAll(what: "ask" | "rounds" | "failing", ids: readonly string[]): Markup {
  return ids.length === 0 ? nothing : (template` ${raw(`data-${what}`)}="${JSON.stringify(ids)}"` as Markup);
}

/** A picture never brings markup of its own into the page: also an SVG is shown as an image. */
function pictureHtml({ text, image }: Picture, label: string): Markup {
  if (image === null) return markup`<p class="source">${label}: ${text}</p>`;
  return markup`<figure class="picture"><img src="data:${image.type};base64,${base64(image.bytes)}" alt="${text}"><figcaption class="source">${text}</figcaption></figure>`;
}
