// What belongs at a place that the grammar leaves open: which sorts of names, which kind of quantity. The one place of the
// completion that knows the grammar's rules by name.
import type { Declaration } from "#model/declarations.ts";
import { THRESHOLDS } from "#model/lower-declarations.ts";
import { PROPERTY_KINDS } from "#model/lower-properties.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Expected, Within } from "./grammar-paths.ts";
import type { Token } from "./tokens.ts";

export type Sort = Declaration["kind"];

export type Wanted =
  | { readonly form: "things"; readonly sorts: readonly Sort[]; readonly use: Use }
  | { readonly form: "steps" | "procedures" | "hazards" | "thresholds" | "codes" | "index" }
  | null;

/** What the named thing is for. */
export type Use = "object" | "place" | "tool" | "consumable" | "subject" | "other";

/** What a name stands for at the place; null where a new name is given. */
export function wantedName({ property, isReference, within }: Expected): Wanted {
  const outer = within.outer?.rule ?? "";
  const things = (sorts: readonly Sort[], use: Use = "other"): Wanted => ({ form: "things", sorts, use });
  if (!isReference) return NAMED[`${within.rule}.${property}`] ?? (hasRule(within, "Code") ? { form: "codes" } : null);
  switch (within.rule) {
    case "Citation":
      return things(["source"]);
    case "HeadLine":
      return things(["source"]);
    case "Target":
      return targetWanted(within, outer);
    case "Tools":
      return things(["tool"], "tool");
    case "CribItem":
      return things(["tool"]);
    case "Treat":
    case "Apply":
    case "Fill":
      return things(["consumable"], "consumable");
    case "Drain":
      return things(["tool", "part"]);
    case "Choose":
      return things(["reading"]);
    case "Perform":
      return { form: "procedures" };
    case "Jump":
      return { form: "steps" };
    case "Primary":
      return things(["value", "reading"]);
    case "Arrangement":
      return things([property === "ring" ? "ring" : "part"]);
    case "PlainLine":
      return property === "step" || property === "steps" ? { form: "steps" } : things(["role"]);
    case "PartProperty":
      return things(PART_PROPERTY[property ?? ""] ?? []);
    default:
      return null;
  }
}

const NAMED: Readonly<Record<string, Wanted>> = {
  "HazardUse.name": { form: "hazards" },
  "Threshold.threshold": { form: "thresholds" },
  "IndexFactor.name": { form: "index" },
};

const PART_PROPERTY: Readonly<Record<string, readonly Sort[]>> = {
  material: ["material"],
  place: ["ring", "holes"],
  lubricant: ["consumable"],
  energies: ["energy"],
};

function targetWanted(within: Within, outer: string): Wanted {
  const things = (sorts: readonly Sort[], use: Use): Wanted => ({ form: "things", sorts, use });
  switch (within.property) {
    case "objects":
      return things([hasRule(within, "EnergyAction") ? "energy" : "part"], "object");
    case "place":
      return outer === "Turn" ? things(["ring"], "place") : things(["ring", "holes", "part"], "place");
    case "ring":
      return things(["ring"], "object");
    case "other":
      return things(["part"], "other");
    case "targets":
    case "outer":
    case "inner":
      return things(["part"], "other");
    case "subject":
      return outer === "Choose"
        ? things(["part", "value"], "other")
        : things(["part", "energy", "option", "fact", "ring", "reading"], "subject");
    case "target":
      return things(["part", "value"], "other");
    default:
      return null;
  }
}

function hasRule(within: Within, rule: string): boolean {
  return withinRule(within, rule) !== null;
}

export function withinRule(within: Within, rule: string): Within | null {
  for (let at: Within | null = within; at !== null; at = at.outer) if (at.rule === rule) return at;
  return null;
}

/** The quantity that the place is part of, and the rule it stands in. */
function quantityPlace(within: Within): { readonly property: string | null; readonly outer: Within } | null {
  for (let at: Within | null = within; at !== null; at = at.outer) {
    if (
      at.rule === "Quantity" ||
      at.rule === "Amount" ||
      (at.rule === "Expression" && at.outer?.rule === "StateCondition")
    )
      return at.outer === null ? null : { property: at.property, outer: at.outer };
    if (at.rule === "Literal" && at.outer?.rule === "ChooseRow") return { property: at.property, outer: at.outer };
  }
  return null;
}

/** The kinds that may stand there; null where any may. */
export function wantedKinds(
  within: Within,
  tokens: readonly Token[],
  named: (name: string) => Declaration | undefined,
): readonly Kind[] | null {
  const place = quantityPlace(within);
  if (place === null) return null;
  const { property, outer } = place;
  const own = KINDS[`${outer.rule}.${property}`];
  if (own !== undefined) return own;
  switch (outer.rule) {
    case "StateCondition": {
      const subject = named(tokens[outer.at]?.image ?? "");
      if (property === "clock") return ["clock position"];
      return subject?.kind === "reading" ? kindOf(subject.expect) : subject?.kind === "part" ? ["temperature"] : null;
    }
    case "MaterialProperty":
      return property === "range" ? ["temperature"] : ["thermal expansion coefficient"];
    case "Threshold": {
      const name = tokens[outer.at + 1]?.image ?? "";
      return Object.hasOwn(THRESHOLDS, name) ? [THRESHOLDS[name as keyof typeof THRESHOLDS]] : null;
    }
    case "QuantityProperty":
    case "PartProperty":
    case "ToolProperty":
    case "FitProperty": {
      const kind = PROPERTY_KINDS[propertyWords(tokens, outer.at)];
      return kind === undefined ? null : [kind];
    }
    case "Choose":
    case "ChooseRow": {
      const from = withinRule(outer, "Choose")?.at ?? 0;
      const by = tokens.findIndex(({ type }, at) => at > from && type === "by");
      const reading = named(tokens[by + 1]?.image ?? "");
      return property !== "value" && reading?.kind === "reading" ? kindOf(reading.expect) : null;
    }
    case "Check":
    case "RecordLine":
    case "Measure": {
      const tools = tokens.slice(outer.at).flatMap(({ image }) => named(image) ?? []);
      const measures = tools.flatMap((tool) => (tool.kind === "tool" ? (tool.capability.measures ?? []) : []));
      return measures[0] === undefined ? null : kindOf(measures[0]);
    }
    default:
      return null;
  }
}

function kindOf(value: { readonly quantity: { readonly kind: Kind } } | null): readonly Kind[] | null {
  return value === null ? null : [value.quantity.kind];
}

/** `heat limit`, `mass`: the words with which a line of a declaration begins. */
function propertyWords(tokens: readonly Token[], at: number): string {
  const words = [tokens[at], tokens[at + 1]].map((token) => token?.type ?? "");
  const two = words.join(" ");
  return two in PROPERTY_KINDS ? two : (words[0] ?? "");
}

const KINDS: Readonly<Record<string, readonly Kind[]>> = {
  "Tighten.stages": ["torque"],
  "Tighten.angle": ["angle"],
  "Loosen.back": ["angle"],
  "Heat.range": ["temperature"],
  "Heat.change": ["temperature difference"],
  "Wait.time": ["time"],
  "Apply.cure": ["time"],
  "Apply.amount": ["mass", "volume"],
  "Fill.amount": ["mass", "volume"],
  "Install.clock": ["clock position"],
  "Turn.clock": ["clock position"],
  "PlaceProperty.clock": ["clock position"],
  "PlainLine.value": ["time"],
  "HeadLine.value": ["temperature"],
  "ConsumableProperty.value": ["time"],
};
