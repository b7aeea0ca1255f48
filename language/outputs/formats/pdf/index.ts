// A document as a tagged PDF of A4 pages: structure, language and title for a screen reader, typefaces within. Same document, same
// bytes, wherever it is made.

import type { Document } from "../../document.ts";
import type { Means } from "../../index.ts";
import { chaptersAfter, chaptersBefore } from "../chapters.ts";
import { SIZE } from "./entries.ts";
import { chapterHead, chapterPieces, titlePieces } from "./front.ts";
import { letteringOf } from "./lettering.ts";
import { type Pen, penOn, type Tag } from "./pen.ts";
import { type Frame, paginate, under } from "./piece.ts";
import { blankDocument } from "./scraps.ts";
import { blockPieces } from "./work.ts";
import type { WidthOf } from "./wrapping.ts";

const PAGE = { width: 595.28, height: 841.89 } as const;
const MARGIN = { side: 42, top: 66, bottom: 48 } as const;
const ROOM = PAGE.height - MARGIN.top - MARGIN.bottom;

export async function documentPdf(document: Document, { words, fonts }: Means): Promise<Uint8Array> {
  const faces = await fonts();
  const { doc, bytes } = blankDocument({
    size: [PAGE.width, PAGE.height],
    margin: 0,
    // None to begin with: the library would load one of its own.
    font: null as unknown as string,
    autoFirstPage: false,
    // What is worked out for a word is kept here.
    fontLayoutCache: false,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: words.language,
    info: {
      Title: `${document.head.page} · ${document.title}`,
      Producer: "Sprag",
      Creator: "Sprag",
      CreationDate: dateOf(document.head.date),
    },
  });
  doc.registerFont("regular", faces.regular as Buffer);
  doc.registerFont("bold", faces.bold as Buffer);
  const lettering = letteringOf(doc);
  const widthOf =
    (size: number): WidthOf =>
    (text, bold) =>
      (lettering.widthOf(text, bold) * size) / 1000;
  const texts = textsOf(document);
  const missing = lettering.missingIn(texts).length;
  const unreadable = [
    ...(missing === 0 ? [] : [words.head.unprintedMeaning(missing)]),
    ...(FROM_RIGHT.test(texts) ? [words.head.misordered] : []),
  ];
  draw(document, words, penOn(doc, lettering), widthOf, unreadable);
  doc.end();
  return bytes();
}

/** The document's own, since the clock is no input; the format wants one in any case. */
function dateOf(day: string | null): Date {
  const date = new Date(`${day}T00:00:00Z`);
  return Number.isNaN(date.getTime()) ? new Date(0) : date;
}

/** Every text of a document, run together. */
function textsOf(value: unknown): string {
  if (typeof value === "string") return value;
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return "";
  return Object.values(value).map(textsOf).join("");
}

/** Scripts whose words this format sets one after the other from the left. */
const FROM_RIGHT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** @param unreadable what of it cannot be read here, each a sentence */
function draw(
  document: Document,
  words: Means["words"],
  pen: Pen,
  widthOf: Frame["widthOf"],
  unreadable: readonly string[],
): void {
  const tag: Tag = { type: "Document", parent: null };
  const frame: Frame = { left: MARGIN.side, width: PAGE.width - 2 * MARGIN.side, tag, widthOf };
  const at = { frame, words, level: 2, page: ROOM };
  const work = under(frame, "Sect");
  const pieces = [
    ...titlePieces(document, unreadable, at),
    ...chaptersBefore(document, words).flatMap((chapter) => chapterPieces(chapter, at)),
    ...(document.blocks.length === 0 ? [] : chapterHead(work, words.labels.work)),
    ...blockPieces(document.blocks, { ...at, frame: work, level: 3 }),
    ...chaptersAfter(document, words).flatMap((chapter) => chapterPieces(chapter, at)),
  ];
  const pages = paginate(pieces, ROOM);
  pages.forEach((placed, number) => {
    pen.newPage();
    if (document.draft) pen.onEachPage("Top", () => pen.watermark(words.labels.draft, PAGE.width, PAGE.height));
    edges(document, words, pen, widthOf, number + 1, pages.length);
    for (const { piece, top, above } of placed) piece.draw(pen, MARGIN.top + top, above);
  });
}

/** Head and foot of a page: which document, which page, and that a print is no controlled copy. */
function edges(
  { head, title, draft }: Document,
  words: Means["words"],
  pen: Pen,
  widthOf: Frame["widthOf"],
  number: number,
  count: number,
): void {
  const right = PAGE.width - MARGIN.side;
  const look = { size: SIZE.small };
  const bold = { ...look, bold: true };
  const width = widthOf(look.size);
  const atRight = (text: string, y: number): void => pen.letters(text, right - width(text, true), y, bold);
  const room = right - MARGIN.side;
  pen.onEachPage("Top", () => {
    const page = words.head.pageOf(String(number), String(count));
    pen.letters(
      cut(head.page, room - width(page, true) - 20, (text) => width(text, true)),
      MARGIN.side,
      32,
      bold,
    );
    atRight(page, 32);
    const draftWidth = draft ? width(words.labels.draft, true) + 20 : 0;
    pen.letters(
      cut(title, room - draftWidth, (text) => width(text, false)),
      MARGIN.side,
      44,
      look,
    );
    if (draft) atRight(words.labels.draft, 44);
    pen.line(MARGIN.side, 50, right, 50, { width: 0.8 });
  });
  pen.onEachPage("Bottom", () => {
    const foot = draft ? `${words.labels.draft} · ${words.labels.draftMeaning} ` : "";
    pen.letters(`${foot}${words.head.uncontrolled}`, MARGIN.side, PAGE.height - 26, look);
  });
}

/** As much of a text as there is room for. */
function cut(text: string, room: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= room) return text;
  let short = [...text].slice(0, 200);
  while (short.length > 1 && widthOf(`${short.join("")}…`) > room) short = short.slice(0, -1);
  return `${short.join("")}…`;
}
