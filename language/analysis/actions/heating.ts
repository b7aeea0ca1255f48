// Temperatures as a low and a high bound, in kelvin, also of what touches. Knows the verbs heat and cool, and waiting.
import type { Part } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { UNKNOWN } from "../cell.ts";
import { joined } from "../joints.ts";
import { highEnd, lowEnd, magnitudeNumber } from "../readings.ts";
import { boundsOf, temperature } from "../state-values.ts";
import type { Update } from "../update.ts";
import type { Index, World } from "../world.ts";

/** The part's own temperature, and what it passes on. */
export function heated(
  world: World,
  part: Part,
  index: Index,
  to: Quantity | null,
  by: Quantity | null,
  cooling: boolean,
): readonly Update[] {
  return [set(world, part, index, to, by, cooling), ...warmed(world, part, index)];
}

/** What touches a part may become as hot as the part. */
function warmed(world: World, part: Part, index: Index): readonly Update[] {
  const own = world.part(part, index, "temperature");
  return world.fits(part, index).map(({ mate }) => ({
    variable: world.part(mate.part, mate.index, "temperature"),
    by: own,
    when: joined(world, { part, index }, mate),
    change: asHotAs,
  }));
}

/** Two that have just been put together become as hot as the hotter of them. */
export function broughtTogether(world: World, part: Part, index: Index): readonly Update[] {
  const fits = world.fits(part, index);
  // Of a part without a fit no temperature need be followed.
  if (fits.length === 0) return [];
  const own = world.part(part, index, "temperature");
  const takesOver = fits.map(({ mate }) => ({
    variable: own,
    by: world.part(mate.part, mate.index, "temperature"),
    when: joined(world, { part, index }, mate),
    change: asHotAs,
  }));
  return [...warmed(world, part, index), ...takesOver];
}

function asHotAs(value: string, other: string): string {
  const now = boundsOf(value);
  const from = boundsOf(other);
  if (now === null || from === null) return value;
  return from.high > now.high ? temperature(now.low, from.high) : value;
}

function set(
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
    return { variable, renews: "where supposed", change: () => temperature(low, high) };
  }
  const sign = cooling ? -1 : 1;
  const low = lowEnd(by) ?? 0;
  const high = highEnd(by) ?? low;
  const ends = [sign * low, sign * high].sort((a, b) => a - b);
  return {
    variable,
    renews: "where supposed",
    change: (value) => {
      const now = boundsOf(value);
      return now === null ? UNKNOWN : temperature(now.low + (ends[0] ?? 0), now.high + (ends[1] ?? 0));
    },
  };
}

/** After time of unknown length a hot part may be as cool as the shop, and is still as hot as it was. */
export function coolDown(world: World, ambientLow: number): readonly Update[] {
  return world.all("temperature").map((variable) => ({
    variable,
    commutes: true,
    change: (value) => {
      const now = boundsOf(value);
      return now === null ? value : temperature(Math.min(now.low, ambientLow), now.high);
    },
  }));
}
