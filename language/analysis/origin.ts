// Where a state came from: the step and the words that gave it.
import type { Origin } from "./fact.ts";
import type { Run } from "./follow.ts";

/** What a step needed and did not have was only taken as so; nobody did it. */
export function isSupposed(run: Run, nodeId: number): boolean {
  return run.graph.nodes[nodeId]?.operation.kind === "enter";
}

export function originOf(run: Run, nodeId: number): Origin {
  const node = run.graph.nodes[nodeId];
  if (node === undefined) return { step: null, span: run.expanded.procedure.span };
  const { operation } = node;
  switch (operation.kind) {
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
