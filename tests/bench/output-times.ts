// How long outputs of a long procedure take to be written once it is checked, and the preview after a key.
import { fonts } from "#harness/fonts.ts";
import { exportAs, openWorkspace, type PreviewResult, previewAs, type Workspace } from "#workspace/index.ts";
import { keystrokesIn } from "./keystroke.ts";
import { type Times, timed } from "./timing.ts";

const path = "bench.sprag";
const asked = { path, as: "checklist", units: "si", repeats: "compact", language: "en" } as const;

/** As many before those that count: the editor's process has written and shown some already. */
const WARM_UP = 10;

/** The checklist in a format; what is found is known, as it is to whoever exports what is on the screen. */
export function exportTimes(text: string, format: string, runs: number): Promise<Times> {
  const workspace = opened(text, null);
  workspace.check([path]);
  const write = async (): Promise<void> => {
    const result = exportAs(workspace, { ...asked, format, draft: false, fonts });
    if (result.kind !== "done") throw new Error(`The checklist was not written as ${format}: ${result.kind}`);
    await result.content;
  };
  return timed(write, runs, WARM_UP);
}

/** From a key to the checklist beside its text, with the findings of before and what was shown before, as the server has them. */
export async function previewTimes(text: string, places: number): Promise<Times> {
  const keystrokes = keystrokesIn(text, places);
  let workspace = opened(text, null);
  const first = shown(workspace, null);
  let next = 0;
  const type = (): void => {
    workspace = opened(keystrokes[next++]?.text ?? text, workspace);
    shown(workspace, first);
  };
  return timed(type, keystrokes.length - WARM_UP, WARM_UP);
}

function shown(workspace: Workspace, before: Shown | null): Shown {
  const result = previewAs(workspace, asked, before?.checked ?? null, before?.memory);
  if (result.kind !== "done") throw new Error(`There is no preview: ${result.kind}`);
  return result;
}

type Shown = PreviewResult & { readonly kind: "done" };

function opened(text: string, before: Workspace | null): Workspace {
  const snapshot = { texts: new Map([[path, text]]), present: new Set<string>(), absent: new Set<string>() };
  return openWorkspace({ ...snapshot, today: "2026-05-04" }, before);
}
