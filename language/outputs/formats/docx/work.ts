// The work of a document as paragraphs and tables. Statements are kept with what they guard. Knows the document only.
import { ImageRun } from "docx";
import { ShapeGroupRun } from "docx/shapes";
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
import { drawingOf } from "../../drawings/svg-drawing.ts";
import { signalColours } from "../../signal-colours.ts";
import { type Span, tableContent } from "../chapters.ts";
import { sizedPicture } from "../picture-size.ts";
import { circleShapes } from "./circle.ts";
import { drawingShapes } from "./drawing.ts";
import {
  type Frame,
  field,
  framed,
  inCell,
  line,
  type Part,
  para,
  paraOf,
  SIZE,
  signOff,
  table,
  tick,
  ticks,
} from "./entries.ts";

export interface At {
  readonly frame: Frame;
  /** Of the headings. */
  readonly level: number;
  /** Whether what comes behind belongs on the same page: a signature, what holds up the work. */
  readonly kept?: boolean;
}

const STEP = 560;
const INNER = 360;

export function blockParts(blocks: readonly Block[], { kept = false, ...at }: At): readonly Part[] {
  return blocks.flatMap((block, index) => partsFor(block, { ...at, kept: kept && index === blocks.length - 1 }));
}

function partsFor(block: Block, at: At): readonly Part[] {
  const { frame } = at;
  const { words } = frame;
  switch (block.kind) {
    case "section":
      return sectionParts(block, at);
    case "statement":
      return statementParts(block, frame);
    case "note":
      return [
        para(frame, [{ text: `${words.signals.note}  `, bold: true }, { text: block.text }], {
          size: SIZE.detail,
          before: 120,
          keep: true,
        }),
      ];
    case "step":
      return stepParts(block, at);
    case "branch":
      return block.arms.flatMap(({ heading, blocks }) => headed(heading, blocks, at));
    case "group":
      return headed(block.heading, block.blocks, at);
    case "direction":
      return directionParts(block, frame);
    case "instruction":
      return instructionParts(block, at);
    case "table":
      return tableParts(block, frame);
  }
}

function headed(heading: string, blocks: readonly Block[], at: At): readonly Part[] {
  const head = para(at.frame, [{ text: heading, bold: true }], { size: SIZE.do, before: 160, keep: true });
  return [head, ...blockParts(blocks, { ...at, frame: inner(at.frame, INNER) })];
}

/** Further in; never so far that nothing can be read. */
function inner(frame: Frame, by: number): Frame {
  return { ...frame, indent: Math.min(frame.indent + by, frame.width - 4400) };
}

function sectionParts(section: Section, at: At): readonly Part[] {
  const { frame, level } = at;
  const { flow } = frame.words;
  const name = section.origin === null ? `${section.number} ${section.title}` : flow.performed(section.origin);
  const title = section.pass === null ? name : `${name} (${section.pass})`;
  return [
    para(frame, [{ text: title, bold: true }], { size: SIZE.task, before: 280, keep: true, heading: level }),
    ...sources(section.citations, frame, true),
    ...blockParts(section.blocks, { ...at, level: level + 1 }),
  ];
}

function statementParts({ signal, hazards, text, avoid, wear }: StatementBlock, frame: Frame): readonly Part[] {
  const { words } = frame;
  const { panel, text: colour } = signalColours[signal];
  const within = inCell(frame);
  const said = (label: string | null, one: string): Part =>
    para(within, [...(label === null ? [] : [{ text: `${label}: `, bold: true }]), { text: one }], {
      size: SIZE.do,
      keep: true,
    });
  // The sign of warning in letters, so that it is read out too.
  const sign = signal === "caution" ? "" : "⚠ ";
  const band = [
    { text: `${sign}${words.signals[signal]}`, bold: true, colour },
    { text: `  ${words.comma(hazards)}`, colour },
  ];
  return framed(
    frame,
    [
      { parts: [para(within, band, { size: SIZE.do, keep: true })], look: { ground: panel } },
      {
        parts: [
          said(null, text),
          ...(avoid === null ? [] : [said(words.labels.avoid, avoid)]),
          ...(wear.length === 0 ? [] : [said(words.labels.wear, words.comma(wear))]),
        ],
      },
    ],
    line(12, panel),
  );
}

function stepParts(step: StepRow, at: At): readonly Part[] {
  const { frame, level } = at;
  const { labels } = frame.words;
  const kept = [step.fields, step.signs, step.hold].some((more) => more.length > 0);
  const inside = { frame: inner(frame, STEP), level: level + 1, kept };
  const small = (text: string, keep = false): Part => para(inside.frame, [{ text }], { size: SIZE.detail, keep });
  const head: Span[] = [
    { text: step.number, bold: true },
    ...(step.critical ? [{ text: `   ${labels.critical}`, bold: true, colour: signalColours.danger.panel }] : []),
    ...(step.pass === null ? [] : [{ text: `   ${step.pass}`, bold: true }]),
    ...(step.name === null ? [] : [{ text: `   ${step.name}`, colour: "#444444" }]),
  ];
  return [
    para(frame, head, { size: SIZE.step, before: 240, after: 20, keep: true, heading: level }),
    // What still holds, and when to begin: never on the page before.
    ...(step.terms.length === 0 ? [] : [small(step.terms.join(" "), true)]),
    ...(step.words === null
      ? []
      : [para(inside.frame, [{ text: step.words, bold: true }], { size: SIZE.do, keep: true })]),
    ...blockParts(step.blocks, inside),
    ...step.fields.flatMap((one) => field(inside.frame, one)),
    ...step.whys.map((why) => small(`${labels.why}: ${why}`)),
    ...step.pictures.flatMap((picture) => pictureParts(picture, inside.frame)),
    ...sources(step.citations, inside.frame, step.signs.length + step.hold.length > 0),
    ...step.signs.flatMap((sign) => signOff(inside.frame, sign, step.hold.length > 0)),
    ...holdParts(step.hold, inside.frame),
  ];
}

function directionParts({ sense, text }: Direction, frame: Frame): readonly Part[] {
  const bold = sense !== "left out";
  const look = { size: bold ? SIZE.do : SIZE.detail, before: 120 };
  if (sense !== "stop" && sense !== "unreadable") return [para(frame, [{ text, bold }], look)];
  return framed(frame, [{ parts: [para(inCell(frame), [{ text, bold }], look)] }], line(16));
}

function instructionParts(one: Instruction, at: At): readonly Part[] {
  const { frame } = at;
  const { labels } = frame.words;
  const single = one.ticks.length === 1 && one.rounds.length === 0;
  const beside = single ? inner(frame, 520) : frame;
  const asks = at.kept === true || one.fields.length > 0;
  const lead = single
    ? tick(frame, [{ text: one.text }], asks || one.details.length > 0)
    : para(frame, [{ text: one.text }], { size: SIZE.do, keep: true });
  return [
    lead,
    ...one.details.map((text, at) =>
      para(beside, [{ text }], { size: SIZE.detail, keep: !single || asks || at < one.details.length - 1 }),
    ),
    ...(one.figure === undefined ? [] : figureParts(one.figure, beside, !single)),
    ...one.rounds.map((value, round) =>
      tick(
        frame,
        [{ text: `${labels.round} ${round + 1}: ` }, { text: value, bold: true }],
        asks || round < one.rounds.length - 1,
      ),
    ),
    ...(single || one.rounds.length > 0
      ? []
      : [
          ticks(
            frame,
            one.ticks.map(({ label }) => label ?? ""),
            asks,
          ),
        ]),
    ...one.fields.flatMap((each) => field(beside, each)),
    ...(one.failing === null
      ? []
      : headed(`${one.failing.heading}:`, one.failing.blocks, { ...at, frame: beside, kept: false })),
    ...(one.performed === null ? [] : sectionParts(one.performed, { ...at, frame: inner(frame, INNER), kept: false })),
  ];
}

/** A drawing of numbered places, and below it what its signs mean. */
export function figureParts(figure: CircleFigure, frame: Frame, keep = false): readonly Part[] {
  return [
    paraOf(frame, [new ShapeGroupRun(circleShapes(figure, (frame.width - frame.indent) / TWIPS_OF_PIXEL))], {
      size: SIZE.do,
      keep: true,
    }),
    para(frame, [{ text: figure.legend }], { size: SIZE.small, keep }),
  ];
}

const TWIPS_OF_PIXEL = 15;

/** A picture, if it is one that a word processor shows, and below it what it is called. */
function pictureParts({ text, image }: Picture, frame: Frame): readonly Part[] {
  const name = para(frame, [{ text: `${frame.words.labels.figure}: ${text}` }], { size: SIZE.detail });
  const sized = sizedPicture(image) ?? drawingOf(image);
  if (sized === null) return [name];
  const { width, height } = sized;
  const scale = Math.min(1, (frame.width - frame.indent) / TWIPS_OF_PIXEL / width, TALLEST / height);
  const above = { size: SIZE.do, keep: true };
  if ("shapes" in sized) return [paraOf(frame, [new ShapeGroupRun(drawingShapes(sized, scale, text))], above), name];
  const { type, bytes } = sized;
  const transformation = { width: Math.round(width * scale), height: Math.round(height * scale) };
  const altText = { name: text, description: text, title: text };
  const shown = new ImageRun({ type, data: bytes, transformation, altText });
  return [paraOf(frame, [shown], above), name];
}

/** In pixels. */
const TALLEST = 420;

function holdParts(hold: readonly SignOff[], frame: Frame): readonly Part[] {
  const [first] = hold;
  if (first === undefined) return [];
  const { labels, signOff: say } = frame.words;
  const within = { ...inCell(frame), width: frame.width - frame.indent - 260 };
  const head = para(within, [{ text: `${labels.holdPoint}  `, bold: true }, { text: say.hold(first.role) }], {
    size: SIZE.do,
    keep: true,
  });
  const parts = [head, ...hold.flatMap((sign) => signOff(within, sign))];
  return framed(frame, [{ parts, look: { ground: "#f4f4f4" } }], line(24));
}

/** A table of the document, with its title and what is said below it. */
export function tableParts(block: TableBlock, frame: Frame): readonly Part[] {
  const { title, notes } = block;
  return [
    ...(title === null ? [] : [para(frame, [{ text: title, bold: true }], { size: SIZE.do, before: 160, keep: true })]),
    ...table(frame, tableContent(block)),
    ...notes.map((text) => para(frame, [{ text }], { size: SIZE.detail })),
  ];
}

function sources(citations: readonly string[], frame: Frame, keep: boolean): readonly Part[] {
  if (citations.length === 0) return [];
  const text = `${frame.words.labels.source}: ${citations.join("; ")}`;
  return [para(frame, [{ text, colour: "#333333" }], { size: SIZE.small, keep })];
}
