// Cooling makes nothing hot: of a part cooled to “at least” a temperature only the cold counts, and what it was before (language.md:
// burns use the high bound, a burn is never cleared by elapsed time). Burns from 51 °C, ISO 13732-1; cold from 0 °C, MIL-STD-1472 (memory).
import { expect, test } from "vitest";
import { told } from "./hazards-on-paper.ts";

const THINGS = `part Pin "pin" { heat limit 300 °C }
part House "house" { heat limit 300 °C }
fit House over Pin { diameter 60 mm  interference 1 .. 2 µm  slip clearance 5 µm }
`;
const COOL = "step cool Pin to at least -10 °C\n";
const HEAT = "step heat Pin to 140 .. 150 °C with Heater\n";
const NOT_OVER = "step cool Pin to at least 20 °C\n";
/** `not covered cold of Pin: clean Pin`. */
const hazards = (lines: string): readonly string[] =>
  told(lines, {}, THINGS).flatMap((one) => {
    const [, hazard] = /^not covered ((?:burn|cold) of \w+): /.exec(one) ?? [];
    return hazard === undefined ? [] : [hazard];
  });

test.each<[title: string, lines: string, wanted: readonly string[]]>([
  ["handled at once", `${COOL}step clean Pin`, ["cold of Pin"]],
  ["after some time", `${COOL}step wait 10 min\nstep clean Pin`, ["cold of Pin"]],
  ["not so cold, at the end of a task", `task A "A" { ${NOT_OVER} }\nstep clean Pin`, []],
  [
    "put into what it is put into",
    `step install House\n${COOL}step install Pin in House\nstep clean House`,
    ["cold of Pin"],
  ],
  ["what it was put into first", `step install House\nstep install Pin in House\n${COOL}step clean House`, []],
  ["twice", `${COOL}${COOL}step clean Pin`, ["cold of Pin"]],
  ["in a repeat", `repeat n from 1 to 2 { ${COOL} step clean Pin }`, ["cold of Pin"]],
  // As hot as it was, at most: 150 °C.
  ["it was hot before", `${HEAT}${NOT_OVER}step clean Pin`, ["burn of Pin"]],
  ["it was hot before, for some time", `${HEAT}${NOT_OVER}step wait 10 min\nstep clean Pin`, ["burn of Pin"]],
  ["it was hot, and measured cool", `${HEAT}step wait until Pin is at most 40 °C\n${NOT_OVER}step clean Pin`, []],
  ["it was hot, and is cooled to a range", `${HEAT}step cool Pin to 20 .. 40 °C\nstep clean Pin`, []],
  // Heated with no end above it may be as hot as it will.
  ["heated, at least", "step heat Pin to at least 40 °C with Heater\nstep clean Pin", ["burn of Pin"]],
  [
    "heated, at least, then cooled",
    `step heat Pin to at least 40 °C with Heater\n${NOT_OVER}step clean Pin`,
    ["burn of Pin"],
  ],
])("%s", (_title, lines, wanted) => {
  expect(hazards(lines)).toEqual(wanted);
});

test("for the choice that made it hot, and only for that", () => {
  const lines = `when Deep is yes { ${HEAT} }\n${NOT_OVER}step clean Pin`;
  expect(hazards(lines)).toEqual(["burn of Pin"]);
  expect(told(lines, { chosen: { Deep: "no" } }, THINGS).filter((one) => one.includes("burn"))).toEqual([]);
});
