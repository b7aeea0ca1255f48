// A place in a text. Offsets count UTF-16 code units from 0, as the parser does; lines are computed when shown.

/** From `start` up to, not including, `end` in the file at `path` (relative to the workspace root, with `/`). */
export interface Span {
  readonly path: string;
  readonly start: number;
  readonly end: number;
}

/** Whether all of the one lies in the other. */
export function isWithin(inner: Span, outer: Span): boolean {
  return inner.path === outer.path && outer.start <= inner.start && inner.end <= outer.end;
}
