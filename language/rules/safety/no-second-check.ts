// safety.no-second-check: a critical step that only the one who did it looks at.
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const noSecondCheck = rule({
  code: "safety.no-second-check",
  severity: "warning",
  about: "no second check",
  page: {
    finds:
      "A critical step without a hold for a role other than the one who signs it, or who does it where nobody signs. Roles are not persons: that two people sign is asked for on the checklist.",
    why: "What somebody has overlooked, the same person mostly overlooks again.",
    fails: example(""),
    mended: example("\n    hold for Inspector"),
    source: "Nobody inspects work that they did themselves: 14 CFR 121.371(c) (read).",
  },
  say: ({ signs, hold, others }) => ({
    message: message(signs, hold),
    why: "A mistake here has grave results, and its maker is the last to see it.",
    remedy:
      others.length === 0
        ? "Declare a role that looks at it, and add “hold for” with it."
        : `Add “hold for” with a role that does not sign, such as ${others[0]}.`,
  }),
  fix: ({ hold, others, stepSpan }) =>
    hold !== null
      ? []
      : others.map((role) => ({
          title: `Hold for ${role}`,
          edits: [{ lastIn: stepSpan, newText: `hold for ${role}` }],
        })),
});

function message(signs: readonly string[], hold: string | null): string {
  if (hold !== null) return `The hold of this critical step is for the ${hold} again.`;
  if (signs.length === 0) return "Nobody has to look at this critical step.";
  return `Nobody but ${listed(
    signs.map((sign) => `the ${sign}`),
    "and",
  )} looks at this critical step.`;
}

function example(hold: string): string {
  return `role Fitter "fitter"
role Inspector "inspector"
part Seal "seal"

procedure SealUp "Seal up" {
  begin with Seal is removed

  step {
    install Seal
    critical
    sign Fitter${hold}
  }
  step inspect Seal by Inspector
}
`;
}
