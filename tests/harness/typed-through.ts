// A text that is edited in one workspace after the other, as in an editor: what is found after each edit beside what a fresh check finds.
import { expect } from "vitest";
import type { Workspace } from "#workspace/index.ts";
import { firstProcedure, type RandomEdit, typedInto } from "./random-edit.ts";

/** An edit behind the declarations; some are taken back, as a half-typed line is. */
export interface TypedEdit extends RandomEdit {
  readonly back: boolean;
}

export interface Compared {
  readonly states: number;
  readonly findings: number;
}

/** @param open a workspace with that text of the file at `path`, over an earlier one or as if nothing were known */
export function typedThrough(
  path: string,
  start: string,
  edits: readonly TypedEdit[],
  open: (text: string, before: Workspace | null) => Workspace,
): Compared {
  let text = start;
  let workspace: Workspace | null = null;
  // What a fresh workspace finds is asked for behind them all: it may leave something that hides what these would keep.
  const reports: (readonly [string, ReturnType<Workspace["check"]>])[] = [];
  const look = (next: string): void => {
    workspace = open(next, workspace);
    reports.push([next, workspace.check([path])]);
  };
  look(text);
  for (const { back, ...edit } of edits) {
    const next = typedInto(text, edit, firstProcedure(text));
    look(next);
    if (back) look(text);
    else text = next;
  }
  let findings = 0;
  for (const [at, report] of reports) {
    expect(report).toEqual(open(at, null).check([path]));
    findings += report.files[0]?.findings.length ?? 0;
  }
  return { states: reports.length, findings };
}
