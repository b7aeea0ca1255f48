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
  // Long texts are the same for most of their length: pieces are compared faster than single signs.
  while (start + PIECE <= most && before.slice(start, start + PIECE) === now.slice(start, start + PIECE))
    start += PIECE;
  while (start < most && before.charCodeAt(start) === now.charCodeAt(start)) start++;
  const left = most - start;
  let same = 0;
  while (same + PIECE <= left && pieceAt(before, same) === pieceAt(now, same)) same += PIECE;
  while (same < left && before.charCodeAt(before.length - 1 - same) === now.charCodeAt(now.length - 1 - same)) same++;
  return { start, end: before.length - same };
}

const PIECE = 1_024;

/** The piece behind which so many signs follow. */
function pieceAt(text: string, behind: number): string {
  return text.slice(text.length - behind - PIECE, text.length - behind);
}
