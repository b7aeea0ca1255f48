// Keeps a statement from nesting deeper than a parser that calls itself can follow: what lies deeper is told and cut out.
import type { IToken } from "chevrotain";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { isKeyword, opensLine, typeName } from "./statements.ts";
import { endOf, readAs } from "./virtual-token.ts";

/** Brackets within brackets, one `not` or minus after the other, terms of one sum, an `otherwise` after the other. */
const DEEPEST = { brackets: 60, signs: 60, terms: 400, otherwise: 200 };

/** Puts one `DAMAGED` token for each stretch that nests too deeply; the same tokens where nothing does. */
export function limitNesting(
  grammar: Recogniser,
  tokens: readonly IToken[],
  path: string,
  note: (problem: SyntaxProblem) => void,
): readonly IToken[] {
  const count: Counts = { brackets: 0, signs: 0, terms: 0, otherwise: [0] };
  let out: IToken[] | null = null;
  let cutting = false;
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    // Brackets left open in one statement do not nest those of the next.
    if (isKeyword(token) && opensLine(tokens, at)) count.brackets = 0;
    follow(count, typeName(token), typeName(tokens[at + 1]));
    const deep = isDeep(count);
    if (deep && out === null) out = tokens.slice(0, at);
    if (deep && !cutting) {
      out?.push(readAs(grammar.type("DAMAGED"), token));
      note(tooDeep(path, token));
    } else if (!deep) out?.push(token);
    cutting = deep;
  }
  return out ?? tokens;
}

interface Counts {
  brackets: number;
  signs: number;
  terms: number;
  /** How many follow one another, for each level of braces. */
  readonly otherwise: number[];
}

function follow(count: Counts, name: string, next: string): void {
  if (name === "(" || name === "[") count.brackets++;
  else if (name === ")" || name === "]") count.brackets = Math.max(0, count.brackets - 1);
  count.signs = name === "not" || name === "-" || name === "−" || name === "(" ? count.signs + 1 : 0;
  if (OPERATORS.has(name)) count.terms++;
  else if (count.terms > 0 && (ENDS_SUM.has(name) || /^[a-z]{3}/.test(name))) count.terms = 0;
  if (name === "{") {
    count.brackets = 0;
    count.otherwise.push(0);
  } else if (name === "}") {
    count.brackets = 0;
    if (count.otherwise.length > 1) count.otherwise.pop();
    const level = count.otherwise.length - 1;
    count.otherwise[level] = next === "otherwise" ? (count.otherwise[level] ?? 0) + 1 : 0;
  }
}

const OPERATORS = new Set(["+", "-", "−", "*", "/"]);
const ENDS_SUM = new Set([",", "{", "}", "STRING"]);

function isDeep(count: Counts): boolean {
  const chain = count.otherwise[count.otherwise.length - 1] ?? 0;
  return (
    count.brackets > DEEPEST.brackets ||
    count.signs > DEEPEST.signs ||
    count.terms > DEEPEST.terms ||
    chain > DEEPEST.otherwise
  );
}

function tooDeep(path: string, token: IToken): SyntaxProblem {
  return {
    kind: "unexpected",
    span: { path, start: token.startOffset, end: endOf(token) },
    found: token.image,
    expected: [],
    within: "",
    after: "",
    slip: { name: "too deep", mended: null },
  };
}
