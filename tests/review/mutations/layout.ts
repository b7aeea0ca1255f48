// Changes that change nothing of what is meant: nothing above `layout`.
import * as ast from "#grammar/generated/ast.ts";
import { behind, change, cut, inside, type Mutate, nodesIn, rangeOf, replaced, somewhere, textOf } from "./edit.ts";
import type { Kind } from "./kind.ts";
import { has } from "./place.ts";

const QUOTED = /"""[\s\S]*?"""|"[^"\n]*"|\/\/[^\n]*/g;

/** Some of the fits of a pattern in the text, outside of what is quoted, each by chance, written otherwise. */
const here =
  (pattern: RegExp, by: string): Mutate =>
  ({ file, text }, random) => {
    const plain = text.replace(QUOTED, (quoted) => "\u0000".repeat(quoted.length));
    const found = random.shuffled([...plain.matchAll(new RegExp(pattern, "g"))]).slice(0, 1 + random.below(3));
    if (found.length === 0) return null;
    const edits = found.map(({ 0: word, index }) => ({
      start: index,
      end: index + word.length,
      text: word.replace(pattern, by),
    }));
    return change(file, ...edits);
  };

/** Two lines of one block that no order binds. */
const swapped = (fits: (node: unknown) => node is ast.Part | ast.PlainLine): Mutate =>
  somewhere(fits, (node, sample) => {
    const next = [...nodesIn(sample.file, fits)].find(
      (one) => one.$container === node.$container && one.$containerIndex === (node.$containerIndex ?? 0) + 1,
    );
    return next === undefined ? null : change(sample.file, replaced(node, textOf(next)), replaced(next, textOf(node)));
  });

const isWholeLine = (node: unknown): node is ast.PlainLine =>
  ast.isSignLine(node) ||
  ast.isHoldLine(node) ||
  ast.isTakesLine(node) ||
  ast.isCriticalLine(node) ||
  ast.isCitationLine(node) ||
  ast.isByLine(node);

const kinds: readonly (readonly [name: string, mutate: Mutate])[] = [
  [
    "add a comment",
    somewhere(ast.isStep, (step, sample) => change(sample.file, behind(step, "// As agreed with the shop.", sample))),
  ],
  ["add a comment within a line", here(/ (expect|with) /, " /* as agreed */ $1 ")],
  ["change the margin", here(/\n {2,}/, "\n\t\t")],
  ["break a line", here(/ (with|expect|record|because|avoid|wear|is|for) /, "\n$1 ")],
  ["add empty lines", here(/\n\n?/, "\n\n\n")],
  ["write with CR LF", ({ file, text }) => change(file, replaced(file, text.replaceAll("\n", "\r\n").trim()))],
  ["spell a unit otherwise", here(/N·m/, "Nm")],
  ["spell a degree otherwise", here(/°C/, "degC")],
  ["spell a tolerance otherwise", here(/±/, "+/-")],
  ["give each end its unit", here(/(\d+) \.\. (\d+) (°C|mm|N|µm)/, "$1 $3 .. $2 $3")],
  ["say are for is", here(/\[all\] are /, "[all] is ")],
  ["say if not for if it fails", here(/if it fails/, "if not")],
  [
    "open a block round one action",
    somewhere(ast.isStep, (step, sample) =>
      step.block || step.words !== undefined
        ? null
        : change(sample.file, inside(step, /^step ([\s\S]*)$/, "step { $1 }")),
    ),
  ],
  ["declare parts in another order", swapped(ast.isPart)],
  ["say the lines of a step in another order", swapped(isWholeLine)],
  [
    "move a declaration into another place",
    somewhere(ast.isPart, (part, sample) => {
      const last = nodesIn(sample.file, ast.isPart).at(-1);
      const isFit =
        last !== undefined && last !== part && !has(part, ast.isDamaged) && rangeOf(part).end < rangeOf(last).start;
      return isFit ? change(sample.file, cut(part, sample), behind(last, textOf(part), sample)) : null;
    }),
  ],
  [
    "use files in another order",
    somewhere(ast.isUse, (use, sample) => {
      const next = nodesIn(sample.file, ast.isUse).find(
        (one) => one.$containerIndex === (use.$containerIndex ?? 0) + 1,
      );
      return next === undefined ? null : change(sample.file, replaced(use, textOf(next)), replaced(next, textOf(use)));
    }),
  ],
];

export const layoutKinds: readonly Kind[] = kinds.map(([name, mutate]) => ({
  name,
  mutate,
  group: "layout",
  silent: true,
}));
