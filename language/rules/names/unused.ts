// names.unused: a declaration, option or `use` that nothing uses.
import { rule } from "../rule.ts";
import { shownName } from "../wording.ts";

export const unused = rule({
  code: "names.unused",
  severity: "hint",
  about: "unused",
  page: {
    finds:
      "A declaration or a “use” line that nothing in the file uses. Files without procedures, which declare for others, are left alone.",
    why: "A part that no step touches was forgotten in the steps or is left over from an earlier issue of the document. Either is worth a look.",
    fails: `part Seal "seal"
part SpareSeal "spare seal"

procedure FitSeal "Fit the seal" {
  step install Seal
}
`,
    mended: `part Seal "seal"

procedure FitSeal "Fit the seal" {
  step install Seal
}
`,
  },
  say: ({ name, what }) =>
    what === "use"
      ? {
          message: "Nothing of this file is used.",
          remedy: "Take the line out, or use what the file declares.",
        }
      : {
          message: `The ${what} ${shownName(name)} is not used.`,
          remedy:
            what === "energy"
              ? "Say which part it drives (“driven by”) or isolate it; else take it out."
              : "Take it out, or write the step that uses it.",
        },
});
