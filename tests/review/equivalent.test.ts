// Texts that mean the same in another order or by another word, and rows of a table told one by one. Source: outputs.md, Review: “A
// reordered but equivalent text has no entry above group 6”; “old and new in both unit systems, the difference and the per cent”.
import { describe, expect, test } from "vitest";
import { linesOf, reviewed, reviewedFrom, workspaceOf } from "./compare-texts.ts";

const groups = (old: string, now: string): readonly string[] =>
  linesOf(reviewed({ "a.sprag": old }, { "a.sprag": now })).map((line) => line.split(" ").slice(0, 2).join(" "));

describe("conditions", () => {
  const ring = (fill: string): string => `ring Seat "seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
  fill ${fill}
}
part Segment[1..4] "segment" { seats in Seat by number }
procedure Fit "Fit" {
  finish with Segment[all] are installed
  step "Look."
  step { repeat n from 1 to 4 { install Segment[n] } }
}
`;

  test("what holds of all of a set holds in any order: the direction of filling changes no condition", () => {
    expect(groups(ring("clockwise"), ring("counterclockwise"))).toEqual(["order fill-direction-changed"]);
  });

  const valve = (condition: string, choices = "yes no"): string => `option New "a new disc is fitted" { ${choices} }
part Disc "disc"
procedure Fit "Fit" {
  begin with Disc is installed
  when New is ${condition} { step inspect Disc "for scores" }
}
`;

  test("of two choices, not the one is the other", () => {
    expect(groups(valve("no"), valve("not yes"))).toEqual(["layout layout"]);
    expect(groups(valve("no"), valve("yes"))).toContain("order condition-changed");
  });

  test("of three it is not, and what the same words now mean is told", () => {
    const now = valve("not yes", "yes no later");
    expect(groups(valve("no", "yes no later"), now)).toContain("order condition-changed");
    const { changes } = reviewed({ "a.sprag": valve("not yes") }, { "a.sprag": now });
    expect(changes.map(({ message }) => message)).toContain("Condition: New is not yes (no) → New is not yes.");
  });
});

describe("a table of masses", () => {
  const text = `ring Seat "seat" { count 3  numbered clockwise seen from "drive end"  position 1 at 6 o'clock }
part Segment[1..3] "segment" { seats in Seat by number }
arrangement Order of Segment in Seat { radius 420 mm  unbalance at most 6000 g·mm  from "t.csv" }
procedure Fit "Fit" { finish with Segment[all] are installed step install Segment[all] }
`;
  const told = (old: string, now: string): readonly string[] => {
    const side = (rows: string) => workspaceOf({ "a.sprag": text, "t.csv": `position,serial,mass (kg)\n${rows}` });
    return linesOf(reviewedFrom(side(old), side(now)));
  };
  const rows = ["1,A1,2.300", "2,A2,2.301", "3,A3,2.302"];

  test("what became of a row is told", () => {
    expect(told(rows.join("\n"), [rows[0], rows[1], "3,A3,2.312"].join("\n"))).toEqual([
      "items table-rows-changed Arrangement Order, rows of the table: A3 (3, 2.302 kg (5.075 lb)) → A3 (3, 2.312 kg (5.097 lb)).",
    ]);
    expect(told(rows.join("\n"), rows.slice(0, 2).join("\n"))[0]).toContain(
      "rows of the table, dropped: A3 (3, 2.302 kg (5.075 lb)).",
    );
  });

  test("rows in another order say the same", () => {
    expect(told(rows.join("\n"), [...rows].reverse().join("\n"))).toEqual([]);
  });
});

describe("a restated value", () => {
  const within = (time: string): string => `part Ring "ring"
procedure Fit "Fit" { step A "Look." step { install Ring within ${time} after A takes 1 s } }
`;
  const told = (old: string, now: string): readonly string[] =>
    reviewed({ "a.sprag": within(old) }, { "a.sprag": within(now) }).changes.map(({ message }) => message);

  test("says what its rounding has moved where that is one per cent or more", () => {
    // 2 min are 120 s: 30 s more, a third of 90 s.
    expect(told("90 s", "2 min")).toEqual([
      "Time limit restated, the value kept within its last digit: 90 s → 2 min: +30 s (+33 %).",
    ]);
    expect(told("90 s", "1.5 min")).toEqual(["Time limit restated, the value kept: 90 s → 1.5 min."]);
    // 30 min are 0.5 h exactly; 31 min are 0.517 h, 0.52 h is 12 s more: 0.6 %.
    expect(told("31 min", "0.52 h")).toEqual(["Time limit restated, the value kept: 31 min → 0.52 h."]);
  });
});
