// limits.tool-range: what the tool is set to lies in its range. Settings of published examples: 100 lbf·in at 12 + 6 in is 66.7 lbf·in
// (NAVEDTRA 14315, fig. 3-44), 40 lbf·ft at 12 + 4 in is 30 lbf·ft (TM 9-2350-261-20-1), 300 lbf·ft at 18 + 6 in is 225 lbf·ft
// (TM 5-3810-305-23); 135 lbf·in at 10 ± 1.5 in is 117.39 or 158.82 lbf·in (all read). Prevailing torque is added: AC 43.13-1B 7-40d.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

interface Job {
  readonly range: string;
  readonly arm?: string;
  readonly adapter?: string;
  readonly asked: string;
  readonly part?: string;
}

const text = (
  { range, arm, adapter, asked, part }: Job,
  found: boolean,
): string => `source Manual "manual"  tool Wrench "wrench" {
  torque ${range}
  ${arm === undefined ? "" : `arm ${arm}`}
}
${adapter === undefined ? "" : `tool Crowfoot "crowfoot" { ${adapter} }`}
part Screw "screw" {
  thread "M10x1.5"
  nut factor 0.2 dry
  ${part ?? ""}
}
procedure Close { per Manual "3"
  step install Screw
  step tighten Screw to ${asked} with Wrench${adapter === undefined ? "" : " + Crowfoot"}
${found ? "  //   ^^^^^^^^^^^^^ limits.tool-range error\n" : ""}}`;

test.each<Job>([
  { range: "8 .. 60 N·m", asked: "60.1 N·m" },
  { range: "8 .. 60 N·m", asked: "7.9 N·m" },
  { range: "8 .. 60 N·m", asked: "58 ± 3 N·m" },
  { range: "8 .. 60 N·m", asked: "10 %, 100 % of 45 N·m" },
  { range: "8 .. 60 N·m", asked: "45 lbf·ft" },
  { range: "at most 60 N·m", asked: "61 N·m" },
  { range: "67 .. 500 lbf·in", arm: "12 in", adapter: "offset 6 in", asked: "100 lbf·in" },
  { range: "31 .. 100 lbf·ft", arm: "12 in", adapter: "offset 4 in", asked: "40 lbf·ft" },
  { range: "50 .. 224 lbf·ft", arm: "18 in", adapter: "offset 6 in", asked: "300 lbf·ft" },
  { range: "20 .. 117 lbf·in", arm: "10 in", adapter: "offset 1.5 in", asked: "135 lbf·in" },
  { range: "20 .. 158 lbf·in", arm: "10 in", adapter: "offset 1.5 in  angle 180°", asked: "135 lbf·in" },
  { range: "20 .. 99 lbf·in", asked: "50 .. 70 lbf·in", part: "prevailing torque 30 lbf·in" },
  { range: "8 .. 60 N·m", adapter: "offset 60 mm  angle 90°", asked: "61 N·m" },
])("outside: $range, $arm $adapter $asked", (job) => {
  expectFindings(text(job, true));
});

test.each<Job>([
  { range: "8 .. 60 N·m", asked: "60 N·m" },
  { range: "8 .. 60 N·m", asked: "8 N·m" },
  { range: "8 .. 60 N·m", asked: "20 %, 100 % of 45 N·m" },
  { range: "8 .. 60 N·m", asked: "44 lbf·ft" },
  { range: "66 .. 500 lbf·in", arm: "12 in", adapter: "offset 6 in", asked: "100 lbf·in" },
  { range: "30 .. 100 lbf·ft", arm: "12 in", adapter: "offset 4 in", asked: "40 lbf·ft" },
  { range: "50 .. 225 lbf·ft", arm: "18 in", adapter: "offset 6 in", asked: "300 lbf·ft" },
  { range: "20 .. 118 lbf·in", arm: "10 in", adapter: "offset 1.5 in", asked: "135 lbf·in" },
  { range: "20 .. 159 lbf·in", arm: "10 in", adapter: "offset 1.5 in  angle 180°", asked: "135 lbf·in" },
  { range: "20 .. 100 lbf·in", asked: "50 .. 70 lbf·in", part: "prevailing torque 30 lbf·in" },
  { range: "8 .. 60 N·m", adapter: "offset 60 mm  angle 90°", asked: "60 N·m" },
])("silent: $range, $arm $adapter $asked", (job) => {
  expectFindings(text(job, false));
});

test("it shows the setting, and the tool that fits", () => {
  const job: Job = { range: "8 .. 60 N·m", arm: "400 mm", adapter: "offset 60 mm", asked: "80 ± 6 N·m" };
  const more =
    'tool Long "long wrench" { torque 30 .. 200 N·m  arm 550 mm }\ntool Longer "longer wrench" { torque 40 .. 300 N·m  arm 700 mm }\n';
  const plain = (more + text(job, false)).replace(
    "step install Screw",
    "step install Screw\n  step inspect Screw with Long + Longer + Wrench",
  );
  expect(told(plain, "limits.tool-range")).toMatchInlineSnapshot(`
    "Wrench does not reach as high as this.
      Wanted: 8 .. 60 N·m
      Found: the setting 69.57 N·m (64.35 .. 74.78 N·m) for 80 ± 6 N·m (Ts = T·L/(L + E))
    → Use Long.
    &4 The range of Wrench is declared here
    + Use Long"
  `);
  const [found] = findingsIn(plain);
  const mended = found === undefined ? "" : withFix(plain, found);
  expect(mended).toContain("with Long + Crowfoot");
  expect(findingsIn(mended)).toEqual([]);
});

const gauge = (tool: string, expectText: string, found: boolean): string => `tool Gauge "gauge" { ${tool} }
part Shaft "shaft"
procedure Look {
  step measure "gap" with Gauge expect ${expectText}
${found ? "  //   ^^^^^^^^^^^^^ limits.tool-range error\n" : ""}  step {
    check "gap" with Gauge expect ${expectText}
${found ? "  //^^^^^^^^^^^ limits.tool-range error\n" : ""}  }
  step inspect Shaft
}`;

test.each([
  ["measures 0.03 .. 1 mm", "at most 0.02 mm"],
  ["measures 0.03 .. 1 mm", "0.2 .. 1.2 mm"],
  ["measures 0 .. 10 bar", "150 .. 160 psi"],
  // A bore, not what two readings differ by.
  ["measures 25 .. 50 mm", "at most 12 mm"],
  ["measures 200 .. 350 mm", "2 .. 2.5 mm"],
  ["measures 200 .. 350 mm", "at most 21 mm"],
  // Below zero it is a reading of its own.
  ["measures 0 .. 10 bar", "at most -0.3 bar"],
  ["measures -0.5 .. 10 bar", "at most -0.6 bar"],
])("a gauge: %s, %s", (tool, limits) => {
  expectFindings(gauge(tool, limits, true));
});

test.each([
  ["measures 0.03 .. 1 mm", "at most 0.03 mm"],
  ["measures 0.03 .. 1 mm", "0.03 .. 1 mm"],
  ["measures 0 .. 10 bar", "140 .. 145 psi"],
  ["measures 0 .. 10 bar", "11 .. 12 bar absolute"],
  // Out of round, taper: the difference of two readings.
  ["measures 200 .. 350 mm", "at most 0.1 mm"],
  ["measures 25 .. 50 mm", "0 .. 0.02 mm"],
  ["measures 200 .. 350 mm", "at most 20 mm"],
  ["measures -1 .. 10 bar", "at most -0.3 bar"],
  ["measures 0 .. 10 bar", "at most 0 bar"],
  // A temperature difference, which is no temperature (design: language.md, Quantities).
  ["measures -20 .. 250 °C", "at most 30 K"],
  ["measures -20 .. 250 °C", "20 .. 30 K"],
])("silent, a gauge: %s, %s", (tool, limits) => {
  expectFindings(gauge(tool, limits, false));
});

const heater = (tool: string, step: string, found: boolean): string => `tool Heater "heater" { ${tool} }
part Ring "ring" { heat limit 300 °C }
procedure Warm {
  ambient 15 .. 25 °C
  step ${step} with Heater
${found ? `  //   ^^^^^^^^^ limits.tool-range error\n` : ""}}`;

test.each([
  ["heats to 150 °C", "heat Ring to 140 .. 151 °C"],
  ["heats to 300 °F", "heat Ring to 140 .. 149 °C"],
  ["heats to 150 °C", "heat Ring by 126 K"],
  ["cools to -40 °C", "cool Ring to -41 .. -30 °C"],
])("a heater or freezer: %s, %s", (tool, step) => {
  expectFindings(heater(tool, step, true));
});

test.each([
  ["heats to 150 °C", "heat Ring to 140 .. 150 °C"],
  ["heats to 300 °F", "heat Ring to 140 .. 148 °C"],
  ["heats to 150 °C", "heat Ring by 125 K"],
  ["cools to -40 °C", "cool Ring to -40 .. -30 °C"],
])("silent, a heater or freezer: %s, %s", (tool, step) => {
  expectFindings(heater(tool, step, false));
});

// “for a wrench the setting at each stage”, and of no other rule either: what is offered instead is good for the line.
test.each([
  ["tighten Screw to 50 ± 3 N·m with Small", "torque 10 .. 200 N·m  accuracy 10 %", null],
  ["tighten Screw to 50 ± 3 N·m with Small", "torque 10 .. 200 N·m  accuracy 4 %", "Use Other."],
  ["tighten Screw to 50 ± 3 N·m with Small", "torque 10 .. 200 N·m  resolution 10 N·m", null],
  ['measure "gap" with Gauge expect 20 .. 20.1 mm', "measures 0 .. 100 mm  resolution 0.5 mm", null],
  ['measure "gap" with Gauge expect 20 .. 20.1 mm', "measures 0 .. 100 mm  resolution 0.05 mm", "Use Other."],
])("what it offers adds no finding: %s, %s", (step, says, remedy) => {
  const source = `source Manual "manual"
tool Small "small wrench" { torque 5 .. 40 N·m }
tool Gauge "gauge" { measures 0 .. 10 mm }
tool Other "other" { ${says} }
part Screw "screw" { thread "M10x1.5"  nut factor 0.2 dry }
procedure Close {
  per Manual "3"
  begin with Screw is installed
  step inspect Screw with Small + Gauge + Other
  step ${step}
}`;
  const [found, ...others] = findingsIn(source);
  expect([found?.code, others]).toEqual(["limits.tool-range", []]);
  expect(found?.remedy).toBe(remedy ?? "Name a tool whose range holds the value.");
  if (remedy !== null && found !== undefined) expect(findingsIn(withFix(source, found))).toEqual([]);
});
