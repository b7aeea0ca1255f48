// Which instances or positions a target means in one pass: index arithmetic, wrap-round on rings, the order in which a
// set is worked through. Knows no actions.
import type { Declaration, Part, Places } from "./declarations.ts";
import type { Thing } from "./expanded.ts";
import { valueIn } from "./fill-words.ts";
import { hasInstance, partInstances } from "./instances.ts";
import { indexValue } from "./lower-target.ts";
import type { Pass } from "./problem.ts";
import type { IndexExpression, IndexItem, Target } from "./procedure.ts";

/** What a target comes to; `outside` is the first index that is not there. */
export interface Instances {
  readonly things: readonly Thing[];
  readonly outside: string | null;
}

/**
 * Works a target out for one pass, in the order in which its instances are worked through. Where a line of what counts
 * them could not be read, nothing is said to be outside.
 */
export function instancesOf(target: Target, pass: Pass): Instances {
  const found = foundIn(target, pass);
  return found.outside !== null && isUncertain(target.thing) ? NONE : found;
}

function foundIn(target: Target, pass: Pass): Instances {
  const { thing } = target;
  if (thing === null) return NONE;
  if (thing.kind !== "part" && thing.kind !== "ring" && thing.kind !== "holes") {
    return { things: [{ kind: "other", thing, span: target.span }], outside: null };
  }
  if (target.index === null) return { things: wholeOf(thing, target), outside: null };
  const found: (number | string)[] = [];
  for (const item of target.index) {
    const some = indicesOf(thing, item, pass);
    if (typeof some === "string") return { things: [], outside: some };
    found.push(...some);
  }
  const order = fillOrder(thing, found[0]) ?? indexOrder(thing);
  const things = [...new Set(found)].sort((a, b) => order(a) - order(b)).map((index) => thingAt(thing, index, target));
  return { things, outside: null };
}

/** Whether the target's instances are the same in every pass. */
export function isConstantTarget(target: Target): boolean {
  return (target.index ?? []).every((item) => {
    if (item.form === "all" || item.form === "same") return true;
    return item.form === "one" ? isConstant(item.value) : isConstant(item.first) && isConstant(item.last);
  });
}

function isUncertain(thing: Declaration | null): boolean {
  if (thing === null || thing.damaged) return true;
  const places = thing.kind === "part" ? (thing.seats?.places ?? null) : thing;
  return (
    places !== null && (places.damaged || ((places.kind === "ring" || places.kind === "holes") && places.count === 0))
  );
}

const NONE: Instances = { things: [], outside: null };

function isConstant(expression: IndexExpression): boolean {
  let at = expression;
  while (at.form === "sum") {
    if (!isConstant(at.right)) return false;
    at = at.left;
  }
  return at.form === "number";
}

function wholeOf(thing: Part | Places, target: Target): readonly Thing[] {
  if (thing.kind !== "part") return [{ kind: "place", places: thing, position: null, span: target.span }];
  return partInstances(thing).map(({ index }) => ({ kind: "part", part: thing, index, span: target.span }));
}

function thingAt(thing: Part | Places, index: number | string, target: Target): Thing {
  if (thing.kind === "part") return { kind: "part", part: thing, index, span: target.span };
  return { kind: "place", places: thing, position: Number(index), span: target.span };
}

/* ---- the indices of one item ---- */

/** The indices, or the one as text that is not there. */
function indicesOf(thing: Part | Places, item: IndexItem, pass: Pass): readonly (number | string)[] | string {
  // `same` has a meaning only between parts.
  if (item.form === "same") return [];
  if (item.form === "all") return allOf(thing);
  const first = item.form === "one" ? item.value : item.first;
  const last = item.form === "one" ? item.value : item.last;
  const name = item.form === "one" ? instanceName(thing, first, pass) : null;
  if (name !== null) return [name];
  const [low, high] = [numberIn(first, pass), numberIn(last, pass)];
  if (low === null || high === null || Number.isNaN(low) || Number.isNaN(high)) return [];
  return numbersBetween(thing, low, high, dependsOnPass(first, pass) || dependsOnPass(last, pass));
}

function allOf(thing: Part | Places): readonly (number | string)[] {
  if (thing.kind !== "part") return Array.from({ length: thing.count }, (_, at) => at + 1);
  return partInstances(thing).flatMap(({ index }) => (index === null ? [] : [index]));
}

function countOf(thing: Part | Places): number {
  return thing.kind === "part" ? partInstances(thing).length : thing.count;
}

/** A name in brackets that is no loop variable. */
function instanceName(thing: Part | Places, expression: IndexExpression, pass: Pass): string | null {
  if (expression.form !== "name" || valueIn(pass, expression.name) !== null) return null;
  return thing.kind === "part" && hasInstance(thing, expression.name) ? expression.name : null;
}

function numberIn(expression: IndexExpression, pass: Pass): number | null {
  return indexValue(expression, (name) => valueIn(pass, name));
}

function dependsOnPass(expression: IndexExpression, pass: Pass): boolean {
  return pass.length > 0 && !isConstant(expression);
}

function numbersBetween(thing: Part | Places, low: number, high: number, wraps: boolean): readonly number[] | string {
  const round = wraps ? roundOf(thing) : null;
  const isAllowed = (index: number): boolean =>
    thing.kind === "part" ? hasInstance(thing, index) : isPosition(thing, index);
  // More than one round would name a position twice.
  const width = high - low + 1;
  if (width < 1 || width > (round ?? countOf(thing))) return low === high ? String(low) : `${low}..${high}`;
  const indices: number[] = [];
  for (let index = low; index <= high; index++) {
    const at = round === null ? index : ((((index - 1) % round) + round) % round) + 1;
    if (!isAllowed(at)) return String(index);
    indices.push(at);
  }
  return indices;
}

function isPosition(places: Places, index: number): boolean {
  return places.count === 0 || (index >= 1 && index <= places.count);
}

/** How many positions there are before the numbers begin again: on a ring, and for a part by number in one. */
function roundOf(thing: Part | Places): number | null {
  const ring = thing.kind === "part" ? ringByNumber(thing) : thing;
  return ring?.kind === "ring" && ring.count > 0 ? ring.count : null;
}

function ringByNumber(part: Part): Declaration | null {
  return part.seats?.rule === "by number" ? part.seats.places : null;
}

/* ---- the order of a set ---- */

type Order = (index: number | string) => number;

function indexOrder(thing: Part | Places): Order {
  if (thing.kind !== "part" || thing.instances.form !== "named") return Number;
  const { names } = thing.instances;
  return (index) => names.indexOf(String(index));
}

/** From the first index onwards in the direction in which the ring is filled; null on a ring that says none. */
function fillOrder(thing: Part | Places, first: number | string | undefined): Order | null {
  const ring = thing.kind === "part" ? ringByNumber(thing) : thing;
  if (ring?.kind !== "ring" || ring.fill === null || ring.numbered === null || typeof first !== "number") return null;
  const { count } = ring;
  const way = ring.fill === ring.numbered ? 1 : -1;
  return (index) => (((way * (Number(index) - first)) % count) + count) % count;
}
