// What a procedure uses of each tool: the torques, readings, temperatures and loads it is named for, and where. What a crib is
// held against. Knows no crib.
import type { Adapter } from "#engineering/wrench.ts";
import type { Part, Tool, Value } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { TightenAction, ToolUse } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import { type Decision, NEVER } from "../decision.ts";
import { type Run, stateBefore } from "../follow.ts";
import { type At, partsOf, prevailingOf } from "../limits/at-node.ts";
import { hottestOf } from "../limits/heating.ts";
import { loadShown, loadsOf } from "../limits/lifts.ts";
import { legLoad } from "../limits/slings.ts";
import { adaptersOf, coldestOf, saysNothing } from "../limits/tools.ts";
import { finalOf } from "../limits/torques.ts";

export interface TorqueUse {
  readonly kind: "torque";
  readonly stages: readonly Value[];
  /** The last stage, where it has to be held. */
  readonly final: Value | null;
  readonly prevailing: { readonly value: Quantity } | null;
  readonly adapters: readonly Adapter[];
  readonly adapterTools: readonly Tool[];
  readonly fastener: Part;
}

/** One thing that is used of a tool. */
export type Use =
  | TorqueUse
  | { readonly kind: "reading"; readonly expect: Value }
  | { readonly kind: "heat" | "cool"; readonly temperature: Quantity }
  | { readonly kind: "load" | "leg load"; readonly mass: Quantity };

/** One place where a tool is named. */
export interface Naming {
  readonly span: Span;
  readonly where: Decision;
  readonly node: number;
  readonly uses: readonly Use[];
}

/** A tool with all places that name it, in their order. */
export interface Requirement {
  readonly tool: Tool;
  readonly namings: readonly Naming[];
}

/** The tools that a way through the procedure uses, in the order in which they are first named. Without those it performs. */
export function requirementsOf(run: Run): readonly Requirement[] {
  const known = new Map<Tool, Map<string, Naming>>();
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    const where = state === undefined ? NEVER : run.decisions.and(state.reach, run.given);
    if (state === undefined || where === NEVER) continue;
    const at: At = { run, node, state, collect: () => {}, leaveOut: () => {} };
    for (const { tools, span, usesOf } of namedAt(at)) {
      for (const tool of tools) {
        if (tool.damaged) continue;
        const byPlace = known.get(tool) ?? new Map<string, Naming>();
        known.set(tool, byPlace);
        const key = `${span.path} ${span.start}`;
        const before = byPlace.get(key);
        const uses = distinct([...(before?.uses ?? []), ...usesOf(tool)]);
        byPlace.set(key, { ...(before ?? { span, where, node: node.id }), uses });
      }
    }
  }
  return [...known].map(([tool, namings]) => ({ tool, namings: [...namings.values()] }));
}

interface NamedAt {
  readonly tools: readonly Tool[];
  readonly span: Span;
  readonly usesOf: (tool: Tool) => readonly Use[];
}

function namedAt(at: At): readonly NamedAt[] {
  const { operation } = at.node;
  if (operation.kind === "act") return actionAt(at, operation.line);
  if (operation.kind === "look") {
    const { tools, expect, place } = operation.check;
    return [{ tools: toolsOf(tools), span: place, usesOf: (tool) => readingUses(tool, expect) }];
  }
  if (operation.kind !== "leave") return [];
  return operation.step.step.records.map(({ tools, expect, span }) => ({
    tools,
    span,
    usesOf: (tool) => readingUses(tool, expect),
  }));
}

function actionAt(at: At, line: ExpandedAction): readonly NamedAt[] {
  const { action } = line;
  if (!("tools" in action) || action.tools.length === 0) return [];
  const tools = toolsOf(action.tools);
  const said = (usesOf: NamedAt["usesOf"]): readonly NamedAt[] => [{ tools, span: action.place, usesOf }];
  switch (action.verb) {
    case "tighten":
      return said((tool) => torqueUses(action, line, tool));
    case "measure":
      return said((tool) => readingUses(tool, action.expect));
    case "heat":
    case "cool": {
      const cooling = action.verb === "cool";
      const ends = cooling ? coldestOf(at, action) : partsOf(line).flatMap((heated) => hottestOf(at, action, heated));
      const uses = ends.map(({ shown }) => ({ kind: action.verb, temperature: shown }) as const);
      return said((tool) =>
        (cooling ? tool.capability.coolsTo : tool.capability.heatsTo) !== null || saysNothing(tool) ? uses : [],
      );
    }
    case "lift":
    case "support": {
      const loads = partsOf(line).flatMap((lifted) =>
        loadsOf(at, action, lifted).map(({ mass }) => loadShown(lifted.part, mass)),
      );
      const onLegs = loads.flatMap((load) => {
        const one = legLoad(action.legs, load);
        return one?.ok === true ? [{ kind: "leg load", mass: one.value } as const] : [];
      });
      const whole = loads.map((mass) => ({ kind: "load", mass }) as const);
      return said((tool) => {
        if (tool.capability.legLifts !== null) return onLegs;
        return tool.capability.lifts !== null || saysNothing(tool) ? whole : [];
      });
    }
    default:
      return said(() => []);
  }
}

function toolsOf(uses: readonly ToolUse[]): readonly Tool[] {
  return uses.map(({ tool }) => tool);
}

/** A wrench is used for the torque, an adapter for none. */
function torqueUses(action: TightenAction, line: ExpandedAction, tool: Tool): readonly Use[] {
  if (action.stages.length === 0 || (tool.capability.torque === null && !saysNothing(tool))) return [];
  const adapters = adaptersOf(action.tools);
  const adapterTools = toolsOf(action.tools).filter(({ capability }) => capability.offset !== null);
  const parts = new Set(partsOf(line).map(({ part }) => part));
  return [...parts]
    .filter((part) => !part.damaged)
    .map((part) => ({
      kind: "torque",
      stages: action.stages,
      final: finalOf(action),
      prevailing: prevailingOf(part),
      adapters,
      adapterTools,
      fastener: part,
    }));
}

function readingUses(tool: Tool, expect: Value | null): readonly Use[] {
  const { measures, resolution } = tool.capability;
  if (expect === null || (measures === null && resolution === null && !saysNothing(tool))) return [];
  return [{ kind: "reading", expect }];
}

/** A line says the same of each instance and in each pass. */
function distinct(uses: readonly Use[]): readonly Use[] {
  const keyOf = (use: Use): string => {
    switch (use.kind) {
      case "torque":
        return `torque ${use.fastener.id} ${use.final?.span.start} ${use.stages.length}`;
      case "reading":
        return `reading ${use.expect.span.path} ${use.expect.span.start}`;
      case "heat":
      case "cool":
        return `${use.kind} ${baseText(use.temperature)}`;
      case "load":
      case "leg load":
        return `${use.kind} ${baseText(use.mass)}`;
    }
  };
  return [...new Map(uses.map((use) => [keyOf(use), use])).values()];
}

function baseText({ nominal, low, high }: Quantity): string {
  const base = (nominal ?? high ?? low)?.base;
  return base === undefined ? "" : `${base.n}/${base.d}`;
}
