// order.direction: places of a ring filled out of turn, or one skipped and never filled.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const direction = rule({
  code: "order.direction",
  severity: "error",
  about: "direction",
  subject: ({ part, skipped }) => `${base(part)} ${skipped === null ? "turn" : "skipped"}`,
  page: {
    finds:
      "On a ring that says “fill”, a position that is filled in the other direction, one that is filled after others passed it, or one that is skipped and never filled. Where the filling starts is free.",
    why: "Segments are pushed against the one before. From the other side the joints open, and the last one does not go in.",
    fails: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
  fill counterclockwise
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegments "Fit the segments" {
  repeat n from 1 to 4 { step install Segment[n] }
}
`,
    mended: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
  fill counterclockwise
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegments "Fit the segments" {
  repeat n from 4 down to 1 { step install Segment[n] }
}
`,
  },
  say: ({ part, place, wanted, skipped, declaredAt }) => {
    const ring = base(place);
    const related = [{ message: `${ring} says here how it is filled`, span: declaredAt }];
    return skipped === null
      ? {
          message: `${place} is filled out of turn.`,
          why: wantedFound(
            `${ring} filled ${wanted}, one position after the other`,
            `${part} in ${place}, behind those that are filled`,
          ),
          remedy: `Change the order, so that ${ring} is filled ${wanted}.`,
          related,
        }
      : {
          message: `${skipped} is skipped and never filled.`,
          why: wantedFound(
            `${ring} filled ${wanted}, one position after the other`,
            `${part} in ${place}, with ${skipped} still empty at the end`,
          ),
          remedy: `Fill ${skipped} before ${place}.`,
          related,
        };
  },
});
