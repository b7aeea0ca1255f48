// syntax.unclosed: a block, text, bracket, parenthesis or comment that was opened and never closed.
import type { SyntaxProblem } from "#syntax/problem.ts";
import { rule } from "../rule.ts";

type Unclosed = Extract<SyntaxProblem, { readonly kind: "unclosed" }>;

export const unclosed = rule({
  code: "syntax.unclosed",
  severity: "error",
  about: "unclosed",
  page: {
    finds:
      "A block, a text in quotation marks, a bracket, a parenthesis or a comment that is opened and never closed. It is marked where it opens, not at the end of the file.",
    why: "What is left open swallows the lines behind it: a step would seem to belong to the part declared before it.",
    fails: 'part Cover "bearing cover" {\n  mass 31 kg\n  needs Seal\n\npart Seal "shaft seal"\n',
    mended: 'part Cover "bearing cover" {\n  mass 31 kg\n  needs Seal\n}\n\npart Seal "shaft seal"\n',
  },
  say: (problem) => ({
    message: `${named(problem)} is never closed.`,
    why: OPENED[problem.what].why,
    remedy: `Close it with ${OPENED[problem.what].sign}.`,
  }),
  fix: ({ what, span, closeAt }) => [
    {
      title: `Put in ${OPENED[what].sign}`,
      edits: [what === "block" ? { closes: span, at: closeAt } : { span: closeAt, newText: OPENED[what].text }],
    },
  ],
});

const OPENED = {
  block: { sign: "“}”", text: "}", why: "The lines behind it show where it should have ended." },
  string: { sign: "a quotation mark", text: '"', why: "A text ends on the line it begins on." },
  "long text": { sign: '“"""”', text: '\n"""', why: "It holds all lines up to the closing marks." },
  parenthesis: { sign: "“)”", text: ")", why: "It opens here, and the value ends without closing it." },
  bracket: { sign: "“]”", text: "]", why: "It opens here, and the statement goes on without closing it." },
  comment: { sign: "“*/”", text: " */", why: "The rest of its line is taken as comment." },
} as const;

function named({ what, header }: Unclosed): string {
  if (what === "block") return header === "" ? "This block" : `This block of ${shortened(header)}`;
  if (what === "string") return `The text ${shortened(header)}`;
  return `This ${what}`;
}

/** Keyword and name, or the first words. */
function shortened(header: string): string {
  const words = header.replace(/^\}\s*/, "").split(/\s+/);
  const title = words.findIndex((word, at) => at > 0 && word.startsWith('"'));
  const few = title > 1 ? words.slice(0, title) : words.slice(0, 5);
  return few.join(" ") + (title < 0 && words.length > 5 ? " …" : "");
}
