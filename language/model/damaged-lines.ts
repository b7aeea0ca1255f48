// Lines that could not be read: what they leave in doubt, and whether they took a number. Knows words, not actions.
import * as ast from "#grammar/generated/ast.ts";
import { readNumber } from "#quantity/number-text.ts";
import { toNumber } from "#quantity/rational.ts";
import { readUnit, toBase } from "#quantity/unit.ts";
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
  if (losesSubject(scope, damage)) return { kind: "damaged", mentions: allInReach(scope), span };
  if (saysOnly(damage))
    return { kind: "damaged", mentions: [], span, ...(TALKING.has(damage.keyword) ? { noWork: true } : {}) };
  const mentions = damage.names.flatMap((name) => declaredAs(scope, name));
  const verb = damage.texts.includes("needs") ? null : onlyVerb(damage);
  return {
    kind: "damaged",
    mentions,
    span,
    ...(verb !== null && leavesInPlace(verb) ? { verb } : {}),
    mayWait: mayWait(damage),
  };
}

/** The seconds of a time that stands for itself: what else says one has its own word for it. */
function mayWait({ texts }: Damage): number {
  const times = texts.map((text, at) => secondsOf(texts[at - 1] ?? "", text)).filter((time) => time !== null);
  const [only] = times;
  if (only === undefined || texts.some((text, at) => isVerb(texts, at) || text === "apply")) return 0;
  // Of a sum, a range or a time that was worked out it is not known how long it was.
  return texts.length === (texts[0] === "step" ? 3 : 2) ? only : Number.POSITIVE_INFINITY;
}

function secondsOf(number: string, unitText: string): number | null {
  const written = readNumber(number);
  const unit = written.ok ? readUnit(unitText, "time") : null;
  if (!written.ok || unit?.ok !== true || !unit.unit.kinds.includes("time")) return null;
  return toNumber(toBase(written.value, unit.unit, "time"));
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
  return SAYING.has(keyword) && !texts.some((text, at) => isVerb(texts, at) || text === "{" || text === "apply");
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

/** What stands between steps and is no work; the others may have been a step that lost its word. */
const TALKING = new Set(["danger", "warning", "caution", "note", "allow"]);

/** Whether it was the head of a task: only that and the head of a step hold own words. */
export function isTaskHead(damage: Damage | undefined): boolean {
  return damage?.keyword === "task" || (damage?.texts.some((text) => text.startsWith('"')) ?? false);
}

/** Whether it was work, whatever else it said: no head line, and nothing that is so at the start. */
export function isWork(damage: Damage | undefined): boolean {
  const [first = ""] = damage?.texts ?? [];
  return first === "step" || first === "task" || first === "apply" || VERBS.has(first);
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
  ...["document", "applies", "based", "ambient", "room", "crew", "begin", "finish", "with", "on", "to", "because"],
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
  ...["option", "fact", "value", "term", "verb", "threshold", "arrangement", "crib", "use"],
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
/** What is called like a verb and is none: a state (`is clean`), a unit (`1/4 turn`). */
function isVerb(texts: readonly string[], at: number): boolean {
  const [before = "", text = ""] = [texts[at - 1], texts[at]];
  return VERBS.has(text) && before !== "is" && before !== "are" && !(text === "turn" && /^\d/.test(before));
}

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

/** A `begin with` or `finish with` one of whose conditions does not say of what it speaks: that may be anything. */
function losesSubject(scope: Scope, { texts }: Damage): boolean {
  const first = texts.findIndex((text) => !HEAD_WORDS.has(text));
  if (first === 0) return false;
  let depth = 0;
  return texts.some((text, at) => {
    const begins = at === first || (at > first && depth === 0 && JOINING.has(texts[at - 1] ?? ""));
    if (text === "[") depth++;
    else if (text === "]") depth--;
    return begins && text !== "no" && !JOINING.has(text) && !isObject(scope, text);
  });
}

const HEAD_WORDS = new Set(["begin", "finish", "with"]);
/** Words and signs that a condition follows. */
const JOINING = new Set([",", "and", "or", "not", "("]);

/** The verb of a line that holds no other. */
function onlyVerb({ texts }: Damage): string | null {
  // What a line gives may be called like a verb: `clean`.
  if (texts[0] === "gives") return texts.some((text) => STATES_OF_PLACE.has(text)) ? null : "gives";
  const verbs = texts.filter(
    (text, at) => isVerb(texts, at) || OPEN_ENDED.has(text) || text === "apply" || text === "down",
  );
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
