// Changes of words alone: `words`.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { change, type Edit, inside, type Mutate, nodesIn, rangeOf, type Sample, somewhere, textOf } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { procedureOf, stepOf, stepsSaying, taskOf } from "./place.ts";

/** A text said otherwise: a word more before its end. */
const reworded = (
  isNode: (node: unknown) => node is AstNode,
  ahead: RegExp,
  place: (node: AstNode, sample: Sample) => AstNode | readonly AstNode[],
): Mutate =>
  somewhere(isNode, (node, sample) =>
    change(place(node, sample), inside(node, new RegExp(`(${ahead.source}"[^"]*[^".])(\\.?")`), "$1 now$2")),
  );

const inStep = (node: AstNode) => stepOf(node) ?? node;
const inScope = (node: AstNode) => stepOf(node) ?? taskOf(node) ?? procedureOf(node) ?? node;

export const wordKinds: readonly Kind[] = [
  {
    name: "rename the title of a task",
    group: "words",
    mutate: reworded(ast.isTask, /^task (?:\w+ )?/, (task) => task),
  },
  {
    name: "rename the title of a procedure",
    group: "words",
    mutate: reworded(ast.isProcedure, /^procedure \w+ /, (one) => one),
  },
  { name: "reword a step", group: "words", mutate: reworded(ast.isStep, /^step (?:\w+ )?/, inStep) },
  { name: "reword free words", group: "words", mutate: reworded(ast.isDo, /^do /, inStep) },
  { name: "reword a check", group: "words", mutate: reworded(ast.isCheck, /^check /, inStep) },
  { name: "reword what to look for", group: "words", mutate: reworded(ast.isInspect, /^inspect [^"]*/, inStep) },
  { name: "reword a note", group: "words", mutate: reworded(ast.isNote, /^note /, inScope) },
  { name: "reword a why", group: "words", mutate: reworded(ast.isWhyLine, /^why /, inStep) },
  {
    name: "reword a stop",
    group: "words",
    mutate: reworded(ast.isStopJump, /^stop /, (node) => stepOf(node) ?? node.$container ?? node),
  },
  { name: "reword a caption", group: "words", mutate: reworded(ast.isFigureLine, /^figure "[^"]*" /, inStep) },
  { name: "reword what is measured", group: "words", mutate: reworded(ast.isMeasure, /^measure \w+ /, inStep) },
  {
    name: "reword a safety statement",
    group: "words",
    // Whether other words are weaker is for a person to say, so it may stand among the gravest.
    orIn: ["safety"],
    mutate: reworded(ast.isStatement, /^\w+ [\w, ]+ /, inScope),
  },
  {
    name: "rename the title of a part",
    group: "words",
    // A part by another title: `items` names parts.
    orIn: ["items"],
    mutate: reworded(ast.isPart, /^(?:temporary )?part [^"{]+ /, (part, sample) =>
      ast.isPart(part) ? [part, ...stepsSaying(part.name, sample)] : part,
    ),
  },
  {
    name: "change the revision of the document",
    group: "words",
    // The head of every new revision: the contract names no group for it.
    orIn: ["items", "layout"],
    mutate: somewhere(ast.isDocumentLine, (line) =>
      change(procedureOf(line) ?? line, inside(line, /revision "\w"/, 'revision "H"')),
    ),
  },
  {
    name: "rename a step consistently",
    group: "words",
    silent: true,
    mutate: renamed("Renamed"),
  },
  {
    name: "name a step that had no name",
    group: "words",
    silent: true,
    mutate: somewhere(ast.isStep, (step) =>
      step.name === undefined && step.block ? change(step, inside(step, /^step/, "step Unnamed")) : null,
    ),
  },
];

/** A step's name changed everywhere. */
function renamed(to: string): Mutate {
  return somewhere(ast.isStep, (step, sample) => {
    const { name } = step;
    if (name === undefined) return null;
    const edits = [...sample.text.matchAll(new RegExp(`(?<=(?:step|to|after|before) )${name}\\b`, "g"))].map(
      ({ index }): Edit => ({ start: index, end: index + name.length, text: to }),
    );
    return change([step, ...jumpersTo(name, sample)], ...edits);
  });
}

const jumpersTo = (name: string, sample: Sample): readonly AstNode[] =>
  nodesIn(sample.file, ast.isStep).filter((step) => rangeOf(step).end > 0 && textOf(step).includes(name));
