// Words of the language and of the checker as German has them. Knows no output.

/** A quantity as the language writes it, with its words in German. */
export function quantityText(text: string): string {
  return text.replace(SPELT, (spelt) => QUANTITY_WORDS[spelt] ?? spelt);
}

/** Words of the language itself in a quantity. Numbers and units stay as the procedure has them. */
const QUANTITY_WORDS: Readonly<Record<string, string>> = {
  "at most": "höchstens",
  "at least": "mindestens",
  "o'clock": "Uhr",
  turn: "Umdrehung",
};
const SPELT = /\bat (?:most|least)\b|\bo'clock\b|\bturn\b/g;

/** What a check is about, as the checker calls it. */
const TERMS: Readonly<Record<string, string>> = {
  preload: "Vorspannkraft",
  "adapter offset": "Versatz des Aufsatzes",
  "adapter angle": "Winkel des Aufsatzes",
  "torque condition": "Reibzustand beim Anziehen",
  "tool range": "Messbereich des Werkzeugs",
  "tool accuracy": "Genauigkeit des Werkzeugs",
  "temperature to fit": "Fügetemperatur",
  load: "Last",
  oxygen: "Sauerstoff",
  "measurement range": "Messbereich",
  "heating range": "Heizbereich",
  remainder: "Rest",
  balance: "Unwucht",
  "nut factor": "Reibbeiwert (K)",
  thread: "Gewinde",
  "class or grade": "Festigkeitsklasse",
  "upper torque": "oberes Drehmoment",
  "lower torque": "unteres Drehmoment",
  "prevailing torque": "Losdrehmoment der Sicherung",
  "torque above the prevailing torque": "Drehmoment über dem Losdrehmoment der Sicherung",
  expansion: "Wärmedehnung",
  "expansion below −50 °C": "Wärmedehnung unter −50 °C",
  mass: "Masse",
  amount: "Menge",
  room: "Raumvolumen",
  "sling legs": "Angabe der Stränge",
  "angle to the horizontal": "Winkel zur Waagerechten",
  reach: "Griffweite",
  height: "Höhe",
  travel: "Hubweg",
  twist: "Körperdrehung",
  range: "Bereich",
  radius: "Radius",
  speed: "Drehzahl",
  grade: "Wuchtgüte",
  "known grade": "bekannte Wuchtgüte",
  value: "Wert",
  torque: "Drehmoment",
  accuracy: "Genauigkeit",
  arm: "Armlänge",
  offset: "Versatz",
  angle: "Winkel",
  resolution: "Auflösung",
};

/** As a workshop calls it; left as it is where it is none of the checker's terms. */
export function term(text: string): string {
  return TERMS[text] ?? text;
}
