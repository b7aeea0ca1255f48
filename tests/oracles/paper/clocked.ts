// Puts clocks into a procedure: most of its steps say how long they take, and a few are to end within a time after another. Knows no
// meaning.
import type { Picker } from "./picker.ts";
import { done } from "./sequences.ts";
import { replaced, type SimItem, type SimLine, stepsIn, withInner } from "./shop.ts";

/** @param minutes what is asked for, one of these */
export function clocked(items: readonly SimItem[], pick: Picker, minutes: readonly number[]): readonly SimItem[] {
  let list = timed(items, pick);
  for (let count = 1 + pick.below(2); count > 0; count--) {
    const steps = stepsIn(list).filter(({ lines }) => lines.every(({ kind }) => kind !== "within"));
    if (steps.length < 2) break;
    const ends = [pick.below(steps.length), pick.below(steps.length)];
    // Mostly as the text has it.
    if (pick.below(4) > 0) ends.sort((a, b) => a - b);
    const [first, second] = ends.map((at) => steps[at]);
    if (first === undefined || second === undefined || first === second) continue;
    const within: SimLine = { kind: "within", minutes: pick.of(minutes), step: first.name };
    list = replaced(list, second, [{ ...second, lines: [...second.lines, within] }]);
  }
  return list;
}

/** What they take may be nothing at the least: then only a clock can tell the difference. */
export function timed(items: readonly SimItem[], pick: Picker): readonly SimItem[] {
  return items.map((item): SimItem => {
    if (item.kind !== "step") return withInner(item, (inside) => timed(inside, pick));
    if (item.lines.some(({ kind }) => kind === "takes")) return item;
    const takes: SimLine = { kind: "takes", low: 0, high: 5 * pick.below(4) };
    const wait = done({ verb: "wait", minutes: 5 * pick.below(3) });
    const ways: readonly (readonly SimLine[])[] = [...Array(7).fill([takes]), [takes, wait], [wait], []];
    return { ...item, lines: [...item.lines, ...pick.of(ways)] };
  });
}
