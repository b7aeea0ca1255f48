// A procedure written down as Sprag text, with the line of each thing that can be found fault with. Knows no meaning.
import {
  actsIn,
  areRelated,
  GLUE_CURES,
  innerItems,
  instances,
  linesIn,
  type SimAct,
  type SimCondition,
  type SimItem,
  type SimJump,
  type SimLine,
  type SimPart,
  type SimProcedure,
  type SimWork,
} from "./shop.ts";
import { spokenOf } from "./world.ts";

/**
 * The text, and the line (from 0) of everything: `l0`, `l1` … for the lines of steps and jumps in the order of the text (the lines in
 * a check's failing branch after it), `finish 0` … for the conditions of `finish with`, `items` for where the steps begin; those of what
 * is performed with its name before.
 */
export function simText(procedure: SimProcedure): { text: string; lines: Map<string, number> } {
  const out: string[] = [];
  const lines = new Map<string, number>();
  const say = (text: string, depth = 0): number => out.push("  ".repeat(depth) + text) - 1;
  let number = 0;
  let heads = 0;
  let within = "";
  const mark = (text: string, depth: number): void => {
    lines.set(`${within}l${number++}`, say(text, depth));
  };
  for (const text of declarations(procedure)) say(text);
  const open = (name: string, { begin, finish }: SimWork, prefix: string): void => {
    say(`procedure ${name} "${name}" {`);
    for (const condition of begin) say(`begin with ${conditionText(condition)}`, 1);
    finish.forEach((condition, at) => {
      lines.set(`${prefix}finish ${at}`, say(`finish with ${conditionText(condition)}`, 1));
    });
    lines.set(`${prefix}items`, out.length);
  };
  open("Work", procedure, "");

  // A step of one action that nobody names stands on one line.
  const wanted = new Set([...linesIn(procedure.items).flatMap(namesIn), ...ledTo(procedure.items)]);

  const writeLine = (line: SimLine, depth: number): void => {
    if (line.kind !== "check") {
      mark(lineText(line), depth);
      return;
    }
    const mayFail = line.fails.length > 0 || line.jump !== null;
    mark(`check "It seats"${mayFail ? " if it fails {" : ""}`, depth);
    if (!mayFail) return;
    for (const act of line.fails) mark(actText(act), depth + 1);
    if (line.jump !== null) mark(jumpText(line.jump), depth + 1);
    say("}", depth);
  };
  const write = (items: readonly SimItem[], depth: number): void => {
    for (const item of items) {
      const head = item.kind === "jump" ? "" : `${within}head ${heads++}`;
      if (item.kind !== "jump") lines.set(head, out.length);
      switch (item.kind) {
        case "step": {
          const [only] = item.lines;
          if (item.lines.length === 1 && only?.kind === "act" && !wanted.has(item.name)) {
            mark(`step ${lineText(only)}`, depth);
            break;
          }
          say(`step ${item.name} {`, depth);
          for (const line of item.lines) writeLine(line, depth + 1);
          say("}", depth);
          break;
        }
        case "task":
          say(`task "Some work" {`, depth);
          write(item.items, depth + 1);
          say("}", depth);
          break;
        case "repeat":
          say(`repeat ${item.variable} in ${item.values.join(", ")} {`, depth);
          write(item.items, depth + 1);
          say("}", depth);
          break;
        case "when":
        case "when read":
          say(item.kind === "when" ? `when ${item.option} is ${item.value} {` : readText(item), depth);
          write(item.inside, depth + 1);
          if (item.otherwise !== null) {
            lines.set(`${within}otherwise ${head.slice(within.length)}`, say("} otherwise {", depth));
            write(item.otherwise, depth + 1);
          }
          say("}", depth);
          break;
        case "any order":
          say("in any order {", depth);
          write(item.children, depth + 1);
          say("}", depth);
          break;
        case "jump":
          mark(jumpText(item.jump), depth);
      }
    }
  };
  write(procedure.items, 1);
  say("}");
  for (const each of procedure.performed) {
    number = 0;
    heads = 0;
    within = `${each.name} `;
    open(each.name, each, within);
    write(each.items, 1);
    say("}");
  }
  return { text: `${out.join("\n")}\n`, lines };
}

/** The steps that jumps between steps lead to. */
function ledTo(items: readonly SimItem[]): readonly string[] {
  return items.flatMap((item) => {
    if (item.kind === "jump") return item.jump === "stop" ? [] : [item.jump.to];
    return item.kind === "step" ? [] : ledTo(innerItems(item));
  });
}

/** The steps that a line speaks of. */
function namesIn(line: SimLine): readonly string[] {
  switch (line.kind) {
    case "after":
    case "before":
    case "within":
      return [line.step];
    case "check":
      return line.jump === null || line.jump === "stop" ? [] : [line.jump.to];
    default:
      return [];
  }
}

/** Of all that there is in the shop, only what the procedure speaks of and what has to do with that. */
function declarations(procedure: SimProcedure): string[] {
  const spoken = spokenOf(procedure);
  const { rings, fits, energies, facts, options } = procedure;
  const kept = partsToDeclare(procedure, spoken);
  const texts = JSON.stringify(procedure.items);
  const acts = [procedure, ...procedure.performed].flatMap(({ items }) => actsIn(items).map(({ verb }) => verb));
  return [
    ...(acts.includes("lift") || acts.includes("support") ? [`tool Hoist "hoist" { lifts 500 kg }`] : []),
    ...(acts.includes("heat") || acts.includes("heat by") ? [`tool Heater "heater" { heats to 300 °C }`] : []),
    ...(acts.includes("measure") ? [`tool Depth "depth gauge" { measures 0 .. 5 mm  resolution 0.01 mm }`] : []),
    `consumable Oil "oil"`,
    ...(texts.includes('"glue":true') ? [`consumable Glue "glue" { cure ${GLUE_CURES} min }`] : []),
    ...rings
      .filter(({ name }) => spoken.has(name) || kept.some(({ seats }) => seats?.ring === name))
      .map(
        ({ name, count, numbered, first, fill }) =>
          `ring ${name} "${name}" { count ${count}  numbered ${numbered} seen from "the front"  position 1 at ${first} o'clock${fill === null ? "" : `  fill ${fill}`} }`,
      ),
    ...kept.map(partText),
    ...fits
      .filter(({ outer, inner }) => [outer, inner].every((name) => kept.some((part) => part.name === name)))
      .map(
        ({ outer, inner, tight }) =>
          `fit ${outer} over ${inner} { diameter 60 mm  interference ${tight ? "10 .. 30 µm" : "-10 .. 20 µm"} }`,
      ),
    ...energies
      .filter(({ name }) => spoken.has(name) || kept.some(({ driven }) => driven.includes(name)))
      .map(({ name, dead }) => `energy ${name} "${name}" { voltage 400 V AC${dead ? "  off" : ""} }`),
    ...facts.filter((name) => spoken.has(name)).map((name) => `fact ${name} "${name}"`),
    ...options
      .filter(({ name }) => spoken.has(name))
      .map(({ name, values }) => `option ${name} "${name}" { ${values.join(" ")} }`),
  ];
}

function partsToDeclare(procedure: SimProcedure, spoken: ReadonlySet<string>): readonly SimPart[] {
  const areTogether = (one: SimPart, other: SimPart): boolean =>
    instances(procedure, one.name).some((a) =>
      instances(procedure, other.name).some((b) => areRelated(procedure, a, b)),
    );
  const named = procedure.parts.filter(({ name }) => spoken.has(name));
  let kept = procedure.parts.filter((part) => named.includes(part) || named.some((other) => areTogether(part, other)));
  // What a part says may name one that nothing else speaks of.
  for (let before = 0; before < kept.length; ) {
    before = kept.length;
    const said = kept.flatMap((part) => [part.needs, part.encloses, part.retains, part.secures, part.locks].flat());
    const names = said.map((name) => name.split("[")[0]);
    kept = procedure.parts.filter((part) => kept.includes(part) || names.includes(part.name));
  }
  return kept;
}

function partText(part: SimPart): string {
  const says = (["needs", "encloses", "retains", "secures", "locks", "states"] as const)
    .filter((name) => part[name].length > 0)
    .map((name) => `${name} ${part[name].join(", ")}`);
  if (part.driven.length > 0) says.push(`driven by ${part.driven.join(", ")}`);
  if (part.singleUse) says.push("single use");
  if (part.mass !== null) says.push(`mass ${part.mass} kg`);
  if (part.stands) says.push("stands");
  if (part.seats !== null) says.push(`seats in ${part.seats.ring}${part.seats.byNumber ? " by number" : ""}`);
  const number = part.count === null ? "" : `[1..${part.count}]`;
  const block = says.length === 0 ? "" : ` { ${says.join("  ")} }`;
  return `${part.temporary ? "temporary " : ""}part ${part.name}${number} "${part.name}"${block}`;
}

function lineText(line: Exclude<SimLine, { kind: "check" }>): string {
  switch (line.kind) {
    case "act":
      return actText(line.act);
    case "needs":
    case "gives":
      return `${line.kind} ${conditionText(line.condition)}`;
    case "takes":
      return line.low === line.high ? `takes ${line.high} min` : `takes ${line.low} .. ${line.high} min`;
    case "after":
    case "before":
      return `${line.kind} ${line.step}`;
    case "within":
      return `within ${line.minutes} min after ${line.step}`;
  }
}

function readText({ reading, most }: SimItem & { readonly kind: "when read" }): string {
  return `when ${reading} at most ${most} mm {`;
}

function jumpText(jump: SimJump): string {
  return jump === "stop" ? `stop "Call the engineer."` : `${jump.way} ${jump.to}`;
}

function conditionText(condition: SimCondition): string {
  if ("fact" in condition) return condition.fact;
  const is = condition.not === true ? "is not" : "is";
  if ("energy" in condition) return `${condition.energy} ${is} ${stateText(condition.state, condition)}`;
  if ("place" in condition) return `${condition.place} at ${condition.hour} o'clock`;
  if ("least" in condition) return `${condition.part} is at least ${condition.least} °C`;
  if ("most" in condition) return `${condition.part} is at most ${condition.most} °C`;
  return `${condition.part} ${is} ${stateText("own" in condition ? condition.own : condition.state, condition)}`;
}

/** A state, or of two the other one where it is written as what it is not. */
function stateText(state: string, { not }: SimCondition): string {
  return not === true ? (OTHER[state] ?? state) : state;
}

export const OTHER: Readonly<Record<string, string>> = {
  ...{ installed: "removed", removed: "installed" },
  ...{ isolated: "live", live: "isolated" },
  ...{ shut: "open", open: "shut" },
};

function actText(act: SimAct): string {
  switch (act.verb) {
    case "perform":
      return `perform ${act.procedure}`;
    case "do":
      return `do "Look."`;
    case "measure":
      return `measure ${act.reading} "the gap" with Depth expect 0 .. 5 mm`;
    case "wait":
      return `wait ${act.minutes} min`;
    case "wait until":
      return `wait until ${act.part} is at most ${act.high} °C`;
    case "turn":
      return `turn ${act.place} to ${act.hour} o'clock`;
    case "isolate":
    case "restore":
      return `${act.verb} ${act.energy}`;
    case "prove":
      return `prove ${act.energy} dead`;
    case "heat":
      return `heat ${act.part} to ${act.low} .. ${act.high} °C with Heater`;
    case "heat by":
      return `heat ${act.part} by ${act.low} .. ${act.high} K with Heater`;
    case "cool":
      return `cool ${act.part} to ${act.low} .. ${act.high} °C`;
    case "install":
    case "press": {
      const where = act.place !== undefined ? ` in ${act.place}` : act.over !== undefined ? ` over ${act.over}` : "";
      const at = act.hour === undefined ? "" : ` at ${act.hour} o'clock`;
      return `${act.verb}${act.fresh === true ? " new" : ""} ${act.part}${where}${at}`;
    }
    case "tighten":
      if (act.how === "to seat") return `tighten ${act.part} to 20 N·m to seat`;
      return `tighten ${act.part}${act.how === "by hand" ? " by hand" : ""}`;
    case "loosen":
      return `loosen ${act.part}${act.how === "by 1/4 turn" ? " by 1/4 turn" : ""}`;
    case "lubricate":
      return `lubricate ${act.part} with Oil`;
    case "apply":
      return `apply ${act.glue === true ? "Glue" : "Oil"} to ${act.part}${act.cure === undefined ? "" : ` cure ${act.cure} min`}`;
    case "align":
      return `align ${act.part} with ${act.with}`;
    case "fill":
      return `fill ${act.part} with Oil`;
    case "lift":
      return `lift ${act.part} with Hoist`;
    default:
      return `${act.verb} ${act.part}`;
  }
}
