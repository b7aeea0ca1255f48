// `sprag check --jobs N` as a process of its own: whatever the number of threads, it says what one says.
import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import { shipped } from "#harness/shipped.ts";
import { oneIn } from "#harness/thorough.ts";
import { SHOP_FILES } from "./shop-of-shards.ts";
import { TWICE } from "./texts.ts";

const command = shipped();

function sprag(folder: Folder, ...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, "check", ...args], {
    ...{ cwd: folder.path, encoding: "utf8", env: { PATH: process.env.PATH, FORCE_COLOR: "1" } },
  });
  return { status, out: stdout, err: stderr };
}

const NO_TEXT = Buffer.from([0x70, 0]);
const FILES = {
  ...SHOP_FILES,
  ...{ "no-text.sprag": NO_TEXT, "also-no-text.sprag": NO_TEXT, "between.sprag": NO_TEXT, "last.txt": NO_TEXT },
  "x.sprag": 'use "no-text.sprag"\nuse "last.txt"\n',
};

const CALLS: readonly (readonly [string, readonly string[]])[] = [
  ["json", ["--crib", "shop/crib.sprag", "--on", "2027-02-01"]],
  ["sarif", ["--set", "Extent=Full"]],
  ["junit", ["--fail-on", "warning"]],
  ["json", ["--shard", "1/2", "--set", "Extent=Part"]],
  ["text", []],
];

test.each(oneIn(4, CALLS))("%s, with %j", (format, call) => {
  const folder = folderWith(FILES);
  const args = [".", "gone.sprag", "--format", format, ...call];
  const one = sprag(folder, ...args);
  expect(one.status).toBe(2);
  expect(one.out.length).toBeGreaterThan(1000);
  expect(sprag(folder, ...args, "--jobs", "2")).toEqual(one);
});

test("more threads than files do no harm, and a single file needs no second one", () => {
  const folder = folderWith({ "a.sprag": TWICE, "b.sprag": "", "c.sprag": TWICE });
  const one = sprag(folder, ".");
  expect(one.status).toBe(1);
  expect(sprag(folder, ".", "--jobs", "64")).toEqual(one);
  expect(sprag(folder, "b.sprag", "--jobs", "2").status).toBe(0);
});

test.each(
  oneIn(2, [
    [["--set", "Extend=Full"], "--set: no option is called Extend. Nearest: Extent."],
    [["--crib", "close.sprag"], "--crib: close.sprag holds no crib. Give the file with “crib NAME { item … }”."],
  ] as const),
)("%j is refused as by one thread", (args, message) => {
  const folder = folderWith(SHOP_FILES);
  expect(sprag(folder, ".", "--jobs", "3", ...args)).toEqual({ status: 2, out: "", err: `sprag: ${message}\n` });
});

test("a thread that fails is told as a fault, status 2", () => {
  const folder = folderWith({ "a.sprag": TWICE, "b.sprag": TWICE });
  // Its memory is far too small for it to begin.
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--import", SMALL_THREADS, command, "check", ".", "--jobs", "2"],
    { cwd: folder.path, encoding: "utf8" },
  );
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toMatch(/^sprag: stopped by a fault of its own\./);
});

const SMALL_THREADS = `data:text/javascript,import threads from "node:worker_threads"; import { syncBuiltinESMExports } from "node:module";
const { Worker } = threads; threads.Worker = class extends Worker { constructor(url, options) {
super(url, { ...options, resourceLimits: { maxOldGenerationSizeMb: 4, maxYoungGenerationSizeMb: 1 } }); } }; syncBuiltinESMExports();`;
