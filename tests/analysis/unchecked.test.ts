// What could not be checked for want of data is told beside the findings, and printed on the checklist: silence is no pass.
import { expect, test } from "vitest";
import { uncheckedIn } from "#analysis/limits/limits.ts";
import { exportText } from "#harness/export.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

const open = (text: string): Workspace =>
  openWorkspace({
    texts: new Map([["main.sprag", text]]),
    present: new Set(),
    absent: new Set(),
    today: "2026-05-04",
  });

function told(text: string): readonly string[] {
  const workspace = open(text);
  const procedure = workspace.loaded.models.get("main.sprag")?.procedures[0];
  const run = procedure === undefined ? null : workspace.run(procedure);
  if (run === null) throw new Error("nothing to follow");
  return uncheckedIn(run).map(({ matter, of, lacks, when, in: holder }) =>
    [matter, of, lacks, when, holder].filter((word) => word !== null).join(" | "),
  );
}

const screw = (says: string, before = ""): string => `tool Wrench "wrench" { torque 8 .. 60 N·m }
consumable Grease "grease"
part Screw "screw" { ${says} }
procedure Close {
  step install Screw
${before}  step tighten Screw to 45 N·m with Wrench
}`;
const GREASE = "  step lubricate Screw with Grease\n";

test.each([
  ["preload | Screw | nut factor | Grease | Screw", 'thread "M10x1.5"  class "8.8"  nut factor 0.2 dry', GREASE],
  ["preload | Screw | nut factor | dry | Screw", 'thread "M10x1.5"  class "8.8"  torque 45 N·m dry', ""],
  ["preload | Screw | class or grade | Screw", 'thread "M10x1.5"  nut factor 0.2 dry', ""],
  ["preload | Screw | class or grade that is known | Screw", 'thread "M10x1.5"  class "A2-70"  nut factor 0.2 dry', ""],
  ["preload | Screw | thread that can be read | Screw", 'thread "MJ10"  class "8.8"  nut factor 0.2 dry', ""],
])("%s", (wanted, says, before) => {
  expect(told(screw(says, before))).toEqual([wanted]);
});

// One coefficient does not hold below −50 °C: 60 mm of steel at −190 °C shrink 114 µm, not 147 (memory).
test.each([
  ["-60 .. -51 °C", "", ["temperature to fit | Hub over Shaft | expansion below −50 °C | Shaft"]],
  ["-60 .. -50 °C", "", []],
  ["-60 .. -51 °C", " from -60 .. 20 °C", []],
  ["-60 .. -51 °C", " from -51 .. 20 °C", []],
  ["-60 .. -51 °C", " from -40 .. 20 °C", ["temperature to fit | Hub over Shaft | expansion below −50 °C | Shaft"]],
])("a shaft cooled to %s, its expansion%s", (range, mean, wanted) => {
  const text = `material Steel "steel" { expansion 11.7 µm/(m·K)${mean} }
part Hub "hub" { material Steel }
part Shaft "shaft" { material Steel }
fit Hub over Shaft {
  diameter 60 mm
  interference 5 .. 20 µm
}
procedure Join {
  begin with Hub is installed
  step cool Shaft to ${range}
  step install Shaft in Hub
}`;
  expect(told(text)).toEqual(wanted);
});

const lift = (lines: string): string => `tool Hoist "hoist" { lifts 100 kg }
tool Sling "sling" { each leg lifts 50 kg }
consumable Nitrogen "liquid nitrogen" { expands 694 }
part Frame "frame" { mass 20 kg }
procedure Lift {
${lines}
}`;

test.each([
  ["load | Frame | sling legs | Sling", "  step lift Frame with Hoist + Sling"],
  ["load | Frame | reach | Frame", "  step lift Frame by hand reach at least 30 cm"],
  ["load | Frame | travel | Frame", "  step lift Frame by hand from height 70 cm to at least 90 cm"],
  ["oxygen | Nitrogen | room | Nitrogen", "  step apply 2 L of Nitrogen to Frame"],
  ["oxygen | Nitrogen | amount | Nitrogen", "  room 60 m³\n  step apply Nitrogen to Frame"],
  ["oxygen | Nitrogen | liquid | Nitrogen", "  room 60 m³\n  step apply 2 kg of Nitrogen to Frame"],
])("%s", (wanted, lines) => {
  expect(told(lift(lines))).toEqual([wanted]);
});

test("nothing where all is declared", () => {
  expect(told(screw('thread "M10x1.5"  class "8.8"  nut factor 0.2 dry'))).toEqual([]);
});

test("a mass, an expansion, a tool's range; also of what is performed", () => {
  expect(
    told(`tool Hoist "hoist" { lifts 100 kg }
tool Lever "lever"
part Housing "housing" { mass 50 kg }
part Bush "bush"
part Sleeve "sleeve" { heat limit 200 °C }
part Shaft "shaft"
fit Sleeve over Shaft {
  diameter 40 mm
  interference 5 .. 20 µm
}
procedure Build {
  perform Lift
  step heat Sleeve to 100 .. 110 °C with Lever
  step install Shaft
  step install Sleeve over Shaft
}
procedure Lift {
  step install Bush in Housing
  step lift Housing with Hoist
}`),
  ).toEqual([
    "heating range | Lever | range | Lever",
    "temperature to fit | Sleeve over Shaft | expansion | Sleeve",
    "load | Housing | mass | Bush",
  ]);
});

test("the checklist prints the list", () => {
  const workspace = open(screw('thread "M10x1.5"  class "8.8"  nut factor 0.2 dry', GREASE));
  const made = exportText(workspace, {
    path: "main.sprag",
    as: "checklist",
    format: "md",
    units: "si",
    repeats: "compact",
    draft: true,
  });
  expect(made).toContain("Not checked for want of data: preload of Screw, no nut factor for Grease.");
});

test("what is left where a row names a part, of which nobody says how thick it is", () => {
  const text = `part Shim "shim"
part Thin "thin shim"
tool Gauge "gauge" { measures 0 .. 50 mm }
procedure Fit {
  step measure Gap "gap" with Gauge expect 2 .. 4 mm
  step choose Shim by Gap leaving 0 .. 1 mm {
    2 .. 3 mm: Thin
    3 .. 4 mm: 3 mm
  }
}`;
  expect(told(text)).toEqual(["remainder | Shim | value | Thin"]);
  expect(told(text.replace(" leaving 0 .. 1 mm", ""))).toEqual([]);
});
