// What is found where it is written, in no pass of a repeat and whatever was chosen. Knows no fact.
import type { Span } from "#syntax/span.ts";
import type { Found } from "./fact.ts";

/** The part of a fact that says where. */
export function foundAt(span: Span): Found {
  return { span, pass: [], more: 0 };
}
