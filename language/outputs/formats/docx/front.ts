// Title, facts and chapters in a word processor. Knows the document only.
import type { Document } from "../../document.ts";
import { signalColours } from "../../signal-colours.ts";
import type { Chapter, Passage } from "../chapters.ts";
import { type Frame, framed, gap, inCell, line, type Part, pairs, para, SIZE, table, tick } from "./entries.ts";
import { figureParts, tableParts } from "./work.ts";

/** What stands above all chapters: title, whether it is a draft, facts. */
export function titleParts(document: Document, frame: Frame): readonly Part[] {
  const facts = document.head.facts.map(({ label, values }) => ({ label, text: values.join("\n") }));
  return [
    para(frame, [{ text: document.title, bold: true }], { size: SIZE.title, heading: 1, keep: true }),
    ...(document.draft ? draftParts(frame) : []),
    pairs(frame, facts),
    ...(document.filledBy === undefined ? [] : [gap(), ...tableParts(document.filledBy, frame)]),
  ];
}

export function chapterParts({ title, body }: Chapter, frame: Frame): readonly Part[] {
  return [chapterHead(frame, title), ...body.flatMap((passage) => passageParts(passage, frame))];
}

/** A heading of the second level. */
export function chapterHead(frame: Frame, title: string): Part {
  return para(frame, [{ text: title, bold: true }], { size: SIZE.chapter, before: 320, keep: true, heading: 2 });
}

function passageParts(passage: Passage, frame: Frame): readonly Part[] {
  const { words } = frame;
  switch (passage.kind) {
    case "table":
      return table(frame, passage);
    case "signals": {
      const rows = passage.signals.map((signal) => {
        const { panel, text } = signalColours[signal];
        return { label: words.signals[signal], text: words.signalKey[signal], ground: panel, ink: text };
      });
      return [pairs(frame, rows)];
    }
    case "bullets":
      return passage.texts.map((text) => para(frame, [{ text }], { size: SIZE.detail, bullet: true, before: 20 }));
    case "ticks":
      return passage.texts.map((text) => tick(frame, [{ text }]));
    case "remark":
      return [para(frame, [{ text: passage.text }], { size: SIZE.small })];
    case "figure":
      return figureParts(passage.figure, frame);
  }
}

function draftParts(frame: Frame): readonly Part[] {
  const { labels } = frame.words;
  const texts = [{ text: `${labels.draft}  `, bold: true }, { text: labels.draftMeaning }];
  const edge = line(20, signalColours.danger.panel);
  return [...framed(frame, [{ parts: [para(inCell(frame), texts, { size: SIZE.task })] }], edge), gap()];
}
