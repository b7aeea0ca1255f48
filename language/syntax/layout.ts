// Sets a document of texts, groups and breaks in lines of a given width. Knows no language.

/**
 * What to print. A group stands on one line where it fits; otherwise each of its own soft breaks becomes a new line.
 * Inner groups decide for themselves.
 */
export type Doc = string | Aside | Break | Nest;

/** A text at the end of a line that does not count for its width. */
export interface Aside {
  readonly kind: "aside";
  readonly text: string;
}

export interface Break {
  readonly kind: "break";
  /** What stands for it on one line; null: always a new line. */
  readonly flat: string | null;
  /** Whether the new line comes after an empty one. */
  readonly blank: boolean;
  /** Levels of indentation of this one line beyond those of its surroundings. */
  readonly deeper: number;
}

export interface Nest {
  readonly kind: "group" | "indent";
  readonly parts: readonly Doc[];
  /** Whether a new line within is certain. */
  readonly broken: boolean;
}

/** Builds a document from front to back. */
export interface DocBuilder {
  readonly put: (part: Doc) => void;
  readonly open: (kind: Nest["kind"]) => void;
  /** Ends the nest opened last. */
  readonly close: () => void;
  /** The whole; every nest must be closed. */
  readonly parts: () => readonly Doc[];
}

export function newLine(blank: boolean, deeper = 0): Break {
  return { kind: "break", flat: null, blank, deeper };
}

export function softBreak(flat: string): Break {
  return { kind: "break", flat, blank: false, deeper: 0 };
}

export function buildDoc(): DocBuilder {
  const done: Doc[] = [];
  const nests: { kind: Nest["kind"]; parts: Doc[]; broken: boolean }[] = [];
  const put = (part: Doc): void => {
    const nest = nests[nests.length - 1];
    if (nest === undefined) done.push(part);
    else {
      nest.parts.push(part);
      nest.broken ||= isBroken(part);
    }
  };
  return {
    put,
    open: (kind) => nests.push({ kind, parts: [], broken: false }),
    close: () => {
      const nest = nests.pop();
      if (nest !== undefined) put(nest);
    },
    parts: () => done,
  };
}

/** Prints without a newline at the end and without blanks at the end of any line. */
export function printDoc(parts: readonly Doc[], width: number, indentation: string): string {
  const page = startPage(indentation);
  const stack: Pending[] = pending(parts, 0, false);
  for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
    const { doc, level, flat } = next;
    if (typeof doc === "string") page.write(doc, level);
    else if (doc.kind === "aside") page.write(doc.text, level);
    else if (doc.kind === "break") {
      if (flat && doc.flat !== null) page.write(doc.flat, level);
      else page.turn(doc.blank, level + doc.deeper);
    } else {
      const inner = doc.kind === "indent" ? level + 1 : level;
      const isFlat = flat || (doc.kind === "group" && !doc.broken && fits(doc, width - page.column(), stack));
      // The parts of an indentation break with what it stands in.
      for (const part of pending(doc.parts, inner, doc.kind === "indent" ? flat : isFlat)) stack.push(part);
    }
  }
  return page.text();
}

interface Pending {
  readonly doc: Doc;
  readonly level: number;
  readonly flat: boolean;
}

function pending(parts: readonly Doc[], level: number, flat: boolean): Pending[] {
  return parts.map((doc) => ({ doc, level, flat })).reverse();
}

function isBroken(part: Doc): boolean {
  if (typeof part === "string") return part.includes("\n");
  if (part.kind === "aside") return false;
  return part.kind === "break" ? part.flat === null : part.broken;
}

/** Whether the group, and what follows it up to the next new line, has room. */
function fits(group: Doc, room: number, after: readonly Pending[]): boolean {
  const stack: Pending[] = [{ doc: group, level: 0, flat: true }];
  let left = room;
  let behind = after.length;
  while (left >= 0) {
    const next = stack.pop() ?? after[--behind];
    if (next === undefined) return true;
    const { doc, flat } = next;
    if (typeof doc === "string") {
      const end = doc.indexOf("\n");
      left -= end < 0 ? doc.length : end;
      if (end >= 0) return left >= 0;
    } else if (doc.kind === "break") {
      if (!flat || doc.flat === null) return true;
      left -= doc.flat.length;
    } else if (doc.kind !== "aside") {
      // A group behind this one that must break gives room at its first break.
      const isFlat = doc.kind === "group" ? !doc.broken : flat;
      for (const part of pending(doc.parts, 0, isFlat)) stack.push(part);
    }
  }
  return false;
}

interface Page {
  readonly write: (text: string, level: number) => void;
  readonly turn: (blank: boolean, level: number) => void;
  readonly column: () => number;
  readonly text: () => string;
}

/** Lines written so far; the indentation of a line is written with its first text. */
function startPage(indentation: string): Page {
  const pieces: string[] = [];
  let column = 0;
  let due = "";
  return {
    write: (text) => {
      if (text === "") return;
      pieces.push(due, text);
      const end = text.lastIndexOf("\n");
      column = end < 0 ? column + text.length : text.length - end - 1;
      due = "";
    },
    turn: (blank, level) => {
      pieces.push(blank ? "\n\n" : "\n");
      due = indentation.repeat(level);
      column = due.length;
    },
    column: () => column,
    text: () => pieces.join(""),
  };
}
