// units.style: a spelling that the formatter would change.
import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const style = rule({
  code: "units.style",
  severity: "hint",
  about: "quantity: style",
  page: {
    finds:
      "A unit or sign in a plain-keyboard spelling, such as “N*m”, “degC”, “um” or “+/-”. It is read as it is meant; “sprag format” writes it properly.",
    why: "One spelling for one unit makes a document quicker to read and its changes easier to compare.",
    fails: "value CoverTorque = 40 N*m\n",
    mended: "value CoverTorque = 40 N·m\n",
    source:
      "SI Brochure, 9th edition, 5.4: products of units are written with a half-high dot or a space (from memory: not verified).",
  },
  say: ({ problem: { text, canonical } }) => ({
    message: `${quoted(text)} is written ${canonical}.`,
    remedy: "“sprag format” writes it so.",
  }),
  fix: ({ span, problem: { canonical } }) => [{ title: `Write ${canonical}`, edits: [{ span, newText: canonical }] }],
});
