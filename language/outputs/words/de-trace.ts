// The fixed words of the matrix of sources, in German. Knows no format.
import type { Words } from "./en.ts";

export const deTrace: Words["trace"] = {
  title: "Werte und Schritte mit ihren Quellen",
  heads: {
    procedure: "Arbeitsanweisung",
    step: "Schritt",
    what: "Was",
    written: "Wert wie geschrieben",
    si: "Wert in SI",
    source: "Quelle",
    section: "Abschnitt",
    revision: "Revision",
    where: "Stelle",
  },
  step: "Schritt",
  none: "keine",
  unknown: "nicht bekannt",
  what: (what, of) => (of === "" ? what : `${what}: ${of}`),
  share: (share, of) => `${share} von ${of}`,
  named: (value, names) => `${value} (${names})`,
  sum: (values, without) => `${values} ${values === 1 ? "Wert" : "Werte"}, davon ${without} ohne Quelle.`,
};
