// Critical steps that nobody looks at but who did them. Roles are not persons: that two people sign is for the outputs to ask.
import type { Role } from "#model/declarations.ts";
import type { Procedure, Step } from "#model/procedure.ts";
import { damagedIn, stepsOf } from "#model/written-steps.ts";
import { foundAt } from "./found-at.ts";
import type { StatementFact } from "./statement-fact.ts";

/** Each critical step with no hold by a role other than the one who signs, or does it where nobody signs. */
export function secondCheckFacts({ items, declarations }: Procedure): readonly StatementFact[] {
  const steps = [...stepsOf(items)];
  const holding = new Set(steps.map(({ hold }) => hold?.id));
  const roles = declarations.filter((one) => one.kind === "role");
  // Who looks at other steps comes first.
  const lookers = [...roles.filter(({ id }) => holding.has(id)), ...roles.filter(({ id }) => !holding.has(id))];
  return steps.flatMap((step) => factsOf(step, lookers));
}

function factsOf(step: Step, roles: readonly Role[]): readonly StatementFact[] {
  const { criticalSpan, signs, by, hold, hasUnknownRole, lines } = step;
  if (criticalSpan === null || hasUnknownRole) return [];
  const doers = signs.length > 0 ? signs : by === null ? [] : [by];
  if (hold !== null && (doers.length === 0 || doers.some(({ id }) => id !== hold.id))) return [];
  if (!damagedIn(lines).next().done) return [];
  return [
    {
      kind: "no second check",
      ...foundAt(criticalSpan),
      signs: doers.map(({ title }) => title),
      hold: hold?.title ?? null,
      others: roles.filter(({ id }) => doers.every((doer) => doer.id !== id)).map(({ name }) => name),
      stepSpan: step.span,
    },
  ];
}
