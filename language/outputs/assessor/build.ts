// The assessor's sheet: each thing that can be seen being done, to be marked unprompted, prompted or not done; what is critical
// must be done unprompted. Knows no format.
import { type BuildInput, documentOf } from "../build.ts";
import type { Block, Cell, Document, Instruction, Section, TableBlock } from "../document.ts";
import { cellText } from "../instructions.ts";
import type { Words } from "../words/en.ts";

export function buildAssessor(input: BuildInput, words: Words): Document {
  const document = documentOf(input, words, { use: "assessor" });
  const observed = observedIn(document.blocks, { task: null, step: "", critical: false, when: null }, words);
  return {
    ...document,
    title: words.assessor.title(document.title),
    // The kit list has them.
    parts: [],
    consumables: [],
    blocks: [...tasksOf(observed).map((task) => marksOf(task, words)), resultOf(observed, words)],
  };
}

/** Something that can be seen being done. */
interface Observed extends At {
  readonly text: string;
}

interface At {
  /** The outermost one it belongs to. */
  readonly task: Section | null;
  readonly step: string;
  readonly critical: boolean;
  /** The case in which it is done. */
  readonly when: string | null;
}

/** In the order of the work. What is only done after a failed check may never be seen, and is left out. */
function observedIn(blocks: readonly Block[], at: At, words: Words): readonly Observed[] {
  return blocks.flatMap((block): readonly Observed[] => {
    switch (block.kind) {
      case "section":
        return observedIn(block.blocks, { ...at, task: at.task ?? block }, words);
      case "step":
        return observedIn(block.blocks, { ...at, step: block.number, critical: block.critical }, words);
      case "group":
        return observedIn(block.blocks, { ...at, when: block.heading }, words);
      case "branch":
        return block.arms.flatMap((arm) => observedIn(arm.blocks, { ...at, when: arm.heading }, words));
      case "statement":
        return block.wear.length === 0 ? [] : [{ ...at, text: words.assessor.wears(words.comma(block.wear)) }];
      case "instruction":
        if (block.performed !== null) return observedIn(block.performed.blocks, at, words);
        return [{ ...at, text: wholeText(block, words) }];
      default:
        return [];
    }
  });
}

/** With all that tells whether it was done right: the torque of each round, the setting of the wrench, the limits of a reading. */
function wholeText(one: Instruction, { labels, records, conditions, sentence }: Words): string {
  const values = one.rounds.map((value, at) => `${labels.round} ${at + 1}: ${value}`);
  const limits = new Set(one.fields.flatMap((field) => field.limits ?? []));
  const asked = [...limits].map((limit) => sentence(conditions.upper(records.mustBe(limit))));
  return [cellText(one), ...(values.length === 0 ? [] : [`${values.join("; ")}.`]), ...asked].join(" ");
}

function tasksOf(observed: readonly Observed[]): readonly (readonly [Observed, ...Observed[]])[] {
  const tasks: [Observed, ...Observed[]][] = [];
  for (const one of observed) {
    const last = tasks.at(-1);
    if (last !== undefined && last[0].task === one.task) last.push(one);
    else tasks.push([one]);
  }
  return tasks;
}

const BOX: Cell = { fill: "box" };
const LINE: Cell = { fill: "line" };

function marksOf(observed: readonly [Observed, ...Observed[]], { assessor, labels }: Words): TableBlock {
  const [{ task }] = observed;
  return {
    kind: "table",
    title: task === null ? null : `${task.number} ${task.title}`,
    columns: [labels.step, assessor.observed, assessor.unprompted, assessor.prompted, assessor.notDone],
    rows: observed.map(({ step, text, critical, when }) => {
      const said = when === null ? text : assessor.inCase(when, text);
      const cells: readonly Cell[] = [step, critical ? assessor.critical(said) : said, BOX, BOX, BOX];
      return critical ? { cells, grave: true } : { cells };
    }),
    notes: [],
  };
}

function resultOf(observed: readonly Observed[], { assessor, labels }: Words): TableBlock {
  const critical = observed.filter((one) => one.critical).length;
  const row = (text: string, of: number): TableBlock["rows"][number] => ({ cells: [text, of, LINE] });
  return {
    kind: "table",
    title: assessor.result,
    columns: [assessor.sum, assessor.outOf, labels.count],
    rows: [
      row(assessor.criticalUnprompted, critical),
      row(assessor.unprompted, observed.length),
      row(assessor.prompted, observed.length),
      row(assessor.notDone, observed.length),
      { cells: [assessor.people, "", LINE] },
    ],
    notes: [assessor.rule(critical), assessor.share],
  };
}
