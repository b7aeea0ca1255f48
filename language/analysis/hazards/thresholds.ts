// From which value on something is a hazard: the published defaults with their sources, and the shop's own in their place.
// Knows no procedure but its declarations.
import { point, quantityOf } from "#engineering/ends.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, type Rational, rational, sub } from "#quantity/rational.ts";
import { roundTo } from "#quantity/rounding.ts";
import { toBase, unitNamed } from "#quantity/unit.ts";
import type { Span } from "#syntax/span.ts";
import type { Run } from "../follow.ts";
import { declared, limitBase, topOf } from "../limits/at-node.ts";

/** How a default was taken over: read in the document, read where another quotes it, from memory, or common practice. */
export type Mark = "read" | "second" | "memory" | "practice";

/** A value from which on something counts as a hazard, and who says so. */
export interface Threshold {
  readonly name: ThresholdName;
  readonly value: Quantity;
  readonly source: string;
  /** Null for the shop's own. */
  readonly mark: Mark | null;
  readonly declaredAt: Span | null;
}

/** What a shop may set that is about hazards. */
export type ThresholdName = "burn" | "cold" | "lifting" | "electric" | "pressure" | "fire" | "noise" | "oxygen";

const quantity = (kind: Kind, value: Rational, unit: string): Quantity =>
  quantityOf(kind, point(toBase(value, unitNamed(unit), kind)), unitNamed(unit));
const celsius = (degrees: number): Quantity => quantity("temperature", rational(degrees), "°C");

/** Whether what lies below the threshold is the hazard: cold, little oxygen, a low flash point. */
export function isHazardBelow(name: string): boolean {
  return name === "cold" || name === "oxygen" || name === "fire";
}

type Default = Pick<Threshold, "value" | "source"> & { readonly mark: Mark };

/** Bare metal and healthy adults; each beside its source. */
export const DEFAULTS: Readonly<Record<ThresholdName, Default>> = {
  burn: { value: celsius(51), source: "ISO 13732-1, bare metal touched for 1 min", mark: "memory" },
  cold: { value: celsius(0), source: "MIL-STD-1472, surfaces that may be touched", mark: "memory" },
  lifting: { value: quantity("mass", rational(23), "kg"), source: "NIOSH 94-110", mark: "second" },
  electric: { value: quantity("voltage", rational(50), "V"), source: "29 CFR 1910.303(g)(2)", mark: "read" },
  pressure: {
    value: quantity("pressure", rational(1, 2), "bar"),
    source: "2014/68/EU, the limit of its scope",
    mark: "memory",
  },
  fire: { value: celsius(23), source: "29 CFR 1910.106(a)(19), flash point", mark: "read" },
  noise: { value: quantity("sound level", rational(85), "dB(A)"), source: "29 CFR 1910.95(c)(1)", mark: "read" },
  oxygen: { value: quantity("ratio", rational(39, 2), "%"), source: "oxygen in air", mark: "practice" },
};

/** From here on a burn is certain: a touch of 1 s on bare metal. Not to be set by a shop, but a higher threshold lifts it. */
export const SEVERE_BURN: Default = {
  ...DEFAULTS.burn,
  value: celsius(65),
  source: "ISO 13732-1, bare metal touched for 1 s",
};

/** Below this, somebody faints without warning. Not to be set by a shop. */
export const LITTLE_OXYGEN: Default = { ...DEFAULTS.oxygen, value: quantity("ratio", rational(18), "%") };

/** Air for cleaning has to be under this at the nozzle. */
export const CLEANING_AIR: Default = {
  value: quantity("pressure", rational(30), "psi"),
  source: "29 CFR 1910.242(b)",
  mark: "read",
};

/** The shop's threshold, else the default; null where the shop's own cannot be read. */
export function hazardThreshold(run: Run, name: ThresholdName): Threshold | null {
  const byName = known.get(run) ?? new Map<ThresholdName, Threshold | null>();
  known.set(run, byName);
  const before = byName.get(name);
  if (before !== undefined) return before;
  const found = thresholdIn(run, name);
  byName.set(name, found);
  return found;
}

/** Asked for at every node. */
const known = new WeakMap<Run, Map<ThresholdName, Threshold | null>>();

function thresholdIn(run: Run, name: ThresholdName): Threshold | null {
  if (isLost(run, name, DEFAULTS[name].value.kind)) return null;
  const own = declared(run, "threshold").find((one) => one.name === name);
  if (own?.value == null) return { name, declaredAt: null, ...DEFAULTS[name] };
  const { per, quantity: value } = own.value;
  const source = per?.source == null ? "the shop's own" : `${per.source.title} ${per.section}`.trim();
  return { name, value, source, mark: null, declaredAt: own.span };
}

/** Whether the shop set it and that cannot be read, or set one of that kind under a name that is none: it may be any then. */
export function isLost(run: Run, name: ThresholdName | "preload", kind: Kind): boolean {
  const all = declared(run, "threshold");
  const own = all.find((one) => one.name === name);
  if (own !== undefined) return own.damaged || own.value === null;
  return all.some(({ name: other, value }) => !isThreshold(other) && (value === null || value.quantity.kind === kind));
}

function isThreshold(name: string): boolean {
  return name === "preload" || Object.hasOwn(DEFAULTS, name);
}

/** Whether the value is at the threshold or past it; `above`: only past it. */
export function reaches(value: Rational, threshold: Threshold, how: "from" | "above"): boolean {
  const limit = limitBase(threshold.value);
  return limit !== null && cmp(value, limit) >= (how === "from" ? 0 : 1);
}

/** A temperature in the unit of its threshold: as shown not below what it is, of cold not above it. */
export function inUnitOf({ value }: Threshold, kelvin: Rational, side: "up" | "down" = "up"): Quantity {
  const unit = (value.nominal ?? value.low ?? value.high)?.unit ?? unitNamed("°C");
  return shownTo(side, quantityOf("temperature", point(kelvin), unit));
}

/** The one value of it as it is shown, rounded to that side: what has to stay under a limit, up. It stays what it is. */
export function shownTo(side: "up" | "down", quantity: Quantity): Quantity {
  const { nominal } = quantity;
  if (nominal === null) return quantity;
  // What a floating-point number left behind its last digits is not more.
  const clean = roundTo(nominal.written, nominal.digit - NOISE, "nearest");
  return { ...quantity, nominal: { ...nominal, written: roundTo(clean, nominal.digit, side) } };
}

const NOISE = 6;

/** The most that is declared, of a pressure against the air around; where no end is above, the value there is. */
export function gauge(value: Quantity): Rational | null {
  const most = topOf(value) ?? limitBase(value);
  return most !== null && value.qualifier === "absolute" ? sub(most, ATMOSPHERE) : most;
}

/** In pascal, by definition (NIST SP 811). */
const ATMOSPHERE = rational(101_325);
