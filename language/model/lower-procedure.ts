// Procedures: their head lines, and tasks, steps and blocks in order, with the numbers a reader sees. Knows no files.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { damageOf } from "#syntax/damage.ts";
import type { Span } from "#syntax/span.ts";
import { allInReach, isNumbered, isTaskHead, lowerDamaged } from "./damaged-lines.ts";
import type { Citation, Declaration, Term } from "./declarations.ts";
import type { TaskLowering } from "./kept-tasks.ts";
import { lowerPerform } from "./lower-action.ts";
import { lowerAllow, lowerJump, lowerRepeat, lowerStatement, lowerWhen } from "./lower-blocks.ts";
import { isHeadLine, isLostHeadLine, lowerHead } from "./lower-head.ts";
import { lowerCitation } from "./lower-properties.ts";
import { lowerStep } from "./lower-step.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { propertySpan } from "./names.ts";
import type { Allow, Condition, Item, Procedure, Statement, Task, Text } from "./procedure.ts";
import { spokenOf } from "./spoken-of.ts";

/** What a procedure has in reach. */
export interface InReach {
  /** Innermost first. */
  readonly declarations: readonly Declaration[];
  readonly terms: readonly Term[];
}

export function lowerProcedure(scope: Scope, node: ast.Procedure, inReach: InReach, tasks: TaskLowering): Procedure {
  const { path } = scope.parsed;
  // A header whose name could not be read leaves the tree without one.
  const name = (node.name as string | undefined) ?? "";
  const extent = spanOf(scope, node);
  const head = lowerHead(scope, node, inReach.declarations);
  const found = newFindings(extent);
  const flow = node.items.filter(
    (item) => !isHeadLine(item) && !isLostHeadLine(scope, item) && !ast.isDeclaration(item),
  ) as readonly ast.FlowItem[];
  const items = lowerItems({ scope, found, counter: { last: 0 }, prefix: "", tasks }, flow);
  return {
    id: name === "" ? `${path}#procedure@${extent.start}` : `${path}#${name}`,
    name,
    title: node.title ?? name,
    path,
    span: propertySpan(scope, node, "name"),
    extent,
    ...head.fields,
    declarations: inReach.declarations,
    terms: inReach.terms,
    cites: found.cites,
    statements: found.statements,
    notes: found.notes,
    allows: found.allows,
    // What an unreadable `finish with` mentions may be in any state at the end.
    items: [...items, ...head.atEnd],
    unknownAtStart: head.unknownAtStart,
  };
}

/** Lowers what stands in a procedure that lost its head, for its problems only. */
export function lowerHeadless(scope: Scope, node: ast.Damaged): void {
  lowerItems(
    { scope, found: newFindings(spanOf(scope, node)), counter: { last: 0 }, prefix: "", tasks: null },
    node.items,
  );
}

/* ---- tasks, steps and blocks ---- */

/** What a task or procedure says of itself. */
interface Findings {
  readonly cites: Citation[];
  readonly allows: Allow[];
  readonly statements: Statement[];
  readonly notes: Text[];
  /** What an `allow` holds for. */
  readonly extent: Span;
}

interface Level {
  readonly scope: Scope;
  readonly found: Findings;
  /** Tasks and steps of one level are counted together, also those in blocks. */
  readonly counter: { last: number };
  readonly prefix: string;
  /** Of a procedure's own tasks, which may be taken over; null further inside. */
  readonly tasks: TaskLowering | null;
}

function newFindings(extent: Span): Findings {
  return { cites: [], allows: [], statements: [], notes: [], extent };
}

function lowerItems(at: Level, nodes: readonly ast.FlowItem[]): readonly Item[] {
  return nodes.flatMap((node) => lowerItem(at, node));
}

function lowerItem(at: Level, node: ast.FlowItem): readonly Item[] {
  const { scope, found } = at;
  switch (node.$type) {
    case "Task":
      return [ownTask(at, node, nextNumber(at))];
    case "Step":
      return [lowerStep(scope, node, nextNumber(at))];
    case "Perform": {
      const number = nextNumber(at);
      return [{ kind: "perform", action: lowerPerform(scope, node), span: spanOf(scope, node), number }];
    }
    case "Repeat": {
      const items = node.items as readonly ast.FlowItem[];
      return [lowerRepeat(scope, node, (inside) => lowerItems({ ...inBlock(at, node), scope: inside }, items))];
    }
    case "When":
      return lowerWhen(scope, node, (items) => lowerItems(inBlock(at, node), items as readonly ast.FlowItem[]));
    case "AnyOrder":
      return [
        {
          kind: "any order",
          items: lowerItems(inBlock(at, node), node.items as readonly ast.FlowItem[]),
          span: spanOf(scope, node),
        },
      ];
    case "ReturnJump":
    case "GoJump":
    case "StopJump":
      return [lowerJump(scope, node)];
    case "Statement":
    case "Note": {
      const statement = lowerStatement(scope, node);
      if (statement.kind === "statement") found.statements.push(statement.statement);
      else found.notes.push(statement.note);
      return [statement];
    }
    case "Allow":
      found.allows.push(lowerAllow(scope, node, found.extent));
      return [];
    case "CitationLine": {
      const citation = lowerCitation(scope, node.citation);
      if (citation !== null) found.cites.push(citation);
      return [];
    }
    case "Damaged":
      return lowerDamagedItem(at, node);
  }
}

function nextNumber(at: Level): string {
  at.counter.last++;
  return `${at.prefix}${at.counter.last}`;
}

/** An `allow` in a block holds for the block; what it cites belongs to the task. */
function inBlock(at: Level, node: AstNode): Level {
  return { ...at, found: { ...at.found, extent: spanOf(at.scope, node) }, tasks: null };
}

function ownTask({ scope, tasks }: Level, node: ast.Task, number: string): Task {
  const lower = (inside: Scope): Task => lowerTask(inside, node, number);
  return tasks === null ? lower(scope) : tasks.lowered(scope, node, number, lower);
}

function lowerTask(scope: Scope, node: ast.Task, number: string): Task {
  const span = spanOf(scope, node);
  const found = newFindings(span);
  const items = lowerItems({ scope, found, counter: { last: 0 }, prefix: `${number}.`, tasks: null }, node.items);
  const head = node.name !== undefined ? "name" : node.title !== undefined ? "title" : null;
  const headSpan = head === null ? { ...span, end: span.start + "task".length } : propertySpan(scope, node, head);
  return {
    kind: "task",
    number,
    name: node.name ?? null,
    title: node.title ?? node.name ?? "",
    span,
    headSpan,
    cites: found.cites,
    allows: found.allows,
    items,
  };
}

/**
 * What could not be read. A task that lost its head is a task still; of any other block it is not known whether and how
 * often its steps are done: they are followed as if they might be, from any state, and all that they speak of is in doubt
 * afterwards.
 */
function lowerDamagedItem(at: Level, node: ast.Damaged): readonly Item[] {
  const { scope } = at;
  const damaged = lowerDamaged(scope, node);
  const damage = damageOf(scope.parsed.damage, node);
  if (!node.block) {
    if (isNumbered(damage)) nextNumber(at);
    return [damaged];
  }
  if (!isTaskHead(damage)) {
    const items = lowerItems({ ...at, tasks: null }, node.items);
    const anyState: Item = { ...damaged, mentions: allInReach(scope) };
    const condition: Condition = { form: "unknown", span: damaged.span };
    const block = {
      arms: [{ condition, items: [anyState, ...items] }],
      otherwise: null,
      span: damaged.span,
      otherwiseSpan: null,
    };
    return [damaged, { kind: "when", ...block }, { ...damaged, mentions: [...spokenOf(items)] }];
  }
  const number = nextNumber(at);
  const found = newFindings(spanOf(scope, node));
  const items = lowerItems({ scope, found, counter: { last: 0 }, prefix: `${number}.`, tasks: null }, node.items);
  const task: Task = {
    kind: "task",
    number,
    name: null,
    title: "",
    span: spanOf(scope, node),
    headSpan: damaged.span,
    cites: found.cites,
    allows: found.allows,
    items,
  };
  return [damaged, task];
}
