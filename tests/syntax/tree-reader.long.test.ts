// The tree that Sprag makes is the one that Langium's own parser makes of the same tokens, node for node; and where that parser
// finds a token that does not fit, so does Sprag.
import type { AstNode } from "langium";
import { expect, test } from "vitest";
import { SpragGrammar } from "#grammar/generated/grammar.ts";
import { langiumServices } from "#harness/langium-services.ts";
import { sampleTexts } from "#harness/samples.ts";
import { treeLines } from "#harness/tree-lines.ts";
import { createForms } from "#syntax/forms.ts";
import { createLexer } from "#syntax/lexer.ts";
import { createLookahead } from "#syntax/lookahead.ts";
import { createTreeReader } from "#syntax/tree-reader.ts";
import { procedureOfLines } from "../bench/procedure-text.ts";

const lexer = createLexer();
const forms = createForms(SpragGrammar(), lexer.types);
const trees = createTreeReader(SpragGrammar(), lexer.types, createLookahead(forms));
const theirParser = langiumServices().parser.LangiumParser;

test("whole texts: the same tree", () => {
  let nodes = 0;
  for (const [path, text] of [...sampleTexts, ["generated", procedureOfLines(300)] as const]) {
    const { hidden, tokens } = lexer.read(text);
    const theirs = theirParser.parse<AstNode>(text);
    const ours = trees.read(text, tokens, hidden);
    expect(placeOf(ours.wrongAt), path).toEqual(placeOf(theirs.parserErrors[0]?.token));
    if (ours.file === null) continue;
    const [own, reference] = [treeLines(ours.file), treeLines(theirs.value)];
    expect(own, path).toEqual(reference);
    nodes += own.length;
  }
  console.log(`${nodes} nodes compared with Langium's parser`);
  expect(nodes).toBeGreaterThan(10_000);
});

test("texts with a token left out or twice: the same token does not fit, or the same tree", () => {
  let wrong = 0;
  let right = 0;
  for (const [path, text] of sampleTexts) {
    const { tokens } = lexer.read(text);
    for (let at = 3; at < tokens.length; at += 29) {
      const token = tokens[at];
      if (token === undefined) continue;
      const [start, end] = [token.startOffset, token.startOffset + token.image.length];
      const spoilt =
        at % 2 === 0 ? text.slice(0, start) + text.slice(end) : `${text.slice(0, end)} ${text.slice(start)}`;
      const theirs = theirParser.parse<AstNode>(spoilt);
      const read = lexer.read(spoilt);
      const ours = trees.read(spoilt, read.tokens, read.hidden);
      expect(placeOf(ours.wrongAt), `${path}, ${token.image} at ${start}`).toEqual(
        placeOf(theirs.parserErrors[0]?.token),
      );
      if (ours.file === null) wrong++;
      else {
        expect(treeLines(ours.file), path).toEqual(treeLines(theirs.value));
        right++;
      }
    }
  }
  console.log(`${wrong} texts that end at the same token, ${right} with the same tree`);
  expect(wrong).toBeGreaterThan(100);
  expect(right).toBeGreaterThan(20);
});

/** The end of a text has no offset of its own, and each gives it another sign. */
function placeOf(token: { readonly startOffset: number } | null | undefined): number | "end" | "none" {
  if (token === null || token === undefined) return "none";
  return token.startOffset >= 0 ? token.startOffset : "end";
}
