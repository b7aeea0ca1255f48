// The steps of a DITA task. Its steps stand in one row: headings, statements and notes between them are put in a section ahead
// of the next step, and what is done only in some case says so in its command. Knows the document only.
import { type Markup, markup, nothing } from "../checklist/html-markup.ts";
import type { Block, Field, Instruction, SignOff, StepRow, TableBlock } from "../document.ts";
import type { Words } from "../words/en.ts";
import { hazardXml } from "./hazard.ts";

export interface Steps {
  /** Sections and steps, the last a step. */
  readonly steps: readonly Markup[];
  /** What stands behind the last step. */
  readonly rest: readonly Markup[];
}

export function stepsXml(blocks: readonly Block[], words: Words): Steps {
  const row: Row = { words, out: [], ahead: [] };
  addBlocks(row, blocks, "");
  return { steps: row.out, rest: row.ahead };
}

interface Row {
  readonly words: Words;
  readonly out: Markup[];
  /** What stands ahead of the next step. */
  readonly ahead: Markup[];
}

/** @param inCase the case in which they are done, as it is said in a command; empty outside all */
function addBlocks(row: Row, blocks: readonly Block[], inCase: string): void {
  const { words, ahead } = row;
  for (const block of blocks) {
    switch (block.kind) {
      case "section":
        ahead.push(headingXml(`${block.number} ${block.title}`), ...paragraphs(sourceTexts(block.citations, words)));
        addBlocks(row, block.blocks, inCase);
        break;
      case "group":
        ahead.push(headingXml(block.heading));
        addBlocks(row, block.blocks, inCase);
        // The steps stand in one row: where a repeat or an order left free ends has to be said.
        ahead.push(headingXml(`${words.table.end}: ${block.heading.replace(/[:：]\s*$/, "")}`));
        break;
      case "branch":
        for (const arm of block.arms) addBlocks(row, arm.blocks, `${inCase}${words.dita.inCase(arm.heading)}`);
        break;
      case "statement":
        ahead.push(hazardXml(block, words));
        break;
      case "note":
        ahead.push(markup`<note type="note">${block.text}</note>`);
        break;
      case "direction":
        ahead.push(markup`<p outputclass="direction">${inCase}${block.text}</p>`);
        break;
      case "table":
        ahead.push(tableXml(block));
        break;
      case "instruction":
        addStep(row, [], markup`${inCase}${block.text}`, infos(detailsXml(block, words)), null);
        if (block.performed !== null) addBlocks(row, [block.performed], inCase);
        break;
      case "step":
        addStepRow(row, block, inCase);
        break;
    }
  }
}

function addStep(
  row: Row,
  notes: readonly Markup[],
  command: Markup,
  more: readonly Markup[],
  step: StepRow | null,
): void {
  if (row.ahead.length > 0)
    row.out.push(markup`<stepsection>${row.ahead.splice(0)}</stepsection>
`);
  const id = step === null ? nothing : markup` id="${step.id}"`;
  const importance = step?.critical === true ? markup` importance="required"` : nothing;
  row.out.push(markup`<step${id}${importance}>${notes}<cmd>${command}</cmd>${more}</step>
`);
}

/** One thing to do is the command; several are sub-steps of the step's own words. */
function addStepRow(row: Row, step: StepRow, inCase: string): void {
  const { words } = row;
  const parts = partsOf(step.blocks, inCase === "" ? "" : inCase, words);
  const notes = parts.flatMap((part) => (part.kind === "note" ? [part.xml] : []));
  const instructions = parts.flatMap((part) => (part.kind === "instruction" ? [part] : []));
  const [only, ...others] = instructions;
  const number = `${words.labels.step} ${step.number}`;
  const name = step.name === null ? number : `${number} ${step.name}`;
  const head = step.pass === null ? name : words.records.unit(name, step.pass);
  const isOne = only !== undefined && others.length === 0;
  const said = step.words ?? (isOne ? only.text : "");
  const isSub = instructions.length > 0 && !(isOne && step.words === null);
  const more: readonly Markup[] = [
    ...infoXml(step.terms),
    ...(isSub
      ? [
          markup`<substeps>${instructions.map(({ text, details }) => markup`<substep><cmd>${text}</cmd>${infos(details)}</substep>`)}</substeps>`,
        ]
      : infos(only?.details ?? [])),
    ...infoXml(fieldTexts(step.fields, words)),
    ...infoXml(step.whys.map((why) => `${words.labels.why}: ${why}`)),
    ...infoXml(sourceTexts(step.citations, words)),
    ...signsXml(step.signs, words),
    ...(step.hold.length === 0
      ? []
      : [
          markup`<info><p outputclass="hold"><b>${words.labels.holdPoint}</b> ${words.signOff.hold(step.hold[0]?.role ?? "")}</p></info>`,
          ...signsXml(step.hold, words),
        ]),
  ];
  addStep(row, notes, markup`<b>${head}</b> ${inCase}${said}`, more, step);
  for (const block of step.blocks)
    if (block.kind === "instruction" && block.performed !== null) addBlocks(row, [block.performed], inCase);
}

type Part =
  | { readonly kind: "note"; readonly xml: Markup }
  | { readonly kind: "instruction"; readonly text: string; readonly details: readonly Markup[] };

/** A step's own blocks in one row; what is done in some case only says so. */
function partsOf(blocks: readonly Block[], inCase: string, words: Words): readonly Part[] {
  return blocks.flatMap((block): readonly Part[] => {
    switch (block.kind) {
      case "statement":
        return [{ kind: "note", xml: hazardXml(block, words) }];
      case "note":
        return [{ kind: "note", xml: markup`<note type="note">${block.text}</note>` }];
      case "instruction":
        return [{ kind: "instruction", text: block.text, details: detailsXml(block, words) }];
      case "group":
        return partsOf(block.blocks, inCase, words).map((part) =>
          part.kind === "instruction" ? { ...part, details: [...paragraphs([block.heading]), ...part.details] } : part,
        );
      case "branch":
        return block.arms.flatMap((arm) =>
          partsOf(arm.blocks, inCase, words).map((part) =>
            part.kind === "instruction" ? { ...part, text: `${words.dita.inCase(arm.heading)}${part.text}` } : part,
          ),
        );
      case "direction":
        return [{ kind: "instruction", text: block.text, details: [] }];
      default:
        return [];
    }
  });
}

/** What stands below an instruction: in an `info` of a step, or in an entry of a list. */
function detailsXml(row: Instruction, words: Words): readonly Markup[] {
  const { labels } = words;
  const rounds = row.rounds.map((value, at) => words.dita.tick(`${labels.round} ${at + 1}: ${value}`));
  const labelled = row.ticks.flatMap(({ label }) => (label === null ? [] : [words.dita.tick(label)]));
  const failing =
    row.failing === null
      ? []
      : [
          markup`<p><b>${row.failing.heading}</b></p><ol>${partsOf(row.failing.blocks, "", words).map((part) =>
            part.kind === "note" ? markup`<li>${part.xml}</li>` : markup`<li>${part.text}${part.details}</li>`,
          )}</ol>`,
        ];
  return [
    ...paragraphs([...row.details, ...rounds, ...(labelled.length === 0 ? [] : [labelled.join("  ")])]),
    ...paragraphs(fieldTexts(row.fields, words)),
    ...failing,
  ];
}

function fieldTexts(fields: readonly Field[], { labels, records, list }: Words): readonly string[] {
  return fields.map(({ label, limits, tools }) => {
    const must = limits === null ? "" : ` ${records.mustBe(limits)}`;
    const by = tools === null ? "" : ` (${labels.measuredWith}: ${list([tools])})`;
    return `${label}${must}${by}: ________`;
  });
}

function signsXml(signs: readonly SignOff[], { labels, records }: Words): readonly Markup[] {
  return infoXml(
    signs.map(({ role, pass }) => {
      const who = pass === null ? role : records.unit(role, pass);
      return `${labels.sign}, ${who}: ${labels.name} ________ ${labels.signature} ________ ${labels.date} ________`;
    }),
  );
}

function sourceTexts(citations: readonly string[], { labels }: Words): readonly string[] {
  return citations.length === 0 ? [] : [`${labels.source}: ${citations.join("; ")}`];
}

function headingXml(text: string): Markup {
  return markup`<p outputclass="heading"><b>${text}</b></p>`;
}

function paragraphs(texts: readonly string[]): readonly Markup[] {
  return texts.map((text) => markup`<p>${text}</p>`);
}

function infos(contents: readonly Markup[]): readonly Markup[] {
  return contents.length === 0 ? [] : [markup`<info>${contents}</info>`];
}

function infoXml(texts: readonly string[]): readonly Markup[] {
  return texts.length === 0 ? [] : [markup`<info>${paragraphs(texts)}</info>`];
}

function tableXml({ columns, rows }: TableBlock): Markup {
  const cells = (texts: readonly string[]): readonly Markup[] =>
    texts.map((text) => markup`<stentry>${text}</stentry>`);
  const body = rows.map(
    (row) => markup`<strow>${cells(row.cells.map((cell) => (typeof cell === "object" ? "☐" : String(cell))))}</strow>`,
  );
  return markup`<simpletable><sthead>${cells(columns)}</sthead>${body}</simpletable>`;
}
