// What the filled-in HTML checklist says while it is filled in, in English. Plain texts, since the page's own script carries them;
// a name in braces is filled in there.

export const enPage = {
  /* Progress */
  progress: "{done} of {all} marked",
  complete: "All is marked. Save the record.",
  stopped: "The work is stopped here.",
  next: "Next",
  showNext: "What is next",
  done: "done",
  leftOut: "not needed",

  /* The bar */
  bar: "Record of this work",
  undo: "Undo",
  undone: "The last entry is taken back.",
  more: "More",
  save: "Save record",
  open: "Open record",
  print: "Print",
  theme: "Light or dark",
  startAgain: "Start again",
  startAgainSure: "Press again to throw this record away",
  startedAgain: "The record is empty again.",
  saved: "The record is saved as {file}.",
  restored: "The record of {time} is back: {done} of {all} marked.",
  opened: "The record is open: {done} of {all} marked.",
  openedOther: "This record was made with another issue of the checklist (content hash {hash}). It is not opened.",
  openedNoRecord: "This file is no record of a checklist. It is not opened.",
  openedFaulty: "Entry {entry} of this record does not fit the checklist: {why} It is not opened.",
  notKept:
    "This browser does not keep entries. If the page is closed or loaded again, they are lost: save the record before that.",
  keptFaulty: "What was kept here does not fit this checklist and is left out.",
  otherWindow: "This checklist was filled in in another window. It shows the same now.",

  /* People */
  people: "Who does the work",
  peopleWhy:
    "Give the name once, and the number of the badge if there is one. Who signs a hold point must be somebody else.",
  name: "Name",
  badge: "Badge",
  takeName: "Take this name",
  nameTaken: "{role}: {person}.",
  sign: "Sign as {role}",
  signed: "Signed: {person}, {time}",

  /* Readings */
  unit: "Unit",
  record: "Record",
  recordFailed: "Record as out of limits",
  understood: "Read as {value}",
  alsoIn: "{value} = {other}",
  within: "within limits",
  outside: "OUT OF LIMITS",
  noNumber: "No number yet. Write it like 0.03 or 0,03.",
  noLimits: "no limits given",
  limitsOpen: "The limits depend on a reading that is not taken yet.",
  recorded: "{value}, {judged}, {time}",
  recordedText: "{value}, {time}",
  stopAndAsk: "Out of limits. Stop and ask. A new reading within limits is needed to go on.",

  /* Checks, branches, options */
  inOrder: "In order",
  notInOrder: "Not in order",
  judgedInOrder: "In order, {time}",
  judgedNot: "NOT in order, {time}",
  holds: "Yes, so it is",
  holdsNot: "No",
  askArm: "Is it so?",
  options: "Decide before you start",
  chosen: "{option}: {choice}.",
  fromReading: "From the reading: {value}",
  fromReadings: "From the readings: {value}",
  noRow: "no row fits: stop and ask",
  range: "{low} to {high}",
  atLeast: "at least {value}",
  atMost: "at most {value}",
  again: "Do it again from step {step}: {count} entries are open again.",
  failedBefore: "Earlier: {text}, {time}",

  /* Bolt circles */
  placeDone: "Position {place} is done",
  placesDone: "{done} of {all} positions",
  roundValue: "Round {round}",

  /* Why an entry is not taken */
  notNext: "Not yet. Step {step} comes first.",
  notNextOther: "Not yet. Something else comes first.",
  alreadyDone: "This is marked already. Press Undo to take back what was marked last.",
  noName: "First give the name of who does the work.",
  samePerson: "This is the name or badge of somebody who did the work ({role}). Somebody else must look at it.",
  samePersonPerformer: "This is the name or badge of somebody who inspects ({role}). Somebody else must do the work.",
  nothingToUndo: "Nothing is left to take back.",
  workOver: "The work has come to its end. Press Undo if something is wrong.",
  useField: "Write the reading into the field and press Record.",
  useButtons: "Press In order or Not in order.",
  doesNotFit: "This does not fit the checklist.",
};
