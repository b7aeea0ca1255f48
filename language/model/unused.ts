// Declarations and `use` lines that nothing uses. Quiet where it cannot know: in libraries, in files that others use, and
// where a text could not be read. Knows no meaning beyond what takes effect without being named.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { declaredNames } from "#syntax/scope.ts";
import type { Declaration } from "./declarations.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { propertySpan, sortNoun, usedId } from "./names.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel } from "./procedure.ts";

/**
 * What nothing in the file uses.
 * @param isUsedFile whether another file uses this one: what it declares is then not for it alone
 */
export function unusedIn(scope: Scope, model: FileModel, isUsedFile: boolean): readonly ModelProblem[] {
  if (model.procedures.length === 0 || scope.parsed.problems.length > 0) return [];
  const uses = unusedUses(scope, model);
  return isUsedFile ? uses : [...uses, ...unusedDeclarations(scope, model.declarations)];
}

function unusedDeclarations(scope: Scope, declarations: readonly Declaration[]): readonly ModelProblem[] {
  return declarations
    .filter((declared) => !scope.used.has(declared) && !actsUnnamed(declared))
    .map(({ extent, kind, name, span }) => ({ kind: "unused", span, name, what: sortNoun(kind), extent }));
}

/** Whether it takes effect without being named: a fastener comes in with what it secures. */
function actsUnnamed(declared: Declaration): boolean {
  return UNNAMED.has(declared.kind) || (declared.kind === "part" && declared.secures.length > 0);
}

const UNNAMED: ReadonlySet<string> = new Set(["fit", "threshold", "arrangement", "crib", "reading"]);

function unusedUses(scope: Scope, model: FileModel): readonly ModelProblem[] {
  const nodes = scope.parsed.file.items.filter(ast.isUse);
  return nodes.flatMap((node, at): readonly ModelProblem[] => {
    const path = model.uses[at]?.path ?? null;
    const file = path === null || path === model.path ? undefined : scope.lowering.files.get(path);
    if (file === undefined || file.problems.length > 0) return [];
    if (
      declaredNames(file.file).some(({ node }) => scope.used.has(usedId(scope.lowering, node) ?? "")) ||
      file.file.items.some(actsOnItsOwn)
    )
      return [];
    const span = propertySpan(scope, node, "path");
    return [{ kind: "unused", span, name: node.path, what: "use", extent: spanOf(scope, node) }];
  });
}

function actsOnItsOwn(node: AstNode): boolean {
  return [ast.isTerm, ast.isVerb, ast.isThreshold, ast.isFit, ast.isArrangement, ast.isCrib].some((is) => is(node));
}
