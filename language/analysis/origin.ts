// Where a state came from: the step and the words that gave it.

import type { Cell } from "./cell.ts";
import type { Origin } from "./fact.ts";
import { cellOf, type State } from "./flow-state.ts";
import type { Run } from "./follow.ts";
import type { Graph } from "./graph.ts";

/** What a step, or a performed procedure, needed and did not have was only taken as so; nobody did it. */
export function isSupposed(graph: Graph, nodeId: number): boolean {
  const kind = graph.nodes[nodeId]?.operation.kind;
  return kind === "enter" || kind === "ask";
}

/** What the variable is known to be; a mistake is not found against what was only taken as so after another. */
export function knownCell(run: Run, state: State, variable: number): Cell {
  const cell = cellOf(run, state, variable);
  return cell.some(({ from }) => run.isSupposed(from)) ? cell.filter(({ from }) => !run.isSupposed(from)) : cell;
}

export function originOf(run: Run, nodeId: number): Origin {
  const node = run.graph.nodes[nodeId];
  if (node === undefined) return { step: null, span: run.expanded.procedure.span };
  const { operation } = node;
  switch (operation.kind) {
    case "ask":
    case "act":
      return { step: node.number, span: operation.line.action.place };
    case "enter":
    case "leave":
      return { step: node.number, span: operation.step.step.headSpan };
    case "begin":
      return { step: null, span: operation.condition.span };
    case "damaged":
      return { step: node.number, span: operation.damaged.span };
    default:
      return { step: node.number, span: run.expanded.procedure.span };
  }
}
