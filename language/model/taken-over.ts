// What a file takes over from its model before a change: the records of procedures that are the same, with their places moved. Knows no
// record in particular.
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import type { Container, Kept, Outer, Piece } from "./lower-file.ts";
import { createMoving, type Moving, type Place } from "./moving.ts";
import type { Wording } from "./own-words.ts";
import type { Procedure } from "./procedure.ts";
import { sameItems } from "./same-items.ts";

export interface Taken {
  readonly outside: Piece;
  readonly outer: Outer;
  readonly pieces: ReadonlyMap<Container, Piece>;
  readonly moves: Moves;
}

/** How the records of a file have moved since it was lowered before. */
export interface Moves {
  /** What each procedure was that stands elsewhere now; those that did not move are the same records. */
  readonly before: ReadonlyMap<Procedure, Procedure>;
  /** The same of its own words. */
  readonly wordingBefore: ReadonlyMap<Wording, Wording>;
  /** What was worked out from procedures that are the same, or moved. */
  readonly moved: Moving;
}

/** What the file is now, as far as its records hang on it. */
interface Now {
  readonly parsed: ParsedFile;
  readonly uses: readonly { readonly path: string | null }[];
  readonly isSound: boolean;
}

/** @returns null where what stands outside procedures has to be lowered again, and with it all that speaks of it */
export function takenOver(before: Kept, { isSound, parsed, uses }: Now): Taken | null {
  const { model, outer, outside } = before;
  const mayStay = (piece: Piece): boolean => piece.isSilent && (!piece.asksOfDamage || (before.isSound && isSound));
  if (!mayStay(outside) || model.uses.length !== uses.length) return null;
  if (model.uses.some(({ path }, at) => path !== uses[at]?.path)) return null;
  const same = sameItems(before, parsed);
  if (same === null) return null;
  const pieceOf = new Map<ast.File["items"][number], Piece>(before.pieces.map((piece) => [piece.node, piece]));
  const stretches: Stretch[] = [];
  const staying: { readonly node: ast.Procedure; readonly piece: Piece; readonly by: number }[] = [];
  for (const [node, { before: old, by }] of same) {
    if (ast.isProcedure(node)) {
      const piece = pieceOf.get(old.node);
      // One without a name is known by its place.
      if (piece === undefined || !mayStay(piece) || piece.procedure?.name === "") continue;
      staying.push({ node, piece, by });
    }
    stretches.push({ start: old.start, end: old.end, by });
  }
  const moved = createMoving(placeAmong(parsed.path, stretches));
  const earlier = new Map<Procedure, Procedure>();
  const wordingBefore = new Map<Wording, Wording>();
  const pieces = new Map<Container, Piece>();
  for (const { by, node, piece } of staying) {
    const now = by === 0 ? piece : movedPiece(moved, piece);
    if (now === null) continue;
    pieces.set(node, now);
    if (by === 0) continue;
    if (now.procedure !== null && piece.procedure !== null) earlier.set(now.procedure, piece.procedure);
    if (now.wording !== null && piece.wording !== null) wordingBefore.set(now.wording, piece.wording);
  }
  return { outside, outer, pieces, moves: { before: earlier, wordingBefore, moved } };
}

/** An item of the earlier text that is the same now, and by how much it moved. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly by: number;
}

/** @param stretches in the order of the text */
function placeAmong(path: string, stretches: readonly Stretch[]): Place {
  let last = stretches[0];
  return (span) => {
    if (span.path !== path) return span;
    // Places are asked for one procedure after the other.
    if (last === undefined || span.start < last.start || span.end > last.end)
      last = stretches.find(({ start, end }) => start <= span.start && end >= span.end) ?? last;
    if (last === undefined || span.start < last.start || span.end > last.end) return null;
    return last.by === 0 ? span : { start: span.start + last.by, end: span.end + last.by };
  };
}

function movedPiece(moved: Moving, piece: Piece): Piece | null {
  const { procedure, records, terms, used, wording } = piece;
  const now = moved({
    procedure,
    records: records.map(([, record]) => record),
    terms,
    used: [...used],
    // What holds for the words is no list.
    own: wording === null ? null : { terms: wording.terms, texts: wording.texts },
  });
  if (now === null) return null;
  return {
    ...piece,
    procedure: now.procedure,
    records: records.map(([node], at) => [node, now.records[at] as (typeof now.records)[number]] as const),
    terms: now.terms,
    used: new Set(now.used),
    wording: wording === null || now.own === null ? null : { ...wording, ...now.own, procedure: now.procedure },
  };
}
