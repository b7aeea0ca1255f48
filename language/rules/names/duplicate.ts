// names.duplicate: two declarations of one name in one scope.
import { rule } from "../rule.ts";

export const duplicate = rule({
  code: "names.duplicate",
  severity: "error",
  about: "duplicate name",
  page: {
    finds:
      "A name that is declared twice where only one can be meant: twice in a file and the files it uses, twice among the steps of a procedure, the choices of an option or the states of a part.",
    why: "Each line that says the name could mean either, and two readers would take it in two ways.",
    fails: 'part Seal "front seal"\npart Seal "rear seal"\n',
    mended: 'part FrontSeal "front seal"\npart RearSeal "rear seal"\n',
  },
  say: ({ name, first }) => ({
    message: `${name} is declared twice.`,
    why: "Lines that say the name could mean either.",
    remedy: "Give one of the two another name.",
    related: [{ message: `${name} is declared first here`, span: first }],
  }),
});
