// Putting parts in and taking them out: what must be so in the place, under it, round it, and for a fit. Knows the verbs
// install, press, remove and discard.
import { isInterference } from "#engineering/fit.ts";
import type { Part, PartInstance } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import type { Span } from "#syntax/span.ts";
import { UNKNOWN } from "../cell.ts";
import { carry, release, vacate } from "../standing.ts";
import {
  boundsOf,
  carrierOf,
  holders,
  IN,
  inPlace,
  isAttached,
  isInstalled,
  isLoose,
  isPlaceTaken,
  isRemoved,
  isSlack,
  isTight,
  OUT,
  onPart,
  withHolder,
} from "../state-values.ts";
import { clockTurns, orientationVariable, placeAt } from "../turning.ts";
import type { Test, Update } from "../update.ts";
import { type Index, instanceKey, instanceName, ownPosition, placeKey, type Seat, type World } from "../world.ts";
import { closingOver, pressing } from "./curing.ts";
import { filling, unfilling } from "./filling.ts";
import { broughtTogether } from "./heating.ts";
import { hangingNoMore, lastFastenerOut } from "./loads.ts";
import { both, changing, type Move, type Need, NOTHING, needing } from "./move.ts";
import { workAtPlaceOf, workOn } from "./reaching.ts";

/** The temperatures of the shop, in kelvin. */
export interface Ambient {
  readonly low: number;
  readonly high: number;
}

type Install = Extract<ExpandedAction["action"], { verb: "install" | "press" }>;

export function install(
  world: World,
  part: Part,
  index: Index,
  action: Install,
  second: Thing | null,
  ambient: Ambient,
): Move {
  const place = world.part(part, index, "place");
  const seat = seatOf(part, index, second);
  const carrier = second?.kind === "part" ? second : null;
  const alreadyIn: Need = {
    bad: [{ variable: place, test: isAttached }],
    trouble: { kind: "already installed", part: instanceName(part, index) },
  };
  return both(
    needing([alreadyIn]),
    workAtPlaceOf(world, part, index, action.verb),
    needing(supports(world, part, index, carrier)),
    singleUse(world, part, index, action.fresh, action.verb),
    atClock(world, part, index, action, seat),
    action.verb === "press" ? pressing(world, part, index, carrier) : coldFit(world, part, index, carrier, ambient),
    seat === null ? NOTHING : inSeat(world, part, index, seat),
    // What was in elsewhere is not there any more.
    changing(vacate(world, part, index, seat)),
    changing(runIn(world, part, index)),
    changing([putIn(world, part, index, seat, carrier)]),
    needing(closedOver(world, part, index)),
    changing(carry(world, part, index)),
    closingOver(world, part, index),
    changing(broughtTogether(world, part, index)),
    changing(hangingNoMore(world, part, index)),
  );
}

export function remove(world: World, part: Part, index: Index, verb: string): Move {
  const place = world.part(part, index, "place");
  const needs: Need[] = [notInstalled(part, index, place, verb)];
  for (const { part: by, index: at, relation } of world.related("retains", part, index)) {
    needs.push({
      bad: [{ variable: world.part(by, at, "place"), test: isInstalled }],
      trouble: {
        kind: "retained",
        part: instanceName(part, index),
        by: instanceName(by, at),
        how: "retains",
        declaredAt: relation.span,
      },
    });
  }
  for (const { part: by, index: at, relation } of world.related("secures", part, index)) {
    const inPlaceAt: Test = { variable: world.part(by, at, "place"), test: isAttached };
    const grip = world.part(by, at, "grip");
    for (const [how, test] of [
      ["tightened", isTight],
      ["loose", isLoose],
    ] as const) {
      needs.push({
        bad: [{ variable: grip, test }, inPlaceAt],
        trouble: {
          kind: "retained",
          part: instanceName(part, index),
          by: instanceName(by, at),
          how,
          declaredAt: relation.span,
        },
      });
    }
  }
  return both(
    needing(needs),
    workOn(world, part, index, verb),
    lastFastenerOut(world, part, index, verb),
    changing(unfilling(world, part, index)),
    changing([
      ...vacate(world, part, index),
      { variable: place, renews: "where supposed", change: () => OUT },
      ...release(world, part, index),
      ...carry(world, part, index),
      ...(part.singleUse ? [{ variable: world.part(part, index, "used"), change: () => "removed" }] : []),
    ]),
  );
}

/** @param by the fastener that is worked on, where the part is what it secures */
export function notInstalled(part: Part, index: Index, place: number, verb: string, by: string | null = null): Need {
  return {
    bad: [{ variable: place, test: isRemoved }],
    trouble: { kind: "not installed", part: instanceName(part, index), verb, by },
  };
}

/* ---- the place ---- */

/** The numbered place that the part goes to: the one written, else its own. */
function seatOf(part: Part, index: Index, second: Thing | null): Seat | null {
  if (second === null) return ownPosition(part, index);
  if (second.kind !== "place") return null;
  if (second.position !== null) return { places: second.places, position: second.position };
  const own = ownPosition(part, index);
  return own?.places === second.places ? own : null;
}

function inSeat(world: World, part: Part, index: Index, seat: Seat): Move {
  const key = instanceKey(part, index);
  const holder = world.holder(seat.places, seat.position);
  const wrong = wrongPlace(part, index, seat);
  const name = instanceName(part, index);
  const place = `${seat.places.name}[${seat.position}]`;
  const isOther = (value: string): boolean =>
    holders(value).some((other) => other !== key && !stacked(world, part, other));
  world.maySit(part, index, seat.places, seat.position);
  const isWrong: Need[] =
    wrong === null ? [] : [{ bad: [], trouble: { kind: "wrong place", part: name, place, ...wrong } }];
  return both(
    needing(isWrong),
    {
      needs: [
        { bad: [{ variable: holder, test: isOther }], trouble: { kind: "occupied", part: name, place, holder, key } },
      ],
      updates: [{ variable: holder, change: (value) => withHolder(value, key) }],
    },
    filling(world, part, index, seat),
  );
}

/** A fastener that goes in is loose; whoever puts it in left it so, whatever it was on the bench. */
function runIn(world: World, part: Part, index: Index): readonly Update[] {
  if (!part.fastener) return [];
  const variable = world.part(part, index, "grip");
  const isOut: Test = { variable: world.part(part, index, "place"), test: isDetached };
  return [
    { variable, when: [[isOut]], renews: "always", change: slackened },
    { variable, change: slackened },
  ];
}

/** Run in by hand it is loose already. */
function slackened(grip: string): string {
  return isSlack(grip) ? grip : "loose";
}

function isDetached(place: string): boolean {
  return !isAttached(place);
}

function putIn(
  world: World,
  part: Part,
  index: Index,
  seat: Seat | null,
  carrier: Extract<Thing, { kind: "part" }> | null,
): Update {
  const variable = world.part(part, index, "place");
  const renews = "where supposed";
  if (seat !== null) {
    const there = inPlace(placeKey(seat.places, seat.position));
    return { variable, renews, change: () => there };
  }
  if (carrier === null) return { variable, renews, change: () => IN };
  const carrierKey = instanceKey(carrier.part, carrier.index);
  world.mayRide(carrier, part, index);
  return {
    variable,
    by: world.part(carrier.part, carrier.index, "place"),
    renews,
    change: (_, under, __, isTaken) =>
      under === UNKNOWN ? UNKNOWN : onPart(carrierKey, isInstalled(under), isTaken || isPlaceTaken(under)),
  };
}

function wrongPlace(part: Part, index: Index, at: Seat): { own: string; seats: Span } | null {
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

/** A place that was to be turned to a clock position first. */
function atClock(world: World, part: Part, index: Index, action: Install, seat: Seat | null): Move {
  const clock = action.verb === "install" ? action.clock : null;
  const wanted = clock === null ? null : clockTurns(clock.quantity);
  if (seat === null || seat.places.kind !== "ring" || wanted === null) return NOTHING;
  const { places: ring, position } = seat;
  const stands = (value: string): boolean => {
    const now = placeAt(ring, position, value);
    return now === null || now === wanted;
  };
  return {
    needs: [
      {
        bad: [{ variable: orientationVariable(world, ring), test: (value) => !stands(value) }],
        trouble: { kind: "position", part: instanceName(part, index), ring, position, wanted },
      },
    ],
    updates: [],
  };
}

/* ---- what it needs, what it shuts in ---- */

function supports(world: World, part: Part, index: Index, carrier: { part: Part; index: Index } | null): Need[] {
  const needed = world.targets("needs", part, index);
  if (needed.length === 0) return [];
  return needed
    .filter((support) => carrier?.part !== support.part || carrier.index !== support.index)
    .map((support) => {
      const variable = world.part(support.part, support.index, "place");
      return {
        bad: [{ variable, test: (value) => value !== UNKNOWN && !isInstalled(value) }],
        trouble: {
          kind: "missing support",
          part: instanceName(part, index),
          needs: instanceName(support.part, support.index),
          declaredAt: support.relation.span,
          variable,
        },
      };
    });
}

/** A part that closes over temporary parts that are still in. */
function closedOver(world: World, part: Part, index: Index): readonly Need[] {
  const enclosed = world.targets("encloses", part, index);
  if (enclosed.length === 0) return [];
  return enclosed
    .filter((inside) => inside.part.temporary)
    .map((inside) => ({
      bad: [{ variable: world.part(inside.part, inside.index, "place"), test: isAttached }],
      trouble: {
        kind: "closed over",
        what: instanceName(inside.part, inside.index),
        closedBy: instanceName(part, index),
      },
    }));
}

/** Once removed or loosened it may not go back; told once, it is taken as new. */
function singleUse(world: World, part: Part, index: Index, fresh: boolean, verb: string): Move {
  if (!part.singleUse) return NOTHING;
  const variable = world.part(part, index, "used");
  const need: Need = {
    bad: [{ variable, test: (value) => value !== "fresh" }],
    trouble: { kind: "reused", part: instanceName(part, index), verb },
  };
  return { needs: fresh ? [] : [need], updates: [{ variable, change: () => "fresh" }] };
}

/* ---- fits ---- */

/** An interference fit goes together hot, cold or under the press. */
function coldFit(
  world: World,
  part: Part,
  index: Index,
  carrier: { part: Part; index: Index } | null,
  ambient: Ambient,
): Move {
  const fits = world.fits(part, index);
  if (fits.length === 0) return NOTHING;
  const needs: Need[] = [];
  for (const { fit, isOuter, mate } of fits) {
    if (!isInterference(fit)) continue;
    if (carrier !== null && (carrier.part !== mate.part || carrier.index !== mate.index)) continue;
    const own = world.part(part, index, "temperature");
    const other = world.part(mate.part, mate.index, "temperature");
    needs.push({
      bad: [
        { variable: isOuter ? own : other, test: (value) => isKnown(value, ({ high }) => high <= ambient.high) },
        { variable: isOuter ? other : own, test: (value) => isKnown(value, ({ low }) => low >= ambient.low) },
        ...(carrier === null ? [apart(world, { part, index }, mate)] : []),
      ],
      trouble: {
        kind: "cold fit",
        part: instanceName(part, index),
        mate: instanceName(mate.part, mate.index),
        declaredAt: fit.span,
      },
    });
  }
  return { needs, updates: [] };
}

/** The other side is in, and not because it came along on this one. */
function apart(world: World, own: PartInstance, mate: PartInstance): Test {
  const key = instanceKey(own.part, own.index);
  const test = (value: string): boolean => isAttached(value) && carrierOf(value) !== key;
  return { variable: world.part(mate.part, mate.index, "place"), test };
}

function isKnown(value: string, test: (bounds: Ambient) => boolean): boolean {
  const bounds = boundsOf(value);
  return bounds !== null && test(bounds);
}
