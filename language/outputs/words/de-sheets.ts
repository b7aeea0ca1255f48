// The fixed words of the sheets beside the checklist, in German. Knows no format.
import type { Words } from "./en.ts";

export const deSheets: Pick<Words, "trainee" | "assessor" | "kit" | "diagram" | "dita"> = {
  trainee: {
    title: (title) => `${title} – Übungsblatt`,
    gap: (number) => `(${number}) ________`,
    answers: "Lösungen zu den Lücken",
    gapNumber: "Lücke",
    answer: "Lösung",
    askedBelow: "wird in den Schritten gefragt",
    filledBy: "Ausgefüllt von",
    trainee: "Lernende Person",
  },
  assessor: {
    title: (title) => `${title} – Bewertung`,
    observed: "Was zu sehen sein muss",
    unprompted: "Ohne Hinweis getan",
    prompted: "Mit Hinweis getan",
    notDone: "Nicht getan",
    critical: (text) => `${text} (kritisch)`,
    wears: (what) => `Trägt: ${what}.`,
    writesDown: (what) => `Trägt ein: ${what}.`,
    result: "Ergebnis",
    sum: "Summe",
    outOf: "Von",
    criticalUnprompted: "Kritische Handlungen ohne Hinweis",
    people: "Bewertete Person, Bewertende, Datum",
    rule: (critical) =>
      critical === 0
        ? "Bestanden, wenn keine Handlung ausgeblieben ist."
        : "Bestanden, wenn jede kritische Handlung ohne Hinweis getan wurde und keine Handlung ausgeblieben ist. Eine kritische Handlung mit Hinweis oder gar nicht getan: nicht bestanden.",
    share: "Welcher Anteil der übrigen Handlungen ohne Hinweis getan sein muss, sagt der Ausbildungsplan.",
  },
  kit: {
    title: (title) => `${title} – Bereitstellliste`,
    doses: (amount, times) => (times === 1 ? amount : `${amount}, ${times}-mal`),
    doseFor: (amount, what) => `${amount} für ${what}`,
    inAll: (amount) => `${amount} insgesamt`,
    fresh: "Neu",
    open: "Varianten sind noch offen: Aufgeführt ist, was irgendeine Wahl davon braucht.",
    once: "Für einen Durchlauf. Wird Arbeit nach einer Prüfung wiederholt, braucht es mehr.",
  },

  diagram: {
    title: (title) => `${title} – Arbeitsablauf`,
    start: "Beginn",
    end: "Ende",
    hold: (roles) => `Haltepunkt: ${roles}`,
    key: "Zeichenerklärung",
    step: "ein Schritt",
    critical: "ein kritischer Schritt",
    holdPoint: "ein Haltepunkt: nicht weiter ohne Unterschrift",
    back: "zurück, noch einmal ausführen",
  },

  dita: {
    noAvoidance: "Die Arbeitsanweisung sagt nicht, wie. Vor Beginn fragen.",
    inCase: (heading) => `${heading} `,
    tick: (label) => `☐ ${label}`,
  },
};
