// What is ticked, filled in or signed on paper: boxes large enough for a gloved hand, and tables. Knows no document.
import type { Field, SignOff } from "../../document.ts";
import type { Words } from "../../words/en.ts";
import type { CellContent, Column, Span, TableContent } from "../chapters.ts";
import type { Pen, Tag } from "./pen.ts";
import { below, type Cell, type Frame, type Piece, paragraph, row, under } from "./piece.ts";

/** Sizes of letters, in points: read at arm's length, the lesser ones at a desk. */
export const SIZE = { title: 19, chapter: 14, task: 12.5, step: 13, do: 11.5, detail: 10, small: 8.5 } as const;

/** Side of a box to tick: 7 mm. */
const BOX = 20;
const BESIDE_BOX = BOX + 9;
/** Height of a line to write on: 9 mm. */
const WRITE = 26;

const RULE = { width: 0.6, colour: "#777777" } as const;
const EDGE = { width: 1, colour: "#000000" } as const;
const HEADING_GROUND = "#ececec";

/** A box to tick with its text, as an entry of a list. */
export function tick(frame: Frame, spans: readonly Span[], keep: boolean): readonly Piece[] {
  const entry = below(frame.tag, "LI");
  const cell: Cell = {
    x: BESIDE_BOX,
    width: frame.width - BESIDE_BOX,
    spans,
    look: { size: SIZE.do },
    tag: below(entry, "LBody"),
  };
  const label = below(entry, "Lbl");
  // A single line stands at the middle of its box.
  return row(frame, [cell], {
    gap: 7,
    keep,
    least: BOX,
    margin: 2.5,
    with: (pen, top) => pen.within(label, () => pen.tickBox(frame.left, top, BOX)),
  });
}

/** Boxes side by side, each with its label. */
export function ticks(frame: Frame, labels: readonly string[], keep: boolean): readonly Piece[] {
  const list = under(frame, "L");
  const widest = Math.max(...labels.map((label) => frame.widthOf(SIZE.do)(label, true)));
  const slot = Math.min(frame.width, BESIDE_BOX + widest + 14);
  const inRow = Math.max(1, Math.floor(frame.width / slot));
  return Array.from({ length: Math.ceil(labels.length / inRow) }, (_, at) =>
    labels.slice(at * inRow, (at + 1) * inRow),
  ).flatMap((shown, at) => {
    const entries = shown.map(() => below(list.tag, "LI"));
    const cells = shown.map(
      (label, nth): Cell => ({
        x: nth * slot + BESIDE_BOX - 3,
        width: slot - BESIDE_BOX,
        spans: [{ text: label, bold: true }],
        look: { size: SIZE.do },
        tag: below(entries[nth] as Tag, "LBody"),
      }),
    );
    return row(frame, cells, {
      gap: at === 0 ? 6 : 9,
      keep: keep || (at + 1) * inRow < labels.length,
      least: BOX,
      margin: 2.5,
      with: (pen, top) => {
        entries.forEach((entry, nth) => {
          pen.within(below(entry, "Lbl"), () => pen.tickBox(frame.left + nth * slot, top, BOX));
        });
      },
    });
  });
}

/** A value to be written down, with what it must be. */
export function field(frame: Frame, one: Field, words: Words, keep: boolean): readonly Piece[] {
  const write = Math.min(190, frame.width * 0.42);
  const limits = [
    ...(one.limits === null ? [] : [words.records.mustBe(one.limits)]),
    ...(one.tools === null ? [] : [`${words.labels.measuredWith}: ${one.tools}`]),
  ].join("\n");
  const tag = below(frame.tag, "P");
  const cell: Cell = {
    x: 0,
    width: frame.width - write - 12,
    spans: [{ text: `${one.label}:`, bold: true }, { text: ` ${limits}` }],
    look: { size: SIZE.detail },
    tag,
  };
  return row(frame, [cell], {
    gap: 7,
    keep,
    least: WRITE,
    margin: 5,
    with: (pen, top) => toWriteOn(pen, frame.left + frame.width - write, top, write, WRITE),
  });
}

/** Who signs, and where. */
export function signOff(frame: Frame, { role, pass }: SignOff, words: Words, keep: boolean): readonly Piece[] {
  const { name, signature, date } = words.labels;
  const who = pass === null ? role : words.records.unit(role, pass);
  const shares = [
    [name, 0.36],
    [signature, 0.4],
    [date, 0.24],
  ] as const;
  const tag = below(frame.tag, "P");
  let x = 0;
  const boxes = shares.map(([label, share]) => {
    const box = { label, x, width: frame.width * share };
    x += box.width;
    return box;
  });
  const captions = boxes.map(
    (box): Cell => ({
      x: box.x + 4,
      width: box.width - 8,
      spans: [{ text: box.label, colour: "#333333" }],
      look: { size: SIZE.small },
      tag,
    }),
  );
  const asked = paragraph({ ...frame, tag }, [{ text: who, bold: true }], { size: SIZE.detail }, "Span", {
    gap: 7,
    keep: true,
  });
  return [
    ...asked,
    ...row(frame, captions, {
      gap: 2,
      keep,
      least: WRITE + 8,
      margin: 2,
      with: (pen, top) => {
        for (const box of boxes) toWriteOn(pen, frame.left + box.x, top, box.width, WRITE + 8);
      },
    }),
  ];
}

function toWriteOn(pen: Pen, x: number, top: number, width: number, height: number): void {
  pen.beside(() => pen.box(x, top, width, height, { ground: "#ffffff", edge: EDGE }));
}

/** A table; the first cell of each row is its heading. A row stays whole, and the heads stand on each page. */
export function table(frame: Frame, { columns, rows }: TableContent): readonly Piece[] {
  const tag = below(frame.tag, "Table");
  const [head, body] = [below(tag, "THead"), below(tag, "TBody")];
  const heads = columns.map(({ title }): CellContent => [{ text: title, bold: true }]);
  const above = tableRow(frame, columns, heads, below(head, "TR"), true);
  const [again] = tableRow(frame, columns, heads, null, true);
  const inner = rows.flatMap((cells) => tableRow(frame, columns, cells, below(body, "TR"), false));
  return [...above, ...inner.map((piece) => (again === undefined ? piece : { ...piece, head: again }))];
}

function tableRow(
  frame: Frame,
  columns: readonly Column[],
  given: readonly CellContent[],
  tag: Tag | null,
  isHead: boolean,
): readonly Piece[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  let x = 0;
  const cells = columns.map(({ share, language }, at) => {
    const width = (frame.width * share) / whole;
    const content = given[at] ?? [];
    const cell = {
      x: x + 4,
      width: width - 8,
      spans: typeof content === "string" ? [] : content,
      look: { size: isHead ? SIZE.small : SIZE.detail },
      tag: tag && cellTag(tag, isHead, at, language),
      fill: typeof content === "string" ? content : null,
    };
    x += width;
    return cell;
  });
  const filled = cells.filter(({ fill }) => fill !== null);
  return row(frame, cells, {
    gap: isHead ? 4 : 0,
    keep: isHead,
    least: filled.some(({ fill }) => fill === "line") ? WRITE + 6 : filled.length > 0 ? BOX + 6 : 0,
    margin: 3.5,
    with: (pen, top, height) => {
      pen.beside(() => {
        if (isHead) pen.box(frame.left, top, frame.width, height, { ground: HEADING_GROUND });
        else pen.line(frame.left, top, frame.left + frame.width, top, RULE);
      });
      for (const cell of filled) {
        const left = frame.left + cell.x;
        if (cell.fill === "line") toWriteOn(pen, left, top + 3, cell.width, WRITE);
        else if (cell.tag !== null) pen.within(cell.tag, () => pen.tickBox(left, top + 3, BOX));
      }
    },
  });
}

function cellTag(row: Tag, isHead: boolean, at: number, language: string | undefined): Tag {
  if (isHead) return { type: "TH", parent: row, scope: "Column" };
  if (at === 0) return { type: "TH", parent: row, scope: "Row" };
  return language === undefined ? below(row, "TD") : { ...below(row, "TD"), language };
}
