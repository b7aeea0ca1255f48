// How states are written down as values of variables, and the tests on them. One place that knows the spelling.
import { UNKNOWN } from "./cell.ts";

/** Where a part is: on the bench, in, in a numbered place, or on another part that is itself in or on the bench. */
export const OUT = "out";
export const IN = "in";
export const inPlace = (place: string): string => `in@${place}`;
export const onPart = (carrier: string, carrierIsIn: boolean, isTaken = false): string =>
  `on@${carrier}|${isTaken ? TAKEN : ""}${carrierIsIn ? "in" : "out"}`;
/** Part of a value that was only taken as so: where the carrier is, or that one of the holders is there. */
const TAKEN = "?";

/** Put in anywhere, also on a part that lies on the bench. */
export const isAttached = (value: string): boolean => value.startsWith("in") || value.startsWith("on@");
/** In the machine. */
export const isInstalled = (value: string): boolean =>
  value.startsWith("in") || (value.startsWith("on@") && /\|\??in$/.test(value));
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

/** A part of single use: fresh, loosened, removed, or removed and in again by the word of a step. */
export const isSpent = (value: string): boolean => value === "loosened" || value === PUT_BACK;
export const putBack = (used: string): string => (used === "removed" ? PUT_BACK : used);
const PUT_BACK = "put back";

/** An energy: live; isolated by the procedure, and then shown to be dead; or off without its doing. */
export const ISOLATED = "isolated";
export const isCutOff = (value: string): boolean => value === ISOLATED || value === "proved dead";
/** What is shown to be dead is dead, also where a line that cannot be read leaves open whether it was isolated. */
export const proved = (value: string): string => (value === ISOLATED ? "proved dead" : value === UNKNOWN ? OFF : value);
export const LIVE = "live";
export const OFF = "off";
export const isDead = (value: string): boolean => value !== LIVE && value !== UNKNOWN;

/** Who stands in a place; several where parts stack. */
export const holders = (value: string): readonly string[] => marked(value).map(unmarked);
export function withHolder(value: string, key: string, isTaken = false): string {
  if (value === "") return isTaken ? key + TAKEN : key;
  const known = marked(value);
  if (value === UNKNOWN || known.includes(key) || (isTaken && known.includes(key + TAKEN))) return value;
  return [...known.filter((other) => other !== key + TAKEN), isTaken ? key + TAKEN : key].sort().join("&");
}
export const withoutHolder = (value: string, key: string): string =>
  marked(value)
    .filter((other) => unmarked(other) !== key)
    .join("&");
const marked = (value: string): readonly string[] => (value === "" ? [] : value.split("&"));
const unmarked = (holder: string): string =>
  holder !== UNKNOWN && holder.endsWith(TAKEN) ? holder.slice(0, -TAKEN.length) : holder;

/** Whether a value shows that it is so. What is only taken as so shows nothing: it has to be so with and without that. */
export function shows(value: string, test: (value: string) => boolean): boolean {
  if (value === UNKNOWN) return false;
  return value.includes(TAKEN) ? standsFor(value).every(test) : test(value);
}

/** What the value may be, were it not for what is only taken as so; first that with the least in it. */
export function standsFor(value: string): readonly string[] {
  const carrier = carrierOf(value);
  if (carrier !== null) return isPlaceTaken(value) ? [onPart(carrier, false), onPart(carrier, true)] : [value];
  const parts = marked(value);
  if (value === UNKNOWN || parts.every((holder) => unmarked(holder) === holder)) return [value];
  return [parts.filter((holder) => unmarked(holder) === holder).join("&"), parts.map(unmarked).join("&")];
}

/** On a part of which it is only taken as so that it is in, or out. */
export const isPlaceTaken = (value: string): boolean => value.startsWith("on@") && /\|\?(?:in|out)$/.test(value);

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
