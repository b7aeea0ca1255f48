// Screw threads: designations read into diameter and pitch, and the geometry of the basic profile. Diameters and pitches
// are exact; areas have π in them and are floating-point numbers in SI. Knows no material.
import { readNumber } from "#quantity/number-text.ts";
import { add, cmp, div, eq, mul, type Rational, rational, toNumber } from "#quantity/rational.ts";
import { decimal } from "#quantity/rounding.ts";
import { unitNamed } from "#quantity/unit.ts";
import { fromNumber, point, quantityOf } from "./ends.ts";
import { type Computed, explained, type Outcome, refused, type Term } from "./explanation.ts";

export interface Thread {
  readonly system: "metric" | "inch";
  /** Coarse and fine are ISO 261's for metric threads, UNC and UNF (ASME B1.1) for inch; `other` is any other pitch. */
  readonly series: "coarse" | "fine" | "other";
  /** `M10x1.5`, `1/4-28 UNF`, `1/2-13`: with the pitch, without tolerance class and hand. */
  readonly designation: string;
  /** Nominal (major) diameter in metres, exact. */
  readonly diameter: Rational;
  /** Pitch in metres, exact. */
  readonly pitch: Rational;
}

/**
 * Reads a thread's designation: `M10`, `M10x1.25`, `M12×1.75-6g LH` (ISO 261, ISO 965-1); `1/4-20 UNC-2A`, `#10-32 UNF`,
 * `1 1/2-12 UN`, `0.250-28`, `1/2-13` (ASME B1.1). Tolerance class and hand are read over: stress areas take the basic
 * profile.
 *
 * Refused, never guessed: a metric size without a pitch that ISO 261 has no coarse one for; a pitch coarser than the coarse
 * one; an inch pitch that is not the one of the series named; threads of another profile (MJ, UNJ, multi-start, pipe).
 */
export function readThread(text: string): Outcome<Thread> {
  const plain = text.trim().replace(/\s+/g, " ").replace(/[×X*]/g, "x").replaceAll("–", "-");
  const found = plain.length > LONGEST ? null : (readMetric(plain) ?? readInch(plain));
  return found === null ? refused({ why: "not known", input: "thread", given: text }) : { ok: true, value: found };
}

/**
 * Tensile stress area in m²: `π/4·(d − 0.9382 P)²`, which is the circle of the mean of pitch and minor diameter (ISO 898-1;
 * second), and `π/4·(d − 0.9743 P)²` for inch threads (ASME B1.1; second). For 60° threads of the basic profile; hot-dip
 * galvanized bolts cut undersize have less.
 */
export function stressAreaOf({ system, diameter, pitch }: Thread): number {
  const depth = system === "metric" ? 0.9382 : 0.9743;
  return (Math.PI / 4) * (toNumber(diameter) - depth * toNumber(pitch)) ** 2;
}

/** {@link stressAreaOf} with how it came about. */
export function stressArea(thread: Thread): Computed {
  const area = fromNumber(stressAreaOf(thread));
  if (area === null) return refused({ why: "not known", input: "thread", given: thread.designation });
  const metric = thread.system === "metric";
  return explained({
    result: {
      name: "stress area",
      symbol: "As",
      value: quantityOf("area", point(area), unitNamed(metric ? "mm²" : "in²"), 3),
    },
    formula: `As = π/4·(d − ${metric ? "0.9382" : "0.9743"} P)²`,
    inputs: [threadTerm("diameter", "d", thread.diameter, thread), threadTerm("pitch", "P", thread.pitch, thread)],
    source: metric ? "ISO 898-1 (second)" : "ASME B1.1 (second)",
    caution: "For the basic profile; a thread cut undersize for a thick coat has less.",
  });
}

/** A length of a thread for an explanation, in the unit of its system. */
export function threadTerm(name: string, symbol: string, length: Rational, { system }: Thread): Term {
  return { name, symbol, value: quantityOf("length", point(length), unitNamed(system === "metric" ? "mm" : "in")) };
}

/** Pitch diameter in metres: `d2 = d − 0.649519 P`, the basic profile's (ISO 724, ASME B1.1; second). */
export function pitchDiameterOf({ diameter, pitch }: Thread): number {
  return toNumber(diameter) - 0.649519 * toNumber(pitch);
}

const LONGEST = 60;

// ---- metric

/** ISO 261: the coarse pitch for each diameter in mm (second). */
const COARSE: Readonly<Record<string, string>> = {
  "1": "0.25",
  "1.1": "0.25",
  "1.2": "0.25",
  "1.4": "0.3",
  "1.6": "0.35",
  "1.8": "0.35",
  "2": "0.4",
  "2.2": "0.45",
  "2.5": "0.45",
  "3": "0.5",
  "3.5": "0.6",
  "4": "0.7",
  "4.5": "0.75",
  "5": "0.8",
  "6": "1",
  "7": "1",
  "8": "1.25",
  "9": "1.25",
  "10": "1.5",
  "11": "1.5",
  "12": "1.75",
  "14": "2",
  "16": "2",
  "18": "2.5",
  "20": "2.5",
  "22": "2.5",
  "24": "3",
  "27": "3",
  "30": "3.5",
  "33": "3.5",
  "36": "4",
  "39": "4",
  "42": "4.5",
  "45": "4.5",
  "48": "5",
  "52": "5",
  "56": "5.5",
  "60": "5.5",
  "64": "6",
  "68": "6",
};
/** The coarsest pitch of any metric thread in mm; above 68 mm all are of constant pitch (ISO 261; memory). */
const COARSEST = rational(8);
const MILLI = rational(1, 1000);
const METRIC = /^M ?(\d+(?:\.\d+)?)(?: ?x ?(\d+(?:\.\d+)?))?(.*)$/;
/** `-6g`, ` 6H`, `-5g6g`, `-6H/6g`, ` LH`, `-LH`. */
const METRIC_REST =
  /^(?:[- ]?\d{1,2}[a-hA-H](?:\d{1,2}[a-hA-H])?(?:\/\d{1,2}[a-h](?:\d{1,2}[a-h])?)?)?(?:[- ]?(?:LH|RH))?$/;

function readMetric(text: string): Thread | null {
  const [, size, pitch, rest = ""] = METRIC.exec(text) ?? [];
  if (size === undefined || !METRIC_REST.test(rest)) return null;
  const d = numberOf(size);
  if (d === null) return null;
  const coarse = numberOf(COARSE[shortest(d)] ?? "");
  const p = pitch === undefined ? coarse : numberOf(pitch);
  if (p === null || p.n <= 0n || cmp(p, coarse ?? COARSEST) > 0 || cmp(mul(p, rational(3)), d) > 0) return null;
  return {
    system: "metric",
    series: coarse !== null && eq(p, coarse) ? "coarse" : "fine",
    designation: `M${shortest(d)}x${shortest(p)}`,
    diameter: mul(d, MILLI),
    pitch: mul(p, MILLI),
  };
}

// ---- inch

/** ASME B1.1: threads an inch of the coarse and the fine series for each size in inches, numbered sizes as `#10` (second). */
const UNIFIED: Readonly<Record<string, readonly [coarse: string, fine: string]>> = {
  "#0": ["", "80"],
  "#1": ["64", "72"],
  "#2": ["56", "64"],
  "#3": ["48", "56"],
  "#4": ["40", "48"],
  "#5": ["40", "44"],
  "#6": ["32", "40"],
  "#8": ["32", "36"],
  "#10": ["24", "32"],
  "#12": ["24", "28"],
  "1/4": ["20", "28"],
  "5/16": ["18", "24"],
  "3/8": ["16", "24"],
  "7/16": ["14", "20"],
  "1/2": ["13", "20"],
  "9/16": ["12", "18"],
  "5/8": ["11", "18"],
  "3/4": ["10", "16"],
  "7/8": ["9", "14"],
  "1": ["8", "12"],
  "1 1/8": ["7", "12"],
  "1 1/4": ["7", "12"],
  "1 3/8": ["6", "12"],
  "1 1/2": ["6", "12"],
  "1 3/4": ["5", ""],
  "2": ["4.5", ""],
  "2 1/4": ["4.5", ""],
  "2 1/2": ["4", ""],
  "2 3/4": ["4", ""],
  "3": ["4", ""],
  "3 1/4": ["4", ""],
  "3 1/2": ["4", ""],
  "3 3/4": ["4", ""],
  "4": ["4", ""],
};
/** The pitches of the constant-pitch series UN (ASME B1.1; memory). */
const CONSTANT = ["4", "6", "8", "12", "16", "20", "28", "32"];
const INCH = rational(254, 10000);
const LARGEST = rational(6);
/** Numbered sizes: 0.060 in and 0.013 in for each number (ASME B1.1; second). */
const [NUMBER_ZERO, NUMBER_STEP] = [rational(60, 1000), rational(13, 1000)];

const SIZE = /(?:(?:#|[Nn]o\.? ?)(?<number>\d{1,2})|(?<size>\d+[ -]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)(?: ?(?:"|in))?)/
  .source;
const TPI = /(?: ?- ?(?<tpi>\d{1,2}(?:\.\d+)?)(?: ?TPI)?)?/.source;
const SERIES = /(?:[ -]?(?<series>U?NR?(?:C|F|EF|S)?))?/.source;
const INCH_REST = /(?:[- ]?[1235][AB]?)?(?:[- ]?(?:LH|RH))?/.source;
const UNIFIED_THREAD = new RegExp(`^${SIZE}${TPI}${SERIES}${INCH_REST}$`);

function readInch(text: string): Thread | null {
  const { number, size, tpi, series: word } = UNIFIED_THREAD.exec(text)?.groups ?? {};
  if (number === undefined && size === undefined) return null;
  const key = number === undefined ? sizeKey(size ?? "", tpi) : `#${Number(number)}`;
  const d = key === null ? null : inchesOf(key);
  if (key === null || d === null || d.n <= 0n || cmp(d, LARGEST) > 0) return null;
  const [coarse, fine] = UNIFIED[key] ?? ["", ""];
  const series = word === undefined ? "" : `UN${word.replace(/^U?NR?/, "")}`;
  const given = tpi ?? (series === "UNC" ? coarse : series === "UNF" ? fine : "");
  const threads = numberOf(given);
  if (threads === null || threads.n <= 0n || !belongs(series, shortest(threads), coarse, fine)) return null;
  const p = div(rational(1), threads);
  if (cmp(mul(p, rational(3)), d) > 0) return null;
  const count = shortest(threads);
  return {
    system: "inch",
    series: count === coarse ? "coarse" : count === fine ? "fine" : "other",
    designation: `${key}-${count}${series === "" ? "" : ` ${series}`}`,
    diameter: mul(d, INCH),
    pitch: mul(p, INCH),
  };
}

function belongs(series: string, count: string, coarse: string, fine: string): boolean {
  if (series === "UNC") return count === coarse;
  if (series === "UNF") return count === fine;
  return series !== "UN" || CONSTANT.includes(count);
}

/** The size as the table has it: `10-32` is number 10, `1-8` one inch, `0.25` is `1/4`. */
function sizeKey(size: string, tpi: string | undefined): string | null {
  const plain = size.replace("-", " ").replace(/^\./, "0.");
  if (/^\d+$/.test(plain) && tpi !== undefined && UNIFIED[`#${Number(plain)}`]?.includes(tpi)) {
    return `#${Number(plain)}`;
  }
  const d = numberOf(plain);
  if (d === null) return null;
  return Object.keys(UNIFIED).find((key) => eq(inchesOf(key) ?? rational(0), d)) ?? plain;
}

function inchesOf(key: string): Rational | null {
  if (!key.startsWith("#")) return numberOf(key);
  const known = Object.hasOwn(UNIFIED, key);
  return known ? add(NUMBER_ZERO, mul(NUMBER_STEP, rational(Number(key.slice(1))))) : null;
}

// ---- numbers

function numberOf(text: string): Rational | null {
  const reading = readNumber(text);
  return reading.ok && !reading.comma ? reading.value : null;
}

/** `1.5`, `10`: at most six decimals, without zeros at the end. */
function shortest(value: Rational): string {
  return decimal(value, -6).replace(/\.?0+$/, "");
}
