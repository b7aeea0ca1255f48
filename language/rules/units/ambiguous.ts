// units.ambiguous: a unit that can be understood in two ways.
import { rule } from "../rule.ts";
import { capital, quoted } from "../wording.ts";

export const ambiguous = rule({
  code: "units.ambiguous",
  severity: "warning",
  about: "quantity: ambiguous",
  page: {
    finds:
      'A unit that two readers can take for two: “lb” for a force or a torque, “oz” for a volume, “C” for °C, “ton”, “gal” where US and imperial gallons differ, and the sign " behind a number, for inches. It is read as the likelier one.',
    why: "An imperial gallon holds a fifth more than a US gallon. The one who fills the gearbox must not have to guess.",
    fails: "value FillAmount = 3 gal\n",
    mended: "value FillAmount = 3 galUS\n",
    source: "NIST SP 811 (2008), appendix B.8: gallon (US) 3.785 412 L, gallon (imperial) 4.546 09 L (second hand).",
  },
  say: ({ problem: { text, why, readAs } }) => ({
    message: `${quoted(text)} can mean two things.`,
    why: `${capital(why)}.\nIt is read as ${readAs}.`,
    remedy: `Write ${readAs}, if that is what is meant.`,
  }),
  fix: ({ span, problem: { readAs } }) => [{ title: `Write ${readAs}`, edits: [{ span, newText: readAs }] }],
});
