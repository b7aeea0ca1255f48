// What every block is made with, and words over all passes of a repeat. Knows no blocks and no format.
import type { Reminders } from "#analysis/hazards/reminders.ts";
import type { Joinings } from "#analysis/limits/joining.ts";
import type { ExpandedItem, ExpandedLine, ExpandedProcedure } from "#model/expanded.ts";
import { fillWords } from "#model/fill-words.ts";
import type { Pass } from "#model/problem.ts";
import type { Item, Line, Statement } from "#model/procedure.ts";
import type { SerialOf } from "./arrangements.ts";
import type { Choices } from "./conditions.ts";
import type { RowOf } from "./kept-rows.ts";
import type { Numbering } from "./numbering.ts";
import { acrossPasses } from "./passes.ts";
import type { Ids } from "./record/ids.ts";
import type { ToolStocks } from "./stock.ts";
import type { Writer } from "./writer.ts";

/** What is written out, and what it was written out from. */
export type Node = ExpandedItem | ExpandedLine;
export type Origin = Item | Line;

export interface Making {
  readonly writer: Writer;
  readonly choices: Choices;
  /** The title of a hazard that is declared; null for one that is built in. */
  readonly hazardTitle: (name: string) => string | null;
  /** What is to be said again at a step. */
  readonly reminders: Reminders;
  /** At which temperatures parts go together hot or cold. */
  readonly joinings: Joinings;
  /** The serial of the part that goes where a line installs one. */
  readonly serialOf: SerialOf;
  /** The crib that tools are taken from; null where none is given. */
  readonly stock: ToolStocks | null;
  /** Whether reasons stand at the steps. */
  readonly whys: boolean;
  /** Whether a repeat stands once, with a tick for each pass. */
  readonly compact: boolean;
  readonly expandedOf: (id: string) => ExpandedProcedure | null;
  readonly numbering: Numbering;
  /** How a step comes to its row. */
  readonly rowOf: RowOf;
  readonly ids: Ids;
  /** The bytes of a figure that the text at a path names; null where they are not at hand. */
  readonly figure: (from: string, named: string) => Uint8Array | null;
  /** What stands before each number: that of the step which performs this procedure. */
  readonly prefix: string;
  /** Procedures being performed, so that a circle ends. */
  readonly within: readonly string[];
}

/** Titles of what a statement warns of. */
export function hazardTitles({ hazards }: Statement, { hazardTitle, writer }: Making): readonly string[] {
  const builtIn = writer.words.hazards;
  return hazards.map(({ name }) => hazardTitle(name) ?? (Object.hasOwn(builtIn, name) ? builtIn[name] : null) ?? name);
}

/** One text for all passes; where none says it, each text by itself. */
export function textsFor(texts: readonly string[], passes: readonly Pass[]): readonly string[] {
  const one = acrossPasses(texts, passes);
  return one === null ? [...new Set(texts)] : [one];
}

/** Own words with the loop's variables filled in, over all passes. */
export function wordsFor(text: string, passes: readonly Pass[]): string {
  const filled = passes.map((pass) => fillWords(text, pass));
  return textsFor(filled, passes).join(" / ");
}

/** `n = 3`; null outside repeats. */
export function passLabel(pass: Pass, { writer }: Making): string | null {
  const { comma, flow } = writer.words;
  if (pass.length === 0) return null;
  return comma(pass.map(({ variable, value }) => flow.pass(variable, String(value))));
}

/** Labels that tell passes apart, without the variable where there is only one; null for a single pass. */
export function tickLabels(passes: readonly Pass[], making: Making): readonly (string | null)[] {
  if (passes.length === 1) return [null];
  return passes.map((pass) => (pass.length === 1 ? String(pass[0]?.value) : passLabel(pass, making)));
}
