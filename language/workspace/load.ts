// From texts to models: every text is parsed once, also over many snapshots of one workspace, and linked with what it uses. A file
// is lowered when its model is asked for, and again only where it or a file behind it changed.
import * as ast from "#grammar/generated/ast.ts";
import { type Lowered, lowerAgain } from "#model/lower.ts";
import type { FileModel } from "#model/procedure.ts";
import type { Moves } from "#model/taken-over.ts";
import { type ParsedFile, parseAgain, parseText } from "#syntax/parse.ts";
import { linkFiles, resolveUse, statementsIn } from "#syntax/scope.ts";
import type { Snapshot, Wanted } from "./snapshot.ts";

export interface Loaded {
  readonly parsed: ReadonlyMap<string, ParsedFile>;
  readonly models: ReadonlyMap<string, FileModel>;
  /** How the procedures of a file moved since the models that are known of an earlier snapshot; null where all were made anew. */
  readonly movesIn: (path: string) => Moves | null;
  /** The text of a table that an arrangement names; null where it is not known. */
  readonly tableText: (path: string) => string | null;
  readonly wanted: readonly Wanted[];
  /** The models that are known already, of this snapshot or an earlier one, for the next to take over what still holds. */
  readonly known: () => Lowered | null;
}

/** @param before what was loaded from an earlier snapshot; texts that are the same are not parsed again */
export function load(snapshot: Snapshot, before: Loaded | null): Loaded {
  const parsed = new Map<string, ParsedFile>();
  for (const [path, text] of snapshot.texts) {
    if (isTable(path)) continue;
    const known = before?.parsed.get(path);
    parsed.set(
      path,
      known === undefined ? parseText(text, path) : known.text === text ? known : parseAgain(known, text),
    );
  }
  linkFiles(parsed);
  const here = (path: string): boolean => snapshot.texts.has(path) || snapshot.present.has(path);
  const tableText = (path: string): string | null => snapshot.texts.get(path) ?? null;
  let known = before?.known() ?? null;
  let made: Lowered | null = null;
  const lowered = (): Lowered => {
    made ??= lowerAgain(parsed, here, tableText, known);
    known = made;
    return made;
  };
  return {
    parsed,
    get models() {
      return lowered().models;
    },
    movesIn: (path) => lowered().moves.get(path) ?? null,
    tableText,
    wanted: wantedBy(snapshot, parsed),
    known: () => known,
  };
}

function wantedBy(snapshot: Snapshot, parsed: ReadonlyMap<string, ParsedFile>): readonly Wanted[] {
  const wanted = new Map<string, Wanted>();
  const { crib, texts, absent } = snapshot;
  if (crib !== undefined && !texts.has(crib) && !absent.has(crib)) wanted.set(crib, { path: crib, need: "text" });
  for (const { path, file } of parsed.values()) {
    for (const { need, path: named } of namedIn(file)) {
      const resolved = resolveUse(path, named);
      if (resolved === null || snapshot.absent.has(resolved) || snapshot.texts.has(resolved)) continue;
      if (need === "presence" && snapshot.present.has(resolved)) continue;
      if (wanted.get(resolved)?.need !== "text") wanted.set(resolved, { path: resolved, need });
    }
  }
  return [...wanted.values()].sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** The paths that a file names, as written. */
function namedIn({ items }: ast.File): readonly Wanted[] {
  return items.flatMap(namedInItem);
}

/** Looked for once in each: a procedure is taken along from one text to the next. */
function namedInItem(item: ast.File["items"][number]): readonly Wanted[] {
  const found = named.get(item) ?? pathsIn(item);
  named.set(item, found);
  return found;
}

function pathsIn(item: ast.File["items"][number]): readonly Wanted[] {
  if (ast.isUse(item)) return [{ path: item.path, need: "text" }];
  if (ast.isArrangement(item)) return tablesOf(item);
  if (!ast.isProcedure(item) && !ast.isDamaged(item)) return [];
  return statementsIn(item).flatMap((node) => {
    if (ast.isFigureLine(node)) return [{ path: node.path, need: "presence" }];
    return ast.isArrangement(node) ? tablesOf(node) : [];
  });
}

/** The figures that a file names, as written. */
export function figuresIn(file: ast.File): readonly string[] {
  return namedIn(file).flatMap(({ need, path }) => (need === "presence" ? [path] : []));
}

const named = new WeakMap<ast.File["items"][number], readonly Wanted[]>();

/** Where an arrangement takes its masses from. */
function tablesOf({ properties }: ast.Arrangement): readonly Wanted[] {
  return properties.flatMap((property) =>
    ast.isTextProperty(property) && property.keyword === "from" ? [{ path: property.text, need: "text" }] : [],
  );
}

/** Rows of a table, no procedure. */
export function isTable(path: string): boolean {
  return /\.csv$/i.test(path);
}
