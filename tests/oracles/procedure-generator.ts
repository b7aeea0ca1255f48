// Random procedures for the brute-force run: sound ones, made by walking through what the shop allows at each point, and
// some of them with one fault planted. Knows nothing of the checker.
import fc from "fast-check";
import {
  instances,
  type SimAct,
  type SimCondition,
  type SimItem,
  type SimPart,
  type SimProcedure,
  said,
  sayers,
} from "./paper-simulator.ts";

const PLAIN = ["Hub", "Bearing", "Cover", "Plug"];
const FASTENERS = ["ScrewA", "ScrewB", "Bolt[1]", "Bolt[2]", "Bolt[3]"];
const OPTIONS = [
  { name: "Extent", values: ["Full", "Part", "None"] },
  { name: "Kept", values: ["yes", "no"] },
];
const ALL = [...PLAIN, ...FASTENERS, "Pin", "Plate"];
const ACTS: readonly SimAct[] = [
  ...ALL.flatMap((part): SimAct[] => [
    { verb: "install", part },
    { verb: "remove", part },
  ]),
  ...FASTENERS.flatMap((part): SimAct[] => [
    { verb: "tighten", part },
    { verb: "loosen", part },
  ]),
  { verb: "isolate", energy: "Supply" },
  { verb: "restore", energy: "Supply" },
];

/** A procedure from numbers: the same numbers give the same one. About half are meant to be sound. */
export const procedures: fc.Arbitrary<SimProcedure> = fc
  .record({
    parts: fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
    walk: fc.array(fc.nat(), { minLength: 10, maxLength: 60 }),
    faults: fc.option(fc.array(fc.nat(), { minLength: 6, maxLength: 24 }), { nil: null, freq: 2 }),
  })
  .map(({ parts, walk, faults }) => made(pickerOf(parts), pickerOf(walk), faults === null ? null : pickerOf(faults)));

/** One of a list, by the next number; the first when the numbers have run out. */
interface Picker {
  readonly of: <T>(list: readonly T[]) => T | undefined;
  readonly below: (count: number) => number;
  readonly isDone: () => boolean;
}

function pickerOf(numbers: readonly number[]): Picker {
  let at = 0;
  const below = (count: number): number => (numbers[at++] ?? 0) % Math.max(count, 1);
  return { below, of: (list) => list[below(list.length)], isDone: () => at >= numbers.length };
}

function made(shape: Picker, walk: Picker, faults: Picker | null): SimProcedure {
  const parts = partsOf(shape);
  const shop: Shop = { parts, in: new Set(), tight: new Set(), off: new Set(), opened: false, signed: false };
  const begin: SimCondition[] = [];
  for (const part of ["Hub", "Bearing"]) {
    if (walk.below(3) > 0 || !isAllowed(shop, { verb: "install", part })) continue;
    change(shop, { verb: "install", part });
    begin.push({ part, state: "installed" });
  }
  const items = sound(shop, walk, 0);
  for (const act of [
    { verb: "remove", part: "Pin" },
    { verb: "restore", energy: "Supply" },
  ] as const)
    if (isAllowed(shop, act)) items.push(done(shop, act));
  const finish = [...PLAIN, "Pin"].flatMap((part): SimCondition[] =>
    walk.below(3) > 0 ? [] : [{ part, state: shop.in.has(part) ? "installed" : "removed" }],
  );
  if (walk.below(3) === 0) finish.push({ energy: "Supply", state: shop.off.has("Supply") ? "isolated" : "live" });
  if (isSecured(shop)) finish.push({ part: "Cover", state: "secured" });
  const procedure = { parts, energies: ["Supply"], facts: ["Signed"], options: OPTIONS, begin, finish, items };
  let planted = items;
  for (let count = faults === null ? 0 : 1 + faults.below(4); faults !== null && count > 0; count--)
    planted = spoilt(planted, faults);
  return { ...procedure, items: named(planted) };
}

function partsOf(shape: Picker): SimPart[] {
  const plain = { count: null, temporary: false, needs: [], encloses: [], retains: [], secures: [], states: [] };
  const closesPin = shape.below(2) === 0;
  const some = (list: readonly string[]): string[] =>
    shape.below(3) === 0 ? [] : [shape.of(list) ?? ""].filter((name) => name !== "");
  return [
    ...PLAIN.map((name, at): SimPart => {
      const before = PLAIN.slice(0, at);
      const encloses = [...some(before), ...(closesPin && name === "Cover" ? ["Pin"] : [])];
      return { ...plain, name, needs: some(before), encloses, retains: some(before) };
    }),
    { ...plain, name: "ScrewA", secures: ["Cover"] },
    { ...plain, name: "ScrewB", secures: ["Cover"] },
    { ...plain, name: "Bolt", count: 3, secures: ["Plate"] },
    { ...plain, name: "Plate" },
    { ...plain, name: "Pin", temporary: true },
    { ...plain, name: "Valve", states: ["shut", "open"] },
  ];
}

/* ---- a sound walk ---- */

/** What is so in the shop, on every path. */
interface Shop {
  readonly parts: readonly SimPart[];
  readonly in: Set<string>;
  readonly tight: Set<string>;
  readonly off: Set<string>;
  opened: boolean;
  signed: boolean;
}

function isAllowed(shop: Shop, act: SimAct): boolean {
  if (act.verb === "isolate") return !shop.off.has(act.energy);
  if (act.verb === "restore") return shop.off.has(act.energy);
  if (!("part" in act)) return false;
  const { verb, part } = act;
  if (sayers(shop, "encloses", part).some((by) => shop.in.has(by))) return false;
  if (verb === "install") {
    return (
      !shop.in.has(part) &&
      said(shop, "needs", part).every((support) => shop.in.has(support)) &&
      !(said(shop, "encloses", part).includes("Pin") && shop.in.has("Pin"))
    );
  }
  if (!shop.in.has(part)) return false;
  if (verb === "remove")
    return ![...sayers(shop, "retains", part), ...sayers(shop, "secures", part)].some((by) => shop.in.has(by));
  return verb === "loosen"
    ? shop.tight.has(part)
    : !shop.tight.has(part) && said(shop, "secures", part).every((held) => shop.in.has(held));
}

/** Whether the action is allowed, and after it the one that takes it back. */
function canBeUndone(shop: Shop, act: SimAct): boolean {
  if (!isAllowed(shop, act)) return false;
  if (act.verb !== "install") return act.verb === "tighten" || act.verb === "isolate";
  return ![...sayers(shop, "retains", act.part), ...sayers(shop, "secures", act.part)].some((by) => shop.in.has(by));
}

function change(shop: Shop, act: SimAct): void {
  if (!("part" in act)) {
    if (act.verb === "isolate") shop.off.add(act.energy);
    else shop.off.delete(act.energy);
  } else if (act.verb === "tighten") shop.tight.add(act.part);
  else {
    shop.tight.delete(act.part);
    if (act.verb === "install") shop.in.add(act.part);
    if (act.verb === "remove") shop.in.delete(act.part);
  }
}

function done(shop: Shop, act: SimAct): SimItem {
  change(shop, act);
  return { kind: "act", name: "", act };
}

function isSecured(shop: Shop): boolean {
  return shop.in.has("Cover") && sayers(shop, "secures", "Cover").every((by) => shop.tight.has(by));
}

function sound(shop: Shop, walk: Picker, depth: number): SimItem[] {
  const items: SimItem[] = [];
  for (let length = 2 + walk.below(depth === 0 ? 14 : 3); length > 0 && !walk.isDone(); length--) {
    switch (walk.below(12)) {
      case 0:
        items.push({ kind: "needs", name: "", condition: aTruth(shop, walk) });
        break;
      case 1:
        items.push(gift(shop, walk));
        break;
      case 2:
      case 3:
        items.push(...branch(shop, walk, depth));
        break;
      case 4:
        items.push({ kind: "check", name: "", remove: null, jump: walk.below(2) === 0 ? "stop" : null });
        break;
      case 5:
        items.push(...rework(shop, walk));
        break;
      case 6:
      case 7:
        items.push(...bolts(shop, walk));
        break;
      default:
        items.push(...oneAct(shop, walk));
    }
  }
  return items;
}

function oneAct(shop: Shop, walk: Picker): SimItem[] {
  const act = walk.of(ACTS.filter((each) => isAllowed(shop, each)));
  return act === undefined ? [] : [done(shop, act)];
}

function aTruth(shop: Shop, walk: Picker): SimCondition {
  const truths: SimCondition[] = [
    ...PLAIN.map((part): SimCondition => ({ part, state: shop.in.has(part) ? "installed" : "removed" })),
    { energy: "Supply", state: shop.off.has("Supply") ? "isolated" : "live" },
    { part: "Valve", own: shop.opened ? "open" : "shut" },
    ...FASTENERS.filter((part) => shop.tight.has(part)).map((part): SimCondition => ({ part, state: "tightened" })),
    ...(shop.signed ? [{ fact: "Signed" }] : []),
    ...(isSecured(shop) ? [{ part: "Cover", state: "secured" } as const] : []),
  ];
  return walk.of(truths) ?? { part: "Valve", own: "shut" };
}

function gift(shop: Shop, walk: Picker): SimItem {
  if (walk.below(2) === 0) {
    shop.signed = true;
    return { kind: "gives", name: "", condition: { fact: "Signed" } };
  }
  shop.opened = walk.below(2) === 0;
  return { kind: "gives", name: "", condition: { part: "Valve", own: shop.opened ? "open" : "shut" } };
}

/** A branch that leaves the shop as it was: what is put in is taken out again, the other way round. */
function branch(shop: Shop, walk: Picker, depth: number): SimItem[] {
  const option = walk.of(OPTIONS);
  if (option === undefined || depth > 1) return [];
  const balanced = (): SimItem[] => {
    const items: SimItem[] = [];
    const undo: SimAct[] = [];
    for (let length = 1 + walk.below(3); length > 0; length--) {
      const act = walk.of(ACTS.filter((each) => canBeUndone(shop, each)));
      if (act === undefined) continue;
      items.push(done(shop, act));
      undo.unshift(
        "energy" in act
          ? { verb: "restore", energy: act.energy }
          : { verb: act.verb === "install" ? "remove" : "loosen", part: act.part },
      );
    }
    if (walk.below(3) === 0) items.push(...branch(shop, walk, depth + 1));
    return [...items, ...undo.map((act) => done(shop, act))];
  };
  const otherwise = walk.below(2) === 0;
  return [
    {
      kind: "when",
      option: option.name,
      value: walk.of(option.values) ?? "",
      inside: balanced(),
      otherwise: otherwise ? balanced() : null,
    },
  ];
}

/** Puts a part in, looks, and takes it out for another try where it does not fit. */
function rework(shop: Shop, walk: Picker): SimItem[] {
  const part = walk.of(ALL.filter((each) => canBeUndone(shop, { verb: "install", part: each })));
  if (part === undefined) return [];
  return [done(shop, { verb: "install", part }), { kind: "check", name: "", remove: part, jump: { back: "" } }];
}

function bolts(shop: Shop, walk: Picker): SimItem[] {
  const all = instances(shop, "Bolt");
  const verbs = (["install", "remove", "tighten"] as const).filter((verb) =>
    all.every((part) => isAllowed(shop, { verb, part })),
  );
  const verb = walk.of(verbs);
  if (verb === undefined) return [];
  for (const part of all) change(shop, { verb, part });
  return [{ kind: "repeat", verb, part: "Bolt" }];
}

/* ---- faults and names ---- */

/** One item left out, done twice or done later; a strange need, check or action put in. */
function spoilt(items: readonly SimItem[], fault: Picker): SimItem[] {
  const list = [...items];
  const at = fault.below(list.length);
  const item = list[at];
  if (item === undefined) return list;
  if (item.kind === "when" && fault.below(3) > 0) {
    list[at] = { ...item, inside: spoilt(item.inside, fault) };
    return list;
  }
  switch (fault.below(6)) {
    case 0:
      list.splice(at, 1);
      break;
    case 1:
      list.splice(at, 0, item);
      break;
    case 2:
      list.splice(at, 1);
      list.splice(at + 1 + fault.below(3), 0, item);
      break;
    case 3:
      list.splice(at, 0, { kind: "needs", name: "", condition: aWish(fault) });
      break;
    case 4:
      list.splice(at, 0, {
        kind: "check",
        name: "",
        remove: fault.of(ALL) ?? null,
        jump: fault.of([null, "stop", { back: "" }]) ?? null,
      });
      break;
    default:
      list.splice(at, 0, { kind: "act", name: "", act: fault.of(ACTS) ?? { verb: "restore", energy: "Supply" } });
  }
  return list;
}

/** A condition that need not hold. */
function aWish(fault: Picker): SimCondition {
  const wishes: SimCondition[] = [
    ...ALL.flatMap((part): SimCondition[] => [
      { part, state: "installed" },
      { part, state: "removed" },
    ]),
    ...FASTENERS.map((part): SimCondition => ({ part, state: "tightened" })),
    { part: "Cover", state: "secured" },
    { part: "Plate", state: "secured" },
    { part: "Valve", own: "open" },
    { energy: "Supply", state: "isolated" },
    { fact: "Signed" },
  ];
  return fault.of(wishes) ?? { fact: "Signed" };
}

/** Gives every step a name and, where a check goes back, the named step before it on its own level or above. */
function named(list: readonly SimItem[], count = { next: 0 }, above: readonly string[] = []): SimItem[] {
  const known = [...above];
  return list.map((item): SimItem => {
    if (item.kind === "repeat") return item;
    if (item.kind === "when") {
      const inside = named(item.inside, count, known);
      return { ...item, inside, otherwise: item.otherwise === null ? null : named(item.otherwise, count, known) };
    }
    const name = `Step${count.next++}`;
    const back = known.at(-1);
    known.push(name);
    if (item.kind !== "check" || item.jump === null || item.jump === "stop") return { ...item, name };
    return { ...item, name, jump: back === undefined ? null : { back } };
  });
}
