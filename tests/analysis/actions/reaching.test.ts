// Whether hands and tools get at a part: covers that are in, energies that are live or not shown to be dead.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `energy Supply "motor supply" { voltage 400 V AC }
energy Air "air supply" { pressure 6 bar }
part Motor "motor" { driven by Supply }
part Fan "fan" { driven by Supply, Air }
part Base "base"
part Screw "screw" { secures Base  driven by Supply }
part Gland "gland"
part Seal[1..2] "seal"
part Cap "cap" { encloses Gland }
part Hood "hood" { encloses Gland  encloses Seal[2] }
consumable Oil "oil"
tool Heater "heater" { heats to 200 °C }
`;
const procedure = (steps: string): string => `${PARTS}procedure Work "Work" { ${steps} }`;
const work = (steps: string): readonly string[] => found(procedure(steps));
const whole = (steps: string): readonly object[] => wholeFacts(procedure(steps));

type Case = [steps: string, ...told: string[]];

describe("behind a cover", () => {
  test.each<Case>([
    ["step install Gland, Hood step clean Gland", "order.enclosed: clean Gland"],
    ["step install Hood step clean Gland"],
    ["step install Gland step clean Gland"],
    ["step install Gland, Hood step remove Hood step clean Gland step install Hood"],
    // The place of what is to be put in is behind the cover wherever the part is.
    ["step install Hood step install Gland", "order.enclosed: install Gland"],
    ["step install Hood step press Gland in Base", "order.enclosed: press Gland"],
    ["step install Gland, Hood step inspect Gland", "order.enclosed: inspect Gland"],
    ["step install Hood step inspect Gland"],
    // Behind two covers, both are told.
    ["step install Gland, Hood, Cap step clean Gland", "order.enclosed: clean Gland", "order.enclosed: clean Gland"],
    // On the bench, with another part, neither is in.
    ["step install Hood on Base step install Gland step clean Gland"],
    ["step install Gland on Base step install Hood step clean Gland"],
    ["step install Gland on Base step install Hood step inspect Gland"],
    // Only the one that is enclosed.
    ["step install Seal[1], Seal[2], Hood step clean Seal[1]"],
    ["step install Seal[1], Seal[2], Hood step clean Seal[2]", "order.enclosed: clean Seal[2]"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test.each(["clean", "inspect", "remove", "lubricate"])("says behind what, and since when: %s", (verb) => {
    const rest = verb === "lubricate" ? " with Oil" : "";
    expect(
      whole(
        `begin with Seal[2] is installed step install Hood step ${verb} Seal[2]${rest} finish with Seal[2] is removed or Hood is installed`,
      ),
    ).toEqual([
      {
        kind: "enclosed",
        part: "Seal[2]",
        by: "Hood",
        verb,
        declaredAt: "Seal[2]",
        span: `${verb} Seal[2]`,
        since: { step: "1", span: "install Hood" },
      },
    ]);
  });
});

describe("under power", () => {
  const IN = "begin with Motor is installed, Fan is installed, Base is installed, Screw is tightened";
  const every = [
    "clean Motor",
    "lubricate Motor with Oil",
    "apply Oil to Motor",
    "drain Motor",
    "bleed Motor",
    "fill Motor with Oil",
    "heat Motor to 40 .. 50 °C with Heater",
    "cool Motor to 0 .. 10 °C",
    "align Motor with Base",
    "align Base with Motor",
    "remove Motor",
    "discard Motor",
    "tighten Screw",
    "loosen Screw",
    "loosen Screw by 90°",
  ];
  test.each(every)("live: %s", (action) => {
    const told = work(`${IN} step ${action}`);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^order\.energised: /);
  });
  test.each([
    "inspect Motor",
    "lift Motor with Heater",
    "support Motor with Heater",
    "set down Motor",
    "isolate Supply step restore Supply",
    "release Supply",
    "clean Base",
    "install Gland on Motor",
  ])("no work on it: %s", (action) => {
    expect(work(`${IN} step ${action}`)).toEqual([]);
  });
  test.each<Case>([
    // Put in: wherever it is. Worked on: where it is in.
    ["step install Motor", "order.energised: install Motor"],
    ["step press Motor in Base", "order.energised: press Motor"],
    ["step clean Motor"],
    ["step install Motor on Base step clean Motor", "order.energised: install Motor"],
    // Work on the bench takes nothing as off.
    ["step clean Motor step install Motor", "order.energised: install Motor"],
    // Told once, it is taken as off, and as shown to be so.
    [`${IN} step clean Motor step clean Fan`, "order.energised: clean Motor", "order.energised: clean Fan"],
    [
      `${IN} step clean Fan step clean Motor step clean Fan`,
      "order.energised: clean Fan",
      "order.energised: clean Fan",
    ],
    [
      `${IN} step isolate Supply step clean Motor step clean Motor step restore Supply`,
      "order.not-proved: clean Motor",
    ],
    [`step isolate Supply step clean Motor step install Motor step restore Supply`, "order.not-proved: install Motor"],
    // What was isolated is so still.
    [
      `${IN} step isolate Supply step clean Motor`,
      "order.left-behind: isolate Supply",
      "order.not-proved: clean Motor",
    ],
    // What work took as off nobody switched off.
    [`${IN} step clean Motor finish with Supply is live`, "order.energised: clean Motor"],
    // A restored one is live again.
    [
      `${IN} step isolate Supply step prove Supply dead step restore Supply step clean Motor`,
      "order.energised: clean Motor",
    ],
    [
      `${IN} step isolate Supply step prove Supply dead step restore Supply step isolate Supply step clean Motor step restore Supply`,
      "order.not-proved: clean Motor",
    ],
    // Off without anybody's doing is neither live nor to be proved.
    [`${IN}, Supply is isolated step clean Motor`],
    [`${IN} step A { needs Supply is isolated clean Motor }`, "order.unmet-need: Supply is isolated"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("an energy that starts off", () => {
    const text = `energy Off "supply" { voltage 400 V AC off } part Pump "pump" { driven by Off }
      procedure Work "Work" { begin with Pump is installed step clean Pump }`;
    expect(found(text)).toEqual([]);
  });

  test("says which part, which energy and since when it is live", () => {
    expect(whole(`${IN} step isolate Supply step restore Supply step A { clean Motor }`)).toEqual([
      {
        kind: "energised",
        part: "Motor",
        energy: "Supply",
        verb: "clean",
        declaredAt: "Motor",
        span: "clean Motor",
        since: { step: "2", span: "restore Supply" },
        stepSpan: "step A { clean Motor }",
      },
    ]);
    expect(whole(`in any order { step install Motor step clean Base }`)).toMatchObject([
      { kind: "energised", verb: "install", stepSpan: null, since: { step: null } },
    ]);
  });
  test("says which energy was not shown to be dead, and whether another is", () => {
    const notProved = {
      kind: "not proved",
      part: "Fan",
      energy: "Supply",
      verb: "remove",
      provesOthers: true,
      span: "remove Fan",
      since: { step: "1", span: "isolate Supply" },
      stepSpan: "step remove Fan",
    };
    const end = "step install Fan step restore Supply, Air";
    expect(whole(`${IN} step isolate Supply step isolate Air step prove Air dead step remove Fan ${end}`)).toEqual([
      notProved,
    ]);
    expect(whole(`${IN} step isolate Supply step isolate Air step remove Fan ${end}`)).toEqual([
      { ...notProved, provesOthers: false },
      { ...notProved, provesOthers: false, energy: "Air", since: { step: "2", span: "isolate Air" } },
    ]);
    // The same one, elsewhere, is no other.
    expect(
      whole(
        `${IN}, Air is isolated step isolate Supply step remove Fan step prove Supply dead step install Fan step restore Supply`,
      ),
    ).toEqual([{ ...notProved, provesOthers: false }]);
  });
});
