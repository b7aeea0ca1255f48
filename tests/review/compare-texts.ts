// Two texts reviewed, and what a test looks at of the result. The one place where tests of the review touch the API.

import { type Reviewed, review } from "#review/review.ts";
import { type ReviewReport, reviewOf, type SideOfReview, sideOf } from "#workspace/review.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

export type Texts = Readonly<Record<string, string>>;

export function workspaceOf(texts: Texts): Workspace {
  const snapshot = {
    texts: new Map(Object.entries(texts)),
    present: new Set<string>(),
    absent: new Set<string>(),
    today: "2026-05-04",
  };
  return openWorkspace(snapshot);
}

/** Files whose names do not begin with `used/` are compared. */
export function reviewed(old: Texts, now: Texts): ReviewReport {
  return reviewedFrom(workspaceOf(old), workspaceOf(now));
}

export function reviewedFrom(old: Workspace, now: Workspace): ReviewReport {
  return reviewOf(compared(old), compared(now));
}

/** The changes themselves, with their edits. */
export function changesFrom(old: Workspace, now: Workspace): Reviewed {
  return review(sideOf(compared(old)), sideOf(compared(now)));
}

function compared(workspace: Workspace): SideOfReview {
  const paths = [...workspace.snapshot.texts.keys()].filter((path) => !path.startsWith("used/"));
  return { workspace, paths };
}

/** Each change as a line: `values torque-changed [2.1] message`. */
export function linesOf({ changes }: ReviewReport): readonly string[] {
  return changes.map(({ group, kind, step, message, findings, signAgain }) => {
    const at = step === undefined ? "" : ` [${step.number}]`;
    const came = (findings?.came ?? []).map(({ code }) => ` +${code}`).join("");
    const went = (findings?.went ?? []).map(({ code }) => ` -${code}`).join("");
    const again = signAgain === undefined ? "" : ` (again: ${signAgain.join(", ")})`;
    return `${group} ${kind}${at} ${message}${came}${went}${again}`;
  });
}
