// safety.signal-word: a signal word that says the other thing of who is hurt.
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const signalWord = rule({
  code: "safety.signal-word",
  severity: "warning",
  about: "signal word",
  page: {
    finds:
      "A hazard to people that only a “caution” speaks of, and a “danger” or “warning” of hazards to equipment alone. Hazards that the shop declared itself may be to anybody, and are left aside.",
    why: "People stop at a warning and read past a caution. A warning about scratches makes them read past warnings too.",
    fails: example("caution"),
    mended: example("warning"),
    source:
      "Warning for death or injury, caution for equipment: MIL-STD-38784 (second hand). ANSI Z535.6 and ISO 3864-2 use all three words for people and “notice” for property, so every output prints the key to its signal words.",
  },
  say: ({ harms, signal, hazards }) =>
    harms === "people"
      ? {
          message: `“${signal}” is for equipment, and ${listed(hazards, "and")} can hurt people.`,
          why: "Somebody who looks for what can hurt passes over a caution.",
          remedy: "Write “warning”, or “danger” where somebody would surely be hurt.",
        }
      : {
          message: `“${signal}” is for people, and ${listed(hazards, "and")} can harm only equipment.`,
          why: "Where warnings speak of equipment, they are no longer stopped at.",
          remedy: "Write “caution”.",
        },
  fix: ({ harms, wordSpan }) => {
    const word = harms === "people" ? "warning" : "caution";
    return [{ title: `Write “${word}”`, edits: [{ span: wordSpan, newText: word }] }];
  },
});

function example(signal: string): string {
  return `part Pump "pump"

procedure LookAtPump "Look at the pump" {
  ${signal} fall "The platform has no rail on the pump side." avoid "Hook the line to the eye above."

  step inspect Pump "for leaks"
}
`;
}
