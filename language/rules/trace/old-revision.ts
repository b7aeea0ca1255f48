// trace.old-revision: a procedure that stands on another revision than the one the shop holds as current.
import { rule } from "../rule.ts";

export const oldRevision = rule({
  code: "trace.old-revision",
  severity: "warning",
  about: "old revision",
  subject: ({ source }) => source,
  page: {
    finds: "“based on” with another revision than the declaration of the source gives as current.",
    why: "What the source changed since is not in the procedure, and nobody has looked whether it matters.",
    fails: example("8"),
    mended: example("9"),
  },
  say: ({ source, used, current, declaredAt }) => ({
    message: `Based on revision ${used} of the ${source}, and ${current} is current.`,
    why: "What changed between the two may not be in this procedure.",
    remedy: `Compare the two, change what has to change, then write revision "${current}".`,
    related: [{ message: `Revision ${current} is declared here`, span: declaredAt }],
  }),
});

function example(revision: string): string {
  return `source Manual "pump manual" revision "9"
part Bearing "drive-end bearing"

procedure LookAtBearing "Look at the bearing" {
  based on Manual revision "${revision}"

  step inspect Bearing
}
`;
}
