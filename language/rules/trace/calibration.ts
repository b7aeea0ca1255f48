// trace.calibration: all items of the crib that would do are out of calibration on the day of the work.
import { rule } from "../rule.ts";

export const calibration = rule({
  code: "trace.calibration",
  severity: "warning",
  about: "calibration",
  subject: ({ tool }) => tool,
  page: {
    crib: true,
    finds:
      "A tool for which every item of the crib that would do is out of calibration on the day of the work: the day given with “--on”, else today. An item is good for the whole of its last day. An item without a date is taken to need no calibration. Silent without a crib.",
    why: "What is measured or tightened with it does not count, and the job is done again once that comes out.",
    fails: example("2026-01-31"),
    mended: example("2099-01-31"),
  },
  say: ({ tool, crib, day, items }) => ({
    message: `No ${tool} in ${crib} is in calibration on ${day}.`,
    why: items.map(({ label, until }) => `${label} was good until ${until}.`).join("\n"),
    remedy: "Have one calibrated before the work, and write its new date into the crib.",
    related: items.map(({ label, span }) => ({ message: `${label} stands here`, span })),
  }),
});

function example(until: string): string {
  return `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 80 ± 6 N·m dry per Manual "6.4.9"
}

crib MainShop "tool crib" {
  item "TW-0117" for Wrench {
    torque 10 .. 110 N·m
    calibrated until ${until}
  }
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 80 ± 6 N·m with Wrench
}
`;
}
