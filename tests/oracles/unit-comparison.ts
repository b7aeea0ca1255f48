// Compares the project's units with another program's: which of ours the other knows, and by what factor. The other
// side's numbers come from it alone.
import { factsOf, type Kind } from "#quantity/kind.ts";
import { div, toNumber } from "#quantity/rational.ts";
import { readUnit, scaleOf, type Unit, unitNamed } from "#quantity/unit.ts";
import { atomNames } from "#quantity/unit-table.ts";

/** What two programs are compared on: one `from` in `to`, both in our spelling. */
export interface Pair {
  readonly from: string;
  readonly to: string;
}

/** How another program spells our units. */
export interface Dialect {
  /** Names that differ, by ours; a name that is the same stands there too. */
  readonly names: Readonly<Record<string, string>>;
  /** Our prefixes by theirs; only these are used. */
  readonly prefixes: Readonly<Record<string, string>>;
  /** Names that take those prefixes. */
  readonly prefixed: readonly string[];
  readonly times: string;
  readonly power: (exponent: string) => string;
}

/** The compound units that shops use, beside the names of the table. */
const COMPOUNDS: readonly string[] = [
  "N·m",
  "lbf·ft",
  "lbf·in",
  "ozf·in",
  "kgf·m",
  "kgf·cm",
  "kgf/cm²",
  "g·mm",
  "oz·in",
  "lb·in",
  "mm²",
  "in²",
  "ft²",
  "cm³",
  "in³",
  "ft³",
  "m/s",
  "mm/s",
  "km/h",
  "ft/s",
  "ft/min",
  "in/s",
  "m/s²",
  "ft/s²",
  "L/min",
  "m³/h",
  "galUS/min",
  "ft³/min",
  "kg/m³",
  "g/cm³",
  "lb/ft³",
  "N/mm",
  "lbf/in",
  "N/mm²",
  "lbf/ft²",
  "Pa·s",
  "mPa·s",
  "mm²/s",
  "µm/(m·K)",
  "kW·h",
  "W·h",
  "V·A",
  "rad/s",
  "turn/s",
  "°/s",
  "K/min",
  "K/s",
  "kg·m²",
  "J/(kg·K)",
  "W/(m·K)",
];

/** Our units that the other program has a name for, each with the coherent unit of its kind. */
export function pairsFor(dialect: Dialect): readonly Pair[] {
  return [...atomNames(), ...COMPOUNDS].flatMap((from) => {
    const unit = unitNamed(from);
    const to = coherent(unit);
    return translated(from, dialect) === null || to === null || translated(to, dialect) === null ? [] : [{ from, to }];
  });
}

/** A unit text in the other program's spelling; null where it has no name for a part of it. */
export function translated(text: string, dialect: Dialect): string | null {
  if (text === "") return dialect.names[""] ?? null;
  let known = true;
  const result = text
    .replace(/[²³]/g, (sign) => `^${sign === "²" ? 2 : 3}`)
    .replace(/\^\d|[·/()]|(?:(?!\^\d)[^·/()])+/g, (part) => {
      if (part.startsWith("^")) return dialect.power(part.slice(1));
      if (part === "·") return dialect.times;
      if (/^[/()1]$/.test(part)) return part;
      const name = nameIn(part, dialect);
      known &&= name !== null;
      return name ?? "";
    });
  return known ? result : null;
}

/** What a comparison came to. */
export interface Comparison {
  readonly compared: number;
  /** Each factor that differs by more than its tolerance, in words. */
  readonly different: readonly string[];
}

/** Compares our factors with the other program's (null: it has none after all), and says aloud how many there were. */
export function compareFactors(
  program: string,
  pairs: readonly Pair[],
  theirs: (pair: Pair) => number | null,
  tolerance: (pair: Pair) => number,
): Comparison {
  let compared = 0;
  const different: string[] = [];
  for (const pair of pairs) {
    const other = theirs(pair);
    if (other === null) continue;
    compared++;
    const ours = factor(pair);
    const apart = Math.abs(ours / other - 1);
    if (!(apart <= tolerance(pair))) different.push(`${pair.from} in ${pair.to}: ${ours}, there ${other}`);
  }
  console.log(`${program}: ${compared} factors compared`);
  return { compared, different };
}

function factor({ from, to }: Pair): number {
  return toNumber(div(scaleOf(unitOf(from)), scaleOf(unitOf(to))));
}

function unitOf(text: string): Unit {
  const reading = readUnit(text, null);
  if (text !== "" && !reading.ok) throw new Error(`not ours: ${text}`);
  return unitNamed(text);
}

function coherent(unit: Unit): string | null {
  const kind: Kind | undefined = unit.kinds[0];
  if (kind !== undefined) return factsOf(kind).coherent;
  // Of no kind: their coherent unit is spelled out.
  return { "kg·m²": "kg·m²", "J/(kg·K)": "m²/(s²·K)", "W/(m·K)": "kg·m/(s^3·K)" }[unit.text] ?? null;
}

function nameIn(name: string, dialect: Dialect): string | null {
  const whole = dialect.names[name];
  if (whole !== undefined) return whole;
  for (const base of dialect.prefixed) {
    const prefix = dialect.prefixes[name.slice(0, -base.length)];
    if (name.endsWith(base) && prefix !== undefined) return prefix + (dialect.names[base] ?? base);
  }
  return null;
}

const SI_PREFIXES = ["y", "z", "a", "f", "p", "n", "m", "c", "d", "da", "h", "k", "M", "G", "T", "P", "E", "Z", "Y"];

/** The prefixes that all three programs spell alike, with their sign for micro. */
export function prefixes(micro: string, more: readonly string[] = []): Readonly<Record<string, string>> {
  return { ...Object.fromEntries([...SI_PREFIXES, ...more].map((prefix) => [prefix, prefix])), µ: micro };
}
