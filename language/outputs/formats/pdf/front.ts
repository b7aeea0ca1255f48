// Title, facts and chapters on pages. Knows the document only.
import type { Document, Signal } from "../../document.ts";
import { signalColours } from "../../signal-colours.ts";
import type { Chapter, Passage } from "../chapters.ts";
import { SIZE, table, tick } from "./entries.ts";
import { below, boxed, type Frame, type Piece, paragraph, row, under } from "./piece.ts";
import { type At, figurePieces, heading, tablePieces } from "./work.ts";

/**
 * What stands above all chapters: title, whether it is a draft, facts.
 * @param unreadable what of it cannot be read here, each a sentence
 */
export function titlePieces(document: Document, unreadable: readonly string[], at: At): readonly Piece[] {
  const { frame } = at;
  return [
    ...paragraph(frame, [{ text: document.title, bold: true }], { size: SIZE.title }, "H1", { keep: true }),
    ...(document.draft ? noticePieces(at.words.labels.draft, at.words.labels.draftMeaning, at) : []),
    ...unreadable.flatMap((text) => noticePieces(at.words.head.unprinted, text, at)),
    ...factPieces(document, frame),
    ...(document.filledBy === undefined ? [] : tablePieces(document.filledBy, at)),
  ];
}

export function chapterPieces({ title, body }: Chapter, at: At): readonly Piece[] {
  return [...chapterHead(at.frame, title), ...body.flatMap((passage) => passagePieces(passage, at))];
}

/** A heading of the second level. */
export function chapterHead(frame: Frame, title: string): readonly Piece[] {
  return heading(frame, title, 2, SIZE.chapter);
}

function passagePieces(passage: Passage, at: At): readonly Piece[] {
  const { frame } = at;
  switch (passage.kind) {
    case "table":
      return table(frame, passage);
    case "signals":
      return signalPieces(passage.signals, at);
    case "bullets":
      return bullets(passage.texts, frame);
    case "ticks": {
      const list = under(frame, "L");
      return passage.texts.flatMap((text) => tick(list, [{ text }], false));
    }
    case "remark":
      return paragraph(frame, [{ text: passage.text }], { size: SIZE.small }, "P", { gap: 4 });
    case "figure":
      return figurePieces(passage.figure, frame);
  }
}

function noticePieces(what: string, meaning: string, { frame, page }: At): readonly Piece[] {
  const inner = { ...frame, left: frame.left + 8, width: frame.width - 16 };
  const spans = [{ text: `${what}  `, bold: true }, { text: meaning }];
  const edge = { width: 2.5, colour: signalColours.danger.panel };
  return boxed(paragraph(inner, spans, { size: SIZE.task }, "P", { gap: 8, keep: true }), frame, { edge }, page, 7);
}

const LABELS = 0.3;

function factPieces({ head }: Document, frame: Frame): readonly Piece[] {
  const whole = under(frame, "Table");
  const look = { size: SIZE.detail };
  const rest = frame.width * LABELS + 8;
  return head.facts.flatMap(({ label, values }, at) => {
    const tag = below(whole.tag, "TR");
    const head = { type: "TH", parent: tag, scope: "Row" } as const;
    const cells = [
      { x: 0, width: rest - 8, spans: [{ text: label, bold: true }], look, tag: head },
      { x: rest, width: frame.width - rest, spans: [{ text: values.join("\n") }], look, tag: below(tag, "TD") },
    ];
    return row(frame, cells, { gap: at === 0 ? 8 : 2 });
  });
}

/** For the word of a signal on its ground. */
const SIGNAL = 100;

function signalPieces(signals: readonly Signal[], { frame, words }: At): readonly Piece[] {
  const whole = under(frame, "Table");
  const look = { size: SIZE.detail };
  const rest = SIGNAL + 8;
  return signals.flatMap((signal) => {
    const tag = below(whole.tag, "TR");
    const { panel, text: colour } = signalColours[signal];
    const word = [{ text: words.signals[signal], bold: true, colour }];
    const head = { type: "TH", parent: tag, scope: "Row" } as const;
    const meaning = [{ text: words.signalKey[signal] }];
    const cells = [
      { x: 8, width: SIGNAL - 12, spans: word, look, tag: head },
      { x: rest, width: frame.width - rest, spans: meaning, look, tag: below(tag, "TD") },
    ];
    return row(frame, cells, {
      gap: 4,
      margin: 2.5,
      with: (pen, top, height) => {
        const edge = { width: 0.8, colour: signal === "note" ? colour : panel };
        pen.beside(() => pen.box(frame.left, top, SIGNAL, height, { ground: panel, edge }));
      },
    });
  });
}

function bullets(texts: readonly string[], frame: Frame): readonly Piece[] {
  const list = under(frame, "L");
  const look = { size: SIZE.detail };
  return texts.flatMap((text) => {
    const entry = below(list.tag, "LI");
    const cells = [
      { x: 2, width: 10, spans: [{ text: "•" }], look, tag: below(entry, "Lbl") },
      { x: 14, width: frame.width - 14, spans: [{ text }], look, tag: below(entry, "LBody") },
    ];
    return row(frame, cells, { gap: 3 });
  });
}
