// How states are written down as values of variables, and the tests on them. One place that knows the spelling.
import { UNKNOWN } from "./cell.ts";

/** Where a part is: on the bench, in, in a numbered place, or on another part that is itself in or on the bench. */
export const OUT = "out";
export const IN = "in";
export const inPlace = (place: string): string => `in@${place}`;
export const onPart = (carrier: string, carrierIsIn: boolean): string => `on@${carrier}|${carrierIsIn ? "in" : "out"}`;

/** Put in anywhere, also on a part that lies on the bench. */
export const isAttached = (value: string): boolean => value.startsWith("in") || value.startsWith("on@");
/** In the machine. */
export const isInstalled = (value: string): boolean =>
  value.startsWith("in") || (value.startsWith("on@") && value.endsWith("|in"));
export const isRemoved = (value: string): boolean => value === OUT;
export const placeOf = (value: string): string | null => (value.startsWith("in@") ? value.slice(3) : null);
export const carrierOf = (value: string): string | null =>
  value.startsWith("on@") ? value.slice(3, value.lastIndexOf("|")) : null;

/** A fastener: absent, loose, tight at a value, set back by an angle, seated, or in with nothing said of how tight. */
export const AS_FOUND = "as found";
/** Set and seated count as tight. */
export const isTight = (value: string): boolean => value === "tight" || value === "set" || value === "seated";
export const isLoose = (value: string): boolean => isSlack(value) || value === AS_FOUND;
/** Loose for certain: put in, or run in by hand. */
export const isSlack = (value: string): boolean => value === "loose" || value === "run in";
/** It may be tight. */
export const mayBeTight = (value: string): boolean => isTight(value) || value === AS_FOUND;

/** An energy: live; isolated by the procedure, and then shown to be dead; or off without its doing. */
export const ISOLATED = "isolated";
export const isCutOff = (value: string): boolean => value === ISOLATED || value === "proved dead";
export const proved = (value: string): string => (value === ISOLATED ? "proved dead" : value);
export const LIVE = "live";
export const OFF = "off";
export const isDead = (value: string): boolean => value !== LIVE && value !== UNKNOWN;

/** Who stands in a place; several where parts stack. */
export const holders = (value: string): readonly string[] => (value === "" ? [] : value.split("&"));
export const withHolder = (value: string, key: string): string =>
  value === UNKNOWN || holders(value).includes(key) ? value : [...holders(value), key].sort().join("&");
export const withoutHolder = (value: string, key: string): string =>
  holders(value)
    .filter((other) => other !== key)
    .join("&");

/** A temperature between two bounds, in kelvin. */
export const temperature = (low: number, high: number): string => `${low}..${high}`;
export function boundsOf(value: string): { low: number; high: number } | null {
  const at = value.indexOf("..");
  if (at < 0) return null;
  const bound = (text: string): number =>
    text === "Infinity" ? Number.POSITIVE_INFINITY : text === "-Infinity" ? Number.NEGATIVE_INFINITY : Number(text);
  return { low: bound(value.slice(0, at)), high: bound(value.slice(at + 2)) };
}

/** What was applied to a part, by identity; a coat of something that is not known leaves all in doubt. */
export const coatsOf = (value: string): readonly string[] =>
  value === "" || value === UNKNOWN ? [] : value.split("&");
export const withCoat = (value: string, id: string | null): string =>
  id === null || value === UNKNOWN ? UNKNOWN : [...new Set([...coatsOf(value), id])].sort().join("&");
