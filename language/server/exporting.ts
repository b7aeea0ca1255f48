// Outputs of a file on request: what there is to export, and the export itself, by the same façade as the command's.
import { type ExportResult, exportAs, outputFormats } from "#workspace/index.ts";
import type { Feature } from "./feature.ts";
import type { AskedOfServer, ExportAnswer, ExportParams, OutputsAnswer } from "./protocol.ts";
import type { FileView } from "./view.ts";

export const exporting: Feature = {
  capabilities: () => ({}),
  start: (session) => {
    session.connection.onRequest("sprag/outputs", ({ uri }: AskedOfServer["sprag/outputs"]["params"], token) =>
      session.ask<OutputsAnswer>(uri, token, outputsOf, { procedures: [], outputs: outputFormats(), options: [] }),
    );
    session.connection.onRequest("sprag/export", (params: ExportParams, token) =>
      session.ask<ExportAnswer>(params.uri, token, (view) => exported(view, params), NO_FILE),
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

function exported(view: FileView, { uri: _, ...request }: ExportParams): ExportAnswer {
  return answerOf(exportAs(view.workspace, { ...request, path: view.path }), view, request);
}

const NO_FILE: ExportAnswer = {
  kind: "refused",
  message: "This file is not known to Sprag.",
  remedy: "Save it with the ending .sprag and try again.",
};

function answerOf(result: ExportResult, view: FileView, request: Omit<ExportParams, "uri">): ExportAnswer {
  switch (result.kind) {
    case "done":
      return { kind: "done", text: result.text, draft: result.draft, fileName: fileNameFor(view, request) };
    case "errors": {
      const { errors } = result.report.summary;
      return {
        kind: "errors",
        errors,
        message: errors === 1 ? "The procedure has 1 error." : `The procedure has ${errors} errors.`,
        remedy: "Mend what the list of problems shows, or export a draft that says so on every page.",
      };
    }
    case "which procedure":
      return result.known.length === 0
        ? {
            kind: "refused",
            message: "This file has no procedure.",
            remedy: "Open a file with a procedure and export that.",
          }
        : {
            kind: "refused",
            message: "This file has several procedures.",
            remedy: `Choose one: ${result.known.join(", ")}.`,
          };
    case "unknown output":
      return {
        kind: "refused",
        message: `There is no output “${request.as}”.`,
        remedy: `Choose one: ${result.known.join(", ")}.`,
      };
    case "unknown format":
      return {
        kind: "refused",
        message: `There is no ${request.as} as ${request.format}.`,
        remedy: `Choose one: ${result.known.join(", ")}.`,
      };
    case "no file":
      return NO_FILE;
  }
}

/** The file's name without its ending; the procedure's where the file holds more than one. */
function fileNameFor(view: FileView, { procedure, as, format }: Omit<ExportParams, "uri">): string {
  const file = view.path.slice(view.path.lastIndexOf("/") + 1).replace(/\.sprag$/, "");
  const base = view.model.procedures.length > 1 && procedure !== undefined ? procedure : file;
  const suffix = as === "checklist" ? "" : `-${as}`;
  return `${base.replace(/[^\p{L}\p{N}._-]+/gu, "-")}${suffix}.${format}`;
}
