// From a procedure to a file beside it, and to the reader. Asks what it has to ask, tells how it went, and never writes
// over a file that somebody else has changed. What is written, the server makes.
import {
  commands,
  l10n,
  ProgressLocation,
  type QuickPickItem,
  QuickPickItemKind,
  Uri,
  window,
  workspace,
} from "vscode";
import type { ExportAnswer, ExportParams, OutputsAnswer, Settings } from "../../language/server/protocol.ts";
import { ask } from "./asking.ts";
import { chosenFile } from "./chosen-file.ts";
import { formatWords, outputLanguage, outputWords } from "./output-words.ts";
import { saveBeside } from "./save-beside.ts";
import type { Session } from "./session.ts";

/** @param given of the palette nothing, of the explorer a `Uri`, of a code lens `ExportArguments` */
export async function exportProcedure(session: Session, given: unknown): Promise<void> {
  const wanted = chosenFile(given);
  if (wanted === undefined) {
    void window.showWarningMessage(l10n.t("There is no procedure to export here. Open a Sprag file first."));
    return;
  }
  const file = Uri.parse(wanted.uri);
  const outputs = await ask(session.run, "sprag/outputs", { uri: wanted.uri });
  const procedure = wanted.procedure ?? (await chooseProcedure(outputs));
  if (procedure === undefined) return;
  const what = await chooseWhat(outputs, wanted.as);
  if (what === undefined) return;
  const { as, format } = what;
  const {
    units = workspace.getConfiguration("sprag", file).get<Settings["units"]>("units", "both"),
    repeats = "compact",
    set = {},
  } = wanted;
  const language = outputLanguage();
  await make(session, file, { uri: wanted.uri, procedure, as, format, units, repeats, language, set, draft: false });
}

async function make(session: Session, file: Uri, params: ExportParams): Promise<void> {
  const answer = await withProgress(session, params);
  if (answer === undefined) return;
  if (answer.kind === "done") return saveBeside(session.context, file, answer.fileName, contentOf(answer));
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
  const title = l10n.t("Writing: {0}", outputWords(params.as));
  return window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (_, token) => {
      try {
        const answer = await ask(run, "sprag/export", params, token);
        return token.isCancellationRequested ? undefined : answer;
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        const words = error instanceof Error ? error.message : String(error);
        void window.showErrorMessage(l10n.t("Nothing was written: {0} Try again; your text is untouched.", words));
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
  return (await window.showQuickPick(items, { placeHolder: l10n.t("Which procedure?"), ...STAYING }))?.name;
}

/** Until an answer or Escape: the walkthrough takes the focus back when one of its steps is done. */
const STAYING = { ignoreFocusOut: true };

interface What {
  readonly as: string;
  readonly format: string;
}

/** @param only the output, where that is known */
async function chooseWhat({ outputs }: OutputsAnswer, only: string | undefined): Promise<What | undefined> {
  const items = outputs
    .filter(({ as }) => only === undefined || as === only)
    .flatMap(({ as, formats }): readonly (QuickPickItem & Partial<What>)[] => [
      { label: outputWords(as), kind: QuickPickItemKind.Separator },
      ...formats.map((format) => ({
        label: `${outputWords(as)}: ${formatWords(format)}`,
        description: `.${format}`,
        as,
        format,
      })),
    ]);
  const chosen = await window.showQuickPick(items, {
    placeHolder: l10n.t("As what?"),
    matchOnDescription: true,
    ...STAYING,
  });
  return chosen?.as === undefined || chosen.format === undefined ? undefined : { as: chosen.as, format: chosen.format };
}

function contentOf({ content, encoding }: ExportAnswer & { readonly kind: "done" }): string | Uint8Array {
  return encoding === "text" ? content : Uint8Array.from(atob(content), (sign) => sign.charCodeAt(0));
}
