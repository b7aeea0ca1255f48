// The trainee's sheet: the work with its reasons, and gaps where a value must be met; the answers at the end if they are asked
// for. Knows no format.
import type { ToolStock } from "#analysis/crib/crib-facts.ts";
import { type BuildInput, documentOf } from "../build.ts";
import type { Document, TableBlock } from "../document.ts";
import type { ToolStocks } from "../stock.ts";
import type { Words } from "../words/en.ts";
import { type Answer, gapsFor } from "./gaps.ts";

export function buildTrainee(input: BuildInput, words: Words): Document {
  const gaps = gapsFor();
  const { stock, ...rest } = input;
  const unset = stock === undefined ? rest : { ...rest, stock: withoutSettings(stock) };
  const document = documentOf(unset, words, { use: "trainee", whys: true, saying: gaps.saying });
  const { blocks, answers } = gaps.filled(document.blocks, words.trainee.gap);
  return {
    ...document,
    title: words.trainee.title(document.title),
    filledBy: whoAndWhen(words),
    // Each would give an answer away.
    tools: document.tools.map((tool) => ({
      ...tool,
      used: tool.used.length === 0 ? [] : [words.trainee.askedBelow],
    })),
    ...(input.answers === true && answers.length > 0
      ? { blocks: [...blocks, ...endTable(document.end, words), answerKey(answers, words)], end: [] }
      : { blocks }),
  };
}

/** What has to hold when the work is done, ahead of the answers: these are the last, so that they can be taken off. */
function endTable(end: readonly string[], { labels, table }: Words): readonly TableBlock[] {
  if (end.length === 0) return [];
  const rows = end.map((text): TableBlock["rows"][number] => ({ cells: [text, { fill: "box" }] }));
  return [{ kind: "table", title: labels.atTheEnd, columns: [table.text, labels.done], rows, notes: [] }];
}

/** What a wrench is to be set to tells the torque. */
function withoutSettings(stock: ToolStocks): ToolStocks {
  const bare = (tool: ToolStock): ToolStock => ({
    ...tool,
    items: tool.items.map((item) => ({ ...item, settings: [] })),
  });
  return { ...stock, tools: stock.tools.map(bare) };
}

function whoAndWhen({ trainee, labels }: Words): TableBlock {
  return {
    kind: "table",
    title: null,
    columns: [trainee.filledBy, labels.name, labels.date],
    rows: [{ cells: [trainee.trainee, { fill: "line" }, { fill: "line" }] }],
    notes: [],
  };
}

function answerKey(answers: readonly Answer[], { trainee, labels }: Words): TableBlock {
  return {
    kind: "table",
    title: trainee.answers,
    columns: [trainee.gapNumber, labels.step, trainee.answer],
    rows: answers.map(({ gap, step, text }) => ({ cells: [String(gap), step, text] })),
    notes: [],
  };
}
