// Pressure and pressing force against a textbook's short form and worked values; directions; what is refused.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contactPressure, type Elastic, type PressFit, pressingForce } from "#engineering/press-fit.ts";
import { show } from "#quantity/display.ts";
import { answer, endsIn, explanation, given, inUnit, refusal } from "./given.ts";

describe("the pressure in the joint", () => {
  // 50/100 mm with 59 µm, computed: 92.9 MPa for 210 GPa. (The design prints 206 GPa beside it, which gives 91.2 MPa.)
  test.each([
    [210, 92.9],
    [206, 91.2],
  ])("of 50/100 mm with 59 µm at %d GPa is %d MPa", (modulus, megapascals) => {
    const pressure = contactPressure(pressFit("50 mm", "59 µm", "100 mm", null, steel(modulus)));
    expect(inUnit(pressure, "MPa")).toBeCloseTo(megapascals, 1);
    expect(show(answer(pressure))).toBe(`${megapascals} MPa`);
  });

  test("is E·δ/(2·d)·(1 − d²/D²) for one material and a solid shaft (Shigley's short form; memory), whatever ν", () => {
    const numbers = fc.tuple(
      fc.integer({ min: 10, max: 200 }),
      fc.integer({ min: 1, max: 200 }),
      fc.integer({ min: 1, max: 300 }),
    );
    fc.assert(
      fc.property(numbers, fc.integer({ min: 20, max: 45 }), ([d, wall, micrometres], hundredths) => {
        const elastic = steel(206, hundredths / 100);
        const pressure = contactPressure(pressFit(`${d} mm`, `${micrometres} µm`, `${d + wall} mm`, null, elastic));
        const short = ((206e3 * micrometres) / 1000 / (2 * d)) * (1 - (d / (d + wall)) ** 2);
        expect(inUnit(pressure, "MPa") / short).toBeCloseTo(1, 9);
      }),
    );
  });

  test("of a hollow shaft is E·δ/(2·d³)·(D² − d²)(d² − b²)/(D² − b²) (Shigley's short form; memory)", () => {
    const pressure = contactPressure(pressFit("50 mm", "40 µm", "80 mm", "30 mm", steel(207)));
    const short =
      ((207e3 * 0.04) / (2 * 50 ** 3)) * (((80 ** 2 - 50 ** 2) * (50 ** 2 - 30 ** 2)) / (80 ** 2 - 30 ** 2));
    expect(inUnit(pressure, "MPa")).toBeCloseTo(short, 9);
  });

  test("rises with the interference and the wall, falls with a bore and with a softer ring", () => {
    const of = (micrometres: number, outside: number, bore: string | null, ring = steel(206)) =>
      inUnit(
        contactPressure({ ...pressFit("50 mm", `${micrometres} µm`, `${outside} mm`, bore, steel(206)), ring }),
        "MPa",
      );
    expect(of(60, 100, null)).toBeGreaterThan(of(59, 100, null));
    expect(of(59, 101, null)).toBeGreaterThan(of(59, 100, null));
    expect(of(59, 100, "10 mm")).toBeLessThan(of(59, 100, null));
    expect(of(59, 100, null, steel(70, 0.33))).toBeLessThan(of(59, 100, null));
  });

  test("has a band where the interference has one", () => {
    const [low, high] = endsIn(contactPressure(pressFit("50 mm", "18 .. 59 µm", "100 mm", null, steel(206))), "MPa");
    expect(high / low).toBeCloseTo(59 / 18, 9);
  });

  test("is none without a wall, an interference or a modulus", () => {
    const of = (...[d, delta, outside, bore, elastic]: Parameters<typeof pressFit>) =>
      refusal(contactPressure(pressFit(d, delta, outside, bore, elastic)));
    expect(of("50 mm", "59 µm", "50 mm", null, steel(206))).toEqual({
      why: "not above zero",
      input: "wall of the ring",
    });
    expect(of("50 mm", "59 µm", "80 mm", "50 mm", steel(206))).toEqual({
      why: "not above zero",
      input: "wall of the shaft",
    });
    expect(of("50 mm", "0 .. 59 µm", "80 mm", null, steel(206))).toEqual({
      why: "not above zero",
      input: "interference",
    });
    expect(of("50 mm", "59 µm", "80 mm", null, steel(0)).why).toBe("not above zero");
    expect(inUnit(contactPressure(pressFit("50 mm", "59 µm", "50.01 mm", null, steel(206))), "MPa")).toBeGreaterThan(0);
  });

  test("in inches is in psi, and comes with how it was computed", () => {
    const pressure = contactPressure(
      pressFit("2 in", "2 thou", "4 in", null, { ...steel(206), modulus: given("30000 ksi", "pressure") }),
    );
    // 30e6 · 0.002/(2·2) · (1 − 1/4)
    expect(inUnit(pressure, "psi")).toBeCloseTo(11_250, 6);
    expect(show(answer(pressure))).toBe("11300 psi");
    expect(explanation(pressure).inputs.map(({ symbol }) => symbol)).toEqual(["d", "δ", "D", "Eo", "νo", "Ei", "νi"]);
    expect(explanation(pressure).caution).toContain("elastic");
  });
});

describe("the pressing force", () => {
  const force = (pressure: string, friction: string) =>
    pressingForce({
      pressure: given(pressure, "pressure"),
      diameter: given("50 mm", "length"),
      length: given("40 mm", "length"),
      friction: given(friction, "ratio"),
    });

  test("of 50 × 40 mm at 92.9 MPa with 0.12 is 70 kN (computed)", () => {
    expect(inUnit(force("92.9 MPa", "0.12"), "kN")).toBeCloseTo(70.04, 1);
    expect(show(answer(force("92.9 MPa", "0.12")))).toBe("70.0 kN");
  });

  test("has a band for a band of frictions, and none for none", () => {
    const [low, high] = endsIn(force("92.9 MPa", "0.06 .. 0.12"), "kN");
    expect(high / low).toBeCloseTo(2, 9);
    expect(refusal(force("92.9 MPa", "0")).why).toBe("not above zero");
    expect(refusal(force("at least 92.9 MPa", "0.1")).why).toBe("open end");
  });
});

function pressFit(
  diameter: string,
  interference: string,
  outside: string,
  bore: string | null,
  elastic: Elastic,
): PressFit {
  return {
    diameter: given(diameter, "length"),
    interference: given(interference, "length"),
    outside: given(outside, "length"),
    bore: bore === null ? null : given(bore, "length"),
    ring: elastic,
    shaft: elastic,
  };
}

function steel(gigapascals: number, poisson = 0.3): Elastic {
  return { modulus: given(`${gigapascals} GPa`, "pressure"), poisson: given(`${poisson}`, "ratio") };
}
