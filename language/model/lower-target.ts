// Targets of actions, conditions and relations: the thing they name and its index, checked as far as that needs no pass
// of a repeat. Knows no actions.

import * as ast from "#grammar/generated/ast.ts";
import { nearestNames } from "#syntax/edit-distance.ts";
import type { Span } from "#syntax/span.ts";
import type { Declaration, Places } from "./declarations.ts";
import { hasInstance, instanceRange } from "./instances.ts";
import { type Scope, spanFrom, spanOf, wholeNumberWithin } from "./lowering.ts";
import { misplace } from "./misplaced.ts";
import { likelyMeant, meant, resolve, type Sort } from "./names.ts";
import type { IndexExpression, IndexItem, Target } from "./procedure.ts";

/** What an index may be where the target stands: an action needs one on a part of several, elsewhere none means all. */
export type IndexUse = "action" | "place" | "condition" | "relation";

/** A target with what could be made of it; `sound` is false where it has a problem or names nothing known. */
export interface LoweredTarget {
  readonly target: Target;
  readonly sound: boolean;
  /** For going on where it is not sound: what was probably meant. */
  readonly likely: readonly Declaration[];
}

/** Lowers a target that must name one of these sorts. */
export function lowerTarget(scope: Scope, node: ast.Target, sorts: readonly Sort[], use: IndexUse): LoweredTarget {
  const thing = resolve(scope, node.thing, sorts);
  const name = node.thing.$refText;
  const span = spanOf(scope, node);
  const first = node.index[0];
  const last = node.index[node.index.length - 1];
  const indexSpan = first === undefined || last === undefined ? null : spanFrom(scope, first, last);
  const index = node.indexed ? node.index.map((item) => lowerIndexItem(scope, item, thing)) : null;
  const target: Target = { thing, name, index, span, indexSpan };
  if (thing === null) {
    const likely = meant(scope, node.thing) === undefined ? likelyMeant(scope, name, sorts) : null;
    return { target, sound: false, likely: likely === null ? [] : [likely] };
  }
  const sound = isIndexSound(scope, target, thing, use);
  return { target, sound, likely: sound ? [] : [thing] };
}

/** A bound of a repeat: an index expression without names. */
export function lowerBoundExpression(scope: Scope, node: ast.IndexExpression): IndexExpression {
  return lowerIndexExpression(scope, node, "bound");
}

/** An index expression; names are loop variables, or instances of what is indexed. */
function lowerIndexExpression(scope: Scope, node: ast.IndexExpression, of: Indexed): IndexExpression {
  const sums: ast.IndexSum[] = [];
  let first: ast.IndexExpression = node;
  // Sums lean to the left and may be long.
  while (ast.isIndexSum(first)) {
    sums.push(first);
    first = first.left;
  }
  let so = lowerIndexOperand(scope, first, of);
  for (const sum of sums.reverse()) {
    const operator = sum.operator === "\u2212" ? "-" : sum.operator;
    so = { form: "sum", operator, left: so, right: lowerIndexExpression(scope, sum.right, of) };
  }
  return so;
}

/** The value of an index expression that holds no name; null for any other. */
export function constantOf(expression: IndexExpression): number | null {
  return indexValue(expression, () => null);
}

/** The value of an index expression, with names given by `numberOf`; null where one of them has none. */
export function indexValue(expression: IndexExpression, numberOf: (name: string) => number | null): number | null {
  const rights: (IndexExpression & { form: "sum" })[] = [];
  let first = expression;
  while (first.form === "sum") {
    rights.push(first);
    first = first.left;
  }
  let so = first.form === "number" ? first.value : numberOf(first.name);
  for (const sum of rights.reverse()) {
    const right = so === null ? null : indexValue(sum.right, numberOf);
    if (so === null || right === null) return null;
    so = sum.operator === "+" ? so + right : sum.operator === "-" ? so - right : so * right;
  }
  return so;
}

/** What an index is of, null where that is not known; a bound of a repeat is of nothing and knows no names. */
type Indexed = Declaration | null | "bound";

const MOST_INDEX = 1_000_000_000;

function lowerIndexOperand(
  scope: Scope,
  node: Exclude<ast.IndexExpression, ast.IndexSum>,
  of: Indexed,
): IndexExpression {
  const span = spanOf(scope, node);
  if (ast.isIndexNumber(node)) {
    return { form: "number", value: wholeNumberWithin(scope, span, node.number, 0, MOST_INDEX) ?? Number.NaN };
  }
  if (of === "bound") misplace(scope, node, node.name, "in the brackets of a part; the bounds of a repeat are numbers");
  else if (of !== null && !mayIndex(scope, node.name, of) && !scope.reach.isHidden(node.name)) {
    const instances = instanceNames(of);
    const wanted = instances.length === 0 ? "a loop variable" : `an instance of ${of.name}`;
    const nearest = nearestNames(node.name, [...scope.loops, ...instances]);
    scope.problems.push({ kind: "unknown name", span, name: node.name, wanted, nearest });
  }
  return { form: "name", name: node.name, span };
}

function isIndexName(scope: Scope, name: string, thing: Declaration | null): boolean {
  if (scope.loops.includes(name)) return true;
  return thing?.kind === "part" && thing.instances.form === "named" && thing.instances.names.includes(name);
}

/** A name on a part whose instances have names is one of them; where it is near none of them, it is no such instance. */
function mayIndex(scope: Scope, name: string, thing: Declaration): boolean {
  if (isIndexName(scope, name, thing)) return true;
  const instances = instanceNames(thing);
  return instances.length > 0 && nearestNames(name, [...scope.loops, ...instances]).length === 0;
}

function instanceNames(thing: Declaration): readonly string[] {
  return thing.kind === "part" && thing.instances.form === "named" ? thing.instances.names : [];
}

function lowerIndexItem(scope: Scope, node: ast.IndexItem, thing: Declaration | null): IndexItem {
  const span = spanOf(scope, node);
  if (ast.isAllIndex(node)) return { form: "all", span };
  if (ast.isSameIndex(node)) return { form: "same", span };
  const first = lowerIndexExpression(scope, node.first, thing);
  if (node.last === undefined) return { form: "one", value: first, span };
  return { form: "range", first, last: lowerIndexExpression(scope, node.last, thing), span };
}

/* ---- what an index may be ---- */

function isIndexSound(scope: Scope, target: Target, thing: Declaration, use: IndexUse): boolean {
  const { index, span, name } = target;
  const range = instanceRange(thing);
  if (index === null) {
    const needed = range !== null && use === "action" && !isUncounted(thing);
    if (needed) scope.problems.push({ kind: "needs instance", span, name, range, declaredAt: thing.span });
    return !needed;
  }
  if (range === null) {
    scope.problems.push({ kind: "needs instance", span, name, range, declaredAt: thing.span });
    return false;
  }
  if (thing.damaged || isUncounted(thing)) return true;
  for (const item of index) {
    if (item.form === "same" && use !== "relation") {
      const belongs = "in a part's own relations, as in `needs Washer[same]`";
      scope.problems.push({ kind: "misplaced", span: item.span, what: "`same`", belongs });
      return false;
    }
    const outside = outsideOf(scope, thing, item);
    if (outside === null) continue;
    if (outside !== "") {
      const { span: declaredAt } = thing;
      scope.problems.push({
        kind: "no such instance",
        span,
        name,
        index: outside,
        range,
        declaredAt,
        pass: null,
        more: 0,
      });
    }
    return false;
  }
  return true;
}

/** A ring whose count is not known. */
function isUncounted(thing: Declaration): boolean {
  return (thing.kind === "ring" || thing.kind === "holes") && thing.count === 0;
}

/** The index as written, where it lies outside; "" where it has a problem of its own; null where nothing is wrong. */
function outsideOf(scope: Scope, thing: Declaration, item: IndexItem): string | null {
  if (item.form === "all" || item.form === "same") return null;
  const first = item.form === "one" ? item.value : item.first;
  const last = item.form === "one" ? item.value : item.last;
  const [low, high] = [first, last].map((end) => constantIndex(scope, thing, end));
  if (low === undefined || high === undefined) return null;
  if (Number.isNaN(low) || Number.isNaN(high)) return "";
  const text = item.form === "one" ? indexText(scope, item.span) : indexText(scope, item.span).replace(/\s+/g, "");
  const inside = hasIndex(thing, low) && hasIndex(thing, high);
  const rising = typeof low !== "number" || typeof high !== "number" || low <= high;
  return inside && rising ? null : text;
}

/** A number or an instance's name; undefined where it depends on a pass, NaN where it has a problem of its own. */
function constantIndex(scope: Scope, thing: Declaration, expression: IndexExpression): number | string | undefined {
  if (expression.form !== "name") return constantOf(expression) ?? undefined;
  if (scope.loops.includes(expression.name)) return undefined;
  return mayIndex(scope, expression.name, thing) ? expression.name : Number.NaN;
}

function hasIndex(thing: Declaration, index: number | string): boolean {
  if (thing.kind === "part") return hasInstance(thing, index);
  return typeof index === "number" && index >= 1 && index <= (thing as Places).count;
}

function indexText(scope: Scope, span: Span): string {
  return scope.parsed.text.slice(span.start, span.end);
}
