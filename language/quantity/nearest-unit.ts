// Which known units a mistyped one is close to. Knows names only.
import { factsOf, type Kind } from "./kind.ts";
import { atomNames } from "./unit-table.ts";

/** Up to three known units close to `text`, those usual for the wanted kind first; often empty. */
export function nearestUnits(text: string, wanted: Kind | null): readonly string[] {
  const typed = letters(text);
  if (typed === "" || typed.length > LONGEST) return [];
  const usual = wanted === null ? [] : factsOf(wanted).usual;
  const limit = typed.length === 1 ? 0.5 : typed.length === 2 ? 1 : 2;
  const near = [...new Set([...usual, ...COMMON, ...atomNames()])]
    .map((name) => ({ name, far: distance(typed, letters(name)) - (usual.includes(name) ? USUAL_BONUS : 0) }))
    .filter((candidate) => candidate.far <= limit)
    .sort((a, b) => a.far - b.far || likeness(typed, b.name) - likeness(typed, a.name));
  // A unit that nobody in a shop writes (`Gg`) is offered only where no other is close.
  const common = near.filter((candidate) => COMMON.has(candidate.name) || usual.includes(candidate.name));
  return (common.length > 0 ? common : near).slice(0, 3).map((candidate) => candidate.name);
}

/** Of two that are as close, the one that begins alike, then the one as long, is the likelier. */
function likeness(typed: string, name: string): number {
  const own = letters(name);
  return (own[0] === typed[0] ? 2 : 0) + (own.length === typed.length ? 1 : 0);
}

const LONGEST = 20;
const USUAL_BONUS = 0.4;

/** Without the signs between the names: `NM` is close to `N·m`. */
function letters(text: string): string {
  return text.replace(/[\s·*./()^-]/g, "");
}

export const COMPOUNDS: readonly string[] = [
  "N·m",
  "kN·m",
  "lbf·ft",
  "lbf·in",
  "ozf·in",
  "kgf·m",
  "kgf·cm",
  "g·mm",
  "kg·mm",
  "oz·in",
  "mm²",
  "cm²",
  "m²",
  "in²",
  "mm³",
  "cm³",
  "m³",
  "in³",
  "m/s",
  "mm/s",
  "km/h",
  "ft/s",
  "ft/min",
  "m/s²",
  "L/min",
  "m³/h",
  "galUS/min",
  "kg/m³",
  "lb/ft³",
  "g/cm³",
  "N/mm",
  "N/m",
  "lbf/in",
  "N/mm²",
  "Pa·s",
  "mPa·s",
  "mm²/s",
  "µm/(m·K)",
  "µin/(in·°F)",
  "K/s",
  "K/min",
  "°C/min",
  "kW·h",
  "V AC",
  "V DC",
  "turn/s",
  "rad/s",
];
export const COMMON: ReadonlySet<string> = new Set([
  "m",
  "mm",
  "cm",
  "µm",
  "km",
  "in",
  "ft",
  "L",
  "mL",
  "g",
  "kg",
  "mg",
  "t",
  "lb",
  "oz",
  "s",
  "ms",
  "min",
  "h",
  "d",
  "K",
  "°C",
  "°F",
  "°",
  "turn",
  "N",
  "kN",
  "lbf",
  "J",
  "kJ",
  "W",
  "kW",
  "hp",
  "Pa",
  "kPa",
  "MPa",
  "bar",
  "mbar",
  "psi",
  "mmHg",
  "inHg",
  "V",
  "kV",
  "mV",
  "A",
  "mA",
  "Ω",
  "kΩ",
  "MΩ",
  "µF",
  "Hz",
  "kHz",
  "rpm",
  "cP",
  "cSt",
  "%",
  "ppm",
  "o'clock",
  "dB(A)",
  "mil",
  "thou",
  ...COMPOUNDS,
]);

/** Edit distance with neighbours swapped as one edit, and a change of case or a letter typed twice as half of one. */
function distance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 9;
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      row.push(cell(a, b, i, j, rows, row));
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] ?? 9;
}

function cell(a: string, b: string, i: number, j: number, rows: readonly number[][], row: readonly number[]): number {
  const [x, y] = [a[i - 1] ?? "", b[j - 1] ?? ""];
  const change = x === y ? 0 : x.toLowerCase() === y.toLowerCase() ? 0.5 : 1;
  const drop = x === a[i - 2] ? 0.5 : 1;
  let best = Math.min((rows[i - 1]?.[j] ?? 9) + drop, (row[j - 1] ?? 9) + 1, (rows[i - 1]?.[j - 1] ?? 9) + change);
  if (i > 1 && j > 1 && x === b[j - 2] && y === a[i - 2]) best = Math.min(best, (rows[i - 2]?.[j - 2] ?? 9) + 1);
  return best;
}
