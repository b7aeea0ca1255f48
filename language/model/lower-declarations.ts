// Fills in the record of each declaration from its lines. Knows no procedure and no flow.

import * as ast from "#grammar/generated/ast.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { nearestNames } from "#syntax/edit-distance.ts";
import type { Capability, Declaration, PartInstance, Term, Value } from "./declarations.ts";
import { lowerArrangement } from "./lower-arrangement.ts";
import { lowerPart } from "./lower-part.ts";
import { lowerCitation, lowerProperties, type Properties } from "./lower-properties.ts";
import { lowerOptional, lowerValue, workOut } from "./lower-quantity.ts";
import { constantOf, lowerTarget } from "./lower-target.ts";
import { type Scope, spanOf, wholeNumber, wholeNumberWithin } from "./lowering.ts";
import { misplace, tellTwice } from "./misplaced.ts";
import { propertySpan, resolve } from "./names.ts";

/** Fills the record of a declaration in. Terms and verbs have none: `lowerTerm`, `lowerVerb`. */
export function fillDeclaration(scope: Scope, node: ast.Declaration | ast.Measure): void {
  const record = scope.lowering.records.get(node);
  if (record === undefined || ast.isTerm(node) || ast.isVerb(node)) return;
  if (!ast.isMeasure(node) && !ast.isSource(node)) Object.assign(record, { per: lowerCitation(scope, node.citation) });
  Object.assign(record, fieldsOf(scope, node));
}

export function lowerTerm(scope: Scope, node: ast.Term): Term {
  lowerCitation(scope, node.citation);
  return { kind: "term", approved: node.approved, replaces: node.replaced, span: spanOf(scope, node) };
}

/** In small letters, as they are compared. */
export function lowerVerb(scope: Scope, node: ast.Verb): readonly string[] {
  lowerCitation(scope, node.citation);
  return node.words.map((word) => word.trim().toLowerCase());
}

/** The fields of the record beside those it was declared with. */
function fieldsOf(
  scope: Scope,
  node: Exclude<ast.Declaration, ast.Term | ast.Verb> | ast.Measure,
): Partial<Declaration> {
  switch (node.$type) {
    case "Material": {
      const expansion = node.properties.find(ast.isExpansionProperty);
      const { quantity } = lowerProperties(scope, "material", node.properties);
      for (const again of node.properties.filter(ast.isExpansionProperty).slice(1))
        tellTwice(scope, again, "expansion");
      const per = lowerCitation(scope, expansion?.citation);
      const value =
        expansion === undefined ? null : lowerValue(scope, expansion.value, "thermal expansion coefficient", per);
      const expansionRange = lowerOptional(scope, expansion?.range, "temperature");
      return { expansion: value, expansionRange, heatLimit: quantity("heat limit") };
    }
    case "Source":
      return { revision: node.revision ?? null };
    case "Ring":
      return ringFields(scope, node);
    case "Holes":
      return { order: orderOf(scope, node) };
    case "Part":
      return lowerPart(scope, node);
    case "Fit":
      return fitFields(scope, node);
    case "Tool": {
      const properties = lowerProperties(scope, "tool", node.properties);
      compareResolution(scope, properties);
      return { capability: capabilityOf(properties), hazards: properties.hazards };
    }
    case "Consumable": {
      const { quantity, hazards } = lowerProperties(scope, "consumable", node.properties);
      const cure = node.properties.find(ast.isCureProperty);
      const value =
        cure === undefined ? null : lowerValue(scope, cure.value, "time", lowerCitation(scope, cure.citation));
      return {
        flashPoint: quantity("flash point"),
        heatLimit: quantity("heat limit"),
        cure: value,
        density: quantity("density"),
        expands: quantity("expands"),
        pressure: quantity("pressure"),
        hazards,
      };
    }
    case "Energy": {
      const { quantity, hasMark, hazards } = lowerProperties(scope, "energy", node.properties);
      const marks = (["vacuum", "spring", "height", "rotating"] as const).filter(hasMark);
      return {
        off: hasMark("off"),
        marks,
        voltage: quantity("voltage"),
        pressure: quantity("pressure"),
        hot: quantity("hot"),
        stored: quantity("stored"),
        hazards,
      };
    }
    case "Threshold":
      return { value: thresholdValue(scope, node) };
    case "Arrangement":
      return lowerArrangement(scope, node);
    case "Crib":
      return { items: node.items.filter(ast.isCribItem).map((item) => cribItem(scope, item)) };
    case "ValueDeclaration":
    case "Measure":
      workOut(scope, node);
      return {};
    default:
      return {};
  }
}

function ringFields(scope: Scope, node: ast.Ring): Partial<Declaration> {
  lowerProperties(scope, "ring", node.properties);
  const numbered = onlyOne(scope, node.properties.filter(ast.isNumberedProperty), "numbered");
  const position = onlyOne(scope, node.properties.filter(ast.isPositionProperty), "position");
  const fill = onlyOne(scope, node.properties.filter(ast.isFillProperty), "fill");
  for (const order of node.properties.filter(ast.isOrderProperty)) misplace(scope, order, "order", "in holes");
  onlyOne(scope, node.properties.filter(ast.isCountProperty), "count");
  return {
    numbered: numbered?.direction ?? null,
    seenFrom: numbered?.seenFrom ?? null,
    start: position === undefined ? null : startOf(scope, node, position),
    fill: fill?.direction ?? null,
  };
}

function startOf(
  scope: Scope,
  node: ast.Ring,
  property: ast.PositionProperty,
): { position: number; clock: Value } | null {
  const clock = lowerValue(scope, property.clock, "clock position", lowerCitation(scope, property.citation));
  const position = positionOf(scope, node, property.position, propertySpan(scope, property, "position"));
  return clock === null || position === null ? null : { position, clock };
}

/** A position of a ring or of holes; one that is not there has a problem. */
function positionOf(
  scope: Scope,
  node: ast.Ring | ast.Holes,
  text: string,
  span: ReturnType<typeof spanOf>,
): number | null {
  const record = scope.lowering.records.get(node);
  if ((record?.kind !== "ring" && record?.kind !== "holes") || record.count === 0) return null;
  const { count, name, span: declaredAt } = record;
  const position = wholeNumber(text);
  if (position !== null && position >= 1 && position <= count) return position;
  if (position === null) return wholeNumberWithin(scope, span, text, 1, count);
  const range = `1..${count}`;
  scope.problems.push({ kind: "no such instance", span, name, index: text, range, declaredAt, pass: null, more: 0 });
  return null;
}

function orderOf(scope: Scope, node: ast.Holes): readonly number[] | null {
  const { properties } = node;
  lowerProperties(scope, "holes", properties);
  for (const each of properties.filter(ast.isNumberedProperty)) misplace(scope, each, "numbered", "in a ring");
  for (const each of properties.filter(ast.isPositionProperty)) misplace(scope, each, "position", "in a ring");
  for (const each of properties.filter(ast.isFillProperty)) misplace(scope, each, "fill", "in a ring");
  onlyOne(scope, properties.filter(ast.isCountProperty), "count");
  const order = onlyOne(scope, properties.filter(ast.isOrderProperty), "order");
  if (order === undefined) return null;
  const positions = order.order.map((text, at) =>
    positionOf(scope, node, text, propertySpan(scope, order, "order", at)),
  );
  return positions.filter((position) => position !== null);
}

/** The first of lines that may stand once; each other has a problem. */
function onlyOne<T extends ast.PlaceProperty>(scope: Scope, lines: readonly T[], keyword: string): T | undefined {
  for (const again of lines.slice(1)) tellTwice(scope, again, keyword);
  return lines[0];
}

function fitFields(scope: Scope, node: ast.Fit): Partial<Declaration> {
  const { quantity, text, conditioned } = lowerProperties(scope, "fit", node.properties);
  return {
    outer: fitPart(scope, node.outer),
    inner: fitPart(scope, node.inner),
    diameter: quantity("diameter"),
    interference: quantity("interference"),
    tolerance: text("tolerance"),
    slipClearance: quantity("slip clearance"),
    length: quantity("length"),
    friction: conditioned("friction")[0]?.value ?? null,
  };
}

function fitPart(scope: Scope, node: ast.Target): PartInstance | null {
  const { target, sound } = lowerTarget(scope, node, ["part"], "condition");
  if (target.thing?.kind !== "part" || !sound) return null;
  const item = target.index?.[0];
  if (item?.form !== "one") return { part: target.thing, index: null };
  return { part: target.thing, index: item.value.form === "name" ? item.value.name : constantOf(item.value) };
}

/** What a gauge resolves is of the kind it measures; of a temperature it is a difference. */
function compareResolution(scope: Scope, { quantity }: Properties): void {
  const [measures, resolution] = [quantity("measures"), quantity("resolution")];
  if (measures === null || resolution === null) return;
  const [measured, found] = [kindsOf(measures.quantity), kindsOf(resolution.quantity)];
  const wanted = measured.map((kind): Kind => (kind === "temperature" ? "temperature difference" : kind));
  if (found.some((kind) => wanted.includes(kind))) return;
  const { span } = resolution;
  const unit = resolution.quantity.nominal?.unit.text ?? null;
  const problem = { kind: "mismatch", at: span, found, wanted, operands: null, unit } as const;
  scope.problems.push({ kind: "quantity", span, problem });
}

function kindsOf({ kind, alternatives }: Quantity): Kind[] {
  return [kind, ...(alternatives ?? [])];
}

function capabilityOf({ quantity, conditioned, fullScale }: Properties): Capability {
  return {
    torque: conditioned("torque")[0]?.value ?? null,
    accuracy: quantity("accuracy"),
    accuracyOfFullScale: fullScale,
    arm: quantity("arm"),
    offset: quantity("offset"),
    angle: quantity("angle"),
    heatsTo: quantity("heats to"),
    coolsTo: quantity("cools to"),
    lifts: quantity("lifts"),
    legLifts: quantity("each leg lifts"),
    measures: quantity("measures"),
    resolution: quantity("resolution"),
    force: quantity("force"),
  };
}

/** What a shop may set, and the kind of each (design: hazard thresholds; preload as a share of the proof load). */
export const THRESHOLDS = {
  burn: "temperature",
  cold: "temperature",
  lifting: "mass",
  electric: "voltage",
  pressure: "pressure",
  fire: "temperature",
  noise: "sound level",
  oxygen: "ratio",
  preload: "ratio",
} as const;

function thresholdValue(scope: Scope, node: ast.Threshold): Value | null {
  const { threshold: name } = node;
  const per = lowerCitation(scope, node.citation);
  if (Object.hasOwn(THRESHOLDS, name))
    return lowerValue(scope, node.value, THRESHOLDS[name as keyof typeof THRESHOLDS], per);
  const nearest = nearestNames(name, Object.keys(THRESHOLDS));
  scope.problems.push({
    kind: "unknown name",
    span: propertySpan(scope, node, "threshold"),
    name,
    wanted: "a threshold",
    nearest,
  });
  return lowerValue(scope, node.value, null, per);
}

function cribItem(scope: Scope, node: ast.CribItem) {
  const tool = resolve(scope, node.tool, ["tool"]);
  const capability = capabilityOf(lowerProperties(scope, "tool", node.properties));
  const [calibrated, ...others] = node.properties.filter(ast.isCalibratedProperty);
  for (const again of others) tellTwice(scope, again, "calibrated until");
  const calibratedUntil = calibrated?.date ?? null;
  return { label: node.label, tool, capability, calibratedUntil, span: spanOf(scope, node) };
}
