// How far a unit reaches after a number: examples as they stand in a Sprag text, and agreement with the unit reader.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { scanUnit } from "#quantity/scan.ts";
import { readUnit } from "#quantity/unit.ts";
import { atomNames } from "#quantity/unit-table.ts";

function scanned(text: string): string | null {
  const found = scanUnit(text, 0);
  return found === null ? null : text.slice(0, found.end) + (found.known ? "" : " ?");
}

describe("a unit after a number", () => {
  test.each([
    ["N·m / 2", "N·m"],
    ["N·m, 70 %", "N·m"],
    ["% of FinalTorque", "%"],
    ["%of", "%"],
    ["o'clock }", "o'clock"],
    ["o’clock", "o’clock"],
    ["in", "in"],
    ["°", "°"],
    ["° then", "°"],
    ["°C }", "°C"],
    ["° C", "° C"],
    ["℃", "℃"],
    ["N·m..42", "N·m"],
    ["lbf·in .. 1.2 N·m", "lbf·in"],
    ["N·m±2", "N·m"],
    ["N·m (39 .. 43", "N·m"],
    ["V AC per Manual", "V AC"],
    ["V  DC", "V  DC"],
    ["V ACE", "V"],
    ["bar absolute", "bar absolute"],
    ["bar gauge }", "bar gauge"],
    ["mm absolute", "mm"],
    ["µm/(m·K)  heat limit", "µm/(m·K)"],
    ["\u03bcm/(m\u22c5K)", "\u03bcm/(m\u22c5K)"],
    ["kg·m²/s^2 x", "kg·m²/s^2"],
    ["m2 ", "m2"],
    ["N.m", "N.m"],
    ["N*m", "N*m"],
    ["ft-lb with", "ft-lb"],
    ["in-lb", "in-lb"],
    ["ft lb with", "ft lb"],
    ["in lb", "in lb"],
    ["lb ft\n", "lb ft"],
    ["lb in\n", "lb in"],
    ["lb in)", "lb in"],
    ["lb in .. 4", "lb in"],
    ["N m dry", "N m"],
    ["dB (A)", "dB (A)"],
    ["dB(A)", "dB(A)"],
    ["inH2O", "inH2O"],
    ["s after HeatBearing", "s"],
    ["min }", "min"],
    ["min\n}", "min"],
    ["turn in reverse", "turn"],
    ["turn/s", "turn/s"],
    // As the formatter writes `K⁻¹`.
    ["1/K", "1/K"],
    ["1/min }", "1/min"],
    ["1/2 in", null],
    ["°C−5 °C", "°C"],
    ["N·m–42", "N·m"],
  ])("%j is taken as %j", (text, expected) => {
    expect(scanned(text)).toBe(expected);
  });

  test.each([
    ["mm*Gap", "mm"],
    ["mm/Gap", "mm"],
    ["mm-Gap", "mm"],
    ["mm*(Gap - 1 mm)", "mm"],
    ["N·m/Length", "N·m"],
    ["kg in Seat", "kg"],
    ["lb in Seat[3]", "lb"],
    ["oz in cross pattern", "oz"],
    ["mm / 2", "mm"],
    ["mm/2", "mm"],
    ["mm*2", "mm"],
    ["mm-2", "mm"],
    ["mm - Gap", "mm"],
    ["mm // comment", "mm"],
    ["mm/* comment */", "mm"],
  ])("%j leaves the operator alone: %j", (text, expected) => {
    expect(scanned(text)).toBe(expected);
  });

  test.each([
    ["numbered clockwise", "numbered ?"],
    ["to 4", "to ?"],
    ["Nn with", "Nn ?"],
    ["N·q", "N·q ?"],
    ["µm/(m·Q)", "µm/(m·Q) ?"],
    ["x2b", "x2b ?"],
    ["m_2 foo", "m_2 ?"],
    ["mmx", "mmx ?"],
    ["constructor", "constructor ?"],
  ])("%j is no unit, but shaped like one: %j", (text, expected) => {
    expect(scanned(text)).toBe(expected);
  });

  test.each(["", " mm", "* 3 mm", "..", ", 4", "4", '"mm"', "}", "+ 2", "- 2", "/ 2", "±", "(A)", "²", "_"])(
    "nothing like a unit stands at %j",
    (text) => {
      expect(scanned(text)).toBeNull();
    },
  );

  test("begins where it is told to", () => {
    expect(scanUnit("tighten to 40 N·m dry", 14)).toEqual({ end: 17, known: true });
  });
});

describe("the scanner and the reader", () => {
  const followers = fc.constantFrom("", " ", "\n", " }", ",", ")", " .. 4 mm", " ± 2", " with Wrench", " * 2", "+1");

  test("agree: what is scanned as known is read, and every unit of the table is scanned whole", () => {
    fc.assert(
      fc.property(fc.constantFrom(...atomNames()), followers, (name, after) => {
        expect(scanUnit(name + after, 0)).toEqual({ end: name.length, known: true });
      }),
    );
  });

  test("agree on any text: the end lies inside, and known means read", () => {
    const pieces = fc.constantFrom(
      "N",
      "m",
      "·",
      "*",
      "/",
      "(",
      ")",
      "^2",
      "²",
      " ",
      "in",
      "lb",
      "ft",
      "-",
      "AC",
      "V",
      "°C",
      "%",
      "o'clock",
      "Gap",
      "_",
      "2",
      "é",
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 8 }), (parts) => {
        const text = parts.join("");
        const found = scanUnit(text, 0);
        if (found === null) return;
        expect(found.end).toBeGreaterThan(0);
        expect(found.end).toBeLessThanOrEqual(text.length);
        if (found.known) expect(readUnit(text.slice(0, found.end), null).ok).toBe(true);
      }),
    );
  });

  test("is total on any text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.nat(20), (text, offset) => {
        const found = scanUnit(text, offset);
        if (found !== null) expect(found.end).toBeGreaterThan(offset);
      }),
    );
  });

  test("takes time in proportion to the text", () => {
    const time = (length: number) => {
      const text = `${"m·".repeat(length)}m`;
      const started = performance.now();
      for (let i = 0; i < 20; i++) scanUnit(text, 0);
      return performance.now() - started;
    };
    time(1000);
    // The best of five: another program on the machine can only make one longer.
    const best = (size: number): number => Math.min(...Array.from({ length: 5 }, () => time(size)));
    // Ten times the text: far below the hundred times of a quadratic scan, with room for a busy machine.
    expect(best(20_000)).toBeLessThan(40 * Math.max(best(2000), 0.5));
  });
});
