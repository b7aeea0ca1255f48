// flow.endless: a rework loop with no way out.
import { rule } from "../rule.ts";

export const endless = rule({
  code: "flow.endless",
  severity: "error",
  about: "endless",
  page: {
    finds:
      "A way back from which neither the end nor a stop can be reached again, whatever checks and readings say. It is told at the last jump that closes the loop.",
    why: "On paper the work never ends. In the shop somebody decides without the procedure when it is enough.",
    fails: `part Shaft "pump shaft"

procedure Clean "Clean the shaft" {
  step Wipe { clean Shaft }
  step Look { inspect Shaft "rust" }
  return to Wipe
}
`,
    mended: `part Shaft "pump shaft"

procedure Clean "Clean the shaft" {
  step Wipe { clean Shaft }
  step Look {
    inspect Shaft "rust"
    check "The shaft is bright" if it fails { return to Wipe }
  }
}
`,
  },
  say: ({ to, toSpan }) => ({
    message: `Nothing leads out of this loop back to ${to}.`,
    why: "Whatever checks and readings say, the work comes here again.",
    remedy: "Put the way back under a check that can pass, or add a stop.",
    related: [{ message: "The loop begins here", span: toSpan }],
  }),
});
