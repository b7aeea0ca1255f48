// limits.too-cool-to-fit, whole: which fits are looked at, which heating is meant, what is left of the heat, and what is offered.
// The contract's sample (engineering.md): 60 mm, 36 + 15 µm, 11.7 µm/(m·K): 97.7 °C with the inner at 25 °C. 51 µm of 60 mm with
// 11.7 µm/(m·K) are 72.65 K; the bore grows 0.702 µm for each kelvin.
import { describe, expect, test } from "vitest";
import { leftOut, limitFacts, limitsAt, workedOut } from "./whole-limits.ts";

const SHOP = `option Twice { yes no }
tool Heater "heater" { heats to 300 °C }
material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
material Brass "brass"
part Shaft "shaft" { material Steel }
part Housing "housing" { material Steel }
part Gear "gear" { material Steel }
`;
const FIT = "diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm";
const job = (
  steps: string,
  { bearing = "", fit = FIT, ambient = "ambient 15 .. 25 °C", more = "" } = {},
): string => `${SHOP}part Bearing "bearing" { material Steel ${bearing} }
fit Bearing over Shaft { ${fit} }
${more}
procedure FitBearing {
  ${ambient}
  ${steps}
}`;
const HOT = (range: string): string => `step Hot { heat Bearing to ${range} with Heater }\n`;
const ONTO = "step install Shaft\n";
const JOIN = "step install Bearing over Shaft\n";
const common = {
  ...{ kind: "too cool to fit", how: "heated", part: "Bearing", mate: "Shaft", wanted: "51 µm" },
  ...{ lost: false, cooling: null, ambientTaken: false, installAt: "install Bearing", fitAt: "Bearing over Shaft" },
  explanation: expect.stringContaining("αo"),
};

test("too cool, whole: how much the bore grows from 20 °C, what is wanted, and the range moved up as wide as it was", () => {
  // 75 °C: 55 K and 38.6 µm more bore, less 3.51 µm that the shaft is larger at 25 °C.
  expect(limitFacts(job(ONTO + HOT("75 .. 85 °C") + JOIN))).toEqual([
    {
      ...common,
      ...{ temperature: "75 °C", growth: "35.1 µm", needed: "at least 97.7 °C", span: "75 .. 85 °C" },
      instead: { span: "75 .. 85 °C", text: "97.7 .. 107.7 °C" },
    },
  ]);
});

describe("the range that is offered", () => {
  const offered = (range: string, bearing = ""): unknown => {
    const [found] = limitFacts(job(ONTO + HOT(range) + JOIN, { bearing }));
    return (found as { instead: { text: string } | null } | undefined)?.instead?.text ?? null;
  };
  test.each<[range: string, text: string | null]>([
    // It keeps a high end that is high enough.
    ["75 .. 120.5 °C", "97.7 .. 120.5 °C"],
    ["75 .. 97 °C", "97.7 .. 119.7 °C"],
    // 97.65 °C are 207.77 °F.
    ["170 .. 190 °F", "207.8 .. 227.8 °F"],
    ["at least 75 °C", null],
    ["75 °C", null],
    ["75 ± 5 °C", null],
  ])("for %s", (range, text) => {
    expect(offered(range)).toBe(text);
  });
  test.each<[limit: string, text: string | null]>([
    // What the part does not bear is not offered: its own limit goes before its material's.
    ["heat limit 107 °C", null],
    ["heat limit 107.7 °C", "97.7 .. 107.7 °C"],
    ["heat limit 350 °C", "97.7 .. 107.7 °C"],
  ])("with a %s", (limit, text) => {
    expect(offered("75 .. 85 °C", limit)).toBe(text);
  });
  test("its material's limit counts where it has none of its own", () => {
    const text = job(ONTO + HOT("75 .. 85 °C") + JOIN).replace("heat limit 300 °C", "heat limit 100 °C");
    expect(limitFacts(text)).toMatchObject([{ kind: "too cool to fit", needed: "at least 97.7 °C", instead: null }]);
  });
});

test("in the writer's degrees: those of the range, or of its system where it is none", () => {
  const shown = (step: string): unknown => {
    const [found] = limitFacts(job(ONTO + step + JOIN));
    const { temperature, needed } = found as { temperature: string; needed: string };
    return [temperature, needed];
  };
  expect(shown(HOT("170 .. 180 °F"))).toEqual([expect.stringMatching(/^170(?:\.0)? °F$/), "at least 207.8 °F"]);
  expect(shown(HOT("343.15 .. 350 K"))).toEqual([expect.stringMatching(/^70(?:\.0)? °C$/), "at least 97.7 °C"]);
  // 15 °C and 40 K, which are 72 °F.
  expect(shown("step heat Bearing by 72 °F with Heater\n")).toEqual([
    expect.stringMatching(/^131(?:\.0)? °F$/),
    "at least 207.8 °F",
  ]);
  expect(shown("step heat Bearing by 40 K with Heater\n")).toEqual(["55 °C", "at least 97.7 °C"]);
});

describe("which fits close", () => {
  const HOUSING = "fit Housing over Bearing { diameter 100 mm  interference 5 .. 20 µm }";
  test.each<[title: string, steps: string, found: readonly string[]]>([
    ["over the mate", ONTO + HOT("75 .. 85 °C") + JOIN, ["75 .. 85 °C"]],
    [
      "with nothing said, to the mate that is in",
      `${ONTO}${HOT("75 .. 85 °C")}step install Bearing\n`,
      ["75 .. 85 °C"],
    ],
    ["with nothing said, and the mate not in", `${HOT("75 .. 85 °C")}step install Bearing\n`, []],
    ["into something else", `${ONTO}step install Gear\n${HOT("75 .. 85 °C")}step install Bearing in Gear\n`, []],
    [
      "the mate came along on it",
      `step install Shaft in Bearing\n${HOT("75 .. 85 °C")}step install Bearing in Gear\n`,
      [],
    ],
    [
      "the mate came along, and nothing is said",
      `step install Shaft in Bearing\n${HOT("75 .. 85 °C")}step install Bearing\n`,
      [],
    ],
    // Of two fits only the one that is named: a cold bearing would be for the housing.
    [
      "cold, over the shaft",
      `${ONTO}step install Housing\nstep cool Bearing to 10 .. 14 °C\nstep install Bearing over Shaft\n`,
      [],
    ],
    [
      "cold, into the housing",
      `${ONTO}step install Housing\nstep cool Bearing to 10 .. 14 °C\nstep install Bearing in Housing\n`,
      ["10 .. 14 °C"],
    ],
  ])("%s", (_title, steps, spans) => {
    const found = limitFacts(job(steps, { more: HOUSING }));
    expect(found.map((fact) => (fact as { span: string }).span)).toEqual(spans);
  });

  test("of numbered parts the one that it goes over", () => {
    const text = (onto: string): string => `${SHOP}part Pin[1..2] "pin" { material Steel }
part Bush[1..2] "bush" { material Steel }
fit Bush over Pin { ${FIT} }
procedure FitBush {
  ambient 15 .. 25 °C
  step install Pin[all]
  step heat Bush[1] to 75 .. 85 °C with Heater
  step install Bush[1] over ${onto}
}`;
    for (const onto of ["Pin[1]", "Pin[2]"])
      expect(limitFacts(text(onto))).toMatchObject([{ kind: "too cool to fit", part: "Bush[1]", mate: onto }]);
  });
});

describe("which heating is meant", () => {
  test.each<[title: string, steps: string, span: string | null]>([
    ["the last of the part", `${HOT("60 .. 65 °C")}step heat Bearing to 75 .. 85 °C with Heater\n`, "75 .. 85 °C"],
    ["not that of another part", `${HOT("75 .. 85 °C")}step heat Gear to 60 .. 65 °C with Heater\n`, "75 .. 85 °C"],
    ["one of several in a line", "step heat Gear, Bearing to 75 .. 85 °C with Heater\n", "75 .. 85 °C"],
    // After a wait the part may be as cool as the shop, by whatever line it was heated.
    [
      "the last before it, where the state came of a wait",
      `${HOT("130 .. 140 °C")}step heat Gear to 60 .. 65 °C with Heater\nstep wait 10 min\n`,
      "130 .. 140 °C",
    ],
    ["none that comes later", `${HOT("98 .. 110 °C")}`, null],
  ])("%s", (_title, steps, span) => {
    const text = job(`${ONTO}${steps}${JOIN}step remove Bearing\nstep heat Bearing to 50 .. 55 °C with Heater\n`);
    expect(limitFacts(text).map((fact) => (fact as { span: string }).span)).toEqual(span === null ? [] : [span]);
  });

  test("each for its own choice", () => {
    const text = job(
      `${ONTO}${HOT("75 .. 85 °C")}when Twice is yes { step heat Bearing to 80 .. 90 °C with Heater }\n${JOIN}`,
    );
    expect(limitFacts(text)).toMatchObject([
      { kind: "too cool to fit", span: "75 .. 85 °C", options: [{ Twice: "no" }], temperature: "75 °C" },
      { kind: "too cool to fit", span: "80 .. 90 °C", options: [{ Twice: "yes" }], temperature: "80 °C" },
    ]);
  });

  test("each mate of a part by itself", () => {
    const more = `fit Bearing over Gear { ${FIT} }`;
    const text = job(`${ONTO}step install Gear\n${HOT("75 .. 85 °C")}step install Bearing\n`, { more });
    expect(limitFacts(text)).toMatchObject([{ mate: "Shaft" }, { mate: "Gear" }]);
  });
});

describe("what is left of the heat", () => {
  // 0.1 K/s.
  const COOLS = "cools 0.1 K/s";
  const kept = (hot: string, after: string, steps = ""): readonly (readonly [string, unknown])[] =>
    limitFacts(job(`${ONTO}${hot}${steps}${after}`, { bearing: COOLS })).map((fact) => {
      const { temperature, cooling } = fact as { temperature: string; cooling: unknown };
      return [temperature, cooling] as const;
    });
  const HEAT = HOT("75 .. 85 °C");
  const rate = "0.1 K/s";
  test.each<[title: string, after: string, steps: string, kelvin: string, seconds: number]>([
    ["nothing is said of time", JOIN, "", "75 °C", 0],
    ["by what the step takes", "step { install Bearing over Shaft takes 30 s }", "", "72 °C", 30],
    [
      "by what lies between",
      "step { install Bearing over Shaft takes 30 s }",
      "step { inspect Gear takes 1 min }\n",
      "66 °C",
      90,
    ],
    [
      "the limit goes before the times",
      "step { install Bearing over Shaft takes 30 s within 60 s after Hot }",
      "",
      "69 °C",
      60,
    ],
    [
      "a limit from another step does not",
      "step { install Bearing over Shaft takes 30 s within 90 s after Look }",
      "step Look { inspect Gear takes 10 s }\n",
      "71 °C",
      40,
    ],
    ["the longest time that is said", "step { install Bearing over Shaft takes 20 .. 50 s }", "", "70 °C", 50],
    // Never below the shop.
    ["an hour", "step { install Bearing over Shaft takes 1 h }", "", "15 °C", 3600],
  ])("%s", (_title, after, steps, temperature, seconds) => {
    expect(kept(HEAT, after, steps)).toEqual([[temperature, { seconds, rate }]]);
  });

  test("in one step nothing lies between", () => {
    expect(kept("", "step { heat Bearing to 75 .. 85 °C with Heater install Bearing over Shaft takes 5 min }")).toEqual(
      [["75 °C", { seconds: 0, rate }]],
    );
  });

  test("what a step wants of the part before it goes on holds, too", () => {
    const wants = "step { needs Bearing is at least 80 °C install Bearing over Shaft }";
    const [[temperature] = []] = kept(HOT("60 .. 90 °C"), wants);
    expect(temperature).toBe("80 °C");
  });

  test("in the other unit: 0.18 °F/s is 0.1 K/s, and 167 °F are 75 °C", () => {
    const text = job(`${ONTO}${HOT("167 .. 185 °F")}step { install Bearing over Shaft takes 30 s }`, {
      bearing: "cools 0.18 °F/s",
    });
    expect(limitFacts(text)).toMatchObject([
      { temperature: "161.6 °F", cooling: { seconds: 30, rate: "0.18 °F/s" }, needed: "at least 213.2 °F" },
    ]);
  });

  test("what is needed at the heater is so much more; it is worked out and shown", () => {
    // 97.65 °C and 3 K.
    const text = job(`${ONTO}${HEAT}step { install Bearing over Shaft takes 30 s }`, { bearing: COOLS });
    expect(limitFacts(text)).toMatchObject([{ needed: "at least 100.7 °C" }]);
    const worked = workedOut(text);
    expect(worked).toHaveLength(4);
    expect(worked.every((one) => one.startsWith("3: Bearing over Shaft @ install Bearing: "))).toBe(true);
    expect(worked[0]).toContain("72 °C");
    expect(worked[2]).toContain("100.7 °C");
    // So warm the shaft may be with the bearing at 72 °C: 72.65 K less.
    expect(worked[3]).toContain("-0.7 °C");
    // Without a rate there is no loss to be shown.
    expect(workedOut(job(ONTO + HEAT + JOIN))).toHaveLength(3);
  });
});

describe("cold", () => {
  const BUSH = (
    range: string,
    hot = "",
    fit = "diameter 100 mm  interference 20 .. 60 µm  slip clearance 12 µm",
  ): string => `material Bronze "bronze" { expansion 18 µm/(m·K) }
tool Heater "heater" { heats to 300 °C }
part Housing "housing" { material Bronze  heat limit 200 °C }
part Bush "bush" { material Bronze  heat limit 200 °C }
fit Housing over Bush { ${fit} }
procedure FitBush {
  begin with Housing is installed
  ${hot}
  step cool Bush to ${range}
  step install Bush in Housing
}`;
  test("whole: the room that is gained, and the range moved down as wide as it was", () => {
    // 1.8 µm for each kelvin under 20 °C: 54 µm at −10 °C, 72 µm at −20 °C.
    expect(limitFacts(BUSH("-30 .. -10 °C"))).toEqual([
      {
        ...{ kind: "too cool to fit", how: "cooled", part: "Bush", mate: "Housing", temperature: "-10 °C" },
        ...{
          growth: "54 µm",
          wanted: "72 µm",
          needed: "at most -20 °C",
          lost: false,
          cooling: null,
          ambientTaken: true,
        },
        ...{ span: "-30 .. -10 °C", installAt: "install Bush", fitAt: "Housing over Bush" },
        instead: { span: "-30 .. -10 °C", text: "-40 .. -20 °C" },
        explanation: expect.stringContaining("αo"),
      },
    ]);
  });
  test("and the outer hot: both count, each with the end that is worse", () => {
    // 30 K more outside and 10 K less inside are 72 µm.
    const hot = (range: string): string => `step heat Housing to ${range} with Heater`;
    expect(limitFacts(BUSH("0 .. 10 °C", hot("50 .. 60 °C")))).toEqual([]);
    expect(limitFacts(BUSH("0 .. 10.1 °C", hot("50 .. 60 °C")))).toMatchObject([
      { how: "heated", part: "Housing", mate: "Bush", temperature: "50 °C", span: "50 .. 60 °C" },
    ]);
    expect(limitsAt(BUSH("0 .. 10 °C", hot("49.9 .. 60 °C")))).toEqual(["too cool to fit heated: 49.9 .. 60 °C"]);
  });
  test("how cold is not said: nothing is said of it", () => {
    expect(limitFacts(BUSH("at least -30 °C"))).toEqual([]);
  });
});

describe("silent", () => {
  test.each<[title: string, settings: Parameters<typeof job>[1]]>([
    ["no interference at all", { fit: "diameter 60 mm  interference -20 .. 0 µm" }],
    ["no diameter", { fit: "interference 11 .. 36 µm" }],
    ["no interference is said", { fit: "diameter 60 mm" }],
    ["letters that are not in the table", { fit: 'diameter 60 mm  tolerance "H7/zz9"' }],
  ])("%s", (_title, settings) => {
    expect(limitFacts(job(ONTO + HOT("60 .. 65 °C") + JOIN, settings))).toEqual([]);
  });
  test("the least interference that is one", () => {
    expect(
      limitsAt(
        job(ONTO + HOT("20.5 .. 21 °C") + JOIN, {
          fit: "diameter 60 mm  interference -20 .. 1 µm",
          ambient: "ambient 20 .. 20 °C",
        }),
      ),
    ).toEqual(["too cool to fit heated: 20.5 .. 21 °C"]);
  });
  test("neither was heated or cooled: that is another matter", () => {
    expect(limitFacts(job(ONTO + JOIN))).toEqual([]);
  });
  test.each<[title: string, whole: string, broken: string]>([
    ["the fit", "slip clearance 15 µm", "slip clearance"],
    ["the part", 'part Shaft "shaft" { material Steel }', 'part Shaft "shaft" { material Steel  mass }'],
    ["its material", "heat limit 300 °C }", "heat limit °C }"],
    ["how warm the shop is", "ambient 15 .. 25 °C", "ambient 15 .. °C"],
    ["a line that may say how warm the shop is", "ambient 15 .. 25 °C", "ambeint is about 15"],
  ])("what could not be read: %s", (_title, whole, broken) => {
    const text = job(ONTO + HOT("75 .. 85 °C") + JOIN);
    expect(limitsAt(text)).toEqual(["too cool to fit heated: 75 .. 85 °C"]);
    expect(text).toContain(whole);
    expect(limitsAt(text.replace(whole, broken), { damaged: true })).toEqual([]);
  });
  test("a line that could not be read takes nothing away where the shop says how warm it is", () => {
    const text = job(`${ONTO}${HOT("75 .. 85 °C")}${JOIN}\n  nonsense`);
    expect(limitsAt(text, { damaged: true })).toEqual(["too cool to fit heated: 75 .. 85 °C"]);
  });
});

test("an expansion that is not known: of one it is taken as the other's, of both it is told", () => {
  const brass =
    (part: string) =>
    (text: string): string =>
      text.replace(
        `part ${part} "${part.toLowerCase()}" { material Steel`,
        `part ${part} "${part.toLowerCase()}" { material Brass  heat limit 200 °C`,
      );
  const text = job(ONTO + HOT("75 .. 85 °C") + JOIN);
  expect(limitFacts(brass("Shaft")(text))).toMatchObject([{ growth: "35.1 µm", needed: "at least 97.7 °C" }]);
  expect(limitFacts(brass("Bearing")(text))).toMatchObject([{ growth: "35.1 µm", needed: "at least 97.7 °C" }]);
  const both = brass("Shaft")(brass("Bearing")(text));
  expect(limitFacts(both)).toEqual([]);
  expect(leftOut(both)).toEqual(["temperature to fit | Bearing over Shaft | expansion | Bearing @ install Bearing"]);
  expect(leftOut(text)).toEqual([]);
});
