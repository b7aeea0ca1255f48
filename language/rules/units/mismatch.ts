// units.mismatch: a quantity of the wrong kind for its place, or two that do not go together.
import { factsOf, type Kind } from "#quantity/kind.ts";
import type { MismatchedOperands, QuantityProblem } from "#quantity/problem.ts";
import { rule, type Saying } from "../rule.ts";
import { aKind, capital, listed, wantedFound } from "../wording.ts";

export const mismatch = rule({
  code: "units.mismatch",
  severity: "error",
  about: ["quantity: mismatch", "quantity: missing unit"],
  page: {
    finds:
      "A quantity of another kind than its place takes: an energy in joule where a torque belongs, a pressure for a force, an angle for a clock position, a number without a unit. Also two that do not go together, such as a length added to a mass. It cannot be allowed.",
    why: "A joule and a newton metre are the same in base units and not at the bench: no wrench is set in joule. A value of the wrong kind is a slip of the pen, or the value of something else.",
    fails: 'part Cover "bearing cover" { mass 31 mm }\n',
    mended: 'part Cover "bearing cover" { mass 31 kg }\n',
    source: "ISO 80000-1: quantities of one dimension need not be of one kind (from memory: not verified).",
  },
  say: ({ problem }) => {
    if (problem.kind === "missing unit") return missingUnit(problem);
    return problem.operands === null ? wrongKind(problem) : apart(problem.operands);
  },
});

type Problem<Name extends QuantityProblem<unknown>["kind"]> = Extract<
  QuantityProblem<unknown>,
  { readonly kind: Name }
>;

function missingUnit({ number, usual }: Problem<"missing unit">): Saying {
  if (number === "") return { message: "A part of this has no unit.", remedy: "Write its unit behind each number." };
  const message = `The number ${number} has no unit.`;
  return usual.length === 0
    ? { message, remedy: "Write its unit behind it, on the same line." }
    : { message, remedy: `Write ${listed(usual.map((unit) => written(number, unit)))}.` };
}

/** `90°`, `40 N·m`. */
function written(number: string, unit: string): string {
  return unit === "°" ? `${number}${unit}` : `${number} ${unit}`;
}

function wrongKind({ found, wanted, unit }: Problem<"mismatch">): Saying {
  const units = [...new Set(wanted.flatMap((kind) => factsOf(kind).usual))].slice(0, 4);
  const wantedKinds = listed(wanted.map(aKind)) || "a quantity";
  const foundKinds =
    found.length === 0
      ? `what ${unit ?? "this"} measures, which has no name here`
      : listed(found.slice(0, 3).map(aKind));
  const [first] = found;
  // `value FinalTorque = 45`, where a torque is wanted
  if (first === "ratio" && found.length === 1 && unit === null && units.length > 0)
    return {
      message: `This has no unit; ${wantedKinds} belongs here.`,
      why: wantedFound(`${wantedKinds}, in ${listed(units)}`, "a number without a unit"),
      remedy: "Write the unit behind the number, where that stands.",
    };
  return {
    message:
      first === undefined
        ? `${capital(wantedKinds)} belongs here.`
        : `This is ${aKind(first)}; ${wantedKinds} belongs here.`,
    why: wantedFound(
      units.length === 0 ? wantedKinds : `${wantedKinds}, in ${listed(units)}`,
      unit === null ? foundKinds : `${foundKinds}, in ${unit}`,
    ),
    remedy: units.length === 0 ? `Write ${wantedKinds}.` : `Give it in ${listed(units)}, if that is what is meant.`,
  };
}

function apart({ op, left, right }: MismatchedOperands): Saying {
  const opposed = left.qualifier !== right.qualifier && left.qualifier !== null && right.qualifier !== null;
  const [a, b] = opposed ? [left.qualifier, right.qualifier] : [named(left.kinds), named(right.kinds)];
  const both = left.kinds[0] === "temperature" && right.kinds[0] === "temperature" && op === "+";
  return {
    message: both
      ? "Two temperatures cannot be added."
      : `${capital(a ?? "This")} and ${b ?? "this"} do not go together${TOGETHER[op]}.`,
    remedy: both ? "Give what is added as a difference, in K." : REMEDIES[op],
  };
}

const TOGETHER: Readonly<Record<MismatchedOperands["op"], string>> = {
  "+": " in a sum",
  "-": " in a difference",
  "*": " in a product",
  "/": " in a quotient",
  of: " as a share",
  "±": " as value and tolerance",
  "..": " as ends of a range",
};

const REMEDIES: Readonly<Record<MismatchedOperands["op"], string>> = {
  "+": "Add only quantities of one kind.",
  "-": "Subtract only quantities of one kind.",
  "*": "Multiply by a plain number, or by what gives the kind that belongs here.",
  "/": "Divide by a plain number, or by what gives the kind that belongs here.",
  of: "Write the share in %, as in “30 % of FinalTorque”.",
  "±": "Give the tolerance in the unit of the value, or in %.",
  "..": "Give both ends as quantities of one kind.",
};

function named(kinds: readonly Kind[]): string {
  const [first] = kinds;
  return first === undefined ? "a quantity without a name" : aKind(first);
}
