// The PDF as others read it (poppler): structure, language, title, typefaces, heads of pages; and that its bytes hold nothing of the
// clock.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { isInstalled } from "#harness/debian.ts";
import type { Document } from "#outputs/document.ts";
import { make } from "../make.ts";
import { around, COVER } from "../procedures.ts";
import { bytesAs, poppler } from "./write-as.ts";

const { document } = make(COVER);
const draft = make(COVER, { draft: true }).document;

const hasPoppler = (what: string): boolean => isInstalled("pdfinfo", "poppler-utils", what);

let pdf: Uint8Array;
beforeAll(async () => {
  pdf = await bytesAs("pdf", document);
}, 60_000);

test("the same document, the same bytes; another document, others", async () => {
  expect(Buffer.compare(await bytesAs("pdf", document), pdf)).toBe(0);
  expect(Buffer.compare(await bytesAs("pdf", draft), pdf)).not.toBe(0);
});

test("signs that its typeface lacks are told of ahead of everything, and none where it has them all", async () => {
  if (!hasPoppler("notice of signs that are missing")) return;
  const notice = (text: string): Promise<string> =>
    bytesAs("pdf", make(around(text)).document).then((bytes) =>
      poppler("pdftotext", bytes, "-raw").replace(/\s+/g, " "),
    );
  // DejaVu Sans has Greek, Cyrillic and technical signs, and no Han (fc-query of Debian's fonts-dejavu-core; read).
  const without = await notice('step "軸受を清掃する。 Check it."');
  expect(without).toContain("UNREADABLE 8 characters stand as empty boxes in this PDF. Do not work from it");
  expect(without.indexOf("UNREADABLE")).toBeLessThan(without.indexOf("Before you rely on this"));
  expect(await notice('step "Очистить вал, ⌀ 12 ± 0.1 mm, ≥ 2 µm,\u200b α."')).not.toContain("UNREADABLE");
});

test.each(["تبديل المحمل.", "החלף את המיסב."])(
  "that words from right to left are out of order is told of: %s",
  async (text) => {
    if (!hasPoppler("notice of words that are out of order")) return;
    const pdf = await bytesAs("pdf", make(around(`step "${text}"`)).document);
    const told = poppler("pdftotext", pdf, "-raw").replace(/\s+/g, " ");
    expect(told).toContain(
      "UNREADABLE Words that are written from right to left stand in the wrong order in this PDF.",
    );
  },
);

describe("what a reader is told of the file", () => {
  test("title, language, date of the document, tags", () => {
    if (!hasPoppler("properties of the PDF")) return;
    const info = poppler("pdfinfo", pdf, "-isodates");
    expect(info).toMatch(/^Title: +WI-1 · revision C · Close the cover$/m);
    expect(info).toMatch(/^CreationDate: +2026-05-04T00:00:00Z$/m);
    expect(info).toMatch(/^Tagged: +yes$/m);
    expect(info).toMatch(/^PDF version: +1\.7$/m);
    const text = Buffer.from(pdf).toString("latin1");
    expect(text).toContain("/Lang (en)");
    expect(text).toContain("/DisplayDocTitle true");
  });

  test("the structure has headings, lists, tables with heads, and a drawing with its text", () => {
    if (!hasPoppler("structure of the PDF")) return;
    const structure = poppler("pdfinfo", pdf, "-struct-text");
    expect(structure).toMatch(/^Document/);
    for (const type of [
      "H1",
      "H2",
      "H3",
      "H4",
      "Table",
      "THead",
      "TR",
      "TH",
      "TD",
      "L",
      "LI",
      "Lbl",
      "LBody",
      "Figure",
    ])
      expect(structure, type).toMatch(new RegExp(`^ +${type}\\b`, "m"));
    expect(structure).toMatch(/H1 \(block\)\n +"Close the cover"/);
    expect(structure).toMatch(/Scope \/(?:Column|Row)/);
    // Heads and feet of pages are no part of it.
    expect(structure).not.toContain("Page 1 of");
  });

  test("both typefaces are embedded, as much of them as is used", () => {
    if (!hasPoppler("typefaces of the PDF")) return;
    const rows = poppler("pdffonts", pdf).trim().split("\n").slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows) expect(row).toMatch(/\+DejaVuSans(?:-Bold)? .*\byes yes yes\b/);
  });
});

test("each page names the document and counts; a draft says so on each", async () => {
  if (!hasPoppler("heads of pages")) return;
  for (const [bytes, isDraft] of [
    [pdf, false],
    [await bytesAs("pdf", draft), true],
  ] as const) {
    const pages = pagesOf(bytes);
    expect(pages.length).toBeGreaterThan(2);
    pages.forEach((page, at) => {
      expect(page).toContain("WI-1 · revision C");
      expect(page).toContain(`Page ${at + 1} of ${pages.length}`);
      expect(page).toContain("A printed copy is uncontrolled.");
      expect(page.includes("DRAFT")).toBe(isDraft);
    });
  }
});

test("the heads of a table stand on each of its pages, and are read once", async () => {
  if (!hasPoppler("heads of tables")) return;
  const names = Array.from({ length: 70 }, (_, at) => `Gauge${at}`);
  const tools = names.map((name) => `tool ${name} "gauge of ${name}" { measures 0 .. 9 mm }`).join("\n");
  const { document: many } = make(around(names.map((name) => `step inspect Base with ${name}`).join("\n"), tools));
  const bytes = await bytesAs("pdf", many);
  const pages = pagesOf(bytes).filter((page) => page.includes("measures 0 .. 9 mm"));
  expect(pages.length).toBeGreaterThan(2);
  for (const page of pages) expect(page).toMatch(/^ *Tool +What it must be able to do +Used here for$/m);
  // Where they are repeated they are no part of what is read out.
  expect(poppler("pdfinfo", bytes, "-struct-text").match(/"What it must be able to do"/g)).toHaveLength(1);
});

test("an SVG figure is drawn, with its text, and one that cannot be drawn leaves its name", async () => {
  if (!hasPoppler("an SVG figure")) return;
  const figure = (inner: string) => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 30">${inner}</svg>`;
    return withPicture(document, { text: "the lever", image: { type: "image/svg+xml", bytes: Buffer.from(text) } });
  };
  const drawing = await bytesAs("pdf", figure('<circle cx="9" cy="9" r="8"/><text x="20" y="20">LEVER 7</text>'));
  expect(poppler("pdftotext", drawing)).toContain("LEVER 7");
  expect(poppler("pdfinfo", drawing, "-struct-text")).toMatch(/Figure\b.*\n +"LEVER 7"/);
  const undrawn = poppler("pdftotext", await bytesAs("pdf", figure('<text class="a">LEVER 7</text>')));
  expect(undrawn).toContain("Figure: the lever");
  expect(undrawn).not.toContain("LEVER 7");
});

test("no step is parted from its warning, however the pages fall", async () => {
  if (!hasPoppler("warnings and their steps")) return;
  let compared = 0;
  for (const before of [0, 3, 7, 10, 12]) {
    const steps = Array.from(
      { length: 40 },
      (_, at) => `warning lifting "Load ${at} is heavy." avoid "Use hoist ${at}."\nstep "Lift load ${at}."`,
    );
    const text = around([...Array.from({ length: before }, () => 'step "Look."'), ...steps].join("\n"));
    for (const page of pagesOf(await bytesAs("pdf", make(text).document))) {
      const numbers = (pattern: RegExp): readonly string[] =>
        [...page.matchAll(pattern)].map(([, number]) => number ?? "");
      const lifted = numbers(/Lift load (\d+)\./g);
      expect(lifted).toEqual(numbers(/Load (\d+) is heavy/g));
      compared += lifted.length;
    }
  }
  expect(compared).toBe(200);
});

test("a sign above its letter is read with its line", async () => {
  if (!hasPoppler("signs above letters")) return;
  const read = poppler("pdftotext", await bytesAs("pdf", make(around('step "Mark x\u0302 at the rim."')).document));
  expect(read.normalize("NFD")).toContain("Mark x\u0302 at the rim.");
});

test("a text that no page holds still comes out whole", async () => {
  if (!hasPoppler("long texts")) return;
  const words = Array.from({ length: 3000 }, (_, at) => `w${at}`);
  const text = around(`danger burn "${words.join(" ")}" avoid "Wait."\nstep "${"x".repeat(5000)}"`);
  const read = poppler("pdftotext", await bytesAs("pdf", make(text).document), "-raw");
  expect(words.filter((word) => !new RegExp(`\\b${word}\\b`).test(read))).toEqual([]);
  expect(read.match(/x/g)?.length).toBeGreaterThanOrEqual(5000);
});

test("a picture that is damaged leaves its name", async () => {
  const bytes = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...new Array(40).fill(7)]);
  const image = { type: "image/png", bytes };
  const pictured = withPicture(document, { text: "the cover", image });
  const made = await bytesAs("pdf", pictured);
  expect((await bytesAs("docx", pictured)).length).toBeGreaterThan(1000);
  if (!hasPoppler("a damaged picture")) return;
  expect(poppler("pdftotext", made)).toContain("Figure: the cover");
});

// Written once from what was looked at as pictures; a change in it is a change that a shop sees.
test("the short procedure reads as it did when it was looked at", async () => {
  if (!hasPoppler("the text of the short procedure")) return;
  const golden = join(import.meta.dirname, "..", "golden");
  const short = make(readFileSync(join(golden, "short.sprag"), "utf8")).document;
  const text = poppler("pdftotext", await bytesAs("pdf", short), "-layout");
  await expect(text.replace(/ +$/gm, "")).toMatchFileSnapshot(join(golden, "short.pdf.txt"));
});

function pagesOf(bytes: Uint8Array): readonly string[] {
  return poppler("pdftotext", bytes, "-layout").split("\f").slice(0, -1);
}

function withPicture(of: Document, picture: { text: string; image: { type: string; bytes: Uint8Array } }): Document {
  let isSet = false;
  const set = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(set);
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value).map(([key, inner]) => {
      if (key !== "pictures" || isSet) return [key, set(inner)];
      isSet = true;
      return [key, [picture]];
    });
    return Object.fromEntries(entries);
  };
  return set(of) as Document;
}
