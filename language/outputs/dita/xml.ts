// The work as a DITA machinery task with hazard statements: form and order of its parts as the OASIS DTD of 1.2 wants them,
// which holds in 1.3 too. All text is escaped. Knows the document only.
import { type Markup, markup, nothing } from "../checklist/html-markup.ts";
import type { ArrangementBlock, Document, Signal } from "../document.ts";
import { allowText, findingText } from "../head-rows.ts";
import type { Words } from "../words/en.ts";
import { legalXml } from "../xml.ts";
import { stepsXml } from "./steps.ts";

/** The whole file. Same document, same bytes. */
export function ditaXml(document: Document, words: Words): string {
  const { head, title, draft, arrangements, end } = document;
  const { steps, rest } = stepsXml(document.blocks, words);
  const some = (parts: readonly unknown[], xml: Markup): Markup => (parts.length === 0 ? nothing : xml);
  const facts = head.facts.map(
    ({ label, values }) =>
      markup`<dlentry><dt>${label}</dt>${values.map((value) => markup`<dd>${value}</dd>`)}</dlentry>`,
  );
  const conditions = end.map((text) => markup`<reqcond>${text}</reqcond>`);
  const task = markup`<task id="${idOf(head.page)}" xml:lang="${words.language}"${draft ? markup` outputclass="draft"` : nothing}>
<title>${draft ? `${words.labels.draft} · ` : ""}${title}</title>
<shortdesc>${draft ? words.labels.draftMeaning : head.page}</shortdesc>
<taskbody>
${preliminaryXml(document, words)}
<context><dl>${facts}</dl></context>
${findingsXml(document, words)}
${signalsXml(document, words)}
${arrangements.map((block) => arrangementXml(block, words))}
${some(steps, markup`<steps>${steps}</steps>`)}
${some(rest, markup`<result>${rest}</result>`)}
${some(end, markup`<closereqs><reqconds>${conditions}</reqconds></closereqs>`)}
</taskbody>
</task>
`;
  return legalXml(`<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE task PUBLIC "-//OASIS//DTD DITA Machinery Task//EN" "machineryTask.dtd">
${task}`);
}

function arrangementXml(block: ArrangementBlock, { arrangement }: Words): Markup {
  const row = (cells: readonly string[]): readonly Markup[] => cells.map((cell) => markup`<stentry>${cell}</stentry>`);
  const rows = block.rows.map(
    ({ position, serial, weight }) => markup`<strow>${row([position, serial, weight])}</strow>`,
  );
  return markup`<section><title>${block.title}</title><simpletable><sthead>${row([arrangement.position, arrangement.serialNumber, block.measure])}</sthead>${rows}</simpletable><p>${arrangement.residual}: ${block.residual}</p><p>${block.caution}</p></section>`;
}

/** What has to be so and to be there before the work. */
function preliminaryXml({ start, tools, consumables, parts, cautions, stockNotes }: Document, words: Words): Markup {
  const conditions =
    start.length === 0 ? markup`<noconds/>` : markup`${start.map((text) => markup`<reqcond>${text}</reqcond>`)}`;
  const items = (tag: "supequi" | "supply" | "spare", rows: readonly (readonly string[])[]): readonly Markup[] =>
    rows.map(([title = "", ...more]) => {
      const text = more.length === 0 ? title : `${title}: ${more.join("; ")}`;
      if (tag === "supequi") return markup`<supequi>${text}</supequi>`;
      return tag === "supply" ? markup`<supply>${text}</supply>` : markup`<spare>${text}</spare>`;
    });
  const equipment = items(
    "supequi",
    tools.map(({ title, asked, stock }) => [
      title,
      ...asked,
      ...(stock ?? []).map(({ label, remarks, settings }) => words.comma([label, ...remarks, ...settings])),
    ]),
  );
  const supplies = items(
    "supply",
    consumables.map(({ title, amounts }) => [title, ...amounts]),
  );
  const spares = items(
    "spare",
    parts.map(({ title, count, remarks }) => [title, String(count), ...remarks]),
  );
  return markup`<prelreqs>
<reqconds>${conditions}</reqconds>
<supequip>${equipment.length === 0 ? markup`<nosupeq/>` : markup`<supeqli>${equipment}</supeqli>`}</supequip>
<supplies>${supplies.length === 0 ? markup`<nosupply/>` : markup`<supplyli>${supplies}</supplyli>`}</supplies>
<spares>${spares.length === 0 ? markup`<nospares/>` : markup`<sparesli>${spares}</sparesli>`}</spares>
<safety>${[...cautions, ...stockNotes].map((text) => markup`<safecond>${text}</safecond>`)}</safety>
</prelreqs>`;
}

function findingsXml({ head }: Document, { labels }: Words): Markup {
  const rows = [
    ...head.findings.map(findingText),
    ...head.allows.map((allow) => `${labels.allowed}: ${allowText(allow)}`),
  ];
  if (rows.length === 0) return nothing;
  return markup`<section><title>${labels.checkResult}</title><ul>${rows.map((row) => markup`<li>${row}</li>`)}</ul></section>`;
}

function signalsXml({ signals }: Document, words: Words): Markup {
  if (signals.length === 0) return nothing;
  const entry = (signal: Signal): Markup =>
    markup`<dlentry><dt>${words.signals[signal]}</dt><dd>${words.signalKey[signal]}</dd></dlentry>`;
  return markup`<section><title>${words.labels.keyToSignals}</title><dl>${signals.map(entry)}</dl></section>`;
}

/** A name of XML. */
function idOf(text: string): string {
  return `sprag-${text.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-|-$/g, "")}`;
}
