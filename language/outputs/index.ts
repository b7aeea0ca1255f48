// Every output by name, with its formats: what the command and the editor offer. Knows no files.
import { buildChecklist, type ChecklistInput } from "./checklist/build.ts";
import { checklistHtml } from "./checklist/html.ts";
import { checklistMarkdown } from "./checklist/md.ts";
import type { Document } from "./document.ts";
import { en } from "./words/en.ts";

export interface Output {
  readonly build: (input: ChecklistInput) => Document;
  /** Format to how a document is written in it. */
  readonly formats: ReadonlyMap<string, (document: Document) => string>;
}

export const OUTPUTS: ReadonlyMap<string, Output> = new Map([
  [
    "checklist",
    {
      build: (input) => buildChecklist(input, en),
      formats: new Map([
        ["html", (document: Document) => checklistHtml(document, en)],
        ["md", (document: Document) => checklistMarkdown(document, en)],
      ]),
    },
  ],
]);
