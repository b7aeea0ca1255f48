// `sprag review` against a real repository: revisions, what is staged, renamed files, and settings that must run nothing.
import { execFileSync } from "node:child_process";
import { mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { type GitShop, gitShop, layTraps } from "./git-shop.ts";
import { CLOSING, SHOP, TOOLS } from "./review-texts.ts";

const MORE = CLOSING.replace("to 40 ± 3 N·m", "to 42 ± 3 N·m");
const NO_HOLD = CLOSING.replace("    hold for Inspector\n", "");

/** Group and kind of each change, and where it stood and stands. */
function told(shop: GitShop, ...args: string[]): readonly string[] {
  const { out, err, status } = shop.sprag("review", ...args, "--format", "json");
  expect({ err, status }).toEqual({ err: "", status: 0 });
  const report = JSON.parse(out) as {
    changes: { group: string; kind: string; old?: { path: string }; new?: { path: string } }[];
  };
  return report.changes.map(({ group, kind, old, new: now }) =>
    [group, kind, old?.path ?? "-", now?.path ?? "-"].join(" "),
  );
}

test("a file against its last commit, an earlier one and a branch", () => {
  const shop = gitShop(SHOP);
  shop.write({ "close.sprag": NO_HOLD });
  shop.commit("second");
  shop.git("branch", "release", "HEAD~1");
  shop.write({ "close.sprag": NO_HOLD.replace("to 40 ± 3 N·m", "to 42 ± 3 N·m") });
  const torque = "values torque-changed close.sprag close.sprag";
  const hold = "safety hold-dropped close.sprag -";
  expect(told(shop, "--against", "HEAD", "close.sprag")).toEqual([torque]);
  expect(told(shop, "--against", "HEAD~1", "close.sprag")).toEqual([hold, torque]);
  expect(told(shop, "--against", "release", ".")).toEqual([hold, torque]);
});

test("the staged version, apart from what lies on the disk", () => {
  const shop = gitShop(SHOP);
  shop.write({ "close.sprag": MORE });
  shop.git("add", "close.sprag");
  shop.write({ "close.sprag": NO_HOLD });
  expect(told(shop, "--staged", "close.sprag")).toEqual(["values torque-changed close.sprag close.sprag"]);
  expect(told(shop, "--against", "HEAD", "close.sprag")).toEqual(["safety hold-dropped close.sprag -"]);
  expect(told(shop, "--staged", ".")).toEqual(["values torque-changed close.sprag close.sprag"]);
});

test("what a file uses is taken from the same revision", () => {
  const shop = gitShop(SHOP);
  shop.write({ "shop/tools.sprag": TOOLS.replace("8 .. 60", "8 .. 41") });
  expect(told(shop, "--against", "HEAD", "close.sprag")).toEqual([
    "values tool-torque-changed shop/tools.sprag shop/tools.sprag",
  ]);
});

test("a renamed file is followed, whether git was told of it or not", () => {
  const shop = gitShop(SHOP);
  shop.git("mv", "close.sprag", "cover.sprag");
  shop.write({ "cover.sprag": MORE });
  expect(told(shop, "--against", "HEAD", "cover.sprag")).toContain("values torque-changed close.sprag cover.sprag");
  shop.commit("moved");
  mkdirSync(join(shop.path, "jobs"));
  renameSync(join(shop.path, "cover.sprag"), join(shop.path, "jobs", "closing.sprag"));
  shop.write({ "jobs/closing.sprag": NO_HOLD.replace('use "shop', 'use "../shop') });
  const changes = told(shop, "--against", "HEAD", "jobs/closing.sprag");
  expect(changes).toContain("safety hold-dropped cover.sprag -");
  expect(changes).toContain("values torque-changed cover.sprag jobs/closing.sprag");
  const renamed = "layout file-renamed cover.sprag jobs/closing.sprag";
  expect(told(shop, "--against", "HEAD", ".")).toEqual([...changes, renamed]);
});

test("a file that is new, and one that is gone", () => {
  const shop = gitShop(SHOP);
  shop.write({ "other.sprag": CLOSING.replaceAll("Close", "Other").replaceAll("close", "other") });
  expect(told(shop, "--against", "HEAD", "other.sprag").some((line) => line.startsWith("order procedure-added"))).toBe(
    true,
  );
  rmSync(join(shop.path, "other.sprag"));
  rmSync(join(shop.path, "close.sprag"));
  const gone = told(shop, "--against", "HEAD", ".");
  expect(gone.filter((line) => line.startsWith("order"))).toEqual(["order procedure-removed close.sprag -"]);
});

test("a folder inside the repository, and a call from within it", () => {
  const shop = gitShop({ "bay/shop/tools.sprag": TOOLS, "bay/close.sprag": CLOSING, "top.sprag": TOOLS });
  shop.write({ "bay/close.sprag": MORE });
  expect(told(shop, "--against", "HEAD", "bay")).toEqual(["values torque-changed bay/close.sprag bay/close.sprag"]);
  const inside = shop.spragAs({ cwd: join(shop.path, "bay") }, "review", "--against", "HEAD", "close.sprag");
  expect(inside.out).toContain("Old close.sprag:16, New close.sprag:16");
});

test("a side that does not parse is compared as far as it goes, and said to be so", () => {
  const shop = gitShop(SHOP);
  shop.write({ "close.sprag": NO_HOLD.replace("step install Screw per", "step install install per") });
  const { out, err, status } = shop.sprag("review", "--against", "HEAD", "close.sprag");
  expect(status).toBe(0);
  expect(err).toBe("sprag: a part of close.sprag on the new side could not be read. The rest is compared.\n");
  expect(out).toContain("Hold point dropped: inspector.");
  expect(out).toContain("came: error syntax.");
});

test.each([
  ["begins like an option", "--upload-pack=touch x"],
  ["is an option of git", "-h"],
  ["is not there", "no-such-branch"],
  ["is empty", ""],
  ["holds a new line", "HEAD\nHEAD"],
  ["is a file", "HEAD:close.sprag"],
  ["is a range", "HEAD..HEAD"],
])("a revision that %s is refused", (_title, revision) => {
  const { out, err, status } = gitShop(SHOP).sprag("review", `--against=${revision}`, "close.sprag");
  expect({ out, status }).toEqual({ out: "", status: 2 });
  expect(err).toContain("The repository has no revision");
});

test("outside a repository it says so", () => {
  const { err, status } = folderWith(SHOP).sprag("review", "--against", "HEAD", "close.sprag");
  expect(status).toBe(2);
  expect(err).toContain("lies in no git repository");
});

test("nothing that a repository says makes git run a program", () => {
  const shop = gitShop(SHOP);
  const traps = layTraps(shop);
  shop.write({ "close.sprag": MORE });
  expect(told(shop, "--against", "HEAD", "close.sprag")).toEqual(["values torque-changed close.sprag close.sprag"]);
  expect(told(shop, "--staged", ".")).toEqual([]);
  expect(told(shop, "--against", "HEAD", ".")).toEqual(["values torque-changed close.sprag close.sprag"]);
  expect(traps.sprung()).toEqual([]);
  expect(traps.laid.length).toBeGreaterThan(25);
});

test("an object that a partial clone lacks is not fetched by a program", () => {
  const shop = gitShop(SHOP);
  const id = shop.git("rev-parse", "HEAD:close.sprag").trim();
  const traps = layTraps(shop);
  rmSync(join(shop.path, ".git", "objects", id.slice(0, 2), id.slice(2)));
  const { status } = shop.sprag("review", "--against", "HEAD", "close.sprag");
  expect(status).toBe(2);
  expect(traps.sprung()).toEqual([]);
});

test("the traps do spring where git is called carelessly", () => {
  const shop = gitShop(SHOP);
  const traps = layTraps(shop);
  shop.write({ "close.sprag": MORE });
  try {
    execFileSync("git", ["diff"], { cwd: shop.path, stdio: "ignore" });
  } catch {
    // The programs are no real monitors or filters: git may give up after it ran them.
  }
  expect(traps.sprung()).toContain("core.fsmonitor");
});

test("variables that speak to git are not handed on", () => {
  const shop = gitShop(SHOP);
  const other = gitShop({ "other.sprag": "" });
  shop.write({ "close.sprag": MORE });
  const env = {
    PATH: process.env.PATH,
    GIT_DIR: join(other.path, ".git"),
    GIT_INDEX_FILE: join(other.path, ".git", "index"),
    GIT_EXTERNAL_DIFF: "false",
    GIT_CONFIG_COUNT: "x",
  };
  const { out, err } = shop.spragAs({ env }, "review", "--against", "HEAD", "close.sprag");
  expect(err).toBe("");
  expect(out).toContain("+2 N·m");
});

test("a link that is kept in git leads nowhere", () => {
  const shop = gitShop(SHOP);
  writeFileSync(join(shop.path, "secret.txt"), "secret");
  const id = shop.git("hash-object", "-w", "secret.txt").trim();
  shop.git("update-index", "--add", "--cacheinfo", `120000,${id},linked.sprag`);
  shop.git("commit", "--quiet", "--message", "a link");
  expect(told(shop, "--against", "HEAD", "close.sprag")).toEqual([]);
});
