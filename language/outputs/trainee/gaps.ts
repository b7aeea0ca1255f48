// Values as gaps to be filled in: what must be met stands as a mark while the work is put into words, and as a numbered gap
// once the order in which it is read is known. Knows no procedure.
import type { Role } from "#quantity/display.ts";
import type { Block } from "../document.ts";
import type { Writer } from "../writer.ts";

/** A gap, in which step it is first met, and what belongs in it. */
export interface Answer {
  readonly gap: number;
  readonly step: string;
  readonly text: string;
}

export interface Gaps {
  /** Says each value that must be met as a mark; equal values of one place get one. */
  readonly saying: (writer: Writer) => Writer;
  /** Numbers the marks as they are read: each value one gap, however often it stands there. */
  readonly filled: (blocks: readonly Block[], gap: (number: number) => string) => Filled;
}

export interface Filled {
  readonly blocks: readonly Block[];
  readonly answers: readonly Answer[];
}

/** What a person is to know by heart; times and amounts given for information are none. */
const ASKED: ReadonlySet<Role> = new Set(["must be met", "at least safe", "at most safe"]);

export function gapsFor(): Gaps {
  const texts: string[] = [];
  const markOf = (text: string): string => {
    const known = texts.indexOf(text);
    return `${OPEN}${known < 0 ? texts.push(text) - 1 : known}${CLOSE}`;
  };
  return {
    saying: (writer) => {
      const alike: Writer["alike"] = (quantities, role) => {
        const said = writer.alike(quantities, role);
        return ASKED.has(role) ? said.map(markOf) : said;
      };
      return { ...writer, alike, value: (quantity, role) => alike([quantity], role)[0] ?? "" };
    },
    filled: (blocks, gap) => fill(blocks, texts, gap),
  };
}

// Of the private use area: no fixed word holds them, and a text that does only keeps them where they are no mark.
const OPEN = "\uE000";
const CLOSE = "\uE001";
const MARK = new RegExp(`${OPEN}(\\d+)${CLOSE}`, "g");

function fill(blocks: readonly Block[], texts: readonly string[], gap: (number: number) => string): Filled {
  const numbers = new Map<string, Answer>();
  const fillText = (text: string, step: string): string =>
    text.replace(MARK, (mark, at: string) => {
      const answer = texts[Number(at)];
      if (answer === undefined) return mark;
      const known = numbers.get(`${step} ${at}`) ?? { gap: numbers.size + 1, step, text: answer };
      numbers.set(`${step} ${at}`, known);
      return gap(known.gap);
    });
  const within = <Value>(value: Value, step: string): Value => {
    if (typeof value === "string") return fillText(value, step) as Value;
    if (Array.isArray(value)) return value.map((item) => within(item, step)) as Value;
    if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return value;
    const own = "kind" in value && value.kind === "step" && "number" in value ? String(value.number) : step;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, within(inner, own)])) as Value;
  };
  return { blocks: within(blocks, ""), answers: [...numbers.values()] };
}
