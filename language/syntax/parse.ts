// Text to tree: reads any text at all, names what is wrong with its form, and keeps every statement that could be read.
// Pure and total; knows no names' meaning (scope.ts) and no wording.
import type { IToken } from "chevrotain";
import { DocumentState, type LangiumDocument, TextDocument, URI } from "langium";
import type * as ast from "#grammar/generated/ast.ts";
import { SpragGrammar } from "#grammar/generated/grammar.ts";
import { balanceBraces } from "./braces.ts";
import { type Damage, damageFrom } from "./damage.ts";
import { createForms } from "./forms.ts";
import { createLexer, type SpragLexer } from "./lexer.ts";
import { createLookahead } from "./lookahead.ts";
import { type MendedTokens, mendTokens } from "./mend-tokens.ts";
import { readAgain, type TextRead } from "./parse-again.ts";
import type { SyntaxProblem } from "./problem.ts";
import { createRecogniser, type Recogniser } from "./recognise.ts";
import { recover } from "./recover.ts";
import { linkAs } from "./scope.ts";
import { problemOf } from "./slip.ts";
import { AS_ONE } from "./statements.ts";
import { createTreeReader, type ReadTree, type TreeReader } from "./tree-reader.ts";
import { asOneToken } from "./virtual-token.ts";

export interface ParsedFile {
  /** From the workspace root, with `/`. */
  readonly path: string;
  readonly text: string;
  /** Made anew when it is asked for, once a later text has taken the tree over. */
  readonly file: ast.File;
  readonly document: LangiumDocument;
  /** In the order of the text; one for each statement at most, beside strings, commas and dashes. */
  readonly problems: readonly SyntaxProblem[];
  /** In the order of the text. */
  readonly damage: readonly Damage[];
}

/**
 * Reads a text. Any text gives a tree; statements that cannot be read stand in it as `Damaged`.
 * @param path from the workspace root, for the places of the problems
 */
export function parseText(text: string, path: string): ParsedFile {
  return parsedFile(text, path, readText(text, path));
}

/**
 * The same for a text after a change: what did not change is taken over with its nodes, which are then nodes of the earlier text
 * no more.
 */
export function parseAgain(before: ParsedFile, text: string): ParsedFile {
  const { path } = before;
  const holder = holders.get(before);
  const file = holder?.held ?? null;
  if (holder === undefined || file === null) return parseText(text, path);
  const again = readAgain({ ...before, file }, text, (part) => readText(part, path));
  if (again === null) return parseText(text, path);
  holder.held = null;
  return parsedFile(text, path, again);
}

/** Holds the tree of a text; null once a later text has taken it. */
interface Holder {
  held: ast.File | null;
}

const holders = new WeakMap<ParsedFile, Holder>();

function parsedFile(text: string, path: string, { damage, file: first, problems }: TextRead): ParsedFile {
  giveDocument(path, text, first);
  const holder: Holder = { held: first };
  const file = (): ast.File => {
    if (holder.held !== null) return holder.held;
    const { file: again } = readText(text, path);
    giveDocument(path, text, again);
    linkAs(again, first);
    holder.held = again;
    return again;
  };
  const parsed: ParsedFile = {
    ...{ path, text, problems, damage },
    get file() {
      return file();
    },
    get document() {
      return file().$document as LangiumDocument;
    },
  };
  holders.set(parsed, holder);
  return parsed;
}

function readText(text: string, path: string): TextRead {
  const reader = theReader();
  const mended = mendTokens(reader.grammar, reader.lexer, text, path);
  const read = readTree(reader, mended, text, path);
  const problems = [...mended.problems, ...read.problems].sort((a, b) => a.span.start - b.span.start);
  return { file: read.file, problems, damage: read.damage };
}

interface Reader {
  readonly lexer: SpragLexer;
  readonly trees: TreeReader;
  readonly grammar: Recogniser;
}
/** Of all texts. */
export function theLexer(): SpragLexer {
  return theReader().lexer;
}

let made: Reader | undefined;

function theReader(): Reader {
  if (made === undefined) {
    const lexer = createLexer();
    const forms = createForms(SpragGrammar(), lexer.types);
    const trees = createTreeReader(SpragGrammar(), lexer.types, createLookahead(forms));
    made = { lexer, trees, grammar: createRecogniser(forms, AS_ONE) };
  }
  return made;
}

function readTree(reader: Reader, mended: MendedTokens, text: string, path: string): TextRead {
  const straight = isShallow(mended.tokens) ? reader.trees.read(text, mended.tokens, mended.hidden) : null;
  if (straight !== null && straight.file !== null) return { file: straight.file, problems: [], damage: [] };
  const { grammar } = reader;
  const balanced = balanceBraces(grammar, mended.tokens, text, path);
  const told = [...mended.problems, ...balanced.problems].map((problem) => problem.span.start);
  const recovered = recover({ grammar, text, path, told }, balanced.tokens);
  const problems = [...balanced.problems, ...recovered.problems];
  const again = reader.trees.read(text, recovered.tokens, mended.hidden);
  if (again.file !== null) return { file: again.file, problems, damage: recovered.damage };
  return wholeDamage(reader, mended, text, path, problems, again.wrongAt);
}

/** The last resort: the whole text as one damaged statement. */
function wholeDamage(
  reader: Reader,
  mended: MendedTokens,
  text: string,
  path: string,
  known: readonly SyntaxProblem[],
  wrongAt: IToken,
): TextRead {
  const { tokens } = mended;
  const whole = asOneToken(
    reader.grammar.type("DAMAGED"),
    text,
    tokens[0] as IToken,
    tokens[tokens.length - 1] as IToken,
  );
  const { file } = reader.trees.read(text, [whole], mended.hidden) as ReadTree & { readonly wrongAt: null };
  const problems =
    known.length > 0
      ? known
      : [
          problemOf(
            { grammar: reader.grammar, path, text },
            { block: "file", tokens: [wrongAt], start: 0, at: 0, end: 1, expected: [], slip: null },
          ),
        ];
  return { file, problems, damage: [damageFrom(path, "file", tokens)] };
}

/** Whether brackets nest no deeper than the parser, which calls itself for each, can follow on any stack. */
function isShallow(tokens: readonly IToken[]): boolean {
  let depth = 0;
  for (const token of tokens) {
    const name = token.tokenType.name;
    if (name === "{" || name === "(" || name === "[") depth++;
    else if (name === "}" || name === ")" || name === "]") depth--;
    if (depth > DEEPEST) return false;
  }
  return true;
}

const DEEPEST = 100;

/** What leads from the tree to its text. */
function giveDocument(path: string, text: string, file: ast.File): void {
  const uri = URI.from({ scheme: "sprag", path: `/${path.replace(/^\/+/, "")}` });
  let textDocument: TextDocument | undefined;
  const document: LangiumDocument = {
    uri,
    state: DocumentState.ComputedScopes,
    // Names in nodes that are taken over may mean something else now.
    references: file.$document?.references ?? [],
    parseResult: { value: file, parserErrors: [], lexerErrors: [] },
    get textDocument() {
      textDocument ??= TextDocument.create(uri.toString(), "sprag", 0, text);
      return textDocument;
    },
  };
  (file as { $document?: LangiumDocument }).$document = document;
}
