// From texts to models: every text is parsed once, also over many snapshots of one workspace, and linked with what it uses.

import { AstUtils } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { lowerFiles } from "#model/lower.ts";
import type { FileModel } from "#model/procedure.ts";
import { type ParsedFile, parseText } from "#syntax/parse.ts";
import { linkFiles, resolveUse } from "#syntax/scope.ts";
import type { Snapshot, Wanted } from "./snapshot.ts";

export interface Loaded {
  readonly parsed: ReadonlyMap<string, ParsedFile>;
  readonly models: ReadonlyMap<string, FileModel>;
  readonly wanted: readonly Wanted[];
}

/** @param before what was loaded from an earlier snapshot; texts that are the same are not parsed again */
export function load(snapshot: Snapshot, before: Loaded | null): Loaded {
  const parsed = new Map<string, ParsedFile>();
  for (const [path, text] of snapshot.texts) {
    const known = before?.parsed.get(path);
    parsed.set(path, known?.text === text ? known : parseText(text, path));
  }
  linkFiles(parsed);
  const here = (path: string): boolean => snapshot.texts.has(path) || snapshot.present.has(path);
  return { parsed, models: lowerFiles(parsed, here), wanted: wantedBy(snapshot, parsed) };
}

function wantedBy(snapshot: Snapshot, parsed: ReadonlyMap<string, ParsedFile>): readonly Wanted[] {
  const wanted = new Map<string, Wanted>();
  const want = (from: string, path: string, need: Wanted["need"]): void => {
    const resolved = resolveUse(from, path);
    if (resolved === null || snapshot.absent.has(resolved) || snapshot.texts.has(resolved)) return;
    if (need === "presence" && snapshot.present.has(resolved)) return;
    if (wanted.get(resolved)?.need !== "text") wanted.set(resolved, { path: resolved, need });
  };
  for (const { path, file } of parsed.values()) {
    for (const node of AstUtils.streamAllContents(file)) {
      if (ast.isUse(node)) want(path, node.path, "text");
      if (ast.isFigureLine(node)) want(path, node.path, "presence");
    }
  }
  return [...wanted.values()].sort((a, b) => (a.path < b.path ? -1 : 1));
}
