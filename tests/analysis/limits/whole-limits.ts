// What the checks of values find in a text, whole: places as the words that stand there, quantities and computations as they are
// shown. Also what they leave out, what they work out on the way, and how far from a limit a value stays.
import { computedIn, limitFactsOf, marginsIn, uncheckedIn } from "#analysis/limits/limits.ts";
import { show } from "#quantity/display.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import type { Span } from "#syntax/span.ts";
import { onPaper, type PaperSettings } from "../run-on-paper.ts";

/** In the order of the text; without passes where there are none. */
export function limitFacts(text: string, settings: PaperSettings = {}): readonly object[] {
  return onPaper(text, settings)
    .runs.flatMap((run) => limitFactsOf(run))
    .sort((a, b) => a.span.start - b.span.start)
    .map(({ pass, more, ...fact }) => ({
      ...(inWords(text, fact) as object),
      ...(pass.length === 0 ? {} : { pass, more }),
    }));
}

/** The same, short: the kind, how it is so, and the words at its place. */
export function limitsAt(text: string, settings: PaperSettings = {}): readonly string[] {
  return limitFacts(text, settings).map((fact) => {
    const { kind, how, span } = fact as { readonly kind: string; readonly how?: string; readonly span: string };
    return `${how === undefined ? kind : `${kind} ${how}`}: ${span}`;
  });
}

/** What could not be checked in the first procedure: the matter, of what, what is lacking, for what, in whose declaration, and where. */
export function leftOut(text: string, settings: PaperSettings = {}): readonly string[] {
  const [run] = onPaper(text, settings).runs;
  return (run === undefined ? [] : uncheckedIn(run)).map(
    ({ span, ...said }) =>
      `${Object.values(said)
        .filter((word) => word !== null)
        .join(" | ")} @ ${words(text, span)}`,
  );
}

/** What is worked out in the first procedure, with its step: `1: Wrench for Screw @ 45 N·m: setting 39.1 N·m`. */
export function workedOut(text: string): readonly string[] {
  const [run] = onPaper(text).runs;
  return (run === undefined ? [] : computedIn(run)).map(
    ({ of, span, step, explanation: { result } }) =>
      `${step}: ${of} @ ${words(text, span)}: ${result.name} ${show(result.value)}`,
  );
}

/** How far from their limits the values of the first procedure are: `1: preload Screw of Screw 90 %`. */
export function marginsOf(text: string): readonly string[] {
  const [run] = onPaper(text).runs;
  return (run === undefined ? [] : marginsIn(run)).map(
    ({ step, kind, part, limitOf, value }) => `${step}: ${kind} ${part} of ${limitOf} ${show(value)}`,
  );
}

export function inWords(text: string, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((each) => inWords(text, each));
  if (value === null || typeof value !== "object") return value;
  if (isSpan(value)) return words(text, value);
  if (isQuantity(value)) return show(value);
  if (isMagnitude(value)) return `${toNumber(value.written)} ${value.unit.text}`;
  if ("formula" in value && "inputs" in value) return value.formula;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inWords(text, each)]));
}

function words(text: string, { start, end }: Span): string {
  return text.slice(start, end).replace(/\s+/g, " ");
}

function isSpan(value: object): value is Span {
  return "start" in value && "end" in value && "path" in value;
}

function isQuantity(value: object): value is Quantity {
  return "form" in value && "nominal" in value;
}

function isMagnitude(value: object): value is Magnitude {
  return "written" in value && "unit" in value;
}
