// The state of a thing before and after the line or step it is named in, as lines of a hover. One line for all passes and
// instances of which the same can be said.
import type { Run } from "#analysis/follow.ts";
import { instanceName } from "#analysis/world.ts";
import type { Declaration, PartInstance } from "#model/declarations.ts";
import { partInstances } from "#model/instances.ts";
import type { Pass } from "#model/problem.ts";
import type { Reach } from "../reach.ts";
import { happeningAt, type Moment } from "../state-at.ts";
import { type Subject, stateWords } from "../state-words.ts";
import type { FileView } from "../view.ts";
import { blocks, list, plain } from "./markup.ts";

/** Null where nothing happens at the offset, or the thing has no state. */
export function stateText(view: FileView, { procedure }: Reach, offset: number, thing: Declaration): string | null {
  if (procedure === null || !HAS_STATE.has(thing.kind)) return null;
  const run = view.workspace.run(procedure);
  if (run === null) return "The procedure is too large to be followed.";
  const happening = happeningAt(run, offset);
  if (happening === null) return null;
  const { moments, of } = happening;
  if (moments.every(({ before }) => before.length === 0)) return `This ${of} is never reached.`;
  const rows = moments.flatMap((moment) => rowsOf(run, moment, thing, moments.length > 1));
  if (rows.length === 0) return null;
  return blocks([`Before and after this ${of}:`, list(grouped(rows))]);
}

const HAS_STATE: ReadonlySet<string> = new Set(["part", "energy", "fact", "ring"]);

interface Row {
  readonly label: string;
  readonly words: string;
}

/** More instances than this are not looked at one by one. */
const MOST_INSTANCES = 64;

function rowsOf(run: Run, moment: Moment, thing: Declaration, several: boolean): readonly Row[] {
  const subjects = subjectsIn(moment, thing);
  return subjects.slice(0, MOST_INSTANCES).flatMap((subject): Row[] => {
    const before = stateWords(run, moment.before, subject);
    const after = stateWords(run, moment.after, subject);
    if (before === null || after === null) return [];
    const words = before === after ? `${before}, and stays so` : `${before} → ${after}`;
    const name = "part" in subject && subject.index !== null ? instanceName(subject.part, subject.index) : "";
    const pass = several ? passWords(moment.pass) : "";
    return [{ label: name === "" ? pass : pass === "" ? name : `${name} (${pass})`, words }];
  });
}

function subjectsIn({ things }: Moment, thing: Declaration): readonly Subject[] {
  if (thing.kind !== "part") return [{ thing }];
  const named = things.flatMap((one): PartInstance[] =>
    one.kind === "part" && one.part === thing ? [{ part: thing, index: one.index }] : [],
  );
  return named.length > 0 ? named : partInstances(thing);
}

function passWords(pass: Pass): string {
  return pass.map(({ variable, value }) => `${variable} = ${value}`).join(", ");
}

const MOST_LABELS = 3;
const MOST_LINES = 6;

function grouped(rows: readonly Row[]): readonly string[] {
  const byWords = new Map<string, string[]>();
  for (const { label, words } of rows) byWords.set(words, [...(byWords.get(words) ?? []), label]);
  const lines = [...byWords].map(([words, labels]) => {
    const named = labels.filter((label) => label !== "");
    const more = named.length - MOST_LABELS;
    const who = named.slice(0, MOST_LABELS).join(", ") + (more > 0 ? ` and ${more} more` : "");
    return plain(who === "" ? words : `${who}: ${words}`);
  });
  const left = lines.length - MOST_LINES;
  return left > 0 ? [...lines.slice(0, MOST_LINES), `and ${left} more ways`] : lines;
}
