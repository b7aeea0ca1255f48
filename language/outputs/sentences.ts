// An action or check as plain instructions for the bench. The words come from the catalogue; knows no format.
import type { Tool, Value } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import type { Action, Check, ChooseRow, SlingLegs, TightenAction, ToolUse } from "#model/procedure.ts";
import type { Role } from "#quantity/display.ts";
import { conditionClause } from "./conditions.ts";
import { type CircleFigure, orderFigure } from "./drawings/circle-figure.ts";
import type { ToolStocks } from "./stock.ts";
import { thingsPhrase } from "./things.ts";
import { inIndexOrder, type Pattern, tighteningOrder } from "./tightening.ts";
import { workedOutText } from "./worked-out.ts";
import { settingWords } from "./wrench-setting.ts";
import type { Writer } from "./writer.ts";

/** What is to be done, and what has to stand beside it. */
export interface Sentence {
  readonly text: string;
  /** The values of each round, where there are several. */
  readonly rounds: readonly string[];
  /** More that belongs to it, each a sentence or a row. */
  readonly details: readonly string[];
  /** The places it goes round, in their order. */
  readonly figure?: CircleFigure;
}

/**
 * @param performed the title of the procedure that `perform` names
 * @param stock the crib that tools are taken from
 */
export function actionSentence(
  line: ExpandedAction,
  writer: Writer,
  performed: string | null = null,
  stock: ToolStocks | null = null,
): Sentence {
  const { action } = line;
  if (action.verb === "tighten") return tightenSentence(line, action, writer, stock);
  if (action.verb === "choose") {
    const { leaving, rows } = action;
    const left = leaving === null ? [] : [writer.words.actions.leaving(valueText(leaving, "must be met", writer))];
    return plain(chooseText(line, action, writer), [...rows.map((row) => rowText(row, writer)), ...left]);
  }
  if (action.verb === "loosen" && action.reverse) {
    const { objects, ...beside } = inOrder(line, "reverse", writer);
    return { text: actionText({ ...line, objects }, writer, performed), rounds: [], ...beside };
  }
  if (action.verb === "apply") {
    const { cure } = action;
    const own = cure ?? action.dose.consumable?.cure ?? null;
    const say = cure === null ? writer.words.actions.cures : writer.words.actions.cure;
    return plain(
      actionText(line, writer, performed),
      own === null ? [] : [say(valueText(own, "at least safe", writer))],
    );
  }
  if (action.verb === "align" && action.mark !== null) {
    return plain(actionText(line, writer, performed), [writer.words.actions.mark(action.mark)]);
  }
  return plain(actionText(line, writer, performed), []);
}

/** What a check asks; its limits stand apart, in a field. */
export function checkSentence(check: Check, writer: Writer): string {
  return writer.words.actions.check(unended(check.words), withTools(check.tools, writer));
}

/** Tools in one phrase: `the torque wrench and the crowfoot adapter`. */
export function toolsPhrase(tools: readonly Tool[], writer: Writer): string {
  const things = tools.map((thing): Thing => ({ kind: "other", thing, span: thing.span }));
  return thingsPhrase(things, writer);
}

export function valueText(value: Value, role: Role, writer: Writer): string {
  return value.workedOut === undefined
    ? writer.value(value.quantity, role)
    : workedOutText(value, value.workedOut, writer);
}

function stageTexts(stages: readonly Value[], writer: Writer): readonly string[] {
  const shown = writer.alike(
    stages.map((stage) => stage.quantity),
    "must be met",
  );
  return stages.map((stage, at) =>
    stage.workedOut === undefined ? (shown[at] ?? "") : workedOutText(stage, stage.workedOut, writer),
  );
}

function plain(text: string, details: readonly string[]): Sentence {
  return { text, rounds: [], details };
}

function actionText(line: ExpandedAction, writer: Writer, performed: string | null): string {
  const { action } = line;
  const say = writer.words.actions;
  const what = thingsPhrase(line.objects, writer);
  const tools = "tools" in action ? withTools(action.tools, writer) : "";
  switch (action.verb) {
    case "install": {
      const clock = action.clock === null ? null : valueText(action.clock, "must be met", writer);
      return say.install(
        thingsPhrase(line.objects, writer, action.fresh),
        wherePhrase(line, action.relation, writer),
        clock,
        tools,
      );
    }
    case "press":
      return say.press(
        thingsPhrase(line.objects, writer, action.fresh),
        wherePhrase(line, action.relation, writer) ?? "",
        tools,
      );
    case "remove":
      return say.remove(what, tools);
    case "discard":
      return say.discard(what, tools);
    case "loosen":
      return action.back === null
        ? say.loosen(what, action.reverse, tools)
        : say.turnBack(what, valueText(action.back, "nominal", writer), tools);
    case "heat":
    case "cool":
      return temperatureText(action, what, tools, writer);
    case "wait":
      if (line.until !== null) return say.waitUntil(conditionClause(line.until, writer));
      return say.wait(action.time === null ? "" : valueText(action.time, "at least safe", writer));
    case "clean":
      return say.clean(what, action.with?.title ?? null);
    case "lubricate":
      return say.lubricate(what, action.with?.title ?? null);
    case "apply":
      return say.apply(dosePhrase(action.dose, writer), what);
    case "fill":
      return say.fill(what, dosePhrase(action.dose, writer));
    case "drain":
      return say.drain(what, action.into === null ? null : writer.words.subject(action.into.title));
    case "bleed":
      return say.bleed(what, action.into === null ? null : writer.words.subject(action.into.title));
    case "turn":
      return turnText(line, action.clock, what, tools, writer);
    case "align":
      return say.align(what, line.second === null ? action.other.name : thingsPhrase([line.second], writer));
    case "lift":
      return say.lift(what, heldText(action, tools, writer));
    case "support":
      return say.support(what, heldText(action, tools, writer));
    case "set down":
      return say.setDown(what);
    case "isolate":
      return say.isolate(what, tools);
    case "release":
      return say.release(what, tools);
    case "prove":
      return say.prove(what, tools);
    case "restore":
      return say.restore(what, tools);
    case "inspect":
      return action.words === null ? say.inspect(what, tools) : say.inspectFor(what, unended(action.words), tools);
    case "measure":
      return say.measure(unended(action.words), tools);
    case "do": {
      const words = writer.words.sentence(action.words);
      return action.tools.length === 0
        ? words
        : `${words} ${say.use(
            toolsPhrase(
              action.tools.map((use) => use.tool),
              writer,
            ),
          )}`;
    }
    case "perform":
      return say.perform(performed ?? action.procedure?.name ?? "");
    case "tighten":
    case "choose":
      return "";
  }
}

/** With which hands, or on which legs. */
function heldText(
  { byHand, hands, legs }: Extract<Action, { verb: "lift" | "support" | "set down" }>,
  tools: string,
  writer: Writer,
): string {
  const say = writer.words.actions;
  if (!byHand) return legs === null ? tools : `${tools}${legsText(legs, writer)}`;
  if (hands === null) return say.byHand;
  const [reach, height, endHeight, turned] = [hands.reach, hands.height, hands.endHeight, hands.turned].map((value) =>
    value === null ? null : valueText(value, "occurs", writer),
  );
  return `${say.byHand}${say.hands({ reach, height, endHeight, turned })}`;
}

function legsText({ count, angle }: SlingLegs, writer: Writer): string {
  if (count === null || angle === null) return "";
  return writer.words.actions.onLegs(String(count), valueText(angle, "occurs", writer));
}

/** One value stands in the sentence; several become rounds, each with a tick of its own. */
function tightenSentence(
  line: ExpandedAction,
  action: TightenAction,
  writer: Writer,
  stock: ToolStocks | null,
): Sentence {
  const say = writer.words.actions;
  const rounds = stageTexts(action.stages, writer);
  const how = [
    action.pattern === null ? "" : say.pattern[action.pattern],
    action.byHand ? say.byHand : "",
    rounds.length === 1 ? say.stage(rounds[0] ?? "") : rounds.length > 1 ? say.rounds(rounds.length) : "",
    action.angle === null ? "" : say.thenTurn(valueText(action.angle, "must be met", writer)),
    action.toSeat ? say.toSeat : "",
  ].join("");
  const { objects, details, ...beside } = inOrder(line, action.pattern, writer);
  const setting = settingWords(line, action, writer, stock);
  return {
    text: say.tighten(thingsPhrase(objects, writer), how, withTools(action.tools, writer)),
    rounds: rounds.length > 1 ? rounds.map((round, at) => `${round}${setting.rounds[at] ?? ""}`) : [],
    details: [...details, ...setting.details],
    ...beside,
  };
}

/** The order stands apart, in words and drawn, so that the numbers in the sentence can stand in theirs. */
function inOrder(
  { objects }: ExpandedAction,
  pattern: Pattern | null,
  writer: Writer,
): Pick<Sentence, "details" | "figure"> & Pick<ExpandedAction, "objects"> {
  const order = tighteningOrder(objects, pattern);
  const [first] = objects;
  if (order === null || first?.kind !== "part") return { objects, details: [] };
  const figure = orderFigure(first.part, order, pattern === "reverse", writer);
  return {
    objects: inIndexOrder(objects),
    // `1 – 5 – 3 – 7 – …`
    details: [writer.words.actions.positions(writer.words.sequence(order.map(String)))],
    ...(figure === null ? {} : { figure }),
  };
}

function temperatureText(
  action: Action & { readonly verb: "heat" | "cool" },
  what: string,
  tools: string,
  writer: Writer,
): string {
  const say = writer.words.actions;
  const [to, by] = action.verb === "heat" ? [say.heatTo, say.heatBy] : [say.coolTo, say.coolBy];
  if (action.to !== null) return to(what, valueText(action.to, "must be met", writer), tools);
  return by(what, action.by === null ? "" : valueText(action.by, "must be met", writer), tools);
}

function turnText(line: ExpandedAction, clock: Value | null, what: string, tools: string, writer: Writer): string {
  const at = clock === null ? "" : valueText(clock, "must be met", writer);
  const [object] = line.objects;
  if (line.second !== null || object?.kind !== "place") {
    const place = line.second?.kind === "place" ? ownPosition(line.second, writer) : what;
    return writer.words.actions.turn(what, place, at, tools);
  }
  // `turn Seat[3] to 6 o'clock` turns the ring, and brings its position there.
  const ring = thingsPhrase([{ ...object, position: null }], writer);
  return writer.words.actions.turn(ring, ownPosition(object, writer), at, tools);
}

function ownPosition(place: Thing & { readonly kind: "place" }, writer: Writer): string {
  return place.position === null ? thingsPhrase([place], writer) : writer.words.ownPosition(String(place.position));
}

function chooseText(line: ExpandedAction, action: Action & { readonly verb: "choose" }, writer: Writer): string {
  const [object] = line.objects;
  const what =
    object === undefined
      ? writer.words.subject(action.subject.thing?.title ?? action.subject.name)
      : thingsPhrase([object], writer);
  return writer.words.actions.choose(what, writer.words.subject(action.reading?.title ?? ""));
}

function rowText(row: ChooseRow, writer: Writer): string {
  // Rows meet at their ends, and still have to when converted.
  const range = row.range === null ? "" : valueText(row.range, "nominal", writer);
  return writer.words.actions.chooseRow(range, choiceResult(row.result, writer));
}

/** What a row of `choose` selects. */
export function choiceResult(result: ChooseRow["result"], writer: Writer): string {
  if (result === null) return "";
  return "quantity" in result ? valueText(result, "nominal", writer) : (result.thing?.title ?? result.name);
}

function wherePhrase(line: ExpandedAction, relation: "in" | "on" | "over" | null, writer: Writer): string | null {
  if (line.second === null || relation === null) return null;
  return writer.words.actions.where[relation](thingsPhrase([line.second], writer));
}

function dosePhrase(
  dose: { readonly consumable: { readonly title: string } | null; readonly amount: Value | null },
  writer: Writer,
): string {
  const title = dose.consumable?.title ?? "";
  return dose.amount === null ? title : writer.words.actions.dose(valueText(dose.amount, "nominal", writer), title);
}

function withTools(uses: readonly ToolUse[], writer: Writer): string {
  if (uses.length === 0) return "";
  return writer.words.actions.withTools(
    toolsPhrase(
      uses.map((use) => use.tool),
      writer,
    ),
  );
}

/** Own words that a sentence goes on after: without their final stop. */
function unended(words: string): string {
  return words.trim().replace(/\.$/, "");
}
