// What the server itself says to a reader, beside findings and the language's own help, in the client's language. The English
// sentence is the key, as in the extension's `l10n/`; one that has no German is a type error.

export const GERMAN = {
  // Lenses above procedures, hints behind `repeat`.
  "1 step": "1 Schritt",
  "{0} steps": "{0} Schritte",
  "too many steps": "zu viele Schritte",
  export: "ausgeben",
  "performed by 1 procedure": "ausgeführt von 1 Arbeitsanweisung",
  "performed by {0} procedures": "ausgeführt von {0} Arbeitsanweisungen",
  once: "einmal",
  "set to {0}": "einstellen auf {0}",
  "{0} times": "{0}-mal",
  // The work on folders.
  "Sprag: reading procedures": "Sprag: Arbeitsanweisungen werden gelesen",
  "Sprag: checking procedures": "Sprag: Arbeitsanweisungen werden geprüft",
  "{0} of {1} files": "{0} von {1} Dateien",
  "Reading the folder was cancelled.": "Das Lesen des Ordners wurde abgebrochen.",
  "The check of the folder was cancelled.": "Das Prüfen des Ordners wurde abgebrochen.",
  "Another check of the folder was begun.": "Der Ordner wird von Neuem geprüft.",
  // Links.
  "Open the file that is used: {0}": "Benutzte Datei öffnen: {0}",
  "Open the figure: {0}": "Bild öffnen: {0}",
  "Open the table: {0}": "Tabelle öffnen: {0}",
  // Why nothing was exported.
  "This file is not known to Sprag.": "Diese Datei kennt Sprag nicht.",
  "Save it with the ending .sprag and try again.":
    "Speichern Sie sie mit der Endung .sprag und versuchen Sie es noch einmal.",
  "The procedure has 1 error.": "Die Arbeitsanweisung hat 1 Fehler.",
  "The procedure has {0} errors.": "Die Arbeitsanweisung hat {0} Fehler.",
  "Mend what the list of problems shows, or export a draft that says so on every page.":
    "Beheben Sie, was die Liste der Probleme zeigt, oder geben Sie einen Entwurf aus, auf dem das auf jeder Seite steht.",
  "This file has no procedure.": "Diese Datei hat keine Arbeitsanweisung.",
  "Open a file with a procedure and export that.":
    "Öffnen Sie eine Datei mit einer Arbeitsanweisung und geben Sie diese aus.",
  "This file has several procedures.": "Diese Datei hat mehrere Arbeitsanweisungen.",
  "There is no output “{0}”.": "Eine Ausgabe „{0}“ gibt es nicht.",
  "There is no {0} as {1}.": "Die Ausgabe {0} gibt es nicht als {1}.",
  "There is no language “{0}”.": "Die Sprache „{0}“ gibt es nicht.",
  // Why nothing was compared.
  "This file was not there before.": "Diese Datei gab es vorher nicht.",
  "All of it is new: read it as a whole.": "Alles darin ist neu: lesen Sie sie ganz.",
  "The document could not be written.": "Das Dokument konnte nicht geschrieben werden.",
  "Install Sprag again and try once more.": "Installieren Sie Sprag neu und versuchen Sie es noch einmal.",
  "Choose one: {0}.": "Wählen Sie eine davon: {0}.",
} as const satisfies Readonly<Record<string, string>>;

/** What can be said; `{0}` and `{1}` are filled in. */
export type Text = keyof typeof GERMAN;

/** A text in the client's language. */
export type Say = (text: Text, ...filled: readonly (string | number)[]) => string;

/** @param locale of the client, such as `de-AT`; English where it is another or none */
export function wordsFor(locale: string | undefined): Say {
  const isGerman = /^de\b/i.test(locale ?? "");
  return (text, ...filled) =>
    (isGerman ? GERMAN[text] : text).replace(/\{(\d)\}/g, (_, at) => String(filled[Number(at)] ?? ""));
}
