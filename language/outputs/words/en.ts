// Every fixed word that outputs print, in English: labels, cautions, and how a sentence is built from the shop's own words.
// Knows no format. Another language is another object of the same shape.

import { pluralOf, withArticle } from "./en-nouns.ts";
import { enPage } from "./en-page.ts";
import { enSheets } from "./en-sheets.ts";
import { enTrace } from "./en-trace.ts";

/** The fixed words of one language. */
export type Words = typeof en;

/** A thing to be named: its title, and the index of the instance, a range, or several. */
export interface Named {
  readonly title: string;
  /** `3`, `1–8`, `left, right`; null where there is only one. */
  readonly index: string | null;
  /** Whether the index is a name, not a number. */
  readonly byName: boolean;
  readonly plural: boolean;
  readonly fresh: boolean;
}

/** How hands are on a load: each value as it is to be shown, null where nothing is said of it. */
export interface HandWords {
  readonly reach: string | null | undefined;
  readonly height: string | null | undefined;
  readonly endHeight: string | null | undefined;
  readonly turned: string | null | undefined;
}

export const en = {
  language: "en",
  direction: "ltr",

  signals: { danger: "DANGER", warning: "WARNING", caution: "CAUTION", note: "NOTE" },
  signalKey: {
    danger: "People will be killed or badly hurt if it is not avoided.",
    warning: "People can be killed or hurt if it is not avoided.",
    caution: "Equipment can be damaged. Not used for injury to people.",
    note: "Good to know. Asks nothing of you.",
  },
  hazards: {
    burn: "burns",
    cold: "cold burns",
    fire: "fire",
    explosion: "explosion",
    pressure: "pressure",
    electric: "electric shock",
    lifting: "heavy load",
    crush: "crushing",
    cutting: "cuts",
    rotating: "rotating parts",
    spring: "spring force",
    fall: "falling",
    dropped: "dropped load",
    eye: "eye injury",
    skin: "harm to skin",
    fumes: "fumes",
    noise: "noise",
    damage: "damage",
    contamination: "contamination",
    overheating: "overheating",
    overtorque: "overtightening",
    debris: "debris",
  } as Readonly<Record<string, string>>,
  severities: { error: "error", warning: "warning", information: "information", hint: "hint" },

  labels: {
    document: "Document",
    title: "Title",
    revision: "Revision",
    date: "Date",
    appliesTo: "Applies to",
    basedOn: "Based on",
    sources: "Sources cited",
    ambient: "Ambient temperature",
    room: "Air of the room",
    crew: "Crew",
    options: "Options chosen",
    openOptions: "Options to be decided before the start",
    units: "Units",
    hash: "Content hash of the inputs",
    checkResult: "Check result",
    allowed: "Allowed findings",
    findings: "Findings left",
    errors: "Errors to be put right",
    draft: "DRAFT",
    draftMeaning: "Not released for work.",
    keyToSignals: "Key to signal words",
    signalWord: "Signal word",
    meaning: "Meaning",
    cautions: "Before you rely on this",
    beforeStart: "Before you start",
    parts: "Parts",
    tools: "Tools",
    consumables: "Consumables",
    part: "Part",
    nameInText: "Name in the procedure",
    count: "Count",
    remarks: "Remarks",
    tool: "Tool",
    asked: "What it must be able to do",
    used: "Used here for",
    consumable: "Consumable",
    amount: "Amount",
    work: "Work",
    avoid: "How to avoid it",
    wear: "Wear",
    done: "Done",
    round: "Round",
    value: "Value",
    source: "Source",
    figure: "Figure",
    why: "Why",
    records: "Record",
    limits: "Limits",
    reading: "Reading",
    measuredWith: "Measured with",
    ifItFails: "If it fails",
    sign: "Sign-off",
    holdPoint: "HOLD POINT",
    role: "Role",
    name: "Name",
    signature: "Signature",
    code: "Code",
    severity: "Severity",
    place: "Place",
    message: "Message",
    reason: "Reason",
    by: "By",
    critical: "Critical step",
    atTheEnd: "When the work is done",
    provenance: "Where this comes from",
    step: "Step",
  },

  cautions: {
    everywhere: [
      "The approved maintenance data, local codes and licensed people govern. Where this document differs from them, stop and ask.",
      "Computed values are aids. No finding does not mean safe: only what the procedure declares was checked.",
      "A printed copy is uncontrolled. Compare its revision with the current one before use.",
    ],
    notChecked:
      "Not checked: strength of parts and threads, lifting points and centre of gravity, the state of tools, and whatever the procedure does not name.",
    unchecked: (items: readonly string[]) => `Not checked for want of data: ${items.join("; ")}.`,
    uncheckedItem: (matter: string, of: string, lacks: string, when: string | null, holder: string) =>
      `${matter} of ${of}, no ${lacks}${when === null ? "" : when === "dry" ? " for dry threads" : ` for ${when}`}${holder === of ? "" : ` of ${holder}`}`,
    adapter:
      "The torques are those at the fastener. An adapter changes what the wrench must be set to. The setting at a step holds for this adapter, its angle and the arm that stands with it: work it out again for any other. Put no extension on the handle.",
    adapterListed:
      "The torques are those at the fastener. An adapter changes what the wrench must be set to: take the setting that stands beside the very item, or work it out for another arm. Put no extension on the handle. Work it out again if a tool changes.",
    heating:
      "Heating: measure part and mate at contact. Treat a part as hot until it is measured cool. If it sticks, take it off and heat it again. Do not hammer.",
    cooling:
      "Cooling: measure part and mate at contact. Treat a part as cold enough to hurt until it is measured warm. If it sticks, take it out and cool it again. Do not hammer.",
    isolation: "“Isolated” here means that the procedure says so. Prove it dead at the place of work.",
    lifting:
      "Lifting: masses are as declared. Centre of gravity and attachment were not checked. Nobody stands under or beside the load.",
    gases:
      "Gases: what boils off takes the place of the air. Measure the oxygen before anybody goes in and while somebody is there: entry is never cleared by a computation.",
    hazards:
      "Hazards: limits are set for healthy adults and bare metal. The site's risk assessment and the data sheets govern.",
    twoPeople: "The one who did the work and the inspector are two different people.",
  },

  /** Several things in one phrase. */
  list: (items: readonly string[]): string =>
    items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`,
  comma: (items: readonly string[]): string => items.join(", "),
  oneOf: (items: readonly string[]): string =>
    items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} or ${items.at(-1) ?? ""}`,
  range: (first: string, last: string): string => `${first}–${last}`,
  /** A sequence in which things are done one after the other. */
  sequence: (items: readonly string[]): string => items.join(" – "),

  /** A quantity as the language itself writes it. */
  quantity: (text: string): string => text,

  /** A thing in a sentence: `the bearing cover`, `a new gasket`, `cover screws 1–8`, `the plug (left)`. */
  thing: ({ title, index, byName, plural, fresh }: Named): string => {
    // The number belongs to the noun: `head bolts 1–8, right`, `stud bolts 1–8 with nut`.
    const [, noun = title, beside = ""] = /^(.*?)((?:,| with | without | for ).*)?$/s.exec(title) ?? [];
    const named = plural ? pluralOf(noun) : noun;
    const full =
      index === null ? `${named}${beside}` : byName ? `${named}${beside} (${index})` : `${named} ${index}${beside}`;
    if (fresh) return plural ? `new ${full}` : `a new ${full}`;
    return index !== null && !byName ? full : withArticle(full);
  },
  position: (position: string, places: string): string => `position ${position} of ${withArticle(places)}`,
  ownPosition: (position: string): string => `its position ${position}`,
  /** A reading or an option as the subject of a clause. */
  subject: (title: string): string => withArticle(title),

  /** The writer's own words as a sentence. */
  sentence: (text: string): string => {
    const trimmed = text.trim();
    return trimmed === "" || /[.!?:…]["”’)]?$/.test(trimmed) ? trimmed : `${trimmed}.`;
  },

  actions: {
    install: (what: string, where: string | null, clock: string | null, tools: string): string =>
      `Install ${what}${where === null ? "" : ` ${where}`}${clock === null ? "" : ` at ${clock}`}${tools}.`,
    where: {
      in: (place: string): string => `in ${place}`,
      on: (place: string): string => `on ${place}`,
      over: (place: string): string => `over ${place}`,
    },
    press: (what: string, where: string, tools: string): string => `Press ${what} ${where}${tools}.`,
    remove: (what: string, tools: string): string => `Remove ${what}${tools}.`,
    discard: (what: string, tools: string): string => `Remove and discard ${what}${tools}.`,
    tighten: (what: string, how: string, tools: string): string => `Tighten ${what}${how}${tools}.`,
    pattern: { cross: " in cross pattern", circular: " in circular pattern", order: " in order" },
    byHand: " by hand",
    stage: (value: string): string => ` to ${value}`,
    rounds: (count: number): string => `, in ${count} rounds`,
    thenTurn: (angle: string): string => `, then turn ${angle} further`,
    toSeat: " to seat the parts",
    positions: (sequence: string): string => `Order of positions: ${sequence}.`,
    loosen: (what: string, reverse: boolean, tools: string): string =>
      `Loosen ${what}${reverse ? " in reverse order" : ""}${tools}.`,
    turnBack: (what: string, back: string, tools: string): string => `Turn ${what} back by ${back}${tools}.`,
    heatTo: (what: string, range: string, tools: string): string => `Heat ${what} to ${range}${tools}.`,
    heatBy: (what: string, change: string, tools: string): string => `Heat ${what} by ${change}${tools}.`,
    coolTo: (what: string, range: string, tools: string): string => `Cool ${what} to ${range}${tools}.`,
    coolBy: (what: string, change: string, tools: string): string => `Cool ${what} by ${change}${tools}.`,
    wait: (time: string): string => `Wait ${time}.`,
    waitUntil: (condition: string): string => `Wait until ${condition}.`,
    clean: (what: string, consumable: string | null): string =>
      `Clean ${what}${consumable === null ? "" : ` with ${consumable}`}.`,
    lubricate: (what: string, consumable: string | null): string =>
      `Lubricate ${what}${consumable === null ? "" : ` with ${consumable}`}.`,
    apply: (consumable: string, what: string): string => `Apply ${consumable} to ${what}.`,
    cure: (time: string): string => `Let it cure for ${time}.`,
    /** Of a coat that is closed over wet. */
    cures: (time: string): string => `It needs ${time} to cure.`,
    dose: (amount: string, consumable: string): string => `${amount} of ${consumable}`,
    drain: (what: string, into: string | null): string => `Drain ${what}${into === null ? "" : ` into ${into}`}.`,
    bleed: (what: string, into: string | null): string => `Bleed ${what}${into === null ? "" : ` into ${into}`}.`,
    fill: (what: string, consumable: string): string => `Fill ${what} with ${consumable}.`,
    turn: (what: string, place: string, clock: string, tools: string): string =>
      `Turn ${what} until ${place} is at ${clock}${tools}.`,
    align: (what: string, other: string): string => `Align ${what} with ${other}.`,
    mark: (mark: string): string => `Mark: ${mark}.`,
    lift: (what: string, tools: string): string => `Lift ${what}${tools}.`,
    hands: ({ reach, height, endHeight, turned }: HandWords): string => {
      const from = height == null ? null : `from a height of ${height}${endHeight == null ? "" : ` to ${endHeight}`}`;
      const all = [reach == null ? null : `reach ${reach}`, from, turned == null ? null : `body turned ${turned}`];
      return ` (${all.filter((one) => one !== null).join(", ")})`;
    },
    onLegs: (count: string, angle: string): string => ` on ${count} legs at ${angle} to the horizontal`,
    support: (what: string, tools: string): string => `Support ${what}${tools}.`,
    setDown: (what: string): string => `Set down ${what}.`,
    isolate: (what: string, tools: string): string => `Isolate ${what}${tools}.`,
    release: (what: string, tools: string): string => `Release ${what} until nothing is left${tools}.`,
    prove: (what: string, tools: string): string => `Prove that ${what} is dead${tools}.`,
    restore: (what: string, tools: string): string => `Restore ${what}${tools}.`,
    inspect: (what: string, tools: string): string => `Inspect ${what}${tools}.`,
    inspectFor: (what: string, words: string, tools: string): string =>
      /^for\b/i.test(words) ? `Inspect ${what} ${words}${tools}.` : `Inspect ${what}${tools}: ${words}.`,
    measure: (words: string, tools: string): string => `Measure: ${words}${tools}.`,
    use: (tools: string): string => `Use ${tools}.`,
    choose: (what: string, reading: string): string => `Choose ${what} by ${reading}:`,
    leaving: (remainder: string): string => `What is left: ${remainder}.`,
    chooseRow: (range: string, result: string): string => `${range}: ${result}`,
    perform: (title: string): string => `Do all of “${title}”.`,
    check: (words: string, tools: string): string => `Check: ${words}${tools}.`,
    withTools: (tools: string): string => ` with ${tools}`,
  },

  conditions: {
    and: (items: readonly string[]): string => items.join(" and "),
    or: (items: readonly string[]): string => items.join(" or "),
    group: (inner: string): string => `(${inner})`,
    not: (inner: string): string => `“${inner}” does not hold`,
    state: (what: string, plural: boolean, state: string, negated: boolean): string =>
      `${what} ${plural ? "are" : "is"}${negated ? " not" : ""} ${state}`,
    value: (what: string, plural: boolean, value: string, negated: boolean): string =>
      `${what} ${plural ? "are" : "is"}${negated ? " not" : ""} ${value}`,
    clock: (what: string, plural: boolean, clock: string, negated: boolean): string =>
      `${what} ${plural ? "are" : "is"}${negated ? " not" : ""} at ${clock}`,
    option: (option: string, choice: string, negated: boolean): string =>
      `${option} is ${negated ? "not " : ""}“${choice}”`,
    /** An option that asks whether its title is so. */
    holds: (option: string, negated: boolean): string => (negated ? `“${option}” is “no”` : option),
    noTemporaryParts: "no temporary part is left in place",
    unknown: "a condition that could not be read holds",
    needs: (conditions: string): string => `Start only when ${conditions}.`,
    upper: (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1),
  },
  /** Choices that need no title. */
  choices: { yes: "yes", no: "no" } as Readonly<Record<string, string>>,
  /** States as they are printed; own states of parts are printed as written. */
  states: {
    installed: "installed",
    removed: "removed",
    loose: "loose",
    tightened: "tightened",
    secured: "secured",
    clean: "clean",
    lubricated: "lubricated",
    aligned: "aligned",
    isolated: "isolated",
    live: "live",
  } as Readonly<Record<string, string>>,

  flow: {
    if: (condition: string): string => `If ${condition}:`,
    otherwiseIf: (condition: string): string => `Otherwise, if ${condition}:`,
    otherwise: "Otherwise:",
    anyOrder: "In any order, each one complete before the next:",
    repeat: (variable: string, values: string, several: boolean, steps: string | null): string =>
      several
        ? `Do ${steps ?? "all of these"} for one ${variable}, then for the next: ${variable} = ${values}`
        : `Once for each ${variable}, in this order: ${values}`,
    inPass: (pass: string, text: string): string => `${pass}: ${text}`,
    pass: (variable: string, value: string): string => `${variable} = ${value}`,
    goBack: (step: string): string => `Go back to ${step} and do the work again from there.`,
    goOn: (step: string): string => `Go on with ${step}. Leave out what lies between.`,
    step: (number: string, name: string): string => `step ${number} (${name})`,
    stepUnknown: (name: string): string => `step ${name}`,
    stop: (text: string): string => `STOP. ${text}`,
    leftOut: (steps: string, reason: string): string =>
      `Left out, because of the options chosen (${reason}): ${steps}.`,
    steps: (first: string, last: string): string => (first === last ? `step ${first}` : `steps ${first} to ${last}`),
    unreadable: "Lines of the procedure that could not be read stand here. See the errors listed.",
    notExpanded: "The procedure is too long to be written out. What follows may be incomplete.",
    performed: (title: string): string => `From the procedure “${title}”`,
    takes: (time: string): string => `Takes about ${time}.`,
    within: (time: string, step: string): string => `Finish within ${time} after the end of ${step}.`,
    after: (steps: string): string => `Only after ${steps}.`,
    before: (steps: string): string => `Before ${steps}.`,
    doneBy: (role: string): string => `By the ${role}.`,
    reminder: (signal: string, hazards: string, text: string): string =>
      `The ${signal} of ${hazards} still holds: ${text}`,
  },

  records: {
    mustBe: (limits: string): string => `must be ${limits}`,
    /** Limits that are worked out from readings: how, and which reading is which. */
    workedOut: (formula: string, readings: readonly (readonly [string, string])[]): string =>
      `${formula}, with ${readings.map(([name, title]) => `${name} = ${title}`).join(", ")}`,
    unit: (label: string, pass: string): string => `${label} (${pass})`,
  },
  /** Rows of a table that holds nothing else. */
  table: {
    kind: "Kind",
    text: "Text",
    part: "Round or item",
    heading: "Heading",
    /** Of a heading that holds no further. */
    end: "End of",
    instruction: "Instruction",
  },
  signOff: {
    hold: (role: string): string => `Stop here. Go on only when the ${role} has signed.`,
  },

  lists: {
    torque: (value: string): string => `torque ${value}`,
    accuracy: (value: string): string => `accuracy ${value}`,
    accuracyOfFullScale: (value: string): string => `accuracy ${value} of full scale`,
    arm: (value: string): string => `arm ${value}`,
    offset: (value: string): string => `offset ${value}`,
    angle: (value: string): string => `angle ${value}`,
    heatsTo: (value: string): string => `heats to ${value}`,
    coolsTo: (value: string): string => `cools to ${value}`,
    lifts: (value: string): string => `lifts ${value}`,
    legLifts: (value: string): string => `each leg lifts ${value}`,
    measures: (value: string): string => `measures ${value}`,
    resolution: (value: string): string => `resolution ${value}`,
    force: (value: string): string => `force ${value}`,
    mass: (value: string): string => `mass ${value}`,
    each: (value: string): string => `${value} each`,
    thread: (thread: string): string => `thread ${thread}`,
    propertyClass: (text: string): string => `class ${text}`,
    grade: (text: string): string => `grade ${text}`,
    newNeeded: (count: number): string => `new: ${count}`,
    temporary: "temporary, comes out again",
    sharp: "sharp edges",
    asNeeded: "as needed",
    moreAsNeeded: "and more as needed",
    choice: (reading: string, sizes: string | null): string =>
      `chosen by ${reading}${sizes === null ? "" : `: ${sizes}`}`,
    noRequirement: "–",
  },

  ...enSheets,

  /** Items of the crib. */
  stock: {
    heading: "Items in the crib that may serve",
    none: "none",
    calibratedUntil: (day: string): string => `calibrated until ${day}`,
    outSince: (day: string): string => `OUT OF CALIBRATION since ${day}: do not use`,
    unsaid: (what: string): string => `look at it first: the crib does not say its ${what}`,
    setting: (fastener: string, torque: string, adapters: string, settings: readonly string[]): string =>
      `For the ${fastener}, ${torque}${adapters === "" ? "" : `, with the ${adapters}`}: set ${settings.join(", then ")}`,
    keep: (set: string, window: string): string => `${set}, the last within ${window}`,
    window: (fastener: string, torque: string, window: string): string =>
      `For the ${fastener}, ${torque}: set within ${window}`,
    noArm: (torque: string, fastener: string, adapters: string): string =>
      `For the ${fastener}, ${torque}, with the ${adapters}: no setting, since the crib does not say its arm`,
    source: (cribs: string, day: string): string => `Items of ${cribs} as of ${day}.`,
    /** What goes into a formula: `torque`, `arm`. */
    term: (name: string): string => name,
    formula: (formula: string, source: string): string => `How a setting is worked out: ${formula}. From: ${source}.`,
    settingHolds:
      "A setting holds for that item alone, with this adapter, its angle and that item’s own arm. No extension on the handle. Work it out again if a tool changes.",
  },

  circle: {
    order: (places: string): string => `Order of tightening on ${withArticle(places)}`,
    positions: (places: string): string => `Positions of ${withArticle(places)}`,
    orderLoosened: (places: string): string => `Order of loosening on ${withArticle(places)}`,
    orderText: (sequence: string): string => `Order of positions: ${sequence}.`,
    keyPosition: "In the circles: positions.",
    keyOrder: "Beside them: 1. is tightened first.",
    keyLoosened: "Beside them: 1. is loosened first.",
    clockwise: "Numbered clockwise",
    counterclockwise: "Numbered counterclockwise",
    numbered: (direction: string, seenFrom: string | null): string =>
      seenFrom === null
        ? `${direction}.`
        : `${direction}, seen from ${WHERE.test(seenFrom) ? seenFrom : withArticle(seenFrom)}.`,
    start: (position: string, clock: string): string => `At the start, position ${position} is at ${clock}.`,
    notToPlace: "Drawn in the order of their numbers, not where they lie.",
    tooMany: "Too many positions to be drawn.",
  },

  /** Parts that go together hot or cold: `the bearing at least 99 °C, the shaft at most 62 °C`. */
  joining: (outer: string, atLeast: string, inner: string, atMost: string): string =>
    `Measure both at contact: ${outer} ${atLeast}, ${inner} ${atMost}.`,

  arrangement: {
    title: (part: string, ring: string): string => `Which ${part} goes where in ${withArticle(ring)}`,
    position: "Position",
    serialNumber: "Serial",
    mass: "Mass",
    moment: "Moment",
    residual: "Unbalance left",
    limit: "It may be",
    noLimit: "no limit given",
    notKnown: "not known, for want of a radius",
    grade: (limit: string, grade: string, speed: string): string => `${limit} (${grade} at ${speed})`,
    caution:
      "Static unbalance in one plane, of these parts alone, from the masses as listed. It does not replace balancing the whole rotor. A part that is exchanged changes it: have the list worked out again.",
    serial: (serial: string): string => `Serial: ${serial}.`,
    serials: (placed: readonly (readonly [string, string])[]): string =>
      `Serials by position: ${placed.map(([position, serial]) => `${position}: ${serial}`).join(", ")}.`,
  },

  /** While a checklist is filled in on a screen. */
  page: enPage,
  trace: enTrace,

  head: {
    revision: (revision: string): string => `revision ${revision}`,
    serial: (first: string, last: string | null): string =>
      last === null ? `serial ${first} and up` : `serial ${first} to ${last}`,
    ambientTaken: (value: string): string => `${value}, taken since none is declared`,
    people: (count: number): string => (count === 1 ? "1 person" : `${count} people`),
    option: (title: string, choice: string): string => `${title}: ${choice}`,
    units: { si: "SI", us: "US customary", both: "as written, in the other system in parentheses" },
    clean: "no errors, no warnings",
    counts: (errors: number, warnings: number, information: number): string =>
      [
        errors === 1 ? "1 error" : `${errors} errors`,
        warnings === 1 ? "1 warning" : `${warnings} warnings`,
        information === 1 ? "1 remark" : `${information} remarks`,
      ].join(", "),
    allowedCount: (count: number): string => `${count} allowed, with the reasons below`,
    /** Says which language findings are in; empty where it is this one. */
    findingsLanguage: "",
    page: (document: string, revision: string): string => `${document}${revision === "" ? "" : ` · ${revision}`}`,
    pageOf: (page: string, of: string): string => `Page ${page} of ${of}`,
    uncontrolled: "A printed copy is uncontrolled.",
    unprinted: "UNREADABLE",
    unprintedMeaning: (count: number): string =>
      `${count === 1 ? "One character stands" : `${count} characters stand`} as empty boxes in this PDF. Do not work from it: take the HTML or DOCX.`,
    misordered:
      "Words that are written from right to left stand in the wrong order in this PDF. Do not work from it: take the HTML or DOCX.",
    wholeProcedure: "whole procedure",
    noDocument: "no document number",
  },
};

/** Where somebody stands, which takes no article. */
const WHERE = /^(?:above|below|behind|inside|outside)\b/i;
