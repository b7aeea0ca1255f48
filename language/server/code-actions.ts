// Quick fixes: what the rules offer for a finding, the same for all findings of a kind where nothing can go wrong, what makes a name
// known, and an `allow` with a reason to be given. Knows no rule.
import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { mayBeAllowed } from "#rules/allow.ts";
import type { ReportedFinding } from "#workspace/report.ts";
import { allowEdit } from "./allow-line.ts";
import type { DiagnosticData } from "./diagnostics.ts";
import type { Feature } from "./feature.ts";
import { findingsIn } from "./findings.ts";
import { missingNameFixes } from "./missing-name.ts";
import { type FileView, offsetOf } from "./view.ts";
import { canTakeSnippets, type TextChange, workspaceEdit } from "./workspace-edit.ts";

const FIX_ALL = `${CodeActionKind.SourceFixAll}.sprag`;

export const codeActions: Feature = {
  capabilities: (client) =>
    takesActions(client) ? { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] } } : {},
  start: (session) => {
    session.connection.onCodeAction((params, token) =>
      session.ask<CodeAction[]>(
        params.textDocument.uri,
        token,
        (view) => (takesActions(session.client) ? [...actionsFor(view, params, session.client)] : []),
        [],
      ),
    );
  },
};

/** Others only take commands, and there is none for an edit. */
function takesActions({ textDocument }: ClientCapabilities): boolean {
  return textDocument?.codeAction?.codeActionLiteralSupport !== undefined;
}

function actionsFor(
  view: FileView,
  { context: { diagnostics, only } }: Pick<CodeActionParams, "context">,
  client: ClientCapabilities,
): readonly CodeAction[] {
  const wants = (kind: string): boolean => only?.some((one) => kind === one || kind.startsWith(`${one}.`)) ?? true;
  const actions: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) {
    const matters = mattersOf(view, diagnostics);
    for (const matter of matters) actions.push(...fixesFor(view, matter, client), ...nameFixes(view, matter, client));
    for (const code of new Set(matters.map(({ code }) => code))) actions.push(...fixAlike(view, code, matters, client));
    for (const matter of matters) actions.push(...allowFor(view, matter, client));
  }
  // On saving, say; never offered unasked.
  if (only !== undefined && wants(FIX_ALL)) actions.push(...fixAll(view, client));
  return actions;
}

/** A finding, and how the client shows it. */
interface Matter {
  readonly diagnostic: Diagnostic;
  readonly code: string;
  readonly fixes: DiagnosticData["fixes"];
  readonly isAllowed: boolean;
}

/** What came along with a diagnostic holds for the text it was found in; for another text, or where nothing came, it is found anew. */
function mattersOf(view: FileView, diagnostics: readonly Diagnostic[]): readonly Matter[] {
  return diagnostics.flatMap((diagnostic): readonly Matter[] => {
    const { code, data, source } = diagnostic;
    if (source !== "sprag" || typeof code !== "string") return [];
    if (isData(data) && data.version === view.folder.open.get(view.path)?.version)
      return [{ diagnostic, code, fixes: data.fixes, isAllowed: data.isAllowed }];
    return findingsIn(view.workspace, view.path)
      .filter((finding) => finding.code === code && isSamePlace(finding, diagnostic))
      .slice(0, 1)
      .map(({ fixes = [], allowed }) => ({ diagnostic, code, fixes, isAllowed: allowed !== undefined }));
  });
}

function isData(data: unknown): data is DiagnosticData {
  return typeof data === "object" && data !== null && "fixes" in data && Array.isArray(data.fixes);
}

function isSamePlace({ range: a }: ReportedFinding, { range: b }: Diagnostic): boolean {
  return (
    a.start.line === b.start.line &&
    a.start.character === b.start.character &&
    a.end.line === b.end.line &&
    a.end.character === b.end.character
  );
}

function fixesFor(view: FileView, { diagnostic, fixes }: Matter, client: ClientCapabilities): readonly CodeAction[] {
  return fixes.map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    // Where there are several, only the writer can know which.
    ...(fixes.length === 1 ? { isPreferred: true } : {}),
    edit: editOf(view, edits, client),
  }));
}

/** What the folder can tell of a name, and no rule, which sees one file and what that uses. */
function nameFixes(view: FileView, { diagnostic }: Matter, client: ClientCapabilities): readonly CodeAction[] {
  return missingNameFixes(view, diagnostic.range, canTakeSnippets(client)).map(({ title, edit }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    edit: editOf(view, [{ path: view.path, ...edit }], client),
  }));
}

/** Codes whose one fix says the same as before, only as it should be written. */
const ALIKE: ReadonlySet<string> = new Set([
  ...["syntax.character", "syntax.decimal-comma", "syntax.dash-range", "units.style", "trace.unused-allow"],
]);

function fixAlike(
  view: FileView,
  code: string,
  matters: readonly Matter[],
  client: ClientCapabilities,
): readonly CodeAction[] {
  if (!ALIKE.has(code)) return [];
  const { edits, count } = editsOfAll(view, (one) => one === code);
  if (count < 2) return [];
  return [
    {
      title: `Mend all ${count} of this kind in the file (${code})`,
      kind: CodeActionKind.QuickFix,
      diagnostics: matters.filter((matter) => matter.code === code).map(({ diagnostic }) => diagnostic),
      edit: editOf(view, edits, client),
    },
  ];
}

function fixAll(view: FileView, client: ClientCapabilities): readonly CodeAction[] {
  const { edits, count } = editsOfAll(view, (code) => ALIKE.has(code));
  if (count === 0) return [];
  return [{ title: "Mend spelling and leftovers in the file", kind: FIX_ALL, edit: editOf(view, edits, client) }];
}

/** The fixes of all findings with such a code that have exactly one; of those that get in each other's way the first. */
function editsOfAll(
  view: FileView,
  isMeant: (code: string) => boolean,
): { readonly edits: readonly TextChange[]; readonly count: number } {
  const taken: TextChange[] = [];
  let lastEnd = -1;
  let count = 0;
  for (const { code, fixes = [], allowed } of findingsIn(view.workspace, view.path)) {
    const [fix] = fixes;
    if (!isMeant(code) || allowed !== undefined || fix === undefined || fixes.length > 1) continue;
    const places = fix.edits.map(({ range }) => [offsetOf(view, range.start), offsetOf(view, range.end)] as const);
    if (fix.edits.some(({ path }) => path !== view.path) || places.some(([start]) => start < lastEnd)) continue;
    taken.push(...fix.edits);
    lastEnd = Math.max(lastEnd, ...places.map(([, end]) => end));
    count++;
  }
  return { edits: taken, count };
}

/** Nothing for what nothing may allow, nor for an `allow` that has no work. */
function allowFor(
  view: FileView,
  { diagnostic, code, isAllowed }: Matter,
  client: ClientCapabilities,
): readonly CodeAction[] {
  if (isAllowed || !mayBeAllowed(code) || code.endsWith("-allow")) return [];
  const made = allowEdit(view, diagnostic.range, code, canTakeSnippets(client));
  if (made === null) return [];
  return [
    {
      title: `Allow ${code} ${made.where}, with a reason`,
      kind: CodeActionKind.QuickFix,
      diagnostics: [diagnostic],
      edit: editOf(view, [{ path: view.path, ...made.edit }], client),
    },
  ];
}

function editOf(view: FileView, changes: readonly TextChange[], client: ClientCapabilities): WorkspaceEdit {
  return workspaceEdit(view.folder, changes, client);
}
