// order.occupied: installing in a place that something else holds.
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const occupied = rule({
  code: "order.occupied",
  severity: "error",
  about: "occupied",
  page: {
    finds:
      "A part that is installed in a position which another part holds. Parts that belong on top of each other, by “[same]”, share theirs.",
    why: "Two pins do not go into one hole. One of the two positions is mistyped, or the first part was to come out before.",
    fails: `ring PinCircle "pin circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Pin[1..2] "dowel pin" { seats in PinCircle }

procedure FitPins "Fit the pins" {
  step install Pin[1] in PinCircle[1]
  step install Pin[2] in PinCircle[1]
}
`,
    mended: `ring PinCircle "pin circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Pin[1..2] "dowel pin" { seats in PinCircle }

procedure FitPins "Fit the pins" {
  step install Pin[1] in PinCircle[1]
  step install Pin[2] in PinCircle[3]
}
`,
  },
  say: ({ part, place, by, since: origin }) => ({
    message: `${place} is taken by ${by}.`,
    why: `${by} is in ${place} ${since(origin)}.`,
    remedy: `Install ${part} in another position, or remove ${by} first.`,
    witness: cameFrom(origin, `${by} is in ${place}`),
  }),
});
