// Which jumps lead where work cannot go on: into a repeat, a branch or a child of `in any order` from outside, back to what comes
// later, ahead to what came before. Read off how the text is nested.
import type { SimItem, SimJump } from "./shop.ts";

interface Target {
  /** The number of the first line. */
  readonly from: number;
  readonly inside: readonly string[];
}

interface Leap {
  readonly at: number;
  readonly jump: SimJump;
  readonly inside: readonly string[];
}

/** The lines (`l7`) of jumps that nobody can follow. @param from the number of the first line */
export function badJumpsIn(items: readonly SimItem[], from = 0): ReadonlySet<string> {
  const targets = new Map<string, Target>();
  const leaps: Leap[] = [];
  let number = from;
  let walls = 0;
  const walled = (list: readonly SimItem[], inside: readonly string[]): void =>
    gather(list, [...inside, `wall ${walls++}`]);
  const gather = (list: readonly SimItem[], inside: readonly string[]): void => {
    for (const item of list) {
      switch (item.kind) {
        case "step":
          targets.set(item.name, { from: number, inside });
          for (const line of item.lines) {
            number++;
            if (line.kind !== "check") continue;
            number += line.fails.length;
            if (line.jump !== null) leaps.push({ at: number++, jump: line.jump, inside });
          }
          break;
        case "task":
          gather(item.items, inside);
          break;
        case "repeat":
          walled(item.items, inside);
          break;
        case "when":
        case "when read":
          walled(item.inside, inside);
          walled(item.otherwise ?? [], inside);
          break;
        case "any order":
          for (const child of item.children) walled([child], inside);
          break;
        case "jump":
          leaps.push({ at: number++, jump: item.jump, inside });
      }
    }
  };
  gather(items, []);
  return new Set(leaps.filter((leap) => isBad(leap, targets)).map(({ at }) => `l${at}`));
}

/** A step begins before the lines in it. */
function isBad({ at, jump, inside }: Leap, targets: ReadonlyMap<string, Target>): boolean {
  if (jump === "stop") return false;
  const target = targets.get(jump.to);
  if (target === undefined) return false;
  if (!target.inside.every((wall) => inside.includes(wall))) return true;
  return jump.way === "return to" ? target.from > at : target.from <= at;
}
