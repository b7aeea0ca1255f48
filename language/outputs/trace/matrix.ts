// The matrix of sources: every step and every value of some files, and what it cites, as rows of texts. Knows no format.

import type { Traced } from "#analysis/trace/traced.ts";
import type { Listed } from "#analysis/trace/values.ts";
import type { Citation } from "#model/declarations.ts";
import { type Role, show } from "#quantity/display.ts";
import type { Span } from "#syntax/span.ts";
import type { Words } from "../words/en.ts";
import { type Writer, writerOf } from "../writer.ts";

export interface Matrix {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Values, and how many of them cite nothing. */
  readonly values: number;
  readonly withoutSource: number;
}

/** @param placeOf a place as `path:line` */
export function matrixOf(traced: readonly Traced[], placeOf: (span: Span) => string, words: Words): Matrix {
  const writer = writerOf(words, "si", []);
  const values = traced.filter(({ value }) => value !== null);
  const { heads } = words.trace;
  return {
    heads: [
      ...[heads.procedure, heads.step, heads.what, heads.written, heads.si],
      ...[heads.source, heads.section, heads.revision, heads.where],
    ],
    rows: traced.map((one) => rowOf(one, placeOf(one.span), writer)),
    values: values.length,
    withoutSource: values.filter(({ citations }) => citations.length === 0).length,
  };
}

function rowOf({ procedure, step, title, value, citations }: Traced, where: string, writer: Writer): readonly string[] {
  const say = writer.words.trace;
  const what = value === null ? say.what(say.step, title) : say.what(value.what, value.of);
  const [written, si] = value === null ? ["", ""] : [writtenText(value, say), siText(value, writer)];
  return [procedure?.name ?? "", step ?? "", what, written, si, ...citationCells(citations, say), where];
}

/** Several citations stand in one cell each: in the same order in all three. */
function citationCells(citations: readonly Citation[], say: Words["trace"]): readonly [string, string, string] {
  if (citations.length === 0) return [say.none, "", ""];
  const cell = (textOf: (citation: Citation) => string): string => citations.map(textOf).join("; ");
  return [
    cell(({ source }) => source?.title ?? say.unknown),
    cell(({ section }) => section),
    cell(({ source }) => source?.revision ?? ""),
  ];
}

/** In the writer's units; a share as one, and a value that is only named with its name. */
function writtenText({ value }: Listed, say: Words["trace"]): string {
  if ("text" in value) return value.text;
  const { quantity, share, workedOut, named = [] } = value;
  if (share !== undefined) return say.share(share.text, share.of);
  if (workedOut !== undefined) return workedOut.text;
  const names = named.map(({ name }) => name);
  return names.length === 0 ? show(quantity) : say.named(show(quantity), names.join(", "));
}

function siText({ what, value }: Listed, writer: Writer): string {
  return "text" in value ? "" : writer.value(value.quantity, ROLES[what] ?? "must be met");
}

/** What a value is for, where it is no band to be met. */
const ROLES: Readonly<Record<string, Role>> = {
  ...{ mass: "at least safe", cure: "at least safe", wait: "at least safe", within: "at most safe" },
  ...{
    "heat limit": "at most safe",
    "flash point": "at most safe",
    unbalance: "at most safe",
    room: "at most safe",
    threshold: "at most safe",
  },
  ...{ ambient: "occurs", interference: "occurs", accuracy: "occurs", pressure: "occurs", voltage: "occurs" },
  ...{ hot: "occurs", expansion: "nominal", diameter: "nominal", takes: "at least safe" },
};
