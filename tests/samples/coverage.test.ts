// The samples together use the whole grammar: every word, sign and place of every rule, counted from the trees. A new form
// in the grammar fails here until a sample shows it.
import { AstUtils, type CstNode, GrammarAST, type LeafCstNode } from "langium";
import { expect, test } from "vitest";
import * as ast from "#grammar/generated/ast.ts";
import { sampleTexts } from "#harness/samples.ts";
import { parseText } from "#syntax/parse.ts";

/** Lists of words that may serve as a name, a state or a code: each is one form, whatever the word. */
const WORD_LISTS = /^(?:Name|Word|CodeWord)$/;
/** What stands in a tree for lines that could not be read; nobody writes these. */
const DAMAGE = /^Damaged/;

const files = [...sampleTexts].map(([path, text]) => parseText(text, path));
const used = new Set<unknown>(files.flatMap(({ file }) => leavesOf(file.$cstNode)).map((leaf) => leaf.grammarSource));
const grammar = AstUtils.getContainerOfType(
  [...used].find((element) => GrammarAST.isKeyword(element)),
  GrammarAST.isGrammar,
) as GrammarAST.Grammar;

test("every word and sign of the grammar stands in a sample, at each place where it may stand", () => {
  const places = grammar.rules.filter(GrammarAST.isParserRule).filter(isForm).flatMap(placesIn);
  const missing = places.filter((place) => !used.has(place)).map(describe);
  console.log(`samples: ${places.length - missing.length} of ${places.length} words and signs of the grammar`);
  expect(places.length).toBeGreaterThan(400);
  expect(missing).toEqual([]);
});

test("every kind of declaration, property, line, action, condition and quantity stands in a sample", () => {
  const nodes = files.flatMap(({ file }) => [file, ...AstUtils.streamAllContents(file)]);
  const present = new Set(nodes.map(({ $type }) => $type));
  const known = ast.reflection.getAllTypes();
  // A type with others below it is only their common name.
  const concrete = known.filter(
    (type) => !DAMAGE.test(type) && known.every((other) => other === type || !ast.reflection.isSubtype(other, type)),
  );
  const missing = concrete.filter((type) => !present.has(type));
  console.log(`samples: ${concrete.length - missing.length} of ${concrete.length} kinds of node in ${nodes.length}`);
  expect(concrete.length).toBeGreaterThan(80);
  expect(missing).toEqual([]);
});

test("every state that a condition can ask for is asked for in a sample", () => {
  const conditions = files.flatMap(({ file }) => [...AstUtils.streamAllContents(file)].filter(ast.isStateCondition));
  const asked = new Set(conditions.map(({ state }) => state));
  expect(STATES.filter((state) => !asked.has(state))).toEqual([]);
});

/** Of parts and of energies, from section 4 of the language's contract. */
const STATES = [
  ...["installed", "removed", "loose", "tightened", "secured", "clean", "lubricated", "aligned"],
  ...["isolated", "live"],
];

function isForm({ name }: GrammarAST.ParserRule): boolean {
  return !WORD_LISTS.test(name) && !DAMAGE.test(name);
}

function placesIn(rule: GrammarAST.ParserRule): GrammarAST.AbstractElement[] {
  return [...AstUtils.streamAllContents(rule)].filter(isPlace);
}

/** What one word, sign, text or number of a sample comes from. */
function isPlace(node: unknown): node is GrammarAST.AbstractElement {
  if (GrammarAST.isKeyword(node)) return true;
  return GrammarAST.isRuleCall(node) && GrammarAST.isTerminalRule(node.rule.ref);
}

function describe(place: GrammarAST.AbstractElement): string {
  const rule = AstUtils.getContainerOfType(place, GrammarAST.isParserRule);
  return `${rule?.name}: ${GrammarAST.isKeyword(place) ? place.value : (place.$cstNode?.text ?? place.$type)}`;
}

function leavesOf(node: CstNode | undefined): LeafCstNode[] {
  if (node === undefined) return [];
  return "content" in node ? (node.content as CstNode[]).flatMap(leavesOf) : [node as LeafCstNode];
}
