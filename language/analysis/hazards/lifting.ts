// Heavy parts: carried by hand, hung on a tool, or held by nothing. Knows no limit of a tool (limits/lifts.ts).

import type { Part } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { ToolUse } from "#model/procedure.ts";
import { cmp, mul, rational } from "#quantity/rational.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import type { Run } from "../follow.ts";
import { type Instance, limitBase, partsOf } from "../limits/at-node.ts";
import { onePersonLimit } from "../limits/hands.ts";
import { loadShown, loadsOf } from "../limits/lifts.ts";
import { instanceKey } from "../world.ts";
import { type At, raiseAt } from "./raise.ts";
import { hazardThreshold, reaches } from "./thresholds.ts";

/** What a load may do to people, on a hoist or in hands. */
const OF_LOADS = ["lifting", "crush", "dropped"] as const;
/** What may hit somebody when nothing holds a heavy part any more. */
const OF_FALLING = ["dropped", "crush"] as const;

export function liftingHazards(at: At, line: ExpandedAction): void {
  const { action } = line;
  switch (action.verb) {
    case "lift":
    case "support":
      for (const one of partsOf(line)) {
        if (action.byHand) byHand(at, line, one, at.state.reach);
        else if (action.verb === "lift" && action.tools.length > 0)
          raiseAt(at, line, {
            cause: "overhead lift",
            of: one.part,
            hazards: OF_LOADS,
            anyOf: true,
            where: at.state.reach,
          });
      }
      at.admit(action, OF_LOADS);
      return;
    case "install":
    case "press":
    case "remove":
    case "discard":
      for (const one of partsOf(line)) moved(at, line, one, action.tools);
      return;
    case "set down":
      at.admit(action, OF_LOADS);
      return;
    default:
  }
}

/** The last fastener that held a heavy part goes. */
export function falls(at: At, line: ExpandedAction, part: Part, where: Decision): void {
  raiseAt(at, line, { cause: "part held by nothing", of: part, hazards: OF_FALLING, anyOf: true, where });
}

/** Put in or taken out: somebody carries it, unless something lifts it. */
function moved(at: At, line: ExpandedAction, one: Instance, tools: readonly ToolUse[]): void {
  const { part } = one;
  if (part.damaged || part.mass === null) {
    if (!part.fastener) at.admit(line.action, OF_LOADS);
    return;
  }
  const heavy = isHeavy(at.run, part);
  if (heavy) at.admit(line.action, OF_LOADS);
  // Light, and nothing can be on it.
  if (!heavy && at.run.world.riders(part, one.index).length === 0) return;
  const byTool = tools.some(({ tool }) => tool.capability.lifts !== null);
  const where = byTool ? NEVER : unheld(at, one);
  if (where !== NEVER) byHand(at, line, one, where);
}

/** Where nothing that the procedure speaks of holds it. */
function unheld({ run, state }: At, { part, index }: Instance): Decision {
  // Only of a heavy part with fasteners the follower keeps whether it hangs.
  if (!isHeavy(run, part) || run.world.related("secures", part, index).length === 0)
    return isLifted(run, part, index) ? NEVER : state.reach;
  const hung = cellOf(run, state, run.world.part(part, index, "hung"));
  return run.decisions.and(
    state.reach,
    run.cells.where(hung, (value) => value === "no"),
  );
}

/** Above what one person may lift; past what the whole crew may, for certain too heavy. */
function byHand(at: At, line: ExpandedAction, one: Instance, where: Decision): void {
  const { run } = at;
  const { action } = line;
  const most = onePersonLimit(run, "hands" in action ? action.hands : null);
  const limit = most === null ? null : limitBase(most.threshold.value);
  if (most === null || limit === null || one.part.damaged) return;
  const { threshold, factors } = most;
  if (one.part.mass === null) {
    at.admit(line.action, OF_LOADS);
    return;
  }
  const crew = mul(limit, rational(run.expanded.procedure.crew ?? 1));
  for (const load of loadsOf({ ...at, collect: () => {}, leaveOut: () => {} }, line.action, one)) {
    const both = run.decisions.and(load.where, where);
    if (both === NEVER || !reaches(load.mass, threshold, "above")) continue;
    const passed = { value: loadShown(one.part, load.mass), threshold, lowered: factors };
    const grave = cmp(load.mass, crew) > 0;
    raiseAt(at, line, { cause: "hand lift", of: one.part, hazards: ["lifting"], passed, grave, where: both });
  }
}

/** Whether the part by itself is above what one person may lift. */
export function isHeavy(run: Run, { mass }: Part): boolean {
  if (mass === null) return false;
  const threshold = hazardThreshold(run, "lifting");
  const end = mass.quantity.high ?? mass.quantity.nominal ?? mass.quantity.low;
  return threshold !== null && end !== null && reaches(end.base, threshold, "above");
}

/** Whether the part is lifted or supported otherwise than by hand somewhere in the procedure. */
function isLifted(run: Run, part: Part, index: Instance["index"]): boolean {
  const known = lifted.get(run) ?? liftedIn(run);
  lifted.set(run, known);
  return known.has(instanceKey(part, index));
}

const lifted = new WeakMap<Run, ReadonlySet<string>>();

function liftedIn({ graph }: Run): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const { operation } of graph.nodes) {
    if (operation.kind !== "act") continue;
    const { action } = operation.line;
    if ((action.verb !== "lift" && action.verb !== "support") || action.byHand) continue;
    for (const { part, index } of partsOf(operation.line)) keys.add(instanceKey(part, index));
  }
  return keys;
}
