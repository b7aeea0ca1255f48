// wording.number-drift: a quantity in own words beside a value of the step that says something else.

import { show } from "#quantity/display.ts";
import { rule } from "../rule.ts";
import { quoted, wantedFound } from "../wording.ts";

export const numberDrift = rule({
  code: "wording.number-drift",
  severity: "warning",
  about: "number drift",
  page: {
    finds:
      "A quantity in the own words of a step, a check or a reading that no value of its kind in the same step admits, within half of its last digit and in whichever unit. Silent where the step declares no value of that kind, and of lengths that name a thing (“the 8 mm key”).",
    why: "The value was changed in one place and not in the other. What is read aloud at the bench is the sentence.",
    fails: example("54"),
    mended: example("45"),
  },
  say: ({ declared, words }) => ({
    message: `The words say ${words}, the step says something else.`,
    why: wantedFound([...new Set(declared.map(({ quantity }) => show(quantity)))].join("; "), words),
    remedy: `Compare with the source; then change ${quoted(words)} or the value, or leave the number out of the words.`,
    related: declared.map(({ span }) => ({ message: "The step's value", span })),
  }),
});

function example(torque: string): string {
  return `source Manual "pump manual" revision "9"
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}
tool Wrench "torque wrench" { torque 8 .. 60 N·m }

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step "Tighten the screw to ${torque} N·m." { tighten Screw to 45 ± 4 N·m with Wrench }
}
`;
}
