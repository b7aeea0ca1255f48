// Where each word of a file stands: on a new line, after a blank, close to the word before. Follows the tree; knows no
// comments' text and no columns.
import { type AstNode, AstUtils } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { closeWords } from "./format-spacing.ts";
import type { Word } from "./format-words.ts";

/** What separates a word from the one before: nothing, a blank, a new line where the group is too long, a new line. */
export type Separator = "close" | "blank" | "soft" | "line";

/** How a word stands; nests are opened and closed in the order of the members. */
export interface Place {
  separator: Separator;
  /** Whether an empty line belongs before it, written or not. */
  apart: boolean;
  /** Indentations ended before the separator. */
  outdents: number;
  /** Indentations begun before the separator. */
  indents: number;
  /** Groups begun after the separator. */
  groups: number;
  /** Nests ended after the word. */
  closes: number;
}

/** One place for each word. */
export function planLayout(file: ast.File, words: readonly Word[]): readonly Place[] {
  const plan = startPlan(words);
  file.items.forEach((item, index) => {
    const place = planItem(plan, item, "line");
    place.apart = ast.isProcedure(item) || ast.isProcedure(file.items[index - 1]);
  });
  for (const node of AstUtils.streamAllContents(file)) planBlock(plan, node);
  return plan.places;
}

interface Plan {
  readonly words: readonly Word[];
  readonly places: readonly Place[];
  /** Index of the word that begins, or ends, at an offset. */
  readonly startAt: ReadonlyMap<number, number>;
  readonly endAt: ReadonlyMap<number, number>;
  /** The braces of each node that has a block. */
  readonly blocks: ReadonlyMap<AstNode, Block>;
}

interface Block {
  readonly open: number;
  close: number;
  /** Whether another block stands in it. */
  nests: boolean;
}

function startPlan(words: readonly Word[]): Plan {
  const close = closeWords(words);
  return {
    words,
    places: words.map((_, at) => ({
      separator: close.has(at) ? "close" : "blank",
      apart: false,
      outdents: 0,
      indents: 0,
      groups: 0,
      closes: 0,
    })),
    startAt: new Map(words.map((word, at) => [word.start, at])),
    endAt: new Map(words.map((word, at) => [word.end, at])),
    blocks: blocksOf(words),
  };
}

function blocksOf(words: readonly Word[]): ReadonlyMap<AstNode, Block> {
  const blocks = new Map<AstNode, Block>();
  const open: Block[] = [];
  words.forEach((word, at) => {
    if (word.leaf.tokenType.name === "{") {
      const around = open[open.length - 1];
      if (around !== undefined) around.nests = true;
      const block = { open: at, close: at, nests: false };
      open.push(block);
      blocks.set(word.leaf.astNode, block);
    } else if (word.leaf.tokenType.name === "}") {
      const block = open.pop();
      if (block !== undefined) block.close = at;
    }
  });
  return blocks;
}

// ---- blocks

/** Items of a block stand one on a line; a single short one may stand between its braces. */
function planBlock(plan: Plan, node: AstNode): void {
  const block = plan.blocks.get(node);
  if (block === undefined) return;
  const { places } = plan;
  const items = itemsOf(node);
  const open = placeAt(places, block.open);
  const close = placeAt(places, block.close);
  const separator = mayStandOnOneLine(plan, node, block, items.length) ? "soft" : "line";
  open.groups++;
  for (const item of items) planItem(plan, item, separator);
  placeAt(places, block.open + 1).indents++;
  close.outdents++;
  close.separator = items.length > 0 || hasComment(plan.words, block) ? separator : "close";
  close.closes++;
}

function itemsOf(node: AstNode): readonly AstNode[] {
  if (ast.isCheck(node)) return node.fails;
  if (ast.isOption(node)) return node.choices;
  if (ast.isChoose(node)) return node.rows;
  if (ast.isStep(node)) return node.lines;
  if ("properties" in node) return node.properties as AstNode[];
  return "items" in node ? (node.items as AstNode[]) : [];
}

function mayStandOnOneLine(plan: Plan, node: AstNode, block: Block, count: number): boolean {
  if (block.nests || hasComment(plan.words, block) || ast.isProcedure(node) || ast.isTask(node) || ast.isCrib(node))
    return false;
  // The ways of a branch stand below each other.
  if (node.$containerProperty === "otherwise" || (ast.isWhen(node) && node.otherwise !== undefined)) return false;
  if (ast.isOption(node)) return node.choices.every((choice) => choice.title === undefined);
  return count <= 1;
}

function hasComment(words: readonly Word[], block: Block): boolean {
  for (let at = block.open + 1; at <= block.close; at++) if ((words[at]?.before.comments.length ?? 0) > 0) return true;
  return false;
}

// ---- statements

/** Sets a statement as a group of its own, with the breaks it may have. */
function planItem(plan: Plan, item: AstNode, separator: Separator): Place {
  const { places } = plan;
  const first = placeAt(places, firstOf(plan, item));
  first.separator = separator;
  first.groups++;
  placeAt(places, lastOf(plan, item)).closes++;
  if (ast.isStep(item) && !item.block)
    for (const line of item.lines) if (!startsStep(item, line)) planClause(plan, line);
  if (ast.isStatement(item)) planStatement(plan, item);
  if (ast.isBeginLine(item) || ast.isFinishLine(item) || ast.isNeedsLine(item) || ast.isGivesLine(item))
    planConditions(plan, item);
  return first;
}

/** Whether a step begins with this line as its action: `step install Cover`. */
function startsStep(step: ast.Step, line: AstNode): boolean {
  return line === step.lines[0] && step.name === undefined && step.words === undefined;
}

/** A line of a one-line step: a line of its own, further in, where the step is too long. */
function planClause(plan: Plan, line: AstNode): void {
  placeAt(plan.places, firstOf(plan, line)).indents++;
  planItem(plan, line, "soft");
  placeAt(plan.places, lastOf(plan, line)).closes++;
}

/** `avoid` and `wear` go on lines of their own where a safety statement is too long. */
function planStatement(plan: Plan, statement: ast.Statement): void {
  planRests(plan, statement, (word) => word === "avoid" || word === "wear");
}

/** One condition a line where a list of them is too long. */
function planConditions(plan: Plan, line: AstNode): void {
  planRests(plan, line, (_, before) => before === ",");
}

/** The rests of a statement, each from a word that begins one up to the next, may go on lines of their own, further in. */
function planRests(plan: Plan, node: AstNode, begins: (word: string, before: string) => boolean): void {
  const { places } = plan;
  const own = (at: number): string => ownKeyword(plan.words, at, node);
  const end = lastOf(plan, node);
  let isRest = false;
  for (let at = firstOf(plan, node) + 1; at <= end; at++) {
    if (!begins(own(at), own(at - 1))) continue;
    if (isRest) placeAt(places, at - 1).closes++;
    const place = placeAt(places, at);
    place.separator = "soft";
    place.indents++;
    isRest = true;
  }
  if (isRest) placeAt(places, end).closes++;
}

/** The keyword at a place, if it belongs to the node itself and not to a part of it. */
function ownKeyword(words: readonly Word[], at: number, node: AstNode): string {
  const { leaf } = known(words[at]);
  return leaf.astNode === node ? leaf.tokenType.name : "";
}

// ---- words of a node

function firstOf(plan: Plan, node: AstNode): number {
  return known(plan.startAt.get(node.$cstNode?.offset ?? -1));
}

function lastOf(plan: Plan, node: AstNode): number {
  return known(plan.endAt.get(node.$cstNode?.end ?? -1));
}

function placeAt(places: readonly Place[], at: number): Place {
  return known(places[at]);
}

/** Each node of a tree without damage begins and ends with a word. */
function known<T>(value: T | undefined): T {
  if (value === undefined) throw new RangeError("a node without words");
  return value;
}
