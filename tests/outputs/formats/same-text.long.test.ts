// HTML, Markdown, PDF and DOCX of one procedure say the same: each instruction, value, statement and signature, once each in the same
// order; and signs that turn or break text are harmless in all of them.
import { describe, expect, test } from "vitest";
import { isInstalled } from "#harness/debian.ts";
import { isShopProcedure, openSamples, plainTexts } from "#harness/samples.ts";
import type { Document } from "#outputs/document.ts";
import { readHtml, textOf } from "../html-reader.ts";
import { blocksIn, documentAs, makeFrom } from "../make.ts";
import { around } from "../procedures.ts";
import { bytesAs, docxText, poppler, textAs } from "./write-as.ts";

const workspace = openSamples();
const procedures = [...plainTexts.keys()]
  .filter(isShopProcedure)
  .flatMap((path) => (workspace.loaded.models.get(path)?.procedures ?? []).map((_, at) => ({ path, at })));

describe.each(procedures)("$path, procedure $at", ({ path, at }) => {
  test("all formats say it, in one order", async () => {
    const { document } = makeFrom(workspace, path, at);
    const wanted = saidBy(document);
    expect(wanted.length).toBeGreaterThan(5);
    for (const [format, text] of await textsOf(document)) {
      let from = 0;
      for (const one of wanted) {
        const found = text.indexOf(bare(one), from);
        expect(found, `${format}: ${one}`).toBeGreaterThanOrEqual(0);
        from = found;
      }
    }
  });
});

/** Signs that turn what follows, end a line, ring a bell; halves of a character. */
const SIGNS = ["\u202e", "\u2066", "\u200f", "\u0007", "\u001b", "\u2028", "\ud800", "\ufffe"];

test("no sign that turns or breaks text comes through, in any format", async () => {
  const hostile = SIGNS.map((sign, at) => `a${at}${sign}b`).join(" ");
  const document = documentAs("checklist", around(`step "${hostile}"\nnote "${hostile}"`));
  const csv = await textAs("csv", document);
  const json = await textAs("json", document);
  const outputs = [...(await textsOf(document)), ["csv", csv], ["json", json]] as const;
  for (const [format, text] of outputs) {
    for (const sign of SIGNS) expect(text.includes(sign), `${format} ${sign.charCodeAt(0).toString(16)}`).toBe(false);
    expect(text, format).toContain(format === "csv" || format === "json" ? "a0<202E>b" : bare("a0<202E>b"));
  }
});

/** What a fitter reads in the work, in its order. */
function saidBy({ blocks }: Document): readonly string[] {
  return [...blocksIn(blocks)].flatMap((block): readonly string[] => {
    switch (block.kind) {
      case "statement":
        return [block.text, ...(block.avoid === null ? [] : [block.avoid])];
      case "note":
      case "direction":
        return [block.text];
      case "step":
        return block.words === null ? [] : [block.words];
      case "instruction":
        return [block.text, ...block.details, ...block.rounds];
      default:
        return [];
    }
  });
}

async function textsOf(document: Document): Promise<readonly (readonly [string, string])[]> {
  const html = textOf(readHtml(await textAs("html", document)));
  const md = (await textAs("md", document)).replaceAll("<!-- -->", "").replace(/\\(?=[!-/:-@[-`{-~])/g, "");
  const docx = docxText(await bytesAs("docx", document));
  const known = [
    ["html", html],
    ["md", md.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&amp;", "&")],
    ["docx", docx],
  ] as const;
  const all = isInstalled("pdftotext", "poppler-utils", "the text of the PDF")
    ? [...known, ["pdf", poppler("pdftotext", await bytesAs("pdf", document), "-raw")] as const]
    : known;
  return all.map(([format, text]) => [format, bare(text)]);
}

/** Formats part lines in their own ways, and quote marks stand where they may. */
function bare(text: string): string {
  return text.replace(/[\s\u00a0>☐*|\u2212-]+/g, "");
}
