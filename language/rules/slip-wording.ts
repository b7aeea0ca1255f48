// Words for what does not fit: each slip that writers make has its own; the rest says what could stand there.

import type { ModelProblem } from "#model/problem.ts";
import type { SyntaxProblem } from "#syntax/problem.ts";
import type { Saying } from "./rule.ts";
import { capital, listed, quoted } from "./wording.ts";

type Unexpected = Extract<SyntaxProblem, { readonly kind: "unexpected" }>;

/** What to tell the writer of a text that does not fit. */
export function sayUnexpected(problem: Unexpected): Saying {
  const say = problem.slip === null ? undefined : SLIPS[problem.slip.name];
  return say === undefined ? generalWords(problem) : say(problem);
}

/** What to tell of a line or word that is well formed and stands in the wrong place. */
export function sayMisplaced({ what, belongs }: Extract<ModelProblem, { readonly kind: "misplaced" }>): Saying {
  const shown = plain(what);
  return { message: `${capital(shown)} does not fit here.`, remedy: `It belongs ${plain(belongs)}.` };
}

/** What to tell of a number that is no count. */
export function sayWholeNumber({
  text,
  least,
  most,
}: Extract<ModelProblem, { readonly kind: "whole number" }>): Saying {
  const remedy = `Write a whole number from ${least} to ${most}.`;
  if (text === "") return { message: "The “count” is missing.", why: "It says how many positions there are.", remedy };
  return { message: `“${text}” does not fit here.`, why: "Positions, parts and passes are counted.", remedy };
}

/** Words of the language stand in the same quotation marks everywhere. */
function plain(text: string): string {
  return text.replace(/`([^`]*)`/g, "“$1”");
}

/** A title for putting a slip right, or null where only the writer can. */
export function mendTitle({ slip, found }: Unexpected): string | null {
  if (slip === null || slip.mended === null || ONLY_TOLD.has(slip.name)) return null;
  if (slip.mended === "") return `Take out ${quoted(found)}`;
  if (slip.name === "comma missing") return "Put in a comma";
  return slip.mended.startsWith('"') ? `Write ${slip.mended}` : `Write ${quoted(slip.mended)}`;
}

/** What is meant goes elsewhere than where the line stops. */
const ONLY_TOLD = new Set(["one role", "amount behind", "limit behind", "clause too late"]);

function generalWords({ found, after, expected, within }: Unexpected): Saying {
  const message = found === "" ? `Something is missing after “${after}”.` : `“${found}” does not fit here.`;
  const why = within === "" ? {} : { why: `It stands in the “${within}” line.` };
  return expected.length === 0
    ? { message, ...why, remedy: found === "" ? "Write it, or take the line out." : `End the line before “${found}”.` }
    : { message, ...why, remedy: `Here could stand ${alternatives(expected)}.` };
}

type Words = (problem: Unexpected) => Saying;

const meant = (problem: Unexpected): string => problem.slip?.mended ?? "";

const SLIPS: Readonly<Record<string, Words>> = {
  "brace missing": ({ found, within }) => ({
    message: `The “{” of this block is missing after “${found}”.`,
    why: `Further down a “}” closes ${within === "" ? "a block" : `a ${within}`} that was never opened.`,
    remedy: `Write “${found} {”.`,
  }),
  "brace too many": () => ({
    message: "This “}” closes nothing.",
    why: "Every block before it is closed already.",
    remedy: "Take it out, or put in the “{” that it belongs to.",
  }),
  "brace twice": () => ({
    message: "This “{” stands twice.",
    why: "No block begins with a block of its own.",
    remedy: "Take it out, and its “}” where it has one.",
  }),
  "too deep": () => ({
    message: "This nests deeper than anyone could follow.",
    remedy: "Name the inner part as a task, a step or a value of its own.",
  }),
  misspelt: (problem) => ({
    message: `“${problem.found}” is no word of the language here.`,
    remedy: `Probably “${meant(problem)}” is meant.`,
  }),
  "step missing": ({ found }) => ({
    message: `The action “${found}” stands outside a step.`,
    why: "Every action belongs to a step, so that it can be ticked and signed for.",
    remedy: `Write “step ${found} …”; a step in one line holds one action.`,
  }),
  "keyword missing": (problem) => ({
    message: `A word is missing before “${problem.found}”.`,
    why: "From what the block holds, it is clear which.",
    remedy: `Write “${meant(problem)}”.`,
  }),
  "otherwise missing": () => ({
    message: "The second block of this “when” has no “otherwise”.",
    remedy: "Write “} otherwise {”.",
  }),
  "other word": (problem) => ({
    message: `“${problem.found}” is called “${meant(problem)}” here.`,
    remedy: `Write “${meant(problem)}”.`,
  }),
  "end of block": ({ found }) => ({
    message: `A block ends with “}”, not with “${found}”.`,
    remedy: `Take out “${found}”; put “}” there if the block is still open.`,
  }),
  "until without wait": () => ({
    message: "“until” needs “wait” before it.",
    remedy: "Write “wait until …”.",
  }),
  "title before name": (problem) => ({
    message: "The name stands before the title.",
    remedy: `Write “${meant(problem)}”.`,
  }),
  "name begins with a digit": ({ found, after }) => ({
    message: `A name cannot begin with the digit of “${found}”.`,
    why: "A name begins with a letter; digits may follow.",
    remedy: `Give the ${after} a name such as “${after.charAt(0).toUpperCase()}${after.slice(1)}${found}”, or leave the name out where it may be.`,
  }),
  "name missing": ({ after, found }) => ({
    message: `The name of the ${after} is missing before “${found}”.`,
    remedy: `Write “${after} Name ${found}”.`,
  }),
  "name before action": ({ found, after }) => ({
    message: `A step with a name holds its lines in braces.`,
    why: `“${after}” is read as the name of the step, and “${found}” begins a line of it.`,
    remedy: `Write “step ${after} { ${found} … }”.`,
  }),
  "step without action": ({ found }) => ({
    message: `A step whose line is “${found}” holds it in braces.`,
    why: "Only an action makes a step in one line.",
    remedy: `Write “step { ${found} … }”.`,
  }),
  "measure that fails": () => ({
    message: "Only a “check” says what to do if it fails.",
    why: "A measurement is only read; a check is passed or not.",
    remedy: "Write “check” in place of “measure”.",
  }),
  "line that fails": () => ({
    message: "Only a “check” says what to do if it fails.",
    remedy: 'Put it behind a check of its own: “check "what is looked at" if it fails { … }”.',
  }),
  "one role": (problem) => ({
    message: "One role does a step.",
    why: "Who else takes part shows by signing.",
    remedy: `Write “${meant(problem)}”, or give each a step.`,
  }),
  "amount behind": (problem) => ({
    message: `The amount stands before what it is of.`,
    remedy: `Write “${meant(problem)}”.`,
  }),
  "limit behind": (problem) => ({
    message: `A limit is said before its value.`,
    remedy: `Write “${meant(problem)}” before the value, and nothing behind it.`,
  }),
  "clause too late": (problem) => ({
    message: `“${problem.found}” stands too late in this line.`,
    remedy: `Write it in this order: “${meant(problem)}”.`,
  }),
  "one value": () => ({
    message: "A value holds one quantity.",
    remedy: "Give each a value of its own, or write the list in the “tighten” line.",
  }),
  "comma at the end": () => ({
    message: "No “,” is needed here.",
    why: "A line ends where the next one begins.",
    remedy: "Take it out.",
  }),
  "property word missing": ({ found }) => ({
    message: `It is not said what “${found}” is.`,
    why: "Each property begins with its word.",
    remedy: "Write the word before it, such as “mass”, “length” or “torque”.",
  }),
  "word twice": ({ found }) => ({
    message: `${/^"/.test(found) ? "This text" : `“${found}”`} stands twice.`,
    remedy: "Take one of the two out.",
  }),
  "more than a path": (problem) => ({
    message: "Behind “use” stands the path of one file, and nothing else.",
    remedy:
      meant(problem) === "" ? "Give each file a “use” of its own; take out the rest." : `Write ${meant(problem)}.`,
  }),
  "word too many": ({ found }) => ({
    message: `No “${found}” is needed here.`,
    remedy: "Take it out.",
  }),
  "no action": ({ found }) => ({
    message: `“${found}” is no action of the language.`,
    why: "It was taken for the name of the step.",
    remedy: 'Begin with an action such as “install” or “tighten”, or write the words as a text: “step "…"”.',
  }),
  "unit in parts": (problem) => ({
    message: "A value has one unit.",
    remedy: `Write “${meant(problem)}”, or all of it in one unit.`,
  }),
  "plus sign": () => ({
    message: "A value above zero has no sign.",
    remedy: "Take the “+” out.",
  }),
  "range in words": ({ found }) => ({
    message: `A range is written with “..”, not with “${found}”.`,
    remedy: "Write “..” in its place.",
  }),
  "name in two": (problem) => ({
    message: "A name is one word.",
    remedy: `Write “${meant(problem)}”, here and wherever it is named.`,
  }),
  instances: (problem) => ({
    message: "Several parts of a kind are numbered from the first to the last.",
    remedy: meant(problem) === "" ? "Write “1..8”, or give them names: “left, right”." : `Write “${meant(problem)}”.`,
  }),
  "all in front": (problem) => ({
    message: "Which ones are meant stands behind the name.",
    remedy: `Write “${meant(problem)}”.`,
  }),
  "brackets missing": (problem) => ({
    message: "Which one of several is meant stands in square brackets.",
    remedy: `Write “${problem.after}${meant(problem)}”.`,
  }),
  "hyphen in name": ({ found }) => ({
    message: `A name holds no ${found === "-" ? "hyphen" : `“${found}”`}.`,
    remedy: "Write “_” in its place, or begin each part of the name with a capital.",
  }),
  "round brackets": () => ({
    message: "Which one of several is meant stands in square brackets.",
    remedy: "Write “[” and “]”, as in “Screw[1]”.",
  }),
  "date in quotes": (problem) => ({
    message: "A date stands without quotation marks.",
    remedy: `Write ${meant(problem)}.`,
  }),
  date: (problem) => ({
    message: `“${problem.found}” is not how a date is written here.`,
    why: "Year, month, day: read the same way everywhere (ISO 8601).",
    remedy: meant(problem) === "" ? "Write the date as 2026-05-04." : `Write ${meant(problem)}.`,
  }),
  "long number": (problem) => ({
    message: `“${problem.found}” is not how a long number is written here.`,
    why: "Its groups could be read as numbers of their own, or its marks as a decimal point.",
    remedy:
      meant(problem) === ""
        ? `Write ${problem.found.replace(/\s/g, "")}, or a comma between two numbers.`
        : `Write ${meant(problem)}.`,
  }),
  "hours and minutes": (problem) => ({
    message: `“${problem.found}” is not how hours are written here.`,
    why: "A value is one number with its unit.",
    remedy:
      meant(problem) === ""
        ? "Write it in minutes, or on the clock as a number such as 3.5 o'clock."
        : `Write ${meant(problem)}.`,
  }),
  "plus minus": () => ({
    message: "“+-” would be a sum; a tolerance is written “±”.",
    remedy: "Write “±”, or “+/-” where the keyboard has none.",
  }),
  "no such day": ({ found }) => ({
    message: `There is no day ${found}.`,
    why: "A date is year, month, day (ISO 8601).",
    remedy: "Correct the month or the day.",
  }),
  "range in repeat": () => ({
    message: "A repeat counts with “to”, not with “..”.",
    remedy: "Write “repeat n from 1 to 8 { … }”.",
  }),
  "plus between tools": ({ found }) => ({
    message: `Tools that are used together are joined by “+”, not “${found}”.`,
    remedy: "Write “with Wrench + Crowfoot”.",
  }),
  "comma between things": ({ found }) => ({
    message: `Several things are parted by a comma, not by “${found}”.`,
    remedy: "Write “,”.",
  }),
  "comma missing": (problem) => ({
    message: `A comma is missing before “${problem.found}”.`,
    remedy: `Write “${problem.after}${meant(problem)}”.`,
  }),
  "is for equals": () => ({
    message: "A condition says “is”, not “=”.",
    remedy: "Write “Extent is Full”; the opposite is “is not”.",
  }),
  "equals sign": (problem) => ({
    message: `No “=” stands after “${problem.after}”.`,
    why: "Only a “value” is set with “=”.",
    remedy:
      meant(problem) === ""
        ? `Write “${problem.after}” and then the quantity.`
        : `Write “${meant(problem)}” in its place.`,
  }),
  "equals missing": ({ found, after }) => ({
    message: `“=” is missing before “${found}”.`,
    remedy: `Write “value ${after} = ${found} …”.`,
  }),
  colon: ({ after }) => ({
    message: `No “:” stands after “${after}”.`,
    remedy: "Take it out; a space is enough.",
  }),
  "quotes missing": (problem) => ({
    message: "This text needs quotation marks.",
    remedy: `Write ${meant(problem)}.`,
  }),
  "step inside step": ({ found }) => ({
    message: `A ${found} cannot stand inside a step.`,
    why: "A step holds actions, checks and other lines; steps stand in tasks.",
    remedy: `Close the step before “${found}”, or make the outer one a “task”.`,
  }),
  "line outside step": ({ found }) => ({
    message: `“${found}” belongs to a step and stands outside one.`,
    remedy: "Move it into the block of the step it is about.",
  }),
  "declaration inside": ({ found }) => ({
    message: `A ${found} is not declared at this place.`,
    why: "Declarations stand at the top of a file or directly in a procedure.",
    remedy: "Move the line up, before the tasks.",
  }),
  "outside procedure": ({ found }) => ({
    message: `“${found}” stands outside a procedure.`,
    remedy: 'Put it into “procedure Name "title" { … }”.',
  }),
  "unit on next line": ({ found }) => ({
    message: `The unit “${found}” stands on another line than its number.`,
    why: "A number takes its unit from its own line only.",
    remedy: `Move “${found}” up behind the number.`,
  }),
  "word missing": (problem) => ({
    message: `“${wordOf(problem)}” is missing before “${problem.found}”.`,
    // The word before it shows the place; a sign or a unit would only confuse.
    remedy: `Write “${/^[a-z]+$/.test(problem.after) ? `${problem.after} ` : ""}${meant(problem)}”.`,
  }),
};

function wordOf(problem: Unexpected): string {
  const text = meant(problem);
  return text.endsWith(problem.found) ? text.slice(0, -problem.found.length).trim() : text;
}

/* ---- what could stand there ---- */

function alternatives(expected: readonly string[]): string {
  return listed(expected.map((label) => THINGS[label] ?? quoted(label)));
}

const THINGS: Readonly<Record<string, string>> = {
  name: "a name",
  part: "a part",
  tool: "a tool",
  role: "a role",
  source: "a source",
  procedure: "a procedure",
  step: "a step",
  ring: "a ring",
  energy: "an energy",
  hazard: "a hazard such as “burn”",
  material: "a material",
  state: "a state such as “installed”",
  text: "a text in quotation marks",
  quantity: "a quantity such as 40 N·m",
  unit: "a unit",
  condition: "a condition such as “Cover is installed”",
  index: "a number or “all”",
  action: "an action such as “install Cover”",
  "step line": "a step line",
  "head line": "a head line such as “document”",
  declaration: "a declaration such as “part”",
  property: "a property",
  "crib item": "an “item” line",
  code: "the code of a finding",
  NUMBER: "a number",
  DATE: "a date such as 2026-05-04",
};
