// units.unknown: a unit that is not known.
import { rule } from "../rule.ts";
import { listed, quoted } from "../wording.ts";

export const unknown = rule({
  code: "units.unknown",
  severity: "error",
  about: "quantity: unknown unit",
  page: {
    finds: "A word or sign behind a number that is no unit.",
    why: "Without its unit a value says nothing. The one who reads it would guess.",
    fails: "value CoverTorque = 40 Nn\n",
    mended: "value CoverTorque = 40 N·m\n",
  },
  say: ({ problem: { text, nearest } }) => ({
    message: `${quoted(text)} is no unit.`,
    remedy:
      nearest.length === 0
        ? "Write a unit behind the number, such as N·m, mm or °C."
        : `Probably ${listed(nearest)} is meant.`,
  }),
  fix: ({ span, problem }) =>
    problem.nearest.map((unit) => ({ title: `Write ${unit}`, edits: [{ span, newText: unit }] })),
});
