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
    blocks: input.answers === true && answers.length > 0 ? [...blocks, answerKey(answers, words)] : blocks,
  };
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
