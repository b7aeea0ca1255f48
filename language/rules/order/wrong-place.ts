// order.wrong-place: a numbered part installed in another position than its own.
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const wrongPlace = rule({
  code: "order.wrong-place",
  severity: "error",
  about: "wrong place",
  page: {
    finds: "A part that has a position of its own, by its number or by its declaration, and is installed in another.",
    why: "Numbered parts are matched to their places: by mass, by wear, by the shims under them. In another place they fit and are wrong.",
    fails: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegments "Fit the segments" {
  step install Segment[1] in Seat[1]
  step install Segment[2] in Seat[3]
}
`,
    mended: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegments "Fit the segments" {
  step install Segment[1] in Seat[1]
  step install Segment[2] in Seat[2]
}
`,
  },
  say: ({ part, place, own, seats }) => ({
    message: `${part} does not belong in ${place}.`,
    why: wantedFound(`${part} in ${own}`, `${part} in ${place}`),
    remedy: `Install ${part} in ${own}.`,
    related: [{ message: "Its declaration says here where it belongs", span: seats }],
  }),
});
