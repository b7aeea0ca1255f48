// safety.too-late: a statement that is read after what it warns of has been done.
import { fromSource, raisedWords } from "../hazard-wording.ts";
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const tooLate = rule({
  code: "safety.too-late",
  severity: "warning",
  about: "statement too late",
  subject: ({ raised }) => raised.hazards.join(" "),
  page: {
    finds:
      "A safety statement that stands after the line that raises its hazard: further down in the same step, task or procedure, with none before that line.",
    why: "A checklist is read line by line, with hands already on the part.",
    fails: `part Segment "tooth segment" { sharp }

procedure FitSegment "Fit the segment" {
  step {
    install Segment
    warning cutting "The edges are sharp." avoid "Hold it by its back." wear "cut-resistant gloves"
  }
}
`,
    mended: `part Segment "tooth segment" { sharp }

procedure FitSegment "Fit the segment" {
  step {
    warning cutting "The edges are sharp." avoid "Hold it by its back." wear "cut-resistant gloves"
    install Segment
  }
}
`,
    source: "Warnings and cautions precede the step: MIL-STD-2106A, appendix B (read).",
  },
  say: ({ raised, raisedAt }) => ({
    message: `This stands after what raises ${listed(raised.hazards, "and")}${fromSource(raised)}.`,
    why: raisedWords(raised),
    remedy: "Put it before that line, at the head of its step or task.",
    related: [{ message: "It is raised here", span: raisedAt }],
  }),
});
