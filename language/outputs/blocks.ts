// The work of a procedure as nested blocks: sections, statements ahead of what they guard, steps, branches, groups.
// Repeats stand once with a tick for each pass, or are written out. Knows no format.
import type { ExpandedCondition, ExpandedProcedure } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Jump, RepeatBlock, Statement } from "#model/procedure.ts";
import { citationTexts } from "./citations.ts";
import { branchClause, choiceClauses, decidedBy } from "./conditions.ts";
import type { Arm, Block, Direction, Section, StatementBlock, StepRow } from "./document.ts";
import { type Inside, instructionsOf } from "./instructions.ts";
import { joiningsAt } from "./joinings.ts";
import { afresh, type RowOf } from "./kept-rows.ts";
import { hazardTitles, type Making, type Node, type Origin, passLabel, textsFor, wordsFor } from "./making.ts";
import { type Numbering, numberingOf } from "./numbering.ts";
import { bundlesOf, passOf } from "./passes.ts";
import { idsOf } from "./record/ids.ts";
import { remindersAt, stepRow } from "./steps.ts";

/**
 * The blocks of a whole procedure.
 * @param rows how its steps come to their rows, by their numbers
 */
export function procedureBlocks(
  expanded: ExpandedProcedure,
  making: Omit<Making, "numbering" | "ids" | "rowOf">,
  rows: (numbering: Numbering) => RowOf = () => afresh,
): readonly Block[] {
  const { writer, prefix } = making;
  const numbering = numberingOf(expanded, making);
  const ids = idsOf(expanded.procedure, prefix);
  const inside = {
    ...making,
    numbering,
    ids,
    rowOf: rows(numbering),
    within: [...making.within, expanded.procedure.id],
  };
  const blocks = blocksOf(expanded.items, expanded.procedure.items, inside, "");
  if (expanded.tooLarge === null) return blocks;
  return [direction("unreadable", writer.words.flow.notExpanded), ...blocks];
}

/** A procedure that a step or task numbered `number` performs; null where it is not known or performs itself. */
function performedSection(id: string, number: string, making: Making): Section | null {
  const expanded = making.within.includes(id) ? null : making.expandedOf(id);
  if (expanded === null) return null;
  const { title, cites, span } = expanded.procedure;
  const blocks = procedureBlocks(expanded, { ...making, prefix: `${number}.` });
  return {
    kind: "section",
    number,
    title,
    pass: null,
    origin: title,
    citations: citationTexts(cites),
    blocks,
    at: span,
  };
}

/**
 * @param origins what the nodes were written out from; null where that is not known or not wanted
 * @param number that of the step they stand in; empty between steps
 */
function blocksOf(
  nodes: readonly Node[],
  origins: readonly Origin[] | null,
  making: Making,
  number: string,
): readonly Block[] {
  return bundlesOf<Node, Origin>(nodes, making.compact ? origins : null).flatMap((bundle) => {
    if (bundle.kind === "one") return blocksFor(bundle.items, bundle.source, making, number);
    const blocks = blocksOf(bundle.items, bundle.repeat.items, making, number);
    return [{ kind: "group", heading: repeatHeading(bundle.repeat, bundle.items, blocks, making), blocks }];
  });
}

/** @param nodes all passes of one line of the text */
function blocksFor(
  nodes: readonly [Node, ...Node[]],
  origin: Origin | null,
  making: Making,
  number: string,
): readonly Block[] {
  const [first] = nodes;
  const passes = nodes.map(passOf);
  switch (first.kind) {
    case "task":
      return [
        {
          kind: "section",
          number: making.prefix + first.task.number,
          title: wordsFor(first.task.title, passes),
          pass: passes.length === 1 ? passLabel(first.pass, making) : null,
          origin: null,
          citations: citationTexts(first.task.cites),
          blocks: blocksOf(
            nodes.flatMap((node) => (node.kind === "task" ? node.items : [])),
            first.task.items,
            making,
            "",
          ),
          at: first.task.span,
        },
      ];
    case "step": {
      const steps = nodes.filter((node) => node.kind === "step") as [typeof first, ...(typeof first)[]];
      const reminders = remindersAt(first.step, making);
      const joinings = joiningsAt(first.step.number, making);
      const row = (): StepRow => {
        const lines = steps.flatMap((step) => step.lines);
        const blocks = blocksOf(lines, first.step.lines, making, making.prefix + first.step.number);
        return stepRow(steps, blocks, reminders, making);
      };
      return [making.rowOf({ steps, reminders, joinings }, row)];
    }
    case "perform": {
      const lines = nodes.flatMap((node) => (node.kind === "perform" ? [node.line] : []));
      const own = making.prefix + first.number;
      // It has no step of its own that would show the number by which others speak of it.
      const label = `${making.writer.words.labels.step} ${own}`;
      return instructionsOf(lines, making, own, insideOf(making)).map((row) => ({
        ...row,
        text: `${label}: ${row.text}`,
      }));
    }
    case "action":
    case "check":
      return instructionsOf(nodes, making, number, insideOf(making));
    case "statement":
      return [statementBlock(first.statement, passes, making)];
    case "note":
      return [{ kind: "note", text: wordsFor(first.note.text, passes) }];
    case "jump":
      return [jumpDirection(first.jump, passes, making)];
    case "damaged":
      return [direction("unreadable", making.writer.words.flow.unreadable)];
    case "any order": {
      const inner = nodes.flatMap((node): readonly Node[] => (node.kind === "any order" ? node.items : []));
      const blocks = blocksOf(inner, origin?.kind === "any order" ? origin.items : null, making, number);
      return [{ kind: "group", heading: making.writer.words.flow.anyOrder, blocks }];
    }
    case "when":
      return whenBlocks(
        nodes.filter((node) => node.kind === "when"),
        origin,
        making,
        number,
      );
  }
}

function insideOf(making: Making): Inside {
  return {
    blocks: (inner, from, at) => blocksOf(inner, from, making, at),
    performed: (id, at) => performedSection(id, at, making),
  };
}

/** Arms that the options chosen rule out are left out by name; an arm that they decide needs no heading. */
function whenBlocks(
  whens: readonly (Node & { readonly kind: "when" })[],
  origin: Origin | null,
  making: Making,
  number: string,
): readonly Block[] {
  const { flow } = making.writer.words;
  const from = origin?.kind === "when" ? origin : null;
  const passes = whens.map(passOf);
  const out: Block[] = [];
  const arms: Arm[] = [];
  const [first] = whens;
  let settled: ExpandedCondition | null = null;
  /** The choices that rule it out. */
  const why = (conditions: readonly ExpandedCondition[]): string =>
    making.writer.words.conditions.and(choiceClauses(conditions, making.choices, making.writer));
  first?.arms.forEach((arm, at) => {
    const inner = whens.flatMap((when): readonly Node[] => when.arms[at]?.items ?? []);
    const blocks = blocksOf(inner, from?.arms[at]?.items ?? null, making, number);
    const clauses = whens
      .flatMap((when) => when.arms[at]?.condition ?? [])
      .map((condition) => branchClause(condition, making.writer));
    const clause = textsFor(clauses, passes).join(" / ");
    const decided = settled === null ? decidedBy(arm.condition, making.choices) : false;
    if (decided === false) out.push(...leftOut(blocks, why([settled ?? arm.condition]), making));
    else if (decided === null)
      arms.push({
        heading: arms.length === 0 ? flow.if(clause) : flow.otherwiseIf(clause),
        blocks,
        ids: whens.map((when) => making.ids.arm(when.span, at, passOf(when))),
      });
    else {
      settled = arm.condition;
      if (arms.length === 0) out.push(...blocks);
      else arms.push({ heading: flow.otherwise, blocks, ids: [] });
    }
  });
  const last = whens.flatMap((when): readonly Node[] => when.otherwise ?? []);
  const rest = blocksOf(last, from?.otherwise ?? null, making, number);
  if (rest.length === 0) return branched(out, arms);
  if (settled !== null) out.push(...leftOut(rest, why([settled]), making));
  else if (arms.length === 0) out.push(...rest);
  else arms.push({ heading: flow.otherwise, blocks: rest, ids: [] });
  return branched(out, arms);
}

function branched(out: readonly Block[], arms: readonly Arm[]): readonly Block[] {
  return arms.length === 0 ? out : [...out, { kind: "branch", arms }];
}

/** A row that says which numbers are missing and why; nothing where no number is missing. */
function leftOut(blocks: readonly Block[], reason: string, making: Making): readonly Block[] {
  const { flow } = making.writer.words;
  const numbers = blocks.flatMap(numbersIn);
  const [first, last] = [numbers[0], numbers.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [direction("left out", flow.leftOut(flow.steps(first, last), reason))];
}

function numbersIn(block: Block): readonly string[] {
  if (block.kind === "step" || block.kind === "section") return [block.number];
  if (block.kind === "group") return block.blocks.flatMap(numbersIn);
  return block.kind === "branch" ? block.arms.flatMap((arm) => arm.blocks.flatMap(numbersIn)) : [];
}

function statementBlock(statement: Statement, passes: readonly Pass[], making: Making): StatementBlock {
  return {
    kind: "statement",
    signal: statement.signal,
    hazards: hazardTitles(statement, making),
    text: wordsFor(statement.text, passes),
    avoid: statement.avoid === null ? null : wordsFor(statement.avoid, passes),
    wear: statement.wear,
  };
}

function jumpDirection(jump: Jump, passes: readonly Pass[], making: Making): Direction {
  const { flow, sentence } = making.writer.words;
  if (jump.kind === "stop") return direction("stop", flow.stop(sentence(wordsFor(jump.text, passes))));
  const say = jump.kind === "return" ? flow.goBack : flow.goOn;
  return direction("jump", say(making.numbering.reference(jump.step)), making.numbering.link(jump.step));
}

function direction(sense: Direction["sense"], text: string, link: string | null = null): Direction {
  return { kind: "direction", sense, text, link };
}

function repeatHeading(
  repeat: RepeatBlock<unknown>,
  nodes: readonly Node[],
  blocks: readonly Block[],
  making: Making,
): string {
  const { flow, comma } = making.writer.words;
  const values = new Set<number>();
  for (const node of nodes) {
    const value = passOf(node).find(({ variable }) => variable === repeat.variable)?.value;
    if (value !== undefined) values.add(value);
  }
  const numbers = blocks.flatMap(numbersIn);
  const [first, last] = [numbers[0], numbers.at(-1)];
  // A table has no box around them: they are named.
  const steps = first === undefined || last === undefined ? null : flow.steps(first, last);
  return flow.repeat(repeat.variable, comma([...values].map(String)), blocks.length > 1, steps);
}
