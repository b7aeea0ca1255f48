// The work of a document as pieces of pages: statements kept with what they guard, steps with their numbers in the margin. Knows the
// document only.

import type {
  Block,
  Direction,
  Instruction,
  Picture,
  Section,
  SignOff,
  StatementBlock,
  StepRow,
  TableBlock,
} from "../../document.ts";
import type { CircleFigure } from "../../drawings/circle-figure.ts";
import { laidOut } from "../../drawings/circle-layout.ts";
import { drawingOf } from "../../drawings/svg-drawing.ts";
import { signalColours } from "../../signal-colours.ts";
import type { Words } from "../../words/en.ts";
import { tableContent } from "../chapters.ts";
import { sizedPicture } from "../picture-size.ts";
import { circlePiece } from "./circle.ts";
import { drawDrawing } from "./drawing.ts";
import { field, SIZE, signOff, table, tick, ticks } from "./entries.ts";
import type { Pen, Tag } from "./pen.ts";
import {
  below,
  boxed,
  type Frame,
  inset,
  kept,
  keptTogether,
  type Piece,
  paragraph,
  railed,
  row,
  under,
} from "./piece.ts";

export interface At {
  readonly frame: Frame;
  readonly words: Words;
  /** Of the headings. */
  readonly level: number;
  /** Height of a page. */
  readonly page: number;
}

/** For the number of a step. */
const MARGIN = 46;
const RAIL = 12;
const GREY = { width: 1.6, colour: "#8a8a8a" } as const;

/** Statements and notes stay with what comes behind them. */
export function blockPieces(blocks: readonly Block[], at: At): readonly Piece[] {
  let list: Tag | null = null;
  return blocks.flatMap((block, nth) => {
    if (block.kind !== "instruction") {
      list = null;
      const pieces = pieceFor(block, at, nth === 0);
      const guards = block.kind === "statement" || block.kind === "note";
      return guards && nth < blocks.length - 1 ? kept(pieces) : pieces;
    }
    // Instructions one after the other are one list.
    list ??= below(at.frame.tag, "L");
    return instructionPieces(block, { ...at, frame: { ...at.frame, tag: list } }, at);
  });
}

function pieceFor(block: Exclude<Block, Instruction>, at: At, isFirst: boolean): readonly Piece[] {
  const { frame, words } = at;
  switch (block.kind) {
    case "section":
      return sectionPieces(block, at);
    case "statement":
      return statementPieces(block, at);
    case "note": {
      const spans = [{ text: `${words.signals.note} `, bold: true }, { text: block.text }];
      return railed(paragraph(inset(frame, RAIL), spans, { size: SIZE.detail }, "P", { gap: 7 }), frame.left + 2, GREY);
    }
    case "step":
      return stepPieces(block, at, isFirst);
    case "branch":
      return block.arms.flatMap(({ heading, blocks }) => headed(heading, blocks, at));
    case "group":
      return headed(block.heading, block.blocks, at);
    case "direction":
      return directionPieces(block, at);
    case "table":
      return tablePieces(block, at);
  }
}

/** A heading, and blocks beside a line that shows how far it holds. */
function headed(heading: string, blocks: readonly Block[], at: At): readonly Piece[] {
  const group = under(at.frame, "Sect");
  const head = paragraph(group, [{ text: heading, bold: true }], { size: SIZE.do }, "P", { gap: 9, keep: true });
  const inner = blockPieces(blocks, { ...at, frame: inset(group, RAIL) });
  return [...head, ...railed(inner, group.left + 3, GREY)];
}

function sectionPieces(section: Section, at: At): readonly Piece[] {
  const { words, level } = at;
  const frame = under(at.frame, "Sect");
  const name = section.origin === null ? `${section.number} ${section.title}` : words.flow.performed(section.origin);
  const title = section.pass === null ? name : `${name} (${section.pass})`;
  return [
    ...heading(frame, title, level, SIZE.task),
    ...kept(sources(section.citations, frame, words)),
    ...blockPieces(section.blocks, { ...at, frame, level: level + 1 }),
  ];
}

/** A heading with a line below it; stays with what follows and is in the list of contents. */
export function heading(frame: Frame, title: string, level: number, size: number): readonly Piece[] {
  const type = `H${Math.min(level, 6)}`;
  const pieces = paragraph(frame, [{ text: title, bold: true }], { size }, type, {
    gap: size * 1.3,
    keep: true,
    margin: 2,
    with: (pen) => pen.bookmark(level - 1, title),
  });
  return pieces.map((piece, at) =>
    at < pieces.length - 1
      ? piece
      : {
          ...piece,
          draw: (pen, top, above) => {
            const y = top + piece.height;
            pen.beside(() => pen.line(frame.left, y, frame.left + frame.width, y, { width: level < 3 ? 1.2 : 0.6 }));
            piece.draw(pen, top, above);
          },
        },
  );
}

function statementPieces({ signal, hazards, text, avoid, wear }: StatementBlock, at: At): readonly Piece[] {
  const { words, page } = at;
  const { labels } = words;
  const { panel, text: ink } = signalColours[signal];
  const frame = under(at.frame, "Div");
  const inner = { ...frame, left: frame.left + 8, width: frame.width - 16 };
  const alert = signal !== "caution";
  const band = row(
    frame,
    [
      {
        x: alert ? 32 : 8,
        width: frame.width - (alert ? 40 : 16),
        spans: [{ text: words.signals[signal], bold: true }, { text: `  ${words.comma(hazards)}` }],
        look: { size: SIZE.do, colour: ink },
        tag: below(frame.tag, "P"),
      },
    ],
    {
      gap: 9,
      keep: true,
      margin: 3,
      with: (pen, top, height) =>
        pen.beside(() => {
          pen.box(frame.left, top, frame.width, height, { ground: panel });
          if (alert) alertSymbol(pen, frame.left + 8, top + 3, ink);
        }),
    },
  );
  const said = (label: string | null, one: string, gap: number): readonly Piece[] =>
    paragraph(
      inner,
      [...(label === null ? [] : [{ text: `${label}: `, bold: true }]), { text: one }],
      { size: SIZE.do },
      "P",
      { gap, keep: true },
    );
  const pieces = [
    ...band,
    ...said(null, text, 5),
    ...(avoid === null ? [] : said(labels.avoid, avoid, 3)),
    ...(wear.length === 0 ? [] : said(labels.wear, words.comma(wear), 3)),
    spacer(6),
  ];
  return boxed(pieces, frame, { edge: { width: 1.6, colour: panel } }, page);
}

/** A triangle with a mark in it; the word beside it says the same. */
function alertSymbol(pen: Pen, x: number, top: number, ink: string): void {
  const edge = { width: 1.4, colour: ink };
  pen.shape(
    [
      [x + 9, top],
      [x + 18, top + 15],
      [x, top + 15],
    ],
    { edge },
  );
  pen.line(x + 9, top + 5, x + 9, top + 10, { ...edge, width: 1.8 });
  pen.line(x + 9, top + 11.5, x + 9, top + 13, { ...edge, width: 1.8 });
}

function spacer(height: number): Piece {
  return { gap: 0, height, keep: false, draw: () => {} };
}

/** @param isFirst whether it stands right below a heading */
function stepPieces(step: StepRow, at: At, isFirst: boolean): readonly Piece[] {
  const { words, level, page } = at;
  const { labels } = words;
  const whole = under(at.frame, "Sect");
  const frame = inset(whole, MARGIN);
  const inside = { ...at, frame, level: level + 1 };
  const small = (text: string): readonly Piece[] =>
    paragraph(frame, [{ text }], { size: SIZE.detail }, "P", { gap: 3 });
  const body = [
    ...marks(step, frame, words),
    ...(step.terms.length === 0 ? [] : small(step.terms.join(" "))),
    ...(step.words === null
      ? []
      : paragraph(frame, [{ text: step.words, bold: true }], { size: SIZE.do }, "P", { gap: 3, keep: true })),
    ...blockPieces(step.blocks, inside),
    ...step.fields.flatMap((one) => field(frame, one, words, false)),
    ...step.whys.flatMap((why) => small(`${labels.why}: ${why}`)),
    ...step.pictures.flatMap((picture) => picturePieces(picture, frame, words)),
    ...sources(step.citations, frame, words),
    ...step.signs.flatMap((sign) => signOff(frame, sign, words, false)),
    ...holdPieces(step.hold, inside),
  ];
  const lead = numbered(step.number, body, whole, frame, level);
  return keptTogether(isFirst ? lead : parted(lead, whole), page * KEPT_WHOLE);
}

/** A step that takes no more than this share of a page is never parted. */
const KEPT_WHOLE = 0.6;

/** The number in the margin of the first piece; above it where it is too long for that. */
function numbered(number: string, body: readonly Piece[], whole: Frame, frame: Frame, level: number): readonly Piece[] {
  const look = { size: SIZE.step, bold: true };
  const isLong = whole.widthOf(look.size)(number, true) > frame.left - whole.left - 6;
  const [first, ...rest] = body;
  const tag = below(whole.tag, `H${Math.min(level, 6)}`);
  if (isLong || first === undefined) {
    const cell = { x: 0, width: whole.width, spans: [{ text: number, bold: true }], look, tag };
    return [...row(whole, [cell], { gap: 13, keep: true }), ...body];
  }
  const lead: Piece = {
    ...first,
    gap: 13,
    height: Math.max(first.height, look.size * 1.6),
    draw: (pen, top, above) => {
      pen.within(tag, () => pen.letters(number, whole.left, top + look.size * 1.25, look));
      first.draw(pen, top, above);
    },
  };
  return [lead, ...rest];
}

/** A line parts it from the step before, on the same page. */
function parted(pieces: readonly Piece[], { left, width }: Frame): readonly Piece[] {
  const [first, ...rest] = pieces;
  if (first === undefined) return [];
  const draw: Piece["draw"] = (pen, top, above) => {
    if (above > 0)
      pen.beside(() => pen.line(left, top - 6, left + width, top - 6, { width: 0.6, colour: GREY.colour }));
    first.draw(pen, top, above);
  };
  return [{ ...first, draw }, ...rest];
}

/** Importance, pass and name, where a step has any. */
function marks({ name, pass, critical }: StepRow, frame: Frame, { labels }: Words): readonly Piece[] {
  if (name === null && pass === null && !critical) return [];
  const spans = [
    ...(critical ? [{ text: `${labels.critical}  `, bold: true, colour: signalColours.danger.panel }] : []),
    ...(pass === null ? [] : [{ text: `${pass}  `, bold: true }]),
    ...(name === null ? [] : [{ text: name, colour: "#444444" }]),
  ];
  return paragraph(frame, spans, { size: SIZE.detail }, "P", { keep: true, margin: 2 });
}

function directionPieces({ sense, text }: Direction, { frame, page }: At): readonly Piece[] {
  const look = { size: sense === "left out" ? SIZE.detail : SIZE.do };
  const said = (within: Frame): readonly Piece[] =>
    paragraph(within, [{ text, bold: sense !== "left out" }], look, "P", { gap: 9 });
  if (sense !== "stop" && sense !== "unreadable") return said(frame);
  const inner = { ...frame, left: frame.left + 8, width: frame.width - 16 };
  return boxed(said(inner), frame, { edge: { width: 2 } }, page, 6);
}

/** A table of the document, with its title and what is said below it. */
export function tablePieces(block: TableBlock, { frame }: At): readonly Piece[] {
  const { title, notes } = block;
  return [
    ...(title === null
      ? []
      : paragraph(frame, [{ text: title, bold: true }], { size: SIZE.do }, "P", { gap: 9, keep: true })),
    ...table(frame, tableContent(block)),
    ...notes.flatMap((text) => paragraph(frame, [{ text }], { size: SIZE.detail }, "P", { gap: 4 })),
  ];
}

/** @param at where its list stands; its tag is the list */
function instructionPieces(one: Instruction, at: At, around: At): readonly Piece[] {
  const { frame, words } = at;
  const single = one.ticks.length === 1 && one.rounds.length === 0;
  const beside = inset(around.frame, single ? 29 : 0);
  const small = (text: string): readonly Piece[] =>
    paragraph(beside, [{ text }], { size: SIZE.detail }, "P", { gap: 3 });
  const details = one.details.flatMap(small);
  const figure = one.figure === undefined ? [] : figurePieces(one.figure, beside);
  const rounds =
    one.rounds.length > 0
      ? roundPieces(one.rounds, around.frame, words)
      : single
        ? []
        : ticks(
            around.frame,
            one.ticks.map(({ label }) => label ?? ""),
            false,
          );
  const fields = one.fields.flatMap((each) => field(beside, each, words, false));
  const lead = single
    ? tick(frame, [{ text: one.text }], false)
    : paragraph(around.frame, [{ text: one.text }], { size: SIZE.do }, "P", { gap: 7, keep: true, margin: 2.5 });
  return [
    ...keptTogether([...lead, ...details, ...figure, ...rounds, ...fields], at.page * KEPT_WHOLE),
    ...(one.failing === null
      ? []
      : headed(`${one.failing.heading}:`, one.failing.blocks, { ...around, frame: beside })),
    ...(one.performed === null
      ? []
      : railed(
          sectionPieces(one.performed, { ...around, frame: inset(around.frame, RAIL) }),
          around.frame.left + 3,
          GREY,
        )),
  ];
}

/** Rounds of tightening, each ticked by itself. */
function roundPieces(rounds: readonly string[], frame: Frame, { labels }: Words): readonly Piece[] {
  const list = under(frame, "L");
  return rounds.flatMap((value, at) =>
    tick(list, [{ text: `${labels.round} ${at + 1}: ` }, { text: value, bold: true }], at < rounds.length - 1),
  );
}

/** A drawing of numbered places, and below it what its signs mean. */
export function figurePieces(figure: CircleFigure, frame: Frame): readonly Piece[] {
  const drawing = circlePiece(figure, laidOut(figure), frame);
  return [drawing, ...paragraph(frame, [{ text: figure.legend }], { size: SIZE.small }, "P", { gap: 3 })];
}

/** A picture, if it is one that a page can hold, and below it what it is called. */
function picturePieces({ text, image }: Picture, frame: Frame, { labels }: Words): readonly Piece[] {
  const name = paragraph(frame, [{ text: `${labels.figure}: ${text}` }], { size: SIZE.detail }, "P", { gap: 3 });
  const sized = sizedPicture(image) ?? drawingOf(image);
  if (sized === null) return name;
  // A pixel of a screen is three quarters of a point.
  const scale = Math.min(0.75, frame.width / sized.width, TALLEST / sized.height);
  const tag = { type: "Figure", parent: frame.tag, alt: text };
  const drawing: Piece = {
    gap: 6,
    height: sized.height * scale,
    keep: true,
    draw: (pen, top) =>
      pen.within(tag, () => {
        if ("shapes" in sized) drawDrawing(pen, sized, frame.left, top, scale, frame);
        else pen.picture(sized.bytes, frame.left, top, sized.width * scale);
      }),
  };
  return [drawing, ...name];
}

const TALLEST = 320;

function holdPieces(hold: readonly SignOff[], { frame, words, page }: At): readonly Piece[] {
  const [first] = hold;
  if (first === undefined) return [];
  const whole = under(frame, "Div");
  const inner = { ...whole, left: whole.left + 9, width: whole.width - 18 };
  const spans = [{ text: `${words.labels.holdPoint}  `, bold: true }, { text: words.signOff.hold(first.role) }];
  const pieces = [
    ...paragraph(inner, spans, { size: SIZE.do }, "P", { gap: 10, keep: true }),
    ...hold.flatMap((sign) => signOff(inner, sign, words, false)),
  ];
  return boxed(pieces, whole, { ground: "#f4f4f4", edge: { width: 2.4 } }, page, 9);
}

function sources(citations: readonly string[], frame: Frame, { labels }: Words): readonly Piece[] {
  if (citations.length === 0) return [];
  const text = `${labels.source}: ${citations.join("; ")}`;
  return paragraph(frame, [{ text, colour: "#333333" }], { size: SIZE.small }, "P", { gap: 4 });
}
