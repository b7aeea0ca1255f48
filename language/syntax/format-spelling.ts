// How a single word is spelled canonically: units by the kind its place wants, signs, numbers. Knows no layout.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Kind } from "#quantity/kind.ts";
import { canonicalNumber, canonicalUnit } from "#quantity/spelling.ts";
import type { Word } from "./format-words.ts";

/** The canonical form of a word; strings and names stay as written, but for the form of their characters (NFC, LF). */
export function spelled(word: Word): string {
  return spelling(word).normalize("NFC");
}

function spelling({ leaf, text }: Word): string {
  switch (leaf.tokenType.name) {
    case "UNIT":
      return canonicalUnit(text, wantedKind(leaf.astNode));
    case "NUMBER":
      return canonicalNumber(text);
    case "TEXT_BLOCK":
      return text.replace(/\r\n?/g, "\n");
    case "+/-":
      return "±";
    case "−":
      return "-";
    default:
      return text;
  }
}

/** The kind that the place of a literal wants; null where the form of the text does not tell. */
function wantedKind(literal: AstNode): Kind | null {
  let node = literal;
  for (let holder = node.$container; holder !== undefined; holder = node.$container) {
    if (ast.isQuantity(holder)) return kindOfPlace(holder);
    const isPart = ast.isLiteral(holder) || ast.isNegation(holder);
    const isTerm = ast.isSum(holder) && (holder.operator === "+" || holder.operator === "-" || holder.operator === "−");
    if (!isPart && !isTerm) return null;
    node = holder;
  }
  return null;
}

function kindOfPlace(quantity: ast.Quantity): Kind | null {
  const place = quantity.$container;
  if (ast.isQuantityProperty(place) || ast.isConditionedProperty(place))
    return KIND_OF_PROPERTY.get(place.keyword) ?? null;
  if (ast.isTighten(place)) return quantity.$containerProperty === "angle" ? "angle" : "torque";
  return ast.isLoosen(place) ? "angle" : null;
}

// Only the places where the kind decides between spellings: a pound is a mass in one and a force in the other, 1/min a
// speed of rotation or a frequency. Keywords as the parser gives them.
const KIND_OF_PROPERTY: ReadonlyMap<string, Kind> = new Map([
  ["torque", "torque"],
  ["prevailingtorque", "torque"],
  ["force", "force"],
  ["pressure", "pressure"],
  ["angle", "angle"],
  ["unbalance", "mass moment"],
  ["density", "density"],
  ["speed", "rotational speed"],
]);
