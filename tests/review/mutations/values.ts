// Changes of quantities: `values`, also where a value is said in another unit and stays the same.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { type Change, change, cut, inside, type Mutate, type Sample, somewhere, textOf } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { stepOf, stepsSaying } from "./place.ts";

const NUMBER = String.raw`\d+(?:\.\d+)?`;

/** The number changed by some of its last digits, written with as many. */
function other(number: string, up = true): string {
  const decimals = number.split(".")[1]?.length ?? 0;
  const digit = 10 ** -decimals;
  const by = Math.max(digit, Math.round((Number(number) * 0.07) / digit) * digit);
  return (Number(number) + (up ? by : -by)).toFixed(decimals);
}

/** The first number behind what `ahead` fits, changed. */
function otherNumber(node: AstNode, ahead: string, up = true) {
  const number = new RegExp(String.raw`^[\s\S]*?${ahead}(${NUMBER})`).exec(textOf(node))?.[1];
  return number === undefined ? null : inside(node, new RegExp(`(${ahead})${NUMBER}`), `$1${other(number, up)}`);
}

/** The step, or those that use what is declared. */
function placeOf(node: AstNode, sample: Sample): readonly AstNode[] {
  const step = stepOf(node);
  if (step !== undefined) return [step];
  for (let one: AstNode | undefined = node; one !== undefined; one = one.$container) {
    if (ast.isFit(one)) return [one, ...stepsSaying(textOf(one.outer), sample)];
    if (ast.isValueDeclaration(one) || ast.isPart(one)) return [one, ...stepsSaying(one.name, sample)];
    if (ast.isProcedure(one)) return [one];
  }
  return [node];
}

/** The first number of a node that the pattern fits, changed. */
const numberIn = (isNode: (node: unknown) => node is AstNode, fits: RegExp, ahead = "", up = true): Mutate =>
  somewhere(isNode, (node, sample) =>
    fits.test(textOf(node)) ? change(placeOf(node, sample), otherNumber(node, ahead, up)) : null,
  );

/** One spelling of a value for another that says the same, or not. */
const respelt = (
  isNode: (node: unknown) => node is AstNode,
  spellings: readonly (readonly [RegExp, string | ((whole: string, ...groups: string[]) => string)])[],
): Mutate =>
  somewhere(isNode, (node, sample): Change | null => {
    for (const [pattern, by] of spellings) {
      const found = pattern.exec(textOf(node));
      if (found === null) continue;
      const text = typeof by === "string" ? by : by(...([...found] as [string, ...string[]]));
      return change(placeOf(node, sample), inside(node, pattern, text));
    }
    return null;
  });

const isLimited = (node: unknown): node is ast.Check | ast.Measure => ast.isCheck(node) || ast.isMeasure(node);
const isTimed = (node: unknown): node is AstNode => ast.isTakesLine(node) || ast.isWithinLine(node) || ast.isWait(node);
const isTorque = (node: unknown): node is AstNode => ast.isTighten(node) || ast.isValueDeclaration(node);

const LBF_IN = 8.850745767;

export const valueKinds: readonly Kind[] = [
  { name: "change a torque in its step", group: "values", mutate: numberIn(ast.isTighten, /\d ± .* N·m/, "to ") },
  { name: "change a named torque", group: "values", mutate: numberIn(ast.isValueDeclaration, /N·m/, "= ") },
  { name: "change only a torque's tolerance", group: "values", mutate: numberIn(isTorque, /± [\d.]+ N·m/, "± ") },
  { name: "change a share of a torque", group: "values", mutate: numberIn(ast.isTighten, /\d %/, "to ") },
  { name: "change the angle after a torque", group: "values", mutate: numberIn(ast.isTighten, /then/, "then ") },
  { name: "raise a limit", group: "values", mutate: numberIn(isLimited, /expect/, "expect [^\\n]*?") },
  { name: "lower a limit", group: "values", mutate: numberIn(isLimited, /expect/, "expect [^\\n]*?", false) },
  {
    name: "change a limit in another unit",
    group: "values",
    mutate: respelt(isLimited, [
      [/at most ([\d.]+) mm/, (_, mm = "0") => `at most ${Math.round(Number(mm) * 1200)} µm`],
      [
        /([\d.]+) \.\. ([\d.]+) mm/,
        (_, low = "0", high = "0") => `${(Number(low) / 24).toFixed(4)} .. ${(Number(high) / 24).toFixed(4)} in`,
      ],
    ]),
  },
  {
    name: "restate a limit in another unit",
    group: "values",
    says: "restated",
    mutate: respelt(isLimited, [
      [/at most ([\d.]+) mm/, (_, mm = "0") => `at most ${Math.round(Number(mm) * 1000)} µm`],
      [
        /([\d.]+) \.\. ([\d.]+) mm/,
        (_, low = "0", high = "0") => `${Math.round(Number(low) * 1000)} .. ${Math.round(Number(high) * 1000)} µm`,
      ],
      [/380 \.\. 440 N/, "0.380 .. 0.440 kN"],
    ]),
  },
  {
    name: "restate a torque within its last digit",
    group: "values",
    says: "restated",
    mutate: respelt(ast.isTighten, [
      [
        /([\d.]+) ± ([\d.]+) N·m/,
        (_, nominal = "0", off = "0") =>
          `${(Number(nominal) * LBF_IN).toFixed(2)} ± ${(Number(off) * LBF_IN).toFixed(2)} lbf·in`,
      ],
    ]),
  },
  {
    name: "restate a time in another unit",
    group: "values",
    says: "restated",
    mutate: respelt(isTimed, [
      [/(\d+) min/, (_, min = "0") => `${Number(min) * 60} s`],
      [/60 s/, "1 min"],
    ]),
  },
  {
    name: "restate a heating range in kelvin",
    group: "values",
    says: "restated",
    mutate: respelt(ast.isHeat, [
      [
        /(-?\d+) \.\. (-?\d+) °C/,
        (_, low = "0", high = "0") => `${(Number(low) + 273.15).toFixed(2)} .. ${(Number(high) + 273.15).toFixed(2)} K`,
      ],
      [/by 115 K/, "by 115 °C"],
    ]),
  },
  {
    name: "drop an upper limit",
    group: "values",
    mutate: respelt(isLimited, [
      [/expect ([\d.]+) \.\. [\d.]+ (\S+)/, (_, low = "", unit = "") => `expect at least ${low} ${unit}`],
    ]),
  },
  {
    name: "drop a limit",
    group: "values",
    mutate: respelt(ast.isCheck, [
      [/ expect at most [\d.]+ mm/, ""],
      [/ expect [\d.]+ \.\. [\d.]+ N/, ""],
    ]),
  },
  { name: "change a heating range", group: "values", mutate: numberIn(ast.isHeat, / /, "(?:\\.\\. -?|by )", false) },
  {
    name: "change a fit's interference",
    group: "values",
    mutate: numberIn(ast.isQuantityProperty, /^interference/, "\\.\\. "),
  },
  {
    name: "change a fit's tolerance",
    group: "values",
    from: somewhere(ast.isQuantityProperty, (node) =>
      change(node, inside(node, /^interference .*/, 'tolerance "H7/s6"')),
    ),
    mutate: somewhere(ast.isTextProperty, (node, sample) =>
      change(placeOf(node, sample), inside(node, /"H7\/s6"/, '"H7/r6"')),
    ),
  },
  { name: "change a slip clearance", group: "values", mutate: numberIn(ast.isQuantityProperty, /^slip/) },
  { name: "change takes", group: "values", mutate: numberIn(ast.isTakesLine, /takes/) },
  { name: "change within", group: "values", mutate: numberIn(ast.isWithinLine, /within/) },
  {
    name: "drop within",
    group: "values",
    // A time limit and an order at once.
    orIn: ["order"],
    mutate: somewhere(ast.isWithinLine, (line, sample) => change(placeOf(line, sample), cut(line, sample))),
  },
  { name: "change cure", group: "values", mutate: numberIn(ast.isApply, /cure/, "cure ") },
  { name: "change a wait", group: "values", mutate: numberIn(ast.isWait, /min|most/) },
  {
    name: "change an amount",
    group: "values",
    // Also the amounts of the kit, so `items`.
    orIn: ["items"],
    mutate: numberIn((node): node is AstNode => ast.isFill(node) || ast.isApply(node), / of /, "(?:with|apply) "),
  },
  { name: "change what is chosen by a reading", group: "values", mutate: numberIn(ast.isChooseRow, /:/, ": ") },
  {
    name: "change the limit that a branch is taken by",
    group: "values",
    // A bound of a condition: what is done when.
    orIn: ["order"],
    mutate: somewhere(ast.isWhen, (when) => change(when, otherNumber(when, "^when \\w+ at (?:least|most) "))),
  },
  { name: "change a needed temperature", group: "values", orIn: ["order"], mutate: numberIn(ast.isNeedsLine, /°C/) },
  { name: "change a range to be recorded", group: "values", mutate: numberIn(ast.isRecordLine, /\.\./, "\\.\\. ") },
  { name: "change the ambient range", group: "values", mutate: numberIn(ast.isAmbientLine, /°C/, "\\.\\. ") },
  {
    name: "change a mass",
    group: "values",
    // A part's data: `items` names parts.
    orIn: ["items"],
    mutate: numberIn(ast.isQuantityProperty, /^mass/),
  },
  { name: "change a declared torque", group: "values", mutate: numberIn(ast.isConditionedProperty, /^torque/) },
  { name: "change a nut factor", group: "values", mutate: numberIn(ast.isConditionedProperty, /^nut factor/) },
  { name: "change a heat limit", group: "values", mutate: numberIn(ast.isQuantityProperty, /^heat limit/) },
];

const ofTool = (name: string, pattern: RegExp, by: string): Mutate =>
  somewhere(ast.isTool, (tool) => (tool.name === name ? change(tool, inside(tool, pattern, by)) : null));

export const libraryValueKinds: readonly Kind[] = [
  {
    name: "widen a tool's range",
    group: "values",
    library: "shop/tools.sprag",
    mutate: ofTool("Wrench60", /torque 8 \.\. 60/, "torque 5 .. 65"),
    reaches: { name: /\bWrench60\b/ },
  },
  {
    name: "change an adapter's offset",
    group: "values",
    library: "shop/tools.sprag",
    mutate: ofTool("Crowfoot", /50 mm/, "60 mm"),
    reaches: { name: /\bCrowfoot\b/ },
  },
  {
    name: "change a gauge's range in another unit",
    group: "values",
    library: "shop/tools.sprag",
    mutate: ofTool("Feeler", /0\.03 \.\. 1 mm/, "20 .. 1000 µm"),
    reaches: { name: /\bFeeler\b/ },
  },
  {
    name: "restate a gauge's range",
    group: "values",
    says: "restated",
    library: "shop/tools.sprag",
    mutate: ofTool("Feeler", /0\.03 \.\. 1 mm/, "30 .. 1000 µm"),
    reaches: { name: /\bFeeler\b/ },
  },
  {
    name: "change a material's heat limit",
    group: "values",
    library: "shop/materials.sprag",
    mutate: somewhere(ast.isMaterial, (one) =>
      one.name === "CarbonSteel" ? change(one, inside(one, /200 °C/, "210 °C")) : null,
    ),
    reaches: { name: /\bCarbonSteel\b/, only: /\bheat / },
  },
  {
    name: "change a shared torque",
    group: "values",
    library: "shop/globe-valve.sprag",
    mutate: somewhere(ast.isValueDeclaration, (one) => change(one, otherNumber(one, "± "))),
    reaches: { name: /\bGlandTorque\b/ },
  },
  {
    name: "change a part's torque of the library",
    group: "values",
    library: "shop/globe-valve.sprag",
    mutate: somewhere(ast.isConditionedProperty, (one) =>
      /^torque/.test(textOf(one)) ? change(one, otherNumber(one, "torque ")) : null,
    ),
    reaches: { name: /\bBonnetScrew\b/ },
  },
];
