// What a file takes over from its model before a change: the records of procedures that are the same, with their places moved. Knows no
// record in particular.
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import { type KeptTask, type MovedTasks, namesIn } from "./kept-tasks.ts";
import type { Container, Kept, Outer, Piece } from "./lower-file.ts";
import { createMoving, type Moving, type Place } from "./moving.ts";
import type { Wording } from "./own-words.ts";
import type { Procedure, Task } from "./procedure.ts";
import { sameItems } from "./same-items.ts";

export interface Taken {
  readonly outside: Piece;
  readonly outer: Outer;
  readonly pieces: ReadonlyMap<Container, Piece>;
  /** Of procedures that are others now. */
  readonly tasks: ReadonlyMap<ast.Procedure, MovedTasks>;
  readonly moves: Moves;
}

/** How the records of a file have moved since it was lowered before. */
export interface Moves {
  /** What each procedure was that stands elsewhere now; those that did not move are the same records. */
  readonly before: ReadonlyMap<Procedure, Procedure>;
  /** The same of its own words. */
  readonly wordingBefore: ReadonlyMap<Wording, Wording>;
  /** The same of the tasks of procedures that are others now. */
  readonly taskBefore: ReadonlyMap<Task, Task>;
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
  const mayStayAlone = ({ asksOfDamage }: Pick<Piece, "asksOfDamage">): boolean =>
    !asksOfDamage || (before.isSound && isSound);
  const mayStay = (piece: Piece): boolean => piece.isSilent && mayStayAlone(piece);
  if (!mayStay(outside) || model.uses.length !== uses.length) return null;
  if (model.uses.some(({ path }, at) => path !== uses[at]?.path)) return null;
  const same = sameItems(before, parsed);
  if (same === null) return null;
  const pieceOf = new Map<ast.File["items"][number], Piece>(before.pieces.map((piece) => [piece.node, piece]));
  const stretches: Stretch[] = [];
  const staying: { readonly node: ast.Procedure; readonly piece: Piece; readonly by: number }[] = [];
  const tasks = new Map<ast.Procedure, readonly KeptTask[]>();
  for (const node of parsed.file.items) {
    const found = same.get(node);
    if (ast.isProcedure(node)) {
      const piece = found === undefined ? namesake(before, node) : pieceOf.get(found.before.node);
      // One without a name is known by its place.
      const stays = found !== undefined && piece !== undefined && mayStay(piece) && piece.procedure?.name !== "";
      if (stays) staying.push({ node, piece, by: found.by });
      else {
        const kept = piece === undefined ? [] : tasksStill(piece, node).filter(mayStayAlone);
        tasks.set(node, kept);
        stretches.push(...kept.map(stretchOf));
        continue;
      }
    }
    if (found !== undefined) stretches.push({ start: found.before.start, end: found.before.end, by: found.by });
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
  const taskBefore = new Map<Task, Task>();
  const movedTasks = new Map<ast.Procedure, MovedTasks>();
  for (const [node, kept] of tasks) {
    const byNode = new Map(kept.map((task) => [task.node, task]));
    movedTasks.set(node, { of: (task) => byNode.get(task), moved, before: taskBefore });
  }
  return { outside, outer, pieces, tasks: movedTasks, moves: { before: earlier, wordingBefore, taskBefore, moved } };
}

/** What it was before, of that name. */
function namesake({ pieces }: Kept, { name }: ast.Procedure): Piece | undefined {
  return pieces.find(({ procedure }) => procedure !== null && procedure.name !== "" && procedure.name === name);
}

/** The tasks that were read as they are, in the order of the text, if all names of the procedure are what they were. */
function tasksStill({ tasks }: Piece, procedure: ast.Procedure): readonly KeptTask[] {
  if (tasks === null) return [];
  const names = namesIn(procedure);
  if (names.length !== tasks.names.length || names.some((name, at) => name !== tasks.names[at])) return [];
  return procedure.items.flatMap((item) => (ast.isTask(item) ? (tasks.byNode.get(item) ?? []) : []));
}

function stretchOf({ end, node, start }: KeptTask): Stretch {
  return { start, end, by: (node.$cstNode?.offset ?? start) - start };
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
    // Where the writer goes on in another procedure, that is lowered once as a whole.
    tasks: null,
    procedure: now.procedure,
    records: records.map(([node], at) => [node, now.records[at] as (typeof now.records)[number]] as const),
    terms: now.terms,
    used: new Set(now.used),
    wording: wording === null || now.own === null ? null : { ...wording, ...now.own, procedure: now.procedure },
  };
}
