// The concrete tree: what Langium asks of its nodes, each knowing its ends, so that a part of a tree can be moved along with its text.
// Knows no grammar.
import type { TokenType } from "chevrotain";
import type { AstNode, CompositeCstNode, CstNode, GrammarAST, LeafCstNode, RootCstNode } from "langium";
import { type Lines, linesOf, type Range } from "./lines.ts";

export type Concrete = Leaf | Composite;

/** A property that is there from the start has its place in the node. */
const NONE: unknown = undefined;

abstract class Node {
  /** Given to all but the root, once it is finished. */
  container = NONE as CompositeCstNode;
  /** Comments have none, nor has the root. */
  grammarSource = NONE as GrammarAST.AbstractElement;
  offset: number;
  end: number;

  constructor(offset: number, end: number) {
    // Whole numbers that are said to be such take no room of their own.
    this.offset = offset | 0;
    this.end = end | 0;
  }

  get length(): number {
    return this.end - this.offset;
  }

  get root(): RootCstNode {
    let node: Node = this;
    while (node.container !== undefined) node = node.container as Composite;
    return node as Root;
  }

  get text(): string {
    return this.root.fullText.substring(this.offset, this.end);
  }

  get range(): Range {
    return (this.root as Root).lines.range(this.offset, this.end);
  }
}

export class Leaf extends Node implements LeafCstNode {
  readonly tokenType: TokenType;
  readonly hidden: boolean;

  constructor(offset: number, length: number, tokenType: TokenType, hidden: boolean) {
    super(offset, offset + length);
    this.tokenType = tokenType;
    this.hidden = hidden;
  }

  get astNode(): AstNode {
    return this.container.astNode;
  }
}

export class Composite extends Node implements CompositeCstNode {
  content: CstNode[];
  /** The abstract node that was made from it; undefined where it belongs to that of a node around it. */
  own: AstNode | undefined = undefined;

  constructor(offset: number, end: number, content: CstNode[]) {
    super(offset, end);
    this.content = content;
    for (let at = 0; at < content.length; at++) (content[at] as Concrete).container = this;
  }

  get hidden(): boolean {
    return false;
  }

  get astNode(): AstNode {
    let node: Composite = this;
    while (node.own === undefined) node = node.container as Composite;
    return node.own;
  }
}

/** Reaches from the first to the last node that is no comment. */
export class Root extends Composite implements RootCstNode {
  readonly fullText: string;
  private made: Lines | undefined = undefined;

  constructor(fullText: string, content: CstNode[]) {
    const written = content.filter(({ hidden }) => !hidden);
    const shown = written.length === 0 ? content : written;
    super(shown[0]?.offset ?? 0, shown.at(-1)?.end ?? 0, content);
    this.fullText = fullText;
  }

  get lines(): Lines {
    this.made ??= linesOf(this.fullText);
    return this.made;
  }
}

/** Moves a node and all in it. */
export function moveConcrete(node: Concrete, by: number): void {
  const waiting: Concrete[] = [node];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    next.offset += by;
    next.end += by;
    if (next instanceof Composite) for (const child of next.content) waiting.push(child as Concrete);
  }
}
