// The tasks of a procedure that say what they said, while another part of it is another: their records are taken over, with their places
// moved. Knows of a task what it hangs on, and no statement.
import type { AstNode } from "langium";
import type * as ast from "#grammar/generated/ast.ts";
import { declaredNames } from "#syntax/scope.ts";
import type { Declaration } from "./declarations.ts";
import { type Scope, watched } from "./lowering.ts";
import type { Moving } from "./moving.ts";
import { type OwnWords, ownWordsIn } from "./own-words.ts";
import type { Item, Line, StepRef, Task } from "./procedure.ts";
import { insideOf } from "./written-steps.ts";

/** A task with what it was read from, and with its own words. */
export interface KeptTask {
  readonly node: ast.Task;
  readonly start: number;
  readonly end: number;
  readonly task: Task;
  readonly texts: readonly OwnWords[];
  readonly used: Scope["used"];
  readonly asksOfDamage: boolean;
  /** Whether it speaks of a step that does not stand in it, and so of a place elsewhere. */
  readonly meansOthers: boolean;
}

/** Those of a procedure that hang on nothing in it but the names of its steps. */
export interface KeptTasks {
  /** Of all that it declares, and of its steps and tasks. */
  readonly names: readonly string[];
  readonly byNode: ReadonlyMap<ast.Task, KeptTask>;
}

/** Those that may be taken over, and how their places moved. */
export interface MovedTasks {
  readonly of: (node: ast.Task) => KeptTask | undefined;
  readonly moved: Moving;
  /** What a task was that stands elsewhere now. */
  readonly before: Map<Task, Task>;
}

export interface TaskLowering {
  /** The task, lowered by `lower` unless it is taken over. */
  readonly lowered: (scope: Scope, node: ast.Task, number: string, lower: (scope: Scope) => Task) => Task;
  /** The own words of a task that was lowered. */
  readonly textsOf: (node: ast.Task) => readonly OwnWords[] | null;
  readonly kept: () => KeptTasks;
}

/** @param moved null where none can be taken over */
export function createTaskLowering(
  procedure: ast.Procedure,
  own: ReadonlySet<Declaration>,
  moved: MovedTasks | null,
): TaskLowering {
  const texts = new Map<ast.Task, readonly OwnWords[]>();
  const byNode = new Map<ast.Task, KeptTask>();
  const declaring = declaringIn(procedure);
  const takenOver = (scope: Scope, node: ast.Task, number: string): Task | null => {
    const known = moved?.of(node);
    if (moved == null || known === undefined || known.task.number !== number) return null;
    const { end = 0, offset: start = 0 } = node.$cstNode ?? {};
    const stays = start === known.start && !known.meansOthers;
    const now = stays ? known : moved.moved({ task: known.task, texts: known.texts });
    if (now === null) return null;
    if (now.task !== known.task) moved.before.set(now.task, known.task);
    for (const one of known.used) scope.used.add(one);
    texts.set(node, now.texts);
    byNode.set(node, stays ? known : { ...known, ...now, start, end });
    return now.task;
  };
  return {
    lowered: (scope, node, number, lower) => {
      const known = takenOver(scope, node, number);
      if (known !== null) return known;
      const problems = scope.problems.length;
      const { doubt, reach } = watched(scope.reach);
      const inside: Scope = { ...scope, reach, used: new Set() };
      const task = lower(inside);
      for (const one of inside.used) scope.used.add(one);
      const words = ownWordsIn(scope, [node]);
      texts.set(node, words);
      const { end = 0, offset: start = 0 } = node.$cstNode ?? {};
      const isAlone = ![...inside.used].some((one) => typeof one !== "string" && own.has(one));
      if (isAlone && scope.problems.length === problems && !declaring.has(node))
        byNode.set(node, {
          ...{ node, start, end, task, texts: words, used: inside.used },
          ...{ asksOfDamage: doubt.isAskedOf, meansOthers: meansOthers(task.items, { start, end }) },
        });
      return task;
    },
    textsOf: (node) => texts.get(node) ?? null,
    kept: () => ({ names: namesIn(procedure), byNode }),
  };
}

function meansOthers(
  content: readonly (Item | Line)[],
  within: { readonly start: number; readonly end: number },
): boolean {
  const isElsewhere = ({ target }: StepRef): boolean =>
    target !== null && (target.start < within.start || target.end > within.end);
  return content.some(
    (one) => stepsMeant(one).some(isElsewhere) || insideOf(one).some((inner) => meansOthers(inner, within)),
  );
}

function stepsMeant(one: Item | Line): readonly StepRef[] {
  if (one.kind === "step") return [...one.after, ...one.before, ...(one.within === null ? [] : [one.within.step])];
  return one.kind === "return" || one.kind === "go" ? [one.step] : [];
}

/** What stands in the procedure itself and has a reading or declaration of it inside. */
function declaringIn(procedure: ast.Procedure): ReadonlySet<AstNode> {
  const found = new Set<AstNode>();
  for (const { node } of declaredNames(procedure)) {
    let at: AstNode | undefined = node;
    while (at !== undefined && at.$container !== procedure) at = at.$container;
    if (at !== undefined) found.add(at);
  }
  return found;
}

/** With the sort of each: a name that means another thing is another. */
export function namesIn(procedure: ast.Procedure): readonly string[] {
  return [...declaredNames(procedure), ...declaredNames(procedure, "steps")].map(
    ({ name, node }) => `${node.$type} ${name}`,
  );
}
