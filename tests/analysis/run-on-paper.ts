// From a text to the facts that the follower finds in it: the one place of these tests that touches the pipeline.
import { expandProcedure } from "#model/expand.ts";
import { lowerFiles } from "#model/lower.ts";
import { linesOf } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";
import { followed, type OnPaper } from "./followed.ts";

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

/** The facts of all procedures of one file, and how often sets of assignments were combined for them. */
export function onPaper(
  text: string,
  { damaged = false, chosen = {} }: PaperSettings = {},
): ReturnType<typeof followed> {
  return followed(readOnPaper(text, damaged), chosen);
}

/** The text read, lowered and expanded; without `damaged` that must come to no problem. */
export function readOnPaper(text: string, damaged = false): OnPaper {
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
  const lines = linesOf(text);
  return { expanded, lineOf: (offset) => lines.position(offset).line };
}
