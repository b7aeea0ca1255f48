// names.needs-instance: work on one of several without saying which, or an index where there is only one.
import { rule } from "../rule.ts";

export const needsInstance = rule({
  code: "names.needs-instance",
  severity: "error",
  about: "needs instance",
  page: {
    finds:
      "An action on a part of which there are several, without saying which; or brackets behind a part of which there is one.",
    why: "“Inspect the screw” leaves open which of the eight. “Screw[all]” says every one, and the checklist writes them out.",
    fails: `part Screw[1..8] "cover screw"

procedure FitScrews "Fit the screws" {
  step install Screw[all]
  step inspect Screw
}
`,
    mended: `part Screw[1..8] "cover screw"

procedure FitScrews "Fit the screws" {
  step install Screw[all]
  step inspect Screw[all]
}
`,
  },
  say: ({ name, range, declaredAt }) =>
    range === null
      ? {
          message: `There is only one ${name}, so it takes no brackets.`,
          remedy: `Write ${name}, or declare several, as in ${name}[1..4].`,
          related: [{ message: `${name} is declared here as one part`, span: declaredAt }],
        }
      : {
          message: `Which ${name}? There are several.`,
          why: `${name} is declared with ${range}.`,
          remedy: `Say which in brackets, or write ${name}[all].`,
          related: [{ message: `${name} is declared here with ${range}`, span: declaredAt }],
        },
});
