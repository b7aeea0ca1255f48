// Resolves the names of a text to records, and says which are not known or mean another sort of thing. Knows the sorts,
// not what statements do with them.
import { type AstNode, type CstNode, GrammarAST, isCompositeCstNode, type Reference } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { nearestNames } from "#syntax/edit-distance.ts";
import type { Span } from "#syntax/span.ts";
import type { Declaration } from "./declarations.ts";
import { lookUp, type Scope, spanOf } from "./lowering.ts";
import type { StepRef } from "./procedure.ts";

export type Sort = Declaration["kind"];
export type OfSort<S extends Sort> = Extract<Declaration, { readonly kind: S }>;

/**
 * The record that a reference means, where it is one of the sorts wanted; else null, with a problem.
 * @param wanted what belongs there, in the writer's words
 */
export function resolve<S extends Sort>(
  scope: Scope,
  reference: Reference<ast.Named>,
  sorts: readonly S[],
  wanted = sortWords(sorts),
): OfSort<S> | null {
  const node = meant(scope, reference);
  const span = referenceSpan(scope, reference);
  if (node === undefined) {
    reportUnknown(scope, span, reference.$refText, wanted, (candidate) =>
      sorts.some((sort) => sort === sortOf(scope, candidate)),
    );
    return null;
  }
  markUsed(scope, node);
  const record = scope.lowering.records.get(node);
  if (record !== undefined && sorts.some((sort) => sort === record.kind)) return record as OfSort<S>;
  reportWrongSort(scope, span, reference.$refText, wanted, node, sorts);
  return null;
}

/** The node that a reference means: the one that linking finds (`reference.ref`), found by the names in reach. */
export function meant(scope: Scope, reference: Reference<ast.Named>): ast.Named | undefined {
  return lookUp(scope.reach, reference.$refText) as ast.Named | undefined;
}

function markUsed(scope: Scope, node: AstNode): void {
  const id = usedId(scope.lowering, node);
  if (id !== null) scope.used.add(id);
}

/** What stands for a node among those that are used; null for what is no declaration. */
export function usedId({ records, scopes }: Scope["lowering"], node: AstNode): Declaration | string | null {
  const record = records.get(node);
  if (record !== undefined) return record;
  return ast.isProcedure(node) ? `${scopes.get(node)?.parsed.path}#${node.name}` : null;
}

/** The procedure that a reference means. */
export function resolveProcedure(scope: Scope, reference: Reference<ast.Named>): ast.Procedure | null {
  const node = meant(scope, reference);
  const span = referenceSpan(scope, reference);
  if (node !== undefined) markUsed(scope, node);
  if (node === undefined) reportUnknown(scope, span, reference.$refText, "a procedure", ast.isProcedure);
  else if (ast.isProcedure(node)) return node;
  else reportWrongSort(scope, span, reference.$refText, "a procedure", node, []);
  return null;
}

/** The step or task that a reference means. */
export function resolveStep(scope: Scope, reference: Reference<ast.StepOrTask>): StepRef {
  const span = referenceSpan(scope, reference);
  const name = reference.$refText;
  const node = scope.reach.steps.get(name.normalize("NFC"));
  if (node !== undefined) return { name, span, target: spanOf(scope, node) };
  if (!scope.reach.isHidden(name)) {
    const nearest = nearestNames(name, scope.reach.steps.keys());
    scope.problems.push({ kind: "unknown name", span, name, wanted: "a step or task", nearest });
  }
  return { name, span, target: null };
}

/** A hazard of the built-in list or a declared one; the name either way, with a problem where it is neither. */
export function resolveHazard(scope: Scope, use: ast.HazardUse): { readonly name: string; readonly span: Span } {
  const span = spanOf(scope, use);
  const { name } = use;
  const node = lookUp(scope.reach, name);
  if (ast.isHazard(node)) markUsed(scope, node);
  else if (!HAZARDS.includes(name)) {
    if (node === undefined) reportUnknown(scope, span, name, "a hazard", ast.isHazard, HAZARDS);
    else reportWrongSort(scope, span, name, "a hazard", node, ["hazard"]);
  }
  return { name, span };
}

/** Past so many problems in one file nobody reads offers, and looking for them would take its time. */
const MOST_OFFERS = 200;

function nearestInReach(
  scope: Scope,
  name: string,
  isWanted: (node: AstNode) => boolean,
  others: readonly string[] = [],
): readonly string[] {
  if (scope.problems.length > MOST_OFFERS) return [];
  return nearestNames(name, [...namesInReach(scope, isWanted), ...others]);
}

/** The record of the unknown name's nearest, for going on without a train of findings. */
export function likelyMeant(scope: Scope, name: string, sorts: readonly Sort[]): Declaration | null {
  const near = nearestInReach(scope, name, (node) => sorts.some((sort) => sort === sortOf(scope, node)))[0];
  const node = near === undefined ? undefined : lookUp(scope.reach, near);
  return (node === undefined ? undefined : scope.lowering.records.get(node)) ?? null;
}

/** `a part`, `a part or a ring`. */
export function sortWords(sorts: readonly Sort[]): string {
  const words = sorts.map((sort) => SORT_WORDS[sort]);
  const last = words.pop() ?? "a name";
  return words.length === 0 ? last : `${words.join(", ")} or ${last}`;
}

/** What a record is, in the writer's words and without an article: `part`. */
export function sortNoun(sort: Sort): string {
  return SORT_WORDS[sort].replace(/^an? /, "");
}

/** Where a node's name is declared, in whichever file. */
export function declarationSpan(scope: Scope, node: AstNode): Span {
  const record = scope.lowering.records.get(node);
  if (record !== undefined) return record.span;
  return propertySpan(scope.lowering.scopes.get(node) ?? scope, node, "name");
}

export function referenceSpan(scope: Scope, reference: Reference): Span {
  const node = reference.$refNode;
  return { path: scope.parsed.path, start: node?.offset ?? 0, end: node?.end ?? 0 };
}

/**
 * The span of a property of a node, such as its `name`; the node's own where it is not written.
 * @param index of one among several values
 */
export function propertySpan(scope: Scope, node: AstNode, property: string, index = 0): Span {
  const found: CstNode[] = [];
  if (node.$cstNode !== undefined) findProperty(found, node, node.$cstNode, property, index);
  const cst = found[index] ?? found[found.length - 1];
  return cst === undefined ? spanOf(scope, node) : { path: scope.parsed.path, start: cst.offset, end: cst.end };
}

/** The places of a property, up to the one asked for. */
function findProperty(found: CstNode[], node: AstNode, within: CstNode, property: string, index: number): void {
  if (!isCompositeCstNode(within)) return;
  for (const child of within.content) {
    if (found.length > index) return;
    if (propertyOf(child.grammarSource) === property) found.push(child);
    else if (isCompositeCstNode(child) && child.astNode === node) findProperty(found, node, child, property, index);
  }
}

/** What the part of the grammar that a node was read by is kept as. */
function propertyOf(source: GrammarAST.AbstractElement | undefined): string | null {
  if (source === undefined) return null;
  const known = properties.get(source);
  if (known !== undefined) return known;
  let at: AstNode | undefined = source;
  while (at !== undefined && !GrammarAST.isAssignment(at)) at = at.$container;
  const property = at?.feature ?? null;
  properties.set(source, property);
  return property;
}

const properties = new WeakMap<GrammarAST.AbstractElement, string | null>();

/** People and equipment; the list of the language. */
export const HAZARDS: readonly string[] = [
  ...["burn", "cold", "fire", "explosion", "pressure", "electric", "lifting", "crush", "cutting", "rotating", "spring"],
  ...["fall", "dropped", "eye", "skin", "fumes", "noise"],
  ...["damage", "contamination", "overheating", "overtorque", "debris"],
];

const SORT_WORDS: Readonly<Record<Sort, string>> = {
  material: "a material",
  source: "a source",
  role: "a role",
  ring: "a ring",
  holes: "holes",
  part: "a part",
  fit: "a fit",
  tool: "a tool",
  consumable: "a consumable",
  energy: "an energy",
  hazard: "a hazard",
  option: "an option",
  fact: "a fact",
  value: "a value",
  reading: "a reading",
  threshold: "a threshold",
  arrangement: "an arrangement",
  crib: "a crib",
};

function sortOf(scope: Scope, node: AstNode): Sort | undefined {
  return scope.lowering.records.get(node)?.kind;
}

function* namesInReach(scope: Scope, isWanted: (node: AstNode) => boolean): Generator<string> {
  const seen = new Set<string>();
  for (const layer of scope.reach.layers) {
    for (const [name, node] of layer) {
      if (!seen.has(name) && isWanted(node)) yield name;
      seen.add(name);
    }
  }
}

function reportUnknown(
  scope: Scope,
  span: Span,
  name: string,
  wanted: string,
  isWanted: (node: AstNode) => boolean,
  others: readonly string[] = [],
): void {
  if (scope.reach.isHidden(name)) return;
  const nearest = nearestInReach(scope, name, isWanted, others);
  for (const near of nearest) {
    // What was probably meant is not unused.
    const node = lookUp(scope.reach, near);
    if (node !== undefined) markUsed(scope, node);
  }
  scope.problems.push({ kind: "unknown name", span, name, wanted, nearest });
}

function reportWrongSort(
  scope: Scope,
  span: Span,
  name: string,
  wanted: string,
  node: AstNode,
  sorts: readonly Sort[],
): void {
  const record = scope.lowering.records.get(node);
  const found = record === undefined ? "a procedure" : SORT_WORDS[record.kind];
  const declaredAt = declarationSpan(scope, node);
  const nearest = nearestInReach(scope, name, (candidate) => sorts.some((sort) => sort === sortOf(scope, candidate)));
  scope.problems.push({ kind: "wrong kind", span, name, wanted, found, declaredAt, nearest });
}
