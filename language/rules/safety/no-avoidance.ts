// safety.no-avoidance: a danger or warning that leaves open how not to be hurt.
import { rule } from "../rule.ts";

export const noAvoidance = rule({
  code: "safety.no-avoidance",
  severity: "warning",
  about: "no avoidance",
  page: {
    finds: "A “danger” or “warning” without “avoid”, or with one that says nothing yet, such as “…” or “TBD”.",
    why: "Knowing that it can hurt helps nobody who does not know what to do about it.",
    fails: example(""),
    mended: example(' avoid "Hook the line to the eye above."'),
    source: "What the hazard is, what it does, how to avoid it: ANSI Z535.6 (second hand).",
  },
  say: ({ signal }) => ({
    message: `This ${signal} does not say how to avoid the hazard.`,
    why: "Everybody would find out alone, at the machine.",
    remedy: "Add “avoid” with what to do or to leave.",
  }),
});

function example(avoid: string): string {
  return `part Pump "pump"

procedure LookAtPump "Look at the pump" {
  warning fall "The platform has no rail on the pump side."${avoid}

  step inspect Pump "for leaks"
}
`;
}
