// Tokens of a Sprag text. Units are recognised only after a number on the same line, by a scanner that is handed in;
// the grammar knows no unit. Must keep Chevrotain's first-character fast path (every pattern has known start characters).
import type { CustomPatternMatcherFunc, IToken, TokenType, TokenVocabulary } from "chevrotain";
import { DefaultTokenBuilder, type Grammar, GrammarAST, RegExpUtils } from "langium";

/** How far a unit reaches from `offset`, and whether it is a known one; null where nothing like a unit stands. */
export type UnitScanner = (text: string, offset: number) => { readonly end: number; readonly known: boolean } | null;

type KeywordList = { words: ReadonlySet<string> };

/** Builds the token types; `scan` decides what is a unit. */
export class SpragTokenBuilder extends DefaultTokenBuilder {
  private readonly scan: UnitScanner;
  private readonly keywords: KeywordList = { words: new Set() };
  private readonly beginnings = new Map<TokenType, RegExp>();

  constructor(scan: UnitScanner) {
    super();
    this.scan = scan;
  }

  /** As Langium builds them, but with one plain walk through the grammar. */
  override buildTokens(grammar: Grammar): TokenVocabulary {
    const rules = grammar.rules.filter(GrammarAST.isTerminalRule).filter((rule) => !rule.fragment);
    const terminals = rules.map((rule) => this.buildTerminalToken(rule));
    const keywords = new Map<string, GrammarAST.Keyword>();
    for (const rule of grammar.rules) if (GrammarAST.isParserRule(rule)) collectKeywords(rule.definition, keywords);
    this.keywords.words = new Set([...keywords.keys()].filter((word) => /^[a-z]/.test(word)));
    const longestFirst = [...keywords.values()].sort((a, b) => b.value.length - a.value.length);
    const tokens = [...longestFirst.map((keyword) => this.buildKeywordToken(keyword, terminals, false)), ...terminals];
    // What a keyword or sign would match too comes first: after a number a word is a unit before it is anything else, `/*` is no
    // division, and `record` before a text begins a line.
    const first = ["UNIT", "UNKNOWN_UNIT", "DECIMAL_COMMA", "ML_COMMENT", "RECORD"];
    return [
      ...first.map((name) => tokens.find((token) => token.name === name)).filter((token) => token !== undefined),
      ...tokens.filter((token) => !first.includes(token.name)),
    ];
  }

  /** As Langium finds them, but with the pattern of each terminal's beginnings made once and not for every keyword. */
  protected override findLongerAlt({ value }: GrammarAST.Keyword, terminals: TokenType[]): TokenType[] {
    return terminals.filter((terminal) => {
      const { PATTERN: pattern } = terminal;
      if (!(pattern instanceof RegExp)) return false;
      const beginning = this.beginnings.get(terminal) ?? RegExpUtils.partialRegExp(`^${pattern.source}$`);
      this.beginnings.set(terminal, beginning);
      return (beginning.exec(value)?.[0] ?? "") !== "";
    });
  }

  protected override buildTerminalToken(terminal: GrammarAST.TerminalRule): TokenType {
    switch (terminal.name) {
      case "UNIT":
        return custom("UNIT", unitMatcher(this.scan, this.keywords, true), UNIT_STARTS);
      case "UNKNOWN_UNIT":
        return custom("UNKNOWN_UNIT", unitMatcher(this.scan, this.keywords, false), UNIT_STARTS);
      case "DECIMAL_COMMA":
        return custom("DECIMAL_COMMA", decimalCommaMatcher(this.scan, this.keywords), [..."0123456789"]);
      case "ML_COMMENT":
        return { ...custom("ML_COMMENT", commentMatcher(), ["/"]), LINE_BREAKS: true, GROUP: "hidden" };
      default:
        return super.buildTerminalToken(terminal);
    }
  }
}

function collectKeywords(element: GrammarAST.AbstractElement, into: Map<string, GrammarAST.Keyword>): void {
  if (GrammarAST.isKeyword(element)) {
    if (!into.has(element.value)) into.set(element.value, element);
  } else if (GrammarAST.isAssignment(element)) collectKeywords(element.terminal, into);
  else if (GrammarAST.isGroup(element) || GrammarAST.isAlternatives(element)) {
    for (const part of element.elements) collectKeywords(part, into);
  }
}

/** Looks for an end that is not there once only, however many comments are left open. */
function commentMatcher(): CustomPatternMatcherFunc {
  let without = { text: "", from: 0 };
  return (text, offset) => {
    if (text[offset + 1] !== "*" || (text === without.text && offset >= without.from)) return null;
    const close = text.indexOf("*/", offset + 2);
    if (close < 0) without = { text, from: offset };
    return close < 0 ? null : matched(text, offset, close + 2);
  };
}

// Letters of the units, and the signs units begin with; `1` for `1/min`, `"` for inches.
const UNIT_STARTS = [..."abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ1\"%‰°º′″'µμΩΩ℃℉"];

function custom(name: string, pattern: CustomPatternMatcherFunc, starts: string[]): TokenType {
  return { name, PATTERN: pattern, LINE_BREAKS: false, START_CHARS_HINT: starts };
}

function matched(text: string, start: number, end: number): RegExpExecArray {
  const match = [text.slice(start, end)] as unknown as RegExpExecArray;
  match.index = start;
  match.input = text;
  return match;
}

function unitMatcher(scan: UnitScanner, keywords: KeywordList, wantKnown: boolean): CustomPatternMatcherFunc {
  return (text, offset, tokens) => {
    const last = tokens[tokens.length - 1];
    if (last === undefined || !isNumber(last) || !sameLine(text, last, offset)) return null;
    const end = unitEnd(text, offset, scan, keywords, wantKnown);
    return end === 0 ? null : matched(text, offset, end);
  };
}

function unitEnd(text: string, offset: number, scan: UnitScanner, keywords: KeywordList, wantKnown: boolean): number {
  const scanned = scan(text, offset);
  // A unit that breaks off behind a product sign, as `N·`, is not the unit before it.
  const isBroken = scanned !== null && /[·⋅]/.test(text[scanned.end] ?? "");
  const found = scanned !== null && isBroken ? { end: scanned.end + 1, known: false } : scanned;
  if (found === null || found.known !== wantKnown) return 0;
  const word = text.slice(offset, found.end);
  if (word === "in" && opensList(text, found.end)) return 0;
  // `in-lb` and `turn/s` are units, though they begin with a word of the language.
  const first = wantKnown ? word : leadingWord(word);
  if (word !== "in" && word !== "turn" && keywords.words.has(first)) return 0;
  return found.end;
}

/** `in` is inches, except before what a list or a pattern begins with. */
function opensList(text: string, offset: number): boolean {
  return /^[ \t]+(?:\d|cross\b|circular\b|order\b|reverse\b|any\b|[A-Za-z_]\w*\s*\[)/.test(
    text.slice(offset, offset + 40),
  );
}

function leadingWord(text: string): string {
  return /^[a-z]+/.exec(text)?.[0] ?? text;
}

function isNumber(token: IToken): boolean {
  return token.tokenType.name === "NUMBER" || token.tokenType.name === "DECIMAL_COMMA";
}

function sameLine(text: string, last: IToken, offset: number): boolean {
  for (let at = (last.endOffset ?? last.startOffset) + 1; at < offset; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return false;
  }
  return true;
}

// `13,5 N·m` and `nut factor 0,15`: two digits groups joined by a comma where one value belongs. In a list of numbers it is a list.
const COMMA_NUMBER = /\d+,\d+(?![\d,.])/y;
const VALUE_WORDS = new Set(["factor", "friction", "=", "±", "+/-", "least", "most"]);

function decimalCommaMatcher(scan: UnitScanner, keywords: KeywordList): CustomPatternMatcherFunc {
  return (text, offset, tokens) => {
    COMMA_NUMBER.lastIndex = offset;
    const match = COMMA_NUMBER.exec(text);
    if (match === null) return null;
    const last = tokens[tokens.length - 1];
    const end = offset + match[0].length;
    // The unit may stand behind the far end of a range, or behind a tolerance.
    FAR_END.lastIndex = end;
    const farEnd = FAR_END.test(text) ? FAR_END.lastIndex : end;
    const unitFollows = [end, farEnd].some((at) => unitEnd(text, pastBlanks(text, at), scan, keywords, true) > 0);
    const valuePlace = last !== undefined && VALUE_WORDS.has(last.image);
    return unitFollows || valuePlace ? match : null;
  };
}

const FAR_END = /[ \t\u00A0\u202F]*(?:\.\.|±|\+\/-|-|\u2013|\u2014)[ \t\u00A0\u202F]*[-\u2212]?\d[\d_.,]*/y;

function pastBlanks(text: string, at: number): number {
  let next = at;
  while (/[ \t\u00A0\u202F]/.test(text[next] ?? "")) next++;
  return next;
}
