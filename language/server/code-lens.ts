// Above each procedure: how many steps it has, with its export, and how many procedures perform it. Nothing where the client
// has no command for it.
import type { CodeLens, CodeLensParams } from "vscode-languageserver";
import type { Procedure } from "#model/procedure.ts";
import { incomingCalls, procedureAt } from "./call-hierarchy.ts";
import type { Feature } from "./feature.ts";
import type { ExportArguments } from "./protocol.ts";
import { type FileView, rangeOf } from "./view.ts";

export const codeLens: Feature = {
  capabilities: () => ({ codeLensProvider: {} }),
  start: (session) => {
    session.connection.onCodeLens(({ textDocument }: CodeLensParams, token) =>
      session.ask<CodeLens[] | null>(
        textDocument.uri,
        token,
        (view) => (session.commands.has("sprag.export") ? lensesIn(view) : []),
        null,
      ),
    );
  },
};

export function lensesIn(view: FileView): CodeLens[] {
  return view.model.procedures.flatMap((procedure): readonly CodeLens[] => {
    const range = rangeOf(view, procedure.span);
    const args: ExportArguments = { uri: view.uri, procedure: procedure.name };
    const title = `${stepsOf(view, procedure)} · export checklist`;
    const first: CodeLens = { range, command: { title, command: "sprag.export", arguments: [args] } };
    const callers = incomingCalls(view, procedureAt(view, procedure.span.start)).length;
    if (callers === 0) return [first];
    // Words only: an empty command is one that cannot be pressed.
    return [first, { range, command: { title: `performed by ${counted(callers, "procedure")}`, command: "" } }];
  });
}

function stepsOf(view: FileView, procedure: Procedure): string {
  const { steps, tooLarge } = view.workspace.expanded(procedure);
  return tooLarge === null ? counted(steps, "step") : "too many steps";
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
