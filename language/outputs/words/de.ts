// Every fixed word that outputs print, in German, as a workshop writes it: what is to be done stands at the end, without articles, so that a
// title fits whatever its gender. Knows no format.

import { dePage } from "./de-page.ts";
import { deSheets } from "./de-sheets.ts";
import { quantityText, term } from "./de-terms.ts";
import { deTrace } from "./de-trace.ts";
import type { Words } from "./en.ts";

export const de: Words = {
  language: "de",
  direction: "ltr",

  // ISO 3864-2 in German: ACHTUNG and HINWEIS speak of things, not of people.
  signals: { danger: "GEFAHR", warning: "WARNUNG", caution: "ACHTUNG", note: "HINWEIS" },
  signalKey: {
    danger: "Wird es nicht vermieden, sind Tod oder schwere Verletzung die Folge.",
    warning: "Wird es nicht vermieden, können Tod oder Verletzung die Folge sein.",
    caution: "Es kann zu Sachschaden kommen. Nicht für Verletzungen verwendet.",
    note: "Gut zu wissen. Verlangt nichts.",
  },
  hazards: {
    burn: "Verbrennung",
    cold: "Kälteverbrennung",
    fire: "Brand",
    explosion: "Explosion",
    pressure: "Druck",
    electric: "elektrischer Schlag",
    lifting: "schwere Last",
    crush: "Quetschen",
    cutting: "Schneiden",
    rotating: "drehende Teile",
    spring: "Federkraft",
    fall: "Absturz",
    dropped: "herabfallende Last",
    eye: "Augenverletzung",
    skin: "Hautschaden",
    fumes: "Dämpfe",
    noise: "Lärm",
    damage: "Sachschaden",
    contamination: "Verschmutzung",
    overheating: "Überhitzung",
    overtorque: "Überdrehen",
    debris: "Fremdkörper",
  },
  severities: { error: "Fehler", warning: "Warnung", information: "Hinweis", hint: "Anregung" },

  labels: {
    document: "Dokument",
    title: "Titel",
    revision: "Revision",
    date: "Datum",
    appliesTo: "Gilt für",
    basedOn: "Grundlage",
    sources: "Angeführte Quellen",
    ambient: "Umgebungstemperatur",
    room: "Raumvolumen",
    crew: "Personen",
    options: "Gewählte Varianten",
    openOptions: "Vor Beginn zu entscheiden",
    units: "Einheiten",
    hash: "Prüfsumme der Eingaben",
    checkResult: "Prüfergebnis",
    allowed: "Zugelassene Befunde",
    findings: "Offene Befunde",
    errors: "Fehler, die zu beheben sind",
    draft: "ENTWURF",
    draftMeaning: "Nicht für die Arbeit freigegeben.",
    keyToSignals: "Bedeutung der Signalwörter",
    signalWord: "Signalwort",
    meaning: "Bedeutung",
    cautions: "Bevor Sie sich darauf verlassen",
    beforeStart: "Vor Beginn",
    parts: "Teile",
    tools: "Werkzeuge",
    consumables: "Hilfs- und Betriebsstoffe",
    part: "Teil",
    nameInText: "Name in der Arbeitsanweisung",
    count: "Anzahl",
    remarks: "Bemerkungen",
    tool: "Werkzeug",
    asked: "Was es können muss",
    used: "Hier gebraucht für",
    consumable: "Stoff",
    amount: "Menge",
    work: "Arbeit",
    avoid: "So vermeiden",
    wear: "Tragen",
    done: "Erledigt",
    round: "Durchgang",
    value: "Wert",
    source: "Quelle",
    figure: "Bild",
    why: "Warum",
    records: "Eintrag",
    limits: "Grenzen",
    reading: "Messwert",
    measuredWith: "Gemessen mit",
    ifItFails: "Wenn nicht in Ordnung",
    sign: "Abzeichnung",
    holdPoint: "HALTEPUNKT",
    role: "Funktion",
    name: "Name",
    signature: "Unterschrift",
    code: "Kennung",
    severity: "Schwere",
    place: "Ort",
    message: "Meldung",
    reason: "Grund",
    by: "Von",
    critical: "Kritischer Schritt",
    atTheEnd: "Nach der Arbeit",
    provenance: "Woher das stammt",
    step: "Schritt",
  },

  cautions: {
    everywhere: [
      "Maßgebend sind die freigegebenen Wartungsunterlagen, die örtlichen Vorschriften und befugte Fachleute. Weicht dieses Dokument davon ab: anhalten und fragen.",
      "Berechnete Werte sind Hilfen. Kein Befund heißt nicht sicher: Geprüft wurde nur, was die Arbeitsanweisung angibt.",
      "Ein Ausdruck wird nicht gepflegt. Vor Gebrauch mit der gültigen Revision vergleichen.",
    ],
    notChecked:
      "Nicht geprüft: Festigkeit von Teilen und Gewinden, Anschlagpunkte und Schwerpunkt, Zustand der Werkzeuge und alles, was die Arbeitsanweisung nicht nennt.",
    unchecked: (items) => `Nicht geprüft, weil Angaben fehlen: ${items.join("; ")}.`,
    uncheckedItem: (matter, of, lacks, when, holder) => {
      const use = when === null ? "" : when === "dry" ? " bei trockenem Gewinde" : ` bei ${when}`;
      return `${term(matter)} von ${of}: ${term(lacks)}${use} fehlt${holder === of ? "" : ` bei ${holder}`}`;
    },
    adapter:
      "Die Drehmomente gelten an der Schraube. Ein Aufsatz ändert, was am Schlüssel einzustellen ist: Der Einstellwert beim Schritt gilt für diesen Aufsatz, seinen Winkel und die Armlänge, die dabei steht: für jede andere neu ausrechnen. Griff nicht verlängern.",
    adapterListed:
      "Die Drehmomente gelten an der Schraube. Ein Aufsatz ändert, was am Schlüssel einzustellen ist: Einstellwert nehmen, der bei genau diesem Werkzeug steht, oder für eine andere Armlänge ausrechnen. Griff nicht verlängern. Nach jedem Werkzeugwechsel neu ausrechnen.",
    heating:
      "Erwärmen: Teil und Gegenstück am Anlegepunkt messen. Ein Teil gilt als heiß, bis es kalt gemessen ist. Klemmt es: abnehmen und neu erwärmen. Nicht schlagen.",
    cooling:
      "Kühlen: Teil und Gegenstück am Anlegepunkt messen. Ein Teil gilt als so kalt, dass es verletzt, bis es warm gemessen ist. Klemmt es: herausnehmen und neu kühlen. Nicht schlagen.",
    isolation:
      "„Freigeschaltet“ heißt hier, dass die Arbeitsanweisung es sagt. Am Arbeitsort die Energiefreiheit nachweisen.",
    lifting:
      "Heben: Massen wie angegeben. Schwerpunkt und Anschlagmittel wurden nicht geprüft. Niemand steht unter oder neben der Last.",
    gases:
      "Gase: Was verdampft, verdrängt die Luft. Den Sauerstoff messen, bevor jemand hineingeht und solange jemand dort ist: Kein berechneter Wert gibt den Zutritt frei.",
    hazards:
      "Gefährdungen: Die Grenzwerte gelten für gesunde Erwachsene und blankes Metall. Maßgebend sind die Gefährdungsbeurteilung des Betriebs und die Datenblätter.",
    twoPeople: "Ausführender und Prüfer sind zwei verschiedene Personen.",
  },

  list: (items) => (items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} und ${items.at(-1) ?? ""}`),
  comma: (items) => items.join(", "),
  oneOf: (items) =>
    items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} oder ${items.at(-1) ?? ""}`,
  range: (first, last) => `${first}–${last}`,
  sequence: (items) => items.join(" – "),
  quantity: quantityText,

  thing: ({ title, index, byName, fresh }) => {
    // Die Nummer gehört zum Hauptwort: `Kopfschraube 1–8, rechts`.
    const [, noun = title, beside = ""] = /^(.*?)((?:,| mit | ohne | für ).*)?$/s.exec(title) ?? [];
    const full = index === null ? title : byName ? `${title} (${index})` : `${noun} ${index}${beside}`;
    return fresh ? `${full} (neu)` : full;
  },
  position: (position, places) => `Position ${position} von ${places}`,
  ownPosition: (position) => `seine Position ${position}`,
  subject: (title) => title,

  sentence: (text) => {
    const trimmed = text.trim();
    return trimmed === "" || /[.!?:…]["“”’)]?$/.test(trimmed) ? trimmed : `${trimmed}.`;
  },

  actions: {
    install: (what, where, clock, tools) =>
      upper(`${what}${where === null ? "" : ` ${where}`}${clock === null ? "" : ` auf ${clock}`}${tools} einbauen.`),
    where: {
      in: (place) => `in ${place}`,
      on: (place) => `an ${place}`,
      over: (place) => `über ${place}`,
    },
    press: (what, where, tools) => upper(`${what} ${where}${tools} pressen.`),
    remove: (what, tools) => upper(`${what}${tools} ausbauen.`),
    discard: (what, tools) => upper(`${what}${tools} ausbauen und entsorgen.`),
    tighten: (what, how, tools) => upper(`${what}${tools}${how} anziehen.`),
    pattern: { cross: " über Kreuz", circular: " reihum", order: " der Reihe nach" },
    byHand: " von Hand",
    stage: (value) => ` mit ${value}`,
    rounds: (count) => ` in ${count} Durchgängen`,
    thenTurn: (angle) => `, dann um ${angle} weiter`,
    toSeat: " zum Anlegen der Teile",
    positions: (sequence) => `Reihenfolge der Positionen: ${sequence}.`,
    loosen: (what, reverse, tools) => upper(`${what}${tools}${reverse ? " in umgekehrter Reihenfolge" : ""} lösen.`),
    turnBack: (what, back, tools) => upper(`${what}${tools} um ${back} zurückdrehen.`),
    heatTo: (what, range, tools) => upper(`${what}${tools} auf ${range} erwärmen.`),
    heatBy: (what, change, tools) => upper(`${what}${tools} um ${change} erwärmen.`),
    coolTo: (what, range, tools) => upper(`${what}${tools} auf ${range} kühlen.`),
    coolBy: (what, change, tools) => upper(`${what}${tools} um ${change} kühlen.`),
    wait: (time) => `${time} warten.`,
    waitUntil: (condition) => `Warten, bis gilt: ${condition}.`,
    clean: (what, consumable) => upper(`${what}${consumable === null ? "" : ` mit ${consumable}`} reinigen.`),
    lubricate: (what, consumable) => upper(`${what}${consumable === null ? "" : ` mit ${consumable}`} schmieren.`),
    apply: (consumable, what) => upper(`${consumable} auf ${what} auftragen.`),
    cure: (time) => `${time} aushärten lassen.`,
    cures: (time) => `Härtet in ${time} aus.`,
    dose: (amount, consumable) => `${amount} ${consumable}`,
    drain: (what, into) => upper(`${what}${into === null ? "" : ` in ${into}`} entleeren.`),
    bleed: (what, into) => upper(`${what}${into === null ? "" : ` in ${into}`} entlüften.`),
    fill: (what, consumable) => upper(`${what} mit ${consumable} füllen.`),
    turn: (what, place, clock, tools) => upper(`${what}${tools} drehen, bis ${place} auf ${clock} steht.`),
    align: (what, other) => upper(`${what} zu ${other} ausrichten.`),
    mark: (mark) => `Markierung: ${mark}.`,
    lift: (what, tools) => upper(`${what}${tools} anheben.`),
    hands: ({ reach, height, endHeight, turned }) => {
      const from = height == null ? null : `aus ${height} Höhe${endHeight == null ? "" : ` auf ${endHeight}`}`;
      const all = [
        reach == null ? null : `Griffweite ${reach}`,
        from,
        turned == null ? null : `Körper um ${turned} gedreht`,
      ];
      return ` (${all.filter((one) => one !== null).join(", ")})`;
    },
    onLegs: (count, angle) => ` an ${count} Strängen unter ${angle} zur Waagerechten`,
    support: (what, tools) => upper(`${what}${tools} abstützen.`),
    setDown: (what) => upper(`${what} absetzen.`),
    isolate: (what, tools) => upper(`${what}${tools} freischalten.`),
    release: (what, tools) => upper(`${what}${tools} ablassen, bis nichts mehr ansteht.`),
    prove: (what, tools) => upper(`${what}: Energiefreiheit${tools} nachweisen.`),
    restore: (what, tools) => upper(`${what}${tools} wieder zuschalten.`),
    inspect: (what, tools) => upper(`${what}${tools} besichtigen.`),
    inspectFor: (what, words, tools) => upper(`${what}${tools} besichtigen: ${words}.`),
    measure: (words, tools) => `Messen: ${words}${tools}.`,
    use: (tools) => upper(`${tools} verwenden.`),
    choose: (what, reading) => upper(`${what} nach ${reading} auswählen:`),
    leaving: (remainder) => `Was bleibt: ${remainder}.`,
    chooseRow: (range, result) => `${range}: ${result}`,
    perform: (title) => `„${title}“ ganz ausführen.`,
    check: (words, tools) => `Prüfen: ${words}${tools}.`,
    withTools: (tools) => ` mit ${tools}`,
  },

  conditions: {
    and: (items) => items.join(" und "),
    or: (items) => items.join(" oder "),
    group: (inner) => `(${inner})`,
    not: (inner) => `„${inner}“ gilt nicht`,
    state: (what, plural, state, negated) => `${what} ${isOrAre(plural)}${negated ? " nicht" : ""} ${state}`,
    value: (what, plural, value, negated) => `${what} ${isOrAre(plural)}${negated ? " nicht" : ""} ${value}`,
    clock: (what, plural, clock, negated) =>
      `${what} ${plural ? "stehen" : "steht"}${negated ? " nicht" : ""} auf ${clock}`,
    option: (option, choice, negated) => `${option} ist ${negated ? "nicht " : ""}„${choice}“`,
    holds: (option, negated) => (negated ? `„${option}“ ist „nein“` : option),
    noTemporaryParts: "kein Hilfsteil ist zurückgeblieben",
    unknown: "eine Bedingung, die nicht gelesen werden konnte, ist erfüllt",
    needs: (conditions) => `Erst beginnen, wenn gilt: ${conditions}.`,
    upper,
  },
  choices: { yes: "ja", no: "nein" },
  states: {
    installed: "eingebaut",
    removed: "ausgebaut",
    loose: "lose",
    tightened: "angezogen",
    secured: "gesichert",
    clean: "sauber",
    lubricated: "geschmiert",
    aligned: "ausgerichtet",
    isolated: "freigeschaltet",
    live: "unter Energie",
  },

  flow: {
    if: (condition) => `Wenn gilt: ${condition}:`,
    otherwiseIf: (condition) => `Sonst, wenn gilt: ${condition}:`,
    otherwise: "Sonst:",
    anyOrder: "In beliebiger Reihenfolge, jedes ganz vor dem nächsten:",
    repeat: (variable, values, several, steps) =>
      several
        ? `${steps ?? "Alles davon"} für ein ${variable} ausführen, dann für das nächste: ${variable} = ${values}`
        : `Einmal für jedes ${variable}, in dieser Reihenfolge: ${values}`,
    inPass: (pass, text) => `${pass}: ${text}`,
    pass: (variable, value) => `${variable} = ${value}`,
    goBack: (step) => `Zurück zu ${step} und die Arbeit von dort an wiederholen.`,
    goOn: (step) => `Weiter mit ${step}. Was dazwischen liegt, auslassen.`,
    step: (number, name) => `Schritt ${number} (${name})`,
    stepUnknown: (name) => `Schritt ${name}`,
    stop: (text) => `HALT. ${text}`,
    leftOut: (steps, reason) => `Entfällt durch die gewählten Varianten (${reason}): ${steps}.`,
    steps: (first, last) => (first === last ? `Schritt ${first}` : `Schritte ${first} bis ${last}`),
    unreadable:
      "Hier stehen Zeilen der Arbeitsanweisung, die nicht gelesen werden konnten. Siehe die Liste der Fehler.",
    notExpanded: "Die Arbeitsanweisung ist zu lang, um ausgeschrieben zu werden. Das Folgende kann unvollständig sein.",
    performed: (title) => `Aus der Arbeitsanweisung „${title}“`,
    takes: (time) => `Dauert etwa ${time}.`,
    within: (time, step) => `Innerhalb von ${time} nach dem Ende von ${step} fertig sein.`,
    after: (steps) => `Erst nach ${steps}.`,
    before: (steps) => `Vor ${steps}.`,
    doneBy: (role) => `Ausführung: ${role}.`,
    reminder: (signal, hazards, text) => `${signal} (${hazards}) gilt weiterhin: ${text}`,
  },

  records: {
    mustBe: (limits) => `Sollwert: ${limits}`,
    workedOut: (formula, readings) =>
      `${formula}, mit ${readings.map(([name, title]) => `${name} = ${title}`).join(", ")}`,
    unit: (label, pass) => `${label} (${pass})`,
  },
  table: {
    kind: "Art",
    text: "Text",
    part: "Durchgang oder Stück",
    heading: "Überschrift",
    end: "Ende von",
    instruction: "Anweisung",
  },
  signOff: {
    hold: (role) => `Hier anhalten. Erst weiterarbeiten, wenn unterschrieben hat: ${role}.`,
  },

  lists: {
    torque: (value) => `Drehmoment ${value}`,
    accuracy: (value) => `Genauigkeit ${value}`,
    accuracyOfFullScale: (value) => `Genauigkeit ${value} vom Endwert`,
    arm: (value) => `Armlänge ${value}`,
    offset: (value) => `Versatz ${value}`,
    angle: (value) => `Winkel ${value}`,
    heatsTo: (value) => `erwärmt auf ${value}`,
    coolsTo: (value) => `kühlt auf ${value}`,
    lifts: (value) => `hebt ${value}`,
    legLifts: (value) => `hebt ${value} je Strang`,
    measures: (value) => `misst ${value}`,
    resolution: (value) => `Auflösung ${value}`,
    force: (value) => `Kraft ${value}`,
    mass: (value) => `Masse ${value}`,
    each: (value) => `je ${value}`,
    thread: (thread) => `Gewinde ${thread}`,
    propertyClass: (text) => `Festigkeitsklasse ${text}`,
    grade: (text) => `Güte ${text}`,
    newNeeded: (count) => `neu: ${count}`,
    temporary: "Hilfsteil, kommt wieder heraus",
    sharp: "scharfe Kanten",
    asNeeded: "nach Bedarf",
    moreAsNeeded: "und weiteres nach Bedarf",
    choice: (reading, sizes) => `Auswahl nach ${reading}${sizes === null ? "" : `: ${sizes}`}`,
    noRequirement: "–",
  },

  ...deSheets,

  stock: {
    heading: "Geeignete Werkzeuge der Ausgabe",
    none: "keine",
    calibratedUntil: (day) => `kalibriert bis ${day}`,
    outSince: (day) => `KALIBRIERUNG ABGELAUFEN seit ${day}: nicht verwenden`,
    unsaid: (what) => `vorher ansehen, in der Liste fehlt: ${term(what)}`,
    setting: (fastener, torque, adapters, settings) =>
      `Für ${fastener}, ${torque}${adapters === "" ? "" : `, mit ${adapters}`}: einstellen auf ${settings.join(", dann ")}`,
    keep: (set, window) => `${set}, das letzte innerhalb ${window}`,
    window: (fastener, torque, window) => `Für ${fastener}, ${torque}: einstellen innerhalb ${window}`,
    noArm: (torque, fastener, adapters) =>
      `Für ${fastener}, ${torque}, mit ${adapters}: kein Einstellwert, weil in der Liste die Armlänge fehlt`,
    source: (cribs, day) => `Werkzeuge aus ${cribs}, Stand ${day}.`,
    term,
    formula: (formula, source) => `So wird ein Einstellwert berechnet: ${formula}. Nach: ${source}.`,
    settingHolds:
      "Ein Einstellwert gilt nur für dieses eine Werkzeug, mit diesem Aufsatz, seinem Winkel und der eigenen Armlänge. Griff nicht verlängern. Nach jedem Werkzeugwechsel neu ausrechnen.",
  },

  wrench: {
    atFastener: (several) =>
      several ? "Die Drehmomente gelten an der Schraube." : "Das Drehmoment gilt an der Schraube.",
    set: (wrench, settings, arm) =>
      `${upper(wrench)} einstellen auf ${settings.join(", dann ")}${arm === null ? "" : `, nur für die Armlänge ${arm}`}.`,
    setFor: (fastener, wrench, settings, arm) =>
      `Für ${fastener}: ${wrench} einstellen auf ${settings.join(", dann ")}${arm === null ? "" : `, nur für die Armlänge ${arm}`}.`,
    round: (setting) => `, einstellen auf ${setting}`,
    forArm: (wrench, arm) =>
      `Der Einstellwert steht bei jedem Durchgang und gilt nur für die Armlänge ${arm} (${wrench}).`,
    workOut: (wrench) => `Einstellwert mit der eigenen Armlänge ausrechnen: ${wrench}.`,
    item: (item, settings) => `${item}: einstellen auf ${settings.join(", dann ")}.`,
    itemFor: (item, fastener) => `${item}, für ${fastener}`,
    itemUnknown: (item) => `${item}: kein Einstellwert, weil in der Liste die Armlänge fehlt.`,
  },

  circle: {
    order: (places) => `Reihenfolge beim Anziehen: ${places}`,
    positions: (places) => `Positionen: ${places}`,
    orderLoosened: (places) => `Reihenfolge beim Lösen: ${places}`,
    orderText: (sequence) => `Reihenfolge der Positionen: ${sequence}.`,
    keyPosition: "In den Kreisen: Positionen.",
    keyOrder: "Daneben: 1. wird zuerst angezogen.",
    keyLoosened: "Daneben: 1. wird zuerst gelöst.",
    clockwise: "Im Uhrzeigersinn nummeriert",
    counterclockwise: "Gegen den Uhrzeigersinn nummeriert",
    numbered: (direction, seenFrom) => (seenFrom === null ? `${direction}.` : `${direction}, Blick von: ${seenFrom}.`),
    start: (position, clock) => `Zu Beginn steht Position ${position} auf ${clock}.`,
    notToPlace: "Nach ihren Nummern gezeichnet, nicht nach ihrer Lage.",
    tooMany: "Zu viele Positionen für eine Zeichnung.",
  },

  joining: (outer, atLeast, inner, atMost) =>
    `Beide an der Fügefläche messen: ${outer} ${atLeast}, ${inner} ${atMost}.`,

  arrangement: {
    title: (part, ring) => `Anordnung: ${part} in ${ring}`,
    position: "Position",
    serialNumber: "Seriennummer",
    mass: "Masse",
    moment: "Moment",
    residual: "Verbleibende Unwucht",
    limit: "Zulässig",
    noLimit: "keine Grenze angegeben",
    notKnown: "nicht bekannt, weil ein Radius fehlt",
    grade: (limit, grade, speed) => `${limit} (${grade} bei ${speed})`,
    caution:
      "Statische Unwucht in einer Ebene, nur dieser Teile, aus den aufgeführten Massen. Ersetzt nicht das Auswuchten des ganzen Rotors. Ein getauschtes Teil ändert sie: Liste neu berechnen lassen.",
    serial: (serial) => `Seriennummer: ${serial}.`,
    serials: (placed) =>
      `Seriennummern nach Position: ${placed.map(([position, serial]) => `${position}: ${serial}`).join(", ")}.`,
  },

  page: dePage,
  trace: deTrace,

  head: {
    revision: (revision) => `Revision ${revision}`,
    serial: (first, last) => (last === null ? `ab Seriennummer ${first}` : `Seriennummer ${first} bis ${last}`),
    ambientTaken: (value) => `${value}, angenommen, weil keine angegeben ist`,
    people: (count) => (count === 1 ? "1 Person" : `${count} Personen`),
    option: (title, choice) => `${title}: ${choice}`,
    units: { si: "SI", us: "US-amerikanisch", both: "wie geschrieben, im anderen System in Klammern" },
    clean: "keine Fehler, keine Warnungen",
    counts: (errors, warnings, information) =>
      [
        `${errors} Fehler`,
        warnings === 1 ? "1 Warnung" : `${warnings} Warnungen`,
        information === 1 ? "1 Hinweis" : `${information} Hinweise`,
      ].join(", "),
    allowedCount: (count) => `${count} zugelassen, mit den Gründen unten`,
    findingsLanguage: "Die Meldungen der Prüfung gibt es nur auf Englisch.",
    page: (document, revision) => `${document}${revision === "" ? "" : ` · ${revision}`}`,
    pageOf: (page, of) => `Seite ${page} von ${of}`,
    uncontrolled: "Ein Ausdruck wird nicht gepflegt.",
    unprinted: "NICHT LESBAR",
    unprintedMeaning: (count) =>
      `${count === 1 ? "Ein Zeichen steht" : `${count} Zeichen stehen`} in diesem PDF als leeres Kästchen da. Nicht danach arbeiten: HTML oder DOCX nehmen.`,
    misordered:
      "Wörter, die von rechts nach links geschrieben werden, stehen in diesem PDF in falscher Reihenfolge. Nicht danach arbeiten: HTML oder DOCX nehmen.",
    wholeProcedure: "ganze Arbeitsanweisung",
    noDocument: "keine Dokumentnummer",
  },
};

function upper(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function isOrAre(plural: boolean): string {
  return plural ? "sind" : "ist";
}
