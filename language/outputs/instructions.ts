// Actions and checks as rows to be ticked, all passes of a repeat in one where one sentence says them. Knows no format.
import type { ExpandedLine } from "#model/expanded.ts";
import { fillWords } from "#model/fill-words.ts";
import type { Procedure } from "#model/procedure.ts";
import type { Block, Field, Instruction, Section } from "./document.ts";
import { pageText } from "./head.ts";
import { joiningDetails } from "./joinings.ts";
import { type Making, type Node, type Origin, passLabel, tickLabels } from "./making.ts";
import { acrossPasses, passOf, placeOf } from "./passes.ts";
import { computedIn } from "./record/computed.ts";
import { roundId } from "./record/ids.ts";
import { askedIn } from "./record/measured.ts";
import { actionSentence, checkSentence, type Sentence, valueText } from "./sentences.ts";

/** How to make what stands inside an instruction. */
export interface Inside {
  readonly blocks: (nodes: readonly Node[], origins: readonly Origin[] | null, number: string) => readonly Block[];
  readonly performed: (id: string, number: string) => Section | null;
}

/** All in one cell of a table: rows of a choice are parted, so that nobody reads two of them as one. */
export function cellText({ text, details }: Pick<Instruction, "text" | "details">): string {
  return [text, details.join(text.endsWith(":") ? " · " : " ")].filter((part) => part !== "").join(" ");
}

type Check = ExpandedLine & { readonly kind: "check" };

/**
 * @param lines all passes of one line; one row where a sentence says them all, else a row for each
 * @param number that of the step they stand in
 */
export function instructionsOf(
  lines: readonly Node[],
  making: Making,
  number: string,
  inside: Inside,
): readonly Instruction[] {
  const sentences = lines.map((line) => sentenceOf(line, making, number));
  const passes = lines.map(passOf);
  const one = acrossPasses(
    sentences.map((sentence) => sentence.text),
    passes,
  );
  const [sentence] = sentences;
  const alike = sentence !== undefined && sentences.every((other) => sameBeside(sentence, other));
  // Rounds are ticked one by one, so that passes cannot share their row.
  const together = lines.length > 1 && one !== null && alike && sentence.rounds.length === 0;
  if (together) return [rowOf(lines, { ...sentence, text: one }, making, number, inside)];
  const { inPass } = making.writer.words.flow;
  return lines.map((line, at) => {
    const own = sentences[at] ?? NOTHING;
    const pass = lines.length > 1 ? passLabel(passOf(line), making) : null;
    return rowOf([line], pass === null ? own : { ...own, text: inPass(pass, own.text) }, making, number, inside);
  });
}

const NOTHING: Sentence = { text: "", rounds: [], details: [] };

function rowOf(
  lines: readonly Node[],
  sentence: Sentence,
  making: Making,
  number: string,
  inside: Inside,
): Instruction {
  const passes = lines.map(passOf);
  const [first] = lines;
  const fields = lines.flatMap((line) => fieldsOf(line, lines.length > 1, making));
  const ids = lines.map((line) => idOf(line, making));
  return {
    kind: "instruction",
    ...sentence,
    details: [...sentence.details, ...serialDetail(lines, making)],
    ticks: tickLabels(passes, making).map((label, at) => ({ label, ...serialAt(lines, at, making) })),
    ids: sentence.rounds.length === 0 ? ids : sentence.rounds.map((_, round) => roundId(ids[0] ?? "", round)),
    computed: lines.length === 1 ? computedIn(lines[0] as Node, making.writer) : [],
    fields,
    failing:
      first?.kind === "check"
        ? failing(
            lines.filter((line) => line.kind === "check"),
            making,
            number,
            inside,
          )
        : null,
    performed: first?.kind === "action" ? performedBy(first, number, inside) : null,
  };
}

function idOf(line: Node, { ids }: Making): string {
  return ids.line(placeOf(line), passOf(line));
}

/** Which of like parts goes where, by its serial, in the order of the passes. */
function serialDetail(lines: readonly Node[], { serialOf, writer }: Making): readonly string[] {
  const { serial, serials } = writer.words.arrangement;
  const known = lines.flatMap((line) => (line.kind === "action" ? (serialOf(line) ?? []) : []));
  const [first] = known;
  if (first === undefined) return [];
  if (lines.length === 1) return [serial(first.serial)];
  return [serials(known.map((one) => [String(one.position), one.serial]))];
}

/** The serial at one tick of several. */
function serialAt(lines: readonly Node[], at: number, { serialOf }: Making): { readonly serial?: string } {
  const line = lines[at];
  const known = lines.length > 1 && line?.kind === "action" ? serialOf(line) : null;
  return known === null ? {} : { serial: known.serial };
}

function sentenceOf(line: Node, making: Making, number: string): Sentence {
  if (line.kind === "check") {
    const check = { ...line.check, words: fillWords(line.check.words, line.pass) };
    return { text: checkSentence(check, making.writer), rounds: [], details: [] };
  }
  if (line.kind !== "action") return NOTHING;
  const { action, pass } = line;
  const filled =
    "words" in action && action.words !== null
      ? { ...line, action: { ...action, words: fillWords(action.words, pass) } }
      : line;
  const performed =
    action.verb === "perform" && action.procedure !== null ? making.expandedOf(action.procedure.id) : null;
  const sentence = actionSentence(
    filled as typeof line,
    making.writer,
    performed?.procedure.title ?? null,
    making.stock,
  );
  const more = [...joiningDetails(line, number, making), ...documentDetail(performed?.procedure, making)];
  return more.length === 0 ? sentence : { ...sentence, details: [...sentence.details, ...more] };
}

/** Which document is worked to inside another one, with its revision. */
function documentDetail(procedure: Procedure | undefined, { writer: { words } }: Making): readonly string[] {
  return procedure?.document ? [`${words.labels.document}: ${pageText(procedure, words)}`] : [];
}

function sameBeside(a: Sentence, b: Sentence): boolean {
  return a.rounds.join("\n") === b.rounds.join("\n") && a.details.join("\n") === b.details.join("\n");
}

/** A value to be written down, or only a limit to be met. */
function fieldsOf(line: Node, withPass: boolean, making: Making): readonly Field[] {
  const { writer } = making;
  const asked = askedIn(line);
  if (asked === null) return [];
  const label = writer.words.labels.reading;
  const pass = withPass ? passLabel(passOf(line), making) : null;
  return [
    {
      id: idOf(line, making),
      label: pass === null ? label : writer.words.records.unit(label, pass),
      limits: asked.expect === null ? null : valueText(asked.expect, "must be met", writer),
      // The sentence above names them.
      tools: null,
    },
  ];
}

function failing(checks: readonly Check[], making: Making, number: string, inside: Inside): Instruction["failing"] {
  const [first] = checks;
  if (first === undefined || first.fails === null) return null;
  const blocks = inside.blocks(
    checks.flatMap((check) => check.fails ?? []),
    first.check.fails,
    number,
  );
  return { heading: making.writer.words.labels.ifItFails, blocks };
}

function performedBy(line: ExpandedLine & { readonly kind: "action" }, number: string, inside: Inside): Section | null {
  if (line.action.verb !== "perform" || line.action.procedure === null) return null;
  return inside.performed(line.action.procedure.id, number);
}
