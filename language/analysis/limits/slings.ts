// What hangs on each leg of a sling, beside what a leg may lift. Knows no hoist and no attachment.
import type { Computed, Explanation } from "#engineering/explanation.ts";
import { slingLegLoad } from "#engineering/lifting.ts";
import type { SlingLegs, ToolUse } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import { shownTo } from "../hazards/thresholds.ts";
import { type At, isAbove, limitBase, topOf } from "./at-node.ts";
import type { LegsFound } from "./limit-fact.ts";

/** The load on one leg; null where nothing is said of legs, or not in a form that can be read. */
export function legLoad(legs: SlingLegs | null, load: Quantity): Computed | null {
  if (legs === null || legs.count === null || legs.angle === null) return null;
  const one = slingLegLoad({ value: load }, legs.count, { value: legs.angle.quantity });
  return one.ok ? { ...one, value: shownTo("up", one.value), explanation: asShown(one.explanation) } : one;
}

/** How a load came about, with the load never shown as less than it is. */
export function asShown(explanation: Explanation): Explanation {
  const { result } = explanation;
  return { ...explanation, result: { ...result, value: shownTo("up", result.value) } };
}

/** A load that its legs do not carry. `sling` null: no leg may hang at that angle. */
export interface LegTrouble {
  readonly sling: ToolUse | null;
  readonly limit: Quantity;
  readonly legs: LegsFound;
}

/** A lift by tools. */
interface Hung {
  readonly tools: readonly ToolUse[];
  readonly legs: SlingLegs | null;
  readonly place: Span;
}

/** What is wrong with a load on legs; what cannot be worked out is left out aloud. */
export function legTroubles(at: At, { tools, legs, place }: Hung, of: string, load: Quantity): readonly LegTrouble[] {
  const slings = tools.filter(({ tool }) => tool.capability.legLifts !== null && !tool.damaged);
  const leaveOut = (lacks: string, holder: string): void =>
    at.leaveOut({ matter: "load", of, lacks, when: null, in: holder, span: place });
  if (legs === null) for (const { tool } of slings) leaveOut("sling legs", tool.name);
  const one = legLoad(legs, load);
  if (legs?.count == null || legs.angle === null || one === null) return [];
  const found = { count: legs.count, angle: legs.angle.quantity };
  if (!one.ok) {
    const { refusal } = one;
    if (refusal.why === "outside") return [{ sling: null, limit: refusal.limits, legs: { ...found, load: null } }];
    leaveOut(refusal.input, of);
    return [];
  }
  at.explain?.({ of, span: place, explanation: one.explanation });
  return slings.flatMap((sling): readonly LegTrouble[] => {
    const limit = sling.tool.capability.legLifts?.quantity;
    if (limit === undefined || !isAbove(topOf(one.value), limitBase(limit))) return [];
    return [{ sling, limit, legs: { ...found, load: one.value } }];
  });
}
