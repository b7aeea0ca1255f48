// What each action needs and does, as data over state variables. The only place that knows the meaning of a verb; later
// rules add needs and effects here and nowhere else. Knows no paths, no severities, no wording.
import type { Energy, Part, Places } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import { UNKNOWN } from "./cell.ts";
import type { Update } from "./formula.ts";
import { magnitudeNumber } from "./readings.ts";
import { carry, release, vacate } from "./standing.ts";
import {
  boundsOf,
  holders,
  IN,
  inPlace,
  isAttached,
  isInstalled,
  isLoose,
  isTight,
  OUT,
  onPart,
  temperature,
  withHolder,
} from "./state-values.ts";
import { clockTurns, orientationVariable, turnedTo } from "./turning.ts";
import { type Index, instanceKey, instanceName, ownPosition, placeKey, type World } from "./world.ts";

/** A need that is not met where every one of `bad` can be so at once. No `bad`: it is never met. */
export interface Need {
  readonly bad: readonly { readonly variable: number; readonly test: (value: string) => boolean }[];
  readonly trouble: Trouble;
}

/** What is wrong when a need is not met; places of its own are those of declarations. */
export type Trouble =
  | { readonly kind: "not installed"; readonly part: string; readonly verb: string }
  | { readonly kind: "already installed"; readonly part: string }
  | {
      readonly kind: "occupied";
      readonly part: string;
      readonly place: string;
      readonly holder: number;
      readonly key: string;
    }
  | {
      readonly kind: "wrong place";
      readonly part: string;
      readonly place: string;
      readonly own: string;
      readonly seats: Span;
    }
  | {
      readonly kind: "missing support";
      readonly part: string;
      readonly needs: string;
      readonly declaredAt: Span;
      readonly variable: number;
    }
  | {
      readonly kind: "enclosed";
      readonly part: string;
      readonly by: string;
      readonly verb: string;
      readonly declaredAt: Span;
    }
  | {
      readonly kind: "retained";
      readonly part: string;
      readonly by: string;
      readonly how: "retains" | "tightened" | "loose";
      readonly declaredAt: Span;
    }
  /** Found at the place that put it in; `closedBy` closes over it here. */
  | { readonly kind: "closed over"; readonly what: string; readonly closedBy: string };

/** One instance at a time: first what is needed, then what changes. */
export interface Move {
  readonly needs: readonly Need[];
  readonly updates: readonly Update[];
}

export function movesOf(world: World, line: ExpandedAction, ambientLow: number): readonly Move[] {
  const { action } = line;
  const parts = line.objects.filter((thing) => thing.kind === "part");
  switch (action.verb) {
    case "install":
    case "press":
      return parts.map((thing) => install(world, thing.part, thing.index, line.second, action.verb));
    case "remove":
    case "discard":
      return parts.map((thing) => remove(world, thing.part, thing.index, action.verb));
    case "tighten":
      return parts.map((thing) => {
        const loose = action.byHand && action.stages.length === 0;
        const grip = loose ? "loose" : action.toSeat ? "seated" : "tight";
        return tighten(world, thing.part, thing.index, grip);
      });
    case "loosen":
      return parts.map((thing) => loosen(world, thing.part, thing.index, action.back === null ? "loose" : "set"));
    case "heat":
    case "cool":
      return parts.map((thing) => ({
        needs: reach(world, thing.part, thing.index, action.verb),
        updates: [
          warm(
            world,
            thing.part,
            thing.index,
            action.to?.quantity ?? null,
            action.by?.quantity ?? null,
            action.verb === "cool",
          ),
        ],
      }));
    case "wait":
      return action.until === null ? [{ needs: [], updates: coolDown(world, ambientLow) }] : [];
    case "clean":
      return parts.map((thing) => surface(world, thing.part, thing.index, action.verb, () => "clean"));
    case "lubricate":
      return parts.map((thing) =>
        surface(world, thing.part, thing.index, action.verb, () => `lubricated ${action.with?.id ?? ""}`),
      );
    case "apply":
    case "drain":
    case "fill":
    case "bleed":
    case "inspect":
      return parts.map((thing) => ({ needs: reach(world, thing.part, thing.index, action.verb), updates: [] }));
    case "turn":
      return turn(world, line);
    case "align":
      return [...parts, ...(line.second?.kind === "part" ? [line.second] : [])].map((thing) => ({
        needs: reach(world, thing.part, thing.index, action.verb),
        updates: [{ variable: world.part(thing.part, thing.index, "aligned"), change: () => "yes" }],
      }));
    case "isolate":
    case "restore":
      return energies(line.objects).map((energy) => ({
        needs: [],
        updates: [{ variable: world.energy(energy), change: () => (action.verb === "isolate" ? "isolated" : "live") }],
      }));
    default:
      return [];
  }
}

function energies(things: readonly Thing[]): readonly Energy[] {
  return things.flatMap((thing) => (thing.kind === "other" && thing.thing.kind === "energy" ? [thing.thing] : []));
}

/* ---- putting in and taking out ---- */

function install(world: World, part: Part, index: Index, second: Thing | null, verb: string): Move {
  const name = instanceName(part, index);
  const key = instanceKey(part, index);
  const place = world.part(part, index, "place");
  const seat = seatOf(part, index, second);
  const carrier = second?.kind === "part" ? second : null;
  const needs: Need[] = [
    { bad: [{ variable: place, test: isAttached }], trouble: { kind: "already installed", part: name } },
  ];
  needs.push(...enclosers(world, part, index, verb, []));
  for (const support of world.targets("needs", part, index)) {
    if (carrier !== null && carrier.part === support.part && carrier.index === support.index) continue;
    const variable = world.part(support.part, support.index, "place");
    needs.push({
      bad: [{ variable, test: (value) => value !== UNKNOWN && !isInstalled(value) }],
      trouble: {
        kind: "missing support",
        part: name,
        needs: instanceName(support.part, support.index),
        declaredAt: support.relation.span,
        variable,
      },
    });
  }
  // What was in elsewhere is not there any more.
  const updates: Update[] = [
    ...vacate(world, part, index, seat === null ? null : placeKey(seat.places, seat.position)),
  ];
  if (seat !== null) {
    const holder = world.holder(seat.places, seat.position);
    const wrong = wrongPlace(part, index, seat);
    const placeName = `${seat.places.name}[${seat.position}]`;
    if (wrong !== null)
      needs.push({ bad: [], trouble: { kind: "wrong place", part: name, place: placeName, ...wrong } });
    needs.push({
      bad: [
        {
          variable: holder,
          test: (value) => holders(value).some((other) => other !== key && !stacked(world, part, other)),
        },
      ],
      trouble: { kind: "occupied", part: name, place: placeName, holder, key },
    });
    world.maySit(part, index, seat.places, seat.position);
    updates.push({ variable: holder, change: (value) => withHolder(value, key) });
    updates.push({ variable: place, change: () => inPlace(placeKey(seat.places, seat.position)) });
  } else if (carrier !== null) {
    const carrierKey = instanceKey(carrier.part, carrier.index);
    world.mayRide(carrierKey, part, index);
    updates.push({
      variable: place,
      by: world.part(carrier.part, carrier.index, "place"),
      change: (_, under) => (under === UNKNOWN ? UNKNOWN : onPart(carrierKey, isInstalled(under))),
    });
  } else updates.push({ variable: place, change: () => IN });
  if (part.fastener) updates.push({ variable: world.part(part, index, "grip"), change: () => "loose" });
  updates.push(...carry(world, part, index));
  needs.push(...closedOver(world, part, index));
  return { needs, updates };
}

/** The numbered place that the part goes to: the one written, else its own. */
function seatOf(part: Part, index: Index, second: Thing | null): { places: Places; position: number } | null {
  if (second === null) return ownPosition(part, index);
  if (second.kind !== "place") return null;
  if (second.position !== null) return { places: second.places, position: second.position };
  const own = ownPosition(part, index);
  return own?.places === second.places ? own : null;
}

function wrongPlace(
  part: Part,
  index: Index,
  at: { places: Places; position: number },
): { own: string; seats: Span } | null {
  const { seats } = part;
  if (seats === null) return null;
  if (seats.places !== at.places) return { own: seats.places.name, seats: seats.span };
  if (seats.rule === "by number")
    return index === at.position ? null : { own: `${seats.places.name}[${index}]`, seats: seats.span };
  if (seats.rule === "any" || seats.rule === "equally spaced" || seats.rule.includes(at.position)) return null;
  return { own: `${seats.places.name}[${seats.rule.join(", ")}]`, seats: seats.span };
}

function stacked(world: World, part: Part, otherKey: string): boolean {
  const other = world.partOf(otherKey);
  return other !== undefined && other.part !== part && world.stack(part, other.part);
}

/** A part that closes over temporary parts that are still in. */
function closedOver(world: World, part: Part, index: Index): readonly Need[] {
  return world
    .targets("encloses", part, index)
    .filter((inside) => inside.part.temporary)
    .map((inside) => {
      const variable = world.part(inside.part, inside.index, "place");
      return {
        bad: [{ variable, test: isAttached }],
        trouble: {
          kind: "closed over",
          what: instanceName(inside.part, inside.index),
          closedBy: instanceName(part, index),
        },
      };
    });
}

function remove(world: World, part: Part, index: Index, verb: string): Move {
  const name = instanceName(part, index);
  const place = world.part(part, index, "place");
  const needs: Need[] = [notInstalled(part, index, place, verb), ...reach(world, part, index, verb)];
  for (const { part: by, index: at, relation } of world.related("retains", part, index)) {
    needs.push({
      bad: [{ variable: world.part(by, at, "place"), test: isInstalled }],
      trouble: { kind: "retained", part: name, by: instanceName(by, at), how: "retains", declaredAt: relation.span },
    });
  }
  for (const { part: by, index: at, relation } of world.related("secures", part, index)) {
    const inPlaceAt = { variable: world.part(by, at, "place"), test: isAttached };
    const grip = world.part(by, at, "grip");
    for (const [how, test] of [
      ["tightened", isTight],
      ["loose", isLoose],
    ] as const) {
      needs.push({
        bad: [{ variable: grip, test }, inPlaceAt],
        trouble: { kind: "retained", part: name, by: instanceName(by, at), how, declaredAt: relation.span },
      });
    }
  }
  const updates = [
    ...vacate(world, part, index),
    { variable: place, change: () => OUT },
    ...release(world, part, index),
    ...carry(world, part, index),
  ];
  return { needs, updates };
}

function notInstalled(part: Part, index: Index, place: number, verb: string): Need {
  return {
    bad: [{ variable: place, test: (value) => value === OUT }],
    trouble: { kind: "not installed", part: instanceName(part, index), verb },
  };
}

/* ---- reaching ---- */

/** Work on a part that lies on the bench is free; on one that is in, nothing installed may enclose it. */
function reach(world: World, part: Part, index: Index, verb: string): readonly Need[] {
  return enclosers(world, part, index, verb, [{ variable: world.part(part, index, "place"), test: isInstalled }]);
}

function enclosers(world: World, part: Part, index: Index, verb: string, only: Need["bad"]): readonly Need[] {
  return world.related("encloses", part, index).map(({ part: by, index: at, relation }) => ({
    bad: [{ variable: world.part(by, at, "place"), test: isInstalled }, ...only],
    trouble: {
      kind: "enclosed",
      part: instanceName(part, index),
      by: instanceName(by, at),
      verb,
      declaredAt: relation.span,
    },
  }));
}

/* ---- fasteners ---- */

function tighten(world: World, part: Part, index: Index, grip: string): Move {
  const secured = world
    .targets("secures", part, index)
    .map((held) => notInstalled(held.part, held.index, world.part(held.part, held.index, "place"), "tighten"));
  return {
    needs: [
      notInstalled(part, index, world.part(part, index, "place"), "tighten"),
      ...secured,
      ...reach(world, part, index, "tighten"),
    ],
    updates: [{ variable: world.part(part, index, "grip"), change: () => grip }],
  };
}

function loosen(world: World, part: Part, index: Index, grip: string): Move {
  return {
    needs: [
      notInstalled(part, index, world.part(part, index, "place"), "loosen"),
      ...reach(world, part, index, "loosen"),
    ],
    updates: [{ variable: world.part(part, index, "grip"), change: () => grip }],
  };
}

/* ---- surfaces, heat, turning ---- */

function surface(world: World, part: Part, index: Index, verb: string, change: () => string): Move {
  return {
    needs: reach(world, part, index, verb),
    updates: [{ variable: world.part(part, index, "surface"), change }],
  };
}

function warm(
  world: World,
  part: Part,
  index: Index,
  to: Quantity | null,
  by: Quantity | null,
  cooling: boolean,
): Update {
  const variable = world.part(part, index, "temperature");
  if (to !== null) {
    const low = magnitudeNumber(to.low ?? to.nominal) ?? Number.NEGATIVE_INFINITY;
    const high = magnitudeNumber(to.high ?? to.nominal) ?? Number.POSITIVE_INFINITY;
    return { variable, change: () => temperature(low, high) };
  }
  const sign = cooling ? -1 : 1;
  const low = magnitudeNumber(by?.low ?? by?.nominal ?? null) ?? 0;
  const high = magnitudeNumber(by?.high ?? by?.nominal ?? null) ?? low;
  const ends = [sign * low, sign * high].sort((a, b) => a - b);
  return {
    variable,
    change: (value) => {
      const now = boundsOf(value);
      return now === null ? UNKNOWN : temperature(now.low + (ends[0] ?? 0), now.high + (ends[1] ?? 0));
    },
  };
}

/** After time of unknown length a hot part may be as cool as the shop, and is still as hot as it was. */
export function coolDown(world: World, ambientLow: number): readonly Update[] {
  return world.temperatures().map((variable) => ({
    variable,
    change: (value) => {
      const now = boundsOf(value);
      return now === null ? value : temperature(Math.min(now.low, ambientLow), now.high);
    },
  }));
}

function turn(world: World, line: ExpandedAction): readonly Move[] {
  const { action } = line;
  if (action.verb !== "turn") return [];
  const what = line.second ?? line.objects[0];
  if (what?.kind !== "place" || what.places.kind !== "ring") return [];
  const hours = action.clock === null ? null : clockTurns(action.clock.quantity);
  const { places } = what;
  const value = hours === null ? UNKNOWN : turnedTo(places, what.position ?? 1, hours);
  return [{ needs: [], updates: [{ variable: orientationVariable(world, places), change: () => value }] }];
}
