// Performing another procedure, by its contract: what it asks of the one that performs it, and what it leaves behind. It is carried out
// once, by itself; what it touched is afterwards as it left it.
import { run } from "../paper-simulator.ts";
import { outcomesOf } from "./carry-out.ts";
import { compile } from "./program.ts";
import {
  actsIn,
  instances,
  isFastener,
  linesIn,
  type SimCondition,
  type SimProcedure,
  sayers,
  stepsIn,
} from "./shop.ts";
import { mostOf, timeOf } from "./step-time.ts";
import { type Trouble, troubles } from "./troubles.ts";
import { changed, fails, isKnown, madeSo, SUPPOSED, startOf, TOLD, value, variables, type World } from "./world.ts";

interface Contract {
  readonly own: SimProcedure;
  readonly start: World;
  readonly ends: readonly World[];
  /** Variables that it touches, and those of them that must be as at a start. */
  readonly touched: readonly string[];
  readonly asAtStart: readonly string[];
  /** Variables that its `finish with` speaks of. */
  readonly said: ReadonlySet<string>;
  /** Minutes that it takes at least, and at most as far as its steps say. */
  readonly minutes: number;
  readonly most: number;
  readonly isSaid: boolean;
}

const known = new WeakMap<SimProcedure, Map<string, Contract>>();

/** The performed procedure by itself, in the same shop. */
export function performed(procedure: SimProcedure, name: string): SimProcedure {
  const own = procedure.performed.find((each) => each.name === name);
  if (own === undefined) throw new Error(`no procedure ${name}`);
  return { ...procedure, ...own, performed: [] };
}

export function contractOf(procedure: SimProcedure, name: string): Contract {
  const contracts = known.get(procedure) ?? new Map<string, Contract>();
  known.set(procedure, contracts);
  const old = contracts.get(name);
  if (old !== undefined) return old;
  const own = performed(procedure, name);
  const program = compile(own, own.items);
  const start = startOf(own, program);
  const touched = touchedBy(own);
  const asked = new Set(own.begin.flatMap((condition) => spokenIn(own, condition)));
  const times = stepsIn(own.items).map(({ lines }) => timeOf(lines));
  const made: Contract = {
    own,
    start,
    ends: run(own, program, [start], {}).ends,
    touched,
    asAtStart: touched.filter((variable) => /^(in|own|energy) /.test(variable) && !asked.has(variable)),
    said: new Set(own.finish.flatMap((condition) => spokenIn(own, condition))),
    minutes: minutesOf(own),
    most: times.reduce((so, time) => so + mostOf(time), 0),
    isSaid: times.every((time) => time.isSaid),
  };
  contracts.set(name, made);
  return made;
}

/** Whether something that it asks for is not so. */
export function isRefused(procedure: SimProcedure, name: string, worlds: readonly World[]): boolean {
  const { own, start, asAtStart } = contractOf(procedure, name);
  const differs = (variable: string): boolean =>
    worlds.some(
      (world) => isKnown(world, variable) && !isAlike(variable, value(world, variable), value(start, variable)),
    );
  return own.begin.some((condition) => fails(procedure, condition, worlds)) || asAtStart.some(differs);
}

/** What is in the way of one of its lines, and was not when it was carried out by itself: a thing that it neither touches nor speaks of. */
export function foundInside(procedure: SimProcedure, name: string, worlds: readonly World[]): readonly Trouble[] {
  const { own, start, touched } = contractOf(procedure, name);
  const program = compile(own, own.items);
  const its = new Set([...touched, ...own.begin.flatMap((condition) => spokenIn(own, condition))]);
  const found: Trouble[] = [];
  // It goes straight on.
  let inside: readonly World[] = [start];
  for (const instruction of program.instructions) {
    const { does } = instruction;
    if (does.kind === "act") {
      const alone = new Set(troubles(own, does.act, inside).map(({ code }) => code));
      const there = worlds.flatMap((world) =>
        inside.map(
          (mine): World => ({ ...world, ...Object.fromEntries([...its].map((each) => [each, mine[each] ?? ""])) }),
        ),
      );
      for (const { code, met = {} } of troubles(procedure, does.act, there)) {
        const others = Object.entries(met).filter(([variable]) => !its.has(variable));
        if (IN_THE_WAY.has(code) && !alone.has(code)) found.push({ code, met: Object.fromEntries(others) });
      }
    }
    inside = inside.flatMap((world) => outcomesOf(own, program, instruction, world));
  }
  return found;
}

const IN_THE_WAY = new Set([
  "order.enclosed",
  "order.retained",
  "order.locked",
  "order.energised",
  "order.not-proved",
  "order.restored-open",
]);

/** How it is afterwards; at `line` it was performed. */
export function afterPerforming(procedure: SimProcedure, name: string, line: string, world: World): readonly World[] {
  const { own, start, ends, touched, asAtStart, said } = contractOf(procedure, name);
  let met = own.begin.reduce((so, condition) => madeSo(procedure, condition, so, SUPPOSED), world);
  for (const variable of asAtStart)
    if (value(met, variable) !== value(start, variable))
      met = { ...met, [variable]: `${value(start, variable)}@${SUPPOSED}` };
  return ends.map((end) => {
    const next: Record<string, string> = { ...met };
    for (const variable of touched) {
      // What it found so and left so is as it was.
      if (end[variable] === start[variable]) continue;
      // What it left with no word of it has been told there, but for what is still off.
      const [kind, part = ""] = variable.split(" ");
      const hasWord = kind === "energy" || said.has(`in ${part}`) || said.has(`grip ${part}`);
      // A fastener that it put in is not put in by the one that performs it.
      const by = !hasWord ? TOLD : kind === "in" && isFastener(own, part) ? `${TOLD} ${line}` : line;
      next[variable] = `${value(end, variable)}@${by}`;
    }
    const after = own.finish.reduce<World>((so, condition) => madeSo(procedure, condition, so, line), next);
    return changed(after, variables(procedure, after, "in"), (is, variable) =>
      is === `in@${line}` && isFastener(own, variable.slice(3)) ? `in@${TOLD} ${line}` : is,
    );
  });
}

function isAlike(variable: string, is: string, start: string): boolean {
  // Off is off, whoever switched it off.
  if (variable.startsWith("energy ")) return (is === "live") === (start === "live");
  return is === start;
}

function touchedBy(own: SimProcedure): readonly string[] {
  const all = actsIn(own.items).flatMap((act): string[] => {
    if (act.verb === "isolate" || act.verb === "prove" || act.verb === "restore") return [`energy ${act.energy}`];
    if (!("part" in act)) return [];
    const grips = instances(own, act.part)
      .filter((part) => isFastener(own, part))
      .map((part) => `grip ${part}`);
    const places = instances(own, act.part).map((part) => `in ${part}`);
    if (act.verb === "clean") return [];
    return act.verb === "tighten" || act.verb === "loosen" ? grips : [...places, ...grips];
  });
  const given = linesIn(own.items).flatMap((line) => (line.kind === "gives" ? spokenIn(own, line.condition) : []));
  return [...new Set([...all, ...given])];
}

/** The variables that a condition speaks of. */
function spokenIn(own: SimProcedure, condition: SimCondition): readonly string[] {
  if ("fact" in condition) return [`fact ${condition.fact}`];
  if ("energy" in condition) return [`energy ${condition.energy}`];
  if ("own" in condition) return [`own ${condition.part}`];
  if (!("state" in condition)) return [];
  const fasteners = condition.state === "secured" ? sayers(own, "secures", condition.part) : [];
  return [condition.part, ...fasteners].flatMap((part) => [`in ${part}`, `grip ${part}`]);
}

function minutesOf(own: SimProcedure): number {
  const waited = actsIn(own.items).map((act) => (act.verb === "wait" ? act.minutes : 0));
  const taken = linesIn(own.items).map((line) => (line.kind === "takes" ? line.low : 0));
  return [...waited, ...taken].reduce((so, minutes) => so + minutes, 0);
}
