// Outputs of a file on request: what there is to export, and the export itself, by the same façade as the command's.
import { exportAs, outputFormats } from "#workspace/index.ts";
import type { Feature } from "./feature.ts";
import { answerOwn } from "./own-requests.ts";
import type { ExportAnswer, ExportParams, OutputsAnswer } from "./protocol.ts";
import type { FileView } from "./view.ts";
import type { Say } from "./words.ts";

export const exporting: Feature = {
  capabilities: () => ({}),
  start: (session, say) => {
    const noFile = refused(
      say("This file is not known to Sprag."),
      say("Save it with the ending .sprag and try again."),
    );
    answerOwn(session.connection, "sprag/outputs", ({ uri }, token) =>
      session.ask<OutputsAnswer>(uri, token, outputsOf, { procedures: [], outputs: outputFormats(), options: [] }),
    );
    answerOwn(session.connection, "sprag/export", (params, token) =>
      session.ask<ExportAnswer>(params.uri, token, (view) => exported(view, params, say) ?? noFile, noFile),
    );
  },
};

function outputsOf(view: FileView): OutputsAnswer {
  return {
    procedures: view.model.procedures.map(({ name, title }) => ({ name, title })),
    outputs: outputFormats(),
    options: view.workspace
      .options([view.path])
      .map(({ name, title, choices }) => ({ name, title, choices: choices.map((choice) => choice.name) })),
  };
}

/** Null where there is no such file. */
function exported(view: FileView, params: ExportParams, say: Say): ExportAnswer | null {
  const request = requestOf(params);
  const result = exportAs(view.workspace, { ...request, path: view.path });
  switch (result.kind) {
    case "done":
      return { kind: "done", text: result.text, draft: result.draft, fileName: fileNameFor(view, request) };
    case "errors": {
      const { errors } = result.report.summary;
      return {
        kind: "errors",
        errors,
        message: errors === 1 ? say("The procedure has 1 error.") : say("The procedure has {0} errors.", errors),
        remedy: say("Mend what the list of problems shows, or export a draft that says so on every page."),
      };
    }
    case "which procedure":
      return result.known.length === 0
        ? refused(say("This file has no procedure."), say("Open a file with a procedure and export that."))
        : refused(say("This file has several procedures."), oneOf(result.known, say));
    case "unknown output":
      return refused(say("There is no output “{0}”.", request.as), oneOf(result.known, say));
    case "unknown format":
      return refused(say("There is no {0} as {1}.", request.as, request.format), oneOf(result.known, say));
    case "no file":
      return null;
  }
}

/** Names as the model has them, in NFC. */
function requestOf({ uri: _, procedure, set, ...request }: ExportParams): Omit<ExportParams, "uri"> {
  const inOne = (name: string): string => name.normalize("NFC");
  const chosen = Object.entries(set ?? {}).map(([option, choice]) => [inOne(option), inOne(choice)] as const);
  return {
    ...request,
    ...(procedure === undefined || procedure === null ? {} : { procedure: inOne(procedure) }),
    ...(set === undefined || set === null ? {} : { set: Object.fromEntries(chosen) }),
  };
}

function refused(message: string, remedy: string): ExportAnswer {
  return { kind: "refused", message, remedy };
}

function oneOf(known: readonly string[], say: Say): string {
  // One without a name cannot be chosen by it.
  return say("Choose one: {0}.", known.join(", "));
}

/** The file's name without its ending; the procedure's where the file holds more than one. */
function fileNameFor(view: FileView, { procedure, as, format }: Omit<ExportParams, "uri">): string {
  const file = view.path.slice(view.path.lastIndexOf("/") + 1).replace(/\.sprag$/, "");
  const base = view.model.procedures.length > 1 && procedure !== undefined ? procedure : file;
  const suffix = as === "checklist" ? "" : `-${as}`;
  return `${base.replace(/[^\p{L}\p{N}._-]+/gu, "-")}${suffix}.${format}`;
}
