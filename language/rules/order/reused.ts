// order.reused: a part for single use that goes in again, or is tightened again after it was loosened.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { cameFrom, since } from "../wording.ts";

export const reused = rule({
  code: "order.reused",
  severity: "error",
  about: "reused",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A part for single use that is installed after it was removed, without “new”, or tightened again after it was loosened. Backing off by an angle is no loosening.",
    why: "A gasket that has been pressed flat, or a screw that has been stretched, does not hold a second time. It looks like a new one.",
    fails: `part Seal "shaft seal" { single use }

procedure ChangeSeal "Change the seal" {
  begin with Seal is installed
  step remove Seal
  step install Seal
}
`,
    mended: `part Seal "shaft seal" { single use }

procedure ChangeSeal "Change the seal" {
  begin with Seal is installed
  step remove Seal
  step install new Seal
}
`,
  },
  say: ({ part, how, verb, since: origin }) => ({
    message:
      verb === "tighten"
        ? `${part} is for single use and is tightened a second time.`
        : `${part} is for single use and goes in a second time.`,
    why: `${part} is a used one ${since(origin)}, where it was ${how}.`,
    remedy: remedyFor(part, verb),
    witness: cameFrom(origin, `${part} is ${how}`),
  }),
  fix: ({ part, verb, verbSpan, span, pass, options }) => {
    // Of several parts the word would make all of them new.
    const isAlone = span.end === verbSpan.end + ` ${part}`.length;
    return verb !== "install" || !isAlone || pass.length > 0 || options !== undefined
      ? []
      : [
          {
            title: `Make it “install new ${part}”`,
            edits: [{ span: { ...verbSpan, start: verbSpan.end }, newText: " new" }],
          },
        ];
  },
});

function remedyFor(part: string, verb: string): string {
  if (verb === "tighten") return `Remove ${part} and “install new ${part}” before this.`;
  return verb === "install" ? `Take a new one: “install new ${part}”.` : "Take a new one.";
}
