// trace.no-crib-item: the values that are used are held against each item, with the item's own arm; each limit on both sides and in
// both unit systems. Settings: 100 lbf·in at 12 + 6 in is 66.7 lbf·in (NAVEDTRA 14315, fig. 3-44; read), 300 lbf·ft at 18 + 6 in is
// 225 lbf·ft (TM 5-3810-305-23; read).
import { expect, test } from "vitest";
import { expectMarked, findingsIn } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";

interface Job {
  /** Of the requirement. */
  readonly tool?: string;
  readonly item: string;
  readonly step: string;
  readonly more?: string;
}

const TEXT = ({ tool = "", item, step, more = "" }: Job): string => `tool Tool "tool" { ${tool} }
${more}
part Screw "screw" { mass 20 kg }
part Cover "cover" { mass 120 kg  heat limit 400 °C }
crib MainShop { item "X-1" for Tool { ${item} } }
procedure Work "Work" {
  step install Screw
  step install Cover
  step ${step}
}
`;

const CROWFOOT = 'tool Crowfoot "crowfoot" { offset 6 in }';
const misses = (job: Job): readonly (string | undefined)[] =>
  findingsIn(TEXT(job), {}, { crib: "main.sprag" })
    .filter(({ code, message }) => code === "trace.no-crib-item" && message.includes("Tool"))
    .map(({ why }) => why);

const wrench = (item: string, torque: string, more?: string): Job => ({
  tool: "torque 1 .. 900 N·m  arm 12 in",
  item,
  step: `tighten Screw to ${torque} with Tool${more === undefined ? "" : " + Crowfoot"}`,
  ...(more === undefined ? {} : { more }),
});

test.each<[Job, string]>([
  [wrench("torque 10 .. 60 N·m", "60.1 N·m"), "X-1 stops at 60 N·m, and 60.1 N·m is wanted."],
  [wrench("torque 10 .. 60 N·m", "9.9 N·m"), "X-1 begins at 10 N·m, and 9.9 N·m is wanted."],
  [wrench("torque 10 .. 60 N·m", "58 ± 3 N·m"), "X-1 stops at 60 N·m, and 61 N·m is wanted."],
  [wrench("torque 10 .. 60 N·m", "45 lbf·ft"), "X-1 stops at 60 N·m, and 45 lbf·ft is wanted."],
  [wrench("torque 10 .. 60 N·m", "10 %, 100 % of 45 N·m"), "X-1 begins at 10 N·m, and 4.5 N·m is wanted."],
  [
    wrench("torque 5 .. 66 lbf·in  arm 12 in", "100 lbf·in", CROWFOOT),
    "X-1 stops at 66 lbf·in, and 66.67 lbf·in is to be set.",
  ],
  [
    wrench("torque 5 .. 224 lbf·ft  arm 18 in", "300 lbf·ft", CROWFOOT),
    "X-1 stops at 224 lbf·ft, and 225 lbf·ft is to be set.",
  ],
  // With 5 % of reading the window is [42/0.95, 44·0.95] = [44.2, 41.8]: empty.
  [
    wrench("torque 10 .. 60 N·m  accuracy 5 %", "42 .. 44 N·m"),
    "X-1 is off by up to 5 %, too much to keep 42 .. 44 N·m.",
  ],
  [
    { tool: "measures 0 .. 9 mm", item: "measures 0.03 .. 1 mm", step: 'measure "gap" with Tool expect 0.2 .. 1.2 mm' },
    "X-1 stops at 1 mm, and 1.2 mm is to be read.",
  ],
  [
    {
      tool: "measures 0 .. 9 bar",
      item: "measures 0 .. 150 psi",
      step: 'measure "oil" with Tool expect 10 .. 10.4 bar',
    },
    "X-1 stops at 150 psi, and 10.4 bar is to be read.",
  ],
  [
    { tool: "heats to 150 °C", item: "heats to 300 °F", step: "heat Cover to 140 .. 149 °C with Tool" },
    "X-1 heats to 300 °F, and 149 °C is wanted.",
  ],
  [
    { tool: "cools to -40 °C", item: "cools to -30 °C", step: "cool Cover to -31 .. -20 °C with Tool" },
    "X-1 cools to -30 °C, and -31 °C is wanted.",
  ],
  [
    { tool: "lifts 250 kg", item: "lifts 119 kg", step: "lift Cover with Tool" },
    "X-1 lifts 119 kg, and the load is 120 kg.",
  ],
  [
    { tool: "lifts 250 kg", item: "lifts 264 lb", step: "lift Cover with Tool" },
    "X-1 lifts 264 lb, and the load is 120 kg.",
  ],
  [
    { tool: "force 100 kN", item: "force 99 kN", step: "inspect Cover with Tool" },
    "X-1 presses with 99 kN, and 100 kN is wanted.",
  ],
  [
    {
      tool: "torque 1 .. 90 N·m  accuracy 4 %",
      item: "torque 1 .. 90 N·m  accuracy 6 %",
      step: "tighten Screw to 40 N·m with Tool",
    },
    "X-1 is off by up to 6 %, and 4 % is allowed.",
  ],
  [
    {
      tool: "measures 0 .. 1 mm  resolution 0.01 mm",
      item: "measures 0 .. 1 mm  resolution 0.02 mm",
      step: 'measure "gap" with Tool expect 0.2 .. 0.8 mm',
    },
    "X-1 shows steps of 0.02 mm, and 0.01 mm is wanted.",
  ],
  [
    { tool: "offset 60 mm", item: "offset 50 mm", step: "inspect Cover with Tool" },
    "X-1 is 50 mm long, and 60 mm is wanted.",
  ],
  [
    { tool: "offset 60 mm  angle 90°", item: "offset 60 mm  angle 45°", step: "inspect Cover with Tool" },
    "X-1 stands at 45°, and 90° is wanted.",
  ],
])("misses: %j", (job, why) => {
  expect(misses(job)).toEqual([why]);
});

test.each<Job>([
  wrench("torque 10 .. 60 N·m", "60 N·m"),
  wrench("torque 10 .. 60 N·m", "10 N·m"),
  wrench("torque 10 .. 60 N·m", "44 lbf·ft"),
  wrench("torque 5 .. 67 lbf·in  arm 12 in", "100 lbf·in", CROWFOOT),
  wrench("torque 5 .. 225 lbf·ft  arm 18 in", "300 lbf·ft", CROWFOOT),
  // [42/0.98, 44·0.98] = [42.86, 43.12].
  wrench("torque 10 .. 60 N·m  accuracy 2 %", "42 .. 44 N·m"),
  // The range that the requirement declares is not used: it does not count.
  wrench("torque 40 .. 50 N·m", "45 N·m"),
  // What it says nothing of is not held against it.
  wrench("", "45 N·m"),
  { tool: "measures 0 .. 9 mm", item: "measures 0.03 .. 1.2 mm", step: 'measure "gap" with Tool expect 0.2 .. 1.2 mm' },
  // How far two readings lie apart.
  { tool: "", item: "measures 25 .. 50 mm", step: 'measure "taper" with Tool expect at most 0.02 mm' },
  { tool: "measures 0 .. 9 bar", item: "measures 0 .. 151 psi", step: 'measure "oil" with Tool expect 10 .. 10.4 bar' },
  { tool: "heats to 150 °C", item: "heats to 300 °F", step: "heat Cover to 140 .. 148 °C with Tool" },
  { tool: "cools to -40 °C", item: "cools to -30 °C", step: "cool Cover to -30 .. -20 °C with Tool" },
  { tool: "lifts 250 kg", item: "lifts 120 kg", step: "lift Cover with Tool" },
  { tool: "lifts 250 kg", item: "lifts 265 lb", step: "lift Cover with Tool" },
  { tool: "force 100 kN", item: "force 100 kN", step: "inspect Cover with Tool" },
  {
    tool: "torque 1 .. 90 N·m  accuracy 4 %",
    item: "torque 1 .. 90 N·m  accuracy 4 %",
    step: "tighten Screw to 40 N·m with Tool",
  },
  { tool: "offset 60 mm", item: "offset 60 mm", step: "inspect Cover with Tool" },
])("does it: %j", (job) => {
  expect(misses(job)).toEqual([]);
});

test("a tool that no item is there for", () => {
  const text = TEXT({ item: "", step: "inspect Cover with Puller", more: 'tool Puller "bearing puller"' });
  const found = findingsIn(text, {}, { crib: "main.sprag" }).filter(({ code }) => code === "trace.no-crib-item");
  expect(found.map(({ message, why }) => [message, why])).toEqual([
    ["MainShop has no Puller.", "No item of it is there for Puller."],
  ]);
});

test("one item that does is enough, and one finding for a tool stands where nothing does it", () => {
  const shop = `tool Wrench "wrench" { torque 1 .. 200 N·m }
crib MainShop {
  item "TW-1" for Wrench { torque 10 .. 60 N·m }
  item "TW-2" for Wrench { torque 10 .. 70 N·m }
}
`;
  const source = (last: string, mark: string) => `use "shop.sprag"
part Screw "screw"
part Nut "nut"
source Manual "manual"
procedure Close "Close" {
  per Manual "3"
  step install Screw, Nut
  step tighten Screw to 20 N·m with Wrench
  step tighten Nut to ${last} with Wrench
${mark}}
`;
  const used = { "shop.sprag": shop };
  const marked = readMarks(source("80 N·m", "//     ^^^^^^^^^^^ trace.no-crib-item warning\n"));
  expectMarked(marked, { crib: "shop.sprag" }, used);
  expectMarked(readMarks(source("65 N·m", "")), { crib: "shop.sprag" }, used);
  expectMarked(readMarks(source("80 N·m", "")), {}, used);
});

test("a crib with a line that could not be read is held against nobody", () => {
  const job = wrench("torque 10 .. 60 N·m", "80 N·m");
  const broken = TEXT(job).replace("crib MainShop {", 'crib MainShop { item "X-2" for Tol { torque 10 .. 90 N·m }');
  const codes = findingsIn(broken, {}, { crib: "main.sprag" }).map(({ code }) => code);
  expect(codes).toContain("names.unknown");
  expect(codes).not.toContain("trace.no-crib-item");
});
