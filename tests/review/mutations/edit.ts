// What a change of a text is made of: places of its tree found at random, and edits of the text there. Knows the grammar and
// nothing of the review.
import { type AstNode, AstUtils } from "langium";
import type * as ast from "#grammar/generated/ast.ts";
import { parseText } from "#syntax/parse.ts";

/** A file that is changed: a procedure of the shop, or a file of its library. */
export interface Sample {
  readonly path: string;
  readonly text: string;
  readonly file: ast.File;
}

export const sampleOf = (path: string, text: string): Sample => ({ path, text, file: parseText(text, path).file });

/** What stood at `start .. end` gives way to `text`. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Change {
  readonly edits: readonly Edit[];
  /** Where it belongs: the steps they are, stand in or hold are those that an entry may name. */
  readonly at: readonly AstNode[];
}

export const GROUPS = ["safety", "values", "order", "items", "words", "layout"] as const;
export type Group = (typeof GROUPS)[number];

/** Makes a change at a random place; null where the sample offers none. */
export type Mutate = (sample: Sample, random: Random) => Change | null;

export interface Random {
  /** A whole number from 0 to below `end`. */
  readonly below: (end: number) => number;
  readonly shuffled: <T>(list: readonly T[]) => readonly T[];
}

/** Mulberry32, a well-known small generator (from memory): the same numbers for the same seed. */
export function randomOf(seed: number): Random {
  let state = seed;
  const below = (end: number): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * end);
  };
  const shuffled = <T>(list: readonly T[]): readonly T[] =>
    list
      .map((one) => ({ one, at: below(2 ** 30) }))
      .sort((a, b) => a.at - b.at)
      .map(({ one }) => one);
  return { below, shuffled };
}

type Guard<T extends AstNode> = (node: unknown) => node is T;

export const nodesIn = <T extends AstNode>(root: AstNode, guard: Guard<T>): readonly T[] =>
  AstUtils.streamAst(root).filter(guard).toArray();

/** The first change that `make` finds among the nodes of one type, taken in a random order. */
export function somewhere<T extends AstNode>(
  guard: Guard<T>,
  make: (node: T, sample: Sample, random: Random) => Change | null,
): Mutate {
  return (sample, random) => {
    for (const node of random.shuffled(nodesIn(sample.file, guard))) {
      const change = make(node, sample, random);
      if (change !== null) return change;
    }
    return null;
  };
}

export const change = (at: AstNode | readonly AstNode[], ...edits: readonly (Edit | null)[]): Change | null => {
  const made = edits.filter((edit) => edit !== null);
  return made.length === edits.length ? { at: "$type" in at ? [at] : at, edits: made } : null;
};

export function rangeOf({ $cstNode }: AstNode): { readonly start: number; readonly end: number } {
  if ($cstNode === undefined) throw new Error("a node that was not read from a text");
  return { start: $cstNode.offset, end: $cstNode.end };
}

export const textOf = (node: AstNode): string => node.$cstNode?.text ?? "";

export const replaced = (node: AstNode, text: string): Edit => ({ ...rangeOf(node), text });

/** The first thing in the text of a node that the pattern fits; null where nothing does or nothing would change. */
export function inside(node: AstNode, pattern: RegExp, by: string): Edit | null {
  const whole = textOf(node);
  const found = pattern.exec(whole);
  if (found === null) return null;
  const start = found.index;
  const after = whole.length - start - found[0].length;
  const changed = whole.replace(pattern, by);
  const text = changed.slice(start, changed.length - after);
  return text === found[0] ? null : { start: rangeOf(node).start + start, end: rangeOf(node).end - after, text };
}

/** Takes a node out, with the space before it. */
export function cut(node: AstNode, { text }: Sample): Edit {
  const { start, end } = rangeOf(node);
  return { start: text.slice(0, start).trimEnd().length, end, text: "" };
}

/** Puts lines behind a node, as far in as it stands. */
export const behind = (node: AstNode, lines: string, sample: Sample): Edit => {
  const { end } = rangeOf(node);
  return { start: end, end, text: `\n${marginOf(node, sample)}${lines}` };
};

/** Puts lines before a node, as far in as it stands. */
export const before = (node: AstNode, lines: string, sample: Sample): Edit => {
  const { start } = rangeOf(node);
  return { start, end: start, text: `${lines}\n${marginOf(node, sample)}` };
};

function marginOf(node: AstNode, { text }: Sample): string {
  const { start } = rangeOf(node);
  return /^\s*/.exec(text.slice(text.lastIndexOf("\n", start - 1) + 1, start))?.[0] ?? "";
}

export function apply(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((so, { start, end, text: by }) => so.slice(0, start) + by + so.slice(end), text);
}
