// order.already-installed: installing what is installed.
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const alreadyInstalled = rule({
  code: "order.already-installed",
  severity: "error",
  about: "already installed",
  page: {
    finds: "A part that is installed where it is installed already.",
    why: "Either one of the two lines is left over, or a removal between them was forgotten. Then a worn part stays in.",
    fails: `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
  step inspect Seal
  step install Seal
}
`,
    mended: `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
  step inspect Seal
}
`,
  },
  say: ({ part, since: origin }) => ({
    message: `${part} is installed already.`,
    why: `${part} is in place ${since(origin)}.`,
    remedy: `Take this line out, or remove ${part} first.`,
    witness: cameFrom(origin, `${part} is installed`),
  }),
  fix: ({ spare, pass, options }) =>
    spare === null || pass.length > 0 || options !== undefined
      ? []
      : [{ title: "Take this line out", edits: [{ takeOut: spare }] }],
});
