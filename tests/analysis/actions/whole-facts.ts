// The facts that the follower finds, whole: every place in the text stands as the words that stand there, so that a test can
// compare all that a fact says. Passes that are none, and no more than the first, are left out.
import type { Span } from "#syntax/span.ts";
import { onPaper } from "../run-on-paper.ts";

/** In the order of the text. */
export function wholeFacts(text: string): readonly object[] {
  return [...onPaper(text).facts]
    .sort((a, b) => a.fact.span.start - b.fact.span.start)
    .map(({ fact: { pass, more, ...fact } }) => ({
      ...(inWords(text, fact) as object),
      ...(pass.length === 0 ? {} : { pass, more }),
    }));
}

function inWords(text: string, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((each) => inWords(text, each));
  if (value === null || typeof value !== "object") return value;
  if (isSpan(value)) return text.slice(value.start, value.end).replace(/\s+/g, " ");
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inWords(text, each)]));
}

function isSpan(value: object): value is Span {
  return "start" in value && "end" in value && "path" in value;
}
