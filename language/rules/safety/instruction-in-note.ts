// safety.instruction-in-note: something to be done, said where nobody looks for work.
import { rule } from "../rule.ts";

export const instructionInNote = rule({
  code: "safety.instruction-in-note",
  severity: "warning",
  about: "instruction in note",
  page: {
    finds:
      "A note that asks for something to be done, and a safety statement whose first text does: that says what the hazard is and what it does, “avoid” and “wear” say what to do. Pointing at a text, as in “See 6.4”, is no such order.",
    why: "A note is not ticked off and a checklist does not ask for it. Who works from step to step misses what stands there.",
    fails: example('note "Remove the tape from the cover first."'),
    mended: example('step "Remove the tape from the cover."'),
    source: "Notes carry no instruction: ASD-STE100 (second hand).",
  },
  say: ({ signal, sentence }) =>
    signal === "note"
      ? {
          message: "This note asks for something to be done.",
          why: `“${sentence}” is an action, and a note has no box to tick.`,
          remedy: "Make it a step, or a line of its step.",
        }
      : {
          message: `The first text of this ${signal} asks for something to be done.`,
          why: `“${sentence}” is an action. The first text says what the hazard is and what it does.`,
          remedy: "Put it behind “avoid”, or behind “wear” if it is something to wear.",
        },
});

function example(line: string): string {
  return `part Cover "cover"

procedure CloseUp "Close up" {
  ${line}
  step install Cover
}
`;
}
