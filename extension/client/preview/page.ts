// The empty page of the preview: its bar in the reader's language, and a place for the output. Nothing of a procedure is in it;
// the page's script puts that in as text that was checked to be no script.
import { env, l10n, Uri, type Webview } from "vscode";

/** @param nonce of this page alone: without it nothing runs */
export function pageHtml(webview: Webview, extension: Uri, nonce: string): string {
  const script = webview.asWebviewUri(Uri.joinPath(extension, "dist", "preview-page.js")).toString();
  // The page's script hands style sheets to the browser itself, so that no text can bring any.
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'; img-src data:; form-action 'none'; base-uri 'none'`;
  return `<!doctype html>
<html lang="${escaped(env.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escaped(l10n.t("Preview"))}</title>
</head>
<body>
<div id="preview-bar"></div>
<template id="bar-content">
<form aria-label="${escaped(l10n.t("What is shown"))}">
${choice("as", l10n.t("Output"))}
${choice("procedure", l10n.t("Procedure"))}
${choice("units", l10n.t("Units"), { both: l10n.t("both"), si: l10n.t("metric"), us: l10n.t("US customary") })}
${choice("repeats", l10n.t("Repeats"), { compact: l10n.t("once, with a tick for each pass"), full: l10n.t("each pass") })}
<details hidden><summary>${escaped(l10n.t("Options"))}</summary><div id="options" data-open="${escaped(l10n.t("open"))}"></div></details>
<button type="button" id="export">${escaped(l10n.t("Export…"))}</button>
</form>
<p role="status"></p>
</template>
<div id="preview-sheet"></div>
<script nonce="${nonce}" src="${escaped(script)}"></script>
</body>
</html>
`;
}

/** A choice with its words; one without is filled in by the script. */
function choice(name: string, label: string, words: Readonly<Record<string, string>> = {}): string {
  const options = Object.entries(words).map(
    ([value, said]) => `<option value="${escaped(value)}">${escaped(said)}</option>`,
  );
  return `<label>${escaped(label)} <select name="${name}">${options.join("")}</select></label>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
