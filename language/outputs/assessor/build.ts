// The assessor's sheet: each thing that can be seen being done, to be marked unprompted, prompted or not done; what is critical
// must be done unprompted. Knows no format.
import { type BuildInput, documentOf } from "../build.ts";
import type { Block, Cell, Document, Field, Instruction, Section, StepRow, TableBlock } from "../document.ts";
import { cellText } from "../instructions.ts";
import type { Words } from "../words/en.ts";

export function buildAssessor(input: BuildInput, words: Words): Document {
  const document = documentOf(input, words, { use: "assessor" });
  const observed = observedIn(document.blocks, { task: null, step: "", critical: false, when: [] }, words);
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
  /** The cases in which it is done, outermost first. */
  readonly when: readonly string[];
}

/** In the order of the work. What is only done after a failed check may never be seen, and is left out. */
function observedIn(blocks: readonly Block[], at: At, words: Words): readonly Observed[] {
  return blocks.flatMap((block): readonly Observed[] => {
    switch (block.kind) {
      case "section":
        return observedIn(block.blocks, { ...at, task: at.task ?? block }, words);
      case "step":
        return stepObserved(block, { ...at, step: block.number, critical: block.critical }, words);
      case "group":
        return observedIn(block.blocks, inCase(at, block.heading), words);
      case "branch":
        return block.arms.flatMap((arm) => observedIn(arm.blocks, inCase(at, arm.heading), words));
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

function inCase(at: At, heading: string): At {
  return { ...at, when: [...at.when, heading] };
}

/** What is done in a step, and what is written down in it. */
function stepObserved({ blocks, fields }: StepRow, at: At, words: Words): readonly Observed[] {
  const { assessor } = words;
  const done = observedIn(blocks, at, words);
  if (fields.length === 0) return done;
  const groups = new Map<string, Field[]>();
  for (const field of fields) groups.set(likeness(field), [...(groups.get(likeness(field)) ?? []), field]);
  const asked = [...groups.values()].map((alike) => fieldsText(alike, words));
  return [...done, { ...at, text: assessor.writesDown(asked.join("; ")) }];
}

/** The same for what is written down in each pass. */
function likeness({ label, limits }: Field): string {
  return `${label.replace(/\d+/g, "#")}\n${limits}`;
}

/** Of many alike the first and the last. */
function fieldsText(alike: readonly Field[], { records }: Words): string {
  const labels = alike.map(({ label }) => label);
  const said = labels.length > 2 ? [labels[0], "…", labels.at(-1)] : labels;
  const limits = alike[0]?.limits ?? null;
  return `${said.join(", ")}${limits === null ? "" : ` (${records.mustBe(limits)})`}`;
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

function marksOf(observed: readonly [Observed, ...Observed[]], { assessor, labels, sentence }: Words): TableBlock {
  const [{ task }] = observed;
  return {
    kind: "table",
    title: task === null ? null : `${task.number} ${task.title}`,
    columns: [labels.step, assessor.observed, assessor.unprompted, assessor.prompted, assessor.notDone],
    rows: observed.map(({ step, text, critical, when }) => {
      const said = [...when.map(sentence), text].join(" ");
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
