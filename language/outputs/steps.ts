// A step as a row: what is to be done, on what terms, what is written down and who signs. Knows no format.

import { stepKey } from "#analysis/hazards/reminders.ts";
import type { Role } from "#model/declarations.ts";
import type { ExpandedStep } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Statement, Step } from "#model/procedure.ts";
import { citationsIn, citationTexts } from "./citations.ts";
import { conditionClause } from "./conditions.ts";
import type { Block, Field, Instruction, SignOff, StepRow } from "./document.ts";
import { hazardTitles, type Making, passLabel, textsFor, tickLabels, wordsFor } from "./making.ts";
import { rowId } from "./numbering.ts";
import { pictureOf } from "./pictures.ts";
import { toolsPhrase, valueText } from "./sentences.ts";

/**
 * @param steps all passes of one step
 * @param blocks what stands in it
 * @param reminders what is to be said again at it
 */
export function stepRow(
  steps: readonly [ExpandedStep, ...ExpandedStep[]],
  blocks: readonly Block[],
  reminders: readonly Statement[],
  making: Making,
): StepRow {
  const [first] = steps;
  const { step } = first;
  const passes = steps.map((one) => one.pass);
  const labels = tickLabels(passes, making);
  const pass = passes.length === 1 ? passLabel(first.pass, making) : null;
  const words = step.words === null ? null : making.writer.words.sentence(wordsFor(step.words, passes));
  const number = making.prefix + step.number;
  const { ids } = making;
  const signs = (roles: readonly Role[], idOf: (role: number, pass: Pass) => string): readonly SignOff[] =>
    roles.flatMap(({ title }, role) =>
      labels.map((label, at) => ({ id: idOf(role, passes[at] ?? []), role: title, pass: label })),
    );
  const toTick = hasInstruction(blocks);
  const pictures = step.figures.map(({ path, caption, span }) =>
    pictureOf(caption === null ? path : `${caption} (${path})`, path, making.figure(span.path, path)),
  );
  const own: Instruction | null =
    toTick || words === null
      ? null
      : wordsAsInstruction(
          words,
          labels,
          passes.map((one) => ids.words(step, one)),
        );
  return {
    kind: "step",
    id: rowId(number, pass),
    number,
    name: step.name,
    pass,
    words: own === null ? words : null,
    critical: step.critical,
    terms: termsOf(steps, reminders, making),
    // Statements at the head of a step stand ahead of its own words too.
    blocks: own === null ? blocks : [...blocks, own],
    fields: steps.flatMap((one, at) => recordFields(one, labels[at] ?? null, making)),
    signs: signs(step.signs, (role, one) => ids.sign(step, role, one)),
    hold: signs(step.hold === null ? [] : [step.hold], (_, one) => ids.hold(step, one)),
    citations: citationTexts(citationsIn(step)),
    figures: pictures.map(({ text }) => text),
    pictures,
    whys: making.whys ? step.whys.map((why) => wordsFor(why, passes)) : [],
    at: step.span,
  };
}

/** What is to be said again at a step. */
export function remindersAt(step: Step, { reminders, within }: Making): readonly Statement[] {
  return reminders.get(stepKey({ id: within.at(-1) ?? "" }, step.number)) ?? [];
}

function hasInstruction(blocks: readonly Block[]): boolean {
  return blocks.some((block) => {
    if (block.kind === "instruction") return true;
    if (block.kind === "group") return hasInstruction(block.blocks);
    return block.kind === "branch" && block.arms.some((arm) => hasInstruction(arm.blocks));
  });
}

function wordsAsInstruction(text: string, labels: readonly (string | null)[], ids: readonly string[]): Instruction {
  const ticks = labels.map((label) => ({ label }));
  const nothing = { details: [], rounds: [], computed: [], fields: [], failing: null, performed: null };
  return { kind: "instruction", text, ticks, ids, ...nothing };
}

function termsOf(
  steps: readonly [ExpandedStep, ...ExpandedStep[]],
  reminders: readonly Statement[],
  making: Making,
): readonly string[] {
  const [first] = steps;
  const { step } = first;
  const { writer, numbering } = making;
  const { flow, conditions, list } = writer.words;
  const passes = steps.map((one) => one.pass);
  // Nobody can wait for a step that is not done.
  const after = step.after.filter((ref) => !numbering.isLeftOut(ref));
  const before = step.before.filter((ref) => !numbering.isLeftOut(ref));
  const needs = steps.map((one) => list(one.needs.map((need) => conditionClause(need, writer))));
  return [
    ...reminders.map((statement) =>
      flow.reminder(
        writer.words.signals[statement.signal],
        list(hazardTitles(statement, making)),
        writer.words.sentence(wordsFor(statement.text, passes)),
      ),
    ),
    ...(step.by === null ? [] : [flow.doneBy(step.by.title)]),
    ...(first.needs.length === 0 ? [] : textsFor(needs, passes).map(conditions.needs)),
    ...(after.length === 0 ? [] : [flow.after(list(after.map(numbering.reference)))]),
    ...(before.length === 0 ? [] : [flow.before(list(before.map(numbering.reference)))]),
    ...(step.within === null || numbering.isLeftOut(step.within.step)
      ? []
      : [flow.within(valueText(step.within.value, "must be met", writer), numbering.reference(step.within.step))]),
    ...(step.takes === null ? [] : [flow.takes(valueText(step.takes, "nominal", writer))]),
  ];
}

function recordFields({ step, pass }: ExpandedStep, label: string | null, making: Making): readonly Field[] {
  const { writer } = making;
  return step.records.map((record, at) => {
    const own = wordsFor(record.label, [pass]);
    return {
      id: making.ids.record(step, at, pass),
      label: label === null || saysPass(own, record.label, label) ? own : writer.words.records.unit(own, label),
      limits: record.expect === null ? null : valueText(record.expect, "must be met", writer),
      tools: record.tools.length === 0 ? null : toolsPhrase(record.tools, writer),
    };
  });
}

/** Whether a text that holds the numbers of its pass says them all. */
function saysPass(own: string, written: string, label: string): boolean {
  const said = new Set(own.match(/\d+/g));
  return own !== written && (label.match(/\d+/g) ?? []).every((number) => said.has(number));
}
