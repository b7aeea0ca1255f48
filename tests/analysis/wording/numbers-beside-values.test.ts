// wording.number-drift: a quantity in own words that no value of its kind in the step admits within half its last digit (checks.md).
// Which values of a step count, how numbers are read in words, and what a number in words is not.
import { describe, expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const SHOP = `option Deep { yes no }
ring Circle "circle" { count 8  numbered clockwise seen from "front"  position 1 at 12 o'clock }
consumable Oil "oil"
part Pump "pump" { heat limit 300 °C }
part Screw[1..8] "screw" { seats in Circle }
part Shim "shim"
tool Gauge "gauge" { measures 0 .. 50 mm }
`;
/** The quantities that drift, as they are told. */
const drifting = (words: string, lines: string, before = ""): readonly string[] =>
  findingsIn(`${SHOP}procedure Work "Work" {\n${before}  step "${words}" {\n    ${lines}\n  }\n}\n`)
    .filter(({ code }) => code === "wording.number-drift")
    .map(({ message }) => /^The words say (.*?),/.exec(message)?.[1] ?? message);

describe("each value of a step counts, wherever it stands in it", () => {
  // The words that hold, then such as do not.
  test.each<[lines: string, words: string, holds: string, drifts: string, before?: string]>([
    ["install Screw[1] in Circle[1] at 3 o'clock", "Put it in at %.", "3 o'clock", "4 o'clock"],
    ["turn Circle[2] to 3 o'clock", "Turn it to %.", "3 o'clock", "4 o'clock"],
    ["tighten Pump to 20 N·m then 90°", "Turn it by % more.", "90°", "60°"],
    ["tighten Pump to 20 N·m, 45 N·m", "Go over %.", "20 N·m", "30 N·m"],
    ["loosen Pump by 1/4 turn", "Turn it back %.", "90°", "180°"],
    ["heat Pump to 80 .. 90 °C", "Bring it to %.", "85 °C", "95 °C"],
    ["cool Pump to 0 .. 5 °C", "Bring it to %.", "5 °C", "8 °C"],
    ["heat Pump by 60 K", "Bring it up by %.", "60 K", "70 K"],
    ["wait 5 min", "Wait %.", "5 min", "6 min"],
    ["wait until Pump is at most 40 °C", "Let it come down to %.", "40 °C", "50 °C"],
    ["apply 5 g of Oil to Pump", "Put % on.", "5 g", "7 g"],
    ["apply Oil to Pump cure 2 h", "Leave it for %.", "2 h", "3 h"],
    ["fill Pump with 2 L of Oil", "Pour in %.", "2 L", "3 L"],
    ['measure "gap" with Gauge expect 1 .. 2 mm', "It is up to %.", "2 mm", "3 mm"],
    ['check "gap" with Gauge expect 1 .. 2 mm', "It is up to %.", "2 mm", "3 mm"],
    ['inspect Pump\n record "gap" 1 .. 2 mm', "It is up to %.", "2 mm", "3 mm"],
    ['needs Pump is at least 30 °C\n do "Look at it."', "It is at %.", "40 °C", "20 °C"],
    ['do "Look at it."\n gives Pump is at most 60 °C', "It is at %.", "50 °C", "70 °C"],
    ['needs not (Pump is at least 30 °C)\n do "Look at it."', "It is at %.", "40 °C", "20 °C"],
    ['needs Circle[1] at 6 o\'clock\n do "Look at it."', "It stands at %.", "6 o'clock", "9 o'clock"],
    ["repeat n from 1 to 2 { wait 5 min }", "Wait % each.", "5 min", "6 min"],
    ["in any order { wait 5 min\n inspect Pump }", "Wait %.", "5 min", "6 min"],
    ["when Deep is yes { wait 5 min } otherwise { inspect Pump }", "Wait %.", "5 min", "6 min"],
    ["when Deep is yes { inspect Pump } otherwise { wait 5 min }", "Wait %.", "5 min", "6 min"],
    ['check "gap" if it fails { wait 5 min }', "Wait %.", "5 min", "6 min"],
    [
      "inspect Pump\n within 5 min after A",
      "Do it within %.",
      "5 min",
      "6 min",
      "step A { inspect Shim takes 1 min }\n",
    ],
  ])("%s: “%s” with %s, not with %s", (lines, words, holds, drifts, before) => {
    expect(drifting(words.replace("%", holds), lines, before)).toEqual([]);
    expect(drifting(words.replace("%", drifts), lines, before)).toEqual([drifts]);
  });
  test("the rows of a choice, what they choose and what is to be left", () => {
    const reading = 'step measure Gap "gap" with Gauge expect 2 .. 4 mm\n';
    const choose = "choose Shim by Gap leaving 0.5 .. 1 mm {\n 2 .. 3 mm: 1.5 mm\n 3 .. 4 mm: 2.5 mm\n }";
    const said = (length: string): readonly string[] => drifting(`Take one up to ${length}.`, choose, reading);
    for (const held of ["0.7 mm", "2.2 mm", "1.5 mm", "2.5 mm"]) expect(said(held)).toEqual([]);
    // Between what is left and what is chosen, and beyond all rows.
    for (const drift of ["1.2 mm", "4.5 mm"]) expect(said(drift)).toEqual([drift]);
  });
  test("the work may be told of in parts that are shorter than the whole, not longer", () => {
    expect(drifting("Rub it for 30 s at a time.", 'do "Rub it."\n takes 1 .. 2 min')).toEqual([]);
    expect(drifting("Rub it for 2 min at a time.", 'do "Rub it."\n takes 1 .. 2 min')).toEqual([]);
    expect(drifting("Rub it for 3 min at a time.", 'do "Rub it."\n takes 1 .. 2 min')).toEqual(["3 min"]);
    expect(drifting("Rub it for 3 min at a time.", 'do "Rub it."\n takes 2 min')).toEqual(["3 min"]);
  });

  test.each(["within 5 minutes", "in at most 5 min", "in less than 5 min"])(
    "%s: a limit above the time it takes",
    (limit) => {
      expect(drifting(`Do it ${limit}.`, 'do "Rub it."\n takes 2 min')).toEqual([]);
      expect(drifting(`Do it ${limit}.`, 'do "Rub it."\n takes 8 .. 9 min')).toEqual([]);
      expect(drifting(`Do it ${limit.replace("5", "1")}.`, 'do "Rub it."\n takes 1 .. 2 min')).toEqual([]);
      // Of a limit that is declared none agrees but that one.
      const declared = 'do "Rub it."\n takes 2 min\n within 3 min after A';
      const [before, told] = ["step A { inspect Shim takes 1 min }\n", limit.replace(/^\D+/, "")];
      expect(drifting(`Do it ${limit}.`, declared, before)).toEqual([told]);
      expect(drifting(`Do it ${limit.replace("5", "3")}.`, declared, before)).toEqual([]);
      // More than that is no limit.
      expect(drifting("Rub it for more than 5 min.", 'do "Rub it."\n takes 2 min')).toEqual(["5 min"]);
    },
  );
  test("one value of the kind that admits it is enough", () => {
    expect(drifting("Wait 5 min, then 9 min.", "wait 5 min\n wait 9 min")).toEqual([]);
    expect(drifting("Wait 7 min.", "wait 5 min\n wait 9 min")).toEqual(["7 min"]);
  });
  test("a value of another kind says nothing of it", () => {
    expect(drifting("Wait 7 min.", "heat Pump to 80 .. 90 °C")).toEqual([]);
    expect(drifting("Wait 7 min.", "inspect Pump")).toEqual([]);
  });
});

describe("half of the last digit on both sides", () => {
  test.each<[said: string, value: string, isDrift: boolean]>([
    ["5 min", "5.5 .. 6 min", false],
    ["5 min", "5.51 .. 6 min", true],
    ["5 min", "4 .. 4.5 min", false],
    ["5 min", "4 .. 4.49 min", true],
    ["5.0 min", "5.06 .. 6 min", true],
    ["50 min", "at most 49.5 min", false],
    ["50 min", "at most 49 min", true],
    ["50 min", "at least 50.5 min", false],
    ["50 min", "at least 51 min", true],
  ])("%s for %s: %s", (said, value, isDrift) => {
    const lines = `do "Rub it."\n within ${value} after A`;
    expect(drifting(`Do it in ${said}.`, lines, "step A { inspect Shim takes 1 min }\n")).toEqual(
      isDrift ? [said] : [],
    );
  });
});

describe("how numbers stand in words", () => {
  const heat = (words: string, to = "100 .. 112 °C"): readonly string[] => drifting(words, `heat Pump to ${to}`);
  const cool = (words: string): readonly string[] => drifting(words, "cool Pump to -40 .. -30 °C");
  test("both ends of a range have its unit", () => {
    expect(heat("Heat it to 100 to 112 °C.")).toEqual([]);
    expect(heat("Heat it to between 90 and 112 °C.")).toEqual(["90"]);
    expect(heat("Heat it to 90 to 112 °C.")).toEqual(["90"]);
    expect(heat("Heat it to 90–112 °C.")).toEqual(["90"]);
    expect(heat("Heat it to 90 .. 112 °C.")).toEqual(["90"]);
    // Not a range, so a number without a unit.
    expect(heat("Heat it at 90 or 112 °C.")).toEqual([]);
    expect(heat("Heat the 3 rings to 112 °C.")).toEqual([]);
  });
  test("a tolerance is no value", () => {
    expect(heat("Heat it to 106 ± 6 °C.")).toEqual([]);
    expect(heat("Heat it to 106 ±6 °C.")).toEqual([]);
    expect(heat("Heat it to 106 °C +/- 6 °C.")).toEqual([]);
    expect(heat("Heat it to 96 ± 6 °C.")).toEqual(["96"]);
  });
  test("a sign belongs to its number, a hyphen to a word does not", () => {
    expect(cool("Cool it to -35 °C.")).toEqual([]);
    expect(cool("Cool it to −35 °C.")).toEqual([]);
    expect(cool("Cool it (-35 °C) first.")).toEqual([]);
    expect(cool("-35 °C is cold enough.")).toEqual([]);
    expect(cool("Cool it to 35 °C.")).toEqual(["35 °C"]);
    expect(cool("Cool it to -20 °C.")).toEqual([expect.stringContaining("20 °C")]);
    expect(heat("Heat it in oven-105 °C.")).toEqual([]);
  });
  test("by so much is a step, and no temperature", () => {
    expect(heat("Raise it by 20 °C at a time.")).toEqual([]);
    expect(heat("Raise it 20 K at a time.")).toEqual([]);
    expect(heat("Raise it to 20 °C at first.")).toEqual(["20 °C"]);
  });
  test("only a unit that is one of that kind; a spelling of it will do", () => {
    const torque = (words: string): readonly string[] => drifting(words, "tighten Pump to 45 N·m");
    expect(torque("Tighten it to 45 Nm.")).toEqual([]);
    expect(torque("Tighten it to 54 Nm.")).toEqual([expect.stringContaining("54")]);
    expect(torque("Pull with 54 lb.")).toEqual([]);
    expect(torque("It is 54 J.")).toEqual([]);
  });
});

describe("a length before a noun says which thing is meant, and one behind “at” where", () => {
  const gap = (words: string): readonly string[] => drifting(words, 'check "gap" with Gauge expect at most 0.5 mm');
  test.each<[words: string, found: readonly string[]]>([
    ["Look under the 8 mm key.", []],
    ["It is 8 mm wide.", ["8 mm"]],
    ["It is 8 mm or less.", ["8 mm"]],
    ["It is 8 mm.", ["8 mm"]],
    ["It is 8 mm, key side.", ["8 mm"]],
    ["Measure it at 8 mm from the edge.", []],
    ["Measure it at 8 mm below the edge.", []],
    ["Measure it 8 mm from the edge.", ["8 mm"]],
    ["Keep it at 8 mm in all.", ["8 mm"]],
  ])("%s", (words, found) => {
    expect(gap(words)).toEqual(found);
  });
  test("of another kind a noun behind it changes nothing", () => {
    expect(drifting("Take the 9 L can.", "fill Pump with 2 L of Oil")).toEqual(["9 L"]);
  });
});
