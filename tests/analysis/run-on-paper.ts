// From a text to the facts that the follower finds in it: the one place of these tests that touches the pipeline.
import { createDecisions, type Decisions } from "#analysis/decision.ts";
import type { AnalysisFact } from "#analysis/fact.ts";
import { type FollowContext, followProcedure, type Run } from "#analysis/follow.ts";
import { factsOf } from "#analysis/report.ts";
import { expandProcedure } from "#model/expand.ts";
import { lowerFiles } from "#model/lower.ts";
import { linesOf } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";

export interface PaperFact {
  /** `order.not-installed` and so on: the kind with its family. */
  readonly code: string;
  /** From 0. */
  readonly line: number;
  readonly fact: AnalysisFact;
}

export interface PaperSettings {
  /** The text holds something that cannot be read, on purpose. */
  readonly damaged?: boolean;
  /** Tell also what a procedure leaves loose or out; else short texts would all need a `finish with`. */
  readonly ending?: boolean;
  /** Choices fixed from outside. */
  readonly chosen?: Readonly<Record<string, string>>;
}

/**
 * What is found, in the order of the text: `order.occupied: install Plug in Circle[1]`, with the option assignments after
 * ` | ` where it is not for all, and the first pass and the number of others in parentheses.
 */
export function found(text: string, settings: PaperSettings = {}): readonly string[] {
  return onPaper(text, settings)
    .facts.filter(({ code }) => settings.ending === true || code !== "order.not-final")
    .sort((a, b) => a.fact.span.start - b.fact.span.start)
    .map(({ code, fact: { span, options, pass, more } }) => {
      const place = text.slice(span.start, span.end).replace(/\s+/g, " ");
      const passes =
        pass.length === 0
          ? ""
          : ` (${pass.map(({ variable, value }) => `${variable} = ${value}`).join(", ")}${more > 0 ? `, and ${more} more` : ""})`;
      const so = options?.map((cube) =>
        Object.entries(cube)
          .map(([name, value]) => `${name} ${value}`)
          .join(", "),
      );
      return `${code}: ${place}${passes}${so === undefined ? "" : ` | ${so.join(" or ")}`}`;
    });
}

/** The facts of all procedures of one file, and how often sets of assignments were combined for them; without `damaged` the text must read and lower without a problem. */
export function onPaper(
  text: string,
  { damaged = false, chosen = {} }: PaperSettings = {},
): { facts: readonly PaperFact[]; runs: readonly Run[]; asked: number } {
  const parsed = new Map([["work.sprag", parseText(text, "work.sprag")]]);
  linkFiles(parsed);
  const model = lowerFiles(parsed, () => false).get("work.sprag");
  const problems = [
    ...(parsed.get("work.sprag")?.problems ?? []),
    ...(model?.problems.filter((problem) => problem.kind !== "unused") ?? []),
  ];
  if (model === undefined || (problems.length > 0 && !damaged))
    throw new Error(`${text}\n${problems.map((problem) => `${problem.kind} at ${problem.span.start}`).join("\n")}`);
  const expanded = new Map(model.procedures.map((procedure) => [procedure.id, expandProcedure(procedure).expanded]));
  const { decisions, asked } = countedDecisions();
  const context: FollowContext = {
    decisions,
    expandedOf: (id) => expanded.get(id) ?? null,
    chosen,
    summaries: new Map(),
  };
  const lines = linesOf(text);
  const runs = [...expanded.values()].map((one) => followProcedure(one, context));
  const facts = runs
    .flatMap((run) => factsOf(run))
    .map((fact) => ({ code: codeOf(fact), line: lines.position(fact.span.start).line, fact }));
  return { facts, runs, asked: asked() };
}

function countedDecisions(): { decisions: Decisions; asked: () => number } {
  const plain = createDecisions();
  let count = 0;
  const counted =
    (combine: Decisions["and"]): Decisions["and"] =>
    (a, b) => {
      count++;
      return combine(a, b);
    };
  return { decisions: { ...plain, and: counted(plain.and), or: counted(plain.or) }, asked: () => count };
}

function codeOf(fact: AnalysisFact): string {
  const family = ["unreachable", "impossible condition", "too large", "endless", "bad jump", "empty"].includes(
    fact.kind,
  )
    ? "flow"
    : "order";
  return `${family}.${fact.kind.replaceAll(" ", "-")}`;
}
