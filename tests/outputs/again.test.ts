// A text that is written out again and again while it changes: each time what a workspace writes that never saw it before.
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

const PARTS = `ring Circle "bolt circle" { count 4 numbered clockwise seen from "drive end" position 1 at 12 o'clock }
part Seat "seat"
part Cover "cover" { mass 4 kg }
part Screw[1..4] "cover screw" { seats in Circle by number secures Cover thread "M10x1.5" class "8.8" nut factor 0.15 }
tool Wrench "torque wrench" { torque 8 .. 60 N·m accuracy 4 % }
part Blade "blade" { sharp }
`;
const SHARP = 'warning cutting "The edges are sharp." avoid "Hold the blade by its flat sides." wear "gloves"';
const LOOK = 'step { inspect Seat "for dirt" }\n';
const WORK = `step install Cover
step install Screw[all]
step tighten Screw[all] in cross pattern to 50 %, 100 % of 38 ± 2 N·m with Wrench
step install Blade
`;

/** What is said again, what cannot be checked and what is found are others in each. */
const TEXTS = [
  [PARTS, LOOK + WORK],
  [PARTS, `${SHARP}\n${LOOK.repeat(6)}${WORK}`],
  [PARTS.replace(" nut factor 0.15", ""), `${SHARP}\n${LOOK.repeat(6)}${WORK}`],
  [PARTS.replace(" nut factor 0.15", ""), LOOK + WORK],
  [PARTS, LOOK + WORK.replace("38 ± 2", "36 ± 2")],
  [PARTS, LOOK + WORK],
].map(([parts, work]) => `${parts}procedure Close "Close the cover" {\nbegin with Seat is installed\n${work}}\n`);

function opened(text: string, before: Workspace | null): Workspace {
  const texts = new Map([["main.sprag", text]]);
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" }, before);
}

function written(workspace: Workspace, format: "html" | "json"): string {
  const ask = { path: "main.sprag", as: "checklist", units: "both", repeats: "compact", draft: true } as const;
  return exportText(workspace, { ...ask, format });
}

test("writes the same as from the start", () => {
  let kept: Workspace | null = null;
  const seen = new Set<string>();
  for (const text of TEXTS) {
    kept = opened(text, kept);
    for (const format of ["html", "json"] as const) {
      const fresh = written(opened(text, null), format);
      expect(written(kept, format)).toBe(fresh);
      // What was looked for the first time is known the second time.
      expect(written(kept, format)).toBe(fresh);
      seen.add(fresh);
    }
  }
  // The last text is the first one.
  expect(seen.size).toBe(2 * (TEXTS.length - 1));
});
