// The lexer: that it keeps its fast path, and what is a unit, a name and a number.
import { Lexer, type TokenType } from "chevrotain";
import { DefaultTokenBuilder, type Grammar } from "langium";
import { expect, test } from "vitest";
import { SpragGrammar } from "#grammar/generated/grammar.ts";
import { SpragTokenBuilder } from "#grammar/token-builder.ts";
import { scanUnit } from "#quantity/scan.ts";
import { createLexer } from "#syntax/lexer.ts";

const lexer = createLexer();

/** Each token as `type:image`; a keyword's type is the keyword. */
function lex(text: string): string[] {
  return lexer
    .read(text)
    .tokens.map((token) =>
      token.tokenType.name === token.image ? token.image : `${token.tokenType.name}:${token.image}`,
    );
}

test("every token has known first characters, so that the lexer tries only what can match", () => {
  const types = Object.values(lexer.types);
  // Chevrotain refuses to build the lexer where one pattern spoils its table of first characters.
  expect(() => new Lexer(types, { ensureOptimizations: true, skipValidations: true })).not.toThrow();
  const spoilt: TokenType = { name: "SPOILT", PATTERN: () => null, LINE_BREAKS: false };
  expect(() => new Lexer([...types, spoilt], { ensureOptimizations: true, skipValidations: true })).toThrow();
});

test("the tokens are those that Langium builds from the grammar", () => {
  class Stock extends SpragTokenBuilder {
    override buildTokens = (grammar: Grammar) => DefaultTokenBuilder.prototype.buildTokens.call(this, grammar);
  }
  const told = (types: readonly TokenType[]) =>
    types.map(({ GROUP, LONGER_ALT, name, PATTERN }) => {
      const longer = [LONGER_ALT ?? []].flat().map((one) => one.name);
      return `${name} ${typeof PATTERN === "function" ? "own" : PATTERN} ${GROUP} ${longer}`;
    });
  const stock = told(new Stock(scanUnit).buildTokens(SpragGrammar()) as TokenType[]);
  const ours = told(new SpragTokenBuilder(scanUnit).buildTokens(SpragGrammar()) as TokenType[]);
  expect(ours.length).toBeGreaterThan(100);
  // Some of the terminals are put before the keywords; all others keep their order.
  const moved = ours.slice(0, 5);
  expect([...moved].sort()).toEqual(stock.filter((one) => moved.includes(one)).sort());
  expect(ours.slice(5)).toEqual(stock.filter((one) => !moved.includes(one)));
});

test.each([
  [
    "names that begin like keywords",
    "installed partly stepladder inOrder",
    ["ID:installed", "ID:partly", "ID:stepladder", "ID:inOrder"],
  ],
  ["names in other scripts", "Welle_Ø Übermaß вал 軸", ["ID:Welle_Ø", "ID:Übermaß", "ID:вал", "ID:軸"]],
  [
    "a unit behind its number",
    "40 N·m 90° 12 % 3/8 in",
    ["NUMBER:40", "UNIT:N·m", "NUMBER:90", "UNIT:°", "NUMBER:12", "UNIT:%", "NUMBER:3/8", "UNIT:in"],
  ],
  ["a unit with its qualifier", "400 V AC", ["NUMBER:400", "UNIT:V AC"]],
  ["a compound unit", "11.7 µm/(m·K)", ["NUMBER:11.7", "UNIT:µm/(m·K)"]],
  ["a clock position", "1 at 6 o'clock", ["NUMBER:1", "at", "NUMBER:6", "UNIT:o'clock"]],
  ["a typographic apostrophe", "6 o’clock", ["NUMBER:6", "UNIT:o’clock"]],
  ["words that are no unit", "count 8 numbered", ["count", "NUMBER:8", "numbered"]],
  [
    "the bounds of a repeat",
    "from 16 down to 4 by 2",
    ["from", "NUMBER:16", "down", "to", "NUMBER:4", "by", "NUMBER:2"],
  ],
  [
    "inches, and `in` before a pattern",
    "1/2 in with 4 in cross pattern",
    ["NUMBER:1/2", "UNIT:in", "with", "NUMBER:4", "in", "cross", "pattern"],
  ],
  [
    "inches, and `in` before a position",
    "2 in in Seat[1]",
    ["NUMBER:2", "UNIT:in", "in", "ID:Seat", "[", "NUMBER:1", "]"],
  ],
  ["no unit on the next line", "31\nkg", ["NUMBER:31", "ID:kg"]],
  ["no unit without a number", "kg N·m", ["ID:kg", "ID:N", "ID:m"]],
  ["a word shaped like a unit", "40 Nn", ["NUMBER:40", "UNKNOWN_UNIT:Nn"]],
  [
    "a mixed fraction with other blanks",
    "1  1/2 mm 1\u00A01/2 mm",
    ["NUMBER:1  1/2", "UNIT:mm", "NUMBER:1\u00A01/2", "UNIT:mm"],
  ],
  ["mixed fractions and grouped digits", "1_000 mm 1 1/2 in", ["NUMBER:1_000", "UNIT:mm", "NUMBER:1 1/2", "UNIT:in"]],
  ["a no-break space before the unit", "40\u00a0N·m", ["NUMBER:40", "UNIT:N·m"]],
  ["a decimal comma where one value belongs", "mass 13,5 kg", ["mass", "DECIMAL_COMMA:13,5", "UNIT:kg"]],
  ["a list of numbers", "order 1,4,2,3", ["order", "NUMBER:1", ",", "NUMBER:4", ",", "NUMBER:2", ",", "NUMBER:3"]],
  ["a list of two numbers in an index", "Screw[1,5]", ["ID:Screw", "[", "NUMBER:1", ",", "NUMBER:5", "]"]],
  [
    "`record` before a text, which begins a line, and as the end of a check",
    'check "gap" record record\n  "float" recorded',
    ["check", 'STRING:"gap"', "record", "RECORD:record", 'STRING:"float"', "ID:recorded"],
  ],
  ["a date", "2026-05-04", ["DATE:2026-05-04"]],
  ["a range", "1..4 38 .. 42", ["NUMBER:1", "..", "NUMBER:4", "NUMBER:38", "..", "NUMBER:42"]],
  ["a text in three quotation marks", '"""a "b"\nc"""', ['TEXT_BLOCK:"""a "b"\nc"""']],
  ["a byte order mark", "\uFEFFpart", ["part"]],
])("reads %s", (_title, text, tokens) => {
  expect(lex(text)).toEqual(tokens);
});

test("an open comment is looked for once, however many there are", () => {
  const begun = performance.now();
  expect(lex("/* ".repeat(50_000))).toHaveLength(100_000);
  expect(performance.now() - begun).toBeLessThan(2_000);
});
