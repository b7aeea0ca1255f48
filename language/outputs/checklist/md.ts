// The checklist as GitHub-flavoured Markdown: task lists to tick, tables for what is listed or filled in, all text escaped.
// Knows the document only, no procedure.
import type {
  ArrangementBlock,
  Block,
  Cell,
  Document,
  Field,
  Instruction,
  Section,
  SignOff,
  StatementBlock,
  StepRow,
  TableBlock,
} from "../document.ts";
import { stockText } from "../stock.ts";
import type { Words } from "../words/en.ts";
import { inline, linkTo, paragraphs, quoted, table } from "./md-markup.ts";

/** The whole file. Same document, same bytes. */
export function checklistMarkdown(document: Document, words: Words): string {
  const at: At = { words, level: 2 };
  const parts = [
    ...headOf(document, words),
    ...listsOf(document, words),
    ...(document.blocks.length === 0 ? [] : [`## ${inline(words.labels.work)}`]),
    ...blocksOf(document.blocks, { ...at, level: 3 }),
    ...endOf(document, words),
  ];
  const banner = draftLine(document, words);
  // Markdown has no pages: each section of a draft says what it is.
  const all = banner === null ? parts : parts.map((part) => (part.startsWith("## ") ? `${part}\n\n${banner}` : part));
  return `${paragraphs(all)}\n`;
}

interface At {
  readonly words: Words;
  readonly level: number;
}

function draftLine({ draft }: Document, { labels }: Words): string | null {
  return draft ? `**${inline(labels.draft)}** – ${inline(labels.draftMeaning)}` : null;
}

function headOf(document: Document, words: Words): readonly string[] {
  const { head, title } = document;
  const { labels } = words;
  const [first = [], ...rest] = head.facts.map((fact) => [fact.label, fact.values.join("; ")]);
  const banner = draftLine(document, words);
  return [
    `# ${inline(title)}`,
    ...(banner === null ? [] : [banner]),
    table(first, rest),
    ...(document.filledBy === undefined ? [] : tableOf(document.filledBy, { words, level: 2 })),
    ...(head.findings.length === 0
      ? []
      : [
          `## ${inline(head.findings.some((finding) => finding.error) ? labels.errors : labels.findings)}`,
          ...(words.head.findingsLanguage === "" ? [] : [inline(words.head.findingsLanguage)]),
          table(
            [labels.severity, labels.code, labels.place, labels.message],
            head.findings.map((finding) => [
              finding.severity,
              finding.code,
              finding.place,
              [finding.message, finding.why?.replaceAll("\n", " · "), finding.remedy]
                .filter((text) => text != null)
                .join(" "),
            ]),
          ),
        ]),
    ...(head.allows.length === 0
      ? []
      : [
          `## ${inline(labels.allowed)}`,
          table(
            [labels.code, labels.place, labels.reason, labels.by],
            head.allows.map((allow) => [allow.code, allow.place, allow.reason, allow.by ?? ""]),
          ),
        ]),
  ];
}

function listsOf(document: Document, words: Words): readonly string[] {
  const { labels, lists } = words;
  const section = (title: string, body: string, rows: number): readonly string[] =>
    rows === 0 ? [] : [`## ${inline(title)}`, body];
  const orNone = (texts: readonly string[]): string => (texts.length === 0 ? lists.noRequirement : texts.join("; "));
  const hasStock = document.stockNotes.length > 0;
  const tools = document.tools.map((tool) => [
    tool.title,
    orNone(tool.asked),
    orNone([...tool.lifts, ...tool.used]),
    ...(hasStock ? [stockText(tool.stock ?? [], words)] : []),
    tool.name,
  ]);
  const toolHeads = [
    labels.tool,
    labels.asked,
    labels.used,
    ...(hasStock ? [words.stock.heading] : []),
    labels.nameInText,
  ];
  const parts = document.parts.map((part) => [part.title, String(part.count), part.remarks.join("; "), part.name]);
  const consumables = document.consumables.map((one) => [one.title, one.amounts.join("; "), one.name]);
  const signals = document.signals.map((signal) => [words.signals[signal], words.signalKey[signal]]);
  return [
    ...section(labels.keyToSignals, table([labels.signalWord, labels.meaning], signals), signals.length),
    ...section(
      labels.cautions,
      document.cautions.map((caution) => `- ${inline(caution)}`).join("\n"),
      document.cautions.length,
    ),
    ...section(labels.tools, table(toolHeads, tools), tools.length),
    ...(tools.length === 0 ? [] : document.stockNotes.map(inline)),
    ...section(
      labels.parts,
      table([labels.part, labels.count, labels.remarks, labels.nameInText], parts),
      parts.length,
    ),
    ...section(
      labels.consumables,
      table([labels.consumable, labels.amount, labels.nameInText], consumables),
      consumables.length,
    ),
    ...document.arrangements.flatMap((block) => arrangementOf(block, words)),
    ...section(labels.beforeStart, document.start.map(tickLine).join("\n"), document.start.length),
  ];
}

function arrangementOf(block: ArrangementBlock, { arrangement, comma }: Words): readonly string[] {
  const view = block.view ?? block.figure?.text ?? "";
  return [
    `## ${inline(block.title)}`,
    ...(view === "" ? [] : [inline(view)]),
    table(
      [arrangement.position, arrangement.serialNumber, block.measure],
      block.rows.map(({ position, serial, weight }) => [position, serial, weight]),
    ),
    `- ${inline(`${arrangement.residual}: ${block.residual}`)}\n- ${inline(`${arrangement.limit}: ${block.limits.length === 0 ? arrangement.noLimit : comma(block.limits)}`)}`,
    inline(block.caution),
  ];
}

function endOf(document: Document, { labels, head }: Words): readonly string[] {
  const end = document.end.length === 0 ? [] : [`## ${inline(labels.atTheEnd)}`, document.end.map(tickLine).join("\n")];
  return [...end, "---", `${inline(document.head.page)} – ${inline(head.uncontrolled)}`];
}

function blocksOf(blocks: readonly Block[], at: At): readonly string[] {
  return blocks.flatMap((block) => blockOf(block, at));
}

function blockOf(block: Block, at: At): readonly string[] {
  const { words } = at;
  switch (block.kind) {
    case "section":
      return sectionOf(block, at);
    case "statement":
      return [statementOf(block, words)];
    case "note":
      return [quoted([`**${inline(words.signals.note)}** ${inline(block.text)}`])];
    case "step":
      return stepOf(block, at);
    case "branch":
      return block.arms.flatMap((arm) => [`**${inline(arm.heading)}**`, quoted(blocksOf(arm.blocks, at))]);
    case "group":
      return [`**${inline(block.heading)}**`, quoted(blocksOf(block.blocks, at))];
    case "direction":
      return [`**${block.link === null ? inline(block.text) : linkTo(block.link, block.text)}**`];
    case "instruction":
      return instructionOf(block, at);
    case "table":
      return tableOf(block, at);
  }
}

function sectionOf(section: Section, at: At): readonly string[] {
  const { flow } = at.words;
  const title = section.origin === null ? `${section.number} ${section.title}` : flow.performed(section.origin);
  const pass = section.pass === null ? "" : ` (${inline(section.pass)})`;
  return [
    heading(at.level, `${inline(title)}${pass}`),
    ...sourcesOf(section.citations, at),
    ...blocksOf(section.blocks, { ...at, level: at.level + 1 }),
  ];
}

function statementOf({ signal, hazards, text, avoid, wear }: StatementBlock, words: Words): string {
  return quoted([
    `**${inline(words.signals[signal])}** – ${inline(words.comma(hazards))}`,
    inline(text),
    ...(avoid === null ? [] : [`**${inline(words.labels.avoid)}:** ${inline(avoid)}`]),
    ...(wear.length === 0 ? [] : [`**${inline(words.labels.wear)}:** ${inline(words.comma(wear))}`]),
  ]);
}

function stepOf(step: StepRow, at: At): readonly string[] {
  const { labels } = at.words;
  const name = step.name === null ? "" : ` ${inline(step.name)}`;
  const pass = step.pass === null ? "" : ` (${inline(step.pass)})`;
  const critical = step.critical ? ` – ${inline(labels.critical)}` : "";
  return [
    `<a id="${step.id}"></a>`,
    heading(at.level, `${inline(labels.step)} ${inline(step.number)}${name}${pass}${critical}`),
    ...(step.terms.length === 0 ? [] : [inline(step.terms.join(" "))]),
    ...(step.words === null ? [] : [`**${inline(step.words)}**`]),
    ...blocksOf(step.blocks, { ...at, level: at.level + 1 }),
    ...fieldsOf(step.fields, labels.records, at),
    ...step.whys.map((why) => inline(`${labels.why}: ${why}`)),
    ...step.figures.map((figure) => inline(`${labels.figure}: ${figure}`)),
    ...sourcesOf(step.citations, at),
    ...signsOf(step.signs, at),
    ...holdOf(step.hold, at),
  ];
}

function instructionOf(row: Instruction, at: At): readonly string[] {
  const { labels } = at.words;
  const one = row.ticks.length === 1 && row.rounds.length === 0;
  const details = row.details.map((detail) => `  - ${inline(detail)}`);
  const counter = row.ticks.map((tick) => `☐ ${tick.label ?? ""}`).join("   ");
  const rounds = row.rounds.map((value, round) => tickLine(`${labels.round} ${round + 1}: ${value}`));
  const lines =
    row.rounds.length > 0
      ? [inline(row.text), "", ...details.map((detail) => detail.trimStart()), ...rounds]
      : [tickLine(row.text), ...(one ? [] : [`  - ${inline(counter)}`]), ...details];
  return [
    lines.join("\n"),
    ...fieldsOf(row.fields, labels.records, at),
    ...(row.failing === null ? [] : [`**${inline(row.failing.heading)}:**`, quoted(blocksOf(row.failing.blocks, at))]),
    ...(row.performed === null ? [] : sectionOf(row.performed, at)),
  ];
}

function tableOf({ title, columns, rows, notes }: TableBlock, at: At): readonly string[] {
  const cellOf = (cell: Cell): string => (typeof cell !== "object" ? String(cell) : cell.fill === "box" ? "☐" : "");
  return [
    ...(title === null ? [] : [heading(at.level, inline(title))]),
    table(
      columns,
      rows.map(({ cells }) => cells.map(cellOf)),
    ),
    ...notes.map(inline),
  ];
}

function fieldsOf(fields: readonly Field[], title: string, { words }: At): readonly string[] {
  if (fields.length === 0) return [];
  const { limits, measuredWith, value } = words.labels;
  const measured = fields.some((field) => field.tools !== null);
  const rows = fields.map((field) => [field.label, field.limits ?? "", ...(measured ? [field.tools ?? ""] : []), ""]);
  return [table([title, limits, ...(measured ? [measuredWith] : []), value], rows)];
}

function signsOf(signs: readonly SignOff[], { words }: At): readonly string[] {
  if (signs.length === 0) return [];
  const { labels } = words;
  const rows = signs.map(({ role, pass }) => [pass === null ? role : words.records.unit(role, pass), "", "", ""]);
  return [table([labels.sign, labels.name, labels.signature, labels.date], rows)];
}

function holdOf(hold: readonly SignOff[], at: At): readonly string[] {
  const [first] = hold;
  if (first === undefined) return [];
  const { labels, signOff } = at.words;
  return [`**${inline(labels.holdPoint)}** – ${inline(signOff.hold(first.role))}`, ...signsOf(hold, at)];
}

function sourcesOf(citations: readonly string[], { words }: At): readonly string[] {
  return citations.length === 0 ? [] : [inline(`${words.labels.source}: ${citations.join("; ")}`)];
}

function tickLine(text: string): string {
  return `- [ ] ${inline(text)}`;
}

function heading(level: number, text: string): string {
  return `${"#".repeat(Math.min(level, 6))} ${text}`;
}
