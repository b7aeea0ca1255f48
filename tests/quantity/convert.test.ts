// Conversion of quantities given as text: exact values from published tables, refusals with a place, round trips.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Conversion, convertText } from "#quantity/convert.ts";
import { readQuantityText } from "#quantity/quantity-text.ts";

function readings(conversion: Conversion) {
  if (!conversion.ok) throw new Error(conversion.problem.kind);
  return conversion.readings;
}

describe("a conversion", () => {
  test("gives the exact values, what may be shown, and the band inwards", () => {
    expect(convertText("11 ± 0.3 mm", "in")).toEqual({
      ok: true,
      unit: "in",
      readings: [
        {
          kind: "length",
          from: "11 ± 0.3 mm",
          ends: [
            { end: "low", exact: "107/254", digits: "0.421259842520" },
            { end: "nominal", exact: "55/127", digits: "0.433070866142" },
            { end: "high", exact: "113/254", digits: "0.444881889764" },
          ],
          shown: "0.433 in (0.422 .. 0.444 in)",
          inwards: "0.422 .. 0.444 in",
        },
      ],
      notes: [],
    });
  });

  test.each([
    ["1 lbf·ft", "N·m", "1.3558179483314004", "NIST SP 811 (1.355 818)"],
    ["1 lbf·in", "N·m", "0.1129848290276167", "NIST SP 811 (0.112 984 8)"],
    ["1 kgf·m", "N·m", "9.80665", "NIST SP 811"],
    ["0 °C", "K", "273.15", "NIST"],
    ["36 ft", "m", "10.9728", "NIST SP 811 B.7.2"],
    ["1 galUS", "in³", "231", "NIST Handbook 44 (memory)"],
    ["1 ft", "in", "12", "memory"],
    ["2 turn", "°", "720", "memory"],
    ["60 rpm", "turn/s", "1", "memory"],
    ["-40 °C", "°F", "-40", "memory"],
  ])("%s is %s: %s exactly (%s)", (text, target, exact) => {
    expect(readings(convertText(text, target))[0]?.ends).toMatchObject([{ end: "nominal", exact }]);
  });

  test("of °C to °F has two readings, as a temperature and as a difference", () => {
    expect(readings(convertText("30 °C", "°F")).map(({ kind, shown }) => `${kind}: ${shown}`)).toEqual([
      "temperature: 86 °F",
      "temperature difference: 54 °F",
    ]);
  });

  test("of a ratio to ppm has one reading, though two kinds fit", () => {
    expect(readings(convertText("12 %", "ppm"))).toHaveLength(1);
  });

  test("with π in it has digits and no exact value", () => {
    expect(readings(convertText("180°", "rad"))[0]?.ends).toEqual([
      { end: "nominal", exact: null, digits: "3.14159265359" },
    ]);
    expect(readings(convertText("2 mrad", "rad"))[0]?.ends).toMatchObject([{ exact: "0.002" }]);
  });

  test("of one-sided quantities and ranges in two units", () => {
    expect(readings(convertText("at most 120 °C", "°F"))[0]).toMatchObject({
      shown: "at most 248 °F",
      inwards: "at most 248 °F",
    });
    expect(readings(convertText("8 lbf·in .. 1.2 N·m", "N·m"))[0]).toMatchObject({ inwards: "1.0 .. 1.2 N·m" });
  });

  test.each<[string, string, object]>([
    ["40 N·m", "J", { kind: "mismatch", found: ["torque"], wanted: ["energy"] }],
    ["40 N·m", "kg·m²", { kind: "mismatch", wanted: [] }],
    ["40 Nn", "N·m", { kind: "unknown unit", text: "Nn" }],
    ["40 N·m", "Nn", { kind: "unknown target", text: "Nn" }],
    ["40", "mm", { kind: "missing unit" }],
    ["-300 °C", "°C/min", { kind: "mismatch" }],
    ["", "mm", { kind: "unreadable", expected: "a number" }],
    ["mm", "mm", { kind: "unreadable", at: { start: 0, end: 2 }, expected: "a number" }],
    ["4 mm 5", "mm", { kind: "unreadable", at: { start: 5, end: 6 }, expected: "the end" }],
    ["4 ..", "mm", { kind: "unreadable", expected: "a number" }],
    ["4 mm (3 mm", "mm", { kind: "unreadable", expected: ".." }],
    ["4 mm (3 .. 5 mm", "mm", { kind: "unreadable", expected: ")" }],
    ["at least", "mm", { kind: "unreadable", expected: "a number" }],
    ["- mm", "mm", { kind: "unreadable", expected: "a number" }],
  ])("of %j to %s is refused with a reason", (text, target, problem) => {
    expect(convertText(text, target)).toMatchObject({ ok: false, problem });
  });

  test("notes what was read with a doubt", () => {
    expect(convertText("40 lb", "N")).toMatchObject({ ok: true, notes: [{ kind: "ambiguous", readAs: "lbf" }] });
    expect(convertText("4 L", "gal")).toMatchObject({
      ok: true,
      unit: "galUS",
      notes: [{ kind: "ambiguous target", readAs: "galUS" }],
    });
    expect(convertText("13,5 Nm", "lbf·ft")).toMatchObject({
      ok: true,
      notes: [{ kind: "style" }, { kind: "decimal comma" }],
    });
    // A thousand, or one: nobody can know.
    expect(convertText("1,000 N", "lbf")).toMatchObject({
      ok: false,
      problem: { kind: "decimal comma", canonical: "1.000", whole: "1000" },
    });
    expect(convertText("0,125 mm", "in")).toMatchObject({ ok: true });
    expect(convertText("42 .. 38 mm", "in")).toMatchObject({ ok: true, notes: [{ kind: "reversed range" }] });
    expect(convertText("-300 °C", "K")).toMatchObject({
      ok: true,
      notes: [{ kind: "impossible", why: "below absolute zero" }],
    });
  });

  test("there and back gives the number again, exactly", () => {
    const pairs = fc.constantFrom(
      ["N·m", "lbf·in"],
      ["mm", "in"],
      ["°C", "°F"],
      ["bar", "psi"],
      ["kg", "lb"],
      ["L", "galUS"],
      ["turn", "°"],
    );
    fc.assert(
      fc.property(pairs, fc.integer({ min: 0, max: 10 ** 6 }), ([from = "", to = ""], n) => {
        const there = readings(convertText(`${n / 1000} ${from}`, to))[0]?.ends[0]?.exact ?? "";
        fc.pre(!there.startsWith("-") && there.length < 60);
        expect(readings(convertText(`${there} ${to}`, from))[0]?.ends[0]?.exact).toBe(`${n / 1000}`);
      }),
    );
  });
});

describe("a text", () => {
  test("is read whole or refused with a place inside it, whatever it is", () => {
    const pieces = fc.constantFrom(
      "4",
      "3/8",
      "1 1/2",
      "13,5",
      " ",
      "mm",
      "N·m",
      "..",
      "±",
      "+/-",
      "(",
      ")",
      "-",
      "at least",
      "at most",
      "°C",
      "Gap",
      "é",
      ".",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join("")),
          fc.string(),
        ),
        (text) => {
          const reading = readQuantityText(text);
          if (reading.ok) expect(reading.written.at.end).toBeLessThanOrEqual(text.length);
          else {
            expect(reading.at.start).toBeLessThanOrEqual(reading.at.end);
            expect(reading.at.end).toBe(text.length);
          }
          expect(typeof convertText(text, "mm").ok).toBe("boolean");
        },
      ),
    );
  });
});
