// The checklist for the bench. Knows no format.
import { type BuildInput, documentOf } from "../build.ts";
import type { Document } from "../document.ts";
import type { Words } from "../words/en.ts";

export function buildChecklist(input: BuildInput, words: Words): Document {
  return documentOf(input, words, { use: "checklist" });
}
