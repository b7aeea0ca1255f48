// What tasks and steps have in common: statements, jumps, `allow`, the heads of repeats and branches. Knows no
// order of items and no numbering.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Span } from "#syntax/span.ts";
import { holdsUnknown, lowerCondition } from "./lower-condition.ts";
import { constantOf, lowerBoundExpression } from "./lower-target.ts";
import { MOST_INSTANCES, type Scope, spanFrom, spanOf, wholeNumberWithin } from "./lowering.ts";
import { misplace } from "./misplaced.ts";
import { propertySpan, resolveHazard, resolveStep } from "./names.ts";
import type {
  Allow,
  Condition,
  Damaged,
  IndexItem,
  Item,
  Jump,
  Line,
  RepeatBlock,
  RepeatRange,
  Statement,
  Statement_,
  WhenBlock,
} from "./procedure.ts";
import { spokenOf } from "./spoken-of.ts";

export function lowerStatement(scope: Scope, node: ast.Statement | ast.Note): Statement_ {
  const span = spanOf(scope, node);
  if (ast.isNote(node)) return { kind: "note", note: { text: node.text, span }, span };
  const hazards = node.hazards.map((hazard) => resolveHazard(scope, hazard));
  const statement: Statement = {
    signal: node.signal,
    hazards,
    text: node.text,
    avoid: node.avoid ?? null,
    wear: node.wear,
    span,
  };
  return { kind: "statement", statement, span };
}

export function lowerAllow(scope: Scope, node: ast.Allow, over: Span): Allow {
  const codeSpan = propertySpan(scope, node, "code");
  return {
    code: node.code,
    codeSpan,
    reason: node.reason ?? "",
    by: node.by ?? null,
    span: spanOf(scope, node),
    scope: over,
    inDoubt: scope.reach.isDamaged,
  };
}

export function lowerJump(scope: Scope, node: ast.Jump): Jump {
  const span = spanOf(scope, node);
  if (ast.isStopJump(node)) return { kind: "stop", text: node.text, span };
  return { kind: ast.isReturnJump(node) ? "return" : "go", step: resolveStep(scope, node.step), span };
}

/** The bounds of a repeat; they are numbers, so that its passes are known when the text is read. */
function lowerRange(scope: Scope, node: ast.Repeat): RepeatRange {
  if (node.first !== undefined && node.last !== undefined) {
    const [first, last] = [lowerBoundExpression(scope, node.first), lowerBoundExpression(scope, node.last)];
    const stride = node.stride === undefined ? null : lowerBoundExpression(scope, node.stride);
    const by = stride === null ? null : constantOf(stride);
    if (by !== null && by < 1 && node.stride !== undefined) {
      wholeNumberWithin(scope, spanOf(scope, node.stride), String(by), 1, MOST_INSTANCES);
    }
    return { form: "from", first, last, down: node.down, stride };
  }
  const values = node.values.flatMap((item): readonly IndexItem[] => {
    const span = spanOf(scope, item);
    if (!ast.isIndexRange(item)) {
      misplace(scope, item, item.keyword, "in the brackets of a part; a repeat counts numbers");
      return [];
    }
    const first = lowerBoundExpression(scope, item.first);
    if (item.last === undefined) return [{ form: "one", value: first, span }];
    return [{ form: "range", first, last: lowerBoundExpression(scope, item.last), span }];
  });
  return { form: "in", values };
}

/** From `repeat` to the end of its bounds. */
function repeatHead(scope: Scope, node: ast.Repeat): Span {
  const bounds: readonly (AstNode | undefined)[] = [node.stride, node.last, ...node.values.slice(-1)];
  const last = bounds.find((bound) => bound !== undefined);
  return last === undefined ? spanOf(scope, node) : spanFrom(scope, node, last);
}

/** A `repeat`, with the scope that what stands in it has. */
export function lowerRepeat<T>(scope: Scope, node: ast.Repeat, inside: (scope: Scope) => readonly T[]): RepeatBlock<T> {
  const variable = node.variable.name;
  const items = inside({ ...scope, loops: [...scope.loops, variable] });
  return { kind: "repeat", variable, range: lowerRange(scope, node), items, span: repeatHead(scope, node) };
}

/**
 * A `when` with all that follows it, `otherwise when` by `otherwise when`. Where a condition cannot be read, it is not
 * known which arm was taken: what they speak of is in doubt afterwards.
 */
export function lowerWhen<T extends Item | Line>(
  scope: Scope,
  node: ast.When,
  inside: (items: readonly ast.FlowItem[] | readonly ast.StepLine[]) => readonly T[],
): readonly (WhenBlock<T> | Damaged)[] {
  const arms: { condition: Condition; items: readonly T[] }[] = [];
  let arm: ast.When | ast.Otherwise | undefined = node;
  let otherwise: readonly T[] | null = null;
  let otherwiseSpan: Span | null = null;
  let holder: ast.When = node;
  while (arm !== undefined) {
    const items = inside(arm.items as readonly ast.FlowItem[]);
    if (ast.isWhen(arm)) {
      arms.push({ condition: lowerCondition(scope, arm.condition), items });
      holder = arm;
      arm = arm.otherwise;
    } else {
      otherwise = items;
      otherwiseSpan = otherwiseWord(scope, holder, arm);
      arm = undefined;
    }
  }
  const span = spanFrom(scope, node, node.condition);
  const block: WhenBlock<T> = { kind: "when", arms, otherwise, span, otherwiseSpan };
  if (!arms.some((each) => holdsUnknown(each.condition))) return [block];
  const within = [...arms.flatMap((each) => each.items), ...(otherwise ?? [])];
  return [block, { kind: "damaged", mentions: [...spokenOf(within)], span }];
}

/** The word stands before its block; a damaged text may have lost it. */
function otherwiseWord(scope: Scope, holder: ast.When, arm: ast.Otherwise): Span {
  const block = spanOf(scope, arm);
  const start = scope.parsed.text.lastIndexOf("otherwise", block.start);
  return start < spanOf(scope, holder).start ? block : { ...block, start, end: start + "otherwise".length };
}
