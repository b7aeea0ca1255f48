// In which order of work something shows that does not show in the order of the text. Knows turns of the flow graph only.
import type { Origin } from "./fact.ts";
import type { Run } from "./follow.ts";
import type { Turn } from "./graph.ts";
import type { Raw } from "./raw-fact.ts";

/** What comes one after the other where the fact holds; null where that is what the text says. */
export function orderOf(run: Run, { node, from }: Raw): readonly Origin[] | null {
  const here = run.graph.nodes[node ?? -1]?.turns ?? [];
  const there = run.graph.nodes[from ?? -1]?.turns ?? [];
  for (const turn of here) {
    const before = there.find(({ block }) => block === turn.block);
    const order = through(before, turn);
    if (!isAsWritten(turn, order)) return shown(turn, order);
  }
  // What is found behind the block came from one of its turns.
  for (const turn of there)
    if (!here.some(({ block }) => block === turn.block) && !isAsWritten(turn, turn.done)) return shown(turn, turn.done);
  return null;
}

/** First what had been done when the state came about, then the rest up to this turn. */
function through(before: Turn | undefined, turn: Turn): readonly number[] {
  const first = before === undefined || before === turn ? [] : before.done.filter((at) => turn.done.includes(at));
  const [last] = turn.done.slice(-1);
  const rest = turn.done.filter((at) => !first.includes(at) && at !== last);
  return [...first.filter((at) => at !== last), ...rest, ...(last === undefined ? [] : [last])];
}

function isAsWritten({ group }: Turn, order: readonly number[]): boolean {
  return order.every((child, at) => child === group[at]);
}

function shown({ children }: Turn, order: readonly number[]): readonly Origin[] {
  return order.flatMap((at) => {
    const child = children[at];
    return child === undefined ? [] : [{ step: child.number, span: child.span }];
  });
}
