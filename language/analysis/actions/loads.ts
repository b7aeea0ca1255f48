// Heavy parts and what holds them: the hoist, supports, their fasteners. Knows the verbs lift, support and set down.
import type { Part, PartInstance } from "#model/declarations.ts";
import type { ToolUse } from "#model/procedure.ts";
import { magnitudeNumber } from "../readings.ts";
import { isAttached, isInstalled, mayBeTight } from "../state-values.ts";
import type { Test, Update } from "../update.ts";
import { type Index, instanceKey, instanceName, type World } from "../world.ts";
import { both, type Move, NOTHING } from "./move.ts";

/** What one person may lift, in kg (NIOSH 94-110, ISO 11228-1: see the design's table of lifting limits). */
const ONE_PERSON_LIMIT = 23;

/** A part that nobody holds by hand, and that hangs by its fasteners; the shop may have set a limit of its own. */
function isHeavy(world: World, { mass }: Part): boolean {
  const kilograms = magnitudeNumber(mass?.quantity.high ?? mass?.quantity.nominal ?? mass?.quantity.low ?? null);
  return kilograms !== null && kilograms > (world.liftingLimit ?? ONE_PERSON_LIMIT);
}

/** The part hangs on a tool, or stands on supports; what hung on that tool before is given up. */
export function takeUp(world: World, part: Part, index: Index, tools: readonly ToolUse[]): Move {
  const [tool] = tools;
  const own = instanceKey(part, index);
  const others =
    tool === undefined ? [] : world.hanging().filter((other) => instanceKey(other.part, other.index) !== own);
  const value = tool === undefined ? "yes" : `yes ${tool.tool.id}`;
  const hangs: Move = isHung(world, { part, index })
    ? { needs: [], updates: [{ variable: world.part(part, index, "hung"), change: () => value }] }
    : NOTHING;
  return both(...others.map((other) => giveUp(world, other, "lift", ` ${tool?.tool.id}`)), hangs);
}

export function setDown(world: World, part: Part, index: Index): Move {
  return isHung(world, { part, index }) ? giveUp(world, { part, index }, "set down", "") : NOTHING;
}

/** Only of a heavy part that fasteners hold it matters what else holds it. */
export function isHung(world: World, held: PartInstance): boolean {
  return isHeavy(world, held.part) && fastenersOf(world, held).length > 0;
}

/**
 * A load is given up; where too little else holds it, that is told, and it is taken as held. What stands by itself needs nothing
 * else. `by`: only what hung so.
 */
function giveUp(world: World, held: PartInstance, verb: string, by: string): Move {
  const fasteners = fastenersOf(world, held);
  const hung = world.part(held.part, held.index, "hung");
  const place = world.part(held.part, held.index, "place");
  const isMeant = (value: string): boolean => value.startsWith("yes") && value.endsWith(by);
  const letGo: Update = { variable: hung, change: (value) => (isMeant(value) ? "no" : value) };
  if (held.part.stands) return { needs: [], updates: [letGo] };
  const isOut: Test = { variable: place, test: (value) => !isInstalled(value) };
  return {
    needs: atMostOneIn(world, fasteners).map((out) => ({
      bad: [{ variable: place, test: isInstalled }, { variable: hung, test: isMeant }, ...out],
      trouble: { kind: "unsupported", part: held.part, index: held.index, fastener: null, verb },
    })),
    updates: [
      { ...letGo, when: [[isOut], ...twoIn(world, fasteners)] },
      { variable: hung, change: (value) => (isMeant(value) ? "yes" : value) },
    ],
  };
}

/** A part hangs no more once it is in and two of its fasteners are, or all where it has fewer. */
export function hangingNoMore(world: World, part: Part, index: Index): readonly Update[] {
  const own = { part, index };
  const held = world.targets("secures", part, index).filter((one) => isHung(world, one));
  if (held.length === 0 && !isHung(world, own)) return [];
  return [
    ...(isHung(world, own) ? letGo(world, own, twoIn(world, fastenersOf(world, own))) : []),
    ...held.flatMap((one) => letGo(world, one, withAnother(world, one, instanceKey(part, index)))),
  ];
}

function letGo(world: World, held: PartInstance, enough: readonly (readonly Test[])[]): readonly Update[] {
  const isIn: Test = { variable: world.part(held.part, held.index, "place"), test: isInstalled };
  return [
    {
      variable: world.part(held.part, held.index, "hung"),
      when: enough.map((tests) => [isIn, ...tests]),
      change: () => "no",
    },
  ];
}

/** The last fastener that was tight is loosened. */
export function lastFastenerLoose(world: World, part: Part, index: Index): Move {
  return lastHold(world, part, index, "loosen", (fastener, others) => [lastTight(world, fastener, others)]);
}

/** The last fastener that was in, or the last that was tight, is taken out. */
export function lastFastenerOut(world: World, part: Part, index: Index, verb: string): Move {
  return lastHold(world, part, index, verb, (fastener, others) => [
    lastTight(world, fastener, others),
    [isIn(world, fastener), ...others.map((other) => isNotIn(world, other))],
  ]);
}

function lastHold(
  world: World,
  part: Part,
  index: Index,
  verb: string,
  lostBy: (fastener: PartInstance, others: readonly PartInstance[]) => readonly (readonly Test[])[],
): Move {
  const secured = world.targets("secures", part, index);
  if (secured.length === 0) return NOTHING;
  const moves = secured
    .filter(({ part: held }) => isHeavy(world, held) && !held.stands)
    .map((held): Move => {
      const key = instanceKey(part, index);
      const others = fastenersOf(world, held).filter((other) => instanceKey(other.part, other.index) !== key);
      const hung = world.part(held.part, held.index, "hung");
      const ways = lostBy({ part, index }, others).map((tests) => [
        { variable: world.part(held.part, held.index, "place"), test: isInstalled },
        { variable: hung, test: (value: string) => value === "no" },
        ...tests,
      ]);
      return {
        needs: ways.map((bad) => ({
          bad,
          trouble: {
            kind: "unsupported",
            part: held.part,
            index: held.index,
            fastener: instanceName(part, index),
            verb,
          },
        })),
        // Told once, it is taken as held.
        updates: [{ variable: hung, when: ways, change: () => "yes" }],
      };
    });
  return { needs: moves.flatMap((move) => move.needs), updates: moves.flatMap((move) => move.updates) };
}

function lastTight(world: World, fastener: PartInstance, others: readonly PartInstance[]): readonly Test[] {
  const grip = (of: PartInstance, test: Test["test"]): Test => ({
    variable: world.part(of.part, of.index, "grip"),
    test,
  });
  return [
    isIn(world, fastener),
    grip(fastener, mayBeTight),
    ...others.map((other) => grip(other, (value) => !mayBeTight(value))),
  ];
}

function fastenersOf(world: World, held: PartInstance): readonly PartInstance[] {
  return world.related("secures", held.part, held.index);
}

function isIn(world: World, { part, index }: PartInstance): Test {
  return { variable: world.part(part, index, "place"), test: isAttached };
}

function isNotIn(world: World, { part, index }: PartInstance): Test {
  return { variable: world.part(part, index, "place"), test: (value) => !isAttached(value) };
}

/** Each pair that may be in; of one fastener, that one. */
function twoIn(world: World, fasteners: readonly PartInstance[]): readonly (readonly Test[])[] {
  const [only, ...more] = fasteners;
  if (only === undefined) return [];
  if (more.length === 0) return [[isIn(world, only)]];
  return fasteners.flatMap((one, at) => fasteners.slice(at + 1).map((other) => [isIn(world, one), isIn(world, other)]));
}

/** With the one that has just gone in, each of the others; where there is no other, that one is enough. */
function withAnother(world: World, held: PartInstance, key: string): readonly (readonly Test[])[] {
  const others = fastenersOf(world, held).filter((other) => instanceKey(other.part, other.index) !== key);
  return others.length === 0 ? [[]] : others.map((other) => [isIn(world, other)]);
}

/** Each way in which fewer are in than hold it. */
function atMostOneIn(world: World, fasteners: readonly PartInstance[]): readonly (readonly Test[])[] {
  if (fasteners.length === 1) return [fasteners.map((one) => isNotIn(world, one))];
  return fasteners.map((kept) => fasteners.filter((one) => one !== kept).map((one) => isNotIn(world, one)));
}
