// A person types into a long file: for each keystroke the text as it then stands. And the time from each to all diagnostics,
// in one process that keeps its workspace, as the editor does.
import { openWorkspace, type Snapshot, type Workspace } from "#workspace/index.ts";

export interface Keystroke {
  readonly text: string;
  /** Whether the text is one that can be read, or stands half typed. */
  readonly whole: boolean;
}

/**
 * Keystrokes at places spread over the text, what was typed at one place staying when the writer goes on to the next: a letter more in
 * a title, a digit more in a figure, and a line typed behind another, which cannot be read for most of the way.
 * @param places how many places of each sort
 */
export function keystrokesIn(text: string, places: number): readonly Keystroke[] {
  const keystrokes: Keystroke[] = [];
  let now = text;
  /** @param lengths how much of it stands there after each keystroke */
  const type = (pattern: RegExp, typed: string, lengths: readonly number[]): void => {
    const shifted = spread(now, pattern, places).map((at, nth) => at + nth * typed.length);
    for (const at of shifted) {
      const [before, behind] = [now.slice(0, at), now.slice(at)];
      for (const length of lengths) {
        now = before + typed.slice(0, length) + behind;
        keystrokes.push({ text: now, whole: length === typed.length });
      }
    }
  };
  type(/(?<=step \w+ "[^"]*)\."/g, "s", [1]);
  type(/(?<=takes \d) min/g, "0", [1]);
  const line = '\n      check "the rim for dents" with Feeler record';
  type(
    /(?<=^ *takes \d+ min)$/gm,
    line,
    Array.from({ length: 8 }, (_, at) => line.length - 6 * (7 - at)),
  );
  return keystrokes;
}

/** Milliseconds of wall time and of the process's own work for each keystroke. */
export interface KeystrokeTime {
  readonly wall: number;
  /** Until the text is read, and what is wrong with its form is known. */
  readonly read: number;
  readonly cpu: number;
  readonly whole: boolean;
}

/** Times all keystrokes, once those of `warmUp` places were made. */
export function keystrokeTimes(text: string, places: number, warmUp: number): readonly KeystrokeTime[] {
  const path = "bench.sprag";
  let workspace: Workspace | null = null;
  let read = 0;
  const after = (now: string): Workspace => {
    const begun = performance.now();
    const snapshot: Snapshot = {
      texts: new Map([[path, now]]),
      present: new Set(),
      absent: new Set(),
      today: "2026-05-04",
    };
    const next = openWorkspace(snapshot, workspace);
    read = performance.now() - begun;
    next.check([path]);
    return next;
  };
  workspace = after(text);
  for (const one of keystrokesIn(text, warmUp)) workspace = after(one.text);
  workspace = after(text);
  return keystrokesIn(text, places).map(({ text: now, whole }) => {
    const [start, before] = [performance.now(), process.cpuUsage()];
    workspace = after(now);
    const { system, user } = process.cpuUsage(before);
    return { wall: performance.now() - start, read, cpu: (system + user) / 1_000, whole };
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
