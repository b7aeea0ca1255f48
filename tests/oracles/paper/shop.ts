// A small shop and a procedure in it, as data: what the brute-force run runs and what the generator makes. Knows no text.

export type Direction = "clockwise" | "counterclockwise";

export interface SimRing {
  readonly name: string;
  readonly count: number;
  readonly numbered: Direction;
  /** The hour at which position 1 stands at the start. */
  readonly first: number;
  readonly fill: Direction | null;
}

export interface SimPart {
  readonly name: string;
  /** How many there are, by number from 1; `null` for the only one. Numbered parts are meant whole where they are named. */
  readonly count: number | null;
  readonly temporary: boolean;
  readonly needs: readonly string[];
  readonly encloses: readonly string[];
  readonly retains: readonly string[];
  readonly secures: readonly string[];
  readonly locks: readonly string[];
  /** Energies. */
  readonly driven: readonly string[];
  readonly states: readonly string[];
  readonly singleUse: boolean;
  /** kg */
  readonly mass: number | null;
  /** Stays where it is with its fasteners loose or out. */
  readonly stands: boolean;
  readonly seats: { readonly ring: string; readonly byNumber: boolean } | null;
}

/** The outer goes over the inner; `tight`: the smallest interference is above zero. */
export interface SimFit {
  readonly outer: string;
  readonly inner: string;
  readonly tight: boolean;
}

/** How long the consumable Glue cures where nothing else is said, in minutes. */
export const GLUE_CURES = 10;
/** What one person may lift, in kg. */
const ONE_PERSON = 23;

/** `part`: by name, with its number if it has one. `not`: written as what it is not. */
export type SimCondition = SimState & { readonly not?: true };

export type SimState =
  | { readonly part: string; readonly state: "installed" | "removed" | "secured" | "tightened" | "loose" }
  | { readonly part: string; readonly state: Touch }
  | { readonly part: string; readonly own: string }
  /** °C */
  | { readonly part: string; readonly least: number }
  | { readonly part: string; readonly most: number }
  | { readonly energy: string; readonly state: "isolated" | "live" }
  | { readonly place: string; readonly hour: number }
  | { readonly fact: string };

/** What work leaves on a part, or of how it stands. */
export type Touch = "clean" | "lubricated" | "aligned";

export type PartVerb =
  | "install"
  | "press"
  | "remove"
  | "discard"
  | "tighten"
  | "loosen"
  | "clean"
  | "lubricate"
  | "apply"
  | "fill"
  | "align"
  | "lift"
  | "support"
  | "set down"
  | "inspect";

/** `part` may hold the loop variable: `Bolt[n]`. */
export interface PartAct {
  readonly verb: PartVerb;
  readonly part: string;
  /** install new */
  readonly fresh?: boolean;
  /** install … in Circle[2] */
  readonly place?: string;
  /** install … at 12 o'clock */
  readonly hour?: number;
  /** install or press … over Shaft */
  readonly over?: string;
  readonly how?: "by hand" | "to seat" | "by 1/4 turn";
  /** apply … cure */
  readonly cure?: number;
  /** apply Glue, which says itself how long it cures */
  readonly glue?: true;
  /** align … with Motor */
  readonly with?: string;
}

/** Times in minutes, temperatures in °C. */
export type SimAct =
  | PartAct
  | { readonly verb: "heat" | "cool"; readonly part: string; readonly low: number; readonly high: number }
  | { readonly verb: "heat by"; readonly part: string; readonly low: number; readonly high: number }
  | { readonly verb: "wait until"; readonly part: string; readonly high: number }
  | { readonly verb: "wait"; readonly minutes: number }
  | { readonly verb: "turn"; readonly place: string; readonly hour: number }
  | { readonly verb: "isolate" | "prove" | "restore"; readonly energy: string }
  | { readonly verb: "perform"; readonly procedure: string }
  | { readonly verb: "measure"; readonly reading: string }
  | { readonly verb: "do" };

export type SimJump = { readonly to: string; readonly way: "return to" | "go to" } | "stop";

export type SimLine =
  | { readonly kind: "act"; readonly act: SimAct }
  | { readonly kind: "needs" | "gives"; readonly condition: SimCondition }
  | { readonly kind: "check"; readonly fails: readonly SimAct[]; readonly jump: SimJump | null }
  | { readonly kind: "takes"; readonly low: number; readonly high: number }
  | { readonly kind: "after" | "before"; readonly step: string }
  | { readonly kind: "within"; readonly minutes: number; readonly step: string };

export interface SimStep {
  readonly kind: "step";
  readonly name: string;
  readonly lines: readonly SimLine[];
}

export type SimItem =
  | SimStep
  | { readonly kind: "task"; readonly items: readonly SimItem[] }
  | {
      readonly kind: "repeat";
      readonly variable: string;
      readonly values: readonly number[];
      readonly items: readonly SimItem[];
    }
  | {
      readonly kind: "when";
      readonly option: string;
      readonly value: string;
      readonly inside: readonly SimItem[];
      readonly otherwise: readonly SimItem[] | null;
    }
  /** At most so many mm. */
  | {
      readonly kind: "when read";
      readonly reading: string;
      readonly most: number;
      readonly inside: readonly SimItem[];
      readonly otherwise: readonly SimItem[] | null;
    }
  | { readonly kind: "any order"; readonly children: readonly SimItem[] }
  | { readonly kind: "jump"; readonly jump: SimJump };

export interface SimShop {
  readonly parts: readonly SimPart[];
  readonly rings: readonly SimRing[];
  readonly fits: readonly SimFit[];
  /** `dead`: off at the start. */
  readonly energies: readonly { readonly name: string; readonly dead: boolean }[];
  readonly facts: readonly string[];
  readonly options: readonly { readonly name: string; readonly values: readonly string[] }[];
}

export interface SimWork {
  readonly begin: readonly SimCondition[];
  readonly finish: readonly SimCondition[];
  readonly items: readonly SimItem[];
}

export interface SimProcedure extends SimShop, SimWork {
  /** What it may perform: straight on, without branches, and with nothing in it that the shop asks of whole rings, loads or coats. */
  readonly performed: readonly (SimWork & { readonly name: string })[];
}

/** A part that says nothing of itself. */
export const PLAIN_PART = {
  count: null,
  temporary: false,
  needs: [],
  encloses: [],
  retains: [],
  secures: [],
  locks: [],
  driven: [],
  states: [],
  singleUse: false,
  mass: null,
  stands: false,
  seats: null,
} as const satisfies Omit<SimPart, "name">;

export type Relation = "needs" | "encloses" | "retains" | "secures" | "locks";

type Parts = readonly SimPart[];

/** The names of all single parts that a name means: `Bolt` is Bolt[1], Bolt[2] and so on. */
export function instances({ parts }: Pick<SimShop, "parts">, name: string): readonly string[] {
  return kept(parts, "instances", name, () => {
    const [whole, index] = name.split("[");
    const count = parts.find((part) => part.name === whole)?.count ?? null;
    if (count === null || (index !== undefined && index !== "all]")) return [name];
    return Array.from({ length: count }, (_, at) => `${whole}[${at + 1}]`);
  });
}

export function allInstances(shop: Pick<SimShop, "parts">): readonly string[] {
  return kept(shop.parts, "all", "", () => shop.parts.flatMap((part) => instances(shop, part.name)));
}

export function partOf({ parts }: Pick<SimShop, "parts">, instance: string): SimPart | undefined {
  return kept(parts, "part", instance, () => parts.filter((part) => part.name === instance.split("[")[0]))[0];
}

/** The number in brackets; 0 if there is none. */
export function numberOf(instance: string): number {
  return Number(/\[(\d+)\]/.exec(instance)?.[1] ?? 0);
}

/** What a part says it needs, encloses and so on. */
export function said(shop: Pick<SimShop, "parts">, relation: Relation, instance: string): readonly string[] {
  return kept(shop.parts, OF[relation], instance, () =>
    (partOf(shop, instance)?.[relation] ?? []).flatMap((name) =>
      instances(shop, name.replace("[same]", `[${numberOf(instance)}]`)),
    ),
  );
}

/** What says so of the part. */
export function sayers(shop: Pick<SimShop, "parts">, relation: Relation, instance: string): readonly string[] {
  return kept(shop.parts, relation, instance, () =>
    allInstances(shop).filter((by) => said(shop, relation, by).includes(instance)),
  );
}

const OF = {
  needs: "needs of",
  encloses: "encloses of",
  retains: "retains of",
  secures: "secures of",
  locks: "locks of",
};
const known = new WeakMap<Parts, Map<string, Map<string, readonly unknown[]>>>();

/** Looked up once for each shop: these are asked for again and again. */
function kept<T>(parts: Parts, question: string, of: string, answer: () => readonly T[]): readonly T[] {
  const questions = known.get(parts) ?? new Map<string, Map<string, readonly unknown[]>>();
  known.set(parts, questions);
  const answers = questions.get(question) ?? new Map<string, readonly unknown[]>();
  questions.set(question, answers);
  const list = answers.get(of) ?? answer();
  answers.set(of, list);
  return list as readonly T[];
}

export function isHeavy({ mass }: SimPart): boolean {
  return mass !== null && mass > ONE_PERSON;
}

/** Parts that stack: of which one names its like-numbered partner, or both such a one. */
export function canStack({ parts }: Pick<SimShop, "parts">, one: string, other: string): boolean {
  const [first = "", second = ""] = [one, other].map((name) => name.split("[")[0] ?? "");
  if (first === second) return false;
  const reached = new Set([first]);
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    for (const part of parts)
      for (const partner of partners(part))
        if (reached.has(part.name) || reached.has(partner)) reached.add(part.name).add(partner);
  }
  return reached.has(second);
}

function partners({ needs, encloses, retains, secures, locks }: SimPart): readonly string[] {
  return [needs, encloses, retains, secures, locks]
    .flat()
    .filter((name) => name.endsWith("[same]"))
    .map((name) => name.replace("[same]", ""));
}

export function isFastener(shop: Pick<SimShop, "parts">, instance: string): boolean {
  return (partOf(shop, instance)?.secures.length ?? 0) > 0;
}

/** Whether two parts have to do with each other by a declaration. */
export function areRelated(shop: SimShop, one: string, other: string): boolean {
  const relations: readonly Relation[] = ["needs", "encloses", "retains", "secures", "locks"];
  const fitted = ({ outer, inner }: SimFit): boolean =>
    (outer === one && inner === other) || (outer === other && inner === one);
  return (
    relations.some((name) => said(shop, name, one).includes(other) || said(shop, name, other).includes(one)) ||
    shop.fits.some(fitted)
  );
}

/** Where a part by number stands; `null` for others. */
export function ownPlace(shop: SimShop, instance: string): string | null {
  const seats = partOf(shop, instance)?.seats ?? null;
  return seats?.byNumber === true ? `${seats.ring}[${numberOf(instance)}]` : null;
}

/** Every act, the lines of failing checks too, with loop variables as they are written. */
export function actsIn(items: readonly SimItem[]): readonly SimAct[] {
  return linesIn(items).flatMap((line) => (line.kind === "act" ? [line.act] : line.kind === "check" ? line.fails : []));
}

export function linesIn(items: readonly SimItem[]): readonly SimLine[] {
  return items.flatMap((item): readonly SimLine[] => {
    if (item.kind === "step") return item.lines;
    if (item.kind === "jump") return [];
    return linesIn(innerItems(item));
  });
}

/** Values that a reading may have: one for each way in which the branches on it can part. */
export function valuesRead(items: readonly SimItem[], reading: string): readonly number[] {
  const bounds = [...new Set(boundsOf(items, reading))].sort((a, b) => a - b);
  return [...bounds, (bounds.at(-1) ?? 0) + 1];
}

function boundsOf(items: readonly SimItem[], reading: string): readonly number[] {
  return items.flatMap((item) => [
    ...(item.kind === "when read" && item.reading === reading ? [item.most] : []),
    ...boundsOf(innerItems(item), reading),
  ]);
}

export function readingsIn(items: readonly SimItem[]): readonly string[] {
  return [...new Set(actsIn(items).flatMap((act) => (act.verb === "measure" ? [act.reading] : [])))];
}

export function innerItems(item: SimItem): readonly SimItem[] {
  switch (item.kind) {
    case "task":
    case "repeat":
      return item.items;
    case "when":
    case "when read":
      return [...item.inside, ...(item.otherwise ?? [])];
    case "any order":
      return item.children;
    default:
      return [];
  }
}

/** The item with other items in it. */
export function withInner(item: SimItem, does: (inside: readonly SimItem[]) => readonly SimItem[]): SimItem {
  switch (item.kind) {
    case "task":
    case "repeat":
      return { ...item, items: does(item.items) };
    case "when":
    case "when read":
      return { ...item, inside: does(item.inside), otherwise: item.otherwise === null ? null : does(item.otherwise) };
    case "any order":
      return { ...item, children: does(item.children) };
    default:
      return item;
  }
}

export function stepsIn(items: readonly SimItem[]): readonly SimStep[] {
  return items.flatMap((item) => (item.kind === "step" ? [item] : stepsIn(innerItems(item))));
}

/** Others in the place of one item, wherever it stands. */
export function replaced(items: readonly SimItem[], gone: SimItem, by: readonly SimItem[]): readonly SimItem[] {
  return items.flatMap((item) => (item === gone ? by : [withInner(item, (inside) => replaced(inside, gone, by))]));
}
