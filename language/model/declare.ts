// Makes a record for every declaring node, with what others may ask of it before it is filled in: its name, its instances,
// its count, its choices and states. Knows no references.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { declaredNames } from "#syntax/scope.ts";
import type { Span } from "#syntax/span.ts";
import type { Declaration, Instances } from "./declarations.ts";
import { MOST_INSTANCES, type Scope, spanFrom, spanOf, wholeNumberWithin } from "./lowering.ts";
import { propertySpan } from "./names.ts";

/** Every declaring node of a container with a record to be: its declarations, and readings that have a name. */
export function declaringNodes(container: ast.File | ast.Procedure | ast.Damaged): readonly AstNode[] {
  const items: readonly AstNode[] = container.items;
  const readings = ast.isFile(container) ? [] : declaredNames(container).map(({ node }) => node);
  return [
    ...items.filter((item) => ast.isDeclaration(item) && !ast.isTerm(item) && !ast.isVerb(item)),
    ...readings.filter(ast.isMeasure),
  ];
}

/** Makes the records of these nodes, to be filled in by `fillDeclaration`. */
export function declareAll(scope: Scope, nodes: readonly AstNode[]): void {
  const known = new Map<string, number>();
  for (const node of nodes) {
    const record = shellOf(scope, node, known);
    scope.lowering.records.set(node, record);
    scope.lowering.scopes.set(node, scope);
  }
}

/** @param known how often a name was declared in the container so far */
function shellOf(scope: Scope, node: AstNode, known: Map<string, number>): Declaration {
  const name = nameOf(node);
  const extent = spanOf(scope, node);
  const span = nameSpan(scope, node);
  const title = (node as { title?: string }).title ?? (ast.isMeasure(node) ? node.words : name);
  const path = `${scope.parsed.path}#${scope.procedure === null ? "" : `${scope.procedure}.`}`;
  // No offset: a declaration is the same one wherever a line in front of it moves it.
  const before = known.get(name) ?? 0;
  const id = before === 0 ? `${path}${name}` : `${path}${name}@${before}`;
  known.set(name, before + 1);
  const base = { id, name, title, span, extent, per: null, damaged: hasDamage(node) || isMended(scope, extent) };
  return { ...base, ...ownFields(scope, node) } as Declaration;
}

/** What a text calls the node. */
function nameOf(node: AstNode): string {
  if (ast.isFit(node)) return `${node.outer.thing.$refText} over ${node.inner.thing.$refText}`;
  if (ast.isThreshold(node)) return node.threshold;
  return (node as { name?: string }).name ?? "";
}

function nameSpan(scope: Scope, node: AstNode) {
  if (ast.isFit(node)) return spanFrom(scope, node.outer, node.inner);
  return propertySpan(scope, node, ast.isThreshold(node) ? "threshold" : "name");
}

function hasDamage(node: AstNode): boolean {
  const lines = (node as { properties?: readonly AstNode[]; items?: readonly AstNode[] }).properties ?? [];
  return lines.some(ast.isDamaged) || (ast.isCrib(node) && node.items.some(ast.isDamaged));
}

/** Whether something in it was read in a way the writer may not have meant. */
function isMended(scope: Scope, { end, start }: Span): boolean {
  return scope.parsed.problems.some(
    ({ kind, span }) => (kind === "unexpected" || kind === "character") && span.start >= start && span.start < end,
  );
}

function ownFields(scope: Scope, node: AstNode): object {
  if (ast.isPart(node)) return { kind: "part", instances: instancesOf(scope, node), states: statesOf(node) };
  if (ast.isRing(node)) return { kind: "ring", count: countOf(scope, node) };
  if (ast.isHoles(node)) return { kind: "holes", count: countOf(scope, node) };
  if (ast.isOption(node)) return { kind: "option", choices: choicesOf(scope, node) };
  if (ast.isMeasure(node)) return { kind: "reading", expect: null };
  if (ast.isValueDeclaration(node)) return { kind: "value", value: null };
  if (ast.isFactDeclaration(node)) return { kind: "fact" };
  return { kind: node.$type.toLowerCase() };
}

function instancesOf(scope: Scope, node: ast.Part): Instances {
  const { instances } = node;
  if (instances === undefined) return { form: "single" };
  if (instances.names.length > 0)
    return { form: "named", names: [...new Set(instances.names.map(({ name }) => name))] };
  const first = wholeNumberWithin(
    scope,
    propertySpan(scope, instances, "first"),
    instances.first ?? "",
    0,
    MOST_INSTANCES,
  );
  const lastSpan = propertySpan(scope, instances, "last");
  // A wrong end is told once; the part is taken to have one instance then.
  const last = first === null ? null : wholeNumberWithin(scope, lastSpan, instances.last ?? "", first, MOST_INSTANCES);
  return { form: "numbered", first: first ?? 1, last: last ?? first ?? 1 };
}

function statesOf(node: ast.Part): readonly string[] {
  return node.properties.filter(ast.isStatesProperty).flatMap((property) => property.states.map(({ name }) => name));
}

function countOf(scope: Scope, node: ast.Ring | ast.Holes): number {
  const property = node.properties.find(ast.isCountProperty);
  if (property === undefined) {
    // A line that could not be read may have given it.
    if (!hasDamage(node)) wholeNumberWithin(scope, propertySpan(scope, node, "name"), "", 1, MOST_INSTANCES);
    return 0;
  }
  return wholeNumberWithin(scope, propertySpan(scope, property, "count"), property.count, 1, MOST_INSTANCES) ?? 0;
}

function choicesOf(scope: Scope, node: ast.Option) {
  return node.choices.map((choice) => ({
    name: choice.name,
    title: choice.title ?? choice.name,
    span: propertySpan(scope, choice, "name"),
  }));
}
