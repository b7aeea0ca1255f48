// The DOCX: bytes that hold nothing of the clock, boxes that stay boxes, XML that is whole, and LibreOffice as another reader.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { folderForTest, isInstalled, printedBy } from "#harness/debian.ts";
import type { Block, Document } from "#outputs/document.ts";
import { blocksIn, make } from "../make.ts";
import { COVER } from "../procedures.ts";
import { bytesAs, docxText, filesIn } from "./write-as.ts";

const { document } = make(COVER);

let docx: Uint8Array;
beforeAll(async () => {
  docx = await bytesAs("docx", document);
}, 60_000);

test("the same document, the same bytes, whatever was written before", async () => {
  await bytesAs("docx", make(COVER, { draft: true, repeats: "full" }).document);
  expect(Buffer.compare(await bytesAs("docx", document), docx)).toBe(0);
});

test("it says nothing of the clock: the dates are the document's, those of the container fixed", () => {
  const core = filesIn(docx).get("docProps/core.xml") ?? "";
  const dates = [...core.matchAll(/<dcterms:\w+ [^>]*>([^<]*)</g)].map(([, date]) => date);
  expect(dates).toEqual(["2026-05-04T00:00:00Z", "2026-05-04T00:00:00Z"]);
  // Local file headers: time and date at offset 10; 1980-01-01 is 0x21.
  const view = new DataView(docx.buffer, docx.byteOffset);
  const headers = [...docx.keys()].filter((at) => at + 14 < docx.length && view.getUint32(at) === 0x504b0304);
  expect(headers.length).toBeGreaterThan(10);
  for (const at of headers) expect(view.getUint32(at + 10, true)).toBe(0x00210000);
});

test("each thing to tick is a box of the word processor", () => {
  const xml = filesIn(docx).get("word/document.xml") ?? "";
  const boxes = ticksOf(document);
  expect(boxes).toBeGreaterThan(15);
  expect(xml.match(/<w14:checkbox>/g)).toHaveLength(boxes);
  expect(xml.match(/<w:sdt>/g)).toHaveLength(boxes);
});

test("a line ends neither between a number and its unit nor within a range", () => {
  const said = docxText(docx);
  expect(said.match(/\d\u00a0(?:mm|N·m)/g)?.length).toBeGreaterThan(5);
  expect(said).not.toMatch(/\d (?:mm|N·m|lbf·ft)(?!\S)|(?:\.\.|±) \d/);
});

test("the numbers of drawings are each used once", () => {
  const xml = filesIn(docx).get("word/document.xml") ?? "";
  const ids = [...xml.matchAll(/<(?:wp:docPr|wp[sg]:cNvPr)\b[^>]*\bid="(\d+)"/g)].map(([, id]) => id);
  expect(ids.length).toBeGreaterThan(8);
  expect(new Set(ids).size).toBe(ids.length);
});

test("every part is whole XML, and every part that is spoken of is there", () => {
  const files = filesIn(docx);
  for (const [path, xml] of files) {
    if (!path.endsWith(".rels")) continue;
    const base = path.replace(/_rels\/[^/]*$/, "");
    for (const [, target] of xml.matchAll(/Target="([^"]+)"/g))
      expect([...files.keys()], path).toContain(`${base}${target}`.replace(/^\//, ""));
  }
  if (!isInstalled("xmllint", "libxml2-utils", "the XML of the DOCX")) return;
  const folder = folderForTest();
  for (const [path, xml] of files) {
    const at = join(folder, path.replaceAll("/", "_"));
    writeFileSync(at, xml);
    printedBy("xmllint", "--noout", "--nonet", at);
  }
});

test("the heads of every table stand on each of its pages, a statement stays with what follows", () => {
  const xml = filesIn(docx).get("word/document.xml") ?? "";
  const tables = xml.match(/<w:tbl>(?:(?!<w:tbl>).)*?<\/w:tbl>/gs) ?? [];
  const shaded = tables.filter((table) => table.includes('w:fill="ececec"'));
  expect(shaded).toHaveLength(2);
  for (const table of shaded) expect(table.match(/<w:tblHeader\/>/g)).toHaveLength(1);
  const statements = tables.filter(
    (table) => /WARNING|DANGER|CAUTION/.test(table) && table.includes("How to avoid it"),
  );
  expect(statements).toHaveLength(3);
  for (const table of statements) {
    const paragraphs = table.match(/<w:p>.*?<\/w:p>/gs) ?? [];
    expect(paragraphs.filter((one) => !one.includes("<w:keepNext/>"))).toEqual([]);
  }
});

test("LibreOffice opens it and reads the same text", { timeout: 240_000 }, () => {
  if (!isInstalled("soffice", "libreoffice-writer-nogui", "the DOCX in LibreOffice")) return;
  const folder = folderForTest();
  const path = join(folder, "a.docx");
  writeFileSync(path, docx);
  const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
  printedBy("soffice", profile, "--headless", "--convert-to", "txt:Text (encoded):UTF8", "--outdir", folder, path);
  const plain = (text: string): string => text.replace(/^\ufeff|[\s☐•]+/g, "");
  const read = plain(printedBy("cat", join(folder, "a.txt")));
  const lines = docxText(docx)
    .split("\n")
    .map(plain)
    .filter((line) => line !== "");
  expect(lines.length).toBeGreaterThan(100);
  // What stands in shapes is no text of the flow.
  const missing = lines.filter((line) => !read.includes(line) && !/^[\d.]+$/.test(line));
  expect(missing).toEqual([]);
});

/** Boxes of a document, counted from its data. */
function ticksOf({ blocks, start, end }: Document): number {
  const inBlock = (block: Block): number => {
    if (block.kind === "table") return block.rows.flatMap(({ cells }) => cells).filter(isBox).length;
    if (block.kind !== "instruction") return 0;
    return block.rounds.length > 0 ? block.rounds.length : block.ticks.length;
  };
  return [...blocksIn(blocks)].reduce((sum, block) => sum + inBlock(block), start.length + end.length);
}

function isBox(cell: unknown): boolean {
  return typeof cell === "object" && (cell as { fill: string }).fill === "box";
}
