// trace.no-crib-item: a tool that is needed, and nothing in the shop's crib that meets what is used of it.

import { missWords } from "../crib-wording.ts";
import { rule } from "../rule.ts";

export const noCribItem = rule({
  code: "trace.no-crib-item",
  severity: "warning",
  about: "no crib item",
  subject: ({ tool }) => tool,
  page: {
    crib: true,
    finds:
      "A tool that the procedure names, and no item of the crib that does what is used of it: the setting of each stage with the item's own arm, the limits of a reading, a temperature, a load; and where no such value is used, what the tool's declaration asks for. What an item says nothing of is not held against it. Silent without a crib.",
    why: "The fitter stands at the counter, nothing there does it, and something else is taken.",
    fails: example("10 .. 60 N·m"),
    mended: example("10 .. 110 N·m"),
    source: "Setting with an adapter: NAVEDTRA 14315, fig. 3-44 (read).",
  },
  say: ({ tool, crib, items }) => ({
    message: items.length === 0 ? `${crib} has no ${tool}.` : `Nothing in ${crib} meets what is asked of ${tool}.`,
    why:
      items.length === 0
        ? `No item of it is there for ${tool}.`
        : items.map(({ label, misses }) => `${label} ${missWords(misses)}.`).join("\n"),
    remedy:
      items.length === 0
        ? `Add an item “for ${tool}” to the crib, or name a tool that is in it.`
        : "Add an item that does it to the crib, or name a tool that is in it.",
    related: items.map(({ label, span }) => ({ message: `${label} stands here`, span })),
  }),
});

function example(range: string): string {
  return `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 80 ± 6 N·m dry per Manual "6.4.9"
}

crib MainShop "tool crib" {
  item "TW-0117" for Wrench { torque ${range} }
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 80 ± 6 N·m with Wrench
}
`;
}
