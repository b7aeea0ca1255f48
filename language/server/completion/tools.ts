// Tools behind `with`: those that meet what the action asks of them come first, and each says why. Knows what an action asks
// of a tool, and no state.
import type { Declaration, Tool, Value } from "#model/declarations.ts";
import { show } from "#quantity/display.ts";
import { evaluate } from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { readQuantityText } from "#quantity/quantity-text.ts";
import { cmp } from "#quantity/rational.ts";
import type { Token } from "./tokens.ts";

export interface ToolFits {
  readonly fits: "yes" | "no" | "unknown";
  /** The verdict first: a long line is cut off at its end. */
  readonly why: string;
}

/** What is asked of the tool, as far as the statement says it. */
export interface Asked {
  readonly verb: string;
  /** Torque, temperature, or what is to be measured. */
  readonly value: Quantity | null;
  /** The heaviest of the parts. */
  readonly mass: Value | null;
}

export function toolFits({ capability, hazards: _ }: Tool, { verb, value, mass }: Asked): ToolFits {
  const { torque, lifts, heatsTo, coolsTo, measures } = capability;
  switch (verb) {
    case "tighten":
    case "loosen":
      return torque === null
        ? NOT_SAID
        : compared(torque.quantity, value, (tool, wanted) => holdsAll(tool, wanted), "holds", "does not hold");
    case "lift":
    case "support":
      return lifts === null
        ? NOT_SAID
        : compared(lifts.quantity, mass?.quantity ?? null, reaches, "lifts", "does not lift");
    case "heat":
      return heatsTo === null ? NOT_SAID : compared(heatsTo.quantity, value, reaches, "reaches", "does not reach");
    case "cool":
      return coolsTo === null ? NOT_SAID : compared(coolsTo.quantity, value, reachesDown, "reaches", "does not reach");
    case "check":
    case "measure":
    case "record":
      return measures === null
        ? NOT_SAID
        : value !== null && value.kind !== measures.quantity.kind
          ? { fits: "no", why: `measures ${measures.quantity.kind}` }
          : compared(measures.quantity, value, holdsAll, "measures", "does not measure");
    default:
      return { fits: "unknown", why: "" };
  }
}

/** Of a tool behind `+`: an adapter on a wrench, a sling on a hoist. */
export function addedFits(tool: Tool, asked: Asked): ToolFits {
  const { offset, legLifts } = tool.capability;
  if (asked.verb === "tighten" || asked.verb === "loosen")
    return offset === null ? NOT_SAID : { fits: "yes", why: show(offset.quantity) };
  if ((asked.verb === "lift" || asked.verb === "support") && legLifts !== null)
    return { fits: "yes", why: show(legLifts.quantity) };
  return toolFits(tool, asked);
}

const NOT_SAID: ToolFits = { fits: "unknown", why: "" };

function compared(
  tool: Quantity,
  wanted: Quantity | null,
  meets: (tool: Quantity, wanted: Quantity) => boolean,
  yes: string,
  no: string,
): ToolFits {
  if (wanted === null || wanted.kind !== tool.kind) return { fits: "yes", why: show(tool) };
  const fits = meets(tool, wanted);
  return { fits: fits ? "yes" : "no", why: `${fits ? yes : no} ${show(wanted)} · ${show(tool)}` };
}

/** From the lowest to the highest that is wanted. */
function holdsAll(tool: Quantity, wanted: Quantity): boolean {
  const [has, asks] = [ends(tool), ends(wanted)];
  const low = has.low === null || asks.low === null || cmp(has.low, asks.low) <= 0;
  return low && (has.high === null || asks.high === null || cmp(asks.high, has.high) <= 0);
}

/** A one-sided or plain capacity is its upper end. */
function reaches(tool: Quantity, wanted: Quantity): boolean {
  const [has, asks] = [band(tool), band(wanted)];
  const most = has.high ?? has.low;
  const least = asks.low ?? asks.high;
  return most === null || least === null || cmp(least, most) <= 0;
}

function reachesDown(tool: Quantity, wanted: Quantity): boolean {
  const [has, asks] = [band(tool), band(wanted)];
  const least = has.low ?? has.high;
  const most = asks.high ?? asks.low;
  return least === null || most === null || cmp(least, most) <= 0;
}

function ends(quantity: Quantity) {
  return band(quantity);
}

/**
 * The quantity that the tokens write: a number with its unit, or a named value; the last of several.
 * @param text that the tokens are of
 */
export function quantityIn(
  text: string,
  tokens: readonly Token[],
  kind: Kind | null,
  named: (name: string) => Declaration | undefined,
): Quantity | null {
  const last = tokens[tokens.length - 1];
  if (last === undefined) return null;
  const thing = named(last.image);
  if (thing?.kind === "value") return thing.value?.quantity ?? null;
  let from = tokens.length - 1;
  while (from > 0 && tokens[from - 1]?.type !== ",") from--;
  const first = tokens[from];
  if (first === undefined) return null;
  const read = readQuantityText(text.slice(first.start, last.end));
  return read.ok ? evaluate(read.written, kind).quantity : null;
}
