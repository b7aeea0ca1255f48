// A document for a word processor, with boxes that can be ticked on screen. Same document, same bytes: what the library takes from
// the clock or counts through is set anew.
import {
  Document as DocxFile,
  Footer,
  Header,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  Tab,
  TabStopType,
  TextRun,
} from "docx";
import type { Document } from "../../document.ts";
import type { Means } from "../../index.ts";
import { chaptersAfter, chaptersBefore } from "../chapters.ts";
import { steadyZip } from "../steady-zip.ts";
import { BULLETS, type Frame, para, SIZE, TICK_STYLE } from "./entries.ts";
import { chapterHead, chapterParts, titleParts } from "./front.ts";
import { blockParts } from "./work.ts";

/** A4 with 14 mm at the sides, in twips. */
const PAGE = { width: 11906, height: 16838, side: 794, top: 1300, bottom: 950 } as const;

export async function documentDocx(document: Document, { words }: Means): Promise<Uint8Array> {
  const frame: Frame = { indent: 0, width: PAGE.width - 2 * PAGE.side, words };
  const file = new DocxFile({
    title: `${document.head.page} · ${document.title}`,
    creator: "Sprag",
    lastModifiedBy: "Sprag",
    styles: {
      default: {
        document: { run: { font: "Arial", size: SIZE.do, language: { value: words.language } } },
        ...Object.fromEntries(
          [1, 2, 3, 4, 5, 6].map((level) => [`heading${level}`, { run: { color: "000000", italics: false } }]),
        ),
      },
      paragraphStyles: [{ id: TICK_STYLE, name: TICK_STYLE, basedOn: "Normal", run: { size: SIZE.box } }],
    },
    numbering: {
      config: [
        {
          reference: BULLETS,
          levels: [
            {
              level: 0,
              format: LevelFormat.BULLET,
              text: "•",
              style: { paragraph: { indent: { start: 280, hanging: 220 } } },
            },
          ],
        },
      ],
    },
    sections: [
      {
        properties: {
          page: {
            size: { width: PAGE.width, height: PAGE.height },
            margin: { top: PAGE.top, bottom: PAGE.bottom, left: PAGE.side, right: PAGE.side, header: 500, footer: 400 },
          },
        },
        headers: { default: new Header({ children: headParts(document, frame) }) },
        footers: { default: new Footer({ children: [footPart(document, frame)] }) },
        children: [
          ...titleParts(document, frame),
          ...chaptersBefore(document, words).flatMap((chapter) => chapterParts(chapter, frame)),
          ...(document.blocks.length === 0 ? [] : [chapterHead(frame, words.labels.work)]),
          ...blockParts(document.blocks, { frame, level: 3 }),
          ...chaptersAfter(document, words).flatMap((chapter) => chapterParts(chapter, frame)),
          // A file may not end with a table.
          para(frame, [], { size: SIZE.small }),
        ],
      },
    ],
  });
  return steadied(new Uint8Array(await Packer.toArrayBuffer(file)), document.head.date);
}

/** Which document, which page of how many, and that it is a draft where it is one. */
function headParts({ head, title, draft }: Document, { words, width }: Frame): readonly Paragraph[] {
  const tabStops = [{ type: TabStopType.RIGHT, position: width }];
  const look = { size: SIZE.small };
  // The words with signs in place of the numbers, which the word processor fills in.
  const [before = "", between = "", after = ""] = words.head.pageOf("\0", "\0").split("\0");
  const page = new TextRun({
    ...look,
    bold: true,
    children: [before, PageNumber.CURRENT, between, PageNumber.TOTAL_PAGES, after],
  });
  const tab = new TextRun({ ...look, children: [new Tab()] });
  return [
    new Paragraph({ tabStops, children: [new TextRun({ ...look, text: head.page, bold: true }), tab, page] }),
    new Paragraph({
      tabStops,
      spacing: { after: 120 },
      border: { bottom: { style: "single", size: 6, space: 3, color: "000000" } },
      children: [
        new TextRun({ ...look, text: title }),
        ...(draft ? [tab, new TextRun({ text: words.labels.draft, bold: true, size: SIZE.do })] : []),
      ],
    }),
  ];
}

function footPart({ draft }: Document, frame: Frame): Paragraph {
  const { labels, head } = frame.words;
  const text = `${draft ? `${labels.draft} · ${labels.draftMeaning} ` : ""}${head.uncontrolled}`;
  return para(frame, [{ text }], { size: SIZE.small });
}

/** The date of the document for that of the file, and drawings counted from 1. */
function steadied(bytes: Uint8Array, day: string | null): Uint8Array {
  return steadyZip(bytes, (path, text) => {
    if (path === "docProps/core.xml")
      return text().replace(/(?<=<dcterms:(?:created|modified)\b[^>]*>)[^<]*/g, `${day ?? "1970-01-01"}T00:00:00Z`);
    if (path !== "word/document.xml") return null;
    let count = 0;
    return text()
      .replace(/(?<=<wp:docPr\b[^>]*?\bid=")\d+/g, () => String(++count))
      .replace(/(?<=<wp[sg]:cNvPr\b)[^>]*?(?=\/?>)/g, () => ` id="${++count}" name="${count}"`);
  });
}
