// units.impossible: a value that nothing can have.
import type { Impossibility } from "#quantity/problem.ts";
import { rule } from "../rule.ts";
import { aKind, capital } from "../wording.ts";

export const impossible = rule({
  code: "units.impossible",
  severity: "error",
  about: ["quantity: impossible", "quantity: division by zero"],
  page: {
    finds:
      "A temperature below absolute zero, a mass, length, time or other magnitude below zero, a value outside its own range, a clock position past 12, a division by zero.",
    why: "Nothing at the bench can have such a value. A sign or a digit is mistyped.",
    fails: 'part Cover "bearing cover" { mass -31 kg }\n',
    mended: 'part Cover "bearing cover" { mass 31 kg }\n',
    source: "Absolute zero, −273.15 °C: SI Brochure, 9th edition, 2.3.1 (from memory: not verified).",
  },
  say: ({ problem }) => {
    if (problem.kind !== "impossible") {
      return { message: "This divides by zero.", remedy: "Divide by a value other than zero." };
    }
    const { message, remedy } = SAYINGS[problem.why];
    const { of, shown } = problem;
    if (problem.why !== "negative" || of === null) return { message: `${shown} ${message}`, remedy };
    return { message: `${shown} ${message}`, why: `${capital(aKind(of))} cannot be below zero.`, remedy };
  },
});

const SAYINGS: Readonly<Record<Impossibility, { readonly message: string; readonly remedy: string }>> = {
  "below absolute zero": {
    message: "is below absolute zero.",
    remedy: "Nothing is colder than −273.15 °C (−459.67 °F). Correct the sign or the unit.",
  },
  negative: { message: "is less than nothing.", remedy: "Take the sign out, or correct the value." },
  "nominal outside its range": {
    message: "lies outside the range given with it.",
    remedy: "Correct the value or the ends of its range.",
  },
  "no such clock position": { message: "is on no clock.", remedy: "Clock positions go from 1 o'clock to 12 o'clock." },
  "all of the reading": {
    message: "is no accuracy: it takes all of the reading.",
    remedy: "Give the share of the reading that it may be off, as in accuracy 4 %.",
  },
  "too many digits": { message: "has more digits than can be read.", remedy: "Write it with a larger unit." },
};
