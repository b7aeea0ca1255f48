// Which values stand where: in a declaration, in a step's lines, in a condition. Names them as the language does. Knows no
// source and no wording.
import type { CitedText, Conditioned, Declaration, Value } from "#model/declarations.ts";
import type { Action, Condition, Item, Line, Step, TightenAction } from "#model/procedure.ts";

/** A value where it stands. */
export interface Listed {
  /** `heat limit`, `within`: as the language calls it. */
  readonly what: string;
  /** Whose: `Bearing`, `Bearing over Shaft`, the words of a check; empty where it is of the whole. */
  readonly of: string;
  readonly value: Value | CitedText;
  /** Whether it has to have a source: a torque, a heat limit, a fit, a time limit. */
  readonly due: boolean;
}

/** What a declaration gives. A crib says what the shop has, and a reading what is found: neither is worked to. */
export function declaredValues(declared: Declaration): readonly Listed[] {
  const list = (values: Readonly<Record<string, Value | CitedText | null>>, due: readonly string[] = []) =>
    Object.entries(values).flatMap(([what, value]) => given(what, declared.name, value, due.includes(what)));
  switch (declared.kind) {
    case "material":
      return list({ expansion: declared.expansion, "heat limit": declared.heatLimit }, ["heat limit"]);
    case "ring":
      return list({ position: declared.start?.clock ?? null });
    case "part": {
      const { mass, heatLimit, cools, prevailingTorque } = declared;
      return [
        ...list({ mass, "heat limit": heatLimit, cools, "prevailing torque": prevailingTorque }, ["heat limit"]),
        ...conditioned("torque", declared.name, declared.torques, true),
        ...conditioned("nut factor", declared.name, declared.nutFactors, false),
        ...conditioned("friction", declared.name, declared.frictions, false),
      ];
    }
    case "fit": {
      const { diameter, interference, tolerance, slipClearance, length, friction } = declared;
      // One of them speaks for the fit: the one that decides it.
      const deciding = interference !== null ? "interference" : tolerance !== null ? "tolerance" : "diameter";
      return list({ diameter, interference, tolerance, "slip clearance": slipClearance, length, friction }, [deciding]);
    }
    case "tool": {
      const { torque, accuracy, arm, offset, angle, heatsTo, coolsTo, lifts, legLifts, measures, resolution, force } =
        declared.capability;
      return list({
        ...{ torque, accuracy, arm, offset, angle, "heats to": heatsTo, "cools to": coolsTo },
        ...{ lifts, "each leg lifts": legLifts, measures, resolution, force },
      });
    }
    case "consumable": {
      const { flashPoint, heatLimit, cure, density, expands, pressure } = declared;
      return list({ "flash point": flashPoint, "heat limit": heatLimit, cure, density, expands, pressure }, [
        "heat limit",
      ]);
    }
    case "energy":
      return list({
        voltage: declared.voltage,
        pressure: declared.pressure,
        hot: declared.hot,
        stored: declared.stored,
      });
    case "value":
      return list({ value: declared.value });
    case "threshold":
      return list({ threshold: declared.value });
    case "arrangement":
      return list({
        ...{ radius: declared.radius, unbalance: declared.unbalance },
        ...{ speed: declared.speed, mass: declared.mass },
      });
    default:
      return [];
  }
}

function conditioned(what: string, of: string, values: readonly Conditioned[], due: boolean): readonly Listed[] {
  return values.flatMap(({ value }) => given(what, of, value, due));
}

/** What the lines that hold for the whole step give. */
export function stepValues(step: Step): readonly Listed[] {
  const { takes, within, records, needs, gives } = step;
  return [
    ...needs.flatMap((condition) => conditionValues("needs", condition)),
    ...gives.flatMap((condition) => conditionValues("gives", condition)),
    ...records.flatMap(({ label, expect }) => given("record", label, expect)),
    ...given("takes", "", takes),
    ...given("within", within?.step.name ?? "", within?.value ?? null, true),
  ];
}

/** What a line, or a block of steps, gives by itself, without what stands in it. */
export function ownValues(one: Item | Line): readonly Listed[] {
  if (one.kind === "check") return given("expect", one.words, one.expect);
  if (one.kind === "when") return one.arms.flatMap(({ condition }) => conditionValues("when", condition));
  return one.kind === "action" ? actionValues(one) : [];
}

function actionValues(action: Action): readonly Listed[] {
  const of = "objects" in action ? action.objects.map(({ name }) => name).join(", ") : "";
  switch (action.verb) {
    case "install":
      return given("at", of, action.clock);
    case "turn":
      return given("at", action.put?.name ?? of, action.clock);
    case "tighten":
      return [
        // The last stage is the torque; those before it lead up to it.
        ...stagesOf(action).flatMap((stage, at, { length }) => given("torque", of, stage, at === length - 1)),
        ...given("angle", of, action.angle),
      ];
    case "loosen":
      return given("angle", of, action.back);
    case "heat":
    case "cool":
      return [...given(`${action.verb} to`, of, action.to), ...given(`${action.verb} by`, of, action.by)];
    case "wait":
      return [
        ...given("wait", "", action.time),
        ...(action.until === null ? [] : conditionValues("wait until", action.until)),
      ];
    case "apply":
      return [...given("amount", of, action.dose.amount), ...given("cure", of, action.cure)];
    case "fill":
      return given("amount", of, action.dose.amount);
    case "lift":
    case "support": {
      const { reach = null, height = null, endHeight = null, turned = null } = action.hands ?? {};
      return [
        ...given("reach", of, reach),
        ...given("from height", of, height),
        ...given("to height", of, endHeight),
        ...given("turned", of, turned),
        ...given("legs at", of, action.legs?.angle ?? null),
      ];
    }
    case "measure":
      return given("expect", action.words, action.expect);
    case "choose":
      return [
        ...given("leaving", action.subject.name, action.leaving),
        ...action.rows.flatMap(({ range, result }) => [
          ...given("choose by", action.reading?.name ?? "", range),
          ...given("choose", action.subject.name, result !== null && "quantity" in result ? result : null),
        ]),
      ];
    default:
      return [];
  }
}

/** The stages; shares are of what the last one names. */
function stagesOf({ stages }: TightenAction): readonly Value[] {
  const named = stages.at(-1)?.named;
  return stages.map((stage) => (stage.share === undefined || named === undefined ? stage : { ...stage, named }));
}

/** The temperatures, clock positions and readings that a condition asks for. */
export function conditionValues(what: string, condition: Condition): readonly Listed[] {
  switch (condition.form) {
    case "all":
    case "any":
      return condition.operands.flatMap((operand) => conditionValues(what, operand));
    case "not":
      return conditionValues(what, condition.operand);
    case "bound":
      return given(what, condition.subject.name, condition.bound);
    case "clock":
      return given(what, condition.subject.name, condition.clock);
    default:
      return [];
  }
}

/** The value, where there is one. */
export function given(what: string, of: string, value: Value | CitedText | null, due = false): readonly Listed[] {
  return value === null ? [] : [{ what, of, value, due }];
}
