// Above each procedure: how many steps it has, with its export, and how many procedures perform it, with the places. Nothing
// where the client has no command for the export, words only where it has none for the places.
import type { CodeLens, CodeLensParams, Command } from "vscode-languageserver";
import type { Procedure } from "#model/procedure.ts";
import { incomingCalls, procedureAt } from "./call-hierarchy.ts";
import type { Feature } from "./feature.ts";
import type { ClientCommand, ExportArguments, PlacesArguments } from "./protocol.ts";
import { type FileView, rangeOf } from "./view.ts";
import type { Say } from "./words.ts";

export const codeLens: Feature = {
  capabilities: () => ({ codeLensProvider: {} }),
  start: (session, say) => {
    session.connection.onCodeLens(({ textDocument }: CodeLensParams, token) =>
      session.ask<CodeLens[] | null>(textDocument.uri, token, (view) => lensesIn(view, session.commands, say), null),
    );
  },
};

/** @param commands that the client knows */
export function lensesIn(view: FileView, commands: ReadonlySet<ClientCommand>, say: Say): CodeLens[] {
  if (!commands.has("sprag.export")) return [];
  return view.model.procedures.flatMap((procedure): readonly CodeLens[] => {
    const range = rangeOf(view, procedure.span);
    const args: ExportArguments = { uri: view.uri, procedure: procedure.name };
    const title = `${stepsOf(view, procedure, say)} · ${say("export")}`;
    const first: CodeLens = { range, command: { title, command: "sprag.export", arguments: [args] } };
    const callers = callersOf(view, procedure, commands.has("sprag.showPlaces"), say);
    return callers === null ? [first] : [first, { range, command: callers }];
  });
}

/** Null where nothing performs it. */
function callersOf(view: FileView, { span }: Procedure, canShow: boolean, say: Say): Command | null {
  const calls = incomingCalls(view, procedureAt(view, span.start));
  if (calls.length === 0) return null;
  const title = calls.length === 1 ? say("performed by 1 procedure") : say("performed by {0} procedures", calls.length);
  // An empty command is one that cannot be pressed.
  if (!canShow) return { title, command: "" };
  const places = calls.flatMap(({ from, fromRanges }) => fromRanges.map((range) => ({ uri: from.uri, range })));
  const args: PlacesArguments = { uri: view.uri, at: rangeOf(view, span).start, places };
  return { title, command: "sprag.showPlaces", arguments: [args] };
}

function stepsOf(view: FileView, procedure: Procedure, say: Say): string {
  const { steps, tooLarge } = view.workspace.expanded(procedure);
  if (tooLarge !== null) return say("too many steps");
  return steps === 1 ? say("1 step") : say("{0} steps", steps);
}
