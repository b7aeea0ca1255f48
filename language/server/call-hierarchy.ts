// Which procedures perform which.
import {
  type CallHierarchyIncomingCall,
  type CallHierarchyItem,
  type CallHierarchyOutgoingCall,
  type CallHierarchyPrepareParams,
  SymbolKind,
} from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import { procedureOf } from "#syntax/scope.ts";
import type { Feature } from "./feature.ts";
import { meaningOf } from "./name-meaning.ts";
import { type NameSite, siteAt, sitesIn } from "./name-sites.ts";
import { declarationOf, extentOf, fileOf, placeOf, usesOf, wholeFolder } from "./references.ts";
import { type FileView, offsetOf, rangeOf } from "./view.ts";

export const callHierarchy: Feature = {
  capabilities: () => ({ callHierarchyProvider: true }),
  start: (session) => {
    const { callHierarchy: asked } = session.connection.languages;
    asked.onPrepare(({ textDocument, position }: CallHierarchyPrepareParams, token) =>
      session.ask<CallHierarchyItem[] | null>(
        textDocument.uri,
        token,
        (view) => {
          const procedure = procedureAt(view, offsetOf(view, position));
          const item = procedure === undefined ? null : itemOf(view, procedure);
          return item === null ? null : [item];
        },
        null,
      ),
    );
    asked.onIncomingCalls(async ({ item }, token) => {
      await wholeFolder(session, session.folderOf(item.uri), token);
      return session.ask<CallHierarchyIncomingCall[] | null>(
        item.uri,
        token,
        (view) => incomingCalls(view, procedureMeant(view, item)),
        null,
      );
    });
    asked.onOutgoingCalls(({ item }, token) =>
      session.ask<CallHierarchyOutgoingCall[] | null>(
        item.uri,
        token,
        (view) => outgoingCalls(view, procedureMeant(view, item)),
        null,
      ),
    );
  },
};

/** The procedure whose name stands there, declared or used. */
export function procedureAt(view: FileView, offset: number): ast.Procedure | undefined {
  const site = siteAt(view.parsed, offset);
  const declared = site === undefined ? undefined : meaningOf(site);
  return ast.isProcedure(declared) ? declared : undefined;
}

/** The text may have changed since the item was given: what stands at its place counts if it has its name, else what has its name. */
function procedureMeant(view: FileView, { name, selectionRange }: CallHierarchyItem): ast.Procedure | undefined {
  const there = procedureAt(view, offsetOf(view, selectionRange.start));
  if (there?.name === name) return there;
  return view.parsed.file.items.find((one) => ast.isProcedure(one) && one.name === name) as ast.Procedure | undefined;
}

/** The procedures that perform this one, each with the places where it does. */
export function incomingCalls(view: FileView, procedure: ast.Procedure | undefined): CallHierarchyIncomingCall[] {
  if (procedure === undefined) return [];
  const callers = new Map<ast.Procedure, NameSite[]>();
  for (const { site } of usesOf(view, procedure)) {
    const caller = ast.isPerform(site.node) ? procedureOf(site.node) : undefined;
    if (ast.isProcedure(caller)) callers.set(caller, [...(callers.get(caller) ?? []), site]);
  }
  return [...callers].flatMap(([caller, sites]) => {
    const from = itemOf(view, caller);
    const parsed = fileOf(view, caller);
    if (from === null || parsed === undefined) return [];
    return [{ from, fromRanges: sites.map((site) => rangeOf(view, { path: parsed.path, ...extent(site) })) }];
  });
}

/** The procedures that this one performs. */
export function outgoingCalls(view: FileView, procedure: ast.Procedure | undefined): CallHierarchyOutgoingCall[] {
  const parsed = procedure === undefined ? undefined : fileOf(view, procedure);
  if (procedure === undefined || parsed === undefined) return [];
  const called = new Map<ast.Procedure, NameSite[]>();
  for (const site of performsIn(parsed, procedure)) {
    const meant = meaningOf(site);
    if (ast.isProcedure(meant)) called.set(meant, [...(called.get(meant) ?? []), site]);
  }
  return [...called].flatMap(([one, sites]) => {
    const to = itemOf(view, one);
    if (to === null) return [];
    return [{ to, fromRanges: sites.map((site) => rangeOf(view, { path: parsed.path, ...extent(site) })) }];
  });
}

function performsIn(parsed: ParsedFile, { $cstNode: cst }: ast.Procedure): readonly NameSite[] {
  const { offset = 0, end = 0 } = cst ?? {};
  return sitesIn(parsed).all.filter(({ node, start }) => ast.isPerform(node) && start >= offset && start < end);
}

function itemOf(view: FileView, procedure: ast.Procedure): CallHierarchyItem | null {
  const declared = declarationOf(view, procedure);
  if (declared === undefined) return null;
  const { uri, range } = placeOf(view, declared);
  return {
    name: procedure.name,
    kind: SymbolKind.Class,
    ...(procedure.title === undefined ? {} : { detail: procedure.title }),
    uri,
    range: extentOf(view, declared.parsed, procedure),
    selectionRange: range,
  };
}

function extent({ start, end }: NameSite): { readonly start: number; readonly end: number } {
  return { start, end };
}
