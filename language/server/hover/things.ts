// What a declared thing is, in a few lines: its title, its sort, what it says of itself, where that is from.
import { type Arranged, arrangedBy } from "#analysis/limits/balance.ts";
import type {
  Citation,
  Conditioned,
  Declaration,
  Part,
  Relation,
  ThreadCondition,
  Value,
} from "#model/declarations.ts";
import { instanceRange } from "#model/instances.ts";
import type { Role } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { blocks, list, plain, strong } from "./markup.ts";
import { inBoth, quantityInBoth } from "./quantities.ts";

export function thingText(thing: Declaration): string {
  const range = instanceRange(thing);
  const head = `${strong(thing.title)} — ${sortOf(thing)} ${plain(thing.name)}${range === null ? "" : plain(`[${range}]`)}`;
  return blocks([head, list(said(thing)), sourceText(thing.per)]);
}

function sourceText(per: Citation | null): string | null {
  if (per?.source === null || per === null) return null;
  const { name, title, revision } = per.source;
  const words = [title === name ? name : title, ...(revision === null ? [] : [`revision ${revision}`]), per.section];
  return `Source: ${plain(words.filter((word) => word !== "").join(", "))}`;
}

function sortOf(thing: Declaration): string {
  if (thing.kind === "part") return thing.temporary ? "temporary part" : thing.fastener ? "fastener" : "part";
  return thing.kind;
}

function said(thing: Declaration): readonly string[] {
  const lines: string[] = [];
  const value = (label: string, of: Value | null, role: Role): void => {
    if (of !== null) lines.push(`${label} ${inBoth(of, role)}`);
  };
  const text = (label: string, of: string | null | undefined): void => {
    if (of !== null && of !== undefined && of !== "") lines.push(`${label} ${plain(of)}`);
  };
  switch (thing.kind) {
    case "part":
      partSaid(thing, value, text);
      break;
    case "tool": {
      const { torque, accuracy, arm, offset, angle, heatsTo, coolsTo, lifts, legLifts, measures, resolution, force } =
        thing.capability;
      value("torque", torque, "occurs");
      value("accuracy", accuracy, "occurs");
      value("arm", arm, "must be met");
      value("offset", offset, "must be met");
      value("angle", angle, "must be met");
      value("heats to", heatsTo, "at least safe");
      value("cools to", coolsTo, "at most safe");
      value("lifts", lifts, "at least safe");
      value("each leg lifts", legLifts, "at least safe");
      value("measures", measures, "occurs");
      value("resolution", resolution, "at most safe");
      value("force", force, "at least safe");
      break;
    }
    case "material":
      value("expansion", thing.expansion, "must be met");
      value("heat limit", thing.heatLimit, "at most safe");
      break;
    case "source":
      text("revision", thing.revision);
      break;
    case "ring":
      text("count", String(thing.count));
      text("numbered", [thing.numbered, thing.seenFrom && `seen from ${thing.seenFrom}`].filter(Boolean).join(" "));
      if (thing.start !== null)
        lines.push(`position ${thing.start.position} at ${inBoth(thing.start.clock, "nominal")}`);
      text("fill", thing.fill);
      break;
    case "holes":
      text("count", String(thing.count));
      text("order", thing.order?.join(", "));
      break;
    case "fit":
      value("diameter", thing.diameter, "must be met");
      value("interference", thing.interference, "occurs");
      text("tolerance", thing.tolerance?.text);
      value("slip clearance", thing.slipClearance, "must be met");
      value("length", thing.length, "must be met");
      break;
    case "consumable":
      value("flash point", thing.flashPoint, "at most safe");
      value("heat limit", thing.heatLimit, "at most safe");
      value("cure", thing.cure, "at least safe");
      value("density", thing.density, "must be met");
      text("hazard", thing.hazards.join(", "));
      break;
    case "energy":
      value("voltage", thing.voltage, "at least safe");
      value("pressure", thing.pressure, "at least safe");
      value("hot", thing.hot, "at least safe");
      value("stored", thing.stored, "at least safe");
      text("", thing.marks.join(", "));
      text("", thing.off ? "off at the start" : null);
      break;
    case "option":
      for (const { name, title } of thing.choices)
        lines.push(title === name ? plain(name) : plain(`${name}: ${title}`));
      break;
    case "value":
    case "threshold":
      value("", thing.value, "must be met");
      break;
    case "reading":
      value("expected", thing.expect, "must be met");
      break;
    case "arrangement":
      text("part", thing.part?.name);
      text("ring", thing.ring?.name);
      value("radius", thing.radius, "must be met");
      value("unbalance", thing.unbalance, "must be met");
      text("grade", thing.grade?.text);
      value("speed", thing.speed, "must be met");
      value("mass", thing.mass, "must be met");
      lines.push(...arrangedSaid(arrangedBy(thing)));
      break;
    case "crib":
      text("tools", String(thing.items.length));
      break;
  }
  return lines.map((line) => line.trim());
}

type SayValue = (label: string, of: Value | null, role: Role) => void;
type SayText = (label: string, of: string | null | undefined) => void;

function partSaid(part: Part, value: SayValue, text: SayText): void {
  text("material", part.material?.title);
  value("mass", part.mass, "at least safe");
  value("heat limit", part.heatLimit, "at most safe");
  text("seats in", part.seats === null ? null : `${part.seats.places.name}${ruleText(part.seats.rule)}`);
  text("needs", relationText(part.needs));
  text("encloses", relationText(part.encloses));
  text("retains", relationText(part.retains));
  text("secures", relationText(part.secures));
  text("locks", relationText(part.locks));
  text("backs up", relationText(part.backsUp));
  text("thread", part.thread);
  text("class", part.propertyClass);
  text("grade", part.grade);
  for (const conditioned of part.torques)
    value(`torque${conditionText(conditioned)}`, conditioned.value, "must be met");
  for (const conditioned of part.nutFactors)
    value(`nut factor${conditionText(conditioned)}`, conditioned.value, "must be met");
  text("driven by", part.drivenBy.map(({ name }) => name).join(", "));
  text("", part.singleUse ? "single use" : null);
  text("", part.sharp ? "sharp" : null);
  text("", part.stands ? "stands" : null);
  text("hazard", part.hazards.join(", "));
  text("states", part.states.join(", "));
}

/** What the table makes of it: of all parts together, what unbalance is left, and what the grade permits. */
function arrangedSaid(arranged: Arranged | null): readonly string[] {
  if (arranged === null) return [];
  const { mass, residual, limits } = arranged;
  const line = (label: string, quantity: Quantity | undefined | null, role: Role): readonly string[] =>
    quantity == null ? [] : [`${label} ${quantityInBoth(quantity, role)}`];
  return [
    ...line("parts together", mass, "at least safe"),
    ...line("residual unbalance", residual?.value, "at least safe"),
    ...line("permitted by the grade", limits.find(({ how }) => how === "grade")?.value, "at most safe"),
  ];
}

function ruleText(rule: NonNullable<Part["seats"]>["rule"]): string {
  if (rule === "any") return "";
  return typeof rule === "string" ? ` ${rule}` : ` at ${rule.join(", ")}`;
}

const MOST_NAMED = 6;

function relationText(relations: readonly Relation[]): string {
  const names = relations.map(({ part, which }) =>
    which === "all" ? part.name : `${part.name}[${which === "same" ? "same" : which.join(", ")}]`,
  );
  const more = names.length - MOST_NAMED;
  return more > 0 ? `${names.slice(0, MOST_NAMED).join(", ")} and ${more} more` : names.join(", ");
}

function conditionText({ condition }: Conditioned): string {
  return condition === null ? "" : ` ${plain(conditionWords(condition))}`;
}

function conditionWords(condition: NonNullable<ThreadCondition>): string {
  return "dry" in condition ? "dry" : `with ${condition.with.name}`;
}
