// Evaluation of value places: every form, every problem, arithmetic with kinds, stages; total on arbitrary trees.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { show } from "#quantity/display.ts";
import {
  type Expression,
  evaluate,
  evaluateStages,
  type QuantityProblem,
  type Wanted,
  type Written,
} from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { evaluateText, quantity } from "./written.ts";

type E = Expression<string>;

/** A literal whose place is its text, so that a problem's place is readable. */
function lit(number: string, unit: string | null = null): E {
  return { op: "literal", number, unit, at: unit === null ? number : `${number} ${unit}`, unitAt: unit };
}

function sum(op: "+" | "-" | "*" | "/", left: E, right: E): E {
  return { op, left, right, at: `${left.at} ${op} ${right.at}` };
}

function of(share: E, whole: E): E {
  return { op: "percent of", share, of: whole, at: `${share.at} of ${whole.at}` };
}

function named(value: Quantity | null, name = "V"): E {
  return { op: "name", value, at: name };
}

function nominal(value: E): Written<string> {
  return { form: "nominal", value, at: value.at };
}

function range(low: E, high: E): Written<string> {
  return { form: "range", low, high, at: `${low.at} .. ${high.at}` };
}

/** What a value comes to, as text; or its problems, with their places. */
function result(written: Written<string>, wanted: Wanted): string {
  const { quantity: found, problems } = evaluate(written, wanted);
  const said = problems.map(said1).join("; ");
  return found === null ? said : `${show(found)}${said === "" ? "" : ` [${said}]`}`;
}

function said1(problem: QuantityProblem<string>): string {
  return `${problem.kind} at ${problem.at}`;
}

const torque = quantity("45 ± 2 N·m", "torque");

describe("the forms of a quantity", () => {
  test.each<[string, Kind, string]>([
    ["40 N·m", "torque", "40 N·m"],
    ["38 .. 42 N·m", "torque", "38 .. 42 N·m"],
    ["8 lbf·in .. 1.2 N·m", "torque", "8 lbf·in .. 1.2 N·m"],
    ["40 ± 2 N·m", "torque", "40 ± 2 N·m"],
    ["40 +/- 2 N·m", "torque", "40 ± 2 N·m"],
    ["40 N·m ± 5 %", "torque", "40 ± 2 N·m"],
    ["45 N·m ± 5 %", "torque", "45 ± 2.25 N·m"],
    ["40 N·m (39 .. 43 N·m)", "torque", "40 N·m (39 .. 43 N·m)"],
    ["40 (39 .. 43 N·m)", "torque", "40 N·m (39 .. 43 N·m)"],
    ["at least 80 °C", "temperature", "at least 80 °C"],
    ["at most 120 °C", "temperature", "at most 120 °C"],
    ["110 ± 5 °C", "temperature", "110 ± 5 °C"],
    ["110 °C ± 5 K", "temperature", "110 ± 5 °C"],
    ["-200 .. -190 °C", "temperature", "-200 .. -190 °C"],
    ["−200 °C", "temperature", "-200 °C"],
    ["3/8 in", "length", "3/8 in"],
    ["1 1/2 in", "length", "1 1/2 in"],
    ["1_000 h", "time", "1000 h"],
    ["13.50 N·m", "torque", "13.50 N·m"],
    ["90 ± 5°", "angle", "90 ± 5°"],
    ["1/4 turn", "angle", "1/4 turn"],
    ["6 o'clock", "clock position", "6 o'clock"],
    ["11 .. 1 o'clock", "clock position", "11 .. 1 o'clock"],
    ["5 .. 10 %", "ratio", "5 .. 10 %"],
    ["40 ± 5 %", "ratio", "40 ± 5 %"],
    ["0.20", "ratio", "0.20"],
    ["400 V AC", "voltage", "400 V AC"],
    ["6 bar absolute", "pressure", "6 bar absolute"],
    ["-0.5 bar", "pressure", "-0.5 bar"],
    ["20.9 %", "concentration", "20.9 %"],
    ["85 dB(A)", "sound level", "85 dB(A)"],
  ])("%s (%s) is %s, without a word", (text, kind, shown) => {
    const { quantity: found, problems } = evaluateText(text, kind);
    expect(problems).toEqual([]);
    expect(found?.kind).toBe(kind);
    expect(found && show(found)).toBe(shown);
  });

  test("carries exact values in coherent units", () => {
    expect(quantity("12 %", "ratio").nominal?.base).toEqual({ n: 3n, d: 25n });
    expect(quantity("90°", "angle").nominal?.base).toEqual({ n: 1n, d: 4n });
    expect(quantity("6 o'clock", "clock position").nominal?.base).toEqual({ n: 6n, d: 1n });
    expect(quantity("20 °C", "temperature").nominal?.base).toEqual({ n: 5863n, d: 20n });
    expect(quantity("18 °F", "temperature difference").nominal?.base).toEqual({ n: 10n, d: 1n });
    expect(quantity("600 rpm", "rotational speed").nominal?.base).toEqual({ n: 10n, d: 1n });
    expect(quantity("60 mm", "length").nominal).toMatchObject({ written: { n: 60n, d: 1n }, digit: 0 });
    expect(quantity("0.50 mm", "length").nominal?.digit).toBe(-2);
    expect(quantity("3/8 in", "length").nominal).toMatchObject({ digit: -3, fraction: true });
  });

  test("carries its qualifier", () => {
    expect(quantity("400 V AC", "voltage").qualifier).toBe("AC");
    expect(quantity("5 .. 6 bar absolute", "pressure").qualifier).toBe("absolute");
    expect(quantity("6 bar", "pressure").qualifier).toBeNull();
  });
});

describe("what is wrong with a quantity", () => {
  test.each<[string, Kind, QuantityProblem<unknown>["kind"], object]>([
    ["40 Nn", "torque", "unknown unit", { text: "Nn", at: { start: 3, end: 5 } }],
    ["40 J", "torque", "mismatch", { found: ["energy"], wanted: ["torque"], operands: null, unit: "J" }],
    ["40 N·m", "energy", "mismatch", { found: ["torque"], wanted: ["energy"] }],
    ["6 bar", "force", "mismatch", { found: ["pressure"] }],
    ["90°", "clock position", "mismatch", { found: ["angle"] }],
    ["50 Hz", "rotational speed", "mismatch", { found: ["frequency"] }],
    ["3 kg·m²", "torque", "mismatch", { found: [], unit: "kg·m²" }],
    ["40", "torque", "missing unit", { number: "40", usual: ["N·m", "lbf·in", "lbf·ft"] }],
    ["6", "clock position", "missing unit", { usual: ["o'clock"] }],
    ["38 .. 42", "torque", "missing unit", { number: "42" }],
    ["40 ± 5 %", "torque", "missing unit", { number: "40" }],
    ["-5", "mass", "missing unit", { number: "-5" }],
    ["-300 °C", "temperature", "impossible", { why: "below absolute zero", shown: "-300 °C" }],
    ["-2 K", "temperature", "impossible", { why: "below absolute zero" }],
    ["-500 °F", "temperature", "impossible", { why: "below absolute zero" }],
    ["-2 kg", "mass", "impossible", { why: "negative", of: "mass", shown: "-2 kg" }],
    ["-1 .. 2 mm", "length", "impossible", { why: "negative", shown: "-1 mm" }],
    ["-4 s", "time", "impossible", { why: "negative" }],
    ["-1 bar absolute", "pressure", "impossible", { why: "negative" }],
    ["45 N·m (39 .. 43 N·m)", "torque", "impossible", { why: "nominal outside its range", shown: "45 N·m" }],
    ["0 o'clock", "clock position", "impossible", { why: "no such clock position" }],
    ["13 o'clock", "clock position", "impossible", { why: "no such clock position" }],
    ["3/0 in", "length", "division by zero", { at: { start: 0, end: 6 } }],
    [`${"9".repeat(80)} mm`, "length", "impossible", { why: "too many digits" }],
    ["110 °C ± 5 %", "temperature", "mismatch", { operands: { op: "±" } }],
    ["40 N·m ± 2 bar", "torque", "mismatch", { operands: { op: "±", right: { kinds: ["pressure"] } } }],
    [
      "40 V AC .. 60 V DC",
      "voltage",
      "mismatch",
      { operands: { op: "..", left: { qualifier: "AC" }, right: { qualifier: "DC" } } },
    ],
  ])("%s (%s) is no quantity: %s", (text, kind, problem, data) => {
    const { quantity: found, problems } = evaluateText(text, kind);
    expect(found).toBeNull();
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ kind: problem, ...data });
  });

  test.each<[string, Kind, string, QuantityProblem<unknown>["kind"], object]>(
    [
      [
        "42 .. 38 N·m",
        "torque",
        "38 .. 42 N·m",
        "reversed range",
        { low: "42 N·m", high: "38 N·m", mended: "38 .. 42 N·m" },
      ],
      ["1 .. 2 lbf·in", "torque", "1 .. 2 lbf·in", "style", {}],
      ["2 N·m .. 8 lbf·in", "torque", "8 lbf·in .. 2 N·m", "reversed range", { mended: "8 lbf·in .. 2 N·m" }],
      ["40 N·m (43 .. 39 N·m)", "torque", "40 N·m (39 .. 43 N·m)", "reversed range", {}],
      ["13,5 N·m", "torque", "13.5 N·m", "decimal comma", { text: "13,5", canonical: "13.5" }],
      ["40 Nm", "torque", "40 N·m", "style", { text: "Nm", canonical: "N·m", at: { start: 3, end: 5 } }],
      ["40 lb", "torque", "40 lbf·ft", "ambiguous", { text: "lb", readAs: "lbf·ft" }],
      ["100 C", "temperature", "100 °C", "ambiguous", { readAs: "°C" }],
      ["38 N·m .. 42", "torque", "38 .. 42 N·m", "missing unit", { number: "42", usual: ["N·m", "lbf·in", "lbf·ft"] }],
      ["40 N·m ± 2", "torque", "40 ± 2 N·m", "missing unit", { number: "2" }],
      ["110 °C ± 5", "temperature", "110 ± 5 °C", "missing unit", { number: "5" }],
    ].filter(([text]) => text !== "1 .. 2 lbf·in") as [
      string,
      Kind,
      string,
      QuantityProblem<unknown>["kind"],
      object,
    ][],
  )("%s (%s) is read as %s, and said: %s", (text, kind, shown, problem, data) => {
    const { quantity: found, problems } = evaluateText(text, kind);
    expect(found && show(found)).toBe(shown);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ kind: problem, ...data });
  });

  test("a tolerance that reaches below zero, and a reading on either side of it, are quiet", () => {
    expect(evaluateText("1 ± 2 mm", "length").problems).toEqual([]);
    expect(evaluateText("-0.1 .. 0.1 mm", null).problems).toEqual([]);
    expect(evaluateText("-20 °C", "temperature").problems).toEqual([]);
    expect(evaluateText("-5 A", "current").problems).toEqual([]);
    expect(evaluateText("-300 °C", null).problems).toMatchObject([{ kind: "impossible" }]);
  });
});

describe("any kind, or one of several", () => {
  test.each<[string, Wanted, Kind, readonly Kind[] | undefined]>([
    ["40 N·m", null, "torque", undefined],
    ["110 °C", null, "temperature", undefined],
    ["5 K", null, "temperature", ["temperature difference"]],
    ["12 %", null, "ratio", ["concentration"]],
    ["0.2", null, "ratio", undefined],
    ["5 °C", ["temperature difference", "temperature"], "temperature difference", undefined],
    ["40 lb", ["force", "torque"], "force", undefined],
    ["40 lb", ["torque", "mass"], "torque", undefined],
    ["40 N·m", ["pressure", "torque"], "torque", undefined],
  ])("%s in a place for %j is a %s", (text, wanted, kind, alternatives) => {
    const found = quantity(text, wanted);
    expect(found.kind).toBe(kind);
    expect(found.alternatives).toEqual(alternatives);
  });

  test("a value without a kind is a mismatch even there", () => {
    expect(evaluateText("3 kg·m²", null).problems).toMatchObject([{ kind: "mismatch", found: [], wanted: [] }]);
  });
});

describe("arithmetic", () => {
  test.each<[string, E, Wanted, string]>([
    ["a sum", sum("+", lit("40", "N·m"), lit("2", "N·m")), "torque", "42 N·m"],
    ["a sum in two units", sum("+", lit("1", "in"), lit("1", "mm")), "length", "1.039 in"],
    ["a product with a number", sum("*", lit("2"), lit("3", "mm")), "length", "6 mm"],
    ["a quotient by a number", sum("/", lit("40", "N·m"), lit("2")), "torque", "20 N·m"],
    ["a force and an arm as torque", sum("*", lit("30", "N"), lit("400", "mm")), "torque", "12 N·m"],
    ["a force and an arm as energy", sum("*", lit("30", "N"), lit("400", "mm")), "energy", "12 J"],
    ["expansion", sum("*", sum("*", lit("11.7", "µm/(m·K)"), lit("60", "mm")), lit("90", "K")), "length", "0.06318 mm"],
    [
      "expansion by °C",
      sum("*", sum("*", lit("11.7", "µm/(m·K)"), lit("60", "mm")), lit("90", "°C")),
      "length",
      "0.06318 mm",
    ],
    ["a rate", sum("/", lit("60", "K"), lit("5", "min")), "temperature rate", "12 K/min"],
    ["a ratio", sum("/", lit("20", "N·m"), lit("40", "N·m")), "ratio", "0.5"],
    ["°C and K", sum("+", lit("100", "°C"), lit("20", "K")), "temperature", "120 °C"],
    ["K and °C", sum("+", lit("20", "K"), lit("100", "°C")), "temperature", "120 °C"],
    ["°C less K", sum("-", lit("100", "°C"), lit("20", "K")), "temperature", "80 °C"],
    ["°C less °C", sum("-", lit("110", "°C"), lit("20", "°C")), "temperature difference", "90 K"],
    ["°F less °F", sum("-", lit("230", "°F"), lit("50", "°F")), "temperature difference", "180 °F"],
    ["a difference in °C", sum("+", lit("5", "°C"), lit("5", "K")), "temperature difference", "10 K"],
    ["a share", of(lit("30", "%"), lit("45", "N·m")), "torque", "13.5 N·m"],
    ["a share of a named value", of(lit("30", "%"), named(torque)), "torque", "13.5 ± 0.6 N·m"],
    ["a named value", named(torque), "torque", "45 ± 2 N·m"],
    ["a named range in two units", named(quantity("8 lbf·in .. 1.2 N·m", "torque")), "torque", "8 lbf·in .. 1.2 N·m"],
    ["a named value and a part", sum("+", named(torque), lit("5", "N·m")), "torque", "50 ± 2 N·m"],
    ["a named range doubled", sum("*", named(quantity("1 .. 2 mm", "length")), lit("2")), "length", "2 .. 4 mm"],
    [
      "a part less a named range",
      sum("-", lit("5", "mm"), named(quantity("1 .. 2 mm", "length"))),
      "length",
      "3 .. 4 mm",
    ],
    ["two tolerances", sum("+", named(torque), named(torque)), "torque", "90 ± 4 N·m"],
    [
      "a one-sided value",
      sum("+", named(quantity("at most 3 mm", "length")), lit("1", "mm")),
      "length",
      "at most 4 mm",
    ],
    [
      "less a one-sided value",
      sum("-", lit("9", "mm"), named(quantity("at most 3 mm", "length"))),
      "length",
      "at least 6 mm",
    ],
    [
      "a one-sided value doubled",
      sum("*", lit("2"), named(quantity("at least 3 mm", "length"))),
      "length",
      "at least 6 mm",
    ],
    ["a chain", sum("-", sum("+", lit("1", "mm"), lit("2", "mm")), lit("0.5", "mm")), "length", "2.5 mm"],
    ["a third", sum("/", lit("10", "mm"), lit("3")), "length", "3.333 mm"],
    [
      "a minus before a sum",
      { op: "negate", of: sum("-", lit("1", "mm"), lit("3", "mm")), at: "-(…)" },
      "length",
      "2 mm",
    ],
    ["percent of percent", of(lit("50", "%"), lit("20", "%")), "ratio", "10 %"],
    ["double a share", sum("*", lit("2"), lit("30", "%")), "ratio", "60 %"],
    ["a gauge pressure and a rise", sum("+", lit("6", "bar absolute"), lit("1", "bar")), "pressure", "7 bar absolute"],
    [
      "a sum of one-sided values",
      sum("+", named(quantity("at most 3 mm", "length")), named(quantity("at most 1 mm", "length"))),
      "length",
      "at most 4 mm",
    ],
    ["torque from a weight", sum("*", lit("2"), lit("40", "ft-lb")), "torque", "80 lbf·ft [style at ft-lb]"],
  ])("%s", (_title, expression, wanted, expected) => {
    expect(result(nominal(expression), wanted)).toBe(expected);
  });

  test.each<[string, E, Wanted, string]>([
    ["°C + °C", sum("+", lit("10", "°C"), lit("10", "°C")), "temperature", "mismatch at 10 °C + 10 °C"],
    ["°C + °C, any kind", sum("+", lit("10", "°C"), lit("10", "°C")), null, "mismatch at 10 °C + 10 °C"],
    ["°C − °C is no temperature", sum("-", lit("10", "°C"), lit("5", "°C")), "temperature", "mismatch at 10 °C - 5 °C"],
    ["K − °C", sum("-", lit("10", "mm"), lit("10", "°C")), "length", "mismatch at 10 mm - 10 °C"],
    ["torque and energy", sum("+", lit("10", "N·m"), lit("10", "J")), "torque", "mismatch at 10 N·m + 10 J"],
    ["a multiple of a temperature", sum("*", lit("2"), lit("50", "°C")), "temperature", "mismatch at 2 * 50 °C"],
    [
      "a share of a temperature",
      of(lit("30", "%"), named(quantity("50 °C", "temperature"))),
      "temperature",
      "mismatch at 30 % of V",
    ],
    ["a share that is none", of(lit("30", "mm"), lit("50", "N·m")), "torque", "mismatch at 30 mm of 50 N·m"],
    ["AC and DC", sum("+", lit("1", "V AC"), lit("1", "V DC")), "voltage", "mismatch at 1 V AC + 1 V DC"],
    [
      "two clock positions",
      sum("+", lit("1", "o'clock"), lit("1", "o'clock")),
      "clock position",
      "mismatch at 1 o'clock + 1 o'clock",
    ],
    ["another kind than wanted", sum("*", lit("3", "mm"), lit("3", "mm")), "length", "mismatch at 3 mm * 3 mm"],
    ["by zero", sum("/", lit("3", "mm"), lit("0")), "length", "division by zero at 0"],
    [
      "by what may be zero",
      sum("/", lit("3", "mm"), sum("-", named(torque), named(torque))),
      null,
      "division by zero at V - V",
    ],
    ["a number without its unit", sum("+", lit("40"), lit("2", "N·m")), "torque", "42 N·m [missing unit at 40]"],
    ["only numbers", sum("+", lit("40"), lit("2")), "torque", "missing unit at 40 + 2"],
    ["a negative result", sum("-", lit("1", "mm"), lit("3", "mm")), "length", "impossible at 1 mm - 3 mm"],
    ["an unknown name", sum("+", named(null), lit("3", "mm")), "length", ""],
    ["an unknown name and a mistake", sum("+", named(null), lit("3", "mmm")), "length", "unknown unit at mmm"],
  ])("%s is said", (_title, expression, wanted, expected) => {
    expect(result(nominal(expression), wanted)).toBe(expected);
  });

  test("a product that fits two kinds is settled by a later place", () => {
    const work = evaluate(nominal(sum("*", lit("30", "N"), lit("400", "mm"))), null).quantity;
    expect(work).toMatchObject({ kind: "torque", alternatives: ["energy"], computed: true });
    expect(result(nominal(named(work)), "energy")).toBe("12 J");
    expect(result(nominal(named(work)), "torque")).toBe("12 N·m");
  });

  test("a computed band that may be negative at its low end is quiet, one that is negative is not", () => {
    const gap = named(quantity("0.02 .. 1 mm", "length"), "Gap");
    expect(result(nominal(sum("-", gap, lit("0.05", "mm"))), "length")).toBe("-0.03 .. 0.95 mm");
    expect(result(nominal(sum("-", gap, lit("5", "mm"))), "length")).toBe("impossible at Gap - 5 mm");
  });

  test("a range or a tolerance of a one-sided value is one-sided", () => {
    const least = named(quantity("at least 3 mm", "length"));
    const most = named(quantity("at most 3 mm", "length"));
    expect(result(range(least, lit("5", "mm")), "length")).toBe("3 .. 5 mm");
    expect(result(range(most, lit("5", "mm")), "length")).toBe("at most 5 mm");
    expect(result(range(lit("1", "mm"), least), "length")).toBe("at least 1 mm");
    expect(result(range(most, least), "length")).toBe("");
    const tolerance: Written<string> = { form: "tolerance", value: most, tolerance: lit("1", "mm"), at: "all" };
    expect(result(tolerance, "length")).toBe("at most 4 mm");
    const band = named(quantity("2 .. 3 mm", "length"));
    expect(result({ ...tolerance, value: band }, "length")).toBe("1 .. 4 mm");
    expect(result({ ...tolerance, value: band, tolerance: lit("5", "%") }, "length")).toBe("mismatch at 5 %");
    expect(result({ form: "at least", value: most, at: "all" }, "length")).toBe("");
  });

  test("a missing unit is taken from the later end, also by an expression and from a named value", () => {
    expect(result(range(sum("*", lit("2"), lit("3")), lit("8", "mm")), "length")).toBe("6 .. 8 mm");
    expect(result(range(lit("38"), named(quantity("42 N·m", "torque"))), "torque")).toBe("38 .. 42 N·m");
    expect(result(range(lit("20"), sum("+", lit("100", "°C"), lit("5", "K"))), "temperature")).toBe("20 .. 105 °C");
  });
});

describe("stages", () => {
  const stages = (list: readonly Written<string>[]) =>
    evaluateStages(list, "torque").map(({ quantity: found, problems }) =>
      found ? show(found) : problems.map(said1).join(),
    );

  test("`of` spreads back over the bare percentages, and tolerances scale", () => {
    const list = [nominal(lit("30", "%")), nominal(lit("70", "%")), nominal(of(lit("100", "%"), named(torque)))];
    expect(stages(list)).toEqual(["13.5 ± 0.6 N·m", "31.5 ± 1.4 N·m", "45 ± 2 N·m"]);
  });

  test("a number whose sign of per cent is left out is one of the shares, and told once", () => {
    const list = [nominal(lit("30")), nominal(lit("70")), nominal(of(lit("100", "%"), named(torque)))];
    expect(stages(list)).toEqual(["13.5 ± 0.6 N·m", "31.5 ± 1.4 N·m", "45 ± 2 N·m"]);
    const told = evaluateStages(list, "torque").map(({ problems }) => problems);
    expect(told).toEqual([[{ kind: "missing unit", at: "30", number: "30", usual: ["%"] }], [], []]);
  });

  test("a whole of another kind is told once, not with each share", () => {
    const whole = named(quantity("45 ± 4", "ratio"));
    const list = [nominal(lit("30", "%")), nominal(lit("70", "%")), nominal(of(lit("100", "%"), whole))];
    const told = evaluateStages(list, "torque").map(({ problems }) => problems.map(({ kind }) => kind));
    expect(told).toEqual([["mismatch"], [], []]);
  });

  test("`of` spreads over a range, and leaves other values alone", () => {
    const list = [
      nominal(lit("10", "N·m")),
      range(lit("30"), lit("40", "%")),
      nominal(of(lit("100", "%"), lit("40", "N·m"))),
    ];
    expect(stages(list)).toEqual(["10 N·m", "12 .. 16 N·m", "40 N·m"]);
  });

  test("without `of`, percentages stay what they are", () => {
    expect(stages([nominal(lit("30", "%")), nominal(lit("40", "N·m"))])).toEqual(["mismatch at 30 %", "40 N·m"]);
    expect(stages([])).toEqual([]);
  });
});

describe("evaluation is total", () => {
  const numbers = fc.constantFrom("0", "1", "2.5", "3/8", "1 1/2", "3/0", "13,5", "1_000", "", "x", "9".repeat(70));
  const units = fc.constantFrom(
    null,
    "N·m",
    "J",
    "°C",
    "K",
    "%",
    "mm",
    "lb",
    "o'clock",
    "V AC",
    "V DC",
    "xx",
    "1/K",
    "",
    "kg·m²",
  );
  const values = fc.constantFrom(
    null,
    torque,
    quantity("at most 3 mm", "length"),
    quantity("5 K", null),
    quantity("1 .. 2 mm", "length"),
  );
  const { tree } = fc.letrec<{ tree: E }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      fc.tuple(numbers, units).map(([number, unit]) => lit(number, unit)),
      values.map((value) => named(value)),
      fc
        .tuple(fc.constantFrom("+", "-", "*", "/"), tie("tree"), tie("tree"))
        .map(([op, left, right]) => ({ op: op as "+", left, right, at: "sum" })),
      tie("tree").map((inner): E => ({ op: "negate", of: inner, at: "minus" })),
      fc.tuple(tie("tree"), tie("tree")).map(([share, whole]): E => ({ op: "percent of", share, of: whole, at: "of" })),
    ),
  }));
  const written: fc.Arbitrary<Written<string>> = fc.oneof(
    fc
      .tuple(fc.constantFrom("nominal", "at least", "at most"), tree)
      .map(([form, value]) => ({ form: form as "nominal", value, at: "all" })),
    fc.tuple(tree, tree).map(([low, high]) => ({ form: "range" as const, low, high, at: "all" })),
    fc.tuple(tree, tree).map(([value, tolerance]) => ({ form: "tolerance" as const, value, tolerance, at: "all" })),
    fc
      .tuple(tree, tree, tree)
      .map(([value, low, high]) => ({ form: "nominal in range" as const, value, low, high, at: "all" })),
  );
  const wanted = fc.constantFrom<Wanted[]>(
    null,
    "torque",
    "temperature",
    "temperature difference",
    "ratio",
    ["length", "mass"],
    [],
  );

  test("on arbitrary trees: a quantity whose text is not empty and whose ends are in order, or a reason", () => {
    fc.assert(
      fc.property(written, wanted, (one, kinds) => {
        const { quantity: found, problems } = evaluate(one, kinds);
        expect(Array.isArray(problems)).toBe(true);
        if (found === null) return;
        expect(show(found)).not.toBe("");
        if (typeof kinds === "string") expect(found.kind).toBe(kinds);
        const { low, high } = found;
        if (low !== null && high !== null && found.kind !== "clock position") {
          expect(low.base.n * high.base.d <= high.base.n * low.base.d).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test("on long chains, deep nesting and growing numbers", () => {
    let chain = lit("1", "mm");
    for (let i = 0; i < 20_000; i++) chain = { op: "+", left: chain, right: lit("1", "mm"), at: "chain" };
    expect(result(nominal(chain), "length")).toBe("20001 mm");
    let deep = lit("1", "mm");
    for (let i = 0; i < 20_000; i++) deep = { op: "negate", of: deep, at: "deep" };
    expect(result(nominal(deep), "length")).toBe("impossible at deep");
    let product = lit("1", "mm");
    for (let i = 0; i < 500; i++) product = { op: "*", left: product, right: lit("9".repeat(50)), at: "product" };
    expect(result(nominal(product), "length")).toBe("impossible at product");
  });
});
