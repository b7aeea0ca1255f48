// The outline of a file: procedures, tasks and steps with their numbers, declarations by kind. Made from the model, in the
// order of the text; what stands inside another extent becomes its child. Knows no request.
import { SymbolKind } from "vscode-languageserver";
import type { Declaration } from "#model/declarations.ts";
import type { Item, Step } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { FileView } from "./view.ts";

export interface OutlineEntry {
  readonly what: "procedure" | "task" | "step" | "perform" | Declaration["kind"];
  /** As `2.3`; "" of what bears none. */
  readonly number: string;
  /** What it is called in the text; null where it has no name. */
  readonly name: string | null;
  /** Title or own words; of a step without them its first line. */
  readonly words: string;
  readonly extent: Span;
  /** Inside the extent. */
  readonly head: Span;
  readonly children: OutlineEntry[];
}

export function outlineOf(view: FileView): readonly OutlineEntry[] {
  const { declarations, procedures } = view.model;
  const all: OutlineEntry[] = declarations.map(entryOfDeclaration);
  for (const procedure of procedures) {
    const { name, title, extent, span } = procedure;
    all.push(entry("procedure", "", name, title, extent, span));
    collect(view, procedure.items, all);
  }
  return nested(all);
}

/** “2.3 Heat the bearing”, or a declaration's name. */
export function labelOf({ what, number, name, words }: OutlineEntry): string {
  const label = number === "" ? (name ?? words) : `${number} ${what === "task" ? words || (name ?? "") : words}`;
  return label.trim() || what;
}

/** What stands beside the label. */
export function detailOf({ number, name, words }: OutlineEntry): string {
  if (number === "") return name === null || words === name ? "" : words;
  return name === null || name === words ? "" : name;
}

export const SYMBOL_KINDS: Readonly<Record<OutlineEntry["what"], SymbolKind>> = {
  procedure: SymbolKind.Class,
  task: SymbolKind.Namespace,
  step: SymbolKind.Method,
  perform: SymbolKind.Event,
  part: SymbolKind.Object,
  ring: SymbolKind.Array,
  holes: SymbolKind.Array,
  fit: SymbolKind.Operator,
  tool: SymbolKind.Interface,
  consumable: SymbolKind.Property,
  material: SymbolKind.TypeParameter,
  energy: SymbolKind.Event,
  hazard: SymbolKind.Event,
  option: SymbolKind.Enum,
  fact: SymbolKind.Boolean,
  value: SymbolKind.Constant,
  reading: SymbolKind.Variable,
  threshold: SymbolKind.Number,
  arrangement: SymbolKind.Array,
  crib: SymbolKind.Package,
  source: SymbolKind.File,
  role: SymbolKind.Interface,
};

function entryOfDeclaration({ kind, name, title, extent, span }: Declaration): OutlineEntry {
  return entry(kind, "", name, title, extent, span);
}

/** @param name "" where it could not be read */
function entry(
  what: OutlineEntry["what"],
  number: string,
  name: string | null,
  words: string,
  extent: Span,
  head: Span,
): OutlineEntry {
  const isInside = extent.start <= head.start && head.end <= extent.end;
  return {
    what,
    number,
    name: name === "" ? null : name,
    words: oneLine(words),
    extent,
    head: isInside ? head : extent,
    children: [],
  };
}

function collect(view: FileView, items: readonly Item[], into: OutlineEntry[]): void {
  for (const item of items) {
    switch (item.kind) {
      case "task":
        into.push(entry("task", item.number, item.name, item.title, item.span, item.headSpan));
        collect(view, item.items, into);
        break;
      case "step":
        into.push(entry("step", item.number, item.name, wordsOf(view, item), item.span, item.headSpan));
        break;
      case "perform":
        into.push(entry("perform", item.number, null, sourceOf(view, item.span), item.span, item.action.place));
        break;
      case "repeat":
      case "any order":
        collect(view, item.items, into);
        break;
      case "when":
        for (const arm of item.arms) collect(view, arm.items, into);
        collect(view, item.otherwise ?? [], into);
        break;
      default:
    }
  }
}

function wordsOf(view: FileView, { words, name, span, lines }: Step): string {
  if (words !== null) return words;
  const first = lines.find((line) => line.kind === "action" || line.kind === "check" || line.kind === "repeat");
  const text = first === undefined ? "" : sourceOf(view, first.span);
  return name ?? (text || sourceOf(view, span).replace(/^step\s*\{?\s*/, ""));
}

/** The first line of a place, without what opens its block. */
function sourceOf(view: FileView, { start, end }: Span): string {
  return oneLine(/^[^\r\n]*/.exec(view.text.slice(start, Math.min(end, start + MOST_SOURCE)))?.[0] ?? "").replace(
    /\s*\{$/,
    "",
  );
}

const MOST_SOURCE = 200;
const MOST_WORDS = 80;

function oneLine(text: string): string {
  const line = text.trim().replace(/\s+/gu, " ");
  if (line.length <= MOST_WORDS) return line;
  // No half of a letter is left.
  return `${line.slice(0, MOST_WORDS - 1).replace(/[\uD800-\uDBFF]$/, "")}…`;
}

/** Each under the innermost that holds it. */
function nested(all: readonly OutlineEntry[]): readonly OutlineEntry[] {
  const inOrder = [...all].sort((a, b) => a.extent.start - b.extent.start || b.extent.end - a.extent.end);
  const top: OutlineEntry[] = [];
  const open: OutlineEntry[] = [];
  for (const each of inOrder) {
    while (open.length > 0 && (open[open.length - 1] as OutlineEntry).extent.end <= each.extent.start) open.pop();
    (open[open.length - 1]?.children ?? top).push(each);
    open.push(each);
  }
  return top;
}
