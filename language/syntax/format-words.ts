// The words of a text in order, each with the comments in front of it. Knows no statement and no layout.
import { type CstNode, CstUtils, type LeafCstNode } from "langium";

export interface Word {
  readonly leaf: LeafCstNode;
  /** As written. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly before: Gap;
}

/** What stands between two words. */
export interface Gap {
  readonly comments: readonly Comment[];
  /** New lines between the last comment, or the word before, and the word. */
  readonly newLines: number;
}

export interface Comment {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** How far from the start of its line it begins. */
  readonly column: number;
  /** New lines in front of it. */
  readonly newLines: number;
  /** Whether it runs to the end of its line (`//`). */
  readonly toLineEnd: boolean;
}

/** The words of a file, and what stands behind the last one. */
export interface Words {
  readonly words: readonly Word[];
  readonly last: Gap;
}

export function wordsOf(root: CstNode, text: string): Words {
  const words: Word[] = [];
  const lines = countLines(text);
  let comments: Comment[] = [];
  for (const leaf of CstUtils.flattenCst(root)) {
    const { offset: start, end } = leaf;
    const { newLines, lineStart } = lines.upTo(start);
    if (leaf.hidden) {
      const toLineEnd = leaf.text.startsWith("//");
      comments.push({ text: leaf.text, start, end, column: start - lineStart, newLines, toLineEnd });
    } else {
      words.push({ leaf, text: leaf.text, start, end, before: { comments, newLines } });
      comments = [];
    }
    lines.upTo(end);
  }
  return { words, last: { comments, newLines: lines.upTo(text.length).newLines } };
}

/** Goes through a text once; tells the new lines since the last stop. LF, CR LF and CR count as one. */
function countLines(text: string): { readonly upTo: (to: number) => { newLines: number; lineStart: number } } {
  let at = 0;
  let lineStart = 0;
  return {
    upTo: (to) => {
      let newLines = 0;
      for (; at < to; at++) {
        const code = text.charCodeAt(at);
        if (code !== 10 && (code !== 13 || text.charCodeAt(at + 1) === 10)) continue;
        newLines++;
        lineStart = at + 1;
      }
      return { newLines, lineStart };
    },
  };
}
