// names.no-such-instance: a number or name in brackets that the part or ring does not have.
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const noSuchInstance = rule({
  code: "names.no-such-instance",
  severity: "error",
  about: "no such instance",
  page: {
    finds:
      "A number or name in brackets that lies outside what is declared: screw 9 of eight, position 13 on a ring of twelve. A number counted from a loop variable goes round the ring and is not reported.",
    why: "The fitter would look for a ninth screw, or the writer counted one too few.",
    fails: `part Screw[1..8] "cover screw"

procedure FitScrews "Fit the screws" {
  step install Screw[1..8]
  step inspect Screw[9]
}
`,
    mended: `part Screw[1..8] "cover screw"

procedure FitScrews "Fit the screws" {
  step install Screw[1..8]
  step inspect Screw[8]
}
`,
  },
  say: ({ name, index, range, declaredAt }) => ({
    message: `There is no ${name}[${index}].`,
    why: wantedFound(`${name}[${range}]`, `${name}[${index}]`),
    remedy: "Write one that is declared, or declare more.",
    related: [{ message: `${name} is declared here with ${range}`, span: declaredAt }],
  }),
});
