// Measures Sprag against its goals for speed and prints each number beside its goal. Status 1 if a goal is missed.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { keystrokeTimes } from "./keystroke.ts";
import { exportTimes, previewTimes } from "./output-times.ts";
import { type Beside, besideChevrotain, besideYaml } from "./peers.ts";
import { procedureOfLines, procedureOfSteps } from "./procedure-text.ts";
import { blockOf, procedureOfPasses } from "./repeats-text.ts";
import { stages, stageTimes, total } from "./stages.ts";
import { growthExponent, quantile, type Times, timed } from "./timing.ts";

interface Result {
  readonly work: string;
  readonly measured: number;
  /** Null where there is none, only something to set beside another row. */
  readonly goal: number | null;
  readonly unit: "ms" | "MB" | "";
}

const command = join("language", "dist", "sprag.js");
const SIZES = [1_000, 10_000, 100_000];
/** Of the largest one run must do. */
const runsOf = (steps: number): number => (steps > 10_000 ? 1 : 3);
/** As the extension starts its server (`extension-node.ts`). */
const AS_THE_SERVER = ["--max-semi-space-size=64"];
/** Places typed at before: a writer types for hours, and the first keys after a start take longer. */
const WARM_UP = 12;
const ONE_SIZE = "--one-size";
const ROWS = "--rows";

/** What is measured, each in a process of its own: no work waits for what another has left behind. */
const GROUPS: Readonly<Record<string, () => readonly Result[] | Promise<readonly Result[]>>> = {
  process: wholeProcess,
  keystrokes: () => typed().flatMap(keystrokes),
  outputs,
  stages: oneByOne,
  peers: besideOthers,
  options: withOptions,
  order: inAnyOrder,
  growth,
};

// `npm run bench -- outputs` measures that group alone.
const [flag = "", of = ""] = process.argv.slice(2);
const rows = GROUPS[of];
if (flag === ONE_SIZE) writeOneSize(Number(of));
else if (flag === ROWS && rows !== undefined) process.stdout.write(JSON.stringify(await rows()));
else print((Object.hasOwn(GROUPS, flag) ? [flag] : Object.keys(GROUPS)).flatMap(measured));

function measured(group: string): readonly Result[] {
  return JSON.parse(inOwnProcess(ROWS, group));
}

function inOwnProcess(...args: readonly string[]): string {
  const node = args.includes("keystrokes") ? AS_THE_SERVER : [];
  const { status, stdout, stderr } = spawnSync(process.execPath, [...node, process.argv[1] ?? "", ...args], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}\n${stderr}`);
  return stdout;
}

/** The command as a person meets it: start of Node, reading, checking, writing. */
async function wholeProcess(): Promise<Result[]> {
  const folder = mkdtempSync(join(tmpdir(), "sprag-bench-"));
  try {
    return await checks(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function checks(folder: string): Promise<Result[]> {
  const file = written(folder, "lines-5000.sprag", procedureOfLines(5_000));
  const times = await timed(() => checked(file), 7, 1);
  const few = written(folder, "lines-50.sprag", procedureOfLines(50));
  const small = await timed(() => checked(few), 7, 1);
  const points = [];
  for (const steps of [1_000, 2_000, 5_000, 10_000]) {
    const steep = written(folder, `steps-${steps}.sprag`, procedureOfSteps(steps));
    points.push({ size: steps, time: quantile(await timed(() => checked(steep), 3), 0.5) });
  }
  return [
    { work: "sprag check, 5,000 lines, whole process, median", measured: quantile(times, 0.5), goal: 350, unit: "ms" },
    {
      work: "sprag check, 50 lines, whole process, median",
      measured: quantile(small, 0.5),
      goal: null,
      unit: "ms",
    },
    ...points.map(({ size, time }) => ({
      work: `sprag check, ${size} steps in one procedure, median`,
      measured: time,
      goal: null,
      unit: "ms" as const,
    })),
    { work: "growth, 1,000 to 10,000 steps, exponent", measured: growthExponent(points), goal: 1.1, unit: "" },
  ];
}

interface Typed {
  readonly what: string;
  readonly text: string;
  /** How many places are typed at, of each sort. */
  readonly places: number;
  /** In milliseconds: until what is wrong with the form is known, and until everything is. */
  readonly goals: readonly [read: number, all: number];
}

function typed(): readonly Typed[] {
  const lines = (procedures: number, shape: string): Typed => ({
    ...{ what: `5,000 lines in ${shape}`, text: procedureOfLines(5_000, procedures), places: 10, goals: [10, 50] },
  });
  const long = {
    what: "5,000 steps in one procedure",
    text: procedureOfSteps(5_000),
    places: 2,
    goals: [50, 250],
  } as const;
  return [lines(1, "one procedure"), lines(20, "20 procedures"), long];
}

/** From a key to diagnostics, in a workspace that is kept; on a loaded machine the process's own time tells more. */
function keystrokes({ goals, places, text, what }: Typed): Result[] {
  const times = keystrokeTimes(text, places, Math.min(WARM_UP, places + 2));
  const at = (share: number, of: (time: (typeof times)[number]) => number): number =>
    quantile(
      times.map(of).sort((a, b) => a - b),
      share,
    );
  const work = `keystroke, ${what}, ${times.length} edits`;
  const shown = { goal: null, unit: "ms" as const };
  return [
    {
      work: `${work}: what is wrong with the form, p95`,
      measured: at(0.95, ({ read }) => read),
      goal: goals[0],
      unit: "ms",
    },
    { work: `${work}: all diagnostics, p95`, measured: at(0.95, ({ wall }) => wall), goal: goals[1], unit: "ms" },
    { work: `${work}: all diagnostics, median`, measured: at(0.5, ({ wall }) => wall), ...shown },
    { work: `${work}: the process's own time, p95`, measured: at(0.95, ({ cpu }) => cpu), ...shown },
  ];
}

/** A long procedure once it is checked: written, and shown beside its text after each key. */
async function outputs(): Promise<Result[]> {
  const text = procedureOfSteps(1_000);
  const row = async (work: string, times: Promise<Times>, share: number, goal: number): Promise<Result> => ({
    work: `1,000 steps: ${work}`,
    measured: quantile(await times, share),
    goal,
    unit: "ms",
  });
  return [
    await row("checklist as HTML, median", exportTimes(text, "html", 25), 0.5, 100),
    await row("checklist as PDF, median", exportTimes(text, "pdf", 9), 0.5, 1_000),
    await row("keystroke to preview, p95", previewTimes(text, 5), 0.95, 150),
  ];
}

/** Each stage by itself, once the process is warm. */
function oneByOne(): Result[] {
  const text = procedureOfLines(5_000);
  const runs = Array.from({ length: 9 }, () => stageTimes(text)).slice(2);
  return stages.map((stage) => ({
    work: `5,000 lines, warm: ${stage}, median`,
    measured: quantile(
      runs.map((run) => run[stage]).sort((a, b) => a - b),
      0.5,
    ),
    goal: null,
    unit: "ms" as const,
  }));
}

/** Sprag's times as multiples of what others take for the same text or content. */
function besideOthers(): Result[] {
  const text = procedureOfLines(5_000);
  const row = (work: string, goal: number, { ours, theirs }: Beside): Result => {
    const [own, other] = [quantile(ours, 0.5), quantile(theirs, 0.5)];
    return { work: `${work} (${own.toFixed(0)} and ${other.toFixed(0)} ms)`, measured: own / other, goal, unit: "" };
  };
  return [
    row("5,000 lines, warm: full check against yaml + ajv", 1, besideYaml(text, 9)),
    row("5,000 lines, warm: parse against bare Chevrotain", 2, besideChevrotain(text, 9)),
  ];
}

/** All stages together, once the process is warm. */
function median(text: string): number {
  const times = Array.from({ length: 9 }, () => total(stageTimes(text))).slice(2);
  return quantile(
    times.sort((a, b) => a - b),
    0.5,
  );
}

/** Forty yes/no options over 400 steps, beside the same steps without. */
function withOptions(): Result[] {
  const plain = median(procedureOfSteps(400));
  const optional = median(procedureOfSteps(400, 40));
  return [
    { work: "400 steps with 40 yes/no options, warm, median", measured: optional, goal: 3 * plain, unit: "ms" },
    { work: "400 steps without options, warm, median", measured: plain, goal: null, unit: "ms" },
  ];
}

/** What may be done in any order, beside the same steps one after the other. */
function inAnyOrder(): Result[] {
  const row = (steps: number, kind: "independent" | "dependent"): Result[] => {
    const plain = median(blockOf(steps, kind, false));
    const block = median(blockOf(steps, kind, true));
    // Those that depend on each other are followed in all orders: 256 sets of eight.
    const goal = kind === "independent" ? 1.5 * plain : null;
    const without = { goal: null, unit: "ms" as const };
    return [
      { work: `${steps} ${kind} steps in any order, warm, median`, measured: block, goal, unit: "ms" },
      { work: `${steps} ${kind} steps in a row, warm, median`, measured: plain, ...without },
    ];
  };
  return [...row(20, "independent"), ...row(8, "dependent")];
}

/** Steps in repeats, with relations, an energy and rework: each size in a process of its own, so that its memory is its own. */
function growth(): Result[] {
  const bare = oneSize(1).memory;
  const points = SIZES.map((steps) => {
    const runs = Array.from({ length: runsOf(steps) }, () => oneSize(steps));
    const best = (of: (run: Size) => number): number => Math.min(...runs.map(of));
    return { size: steps, time: best((run) => run.time), memory: best((run) => run.memory) - bare };
  });
  const shown = { goal: null };
  return [
    ...points.flatMap(({ size, time, memory }): Result[] => [
      { work: `${size} steps in repeats, best of ${runsOf(size)}`, measured: time, ...shown, unit: "ms" },
      { work: `${size} steps in repeats, memory above none`, measured: memory, ...shown, unit: "MB" },
    ]),
    { work: "growth in time, 1,000 to 100,000 steps, exponent", measured: growthExponent(points), goal: 1.1, unit: "" },
    {
      work: "growth in memory, the same, exponent",
      measured: growthExponent(points.map(({ size, memory }) => ({ size, time: memory }))),
      goal: 1.1,
      unit: "",
    },
  ];
}

/** Milliseconds, and the most memory in MB. */
interface Size {
  readonly time: number;
  readonly memory: number;
}

function oneSize(steps: number): Size {
  return JSON.parse(inOwnProcess(ONE_SIZE, String(steps)));
}

function writeOneSize(steps: number): void {
  // The first text makes the parser, which is no matter of size.
  for (let run = 0; run < 3; run++) stageTimes(procedureOfPasses(100));
  const time = total(stageTimes(procedureOfPasses(steps)));
  const memory = process.resourceUsage().maxRSS / 1024;
  process.stdout.write(JSON.stringify({ time, memory } satisfies Size));
}

function written(folder: string, name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** A check that finds something, or fails, is no measurement. */
function checked(file: string): void {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, "check", file], { encoding: "utf8" });
  if (status !== 0)
    throw new Error(`${command} check ${file} ended with ${status}\n${stdout.slice(0, 2_000)}${stderr}`);
}

function print(rows: readonly Result[]): void {
  const width = Math.max(...rows.map(({ work }) => work.length));
  const shown = (value: number | null, unit: string): string =>
    value === null ? "–" : `${value.toFixed(unit === "" ? 2 : 0)} ${unit}`.trim();
  process.stdout.write(`Node ${process.version}, ${cpus().length} cores, ${cpus()[0]?.model.trim() ?? "unknown"}\n\n`);
  process.stdout.write(`${"".padEnd(width)}  ${"measured".padStart(9)}  ${"goal".padStart(9)}\n`);
  for (const { work, measured, goal, unit } of rows) {
    const mark = isMissed({ measured, goal }) ? "  missed" : "";
    process.stdout.write(
      `${work.padEnd(width)}  ${shown(measured, unit).padStart(9)}  ${shown(goal, unit).padStart(9)}${mark}\n`,
    );
  }
  if (rows.some(isMissed)) process.exitCode = 1;
}

function isMissed({ measured, goal }: Pick<Result, "goal" | "measured">): boolean {
  return goal !== null && measured > goal;
}
