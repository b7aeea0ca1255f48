// limits.overheat, no-heat-limit and flash-point, whole: whose limit it is, as what it is hot, and what is offered; and how much is
// left to each limit. From 15 K under the flash point an error, from 16.7 K (30 °F) a warning (29 CFR 1910.106(a)(19), read).
import { describe, expect, test } from "vitest";
import { limitFacts, limitsAt, marginsOf } from "./whole-limits.ts";

interface Shop {
  readonly bearing?: string;
  readonly shaft?: string;
  readonly grease?: string;
  readonly head?: string;
}
const job = (
  steps: string,
  { bearing = "heat limit 120 °C", shaft = "", grease = "", head = "" }: Shop = {},
): string => `option On { yes no }
tool Heater "heater" { heats to 900 °C }
material Steel "steel" { heat limit 200 °C }
consumable Grease "grease" { ${grease} }
part Bearing[1..2] "bearing" { ${bearing} }
part Shaft "shaft" { ${shaft} }
fit Bearing over Shaft { diameter 60 mm  interference 0 .. 0 µm }
procedure Warm {
  ${head}
  ${steps}
}`;
const HEAT = (range: string): string => `step heat Bearing[1] to ${range} with Heater\n`;
const over = (more: object) => ({ kind: "overheat", part: "Bearing[1]", ...more });

describe("whose limit it is", () => {
  test.each<[title: string, steps: string, shop: Shop, facts: readonly object[]]>([
    [
      "the part's own",
      HEAT("110 .. 130 °C"),
      { bearing: "material Steel  heat limit 120 °C" },
      [
        over({
          ...{ of: "Bearing", as: "part", hottest: "130 °C", limit: "120 °C", declaredAt: "120 °C" },
          ...{ span: "110 .. 130 °C", instead: { span: "110 .. 130 °C", text: "110 .. 120 °C" } },
        }),
      ],
    ],
    [
      "its material's",
      HEAT("190 .. 210 °C"),
      { bearing: "material Steel" },
      [
        over({
          ...{ of: "Steel", as: "material", hottest: "210 °C", limit: "200 °C", declaredAt: "200 °C" },
          ...{ span: "190 .. 210 °C", instead: { span: "190 .. 210 °C", text: "190 .. 200 °C" } },
        }),
      ],
    ],
    [
      "of what it touches",
      `step install Shaft\nstep install Bearing[1] over Shaft\n${HEAT("100 .. 118 °C")}`,
      { shaft: "heat limit 110 °C" },
      [
        over({
          ...{ of: "Shaft", as: "mate", hottest: "118 °C", limit: "110 °C", declaredAt: "110 °C" },
          ...{ span: "100 .. 118 °C", instead: { span: "100 .. 118 °C", text: "100 .. 110 °C" } },
        }),
      ],
    ],
    [
      "of what is on it",
      `step apply Grease to Bearing[1]\n${HEAT("100 .. 118 °C")}`,
      { grease: "heat limit 110 °C" },
      [
        over({
          ...{ of: "Grease", as: "consumable", hottest: "118 °C", limit: "110 °C", declaredAt: "110 °C" },
          ...{ span: "100 .. 118 °C", instead: { span: "100 .. 118 °C", text: "100 .. 110 °C" } },
        }),
      ],
    ],
    [
      "of what it touches no more",
      `step install Shaft\nstep install Bearing[1] over Shaft\nstep remove Bearing[1]\n${HEAT("100 .. 118 °C")}`,
      { shaft: "heat limit 110 °C" },
      [],
    ],
    [
      "of what another one touches",
      `step install Shaft\nstep install Bearing[2] over Shaft\n${HEAT("100 .. 118 °C")}`,
      { shaft: "heat limit 110 °C" },
      [],
    ],
    [
      "of what is on another one",
      `step apply Grease to Bearing[2]\n${HEAT("100 .. 118 °C")}`,
      { grease: "heat limit 110 °C" },
      [],
    ],
    [
      "of what was cleaned off",
      `step apply Grease to Bearing[1]\nstep clean Bearing[1]\n${HEAT("100 .. 118 °C")}`,
      { grease: "heat limit 110 °C" },
      [],
    ],
    ["just the limit", HEAT("100 .. 120 °C"), {}, []],
    ["no upper end is said", HEAT("at least 100 °C"), {}, []],
    ["a cold part bears what it bears", "step cool Bearing[1] to 130 .. 140 °C\n", {}, []],
  ])("%s", (_title, steps, shop, facts) => {
    expect(limitFacts(job(steps, shop))).toEqual(facts);
  });

  test("several at once, each by itself; the lowest end of a limit counts", () => {
    const steps = `step install Shaft\nstep install Bearing[1] over Shaft\nstep lubricate Bearing[1] with Grease\n${HEAT("100 .. 130 °C")}`;
    const shop = { bearing: "heat limit 120 .. 140 °C", shaft: "heat limit 110 °C", grease: "heat limit 90 °C" };
    expect(limitFacts(job(steps, shop))).toMatchObject([
      { as: "part", limit: "120 .. 140 °C" },
      { as: "mate", limit: "110 °C" },
      // All of the range is above it: there is nothing to lower it to.
      { as: "consumable", limit: "90 °C", instead: null },
    ]);
  });

  test("for the choice that puts it on", () => {
    const steps = `when On is yes { step apply Grease to Bearing[1] }\n${HEAT("100 .. 118 °C")}`;
    expect(limitFacts(job(steps, { grease: "heat limit 110 °C" }))).toMatchObject([
      { as: "consumable", options: [{ On: "yes" }] },
    ]);
  });

  test("what could not be read says nothing: the part, its material, what it touches, what is on it", () => {
    const on = `step install Shaft\nstep install Bearing[1] over Shaft\nstep lubricate Bearing[1] with Grease\n${HEAT("100 .. 130 °C")}`;
    const codes = (shop: Shop): readonly string[] => limitsAt(job(on, shop), { damaged: true });
    expect(codes({ bearing: "heat limit 120 °C  mass" })).toEqual([]);
    expect(codes({ bearing: "heat limit 150 °C", shaft: "heat limit 110 °C  mass" })).toEqual([]);
    expect(codes({ bearing: "heat limit 150 °C", grease: "heat limit 110 °C  flash point" })).toEqual([]);
    const material = job(HEAT("190 .. 210 °C"), { bearing: "material Steel" });
    expect(limitsAt(material)).toEqual(["overheat: 190 .. 210 °C"]);
    expect(limitsAt(material.replace("heat limit 200 °C", "heat limit 200 °C  expansion"), { damaged: true })).toEqual(
      [],
    );
  });
});

describe("no limit is known", () => {
  const found = (bearing: string, steps = HEAT("100 .. 110 °C")): readonly object[] =>
    limitFacts(job(steps, { bearing }));
  test("of neither the part nor its material, at the action", () => {
    expect(found("mass 2 kg")).toEqual([{ kind: "no heat limit", part: "Bearing[1]", span: "heat Bearing[1]" }]);
    expect(found("material Steel")).toEqual([]);
    expect(found("heat limit 200 °C")).toEqual([]);
    expect(found("mass 2 kg", "step cool Bearing[1] to 0 .. 10 °C\n")).toEqual([]);
  });
  test("once for all of a set", () => {
    expect(found("mass 2 kg", "step heat Bearing[all] to 100 .. 110 °C with Heater\n")).toEqual([
      { kind: "no heat limit", part: "Bearing[1]", also: ["Bearing[2]"], span: "heat Bearing[all]" },
    ]);
  });
});

describe("how hot it gets", () => {
  test.each<[title: string, steps: string, head: string, hottest: string | null]>([
    // 25 °C at most in the shop, and 96 K.
    ["by a rise", "step heat Bearing[1] by 96 K with Heater\n", "ambient 15 .. 25 °C", "121 °C"],
    ["by a rise that is just borne", "step heat Bearing[1] by 95 K with Heater\n", "ambient 15 .. 25 °C", null],
    ["by the upper end of a rise", "step heat Bearing[1] by 80 .. 96 K with Heater\n", "ambient 15 .. 25 °C", "121 °C"],
    ["no shop is said: 20 °C", "step heat Bearing[1] by 101 K with Heater\n", "", "121 °C"],
    ["from what it has", `${HEAT("80 .. 90 °C")}step heat Bearing[1] by 31 K with Heater\n`, "", "121 °C"],
    // 45 °F are 25 K: 90 °C and 25 K.
    ["in the other unit", `${HEAT("80 .. 90 °C")}step heat Bearing[1] by 55.8 °F with Heater\n`, "", "249.8 °F"],
    ["without an upper end nobody knows", "step heat Bearing[1] by at least 300 K with Heater\n", "", null],
    [
      "after one without an upper end nobody knows either",
      `${HEAT("at least 80 °C")}step heat Bearing[1] by 300 K with Heater\n`,
      "",
      null,
    ],
    ["in kelvin, told in degrees", HEAT("380 .. 394.15 K"), "", "121 °C"],
  ])("%s", (_title, steps, head, hottest) => {
    const found = limitFacts(job(steps, { head })).map((fact) => (fact as { hottest: string }).hottest);
    expect(found).toEqual(hottest === null ? [] : [hottest]);
  });

  test("by a rise nothing is offered, nor for one value, or one end", () => {
    for (const step of ["by 120 K", "to 130 °C", "to at most 130 °C", "to 130 ± 5 °C"])
      expect(limitFacts(job(`step heat Bearing[1] ${step} with Heater\n`))).toMatchObject([
        { kind: "overheat", span: step.slice(3), instead: null },
      ]);
  });

  test("what is offered ends at the limit, in the degrees of the limit, rounded so that it is kept", () => {
    const offered = (range: string, limit: string): unknown => {
      const [found] = limitFacts(job(HEAT(range), { bearing: `heat limit ${limit}` }));
      return (found as { instead: { text: string } | null }).instead?.text ?? null;
    };
    expect(offered("110 .. 130 °C", "120 °C")).toBe("110 .. 120 °C");
    // Nothing would be left of the range.
    expect(offered("120 .. 130 °C", "120 °C")).toBe(null);
    expect(offered("119 .. 130 °C", "120 °C")).toBe("119 .. 120 °C");
    expect(offered("110 .. 130 °C", "at most 120 °C")).toBe("110 .. 120 °C");
    // 250 °F are 121.1 °C (29 CFR 1910.106(a)(19), read).
    expect(offered("110 .. 130 °C", "250 °F")).toBe("110 °C .. 250 °F");
  });
});

describe("a flash point", () => {
  const ON = "step apply Grease to Bearing[1]\n";
  const flash = (range: string, grease: string, bearing = "heat limit 900 °C"): readonly object[] =>
    limitFacts(job(`${ON}${HEAT(range)}`, { grease, bearing }));
  const common = { kind: "flash point", part: "Bearing[1]", consumable: "Grease", since: "apply Grease to Bearing[1]" };
  test("whole: reached from 15 K under it, near from 16.7 K", () => {
    const place = { span: "heat Bearing[1]", flashPoint: "100 °C", declaredAt: "100 °C" };
    // 100 °C less 16.7 K.
    const most = "at most 83.3 °C";
    expect(flash("60 .. 85 °C", "flash point 100 °C")).toEqual([
      { ...common, ...place, how: "reached", hottest: "85 °C", most },
    ]);
    expect(flash("60 .. 84 °C", "flash point 100 °C")).toEqual([
      { ...common, ...place, how: "near", hottest: "84 °C", most },
    ]);
    expect(flash("60 .. 83 °C", "flash point 100 °C")).toEqual([]);
  });
  test("in the other unit; the lowest value that is given counts", () => {
    // 212 °F less 16.7 K, which are 30.06 °F.
    expect(flash("140 .. 184 °F", "flash point 212 °F")).toMatchObject([
      { how: "near", hottest: "184 °F", most: "at most 181.9 °F" },
    ]);
    expect(flash("60 .. 85 °C", "flash point 100 .. 200 °C")).toMatchObject([{ how: "reached" }]);
    expect(flash("60 .. 85 °C", "flash point at least 100 °C")).toMatchObject([{ how: "reached" }]);
  });
  test("both at once: its heat limit and its flash point", () => {
    expect(
      flash("60 .. 95 °C", "flash point 100 °C  heat limit 90 °C")
        .map((fact) => (fact as { kind: string }).kind)
        .sort(),
    ).toEqual(["flash point", "overheat"]);
  });
  test("without a flash point nothing is said, nor of one that could not be read", () => {
    expect(flash("60 .. 95 °C", "")).toEqual([]);
    const hurt = job(`${ON}${HEAT("60 .. 95 °C")}`, {
      grease: "flash point 100 °C  density",
      bearing: "heat limit 900 °C",
    });
    expect(limitFacts(hurt, { damaged: true })).toEqual([]);
  });
  test("lubricated with it, too; for the choice that does so", () => {
    const steps = `when On is yes { step lubricate Bearing[1] with Grease }\n${HEAT("60 .. 95 °C")}`;
    expect(limitFacts(job(steps, { grease: "flash point 100 °C", bearing: "heat limit 900 °C" }))).toMatchObject([
      { how: "reached", since: "lubricate Bearing[1]", options: [{ On: "yes" }] },
    ]);
  });
});

describe("how much is left to each limit", () => {
  test("in kelvin for each limit that is looked at, kept or not; below zero where it is passed", () => {
    const steps = `step install Shaft\nstep install Bearing[1] over Shaft\nstep lubricate Bearing[1] with Grease\n${HEAT("100 .. 115 °C")}`;
    const shop = { bearing: "heat limit 120 °C", shaft: "heat limit 130 °C", grease: "heat limit 110 °C" };
    expect(marginsOf(job(steps, shop))).toEqual([
      "4: heat Bearing of Bearing 5 K",
      "4: heat Bearing of Shaft 15 K",
      "4: heat Bearing of Grease -5 K",
    ]);
  });
  test("in °F where the limit is", () => {
    expect(marginsOf(job(HEAT("200 .. 230 °F"), { bearing: "heat limit 250 °F" }))).toEqual([
      "1: heat Bearing of Bearing 20 °F",
    ]);
  });
  test("of each step the least, of all ways and of all instances; each step by itself", () => {
    const steps = `${HEAT("80 .. 90 °C")}when On is yes { step heat Bearing[1] to 90 .. 100 °C with Heater }
step { heat Bearing[1] by 5 K with Heater }
step { heat Bearing[1] to 80 .. 90 °C with Heater heat Bearing[2] to 80 .. 95 °C with Heater }
step { heat Bearing[1] to 80 .. 96 °C with Heater heat Bearing[2] to 80 .. 90 °C with Heater }\n`;
    expect(marginsOf(job(steps))).toEqual([
      "1: heat Bearing of Bearing 30 K",
      "2: heat Bearing of Bearing 20 K",
      // 90 or 100 °C, and 5 K.
      "3: heat Bearing of Bearing 15 K",
      "4: heat Bearing of Bearing 25 K",
      "5: heat Bearing of Bearing 24 K",
    ]);
  });
  test("nothing where no limit is known", () => {
    expect(marginsOf(job(HEAT("100 .. 110 °C"), { bearing: "mass 2 kg" }))).toEqual([]);
  });
});
