// An `allow` that went in one place and came in one around it is wider, the other way round narrower. Knows no rule.
import { type Compared, isInside } from "./compare.ts";
import type { Entry } from "./describe.ts";
import type { Node } from "./record.ts";
import { ended, type Words } from "./words.ts";

/** Puts the two halves of such a change together. */
export function widened(entries: readonly Entry[], { parents, pairs }: Compared, words: Words): readonly Entry[] {
  const isAllow = ({ label, change }: Entry, kind: string): boolean => label === "allow" && change.kind === kind;
  const gone = new Set<Entry>();
  const made = entries.map((came) => {
    if (!isAllow(came, "allow-added") || came.node.new === null) return came;
    const code = codeOf(came, "new");
    for (const went of entries) {
      if (!isAllow(went, "allow-dropped") || gone.has(went) || codeOf(went, "old") !== code) continue;
      const [from, to] = [partnerOf(went.node.old, pairs.toNew), came.node.new];
      const wider = from !== null && isInside(from, to, parents);
      if (!wider && (from === null || !isInside(to, from, parents))) continue;
      gone.add(went);
      const say = wider ? words.allowWidened : words.allowNarrowed;
      const message = ended(say(came.change.new?.text ?? "", scopeText(from, words), scopeText(to, words)));
      const kind = wider ? "allow-widened" : "allow-narrowed";
      const { old } = went.change;
      const edits = [...went.change.edits, ...came.change.edits];
      const change = { ...came.change, kind, message, edits, ...(old === undefined ? {} : { old }) };
      return { ...came, change, steps: [...came.steps, ...went.steps] };
    }
    return came;
  });
  return made.filter((entry) => !gone.has(entry));
}

function codeOf({ change }: Entry, side: "old" | "new"): string {
  const text = change[side]?.text ?? "";
  return text.slice(0, text.indexOf(","));
}

function partnerOf(node: Node | null, toNew: ReadonlyMap<Node, Node>): Node | null {
  return (node && toNew.get(node)) ?? null;
}

function scopeText({ sort, number, title }: Node, words: Words): string {
  if (sort === "procedure") return words.wholeProcedure;
  return sort === "task" ? words.task(number ?? "", title()) : words.step(number ?? "", null);
}
