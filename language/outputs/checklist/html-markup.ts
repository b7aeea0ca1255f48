// HTML whose text is escaped where it is put in. Knows no document.
import { html, raw } from "hono/html";

/** Escaped HTML. */
export type Markup = ReturnType<typeof raw>;

/** A template; every value in it is escaped unless it is markup itself. No value may be a promise. */
export function markup(strings: TemplateStringsArray, ...values: readonly MarkupValue[]): Markup {
  // The library answers with a promise only where a value is one.
  return html(strings, ...values) as Markup;
}

export type MarkupValue = string | number | Markup | undefined | readonly Markup[];

export const nothing: Markup = raw("");
