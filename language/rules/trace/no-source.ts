// trace.no-source: a value that has to come from somewhere, and does not say from where.
import { rule } from "../rule.ts";

export const noSource = rule({
  code: "trace.no-source",
  severity: "information",
  about: "no source",
  subject: ({ what, of }) => `${what} ${of}`,
  page: {
    finds:
      "A torque, a heat limit, a fit or a time limit with no “per” behind it, in its step, its task, its procedure or its declaration. A named value brings the source of its declaration along, and a torque that a step says again that of its fastener.",
    why: "When it is doubted, nobody can look it up; when the manual changes, nobody finds it.",
    fails: example(""),
    mended: example(' per Manual "6.4.2"'),
  },
  say: ({ what, of, named }) => ({
    message: `No source is given for ${called(what, of)}.`,
    why: "Nobody can look it up, or find it when the source changes.",
    remedy: 'Add per with a source and its section behind it, such as per Manual "6.4.2".',
    related: named === null ? [] : [{ message: `${named.name} is declared here, without one`, span: named.span }],
  }),
});

function called(what: string, of: string): string {
  switch (what) {
    case "torque":
    case "heat limit":
      return `the ${what} of ${of}`;
    case "within":
      return `the time limit after ${of}`;
    default:
      return `the fit ${of}`;
  }
}

function example(per: string): string {
  return `source Manual "pump manual" revision "9"
part Bearing "drive-end bearing" { heat limit 120 °C${per} }

procedure LookAtBearing "Look at the bearing" {
  based on Manual revision "9"

  step inspect Bearing
}
`;
}
