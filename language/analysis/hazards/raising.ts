// Which facts are looked at, at which node: the one list of what raises hazards. Knows no statement.
import { consumableHazards } from "./consumables.ts";
import { switchingHazards, workHazards } from "./energies.ts";
import { handlingHazards } from "./handling.ts";
import { liftingHazards } from "./lifting.ts";
import { type At, raiseFrom } from "./raise.ts";
import { toolHazards } from "./tools.ts";

/** All that the node raises, with the state before it. */
export function raisedAt(at: At): void {
  const { operation } = at.node;
  if (operation.kind === "look") {
    const { check, pass } = operation;
    toolHazards(at, { site: check, span: check.place, pass, tools: check.tools, expect: check.expect });
  }
  if (operation.kind === "enter") {
    const { step, pass } = operation.step;
    for (const { name, span } of step.raises) {
      const of = { name, title: name };
      raiseFrom(
        at,
        { site: step, span, pass },
        { cause: "said to be raised", of, hazards: [name], where: at.state.reach },
      );
    }
  }
  if (operation.kind !== "act") return;
  const { line } = operation;
  const { action } = line;
  if (action.verb === "isolate" || action.verb === "release" || action.verb === "prove" || action.verb === "restore")
    switchingHazards(at, line);
  if (action.verb === "turn") at.admit(action, ["rotating", "crush"]);
  handlingHazards(at, line);
  liftingHazards(at, line);
  consumableHazards(at, line);
  workHazards(at, line);
  const tools = "tools" in action ? action.tools : [];
  const expect = action.verb === "measure" ? action.expect : null;
  toolHazards(at, { site: action, span: action.place, pass: line.pass, tools, expect });
}
