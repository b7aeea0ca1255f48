// `npm run effects`: breaks one effect of the state follower after the other (`effects/*.mjs`) and looks after how many procedures the
// brute-force run notices, first the drills, then the random ones. A break is made in a bundle under `.cache/effects/`, or in vitest's
// memory where another test is to notice it. `-- WORD …` for those with one of these words in their name; `--resume` leaves out what was
// as it should be in the same sources; `--one` takes one at a time. Fails where one is not noticed.
import { fork, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { EFFECTS } from "./effects/index.mjs";
import { failsBroken } from "./effects/other-test.mjs";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const cache = join(root, ".cache", "effects");
const analysis = join(root, "language", "analysis");
/** Those of the suite's own run come first: `differential.test.ts` takes the same seed. */
const SEED = Number(process.env.SPRAG_EFFECTS_SEED ?? 7);
const RUNS = Number(process.env.SPRAG_EFFECTS_RUNS ?? 400);
/** A broken follower may go round for ever: then it is noticed, too. Milliseconds for a few procedures, on a busy machine. */
const LONGEST = 120_000;

const follower = "tests/analysis/followed.ts";

mkdirSync(cache, { recursive: true });
const problems = EFFECTS.flatMap(({ name, file, find }) => {
  const count = readFileSync(join(analysis, file), "utf8").split(find).length - 1;
  return count === 1 ? [] : [`${name}: found ${count} times in ${file}: ${find}`];
});
const names = EFFECTS.map(({ name }) => name);
problems.push(...names.filter((name, at) => names.indexOf(name) !== at).map((name) => `${name}: two of that name`));
if (problems.length > 0) {
  console.error(problems.join("\n"));
  process.exit(1);
}

const words = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const show = process.argv.includes("--show") ? "show" : "";
const chosen = EFFECTS.filter(({ name }) => words.length === 0 || words.some((word) => name.includes(word)));
const plan = join(cache, `wanted-${SEED}.json`);
const maker = await bundled("plan.mjs", "tests/mutation/effects/plan.ts", null);
const made = spawnSync(process.execPath, [maker, plan, String(RUNS), String(SEED)], { cwd: root, encoding: "utf8" });
if (made.status !== 0) throw new Error(made.stderr);
const looker = await bundled("look.mjs", "tests/mutation/effects/look.ts", null);
const unbroken = await bundled("whole.mjs", follower, null);
const sources = createHash("sha256").update(readFileSync(unbroken)).update(readFileSync(plan)).digest("hex");
const record = join(cache, "as-it-should-be.json");
const before = existsSync(record) ? JSON.parse(readFileSync(record, "utf8")) : {};
const fine = process.argv.includes("--resume") && before.sources === sources ? before.fine : [];
const left = chosen.filter((effect) => !fine.includes(keyOf(effect)));
if (left.length < chosen.length) console.log(`${chosen.length - left.length} were as they should be before`);
const [first, second] = [beginLooking(), beginLooking()];
const whole = await look(first, unbroken);
console.log(`unbroken: ${whole}`);
let missed = whole === "NOT CAUGHT" ? 0 : 1;
const others = left.filter(({ test }) => test !== undefined);
const waiting = left.filter((effect) => !others.includes(effect));
await Promise.all((process.argv.includes("--one") ? [first] : [first, second]).map(work));
for (const bench of [first, second]) bench.end();
// One at a time: vitest has the whole process for itself.
for (const effect of others) {
  const isNoticed = await failsBroken(root, effect);
  console.log(`${effect.name}: ${isNoticed ? "caught" : "NOT CAUGHT"} by ${effect.test} (${effect.why})`);
  note(effect, isNoticed);
}
console.log(`${chosen.length} effects, ${missed} not as they should be, over the drills and ${RUNS} random procedures`);
process.exitCode = missed === 0 ? 0 : 1;

function note(effect, isFine) {
  if (!isFine) {
    missed++;
    return;
  }
  fine.push(keyOf(effect));
  writeFileSync(record, JSON.stringify({ sources, fine }));
}

function keyOf({ name, find, by, why = "", test = "" }) {
  return [name, find, by, why, test].join("\n");
}

/** Takes one effect after the other, beside another that does the same. */
async function work(bench) {
  for (let effect = waiting.shift(); effect !== undefined; effect = waiting.shift()) {
    const bundle = await bundled(`broken-${EFFECTS.indexOf(effect)}.mjs`, follower, effect);
    const said = await look(bench, bundle);
    rmSync(bundle);
    const same = effect.why === undefined ? "" : ` (cannot differ: ${effect.why})`;
    console.log(`${effect.name}: ${said}${same}`);
    // One that is said to make no difference and does is a wrong word in the list.
    note(effect, (said === "NOT CAUGHT") === (same !== ""));
  }
}

/** A process that looks: begun when it is asked, and anew where a broken follower was the end of the one before. */
function beginLooking() {
  let child = null;
  return {
    of: () => {
      child ??= fork(looker, [plan, show], { cwd: root, execArgv: ["--max-old-space-size=3000"], silent: true });
      return child;
    },
    end: () => {
      child?.kill("SIGKILL");
      child = null;
    },
  };
}

/** Runs a follower over all procedures until the first difference. */
function look(bench, bundle) {
  const child = bench.of();
  let errors = "";
  return new Promise((resolve) => {
    const done = (said, isDead) => {
      clearTimeout(timer);
      child.removeAllListeners();
      child.stderr.removeAllListeners();
      if (isDead) bench.end();
      resolve(said);
    };
    const timer = setTimeout(() => done("caught: it never ends", true), LONGEST);
    child.stderr.on("data", (text) => {
      errors += text;
    });
    child.on("message", ({ said }) => {
      if (said === undefined) timer.refresh();
      else done(said, false);
    });
    child.on("exit", () => done(`caught: it fails: ${errors.trim().split("\n").at(-1)}`, true));
    child.send(bundle);
  });
}

/** A program with the sources it uses in one file, one of them changed. */
async function bundled(name, program, effect) {
  const outfile = join(cache, name);
  const broken = effect === null ? null : join(analysis, effect.file);
  await build({
    entryPoints: [program],
    absWorkingDir: root,
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    logLevel: "error",
    banner: {
      js: 'import { createRequire as createRequireForBundle } from "node:module";\nconst require = createRequireForBundle(import.meta.url);',
    },
    plugins: [
      {
        name: "break",
        setup(plugin) {
          plugin.onLoad({ filter: /[\\/]analysis[\\/].*\.ts$/ }, ({ path }) => {
            if (path !== broken) return undefined;
            return { contents: readFileSync(path, "utf8").replace(effect.find, () => effect.by), loader: "ts" };
          });
        },
      },
    ],
  });
  return outfile;
}
