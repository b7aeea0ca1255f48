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

/** A fastener: absent, loose, tight at a value, or set back by an angle, which counts as tight. */
export const isTight = (value: string): boolean => value === "tight" || value === "set" || value === "seated";
export const isLoose = (value: string): boolean => value === "loose";

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
