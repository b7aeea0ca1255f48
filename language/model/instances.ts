// The instances of a part, in index order.
import type { Declaration, Part, PartInstance } from "./declarations.ts";

/** All instances of the part: one without an index, or one for each number or name it is declared with. */
export function partInstances(part: Part): readonly PartInstance[] {
  const { instances } = part;
  if (instances.form === "single") return [{ part, index: null }];
  const known = MADE.get(instances);
  if (known !== undefined) return known;
  const made = makeInstances(part, instances);
  MADE.set(instances, made);
  return made;
}

/** A part may have thousands, and is asked for them at each of its steps. */
const MADE = new WeakMap<Part["instances"], readonly PartInstance[]>();

function makeInstances(part: Part, instances: Exclude<Part["instances"], { form: "single" }>): readonly PartInstance[] {
  if (instances.form === "named") return instances.names.map((index) => ({ part, index }));
  const count = Math.max(0, instances.last - instances.first + 1);
  return Array.from({ length: count }, (_, at) => ({ part, index: instances.first + at }));
}

/** Whether the part has an instance of that index. */
export function hasInstance(part: Part, index: number | string | null): boolean {
  const { instances } = part;
  if (instances.form === "single") return index === null;
  if (instances.form === "named") return typeof index === "string" && instances.names.includes(index);
  return typeof index === "number" && index >= instances.first && index <= instances.last;
}

/** What its index may be, as written: `1..8`, `left, right`; null for what has no instances or positions. */
export function instanceRange(thing: Declaration): string | null {
  if (thing.kind === "ring" || thing.kind === "holes") return `1..${thing.count}`;
  if (thing.kind !== "part" || thing.instances.form === "single") return null;
  const { instances } = thing;
  return instances.form === "named" ? instances.names.join(", ") : `${instances.first}..${instances.last}`;
}
