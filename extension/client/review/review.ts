// The review of a file against the last commit: gathers the older texts, asks the server, shows the changes and opens both sides of
// each. Knows no history itself.
import {
  commands,
  Disposable,
  l10n,
  Range,
  Selection,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  window,
  workspace,
} from "vscode";
import type { OldText, Place, ReviewAnswer, ReviewChange } from "../../../language/server/protocol.ts";
import { ask } from "../asking.ts";
import { chosenFile } from "../chosen-file.ts";
import type { Session } from "../session.ts";
import { type LastCommit, lastCommitFor, watchChanged } from "./git.ts";
import { createChangesTree } from "./tree.ts";

const VIEW = "sprag.changes";

/** Registers the view and its commands. */
export function createReview(session: Session): Disposable {
  const tree = createChangesTree();
  const view = window.createTreeView(VIEW, { treeDataProvider: tree, showCollapseAll: true });
  let shown: { readonly uri: Uri; readonly commit: LastCommit } | undefined;

  const review = async (uri: Uri): Promise<void> => {
    try {
      const commit = await lastCommitFor(uri);
      const answer = await withProgress(() => changesSince(session, commit, uri));
      if (answer.kind === "refused") throw new Error(`${answer.message} ${answer.remedy}`);
      shown = { uri, commit };
      tree.show(answer.changes);
      view.description = l10n.t("{0}, since the last commit", nameOf(uri));
      view.message = messageFor(answer);
      await commands.executeCommand("setContext", "sprag.hasReview", true);
    } catch (error) {
      void window.showWarningMessage(error instanceof Error ? error.message : String(error));
    }
  };
  const openReview = async (given: unknown): Promise<void> => {
    const chosen = chosenFile(given);
    if (chosen === undefined) {
      void window.showWarningMessage(l10n.t("There is nothing to review here. Open a Sprag file first."));
      return;
    }
    await review(Uri.parse(chosen.uri));
    if (shown?.uri.toString() === Uri.parse(chosen.uri).toString()) await commands.executeCommand(`${VIEW}.focus`);
  };
  const openChange = async (change: ReviewChange): Promise<void> => {
    if (shown !== undefined) await openSides(change, shown.uri, shown.commit);
  };
  const again = (uri: Uri): void => {
    if (shown !== undefined && view.visible && (uri.toString() === shown.uri.toString() || uri.path.endsWith(".csv")))
      void review(shown.uri);
  };

  const ends: Disposable[] = [
    view,
    commands.registerCommand("sprag.review", openReview),
    commands.registerCommand("sprag.openChange", openChange),
    workspace.onDidSaveTextDocument(({ uri }) => again(uri)),
  ];
  void watchChanged((changed) => {
    // By path: the workbench calls a folder on another machine by another address than an extension does there.
    const names = changed.filter(({ path }) => path.endsWith(".sprag")).map(({ fsPath }) => fsPath);
    void commands.executeCommand("setContext", "sprag.changedFiles", names);
  }).then((watch) => ends.push(watch));
  return { dispose: () => Disposable.from(...ends).dispose() };
}

type Answer = Exclude<ReviewAnswer, { readonly kind: "wanted" }>;

/** Asks with the older text of the file, and then of what that used, until the server wants no more. */
async function changesSince({ run }: Session, commit: LastCommit, uri: Uri): Promise<Answer> {
  const old: OldText[] = [{ uri: uri.toString(), text: await commit.textOf(uri) }];
  for (;;) {
    const answer = await ask(run, "sprag/review", { uri: uri.toString(), old });
    if (answer.kind !== "wanted") return answer;
    const more = answer.uris.filter((wanted) => !old.some((one) => one.uri === wanted));
    if (more.length === 0)
      throw new Error(l10n.t("The older texts could not be read. Try again; your text is untouched."));
    old.push(
      ...(await Promise.all(more.map(async (one) => ({ uri: one, text: await commit.textOf(Uri.parse(one)) })))),
    );
  }
}

function messageFor({ changes, unread }: Answer & { readonly kind: "done" }): string {
  const said = [
    ...(changes.length === 0 ? [l10n.t("Nothing has changed since the last commit.")] : []),
    ...unread.map((uri) => l10n.t("{0} can be read in part only; the rest was not compared.", nameOf(Uri.parse(uri)))),
  ];
  return said.join(" ");
}

/** The old text beside the new one, each at the place; one side where the file was not there, or is not there any more. */
async function openSides({ old, new: now }: ReviewChange, file: Uri, commit: LastCommit): Promise<void> {
  const fileNow = Uri.parse(now?.uri ?? old?.uri ?? file.toString());
  const fileOld = commit.addressOf(Uri.parse(old?.uri ?? now?.uri ?? file.toString()));
  const title = l10n.t("{0}: last commit and now", nameOf(fileNow));
  await commands.executeCommand(
    "vscode.diff",
    fileOld,
    fileNow,
    title,
    now === undefined ? {} : { selection: rangeOf(now) },
  );
  for (const [uri, place] of [
    [fileOld, old],
    [fileNow, now],
  ] as const) {
    const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    if (place !== undefined && editor !== undefined) showPlace(editor, rangeOf(place));
  }
}

function showPlace(editor: TextEditor, range: Range): void {
  editor.selection = new Selection(range.start, range.end);
  editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
}

function rangeOf({ range: { start, end } }: Place): Range {
  return new Range(start.line, start.character, end.line, end.character);
}

function withProgress<Result>(work: () => Promise<Result>): Thenable<Result> {
  return window.withProgress({ location: { viewId: VIEW } }, work);
}

function nameOf(uri: Uri): string {
  return uri.path.slice(uri.path.lastIndexOf("/") + 1);
}
