// What is measured where parts go together hot or cold. Source: engineering.md: “The output prints the highest temperature the mate may have,
// ‘measure both at contact’.” Ti = 20 °C + [αo(To − 20 °C) − (δ + s)/d]/αi; the figures are worked out by hand beside the tests.
import { describe, expect, test } from "vitest";
import { fonts } from "#harness/fonts.ts";
import { exportAs } from "#workspace/export.ts";
import { previewAs } from "#workspace/preview.ts";
import { openWorkspace } from "#workspace/workspace.ts";

const SHOP = `source Manual "pump manual" revision "9"
material Steel "carbon steel" { expansion 11.7 µm/(m·K) heat limit 200 °C per Manual "2" }
tool Heater "induction heater" { heats to 180 °C }
tool Freezer "freezer" { cools to -80 °C }
part Shaft "pump shaft" { material Steel }
part Bearing "drive-end bearing" { material Steel }
fit Bearing over Shaft { diameter 60 mm interference 11 .. 36 µm slip clearance 15 µm } per Manual "4"
`;

interface Wish {
  readonly set?: Readonly<Record<string, string>>;
  readonly as?: string;
  readonly repeats?: "compact" | "full";
  readonly language?: string;
}

/** The lines that say what is to be measured. */
function measured(text: string, { as = "checklist", repeats = "compact", ...wish }: Wish = {}): readonly string[] {
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const wishes = { format: "md", units: "si", draft: true, procedure: "P", fonts, repeats, ...wish } as const;
  const made = exportAs(workspace, { path: "main.sprag", as, ...wishes });
  if (made.kind !== "done") throw new Error(made.kind);
  return String(made.content)
    .split("\n")
    .map((line) => line.replace(/^(?:> )*\s*- /, ""))
    .filter((line) => /^(?:Measure both at contact|Beide an der)/.test(line));
}

describe("of a ring that is heated", () => {
  const P = (heat: string, more = "") =>
    `${SHOP}procedure P "Fit" { ambient 15 .. 25 °C begin with Shaft is installed step heat Bearing ${heat} with Heater${more} step install Bearing over Shaft }\n`;

  test("its mate may be so warm as leaves the clearance at the largest interference", () => {
    // engineering.md's sample the other way round: 51 µm / (60 mm · 11.7 µm/(m·K)) = 72.65 K below the bearing.
    expect(measured(P("to 102.7 .. 112 °C"))).toEqual([
      "Measure both at contact: the drive-end bearing at least 102.7 °C, the pump shaft at most 30.0 °C.",
    ]);
    // From 15 °C, the lowest ambient: 125 − 72.65.
    expect(measured(P("by 110 K"))[0]).toMatch(/bearing at least 125 °C, the pump shaft at most 52\.3 °C/);
  });

  test("also where the rings did not get hot enough, in a draft", () => {
    expect(measured(P("to 80 .. 90 °C"))[0]).toMatch(/at least 80 °C, the pump shaft at most 7\.3 °C/);
  });

  test("after what it loses on the way", () => {
    const cools = P("to 112 .. 120 °C").replace(
      '"drive-end bearing" { material Steel',
      '"drive-end bearing" { material Steel cools 0.1 K/s per Manual "4"',
    );
    const text = cools
      .replace("step heat", "step Hot { heat")
      .replace("with Heater", "with Heater }")
      .replace("step install Bearing over Shaft", "step { install Bearing over Shaft within 60 s after Hot }");
    // 112 − 6 = 106 °C; 106 − 72.65.
    expect(measured(text)[0]).toMatch(/at least 106 °C, the pump shaft at most 33\.3 °C/);
  });

  test("as hot as the step asks for, where it asks for less than there will be", () => {
    const need = (bound: string): readonly string[] =>
      measured(
        P("to 112 .. 120 °C").replace(
          "step install Bearing over Shaft",
          `step { needs Bearing is ${bound} install Bearing over Shaft }`,
        ),
      );
    // 100 − 72.65; more than it was heated to is kept, too: 115 − 72.65; else 112 − 72.65.
    expect(need("at least 100 °C")[0]).toMatch(/at least 100 °C, the pump shaft at most 27\.3 °C/);
    expect(need("at least 115 °C")[0]).toMatch(/at least 115 °C, the pump shaft at most 42\.3 °C/);
    expect(need("at most 130 °C")[0]).toMatch(/at least 112 °C, the pump shaft at most 39\.3 °C/);
  });

  test("with two materials", () => {
    const text = P("to 102.7 .. 112 °C").replace(
      'part Shaft "pump shaft" { material Steel }',
      'material Stainless "stainless steel" { expansion 16.5 µm/(m·K) }\npart Shaft "pump shaft" { material Stainless }',
    );
    // 11.7 · 82.7 − 850 = 117.59; / 16.5 = 7.127 K above 20 °C.
    expect(measured(text)[0]).toMatch(/pump shaft at most 27\.1 °C/);
  });

  test("in each unit and language it is rounded to the safe side", () => {
    const text = P("to 102.7 .. 112 °C").replaceAll("102.7 .. 112 °C", "217 .. 230 °F");
    // 217 °F = 102.78 °C; 102.78 − 72.65 = 30.13 °C.
    expect(measured(text)[0]).toMatch(/at least 102\.78 °C, the pump shaft at most 30\.12 °C/);
    expect(measured(P("to 102.7 .. 112 °C"), { language: "de" })).toEqual([
      "Beide an der Fügefläche messen: drive-end bearing mindestens 102.7 °C, pump shaft höchstens 30.0 °C.",
    ]);
  });
});

test("of a bush that is cooled it is the bush that may be so warm, in a bore at the lowest ambient", () => {
  const text = `${SHOP}part Housing "housing" { material Steel }
part Bush "guide bush" { material Steel }
fit Housing over Bush { diameter 60 mm interference 0 .. 20 µm slip clearance 10 µm }
procedure P "Fit" { ambient 15 .. 25 °C begin with Housing is installed step cool Bush to -40 .. -30 °C with Freezer step install Bush in Housing }
`;
  // 30 µm / (60 mm · 11.7 µm/(m·K)) = 42.74 K below 15 °C.
  expect(measured(text)).toEqual([
    "Measure both at contact: the housing at least 15 °C, the guide bush at most -27.8 °C.",
  ]);
});

test("parts that go together cold, or of which nothing can be worked out, say nothing", () => {
  const press = `${SHOP}procedure P "Fit" { begin with Shaft is installed step press Bearing onto Shaft }\n`;
  expect(measured(press)).toEqual([]);
  const bare = SHOP.replace("expansion 11.7 µm/(m·K) ", "");
  expect(
    measured(
      `${bare}procedure P "Fit" { begin with Shaft is installed step heat Bearing to 102 .. 112 °C with Heater step install Bearing over Shaft }\n`,
    ),
  ).toEqual([]);
});

describe("several", () => {
  const RINGS = `${SHOP}part Pin[1..3] "pin" { material Steel }
part Ring[1..3] "ring" { material Steel }
fit Ring over Pin { diameter 60 mm interference 11 .. 36 µm slip clearance 15 µm }
`;
  const body =
    'procedure P "Fit" { begin with Pin[all] are installed repeat n from 1 to 3 { step heat Ring[n] to 102.7 .. 112 °C with Heater step install Ring[n] over Pin[n] } }\n';

  test("alike say it once in a repeat, and at each pass where it is written out", () => {
    const one = "Measure both at contact: the ring at least 102.7 °C, the pin at most 30.0 °C.";
    expect(measured(RINGS + body)).toEqual([one]);
    expect(measured(RINGS + body, { repeats: "full" })).toEqual([one, one, one]);
  });
});

test("a procedure that is performed says it too", () => {
  const text = `${SHOP}procedure Fit "Fit" { begin with Shaft is installed step heat Bearing to 102.7 .. 112 °C with Heater step install Bearing over Shaft }
procedure P "Job" { begin with Shaft is installed step perform Fit }
`;
  // No ambient is said: the bearing is as it was heated, and the bound of the shaft hangs on nothing else.
  expect(measured(text)[0]).toMatch(/at least 102\.7 °C, the pump shaft at most 30\.0 °C/);
});

test("of two extents that heat otherwise the bearing is taken as cool as it may be", () => {
  const text = `${SHOP}option Way "way" { Much Little }
procedure P "Fit" { begin with Shaft is installed
  when Way is Much { step heat Bearing to 112 .. 120 °C with Heater } otherwise { step heat Bearing to 102.7 .. 110 °C with Heater }
  step install Bearing over Shaft
}
`;
  expect(measured(text)).toEqual([
    "Measure both at contact: the drive-end bearing at least 102.7 °C, the pump shaft at most 30.0 °C.",
  ]);
});

test("a trainee fills it in", () => {
  const text = `${SHOP}procedure P "Fit" { begin with Shaft is installed step heat Bearing to 102.7 .. 112 °C with Heater step install Bearing over Shaft }\n`;
  const [line] = measured(text, { as: "trainee" });
  expect(line).toContain("Measure both at contact: the drive-end bearing");
  expect(line).not.toMatch(/102\.7|30\.0/);
});

test("in a preview it stays while text is typed ahead of it, until the next check", () => {
  const text = `${SHOP}procedure P "Fit" { begin with Shaft is installed step heat Bearing to 102.7 .. 112 °C with Heater step install Bearing over Shaft }\n`;
  const open = (now: string) =>
    openWorkspace({
      texts: new Map([["main.sprag", now]]),
      present: new Set(),
      absent: new Set(),
      today: "2026-05-04",
    });
  const request = { path: "main.sprag", procedure: "P", as: "checklist", units: "si", repeats: "compact" } as const;
  const first = previewAs(open(text), request, null);
  if (first.kind !== "done") throw new Error(first.kind);
  const typed = text.replace("step heat", 'note "The heater is new." step heat');
  const second = previewAs(open(typed), request, first.checked, first.memory);
  expect(second.kind === "done" && second.content).toContain("the pump shaft at most 30.0 °C");
});
