// Units behind a number: those of the kind wanted, those that the file uses first.
import { CompletionItemKind } from "vscode-languageserver";
import { factsOf, type Kind } from "#quantity/kind.ts";
import { COMMON, COMPOUNDS } from "#quantity/nearest-unit.ts";
import { readUnit, type Unit } from "#quantity/unit.ts";
import { atomNames } from "#quantity/unit-table.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import type { Place } from "./place.ts";

/** @param kinds what the place wants; null where any kind may stand */
export function unitCandidates(place: Place, kinds: readonly Kind[] | null): readonly Candidate[] {
  const used = unitsUsed(place);
  const known = new Map<string, { readonly unit: Unit; readonly rank: number }>();
  const add = (text: string, rank: number): void => {
    const reading = readUnit(text, kinds?.[0] ?? null);
    if (!reading.ok || known.has(reading.unit.text)) return;
    if (kinds !== null && !kinds.some((kind) => reading.unit.kinds.includes(kind))) return;
    known.set(reading.unit.text, { unit: reading.unit, rank });
  };
  const habit = [...used].sort(([, a], [, b]) => b - a).map(([text]) => text);
  const usual = kinds === null ? USUAL : kinds.flatMap(usualFor);
  for (const [at, text] of habit.entries()) add(text, at);
  for (const [at, text] of usual.entries()) add(text, 100 + at);
  for (const [at, text] of [...COMMON, ...COMPOUNDS].entries()) add(text, 200 + at);
  // A share of another value is of no kind of its own.
  const percent = readUnit("%", null);
  if (percent.ok && !known.has("%")) known.set("%", { unit: percent.unit, rank: 199 });
  // The many others only where they have been begun.
  if (place.prefix !== "") {
    const typed = place.prefix.toLowerCase();
    for (const name of atomNames()) if (name.toLowerCase().startsWith(typed)) add(name, 300);
  }
  const behind = place.touches ? " " : "";
  return [...known].map(([text, { unit, rank }]) => ({
    label: text,
    kind: CompletionItemKind.Unit,
    insert: (/^[°′″]/.test(text) && unit.kinds[0] === "angle" ? "" : behind) + text,
    detail: kinds?.find((kind) => unit.kinds.includes(kind)) ?? unit.kinds[0] ?? "",
    group: GROUP.best,
    rank,
  }));
}

function usualFor(kind: Kind): readonly string[] {
  const { usual, metric, customary } = factsOf(kind);
  return [...usual, ...metric.map(({ unit }) => unit), ...customary.map(({ unit }) => unit)];
}

const USUAL = [
  "mm",
  "N·m",
  "°C",
  "min",
  "s",
  "kg",
  "bar",
  "%",
  "°",
  "in",
  "lbf·ft",
  "°F",
  "psi",
  "lb",
  "µm",
  "V AC",
  "V DC",
  "rpm",
];

function unitsUsed({ all }: Place): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { type, image } of all) if (type === "UNIT") used.set(image, (used.get(image) ?? 0) + 1);
  return used;
}
