// An output beside its text: one panel that follows the text and the cursor, and leads back to the lines. Keeps what was good while
// the text is not, and what was chosen over a reload. What is shown, the server makes.
import {
  CancellationTokenSource,
  type Disposable,
  l10n,
  Selection,
  TabInputText,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import type {
  ExportArguments,
  PreviewAnswer,
  PreviewRow,
  Settings,
  Status,
} from "../../../language/server/protocol.ts";
import { ask } from "../asking.ts";
import { chosenFile } from "../chosen-file.ts";
import { base64, bytesOf } from "../files.ts";
import { outputLanguage, outputWords } from "../output-words.ts";
import type { Session } from "../session.ts";
import { columnFor } from "./column.ts";
import { fromPage, kept, type Shown, type ToPage } from "./messages.ts";
import { pageHtml } from "./page.ts";

export interface Preview extends Disposable {
  /** Opens the panel beside the text, or turns it to this file; `given` as {@link chosenFile} takes it. */
  readonly open: (given: unknown) => void;
  /** The server has told how far its check is: once it is at rest, what was found is shown too. */
  readonly told: (status: Status) => void;
}

const PREVIEW_TYPE = "sprag.preview";

/** In milliseconds. A writer who types fast is not shown every letter. */
const REST = 30;

type Done = PreviewAnswer & { readonly kind: "done" };

/** @param exportShown is called with what is shown, as the arguments of the export */
export function createPreview(session: Session, exportShown: (given: ExportArguments) => void): Preview {
  let current: Panel | undefined;
  const show = (panel: WebviewPanel, shown: Shown): void => {
    current?.dispose();
    const mine = followText(session, panel, shown, exportShown);
    current = mine;
    panel.onDidDispose(() => {
      mine.dispose();
      if (current === mine) current = undefined;
    });
  };
  const turnedTo = (uri: string, procedure: string): boolean => {
    current?.turnTo(uri, procedure);
    return current !== undefined;
  };
  const serializer = window.registerWebviewPanelSerializer(PREVIEW_TYPE, {
    deserializeWebviewPanel: async (panel, state: unknown) => {
      // What another version kept may look otherwise.
      if (kept(state)) show(panel, state.shown);
      else panel.dispose();
    },
  });
  return {
    open: async (given) => {
      const chosen = chosenFile(given);
      if (chosen === undefined) {
        void window.showWarningMessage(l10n.t("There is nothing to preview here. Open a Sprag file first."));
        return;
      }
      const { uri, procedure = "" } = chosen;
      if (turnedTo(uri, procedure)) return;
      const viewColumn = await columnFor(editorOf(uri));
      // It may have been asked for twice.
      if (turnedTo(uri, procedure)) return;
      const panel = window.createWebviewPanel(PREVIEW_TYPE, "", { viewColumn, preserveFocus: true });
      show(panel, { uri, procedure, as: "checklist", units: unitsFor(uri), repeats: "compact", set: {} });
    },
    told: (status) => {
      if (status.state === "checked") current?.checked();
    },
    dispose: () => {
      serializer.dispose();
      current?.dispose();
    },
  };
}

interface Panel extends Disposable {
  readonly turnTo: (uri: string, procedure: string) => void;
  readonly checked: () => void;
}

function followText(
  session: Session,
  panel: WebviewPanel,
  first: Shown,
  exportShown: (given: ExportArguments) => void,
): Panel {
  const { extensionUri } = session.context;
  let shown = first;
  /** What is on the page, with its rows; both stay while the text is not good. */
  let answer: Done | undefined;
  let good: (ToPage & { readonly kind: "content" }) | undefined;
  let standing: ToPage = { kind: "standing", stale: false, words: "" };
  let isReady = false;
  let isOver = false;
  let asking: { readonly checked: boolean; readonly source: CancellationTokenSource } | undefined;
  let waiting: boolean | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const post = (message: ToPage | undefined): void => {
    if (message !== undefined && isReady && !isOver) void panel.webview.postMessage(message);
  };
  /** The pictures that the page has. */
  const figures = new Map<string, ToPage & { readonly kind: "figure" }>();
  const showFigures = async (told: Done, again: boolean): Promise<void> => {
    for (const { src, uri } of told.figures) {
      if (figures.has(src) && !again) continue;
      const bytes = await bytesOf(Uri.parse(uri));
      if (bytes === null) continue;
      const data = `${src.slice(0, src.indexOf(",") + 1)}${base64(bytes)}`;
      if (figures.get(src)?.data === data) continue;
      const figure = { kind: "figure", src, data } as const;
      figures.set(src, figure);
      post(figure);
    }
  };
  const stand = (stale: boolean, words: string): void => {
    standing = { kind: "standing", stale, words };
    post(standing);
  };
  const named = (): void => {
    const { path } = Uri.parse(shown.uri);
    panel.title = l10n.t("Preview of {0}", path.slice(path.lastIndexOf("/") + 1));
  };
  const later = (): void => {
    clearTimeout(resting);
    resting = setTimeout(() => void update(false), REST);
  };
  /** One question at a time: while its answer is awaited, what comes in waits for the next, so that a fast writer sees something. */
  const update = async (checked: boolean): Promise<void> => {
    if (!panel.visible || isOver) return;
    // What takes long is given up for a newer text.
    if (asking?.checked === true) asking.source.cancel();
    else if (asking !== undefined) {
      waiting = checked || waiting === true;
      return;
    }
    const mine = { checked, source: new CancellationTokenSource() };
    asking = mine;
    const { uri, procedure, as, units, repeats, set } = shown;
    const language = outputLanguage();
    const params = { uri, as, units, repeats, language, set, checked, ...(procedure === "" ? {} : { procedure }) };
    // Where the server is gone, that is told elsewhere, and the next one is asked again.
    const told = await ask(session.run, "sprag/preview", params, mine.source.token).catch(() => undefined);
    if (asking !== mine || isOver) return;
    asking = undefined;
    if (told?.kind === "done") {
      take(told);
      void showFigures(told, checked);
    } else if (told !== undefined) stand(good !== undefined, `${told.message} ${told.remedy}`);
    if (waiting === undefined) return;
    const next = waiting;
    waiting = undefined;
    void update(next);
  };
  const take = (told: Done): void => {
    const { procedure, as, set, content, form, procedures, options } = told;
    const now = { ...shown, procedure, as, set };
    if (!told.whole && JSON.stringify(now) === JSON.stringify(good?.shown)) {
      stand(true, l10n.t("A line cannot be read yet. This is how it was before."));
      return;
    }
    answer = told;
    shown = now;
    const outputs = told.outputs.map((name) => ({ name, title: outputWords(name) }));
    const next = { kind: "content", shown, content, form, outputs, procedures, options } as const;
    // A check that found nothing new says all of it again.
    const isNew = good?.content !== content || JSON.stringify({ ...good, content }) !== JSON.stringify(next);
    good = next;
    if (isNew) post(good);
    stand(false, told.whole ? "" : l10n.t("A line cannot be read; what it says is missing here."));
    followCursor(editorOf(shown.uri));
  };
  const followCursor = (editor: TextEditor | undefined): void => {
    if (editor === undefined || answer === undefined) return;
    const uri = editor.document.uri.toString();
    const row = rowAt(answer.rows, (one) => sameFile(one, uri), editor.selection.active.line);
    // In another file, nothing is said of where the reader is in this one.
    if (row !== undefined || uri === shown.uri) post({ kind: "here", id: row?.id ?? "" });
  };
  const turnTo = (uri: string, procedure: string): void => {
    if (uri !== shown.uri) shown = { ...shown, uri, set: {} };
    if (procedure !== "" || uri !== good?.shown.uri) shown = { ...shown, procedure };
    named();
    void update(true);
  };
  /** Another file with a procedure is shown instead, but for one that what is shown comes from too. */
  const followEditor = async (editor: TextEditor | undefined): Promise<void> => {
    followCursor(editor);
    // Of two sides that are compared, one may be an older text.
    const isAlone = window.tabGroups.activeTabGroup.activeTab?.input instanceof TabInputText;
    if (editor === undefined || editor.document.languageId !== "sprag" || !isAlone) return;
    const uri = editor.document.uri.toString();
    if (uri === shown.uri || answer?.rows.some((row) => sameFile(row, uri)) === true) return;
    const told = await ask(session.run, "sprag/outputs", { uri }).catch(() => undefined);
    if (told === undefined || told.procedures.length === 0 || isOver || (window.activeTextEditor ?? editor) !== editor)
      return;
    turnTo(uri, "");
  };
  const goTo = async (id: string): Promise<void> => {
    // The task around a step leads to the same row, and comes before it.
    const row = answer?.rows.findLast((one) => one.id === id);
    if (row === undefined) return;
    const uri = Uri.parse(row.uri);
    const viewColumn = editorOf(uri.toString())?.viewColumn ?? otherColumn(panel);
    const editor = await window.showTextDocument(uri, { viewColumn });
    const line = editor.document.lineAt(Math.min(row.first, editor.document.lineCount - 1));
    const at = line.range.start.translate(0, line.firstNonWhitespaceCharacterIndex);
    editor.selection = new Selection(at, at);
    editor.revealRange(line.range, TextEditorRevealType.InCenterIfOutsideViewport);
  };
  const heard = (message: unknown): void => {
    if (!fromPage(message)) return;
    switch (message.kind) {
      case "ready":
        isReady = true;
        post(good);
        for (const figure of figures.values()) post(figure);
        post(standing);
        followCursor(editorOf(shown.uri));
        void update(answer === undefined);
        return;
      case "choose": {
        const { kind: _, ...chosen } = message;
        shown = { ...shown, ...chosen };
        void update(true);
        return;
      }
      case "row":
        void goTo(message.id);
        return;
      case "export": {
        const { uri, procedure, as, units, repeats, set } = shown;
        exportShown({ uri, procedure, as, units, repeats, set });
      }
    }
  };

  panel.webview.options = { enableScripts: true, localResourceRoots: [Uri.joinPath(extensionUri, "dist")] };
  panel.iconPath = Uri.joinPath(extensionUri, "icons", "icon.png");
  const ends = [
    panel.webview.onDidReceiveMessage(heard),
    workspace.onDidChangeTextDocument(({ document: { languageId, uri } }) => {
      if (languageId === "sprag" || uri.path.endsWith(".csv")) later();
    }),
    window.onDidChangeTextEditorSelection(({ textEditor }) => followCursor(textEditor)),
    window.onDidChangeActiveTextEditor((editor) => void followEditor(editor)),
    panel.onDidChangeViewState(() => {
      if (panel.visible) void update(false);
      // Its page ends when it is covered, and says that it is ready when it comes again.
      else isReady = false;
    }),
  ];
  named();
  panel.webview.html = pageHtml(panel.webview, extensionUri, nonce());
  return {
    turnTo: (uri, procedure) => {
      panel.reveal(undefined, true);
      turnTo(uri, procedure);
    },
    checked: () => void update(true),
    dispose: () => {
      isOver = true;
      clearTimeout(resting);
      asking?.source.cancel();
      for (const end of ends) end.dispose();
    },
  };
}

/** The innermost row around the line, else the last one before it. */
function rowAt(
  rows: readonly PreviewRow[],
  isHere: (row: PreviewRow) => boolean,
  line: number,
): PreviewRow | undefined {
  const own = rows.filter(isHere);
  const around = own.filter(({ first, last }) => first <= line && line <= last);
  const inner = around.reduce<PreviewRow | undefined>(
    (so, row) => (so === undefined || row.last - row.first <= so.last - so.first ? row : so),
    undefined,
  );
  return inner ?? own.filter(({ last }) => last < line).at(-1);
}

/** The server may spell an address in another way than the editor does. */
function sameFile({ uri }: PreviewRow, shownUri: string): boolean {
  return uri === shownUri || Uri.parse(uri).toString() === shownUri;
}

/** One that shows the file; where two do, the one in which the reader is. */
function editorOf(uri: string): TextEditor | undefined {
  const all = window.visibleTextEditors.filter(({ document }) => document.uri.toString() === uri);
  return all.find((editor) => editor === window.activeTextEditor) ?? all[0];
}

function otherColumn({ viewColumn }: WebviewPanel): ViewColumn {
  return viewColumn === ViewColumn.One ? ViewColumn.Beside : ViewColumn.One;
}

function unitsFor(uri: string): Settings["units"] {
  return workspace.getConfiguration("sprag", Uri.parse(uri)).get<Settings["units"]>("units", "both");
}

function nonce(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
