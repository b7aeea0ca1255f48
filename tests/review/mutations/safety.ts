// Changes that make the work less safe: `safety`.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { before, behind, change, cut, inside, type Mutate, nodesIn, rangeOf, somewhere, textOf } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { has, lineInto, procedureOf, siblings, stepOf, stepsIn, taskOf } from "./place.ts";

/** What a statement or an `allow` holds for. */
const scopeOf = (node: AstNode): AstNode => stepOf(node) ?? taskOf(node) ?? procedureOf(node) ?? node;

/** Something taken out of a statement, or changed in it. */
const inStatement = (pattern: RegExp, by: string): Mutate =>
  somewhere(ast.isStatement, (node) => change(scopeOf(node), inside(node, pattern, by)));

/** A line of a step taken out. */
const lineOut = (isLine: (node: unknown) => node is AstNode): Mutate =>
  somewhere(isLine, (line, sample) => {
    const step = stepOf(line);
    return step === undefined || step.lines.length < 2 ? null : change(step, cut(line, sample));
  });

const ALLOW = 'allow wording.vague because "The manual says it so."';

/** An `allow` in one step, for it to be widened. */
const withAllow: Mutate = somewhere(ast.isStep, (step, sample) => {
  const isFit = step.block && taskOf(step) !== undefined && !has(step, ast.isCheck);
  return isFit ? change(step, lineInto(step, ALLOW, sample)) : null;
});

/** An `allow` in one task. */
const withTaskAllow: Mutate = somewhere(ast.isTask, (task, sample) => {
  const [first] = task.items;
  return first === undefined ? null : change(task, before(first, ALLOW, sample));
});

const widened = (to: (node: AstNode) => ast.Task | ast.Procedure | undefined): Mutate =>
  somewhere(ast.isAllow, (allow, sample) => {
    const wider = to(allow);
    const head = wider?.items.find((item) => ast.isTask(item) || ast.isStep(item));
    if (wider === undefined || head === undefined) return null;
    return change([scopeOf(allow), wider], before(head, ALLOW, sample), cut(allow, sample));
  });

/** It must be told to procedures that do what it is about. */
function raisedThreshold(name: string, from: string, to: string, only: RegExp): Kind {
  return {
    name: `raise the threshold ${name}`,
    group: "safety",
    // Also `values`: the threshold is a value; the contract names no group for it.
    orIn: ["values"],
    library: "shop/sources.sprag",
    mutate: somewhere(ast.isThreshold, (node) =>
      node.threshold === name ? change(node, inside(node, new RegExp(from), to)) : null,
    ),
    reaches: { name: /"shop\/sources\.sprag"/, only },
  };
}

export const safetyKinds: readonly Kind[] = [
  {
    name: "drop a safety statement",
    group: "safety",
    mutate: somewhere(ast.isStatement, (node, sample) => change(scopeOf(node), cut(node, sample))),
  },
  { name: "weaken danger to warning", group: "safety", mutate: inStatement(/^danger/, "warning") },
  { name: "weaken danger to caution", group: "safety", mutate: inStatement(/^danger/, "caution") },
  { name: "weaken warning to caution", group: "safety", mutate: inStatement(/^warning/, "caution") },
  { name: "drop avoid", group: "safety", mutate: inStatement(/\s+avoid "[^"]*"/, "") },
  { name: "drop wear", group: "safety", mutate: inStatement(/\s+wear "[^"]*"(, "[^"]*")*/, "") },
  { name: "drop one thing to wear", group: "safety", mutate: inStatement(/(wear "[^"]*"), "[^"]*"/, "$1") },
  { name: "drop one hazard of a statement", group: "safety", mutate: inStatement(/^(\w+ \w+), \w+/, "$1") },
  {
    name: "move a statement behind its step",
    group: "safety",
    mutate: somewhere(ast.isStatement, (node, sample) => {
      const steps = siblings(node).filter(ast.isStep);
      const last = steps.at(-1);
      if (last === undefined || rangeOf(last).start < rangeOf(node).start) return null;
      return change(scopeOf(node), cut(node, sample), behind(last, textOf(node), sample));
    }),
  },
  {
    name: "narrow a statement from the procedure to its first task",
    group: "safety",
    mutate: somewhere(ast.isStatement, (node, sample) => {
      const procedure = ast.isProcedure(node.$container) ? node.$container : undefined;
      const first = procedure?.items.find(ast.isTask)?.items[0];
      if (procedure === undefined || first === undefined) return null;
      return change(procedure, cut(node, sample), before(first, textOf(node), sample));
    }),
  },
  { name: "drop a hold", group: "safety", mutate: lineOut(ast.isHoldLine) },
  {
    name: "hold for another",
    group: "safety",
    mutate: somewhere(ast.isHoldLine, (line) => change(scopeOf(line), inside(line, /Inspector/, "Fitter"))),
  },
  // A signature that nobody gives any longer: no other group names one.
  { name: "drop a sign", group: "safety", mutate: lineOut(ast.isSignLine) },
  // Who must look again hangs on it, and that a second person looks.
  { name: "drop critical", group: "safety", mutate: lineOut(ast.isCriticalLine) },
  {
    name: "add an allow",
    group: "safety",
    mutate: somewhere(ast.isStep, (step, sample) =>
      step.block || has(step, ast.isCheck) ? null : change(step, lineInto(step, ALLOW, sample)),
    ),
  },
  { name: "widen an allow from step to task", group: "safety", from: withAllow, mutate: widened(taskOf) },
  { name: "widen an allow from task to procedure", group: "safety", from: withTaskAllow, mutate: widened(procedureOf) },
  raisedThreshold("burn", "55", "63", /\bheat /),
  raisedThreshold("lifting", "20", "24", /\blift /),
  raisedThreshold("preload", "85", "89", /\btighten /),
  {
    name: "drop a step with its hold",
    group: "safety",
    mutate: somewhere(ast.isStep, (step, sample) => {
      const named = step.name !== undefined && new RegExp(`(to|after|before) ${step.name}\\b`).test(sample.text);
      return named || !has(step, ast.isHoldLine) ? null : change(step, cut(step, sample));
    }),
  },
  {
    name: "drop what a step raises",
    group: "safety",
    // Also `order` or `items`: a hazard told is none of what `safety` lists.
    orIn: ["order", "items"],
    mutate: lineOut(ast.isRaisesLine),
  },
  {
    name: "drop the second of two checks",
    group: "safety",
    from: somewhere(ast.isSignLine, (line) =>
      stepsIn(scopeOf(line)).length === 1 && nodesIn(scopeOf(line), ast.isHoldLine).length === 0
        ? change(scopeOf(line), inside(line, /$/, ", Inspector"))
        : null,
    ),
    mutate: somewhere(ast.isSignLine, (line) => change(scopeOf(line), inside(line, /, Inspector/, ""))),
  },
];
