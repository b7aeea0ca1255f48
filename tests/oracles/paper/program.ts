// A procedure written out as a list of single things that happen, each with what may come next. Knows no meaning of actions.
import { badJumpsIn } from "./jumps.ts";
import type { SimAct, SimCondition, SimItem, SimJump, SimLine, SimShop } from "./shop.ts";
import { instances, linesIn } from "./shop.ts";
import { type StepTime, timeOf } from "./step-time.ts";

export type Does =
  | { readonly kind: "act"; readonly act: SimAct }
  | { readonly kind: "needs" | "gives"; readonly condition: SimCondition }
  /** `leave step`: by a jump. */
  | { readonly kind: "check" | "pass" | "end" | "begin step" | "leave step" | "end of task" }
  /** `applied`: parts that were coated in this very step. */
  | { readonly kind: "end step"; readonly low: number; readonly applied: readonly string[] };

/** Where it goes on, and what of `in any order` is noted with that: block → children done, in their order. */
export interface Next {
  readonly at: number;
  readonly orders: Readonly<Record<string, string>> | null;
}

export interface Instruction {
  readonly does: Does;
  /** The line (`l3`), or "end". */
  readonly at: string;
  /** The step it stands in, one for each pass of a repeat. */
  readonly step: string;
  next: (so: Readonly<Record<string, string>>, orders: (block: string) => string) => readonly Next[];
}

/** `after` and `before`: `second` may not begin before `first` has begun; told at the line. */
export interface Pair {
  readonly at: string;
  readonly first: string;
  readonly second: string;
}

/** `within`: `second` is to end so many minutes after the end of `first`; told at the line. */
export interface Clock extends Pair {
  readonly minutes: number;
}

export interface Program {
  readonly instructions: readonly Instruction[];
  readonly blocks: readonly string[];
  /** Those that a branch asks for. */
  readonly options: ReadonlySet<string>;
  readonly pairs: readonly Pair[];
  readonly clocks: readonly Clock[];
  /** What each step says of its time. */
  readonly times: ReadonlyMap<string, StepTime>;
  readonly outline: Outline;
}

/** Where branches, steps and jumps stand, one for each pass of a repeat. */
export interface Outline {
  readonly arms: readonly { readonly at: string; readonly fork: number; readonly to: number }[];
  /** In the order of the text; `arms`: those it stands in, the outermost first. */
  readonly stations: readonly {
    readonly kind: "step" | "return to" | "go to" | "stop";
    readonly at: string;
    readonly first: number;
    readonly arms: readonly string[];
    readonly isBad: boolean;
  }[];
}

/** What lies around a point of the text: the passes of repeats, and the blocks of `in any order`. */
interface Around {
  readonly values: Readonly<Record<string, number>>;
  readonly pass: string;
  readonly blocks: readonly string[];
  /** Branches. */
  readonly arms: readonly string[];
}

interface Label {
  readonly at: number;
  readonly id: string;
  readonly pass: string;
  readonly blocks: readonly string[];
}

/** `from`: the number of the first line. */
export function compile(shop: Pick<SimShop, "parts">, items: readonly SimItem[], from = 0): Program {
  const instructions: Instruction[] = [];
  const blocks: string[] = [];
  const options = new Set<string>();
  const pairs: (() => Pair)[] = [];
  const clocks: (() => Clock)[] = [];
  const times = new Map<string, StepTime>();
  // A step in a repeat has a label for each pass.
  const labels = new Map<string, Label[]>();
  const isClocked = linesIn(items).some(({ kind }) => kind === "within");
  const isTimed = isClocked || linesIn(items).some(({ kind }) => kind === "after" || kind === "before");
  const arms: Outline["arms"][number][] = [];
  const stations: Outline["stations"][number][] = [];
  const bad = badJumpsIn(items, from);
  let number = from;
  let head = 0;
  let inStep = "";
  const push = (does: Does, at: string): Instruction => {
    const here = instructions.length;
    const instruction: Instruction = { does, at, step: inStep, next: () => [{ at: here + 1, orders: null }] };
    instructions.push(instruction);
    return instruction;
  };
  // From inside: the one of the same pass; from outside: the last.
  const labelOf = (name: string, around: Around): Label | undefined => {
    const all = labels.get(name) ?? [];
    return all.findLast(({ pass }) => around.pass.startsWith(pass)) ?? all.at(-1);
  };
  const leap = (instruction: Instruction, jump: SimJump, around: Around): void => {
    const { at } = instruction;
    const kind = jump === "stop" ? jump : jump.way;
    stations.push({ kind, at, first: instructions.length - 1, arms: around.arms, isBad: bad.has(at) });
    instruction.next = () => {
      // Nobody can follow a bad one.
      const label = jump === "stop" || bad.has(at) ? undefined : labelOf(jump.to, around);
      if (label === undefined) return [];
      const left = around.blocks.filter((block) => !label.blocks.includes(block));
      const orders = left.length === 0 ? null : Object.fromEntries(left.map((block) => [block, "-"]));
      return [{ at: label.at, orders }];
    };
  };
  const actOn = (act: SimAct, at: string, around: Around): void => {
    for (const one of single(shop, act, around)) push({ kind: "act", act: one }, at);
  };

  const addLine = (line: SimLine, around: Around, step: string): void => {
    const at = `l${number++}`;
    switch (line.kind) {
      case "act":
        actOn(line.act, at, around);
        break;
      case "needs":
      case "gives":
        push({ kind: line.kind, condition: filled(line.condition, around) }, at);
        break;
      case "check": {
        push({ kind: "check" }, at);
        if (line.fails.length === 0 && line.jump === null) break;
        const fork = push({ kind: "pass" }, at);
        const fail = instructions.length;
        for (const act of line.fails) actOn(act, `l${number++}`, around);
        if (line.jump !== null) leap(push({ kind: "leave step" }, `l${number++}`), line.jump, around);
        const end = instructions.length;
        fork.next = () => [
          { at: fail, orders: null },
          { at: end, orders: null },
        ];
        break;
      }
      case "within":
        clocks.push(() => {
          const first = labelOf(line.step, around)?.id ?? "";
          return { at, first, second: step, minutes: line.minutes };
        });
        break;
      case "after":
      case "before":
        pairs.push(() => {
          const other = labelOf(line.step, around)?.id ?? "";
          return line.kind === "after" ? { at, first: other, second: step } : { at, first: step, second: other };
        });
    }
  };

  const add = (item: SimItem, around: Around): void => {
    switch (item.kind) {
      case "step": {
        const id = `${item.name}${around.pass}`;
        labels.set(item.name, [
          ...(labels.get(item.name) ?? []),
          { at: instructions.length, id, pass: around.pass, blocks: around.blocks },
        ]);
        inStep = id;
        times.set(id, timeOf(item.lines));
        const { arms: within } = around;
        stations.push({ kind: "step", at: `head ${head++}`, first: instructions.length, arms: within, isBad: false });
        // Where nobody asks what comes first, and nothing takes time, beginning and end make no difference.
        if (isTimed) push({ kind: "begin step" }, `l${number}`);
        const first = instructions.length;
        for (const line of item.lines) addLine(line, around, id);
        const takes = item.lines.find((line) => line.kind === "takes");
        const applied = instructions
          .slice(first)
          .flatMap(({ does }) => (does.kind === "act" && does.act.verb === "apply" ? [does.act.part] : []));
        if (isClocked || takes !== undefined)
          push({ kind: "end step", low: takes?.low ?? 0, applied }, `l${number - 1}`);
        inStep = "";
        break;
      }
      case "task":
        head++;
        for (const each of item.items) add(each, around);
        push({ kind: "end of task" }, `l${number}`);
        break;
      case "repeat": {
        const start = number;
        const startHead = ++head;
        for (const value of item.values) {
          number = start;
          head = startHead;
          const values = { ...around.values, [item.variable]: value };
          for (const each of item.items)
            add(each, { ...around, values, pass: `${around.pass}/${item.variable}${value}` });
        }
        break;
      }
      case "when":
      case "when read": {
        if (item.kind === "when") options.add(item.option);
        const at = `head ${head++}`;
        const forkAt = instructions.length;
        const fork = push({ kind: "pass" }, `l${number}`);
        const insideAt = instructions.length;
        arms.push({ at, fork: forkAt, to: insideAt });
        for (const each of item.inside) add(each, { ...around, arms: [...around.arms, at] });
        const leave = push({ kind: "pass" }, `l${number}`);
        const otherwiseAt = instructions.length;
        if (item.otherwise !== null) {
          const other = `otherwise ${at}`;
          arms.push({ at: other, fork: forkAt, to: otherwiseAt });
          push({ kind: "pass" }, `l${number}`);
          for (const each of item.otherwise) add(each, { ...around, arms: [...around.arms, other] });
        }
        const end = instructions.length;
        leave.next = () => [{ at: end, orders: null }];
        fork.next = (so, world) => {
          const isSo =
            item.kind === "when"
              ? so[item.option] === item.value
              : Number(world(`reading ${item.reading}`)) <= item.most;
          return [{ at: isSo ? insideAt : otherwiseAt, orders: null }];
        };
        break;
      }
      case "any order": {
        head++;
        const block = `block ${blocks.length + from}`;
        blocks.push(block);
        const inside = { ...around, blocks: [...around.blocks, block] };
        push({ kind: "pass" }, `l${number}`).next = () => [{ at: pick, orders: { [block]: "" } }];
        const pick = instructions.length;
        const choose = push({ kind: "pass" }, `l${number}`);
        const starts = item.children.map((child, which) => {
          const start = instructions.length;
          add(child, inside);
          push({ kind: "pass" }, `l${number}`).next = (_, orders) => [
            { at: pick, orders: { [block]: `${orders(block)}${which}` } },
          ];
          return start;
        });
        const end = instructions.length;
        choose.next = (_, orders) => {
          const done = orders(block);
          if (done.length === starts.length) return [{ at: end, orders: { [block]: "-" } }];
          return starts.flatMap((at, which) => (done.includes(String(which)) ? [] : [{ at, orders: null }]));
        };
        break;
      }
      case "jump":
        leap(push({ kind: "pass" }, `l${number++}`), item.jump, around);
    }
  };
  for (const item of items) add(item, { values: {}, pass: "", blocks: [], arms: [] });
  push({ kind: "end" }, "end").next = () => [];
  return {
    instructions,
    blocks,
    options,
    pairs: pairs.map((pair) => pair()),
    clocks: clocks.map((clock) => clock()),
    times,
    outline: { arms, stations },
  };
}

/** An act on several parts is one for each; loop variables become numbers. */
function single(shop: Pick<SimShop, "parts">, act: SimAct, around: Around): readonly SimAct[] {
  const made = filled(act, around);
  if (!("part" in made) || !made.part.endsWith("[all]")) return [made];
  return instances(shop, made.part).map((part) => ({ ...made, part }));
}

function filled<T extends object>(thing: T, { values }: Around): T {
  const entries = Object.entries(thing).map(([key, value]: [string, unknown]) => [
    key,
    typeof value === "string" ? value.replace(/\[(\w+)\]/, (_, name: string) => `[${values[name] ?? name}]`) : value,
  ]);
  return Object.fromEntries(entries) as T;
}
