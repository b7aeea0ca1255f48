// Where two texts differ. Knows nothing of what they say.

/** A stretch of the text before that was changed; empty where something was only put in. */
export interface Edit {
  readonly start: number;
  readonly end: number;
}

/** The shortest stretch outside which a text is the same as before: all in front of it, and all behind it. */
export function editBetween(before: string, now: string): Edit {
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === now.charCodeAt(start)) start++;
  let same = 0;
  while (same < most - start && before.charCodeAt(before.length - 1 - same) === now.charCodeAt(now.length - 1 - same))
    same++;
  return { start, end: before.length - same };
}
