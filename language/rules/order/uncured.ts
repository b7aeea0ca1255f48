// order.uncured: a part loaded, closed over or its system restored before what was applied to it has cured.
import { base } from "#analysis/raw-fact.ts";
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom, since, timeText } from "../wording.ts";

export const uncured = rule({
  code: "order.uncured",
  severity: "error",
  about: "uncured",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A part that is filled, pressed, closed over, or whose energy is restored, before what was applied to it has cured. A joint is closed wet, so lifting the part and tightening what secures it count only where the step that applies it says “cure” itself. Of times only waits and declared ones count, with their lower ends.",
    why: "A sealant that is loaded too early tears inside and leaks later, when nobody looks for it any more.",
    fails: `consumable Sealant "joint sealant" { cure 4 h }
consumable Oil "gear oil"
part Sump "oil sump"

procedure CloseSump "Close and fill the sump" {
  step apply Sealant to Sump
  step install Sump
  step fill Sump with Oil
}
`,
    mended: `consumable Sealant "joint sealant" { cure 4 h }
consumable Oil "gear oil"
part Sump "oil sump"

procedure CloseSump "Close and fill the sump" {
  step apply Sealant to Sump
  step install Sump
  step wait 4 h
  step fill Sump with Oil
}
`,
  },
  say: ({ part, consumable, how, by, left, since: origin }) => ({
    message: {
      loaded:
        by === part || by.startsWith("the ")
          ? `${part} is loaded before ${consumable} on it has cured.`
          : `${by} loads ${part} before ${consumable} on it has cured.`,
      "closed over": `${by} closes over ${part} before ${consumable} has cured.`,
      restored: `${by} is restored before ${consumable} on ${part} has cured.`,
    }[how],
    why: `${consumable} is on ${part} ${since(origin)} and needs ${timeText(left)} more.`,
    remedy: `Wait ${timeText(left)} before this, or do other work first that says how long it takes.`,
    witness: cameFrom(origin, `${consumable} is applied to ${part}`),
  }),
  fix: (fact) => putInBefore([`step wait ${timeText(fact.left)}`], fact),
});
