// What the preview's page and the extension say to each other, and what is kept over a reload. Each end checks what it gets.
import { either, flag, list, number, type Of, object, oneOf, record, text } from "../shape.ts";

const choice = {
  procedure: text,
  as: text,
  units: oneOf("both", "si", "us"),
  repeats: oneOf("compact", "full"),
  set: record(text),
};

/** What is shown of a file; the page keeps it over a reload. */
export const shown = object({ uri: text, ...choice });
export type Shown = Of<typeof shown>;

/** What the page keeps: what is shown, and the row at the top of the screen with how far below the bar it stands. */
export const kept = object({ shown, row: text, below: number });
export type Kept = Of<typeof kept>;

export const fromPage = either(
  object({ kind: oneOf("ready", "export") }),
  object({ kind: oneOf("choose"), ...choice }),
  /** A row was chosen: its line is to be shown. */
  object({ kind: oneOf("row"), id: text }),
);
export type FromPage = Of<typeof fromPage>;

const named = object({ name: text, title: text });

export const toPage = either(
  object({
    kind: oneOf("content"),
    shown,
    content: text,
    form: oneOf("html", "svg"),
    /** Outputs by name, with the words for them. */
    outputs: list(named),
    procedures: list(named),
    options: list(object({ name: text, title: text, choices: list(text) })),
  }),
  /** A picture, as a data URI, for all that the content gives this source. */
  object({ kind: oneOf("figure"), src: text, data: text }),
  /** How what is shown stands to the text: empty where it is the text's. */
  object({ kind: oneOf("standing"), stale: flag, words: text }),
  /** The row of the line that the cursor is in. */
  object({ kind: oneOf("here"), id: text }),
);
export type ToPage = Of<typeof toPage>;
