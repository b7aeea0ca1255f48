// Tasks of which there was nothing to tell: while a writer types, all but one of a procedure still say what they said, wherever they have
// moved. Knows no fact.
import type { Task } from "#model/procedure.ts";

/** @param asked what was looked for, with all that the answer hangs on beside the task's own record */
export function wasSilent(task: Task, asked: string): boolean {
  return silent.get(task)?.has(asked) === true;
}

export function keepSilent(task: Task, asked: string): void {
  const known = silent.get(task) ?? new Set<string>();
  silent.set(task, known.add(asked));
}

/** What held of a task before it moved holds of it where it stands now. */
export function carrySilence(before: Task, now: Task): void {
  const known = silent.get(before);
  if (known !== undefined) silent.set(now, known);
}

const silent = new WeakMap<Task, Set<string>>();
