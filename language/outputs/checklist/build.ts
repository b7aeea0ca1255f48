// The checklist for the bench: head, cautions, lists and the work in order, as a document that any format renders.
// Knows no format, file or clock.

import type { Unchecked } from "#analysis/limits/unchecked.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { Finding } from "#rules/finding.ts";
import { arrangementBlocks, serialsOf } from "../arrangements.ts";
import { procedureBlocks } from "../blocks.ts";
import { cautionsFor } from "../cautions.ts";
import { conditionClause } from "../conditions.ts";
import type { Document, Signal } from "../document.ts";
import { headOf } from "../head.ts";
import { consumableRows, partRows, toolRows } from "../lists.ts";
import { stockNotes, type ToolStocks } from "../stock.ts";
import type { Words } from "../words/en.ts";
import { type Work, workOf } from "../work.ts";
import { type Units, writerOf } from "../writer.ts";

export interface ChecklistInput {
  readonly expanded: ExpandedProcedure;
  /** Those of the file, allowed ones too. */
  readonly findings: readonly Finding[];
  /** Of all inputs, as hexadecimal. */
  readonly hash: string;
  /** Option name to choice; what is not chosen stays open. */
  readonly options: Readonly<Record<string, string>>;
  readonly units: Units;
  /** A repeat once with a tick for each pass, or every pass by itself. */
  readonly repeats: "compact" | "full";
  /** Asked for as a draft. With an error left it is one in any case. */
  readonly draft: boolean;
  /** Other procedures by id, for those that this one performs; null where one is not known. */
  readonly expandedOf: (id: string) => ExpandedProcedure | null;
  /** What could not be checked for want of data. */
  readonly unchecked?: readonly Unchecked[];
  /** The crib beside the tools of the procedure, where one is given. */
  readonly stock?: ToolStocks;
}

/** Total: what could not be read is named where it stood. */
export function buildChecklist(input: ChecklistInput, words: Words): Document {
  const { expanded, options, units } = input;
  const { procedure } = expanded;
  const writer = writerOf(words, units, procedure.declarations);
  const work = workOf(expanded, options, input.expandedOf);
  const head = headOf(input, work, writer);
  const hazards = new Map<string, string>();
  for (const { declarations } of work.procedures) {
    for (const declared of declarations) if (declared.kind === "hazard") hazards.set(declared.name, declared.title);
  }
  const clauses = (conditions: ExpandedProcedure["begin"]): readonly string[] =>
    conditions.map((condition) => words.sentence(words.conditions.upper(conditionClause(condition, writer))));
  return {
    title: procedure.title,
    draft: input.draft || head.findings.some((finding) => finding.error),
    head,
    signals: signalsOf(work),
    cautions: cautionsFor(work, words, input.unchecked, input.stock !== undefined),
    start: clauses(expanded.begin),
    parts: partRows(work, writer),
    tools: toolRows(work, writer, input.stock),
    stockNotes: input.stock === undefined ? [] : stockNotes(input.stock, writer),
    consumables: consumableRows(work, writer),
    arrangements: arrangementBlocks(work, writer),
    blocks: procedureBlocks(expanded, {
      writer,
      choices: options,
      compact: input.repeats === "compact",
      expandedOf: input.expandedOf,
      serialOf: serialsOf(work.procedures.flatMap(({ declarations }) => declarations)),
      hazardTitle: (name) => hazards.get(name) ?? null,
      prefix: "",
      within: [],
    }),
    end: clauses(expanded.finish),
  };
}

function signalsOf(work: Work): readonly Signal[] {
  const used = new Set<Signal>(work.statements.map((statement) => statement.signal));
  if (work.hasNotes) used.add("note");
  return SIGNALS.filter((signal) => used.has(signal));
}

const SIGNALS: readonly Signal[] = ["danger", "warning", "caution", "note"];
