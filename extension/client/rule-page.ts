// The page of a rule: why it is there, an example that fails and the same made right. Opened from a finding's code, from a
// hover, or by name. Knows no rule itself.
import { commands, type Diagnostic, l10n, languages, type TextDocumentContentProvider, Uri, window } from "vscode";
import { ask } from "./asking.ts";
import type { Session } from "./session.ts";

/** Pages are documents of this scheme, which nobody can edit. */
export const RULE_SCHEME = "sprag-rule";

export function rulePages({ run }: Session): TextDocumentContentProvider {
  return {
    provideTextDocumentContent: async (uri) =>
      (await ask(run, "sprag/rule", { code: codeOf(uri) }))?.markdown ?? l10n.t("There is no such finding."),
  };
}

/** @param given a code; asked for where it is none */
export async function openRule({ run }: Session, given: unknown): Promise<void> {
  const code = typeof given === "string" ? given : await chooseCode();
  if (code === undefined) return;
  const page = await ask(run, "sprag/rule", { code });
  if (page === null) {
    void window.showWarningMessage(l10n.t("No finding is called {0}. Codes read like order.enclosed.", code));
    return;
  }
  const uri = pageOf(page.code);
  try {
    await commands.executeCommand("markdown.showPreviewToSide", uri);
  } catch {
    // An editor without its Markdown preview.
    await window.showTextDocument(uri, { preview: true });
  }
}

/** Codes of Sprag's findings lead to their pages. Documents, not commands: a hover opens no command. */
export function linkRules(diagnostics: Diagnostic[]): Diagnostic[] {
  for (const diagnostic of diagnostics) {
    const code = codeIn(diagnostic);
    if (code !== undefined) diagnostic.code = { value: code, target: pageOf(code) };
  }
  return diagnostics;
}

function pageOf(code: string): Uri {
  return Uri.from({ scheme: RULE_SCHEME, path: `/${code}.md` });
}

async function chooseCode(): Promise<string | undefined> {
  const here = window.activeTextEditor;
  const found = here === undefined ? [] : languages.getDiagnostics(here.document.uri);
  const atCursor = found.filter(({ range }) => here !== undefined && range.contains(here.selection.active));
  const codes = [...new Set([...atCursor, ...found].map(codeIn).filter((code) => code !== undefined))];
  if (codes.length > 0) return window.showQuickPick(codes, { placeHolder: l10n.t("Which finding?") });
  return window.showInputBox({ prompt: l10n.t("Code of a finding"), placeHolder: "order.enclosed" });
}

function codeIn({ source, code }: Diagnostic): string | undefined {
  if (source !== "sprag" || code === undefined) return undefined;
  return String(typeof code === "object" ? code.value : code);
}

function codeOf(uri: Uri): string {
  return uri.path.replace(/^\//, "").replace(/\.md$/, "");
}
