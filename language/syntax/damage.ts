// What is still known of a statement that could not be read: its words, and the names it mentions or may declare.
import type { IToken } from "chevrotain";
import type { AstNode } from "langium";
import type { Span } from "./span.ts";
import { type Block, isKeyword, isWord, typeName } from "./statements.ts";
import { endOf, isMissing } from "./virtual-token.ts";

/**
 * A statement that stands in the tree as one `Damaged` node; or the header of a procedure, task or step that stands there
 * without it, so that its block could be read.
 */
export interface Damage {
  readonly span: Span;
  /** The words and signs of it, in order. */
  readonly texts: readonly string[];
  /** The keyword it begins with, or "" where none stands. */
  readonly keyword: string;
  /** Every name in it. */
  readonly names: readonly string[];
  /** Names that it may have declared. */
  readonly declares: readonly string[];
  /** A declaration lost its name, or a `use` could not be read: any unknown name may be its. */
  readonly lostName: boolean;
}

/** The damage behind a `Damaged` node; `damage` in the order of the text. */
export function damageOf(damage: readonly Damage[], node: AstNode): Damage | undefined {
  const start = node.$cstNode?.offset ?? -1;
  let low = 0;
  let high = damage.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((damage[middle] as Damage).span.start < start) low = middle + 1;
    else high = middle;
  }
  return damage[low]?.span.start === start ? damage[low] : undefined;
}

/** Reads off the tokens of a damaged statement, blocks and all, what can still be known of it. */
export function damageFrom(path: string, block: Block, tokens: readonly IToken[]): Damage {
  const first = tokens[0] as IToken;
  const last = tokens[tokens.length - 1] as IToken;
  const written = tokens.filter((token) => !isMissing(token));
  return {
    span: { path, start: first.startOffset, end: endOf(last) },
    texts: written.map((token) => token.image),
    keyword: isKeyword(first) ? typeName(first) : "",
    names: [...new Set(written.filter(isWord).map((token) => token.image.normalize("NFC")))],
    declares: declaredIn(written),
    lostName: losesName(block, written),
  };
}

const DECLARING = new Set([
  "material",
  "source",
  "role",
  "ring",
  "holes",
  "part",
  "fit",
  "tool",
  "consumable",
  "energy",
  "hazard",
  "option",
  "fact",
  "value",
  "arrangement",
  "crib",
  "procedure",
]);
const NAMING = new Set([...DECLARING, "temporary", "task", "step", "repeat", "measure", "states"]);
const NAMELESS = new Set(["fit", "term", "verb", "threshold"]);

function declaredIn(tokens: readonly IToken[]): string[] {
  const names = new Set<string>();
  tokens.forEach((token, at) => {
    // Behind a first word that is none of the language's, a mistyped keyword may have been meant.
    const begins = at === 0 ? !isKeyword(token) : at === 1 && !isKeyword(tokens[0] as IToken);
    const follows = begins || NAMING.has(typeName(tokens[at - 1])) || typeName(tokens[at - 1]) === ",";
    if (follows && isWord(token)) names.add(token.image.normalize("NFC"));
  });
  return [...names];
}

/** A line at the level of declarations that names nothing where a name belongs, and a line that may be a `use`. */
function losesName(block: Block, tokens: readonly IToken[]): boolean {
  if (block !== "file" && block !== "procedure" && block !== "flow") return false;
  const at = typeName(tokens[0]) === "temporary" ? 1 : 0;
  const keyword = typeName(tokens[at]);
  const next = tokens[at + 1];
  if (block === "file" && typeName(tokens[0]) === "STRING") return true;
  // `include "shop/tools.sprag"` may have brought any name, too.
  if (keyword === "use" || (block === "file" && tokens.some(({ image }) => /\.sprag"$/.test(image)))) return true;
  if (keyword === "repeat") return next === undefined || next.image === "from" || next.image === "in";
  return DECLARING.has(keyword) && !NAMELESS.has(keyword) && !isWord(next);
}
