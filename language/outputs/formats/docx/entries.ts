// Paragraphs and tables of a word processor as a checklist needs them: boxes that can be ticked on screen, lines to write on. Knows no
// document.
import {
  AlignmentType,
  BorderStyle,
  CheckBox,
  HeadingLevel,
  HeightRule,
  type IBorderOptions,
  type ITableCellBorders,
  Paragraph,
  type ParagraphChild,
  ShadingType,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  VerticalAlignTable,
  WidthType,
} from "docx";
import type { Field, SignOff } from "../../document.ts";
import type { Words } from "../../words/en.ts";
import type { CellContent, Span, TableContent } from "../chapters.ts";
import { unparted } from "../unparted.ts";

export type Part = Paragraph | Table;

/** Where parts come to stand. Lengths in twips, twentieths of a point. */
export interface Frame {
  readonly indent: number;
  readonly width: number;
  readonly words: Words;
}

/** Half points: read at arm's length, the lesser ones at a desk. */
export const SIZE = { title: 38, chapter: 28, task: 25, step: 25, do: 23, detail: 20, small: 17, box: 46 } as const;

export interface ParaLook {
  readonly size: number;
  readonly before?: number;
  readonly after?: number;
  readonly keep?: boolean;
  readonly heading?: number;
  readonly bullet?: boolean;
  /** Where it is not that of the document. */
  readonly language?: string;
  /** Of the lines after the first. */
  readonly hanging?: number;
}

function runs(texts: readonly Span[], size: number, language?: string): readonly TextRun[] {
  return texts.flatMap(({ text, bold = false, colour }) =>
    text.split("\n").map(
      (line, at) =>
        new TextRun({
          text: withMinus(unparted(line)),
          size,
          bold,
          ...(at > 0 ? { break: 1 } : {}),
          ...(colour === undefined ? {} : { color: hex(colour) }),
          ...(language === undefined ? {} : { language: { value: language } }),
        }),
    ),
  );
}

/** Word processors end a line behind a hyphen: before a number it is a minus, which stays with it. */
function withMinus(text: string): string {
  return text.replace(/(?<=^|[\s(])-(?=\d)/g, "\u2212");
}

export function para(frame: Frame, texts: readonly Span[], look: ParaLook): Paragraph {
  return paraOf(frame, runs(texts, look.size, look.language), look);
}

export function paraOf(frame: Frame, children: readonly ParagraphChild[], look: ParaLook): Paragraph {
  const { before = 60, after = 40, keep = false, heading, bullet = false, hanging = 0 } = look;
  return new Paragraph({
    children,
    spacing: { before, after },
    keepNext: keep,
    keepLines: true,
    bidirectional: frame.words.direction !== "ltr",
    ...(bullet
      ? { numbering: { reference: BULLETS, level: 0 } }
      : { indent: { start: frame.indent + hanging, hanging } }),
    ...(heading === undefined ? {} : { heading: HEADINGS[Math.min(heading, HEADINGS.length) - 1] ?? "Heading6" }),
  });
}

/** The numbering that gives entries of a list their dot. */
export const BULLETS = "dots";

const HEADINGS = [
  HeadingLevel.HEADING_1,
  HeadingLevel.HEADING_2,
  HeadingLevel.HEADING_3,
  HeadingLevel.HEADING_4,
  HeadingLevel.HEADING_5,
  HeadingLevel.HEADING_6,
];

/** A little room between two tables, which would grow into one. */
export function gap(keep = false): Paragraph {
  return new Paragraph({ spacing: { before: 0, after: 0, line: 120, lineRule: "exact" }, keepNext: keep });
}

/** A box that can be ticked on screen and on paper. */
function box(label: string): ParagraphChild {
  const font = "Segoe UI Symbol";
  return new CheckBox({
    alias: label,
    checkedState: { value: "2612", font },
    uncheckedState: { value: "2610", font },
  });
}

const BESIDE_BOX = 520;

/** A box with its text beside it. */
export function tick(frame: Frame, texts: readonly Span[], keep = false): Paragraph {
  const { done } = frame.words.labels;
  return boxed(frame, [box(done), new TextRun({ text: "\t" }), ...runs(texts, SIZE.do)], BESIDE_BOX, keep);
}

/** Boxes in one line, each with its label. */
export function ticks(frame: Frame, labels: readonly string[], keep = false): Paragraph {
  const { done } = frame.words.labels;
  const children = labels.flatMap((label) => [
    box(`${done} ${label}`),
    // A line ends before a box, never behind it.
    ...runs([{ text: `\u00a0${label.replaceAll(" ", "\u00a0")}`, bold: true }, { text: "      " }], SIZE.do),
  ]);
  return boxed(frame, children, 0, keep);
}

function boxed(frame: Frame, children: readonly ParagraphChild[], hanging: number, keep: boolean): Paragraph {
  return new Paragraph({
    style: TICK_STYLE,
    children,
    spacing: { before: 60, after: 60 },
    indent: { start: frame.indent + hanging, hanging },
    keepLines: true,
    keepNext: keep,
    bidirectional: frame.words.direction !== "ltr",
  });
}

/** Of paragraphs with boxes: the box takes its size from it, since the library gives it none. */
export const TICK_STYLE = "Tick";

/** A value to be written down, with what it must be. */
export function field(frame: Frame, { label, limits, tools }: Field): readonly Part[] {
  const { records, labels } = frame.words;
  const asked = [
    ...(limits === null ? [] : [records.mustBe(limits)]),
    ...(tools === null ? [] : [`${labels.measuredWith}: ${tools}`]),
  ].join("\n");
  const texts = [{ text: `${label}: `, bold: true }, { text: asked }];
  const within = inCell(frame);
  return [
    gap(true),
    new Table({
      ...tableLook(frame, [0.58, 0.42]),
      rows: [
        new TableRow({
          cantSplit: true,
          height: { value: 520, rule: HeightRule.ATLEAST },
          children: [
            cell([para(within, texts, { size: SIZE.detail })], { borders: noBorders }),
            cell([para(within, [], { size: SIZE.detail })], { borders: allBorders(line(8)) }),
          ],
        }),
      ],
    }),
  ];
}

/**
 * Who signs, and where.
 * @param keep on the page of what follows
 */
export function signOff(frame: Frame, { role, pass }: SignOff, keep = false): readonly Part[] {
  const { labels, records } = frame.words;
  const who = pass === null ? role : records.unit(role, pass);
  const within = inCell(frame);
  return [
    para(frame, [{ text: who, bold: true }], { size: SIZE.detail, before: 120, keep: true }),
    new Table({
      ...tableLook(frame, [0.36, 0.4, 0.24]),
      rows: [
        new TableRow({
          cantSplit: true,
          height: { value: 680, rule: HeightRule.ATLEAST },
          children: [labels.name, labels.signature, labels.date].map((label) =>
            cell([para(within, [{ text: label, colour: "#333333" }], { size: SIZE.small, before: 20, keep })], {
              borders: allBorders(line(8)),
            }),
          ),
        }),
      ],
    }),
    gap(keep),
  ];
}

/** A table whose head stands on each page, and whose rows stay whole. */
export function table(frame: Frame, { columns, rows }: TableContent): readonly Part[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const within = inCell(frame);
  const borders = allBorders(line(4, "#888888"));
  const heads = columns.map(({ title }) =>
    cell([para(within, [{ text: title, bold: true }], { size: SIZE.small, keep: true })], {
      borders,
      ground: "#ececec",
    }),
  );
  const content = (one: CellContent, language: string | undefined): Paragraph => {
    if (one === "box") return tick(within, []);
    const look = language === undefined ? {} : { language };
    return para(within, one === "line" ? [] : one, { size: SIZE.detail, ...look });
  };
  return [
    gap(true),
    new Table({
      ...tableLook(
        frame,
        columns.map(({ share }) => share / whole),
      ),
      rows: [
        new TableRow({ tableHeader: true, cantSplit: true, children: heads }),
        ...rows.map(
          (cells) =>
            new TableRow({
              cantSplit: true,
              ...(cells.includes("line") ? { height: { value: 560, rule: HeightRule.ATLEAST } } : {}),
              children: cells.map((one, at) => cell([content(one, columns[at]?.language)], { borders })),
            }),
        ),
      ],
    }),
    gap(),
  ];
}

/** Rows without lines: a label, on a ground where it has one, and what it says. */
export function pairs(
  frame: Frame,
  rows: readonly { readonly label: string; readonly text: string; readonly ground?: string; readonly ink?: string }[],
): Table {
  const within = inCell(frame);
  const look = { size: SIZE.detail, before: 20, after: 20 };
  return new Table({
    ...tableLook(frame, [0.3, 0.7]),
    rows: rows.map(({ label, text, ground, ink }) => {
      const head: Span = { text: label, bold: true, ...(ink === undefined ? {} : { colour: ink }) };
      const grounded = ground === undefined ? {} : { ground };
      return new TableRow({
        cantSplit: true,
        children: [
          cell([para(within, [head], look)], { borders: noBorders, ...grounded }),
          cell([para(within, [{ text }], look)], { borders: noBorders }),
        ],
      });
    }),
  });
}

interface CellLook {
  readonly borders?: ITableCellBorders;
  /** Colour of the ground. */
  readonly ground?: string;
}

/** One cell with an edge round what stands in it; stays whole, and with what follows where it is to be kept. */
export function framed(
  frame: Frame,
  rows: readonly { readonly parts: readonly Part[]; readonly look?: CellLook }[],
  edge: IBorderOptions,
): readonly Part[] {
  return [
    gap(true),
    new Table({
      ...tableLook(frame, [1]),
      rows: rows.map(
        ({ parts, look }) =>
          new TableRow({ cantSplit: true, children: [cell(parts, { borders: allBorders(edge), ...look })] }),
      ),
    }),
  ];
}

function cell(children: readonly Part[], { borders, ground }: CellLook): TableCell {
  return new TableCell({
    children,
    verticalAlign: VerticalAlignTable.TOP,
    margins: { top: 40, bottom: 40, left: 100, right: 100 },
    ...(borders === undefined ? {} : { borders }),
    ...(ground === undefined ? {} : { shading: { type: ShadingType.CLEAR, fill: hex(ground), color: "auto" } }),
  });
}

/** Inside a cell nothing is indented. */
export function inCell(frame: Frame): Frame {
  return { ...frame, indent: 0 };
}

/** @param size eighths of a point */
export function line(size: number, colour = "#000000"): IBorderOptions {
  return { style: BorderStyle.SINGLE, size, color: hex(colour) };
}

/** `#b3141d` as a word processor has it. */
function hex(colour: string): string {
  return colour.slice(1);
}

function allBorders(edge: IBorderOptions): ITableCellBorders {
  return { top: edge, bottom: edge, left: edge, right: edge };
}

const none: IBorderOptions = { style: BorderStyle.NONE, size: 0, color: "auto" };
const noBorders = allBorders(none);

function tableLook({ indent, width, words }: Frame, shares: readonly number[]) {
  const columnWidths = shares.map((share) => Math.round(share * (width - indent)));
  return {
    columnWidths,
    width: { size: columnWidths.reduce((sum, one) => sum + one, 0), type: WidthType.DXA },
    indent: { size: indent, type: WidthType.DXA },
    layout: TableLayoutType.FIXED,
    alignment: AlignmentType.START,
    visuallyRightToLeft: words.direction !== "ltr",
  };
}
