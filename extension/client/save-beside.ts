// Saves an output beside its procedure and offers to open it, on a disk, in a browser, in an untrusted folder. Knows
// nothing of what is in it.
import { commands, type ExtensionContext, env, l10n, UIKind, Uri, ViewColumn, window, workspace } from "vscode";

/** Writes the file unless that would lose somebody's work; tells where it is, or why not and what to do. */
export async function saveBeside(
  context: ExtensionContext,
  source: Uri,
  name: string,
  content: string | Uint8Array,
): Promise<void> {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  let target = await placeFor(context, source, name, bytes);
  while (target !== undefined) {
    const trouble = await write(context, target, bytes);
    if (trouble === null) return offerToOpen(target, content);
    const other = l10n.t("Save Elsewhere…");
    const choice = await window.showErrorMessage(
      l10n.t("{0} could not be saved here: {1}", nameOf(target), trouble),
      other,
    );
    target = choice === other ? await askWhere(target) : undefined;
  }
}

/** Beside its source; where the reader says, if that was never saved or somebody else's work is there. */
async function placeFor(
  context: ExtensionContext,
  source: Uri,
  name: string,
  bytes: Uint8Array,
): Promise<Uri | undefined> {
  if (source.scheme === "untitled") {
    const [folder] = workspace.workspaceFolders ?? [];
    return askWhere(folder === undefined ? undefined : Uri.joinPath(folder.uri, name));
  }
  const beside = Uri.joinPath(source, "..", name);
  return (await isOurs(context, beside, bytes)) ? beside : askBeforeReplacing(beside);
}

/** Nothing is there, the same is there, or what is there was written by us and not touched since. */
async function isOurs(context: ExtensionContext, target: Uri, bytes: Uint8Array): Promise<boolean> {
  try {
    const { mtime } = await workspace.fs.stat(target);
    if (context.workspaceState.get<number>(keyOf(target)) === mtime) return true;
    const there = await workspace.fs.readFile(target);
    return there.length === bytes.length && there.every((byte, at) => byte === bytes[at]);
  } catch {
    return true;
  }
}

async function askBeforeReplacing(target: Uri): Promise<Uri | undefined> {
  const replace = l10n.t("Replace");
  const other = l10n.t("Save Elsewhere…");
  const choice = await window.showWarningMessage(
    l10n.t("{0} is there already and was changed since it was exported.", nameOf(target)),
    replace,
    other,
  );
  if (choice === other) return askWhere(target);
  return choice === replace ? target : undefined;
}

async function askWhere(proposed: Uri | undefined): Promise<Uri | undefined> {
  const title = l10n.t("Where is it to be saved?");
  return window.showSaveDialog(proposed === undefined ? { title } : { title, defaultUri: proposed });
}

async function write(context: ExtensionContext, target: Uri, bytes: Uint8Array): Promise<string | null> {
  try {
    await workspace.fs.writeFile(target, bytes);
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  // Where the time cannot be had, the reader is asked next time; nothing worse.
  const time = await workspace.fs.stat(target).then(
    ({ mtime }) => mtime,
    () => undefined,
  );
  await context.workspaceState.update(keyOf(target), time);
  return null;
}

async function offerToOpen(target: Uri, content: string | Uint8Array): Promise<void> {
  const isLocal = target.scheme === "file" && env.uiKind === UIKind.Desktop && env.remoteName === undefined;
  const open = l10n.t("Open");
  const said =
    isLocal || typeof content !== "string" || !content.includes("<script")
      ? l10n.t("Saved as {0}.", nameOf(target))
      : l10n.t(
          "Saved as {0}. Here it is shown as on paper; to fill it in, open the file in a browser.",
          nameOf(target),
        );
  if ((await window.showInformationMessage(said, open)) !== open) return;
  if (target.path.endsWith(".md")) {
    await commands.executeCommand("markdown.showPreview", target);
    return;
  }
  if (isLocal && (await env.openExternal(target))) return;
  if (typeof content !== "string" || !/\.(?:html|svg)$/.test(target.path)) {
    await commands.executeCommand("vscode.open", target);
    return;
  }
  // No browser can open a file of another machine or of a virtual folder. Its scripts do not run here.
  const panel = window.createWebviewPanel("sprag.output", nameOf(target), ViewColumn.Beside, { enableScripts: false });
  panel.webview.html = content;
}

function keyOf(target: Uri): string {
  return `exported:${target.toString()}`;
}

function nameOf(target: Uri): string {
  return target.path.slice(target.path.lastIndexOf("/") + 1);
}
