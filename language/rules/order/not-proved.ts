// order.not-proved: work after an energy was isolated and before it was proved dead.
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom } from "../wording.ts";

export const notProved = rule({
  code: "order.not-proved",
  severity: "information",
  about: "not proved",
  gravity: ({ provesOthers }) => (provesOthers ? "warning" : "information"),
  subject: ({ energy }) => energy,
  page: {
    finds:
      "Work on a part whose energy is isolated and not proved dead. It is a warning where the procedure proves another energy dead. “Isolated” means that the text says so: how it is proved, and by whom, is for the site's lockout rules and qualified people.",
    why: "The other breaker was switched, or a second feed keeps the motor live. Only a test at the place of work shows it.",
    fails: `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }

procedure TakeOut "Take the motor out" {
  begin with Motor is installed
  finish with Motor is removed, MotorSupply is isolated
  step isolate MotorSupply
  step remove Motor
}
`,
    mended: `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }

procedure TakeOut "Take the motor out" {
  begin with Motor is installed
  finish with Motor is removed, MotorSupply is isolated
  step isolate MotorSupply
  step prove MotorSupply dead
  step remove Motor
}
`,
    source: "29 CFR 1910.147: energies are isolated and shown to be so before work (from memory: not verified).",
  },
  say: ({ part, energy, provesOthers, since: origin }) => ({
    message: `${energy} is isolated and not proved dead.`,
    why: `${part} is worked on here, and “isolated” means only that the text says so.${provesOthers ? " Another energy is proved dead in this procedure." : ""}`,
    remedy: `Put in “prove ${energy} dead” before this, at the place of work. How and by whom is for the site's lockout rules to say.`,
    witness: cameFrom(origin, `${energy} is isolated`),
  }),
  fix: (fact) => putInBefore([`step prove ${fact.energy} dead`], fact),
});
