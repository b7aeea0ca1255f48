// What can be folded: blocks, comments, texts of several lines, and runs of `use` lines and of short declarations. By whole
// lines; the line of a closing brace stays to be seen.
import { type FoldingRange, FoldingRangeKind, type FoldingRangeParams } from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import type { Feature } from "./feature.ts";
import { tokensOf } from "./tree-at.ts";
import type { FileView } from "./view.ts";

export const folding: Feature = {
  capabilities: () => ({ foldingRangeProvider: true }),
  start: (session) => {
    session.connection.onFoldingRanges(({ textDocument }: FoldingRangeParams, token) =>
      session.ask<FoldingRange[] | null>(textDocument.uri, token, foldsIn, null),
    );
  },
};

export function foldsIn(view: FileView): FoldingRange[] {
  const folds = [...foldsOfTokens(view), ...foldsOfRuns(view)].filter(({ startLine, endLine }) => endLine > startLine);
  // Clients take one fold for each line: the longest.
  const longest = new Map<number, FoldingRange>();
  for (const fold of folds) {
    const known = longest.get(fold.startLine);
    if (known === undefined || known.endLine < fold.endLine) longest.set(fold.startLine, fold);
  }
  return [...longest.values()].sort((a, b) => a.startLine - b.startLine);
}

function foldsOfTokens({ parsed, lines, text }: FileView): readonly FoldingRange[] {
  const lineOf = (offset: number): number => lines.position(offset).line;
  const folds: FoldingRange[] = [];
  const open: number[] = [];
  let comments: { readonly startLine: number; endLine: number } | null = null;
  for (const { offset, end, tokenType, hidden } of tokensOf(parsed)) {
    switch (tokenType.name) {
      case "{":
        open.push(lineOf(offset));
        break;
      case "}": {
        const startLine = open.pop();
        if (startLine !== undefined) folds.push({ startLine, endLine: lineOf(offset) - 1 });
        break;
      }
      case "ML_COMMENT":
        folds.push({ startLine: lineOf(offset), endLine: lineOf(end), kind: FoldingRangeKind.Comment });
        break;
      case "SL_COMMENT": {
        const line = lineOf(offset);
        // Behind other words of its line it is a remark to them and begins nothing.
        if (text.slice(lines.offset(line), offset).trim() !== "") break;
        if (comments !== null && comments.endLine === line - 1) comments.endLine = line;
        else {
          if (comments !== null) folds.push({ ...comments, kind: FoldingRangeKind.Comment });
          comments = { startLine: line, endLine: line };
        }
        break;
      }
      case "TEXT_BLOCK":
        folds.push({ startLine: lineOf(offset), endLine: lineOf(end) });
        break;
      default:
        if (!hidden && end > offset && tokenType.name === "DAMAGED")
          folds.push({ startLine: lineOf(offset), endLine: lineOf(end) - 1 });
    }
  }
  if (comments !== null) folds.push({ ...comments, kind: FoldingRangeKind.Comment });
  return folds;
}

/** Lines that follow each other without an empty one: all `use`, or all declarations of one sort in one line each. */
function foldsOfRuns({ parsed, lines }: FileView): readonly FoldingRange[] {
  const runs: Run[] = [];
  const containers = [parsed.file.items, ...parsed.file.items.filter(ast.isProcedure).map(({ items }) => items)];
  for (const items of containers) {
    let last: Run | undefined;
    for (const { $type: type, $cstNode: cst } of items) {
      const [startLine, endLine] = [lines.position(cst?.offset ?? 0).line, lines.position(cst?.end ?? 0).line];
      const isShort = startLine === endLine && (type === ast.Use.$type || DECLARATIONS.has(type));
      if (isShort && last?.type === type && startLine - last.endLine <= 1) last.endLine = endLine;
      else {
        last = isShort ? { type, startLine, endLine } : undefined;
        if (last !== undefined) runs.push(last);
      }
    }
  }
  return runs.map(({ type, startLine, endLine }) => ({
    startLine,
    endLine,
    kind: type === ast.Use.$type ? FoldingRangeKind.Imports : FoldingRangeKind.Region,
  }));
}

interface Run {
  readonly type: string;
  readonly startLine: number;
  endLine: number;
}

const DECLARATIONS: ReadonlySet<string> = new Set([
  ...["Material", "Source", "Role", "Ring", "Holes", "Part", "Fit", "Tool", "Consumable", "Energy", "Hazard"],
  ...["Option", "FactDeclaration", "ValueDeclaration", "Term", "Verb", "Threshold", "Arrangement", "Crib"],
]);
