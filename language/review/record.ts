// The form in which two sides are compared: a tree of nodes, each with what it says as keyed texts that are equal exactly
// where they mean the same. Places, layout and numbering are beside them, not in them.
import type { Value } from "#model/declarations.ts";
import type { Role as ValueRole } from "#quantity/display.ts";
import type { Span } from "#syntax/span.ts";
import type { Group } from "./change.ts";
import type { Label } from "./words.ts";

export interface Node {
  readonly sort: Sort;
  /** As written; null where it has none. */
  readonly name: string | null;
  /** What is done and to what, without values: what two nodes that differ in little have in common. Null for what does nothing. */
  readonly does: string | null;
  /** Verbs and things, for telling whether two nodes have anything to do with each other. */
  readonly about: readonly string[];
  readonly says: readonly Saying[];
  readonly holds: readonly Node[];
  readonly span: Span;
  /** For a person: a sentence, a title, a whole statement. Made when it is asked for: most of them never are. */
  readonly title: () => string;
  /** The same in a few words, for what it says of itself; empty where the step says enough. */
  readonly subject: string;
  /** Of steps and tasks. */
  readonly number: string | null;
  /** Titles of the roles that sign it. */
  readonly signers: readonly string[];
  readonly critical: boolean;
}

export type Sort = Container | Leaf;
export type Container =
  | "procedure"
  | "task"
  | "step"
  | "repeat"
  | "when"
  | "arm"
  | "any order"
  | "check"
  | "failing"
  | "declaration";
export type Leaf = "perform" | "jump" | "statement" | "note" | "action" | "record" | "damaged";

/** One thing that a node says. */
export interface Saying {
  /** Once in each node. */
  readonly key: string;
  readonly group: Group;
  readonly label: Label;
  /** Equal where it means the same. */
  readonly text: string;
  /** For a person, made when it is asked for. */
  readonly shown: () => string;
  readonly values: readonly Value[];
  /** In which units these are written; empty where they are made of others. */
  readonly units: string;
  /** To which side its values are rounded. */
  readonly role: ValueRole;
  readonly span: Span;
  /** Key of the saying that it is a part of: where that comes or goes, it is told by that alone. */
  readonly within?: string;
}

/** A node with nothing but what is given. */
export function createNode(own: Pick<Node, "sort" | "span" | "title" | "says"> & Partial<Node>): Node {
  const { sort, name = null, does = null, about = [], says, holds = [], span, title } = own;
  const { subject = "", number = null, signers = [], critical = false } = own;
  return { sort, name, does, about, says, holds, span, title, subject, number, signers, critical };
}
