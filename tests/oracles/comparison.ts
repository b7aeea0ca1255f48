// What the brute-force run says of a procedure, put beside what the checker says: code, line and option assignments. Both sides are
// brought into the same words here, so that the suite and the break script compare alike.
import type { PaperFact } from "../analysis/followed.ts";
import { onPaper } from "../analysis/run-on-paper.ts";
import { TOO_LATE_PERHAPS } from "./paper/clocks.ts";
import type { SimProcedure } from "./paper/shop.ts";
import { simText } from "./paper/text.ts";
import { assignments, simulate } from "./paper-simulator.ts";

/** All that the brute-force run looks for. */
export const CODES = [
  "not-installed",
  "already-installed",
  "occupied",
  "wrong-place",
  "missing-support",
  "enclosed",
  "retained",
  "locked",
  "not-tightened",
  "left-seated",
  "reused",
  "unsupported",
  "uncured",
  "unmet-need",
  "declared",
  "direction",
  "position",
  "cold-fit",
  "energised",
  "not-proved",
  "restored-open",
  "left-behind",
  "unfinished",
  "not-final",
  "wasted",
  "too-late",
]
  .map((name) => `order.${name}`)
  .concat(TOO_LATE_PERHAPS)
  .concat(["unreachable", "impossible-condition", "endless", "bad-jump", "empty"].map((name) => `flow.${name}`));

/** A text, and what must be found in it: one row for each code and line, with all assignments. Plain data. */
export interface Wanted {
  readonly text: string;
  readonly options: SimProcedure["options"];
  /** The line where the steps begin. */
  readonly items: number;
  readonly rows: readonly string[];
}

export function wantedIn(made: SimProcedure): Wanted {
  const { text, lines } = simText(made);
  const findings = simulate(made)
    .filter(({ at }) => lines.has(at))
    .map(({ code, at, so }) => [`${code} line ${lines.get(at)}`, keyOf(so)] as const);
  return { text, options: made.options, items: lines.get("items") ?? 0, rows: rowsOf(findings) };
}

/** What only one of the two says. */
export function differences(wanted: Wanted): readonly string[] {
  return differencesIn(wanted, onPaper(wanted.text).facts);
}

/** The same of facts that have been found. */
export function differencesIn({ options, items, rows }: Wanted, facts: readonly PaperFact[]): readonly string[] {
  const found = rowsOf(
    facts
      .map((one) => ({ ...one, code: codeOf(one) }))
      .filter(({ code }) => CODES.includes(code))
      // An aid that is in from the start is told at `begin with`, which the simulator has no place for.
      .filter(({ code, line }) => code !== "order.left-behind" || line >= items)
      .flatMap(({ code, line, fact }) =>
        assignmentsOf(options, fact.options).map((so) => [`${code} line ${line}`, so] as const),
      ),
  );
  return [
    ...rows.filter((row) => !found.includes(row)).map((row) => `missing: ${row}`),
    ...found.filter((row) => !rows.includes(row)).map((row) => `too much: ${row}`),
  ];
}

function codeOf({ code, fact }: PaperFact): string {
  return fact.kind === "too late" && !fact.certain ? TOO_LATE_PERHAPS : code;
}

/** Each assignment of all options that the found ones allow. */
function assignmentsOf(
  options: SimProcedure["options"],
  found: readonly Readonly<Record<string, string>>[] | undefined,
): string[] {
  return assignments(options)
    .filter(
      (so) =>
        found === undefined || found.some((cube) => Object.entries(cube).every(([name, value]) => so[name] === value)),
    )
    .map(keyOf);
}

function keyOf(so: Readonly<Record<string, string>>): string {
  return JSON.stringify(Object.entries(so).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** One line for each code and place, with all assignments. */
function rowsOf(list: Iterable<readonly [string, string]>): string[] {
  const found = new Map<string, Set<string>>();
  for (const [key, so] of list) found.set(key, (found.get(key) ?? new Set()).add(so));
  return [...found].map(([key, so]) => `${key}: ${[...so].sort().join(" ")}`).sort();
}
