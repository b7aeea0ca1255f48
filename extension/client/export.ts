// From a procedure to a file beside it, and to the reader. Asks what it has to ask, tells how it went, and never writes
// over a file that somebody else has changed. What is written, the server makes.
import { commands, l10n, ProgressLocation, type QuickPickItem, Uri, window, workspace } from "vscode";
import type {
  ExportAnswer,
  ExportArguments,
  ExportParams,
  OutputsAnswer,
  Settings,
} from "../../language/server/protocol.ts";
import { ask } from "./asking.ts";
import { saveBeside } from "./save-beside.ts";
import type { Session } from "./session.ts";

const OUTPUT = "checklist";

/** @param given of the palette nothing, of the explorer a `Uri`, of a code lens `ExportArguments` */
export async function exportProcedure(session: Session, given: unknown): Promise<void> {
  const wanted = argumentsOf(given) ?? activeFile();
  if (wanted === undefined) {
    void window.showWarningMessage(l10n.t("There is no procedure to export here. Open a Sprag file first."));
    return;
  }
  const file = Uri.parse(wanted.uri);
  if (file.scheme === "untitled") {
    void window.showWarningMessage(l10n.t("This file has no place yet. Save it first, then export it."));
    return;
  }
  const outputs = await ask(session.run, "sprag/outputs", { uri: wanted.uri });
  const procedure = wanted.procedure ?? (await chooseProcedure(outputs));
  if (procedure === undefined) return;
  const format = await chooseFormat(outputs);
  if (format === undefined) return;
  const units = workspace.getConfiguration("sprag", file).get<Settings["units"]>("units", "both");
  await make(session, file, {
    uri: wanted.uri,
    procedure,
    as: OUTPUT,
    format,
    units,
    repeats: "compact",
    draft: false,
  });
}

async function make(session: Session, file: Uri, params: ExportParams): Promise<void> {
  const answer = await withProgress(session, params);
  if (answer === undefined) return;
  if (answer.kind === "done") return saveBeside(session.context, file, answer.fileName, answer.text);
  const message = `${answer.message} ${answer.remedy}`;
  if (answer.kind === "refused") {
    void window.showErrorMessage(message);
    return;
  }
  const show = l10n.t("Show Problems");
  const draft = l10n.t("Export a Draft");
  const choice = await window.showWarningMessage(message, show, draft);
  if (choice === show) await commands.executeCommand("sprag.showProblems");
  if (choice === draft) await make(session, file, { ...params, draft: true });
}

/** Undefined where the reader cancelled it, or was told why it did not work. */
async function withProgress({ run }: Session, params: ExportParams): Promise<ExportAnswer | undefined> {
  const title = l10n.t("Writing the checklist");
  return window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (_, token) => {
      try {
        const answer = await ask(run, "sprag/export", params, token);
        return token.isCancellationRequested ? undefined : answer;
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        const words = error instanceof Error ? error.message : String(error);
        void window.showErrorMessage(
          l10n.t("The checklist was not written: {0} Try again; your text is untouched.", words),
        );
        return undefined;
      }
    },
  );
}

async function chooseProcedure({ procedures }: OutputsAnswer): Promise<string | undefined> {
  if (procedures.length === 0) {
    void window.showWarningMessage(l10n.t("This file has no procedure, so there is nothing to export."));
    return undefined;
  }
  const items = procedures.map(({ name, title }) => ({ label: title || name, description: name, name }));
  if (items.length === 1) return items[0]?.name;
  return (await window.showQuickPick(items, { placeHolder: l10n.t("Which procedure?") }))?.name;
}

async function chooseFormat({ outputs }: OutputsAnswer): Promise<string | undefined> {
  const formats = outputs.find(({ as }) => as === OUTPUT)?.formats ?? [];
  const words: Readonly<Record<string, string>> = {
    html: l10n.t("Web page for a tablet or the printer"),
    md: l10n.t("Markdown text"),
  };
  const items: (QuickPickItem & { format: string })[] = formats.map((format) => ({
    label: words[format] ?? format,
    description: `.${format}`,
    format,
  }));
  return (await window.showQuickPick(items, { placeHolder: l10n.t("As what?") }))?.format;
}

function argumentsOf(given: unknown): ExportArguments | undefined {
  if (given instanceof Uri) return { uri: given.toString() };
  if (typeof given !== "object" || given === null || !("uri" in given) || typeof given.uri !== "string")
    return undefined;
  return { uri: given.uri, ...("procedure" in given ? { procedure: String(given.procedure) } : {}) };
}

function activeFile(): ExportArguments | undefined {
  const document = window.activeTextEditor?.document;
  return document?.languageId === "sprag" ? { uri: document.uri.toString() } : undefined;
}
