// Slips in numbers, units and dates, as they come from other papers: thousands marks, hours with minutes, inch signs, dashes, limits in
// words. Written from the language's description and from what stands in shop papers; each brings one finding.
import { procedure, type WriterSlip } from "./slip-texts.ts";

const gauge = 'tool Gauge "gauge" { measures 0 .. 5000 mm }\n';
const inStep = (line: string): string => procedure(`  step { ${line} }\n  step inspect Cover, Seal`, "", gauge);
const value = (written: string): string => `value V = ${written}\n`;

function long(written: string, mended: string): WriterSlip {
  return {
    slip: `a long number in groups: ${written}`,
    text: value(`${written} N`),
    code: "syntax.unexpected",
    at: written,
    message: new RegExp(`Write ${mended}\\.$`, "m"),
  };
}

function range(written: string, mended: string, code = "syntax.dash-range"): WriterSlip {
  return {
    slip: `a range written ${written}`,
    text: value(`${written} N·m`),
    code,
    at: written,
    message: new RegExp(`Write ${mended.replaceAll(".", "\\.")}\\.`),
  };
}

function limit(sign: string, words: string): WriterSlip {
  return {
    slip: `a limit written ${sign}`,
    text: inStep(`measure "gap" with Gauge expect ${sign} 3 mm`),
    code: /[a-z]/.test(sign) ? "syntax.unexpected" : "syntax.character",
    at: sign,
    message: new RegExp(`Write “${words}”`),
  };
}

export const numberSlips: readonly WriterSlip[] = [
  long("1 000", "1000"),
  long("1\u202f000", "1000"),
  long("12'500", "12500"),
  long("12’500", "12500"),
  long("1.000,5", "1000.5"),
  long("1,000.5", "1000.5"),
  {
    slip: "a comma that may part thousands",
    text: value("1,000 N"),
    code: "syntax.decimal-comma",
    at: "1,000",
    message: /Write 1000 or 1\.000, whichever is meant/,
  },
  {
    slip: "a comma that may part thousands, in a limit that no gauge reaches",
    text: inStep('measure "gap" with Gauge expect at most 9,000 mm'),
    code: "syntax.decimal-comma",
    at: "9,000",
    message: /Write 9000 or 9\.000/,
  },
  {
    slip: "a place on the clock with minutes",
    text: 'ring Circle "circle" { count 4  position 1 at 3:30 o\'clock }\n',
    code: "syntax.unexpected",
    at: "3:30",
    message: /Write 3\.5\./,
  },
  {
    slip: "a place on the clock as a time without its unit",
    text: procedure(
      "  step turn Circle[1] to 3:00\n  step inspect Cover, Seal",
      "",
      'ring Circle "circle" { count 4 }\n',
    ),
    code: "syntax.unexpected",
    at: "3:00",
    message: /3\.5 o'clock/,
  },
  {
    slip: "hours and minutes with a colon",
    text: procedure("  step inspect Cover takes 1:30 h\n  step inspect Seal"),
    code: "syntax.unexpected",
    at: "1:30",
    message: /Write 1\.5\./,
  },
  {
    slip: "a value in two units",
    text: procedure("  step inspect Cover takes 1 h 30 min\n  step inspect Seal"),
    code: "syntax.unexpected",
    at: "30",
    message: /Write “\+ 30”/,
  },
  range("38 - 42", "38 .. 42"),
  range("0,1-0,5", "0.1 .. 0.5"),
  range("0,1–0,5", "0.1 .. 0.5"),
  {
    slip: "`to` in a range",
    text: inStep('measure "gap" with Gauge expect 1 to 3 mm'),
    code: "syntax.unexpected",
    at: "to",
    within: "to 3 mm",
    message: /“\.\.”/,
  },
  {
    slip: "`to` in the instances of a declaration",
    text: 'part Nut[1 to 8] "nut"\n',
    code: "syntax.unexpected",
    at: "to",
    message: /“\.\.”/,
  },
  limit("≤", "at most"),
  limit(">=", "at least"),
  limit("<", "at most"),
  limit("not more than", "at most"),
  limit("up to", "at most"),
  {
    slip: "a fraction sign",
    text: value("3½ in"),
    code: "syntax.character",
    at: "½",
    message: /Write “1\/2”/,
  },
  {
    slip: "a plus sign before a value",
    text: value("+5 °C"),
    code: "syntax.unexpected",
    at: "+",
    message: /Take the “\+” out/,
  },
  {
    slip: "about",
    text: value("~40 N·m"),
    code: "syntax.character",
    at: "~",
    message: /range or a tolerance/,
  },
  {
    slip: "an inch sign",
    text: 'tool Rule "rule" { measures 0 .. 12" }\n',
    code: "units.ambiguous",
    at: '"',
    within: '" }',
    message: /Write in,/,
  },
  {
    slip: "one sign of per cent for a list of stages",
    text: procedure(
      '  begin with Screw[all] are installed\n  step tighten Screw[all] to 30, 70, 100 % of Final with Wrench per Manual "2"\n  step inspect Cover, Seal',
      "",
      'source Manual "manual"\ntool Wrench "wrench" { torque 5 .. 60 N·m }\nvalue Final = 40 N·m\n',
    ),
    code: "units.mismatch",
    at: "30",
    message: /Write 30 %\./,
  },
  {
    slip: "`of` is missing behind a share",
    text: "value Final = 40 N·m\nvalue Third = 30 % Final\n",
    code: "syntax.unexpected",
    at: "Final",
    within: "Final\n",
    message: /“of Final”/,
  },
  {
    slip: "a range in parentheses without its unit",
    text: value("40 N·m (39 .. 43)"),
    code: "units.mismatch",
    at: "43",
    message: /Write 43 N·m/,
  },
  {
    slip: "a date in quotation marks",
    text: 'source Manual "manual" revision "9" dated "2026-05-04"\n',
    code: "syntax.unexpected",
    at: '"2026-05-04"',
    message: /Write 2026-05-04/,
  },
];
