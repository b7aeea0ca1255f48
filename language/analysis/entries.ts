// Where the passes of a step begin and end in the flow graph, and which of them a name means. Knows no edges.
import type { Pass } from "#model/problem.ts";
import type { Span } from "#syntax/span.ts";
import type { Turn } from "./graph.ts";

/** Where one pass of a step, in one of its turns, begins and ends. */
export interface Entry {
  readonly node: number;
  readonly leave: number;
  readonly pass: Pass;
  readonly turns: readonly Turn[];
}

export function spanKey(span: Span): string {
  return `${span.path}:${span.start}`;
}

/** Of one step, all turns of the same pass. */
export function samePass(places: readonly Entry[], of: Entry | null): readonly Entry[] {
  return of === null ? [] : (indexed(places).byPass.get(passText(of.pass)) ?? []);
}

export function passText(pass: Pass): string {
  return pass.map(({ variable, value }) => `${variable}=${value}`).join(",");
}

/** Of the passes of one step, the one that shares most of `pass`, the last of those. */
export function nearest(places: readonly Entry[] | undefined, pass: Pass): Entry | null {
  if (places === undefined) return null;
  const { lastWith } = indexed(places);
  for (let length = pass.length; length >= 0; length--) {
    const found = lastWith.get(passText(pass.slice(0, length)));
    if (found !== undefined) return found;
  }
  return null;
}

interface PassIndex {
  readonly byPass: ReadonlyMap<string, readonly Entry[]>;
  /** The last whose pass begins so. */
  readonly lastWith: ReadonlyMap<string, Entry>;
}

const INDICES = new WeakMap<readonly Entry[], PassIndex>();

/** Made once for the places of a step, when the graph is complete: a step of thousands of passes is looked up as often. */
function indexed(places: readonly Entry[]): PassIndex {
  const known = INDICES.get(places);
  if (known !== undefined) return known;
  const byPass = new Map<string, Entry[]>();
  const lastWith = new Map<string, Entry>();
  for (const place of places) {
    const text = passText(place.pass);
    const list = byPass.get(text);
    if (list === undefined) byPass.set(text, [place]);
    else list.push(place);
    for (let length = 0; length <= place.pass.length; length++)
      lastWith.set(passText(place.pass.slice(0, length)), place);
  }
  const made = { byPass, lastWith };
  INDICES.set(places, made);
  return made;
}
