// order.energised: work on a part whose energy is live.
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const energised = rule({
  code: "order.energised",
  severity: "error",
  about: "energised",
  subject: ({ energy }) => energy,
  page: {
    finds:
      "Work on a part while an energy that drives it is live. Looking at it, checking and measuring is no work. An energy is live at the start unless it is declared “off”, or “begin with” says otherwise. The checker knows what the text says and no more: the site's lockout rules and the people qualified for them come before it.",
    why: "A motor starts, or a line bursts open, while hands are in it.",
    fails: `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }

procedure TakeOut "Take the motor out" {
  begin with Motor is installed
  finish with Motor is removed, MotorSupply is isolated
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
  say: ({ part, energy, declaredAt, since: origin }) => ({
    message: `${part} is worked on while ${energy} is live.`,
    why: `${energy} drives ${part} and is live ${since(origin)}.`,
    remedy: `Isolate ${energy} and prove it dead before this. How it is done is for the site's lockout rules and qualified people to say.`,
    witness: cameFrom(origin, `${energy} is live`),
    related: [{ message: `${energy} drives ${part}, as declared here`, span: declaredAt }],
  }),
  fix: (fact) => putInBefore([`step isolate ${fact.energy}`, `step prove ${fact.energy} dead`], fact),
});
