// How hazards are said: where one comes from, which value passed which threshold, and the statement that warns of it. Knows no
// single rule.
import { HAZARDS } from "#analysis/hazards/catalogue.ts";
import type { Raised } from "#analysis/hazards/hazard-fact.ts";
import type { Cause } from "#analysis/hazards/raise.ts";
import type { Mark } from "#analysis/hazards/thresholds.ts";
import { show } from "#quantity/display.ts";
import { factorsText, listed } from "./wording.ts";

/** Why it is a hazard here, then what was found and what it is held against, each on a line of its own. */
export function raisedWords(raised: Raised): string {
  return [CAUSES[raised.cause](raised.of.name), ...passedLines(raised)].join("\n");
}

/** ` from Bearing`; nothing where the hazard is all that is known. */
export function fromSource({ cause, of }: Raised): string {
  return cause === "said to be raised" || cause === "noise measured" ? " here" : ` from ${of.name}`;
}

const CAUSES: Readonly<Record<Cause, (of: string) => string>> = {
  "hot part": (of) => `${of} may be this hot in somebody's hands. Only “wait until … at most” says that it has cooled.`,
  "cold part": (of) => `${of} has been cooled and may be this cold in somebody's hands.`,
  "hand lift": (of) => `${of} is carried by hand: nothing lifts it here.`,
  "overhead lift": (of) => `${of} hangs from what lifts it.`,
  "part held by nothing": (of) => `The last fastener that held ${of} goes, and nothing else holds it.`,
  "live energy": (of) => `${of} is live while a part that it drives is worked on.`,
  "unproved energy": (of) => `${of} is isolated, and nobody has proved it dead before this work.`,
  "energy uncovered": (of) => `${of} is live, and what keeps hands away from it is taken off.`,
  "energy held back": (of) => `${of} is live, and what holds back its pressure is undone.`,
  "energy released": (of) => `What ${of} stores is let out here.`,
  "consumable used": (of) => `${of} is declared with this, and is used here.`,
  "flammable liquid": (of) => `${of} gives off vapour that can burn in any shop.`,
  "flammable liquid in the warm": (of) => `The shop may be nearly as warm as the flash point of ${of}.`,
  "flammable liquid heated": (of) => `The part heats ${of} nearly to its flash point.`,
  "gas set free": (of) => `${of} boils off and takes the place of the air.`,
  "oxygen displaced": (of) => `${of} boils off and leaves less oxygen in the room. Near it there is less still.`,
  "sharp part": (of) => `${of} is declared sharp and goes through hands here.`,
  "part handled": (of) => `${of} is declared with this and goes through hands here.`,
  "tool used": (of) => `${of} is declared with this, and is used here.`,
  "air at a nozzle": (of) => `${of} blows off what lies on the part.`,
  "noise measured": () => "What is to be read here is loud enough to harm hearing.",
  "said to be raised": () => "The step says so.",
};

function passedLines({ cause, passed }: Raised): readonly string[] {
  if (passed === null) return [];
  const { value, threshold, lowered = [] } = passed;
  const limit = `${show(threshold.value).replace(/^at (?:least|most) /, "")} (${sourceWords(threshold.source, threshold.mark)})`;
  const [found, held] = HELD_AGAINST[cause] ?? ["Found", "Counts from"];
  return [
    `${found}: ${value === null ? "no upper limit" : show(value)}`,
    `${held}: ${limit}`,
    ...(lowered.length === 0 ? [] : [`Lowered by: ${factorsText(lowered)}`]),
  ];
}

/** What the value is, and on which side of the threshold it counts. */
const HELD_AGAINST: Partial<Record<Cause, readonly [string, string]>> = {
  "cold part": ["Found", "Counts up to"],
  "hand lift": ["Load", "Counts above"],
  "flammable liquid": ["Flash point", "Counts below"],
  "gas set free": ["Air that it needs", "Oxygen to be kept"],
  "oxygen displaced": ["Oxygen left", "Counts below"],
};

function sourceWords(source: string, mark: Mark | null): string {
  switch (mark) {
    case "memory":
      return `${source}; source not verified`;
    case "practice":
      return `${source}; common practice`;
    default:
      return source;
  }
}

/** A statement as it is written: up to its first text, and what follows on lines of its own where it is long. */
export interface StatementText {
  readonly head: string;
  readonly rests: readonly string[];
}

/**
 * The statement that warns of what is raised, with what it does and how not to be hurt.
 * @param titles of hazards that the shop declared itself
 */
export function statementFor(raised: Raised, titles: Readonly<Record<string, string>>): StatementText {
  const special = SPECIAL[raised.cause];
  const hazards = special?.hazards ?? raised.hazards;
  const text = `${subjectOf(raised)} ${special?.does ?? effects(hazards, titles)}.`;
  const avoid =
    special?.avoid ?? [...new Set(hazards.map((name) => MEANS.get(name)?.avoid ?? OWN_AVOIDANCE))].join(" ");
  const worn = special?.wear ?? [...new Set(hazards.flatMap((name) => HAZARDS.get(name)?.protection ?? []))];
  return {
    head: `${signalFor(hazards)} ${hazards.join(", ")} ${quoted(text)}`,
    rests: [`avoid ${quoted(avoid)}`, ...(worn.length === 0 ? [] : [`wear ${worn.map(quoted).join(", ")}`])],
  };
}

/** `danger` for what kills at a touch, `caution` for what is bad for equipment only. */
function signalFor(hazards: readonly string[]): "danger" | "warning" | "caution" {
  if (hazards.includes("electric")) return "danger";
  return hazards.every((name) => HAZARDS.get(name)?.harms === "equipment") ? "caution" : "warning";
}

function subjectOf({ cause, of: { name, title } }: Raised): string {
  if (cause === "said to be raised") return "This work";
  if (cause === "noise measured") return "The noise";
  return title === name ? name : `The ${title}`;
}

function quoted(text: string): string {
  return `"${text.replace(/["\\]/g, "")}"`;
}

function effects(hazards: readonly string[], titles: Readonly<Record<string, string>>): string {
  const harmed = hazards.flatMap((name) => MEANS.get(name)?.harms ?? []);
  const others = hazards.flatMap((name) => MEANS.get(name)?.can ?? []);
  const own = hazards.filter((name) => !MEANS.has(name)).map((name) => `brings ${titles[name] ?? name}`);
  const phrases = [
    ...(harmed.length === 0 ? [] : [`harms ${listed(harmed, "and")}`]),
    ...(others.length === 0 ? [] : [`can ${listed(others, "and")}`]),
    ...own,
  ];
  return listed(phrases, "and");
}

interface Means {
  readonly harms?: string;
  readonly can?: string;
  readonly avoid: string;
}

const OWN_AVOIDANCE = "Follow the site's rule for it.";

/** What each built-in hazard does, and how not to be hurt. */
const MEANS: ReadonlyMap<string, Means> = new Map<string, Means>([
  ["burn", { can: "burn skin", avoid: "Do not touch it with bare hands." }],
  ["cold", { can: "freeze skin", avoid: "Do not touch it with bare hands." }],
  ["fire", { can: "catch fire", avoid: "Keep flames and sparks away." }],
  ["explosion", { can: "explode", avoid: "Keep flames and sparks away." }],
  ["pressure", { can: "jet out", avoid: "Let it out and prove it gone first." }],
  ["electric", { can: "kill", avoid: "Prove it dead before work." }],
  ["lifting", { can: "strain a back", avoid: "Lift it with a hoist." }],
  ["crush", { can: "crush hands and feet", avoid: "Keep hands and feet clear." }],
  ["cutting", { can: "cut", avoid: "Hold it where it is not sharp." }],
  ["rotating", { can: "pull in a hand", avoid: "Keep hands off until it stands still." }],
  ["spring", { can: "fly out", avoid: "Let it out slowly." }],
  ["fall", { can: "make people fall", avoid: "Stand where a rail holds." }],
  ["dropped", { can: "drop", avoid: "Stay out from under it." }],
  ["eye", { harms: "eyes", avoid: "Rinse splashes off at once." }],
  ["skin", { harms: "skin", avoid: "Rinse splashes off at once." }],
  ["fumes", { harms: "lungs", avoid: "Let fresh air in." }],
  ["noise", { harms: "hearing", avoid: "Stay no longer than the work takes." }],
  ["damage", { can: "damage the equipment", avoid: "Go slowly." }],
  ["contamination", { can: "bring dirt in", avoid: "Keep it clean and covered." }],
  ["overheating", { can: "become too hot", avoid: "Watch the thermometer." }],
  ["overtorque", { can: "be tightened too far", avoid: "Stop at the upper limit." }],
  ["debris", { can: "leave chips behind", avoid: "Count what goes in and what comes out." }],
]);

const OF_GAS = {
  does: "takes the place of the air that is breathed",
  avoid: "Let fresh air in, and measure the oxygen.",
  wear: ["oxygen monitor"],
} as const;

/** Where more is known than which hazard it is. */
const SPECIAL: Partial<
  Record<Cause, Pick<Means, "avoid"> & { does: string; hazards?: readonly string[]; wear?: readonly string[] }>
> = {
  "hand lift": { does: "is too heavy for one person", avoid: "Lift it with a hoist, or with the crew." },
  "overhead lift": {
    hazards: ["lifting", "crush"],
    does: "is heavy and can swing",
    avoid: "Stay out from under it.",
  },
  "part held by nothing": {
    does: "drops when its last fastener goes",
    avoid: "Hold it with a hoist or on supports first.",
  },
  "gas set free": OF_GAS,
  "oxygen displaced": OF_GAS,
  "air at a nozzle": { does: "throws chips", avoid: "Blow away from people." },
};
