// In which orders the children of an `in any order` block are tried. Those that have nothing to do with each other follow one
// another as written, so that twenty independent steps cost no more than twenty steps. Of the others the order as written and
// its reverse are tried, in which each of two comes before the other once; and where an answer rests on the work of three or more,
// all orders of those. What else is done in between has no say in the answer. Knows no paths.
import type { ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import type { Trial } from "./any-order-ways.ts";
import { type Footprint, type FootprintContext, footprintOf, type Key, type Write } from "./footprint.ts";
import type { Group, Orders } from "./graph.ts";

/** Of up to this many that one answer rests on all orders are followed; of more, those where one comes right before or long before. */
const ALL_ORDERS = 8;
/** More nodes than this for one block are not made. */
const MOST_NODES = 20_000;

export function dependences(context: FootprintContext): Orders {
  return (children: readonly (readonly (ExpandedItem | ExpandedLine)[])[]) => {
    const prints = children.map((child) => footprintOf(context, child));
    return groupsOf(prints).map((group): Group => {
      const [only] = group;
      if (only !== undefined && group.length === 1) return { only };
      return { trials: trialsOf(prints, group) };
    });
  };
}

/* ---- who depends on whom ---- */

function groupsOf(prints: readonly Footprint[]): readonly (readonly number[])[] {
  const leader = prints.map((_, at) => at);
  const find = (at: number): number => {
    const above = leader[at] ?? at;
    return above === at ? at : find(above);
  };
  const join = (together: readonly number[]): void => {
    const [first, ...others] = together.map(find).sort((a, b) => a - b);
    for (const other of others) if (first !== undefined) leader[other] = first;
  };
  for (const together of sharing(prints)) join(together);
  prints.forEach((print) => {
    // A jump out of the block sees whatever the others have done by then.
    if (print.ends || print.leaves) join(prints.map((_, index) => index));
  });
  const groups = new Map<number, number[]>();
  prints.forEach((_, at) => {
    const of = find(at);
    groups.set(of, [...(groups.get(of) ?? []), at]);
  });
  return [...groups.values()];
}

/** For each variable that order matters for, those that touch it. */
function sharing(prints: readonly Footprint[]): readonly (readonly number[])[] {
  const users = new Map<Key, { all: Set<number>; writers: number; readers: number; commuters: number }>();
  const note = (of: "writers" | "readers" | "commuters", key: Key, at: number): void => {
    const user = users.get(key) ?? { all: new Set(), writers: 0, readers: 0, commuters: 0 };
    users.set(key, user);
    user.all.add(at);
    user[of]++;
  };
  prints.forEach((print, at) => {
    for (const key of readsOf(print)) note("readers", key, at);
    for (const [key, { commutes }] of print.writes) note(commutes ? "commuters" : "writers", key, at);
  });
  return [...users.values()].flatMap(({ all, writers, readers, commuters }) =>
    writers > 0 || (commuters > 0 && readers > 0) ? [[...all]] : [],
  );
}

function readsOf({ looks, writes, control }: Footprint): ReadonlySet<Key> {
  return new Set([...looks.flat(), ...control, ...[...writes.values()].flatMap(({ reads }) => [...reads])]);
}

/* ---- which orders show all that may be found ---- */

/** Children whose order among each other one answer rests on; and those that may do their part in whatever order, together. */
interface Concerned {
  readonly each: readonly number[];
  readonly together: readonly number[];
  /** The one that asks; null where what is asked comes behind the block. */
  readonly asker: number | null;
}

function trialsOf(prints: readonly Footprint[], group: readonly number[]): readonly Trial[] {
  const sizeOf = (children: readonly number[]): number => children.reduce((so, at) => so + (prints[at]?.size ?? 0), 0);
  const cost = (trials: readonly Trial[]): number =>
    trials.reduce((so, { every, after }) => so + sizeOf(every.flat()) * 2 ** (every.length - 1) + sizeOf(after), 0);
  const isTried = (one: Concerned): boolean =>
    allOrders(one, group).every.length <= ALL_ORDERS && cost([allOrders(one, group)]) <= MOST_NODES;
  const trials = [inOrder(group), inOrder([...group].reverse())];
  let left = MOST_NODES - cost(trials);
  const wanted = maximal(concernedIn(prints, group), isTried)
    .map((one) => [
      ...(isTried(one) ? [[allOrders(one, group)]] : []),
      nextToEachOther(one, group),
      [firstOf(one, group)],
    ])
    .sort(([one = []], [other = []]) => cost(one) - cost(other));
  for (const choices of wanted) {
    const chosen = choices.find((choice) => cost(choice) <= left) ?? [];
    left -= cost(chosen);
    trials.push(...chosen);
  }
  return [...new Map(trials.map((trial) => [JSON.stringify(trial), trial])).values()];
}

function allOrders({ each, together }: Concerned, group: readonly number[]): Trial {
  const every = [...each.map((at) => [at]), ...(together.length === 0 ? [] : [together])];
  return { every, after: group.filter((at) => !each.includes(at) && !together.includes(at)) };
}

/** Where too many have a say: the one that asks first of all, and each of the others right before it and long before it. */
function nextToEachOther(one: Concerned, group: readonly number[]): readonly Trial[] {
  const { each, together, asker } = one;
  const behind = asker === null ? [] : [asker];
  const others = each.filter((at) => at !== asker);
  const near = others.flatMap((last) => {
    const rest = [...others, ...together].filter((at) => at !== last);
    return [inOrder(group, [...rest, last, ...behind]), inOrder(group, [last, ...rest, ...behind])];
  });
  return [firstOf(one, group), ...near];
}

function firstOf({ asker }: Concerned, group: readonly number[]): Trial {
  return inOrder(group, asker === null ? [] : [asker]);
}

/** One order: as given, or some before the others. */
function inOrder(group: readonly number[], first: readonly number[] = []): Trial {
  return { every: [], after: [...first, ...group.filter((at) => !first.includes(at))] };
}

/** For every answer in the block and behind it those that have a say in it, but where any two orders show it all. */
function concernedIn(prints: readonly Footprint[], group: readonly number[]): readonly Concerned[] {
  const influence = influences(prints, group);
  const written = [...new Set(group.flatMap((at) => strongWrites(prints[at])))];
  const concerned = (keys: readonly Key[], asker: number | null): Concerned => {
    const [each, together] = [new Set(asker === null ? [] : [asker]), new Set<number>()];
    for (const key of keys) {
      for (const at of influence(key).setting) each.add(at);
      for (const at of influence(key).adding) together.add(at);
    }
    const rest = [...together].filter((at) => !each.has(at)).sort((a, b) => a - b);
    // One alone is one of those that each come by themselves.
    const single = rest.length === 1;
    return {
      each: [...each, ...(single ? rest : [])].sort((a, b) => a - b),
      together: single ? [] : rest,
      asker,
    };
  };
  const asked = group.flatMap((at) => {
    const print = prints[at];
    // What a jump out of the block leads to may ask about anything.
    const looks = [...(print?.looks ?? []), ...(print?.leaves === true ? written.map((key) => [key]) : [])];
    return looks.map((keys) => concerned(keys, at));
  });
  return [...asked, ...written.map((key) => concerned([key], null))].filter(
    ({ each, together }) => each.length > 2 || (together.length > 0 && each.length > 0),
  );
}

function strongWrites(print: Footprint | undefined): readonly Key[] {
  return [...(print?.writes ?? [])].flatMap(([key, { commutes }]) => (commutes ? [] : [key]));
}

/** Those that have a say in what a variable is: that set it, or add to it what may be added in whatever order. */
interface Influence {
  readonly setting: ReadonlySet<number>;
  readonly adding: ReadonlySet<number>;
}

function influences(prints: readonly Footprint[], group: readonly number[]): (key: Key) => Influence {
  const writers = new Map<Key, { readonly at: number; readonly write: Write }[]>();
  for (const at of group)
    for (const [key, write] of prints[at]?.writes ?? []) {
      const list = writers.get(key) ?? [];
      writers.set(key, list);
      list.push({ at, write });
    }
  const known = new Map<Key, Influence>();
  return (asked) => {
    const old = known.get(asked);
    if (old !== undefined) return old;
    const [setting, adding] = [new Set<number>(), new Set<number>()];
    // A list that grows while it is gone through: what decides what is written has itself been written by somebody.
    const keys = new Set([asked]);
    for (const key of keys)
      for (const { at, write } of writers.get(key) ?? []) {
        (write.commutes ? adding : setting).add(at);
        for (const read of write.reads) keys.add(read);
        for (const read of prints[at]?.control ?? []) keys.add(read);
      }
    const made = { setting, adding };
    known.set(asked, made);
    return made;
  };
}

/** Without those whose orders are among the orders of others. */
function maximal(list: readonly Concerned[], isTried: (one: Concerned) => boolean): readonly Concerned[] {
  const kept: Concerned[] = [];
  const bySize = [...list].sort((a, b) => b.each.length - a.each.length || b.together.length - a.together.length);
  for (const one of bySize)
    if (!kept.some((other) => (isTried(other) || other.asker === one.asker) && covers(other, one))) kept.push(one);
  return kept;
}

function covers(other: Concerned, { each, together }: Concerned): boolean {
  const within = (children: readonly number[], of: readonly number[]): boolean =>
    children.every((at) => of.includes(at));
  return within(each, other.each) && (within(together, other.together) || within(together, other.each));
}
