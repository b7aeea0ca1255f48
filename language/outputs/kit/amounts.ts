// How much of each consumable a procedure uses: what is written, how often, and the sum where one can be made. Knows no format.
import type { Consumable, Value } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { add } from "#quantity/rational.ts";
import { fromBase } from "#quantity/unit.ts";
import type { ConsumableRow } from "../document.ts";
import { withMore } from "../lists.ts";
import { thingsPhrase } from "../things.ts";
import type { Work } from "../work.ts";
import type { Writer } from "../writer.ts";

/** In the order in which they are first used. */
export function amountRows(work: Work, writer: Writer): readonly ConsumableRow[] {
  const uses = new Map<Consumable, Use[]>();
  for (const line of work.actions) {
    const use = useIn(line);
    if (use === null) continue;
    const known = uses.get(use.consumable) ?? [];
    uses.set(use.consumable, known);
    known.push(use);
  }
  return [...uses].map(([consumable, all]) => ({
    title: consumable.title,
    name: consumable.name,
    amounts: amountTexts(all, writer),
  }));
}

interface Use {
  readonly consumable: Consumable;
  /** Null where the text gives none. */
  readonly amount: Value | null;
  readonly line: ExpandedAction;
}

function useIn(line: ExpandedAction): Use | null {
  const { action } = line;
  if (action.verb === "apply" || action.verb === "fill") {
    const { consumable, amount } = action.dose;
    return consumable === null ? null : { consumable, amount, line };
  }
  const isUsed = (action.verb === "clean" || action.verb === "lubricate") && action.with !== null;
  return isUsed && action.with !== null ? { consumable: action.with, amount: null, line } : null;
}

/** An amount for several parts at once may be meant for each or for all: it is given as it stands, and in no sum. */
function amountTexts(uses: readonly Use[], writer: Writer): readonly string[] {
  const { kit } = writer.words;
  const times = new Map<string, number>();
  const single: Quantity[] = [];
  for (const { amount, line } of uses) {
    if (amount === null) continue;
    const said = writer.value(amount.quantity, "nominal");
    const forAll = line.objects.length > 1;
    const text = forAll ? kit.doseFor(said, thingsPhrase(line.objects, writer)) : said;
    times.set(text, (times.get(text) ?? 0) + 1);
    if (!forAll) single.push(amount.quantity);
  }
  const sum = single.length === uses.length && single.length > 1 ? sumOf(single) : null;
  const texts = withMore(
    [...times].map(([text, count]) => kit.doses(text, count)),
    uses.some(({ amount }) => amount === null),
    writer,
  );
  return sum === null ? texts : [...texts, kit.inAll(writer.value(sum, "at least safe"))];
}

/** Null where they are of more than one kind or form. */
function sumOf(quantities: readonly Quantity[]): Quantity | null {
  const [first] = quantities;
  if (first === undefined) return null;
  const { kind, form } = first;
  if (quantities.some((one) => one.kind !== kind || one.form !== form)) return null;
  const sum = (end: "low" | "nominal" | "high"): Magnitude | null =>
    quantities.map((one) => one[end]).reduce((a, b) => together(a, b, kind));
  return { ...first, low: sum("low"), nominal: sum("nominal"), high: sum("high"), computed: true };
}

function together(a: Magnitude | null, b: Magnitude | null, kind: Kind): Magnitude | null {
  if (a === null || b === null) return null;
  const base = add(a.base, b.base);
  return { base, written: fromBase(base, a.unit, kind), unit: a.unit, digit: Math.min(a.digit, b.digit) };
}
