// Parts, places and whatever else an action or condition names, as they are called at the bench. Knows no format.
import type { Thing } from "#model/expanded.ts";
import type { Writer } from "./writer.ts";

/** Several things in one phrase: `the bearing cover`, `cover screws 1–8`, `a new gasket and the bonnet`. */
export function thingsPhrase(things: readonly Thing[], writer: Writer, fresh = false): string {
  return writer.words.list(grouped(things).map((group) => groupPhrase(group, writer, fresh)));
}

/** Whether the verb after the phrase is plural. */
export function arePlural(things: readonly Thing[]): boolean {
  return things.length > 1;
}

/** Numbers in one phrase: `1–8`, `2–4, 6–8`; in the order given where that is not rising. */
function numbersPhrase(numbers: readonly number[], writer: Writer): string {
  const runs: number[][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run !== undefined && number === (run.at(-1) ?? 0) + 1) run.push(number);
    else runs.push([number]);
  }
  const texts = runs.flatMap((run) =>
    run.length > 2 ? [writer.words.range(String(run[0]), String(run.at(-1)))] : run.map(String),
  );
  return writer.words.list(texts);
}

function grouped(things: readonly Thing[]): readonly (readonly Thing[])[] {
  if (things.length === 1) return [things];
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const key = `${thing.kind} ${declarationOf(thing).id}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return [...groups.values()];
}

function groupPhrase(group: readonly Thing[], writer: Writer, fresh: boolean): string {
  const [first] = group;
  if (first === undefined) return "";
  const { title, name } = declarationOf(first);
  if (first.kind === "place" && first.position !== null) {
    const positions = group.flatMap((thing) =>
      thing.kind === "place" && thing.position !== null ? [thing.position] : [],
    );
    return writer.words.position(numbersPhrase(positions, writer), title);
  }
  const indices = group.flatMap((thing) => (thing.kind === "part" && thing.index !== null ? [thing.index] : []));
  const numbers = indices.filter((index) => typeof index === "number");
  const byName = numbers.length < indices.length;
  const index =
    indices.length === 0 ? null : byName ? writer.words.comma(indices.map(String)) : numbersPhrase(numbers, writer);
  const phrase = writer.words.thing({ title, index, byName, plural: group.length > 1, fresh });
  return writer.ambiguous(title) ? `${phrase} (${name})` : phrase;
}

function declarationOf(thing: Thing): { readonly id: string; readonly name: string; readonly title: string } {
  if (thing.kind === "part") return thing.part;
  return thing.kind === "place" ? thing.places : thing.thing;
}
