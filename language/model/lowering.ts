// What lowering carries about: the files, the record of each declared node, and, for each container of names, what is in
// reach there. Knows the tree, and nothing of what single statements mean.
import type { AstNode } from "langium";
import type { ParsedFile } from "#syntax/parse.ts";
import type { Span } from "#syntax/span.ts";
import type { Declaration } from "./declarations.ts";
import type { ModelProblem } from "./problem.ts";

/** Shared by all files that are lowered together. */
export interface Lowering {
  readonly files: ReadonlyMap<string, ParsedFile>;
  /** Whether there is a file at that path from the root, read or not. */
  readonly isPresent: (path: string) => boolean;
  /** The text of a table at that path from the root; null where it is not known. */
  readonly tableText: (path: string) => string | null;
  /** One record for each declaring node, made before any is filled in, so that they may speak of each other. */
  readonly records: Map<AstNode, Declaration>;
  /** Where each declaring node's own names are looked up. */
  readonly scopes: Map<AstNode, Scope>;
  /** Named values and readings that are worked out, and those that are being so. */
  readonly workedOut: Set<AstNode>;
  readonly inHand: Set<AstNode>;
}

/** Where a statement stands: its file, what names are in reach, and the loop variables round it. */
export interface Scope {
  readonly lowering: Lowering;
  readonly parsed: ParsedFile;
  readonly problems: ModelProblem[];
  /** What some name means: records, and procedures by their ids. */
  readonly used: Set<Declaration | string>;
  readonly reach: Reach;
  /** The procedure's name; null outside. */
  readonly procedure: string | null;
  readonly loops: readonly string[];
}

/** The names in reach, and what damage may hide. */
export interface Reach {
  /** Innermost first; of one name, the first is meant. */
  readonly layers: readonly ReadonlyMap<string, AstNode>[];
  /** Steps and tasks of the procedure. */
  readonly steps: ReadonlyMap<string, AstNode>;
  /** Whether nothing can be said of an unknown name: it may have been declared where a text could not be read. */
  readonly isHidden: (name: string) => boolean;
  /** Whether some line of the file or of one it uses could not be read. */
  readonly isDamaged: boolean;
}

export interface Doubt {
  isAskedOf: boolean;
}

/** The same names, and whether anybody asks what lines that could not be read may hide. */
export function watched(outer: Reach): { readonly reach: Reach; readonly doubt: Doubt } {
  const doubt = { isAskedOf: false };
  const reach: Reach = {
    layers: outer.layers,
    steps: outer.steps,
    isHidden: (name) => {
      doubt.isAskedOf = true;
      return outer.isHidden(name);
    },
    get isDamaged() {
      doubt.isAskedOf = true;
      return outer.isDamaged;
    },
  };
  return { reach, doubt };
}

/** The span of a node of the tree. */
export function spanOf(scope: { readonly parsed: ParsedFile }, node: AstNode): Span {
  return { path: scope.parsed.path, start: node.$cstNode?.offset ?? 0, end: node.$cstNode?.end ?? 0 };
}

/** From the start of one node to the end of another. */
export function spanFrom(scope: { readonly parsed: ParsedFile }, first: AstNode, last: AstNode): Span {
  return { path: scope.parsed.path, start: first.$cstNode?.offset ?? 0, end: last.$cstNode?.end ?? 0 };
}

/** The node that a name in reach means. */
export function lookUp(reach: Reach, name: string): AstNode | undefined {
  const key = name.normalize("NFC");
  for (const layer of reach.layers) {
    const found = layer.get(key);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A whole number as written (`16`, `1_000`); null for any other. */
export function wholeNumber(text: string): number | null {
  const digits = text.replaceAll("_", "");
  return /^\d{1,15}$/.test(digits) ? Number(digits) : null;
}

/** A whole number within limits; another gets a problem and null. */
export function wholeNumberWithin(scope: Scope, span: Span, text: string, least: number, most: number): number | null {
  const number = wholeNumber(text);
  if (number !== null && number >= least && number <= most) return number;
  scope.problems.push({ kind: "whole number", span, text, least, most });
  return null;
}

/** More parts of one sort, or places on one ring, than any machine has; keeps what is written out small. */
export const MOST_INSTANCES = 10_000;
