// `sprag explain FILE:LINE`, and the hover that shows the same. Settings: 100 lbf·in at 12 + 6 in is 66.7 lbf·in (NAVEDTRA 14315,
// fig. 3-44; read), 300 lbf·ft at 18 + 6 in is 225 lbf·ft (TM 5-3810-305-23; read). Preload: 49 lbf·in / (0.2 · 0.25 in) is 980 lbf
// (computed).
import { describe, expect, test } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver-protocol";
import { folderWith } from "#harness/command.ts";
import { withEditor } from "#harness/editor.ts";
import { plainTexts, tables } from "#harness/samples.ts";
import { linesOf } from "#syntax/lines.ts";
import { computedValues, explanationLines, openWorkspace } from "#workspace/index.ts";

const JOB = `tool Wrench "torque wrench" { torque 1 .. 900 lbf·in  arm 12 in }
tool Crowfoot "crowfoot" { offset 6 in }
part Screw "screw" { thread "1/4-20 UNC"  grade "5"  nut factor 0.2 dry }
procedure Close "Close" {
  step install Screw
  step Torque {
    clean Screw
    tighten Screw to 100 lbf·in with Wrench + Crowfoot
    takes 3 min
  }
  step tighten Screw to 49 lbf·in with Wrench
}
`;
const explain = (line: string, text = JOB) => folderWith({ "job.sprag": text }).sprag("explain", `job.sprag:${line}`);

describe("the command", () => {
  test("prints formula, what goes in, source and caution, in the writer's units", () => {
    const { status, out } = explain("8");
    expect(status).toBe(0);
    expect(out).toContain("Wrench for Screw: setting Ts = 66.67 lbf·in");
    expect(out).toContain("formula  Ts = T·L/(L + E)");
    for (const part of ["T = 100 lbf·in, torque", "L = 12 in, arm", "E = 6 in, adapter offset"])
      expect(out).toContain(part);
    expect(out).toMatch(/source {3}NAVEDTRA 14315/);
    expect(out).toContain("caution  Only for this adapter, angle and arm");
  });

  test("any line of the step will do", () => {
    expect(new Set(["6", "7", "8", "9", "10"].map((line) => explain(line).out)).size).toBe(1);
  });

  test("a preload in the writer's unit of force", () => {
    const load = /preload F = ([\d.]+) (\S+)/.exec(explain("11").out);
    expect(load?.[2]).toBe("lbf");
    expect(Number(load?.[1])).toBeGreaterThan(979.5);
    expect(Number(load?.[1])).toBeLessThan(980.5);
  });

  test("a lift: what lowers the limit of hands, what hangs on a leg; what a gas leaves of the oxygen", () => {
    const text = `tool Hoist "hoist" { lifts 250 kg }
part Frame "frame" { mass 200 kg }
part Box "box" { mass 9 kg }
consumable Nitrogen "liquid nitrogen" { expands 694 }
procedure Move {
  room 60 m³
  step lift Frame with Hoist on 4 legs at 45°
  step lift Box by hand reach 40 cm
  step fill Box with 10 L of Nitrogen
}
`;
    // 200 kg/(2·sin 45°), 23 kg·25/40, 20.9 %·(1 − 6.94/60): computed by hand.
    expect(explain("7", text).out).toMatch(/load on one leg m1 = 141\.\d kg\n +formula +m1 = m\/\(2·sin θ\)/);
    const hands = explain("8", text).out;
    expect(hands).toMatch(/mass for one person m = at most 14\.3 kg\n +formula +m = LC·25\/H\n/);
    expect(hands).toContain("H = 40 cm, reach");
    const oxygen = explain("9", text).out;
    expect(oxygen).toMatch(/oxygen left x = 18\.5 %/);
    expect(oxygen).toContain("entry is never cleared by a computation");
  });

  test("a published setting in feet", () => {
    const text = JOB.replace("arm 12 in", "arm 18 in")
      .replace("100 lbf·in", "300 lbf·ft")
      .replace("900 lbf·in", "900 lbf·ft");
    expect(explain("8", text).out).toMatch(/setting Ts = 225(\.0+)? lbf·ft/);
  });

  test("a line without any says so, and where there are some", () => {
    expect(explain("5")).toMatchObject({
      status: 0,
      out: "Nothing is worked out at line 5. See lines 8, 11.\n",
    });
    expect(explain("1", 'part Cover "cover"\n').out).toContain("Nothing is worked out in job.sprag.");
  });

  test.each([
    ["13", "job.sprag has 12 lines, and so no line 13."],
    ["0", "“0” is no line."],
    ["x", "“x” is no line."],
    ["", "“” is no line."],
    ["-1", "“-1” is no line."],
  ])("refuses line “%s”", (line, sentence) => {
    const { status, out, err } = explain(line);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toContain(sentence);
  });

  /** Of two ways only one takes the adapter. */
  const ASKED = JOB.replace("tool Wrench", 'option Way "way" { Long Short }\ntool Wrench').replace(
    "    tighten Screw to 100 lbf·in with Wrench + Crowfoot\n",
    "    when Way is Long {\n      tighten Screw to 100 lbf·in with Wrench + Crowfoot\n    }\n",
  );

  test("what a choice leaves out is not worked out", () => {
    const job = folderWith({ "job.sprag": ASKED });
    const ofWay = (...set: string[]): string => job.sprag("explain", "job.sprag:9", ...set).out;
    expect(ofWay()).toContain("setting Ts = 66.67 lbf·in");
    expect(ofWay("--set", "Way=Long")).toBe(ofWay());
    expect(ofWay("--set", "Way=Short")).toBe("Nothing is worked out at line 9. See line 14.\n");
    expect(job.sprag("explain", "job.sprag:9", "--set", "Way=Short", "--format", "json").out).toBe(
      '{\n  "version": 1,\n  "path": "job.sprag",\n  "line": 9,\n  "values": [],\n  "elsewhere": [\n    14\n  ]\n}\n',
    );
  });

  test.each([
    [["job.sprag:9", "--set", "Wya=Long"], "no option is called Wya. Nearest: Way."],
    [["job.sprag:9", "--format", "xml"], "--format cannot be “xml”."],
    [["order.enclosed", "--format", "json"], "--format json and --set go with FILE:LINE"],
    [["--set", "Way=Long"], "--format json and --set go with FILE:LINE"],
  ])("refuses %j", (given, sentence) => {
    const { status, out, err } = folderWith({ "job.sprag": ASKED }).sprag("explain", ...given);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toContain(sentence);
  });

  test("refuses a file that is not there", () => {
    const { status, err } = folderWith({}).sprag("explain", "nothing.sprag:3");
    expect(status).toBe(2);
    expect(err).toContain("nothing.sprag is not there.");
  });
});

/* The design's sample (60 mm, 36 + 15 µm, 11.7 µm/(m·K)): 97.7 °C with the inner at 25 °C; 0.2 K/s over 40 s are 8 K. */
const FIT = `tool Heater "heater" { heats to 300 °C }
tool Hoist "hoist" { lifts 250 kg }
material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
part Shaft "shaft" { material Steel  mass 64 kg }
part Bearing "bearing" { material Steel  mass 3 .. 3.5 kg  cools 0.2 K/s }
fit Bearing over Shaft { diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm }
procedure FitBearing "fit the bearing" {
  ambient 15 .. 25 °C
  crew 2
  begin with Shaft is installed
  step HeatBearing {
    heat Bearing to 110 .. 120 °C with Heater
  }
  step Slide {
    install Bearing over Shaft
    within 40 s after HeatBearing
    takes 30 s
  }
  step remove Shaft
  step lift Shaft with Hoist
  step set down Shaft
  step lift Shaft by hand
}
`;

describe("a hot fit and what is lifted", () => {
  const job = (line: number, text = FIT): string =>
    folderWith({ "job.sprag": text }).sprag("explain", `job.sprag:${line}`).out;

  test("what is left of the heat, the clearance, and the temperature at the heater", () => {
    const out = job(15);
    expect(out).toContain("Bearing over Shaft: temperature after the time T = at least 102 °C");
    expect(out).toContain("t = 40 s, time");
    expect(out).toContain("Bearing over Shaft: least clearance c = ");
    expect(out).toContain("Bearing over Shaft: temperature at the heater T0 = at least 105.7 °C");
    expect(out).toContain("formula  T0 = 20 °C + [(δ + s)/d + αi(Ti − 20 °C)]/αo + c·t");
  });

  test("the same in the other unit system: 97.65 °C and 8 K are 222.2 °F", () => {
    const inFahrenheit = FIT.replace("110 .. 120 °C", "230 .. 248 °F").replace("15 .. 25 °C", "59 .. 77 °F");
    expect(job(15, inFahrenheit)).toContain("temperature at the heater T0 = at least 222.2 °F");
  });

  test("without a loss it is the temperature at the joint", () => {
    const out = job(15, FIT.replace("  cools 0.2 K/s", ""));
    expect(out).toContain("temperature of the outer part To = at least 97.7 °C");
    expect(out).not.toContain("after the time");
  });

  test("all that hangs, each at its high end, beside what the hoist lifts", () => {
    const out = job(20);
    expect(out).toContain("Hoist for Shaft: mass that hangs m = 67.5 kg");
    expect(out).toContain("formula  m = m1 + m2, at most C");
    for (const term of ["m1 = 64 kg, mass of Shaft", "m2 = 3 .. 3.5 kg, mass of Bearing", "C = 250 kg, limit of Hoist"])
      expect(out).toContain(term);
  });

  test("by hand, beside what the crew may lift", () => {
    const out = job(22, FIT.replace("mass 64 kg", "mass 20 kg"));
    expect(out).toContain("Shaft by hand: limit for the crew m = at most 46 kg");
    expect(out).toContain("formula  m = 2·m1");
    expect(out).toContain("Shaft by hand: mass that hangs m = 23.5 kg");
  });

  test("with a tool that says nothing of what it lifts, the mass alone", () => {
    const out = job(20, FIT.replace(" { lifts 250 kg }", ""));
    expect(out).toContain("Shaft: mass that hangs m = 67.5 kg\n  formula  m = m1 + m2\n");
  });
});

test("hover and command show the same lines, for every value of every sample", async () => {
  const files = Object.fromEntries(plainTexts);
  const texts = new Map([...plainTexts, ...tables]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const folder = folderWith({ ...files, ...Object.fromEntries(tables) });
  let compared = 0;
  await withEditor(
    { files: { ...files, ...Object.fromEntries(tables) }, settings: { checkFolder: false } },
    async (editor) => {
      for (const [path, text] of plainTexts) {
        const values = computedValues(workspace, path);
        if (values.length === 0) continue;
        const { uri } = await editor.open(path);
        for (const { of, line, explanation } of values) {
          const position = linesOf(text).range(line.start, line.end).start;
          const answer = await editor.connection.sendRequest<Hover | null>("textDocument/hover", {
            textDocument: { uri },
            position,
          });
          const printed = folder.sprag("explain", `${path}:${position.line + 1}`).out;
          const wanted = explanationLines(explanation, of).join("\n");
          expect((answer?.contents as MarkupContent | undefined)?.value).toContain(wanted);
          expect(printed).toContain(wanted);
          compared++;
        }
        await editor.close(path);
      }
    },
  );
  console.info(`explained values: ${compared} compared between hover and command`);
  expect(compared).toBeGreaterThan(20);
}, 60_000);
