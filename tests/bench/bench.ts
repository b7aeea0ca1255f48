// Measures Sprag against its goals for speed and prints each number beside its goal. Status 1 if a goal is missed.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { procedureOfLines, procedureOfSteps } from "./procedure-text.ts";
import { stages, stageTimes, total } from "./stages.ts";
import { growthExponent, quantile, timed } from "./timing.ts";

interface Result {
  readonly work: string;
  readonly measured: number;
  readonly goal: number;
  readonly unit: "ms" | "";
}

const command = join("language", "dist", "sprag.js");
const folder = mkdtempSync(join(tmpdir(), "sprag-bench-"));
const results: Result[] = [];
try {
  results.push(...(await wholeProcess()));
  results.push(...oneByOne(), ...withOptions());
} finally {
  rmSync(folder, { recursive: true, force: true });
}
print(results);

/** The command as a person meets it: start of Node, reading, checking, writing. */
async function wholeProcess(): Promise<Result[]> {
  const file = written("lines-5000.sprag", procedureOfLines(5_000));
  const times = await timed(() => checked(file), 7, 1);
  const points = [];
  for (const steps of [1_000, 2_000, 5_000, 10_000]) {
    const steep = written(`steps-${steps}.sprag`, procedureOfSteps(steps));
    points.push({ size: steps, time: quantile(await timed(() => checked(steep), 3), 0.5) });
  }
  return [
    { work: "sprag check, 5,000 lines, whole process, median", measured: quantile(times, 0.5), goal: 350, unit: "ms" },
    ...points.map(({ size, time }) => ({
      work: `sprag check, ${size} steps in one procedure, median`,
      measured: time,
      goal: Number.POSITIVE_INFINITY,
      unit: "ms" as const,
    })),
    { work: "growth, 1,000 to 10,000 steps, exponent", measured: growthExponent(points), goal: 1.1, unit: "" },
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
    goal: Number.POSITIVE_INFINITY,
    unit: "ms" as const,
  }));
}

/** Forty yes/no options over 400 steps, beside the same steps without. */
function withOptions(): Result[] {
  const median = (text: string): number => {
    const times = Array.from({ length: 9 }, () => total(stageTimes(text))).slice(2);
    return quantile(
      times.sort((a, b) => a - b),
      0.5,
    );
  };
  const plain = median(procedureOfSteps(400));
  const optional = median(procedureOfSteps(400, 40));
  return [
    { work: "400 steps with 40 yes/no options, warm, median", measured: optional, goal: 3 * plain, unit: "ms" },
    { work: "400 steps without options, warm, median", measured: plain, goal: Number.POSITIVE_INFINITY, unit: "ms" },
  ];
}

function written(name: string, text: string): string {
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
  const shown = (value: number, unit: string) =>
    Number.isFinite(value) ? `${value.toFixed(unit === "ms" ? 0 : 2)} ${unit}`.trim() : "–";
  process.stdout.write(`Node ${process.version}, ${cpus().length} cores, ${cpus()[0]?.model.trim() ?? "unknown"}\n\n`);
  process.stdout.write(`${"".padEnd(width)}  ${"measured".padStart(9)}  ${"goal".padStart(9)}\n`);
  for (const { work, measured, goal, unit } of rows) {
    const mark = measured > goal ? "  missed" : "";
    process.stdout.write(
      `${work.padEnd(width)}  ${shown(measured, unit).padStart(9)}  ${shown(goal, unit).padStart(9)}${mark}\n`,
    );
  }
  if (rows.some(({ measured, goal }) => measured > goal)) process.exitCode = 1;
}
