// Outputs and their formats in a reader's words, and the language that they are written in. The registry is the server's:
// one that has no words here is called by its name.
import { env, l10n } from "vscode";

/** Of the words that an output adds to those of the procedure: the reader's, where outputs know it. */
export function outputLanguage(): "de" | "en" {
  return /^de\b/i.test(env.language) ? "de" : "en";
}

export function outputWords(name: string): string {
  const words: Readonly<Record<string, string>> = {
    checklist: l10n.t("Checklist"),
    trainee: l10n.t("Trainee's sheet"),
    assessor: l10n.t("Assessor's sheet"),
    kit: l10n.t("Kit list"),
    diagram: l10n.t("Order of work, as a diagram"),
    dita: l10n.t("DITA task"),
    trace: l10n.t("Sources and where they are used"),
  };
  return words[name] ?? name;
}

export function formatWords(format: string): string {
  const words: Readonly<Record<string, string>> = {
    html: l10n.t("Web page for a tablet or the printer"),
    pdf: l10n.t("PDF to print"),
    docx: l10n.t("Word document"),
    xlsx: l10n.t("Excel workbook"),
    csv: l10n.t("Table as text (CSV)"),
    md: l10n.t("Markdown text"),
    json: l10n.t("Data for programs (JSON)"),
    svg: l10n.t("Picture (SVG)"),
    xml: l10n.t("XML for other systems"),
  };
  return words[format] ?? format;
}
