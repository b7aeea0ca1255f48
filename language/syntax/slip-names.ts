// Slips in names, texts and indices: texts without quotation marks, names that are none, brackets left out or of another sort.
import type { IToken } from "chevrotain";
import type { Misfit, Recognise, Recognised } from "./slip.ts";
import { isWord, opensLine, TAKES_TEXT, touches, typeName } from "./statements.ts";

/** A word, number or text that stands twice; a word may have been taken for a name the first time. */
export function twice({ tokens, start, at, end }: Misfit): Recognised | null {
  const again = [at, at - 1].find((i) => i > start && i < end && standsTwice(tokens, i));
  if (again === undefined || (again < at && !isWord(tokens[again]))) return null;
  return { name: "word twice", mended: "", first: again, last: again };
}

/** Whether the token at `at` is the same word, number or text as the one before it on its line. */
export function standsTwice(tokens: readonly IToken[], at: number): boolean {
  const [first, second] = [tokens[at - 1], tokens[at]];
  if (second === undefined || first?.image !== second.image || opensLine(tokens, at)) return false;
  return isWord(second) || /^(?:NUMBER|UNIT|STRING|DATE|,|\.\.|=)$/.test(typeName(second));
}

/** In the order in which they are looked for. */
export const NAME_SLIPS: readonly Recognise[] = [
  titleBeforeName,
  digitBeforeName,
  nameInTwo,
  signInName,
  instancesOtherwise,
  allInFront,
  bracketsMissing,
];

/** `part "bearing cover" Cover` */
function titleBeforeName({ tokens, at, end, expected }: Misfit): Recognised | null {
  const isTitle = at < end && typeName(tokens[at]) === "STRING" && expected.includes("name");
  const isNext = isName(tokens[at + 1]) || (isWord(tokens[at + 1]) && !AFTER_TEXT.has(typeName(tokens[at + 1])));
  if (!isTitle || !isNext || opensLine(tokens, at + 1)) return null;
  return { name: "title before name", mended: `${tokens[at + 1]?.image} ${tokens[at]?.image}`, last: at + 1 };
}

function digitBeforeName({ tokens, at, end, expected }: Misfit): Recognised | null {
  const isDigit = at < end && typeName(tokens[at]) === "NUMBER" && expected.includes("name");
  return isDigit && isDeclaringWord(tokens[at - 1]) ? { name: "name begins with a digit", mended: null } : null;
}

/** `part Bearing Cover "bearing cover"` */
function nameInTwo({ tokens, at, end }: Misfit): Recognised | null {
  const [first, second] = [tokens[at - 1], tokens[at]];
  if (at >= end || !isName(first) || !isName(second) || opensLine(tokens, at)) return null;
  if (!isDeclaringWord(tokens[at - 2]) || typeName(tokens[at - 2]) === "step") return null;
  if (!/^(?:STRING|\{|\[)$/.test(typeName(tokens[at + 1]))) return null;
  const word = second?.image ?? "";
  const mended = `${first?.image}${word.charAt(0).toUpperCase()}${word.slice(1)}`;
  return { name: "name in two", mended, first: at - 1, last: at };
}

/** `Cover-2`, and in a declaration `Cover.2`, `Cover/Seal` */
function signInName({ tokens, at }: Misfit): Recognised | null {
  const sign = typeName(tokens[at]);
  const isSign = sign === "-" || (/^[./]$/.test(sign) && isDeclaringWord(tokens[at - 2]));
  if (!isSign || !touches(tokens, at - 1) || !touches(tokens, at) || !isWord(tokens[at - 1])) return null;
  const goesOn = isWord(tokens[at + 1]) || (typeName(tokens[at + 1]) === "NUMBER" && isDeclaringWord(tokens[at - 2]));
  return goesOn ? { name: "hyphen in name", mended: "_" } : null;
}

/** `part Screw[8]`, `part Screw[1, 2, 3]` */
function instancesOtherwise({ tokens, start, at, end }: Misfit): Recognised | null {
  const [open, number] = [tokens[at - 2], tokens[at - 1]];
  const isPart = typeName(tokens[start]) === "part" || typeName(tokens[start]) === "temporary";
  if (!isPart || at >= end || typeName(open) !== "[" || typeName(number) !== "NUMBER") return null;
  if (typeName(tokens[at]) === "]") {
    const count = number?.image ?? "";
    return { name: "instances", mended: /^[1-9]\d*$/.test(count) ? `1..${count}` : null, first: at - 1, last: at - 1 };
  }
  let last = at;
  while (typeName(tokens[last]) === "," && typeName(tokens[last + 1]) === "NUMBER") last += 2;
  if (last === at || typeName(tokens[last]) !== "]") return null;
  const numbers = tokens.slice(at - 1, last).filter((token) => typeName(token) === "NUMBER");
  const isRow = numbers.every(({ image }, i) => Number(image) === Number(numbers[0]?.image) + i);
  const mended = isRow ? `${numbers[0]?.image}..${numbers[numbers.length - 1]?.image}` : null;
  return { name: "instances", mended, first: at - 1, last: last - 1 };
}

/** `tighten all Screw` */
function allInFront({ tokens, at, end, expected }: Misfit): Recognised | null {
  const isAll = at + 1 < end && /^(?:all|each|every)$/.test(tokens[at]?.image ?? "") && expected.includes("name");
  if (!isAll || !isName(tokens[at + 1]) || opensLine(tokens, at + 1) || typeName(tokens[at + 2]) === "[") return null;
  return { name: "all in front", mended: `${tokens[at + 1]?.image}[all]`, last: at + 1 };
}

/** `tighten Screw 3`, `tighten Screw all` */
function bracketsMissing({ tokens, at, end, expected }: Misfit): Recognised | null {
  if (at >= end || !isName(tokens[at - 1]) || !expected.includes("[") || opensLine(tokens, at)) return null;
  const isAll = tokens[at]?.image === "all";
  const isIndex = /^\d+$/.test(tokens[at]?.image ?? "") && !/UNIT$/.test(typeName(tokens[at + 1]));
  return isAll || isIndex ? { name: "brackets missing", mended: `[${tokens[at]?.image}]` } : null;
}

/** A text that stands without its quotation marks; a path of `use` is all of its line. */
export function quotesMissing({ tokens, start, at, end, expected }: Misfit): Recognised | null {
  if (at >= end || !expected.includes("text") || opensLine(tokens, at)) return null;
  const isPath = typeName(tokens[start]) === "use" && at === start + 1;
  const isText = typeName(tokens[at]) === "ID" && !expected.includes(",");
  const isNumber = typeName(tokens[at]) === "NUMBER" && TAKES_TEXT.has(typeName(tokens[at - 1]));
  if (!isPath && !isText && !isNumber) return null;
  let last = at;
  while (last + 1 < end && !opensLine(tokens, last + 1) && (isPath || goesOn(tokens, last))) last++;
  const path = isPath ? tokens.slice(at, last + 1).find((token) => typeName(token) === "STRING") : undefined;
  if (path !== undefined) return { name: "more than a path", mended: path.image, last };
  if (typeName(tokens[last + 1]) === "STRING" && !opensLine(tokens, last + 1)) return null;
  // `step Wipe the cover.`: the first of the words was taken for a name.
  const isAll = typeName(tokens[start]) === "step" && at === start + 2 && isName(tokens[at - 1]);
  const first = isAll && typeName(tokens[last + 1]) !== "{" ? at - 1 : at;
  const written = textFrom(tokens, first, last).replaceAll('"', "");
  return { name: "quotes missing", mended: `"${isPath ? written.replaceAll("\\", "/") : written}"`, first, last };
}

/** Whether the text goes on behind the token at `at`: with what touches it, a unit, or a word that begins no other part of the line. */
function goesOn(tokens: readonly IToken[], at: number): boolean {
  const next = tokens[at + 1];
  const name = typeName(next);
  if (touches(tokens, at) && !/^(?:[{}[\],:]|STRING|TEXT_BLOCK)$/.test(name)) return true;
  return /UNIT$/.test(name) || (isWord(next) && !AFTER_TEXT.has(name));
}

/** Words that go on with a line behind a text, and that own words seldom hold. */
const AFTER_TEXT = new Set([
  "revision",
  "dated",
  "serial",
  "per",
  "expect",
  "record",
  "because",
  "avoid",
  "wear",
  "numbered",
  "position",
  "thread",
  "class",
  "grade",
  "torque",
  "nut",
  "friction",
  "mass",
  "speed",
  "unbalance",
  "radius",
  "slip",
  "interference",
]);

/** As written, one blank for each gap. */
function textFrom(tokens: readonly IToken[], at: number, last: number): string {
  let text = "";
  for (let i = at; i <= last; i++) text += `${i === at || touches(tokens, i - 1) ? "" : " "}${tokens[i]?.image ?? ""}`;
  return text;
}

export function isDeclaringWord(token: IToken | undefined): boolean {
  return /^(?:material|source|role|ring|holes|part|tool|consumable|energy|hazard|option|fact|value|threshold|arrangement|crib|procedure|task|step)$/.test(
    typeName(token),
  );
}

function isName(token: IToken | undefined): boolean {
  return typeName(token) === "ID";
}
