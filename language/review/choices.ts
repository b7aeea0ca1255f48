// For which choices of options a finding holds, on both sides: what was renamed counts as the same. Knows no words.
import type { Assignment } from "#analysis/fact.ts";
import type { Option } from "#model/declarations.ts";
import type { FileModel } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import type { ReviewSide } from "./side.ts";

/** What became of the choices that a finding holds for. */
export interface Choices {
  readonly same: (old: Finding, now: Finding) => boolean;
  /** Whether it now holds for a choice that it did not hold for. */
  readonly more: (old: Finding, now: Finding) => boolean;
}

/** @param oldName the name that something of the new side had */
export function choicesOf(old: ReviewSide, now: ReviewSide, oldName: (name: string) => string): Choices {
  const before = optionsOf(old);
  const options = new Map([...optionsOf(now).values()].map((option) => [option.name, option]));
  const values = new Map<string, Set<string>>([...before].map(([name, { choices }]) => [name, namesOf(choices)]));
  const asBefore = new Map<string, ReadonlyMap<string, string>>();
  for (const [name, option] of options) {
    const known = before.get(oldName(name));
    const renamed = renamedChoices(known?.choices ?? [], option.choices);
    asBefore.set(name, renamed);
    const all = values.get(oldName(name)) ?? new Set();
    values.set(oldName(name), all);
    for (const { name: choice } of option.choices) all.add(renamed.get(choice) ?? choice);
  }
  const translated = (assignment: Assignment): Assignment =>
    Object.fromEntries(
      Object.entries(assignment).map(([name, choice]) => [oldName(name), asBefore.get(name)?.get(choice) ?? choice]),
    );
  const sets = (one: Finding, other: Finding) =>
    [one.options ?? [{}], (other.options ?? [{}]).map(translated)] as const;
  return {
    // Of what holds in more ways than are listed nobody could say what is new.
    same: (one, other) => {
      if (isCut(one) || isCut(other)) return true;
      const [a, b] = sets(one, other);
      return isWithin(a, b, values) && isWithin(b, a, values);
    },
    more: (one, other) => {
      const [a, b] = sets(one, other);
      return !isCut(one) && !isWithin(b, a, values);
    },
  };
}

function isCut({ moreOptions }: Finding): boolean {
  return moreOptions !== undefined;
}

/** Whether all that is in the one set of assignments is in the other. Both are disjoint, so that all of them is the one empty one. */
function isWithin(
  inner: readonly Assignment[],
  outer: readonly Assignment[],
  values: ReadonlyMap<string, ReadonlySet<string>>,
): boolean {
  const [first] = inner;
  if (first === undefined) return true;
  if (outer.length === 0) return false;
  const name = [first, ...inner, ...outer].flatMap((one) => Object.keys(one))[0];
  if (name === undefined) return true;
  const all = new Set([...(values.get(name) ?? []), ...[...inner, ...outer].flatMap((one) => one[name] ?? [])]);
  return [...all].every((value) => isWithin(given(inner, name, value), given(outer, name, value), values));
}

/** What is left of the assignments where that option is chosen so. */
function given(assignments: readonly Assignment[], name: string, value: string): readonly Assignment[] {
  return assignments.flatMap((one) => {
    const { [name]: own, ...rest } = one;
    return own === undefined || own === value ? [rest] : [];
  });
}

function optionsOf({ files, used }: ReviewSide): ReadonlyMap<string, Option> {
  const declared = [...files, ...used].flatMap(({ declarations }: FileModel) => declarations);
  return new Map(declared.flatMap((one) => (one.kind === "option" ? [[one.name, one] as const] : [])));
}

function namesOf(choices: Option["choices"]): Set<string> {
  return new Set(choices.map(({ name }) => name));
}

/** New names of choices to those they had: where as many came as went, they stand in the same order. */
function renamedChoices(old: Option["choices"], now: Option["choices"]): ReadonlyMap<string, string> {
  const [before, after] = [namesOf(old), namesOf(now)];
  const went = [...before].filter((name) => !after.has(name));
  const came = [...after].filter((name) => !before.has(name));
  return new Map(went.length === came.length ? came.map((name, at) => [name, went[at] ?? name]) : []);
}
