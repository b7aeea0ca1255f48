// No text and no place brings the features that find one's way to a stop: half-typed, damaged, empty, odd line ends and letters.
import { expect, test } from "vitest";
import { incomingCalls, outgoingCalls, procedureAt } from "#server/call-hierarchy.ts";
import { lensesIn } from "#server/code-lens.ts";
import { definitionAt } from "#server/definition.ts";
import { foldsIn } from "#server/folding.ts";
import { highlightsAt } from "#server/highlights.ts";
import { linksIn } from "#server/links.ts";
import { referencesAt } from "#server/references.ts";
import { renameableAt, renamingAt } from "#server/rename.ts";
import { selectionAt } from "#server/selection.ts";
import { flatSymbolsIn, symbolsIn } from "#server/symbols.ts";
import { nameAt, nodeAt, tokenAt } from "#server/tree-at.ts";
import type { FileView } from "#server/view.ts";
import { wordsFor } from "#server/words.ts";
import { symbolsMatching } from "#server/workspace-symbols.ts";
import { ROUGH_TEXTS, viewsOf } from "./sample-views.ts";

test("every feature answers at every offset of every rough text", async () => {
  const texts = new Map(ROUGH_TEXTS.map((text, at) => [`rough-${at}.sprag`, text]));
  texts.set("library.sprag", 'part Cover "cover"\nrole Fitter "fitter"\n');
  let asked = 0;
  for (const view of (await viewsOf(texts)).values()) {
    expectWhole(view);
    for (let offset = 0; offset <= view.text.length; offset++, asked++) expectAnswers(view, offset);
  }
  console.log(`asked at ${asked} offsets`);
  expect(asked).toBeGreaterThan(1000);
});

function expectWhole(view: FileView): void {
  for (const { startLine, endLine } of foldsIn(view)) {
    expect(startLine).toBeLessThan(endLine);
    expect(endLine).toBeLessThan(view.lines.count);
  }
  for (const { name } of flatSymbolsIn(view)) expect(name).not.toBe("");
  expect(JSON.stringify(symbolsIn(view)).match(/"selectionRange"/g)?.length ?? 0).toBe(flatSymbolsIn(view).length);
  expect(symbolsMatching(view, "").length).toBeLessThanOrEqual(flatSymbolsIn(view).length);
  expect(lensesIn(view, new Set(["sprag.export"]), wordsFor("de")).length).toBeGreaterThanOrEqual(
    view.model.procedures.length,
  );
  for (const { target } of linksIn(view, wordsFor(undefined))) expect(target).toContain("file:///shop/");
}

function expectAnswers(view: FileView, offset: number): void {
  const name = nameAt(view.parsed, offset);
  expect(nodeAt(view.parsed, offset).$type).toBeTypeOf("string");
  expect(tokenAt(view.parsed, offset)?.offset ?? 0).toBeLessThanOrEqual(offset);
  const isDeclared = name?.declared !== undefined;
  expect(definitionAt(view, offset) !== null).toBe(isDeclared || isInUse(view, offset));
  expect(referencesAt(view, offset, true).length > 0).toBe(isDeclared);
  expect(highlightsAt(view, offset).length > 0).toBe(isDeclared);
  expect("placeholder" in renameableAt(view, offset)).toBe(isDeclared);
  const renaming = renamingAt(view, offset, "Fresh", {});
  expect("edit" in renaming).toBe(isDeclared);
  const procedure = procedureAt(view, offset);
  expect(incomingCalls(view, procedure)).toBeInstanceOf(Array);
  expect(outgoingCalls(view, procedure)).toBeInstanceOf(Array);
  const { line, character } = view.lines.position(offset);
  for (let at = selectionAt(view, offset); at.parent !== undefined; at = at.parent) {
    const { start, end } = at.range;
    expect(start.line < line || (start.line === line && start.character <= character)).toBe(true);
    expect(end.line > line || (end.line === line && end.character >= character)).toBe(true);
  }
}

/** Whether the offset lies on the path of a `use` whose file is there. */
function isInUse(view: FileView, offset: number): boolean {
  const at = view.text.indexOf('"library.sprag"');
  return at >= 0 && at <= offset && offset <= at + '"library.sprag"'.length;
}
