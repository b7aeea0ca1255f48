// Words that show that a clause begins with the name of something, not with an order. Our own lists. Knows no sentence.
import { wordList } from "./word-list.ts";

/** Words that name a thing more often than they order, where no article follows. */
export const THINGS = wordList(`
  base belt bolt bottom bracket brake cable cap chain clamp cover crank dowel edge fan filter flange frame fuel gap gas gear grease guard guide head hook joint key
  latch lever machine motor nail oil panel pin pivot plate plug position power pressure pump rack ring rivet screw seal seat shield shim sleeve sling spring
  stamp station steam stud surface switch tension thread top torque tube valve vent wheel wire
`);
/** What of a thing is measured. */
export const MEASURES = wordList(
  "clearance depth diameter gap length level pressure size speed temperature thickness torque voltage width",
);
/** How a thing is found or left: “Seal faces dry”. */
export const STATES = wordList(
  "bright clean closed cold dry even finger-tight flush free full hand-tight level new open ready shut straight tight whole zero",
);
/** Who works. */
export const PEOPLE = wordList(`
  anybody anyone assembler assistant crew electrician engineer everybody everyone fitter foreman helper inspector machinist mechanic millwright nobody
  operator personnel planner rigger somebody someone staff storekeeper supervisor technician user welder worker
`);
/** What a thing is like, before its name. */
export const QUALITIES = wordList(`
  bad broken careful cold complete damaged defective different difficult dirty easy faulty final first-stage full good
  greasy heavy hot important initial inner leaking left left-hand loose lost main maximum metal minimum missing
  necessary new old other outer possible previous proper ready recommended regular rusty same sharp small spare
  special standard temporary thorough tight total typical unused upper used usual wet worn wrong
`);

/** Whether a word can hardly be but a noun, by its ending: `installation`, `nuts`. */
export function isNounByEnding(word: string): boolean {
  return NOUN_ENDING.test(word) || PLURAL.test(word);
}

const NOUN_ENDING = /(?:[ts]ion|ment|ance|ence|ness|removal|renewal|disposal)s?$/;
const PLURAL = /[a-z]{2}[^suiy]s$/;

/** Whether a word is a verb in -ing: `cleaning`. */
export function isGerund(word: string): boolean {
  return /^[a-z-]{3,}ing$/.test(word) && !NO_GERUNDS.has(word);
}

const NO_GERUNDS = wordList(
  "bring ring spring string thing nothing something anything everything king wing swing sling during",
);
