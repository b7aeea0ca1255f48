// names.unknown: a name that is not declared, or that is declared as something that does not belong there.
import { rule } from "../rule.ts";
import { listed, quoted, shownName } from "../wording.ts";

export const unknown = rule({
  code: "names.unknown",
  severity: "error",
  about: ["unknown name", "wrong kind"],
  page: {
    finds:
      "A name that no declaration gives, or one that is declared as something else than belongs there: a tool where a part is wanted. It may be misspelt, or the file that declares it is not named in a “use” line.",
    why: "On paper “Covr” and “Cover” are two parts. The fitter would look for one that is not there.",
    fails: `part Cover "bearing cover"

procedure CloseUp "Close the housing" {
  step install Cover
  step inspect Covr
}
`,
    mended: `part Cover "bearing cover"

procedure CloseUp "Close the housing" {
  step install Cover
  step inspect Cover
}
`,
  },
  say: (problem) => {
    const { wanted, nearest } = problem;
    const name = shownName(problem.name);
    const near = nearest.length === 0 ? null : `Probably ${listed(nearest)} is meant.`;
    if (problem.kind === "unknown name") {
      return {
        message: `${quoted(name)} is not declared.`,
        why: `The name of ${wanted} belongs here.`,
        remedy: near ?? (wanted === "a loop variable" ? LOOP : `Declare ${name}, or write the name of ${wanted}.`),
      };
    }
    return {
      message: `${name} is ${problem.found}, and ${wanted} belongs here.`,
      remedy: near ?? `Write the name of ${wanted}.`,
      related: [{ message: `${name} is declared here as ${problem.found}`, span: problem.declaredAt }],
    };
  },
  fix: ({ span, nearest }) => nearest.map((name) => ({ title: `Write ${name}`, edits: [{ span, newText: name }] })),
});

const LOOP = "Write a number, “all”, or the variable of the “repeat” it stands in.";
