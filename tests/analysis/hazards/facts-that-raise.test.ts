// Which facts raise which hazard, whole: the cause, the source, the value and its threshold with who says so (checks.md, notes;
// engineering.md, hazard thresholds: those of ISO 13732-1 and MIL-STD-1472 from memory, NIOSH 94-110 second, the CFR read).
import { describe, expect, test } from "vitest";
import { DEFAULTS, isHazardBelow } from "#analysis/hazards/thresholds.ts";
import { facts, told, work } from "./hazards-on-paper.ts";

interface Raised {
  readonly cause: string;
  readonly of: { readonly name: string };
  readonly hazards: readonly string[];
  readonly passed: {
    readonly value: string | null;
    readonly threshold: {
      readonly name: string;
      readonly value: string;
      readonly source: string;
      readonly mark: string | null;
    };
  } | null;
}
/** `cause: hazards of source, value past threshold`, with `!` where somebody is hurt for certain. */
const raised = (lines: string, more = ""): readonly string[] =>
  facts(work(lines, more)).flatMap((fact) => {
    const { raised: one, grave, anyOf } = fact as { raised?: Raised; grave?: boolean; anyOf?: boolean };
    if (one === undefined) return [];
    const passed = one.passed === null ? "" : `, ${one.passed.value ?? "no end"} past ${one.passed.threshold.value}`;
    return [
      `${one.cause}${grave === true ? "!" : ""}: ${one.hazards.join(anyOf === true ? " or " : ", ")} of ${one.of.name}${passed}`,
    ];
  });
const passedBy = (lines: string, more = ""): Raised["passed"] | undefined => {
  const [first] = facts(work(lines, more));
  return (first as { raised?: Raised } | undefined)?.raised?.passed;
};

describe("hot and cold parts in somebody's hands", () => {
  test.each<[lines: string, told: readonly string[]]>([
    ["step heat Seat to 40 .. 50 °C with Heater\nstep clean Seat", []],
    // Nobody says how hot: then it may be as hot as it likes.
    ["step heat Seat to at least 40 °C with Heater\nstep clean Seat", ["hot part!: burn of Seat, no end past 65 °C"]],
    ["step heat Seat to at most 60 °C with Heater\nstep clean Seat", ["hot part: burn of Seat, 60 °C past 51 °C"]],
    ["step cool Seat to -20 .. -10 °C\nstep clean Seat", ["cold part: cold of Seat, -20 °C past 0 °C"]],
    // Where no end is below, it is as cold as its upper end says.
    ["step cool Seat to at most -10 °C\nstep clean Seat", ["cold part: cold of Seat, -10 °C past 0 °C"]],
    ["step cool Seat to at most 5 °C\nstep clean Seat", []],
    // What hands are on beside the object.
    [
      "step install Seat\nstep heat Seat to 50 .. 60 °C with Heater\nstep install Pin in Seat",
      ["hot part: burn of Seat, 60 °C past 51 °C"],
    ],
    ["step install Seat\nstep heat Seat to 50 .. 60 °C with Heater\nstep inspect Seat", []],
    ["step install Seat\nstep heat Seat to 50 .. 60 °C with Heater\nstep heat Seat to 55 .. 60 °C with Heater", []],
    // A need is no measurement, a wait for it is.
    ["step heat Seat to 50 .. 60 °C with Heater\nstep wait until Seat is at most 45 °C\nstep clean Seat", []],
  ])("%j", (lines, wanted) => {
    expect(raised(lines, 'part Pin "pin"\n')).toEqual(wanted);
  });
  test("in the degrees of the threshold, by its source", () => {
    expect(passedBy("step heat Seat to 120 .. 140 °F with Heater\nstep clean Seat")).toMatchObject({
      // 140 °F are 60 °C.
      value: "60 °C",
      threshold: { name: "burn", value: "51 °C", mark: "memory" },
    });
    const own = 'source Rules "shop safety rules" revision "3"\nthreshold burn 130 °F per Rules "4.1"\n';
    expect(passedBy("step heat Seat to 50 .. 60 °C with Heater\nstep clean Seat", own)).toMatchObject({
      value: "140 °F",
      threshold: { name: "burn", value: "130 °F", source: "shop safety rules 4.1", mark: null },
    });
    expect(
      passedBy("step heat Seat to 50 .. 60 °C with Heater\nstep clean Seat", "threshold burn 55 °C\n"),
    ).toMatchObject({
      threshold: { source: "the shop's own" },
    });
    // Another threshold is none for this.
    expect(raised("step heat Seat to 50 .. 60 °C with Heater\nstep clean Seat", "threshold cold 5 °C\n")).toEqual([
      "hot part: burn of Seat, 60 °C past 51 °C",
    ]);
    expect(raised("step cool Seat to 2 .. 4 °C\nstep clean Seat", "threshold cold 5 °C\n")).toEqual([
      "cold part: cold of Seat, 2 °C past 5 °C",
    ]);
  });
});

describe("heavy parts", () => {
  const lift = "hand lift!: lifting of Cover, 40 kg past 23 kg";
  const hung = "overhead lift: lifting or crush or dropped of Cover";
  test.each<[lines: string, told: readonly string[]]>([
    ["step install Cover", [lift]],
    ["step press Cover in Seat", [lift]],
    ["begin with Cover is installed\nstep remove Cover", [lift]],
    ["begin with Cover is installed\nstep discard Cover", [lift]],
    ["step lift Cover by hand", [lift]],
    ["step support Cover by hand", [lift]],
    ["step install Cover with Hoist", []],
    [
      "step install Cover with Grinder",
      ["hand lift!: lifting of Cover, 40 kg past 23 kg", "tool used: eye, noise of Grinder"],
    ],
    ["step lift Cover with Hoist\nstep install Cover", [hung]],
    // Held from below nothing hangs over anybody.
    ["step support Cover with Hoist\nstep install Cover", []],
    ["step lift Cover with Hoist\nstep set down Cover", [hung]],
    ["step inspect Cover", []],
  ])("%j", (lines, wanted) => {
    expect([...raised(lines)].sort()).toEqual([...wanted].sort());
  });
  test("a light part with heavy ones on it", () => {
    const more = 'part Tray "tray" { mass 2 kg }\n';
    expect(raised("step install Tray", more)).toEqual([]);
    expect(raised("step install Lump on Tray\nstep install Tray", `${more}part Lump "lump" { mass 22 kg }\n`)).toEqual([
      "hand lift!: lifting of Tray, 24 kg past 23 kg",
    ]);
  });
  test("a statement of lifting is in its place wherever somebody may lift", () => {
    const idle = (lines: string, more = ""): boolean =>
      told(`warning lifting "Heavy." avoid "Take two."\n${lines}`, {}, more).some((one) => one.startsWith("idle"));
    expect(idle("step install Cover with Hoist")).toBe(false);
    expect(idle("step lift Seat by hand")).toBe(false);
    expect(idle("step install Seat")).toBe(false);
    expect(idle("step support Cover with Hoist")).toBe(false);
    // A screw is nothing that anybody lifts.
    expect(
      idle(
        "step install Cap with Hoist\nstep install Screw",
        'part Cap "cap" { mass 1 kg }\npart Screw "screw" { secures Cap }\n',
      ),
    ).toBe(true);
  });
});

describe("liquids and gases", () => {
  const OIL = (says: string): string => `consumable Oil "oil" { ${says} }\n`;
  test.each<[says: string, lines: string, told: readonly string[]]>([
    ["flash point 20 °C", "step clean Seat with Oil", ["flammable liquid: fire of Oil, 20 °C past 23 °C"]],
    ["flash point 20 °C", "step lubricate Seat with Oil", ["flammable liquid: fire of Oil, 20 °C past 23 °C"]],
    ["flash point 20 °C", "step fill Seat with Oil", ["flammable liquid: fire of Oil, 20 °C past 23 °C"]],
    ["flash point 20 °C", "step apply Oil to Seat", ["flammable liquid: fire of Oil, 20 °C past 23 °C"]],
    ["flash point 23 °C", "ambient 0 .. 5 °C\nstep apply Oil to Seat", []],
    // 40 °C less 16.7 K.
    [
      "flash point 40 °C",
      "ambient 15 .. 24 °C\nstep apply Oil to Seat",
      ["flammable liquid in the warm: fire of Oil, 24 °C past 23.3 °C"],
    ],
    [
      "flash point 104 °F",
      "ambient 15 .. 24 °C\nstep apply Oil to Seat",
      [expect.stringMatching(/^flammable liquid in the warm: fire of Oil, 75\.2 °F past 73\.9/) as unknown as string],
    ],
    ["flash point 40 °C", "ambient 15 .. 23 °C\nstep apply Oil to Seat", []],
    ["pressure 6 bar", "step clean Seat with Oil", ["air at a nozzle: pressure, eye of Oil, 6 bar past 30 psi"]],
    ["pressure 6 bar", "step apply Oil to Seat", []],
    ["pressure 1 bar", "step clean Seat with Oil", ["air at a nozzle: eye of Oil"]],
    // 2.5 bar against nothing are 1.49 bar against the air, under 30 psi (2.07 bar).
    ["pressure 2.5 bar absolute", "step clean Seat with Oil", ["air at a nozzle: eye of Oil"]],
    [
      "pressure 3.2 bar absolute",
      "step clean Seat with Oil",
      ["air at a nozzle: pressure, eye of Oil, 3.2 bar absolute past 30 psi"],
    ],
    ["hazard fumes", "step lubricate Seat with Oil", ["consumable used: fumes of Oil"]],
    ["hazard fumes", "step fill Seat with Oil", ["consumable used: fumes of Oil"]],
    ["hazard fumes", "step drain Seat", []],
    ["expands 694", "step apply Oil to Seat", ["gas set free: fumes of Oil"]],
    [
      "expands 694",
      "room 60 m³\nstep apply 10 L of Oil to Seat",
      [expect.stringMatching(/^oxygen displaced: fumes of Oil, 18\.5\d* % past 19\.5 %$/) as unknown as string],
    ],
    [
      "expands 694",
      "room 40 m³\nstep apply 10 L of Oil to Seat",
      [expect.stringMatching(/^oxygen displaced!: fumes of Oil, 17\.3\d* % past 18 %$/) as unknown as string],
    ],
  ])("%s: %j", (says, lines, wanted) => {
    expect(raised(lines, OIL(says))).toEqual(wanted);
  });
  test("heated with it on, and put on what is hot: by how near it comes", () => {
    const oil = OIL("flash point 100 °C");
    // 83.3 °C is 16.7 K under it.
    expect(raised("step apply Oil to Seat\nstep heat Seat to 70 .. 84 °C with Heater", oil)).toEqual([
      "flammable liquid heated: fire of Oil, 84 °C past 83.3 °C",
    ]);
    expect(raised("step apply Oil to Seat\nstep heat Seat to 70 .. 83 °C with Heater", oil)).toEqual([]);
    expect(raised("step heat Seat to 70 .. 84 °C with Heater\nstep apply Oil to Seat", oil)).toContain(
      "flammable liquid heated: fire of Oil, 84 °C past 83.3 °C",
    );
    expect(passedBy("step apply Oil to Seat\nstep heat Seat to 70 .. 84 °C with Heater", oil)?.threshold).toMatchObject(
      {
        name: "fire",
        source: expect.stringContaining("29 CFR 1910.106(a)(19)"),
        mark: "read",
      },
    );
  });
});

describe("energies", () => {
  const driven = (says: string): string => `energy E "energy" { ${says} }\npart Driven "part" { driven by E }\n`;
  test.each<[says: string, lines: string, told: readonly string[]]>([
    ["voltage 400 V AC", "step install Driven", ["live energy!: electric of E, 400 V AC past 50 V"]],
    ["pressure 6 bar", "step install Driven", ["live energy!: pressure of E, 6 bar past 0.5 bar"]],
    ["hot 90 °C", "step install Driven", ["live energy!: burn of E, 90 °C past 65 °C"]],
    ["height", "step isolate E\nstep prove E dead\nstep install Driven", []],
    ["height", "step isolate E\nstep install Driven", ["unproved energy!: crush, dropped of E"]],
    ["spring", "step isolate E\nstep install Driven", ["unproved energy!: spring of E"]],
    ["rotating", "step isolate E\nstep install Driven", ["unproved energy: rotating of E"]],
    ["spring", "step isolate E\nstep release E", ["energy released!: spring of E"]],
  ])("%s: %j", (says, lines, wanted) => {
    expect(raised(lines, driven(says))).toEqual(wanted);
  });
});

test("of cold, of oxygen and of a flash point what lies below is the hazard, of all others what lies above", () => {
  expect(Object.keys(DEFAULTS).filter(isHazardBelow).sort()).toEqual(["cold", "fire", "oxygen"]);
});
