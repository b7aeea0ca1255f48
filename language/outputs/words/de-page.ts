// What the filled-in HTML checklist says while it is filled in, in German. A name in braces is filled in by the page's own script.
import type { Words } from "./en.ts";

export const dePage: Words["page"] = {
  /* Progress */
  progress: "{done} von {all} erledigt",
  complete: "Alles ist erledigt. Protokoll sichern.",
  stopped: "Die Arbeit ist hier angehalten.",
  next: "Jetzt",
  showNext: "Zeigen, was jetzt kommt",
  done: "erledigt",
  leftOut: "entfällt",

  /* The bar */
  bar: "Protokoll dieser Arbeit",
  undo: "Zurücknehmen",
  undone: "Der letzte Eintrag ist zurückgenommen.",
  more: "Mehr",
  save: "Protokoll sichern",
  open: "Protokoll öffnen",
  print: "Drucken",
  theme: "Hell oder dunkel",
  startAgain: "Neu beginnen",
  startAgainSure: "Noch einmal drücken, um dieses Protokoll zu verwerfen",
  startedAgain: "Das Protokoll ist wieder leer.",
  saved: "Das Protokoll ist als {file} gesichert.",
  restored: "Das Protokoll von {time} ist wieder da: {done} von {all} erledigt.",
  opened: "Das Protokoll ist offen: {done} von {all} erledigt.",
  openedOther:
    "Dieses Protokoll gehört zu einer anderen Ausgabe der Checkliste (Prüfsumme {hash}). Es wird nicht geöffnet.",
  openedNoRecord: "Diese Datei ist kein Protokoll einer Checkliste. Sie wird nicht geöffnet.",
  openedFaulty: "Eintrag {entry} dieses Protokolls passt nicht zur Checkliste: {why} Es wird nicht geöffnet.",
  notKept:
    "Dieser Browser behält Einträge nicht. Wird die Seite geschlossen oder neu geladen, sind sie verloren: vorher das Protokoll sichern.",
  keptFaulty: "Was hier aufbewahrt war, passt nicht zu dieser Checkliste und bleibt weg.",
  otherWindow: "Diese Checkliste wurde in einem anderen Fenster ausgefüllt. Sie zeigt jetzt dasselbe.",

  /* People */
  people: "Wer arbeitet",
  peopleWhy: "Den Namen einmal angeben. Einen Haltepunkt muss jemand anders unterschreiben.",
  name: "Name",
  badge: "Ausweisnummer, falls vorhanden",
  takeName: "Diesen Namen nehmen",
  nameTaken: "{role}: {person}.",
  sign: "Unterschreiben als {role}",
  signed: "Unterschrieben: {person}, {time}",

  /* Readings */
  unit: "Einheit",
  record: "Eintragen",
  recordFailed: "Außerhalb der Grenzen eintragen",
  understood: "Gelesen als {value}",
  alsoIn: "{value} = {other}",
  within: "in den Grenzen",
  outside: "AUSSERHALB DER GRENZEN",
  noNumber: "Noch keine Zahl. So schreiben: 0,03 oder 0.03.",
  otherUnit: "Nicht gelesen: „{unit}“ ist hier keine Einheit. Nur {units}.",
  noLimits: "keine Grenzen angegeben",
  limitsOpen: "Die Grenzen hängen von einem Messwert ab, der noch fehlt.",
  recorded: "{value}, {judged}, {time}",
  recordedText: "{value}, {time}",
  stopAndAsk:
    "Außerhalb der Grenzen. Anhalten und fragen. Erst mit einem neuen Messwert in den Grenzen geht es weiter.",

  /* Checks, branches, options */
  inOrder: "In Ordnung",
  notInOrder: "Nicht in Ordnung",
  judgedInOrder: "In Ordnung, {time}",
  judgedNot: "NICHT in Ordnung, {time}",
  holds: "Ja, so ist es",
  holdsNot: "Nein",
  askArm: "Ist es so?",
  options: "Vor Beginn entscheiden",
  chosen: "{option}: {choice}.",
  fromReading: "Aus dem Messwert: {value}",
  fromReadings: "Aus den Messwerten: {value}",
  noRow: "keine Zeile passt: anhalten und fragen",
  range: "{low} bis {high}",
  atLeast: "mindestens {value}",
  atMost: "höchstens {value}",
  again: "Ab Schritt {step} noch einmal: {count} Einträge sind wieder offen.",
  failedBefore: "Vorher: {text}, {time}",

  /* Times */
  startTimer: "Zeit starten: {time}",
  startTimerAgain: "Zeit noch einmal starten",
  timerStarted: "Schritt {step}: die Zeit läuft, {time}.",
  timerOver: "Schritt {step}: die Zeit ist um.",
  timeLeft: "noch {left}",
  timeOver: "um seit {time}",
  timeBetween: "{least} sind um, höchstens noch {left}",
  timeBeyond: "zu lang seit {time}",
  timerTook: "{time} nach der Uhr",
  timerEarly: "ZU FRÜH: nach {time} abgehakt, zu warten sind {least}.",
  deadline: "innerhalb von {most} nach {after}: noch {left}",
  deadlineStarts: "Schritt {step} muss innerhalb von {most} getan sein.",
  deadlineMissed: "ZU SPÄT: {most} nach {after} waren um {time} vorbei. Anhalten und fragen.",
  deadlineKept: "{time} nach {after} getan",
  deadlineLate: "ZU SPÄT: {time} nach {after} getan, erlaubt sind höchstens {most}. Anhalten und fragen.",

  /* Bolt circles */
  placeDone: "Position {place} ist erledigt",
  placesDone: "{done} von {all} Positionen",
  roundValue: "Durchgang {round}",

  /* Why an entry is not taken */
  notNext: "Noch nicht. Zuerst kommt Schritt {step}.",
  notNextOption: "Noch nicht. Zuerst entscheiden, was oben unter „Vor Beginn entscheiden“ steht.",
  notNextOther: "Noch nicht. Zuerst kommt etwas anderes.",
  alreadyDone: "Das ist schon erledigt. Mit „Zurücknehmen“ wird der letzte Eintrag zurückgenommen.",
  noName: "Zuerst den Namen dessen angeben, der arbeitet.",
  samePerson:
    "Das ist Name oder Ausweis von jemandem, der gearbeitet hat ({role}). Jemand anders muss es sich ansehen.",
  samePersonPerformer: "Das ist Name oder Ausweis von jemandem, der prüft ({role}). Jemand anders muss arbeiten.",
  nothingToUndo: "Es ist nichts mehr zurückzunehmen.",
  workOver: "Die Arbeit ist zu Ende. „Zurücknehmen“ drücken, wenn etwas nicht stimmt.",
  useField: "Den Messwert ins Feld schreiben und „Eintragen“ drücken.",
  useButtons: "„In Ordnung“ oder „Nicht in Ordnung“ drücken.",
  doesNotFit: "Das passt nicht zur Checkliste.",
};
