// Values that depend on the order of work inside `in any order`: what is found in the block is what its orders written out have,
// also where no action needs what another one does.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const SHOP = `source Manual "manual" revision "1"
material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Screw "screw" { nut factor 0.2 dry  torque 45 N·m dry }
part Stud[1..4] "stud" { seats in Circle by number }
part Nut[1..4] "nut" { seats in Circle by number  torque 45 N·m with Grease }
part Pin[1..2] "pin" { seats in Circle equally spaced }
part Bearing "bearing" { material Steel  mass 20 kg  cools 0.1 K/s }
part Shaft "shaft" { material Steel  mass 30 kg }
part Cap "cap" { mass 15 kg }
fit Bearing over Shaft { diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm }
tool Wrench "wrench" { torque 5 .. 60 N·m }
tool Heater "heater" { heats to 300 °C }
tool Hoist "hoist" { lifts 40 kg }
consumable Grease "grease" { flash point 100 °C  heat limit 300 °C }
`;

/** What is found of values, in the order of the text. */
function found(before: string, children: string, after: string): readonly string[] {
  const text = `${SHOP}procedure Work "Work" {\n  per Manual "1"\n  ambient 15 .. 25 °C\n${before}\n${children}\n${after}\n}\n`;
  return findingsIn(text)
    .filter(
      ({ code }) => code.startsWith("limits.") && code !== "limits.no-condition" && code !== "limits.no-heat-limit",
    )
    .map(({ code, range: { start, end } }) => {
      const line = text.split("\n")[start.line] ?? "";
      return `${code}: ${line.slice(start.character, end.line === start.line ? end.character : undefined)}`;
    });
}

const TIGHTEN = "step tighten Screw to 45 N·m with Wrench";
const LUBRICATE = "step lubricate Screw with Grease";
const NUT = "step tighten Nut[1] to 45 N·m with Wrench";
const HEAT = "step heat Shaft to 90 .. 95 °C with Heater";
const WARM = "step HeatBearing { heat Bearing to 100 .. 110 °C with Heater }";

test.each<[string, string, readonly [string, string], string, readonly string[]]>([
  ["a dry torque", "step install Screw", [TIGHTEN, LUBRICATE], "", ["limits.torque-condition: tighten Screw"]],
  [
    "the same, applied",
    "step install Screw",
    [TIGHTEN, "step apply Grease to Screw"],
    "",
    ["limits.torque-condition: tighten Screw"],
  ],
  [
    "a torque on a greased stud",
    "step install Stud[1]\nstep install Nut[1] on Stud[1]",
    ["step lubricate Stud[1] with Grease", NUT],
    "",
    ["limits.torque-condition: tighten Nut[1]"],
  ],
  [
    "the same, in one place",
    "step install Stud[1], Nut[1]",
    ["step lubricate Stud[1] with Grease", NUT],
    "",
    ["limits.torque-condition: tighten Nut[1]"],
  ],
  [
    "a flash point",
    "step install Shaft",
    [HEAT, "step lubricate Shaft with Grease"],
    "",
    ["limits.flash-point: heat Shaft"],
  ],
  [
    "time in which a part cools",
    `step install Shaft\n${WARM}`,
    ["step install Bearing over Shaft", "step { inspect Cap  takes 10 min }"],
    "",
    ["limits.too-cool-to-fit: 100 .. 110 °C"],
  ],
  [
    "pins that are not spaced",
    "step install Pin[1] in Circle[1]",
    ["step remove Pin[1]", "step install Pin[2] in Circle[2]"],
    "",
    ["limits.spacing: install Pin[2]"],
  ],
  [
    "a load with what may be on it",
    "step install Shaft\nstep remove Shaft",
    ["step lift Shaft with Hoist", "step install Cap on Shaft"],
    "step set down Shaft",
    ["limits.overload: lift Shaft"],
  ],
])("%s", (_title, before, [one, other], after, wanted) => {
  const orders = [`${one}\n${other}`, `${other}\n${one}`];
  const written = orders.map((children) => found(before, children, after));
  // One order alone shows it.
  expect(written.filter((each) => each.length > 0)).toEqual([wanted]);
  for (const children of orders) expect(found(before, `in any order {\n${children}\n}`, after)).toEqual(wanted);
});

test.each<[string, string, readonly [string, string], string]>([
  [
    "a part that is hot in one",
    "begin with Cover is secured",
    ["step loosen CoverScrew", "step heat CoverScrew to 90 .. 95 °C with Heater"],
    "burn from CoverScrew",
  ],
  [
    "a cover that lays open what is live in one",
    "begin with Lid is installed, Lamp is installed",
    ["step remove Lid", "step {\n isolate Mains\n prove Mains dead\n}"],
    "electric from Mains",
  ],
  [
    "a load with what is on it in one",
    "step install Motor",
    ["step install Cap on Motor", "step remove Motor"],
    "lifting from Motor",
  ],
  [
    "a part that nothing holds in one",
    "begin with Cover is installed",
    ["step support Cover with Hoist", "step remove Cover"],
    "lifting from Cover",
  ],
])("a hazard in one order alone: %s", (_title, before, [one, other], wanted) => {
  const isRaised = (children: string): boolean =>
    findingsIn(`${SHOP}energy Mains "mains" { voltage 400 V AC }
part Lamp "lamp" { driven by Mains }
part Lid "lid" { encloses Lamp }
part Motor "motor" { mass 15 kg }
part Cover "cover" { mass 31 kg }
part CoverScrew "cover screw" { secures Cover }
procedure Work "Work" {\n${before}\n${children}\n}\n`).some(
      ({ code, message }) => code === "safety.missing" && message.endsWith(` of ${wanted}.`),
    );
  const orders = [`${one}\n${other}`, `${other}\n${one}`];
  expect(orders.filter(isRaised)).toHaveLength(1);
  for (const children of orders) expect(isRaised(`in any order {\n${children}\n}`)).toBe(true);
});

test("twenty fasteners of their own cost no orders", () => {
  const screws = Array.from({ length: 20 }, (_, at) => `part Own${at} "screw" { torque 45 N·m dry }`).join("\n");
  const children = Array.from({ length: 20 }, (_, at) => `step tighten Own${at} to 45 N·m with Wrench`);
  const before = Array.from({ length: 20 }, (_, at) => `step install Own${at}`).join("\n");
  const text = `${SHOP}${screws}\nprocedure Work "Work" {\n  per Manual "1"\n${before}\nin any order {\n${children.join("\n")}\n}\n}\n`;
  expect(findingsIn(text).filter(({ code }) => code.startsWith("limits."))).toEqual([]);
});
