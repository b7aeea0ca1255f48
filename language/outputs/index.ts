// Every output by name, with its formats: what the command and the editor offer. Knows no files.

import { buildAssessor } from "./assessor/build.ts";
import type { BuildInput } from "./build.ts";
import { buildChecklist } from "./checklist/build.ts";
import { checklistHtml } from "./checklist/html.ts";
import { checklistMarkdown } from "./checklist/md.ts";
import { checklistTable } from "./checklist/table.ts";
import { diagramHtml } from "./diagram/html.ts";
import { diagramSvg } from "./diagram/svg.ts";
import { ditaXml } from "./dita/xml.ts";
import type { Document } from "./document.ts";
import { tableCsv } from "./formats/csv.ts";
import { documentJson } from "./formats/json.ts";
import { buildKit } from "./kit/build.ts";
import { kitTable } from "./kit/table.ts";
import { printableDocument } from "./printable.ts";
import { buildTrainee } from "./trainee/build.ts";
import type { Words } from "./words/en.ts";

export interface Output {
  readonly build: (input: BuildInput, words: Words) => Document;
  /** Format, which is also the ending of a file in it, to how a document is written so. */
  readonly formats: ReadonlyMap<string, Write>;
}

export type Write = (document: Document, means: Means) => Content;

/** Text, or bytes that take a while. */
export type Content = string | Promise<Uint8Array>;

export interface Means {
  readonly words: Words;
  /** Loads the typefaces; asked for only by formats that embed them. */
  readonly fonts: () => Promise<Fonts>;
}

/** TrueType files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

const html: Write = (document, { words }) => checklistHtml(document, words);
const md: Write = (document, { words }) => checklistMarkdown(document, words);
// The libraries behind these are large, and loaded when they are asked for.
const pdf: Write = async (document, means) => (await import("./formats/pdf/index.ts")).documentPdf(document, means);
const docx: Write = async (document, means) => (await import("./formats/docx/index.ts")).documentDocx(document, means);

const xlsx: Write = async (document, { words }) => (await import("./formats/xlsx.ts")).documentXlsx(document, words);
const csv: Write = (document, { words }) => tableCsv(checklistTable(document, words));
const kitCsv: Write = (document, { words }) => tableCsv(kitTable(document, words));
const json: Write = (document, { words }) => documentJson(document, words);

/** @param formats the first is the one that is written where none is asked for */
function output(build: Output["build"], formats: Readonly<Record<string, Write>>): Output {
  return {
    build: (input, words) => printableDocument(build(input, words)),
    formats: new Map(Object.entries(formats)),
  };
}

export const OUTPUTS: ReadonlyMap<string, Output> = new Map([
  ["checklist", output(buildChecklist, { html, pdf, docx, md, csv, json })],
  ["trainee", output(buildTrainee, { html, pdf, docx, md })],
  ["assessor", output(buildAssessor, { html, pdf, docx, xlsx })],
  ["kit", output(buildKit, { html, md, csv: kitCsv, xlsx, json })],
  [
    "diagram",
    output(buildChecklist, {
      svg: (document, { words }) => diagramSvg(document, words),
      html: (document, { words }) => diagramHtml(document, words),
    }),
  ],
  ["dita", output(buildChecklist, { xml: (document, { words }) => ditaXml(document, words) })],
]);
