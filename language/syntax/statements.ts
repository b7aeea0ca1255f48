// Where statements of Sprag stand and what they begin with: the blocks, the rule for a line in each, the words that
// open a block. The one place beside the grammar that knows its keywords.
import type { IToken } from "chevrotain";
import type { Recogniser } from "./recognise.ts";
import { endOf } from "./virtual-token.ts";

/** What a block holds; each has one grammar rule for its statements. */
export type Block =
  | "file"
  | "procedure"
  | "flow"
  | "step"
  | "material"
  | "places"
  | "part"
  | "fit"
  | "tool"
  | "consumable"
  | "energy"
  | "arrangement"
  | "crib"
  | "crib item";

export const STATEMENT_RULE: Readonly<Record<Block, string>> = {
  file: "FileItem",
  procedure: "ProcedureItem",
  flow: "FlowItem",
  step: "StepLine",
  material: "MaterialProperty",
  places: "PlaceProperty",
  part: "PartProperty",
  fit: "FitProperty",
  tool: "ToolProperty",
  consumable: "ConsumableProperty",
  energy: "EnergyProperty",
  arrangement: "ArrangementProperty",
  crib: "CribEntry",
  "crib item": "CribProperty",
};

/** Rules that a writer knows as one thing, and how problems name that thing. */
export const AS_ONE: ReadonlyMap<string, string> = new Map([
  ...["Name", "Citation", "Target", "HazardUse", "IndexName"].map((rule) => [rule, "name"] as const),
  ["Word", "state"],
  ["Text", "text"],
  ...["Quantity", "Amount", "Expression", "Product", "Unary", "Primary", "LiteralOf", "Literal"].map(
    (rule) => [rule, "quantity"] as const,
  ),
  ["UnitText", "unit"],
  ...["Condition", "AllCondition", "NotCondition"].map((rule) => [rule, "condition"] as const),
  ...["IndexItem", "IndexExpression", "IndexTerm", "IndexFactor"].map((rule) => [rule, "index"] as const),
  ["Action", "action"],
  ["StepLine", "step line"],
  ["PlainLine", "step line"],
  ["Declaration", "declaration"],
  ["HeadLine", "head line"],
  ["FlowItem", "step"],
  ["ProcedureItem", "step"],
  ["FileItem", "declaration"],
  ["CodeWord", "code"],
  ["Code", "code"],
  ["Limit", "at least"],
  ["MaterialProperty", "property"],
  ["PlaceProperty", "property"],
  ["PartProperty", "property"],
  ["FitProperty", "property"],
  ["ToolProperty", "property"],
  ["ConsumableProperty", "property"],
  ["EnergyProperty", "property"],
  ["ArrangementProperty", "property"],
  ["CribProperty", "property"],
  ["CribEntry", "crib item"],
]);

/** Declaration keyword to the block it opens. */
export const DECLARED_BLOCK: Readonly<Record<string, Block>> = {
  material: "material",
  ring: "places",
  holes: "places",
  part: "part",
  fit: "fit",
  tool: "tool",
  consumable: "consumable",
  energy: "energy",
  arrangement: "arrangement",
  crib: "crib",
};

const FLOW_OPENERS = new Set(["task", "repeat", "when", "otherwise", "step", "procedure"]);

/** Blocks whose rows are part of the statement itself and not lines of their own. */
const INLINE_OPENERS = new Set(["choose", "option"]);

/** The name of a token's type: a keyword as written, or a terminal such as `ID`. */
export function typeName(token: Pick<IToken, "tokenType"> | undefined): string {
  const name = token?.tokenType.name ?? "";
  return name === "RECORD" ? "record" : name;
}

/** Words behind which a text stands that writers give as a number: `revision 3`. */
export const TAKES_TEXT: ReadonlySet<string> = new Set([
  "document",
  "revision",
  "class",
  "grade",
  "thread",
  "tolerance",
]);

/** Whether a token is a word of the language, whatever it is used for. */
export function isKeyword(token: IToken | undefined): boolean {
  return /^[a-z]/.test(typeName(token));
}

export function isWord(token: IToken | undefined): boolean {
  return typeName(token) === "ID" || isKeyword(token);
}

/** Whether nothing stands between the token at `at` and the next one. */
export function touches(tokens: readonly IToken[], at: number): boolean {
  const [token, next] = [tokens[at], tokens[at + 1]];
  return token !== undefined && next !== undefined && endOf(token) === next.startOffset;
}

/** Whether the token at `at` is the first of its line. */
export function opensLine(tokens: readonly IToken[], at: number): boolean {
  const before = tokens[at - 1];
  const token = tokens[at];
  return before === undefined || (token !== undefined && (before.endLine ?? 0) < (token.startLine ?? 0));
}

/** The block that the `{` at `at` opens within a statement that begins at `start` and stands in `block`. */
export function blockOpened(tokens: readonly IToken[], start: number, at: number, block: Block): Block {
  const first = typeName(tokens[start]) === "temporary" ? "part" : typeName(tokens[start]);
  const declared = block === "file" || block === "procedure" ? DECLARED_BLOCK[first] : undefined;
  if (declared !== undefined) return declared;
  if (block === "crib") return "crib item";
  for (let i = at - 1; i >= start; i--) {
    const name = typeName(tokens[i]);
    if (name === "procedure" || name === "step") return name === "step" ? "step" : "procedure";
    if (name === "task") return "flow";
    if (name === "check") return "step";
    if (name === "when" || name === "repeat" || name === "otherwise" || name === "order") break;
  }
  return block === "step" ? "step" : "flow";
}

/** The keyword that opens the block at the `{` at `at`, looking back no further than the line of the statement. */
export function openerOf(tokens: readonly IToken[], at: number): string {
  for (let i = at - 1; i >= 0 && at - i < 40; i--) {
    const name = typeName(tokens[i]);
    if (name === "{" || name === "}") return "";
    if (FLOW_OPENERS.has(name) || INLINE_OPENERS.has(name)) return name;
    if (name in DECLARED_BLOCK && name !== "material") return name;
    if (name === "check") return name;
    if (name === "order" && typeName(tokens[i - 1]) === "any") return "in any order";
  }
  return "";
}

export function isInlineBlock(tokens: readonly IToken[], at: number): boolean {
  return INLINE_OPENERS.has(openerOf(tokens, at));
}

/** Words that cannot stand inside a statement of a procedure or file, so that one always begins with them. */
const HARD_STARTERS = new Set([
  "use",
  "procedure",
  "task",
  "step",
  "repeat",
  "when",
  "danger",
  "warning",
  "caution",
  "document",
  "applies",
  "based",
  "ambient",
  "room",
  "crew",
  "begin",
  "finish",
  "temporary",
  "part",
  "ring",
  "holes",
  "fit",
  "tool",
  "consumable",
  "energy",
  "option",
  "fact",
  "value",
  "term",
  "verb",
  "threshold",
  "arrangement",
  "crib",
  "source",
  "role",
]);
/** Lines that a one-line step takes along, also on the next line of the text. */
const STEP_TAIL = new Set([
  "check",
  "record",
  "needs",
  "gives",
  "per",
  "allow",
  "sign",
  "hold",
  "by",
  "critical",
  "takes",
  "within",
  "after",
  "before",
  "raises",
  "why",
  "figure",
]);
/** Starters of step lines that also stand inside one. */
const SOFT_IN_STEP = new Set([
  "by",
  "record",
  "after",
  "before",
  "in",
  "clean",
  "with",
  "check",
  "fill",
  "turn",
  "cool",
  "do",
  "note",
  "warning",
  "step",
]);

/**
 * Whether a new statement of the block begins at `at`, seen from a damaged one that begins at `start`: the damage must
 * not reach into it.
 */
export function beginsStatement(
  grammar: Recogniser,
  block: Block,
  tokens: readonly IToken[],
  start: number,
  at: number,
): boolean {
  const token = tokens[at];
  if (token === undefined) return true;
  const name = typeName(token);
  const starts = grammar.canStart(STATEMENT_RULE[block], token.tokenType);
  const newLine = opensLine(tokens, at);
  // Of `no temporary parts`, not of `temporary part X`.
  if (name === "temporary" && (typeName(tokens[at + 1]) !== "part" || opensLine(tokens, at + 2))) return false;
  if (name === "when" && typeName(tokens[at - 1]) === "otherwise") return false;
  switch (block) {
    case "file":
      return (starts && typeName(tokens[at - 1]) !== "temporary") || (newLine && opensOddLine(tokens, at));
    case "procedure":
    case "flow":
      if (HARD_STARTERS.has(name) && (starts || block === "flow"))
        return newLine || (name !== "temporary" && name !== "part");
      if (!newLine) return name === "in" && typeName(tokens[at + 1]) === "any";
      if (isStepLike(grammar, tokens, start)) return (starts && !STEP_TAIL.has(name)) || startsAction(grammar, token);
      return starts || startsAction(grammar, token) || opensOddLine(tokens, at);
    case "step":
      return starts ? newLine || !SOFT_IN_STEP.has(name) : newLine && opensOddLine(tokens, at);
    default:
      return starts || (newLine && opensOddLine(tokens, at));
  }
}

/** Whether an action (a verb) can begin with this token. */
export function startsAction(grammar: Recogniser, token: IToken): boolean {
  return grammar.canStart("Action", token.tokenType);
}

function isStepLike(grammar: Recogniser, tokens: readonly IToken[], start: number): boolean {
  const token = tokens[start];
  return token !== undefined && (typeName(token) === "step" || startsAction(grammar, token));
}

/** A line that begins with a word no statement begins with, as one with a mistyped keyword does. */
function opensOddLine(tokens: readonly IToken[], at: number): boolean {
  return typeName(tokens[at]) === "ID" && !CONTINUED.has(typeName(tokens[at - 1]));
}

const CONTINUED = new Set([
  ",",
  "+",
  "-",
  "*",
  "/",
  "=",
  "(",
  "[",
  "..",
  "and",
  "or",
  "not",
  "with",
  "of",
  "to",
  "for",
]);
