// Fills in the record of a part: where it seats and how it stands to other parts. Knows no other declaration's lines.
import * as ast from "#grammar/generated/ast.ts";
import type { Span } from "#syntax/span.ts";
import type { Material, Part, Places, Relation, SeatRule } from "./declarations.ts";
import { lowerProperties } from "./lower-properties.ts";
import { constantOf, lowerTarget } from "./lower-target.ts";
import { type Scope, spanOf, wholeNumber } from "./lowering.ts";
import { tellTwice } from "./misplaced.ts";
import { meant, propertySpan, referenceSpan, resolve } from "./names.ts";
import type { IndexExpression, IndexItem } from "./procedure.ts";

/** The fields of a part's record, beside those it was declared with. */
export function lowerPart(scope: Scope, node: ast.Part): Partial<Part> {
  const { conditioned, hasMark, hazards, quantity, text } = lowerProperties(scope, "part", node.properties);
  const secures = relationsOf(scope, node, "secures");
  const thread = text("thread")?.text ?? null;
  const materials = node.properties.filter(ast.isMaterialUse);
  for (const again of materials.slice(1)) tellTwice(scope, again, "material");
  const seats = seatsOf(scope, node);
  const relations = node.properties.filter(ast.isRelationProperty);
  const isSeatLost = seats === null && node.properties.some(ast.isSeatsProperty);
  const isRelationLost = relations.some(({ targets }) => targets.some(({ thing }) => !ast.isPart(meant(scope, thing))));
  return {
    temporary: node.temporary,
    material: materials[0] === undefined ? null : materialOf(scope, materials[0]),
    mass: quantity("mass"),
    heatLimit: quantity("heat limit"),
    cools: quantity("cools"),
    seats,
    ...(isSeatLost || isRelationLost ? { damaged: true } : {}),
    needs: relationsOf(scope, node, "needs"),
    encloses: relationsOf(scope, node, "encloses"),
    retains: relationsOf(scope, node, "retains"),
    secures,
    locks: relationsOf(scope, node, "locks"),
    backsUp: relationsOf(scope, node, "backsup"),
    singleUse: hasMark("single use"),
    sharp: hasMark("sharp"),
    stands: hasMark("stands"),
    fastener: thread !== null || relations.some(({ keyword }) => keyword === "secures"),
    thread,
    propertyClass: text("class")?.text ?? null,
    grade: text("grade")?.text ?? null,
    nutFactors: conditioned("nut factor"),
    frictions: conditioned("friction"),
    prevailingTorque: quantity("prevailing torque"),
    torques: conditioned("torque"),
    drivenBy: node.properties.filter(ast.isDrivenProperty).flatMap(({ energies }) => {
      return energies.map((energy) => resolve(scope, energy, ["energy"])).filter((energy) => energy !== null);
    }),
    hazards,
  };
}

/** The material; of a name that is not known one of which nothing can be said, which is not the same as none. */
function materialOf(scope: Scope, { material: name }: ast.MaterialUse): Material {
  const known = resolve(scope, name, ["material"]);
  if (known !== null) return known;
  const span = referenceSpan(scope, name);
  return {
    ...{ kind: "material", id: "", name: name.$refText, title: name.$refText, span, extent: span, per: null },
    ...{ damaged: true, expansion: null, expansionRange: null, heatLimit: null },
  };
}

/* ---- relations ---- */

function relationsOf(scope: Scope, node: ast.Part, keyword: ast.RelationProperty["keyword"]): readonly Relation[] {
  return node.properties
    .filter(ast.isRelationProperty)
    .filter((property) => property.keyword === keyword)
    .flatMap(({ targets }) => targets.map((target) => relationOf(scope, target)))
    .filter((relation) => relation !== null);
}

function relationOf(scope: Scope, node: ast.Target): Relation | null {
  const { target, sound } = lowerTarget(scope, node, ["part"], "relation");
  const { index, span, thing } = target;
  if (thing?.kind !== "part" || !sound) return null;
  if (index === null || index.some((item) => item.form === "all")) return { part: thing, which: "all", span };
  if (index.some((item) => item.form === "same")) return { part: thing, which: "same", span };
  return { part: thing, which: index.flatMap(constantItem), span };
}

/** The instances that an index without loop variables means; it was checked to lie within. */
function constantItem(item: IndexItem): readonly (number | string)[] {
  if (item.form === "one") return [constantEnd(item.value)].filter((index) => index !== null);
  if (item.form !== "range") return [];
  const [first, last] = [constantEnd(item.first), constantEnd(item.last)];
  if (typeof first !== "number" || typeof last !== "number") return [];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);
}

function constantEnd(expression: IndexExpression): number | string | null {
  return expression.form === "name" ? expression.name : constantOf(expression);
}

/* ---- seats ---- */

function seatsOf(scope: Scope, node: ast.Part): Part["seats"] {
  const properties = node.properties.filter(ast.isSeatsProperty);
  for (const again of properties.slice(1)) tellTwice(scope, again, "seats");
  const property = properties[0];
  const places = property === undefined ? null : resolve(scope, property.place, ["ring", "holes"]);
  if (property === undefined || places === null) return null;
  return { places, rule: seatRule(scope, node, property, places), span: spanOf(scope, property) };
}

function seatRule(scope: Scope, node: ast.Part, property: ast.SeatsProperty, places: Places): SeatRule {
  if (property.equally) return "equally spaced";
  if (property.byNumber) {
    const { instances } = scope.lowering.records.get(node) as Part;
    if (instances.form === "numbered") {
      const numbers = [instances.first, instances.last].filter((number) => !isPosition(places, number));
      const [first] = numbers;
      if (first !== undefined) tellOutside(scope, referenceSpan(scope, property.place), places, String(first));
    }
    return "by number";
  }
  if (property.positions.length === 0) return "any";
  const positions = property.positions.map((text, at) => {
    const position = wholeNumber(text);
    if (position !== null && isPosition(places, position)) return position;
    tellOutside(scope, propertySpan(scope, property, "positions", at), places, text);
    return null;
  });
  return positions.filter((position) => position !== null);
}

/** Of a ring whose count is not known any position may be one. */
function isPosition(places: Places, position: number): boolean {
  return places.count === 0 || places.damaged || (position >= 1 && position <= places.count);
}

function tellOutside(scope: Scope, span: Span, places: Places, index: string): void {
  const { count, name, span: declaredAt } = places;
  const range = `1..${count}`;
  scope.problems.push({ kind: "no such instance", span, name, index, range, declaredAt, pass: null, more: 0 });
}
