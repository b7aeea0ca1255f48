// Over every sample: each reference that a walk of the tree finds leads to its declaration, and back; every declared name can
// be changed, and nothing else changes with it.
import { type AstNode, AstUtils, GrammarUtils, type Reference } from "langium";
import { expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver";
import { edited } from "#harness/editor.ts";
import { definitionAt } from "#server/definition.ts";
import { highlightsAt } from "#server/highlights.ts";
import { sitesIn } from "#server/name-sites.ts";
import { referencesAt } from "#server/references.ts";
import { renamingAt } from "#server/rename.ts";
import type { FileView } from "#server/view.ts";
import { ROUGH_TEXTS, viewsOf } from "./sample-views.ts";

test("definition of every reference is the declaration, and references lead back", async () => {
  const views = await viewsOf();
  let count = 0;
  for (const view of views.values()) {
    for (const { reference, start, end } of referencesByWalk(view)) {
      const declared = reference.ref;
      if (declared === undefined) continue;
      count++;
      const file = AstUtils.findRootNode(declared);
      const home = [...views.values()].find(({ parsed }) => parsed.file === file) as FileView;
      const name = GrammarUtils.findNodeForProperty(declared.$cstNode, "name");
      const declaredAt = { uri: home.uri, range: home.lines.range(name?.offset ?? -1, name?.end ?? -1) };
      const found = definitionAt(view, start);
      expect({ uri: found?.targetUri, range: found?.targetSelectionRange }).toEqual(declaredAt);
      const used = { uri: view.uri, range: view.lines.range(start, end) };
      const back = referencesAt(home, name?.offset ?? -1, true);
      expect(back).toContainEqual(declaredAt);
      expect(back).toContainEqual(used);
      expect(referencesAt(home, name?.offset ?? -1, false)).not.toContainEqual(declaredAt);
      expect(referencesAt(view, end, true)).toEqual(back);
      expect(highlightsAt(view, end).map(({ range }) => range)).toEqual(
        back.filter(({ uri }) => uri === view.uri).map(({ range }) => range),
      );
    }
  }
  console.log(`compared ${count} references of ${views.size} files`);
  expect(count).toBeGreaterThan(900);
});

test("no two names overlap, and each is read as it is written", async () => {
  const views = [...(await viewsOf()).values(), ...(await viewsOf(roughTexts())).values()];
  for (const { parsed, text } of views) {
    let last = 0;
    for (const { start, end, name } of sitesIn(parsed).all) {
      expect(start).toBeGreaterThanOrEqual(last);
      expect(text.slice(start, end).normalize("NFC")).toBe(name);
      last = end;
    }
  }
});

test("every declared name of every sample can be changed, and nothing else changes with it", async () => {
  const before = await viewsOf();
  const edits = new Map<string, TextEdit[]>();
  let count = 0;
  for (const view of before.values()) {
    for (const { start } of sitesIn(view.parsed).all.filter(({ use }) => use === "declares")) {
      // What is wrong with the name itself goes with it.
      if (isFaultyName(view, start)) continue;
      const answer = renamingAt(view, start, `Fresh_${count++}_`, {});
      expect(answer).toHaveProperty("edit.changes");
      for (const [uri, some] of Object.entries("edit" in answer ? (answer.edit.changes ?? {}) : {}))
        edits.set(uri, [...(edits.get(uri) ?? []), ...some]);
    }
  }
  // No two names share a place, so all edits can be made at once.
  const after = await viewsOf(
    new Map([...before].map(([path, { text, uri }]) => [path, edited(text, edits.get(uri) ?? [])])),
  );
  console.log(`changed ${count} names of ${before.size} files`);
  expect(count).toBeGreaterThan(500);
  expect(shapeOf(after)).toEqual(shapeOf(before));
  expect(findingsOf(after)).toEqual(findingsOf(before));
});

/** Declared twice, or a word of the language. */
function isFaultyName({ model, parsed }: FileView, start: number): boolean {
  const twice = model.problems.flatMap((problem) =>
    problem.kind === "duplicate name" ? [problem.span, problem.first].filter(({ path }) => path === parsed.path) : [],
  );
  return [...twice, ...parsed.problems.map(({ span }) => span)].some((span) => span.start === start);
}

function roughTexts(): ReadonlyMap<string, string> {
  return new Map(ROUGH_TEXTS.map((text, at) => [`rough-${at}.sprag`, text]));
}

function* referencesByWalk({ parsed }: FileView): Generator<{ reference: Reference; start: number; end: number }> {
  for (const node of AstUtils.streamAst(parsed.file))
    for (const { reference } of AstUtils.streamReferences(node)) {
      const { offset, end } = (reference as Reference).$refNode ?? {};
      if (offset !== undefined && end !== undefined && end > offset)
        yield { reference: reference as Reference, start: offset, end };
    }
}

/** The kinds of all nodes in order, and which of them each reference means. */
function shapeOf(views: ReadonlyMap<string, FileView>): readonly unknown[] {
  const places = new Map<AstNode, string>();
  for (const [path, { parsed }] of views)
    for (const [at, node] of [...AstUtils.streamAst(parsed.file)].entries()) places.set(node, `${path} ${at}`);
  return [...views].map(([path, view]) => ({
    path,
    nodes: [...AstUtils.streamAst(view.parsed.file)].map((node) => node.$type),
    references: [...referencesByWalk(view)].map(({ reference }) => places.get(reference.ref as AstNode) ?? "nothing"),
  }));
}

/** Code, severity and line of every finding; words and columns move with the names. */
function findingsOf(views: ReadonlyMap<string, FileView>): readonly unknown[] {
  const [first] = views.values();
  return (first as FileView).workspace.check([...views.keys()]).files.map(({ path, findings }) => ({
    path,
    found: findings
      .map(({ code, severity, range, step }) => `${code} ${severity} ${range.start.line} ${step?.number}`)
      .sort(),
  }));
}
