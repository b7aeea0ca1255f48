// Every declaration of the language becomes a record that says what is written, whatever the order of the text.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Value } from "#model/declarations.ts";
import { type Quantity, sameQuantity } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import { declared, modelOf, modelsOf, problemsIn } from "./model-of.ts";

const folder = "samples/language";
const shop = modelsOf(
  Object.fromEntries(
    ["03-declarations.sprag", "03-parts.sprag", "03-crib.sprag", "shop/materials.sprag", "segments.csv"].map((path) => [
      path,
      readFileSync(`${folder}/${path}`, "utf8"),
    ]),
  ),
);
const declarations = shop.get("03-declarations.sprag") ?? modelOf("");
const parts = shop.get("03-parts.sprag") ?? modelOf("");

/** The ends of a value in coherent units. */
function ends(value: Value | null): readonly (number | null)[] {
  const { high, low, nominal } = (value as Value).quantity;
  return [low, nominal, high].map((end) => (end === null ? null : toNumber(end.base)));
}
function nominal(value: Value | null): number | null {
  return ends(value)[1] ?? null;
}

test("the language's own examples have no problems", () => {
  expect([...shop.values()].flatMap((model) => model.problems)).toEqual([]);
});

describe("simple declarations", () => {
  test("a material, with what its heat limit and expansion are", () => {
    const steel = declared(declarations, "material", "CarbonSteel");
    expect(steel).toMatchObject({ title: "carbon steel", id: "03-declarations.sprag#CarbonSteel", damaged: false });
    expect(nominal(steel.expansion)).toBeCloseTo(11.7e-6, 12);
    expect(nominal(steel.heatLimit)).toBeCloseTo(473.15, 9);
  });
  test("a source and its revision; a role, a fact, a hazard and their titles", () => {
    expect(declared(declarations, "source", "Manual")).toMatchObject({
      title: "P-220 maintenance manual",
      revision: "9",
    });
    expect(declared(declarations, "role", "Fitter").title).toBe("fitter");
    expect(declared(declarations, "fact", "BalanceSigned").title).toBe("the balance sheet is signed");
    expect(declared(declarations, "hazard", "Dust").title).toBe("dust of friction linings");
  });
  test("an option and its choices in order", () => {
    const { choices } = declared(declarations, "option", "Extent");
    expect(choices.map(({ name, title }) => [name, title])).toEqual([
      ["Full", "full overhaul"],
      ["Reseal", "reseal only"],
    ]);
    expect(declared(declarations, "option", "SealsKept").choices.map(({ title }) => title)).toEqual(["yes", "no"]);
  });
  test("a title that is left out is the name", () => {
    expect(declared(modelOf("part Cover"), "part", "Cover").title).toBe("Cover");
  });
  test("a term and what it replaces", () => {
    expect(declarations.terms).toMatchObject([{ approved: "housing", replaces: ["casing", "shell"] }]);
  });
  test("a threshold with its kind and source", () => {
    const burn = declared(declarations, "threshold", "burn");
    expect(nominal(burn.value)).toBeCloseTo(328.15, 9);
    expect(burn.value?.per).toMatchObject({ section: "4.1", source: { name: "SafetyRules" } });
    expect(declared(parts, "threshold", "preload").value?.quantity.kind).toBe("ratio");
  });
  test("spans of the name and of the whole", () => {
    const text = 'role A\nrole Fitter "fitter"';
    const { extent, span } = declared(modelOf(text), "role", "Fitter");
    expect(text.slice(span.start, span.end)).toBe("Fitter");
    expect(text.slice(extent.start, extent.end)).toBe('role Fitter "fitter"');
  });
});

describe("places", () => {
  test("a ring: count, direction, start, fill", () => {
    const seat = declared(declarations, "ring", "Seat");
    expect(seat).toMatchObject({
      count: 16,
      numbered: "clockwise",
      seenFrom: "drive end",
      fill: "counterclockwise",
      start: { position: 1 },
    });
    expect(seat.start?.clock.quantity.kind).toBe("clock position");
    expect(nominal(seat.start?.clock ?? null)).toBe(6);
    expect(declared(declarations, "ring", "CoverCircle").fill).toBeNull();
  });
  test("holes and their order", () => {
    expect(declared(declarations, "holes", "PumpFeet")).toMatchObject({ count: 4, order: [1, 4, 2, 3] });
  });
  test.each([
    ["no count", "ring R { position 1 at 6 o'clock }", ["whole number «R» of 1..10000"]],
    ["no count, in a form without a block", "ring R", ["whole number «R» of 1..10000"]],
    ["half a position", "ring R { count 2.5 }", ["whole number «2.5» of 1..10000"]],
    ["no position", "ring R { count 0 }", ["whole number «0» of 1..10000"]],
    ["far too many", "ring R { count 1_000_000_000 }", ["whole number «1_000_000_000» of 1..10000"]],
    ["a start that is not there", "ring R { count 4 position 5 at 6 o'clock }", ["no instance 5 at «5» of 1..4"]],
    ["an order that is not there", "holes H { count 2 order 1, 3 }", ["no instance 3 at «3» of 1..2"]],
    [
      "a direction of holes",
      "holes H { count 4 numbered clockwise }",
      ["misplaced «numbered clockwise»: `numbered` belongs in a ring"],
    ],
    ["an order on a ring", "ring R { count 4 order 1, 2 }", ["misplaced «order 1, 2»: `order` belongs in holes"]],
    ["two counts", "ring R { count 4 count 5 }", ["misplaced «count 5»: a second `count` belongs only once here"]],
  ])("%s", (_title, text, problems) => {
    expect(problemsIn(text)).toEqual(problems);
  });
});

test("a day until which an item is calibrated is said once; the first counts", () => {
  const text = `tool W
crib C { item "A" for W { calibrated until 2026-05-04  calibrated until 2027-05-04 } }`;
  expect(problemsIn(text)).toEqual([
    "misplaced «calibrated until 2027-05-04»: a second `calibrated until` belongs only once here",
  ]);
});

describe("parts", () => {
  test("instances by number, by name, and none", () => {
    expect(declared(declarations, "part", "Segment").instances).toEqual({ form: "numbered", first: 1, last: 16 });
    expect(declared(parts, "part", "Foot").instances).toEqual({ form: "named", names: ["left", "right"] });
    expect(declared(declarations, "part", "Gear").instances).toEqual({ form: "single" });
  });
  test("a fastener with its thread, factors and torques", () => {
    const stud = declared(parts, "part", "Stud");
    expect(stud).toMatchObject({
      fastener: true,
      thread: "3/8-16 UNC",
      grade: "5",
      propertyClass: null,
      temporary: false,
    });
    expect(stud.nutFactors.map(({ condition, value }) => [nominal(value), condition])).toMatchObject([
      [0.2, { dry: true }],
      [0.15, { with: { name: "Oil" } }],
    ]);
    expect(stud.torques.map(({ value }) => ends(value))).toEqual([
      [28, null, 34],
      [21, null, 26],
    ]);
    expect(stud.torques[0]?.value.per).toMatchObject({ section: "3" });
    expect(nominal(stud.prevailingTorque)).toBe(3);
    expect(declared(parts, "part", "FineStud").fastener).toBe(true);
    expect(declared(parts, "part", "Flange").fastener).toBe(false);
  });
  test("relations: to all, to some, to the like-numbered", () => {
    const stud = declared(parts, "part", "Stud");
    expect(stud.needs).toMatchObject([{ part: { name: "Washer" }, which: "same" }]);
    expect(stud.secures).toMatchObject([{ part: { name: "Flange" }, which: "all" }]);
    expect(declared(parts, "part", "Lid").encloses.map(({ which }) => which)).toEqual([
      [1, 3],
      [5, 6, 7, 8],
    ]);
    expect(declared(parts, "part", "LockPlate").locks).toMatchObject([{ which: [1, 2, 3, 4] }]);
    expect(declared(parts, "part", "Snap").retains).toMatchObject([{ part: { name: "Frame" } }]);
  });
  test("seats: by number, at positions, equally spaced, anywhere", () => {
    expect(declared(declarations, "part", "Segment").seats).toMatchObject({
      places: { name: "Seat" },
      rule: "by number",
    });
    expect(declared(parts, "part", "LockPlate").seats?.rule).toEqual([1, 4, 7, 10]);
    expect(declared(declarations, "part", "GuidePin")).toMatchObject({
      temporary: true,
      seats: { rule: "equally spaced" },
    });
    expect(declared(modelOf("ring R { count 4 }\npart P { seats in R }"), "part", "P").seats?.rule).toBe("any");
  });
  test("own states, energies, hazards, cooling", () => {
    const flange = declared(parts, "part", "Flange");
    expect(flange.states).toEqual(["parked", "open", "closed"]);
    expect(flange.drivenBy.map(({ name }) => name)).toEqual([
      "AirSupply",
      "Vacuum",
      "Spring",
      "Counterweight",
      "Flywheel",
      "Jacket",
      "Spare",
    ]);
    expect(nominal(flange.cools)).toBeCloseTo(0.2, 12);
    expect(declared(parts, "part", "Frame").hazards).toEqual(["Splinters"]);
    expect(declared(parts, "part", "Washer").singleUse).toBe(true);
    expect(declared(parts, "part", "Tooth")).toMatchObject({ sharp: true, stands: false });
    expect(declared(modelOf('part Motor "motor" { stands }'), "part", "Motor")).toMatchObject({ stands: true });
  });
  test("parts may speak of each other in a circle, and of what comes later", () => {
    const model = modelOf("part A { needs B }\npart B { needs A encloses C }\npart C");
    const [a, b] = [declared(model, "part", "A"), declared(model, "part", "B")];
    expect(a.needs[0]?.part).toBe(b);
    expect(b.needs[0]?.part).toBe(a);
    expect(b.encloses[0]?.part).toBe(declared(model, "part", "C"));
  });
  test.each([
    [
      "a seat beyond the ring",
      "ring R { count 4 }\npart P[1..5] { seats in R by number }",
      ["no instance 5 at «R» of 1..4"],
    ],
    ["a seat before it", "ring R { count 4 }\npart P[0..3] { seats in R by number }", ["no instance 0 at «R» of 1..4"]],
    ["a position beyond it", "ring R { count 4 }\npart P { seats in R at 2, 5 }", ["no instance 5 at «5» of 1..4"]],
    ["an instance that is not there", "part A[1..4]\npart B { encloses A[5] }", ["no instance 5 at «A[5]» of 1..4"]],
    ["an index on one part", "part A\npart B { encloses A[1] }", ["«A[1]» needs an index of null"]],
    ["instances that run backwards", "part A[4..1]", ["whole number «1» of 4..10000"]],
    ["far too many", "part A[1..99999]", ["whole number «99999» of 1..10000"]],
    ["a tool's line", "part A { arm 40 mm }", ["misplaced «arm 40 mm»: `arm` belongs in a tool"]],
    [
      "a line twice",
      "part A { mass 1 kg mass 2 kg }",
      ["misplaced «mass 2 kg»: a second `mass` belongs only once here"],
    ],
    [
      "two materials",
      "material M\npart A { material M material M }",
      ["misplaced «material M»: a second `material` belongs only once here"],
    ],
  ])("%s", (_title, text, problems) => {
    expect(problemsIn(text)).toEqual(problems);
  });
  test("a ring of as many places as parts, or more, is right", () => {
    expect(
      problemsIn("ring R { count 4 }\npart P[1..4] { seats in R by number }\npart Q[1..2] { seats in R by number }"),
    ).toEqual([]);
  });
});

describe("fits, tools and the rest", () => {
  test("a fit by its interference, another by its tolerance", () => {
    const fits = declarations.declarations.filter((each) => each.kind === "fit");
    expect(fits.map(({ name }) => name)).toEqual(["Bearing over Shaft", "Gear over Hub"]);
    const [hot, toleranced] = fits;
    expect(hot).toMatchObject({
      outer: { part: { name: "Bearing" }, index: null },
      inner: { part: { name: "Shaft" } },
      tolerance: null,
    });
    expect(ends(hot?.interference ?? null)).toEqual([11e-6, null, 36e-6]);
    expect(nominal(hot?.slipClearance ?? null)).toBeCloseTo(15e-6, 12);
    expect(toleranced).toMatchObject({ tolerance: { text: "H7/s6" }, interference: null });
    expect(new Set(fits.map(({ id }) => id)).size).toBe(2);
  });
  test("a fit of one instance", () => {
    const model = modelOf("part A[1..3]\npart B[l, r]\nfit A[2] over B[r] { diameter 5 mm }");
    expect(model.declarations.find((each) => each.kind === "fit")).toMatchObject({
      outer: { index: 2 },
      inner: { index: "r" },
    });
  });
  test("what tools can do", () => {
    const { capability } = declared(declarations, "tool", "Wrench");
    expect(ends(capability.torque)).toEqual([8, null, 60]);
    expect([nominal(capability.accuracy), nominal(capability.arm), capability.accuracyOfFullScale]).toEqual([
      0.04,
      0.4,
      false,
    ]);
    expect(declared(parts, "tool", "ScaleWrench").capability.accuracyOfFullScale).toBe(true);
    expect(nominal(declared(parts, "tool", "AngledCrowfoot").capability.angle)).toBe(0.125);
    expect(declared(declarations, "tool", "Hoist").capability.lifts?.quantity.kind).toBe("mass");
    expect(declared(declarations, "tool", "Heater").capability.heatsTo?.quantity.kind).toBe("temperature");
    expect(ends(declared(declarations, "tool", "Feeler").capability.measures)).toEqual([0.03e-3, null, 1e-3]);
  });
  test("a consumable and energies", () => {
    expect(declared(declarations, "consumable", "Grease")).toMatchObject({ hazards: ["skin"], cure: null });
    expect(declared(declarations, "energy", "MotorSupply")).toMatchObject({
      off: false,
      marks: [],
      voltage: { quantity: { qualifier: "AC" } },
    });
    expect(declared(parts, "energy", "Spare").off).toBe(true);
    expect(declared(parts, "energy", "Spring").marks).toEqual(["spring"]);
    expect(declared(parts, "energy", "AirSupply").pressure?.quantity.kind).toBe("pressure");
    expect(declared(parts, "energy", "Jacket").hot?.quantity.kind).toBe("temperature");
  });
  test("an arrangement", () => {
    const order = declared(declarations, "arrangement", "SegmentOrder");
    expect(order).toMatchObject({ part: { name: "Segment" }, ring: { name: "Seat" }, from: { path: "segments.csv" } });
    expect(order.unbalance?.quantity).toMatchObject({ form: "at most", kind: "mass moment" });
  });
  test("a crib and its items", () => {
    const { items } = declared(shop.get("03-crib.sprag") ?? modelOf(""), "crib", "MainShop");
    expect(items).toMatchObject([{ label: "TW-0117", tool: { name: "Wrench" }, calibratedUntil: "2027-01-31" }]);
    expect(nominal(items[0]?.capability.arm ?? null)).toBe(0.39);
  });
});

describe("named values", () => {
  const values = modelOf(
    "value C = 2 * B\nvalue B = A - 5 N·m\nvalue A = 45 ± 2 N·m\nvalue F = 30 N * 0.4 m\nvalue D = 110 °C - 20 °C",
  );
  const quantity = (name: string): Quantity | undefined => declared(values, "value", name).value?.quantity;

  test("are worked out in any order of the text", () => {
    expect(ends(declared(values, "value", "C").value)).toEqual([76, 80, 84]);
  });
  test("keep the kinds they can still have", () => {
    expect([quantity("F")?.kind, ...(quantity("F")?.alternatives ?? [])].sort()).toEqual(["energy", "torque"]);
    expect(quantity("D")?.kind).toBe("temperature difference");
  });
  test("are the same wherever they are used", () => {
    const model = modelOf('value V = 45 ± 2 N·m\nprocedure P { step { check "x" expect V } }');
    const step = model.procedures[0]?.items[0];
    const check = step?.kind === "step" ? step.lines[0] : undefined;
    const used = check?.kind === "check" ? check.expect?.quantity : undefined;
    const own = declared(model, "value", "V").value?.quantity;
    expect(used !== undefined && own !== undefined && sameQuantity(used, own)).toBe(true);
  });
  test("a chain of thousands does no harm", () => {
    const chain = Array.from({ length: 3000 }, (_, at) => `value V${at} = V${at + 1} + 1 mm`).join("\n");
    expect(problemsIn(`${chain}\nvalue V3000 = 1 mm`)).toEqual([]);
  });
});

describe("ids", () => {
  test("tell declarations of procedures, files and one name twice apart", () => {
    const model = modelOf("part A\npart A\nprocedure P { part A }\nprocedure Q { part A }");
    const ids = model.declarations.map(({ id }) => id);
    expect(ids.slice(0, 1)).toEqual(["main.sprag#A"]);
    expect(ids.slice(2)).toEqual(["main.sprag#P.A", "main.sprag#Q.A"]);
    expect(new Set(ids).size).toBe(4);
  });
});
