// The meaning of a change: two sides in, changes out, most grave first. Knows no editor, no history, no file and no format.
import type { Finding } from "#rules/finding.ts";
import { type Change, GROUPS } from "./change.ts";
import { choicesOf } from "./choices.ts";
import type { Entry } from "./describe.ts";
import type { Plain } from "./edit.ts";
import { type Sides, signedAgain, withEffects } from "./effects.ts";
import { type PlaceOf, type StandsIn, turnover, withFindings } from "./findings.ts";
import { layoutChanges } from "./layout.ts";
import { pairedProcedures, type Told, toldOf } from "./procedures.ts";
import type { Reading } from "./reading.ts";
import type { Node } from "./record.ts";
import type { ReviewSide } from "./side.ts";
import { compareThings, reachersOf, thingEntries } from "./things.ts";
import { en, type Words } from "./words.ts";

export interface Reviewed {
  readonly changes: readonly Change[];
  /**
   * The records that were compared, made when they are asked for: the edits of all changes, carried out on the old ones, give the
   * new ones.
   */
  readonly plain: { readonly old: readonly Plain[]; readonly new: readonly Plain[] };
}

/**
 * Compares two sides. Total: what could not be read on a side is told as such, and the rest as far as it goes. Costs as much as
 * reading both models a few times over; see {@link matchTrees} and `moved.ts`.
 */
export function review(old: ReviewSide, now: ReviewSide, words: Words = en): Reviewed {
  const reading = { old: readingOf(old), new: readingOf(now) };
  const things = compareThings(old, now, reading);
  const procedures = pairedProcedures(old, now);
  const read = { ...reading, new: { ...reading.new, nameOf: things.nameOf } };
  const told = procedures.map((pair, at) => toldOf(pair, read, `p${at}`, words));
  const reaching = reachersOf(told, old, now);
  const entries = [...told.flatMap((one) => one.entries), ...thingEntries(things, reaching, words)];
  const { standsIn, placeOf } = placesOf(told);
  const found = turnover(old.findings, now.findings, placeOf, choicesOf(old, now, things.oldName));
  const withEverything = withFindings(
    effectsOf(entries, told, { old, new: now, oldName: things.oldName }, words),
    found,
    standsIn,
    words,
  );
  const changes = withEverything.map((entry): Change => {
    const signAgain = signedAgain(entry);
    return signAgain.length === 0 ? entry.change : { ...entry.change, signAgain };
  });
  const files = told.flatMap(({ pair }) =>
    pair.old === null || pair.new === null ? [] : [[pair.old.path, pair.new.path] as const],
  );
  return {
    changes: sorted([...changes, ...layoutChanges(changes, old, now, files, words)]),
    get plain() {
      const all = [things.compared, ...told.flatMap(({ compared }) => compared ?? [])].map(({ plain }) => plain);
      return { old: all.map((one) => one.old), new: all.map((one) => one.new) };
    },
  };
}

function readingOf({ textAt, say }: ReviewSide): Reading {
  const same = (name: string): string => name;
  return { textAt, say, nameOf: ({ name }) => name, stepName: same, writtenOut: new Set(), pass: [], loops: [] };
}

function sorted(changes: readonly Change[]): readonly Change[] {
  const spanOf = (change: Change) => (change.new ?? change.old)?.span;
  const rank = ({ group }: Change): number => GROUPS.indexOf(group);
  return changes
    .map((change, at) => ({ change, at }))
    .sort((a, b) => {
      const [x, y] = [spanOf(a.change), spanOf(b.change)];
      const paths = x === undefined || y === undefined || x.path === y.path ? 0 : x.path < y.path ? -1 : 1;
      return rank(a.change) - rank(b.change) || paths || (x?.start ?? 0) - (y?.start ?? 0) || a.at - b.at;
    })
    .map(({ change }) => change);
}

/* ---- where a finding stands ---- */

function placesOf(told: readonly Told[]): { readonly standsIn: StandsIn; readonly placeOf: PlaceOf } {
  const keyed = (side: "old" | "new") =>
    new Map(told.flatMap((one) => (one.pair[side] === null ? [] : [[keyOf(one.pair[side]), one] as const])));
  const byKey = { old: keyed("old"), new: keyed("new") };
  const find = ({ span, procedure }: Finding, side: "old" | "new"): Told | undefined =>
    procedure === undefined ? undefined : byKey[side].get(keyOf({ path: span.path, name: procedure }));
  const standsIn: StandsIn = (finding, side) => {
    const one = find(finding, side);
    const step = finding.step === undefined ? undefined : one?.steps[side].get(finding.step.number);
    return { procedure: one?.name ?? finding.procedure ?? "", step: step ?? null };
  };
  const placeOf: PlaceOf = (finding, side) => {
    const { procedure, step } = standsIn(finding, side);
    if (step === null) return { procedure, step };
    const partner = side === "new" ? step : find(finding, side)?.compared?.pairs.toNew.get(step);
    return { procedure, step: partner === undefined ? `old ${step.number}` : `new ${partner.number}` };
  };
  return { standsIn, placeOf };
}

function keyOf({ path, name }: { readonly path: string; readonly name: string }): string {
  return `${path} ${name}`;
}

function effectsOf(
  entries: readonly Entry[],
  told: readonly Told[],
  { old, new: now, oldName }: { readonly old: ReviewSide; readonly new: ReviewSide } & Pick<Sides, "oldName">,
  words: Words,
): readonly Entry[] {
  const byProcedure = new Map<string, Entry[]>();
  for (const entry of entries) {
    const own = byProcedure.get(entry.change.procedure);
    if (own === undefined) byProcedure.set(entry.change.procedure, [entry]);
    else own.push(entry);
  }
  const done = told.flatMap(({ pair, name, compared, steps }): readonly Entry[] => {
    const own = byProcedure.get(name) ?? [];
    byProcedure.delete(name);
    if (pair.old === null || pair.new === null || compared === null) return own;
    const sides: Sides = {
      oldName,
      margins: { old: old.margins(pair.old), new: now.margins(pair.new) },
      kit: { old: old.kit(pair.old), new: now.kit(pair.new) },
      step: (number: string, side: "old" | "new"): Node | null => {
        const node = steps[side].get(number);
        return (side === "new" || node === undefined ? node : compared.pairs.toNew.get(node)) ?? null;
      },
    };
    return withEffects(own, sides, name, words);
  });
  return [...done, ...[...byProcedure.values()].flat()];
}
