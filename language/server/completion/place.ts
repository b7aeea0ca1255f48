// What a half-typed text is at a place: the word begun there, the block and the statement it stands in, and what the grammar
// lets follow. Works on the tokens before the place, so that nothing behind it matters. Knows no names and no meaning.
import { type Block, DECLARED_BLOCK, STATEMENT_RULE } from "#syntax/statements.ts";
import { canBegin, type Expected, pathsOver } from "./grammar-paths.ts";
import { type Token, tokensBefore } from "./tokens.ts";

export interface Place {
  readonly offset: number;
  /** What has been typed of the word or unit; empty between words. */
  readonly prefix: string;
  /** Where the prefix begins. */
  readonly start: number;
  readonly block: Block;
  /** The word that opened the block: `procedure`, `step`, `part` …; empty in the file. */
  readonly opener: string;
  /** The statement's tokens before the prefix, without what complete blocks in it hold, and those of statements before it. */
  readonly tokens: readonly Token[];
  /** All tokens of the file before the prefix. */
  readonly all: readonly Token[];
  /** Variables of the repeats it stands in, outermost first. */
  readonly loops: readonly string[];
  readonly expected: readonly Expected[];
  /** Whether nothing stands before the prefix on its line. */
  readonly opensLine: boolean;
  /** Whether the prefix touches what stands before it, as behind `45`. */
  readonly touches: boolean;
  /** The text begun there: what is written of it behind its quote. */
  readonly text: string | null;
}

/**
 * Null in a comment.
 * @param key stands for the file, where it is asked for again and again
 */
export function placeAt(text: string, offset: number, key?: object): Place | null {
  const { tokens: all, inside } = tokensBefore(text, offset, key);
  if (inside === "comment") return null;
  const last = all[all.length - 1];
  const isBegun = last !== undefined && last.end === offset && (inside === "text" || isWordLike(last));
  const tokens = isBegun ? all.slice(0, -1) : all;
  const start = isBegun ? last.start : offset;
  const opensLine = text.slice(text.lastIndexOf("\n", start - 1) + 1, start).trim() === "";
  const { frame, loops } = blockAround(tokens);
  const { block, opener, tokens: own } = frame;
  const statement = own.slice(lastStart(own, block));
  const { expected, tokens: read } = expectedAfter(block, statement, opensLine);
  const before = tokens[tokens.length - 1];
  return {
    offset,
    prefix: inside === "text" ? "" : text.slice(start, offset),
    start,
    block,
    opener,
    tokens: read,
    all: tokens,
    loops,
    expected,
    opensLine,
    touches: before !== undefined && before.end === start && !isBracket(before),
    text: inside === "text" ? text.slice(start + 1, offset) : null,
  };
}

function isWordLike({ type }: Token): boolean {
  return type === "ID" || type === "UNIT" || type === "UNKNOWN_UNIT" || /^[a-z]/.test(type);
}

function isBracket({ type }: Token): boolean {
  return !/^(?:[A-Za-z]|NUMBER)/.test(type);
}

/* ---- blocks ---- */

interface Frame {
  readonly block: Block;
  readonly opener: string;
  readonly tokens: Token[];
}

/** The block that the last token stands in, with its own tokens. */
function blockAround(tokens: readonly Token[]): { readonly frame: Frame; readonly loops: readonly string[] } {
  const frames: Frame[] = [{ block: "file", opener: "", tokens: [] }];
  // Braces that belong to their statement (`option`, `choose`) and open no block.
  const inline: boolean[] = [];
  for (const token of tokens) {
    leaveLost(frames, inline, token);
    const frame = frames[frames.length - 1] as Frame;
    frame.tokens.push(token);
    if (token.type === "{") {
      const opened = opening(frame);
      inline.push(opened === null);
      if (opened !== null) frames.push(opened);
    } else if (token.type === "}") {
      if (inline.pop() !== false) continue;
      frames.pop();
      (frames[frames.length - 1] as Frame).tokens.push(token);
    }
  }
  return {
    frame: frames[frames.length - 1] as Frame,
    loops: frames.flatMap(({ opener }, at) => (opener === "repeat" ? variableOf(frames[at - 1]?.tokens ?? []) : [])),
  };
}

/** `n` of `repeat n in 1, 2 {`, the last of these tokens. */
function variableOf(tokens: readonly Token[]): readonly string[] {
  for (let at = tokens.length - 1; at >= 0; at--)
    if (tokens[at]?.type === "repeat") return tokens[at + 1] === undefined ? [] : [(tokens[at + 1] as Token).image];
  return [];
}

/** A step or procedure that begins where none can stand: a brace is missing before it. */
function leaveLost(frames: Frame[], inline: boolean[], { type, opensLine }: Token): void {
  if (!opensLine || (type !== "step" && type !== "task" && type !== "procedure")) return;
  const isLost = (): boolean => {
    const { block } = frames[frames.length - 1] as Frame;
    return type === "procedure" ? block !== "file" : block !== "file" && block !== "procedure" && block !== "flow";
  };
  while (frames.length > 1 && isLost()) {
    while (inline.pop() === true);
    frames.pop();
  }
}

const FLOW: Readonly<Record<string, Block>> = {
  procedure: "procedure",
  task: "flow",
  step: "step",
  check: "step",
};
const SAME = new Set(["repeat", "when", "otherwise", "order"]);

/** The block that the `{` at the end of the frame's tokens opens; null where it opens none. */
function opening({ block, tokens }: Frame): Frame | null {
  const frame = (opened: Block, opener: string): Frame => ({ block: opened, opener, tokens: [] });
  if (block === "crib") return frame("crib item", "item");
  const inFlow = block === "step" || block === "flow";
  for (let at = tokens.length - 2; at >= 0; at--) {
    const type = tokens[at]?.type ?? "";
    if (type === "{" || type === "}") break;
    if (type === "choose" || type === "option") return null;
    const flow = FLOW[type];
    if (flow !== undefined) return frame(flow, type);
    if (SAME.has(type)) return frame(block === "step" ? "step" : "flow", type);
    const declared = inFlow || tokens[at - 1]?.type === "no" ? undefined : DECLARED_BLOCK[type];
    if (declared !== undefined) return frame(declared, type);
  }
  return frame(block === "step" ? "step" : "flow", "");
}

/* ---- statements ---- */

/** Words with which a statement of these blocks begins wherever they open a line. */
const SURE: ReadonlySet<string> = new Set([
  ...["procedure", "task", "step", "repeat", "document", "finish", "ambient", "danger", "warning", "caution"],
  ...["material", "source", "role", "ring", "holes", "temporary", "tool", "consumable", "energy", "option", "fact"],
  ...["value", "term", "verb", "threshold", "arrangement", "crib", "fit", "use"],
]);
/** In a step only what begins with such a verb surely does. */
const SURE_IN_STEP: ReadonlySet<string> = new Set([
  ...["install", "press", "remove", "tighten", "loosen", "drain", "align", "isolate", "inspect", "measure", "perform"],
  ...["raises", "danger", "caution", "repeat", "takes", "sign", "hold", "why"],
]);

/** Where the last statement begins that surely does: what stands before it has no say in what may follow. */
function lastStart(tokens: readonly Token[], block: Block): number {
  const sure = block === "step" ? SURE_IN_STEP : SURE;
  if (block !== "step" && block !== "file" && block !== "procedure" && block !== "flow") return 0;
  for (let at = tokens.length - 1; at > 0; at--) {
    const token = tokens[at] as Token;
    if (token.opensLine && sure.has(token.type) && canBegin(STATEMENT_RULE[block], token.type)) return at;
  }
  return 0;
}

/** Past a line that cannot be read all begins anew with the next that can begin a statement. */
function expectedAfter(
  block: Block,
  tokens: readonly Token[],
  opensLine: boolean,
): { readonly expected: readonly Expected[]; readonly tokens: readonly Token[] } {
  const rule = STATEMENT_RULE[block];
  let from = 0;
  for (;;) {
    const paths = pathsOver(rule, tokens, from);
    if (paths.stoppedAt === null) return { expected: paths.expected, tokens };
    const stopped = paths.stoppedAt;
    const next = tokens.findIndex(
      ({ opensLine: opens, type }, at) =>
        (at > stopped || (at === stopped && at > from)) && opens && canBegin(rule, type),
    );
    if (next < 0) return { expected: opensLine ? pathsOver(rule, [], 0).expected : [], tokens: [] };
    from = next;
  }
}
