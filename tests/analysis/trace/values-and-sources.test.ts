// Every value of a file with what it is called, whose it is, whether it has to have a source, and what it cites; and every step. A
// torque, a heat limit, a fit and a time limit need one (checks.md, trace.no-source); `per` may stand behind the value, in its
// step, task, procedure or declaration (language.md).
import { describe, expect, test } from "vitest";
import { tracedIn } from "#analysis/trace/traced.ts";
import { lowerFiles } from "#model/lower.ts";
import { show } from "#quantity/display.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";

const SHOP = `source Manual "manual"
source Sheet "data sheet"
role Fitter "fitter"
ring Circle "circle" { count 4  numbered clockwise seen from "front"  position 1 at 12 o'clock }
part Screw[1..4] "screw" { seats in Circle }
part Pump "pump"
part Shim "shim"
consumable Oil "oil"
tool Gauge "gauge"
`;

/** `step what of: words [section, …]`, with `!` where a source is due and `?` where one may have been lost. */
function traced(text: string): readonly string[] {
  const parsed = new Map([["work.sprag", parseText(text, "work.sprag")]]);
  linkFiles(parsed);
  const model = lowerFiles(parsed, () => false).get("work.sprag");
  if (model === undefined) throw new Error("no file");
  return tracedIn(model).map(({ step, title, value, span, citations, inDoubt }) => {
    const written = text.slice(span.start, span.end).replace(/\s+/g, " ");
    // The place of a bound is its value; which bound it is, the value says.
    const words =
      value !== null && "quantity" in value.value && /^at /.test(show(value.value.quantity))
        ? show(value.value.quantity)
        : written;
    const what =
      value === null ? `"${title}"` : `${value.what}${value.due ? "!" : ""}${value.of === "" ? "" : ` of ${value.of}`}`;
    const sections = citations.map(({ section }) => section).join(", ");
    return `${step === null ? "" : `${step} `}${what}: ${words}${sections === "" ? "" : ` [${sections}]`}${inDoubt ? " ?" : ""}`;
  });
}
/** Of a file with nothing else in it. */
const ofDeclaration = (declared: string): readonly string[] =>
  traced(`source Manual "manual"\npart Shaft "shaft"\n${declared}\n`);
/** Of a procedure, without the values of the shop. */
const ofWork = (lines: string, head = ""): readonly string[] =>
  traced(`${SHOP}procedure Work "Work" {\n${head}\n${lines}\n}\n`).filter((one) => !one.startsWith("position"));

describe("what a declaration gives, in its order, with the ones that have to have a source", () => {
  test.each<[declared: string, values: readonly string[]]>([
    [
      'material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }',
      ["expansion of Steel: 11.7 µm/(m·K)", "heat limit! of Steel: 200 °C"],
    ],
    [
      'ring Circle "circle" { count 4  numbered clockwise seen from "front"  position 1 at 12 o\'clock }',
      ["position of Circle: 12 o'clock"],
    ],
    [
      'part Cap "cap" { mass 2 kg  heat limit 120 °C  cools 0.2 K/s  prevailing torque 2 N·m  torque 9 N·m dry  nut factor 0.2 dry  friction 0.1 dry }',
      [
        "mass of Cap: 2 kg",
        "heat limit! of Cap: 120 °C",
        "cools of Cap: 0.2 K/s",
        "prevailing torque of Cap: 2 N·m",
        "torque! of Cap: 9 N·m",
        "nut factor of Cap: 0.2",
        "friction of Cap: 0.1",
      ],
    ],
    // Of a fit the value that decides it speaks for all.
    [
      'part Hub "hub"  fit Hub over Shaft { diameter 60 mm  interference 1 .. 9 µm  slip clearance 5 µm  length 40 mm  friction 0.12 }',
      [
        "diameter of Hub over Shaft: 60 mm",
        "interference! of Hub over Shaft: 1 .. 9 µm",
        "slip clearance of Hub over Shaft: 5 µm",
        "length of Hub over Shaft: 40 mm",
        "friction of Hub over Shaft: 0.12",
      ],
    ],
    [
      'part Hub "hub"  fit Hub over Shaft { diameter 60 mm  tolerance "H7/s6" }',
      ["diameter of Hub over Shaft: 60 mm", 'tolerance! of Hub over Shaft: "H7/s6"'],
    ],
    ['part Hub "hub"  fit Hub over Shaft { diameter 60 mm }', ["diameter! of Hub over Shaft: 60 mm"]],
    [
      'tool T "tool" { torque 1 .. 9 N·m  accuracy 4 %  arm 300 mm  offset 60 mm  angle 90°  heats to 150 °C  cools to -40 °C  lifts 9 kg  each leg lifts 5 kg  measures 0 .. 9 mm  resolution 0.1 mm  force 9 kN }',
      [
        "torque of T: 1 .. 9 N·m",
        "accuracy of T: 4 %",
        "arm of T: 300 mm",
        "offset of T: 60 mm",
        "angle of T: 90°",
        "heats to of T: 150 °C",
        "cools to of T: -40 °C",
        "lifts of T: 9 kg",
        "each leg lifts of T: 5 kg",
        "measures of T: 0 .. 9 mm",
        "resolution of T: 0.1 mm",
        "force of T: 9 kN",
      ],
    ],
    [
      'consumable Oil "oil" { flash point 210 °C  heat limit 150 °C  cure 2 h  density 0.9 kg/L  expands 694  pressure 2 bar }',
      [
        "flash point of Oil: 210 °C",
        "heat limit! of Oil: 150 °C",
        "cure of Oil: 2 h",
        "density of Oil: 0.9 kg/L",
        "expands of Oil: 694",
        "pressure of Oil: 2 bar",
      ],
    ],
    ['energy E "energy" { voltage 400 V AC }', ["voltage of E: 400 V AC"]],
    ['energy E "energy" { pressure 6 bar }', ["pressure of E: 6 bar"]],
    ['energy E "energy" { hot 90 °C }', ["hot of E: 90 °C"]],
    ['energy E "energy" { stored 2 kJ }', ["stored of E: 2 kJ"]],
    ["value Final = 45 ± 2 N·m", ["value of Final: 45 ± 2 N·m"]],
    ["threshold burn 55 °C", ["threshold of burn: 55 °C"]],
    [
      'ring Seat "seat" { count 4  numbered clockwise seen from "front" }  part S[1..4] "s" { seats in Seat }  arrangement A of S in Seat { radius 420 mm  unbalance at most 600 g·mm  speed 3000 rpm  mass 9 kg }',
      ["radius of A: 420 mm", "unbalance of A: at most 600 g·mm", "speed of A: 3000 rpm", "mass of A: 9 kg"],
    ],
    ['role Fitter "fitter"', []],
    ['tool T "tool"  crib C { item "X" for T { lifts 9 kg } }', []],
  ])("%s", (declared, values) => {
    expect(ofDeclaration(declared)).toEqual(values);
  });
});

describe("what a procedure gives, in the order of the text", () => {
  test.each<[lines: string, head: string, values: readonly string[]]>([
    ["", "ambient 15 .. 25 °C", ["ambient: 15 .. 25 °C"]],
    ["", "room 60 m³", ["room: 60 m³"]],
    ["", "begin with Pump is at least 40 °C", ["begin with of Pump: at least 40 °C"]],
    ["", "finish with not (Pump is at most 40 °C)", ["finish with of Pump: at most 40 °C"]],
    ['step Say "Say so."', "", ['1 "Say so.": step Say']],
    ["step Say { inspect Pump }", "", ['1 "Say": step Say']],
    [
      'step { needs Pump is at least 30 °C, Circle[1] at 6 o\'clock do "Look." gives Pump is at most 60 °C }',
      "",
      [
        '1 "": step',
        "1 needs of Pump: at least 30 °C",
        expect.stringMatching(/^1 needs of Circle.*: 6 o'clock$/) as unknown as string,
        "1 gives of Pump: at most 60 °C",
      ],
    ],
    [
      'step A { inspect Pump takes 2 min }\nstep { inspect Pump record "wear" 1 .. 2 mm within 5 min after A takes 1 min }',
      "",
      [
        '1 "A": step A',
        "1 takes: 2 min",
        '2 "": step',
        "2 record of wear: 1 .. 2 mm",
        "2 within! of A: 5 min",
        "2 takes: 1 min",
      ],
    ],
    ['step { check "gap" expect 1 .. 2 mm }', "", ['1 "": step', "1 expect of gap: 1 .. 2 mm"]],
    [
      'step measure "gap" expect 1 .. 2 mm',
      "",
      [expect.stringMatching(/^1 "": /) as unknown as string, "1 expect of gap: 1 .. 2 mm"],
    ],
  ])("%s %s", (lines, head, values) => {
    expect(ofWork(lines, head)).toEqual(values);
  });

  /** Without the step itself. */
  const values = (lines: string): readonly string[] => ofWork(lines).filter((one) => !/^\S+ "/.test(one));
  test.each<[lines: string, values: readonly string[]]>([
    [
      "step install Screw[1] in Circle[1] at 3 o'clock",
      [expect.stringMatching(/^1 at of Screw.*: 3 o'clock$/) as unknown as string],
    ],
    ["step turn Circle[2] to 3 o'clock", [expect.stringMatching(/^1 at of Circle.*: 3 o'clock$/) as unknown as string]],
    [
      "step turn Circle to put Circle[2] at 3 o'clock",
      [expect.stringMatching(/^1 at of Circle.*: 3 o'clock$/) as unknown as string],
    ],
    // The last stage is the torque, the others lead up to it.
    ["step tighten Pump to 20 N·m, 45 N·m", ["1 torque of Pump: 20 N·m", "1 torque! of Pump: 45 N·m"]],
    ["step tighten Pump to 45 N·m then 90 ± 5°", ["1 torque! of Pump: 45 N·m", "1 angle of Pump: 90 ± 5°"]],
    ["step loosen Pump by 1/4 turn", ["1 angle of Pump: 1/4 turn"]],
    ["step heat Pump to 80 .. 90 °C", ["1 heat to of Pump: 80 .. 90 °C"]],
    ["step heat Pump by 60 K", ["1 heat by of Pump: 60 K"]],
    ["step cool Pump, Shim to 0 .. 5 °C", ["1 cool to of Pump, Shim: 0 .. 5 °C"]],
    ["step wait 5 min", ["1 wait: 5 min"]],
    ["step wait until Pump is at most 40 °C", ["1 wait until of Pump: at most 40 °C"]],
    ["step apply 5 g of Oil to Pump cure 2 h", ["1 amount of Pump: 5 g", "1 cure of Pump: 2 h"]],
    ["step fill Pump with 2 L of Oil", ["1 amount of Pump: 2 L"]],
    [
      "step lift Pump by hand reach 40 cm from height 60 cm to 110 cm turned 30°",
      [
        "1 reach of Pump: 40 cm",
        "1 from height of Pump: 60 cm",
        "1 to height of Pump: 110 cm",
        "1 turned of Pump: 30°",
      ],
    ],
    ["step support Pump with Gauge on 2 legs at 60°", ["1 legs at of Pump: 60°"]],
    [
      'step measure Gap "gap" expect 2 .. 4 mm\nstep choose Shim by Gap leaving 1 .. 2 mm { 2 .. 3 mm: 1 mm  3 .. 4 mm: Pump }',
      [
        "1 expect of gap: 2 .. 4 mm",
        "2 leaving of Shim: 1 .. 2 mm",
        "2 choose by of Gap: 2 .. 3 mm",
        "2 choose of Shim: 1 mm",
        "2 choose by of Gap: 3 .. 4 mm",
      ],
    ],
    ["step clean Pump", []],
    [
      'step measure Gap "gap" expect 2 .. 4 mm\nwhen Gap at most 3 mm { step wait 5 min } otherwise { step wait 6 min }',
      ["1 expect of gap: 2 .. 4 mm", "when of Gap: at most 3 mm", "2 wait: 5 min", "3 wait: 6 min"],
    ],
    ['step { check "gap" if it fails { wait 5 min } }', ["1 wait: 5 min"]],
    ["repeat n from 1 to 3 { step wait 5 min }", ["1 wait: 5 min"]],
    ["in any order { step wait 5 min step wait 6 min }", ["1 wait: 5 min", "2 wait: 6 min"]],
  ])("%s", (lines, wanted) => {
    expect(values(lines).map((one) => one.replace(/^\d+(?:\.\d+)* when/, "when"))).toEqual(wanted);
  });

  test("a performed procedure is a step of its own, by its name", () => {
    const text = `${SHOP}procedure Inner "Inner" { step wait 5 min }\nprocedure Work "Work" { perform Inner }\n`;
    expect(traced(text).filter((one) => one.includes('"'))).toContain('1 "Inner": perform Inner');
  });
});

describe("what it cites: the nearest", () => {
  const job = (per: {
    torque?: string;
    step?: string;
    task?: string;
    procedure?: string;
    value?: string;
    part?: string;
    own?: string;
  }): string => `source Manual "manual"
part Cover "cover"
part Screw "screw" { secures Cover ${per.own === undefined ? "" : `torque 45 N·m dry per Manual "${per.own}"`} }${per.part === undefined ? "" : ` per Manual "${per.part}"`}
value Final = 45 N·m${per.value === undefined ? "" : ` per Manual "${per.value}"`}
procedure Work "Work" {
  ${per.procedure === undefined ? "" : `per Manual "${per.procedure}"`}
  task A "A" {
    ${per.task === undefined ? "" : `per Manual "${per.task}"`}
    step { tighten Screw to Final${per.torque === undefined ? "" : ` per Manual "${per.torque}"`} ${per.step === undefined ? "" : `per Manual "${per.step}"`} }
  }
}
`;
  const torque = (per: Parameters<typeof job>[0]): string | undefined =>
    traced(job(per)).find((one) => one.includes("torque! of Screw: Final"));
  test.each<[per: Parameters<typeof job>[0], cites: string]>([
    [{}, ""],
    [{ step: "s", task: "t", procedure: "p", value: "v" }, " [v]"],
    [{ step: "s", task: "t", procedure: "p", own: "o" }, " [s]"],
    [{ task: "t", procedure: "p", own: "o" }, " [t]"],
    [{ procedure: "p", own: "o" }, " [p]"],
    [{ own: "o" }, " [o]"],
    [{ own: "o", part: "d" }, " [o]"],
    // A part's own source holds for its torque, where it has one.
    [{ part: "d" }, ""],
  ])("%j", (per, cites) => {
    expect(torque(per)?.replace(/^\S+ torque! of Screw: Final/, "")).toBe(cites);
  });

  test("several in one place are all of them", () => {
    const text = job({ step: 's" per Manual "t' });
    expect(traced(text).find((one) => one.includes("torque! of Screw"))).toMatch(/\[s, t\]$/);
  });

  test("a step cites its own, its task's, its procedure's", () => {
    const step = (per: Parameters<typeof job>[0]): string => traced(job(per)).find((one) => one.includes('""')) ?? "";
    expect(step({ step: "s", task: "t" })).toMatch(/ \[s\]$/);
    expect(step({ task: "t", procedure: "p" })).toMatch(/ \[t\]$/);
    expect(step({ procedure: "p" })).toMatch(/ \[p\]$/);
    expect(step({})).not.toContain("[");
  });

  test("to seat, and other values than a torque, have nothing of the fastener's torque", () => {
    const seat = job({ own: "o" }).replace("to Final", "to Final to seat");
    expect(traced(seat).find((one) => one.includes("torque! of Screw: Final"))).not.toContain("[");
    const angle = job({ own: "o" }).replace("to Final", "to Final then 90°");
    expect(traced(angle).find((one) => one.includes("angle of Screw"))).not.toContain("[");
    const loosened = job({ own: "o" }).replace("tighten Screw to Final", "loosen Screw by 1/4 turn");
    expect(traced(loosened).find((one) => one.includes("angle of Screw"))).not.toContain("[");
  });

  test("of two fasteners in one line, all that their torques cite", () => {
    const two = job({ own: "o" })
      .replace("part Cover", 'part Nut "nut" { secures Cover  torque 45 N·m dry per Manual "n" }\npart Cover')
      .replace("tighten Screw", "tighten Screw, Nut");
    expect(traced(two).find((one) => one.includes("torque! of Screw, Nut"))).toMatch(/\[o, n\]$/);
  });

  test("a value that is made of named values cites what they cite, each once; a share what its whole cites", () => {
    const text = `source Manual "manual"
part Screw "screw"
value Half = 20 N·m per Manual "h"
value Rest = 25 N·m per Manual "r"
value Both = Half + Rest + Half
procedure Work "Work" {
  step tighten Screw to Both
  step tighten Screw to 50 %, 100 % of Half
}
`;
    const found = traced(text);
    expect(found.find((one) => one.startsWith("value of Both"))).toMatch(/\[h, r\]$/);
    expect(found.find((one) => one.startsWith("1 torque!"))).toMatch(/\[h, r\]$/);
    expect(found.filter((one) => one.startsWith("2 torque")).map((one) => / \[(.*)\]/.exec(one)?.[1])).toEqual([
      "h",
      "h",
    ]);
  });

  test("a fit is one fact: what one of its numbers cites holds for all; a declaration cites for what is in it", () => {
    const fitted = (more: string, per = ""): readonly string[] =>
      ofDeclaration(`part Hub "hub"  fit Hub over Shaft { diameter 60 mm  interference 1 .. 9 µm${more} }${per}`);
    expect(fitted(' per Manual "i"')).toEqual([expect.stringMatching(/\[i\]$/), expect.stringMatching(/\[i\]$/)]);
    expect(fitted("", ' per Manual "f"')).toEqual([expect.stringMatching(/\[f\]$/), expect.stringMatching(/\[f\]$/)]);
    expect(fitted(' per Manual "i"', ' per Manual "f"')[0]).toMatch(/\[i\]$/);
    expect(ofDeclaration('part Cap "cap" { mass 2 kg per Manual "m"  heat limit 90 °C } per Manual "c"')).toEqual([
      "mass of Cap: 2 kg [m]",
      "heat limit! of Cap: 90 °C [c]",
    ]);
  });

  test("a declaration inside a procedure has the procedure's", () => {
    const text = `source Manual "manual"\npart Pump "pump"\nprocedure Work "Work" {\n  per Manual "p"\n  part Seal "seal" { heat limit 90 °C }\n  step inspect Pump, Seal\n}\npart Cap "cap" { heat limit 90 °C }\n`;
    expect(traced(text).filter((one) => one.startsWith("heat limit"))).toEqual([
      "heat limit! of Seal: 90 °C [p]",
      "heat limit! of Cap: 90 °C",
    ]);
  });
});

describe("in doubt: a line that could not be read may have cited", () => {
  const doubt = (text: string, what: string): boolean | undefined =>
    traced(text)
      .find((one) => one.includes(what))
      ?.endsWith(" ?");
  const work = (lines: string, head = ""): string => `${SHOP}procedure Work "Work" {\n${head}\n${lines}\n}\n`;
  const WAIT = "1 wait: 5 min";
  test.each<[title: string, text: string, isInDoubt: boolean]>([
    ["nothing is wrong", work("step { wait 5 min }"), false],
    ["in its step", work('step { wait 5 min\n per "6.4" }'), true],
    ["a line that names a source", work('step { wait 5 min\n prr Manual "6.4" }'), true],
    ["a line that names something else", work("step { wait 5 min\n Pump hello }"), false],
    ["in its procedure", work("step { wait 5 min }", 'per "6.4"'), true],
    ["in its task", work('task A "A" {\n per "6.4"\n step { wait 5 min } }'), true],
    ["in another task", work('step { wait 5 min }\ntask A "A" {\n per "6.4"\n step { wait 6 min } }'), false],
  ])("%s", (_title, text, isInDoubt) => {
    expect(doubt(text, WAIT)).toBe(isInDoubt);
  });
  test("a fastener or a declaration that could not be read", () => {
    const tighten = (screw: string, to = "45 N·m"): string =>
      `source Manual "manual"\nvalue Final = 45 N·m\npart Cover "cover"\npart Nut "nut" { ${screw} }\nprocedure Work "Work" { step tighten Nut to ${to} }\n`;
    expect(doubt(tighten("secures Cover"), "torque! of Nut")).toBe(false);
    expect(doubt(tighten("secures Cover  mass"), "torque! of Nut")).toBe(true);
    expect(doubt(tighten("secures Cover", "Final"), "torque! of Nut")).toBe(false);
    expect(doubt(tighten("secures Cover").replace("tighten Nut", "tighten Nut, Bolt"), "torque!")).toBe(true);
    expect(doubt('part Cap "cap" { mass 2 kg  heat limit }', "mass of Cap")).toBe(true);
  });
});
