// The lines of a declaration: which of them may stand where, the kind of each quantity, the source of each line. Knows no
// single declaration's record.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { show } from "#quantity/display.ts";
import { factsOf, type Kind } from "#quantity/kind.ts";
import { cmp, ONE } from "#quantity/rational.ts";
import { BARE } from "#quantity/unit.ts";
import type { Citation, CitedText, Conditioned, Consumable, Declaration, Value } from "./declarations.ts";
import { kindWritten, lowerValue } from "./lower-quantity.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { misplace, tellTwice } from "./misplaced.ts";
import { propertySpan, resolve, resolveHazard, sortWords } from "./names.ts";

/** The lines of one declaration, by what they say. */
export interface Properties {
  /** The quantity after a keyword (`heat limit`), the first where it stands twice. */
  readonly quantity: (keyword: string) => Value | null;
  readonly text: (keyword: string) => CitedText | null;
  readonly conditioned: (keyword: string) => readonly Conditioned[];
  readonly hasMark: (keyword: string) => boolean;
  readonly hazards: readonly string[];
  /** `accuracy 2 % of full scale`. */
  readonly fullScale: boolean;
}

/** Reads the lines of a declaration of this sort; a line that does not belong there has a problem and is left out. */
export function lowerProperties(scope: Scope, sort: Declaration["kind"], nodes: readonly AstNode[]): Properties {
  const quantities = new Map<string, Value | null>();
  const texts = new Map<string, CitedText>();
  const conditioned = new Map<string, Conditioned[]>();
  const marks = new Set<string>();
  const hazards: string[] = [];
  let fullScale = false;
  for (const node of nodes) {
    if (ast.isQuantityProperty(node)) {
      const keyword = WORDS[node.keyword] ?? node.keyword;
      // A transition fit has play at one end of its band.
      const signed = keyword === "interference";
      const value = lowerValue(
        scope,
        node.value,
        kindOf(scope, keyword, node.value),
        lowerCitation(scope, node.citation),
        signed,
      );
      if (!(QUANTITIES[sort] ?? []).includes(keyword)) misplace(scope, node, keyword, placesOf(keyword));
      else if (quantities.has(keyword)) tellTwice(scope, node, keyword);
      else quantities.set(keyword, keyword === "accuracy" ? shareOf(scope, value) : value);
      fullScale ||= node.fullScale && keyword === "accuracy";
    } else if (ast.isTextProperty(node)) {
      if (texts.has(node.keyword)) tellTwice(scope, node, node.keyword);
      else {
        const per = lowerCitation(scope, node.citation);
        texts.set(node.keyword, { text: node.text, span: propertySpan(scope, node, "text"), per });
      }
    } else if (ast.isConditionedProperty(node)) {
      const keyword = WORDS[node.keyword] ?? node.keyword;
      const found = conditionedOf(scope, node, keyword);
      if (found !== null) conditioned.set(keyword, [...(conditioned.get(keyword) ?? []), found]);
    } else if (ast.isMarkProperty(node)) marks.add(WORDS[node.keyword] ?? node.keyword);
    else if (ast.isHazardProperty(node))
      hazards.push(...node.hazards.map((hazard) => resolveHazard(scope, hazard).name));
  }
  return {
    quantity: (keyword) => quantities.get(keyword) ?? null,
    text: (keyword) => texts.get(keyword) ?? null,
    conditioned: (keyword) => conditioned.get(keyword) ?? [],
    hasMark: (keyword) => marks.has(keyword),
    hazards,
    fullScale,
  };
}

/** `per Manual "6.4.2"`. */
export function lowerCitation(scope: Scope, node: ast.Citation | undefined): Citation | null {
  if (node === undefined) return null;
  return { source: resolve(scope, node.source, ["source"]), section: node.section ?? "", span: spanOf(scope, node) };
}

/** Keywords of several words reach the tree without their blanks. */
const WORDS: Readonly<Record<string, string>> = {
  heatlimit: "heat limit",
  prevailingtorque: "prevailing torque",
  slipclearance: "slip clearance",
  heatsto: "heats to",
  coolsto: "cools to",
  eachleglifts: "each leg lifts",
  flashpoint: "flash point",
  nutfactor: "nut factor",
  singleuse: "single use",
};

/** The kind each keyword wants; one that is missing takes any. */
export const PROPERTY_KINDS: Readonly<Record<string, Kind>> = {
  mass: "mass",
  "heat limit": "temperature",
  cools: "temperature rate",
  "prevailing torque": "torque",
  diameter: "length",
  interference: "length",
  "slip clearance": "length",
  length: "length",
  accuracy: "ratio",
  arm: "length",
  offset: "length",
  angle: "angle",
  "heats to": "temperature",
  "cools to": "temperature",
  lifts: "mass",
  "each leg lifts": "mass",
  force: "force",
  "flash point": "temperature",
  density: "density",
  expands: "ratio",
  voltage: "voltage",
  pressure: "pressure",
  hot: "temperature",
  stored: "energy",
  radius: "length",
  unbalance: "mass moment",
  speed: "rotational speed",
  reach: "length",
  "nut factor": "ratio",
  friction: "ratio",
  torque: "torque",
};

/** A gauge resolves steps of what it measures: of a temperature a difference. */
function kindOf(scope: Scope, keyword: string, node: ast.Quantity): Kind | null {
  if (keyword !== "resolution") return PROPERTY_KINDS[keyword] ?? null;
  return kindWritten(scope, node) === "temperature" ? "temperature difference" : null;
}

/** An accuracy is a share of what is read; of one that takes it all the % was left out, or a digit is wrong. */
function shareOf(scope: Scope, value: Value | null): Value | null {
  const ends = value === null ? [] : [value.quantity.low, value.quantity.nominal, value.quantity.high];
  const whole = ends.find((end) => end !== null && cmp(end.base, ONE) >= 0) ?? null;
  if (value === null || whole === null) return value;
  const { span, quantity } = value;
  const number = scope.parsed.text.slice(span.start, span.end);
  const problem =
    whole.unit === BARE
      ? ({ kind: "missing unit", at: span, number, usual: factsOf("ratio").usual } as const)
      : ({
          kind: "impossible",
          at: span,
          why: "all of the reading",
          of: quantity.kind,
          shown: show(quantity),
        } as const);
  scope.problems.push({ kind: "quantity", span, problem });
  return null;
}

/** The quantities that each sort of declaration may give. */
export const QUANTITIES: Partial<Record<Declaration["kind"], readonly string[]>> = {
  material: ["heat limit"],
  ring: ["diameter", "radius"],
  holes: [],
  part: ["mass", "heat limit", "cools", "prevailing torque"],
  fit: ["diameter", "interference", "slip clearance", "length"],
  tool: [
    "accuracy",
    "arm",
    "offset",
    "angle",
    "heats to",
    "cools to",
    "lifts",
    "each leg lifts",
    "measures",
    "resolution",
    "force",
    "reach",
  ],
  consumable: ["flash point", "heat limit", "density", "expands", "pressure"],
  energy: ["voltage", "pressure", "hot", "stored"],
  arrangement: ["radius", "unbalance", "speed", "mass"],
};

function placesOf(keyword: string): string {
  const sorts = (Object.keys(QUANTITIES) as Declaration["kind"][]).filter((sort) =>
    QUANTITIES[sort]?.includes(keyword),
  );
  return sorts.length === 0 ? "in no declaration" : `in ${sortWords(sorts)}`;
}

function conditionedOf(scope: Scope, node: ast.ConditionedProperty, keyword: string): Conditioned | null {
  const value = lowerValue(scope, node.value, PROPERTY_KINDS[keyword] ?? null, lowerCitation(scope, node.citation));
  if (node.lubricant === undefined)
    return value === null ? null : { value, condition: node.dry ? { dry: true } : null };
  const lubricant: Consumable | null = resolve(scope, node.lubricant, ["consumable"]);
  return value === null || lubricant === null ? null : { value, condition: { with: lubricant } };
}
