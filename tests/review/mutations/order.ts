// Changes of what is done and when: `order`.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import {
  behind,
  change,
  cut,
  inside,
  type Mutate,
  nodesIn,
  rangeOf,
  replaced,
  type Sample,
  somewhere,
  textOf,
} from "./edit.ts";
import type { Kind } from "./kind.ts";
import { has, isNamed, isPlain, lineInto, nextStep, siblings, stepOf, stepsIn } from "./place.ts";

/** A plain step that nothing else of the file names, for it to go elsewhere. */
const aStep = (make: (step: ast.Step, sample: Sample) => ReturnType<Mutate>): Mutate =>
  somewhere(ast.isStep, (step, sample) => (isPlain(step) && !isNamed(step, sample) ? make(step, sample) : null));

const ADDED = 'step do "Wipe the bench with a dry cloth."';

/** A text that has the option of the branch put in. */
const ASKS_OPTIONS = /\bSteamService is/;

/** A step in a branch of its own. */
const only = (step: ast.Step, condition: string) => replaced(step, `when ${condition} { ${textOf(step)} }`);

const jumps = (node: unknown): node is ast.ReturnJump | ast.GoJump => ast.isReturnJump(node) || ast.isGoJump(node);

/** A condition out of a list of several. */
const oneOut = (isLine: (node: unknown) => node is AstNode & { conditions: readonly AstNode[] }): Mutate =>
  somewhere(isLine, (line) => {
    const at = stepOf(line) ?? line.$container ?? line;
    return line.conditions.length < 2 ? null : change(at, inside(line, /,\s*[^,]+$/, ""));
  });

const UNCOVERS = "it may have stood where the statement of a task held, or have made a hot part or an energy safe";

export const orderKinds: readonly Kind[] = [
  {
    name: "swap two steps",
    group: "order",
    mutate: somewhere(ast.isStep, (step) => {
      const next = nextStep(step);
      const unordered = ast.isAnyOrder(step.$container) || next === undefined;
      return unordered ? null : change([step, next], replaced(step, textOf(next)), replaced(next, textOf(step)));
    }),
    uncovers: UNCOVERS,
  },
  {
    name: "move a step behind its cover",
    group: "order",
    mutate: somewhere(ast.isStep, (step, sample, random) => {
      const hidden = new Set(installed(step));
      const covers = nodesIn(sample.file, ast.isPart).filter((part) =>
        part.properties.some(
          (line) =>
            ast.isRelationProperty(line) &&
            line.keyword === "encloses" &&
            line.targets.some(({ thing }) => hidden.has(thing.$refText)),
        ),
      );
      const closing = random
        .shuffled(stepsIn(sample.file))
        .find((one) => one !== step && covers.some(({ name }) => installed(one).includes(name)));
      const isFit = closing !== undefined && rangeOf(step).end < rangeOf(closing).start && isPlain(step);
      if (!isFit || isNamed(step, sample) || ast.isAnyOrder(step.$container)) return null;
      return change(step, cut(step, sample), behind(closing, textOf(step), sample));
    }),
    uncovers: UNCOVERS,
  },
  {
    name: "add a step",
    group: "order",
    mutate: somewhere(ast.isStep, (step, sample) =>
      ast.isAnyOrder(step.$container) ? null : change([], behind(step, ADDED, sample)),
    ),
  },
  {
    name: "drop a step",
    group: "order",
    mutate: aStep((step, sample) => change(step, cut(step, sample))),
    uncovers: UNCOVERS,
  },
  {
    name: "move a step to another task",
    group: "order",
    mutate: somewhere(ast.isStep, (step, sample, random) => {
      if (!isPlain(step) || isNamed(step, sample) || has(step, ast.isIndexName)) return null;
      const other = random.shuffled(nodesIn(sample.file, ast.isTask)).find((task) => !stepsIn(task).includes(step));
      const last = other?.items.findLast(ast.isStep);
      return last === undefined ? null : change(step, cut(step, sample), behind(last, textOf(step), sample));
    }),
    uncovers: UNCOVERS,
  },
  {
    name: "move a step a few places on",
    group: "order",
    mutate: aStep((step, sample) => {
      const later = siblings(step)
        .slice(siblings(step).indexOf(step) + 2)
        .filter(ast.isStep);
      const goal = ast.isAnyOrder(step.$container) ? undefined : later.at(-1);
      return goal === undefined ? null : change(step, cut(step, sample), behind(goal, textOf(step), sample));
    }),
    uncovers: UNCOVERS,
  },
  {
    name: "change a repeat's range",
    group: "order",
    mutate: somewhere(ast.isRepeat, (repeat) =>
      change(repeat, inside(repeat, /in 2, 3|down to 4|down to 1|to 15/, shorter(textOf(repeat)))),
    ),
  },
  {
    name: "change a loop's order",
    group: "order",
    mutate: somewhere(ast.isRepeat, (repeat) =>
      change(repeat, inside(repeat, /(from|in) [^{]+ \{/, turned(textOf(repeat)))),
    ),
  },
  {
    name: "add a when",
    group: "order",
    // Also `items`, which names options.
    orIn: ["items"],
    mutate: aStep((step, { text }) =>
      ASKS_OPTIONS.test(text) ? change(step, only(step, "SteamService is no")) : null,
    ),
  },
  {
    name: "add an otherwise",
    group: "order",
    mutate: somewhere(ast.isWhen, (when) => {
      const steps = when.items.every((item) => ast.isStep(item) || ast.isTask(item) || ast.isWhen(item));
      if (when.otherwise !== undefined || stepOf(when) !== undefined || !steps) return null;
      const { end } = rangeOf(when);
      return change([], { start: end, end, text: ` otherwise { ${ADDED} }` });
    }),
  },
  {
    name: "change a jump's target",
    group: "order",
    mutate: somewhere(jumps, (jump, sample) => {
      const all = stepsIn(sample.file).filter((step) => step.name !== undefined && step.name !== jump.step.$refText);
      const here = rangeOf(jump).start;
      const goal = all.filter((step) => (ast.isGoJump(jump) ? rangeOf(step).start > here : rangeOf(step).end < here));
      const to = goal.at(-1)?.name;
      return to === undefined ? null : change(stepOf(jump) ?? jump.$container, inside(jump, /\w+$/, to));
    }),
  },
  {
    name: "drop a failing path",
    group: "order",
    mutate: somewhere(ast.isCheck, (check) =>
      check.failing ? change(stepOf(check) ?? check, inside(check, /\s*if (it fails|not) \{[\s\S]*$/, "")) : null,
    ),
  },
  {
    name: "drop a needs",
    group: "order",
    mutate: somewhere(ast.isNeedsLine, (line, sample) => change(stepOf(line) ?? line, cut(line, sample))),
  },
  {
    name: "drop a needs that says a value",
    group: "order",
    mutate: somewhere(ast.isNeedsLine, (line, sample) =>
      /\d/.test(textOf(line)) ? change(stepOf(line) ?? line, cut(line, sample)) : null,
    ),
  },
  { name: "drop one of several needs", group: "order", mutate: oneOut(ast.isNeedsLine) },
  {
    name: "add a needs",
    group: "order",
    mutate: somewhere(ast.isStep, (step, sample) => {
      const [part] = nodesIn(sample.file, ast.isPart).filter(({ instances }) => instances === undefined);
      const isFit = step.block && part !== undefined && !has(step, ast.isNeedsLine);
      return isFit ? change(step, lineInto(step, `needs ${part.name} is installed`, sample)) : null;
    }),
  },
  {
    name: "add an after",
    group: "order",
    mutate: somewhere(ast.isStep, (step, sample) => {
      const earlier = stepsIn(sample.file).find(({ name }) => name !== undefined);
      const isFit =
        earlier?.name !== undefined && rangeOf(earlier).end < rangeOf(step).start && !has(step, ast.isCheck);
      return isFit && !ast.isRepeat(step.$container)
        ? change(step, lineInto(step, `after ${earlier.name}`, sample))
        : null;
    }),
  },
  {
    name: "drop an after or before",
    group: "order",
    mutate: somewhere(ast.isOrderLine, (line, sample) => change(stepOf(line) ?? line, cut(line, sample))),
  },
  {
    name: "drop what a step gives",
    group: "order",
    mutate: somewhere(ast.isGivesLine, (line, sample) => change(stepOf(line) ?? line, cut(line, sample))),
  },
  { name: "drop a condition of begin with", group: "order", mutate: oneOut(ast.isBeginLine) },
  { name: "drop a condition of finish with", group: "order", mutate: oneOut(ast.isFinishLine) },
  {
    name: "drop any order",
    group: "order",
    mutate: somewhere(ast.isAnyOrder, (block) =>
      change(block, inside(block, /^in any order \{\s*([\s\S]*?)\s*\}$/, "$1")),
    ),
  },
  {
    name: "change a tightening pattern",
    group: "order",
    mutate: somewhere(ast.isTighten, (action) =>
      change(
        stepOf(action) ?? action,
        inside(action, /cross pattern/, "circular pattern") ?? inside(action, / in order/, " in cross pattern"),
      ),
    ),
  },
  {
    name: "swap two tasks",
    group: "order",
    mutate: somewhere(ast.isTask, (task) => {
      const next = siblings(task)[siblings(task).indexOf(task) + 1];
      if (!ast.isTask(next)) return null;
      return change([task, next], replaced(task, textOf(next)), replaced(next, textOf(task)));
    }),
    uncovers: UNCOVERS,
  },
];

/** What a step puts in. */
const installed = (step: ast.Step): readonly string[] =>
  nodesIn(step, ast.isInstall).flatMap(({ objects }) => objects.map(({ thing }) => thing.$refText));

/** The head of a repeat with a pass less. */
function shorter(text: string): string {
  if (text.includes("in 2, 3")) return "in 3";
  if (text.includes("down to 4")) return "down to 5";
  return text.includes("down to 1") ? "down to 2" : "to 13";
}

/** The head of a repeat with its passes the other way round. */
function turned(text: string): string {
  const [, first = "", down, last = "", by = ""] = /from (\d+) (down )?to (\d+)( by \d+)?/.exec(text) ?? [];
  if (first !== "") return `from ${last} ${down === undefined ? "down " : ""}to ${first}${by} {`;
  const values = /in ([\d, ]+?) \{/.exec(text)?.[1]?.split(", ") ?? [];
  return `in ${[...values].reverse().join(", ")} {`;
}
