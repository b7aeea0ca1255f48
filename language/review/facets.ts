// What there is to say of a record, property by property. A table names every property of a record, so that a new one does
// not compile before it is decided what a change of it means. Knows no single record.
import type { Citation, Declaration, Value } from "#model/declarations.ts";
import { type Role, showBoth } from "#quantity/display.ts";
import type { Span } from "#syntax/span.ts";
import type { Group } from "./change.ts";
import { citationText, type Reading, squeezed, valueText } from "./reading.ts";
import type { Saying } from "./record.ts";
import type { Label } from "./words.ts";

/** For each property what it says; null where it says nothing: a place, or what is a node of its own. */
export type Facets<R> = { readonly [Key in keyof R]-?: FacetIn<R[Key], R> | null };
/** Of a property that says where it stands in another one beside it. */
type FacetIn<V, R> = (value: Exclude<V, undefined>, at: Where, record: R) => readonly Saying[];
export type Facet<V> = (value: Exclude<V, undefined>, at: Where) => readonly Saying[];

export interface Where {
  readonly reading: Reading;
  readonly key: string;
  /** Where it stands, if it has no place of its own. */
  readonly span: Span;
}

export function sayingsOf<R extends object>(facets: Facets<R>, record: R, reading: Reading, span: Span): Saying[] {
  const said: Saying[] = [];
  for (const key of Object.keys(record) as (keyof R & string)[]) {
    // A union's table holds the properties of all its members.
    const facet = facets[key] as FacetIn<unknown, R> | null | undefined;
    const value: unknown = record[key];
    if (facet != null && value !== undefined) said.push(...facet(value, { reading, key, span }, record));
  }
  return distinct(said);
}

/** Twice the same key would be taken as one. */
function distinct(said: readonly Saying[]): Saying[] {
  const seen = new Map<string, number>();
  return said.map((one) => {
    const count = (seen.get(one.key) ?? 0) + 1;
    seen.set(one.key, count);
    return count === 1 ? one : { ...one, key: `${one.key} #${count}` };
  });
}

interface Said {
  readonly text: string;
  readonly shown?: string | (() => string);
  /** Beside the name of the property, where it may say several things. */
  readonly key?: string;
  readonly values?: readonly Value[];
  readonly role?: Role;
  readonly span?: Span;
}

export function saying(group: Group, label: Label, at: Where, said: Said): Saying {
  const { text, shown = text, values = [], role = "nominal", span = at.span } = said;
  const key = said.key === undefined ? at.key : `${at.key} ${said.key}`;
  const told = typeof shown === "string" ? () => shown : shown;
  return { key, group, label, text, shown: told, values, units: unitsOf(values), role, span };
}

function unitsOf(all: readonly Value[]): string {
  return all
    .filter(({ named = [], share }) => named.length === 0 && share === undefined)
    .flatMap(({ quantity: { low, nominal, high } }) => [low, nominal, high].map((end) => end?.unit.text ?? ""))
    .join(" ");
}

export function value(label: Label, role: Role, group: Group = "values"): Facet<Value | null> {
  const some = values(label, role, group);
  return (one, at) => (one === null ? [] : some([one], at));
}

/** Several values that are one saying, such as the stages of a torque. */
export function values(label: Label, role: Role, group: Group = "values"): Facet<readonly Value[]> {
  return (all, at) => {
    const [first] = all;
    if (first === undefined) return [];
    const { reading } = at;
    const shown = (): string => all.map((one) => shownValue(one, role)).join(", ");
    const text = all.map((one) => valueText(one, reading)).join(", ");
    const own = saying(group, label, at, { text, shown, values: all, role, span: first.span });
    return [own, ...all.flatMap((one) => (one.per === null ? [] : cited(one.per, { ...at, key: `${at.key} per` })))];
  };
}

export function shownValue({ quantity, workedOut }: Value, role: Role): string {
  return workedOut === undefined ? showBoth(quantity, role) : squeezed(workedOut.text);
}

export const cited: Facet<Citation | null> = (citation, at) => {
  if (citation === null) return [];
  const { source, section, span } = citation;
  const shown = `${source?.title ?? "?"}${section === "" ? "" : `, ${section}`}`;
  return [saying("items", "source", at, { text: citationText(citation, at.reading), shown, span })];
};

/** Each by itself, whatever their order. */
export function each<V>(one: Facet<V>): Facet<readonly V[]> {
  return (all, at) =>
    all.flatMap((each) =>
      one(each as Exclude<V, undefined>, at).map((said) => ({ ...said, key: `${said.key} ${said.text}` })),
    );
}

export function flag(group: Group, label: Label): Facet<boolean> {
  return (isSo, at) => (isSo ? [saying(group, label, at, { text: "yes", shown: "" })] : []);
}

export function word(group: Group, label: Label): Facet<string | number | null> {
  return (text, at) =>
    text === null ? [] : [saying(group, label, at, { text: String(text), shown: () => squeezed(String(text)) })];
}

export function named(group: Group, label: Label): Facet<{ readonly name: string; readonly span?: Span }> {
  return ({ name, span = null }, at) => [saying(group, label, at, { text: name, ...(span === null ? {} : { span }) })];
}

export function thing(group: Group, label: Label): Facet<Declaration | null> {
  return (one, at) =>
    one === null ? [] : [saying(group, label, at, { text: at.reading.nameOf(one), shown: one.title })];
}
