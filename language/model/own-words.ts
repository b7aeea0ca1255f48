// The texts in a writer's own words, each with what it is for and its place, down to single words of it. Knows no word.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Span } from "#syntax/span.ts";
import { offsetsOf } from "#syntax/text-value.ts";
import type { Term } from "./declarations.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { propertySpan } from "./names.ts";
import type { Procedure } from "./procedure.ts";

/** The own words of a procedure, or of a file outside its procedures, and what holds for them. */
export interface Wording {
  readonly procedure: Procedure | null;
  readonly terms: readonly Term[];
  /** The shop's own, in small letters. */
  readonly verbs: ReadonlySet<string>;
  /** In the order of the text. */
  readonly texts: readonly OwnWords[];
}

/**
 * `instruction`: what is to be done. `remedy`: how not to be hurt, what to do instead. `look`: what a check or reading looks at.
 * `description`: notes, reasons, what a statement warns of. `title`: names of things, labels, captions.
 */
export type Use = "instruction" | "remedy" | "look" | "description" | "title";

export interface OwnWords {
  readonly use: Use;
  readonly text: string;
  /** With its quotes. */
  readonly span: Span;
  /** As it stands in the file. */
  readonly image: string;
  /** The innermost step it stands in. */
  readonly step: Span | null;
}

/** The place of a part of a text in its file. */
export function placeIn({ image, span, text }: OwnWords, start: number, end: number): Span {
  const offsets = offsetsOf(image, text);
  const [first, last] = [offsets?.[start], offsets?.[end - 1]];
  if (first === undefined || last === undefined) return span;
  return { ...span, start: span.start + first, end: span.start + last + 1 };
}

/**
 * All texts below these nodes, without those of `use` lines, documents and reasons.
 * @param known those of a task, where they are known already
 */
export function ownWordsIn(
  scope: Scope,
  nodes: readonly AstNode[],
  known: (task: ast.Task) => readonly OwnWords[] | null = () => null,
): readonly OwnWords[] {
  const found: OwnWords[] = [];
  for (const node of nodes) gather({ scope, known, found }, node, null);
  return found.sort((a, b) => a.span.start - b.span.start);
}

const USES: Readonly<Record<string, Readonly<Record<string, Use>>>> = {
  Step: { words: "instruction" },
  Do: { words: "instruction" },
  Statement: { text: "description", avoid: "remedy", wear: "title" },
  Note: { text: "description" },
  WhyLine: { text: "description" },
  StopJump: { text: "remedy" },
  Check: { words: "look" },
  Measure: { words: "look" },
  Inspect: { words: "look" },
  Align: { mark: "look" },
  RecordLine: { label: "title" },
  FigureLine: { caption: "title" },
  ...Object.fromEntries(
    [
      ...["Procedure", "Task", "Material", "Role", "Ring", "Holes", "Part", "Tool", "Consumable", "Energy", "Hazard"],
      ...["Option", "Choice", "FactDeclaration"],
    ].map((type) => [type, { title: "title" } as const]),
  ),
};

interface Gathering {
  readonly scope: Scope;
  readonly known: (task: ast.Task) => readonly OwnWords[] | null;
  readonly found: OwnWords[];
}

function gather(gathering: Gathering, node: AstNode, around: Span | null): void {
  const { found, known, scope } = gathering;
  const before = ast.isTask(node) ? known(node) : null;
  if (before !== null) {
    for (const one of before) found.push(one);
    return;
  }
  const step = ast.isStep(node) ? spanOf(scope, node) : around;
  const uses = Object.hasOwn(USES, node.$type) ? USES[node.$type] : undefined;
  for (const property in node) {
    if (property.startsWith("$")) continue;
    const value: unknown = node[property as keyof AstNode];
    const use = uses?.[property];
    if (use !== undefined) {
      for (const [index, text] of [value].flat().entries()) {
        const span = propertySpan(scope, node, property, index);
        const image = scope.parsed.text.slice(span.start, span.end);
        if (typeof text === "string") found.push({ use, text, span, image, step });
      }
      // Texts stand in lines and blocks, which stand in lists, and behind `otherwise`.
    } else if (Array.isArray(value)) {
      for (const one of value) if (isNode(one)) gather(gathering, one, step);
    } else if (property === "otherwise" && isNode(value)) gather(gathering, value, step);
  }
}

function isNode(value: unknown): value is AstNode {
  return typeof value === "object" && value !== null && "$type" in value;
}
