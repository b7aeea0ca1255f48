// The clocks of `within`: for each how long ago its first step ended, with the longest time for all that was done since. Knows no state
// of the shop.
import { contractOf } from "./perform.ts";
import type { Clock, Instruction, Program } from "./program.ts";
import type { SimProcedure } from "./shop.ts";
import { mostOf } from "./step-time.ts";
import type { World } from "./world.ts";

const IDLE = "-";
const LATE = "late";
/** After a time: more was done, and nobody says how long it took. */
const DOUBT = "?";

/** `waited`: the minutes that the step has waited so far. */
export function clocksAtStart({ clocks }: Program): World {
  if (clocks.length === 0) return {};
  return { waited: "0", ...Object.fromEntries(clocks.map(({ at }) => [`since ${at}`, IDLE])) };
}

/** The world with its clocks as they are after the instruction. */
export function ticked(procedure: SimProcedure, program: Program, { does, step }: Instruction, world: World): World {
  const { clocks, times } = program;
  if (clocks.length === 0) return world;
  switch (does.kind) {
    case "begin step":
      return times.get(step)?.isSaid === false ? doubted(clocks, world) : world;
    case "act": {
      const { act } = does;
      if (act.verb === "wait") return waitedFor(world, act.minutes);
      if (act.verb !== "perform") return world;
      const { most, isSaid } = contractOf(procedure, act.procedure);
      const after = waitedFor(world, most);
      return isSaid || times.get(step)?.takes !== null ? after : doubted(clocks, after);
    }
    case "leave step":
    case "end step": {
      const next: Record<string, string> = { ...world, waited: "0" };
      for (const clock of clocks)
        next[`since ${clock.at}`] = clock.first === step ? "0" : shownAtEnd(program, clock, step, world);
      return next;
    }
    default:
      return world;
  }
}

/** Each `within` that is not kept, or of which nobody can tell, from what can stand before each instruction. */
export function lateClocks(
  program: Program,
  before: readonly (readonly World[])[],
): readonly { readonly code: string; readonly at: string }[] {
  return program.clocks.flatMap((clock) => {
    const shown = program.instructions.flatMap(({ does, step }, at) =>
      step === clock.second && (does.kind === "leave step" || does.kind === "end step")
        ? (before[at] ?? []).map((world) => shownAtEnd(program, clock, step, world))
        : [],
    );
    if (shown.includes(LATE)) return [{ code: "order.too-late", at: clock.at }];
    return shown.some((time) => time.endsWith(DOUBT)) ? [{ code: TOO_LATE_PERHAPS, at: clock.at }] : [];
  });
}

/** The same code, where only a time that is not said may make it too late. */
export const TOO_LATE_PERHAPS = "order.too-late perhaps";

function waitedFor(world: World, minutes: number): World {
  return minutes === 0 ? world : { ...world, waited: String(Number(world.waited) + minutes) };
}

function doubted(clocks: readonly Clock[], world: World): World {
  const next: Record<string, string> = { ...world };
  for (const { at } of clocks) {
    const time = world[`since ${at}`] ?? IDLE;
    if (/^\d+$/.test(time)) next[`since ${at}`] = `${time}${DOUBT}`;
  }
  return next;
}

function shownAtEnd({ times }: Program, { at, minutes }: Clock, step: string, world: World): string {
  const time = world[`since ${at}`] ?? IDLE;
  if (time === IDLE || time === LATE) return time;
  const { takes = null } = times.get(step) ?? {};
  const sum = Number.parseInt(time, 10) + mostOf({ takes, waits: Number(world.waited) });
  if (sum > minutes) return LATE;
  return `${sum}${time.endsWith(DOUBT) ? DOUBT : ""}`;
}
