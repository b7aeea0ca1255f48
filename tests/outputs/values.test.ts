// Printed values: both unit systems, and a band that must be met never grows. The expected side is worked out here from
// the exact definitions (NIST SP 811): 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 lbf = 0.453 592 37 kg × 9.806 65 m/s².
import { describe, expect, test } from "vitest";
import { blocksIn, instructionsIn, make, stepsIn } from "./make.ts";
import { around, COVER } from "./procedures.ts";

const LBF_FT = 0.3048 * 0.45359237 * 9.80665;

function roundsIn(text: string, units: "si" | "us" | "both"): readonly string[] {
  return [...blocksIn(make(text, { units }).document.blocks)].flatMap((block) =>
    block.kind === "instruction" ? block.rounds : [],
  );
}

/** The numbers of a `low .. high` text. */
function bandOf(text: string, unit: string): readonly [number, number] {
  const found = new RegExp(`(-?[\\d.]+) \\.\\. (-?[\\d.]+) ${unit}`).exec(text);
  return [Number(found?.[1]), Number(found?.[2])];
}

describe("rounds of a tightening", () => {
  const exact = [0.3, 0.7, 1].map((share) => [share * 43, share * 47] as const);

  test("the writer's own units stand as written", () => {
    expect(roundsIn(COVER, "si")).toEqual(["13.5 ± 0.6 N·m", "31.5 ± 1.4 N·m", "45 ± 2 N·m"]);
  });

  test("the other system's band lies inside, and fills nearly all of it", () => {
    const printed = roundsIn(COVER, "both").map((text) => bandOf(text, "lbf·ft"));
    expect(printed).toHaveLength(3);
    printed.forEach(([low, high], at) => {
      const [from, to] = exact[at] ?? [0, 0];
      expect(low * LBF_FT).toBeGreaterThanOrEqual(from - 1e-9);
      expect(high * LBF_FT).toBeLessThanOrEqual(to + 1e-9);
      expect((high - low) * LBF_FT).toBeGreaterThan((to - from) * 0.9);
    });
  });

  test("all rounds of one tightening are in one unit", () => {
    // 30 % is below the size from which lbf·ft is used for a single value.
    for (const units of ["us", "both"] as const) {
      expect(roundsIn(COVER, units).every((text) => text.includes("lbf·ft") && !text.includes("lbf·in"))).toBe(true);
    }
  });

  test("customary only: the nominal value with its band", () => {
    for (const text of roundsIn(COVER, "us")) expect(text).toMatch(/^[\d.]+ lbf·ft \([\d.]+ \.\. [\d.]+ lbf·ft\)$/);
  });
});

test("a customary writer reads customary first, and SI alone where asked", () => {
  const text = around("step tighten Screw[1] to 30 .. 35 lbf·ft");
  expect(instructionsIn(make(text).document)[0]).toMatch(/to 30 \.\. 35 lbf·ft \([\d.]+ \.\. [\d.]+ N·m\)\.$/);
  const [low, high] = bandOf(instructionsIn(make(text, { units: "si" }).document)[0] ?? "", "N·m");
  expect(low).toBeGreaterThanOrEqual(30 * LBF_FT);
  expect(high).toBeLessThanOrEqual(35 * LBF_FT);
  expect(high - low).toBeGreaterThan(4 * LBF_FT);
});

test("ends in two systems come out in the one asked for", () => {
  const text = around("step tighten Screw[1] to 8 lbf·in .. 1.2 N·m");
  expect(instructionsIn(make(text, { units: "us" }).document)[0]).toMatch(/to 8(?:\.0)? \.\. 10(?:\.\d)? lbf·in\.$/);
  expect(instructionsIn(make(text, { units: "si" }).document)[0]).toMatch(/to (?:0\.9\d*|1\.0) \.\. 1\.2 N·m\.$/);
});

test("a limit is rounded to the side that is safe", () => {
  const text = around(
    'step { check "Gap" with Depth expect at most 1 mm }\nstep { check "Depth" with Depth expect at least 1 mm }',
  );
  const limits = [...blocksIn(make(text, { units: "us" }).document.blocks)].flatMap((block) =>
    block.kind === "instruction" ? block.fields.map((field) => field.limits) : [],
  );
  const values = limits.map((limit) => Number(/[\d.]+/.exec(limit ?? "")?.[0]));
  expect(limits.every((limit) => limit?.endsWith(" in"))).toBe(true);
  expect((values[0] ?? 0) * 25.4).toBeLessThanOrEqual(1);
  expect((values[1] ?? 0) * 25.4).toBeGreaterThanOrEqual(1);
});

test("rows of a choice meet at their ends in both systems", () => {
  const text = around(`
    step measure Gap "gap" with Depth expect 0.2 .. 1.2 mm
    step choose Shim by Gap { 0.2 .. 0.6 mm: 0.5 mm  0.6 .. 1.2 mm: 1.0 mm }`);
  const rows = [...blocksIn(make(text, { units: "us" }).document.blocks)].flatMap((block) =>
    block.kind === "instruction" ? block.details : [],
  );
  const bands = rows.map((row) => bandOf(row, "in"));
  expect(bands).toHaveLength(2);
  expect(bands[0]?.[1]).toBe(bands[1]?.[0]);
});

test("a limit that depends on a reading is printed as it is worked out, not as the widest it can be", () => {
  const text = around(`
    step measure Gap "gap at the flange" with Depth expect 0.2 .. 1.2 mm
    step { check "Rest" with Depth expect at most Gap - 0.05 mm }`);
  const { document, html } = make(text);
  const step = stepsIn(document)[1];
  expect(step?.blocks).toMatchObject([
    { fields: [{ limits: "at most Gap - 0.05 mm (0.00197 in), with Gap = gap at the flange" }] },
  ]);
  expect(html).not.toContain("1.15 mm");
});

describe("as a shop reads them", () => {
  test.each([
    ["0.4 L", "Fill the cover with 14 US fl oz of oil."],
    // 1 US gal = 3.785 411 784 L (NIST SP 811): 1 L is 1.06 qt, 6 L are 1.6 gal.
    ["1 L", "Fill the cover with 1 US qt of oil."],
    ["6 L", "Fill the cover with 1.6 US gal of oil."],
    ["3 galUK", "Fill the cover with 3 imp gal of oil."],
  ])("%s of oil in US units", (amount, said) => {
    const { document } = make(around(`step fill Cover with ${amount} of Oil`), { units: "us" });
    expect(instructionsIn(document).map((text) => text.replace(" with oil", ""))).toEqual([said]);
  });

  test("a limit that is a product of a reading has the sign of a product", () => {
    const lines = `step measure Gap "gap" with Depth expect 1 .. 2 mm
      step measure "gap behind" with Depth expect at most 2 * Gap`;
    const limits = [...blocksIn(make(around(lines)).document.blocks)].flatMap((block) =>
      block.kind === "instruction" ? block.fields.map((field) => field.limits) : [],
    );
    expect(limits.at(-1)).toBe("at most 2 × Gap, with Gap = gap");
  });
});
