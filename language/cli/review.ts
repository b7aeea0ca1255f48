// `sprag review`: what a change of procedures means, between files, folders or states of a git repository.
import type { Command } from "commander";
import { printable } from "#outputs/printable.ts";
import { REVIEW_FORMATS, type ReviewReport, reviewAs, reviewOf, unreadIn } from "#workspace/review.ts";
import type { Perform } from "./call.ts";
import { calendarDay, oneOf } from "./choices.ts";
import { printableName } from "./printable.ts";
import { progressOn } from "./progress.ts";
import { Refusal } from "./refusal.ts";
import { type Place, type Sides, sidesInGit, sidesOnDisk } from "./review-sides.ts";
import { dateOf, STATUS, type Status, type Surroundings } from "./surroundings.ts";

const LEVELS = ["none", "safety", "values", "order", "items", "words", "layout"] as const;
type Level = (typeof LEVELS)[number];

interface Options {
  readonly against?: string;
  readonly staged?: boolean;
  readonly format: (typeof REVIEW_FORMATS)[number];
  readonly failOn: Level;
  readonly root?: string;
  readonly on?: string;
}

export function defineReview(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<path...>", "the old and the new file or folder; one, where the old side is taken from git")
    .option("--against <rev>", "take the old side from this revision")
    .option("--staged", "take the new side from what is staged; without --against, the old one from HEAD")
    .option("--format <format>", "text, md, html, json or sarif", oneOf("--format", REVIEW_FORMATS), "text")
    .option("--fail-on <group>", "the least grave group that gives status 1", oneOf("--fail-on", LEVELS), "none")
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the path)")
    .option("--on <date>", "the day of the work, as 2026-05-04 (default: today)", calendarDay)
    .addHelpText("after", EXAMPLES)
    .action((paths: readonly string[], options: Options) => perform(() => tell(paths, options, around)));
}

const EXAMPLES = `
Most grave first: safety, values, order, items, words, layout. A value that is only restated in another unit never gives status 1.

Examples:
  sprag review old.sprag new.sprag
  sprag review --against HEAD pump.sprag
  sprag review --against origin/main . --format md --fail-on safety
  sprag review --staged . --format html > review.html`;

function tell(paths: readonly string[], options: Options, around: Surroundings): Status {
  const progress = progressOn(around.err, around.now);
  const { root, on } = options;
  const place: Place = { root, cwd: around.cwd, env: around.env, today: dateOf(on, around), progress };
  try {
    const sides = sidesFor(paths, options, place);
    progress.show("comparing");
    const report = reviewOf(sides.old, sides.new);
    progress.wipe();
    tellUnread(sides, around);
    const text = reviewAs(report, options.format);
    around.out.write(options.format === "text" ? printable(text) : text);
    return isAtLeast(report, options.failOn) ? STATUS.findings : STATUS.fine;
  } finally {
    progress.wipe();
  }
}

function sidesFor(paths: readonly string[], { against, staged = false }: Options, place: Place): Sides {
  const [first = "", second, ...more] = paths;
  if (against !== undefined || staged) {
    if (second !== undefined) throw new Refusal("With --against or --staged, give one file or folder.");
    return sidesInGit(first, against ?? "HEAD", staged, place);
  }
  if (second === undefined) throw new Refusal("Give the old and the new one, or the new one with --against REVISION.");
  if (more.length > 0) throw new Refusal("Two can be compared. Put more of them into two folders.");
  return sidesOnDisk(first, second, place);
}

function tellUnread({ old, new: now }: Sides, { err }: Surroundings): void {
  for (const [side, opened] of [
    ["old", old],
    ["new", now],
  ] as const)
    for (const path of unreadIn(opened))
      err.write(
        `sprag: a part of ${printableName(path)} on the ${side} side could not be read. The rest is compared.\n`,
      );
}

function isAtLeast({ changes }: ReviewReport, level: Level): boolean {
  const failing: readonly string[] = LEVELS.slice(1, LEVELS.indexOf(level) + 1);
  return changes.some(({ group, kind }) => failing.includes(group) && kind !== "restated");
}
