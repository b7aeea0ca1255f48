// Steps and what stands in them, as the kinds of change ask for them. Knows the grammar and nothing of the review.
import { type AstNode, AstUtils } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { behind, type Edit, nodesIn, rangeOf, type Sample, textOf } from "./edit.ts";

export const stepOf = (node: AstNode): ast.Step | undefined => AstUtils.getContainerOfType(node, ast.isStep);
export const taskOf = (node: AstNode): ast.Task | undefined => AstUtils.getContainerOfType(node, ast.isTask);
export const procedureOf = (node: AstNode): ast.Procedure | undefined =>
  AstUtils.getContainerOfType(node, ast.isProcedure);

export const stepsIn = (node: AstNode): readonly ast.Step[] => nodesIn(node, ast.isStep);

export const has = (node: AstNode, guard: (inner: unknown) => boolean): boolean => AstUtils.streamAst(node).some(guard);

/** True where another place of the file names the step or task, so that it cannot go or change its place alone. */
export const isNamed = ({ name }: ast.Step | ast.Task, { file }: Sample): boolean =>
  name !== undefined &&
  AstUtils.streamAst(file).some(
    (node) =>
      ((ast.isWithinLine(node) || ast.isReturnJump(node) || ast.isGoJump(node)) && node.step.$refText === name) ||
      (ast.isOrderLine(node) && node.steps.some(({ $refText }) => $refText === name)),
  );

/** Nothing in it but actions, words and times: nobody signs, nothing warns, nothing jumps. */
export const isPlain = (step: ast.Step): boolean =>
  !has(
    step,
    (node) =>
      ast.isSignLine(node) ||
      ast.isHoldLine(node) ||
      ast.isCriticalLine(node) ||
      ast.isStatement(node) ||
      ast.isReturnJump(node) ||
      ast.isGoJump(node) ||
      ast.isStopJump(node) ||
      ast.isMeasure(node),
  );

/** Puts a line into a step, as its last. */
export function lineInto(step: ast.Step, line: string, sample: Sample): Edit {
  const last = step.lines.at(-1);
  if (step.block && last !== undefined) return behind(last, line, sample);
  const { end } = rangeOf(step);
  return { start: end, end, text: ` ${line}` };
}

/** The step that stands right behind in the same block. */
export function nextStep(step: ast.Step): ast.Step | undefined {
  const inside = siblings(step);
  const next = inside[inside.indexOf(step) + 1];
  return ast.isStep(next) ? next : undefined;
}

export function siblings(node: AstNode): readonly AstNode[] {
  const { $container } = node;
  return $container !== undefined && "items" in $container ? ($container.items as readonly AstNode[]) : [];
}

/** All steps that say the name. */
export const stepsSaying = (name: string, { file }: Sample): readonly ast.Step[] =>
  stepsIn(file).filter((step) => new RegExp(`\\b${name}\\b`).test(textOf(step)));
