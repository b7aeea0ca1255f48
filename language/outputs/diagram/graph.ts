// The order of work as a graph: what is done, where it parts and where it comes together, where it stops for a signature, where
// it goes back. Made from the document; knows no place on a page and no format.
import type { Block, Direction, Document, Instruction, StepRow } from "../document.ts";
import type { Words } from "../words/en.ts";

export interface WorkGraph {
  readonly boxes: readonly Box[];
  readonly ways: readonly Way[];
}

export interface Box {
  readonly id: string;
  readonly kind: "start" | "end" | "heading" | "step" | "hold" | "parting" | "stop";
  /** The step's number; null where it is none. */
  readonly number: string | null;
  readonly text: string;
  readonly critical: boolean;
  /** The task, repeat or order left free that it stands in. */
  readonly frame: Frame | null;
}

/** Holds a heading and what stands under it. */
export interface Frame {
  readonly id: string;
  readonly frame: Frame | null;
}

export interface Way {
  readonly from: string;
  readonly to: string;
  /** On which condition; null where there is none. */
  readonly label: string | null;
  /** Whether it goes back to what was done before. */
  readonly back: boolean;
}

export function graphOf(document: Document, words: Words): WorkGraph {
  const drawing: Drawing = { words, boxes: [], ways: [], ends: [], jumps: [], frame: null };
  addBox(drawing, { kind: "start", text: words.diagram.start });
  addBlocks(drawing, document.blocks);
  addBox(drawing, { kind: "end", text: words.diagram.end });
  const order = new Map(drawing.boxes.map(({ id }, at) => [id, at]));
  const jumps = drawing.jumps.flatMap(({ from, to, label }): readonly Way[] => {
    const [at, target] = [order.get(from), order.get(boxOf(to))];
    return at === undefined || target === undefined ? [] : [{ from, to: boxOf(to), label, back: target <= at }];
  });
  return { boxes: drawing.boxes, ways: [...drawing.ways, ...jumps] };
}

interface Drawing {
  readonly words: Words;
  readonly boxes: Box[];
  readonly ways: Way[];
  /** Boxes that what comes next follows on. */
  ends: readonly End[];
  /** To steps that may not be drawn yet. */
  readonly jumps: { readonly from: string; readonly to: string; readonly label: string | null }[];
  frame: Frame | null;
}

interface End {
  readonly from: string;
  readonly label: string | null;
}

function boxOf(step: string): string {
  return `box-${step}`;
}

function addBox(drawing: Drawing, box: Pick<Box, "kind" | "text"> & Partial<Box>): string {
  const id = box.id ?? `box-${box.kind}-${drawing.boxes.length}`;
  drawing.boxes.push({ number: null, critical: false, frame: drawing.frame, ...box, id });
  for (const { from, label } of drawing.ends) drawing.ways.push({ from, to: id, label, back: false });
  drawing.ends = [{ from: id, label: null }];
  return id;
}

function addBlocks(drawing: Drawing, blocks: readonly Block[]): void {
  for (const block of blocks) {
    switch (block.kind) {
      case "section":
        within(drawing, `${block.number} ${block.title}`, () => addBlocks(drawing, block.blocks));
        break;
      case "group":
        within(drawing, block.heading, () => addBlocks(drawing, block.blocks));
        break;
      case "step":
        addStep(drawing, block);
        break;
      case "branch":
        addArms(drawing, block.arms);
        break;
      case "direction":
        addDirection(drawing, block);
        break;
      case "instruction":
        if (block.performed !== null) addBlocks(drawing, [block.performed]);
        addFailing(drawing, block);
        break;
      default:
        break;
    }
  }
}

function within(drawing: Drawing, title: string, work: () => void): void {
  const around = drawing.frame;
  drawing.frame = { id: `frame-${drawing.boxes.length}`, frame: around };
  addBox(drawing, { kind: "heading", text: title });
  work();
  drawing.frame = around;
}

/** The step's box, what in it leads elsewhere, and where it waits for a signature. */
function addStep(drawing: Drawing, step: StepRow): void {
  addBox(drawing, {
    kind: "step",
    id: boxOf(step.id),
    number: step.number,
    text: step.words ?? firstText(step.blocks) ?? step.name ?? "",
    critical: step.critical,
  });
  addBlocks(
    drawing,
    step.blocks.filter(({ kind }) => kind !== "step"),
  );
  const roles = [...new Set(step.hold.map(({ role }) => role))];
  if (roles.length > 0) addBox(drawing, { kind: "hold", text: drawing.words.diagram.hold(drawing.words.list(roles)) });
}

function firstText(blocks: readonly Block[]): string | null {
  for (const block of blocks) {
    if (block.kind === "instruction") return block.text;
    const inner = block.kind === "group" ? firstText(block.blocks) : null;
    if (inner !== null) return inner;
  }
  return null;
}

/** Each arm on a way of its own; they come together behind it. */
function addArms(
  drawing: Drawing,
  arms: readonly { readonly heading: string; readonly blocks: readonly Block[] }[],
): void {
  const parting = addBox(drawing, { kind: "parting", text: "" });
  const { otherwise } = drawing.words.flow;
  const ends: End[] = [];
  for (const arm of arms) {
    drawing.ends = [{ from: parting, label: unended(arm.heading) }];
    addBlocks(drawing, arm.blocks);
    ends.push(...drawing.ends);
  }
  const isWhole = arms.at(-1)?.heading === otherwise;
  drawing.ends = isWhole ? ends : [...ends, { from: parting, label: unended(otherwise) }];
}

/** What a failed check leads to; where that is no jump, its steps lie on a way of their own and come back. */
function addFailing(drawing: Drawing, { failing }: Instruction): void {
  if (failing === null) return;
  const { ends } = drawing;
  drawing.ends = ends.map(({ from }) => ({ from, label: failing.heading }));
  addBlocks(drawing, failing.blocks);
  const after = drawing.ends.filter(({ from }) => !ends.some((end) => end.from === from));
  drawing.ends = [...ends, ...after];
}

function addDirection(drawing: Drawing, { sense, text, link }: Direction): void {
  if (sense === "stop") {
    addBox(drawing, { kind: "stop", text });
    drawing.ends = [];
  } else if (sense === "jump" && link !== null) {
    for (const { from, label } of drawing.ends) drawing.jumps.push({ from, to: link, label });
    drawing.ends = [];
  }
}

function unended(heading: string): string {
  return heading.replace(/[:：]\s*$/, "");
}
