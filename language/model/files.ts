// Paths that a text names: `use`, `figure` and `from` have to stay inside the workspace and be there.
import { resolveUse } from "#syntax/scope.ts";
import type { Span } from "#syntax/span.ts";
import type { Scope } from "./lowering.ts";

/** The path from the root that is meant, where a file is there; else null, with a problem. */
export function resolvePath(scope: Scope, path: string, span: Span): string | null {
  const resolved = isInside(scope, path, span);
  if (resolved === null) return null;
  const { files, isPresent } = scope.lowering;
  if (files.has(resolved) || isPresent(resolved)) return resolved;
  scope.problems.push({ kind: "outside workspace", span, path, why: "absent" });
  return null;
}

/** Whether it is there or not. */
function isInside(scope: Scope, path: string, span: Span): string | null {
  const resolved = resolveUse(scope.parsed.path, path);
  if (resolved === null) {
    const why =
      path.trim() === "" ? "absent" : /^(?:[/\\]|[A-Za-z][A-Za-z0-9+.-]*:)/.test(path) ? "absolute" : "leaves";
    scope.problems.push({ kind: "outside workspace", span, path, why });
  }
  return resolved;
}
