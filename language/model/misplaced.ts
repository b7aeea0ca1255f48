// Lines and words that are well formed and stand in the wrong place. Knows no statement.
import type { AstNode } from "langium";
import { type Scope, spanOf } from "./lowering.ts";

/** Says of a line or word that it belongs elsewhere; `belongs` goes on after "it belongs …". */
export function misplace(scope: Scope, node: AstNode, what: string, belongs: string): void {
  scope.problems.push({ kind: "misplaced", span: spanOf(scope, node), what: `\`${what}\``, belongs });
}

/** Says of a line that the same was said before. */
export function tellTwice(scope: Scope, node: AstNode, keyword: string): void {
  scope.problems.push({
    kind: "misplaced",
    span: spanOf(scope, node),
    what: `a second \`${keyword}\``,
    belongs: "only once here",
  });
}
