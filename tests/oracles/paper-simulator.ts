// A procedure carried out by brute force: every option value, every outcome of every check, until no new state turns up.
// Written from the language's description alone; knows nothing of the checker. Small and obvious rather than fast.

export interface SimPart {
  readonly name: string;
  /** How many there are, by number from 1; `null` for the only one. Numbered parts are meant whole where they are named. */
  readonly count: number | null;
  readonly temporary: boolean;
  readonly needs: readonly string[];
  readonly encloses: readonly string[];
  readonly retains: readonly string[];
  readonly secures: readonly string[];
  readonly states: readonly string[];
}

/** `part`: by name, with its number if it has one. */
export type SimCondition =
  | { readonly part: string; readonly state: "installed" | "removed" | "secured" | "tightened" }
  | { readonly part: string; readonly own: string }
  | { readonly energy: string; readonly state: "isolated" | "live" }
  | { readonly fact: string };

export type SimAct =
  | { readonly verb: "install" | "remove" | "tighten" | "loosen"; readonly part: string }
  | { readonly verb: "isolate" | "restore"; readonly energy: string };

export type SimItem =
  | { readonly kind: "act"; readonly name: string; readonly act: SimAct }
  | { readonly kind: "repeat"; readonly verb: "install" | "remove" | "tighten"; readonly part: string }
  | { readonly kind: "needs" | "gives"; readonly name: string; readonly condition: SimCondition }
  | {
      readonly kind: "when";
      readonly option: string;
      readonly value: string;
      readonly inside: readonly SimItem[];
      readonly otherwise: readonly SimItem[] | null;
    }
  | {
      readonly kind: "check";
      readonly name: string;
      readonly remove: string | null;
      readonly jump: { readonly back: string } | "stop" | null;
    };

export interface SimProcedure {
  readonly parts: readonly SimPart[];
  readonly energies: readonly string[];
  readonly facts: readonly string[];
  readonly options: readonly { readonly name: string; readonly values: readonly string[] }[];
  readonly begin: readonly SimCondition[];
  readonly finish: readonly SimCondition[];
  readonly items: readonly SimItem[];
}

/** `at`: number of the item (in the order of the text), with ` fails` or ` head` for its lines, or `finish` and a number. */
export interface SimFinding {
  readonly code: string;
  readonly at: string;
  readonly so: Readonly<Record<string, string>>;
}

/** One thing that happens, with the item's number and what may come next. */
interface Instruction {
  readonly does:
    | { readonly kind: "act"; readonly act: SimAct }
    | { readonly kind: "needs" | "gives"; readonly condition: SimCondition }
    | { readonly kind: "pass" | "end" };
  readonly at: string;
  next: (so: Readonly<Record<string, string>>) => readonly number[];
}

/** Part → where it was put in, absent if out. Fastener → its grip. Energy → where it was isolated, absent if live. */
interface World {
  readonly in: Record<string, string>;
  readonly grip: Record<string, "loose" | "tight">;
  readonly off: Record<string, string>;
  readonly own: Record<string, string>;
  readonly facts: Record<string, true>;
}

/** Where something comes from that nobody did: it was taken as so. */
const SUPPOSED = "supposed";
const BEGIN = "begin";

/** The text of the procedure, and the line (from 0) of each item and finish condition. */
export function simText(procedure: SimProcedure): { text: string; lines: Map<string, number> } {
  const out: string[] = [];
  const lines = new Map<string, number>();
  const say = (text: string, depth = 0): number => out.push("  ".repeat(depth) + text) - 1;
  for (const part of procedure.parts) {
    const says = (["needs", "encloses", "retains", "secures", "states"] as const).filter(
      (name) => part[name].length > 0,
    );
    const block = says.map((name) => `${name} ${part[name].join(", ")}`).join("  ");
    const number = part.count === null ? "" : `[1..${part.count}]`;
    say(
      `${part.temporary ? "temporary " : ""}part ${part.name}${number} "${part.name}"${block === "" ? "" : ` { ${block} }`}`,
    );
  }
  for (const energy of procedure.energies) say(`energy ${energy} "${energy}" { voltage 400 V AC }`);
  for (const fact of procedure.facts) say(`fact ${fact} "${fact}"`);
  for (const option of procedure.options) say(`option ${option.name} "${option.name}" { ${option.values.join(" ")} }`);
  say(`procedure Work "Work" {`);
  for (const condition of procedure.begin) say(`begin with ${conditionText(condition)}`, 1);
  procedure.finish.forEach((condition, at) => {
    lines.set(`finish ${at}`, say(`finish with ${conditionText(condition)}`, 1));
  });
  lines.set("items", out.length);
  let number = 0;
  const write = (items: readonly SimItem[], depth: number): void => {
    for (const item of items) {
      const at = String(number++);
      switch (item.kind) {
        case "act":
          say(`step ${item.name} {`, depth);
          lines.set(at, say(`${item.act.verb} ${"part" in item.act ? item.act.part : item.act.energy}`, depth + 1));
          say("}", depth);
          break;
        case "repeat":
          say(`repeat n from 1 to ${countOf(procedure, item.part)} {`, depth);
          lines.set(at, say(`step ${item.verb} ${item.part}[n]`, depth + 1));
          say("}", depth);
          break;
        case "needs":
        case "gives":
          lines.set(`${at} head`, say(`step ${item.name} {`, depth));
          lines.set(at, say(`${item.kind} ${conditionText(item.condition)}`, depth + 1));
          say(`do "Look."`, depth + 1);
          say("}", depth);
          break;
        case "when":
          say(`when ${item.option} is ${item.value} {`, depth);
          write(item.inside, depth + 1);
          if (item.otherwise !== null) {
            say("} otherwise {", depth);
            write(item.otherwise, depth + 1);
          }
          say("}", depth);
          break;
        case "check":
          say(`step ${item.name} {`, depth);
          say(`check "It seats" if it fails {`, depth + 1);
          if (item.remove !== null) lines.set(`${at} fails`, say(`remove ${item.remove}`, depth + 2));
          if (item.jump === "stop") say(`stop "Call the engineer."`, depth + 2);
          else if (item.jump !== null) say(`return to ${item.jump.back}`, depth + 2);
          say("}", depth + 1);
          say(`do "Go on."`, depth + 1);
          say("}", depth);
      }
    }
  };
  write(procedure.items, 1);
  say("}");
  return { text: `${out.join("\n")}\n`, lines };
}

function conditionText(condition: SimCondition): string {
  if ("fact" in condition) return condition.fact;
  if ("energy" in condition) return `${condition.energy} is ${condition.state}`;
  return `${condition.part} is ${"own" in condition ? condition.own : condition.state}`;
}

/* ---- names and relations ---- */

function countOf(procedure: SimProcedure, name: string): number {
  return procedure.parts.find((part) => part.name === name)?.count ?? 1;
}

/** The names of all single parts that a name means: `Bolt` is Bolt[1], Bolt[2] and so on. */
export function instances(procedure: Pick<SimProcedure, "parts">, name: string): readonly string[] {
  const count = procedure.parts.find((part) => part.name === name)?.count ?? null;
  return count === null ? [name] : Array.from({ length: count }, (_, at) => `${name}[${at + 1}]`);
}

function partOf(procedure: Pick<SimProcedure, "parts">, instance: string): SimPart | undefined {
  const [name] = instance.split("[");
  return procedure.parts.find((part) => part.name === name);
}

type RelationName = "needs" | "encloses" | "retains" | "secures";

/** What a part says it needs, encloses and so on. */
export function said(
  procedure: Pick<SimProcedure, "parts">,
  relation: RelationName,
  instance: string,
): readonly string[] {
  return (partOf(procedure, instance)?.[relation] ?? []).flatMap((name) => instances(procedure, name));
}

/** What says so of the part. */
export function sayers(
  procedure: Pick<SimProcedure, "parts">,
  relation: RelationName,
  instance: string,
): readonly string[] {
  return procedure.parts
    .filter((part) => part[relation].includes(instance))
    .flatMap((part) => instances(procedure, part.name));
}

function isFastener(procedure: SimProcedure, instance: string): boolean {
  return (partOf(procedure, instance)?.secures.length ?? 0) > 0;
}

/* ---- running ---- */

/** All findings, one for each option assignment under which each holds. */
export function simulate(procedure: SimProcedure): SimFinding[] {
  const program = compile(procedure);
  const findings: SimFinding[] = [];
  for (const so of assignments(procedure.options)) {
    // Every state that can stand before each instruction.
    const before: Map<string, World>[] = program.map(() => new Map());
    const open: { at: number; world: World }[] = [{ at: 0, world: startOf(procedure) }];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      const key = keyOf(next.world);
      if (before[next.at]?.has(key)) continue;
      before[next.at]?.set(key, next.world);
      const instruction = program[next.at];
      if (instruction === undefined) continue;
      const world = carryOut(procedure, instruction, next.world);
      for (const at of instruction.next(so)) open.push({ at, world });
    }
    program.forEach((instruction, at) => {
      const worlds = [...(before[at]?.values() ?? [])];
      if (worlds.length === 0) return;
      for (const { code, at: place } of troubles(procedure, instruction, worlds))
        findings.push({ code, at: place, so });
    });
  }
  return findings;
}

function keyOf(world: World): string {
  return JSON.stringify(
    Object.values(world).map((of: Record<string, unknown>) => Object.entries(of).sort(([a], [b]) => (a < b ? -1 : 1))),
  );
}

function assignments(options: SimProcedure["options"]): Record<string, string>[] {
  return options.reduce<Record<string, string>[]>(
    (list, { name, values }) => list.flatMap((so) => values.map((value) => ({ ...so, [name]: value }))),
    [{}],
  );
}

function compile(procedure: SimProcedure): Instruction[] {
  const program: Instruction[] = [];
  const places = new Map<string, number>();
  let number = 0;
  const push = (does: Instruction["does"], at: string): Instruction => {
    const here = program.length;
    const instruction: Instruction = { does, at, next: () => [here + 1] };
    program.push(instruction);
    return instruction;
  };
  const add = (list: readonly SimItem[]): void => {
    for (const item of list) {
      const at = String(number++);
      if ("name" in item) places.set(item.name, program.length);
      switch (item.kind) {
        case "act":
          push({ kind: "act", act: item.act }, at);
          break;
        case "repeat":
          for (const part of instances(procedure, item.part)) push({ kind: "act", act: { verb: item.verb, part } }, at);
          break;
        case "needs":
        case "gives":
          push({ kind: item.kind, condition: item.condition }, at);
          break;
        case "when": {
          const fork = push({ kind: "pass" }, at);
          const insideAt = program.length;
          add(item.inside);
          const leave = push({ kind: "pass" }, at);
          const otherwiseAt = program.length;
          add(item.otherwise ?? []);
          const end = program.length;
          leave.next = () => [end];
          fork.next = (so) => [so[item.option] === item.value ? insideAt : otherwiseAt];
          break;
        }
        case "check": {
          const fork = push({ kind: "pass" }, at);
          const fail = program.length;
          const failing = push(
            item.remove === null ? { kind: "pass" } : { kind: "act", act: { verb: "remove", part: item.remove } },
            `${at} fails`,
          );
          const { jump } = item;
          if (jump === "stop") failing.next = () => [];
          else if (jump !== null) failing.next = () => [places.get(jump.back) ?? fail + 1];
          fork.next = () => [fail, fail + 1];
        }
      }
    }
  };
  add(procedure.items);
  push({ kind: "end" }, "end").next = () => [];
  return program;
}

function startOf(procedure: SimProcedure): World {
  const start: World = { in: {}, grip: {}, off: {}, own: {}, facts: {} };
  for (const part of procedure.parts) if (part.states[0] !== undefined) start.own[part.name] = part.states[0];
  return procedure.begin.reduce((world, condition) => makeSo(procedure, condition, world, BEGIN), start);
}

function copyOf(world: World): World {
  return {
    in: { ...world.in },
    grip: { ...world.grip },
    off: { ...world.off },
    own: { ...world.own },
    facts: { ...world.facts },
  };
}

function makeSo(procedure: SimProcedure, condition: SimCondition, world: World, from: string): World {
  const next = copyOf(world);
  const putIn = (name: string): void => {
    if (next.in[name] !== undefined) return;
    next.in[name] = from;
    if (isFastener(procedure, name)) next.grip[name] = "loose";
  };
  if ("fact" in condition) next.facts[condition.fact] = true;
  else if ("own" in condition) next.own[condition.part] = condition.own;
  else if ("energy" in condition) {
    if (condition.state === "live") delete next.off[condition.energy];
    else next.off[condition.energy] ??= from;
  } else if (condition.state === "removed") {
    delete next.in[condition.part];
    delete next.grip[condition.part];
  } else {
    putIn(condition.part);
    if (condition.state === "tightened") next.grip[condition.part] = "tight";
    if (condition.state === "secured") {
      for (const by of sayers(procedure, "secures", condition.part)) {
        putIn(by);
        next.grip[by] = "tight";
      }
    }
  }
  return next;
}

function carryOut(procedure: SimProcedure, { does, at }: Instruction, world: World): World {
  // What a step gives, the step put there; what it needed and did not have, nobody did.
  if (does.kind === "needs" || does.kind === "gives") {
    return makeSo(procedure, does.condition, world, does.kind === "gives" ? `${at} head` : SUPPOSED);
  }
  if (does.kind !== "act") return world;
  const { act } = does;
  const next = copyOf(world);
  switch (act.verb) {
    case "install":
      // One that was in already stays where it was put: nothing about it changed.
      next.in[act.part] ??= at;
      if (isFastener(procedure, act.part)) next.grip[act.part] = "loose";
      break;
    case "remove":
      delete next.in[act.part];
      delete next.grip[act.part];
      break;
    case "tighten":
      next.grip[act.part] = "tight";
      break;
    case "loosen":
      next.grip[act.part] = "loose";
      break;
    case "isolate":
      next.off[act.energy] ??= at;
      break;
    case "restore":
      delete next.off[act.energy];
  }
  return next;
}

/* ---- what is wrong ---- */

/** What can be so in some of the worlds, each variable by itself. */
function troubles(
  procedure: SimProcedure,
  { does, at }: Instruction,
  worlds: readonly World[],
): { code: string; at: string }[] {
  const found: { code: string; at: string }[] = [];
  const say = (code: string, so: boolean, where = at): void => {
    if (so) found.push({ code, at: where });
  };
  const mayBeIn = (name: string): boolean => worlds.some((world) => world.in[name] !== undefined);
  const mayBeOut = (name: string): boolean => worlds.some((world) => world.in[name] === undefined);
  const mayHold = (name: string): boolean => worlds.some((world) => world.grip[name] !== undefined);
  const isClosed = (name: string): boolean => sayers(procedure, "encloses", name).some(mayBeIn);
  if (does.kind === "needs") say("order.unmet-need", fails(procedure, does.condition, worlds));
  if (does.kind === "end") atEnd(procedure, worlds, say);
  if (does.kind !== "act" || !("part" in does.act)) return found;
  const { verb, part } = does.act;
  if (verb === "install") {
    say("order.already-installed", mayBeIn(part));
    say("order.enclosed", isClosed(part));
    for (const support of said(procedure, "needs", part)) say("order.missing-support", mayBeOut(support));
    // Closing over a temporary part is told where that part was put in.
    for (const inside of said(procedure, "encloses", part)) {
      if (partOf(procedure, inside)?.temporary !== true) continue;
      for (const world of worlds) say("order.left-behind", world.in[inside] !== undefined, world.in[inside]);
    }
    return found;
  }
  say("order.not-installed", mayBeOut(part));
  say("order.enclosed", mayBeIn(part) && isClosed(part));
  if (verb === "tighten")
    for (const held of said(procedure, "secures", part)) say("order.not-installed", mayBeOut(held));
  if (verb === "remove") {
    for (const by of sayers(procedure, "retains", part)) say("order.retained", mayBeIn(by));
    for (const by of sayers(procedure, "secures", part)) say("order.retained", mayBeIn(by) && mayHold(by));
  }
  return found;
}

function fails(procedure: SimProcedure, condition: SimCondition, worlds: readonly World[]): boolean {
  const some = (test: (world: World) => boolean): boolean => worlds.some(test);
  if ("fact" in condition) return some((world) => world.facts[condition.fact] === undefined);
  if ("own" in condition) return some((world) => world.own[condition.part] !== condition.own);
  if ("energy" in condition)
    return some((world) => (world.off[condition.energy] !== undefined) !== (condition.state === "isolated"));
  const isOut = (name: string): boolean => some((world) => world.in[name] === undefined);
  const isNotTight = (name: string): boolean => some((world) => world.grip[name] !== "tight");
  switch (condition.state) {
    case "removed":
      return some((world) => world.in[condition.part] !== undefined);
    case "installed":
      return isOut(condition.part);
    case "tightened":
      return isNotTight(condition.part);
    case "secured":
      return isOut(condition.part) || sayers(procedure, "secures", condition.part).some(isNotTight);
  }
}

function atEnd(
  procedure: SimProcedure,
  worlds: readonly World[],
  say: (code: string, so: boolean, where?: string) => void,
): void {
  const isAid = (name: string): boolean => partOf(procedure, name)?.temporary === true;
  const isWantedIn = (name: string): boolean =>
    procedure.finish.some(
      (condition) =>
        "part" in condition && condition.part === name && !("own" in condition) && condition.state !== "removed",
    );
  const isWantedOff = (name: string): boolean =>
    procedure.finish.some(
      (condition) => "energy" in condition && condition.energy === name && condition.state === "isolated",
    );
  const aids = procedure.parts.filter((part) => part.temporary).flatMap((part) => instances(procedure, part.name));
  // An energy that was off at the start, or is so by the word of a step, is nothing that the procedure did.
  const wasDone = (from: string | undefined): boolean => from !== undefined && from !== BEGIN && !from.endsWith("head");
  for (const world of worlds) {
    for (const aid of aids) say("order.left-behind", world.in[aid] !== undefined && !isWantedIn(aid), world.in[aid]);
    for (const energy of procedure.energies)
      say("order.left-behind", wasDone(world.off[energy]) && !isWantedOff(energy), world.off[energy]);
  }
  procedure.finish.forEach((condition, number) => {
    // What was left in or off has been told already, unless another line of `finish with` asks for it.
    const counts = worlds.filter((world) => {
      if (
        "part" in condition &&
        "state" in condition &&
        condition.state === "removed" &&
        isAid(condition.part) &&
        !isWantedIn(condition.part)
      )
        return world.in[condition.part] === undefined;
      if ("energy" in condition && condition.state === "live" && !isWantedOff(condition.energy))
        return !wasDone(world.off[condition.energy]);
      return true;
    });
    say("order.unfinished", fails(procedure, condition, counts), `finish ${number}`);
  });
}
