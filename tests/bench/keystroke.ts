// A person types into a long file: for each keystroke the text as it then stands. And the time from each to all diagnostics,
// in one process that keeps its workspace, as the editor does.
import { openWorkspace, type Snapshot, type Workspace } from "#workspace/index.ts";

export interface Keystroke {
  readonly text: string;
  /** Whether the text is one that can be read, or stands half typed. */
  readonly whole: boolean;
}

/**
 * Keystrokes at places spread over the text: a letter more in a title, a digit more in a figure, and a line typed in front of a step,
 * which cannot be read for most of the way.
 * @param places how many places of each sort
 */
export function keystrokesIn(text: string, places: number): readonly Keystroke[] {
  const keystrokes: Keystroke[] = [];
  const type = (at: number, typed: string, whole: boolean): void => {
    keystrokes.push({ text: text.slice(0, at) + typed + text.slice(at), whole });
  };
  for (const at of spread(text, /(?<=step \w+ "[^"]*)\."/g, places)) type(at, "s", true);
  for (const at of spread(text, /(?<=takes \d) min/g, places)) type(at, "0", true);
  for (const at of spread(text, /(?<=^ *takes \d+ min)$/gm, places)) {
    const line = '\n      check "the rim for dents" with Feeler record';
    for (let length = 7; length <= line.length; length += 6) type(at, line.slice(0, length), length === line.length);
  }
  return keystrokes;
}

/** Milliseconds of wall time and of the process's own work for each keystroke. */
export interface KeystrokeTime {
  readonly wall: number;
  readonly cpu: number;
  readonly whole: boolean;
}

/** Times all keystrokes, once those of `warmUp` places were made. */
export function keystrokeTimes(text: string, places: number, warmUp: number): readonly KeystrokeTime[] {
  const path = "bench.sprag";
  let workspace: Workspace | null = null;
  const after = (now: string): Workspace => {
    const snapshot: Snapshot = {
      texts: new Map([[path, now]]),
      present: new Set(),
      absent: new Set(),
      today: "2026-05-04",
    };
    const next = openWorkspace(snapshot, workspace);
    next.check([path]);
    return next;
  };
  workspace = after(text);
  for (const one of keystrokesIn(text, warmUp)) workspace = after(one.text);
  return keystrokesIn(text, places).map(({ text: now, whole }) => {
    const [start, before] = [performance.now(), process.cpuUsage()];
    workspace = after(now);
    const { system, user } = process.cpuUsage(before);
    return { wall: performance.now() - start, cpu: (system + user) / 1_000, whole };
  });
}

/** The offsets of matches, evenly over the text. */
function spread(text: string, pattern: RegExp, places: number): readonly number[] {
  const found = [...text.matchAll(pattern)].map((match) => match.index);
  return Array.from(
    { length: Math.min(places, found.length) },
    (_, at) => found[Math.floor((at * found.length) / places)] ?? 0,
  );
}
