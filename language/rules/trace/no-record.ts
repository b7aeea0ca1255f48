// trace.no-record: a reading that a critical step is judged by, and nobody writes down.
import { rule } from "../rule.ts";

export const noRecord = rule({
  code: "trace.no-record",
  severity: "information",
  about: "no record",
  page: {
    finds:
      "A check or a measurement with limits in a critical step, without “record”, and no line of the step that records a value of its kind.",
    why: "A tick says that somebody was content. The reading says how near to its limit it was, also years later.",
    fails: example(""),
    mended: example(" record"),
  },
  say: () => ({
    message: "The reading is not recorded, and the step is critical.",
    why: "Later nobody can tell how near to its limit it was.",
    remedy: "Add “record” behind the limits.",
  }),
  fix: ({ limits }) => [
    { title: "Record the reading", edits: [{ span: { ...limits, start: limits.end }, newText: " record" }] },
  ],
});

function example(record: string): string {
  return `role Fitter "fitter"
role Inspector "inspector"
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm }

procedure LookAtGap "Look at the gap" {
  step {
    check "Gap at the shoulder" with Feeler expect at most 0.05 mm${record}
    critical
    sign Fitter
    hold for Inspector
  }
}
`;
}
