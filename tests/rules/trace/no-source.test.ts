// trace.no-source: where a source may stand for a torque, a heat limit, a fit or a time limit: behind it, in its step, task,
// procedure or declaration.
import { expect, test } from "vitest";
import { expectMarked, findingsIn, told } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";

const expectExactly = (text: string): void => expectMarked(readMarks(text));
const CITED = ' per Manual "6.4"';

interface Cited {
  readonly step?: string;
  readonly task?: string;
  readonly procedure?: string;
  readonly value?: string;
  readonly torque?: string;
}

const tightening = ({ step = "", task = "", procedure = "", value = "", torque = "" }: Cited, mark = ""): string => `
source Manual "pump manual"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "cover"
part Screw[1..4] "screw" {
  secures Cover
  nut factor 0.2 dry
  ${torque}
}
value Final = 45 ± 4 N·m${value}
procedure Close "Close" {
  based on Manual revision "9"${procedure}
  task Closing "Close it" {${task}
    step install Cover, Screw[all]
    step tighten Screw[all] to 30 %, 100 % of Final with Wrench${step}
${mark}  }
}
`;
const TORQUE = "torque 45 ± 4 N·m dry";

test("a torque, at its last stage; the named value is shown", () => {
  const text = tightening({}, "    //                               ^^^^^^^^^^^^^^ trace.no-source information\n");
  expectExactly(text);
  expect(told(text, "trace.no-source")).toMatchInlineSnapshot(`
    "No source is given for the torque of Screw.
      Nobody can look it up, or find it when the source changes.
    → Add per with a source and its section behind it, such as per Manual "6.4.2".
    &10 Final is declared here, without one"
  `);
});

test.each<Cited>([
  { step: CITED },
  { task: CITED },
  { procedure: `\n  per Manual "6.4"` },
  { value: CITED },
  { torque: TORQUE + CITED },
])("silent: the torque is cited in %j", (cited) => {
  expectExactly(tightening(cited));
});

test("a torque that seats is not the fastener's own", () => {
  const text = tightening({ torque: TORQUE + CITED }).replace("100 % of Final", "100 % of Final to seat");
  const found = findingsIn(text).filter(({ code }) => code === "trace.no-source");
  expect(found.map(({ message }) => message)).toEqual(["No source is given for the torque of Screw."]);
});

test.each([
  ['part Part "part" { heat limit 120 °C }', "heat limit of Part"],
  ['part Part "part" { torque 45 N·m dry }', "torque of Part"],
  ['part Part "part"  material Steel "steel" { heat limit 200 °C }', "heat limit of Steel"],
  ['part Part "part"  consumable Oil "oil" { heat limit 90 °C }', "heat limit of Oil"],
  [
    'part Part "part"  part Shaft "shaft"  fit Part over Shaft { diameter 50 mm  interference 1 .. 9 µm }',
    "fit Part over Shaft",
  ],
  [
    'part Part "part"  part Shaft "shaft"  fit Part over Shaft { diameter 50 mm  tolerance "H7/s6" }',
    "fit Part over Shaft",
  ],
])("declared without one: %s", (declared, what) => {
  const text = (per: string): string =>
    `source Manual "manual"\n${declared}${per}\nprocedure Look "Look" { step inspect Part per Manual "1" }\n`;
  const messages = (source: string): readonly string[] =>
    findingsIn(source)
      .filter(({ code }) => code === "trace.no-source")
      .map(({ message }) => message);
  expect(messages(text(""))).toEqual([`No source is given for the ${what}.`]);
  expect(messages(text(CITED))).toEqual([]);
  expect(messages(text("").replace(/ }(?=\n)/, `${CITED} }`))).toEqual([]);
});

test("a fit is one fact: one place, and any of its numbers may bring the source", () => {
  const fitted = (diameter: string, clearance: string, mark = ""): string => `source Manual "manual"
part Bearing "bearing"
part Shaft "shaft"
fit Bearing over Shaft {
  diameter 60 mm${diameter}
  interference 11 .. 36 µm
${mark}  slip clearance 15 µm${clearance}
}
procedure Look "Look" { step inspect Bearing, Shaft per Manual "1" }
`;
  expectExactly(fitted("", "", "  //           ^^^^^^^^^^^ trace.no-source information\n"));
  expectExactly(fitted(CITED, ""));
  expectExactly(fitted("", CITED));
});

test("a time limit, at the time", () => {
  const text = (per: string, mark = ""): string => `source Manual "manual"
consumable Sealant "sealant"
part Sump "sump"
procedure Close "Close" {
  step Coat { apply Sealant to Sump  takes 2 min }
  step { install Sump  takes 1 min${per}
    within 5 min after Coat
${mark}  }
  step inspect Sump per Manual "1"
}
`;
  expectExactly(text("", "    //     ^^^^^ trace.no-source information\n"));
  expectExactly(text(CITED));
});

test("silent: values of other kinds, limits of a reading, a temperature to heat to", () => {
  expectExactly(`tool Feeler "feeler" { measures 0.03 .. 1 mm }
tool Heater "heater" { heats to 60 °C }
source Manual "manual"
part Pump "pump" { mass 4 kg  cools 0.1 K/s  heat limit 90 °C per Manual "2" }
procedure Look "Look" {
  step heat Pump to 30 .. 40 °C with Heater
  step { check "Gap" with Feeler expect at most 0.05 mm  takes 2 min }
  step wait 5 min
}
`);
});

test("a declaration inside a procedure has the procedure's; a source that is not known is one all the same", () => {
  const text = (cites: string): string => `part Pump "pump"
source Manual "manual" revision "9"
procedure Look "Look" {
  based on Manual revision "9"
  ${cites}
  part Seal "seal" { heat limit 90 °C }
  step inspect Pump, Seal
}
`;
  const codes = (cites: string): readonly string[] => findingsIn(text(cites)).map(({ code }) => code);
  expect(codes("")).toEqual(["trace.no-source"]);
  expect(codes('per Manual "4"')).toEqual([]);
  expect(codes('per Manuel "4"')).toEqual(["names.unknown"]);
});

test("silent where a line that cannot be read may be the one that cites", () => {
  const found = (cited: Cited): readonly string[] =>
    findingsIn(tightening(cited)).flatMap(({ code }) => (code === "trace.no-source" ? [code] : []));
  expect(found({ task: '\n    Manual "6.4"' })).toEqual([]);
  expect(found({ task: '\n    per "6.4"' })).toEqual([]);
  expect(found({ torque: "torque 45 ± N·m dry" })).toEqual([]);
});
