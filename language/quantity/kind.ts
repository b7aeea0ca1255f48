// Quantity kinds (ISO 80000-1): what a value is, beyond its dimension. Torque is not energy. Knows no unit but by name.
import { type Dimension, dimension } from "./dimension.ts";

export type Kind = keyof typeof KINDS;

/** What is true of a kind. */
export interface KindFacts {
  readonly dimension: Dimension;
  /** Whether a written value may lie below zero. */
  readonly negative: boolean;
  /** The unit of {@link Magnitude.base}. */
  readonly coherent: string;
  /** The metric unit an output shows, by size: the last whose `from` (coherent) is not above the value; none where both systems agree. */
  readonly metric: readonly ShownUnit[];
  /** The customary unit an output shows, likewise. */
  readonly customary: readonly ShownUnit[];
  /** What a writer is offered where a unit is missing. */
  readonly usual: readonly string[];
}

/** A unit for display, and the size (in the coherent unit) from which it is used. */
export interface ShownUnit {
  readonly unit: string;
  readonly from: number;
}

/** The facts of one kind. */
export function factsOf(kind: Kind): KindFacts {
  return KINDS[kind];
}

/** All kinds of one dimension, the likeliest first. */
export function kindsOf(of: Dimension): readonly Kind[] {
  return BY_DIMENSION.get(of) ?? [];
}

export function isKind(text: string): text is Kind {
  return Object.hasOwn(KINDS, text);
}

const NEGATIVE = true;
const NOT_NEGATIVE = false;

const KINDS = {
  length: kind({ length: 1 }, NOT_NEGATIVE, "m", ["mm", "m@2"], ["in", "ft@3"]),
  area: kind({ length: 2 }, NOT_NEGATIVE, "m²", ["mm²", "m²@1"], ["in²", "ft²@1"]),
  volume: kind(
    { length: 3 },
    NOT_NEGATIVE,
    "m³",
    // Beyond the largest container that is moved (1,000 L, memory) it is a room or a pit.
    ["mL", "L@0.001", "m³@2"],
    ["flozUS", "qtUS@0.0009", "galUS@0.0037", "ft³@2"],
    ["L", "mL", "galUS", "flozUS"],
  ),
  mass: kind({ mass: 1 }, NOT_NEGATIVE, "kg", ["g", "kg@0.5"], ["oz", "lb@0.45"], ["kg", "g", "lb", "oz"]),
  time: kind({ time: 1 }, NOT_NEGATIVE, "s", [], [], ["s", "min", "h", "d"]),
  temperature: kind({ temperature: 1 }, NEGATIVE, "K", ["°C"], ["°F"]),
  "temperature difference": kind({ temperature: 1 }, NEGATIVE, "K", ["K"], ["°F"]),
  "temperature rate": kind({ temperature: 1, time: -1 }, NEGATIVE, "K/s", ["K/min"], ["°F/min"]),
  angle: kind({ angle: 1 }, NEGATIVE, "turn", [], [], ["°", "turn"]),
  "clock position": kind({ clock: 1 }, NOT_NEGATIVE, "o'clock", [], [], ["o'clock"]),
  force: kind({ length: 1, mass: 1, time: -2 }, NOT_NEGATIVE, "N", ["N", "kN@10000"], ["lbf"]),
  torque: kind({ length: 2, mass: 1, time: -2 }, NOT_NEGATIVE, "N·m", ["N·m"], ["lbf·in", "lbf·ft@25"]),
  energy: kind({ length: 2, mass: 1, time: -2 }, NOT_NEGATIVE, "J", ["J", "kJ@10000"], ["Btu"]),
  power: kind({ length: 2, mass: 1, time: -3 }, NOT_NEGATIVE, "W", ["W", "kW@1000"], ["hp"]),
  pressure: kind({ length: -1, mass: 1, time: -2 }, NEGATIVE, "Pa", ["bar"], ["psi"]),
  voltage: kind({ length: 2, mass: 1, time: -3, current: -1 }, NEGATIVE, "V", [], [], ["V AC", "V DC"]),
  current: kind({ current: 1 }, NEGATIVE, "A", [], [], ["A", "mA"]),
  resistance: kind({ length: 2, mass: 1, time: -3, current: -2 }, NOT_NEGATIVE, "Ω", [], [], ["Ω", "kΩ", "MΩ"]),
  capacitance: kind({ length: -2, mass: -1, time: 4, current: 2 }, NOT_NEGATIVE, "F", [], [], ["µF"]),
  frequency: kind({ time: -1 }, NOT_NEGATIVE, "Hz", [], [], ["Hz"]),
  "rotational speed": kind({ angle: 1, time: -1 }, NOT_NEGATIVE, "turn/s", [], [], ["rpm"]),
  velocity: kind({ length: 1, time: -1 }, NEGATIVE, "m/s", ["mm/s", "m/s@1"], ["in/s", "ft/s@1"]),
  acceleration: kind({ length: 1, time: -2 }, NEGATIVE, "m/s²", ["m/s²"], ["ft/s²"]),
  "flow rate": kind({ length: 3, time: -1 }, NOT_NEGATIVE, "m³/s", ["L/min"], ["galUS/min"]),
  density: kind({ length: -3, mass: 1 }, NOT_NEGATIVE, "kg/m³", ["kg/m³"], ["lb/ft³"]),
  stiffness: kind({ mass: 1, time: -2 }, NOT_NEGATIVE, "N/m", ["N/mm"], ["lbf/in"]),
  "dynamic viscosity": kind({ length: -1, mass: 1, time: -1 }, NOT_NEGATIVE, "Pa·s", [], [], ["mPa·s", "cP"]),
  "kinematic viscosity": kind({ length: 2, time: -1 }, NOT_NEGATIVE, "m²/s", [], [], ["mm²/s", "cSt"]),
  "thermal expansion coefficient": kind({ temperature: -1 }, NEGATIVE, "1/K", ["µm/(m·K)"], ["µin/(in·°F)"]),
  "mass moment": kind({ length: 1, mass: 1 }, NOT_NEGATIVE, "kg·m", ["g·mm"], ["oz·in"]),
  "sound level": kind({ level: 1 }, NEGATIVE, "dB(A)", [], [], ["dB(A)"]),
  ratio: kind({}, NOT_NEGATIVE, "", [], [], ["%"]),
  concentration: kind({}, NOT_NEGATIVE, "", [], [], ["ppm", "%"]),
} as const;

const BY_DIMENSION = new Map<Dimension, Kind[]>();
for (const [name, facts] of Object.entries(KINDS)) {
  const same = BY_DIMENSION.get(facts.dimension);
  if (same === undefined) BY_DIMENSION.set(facts.dimension, [name as Kind]);
  else same.push(name as Kind);
}

function kind(
  exponents: Parameters<typeof dimension>[0],
  negative: boolean,
  coherent: string,
  metric: readonly string[],
  customary: readonly string[],
  usual: readonly string[] = [...metric, ...customary].map((entry) => shownUnit(entry).unit),
): KindFacts {
  return {
    dimension: dimension(exponents),
    negative,
    coherent,
    metric: metric.map(shownUnit),
    customary: customary.map(shownUnit),
    usual,
  };
}

/** `lbf·ft@25` reads: lbf·ft from 25 coherent units upward. */
function shownUnit(entry: string): ShownUnit {
  const [unit = "", from = "0"] = entry.split("@");
  return { unit, from: Number(from) };
}
