// Names that are declared twice in one scope. Knows the tree and no meaning.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { declaredNames, resolveUse } from "#syntax/scope.ts";
import type { Scope } from "./lowering.ts";
import { declarationSpan, propertySpan } from "./names.ts";
import type { ModelProblem } from "./problem.ts";

/** Among the names of a file, and between them and those that it uses. */
export function duplicatesInFile(scope: Scope): readonly ModelProblem[] {
  const { file } = scope.parsed;
  return [...twice(scope, declaredNames(file)), ...againstUsed(scope), ...amongItems(scope, file.items)];
}

/** Among the names inside one procedure. */
export function duplicatesInProcedure(scope: Scope, procedure: ast.Procedure | ast.Damaged): readonly ModelProblem[] {
  return [
    ...twice(scope, declaredNames(procedure)),
    ...twice(scope, declaredNames(procedure, "steps")),
    ...amongItems(scope, procedure.items),
  ];
}

interface Naming {
  readonly name: string;
  readonly node: AstNode;
}

/** @param property of each node, that holds the name */
function twice(scope: Scope, names: readonly Naming[], property = "name"): readonly ModelProblem[] {
  const first = new Map<string, AstNode>();
  const problems: ModelProblem[] = [];
  for (const { name, node } of names) {
    const key = name.normalize("NFC");
    const known = first.get(key);
    if (known === undefined) first.set(key, node);
    else {
      const [span, before] = [node, known].map((each) => propertySpan(scope, each, property));
      if (span !== undefined && before !== undefined)
        problems.push({ kind: "duplicate name", span, name, first: before });
    }
  }
  return problems;
}

/** Thresholds; choices of an option, own states and named instances of a part. */
function amongItems(scope: Scope, items: readonly AstNode[]): readonly ModelProblem[] {
  const thresholds = items.filter(ast.isThreshold).map((node) => ({ name: node.threshold, node }));
  const problems = [...twice(scope, thresholds, "threshold")];
  for (const item of items) {
    if (ast.isOption(item)) problems.push(...twice(scope, item.choices.map(naming)));
    if (!ast.isPart(item)) continue;
    const states = item.properties.filter(ast.isStatesProperty).flatMap((property) => property.states);
    problems.push(...twice(scope, states.map(naming)), ...twice(scope, (item.instances?.names ?? []).map(naming)));
  }
  return problems;
}

function naming(node: AstNode & { readonly name: string }): Naming {
  return { name: node.name, node };
}

/** Names of the file that a used file declares too, and names that two used files share. */
function againstUsed(scope: Scope): readonly ModelProblem[] {
  const [own, ...used] = scope.reach.layers;
  const problems: ModelProblem[] = [];
  const first = new Map<string, AstNode>();
  for (const layer of used) {
    for (const [name, node] of layer) {
      const here = own?.get(name);
      const before = first.get(name);
      if (here !== undefined) problems.push(duplicate(scope, name, here, "name", node));
      else if (before === undefined) first.set(name, node);
      else if (before !== node) {
        const use = useOf(scope, node);
        if (use !== undefined) problems.push(duplicate(scope, name, use, "path", before));
      }
    }
  }
  return problems;
}

function duplicate(scope: Scope, name: string, node: AstNode, property: string, first: AstNode): ModelProblem {
  return {
    kind: "duplicate name",
    span: propertySpan(scope, node, property),
    name,
    first: declarationSpan(scope, first),
  };
}

/** The `use` that brings a node in. */
function useOf(scope: Scope, node: AstNode): ast.Use | undefined {
  const { path } = declarationSpan(scope, node);
  return scope.parsed.file.items.filter(ast.isUse).find((use) => resolveUse(scope.parsed.path, use.path) === path);
}
