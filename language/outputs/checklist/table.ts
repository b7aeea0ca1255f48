// A checklist as one table: rows that say what it is, then a row for each statement, tick, value and signature, in the order of the work. Knows no format.
import type { Block, Document, Field, Instruction, SignOff, StepRow } from "../document.ts";
import { headRows } from "../head-rows.ts";
import { cellText } from "../instructions.ts";
import { stockText } from "../stock.ts";
import type { Table, TableValue } from "../table.ts";
import type { Words } from "../words/en.ts";

export function checklistTable(document: Document, words: Words): Table {
  const { labels, table } = words;
  const say = { words, step: "" };
  return {
    title: document.title,
    columns: [
      labels.step,
      table.kind,
      table.text,
      table.part,
      labels.limits,
      labels.measuredWith,
      labels.done,
      labels.reading,
      labels.name,
      labels.date,
    ],
    rows: [
      ...headRows(document, words).map(({ label, text }) => line({ kind: label, text }, say)),
      ...listRows(document, say),
      ...document.start.map((text) => line({ kind: labels.beforeStart, text }, say)),
      ...blockRows(document.blocks, say),
      ...document.end.map((text) => line({ kind: labels.atTheEnd, text }, say)),
    ],
  };
}

/** What signal words mean, and what has to be at hand, each in one text. */
function listRows({ signals, tools, parts, consumables }: Document, say: Say): readonly (readonly TableValue[])[] {
  const { labels, signals: names, signalKey, stock } = say.words;
  const row = (kind: string, ...texts: readonly (string | null)[]) =>
    line({ kind, text: texts.filter((text) => text !== null && text !== "").join(" · ") }, say);
  const labelled = (label: string, text: string): string | null => (text === "" ? null : `${label}: ${text}`);
  return [
    ...signals.map((signal) => row(labels.keyToSignals, `${names[signal]}: ${signalKey[signal]}`)),
    ...tools.map(({ title, asked, lifts, used, stock: items }) =>
      row(
        labels.tool,
        title,
        asked.join("; "),
        labelled(labels.used, [...lifts, ...used].join("; ")),
        items === null ? null : labelled(stock.heading, stockText(items, say.words)),
      ),
    ),
    ...parts.map(({ title, count, remarks }) =>
      row(labels.part, title, `${labels.count}: ${count}`, remarks.join("; ")),
    ),
    ...consumables.map(({ title, amounts }) => row(labels.consumable, title, amounts.join("; "))),
  ];
}

/** The language, and the step whose lines they are. */
interface Say {
  readonly words: Words;
  readonly step: string;
}

interface Line {
  readonly kind: string;
  readonly text: string;
  readonly part?: string | null;
  readonly limits?: string | null;
  readonly tools?: string | null;
}

/** The last columns are for what is filled in. */
function line({ kind, text, part, limits, tools }: Line, { step }: Say): readonly TableValue[] {
  return [step, kind, text, part ?? "", limits ?? "", tools ?? "", "", "", "", ""];
}

function blockRows(blocks: readonly Block[], say: Say): readonly (readonly TableValue[])[] {
  return blocks.flatMap((block) => rowsFor(block, say));
}

function rowsFor(block: Block, say: Say): readonly (readonly TableValue[])[] {
  const { words } = say;
  const { table, signals, comma } = words;
  const headed = (heading: string, blocks: readonly Block[]) => headedRows(heading, blocks, say);
  switch (block.kind) {
    case "section": {
      const { number, title, origin, pass, citations, blocks } = block;
      const name = origin === null ? title : words.flow.performed(origin);
      const inside = { ...say, step: number };
      return [
        line({ kind: table.heading, text: name, part: pass }, inside),
        ...sourceRows(citations, inside),
        ...blockRows(blocks, inside),
      ];
    }
    case "statement": {
      const wear = block.wear.length === 0 ? [] : [`${words.labels.wear}: ${comma(block.wear)}`];
      const texts = [`${comma(block.hazards)}: ${block.text}`, ...(block.avoid === null ? [] : [block.avoid]), ...wear];
      return [line({ kind: signals[block.signal], text: texts.map(words.sentence).join(" ") }, say)];
    }
    case "note":
      return [line({ kind: signals.note, text: block.text }, say)];
    case "step":
      return stepRows(block, say);
    case "branch":
      return [...block.arms.flatMap(({ heading, blocks }) => headed(heading, blocks)), endRow(block.arms[0], say)];
    case "group":
      return [...headed(block.heading, block.blocks), endRow(block, say)];
    case "direction":
      return [line({ kind: table.heading, text: block.text }, say)];
    case "instruction":
      return instructionRows(block, say);
    case "table":
      return block.rows.map(({ cells }) => {
        const texts = cells.filter((cell) => typeof cell !== "object");
        return line({ kind: block.title ?? "", text: texts.join(" · ") }, say);
      });
  }
}

function headedRows(text: string, blocks: readonly Block[], say: Say): readonly (readonly TableValue[])[] {
  return [line({ kind: say.words.table.heading, text }, say), ...blockRows(blocks, say)];
}

/** Rows are not indented: where a case, an order left free or a repeat ends has to be said. */
function endRow(headed: { readonly heading: string } | undefined, say: Say): readonly TableValue[] {
  return line({ kind: say.words.table.end, text: headed?.heading.replace(/[:：]\s*$/, "") ?? "" }, say);
}

function stepRows(step: StepRow, { words }: Say): readonly (readonly TableValue[])[] {
  const say = { words, step: step.number };
  const { labels, table } = words;
  const terms = [
    ...(step.critical ? [words.sentence(labels.critical)] : []),
    ...step.terms,
    ...(step.words === null ? [] : [step.words]),
  ];
  return [
    ...(terms.length === 0 ? [] : [line({ kind: table.heading, text: terms.join(" "), part: step.pass }, say)]),
    ...blockRows(step.blocks, say),
    ...step.fields.map((field) => fieldRow(field, say)),
    ...step.pictures.map(({ text }) => line({ kind: labels.figure, text }, say)),
    ...sourceRows(step.citations, say),
    ...step.signs.map((sign) => signRow(labels.sign, sign, say)),
    ...step.hold.map((sign) => signRow(labels.holdPoint, sign, say)),
  ];
}

function instructionRows(one: Instruction, say: Say): readonly (readonly TableValue[])[] {
  const { labels, table } = say.words;
  const text = cellText(one);
  const rounds = one.rounds.map((value, at) =>
    line({ kind: table.instruction, text, part: `${labels.round} ${at + 1}: ${value}` }, say),
  );
  const ticks = one.ticks.map((tick) => {
    const own = tick.serial === undefined ? text : cellText(withSerial(one, tick.serial, say));
    return line({ kind: table.instruction, text: own, part: tick.label }, say);
  });
  return [
    ...(rounds.length > 0 ? rounds : ticks),
    ...one.fields.map((field) => fieldRow(field, say)),
    ...(one.failing === null
      ? []
      : [...headedRows(`${one.failing.heading}:`, one.failing.blocks, say), endRow(one.failing, say)]),
    ...(one.performed === null ? [] : blockRows([one.performed], say)),
  ];
}

/** A row of its own for each tick says the one serial that belongs to it. */
function withSerial(one: Instruction, serial: string, { words }: Say): Instruction {
  return { ...one, details: [...one.details.slice(0, -1), words.arrangement.serial(serial)] };
}

function fieldRow({ label, limits, tools }: Field, say: Say): readonly TableValue[] {
  return line({ kind: say.words.labels.records, text: label, limits, tools }, say);
}

function sourceRows(citations: readonly string[], say: Say): readonly (readonly TableValue[])[] {
  return citations.length === 0 ? [] : [line({ kind: say.words.labels.source, text: citations.join("; ") }, say)];
}

function signRow(kind: string, { role, pass }: SignOff, say: Say): readonly TableValue[] {
  return line({ kind, text: role, part: pass }, say);
}
