// order.position: a place that has not been turned to the clock position asked for.
import { base } from "#analysis/raw-fact.ts";
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom, since, wantedFound } from "../wording.ts";

export const position = rule({
  code: "order.position",
  severity: "error",
  about: "position",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A part that is to be installed at a clock position to which its place has not been turned. At the start a ring stands as its declaration says. Silent where nothing tells how the ring stands.",
    why: "The place at the bottom is the one where the part holds by itself, or where there is room. At another hour it drops, or the next one cannot go in.",
    fails: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegment "Fit segment 2" {
  step install Segment[2] in Seat[2] at 6 o'clock
}
`,
    mended: `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure FitSegment "Fit segment 2" {
  step turn Seat[2] to 6 o'clock
  step install Segment[2] in Seat[2] at 6 o'clock
}
`,
  },
  say: ({ place, wanted, now, ring, since: origin }) => ({
    message: `${place} does not stand at ${clockText(wanted)}.`,
    why:
      now === null
        ? `Wanted: ${place} at ${clockText(wanted)}`
        : wantedFound(`${place} at ${clockText(wanted)}`, `${place} at ${clockText(now)}, ${since(origin)}`),
    remedy: `Turn ${ring} before this: “turn ${place} to ${clockText(wanted)}”.`,
    witness: now === null ? [] : cameFrom(origin, `${place} is at ${clockText(now)}`),
  }),
  fix: (fact) => putInBefore([`step turn ${fact.place} to ${clockText(fact.wanted)}`], fact),
});

/** Hours from 0 to below 12: `12 o'clock`, `7.5 o'clock`. */
function clockText(hours: number): string {
  const shown = Math.round(hours * 100) / 100;
  return `${shown % 12 === 0 ? 12 : shown} o'clock`;
}
