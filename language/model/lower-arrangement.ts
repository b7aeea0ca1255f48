// The record of an arrangement: its lines, and the rows of its table. Knows nothing of what is in balance.
import type * as ast from "#grammar/generated/ast.ts";
import { readTable } from "./arrangement-table.ts";
import type { Arrangement } from "./declarations.ts";
import { resolvePath } from "./files.ts";
import { lowerProperties } from "./lower-properties.ts";
import type { Scope } from "./lowering.ts";
import { propertySpan, resolve } from "./names.ts";

/** The fields beside those it was declared with. What is wrong with its table is told at its name. */
export function lowerArrangement(scope: Scope, node: ast.Arrangement): Partial<Arrangement> {
  const { quantity, text } = lowerProperties(scope, "arrangement", node.properties);
  const from = text("from");
  return {
    part: resolve(scope, node.part, ["part"]),
    ring: resolve(scope, node.ring, ["ring"]),
    radius: quantity("radius"),
    unbalance: quantity("unbalance"),
    speed: quantity("speed"),
    mass: quantity("mass"),
    grade: text("grade"),
    from: from === null ? null : { path: from.text, span: from.span },
    rows: from === null ? null : rowsOf(scope, node, from),
  };
}

function rowsOf(
  scope: Scope,
  node: ast.Arrangement,
  { text: path, span }: NonNullable<Arrangement["grade"]>,
): Arrangement["rows"] {
  const resolved = resolvePath(scope, path, span);
  const table = resolved === null ? null : scope.lowering.tableText(resolved);
  if (table === null) return null;
  const { rows, problems } = readTable(table);
  for (const { problem, more } of problems)
    scope.problems.push({ kind: "table", span: propertySpan(scope, node, "name"), path, problem, moreRows: more });
  return problems.length === 0 ? rows : null;
}
