// What both builds of the extension do: set up the language client, answer the server, offer the commands. Knows neither
// Node nor the browser.
import { commands, type ExtensionContext, Uri, window, workspace } from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import type { ClientCommand, PlacesArguments, Settings, StartOptions, Status } from "../../language/server/protocol.ts";
import { type BackgroundCheck, createBackgroundCheck } from "./background-check.ts";
import { checkFolder } from "./check-folder.ts";
import { exportProcedure } from "./export.ts";
import { answerFiles } from "./files.ts";
import { createPreview } from "./preview/panel.ts";
import { createReview } from "./review/review.ts";
import { linkRules, openRule, RULE_SCHEME, rulePages } from "./rule-page.ts";
import { type MakeClient, type ServerRun, serverRun } from "./server-run.ts";
import { showPlaces } from "./show-places.ts";
import { newProcedure } from "./start/new-procedure.ts";
import { newShop } from "./start/new-shop.ts";
import { mendSample, openSample, spoilSample } from "./start/sample.ts";
import { createStatusLine } from "./status-line.ts";

/** What the commands share. */
export interface Session {
  readonly context: ExtensionContext;
  readonly run: ServerRun;
}

/** Those that the server may name in a lens, a hover or a fix. */
const CLIENT_COMMANDS: readonly ClientCommand[] = [
  "sprag.export",
  "sprag.showPlaces",
  "sprag.showRule",
  "sprag.showProblems",
];

/** Registers all there is and starts the server; ends when that answers, or the reader was told that it does not. */
export async function startSession(context: ExtensionContext, makeClient: MakeClient): Promise<void> {
  const status = createStatusLine();
  const log = window.createOutputChannel("Sprag", { log: true });
  const check = createBackgroundCheck(async (token) =>
    (await run.client()).sendNotification("window/workDoneProgress/cancel", { token }),
  );
  const run: ServerRun = serverRun({
    makeClient,
    options: () => ({
      ...clientOptions(check.work, Uri.joinPath(context.extensionUri, "dist", "assets")),
      outputChannel: log,
    }),
    prepare: (client) => {
      check.over();
      answerFiles(client);
      client.onNotification("sprag/status", (told: Status) => {
        status.told(told);
        check.told(told);
        preview.told(told);
      });
    },
    status,
    log,
  });
  const session: Session = { context, run };
  const preview = createPreview(session, (shown) => void exportProcedure(session, shown));
  let known = schemes();
  context.subscriptions.push(
    status,
    log,
    run,
    preview,
    createReview(session),
    commands.registerCommand("sprag.preview", (given?: unknown) => preview.open(given)),
    commands.registerCommand("sprag.export", (given?: unknown) => exportProcedure(session, given)),
    commands.registerCommand("sprag.openSample", () => openSample(session)),
    commands.registerCommand("sprag.spoilSample", () => spoilSample()),
    commands.registerCommand("sprag.mendSample", () => mendSample()),
    commands.registerCommand("sprag.newProcedure", () => newProcedure(session)),
    commands.registerCommand("sprag.newShop", () => newShop(session)),
    commands.registerCommand("sprag.showRule", (given?: unknown) => openRule(session, given)),
    commands.registerCommand("sprag.showPlaces", (given: PlacesArguments) => showPlaces(given)),
    commands.registerCommand("sprag.checkFolder", () => checkFolder(session)),
    commands.registerCommand("sprag.showProblems", () => commands.executeCommand("workbench.actions.view.problems")),
    commands.registerCommand("sprag.restartServer", () => run.restart()),
    commands.registerCommand("sprag.showLog", () => log.show()),
    workspace.registerTextDocumentContentProvider(RULE_SCHEME, rulePages(session)),
    workspace.onDidChangeWorkspaceFolders(() => {
      if (schemes().every((scheme) => known.includes(scheme))) return;
      known = schemes();
      void run.restart();
    }),
  );
  await run.start();
}

function clientOptions(work: BackgroundCheck["work"], assets: Uri): LanguageClientOptions {
  return {
    documentSelector: schemes().map((scheme) => ({ language: "sprag", scheme })),
    initializationOptions: startOptions(assets),
    markdown: { isTrusted: { enabledCommands: CLIENT_COMMANDS }, supportHtml: false },
    middleware: {
      handleDiagnostics: (uri, diagnostics, next) => next(uri, linkRules(diagnostics)),
      handleWorkDoneProgress: (token, message, next) => work(token, message, () => next(token, message)),
    },
  };
}

/** Where procedures are written. Others, such as the old side of a comparison, are only read. */
function schemes(): string[] {
  return [...new Set(["file", "untitled", ...(workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)])];
}

function startOptions(assets: Uri): StartOptions {
  const settings = workspace.getConfiguration("sprag");
  const isOn = (name: string): boolean => settings.get<boolean>(name, true);
  return {
    files: "client",
    assets: assets.toString(),
    status: true,
    commands: CLIENT_COMMANDS,
    settings: {
      inlayHints: {
        stepNumbers: isOn("inlayHints.stepNumbers"),
        otherUnits: isOn("inlayHints.otherUnits"),
        repeats: isOn("inlayHints.repeats"),
        settings: isOn("inlayHints.settings"),
      },
      units: settings.get<Settings["units"]>("units", "both"),
      checkFolder: isOn("checkFolder"),
      crib: settings.get<string>("crib", ""),
    },
  };
}
