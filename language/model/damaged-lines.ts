// Lines that could not be read: what they leave in doubt, and whether they took a number. Knows words, not actions.
import * as ast from "#grammar/generated/ast.ts";
import { type Damage, damageOf } from "#syntax/damage.ts";
import type { Declaration } from "./declarations.ts";
import { lookUp, type Scope, spanOf } from "./lowering.ts";
import type { Damaged } from "./procedure.ts";

/** What a damaged line leaves in doubt: all it mentions, or all there is where it lost the name of what it works on. */
export function lowerDamaged(scope: Scope, node: ast.Damaged): Damaged {
  const damage = damageOf(scope.parsed.damage, node);
  const span = damage?.span ?? spanOf(scope, node);
  if (damage === undefined) return { kind: "damaged", mentions: allInReach(scope), span };
  if (losesObject(scope, damage)) {
    const verb = onlyVerb(damage);
    return { kind: "damaged", mentions: allInReach(scope), span, ...(verb === null ? {} : { verb }) };
  }
  if (saysOnly(damage)) return { kind: "damaged", mentions: [], span };
  const mentions = damage.names.flatMap((name) => declaredAs(scope, name));
  const verb = damage.texts.includes("needs") ? null : onlyVerb(damage);
  return { kind: "damaged", mentions, span, ...(verb !== null && leavesInPlace(verb) ? { verb } : {}) };
}

/** Whether what an action of this verb may have done to a thing neither puts it in place nor takes it away. */
export function leavesInPlace(verb: string): boolean {
  return LEAVES_IN_PLACE.has(verb);
}

const LEAVES_IN_PLACE = new Set([
  ...["clean", "lubricate", "heat", "cool", "align", "turn", "tighten", "loosen", "inspect", "measure"],
  ...["isolate", "restore"],
]);

/** A line that changes nothing, whatever stood in it: a signature, a time, a source. */
function saysOnly({ keyword, texts }: Damage): boolean {
  return SAYING.has(keyword) && !texts.some((text) => VERBS.has(text) || text === "{" || text === "apply");
}

const SAYING = new Set([
  ...[
    "sign",
    "hold",
    "by",
    "critical",
    "takes",
    "within",
    "after",
    "before",
    "raises",
    "per",
    "why",
    "figure",
    "record",
  ],
  ...["allow", "danger", "warning", "caution", "note"],
]);

/** Whether it was the head of a task: only that and the head of a step hold own words. */
export function isTaskHead(damage: Damage | undefined): boolean {
  return damage?.keyword === "task" || (damage?.texts.some((text) => text.startsWith('"')) ?? false);
}

/** Whether it took a number: a step or task, or an action that lost its `step`. */
export function isNumbered(damage: Damage | undefined): boolean {
  return damage !== undefined && !UNNUMBERED.has(damage.keyword) && !UNNUMBERED.has(damage.texts[0] ?? "");
}

const UNNUMBERED = new Set([
  ...[
    "danger",
    "warning",
    "caution",
    "note",
    "allow",
    "per",
    "return",
    "go",
    "stop",
    "repeat",
    "when",
    "otherwise",
    "in",
  ],
  ...["document", "applies", "based", "ambient", "crew", "begin", "finish", "with", "on", "to", "because"],
  ...[
    "material",
    "source",
    "role",
    "ring",
    "holes",
    "temporary",
    "part",
    "fit",
    "tool",
    "consumable",
    "energy",
    "hazard",
  ],
  ...["option", "fact", "value", "term", "threshold", "arrangement", "crib", "use"],
]);

/** Words that are followed by what the line works on. */
const VERBS = new Set([
  ...[
    "install",
    "press",
    "remove",
    "discard",
    "tighten",
    "loosen",
    "heat",
    "cool",
    "clean",
    "lubricate",
    "drain",
    "bleed",
  ],
  ...["fill", "turn", "align", "lift", "support", "isolate", "release", "prove", "restore", "choose", "gives"],
]);
/** Of these nothing says what would have been done. */
const OPEN_ENDED = new Set(["perform", "return", "go", "stop", "to"]);

function losesObject(scope: Scope, damage: Damage): boolean {
  const texts = damage.texts.filter((text, at) => !(at === 0 && text === "step"));
  const [first = ""] = texts;
  if (OPEN_ENDED.has(first) || texts.some((text) => ast.isProcedure(lookUp(scope.reach, text)))) return true;
  const at = first === "apply" ? texts.indexOf("to") : VERBS.has(first) ? 0 : first === "set" ? 1 : -1;
  if (at < 0) return first === "apply";
  return !isObject(scope, texts[texts[at + 1] === "new" ? at + 2 : at + 1]) || listEndsEarly(scope, texts);
}

/** The verb of a line that holds no other. */
function onlyVerb({ texts }: Damage): string | null {
  // What a line gives may be called like a verb: `clean`.
  if (texts[0] === "gives") return texts.some((text) => STATES_OF_PLACE.has(text)) ? null : "gives";
  const verbs = texts.filter((text) => VERBS.has(text) || OPEN_ENDED.has(text) || text === "apply" || text === "down");
  // `to` stands beside verbs too.
  const [verb, ...others] = verbs.filter((text) => text !== "to");
  return verb === undefined || OPEN_ENDED.has(verb) || others.length > 0 ? null : verb === "down" ? "set down" : verb;
}

/** States that say where a part is or how it is held, or whether an energy is on. */
const STATES_OF_PLACE = new Set(["installed", "removed", "loose", "tightened", "secured", "isolated", "live"]);

function isObject(scope: Scope, text: string | undefined): boolean {
  return text !== undefined && declaredAs(scope, text).length > 0;
}

/** A list of objects with an entry gone: outside brackets, a comma that no name follows. */
function listEndsEarly(scope: Scope, texts: readonly string[]): boolean {
  let depth = 0;
  return texts.some((text, at) => {
    if (text === "[") depth++;
    else if (text === "]") depth--;
    return text === "," && depth === 0 && !isObject(scope, texts[at + 1]) && !/^[\d"]/.test(texts[at + 1] ?? "");
  });
}

function declaredAs(scope: Scope, name: string): readonly Declaration[] {
  const node = lookUp(scope.reach, name);
  const record = node === undefined ? undefined : scope.lowering.records.get(node);
  return record === undefined ? [] : [record];
}

/** Every declaration that can be named here. */
export function allInReach(scope: Scope): readonly Declaration[] {
  const nodes = scope.reach.layers.flatMap((layer) => [...layer.values()]);
  return nodes.map((node) => scope.lowering.records.get(node)).filter((record) => record !== undefined);
}
