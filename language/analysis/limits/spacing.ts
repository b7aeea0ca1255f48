// Parts that are to sit equally far apart on a ring: each that goes in, beside those that are in. Knows positions only.
import { equallySpacedSets } from "#engineering/spacing.ts";
import type { Part } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import type { Run } from "../follow.ts";
import { placeOf } from "../state-values.ts";
import { instanceKey, instanceName, placeKey } from "../world.ts";
import type { At, Instance } from "./at-node.ts";
import type { LoadFact } from "./limit-fact.ts";

/** As many of the part are spaced as the procedure puts in. */
export function spacingFacts(at: At, line: ExpandedAction, own: Instance): void {
  const { part, index } = own;
  const { seats } = part;
  const seat = line.second;
  if (seats === null || seats.rule !== "equally spaced" || seats.places.kind !== "ring" || part.damaged) return;
  if (seat?.kind !== "place" || seat.position === null || seat.places !== seats.places || seats.places.damaged) return;
  const { position } = seat;
  const { count } = seats.places;
  const wanted = installedIn(at.run, part);
  if (count < 1 || wanted < 2) return;
  const sets = equallySpacedSets(count, wanted);
  const bad = sets.length === 0 ? { with: null, where: at.state.reach } : outOfStep(at, own, position, sets);
  if (bad === null) return;
  const fact: Omit<Extract<LoadFact, { kind: "spacing" }>, "options" | "pass" | "more"> = {
    kind: "spacing",
    part: instanceName(part, index),
    place: `${seats.places.name}[${position}]`,
    ring: seats.places.name,
    count,
    wanted,
    with: bad.with,
    could:
      bad.with === null
        ? []
        : (sets
            .find((set) => set.includes(positionIn(bad.with?.place ?? "")))
            ?.filter((one) => one !== positionIn(bad.with?.place ?? "")) ?? []),
    declaredAt: seats.span,
    span: line.action.place,
    instead: null,
  };
  at.collect({ fact, where: bad.where, pass: line.pass, subject: part.name, node: at.node.id });
}

function positionIn(place: string): number {
  return Number(/\[(\d+)\]$/.exec(place)?.[1] ?? 0);
}

/** The first that is in, and in no spaced set with this one. */
function outOfStep(
  { run, state }: At,
  { part, index }: Instance,
  position: number,
  sets: readonly (readonly number[])[],
): { readonly with: { readonly part: string; readonly place: string }; readonly where: Decision } | null {
  const places = part.seats?.places;
  if (places === undefined) return null;
  const own = instanceKey(part, index);
  const fitting = new Set(sets.filter((set) => set.includes(position)).flat());
  for (const other of partInstances(part)) {
    if (instanceKey(other.part, other.index) === own) continue;
    const cell = cellOf(run, state, run.world.part(other.part, other.index, "place"));
    for (let at = 1; at <= places.count; at++) {
      if (fitting.has(at)) continue;
      const where = run.decisions.and(
        state.reach,
        run.cells.where(cell, (value) => placeOf(value) === placeKey(places, at)),
      );
      if (where === NEVER) continue;
      return { with: { part: instanceName(other.part, other.index), place: `${places.name}[${at}]` }, where };
    }
  }
  return null;
}

const known = new WeakMap<Run, Map<Part, number>>();

/** How many different ones the procedure installs. */
function installedIn(run: Run, part: Part): number {
  const counts = known.get(run) ?? new Map<Part, number>();
  known.set(run, counts);
  const counted = counts.get(part);
  if (counted !== undefined) return counted;
  const put = new Set<string>();
  const add = (thing: Thing): void => {
    if (thing.kind === "part" && thing.part === part) put.add(instanceKey(thing.part, thing.index));
  };
  for (const { operation } of run.graph.nodes)
    if (operation.kind === "act" && operation.line.action.verb === "install") operation.line.objects.forEach(add);
  counts.set(part, put.size);
  return put.size;
}
