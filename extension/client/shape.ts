// What a message may look like, as small functions that check it and give it its type. Both ends of a webview use them: nothing
// that comes from the other side is believed. Knows no message.

/** Whether a value is what it should be. */
export type Shape<Value> = (value: unknown) => value is Value;

/** What a shape lets through. */
export type Of<Checked> = Checked extends Shape<infer Value> ? Value : never;

export const text: Shape<string> = (value) => typeof value === "string";
export const flag: Shape<boolean> = (value) => typeof value === "boolean";
export const number: Shape<number> = (value): value is number => typeof value === "number" && Number.isFinite(value);

export function oneOf<const Words extends readonly string[]>(...words: Words): Shape<Words[number]> {
  return (value): value is Words[number] => typeof value === "string" && words.includes(value);
}

export function list<Item>(item: Shape<Item>): Shape<readonly Item[]> {
  return (value): value is readonly Item[] => Array.isArray(value) && value.every(item);
}

/** Any names, each with a value of one shape. */
export function record<Value>(each: Shape<Value>): Shape<Readonly<Record<string, Value>>> {
  return (value): value is Readonly<Record<string, Value>> => isObject(value) && Object.values(value).every(each);
}

type Fields = Readonly<Record<string, Shape<unknown>>>;
type Fielded<Needed extends Fields, Optional extends Fields> = { readonly [Name in keyof Needed]: Of<Needed[Name]> } & {
  readonly [Name in keyof Optional]?: Of<Optional[Name]>;
};

/** These fields, and some that may be left out; others are left alone. */
export function object<Needed extends Fields, Optional extends Fields = Record<never, never>>(
  needed: Needed,
  optional?: Optional,
): Shape<Fielded<Needed, Optional>> {
  const must = Object.entries(needed);
  const may = Object.entries(optional ?? {});
  return (value): value is Fielded<Needed, Optional> =>
    isObject(value) &&
    must.every(([name, shape]) => Object.hasOwn(value, name) && shape(value[name])) &&
    may.every(([name, shape]) => !Object.hasOwn(value, name) || shape(value[name]));
}

export function either<Shapes extends readonly Shape<unknown>[]>(...shapes: Shapes): Shape<Of<Shapes[number]>> {
  return (value): value is Of<Shapes[number]> => shapes.some((shape) => shape(value));
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
