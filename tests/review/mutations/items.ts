// Changes of parts, tools, consumables, sources and options: `items`.
import * as ast from "#grammar/generated/ast.ts";
import { change, cut, inside, type Mutate, nodesIn, rangeOf, somewhere, textOf } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { procedureOf, stepOf, stepsIn, stepsSaying, taskOf } from "./place.ts";

/** In the text of each action that stands in a step. */
const inAction = (pattern: RegExp, by: string): Mutate =>
  somewhere(ast.isStep, (step) => change(step, inside(step, pattern, by)));

export const itemKinds: readonly Kind[] = [
  {
    name: "change a tool",
    group: "items",
    mutate: somewhere(ast.isStep, (step, _, random) => {
      const swaps = random.shuffled([
        [/with Wrench60\b/, "with Wrench100"],
        [/with Wrench100\b/, "with Wrench200"],
        [/with Wrench25\b/, "with Wrench60"],
        [/with DialGauge\b/, "with DepthGauge"],
        [/with Hoist\b/, "with Press"],
        [/with Heater\b/, "with Press"],
      ] as const);
      const edit = swaps.map(([from, to]) => inside(step, from, to)).find((one) => one !== null);
      return change(step, edit ?? null);
    }),
  },
  {
    name: "drop a tool",
    group: "items",
    mutate: inAction(
      / with (Wrench\d+|DialGauge|Feeler|DepthGauge|Puller|Heater|TensionGauge|PressureGauge)( \+ \w+)?/,
      "",
    ),
  },
  { name: "add an adapter", group: "items", mutate: inAction(/with (Wrench\d+)$/, "with $1 + Crowfoot") },
  {
    name: "add a consumable",
    group: "items",
    from: inAction(/clean (\w+) with Cleaner/, "clean $1"),
    mutate: inAction(/clean (\w+)(?! with|,)\b/, "clean $1 with Cleaner"),
  },
  { name: "drop a consumable", group: "items", mutate: inAction(/(clean \w+) with Cleaner/, "$1") },
  {
    name: "change a consumable",
    group: "items",
    mutate: somewhere(ast.isStep, (step) =>
      change(
        step,
        inside(step, /with Grease/, "with Sealant") ??
          inside(step, /of BearingOil/, "of Cleaner") ??
          inside(step, /of Sealant/, "of Grease"),
      ),
    ),
  },
  {
    name: "change the part acted on",
    group: "items",
    mutate: somewhere(ast.isStep, (step, sample, random) => {
      const [only, ...others] = step.lines;
      if (only === undefined || others.length > 0 || !(ast.isInspect(only) || ast.isTreat(only) || ast.isLift(only)))
        return null;
      const [object] = only.objects;
      if (object === undefined || only.objects.length > 1) return null;
      const other = random
        .shuffled(nodesIn(sample.file, ast.isPart))
        .find(({ name, instances }) => instances === undefined && !textOf(step).includes(name));
      return other === undefined ? null : change(step, { ...rangeOf(object), text: other.name });
    }),
    uncovers: "the other part may be too heavy, sharp or hot for what stands at its task",
  },
  {
    name: "change the instance acted on",
    group: "items",
    mutate: inAction(/\[all\]/, "[1]"),
    // Fewer are done: an action dropped for some of them.
    orIn: ["order"],
  },
  {
    name: "change the section of a source",
    group: "items",
    mutate: somewhere(ast.isCitation, (node, sample) =>
      change(citedBy(node, sample), inside(node, /"[^"]*"/, '"9.9"')),
    ),
  },
  {
    name: "drop a source",
    group: "items",
    mutate: somewhere(ast.isCitationLine, (line, sample) => {
      const step = stepOf(line);
      return step !== undefined && step.lines.length < 2
        ? null
        : change(step ?? taskOf(line) ?? line, cut(line, sample));
    }),
  },
  {
    name: "change the revision it is based on",
    group: "items",
    mutate: somewhere(ast.isBasedLine, (line) => change(procedureOf(line) ?? line, inside(line, /"\d+"/, '"2"'))),
  },
  {
    name: "change what it applies to",
    group: "items",
    // The contract names no group for the head of a procedure; serial numbers are values, a model is a word.
    orIn: ["values", "words"],
    mutate: somewhere(ast.isAppliesLine, (line) =>
      change(procedureOf(line) ?? line, inside(line, /1211/, "1300") ?? inside(line, /"(\w+-\d+)"/, '"$1 B"')),
    ),
  },
  {
    name: "add a choice to an option",
    group: "items",
    mutate: somewhere(ast.isOption, (option, sample) =>
      change([option, ...stepsSaying(option.name, sample)], inside(option, /\s*\}$/, " later }")),
    ),
  },
  {
    name: "change the choice a branch is for",
    group: "items",
    // Also `order`: what is done when.
    orIn: ["order"],
    mutate: somewhere(ast.isWhen, (when) =>
      change(
        when,
        inside(when, /^(when [^{]*)Extent is (Full|Reseal)/, "$1Extent is SealsAndDisc") ??
          inside(when, /^(when [^{]*)is yes/, "$1is no"),
      ),
    ),
  },
  {
    name: "change a part's material",
    group: "items",
    mutate: somewhere(ast.isMaterialUse, (line, sample) => {
      const part = line.$container;
      const steps = ast.isPart(part) ? stepsSaying(part.name, sample) : [];
      return change(
        [part, ...steps],
        inside(line, /CarbonSteel/, "Bronze") ?? inside(line, /GreyIron|Bronze/, "CarbonSteel"),
      );
    }),
  },
  {
    name: "change what a part needs",
    group: "items",
    // Also `order`: what must come before it.
    orIn: ["order"],
    mutate: somewhere(ast.isRelationProperty, (line, sample) => {
      const part = line.$container;
      const edit = inside(line, /^needs (\w+), .*/, "needs $1");
      return ast.isPart(part) ? change([part, ...stepsSaying(part.name, sample)], edit) : null;
    }),
  },
  {
    name: "change who does it",
    group: "items",
    // No group names a role; who may work on a supply is a matter of safety too.
    orIn: ["safety"],
    mutate: somewhere(ast.isByLine, (line) => change(stepOf(line) ?? line, inside(line, /Electrician/, "Fitter"))),
  },
  {
    name: "change the revision of a shared source",
    group: "items",
    library: "shop/sources.sprag",
    mutate: somewhere(ast.isSource, (source) =>
      source.name === "PumpManual" ? change(source, inside(source, /"7"/, '"8"')) : null,
    ),
    reaches: { name: /\bbased on PumpManual\b/ },
  },
];

/** The step that cites, or those of the task or that use what the citation stands at. */
function citedBy(
  node: ast.Citation,
  sample: { readonly file: ast.File; readonly path: string; readonly text: string },
) {
  const step = stepOf(node);
  if (step !== undefined) return [step];
  const task = taskOf(node);
  if (task !== undefined) return [task, ...stepsIn(task)];
  const declared = nodesIn(
    sample.file,
    (one): one is ast.Part | ast.ValueDeclaration | ast.Fit =>
      ast.isPart(one) || ast.isValueDeclaration(one) || ast.isFit(one),
  ) // the one it stands in
    .find((one) => rangeOf(one).start <= rangeOf(node).start && rangeOf(node).end <= rangeOf(one).end);
  if (declared === undefined) return [node];
  return [declared, ...stepsSaying(ast.isFit(declared) ? textOf(declared.outer) : declared.name, sample)];
}
