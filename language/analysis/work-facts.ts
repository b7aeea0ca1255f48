// Needs of actions that are not met, beside those of places: fasteners, locks, loads, films, heat, energies. Each as a bare
// fact with where the state came from.

import type { Energy } from "#model/declarations.ts";
import type { Action } from "#model/procedure.ts";
import { show } from "#quantity/display.ts";
import type { Span } from "#syntax/span.ts";
import type { Need, Trouble } from "./action.ts";
import { curingOf } from "./actions/curing.ts";
import { subjectOf } from "./describe.ts";
import type { BareFact, Origin } from "./fact.ts";
import type { Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import { base } from "./raw-fact.ts";
import { placeAt } from "./turning.ts";
import { instanceName } from "./world.ts";

export type WorkTrouble = Extract<
  Trouble,
  {
    kind:
      | "locked"
      | "not tightened"
      | "reused"
      | "unsupported"
      | "uncured"
      | "direction"
      | "position"
      | "cold fit"
      | "energised"
      | "not proved"
      | "restored open"
      | "wasted";
  }
>;

/** Where and how a need was found not to be met. */
export interface Unmet {
  readonly node: Node;
  readonly action: Action;
  readonly need: Need;
  /** The value that fails it, and where that came from. */
  readonly value: string;
  readonly since: Origin;
}

export function workFact(run: Run, { node, action, value, since }: Unmet, trouble: WorkTrouble): BareFact {
  const span = action.place;
  const stepSpan = stepSpanOf(node, action);
  switch (trouble.kind) {
    case "locked":
      return { ...trouble, span, since, atEnd: false, mendAt: null };
    case "not tightened":
      return { ...trouble, span, since };
    case "reused": {
      const how = value === "loosened" ? "loosened" : "removed";
      return { ...trouble, span, since, how, verbSpan: verbOf(action) };
    }
    case "unsupported": {
      const { part, index, fastener, verb, kind } = trouble;
      const mass = part.mass === null ? "" : show(part.mass.quantity);
      return { kind, part: instanceName(part, index), fastener, verb, mass, span, stepSpan };
    }
    case "uncured": {
      const { left, id } = curingOf(value);
      return { ...trouble, span, since, left, consumable: subjectOf(id), stepSpan };
    }
    case "direction":
      return { ...trouble, span, skipped: null };
    case "position": {
      const { kind, part, ring, position, wanted } = trouble;
      const now = placeAt(ring, position, value);
      return { kind, part, ring: ring.name, place: `${ring.name}[${position}]`, wanted, now, span, since, stepSpan };
    }
    case "cold fit":
      return { ...trouble, span };
    case "energised":
      return energised(trouble, { span, since, stepSpan });
    case "not proved":
      return notProved(run, trouble, { span, since, stepSpan });
    case "restored open":
      return { ...trouble, span, since };
    case "wasted":
      return { ...trouble, span, since, first: firstOf(value) };
  }
}

interface Placed {
  readonly span: Span;
  readonly since: Origin;
  readonly stepSpan: Span | null;
}

/** The step before which a missing line could be put in; null where it would be a child of its own of a block in any order. */
export function stepSpanOf(node: Node, action: Action): Span | null {
  return node.anyOrder ? null : (node.step?.step.span ?? action.span);
}

function energised({ part, index, energy, verb }: OnEnergy, placed: Placed): BareFact {
  const name = instanceName(part, index);
  return { kind: "energised", part: name, verb, energy: energy.name, declaredAt: part.span, ...placed };
}

function notProved(run: Run, { part, index, energy, verb }: OnEnergy, placed: Placed): BareFact {
  const name = instanceName(part, index);
  const provesOthers = provesAnother(run, energy);
  return { kind: "not proved", part: name, verb, energy: energy.name, provesOthers, ...placed };
}

type OnEnergy = Extract<WorkTrouble, { kind: "energised" | "not proved" }>;

/** What tells it from another at the same place. */
export function workSubject(trouble: WorkTrouble): string {
  switch (trouble.kind) {
    case "locked":
      return `${base(trouble.part)} ${base(trouble.by)}`;
    case "unsupported":
      return trouble.part.name;
    case "energised":
    case "not proved":
      return trouble.energy.id;
    case "restored open":
      return `${base(trouble.what)} ${trouble.how} ${trouble.energy}`;
    case "wasted":
      return base(trouble.what);
    default:
      return base(trouble.part);
  }
}

/** The verb as written: an action begins with it. */
function verbOf({ place, verb }: Action): Span {
  return { ...place, end: place.start + verb.length };
}

/** Another energy is shown to be dead somewhere: then this one was forgotten. */
function provesAnother(run: Run, energy: Energy): boolean {
  return run.graph.nodes.some(
    ({ operation }) =>
      operation.kind === "act" &&
      operation.line.action.verb === "prove" &&
      operation.line.objects.some((thing) => thing.kind === "other" && thing.thing !== energy),
  );
}

function firstOf(value: string): "lubricated" | "coated" | "heated" | "turned" {
  return value === "lubricated" || value === "coated" || value === "heated" ? value : "turned";
}
