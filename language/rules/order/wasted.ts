// order.wasted: something done and undone again, with nothing between that used it.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const wasted = rule({
  code: "order.wasted",
  severity: "information",
  about: "wasted",
  subject: ({ what }) => base(what),
  page: {
    finds:
      "A part lubricated or coated and then cleaned, or heated and then cooled, or a ring turned and then turned again, with nothing between that used it.",
    why: "One of the two lines is left over, or stands in another place than was meant.",
    fails: `consumable Grease "bearing grease"
part Bearing "drive-end bearing"

procedure FitBearing "Fit the bearing" {
  step lubricate Bearing with Grease
  step clean Bearing
  step install Bearing
}
`,
    mended: `consumable Grease "bearing grease"
part Bearing "drive-end bearing"

procedure FitBearing "Fit the bearing" {
  step clean Bearing
  step lubricate Bearing with Grease
  step install Bearing
}
`,
  },
  say: ({ what, first, since: origin }) => ({
    message: `${what} is ${SAYINGS[first].undone} before ${SAYINGS[first].result} is used.`,
    why: `${what} is ${first} ${since(origin)}, and nothing between the two makes use of that.`,
    remedy: "Take one of the two lines out, or move the work that needs the first between them.",
    witness: cameFrom(origin, `${what} is ${first}`),
  }),
});

const SAYINGS = {
  lubricated: { undone: "cleaned", result: "its lubricant" },
  coated: { undone: "cleaned", result: "what was applied" },
  heated: { undone: "cooled", result: "its heat" },
  turned: { undone: "turned again", result: "its position" },
} as const;
