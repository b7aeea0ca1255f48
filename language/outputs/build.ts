// A procedure as a document that any format renders: head, cautions, lists and the work in order. What an output wants
// otherwise it says. Knows no output and no format, file or clock.

import type { Reminders } from "#analysis/hazards/reminders.ts";
import type { Joinings } from "#analysis/limits/joining.ts";
import type { Unchecked } from "#analysis/limits/unchecked.ts";
import type { Option } from "#model/declarations.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { Finding } from "#rules/finding.ts";
import { arrangementBlocks, serialsOf } from "./arrangements.ts";
import { procedureBlocks } from "./blocks.ts";
import { cautionsFor } from "./cautions.ts";
import { choiceTitle, conditionClause } from "./conditions.ts";
import type { Document, OpenOption, Signal } from "./document.ts";
import { headOf } from "./head.ts";
import { afresh, type RowMemory } from "./kept-rows.ts";
import { consumableRows, partRows, toolRows } from "./lists.ts";
import { planOf } from "./record/plan-of.ts";
import { stockNotes, type ToolStocks } from "./stock.ts";
import type { Words } from "./words/en.ts";
import { type Work, workOf } from "./work.ts";
import { type Units, type Writer, writerOf } from "./writer.ts";

export interface BuildInput {
  readonly expanded: ExpandedProcedure;
  /** Those of the file, allowed ones too. */
  readonly findings: readonly Finding[];
  /** Of all inputs, as hexadecimal; empty where not all of them are at hand, as in a preview. */
  readonly hash: string;
  /** Option name to choice; what is not chosen stays open. */
  readonly options: Readonly<Record<string, string>>;
  readonly units: Units;
  /** A repeat once with a tick for each pass, or every pass by itself. */
  readonly repeats: "compact" | "full";
  /** Whether the answers stand with a trainee's sheet. */
  readonly answers?: boolean;
  /** Asked for as a draft. With an error left it is one in any case. */
  readonly draft: boolean;
  /** Only looked at: where it could be filled in, it cannot be. */
  readonly shown?: boolean;
  /** Other procedures by id, for those that this one performs; null where one is not known. */
  readonly expandedOf: (id: string) => ExpandedProcedure | null;
  /** What could not be checked for want of data. */
  readonly unchecked?: readonly Unchecked[];
  /** What is to be said again at a step. */
  readonly reminders?: Reminders;
  /** At which temperatures parts go together hot or cold. */
  readonly joinings?: Joinings;
  /** The bytes of a figure that the text at a path names; null where they are not at hand. */
  readonly figure?: (from: string, named: string) => Uint8Array | null;
  /** The crib beside the tools of the procedure, where one is given. */
  readonly stock?: ToolStocks;
  /** The rows of the last document of the same procedure, where they are kept. */
  readonly memory?: RowMemory;
}

/** What an output wants of the document that is not as for the bench. */
export interface Wants {
  readonly use: Document["use"];
  /** Reasons at the steps. */
  readonly whys?: boolean;
  /** Says the work in another way; lists are as they are. */
  readonly saying?: (writer: Writer) => Writer;
}

/** Total: what could not be read is named where it stood. */
export function documentOf(input: BuildInput, words: Words, wants: Wants): Document {
  const { expanded, options, units } = input;
  const { procedure } = expanded;
  const writer = writerOf(words, units, procedure.declarations);
  const work = workOf(expanded, options, input.expandedOf);
  const head = headOf(input, work, writer);
  const [compact, whys, stock] = [input.repeats === "compact", wants.whys ?? false, input.stock ?? null];
  const hazards = new Map<string, string>();
  const declarations = work.procedures.flatMap((one) => one.declarations);
  for (const declared of declarations) if (declared.kind === "hazard") hazards.set(declared.name, declared.title);
  const clauses = (conditions: ExpandedProcedure["begin"]): readonly string[] =>
    conditions.map((condition) => words.sentence(words.conditions.upper(conditionClause(condition, writer))));
  const draft = input.draft || head.findings.some((finding) => finding.error);
  // Nobody works by a draft, and who learns fills in another sheet.
  const isFilled = wants.use === "checklist" && !draft && input.shown !== true;
  return {
    use: wants.use,
    title: procedure.title,
    draft,
    head,
    signals: signalsOf(work),
    cautions: cautionsFor(work, words, input.unchecked, stock !== null),
    start: clauses(expanded.begin),
    parts: partRows(work, writer),
    tools: toolRows(work, writer, stock),
    stockNotes: stock === null ? [] : stockNotes(stock, writer),
    consumables: consumableRows(work, writer),
    arrangements: arrangementBlocks(work, writer),
    blocks: procedureBlocks(
      expanded,
      {
        writer: wants.saying?.(writer) ?? writer,
        choices: options,
        whys,
        compact,
        expandedOf: input.expandedOf,
        serialOf: serialsOf(declarations),
        stock,
        figure: input.figure ?? (() => null),
        reminders: input.reminders ?? new Map(),
        joinings: input.joinings ?? new Map(),
        hazardTitle: (name) => hazards.get(name) ?? null,
        prefix: "",
        within: [],
      },
      // Who says it in another way may note what is said.
      (numbering) =>
        (wants.saying === undefined &&
          input.memory?.begin({ words, units, compact, whys, choices: options, stock, declarations, numbering })) ||
        afresh,
    ),
    end: clauses(expanded.finish),
    openOptions: work.options
      .filter(({ name }) => !Object.hasOwn(options, name))
      .map((option) => openOption(option, writer)),
    record: isFilled
      ? planOf({ expanded, work, options, hash: input.hash, document: head.page, expandedOf: input.expandedOf })
      : null,
  };
}

function openOption(option: Option, writer: Writer): OpenOption {
  const { name, title, choices } = option;
  return {
    name,
    title,
    choices: choices.map((choice) => ({ name: choice.name, title: choiceTitle(option, choice.name, writer) })),
  };
}

function signalsOf(work: Work): readonly Signal[] {
  const used = new Set<Signal>(work.statements.map((statement) => statement.signal));
  if (work.hasNotes) used.add("note");
  return SIGNALS.filter((signal) => used.has(signal));
}

const SIGNALS: readonly Signal[] = ["danger", "warning", "caution", "note"];
