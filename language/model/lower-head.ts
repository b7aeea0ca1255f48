// The head lines of a procedure: its document, what it applies to, how it begins and finishes. Knows no steps.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { type Damage, damageOf } from "#syntax/damage.ts";
import { isWork, lowerDamaged } from "./damaged-lines.ts";
import type { Declaration } from "./declarations.ts";
import { lowerWithDoubt } from "./lower-condition.ts";
import { lowerValue } from "./lower-quantity.ts";
import { MOST_INSTANCES, type Scope, spanOf, wholeNumber, wholeNumberWithin } from "./lowering.ts";
import { tellTwice } from "./misplaced.ts";
import { propertySpan, resolve } from "./names.ts";
import type { Damaged, Procedure } from "./procedure.ts";

export interface Head {
  readonly fields: HeadFields;
  readonly unknownAtStart: readonly Declaration[];
  readonly atEnd: readonly Damaged[];
}

type OtherHeadLine = Exclude<ast.HeadLine, ast.BeginLine | ast.FinishLine>;

export function isHeadLine(node: AstNode): node is ast.HeadLine {
  return HEAD_LINES.has(node.$type);
}

/**
 * The head lines of a procedure, and what unreadable ones leave in doubt at its start and its end.
 * @param inReach every declaration that the procedure may speak of
 */
export function lowerHead(scope: Scope, node: ast.Procedure, inReach: readonly Declaration[]): Head {
  const fields: WritableHead = {
    document: null,
    applies: [],
    basedOn: [],
    ambient: null,
    hasAmbient: false,
    room: null,
    crew: null,
    begin: [],
    finish: [],
    hasFinish: false,
  };
  // What `begin with X is secured` puts in place with X may be said in a line that could not be read.
  const unknownAtStart = new Set(inReach.filter((declared) => declared.kind === "part" && declared.damaged));
  const atEnd: Damaged[] = [];
  let inHead = true;
  for (const item of node.items) {
    if (ast.isBeginLine(item)) {
      const { conditions, doubtful, isWhole } = lowerWithDoubt(scope, item.conditions, inReach);
      fields.begin = [...fields.begin, ...conditions];
      if (!isWhole) for (const thing of withFasteners(doubtful, inReach)) unknownAtStart.add(thing);
    } else if (ast.isFinishLine(item)) {
      const { conditions, doubtful, isWhole } = lowerWithDoubt(scope, item.conditions, inReach);
      fields.hasFinish = true;
      fields.finish = [...fields.finish, ...conditions];
      if (!isWhole) atEnd.push({ kind: "damaged", mentions: doubtful, span: spanOf(scope, item) });
    } else if (isHeadLine(item)) lowerHeadLine(scope, item, fields);
    else if (ast.isStep(item) || ast.isTask(item)) inHead = false;
    else if (ast.isDamaged(item) && item.items.length === 0) {
      const damage = damageOf(scope.parsed.damage, item);
      const part = headPartOf(damage);
      const damaged = lowerDamaged(scope, item);
      // What it put in place may be any part, also one whose name was lost.
      if (isWork(damage)) inHead = false;
      if (part === "begin" || part === "either") for (const thing of inReach) unknownAtStart.add(thing);
      else if (inHead && part === null) for (const thing of damaged.mentions) unknownAtStart.add(thing);
      if (part === "finish" || part === "either") {
        fields.hasFinish = true;
        atEnd.push(damaged);
      }
    }
  }
  return { fields, unknownAtStart: [...unknownAtStart], atEnd };
}

/** With what is in doubt, all that secures it. */
function withFasteners(doubtful: readonly Declaration[], inReach: readonly Declaration[]): readonly Declaration[] {
  const parts = inReach.filter((declared) => declared.kind === "part");
  const fasteners = parts.filter((part) => part.secures.some(({ part: held }) => doubtful.includes(held)));
  return [...doubtful, ...fasteners];
}

type HeadFields = Pick<
  Procedure,
  "document" | "applies" | "basedOn" | "ambient" | "hasAmbient" | "room" | "crew" | "begin" | "finish" | "hasFinish"
>;
type WritableHead = { -readonly [Key in keyof HeadFields]: HeadFields[Key] };

const HEAD_LINES = new Set([
  "DocumentLine",
  "AppliesLine",
  "BasedLine",
  "AmbientLine",
  "RoomLine",
  "CrewLine",
  "BeginLine",
  "FinishLine",
]);

/** Whether it is what is left of `begin with` or `finish with`: that counts at the start and the end, not where it stands. */
export function isLostHeadLine(scope: Scope, node: AstNode): boolean {
  return ast.isDamaged(node) && node.items.length === 0 && headPartOf(damageOf(scope.parsed.damage, node)) !== null;
}

/** Whether damage was `begin with` or `finish with`; a lost first word leaves both open. */
function headPartOf(damage: Damage | undefined): "begin" | "finish" | "either" | null {
  const first = damage?.texts[0] ?? "";
  if (first === "with") return "either";
  return first === "begin" || first === "finish" ? first : null;
}

function lowerHeadLine(scope: Scope, node: OtherHeadLine, fields: WritableHead): void {
  const span = spanOf(scope, node);
  switch (node.$type) {
    case "DocumentLine":
      if (fields.document !== null) tellTwice(scope, node, "document");
      else fields.document = { number: node.number, revision: node.revision ?? null, date: node.date ?? null, span };
      return;
    case "AppliesLine": {
      const [firstSerial, lastSerial] = [node.first, node.last].map((text) =>
        text === undefined ? null : wholeNumber(text),
      );
      if (firstSerial && lastSerial && firstSerial > lastSerial) tellReversed(scope, node);
      fields.applies = [
        ...fields.applies,
        { model: node.model, firstSerial: firstSerial ?? null, lastSerial: lastSerial ?? null, span },
      ];
      return;
    }
    case "BasedLine":
      fields.basedOn = [
        ...fields.basedOn,
        { source: resolve(scope, node.source, ["source"]), revision: node.revision, span },
      ];
      return;
    case "AmbientLine":
      fields.hasAmbient = true;
      if (fields.ambient !== null) tellTwice(scope, node, "ambient");
      else fields.ambient = lowerValue(scope, node.value, "temperature");
      return;
    case "RoomLine":
      if (fields.room !== null) tellTwice(scope, node, "room");
      else fields.room = lowerValue(scope, node.value, "volume");
      return;
    case "CrewLine":
      if (fields.crew !== null) tellTwice(scope, node, "crew");
      else fields.crew = wholeNumberWithin(scope, propertySpan(scope, node, "crew"), node.crew, 1, MOST_INSTANCES);
      return;
  }
}

/** A range of serial numbers that runs down. */
function tellReversed(scope: Scope, node: ast.AppliesLine): void {
  const [low, high] = [node.first ?? "", node.last ?? ""];
  const { path, start } = propertySpan(scope, node, "first");
  const at = { path, start, end: propertySpan(scope, node, "last").end };
  const problem = { kind: "reversed range", at, low, high, mended: `${high} .. ${low}` } as const;
  scope.problems.push({ kind: "quantity", span: at, problem });
}
