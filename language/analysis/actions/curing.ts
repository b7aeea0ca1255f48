// What has been applied to a part and must rest before the part is loaded, closed over or driven. A value is the seconds
// that are left and what it is, as `7200 path#Bond`; empty where nothing has to rest.
import type { Energy, Part, PartInstance } from "#model/declarations.ts";
import type { Action } from "#model/procedure.ts";
import { UNKNOWN } from "../cell.ts";
import { magnitudeNumber } from "../readings.ts";
import type { Update } from "../update.ts";
import { type Index, instanceName, type World } from "../world.ts";
import { both, type Move, NOTHING } from "./move.ts";

/** A fresh coat; `null` where it needs no time. */
export function coatOf(action: Extract<Action, { verb: "apply" }>): string | null {
  const { consumable } = action.dose;
  const time = (action.cure ?? consumable?.cure ?? null)?.quantity;
  const seconds = magnitudeNumber(time?.low ?? time?.nominal ?? time?.high ?? null);
  if (seconds === null || seconds <= 0 || consumable === null) return null;
  return `${seconds} ${consumable.id}${action.cure === null ? "" : RESTS_FIRST}`;
}

/** Said of a coat whose step itself says how long it cures: then the part rests before it is lifted or screwed down, too. */
const RESTS_FIRST = " rests first";

/** What is left of a coat's time, in seconds, and the name of what it is. */
export function curingOf(value: string): { readonly left: number; readonly id: string } {
  const at = value.indexOf(" ");
  return { left: Number(value.slice(0, at)), id: value.slice(at + 1).replace(RESTS_FIRST, "") };
}

export function coat(world: World, part: Part, index: Index, value: string | null): Update[] {
  if (value === null) return [];
  world.foresee(`cure ${part.id}`);
  return [{ variable: world.part(part, index, "cure"), change: () => value }];
}

/** Time passes for all coats but those named. */
export function rested(world: World, seconds: number, but: ReadonlySet<number> = new Set()): readonly Update[] {
  if (seconds <= 0) return [];
  return world
    .all("cure")
    .filter((variable) => !but.has(variable))
    .map((variable) => ({
      variable,
      commutes: true,
      keepsOrigin: "always",
      change: (value) => restedBy(value, seconds),
    }));
}

/** A coat after that time; empty once it has cured. */
export function restedBy(value: string, seconds: number): string {
  if (value === "" || value === UNKNOWN) return value;
  const { left } = curingOf(value);
  return left <= seconds ? "" : `${left - seconds}${value.slice(value.indexOf(" "))}`;
}

/** A part is filled or pressed. */
export function loading(world: World, { part, index }: PartInstance, by: string): Move {
  return mustBeCured(world, { part, index }, "loaded", by, isWet);
}

/** A joint is closed wet: the lift that brings a coated part to it is no load, unless the coat was to cure first. */
export function lifting(world: World, { part, index }: PartInstance): Move {
  return mustBeCured(world, { part, index }, "loaded", instanceName(part, index), restsFirst);
}

/** Likewise a fastener that clamps what it secures. What is on its own thread is no matter: it cures under load. */
export function clamping(world: World, part: Part, index: Index): Move {
  const secured = world.targets("secures", part, index);
  if (secured.length === 0) return NOTHING;
  const name = instanceName(part, index);
  return both(...secured.map((held) => mustBeCured(world, held, "loaded", name, restsFirst)));
}

function isWet(value: string): boolean {
  return value !== "";
}

function restsFirst(value: string): boolean {
  return value.endsWith(RESTS_FIRST);
}

export function pressing(world: World, part: Part, index: Index, onto: PartInstance | null): Move {
  const name = instanceName(part, index);
  return both(loading(world, { part, index }, name), onto === null ? NOTHING : loading(world, onto, name));
}

export function closingOver(world: World, part: Part, index: Index): Move {
  const enclosed = world.targets("encloses", part, index);
  if (enclosed.length === 0) return NOTHING;
  const name = instanceName(part, index);
  return both(...enclosed.map((inside) => mustBeCured(world, inside, "closed over", name, isWet)));
}

export function driving(world: World, energy: Energy): Move {
  return both(...world.driven(energy).map((driven) => mustBeCured(world, driven, "restored", energy.name, isWet)));
}

/** Told once, it is taken as cured. */
function mustBeCured(
  world: World,
  { part, index }: PartInstance,
  how: "loaded" | "closed over" | "restored",
  by: string,
  test: (value: string) => boolean,
): Move {
  if (!world.isForeseen(`cure ${part.id}`)) return NOTHING;
  const variable = world.part(part, index, "cure");
  return {
    needs: [
      {
        bad: [{ variable, test }],
        trouble: { kind: "uncured", part: instanceName(part, index), how, by },
      },
    ],
    updates: [{ variable, change: (value) => (test(value) ? "" : value) }],
  };
}
