// The findings in a file, worked out once for each state of the folder, whoever asks first.
import type { FileReport } from "#workspace/report.ts";
import type { Workspace } from "#workspace/workspace.ts";
import { turn } from "./session.ts";

type Findings = FileReport["findings"];

/** Of a file that the workspace does not hold: none. */
export function findingsIn(workspace: Workspace, path: string): Findings {
  const known = reportsOf(workspace).get(path);
  return (
    known ?? keep(workspace, path, workspace.loaded.parsed.has(path) ? workspace.check([path]).files[0] : undefined)
  );
}

/** The same, giving everybody else a turn now and then; null as soon as nobody wants it any more. */
export async function findingsInTurns(
  workspace: Workspace,
  path: string,
  isWanted: () => boolean,
): Promise<Findings | null> {
  const known = reportsOf(workspace).get(path);
  if (known !== undefined || !workspace.loaded.parsed.has(path)) return known ?? [];
  const steps = workspace.checkInSteps([path]);
  let began = performance.now();
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return keep(workspace, path, value.files[0]);
    if (performance.now() - began < LONGEST_STRETCH) continue;
    await turn();
    if (!isWanted()) return null;
    began = performance.now();
  }
}

/** In milliseconds, as long as the work can be put down. */
const LONGEST_STRETCH = 20;

const reports = new WeakMap<Workspace, Map<string, Findings>>();

function reportsOf(workspace: Workspace): Map<string, Findings> {
  const known = reports.get(workspace) ?? new Map<string, Findings>();
  reports.set(workspace, known);
  return known;
}

function keep(workspace: Workspace, path: string, file: FileReport | undefined): Findings {
  const findings = file?.findings ?? [];
  reportsOf(workspace).set(path, findings);
  return findings;
}
