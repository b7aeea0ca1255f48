// Outputs of a file on request: what there is to export, and the export itself, by the same façade as the command's. What makes them is
// loaded when the first is asked for.
import type { ExportResult } from "#workspace/export.ts";
import type { Feature } from "./feature.ts";
import { answerOwn } from "./own-requests.ts";
import type { ExportAnswer, ExportParams, OutputsAnswer } from "./protocol.ts";
import type { Session } from "./session.ts";
import type { FileView } from "./view.ts";
import type { Say } from "./words.ts";

export const exporting: Feature = {
  capabilities: () => ({}),
  start: (session, say) => {
    answerOwn(session.connection, "sprag/outputs", async ({ uri }, token) => {
      const { outputFormats } = await import("#workspace/export.ts");
      const none: Choices = { procedures: [], options: [] };
      return { ...(await session.ask(uri, token, choicesOf, none)), outputs: outputFormats() };
    });
    answerOwn(session.connection, "sprag/export", (params, token) =>
      session.ask<ExportAnswer>(params.uri, token, (view) => exported(view, params, session.fonts, say), {
        kind: "refused",
        ...refusalOf({ kind: "no file" }, params, say),
      }),
    );
  },
};

type Choices = Omit<OutputsAnswer, "outputs">;

/** What to choose before an output of a file is made. */
export function choicesOf(view: FileView): Choices {
  return {
    procedures: view.model.procedures.map(({ name, title }) => ({ name, title })),
    options: view.workspace
      .options([view.path])
      .map(({ name, title, choices }) => ({ name, title, choices: choices.map((choice) => choice.name) })),
  };
}

async function exported(
  view: FileView,
  params: ExportParams,
  fonts: Session["fonts"],
  say: Say,
): Promise<ExportAnswer> {
  const { exportAs } = await import("#workspace/export.ts");
  const request = requestOf(params);
  const result = exportAs(await view.folder.withFigures(view.path, true), { ...request, path: view.path, fonts });
  if (result.kind === "done")
    return Promise.resolve(result.content).then(
      (content) => ({ kind: "done", ...sent(content), draft: result.draft, fileName: fileNameFor(view, request) }),
      () => ({
        kind: "refused",
        message: say("The document could not be written."),
        remedy: say("Install Sprag again and try once more."),
      }),
    );
  if (result.kind !== "errors") return { kind: "refused", ...refusalOf(result, request, say) };
  const { errors } = result.report.summary;
  return {
    kind: "errors",
    errors,
    message: errors === 1 ? say("The procedure has 1 error.") : say("The procedure has {0} errors.", errors),
    remedy: say("Mend what the list of problems shows, or export a draft that says so on every page."),
  };
}

/** Why there is nothing to be had, and what to do. */
export function refusalOf(
  result: Exclude<ExportResult, { readonly kind: "done" | "errors" }>,
  asked: { readonly as: string; readonly format?: string; readonly language?: string },
  say: Say,
): { readonly message: string; readonly remedy: string } {
  switch (result.kind) {
    case "which procedure":
      return result.known.length === 0
        ? { message: say("This file has no procedure."), remedy: say("Open a file with a procedure and export that.") }
        : { message: say("This file has several procedures."), remedy: oneOf(result.known, say) };
    case "unknown output":
      return { message: say("There is no output “{0}”.", asked.as), remedy: oneOf(result.known, say) };
    case "unknown format": {
      const remedy = oneOf(result.known, say);
      return { message: say("There is no {0} as {1}.", asked.as, asked.format ?? ""), remedy };
    }
    case "unknown language":
      return { message: say("There is no language “{0}”.", asked.language ?? ""), remedy: oneOf(result.known, say) };
    case "no file":
      return {
        message: say("This file is not known to Sprag."),
        remedy: say("Save it with the ending .sprag and try again."),
      };
  }
}

function sent(content: string | Uint8Array): { readonly content: string; readonly encoding: "text" | "base64" } {
  if (typeof content === "string") return { content, encoding: "text" };
  const signs = Array.from(content, (byte) => String.fromCharCode(byte));
  return { content: btoa(signs.join("")), encoding: "base64" };
}

/** Names as the model has them, in NFC. */
function requestOf({ uri: _, procedure, set, ...request }: ExportParams): Omit<ExportParams, "uri"> {
  return {
    ...request,
    ...(procedure === undefined || procedure === null ? {} : { procedure: procedure.normalize("NFC") }),
    ...(set === undefined || set === null ? {} : { set: namesInOne(set) }),
  };
}

/** Choices by option, with names as the model has them. */
export function namesInOne(set: ExportParams["set"] | null): Readonly<Record<string, string>> {
  const names = Object.entries(set ?? {}).map(([option, choice]) => [option.normalize("NFC"), choice.normalize("NFC")]);
  return Object.fromEntries(names);
}

function oneOf(known: readonly string[], say: Say): string {
  // One without a name cannot be chosen by it.
  return say("Choose one: {0}.", known.join(", "));
}

/** The file's name without its ending; the procedure's where the file holds more than one, or was never saved. */
function fileNameFor(view: FileView, { procedure, as, format }: Omit<ExportParams, "uri">): string {
  const file = view.path.slice(view.path.lastIndexOf("/") + 1).replace(/\.sprag$/, "");
  const isNamed = view.path.endsWith(".sprag") && view.model.procedures.length === 1;
  const base = isNamed || procedure === undefined ? file : procedure;
  const suffix = as === "checklist" ? "" : `-${as}`;
  return `${base.replace(/[^\p{L}\p{N}._-]+/gu, "-")}${suffix}.${format}`;
}
