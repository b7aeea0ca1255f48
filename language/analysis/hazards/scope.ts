// Which safety statements hold where: a statement holds for what follows in its block, as written, not as it happens. Knows
// no hazard and no state.
import type { Item, Line, Procedure, Statement, Step } from "#model/procedure.ts";
import { blocksOf } from "#model/written-steps.ts";
import type { Span } from "#syntax/span.ts";
import type { Site } from "./raise.ts";

/** A block with its statements, each at its place among the block's items. */
export interface Block {
  /** `inner`: a repeat, work in any order, the failing path of a check: no place for a statement of its own. */
  readonly kind: "procedure" | "task" | "step" | "branch" | "inner";
  readonly statements: readonly Placed[];
  /** Where a line that could not be read may have been a statement. */
  readonly doubts: readonly number[];
  /** The first item that is no statement and no note. */
  readonly first: Span | null;
}

export interface Placed {
  readonly at: number;
  readonly statement: Statement;
}

/** Where something stands: in a block at a place, and so on outwards. */
export interface Standing {
  readonly block: Block;
  readonly at: number;
  readonly outer: Standing | null;
}

export interface Scopes {
  readonly of: (site: Site) => Standing | undefined;
  readonly statements: readonly Placed[];
  /** Something in their scope is said in own words, or could not be read: who knows what that raises. */
  readonly open: ReadonlySet<Placed>;
}

/** Of a procedure as written; worked out once. */
export function scopesOf(procedure: Procedure): Scopes {
  const known = scopes.get(procedure) ?? walked(procedure);
  scopes.set(procedure, known);
  return known;
}

const scopes = new WeakMap<Procedure, Scopes>();

/** The statements in force, innermost first and the nearest first. */
export function* inForce(standing: Standing | null | undefined): Generator<Placed> {
  for (let here = standing; here != null; here = here.outer)
    for (let n = here.block.statements.length - 1; n >= 0; n--) {
      const placed = here.block.statements[n];
      if (placed !== undefined && placed.at < here.at) yield placed;
    }
}

/** The statements that stand too late for what stands here: after it, in a block that it is in. */
export function* tooLate(standing: Standing | undefined): Generator<Placed> {
  for (let here: Standing | null | undefined = standing; here != null; here = here.outer)
    for (const placed of here.block.statements) if (placed.at > here.at) yield placed;
}

/** Whether a line that could not be read may be a statement in force. */
export function isDoubtful(standing: Standing | undefined): boolean {
  for (let here: Standing | null | undefined = standing; here != null; here = here.outer)
    if (here.block.doubts.some((at) => at < (here?.at ?? 0))) return true;
  return false;
}

/** A block while it is walked through. */
interface Growing extends Block {
  readonly statements: Placed[];
  readonly doubts: number[];
  first: Span | null;
}

interface Walk {
  readonly sites: Map<Site, Standing>;
  readonly statements: Placed[];
  readonly open: Set<Placed>;
}

function walked(procedure: Procedure): Scopes {
  const walk: Walk = { sites: new Map(), statements: [], open: new Set() };
  walkBlock(walk, procedure.items, "procedure", null);
  return { of: (site) => walk.sites.get(site), statements: walk.statements, open: walk.open };
}

function walkBlock(walk: Walk, items: readonly (Item | Line)[], kind: Block["kind"], outer: Standing | null): Block {
  const block: Growing = { kind, statements: [], doubts: [], first: null };
  items.forEach((item, at) => {
    const here: Standing = { block, at, outer };
    if (item.kind === "statement") {
      const placed = { at, statement: item.statement };
      block.statements.push(placed);
      walk.statements.push(placed);
      return;
    }
    if (item.kind === "note") return;
    block.first ??= item.span;
    if (item.kind === "damaged") {
      markOpen(walk, here);
      if (item.noWork === true || (item.verb === undefined && item.mentions.length === 0)) block.doubts.push(at);
    } else walkItem(walk, item, here);
  });
  // That a block is empty is told as that.
  if (block.first === null) for (const placed of block.statements) walk.open.add(placed);
  return block;
}

function walkItem(
  walk: Walk,
  item: Exclude<Item | Line, { kind: "statement" | "note" | "damaged" }>,
  here: Standing,
): void {
  switch (item.kind) {
    case "task":
      walkBlock(walk, item.items, "task", here);
      return;
    case "step":
      walkStep(walk, item, here);
      return;
    case "when":
      for (const arm of blocksOf(item)) walkBlock(walk, arm, "branch", here);
      return;
    case "check":
      walk.sites.set(item, here);
      for (const failing of blocksOf(item)) walkBlock(walk, failing, "inner", here);
      return;
    case "repeat":
    case "any order":
      walkBlock(walk, item.items, "inner", here);
      return;
    case "perform":
      walk.sites.set(item.action, here);
      return;
    case "action":
      walk.sites.set(item, here);
      if (item.verb === "do") markOpen(walk, here);
      return;
    default:
  }
}

/** What a step says of itself as a whole holds from its first line that is no statement. */
function walkStep(walk: Walk, step: Step, outer: Standing): void {
  if (step.lines.length === 0 && step.words !== null) markOpen(walk, outer);
  const block = walkBlock(walk, step.lines, "step", outer);
  const first = step.lines.findIndex(({ kind }) => kind !== "statement" && kind !== "note");
  walk.sites.set(step, { block, at: first < 0 ? step.lines.length : first, outer });
}

function markOpen({ open }: Walk, here: Standing): void {
  for (const placed of inForce(here)) open.add(placed);
}
