// Rings that are turned: which position stands at which hour, for both ways of numbering.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

/** A ring of four with position 1 at 12 o'clock: what stands where after the steps. */
function asking(
  condition: string,
  steps: string,
  numbered: "clockwise" | "counterclockwise",
  count = 4,
): readonly string[] {
  return found(`ring Seat "seat" { count ${count}  numbered ${numbered} seen from "drive end"  position 1 at 12 o'clock }
procedure Work "Work" {\n${steps}\nstep Ask { needs ${condition}\n do "Look." }\n}`);
}

describe.each([
  ["clockwise", [12, 3, 6, 9]],
  ["counterclockwise", [12, 9, 6, 3]],
] as const)("numbered %s", (numbered, hours) => {
  test("at the start", () => {
    hours.forEach((hour, at) => {
      expect(asking(`Seat[${at + 1}] at ${hour} o'clock`, "", numbered)).toEqual([]);
      expect(asking(`Seat[${at + 1}] at ${(hour + 2) % 12 || 12} o'clock`, "", numbered)).toHaveLength(1);
      expect(asking(`Seat[${at + 1}] is not at ${hour} o'clock`, "", numbered)).toHaveLength(1);
    });
  });
  test("after a turn every position has moved with the one that was turned", () => {
    const turn = "step turn Seat[2] to 6 o'clock";
    const moved = numbered === "clockwise" ? [3, 6, 9, 12] : [9, 6, 3, 12];
    moved.forEach((hour, at) => {
      expect(asking(`Seat[${at + 1}] at ${hour} o'clock`, turn, numbered), `Seat[${at + 1}]`).toEqual([]);
    });
    expect(asking(`Seat[1] at 12 o'clock`, turn, numbered)).toEqual([`order.unmet-need: Seat[1] at 12 o'clock`]);
  });
  test("“to put” says which position goes there", () => {
    expect(asking("Seat[4] at 6 o'clock", "step turn Seat to put Seat[4] at 6 o'clock", numbered)).toEqual([]);
    expect(asking("Seat[3] at 6 o'clock", "step turn Seat to put Seat[4] at 6 o'clock", numbered)).toHaveLength(1);
  });
  test("a position that was turned to an hour is there, whatever the number of positions", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 48 }), fc.nat(), fc.integer({ min: 1, max: 12 }), (count, at, hour) => {
        const position = (at % count) + 1;
        expect(
          asking(
            `Seat[${position}] at ${hour} o'clock`,
            `step turn Seat[${position}] to ${hour} o'clock`,
            numbered,
            count,
          ),
        ).toEqual([]);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});

test("turned on one path only", () => {
  const text = `ring Seat "seat" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
option Extent "extent" { Full Part }
procedure Work "Work" {
  when Extent is Full { step turn Seat[1] to 6 o'clock }
  step Ask { needs Seat[1] at 6 o'clock  do "Look." }
}`;
  expect(found(text)).toEqual(["order.unmet-need: Seat[1] at 6 o'clock | Extent Part"]);
});
