// Proof loads and strengths by class and grade against the tables of the standards, as others print them.
import { describe, expect, test } from "vitest";
import { proofLoad, strengthOf } from "#engineering/strength.ts";
import { show } from "#quantity/display.ts";
import { answer, endsIn, explanation, inUnit, refusal, thread } from "./given.ts";

// ISO 898-1, proof loads in kN (second), computed there from stress areas rounded to three digits.
const loads = [
  ["M8", "8.8", 21.2],
  ["M10", "8.8", 33.7],
  ["M12", "8.8", 48.9],
  ["M16", "8.8", 91.0],
  ["M20", "8.8", 147],
  ["M24", "8.8", 212],
  ["M12", "10.9", 70.0],
  ["M20", "10.9", 203],
  ["M20", "12.9", 238],
  // The same standard's table (memory).
  ["M5", "4.6", 3.2],
  ["M8", "5.8", 13.9],
  ["M10", "4.8", 18.0],
  ["M12x1.25", "8.8", 53.4],
  ["M30", "10.9", 466],
] as const;

test.each(loads)("the proof load of %s %s is %d kN", (name, propertyClass, printed) => {
  const strength = answer(strengthOf(thread(name), { propertyClass }));
  const load = inUnit(proofLoad(thread(name), strength), "kN");
  // The last digit printed, and the rounding of the area (half a unit in three digits).
  expect(Math.abs(load - printed) / printed).toBeLessThan(0.008);
});

test("compares many loads", () => {
  console.log(`proof loads compared with tables: ${loads.length}`);
  expect(loads.length).toBeGreaterThan(10);
});

describe("the strength by class", () => {
  // ISO 898-1:2013, table 3, as a fastener maker prints it (second): proof, and yield or 0.2 % stress (4.8 to 6.8: of the whole screw), MPa.
  test.each([
    ["M10", "4.6", 225, 240],
    ["M10", "4.8", 310, 340],
    ["M10", "5.6", 280, 300],
    ["M10", "5.8", 380, 420],
    ["M10", "6.8", 440, 480],
    ["M16", "8.8", 580, 640],
    ["M18", "8.8", 600, 660],
    ["M16", "9.8", 650, 720],
    ["M10", "10.9", 830, 940],
    ["M39", "12.9", 970, 1100],
    ["M1.6", "8.8", 580, 640],
    ["M8x1", "10.9", 830, 940],
  ])("of %s %s: %d and %d MPa", (name, propertyClass, proof, limit) => {
    const strength = answer(strengthOf(thread(name), { propertyClass }));
    expect([show(strength.proof), show(strength.yield)]).toEqual([`${proof} MPa`, `${limit} MPa`]);
    expect(strength.source).toContain("ISO 898-1");
  });

  test.each([
    ["M18", "9.8"],
    ["M42", "8.8"],
    ["M1.4", "8.8"],
    ["M6x0.75", "8.8"],
    ["M10", "8.9"],
    ["M10", "A2-70"],
    ["M10", ""],
    ["M10", "constructor"],
    ["1/2-13", "8.8"],
  ])("of %s %s is not known", (name, propertyClass) => {
    expect(refusal(strengthOf(thread(name), { propertyClass }))).toMatchObject({
      why: "not known",
      input: "property class",
    });
  });
});

describe("the strength by grade", () => {
  // SAE J429 in ksi, from Shigley & Mischke's table (read): proof, yield.
  test.each([
    ["1/4-20 UNC", "1", 33, 36],
    ["3/4-10 UNC", "2", 55, 57],
    ["7/8-9 UNC", "2", 33, 36],
    ["1/2-13", "4", 65, 100],
    ["1-8 UNC", "5", 85, 92],
    ["1 1/8-7 UNC", "5", 74, 81],
    ["1-12 UNF", "5.2", 85, 92],
    ["1/2-20 UNF", "7", 105, 115],
    ["1 1/2-6 UNC", "8", 120, 130],
    ["1/4-28 UNF", "8.2", 120, 130],
    ["3/8-16", "Grade 5", 85, 92],
  ])("of %s grade %s: %d and %d ksi", (name, grade, proof, limit) => {
    const strength = answer(strengthOf(thread(name), { grade }));
    expect([show(strength.proof), show(strength.yield)]).toEqual([`${proof} ksi`, `${limit} ksi`]);
  });

  test.each([
    ["#10-32", "5"],
    ["1 3/4-5 UNC", "8"],
    ["1 1/8-7 UNC", "5.2"],
    ["1/2-13", "3"],
    ["1-14 UNS", "5"],
    ["M10", "5"],
  ])("of %s grade %s is not known", (name, grade) => {
    expect(refusal(strengthOf(thread(name), { grade }))).toMatchObject({ why: "not known", input: "grade" });
  });

  // 0.1419 in² · 85 ksi and 0.0364 in² · 120 ksi, areas as tabulated (second).
  test.each([
    ["1/2-13 UNC", "5", 12061],
    ["1/4-28 UNF", "8", 4368],
  ])("gives %s grade %s a proof load of %d lbf", (name, grade, pounds) => {
    const load = proofLoad(thread(name), answer(strengthOf(thread(name), { grade })));
    expect(Math.abs(inUnit(load, "lbf") - pounds) / pounds).toBeLessThan(0.003);
  });
});

test("a proof load comes with strength, area and where they are from", () => {
  const load = proofLoad(thread("M10"), answer(strengthOf(thread("M10"), { propertyClass: "8.8" })));
  const { result, formula, inputs, caution } = explanation(load);
  expect(show(result.value)).toBe("33.6 kN");
  expect(formula).toBe("Fp = Sp·As");
  expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual(["Sp 580 MPa", "As 58.0 mm²"]);
  expect(inputs[0]?.source).toContain("ISO 898-1");
  expect(caution).toContain("tapped thread");
  expect(endsIn(load, "N")[0]).toBeGreaterThan(33_000);
});
