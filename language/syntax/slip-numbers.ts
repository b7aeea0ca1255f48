// Slips in quantities and dates: limits and amounts behind their place, two units for one value, a range with a word, a time of day.
import type { IToken } from "chevrotain";
import type { Misfit, Recognise, Recognised } from "./slip.ts";
import { isWord, opensLine, touches, typeName } from "./statements.ts";

/** In the order in which they are looked for. */
export const NUMBER_SLIPS: readonly Recognise[] = [
  amountBehind,
  limitInWords,
  limitBehind,
  unitInParts,
  timeOfDay,
  plusSign,
];

/** `fill Tank with Oil 5 L`: what is filled in stands behind its amount. */
function amountBehind({ tokens, start, at, end }: Misfit): Recognised | null {
  const [number, unit] = [tokens[at], tokens[at + 1]];
  if (at + 1 >= end || !isNumber(number) || typeName(unit) !== "UNIT" || !takesAmount(tokens, start)) return null;
  const verb = verbAt(tokens, start);
  const isFill = typeName(tokens[verb]) === "fill";
  const of = isFill ? tokens[at - 1] : tokens[verb + 1];
  if (!isWord(of) || opensLine(tokens, at)) return null;
  const mended = `${isFill ? "with" : "apply"} ${number?.image} ${unit?.image} of ${of?.image}`;
  return { name: "amount behind", mended, last: at + 1 };
}

/** `expect 1 mm max`, `expect max 1 mm`: a limit is a word before its value. */
function limitBehind({ tokens, at, end }: Misfit): Recognised | null {
  if (at >= end || opensLine(tokens, at)) return null;
  const isBehind = isNumber(tokens[at - 1]) || typeName(tokens[at - 1]) === "UNIT";
  const word = isBehind ? tokens[at] : isNumber(tokens[at]) ? tokens[at - 1] : undefined;
  const limit = LIMITS[word?.image.toLowerCase() ?? ""];
  return limit === undefined ? null : { name: "limit behind", mended: limit };
}

const LIMITS: Readonly<Record<string, string>> = {
  max: "at most",
  maximum: "at most",
  min: "at least",
  minimum: "at least",
  below: "at most",
  under: "at most",
  above: "at least",
  over: "at least",
};

/** `expect not more than 0.5 mm`: the words before the value are a limit, said otherwise. */
function limitInWords({ tokens, at, end }: Misfit): Recognised | null {
  for (const first of [at, at - 1]) {
    const number = [first + 2, first + 3].find((i) => i < end && isNumber(tokens[i]));
    if (number === undefined) continue;
    const words = tokens.slice(first, number).map((token) => token.image.toLowerCase());
    const mended = LIMITS_IN_WORDS[words.join(" ")];
    if (mended !== undefined) return { name: "other word", mended, first, last: number - 1 };
  }
  return null;
}

const LIMITS_IN_WORDS: Readonly<Record<string, string>> = {
  "not more than": "at most",
  "no more than": "at most",
  "less than": "at most",
  "not over": "at most",
  "not above": "at most",
  "up to": "at most",
  "not less than": "at least",
  "no less than": "at least",
  "more than": "at least",
  "not under": "at least",
  "not below": "at least",
};

/** `1 h 30 min`, `2 ft 3 in`: a value has one unit, or is a sum. */
function unitInParts({ tokens, at, end }: Misfit): Recognised | null {
  const [first, number, second] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (at + 1 >= end || !isNumber(number) || opensLine(tokens, at)) return null;
  if (typeName(first) !== "UNIT" || typeName(second) !== "UNIT") return null;
  const isPair = PARTED.some((units) => {
    const large = units.indexOf(first?.image ?? "");
    return large >= 0 && units.indexOf(second?.image ?? "") > large;
  });
  return isPair ? { name: "unit in parts", mended: `+ ${number?.image}` } : null;
}

/** The larger before the smaller. */
const PARTED: readonly (readonly string[])[] = [
  ["d", "days", "day", "h", "hr", "hours", "hour", "min", "minutes", "minute", "s", "sec", "seconds"],
  ["yd", "ft", "feet", "foot", "'", "in", "inch", "inches", '"'],
  ["lb", "lbs", "oz"],
  ["°", "′", "'", "″", '"'],
];

/** `3:30` without a unit behind it: what stands on both sides of the colon is one number. */
function timeOfDay({ tokens, at, end }: Misfit): Recognised | null {
  const isTime = typeName(tokens[at]) === ":" && isNumber(tokens[at - 1]) && isNumber(tokens[at + 1]);
  if (!isTime || at + 1 >= end || !touches(tokens, at - 1) || !touches(tokens, at)) return null;
  return { name: "hours and minutes", mended: null, first: at - 1, last: at + 1 };
}

function plusSign({ tokens, at, end, expected }: Misfit): Recognised | null {
  const isPlus = at + 1 < end && typeName(tokens[at]) === "+" && isNumber(tokens[at + 1]);
  return isPlus && expected.includes("quantity") ? { name: "plus sign", mended: "" } : null;
}

/** `2026/05/04` and `2026.05.04` as ISO 8601; day and month in another order are not guessed. */
export function dateSlip({ tokens, at, expected }: Misfit): Recognised | null {
  const image = tokens[at]?.image ?? "";
  if (!expected.includes("DATE")) return null;
  if (/^"\d{4}-\d\d-\d\d"$/.test(image)) return { name: "date in quotes", mended: image.slice(1, -1) };
  if (!/^[0-9]/.test(image)) return null;
  let last = at;
  while (touches(tokens, last) && /^[0-9./-]/.test(tokens[last + 1]?.image ?? "")) last++;
  const written = tokens.slice(at, last + 1).map((token) => token.image);
  const parts = /^(\d{4})[./-](\d{1,2})[./-](\d{1,2})$/.exec(written.join(""));
  const mended = parts === null ? null : `${parts[1]}-${parts[2]?.padStart(2, "0")}-${parts[3]?.padStart(2, "0")}`;
  return { name: "date", mended, last };
}

/** Whether the action is one that takes an amount of something. */
export function takesAmount(tokens: readonly IToken[], start: number): boolean {
  return /^(?:apply|fill)$/.test(typeName(tokens[verbAt(tokens, start)]));
}

/** Where the verb of an action stands: behind the `step` of a step in one line. */
export function verbAt(tokens: readonly IToken[], start: number): number {
  return typeName(tokens[start]) === "step" ? start + 1 : start;
}

function isNumber(token: IToken | undefined): boolean {
  return typeName(token) === "NUMBER";
}
