// A document in each of its formats, by the one registry, and what programs of others read in it.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { folderForTest, printedBy } from "#harness/debian.ts";
import { fonts } from "#harness/fonts.ts";
import type { Document } from "#outputs/document.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { en, type Words } from "#outputs/words/en.ts";

export async function bytesAs(format: string, document: Document, words: Words = en): Promise<Uint8Array> {
  const write = OUTPUTS.get(document.use)?.formats.get(format);
  if (write === undefined) throw new Error(`no ${document.use} as ${format}`);
  const content = await write(document, { words, fonts });
  return typeof content === "string" ? new TextEncoder().encode(content) : content;
}

export async function textAs(format: string, document: Document, words: Words = en): Promise<string> {
  return new TextDecoder().decode(await bytesAs(format, document, words));
}

/** Runs poppler's program on the PDF. @param args before the file's name */
export function poppler(program: "pdfinfo" | "pdftotext" | "pdffonts", pdf: Uint8Array, ...args: string[]): string {
  const path = join(folderForTest(), "a.pdf");
  writeFileSync(path, pdf);
  return printedBy(program, ...args, path, ...(program === "pdftotext" ? ["-"] : []));
}

/** Files of a ZIP container as text, by path. */
export function filesIn(zip: Uint8Array): ReadonlyMap<string, string> {
  return new Map(Object.entries(unzipSync(zip)).map(([path, content]) => [path, strFromU8(content)]));
}

/** What stands in the paragraphs of a word processor's file, a line for each. */
export function docxText(docx: Uint8Array): string {
  const xml = filesIn(docx).get("word/document.xml") ?? "";
  return decoded(
    xml
      .replace(/<w:sym\b[^>]*w:char="2610"[^>]*\/>/g, "☐")
      .replace(/<\/w:p>|<w:br\/>/g, "\n")
      .replace(/<w:tab\/>/g, " ")
      .replace(/<[^>]*>/g, ""),
  );
}

function decoded(xml: string): string {
  const named: Readonly<Record<string, string>> = { lt: "<", gt: ">", quot: '"', apos: "'", amp: "&" };
  return xml.replace(/&(lt|gt|quot|apos|amp);/g, (_, name) => named[name] ?? "");
}
