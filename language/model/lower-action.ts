// Actions: the objects each verb takes, and the kinds of its quantities. Knows what may stand where, not what it does.

import type { Reference } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Span } from "#syntax/span.ts";
import type { Declaration, Reading } from "./declarations.ts";
import { lowerCondition } from "./lower-condition.ts";
import { lowerLiteral, lowerOptional, lowerStages, lowerValue, workOut } from "./lower-quantity.ts";
import { type IndexUse, lowerTarget } from "./lower-target.ts";
import { MOST_INSTANCES, type Scope, spanFrom, spanOf, wholeNumberWithin } from "./lowering.ts";
import { meant, propertySpan, referenceSpan, resolve, resolveProcedure, type Sort } from "./names.ts";
import type { Action, ChooseRow, Hands, PerformAction, SlingLegs, Target, ToolUse } from "./procedure.ts";

export interface LoweredAction {
  readonly action: Action;
  /** What an object that could not be made out probably means: its state is not known afterwards. */
  readonly doubtful: readonly Declaration[];
}

/** Lowers an action with everything in it. */
export function lowerAction(scope: Scope, node: ast.Action): LoweredAction {
  const doubtful: Declaration[] = [];
  const action = actionOf({ scope, doubtful }, node);
  return { action, doubtful };
}

export function lowerPerform(scope: Scope, node: ast.Perform): PerformAction {
  const found = resolveProcedure(scope, node.procedure);
  const path = found === null ? undefined : scope.lowering.scopes.get(found)?.parsed.path;
  const procedure = found === null || path === undefined ? null : { id: `${path}#${found.name}`, name: found.name };
  return { kind: "action", verb: "perform", procedure, place: spanOf(scope, node), span: spanOf(scope, node) };
}

/** The tools of `with T + T`; those that are none are left out, with a problem. */
export function lowerTools(scope: Scope, references: readonly Reference<ast.Named>[]): readonly ToolUse[] {
  return references.flatMap((reference) => {
    const tool = resolve(scope, reference, ["tool"]);
    return tool === null ? [] : [{ tool, span: referenceSpan(scope, reference) }];
  });
}

interface Acting {
  readonly scope: Scope;
  readonly doubtful: Declaration[];
}

function actionOf(at: Acting, node: ast.Action): Action {
  const { scope } = at;
  const span = spanOf(scope, node);
  switch (node.$type) {
    case "Install": {
      const on = node.place === undefined ? null : targetOf(at, node.place, PARTS_AND_PLACES, "place");
      const clock = lowerOptional(scope, node.clock, "clock position");
      const relation = node.relation ?? null;
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        fresh: node.fresh,
        relation,
        on,
        clock,
        tools: lowerTools(scope, node.tools),
      };
    }
    case "Press": {
      const on = targetOf(at, node.place, PARTS_AND_PLACES, "place");
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        fresh: node.fresh,
        relation: node.relation,
        on,
        tools: lowerTools(scope, node.tools),
      };
    }
    case "Remove":
      return { ...acting(at, node), verb: node.verb, objects: partsOf(at, node), tools: lowerTools(scope, node.tools) };
    case "Tighten":
      return tightenOf(at, node);
    case "Loosen": {
      const back = lowerOptional(scope, node.back, "angle");
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        back,
        setBack: node.back !== undefined,
        reverse: node.reverse,
        tools: lowerTools(scope, node.tools),
      };
    }
    case "Heat": {
      const to = lowerOptional(scope, node.range, "temperature");
      const by = lowerOptional(scope, node.change, "temperature difference");
      const objects = partsOf(at, node);
      // How hot it is then cannot be said.
      if (to === null && by === null) at.doubtful.push(...objects.flatMap(({ thing }) => thing ?? []));
      return {
        ...acting(at, node),
        verb: node.verb,
        objects,
        to,
        by,
        tools: lowerTools(scope, node.tools),
      };
    }
    case "Wait": {
      const until = node.condition === undefined ? null : lowerCondition(scope, node.condition);
      return {
        kind: "action",
        place: span,
        span,
        verb: node.verb,
        time: lowerOptional(scope, node.time, "time"),
        until,
      };
    }
    case "Treat":
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        with: node.consumable === undefined ? null : resolve(scope, node.consumable, ["consumable"]),
      };
    case "Apply":
      return {
        ...acting(at, node),
        verb: node.verb,
        dose: doseOf(at, node),
        objects: partsOf(at, node),
        cure: lowerOptional(scope, node.cure, "time"),
      };
    case "Drain":
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        into: node.vessel === undefined ? null : resolve(scope, node.vessel, ["tool", "part"]),
      };
    case "Fill":
      return { ...acting(at, node), verb: node.verb, objects: partsOf(at, node), dose: doseOf(at, node) };
    case "Turn":
      return turnOf(at, node);
    case "Align": {
      const other = targetOf(at, node.other, ["part"], "action");
      return { ...acting(at, node), verb: node.verb, objects: partsOf(at, node), other, mark: node.mark ?? null };
    }
    case "Lift": {
      const verb = node.verb === "lift" || node.verb === "support" ? node.verb : "set down";
      return {
        ...acting(at, node),
        verb,
        objects: partsOf(at, node),
        byHand: node.byHand,
        hands: handsOf(scope, node),
        legs: legsOf(scope, node),
        tools: lowerTools(scope, node.tools),
      };
    }
    case "EnergyAction": {
      const objects = node.objects.map((object) => targetOf(at, object, ["energy"], "action"));
      return { ...acting(at, node), verb: node.verb, objects, tools: lowerTools(scope, node.tools) };
    }
    case "Inspect":
      return {
        ...acting(at, node),
        verb: node.verb,
        objects: partsOf(at, node),
        words: node.words ?? null,
        tools: lowerTools(scope, node.tools),
      };
    case "Measure":
      return measureOf(at, node);
    case "Do": {
      const place = placeTo(scope, node, propertySpan(scope, node, "words"));
      return { kind: "action", place, span, verb: node.verb, words: node.words, tools: lowerTools(scope, node.tools) };
    }
    case "Choose":
      return chooseOf(at, node);
    case "Perform":
      return lowerPerform(scope, node);
  }
}

const PARTS_AND_PLACES: readonly Sort[] = ["part", "ring", "holes"];

/** From the verb to the last object. */
function acting(
  at: Acting,
  node: ast.Action & { readonly objects: readonly ast.Target[] },
): { readonly kind: "action"; readonly place: Span; readonly span: Span } {
  const last = node.objects[node.objects.length - 1];
  return {
    kind: "action",
    place: last === undefined ? spanOf(at.scope, node) : spanFrom(at.scope, node, last),
    span: spanOf(at.scope, node),
  };
}

function placeTo(scope: Scope, node: ast.Action, end: Span): Span {
  return { ...spanOf(scope, node), end: end.end };
}

function partsOf(at: Acting, node: { readonly objects: readonly ast.Target[] }): readonly Target[] {
  return node.objects.map((object) => targetOf(at, object, ["part"], "action"));
}

function targetOf(at: Acting, node: ast.Target, sorts: readonly Sort[], use: IndexUse): Target {
  const { target, likely } = lowerTarget(at.scope, node, sorts, partOrPlace(at.scope, node, use));
  at.doubtful.push(...likely);
  return target;
}

/** `in Seat` may leave out which place, `on Foot` may not leave out which part. */
function partOrPlace(scope: Scope, node: ast.Target, use: IndexUse): IndexUse {
  return use === "place" && ast.isPart(meant(scope, node.thing)) ? "action" : use;
}

function tightenOf(at: Acting, node: ast.Tighten): Action {
  const { scope } = at;
  const [first, last] = [node.stages[0], node.stages[node.stages.length - 1]];
  return {
    ...acting(at, node),
    verb: node.verb,
    objects: partsOf(at, node),
    pattern: node.pattern ?? null,
    byHand: node.byHand,
    stages: lowerStages(scope, node.stages, "torque").filter((stage) => stage !== null),
    stagesSpan: first === undefined || last === undefined ? null : spanFrom(scope, first, last),
    angle: lowerOptional(scope, node.angle, "angle"),
    toSeat: node.toSeat,
    tools: lowerTools(scope, node.tools),
  };
}

function handsOf(scope: Scope, { reach, height, endHeight, turned }: ast.Lift): Hands | null {
  const hands = {
    reach: lowerOptional(scope, reach, "length"),
    height: lowerOptional(scope, height, "length"),
    endHeight: lowerOptional(scope, endHeight, "length"),
    turned: lowerOptional(scope, turned, "angle"),
  };
  return Object.values(hands).every((value) => value === null) ? null : hands;
}

function legsOf(scope: Scope, node: ast.Lift): SlingLegs | null {
  if (node.legs === undefined) return null;
  const count = propertySpan(scope, node, "legs");
  return {
    count: wholeNumberWithin(scope, count, node.legs, 1, MOST_INSTANCES),
    angle: lowerOptional(scope, node.angle, "angle"),
    span: { ...count, end: node.angle === undefined ? count.end : spanOf(scope, node.angle).end },
  };
}

function doseOf(at: Acting, node: ast.Apply | ast.Fill) {
  const amount = lowerOptional(at.scope, node.amount, ["mass", "volume"]);
  return { consumable: resolve(at.scope, node.consumable, ["consumable"]), amount };
}

/** `turn Seat[3] to 6 o'clock`, or `turn Seat to put Seat[3] at 6 o'clock`. */
function turnOf(at: Acting, node: ast.Turn): Action {
  const { scope } = at;
  const object = targetOf(at, node.ring, ["ring"], node.place === undefined ? "action" : "place");
  const put = node.place === undefined ? null : targetOf(at, node.place, ["ring"], "action");
  const clock = lowerOptional(scope, node.clock, "clock position");
  const span = spanOf(scope, node);
  const place = spanFrom(scope, node, node.ring);
  return {
    kind: "action",
    place,
    span,
    verb: node.verb,
    objects: [object],
    put,
    clock,
    tools: lowerTools(scope, node.tools),
  };
}

function measureOf(at: Acting, node: ast.Measure): Action {
  const { scope } = at;
  const reading = (scope.lowering.records.get(node) as Reading | undefined) ?? null;
  const expect = reading === null ? lowerOptional(scope, node.expect, null) : workOut(scope, node);
  const place = placeTo(scope, node, propertySpan(scope, node, "words"));
  return {
    kind: "action",
    place,
    span: spanOf(scope, node),
    verb: node.verb,
    reading,
    words: node.words,
    expect,
    record: node.record,
    tools: lowerTools(scope, node.tools),
  };
}

function chooseOf(at: Acting, node: ast.Choose): Action {
  const { scope } = at;
  const subject = targetOf(at, node.subject, ["part", "value"], "condition");
  const reading = resolve(scope, node.reading, ["reading"]);
  const measure = meant(scope, node.reading);
  const kind = ast.isMeasure(measure) ? (workOut(scope, measure)?.quantity.kind ?? null) : null;
  const ranges = node.rows.map((row) => lowerValue(scope, row.range, kind));
  // What is left is a reading less a value: all three are of one kind.
  const ofReading = kind ?? ranges[0]?.quantity.kind ?? null;
  const ofValue = node.leaving === undefined ? null : ofReading;
  const rows = node.rows.map((row, nth): ChooseRow => {
    const range = ranges[nth] ?? null;
    const result =
      row.target === undefined
        ? row.value === undefined
          ? null
          : lowerLiteral(scope, row.value, ofValue)
        : targetOf(at, row.target, ["part", "value"], "condition");
    return { range, result, span: spanOf(scope, row) };
  });
  return {
    kind: "action",
    place: spanFrom(scope, node, node.subject),
    span: spanOf(scope, node),
    verb: node.verb,
    subject,
    reading,
    // Less than nothing remains where parts are to be squeezed.
    leaving: node.leaving === undefined ? null : lowerValue(scope, node.leaving, ofReading, null, true),
    rows,
  };
}
