// `sprag check --watch` as a process of its own: all that makes it check again, and what it says then.
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { CLEAN, TWICE } from "./texts.ts";
import { NONE, pause, QUIET, watching, watchingOn, withCommand, write } from "./watching.ts";

withCommand();

test("files that come and go are noticed, also in folders that are new", async () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const sprag = watching(folder, ".");
  await sprag.next("checked.");
  write(folder, "b.sprag", TWICE);
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: b\.sprag\n[\s\S]* in 2 files; /);
  mkdirSync(join(folder.path, "new", "deep"), { recursive: true });
  expect(await sprag.rest()).toBe("");
  write(folder, "new/deep/c.sprag", CLEAN);
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: new\/deep\/c\.sprag\n[\s\S]* in 3 files; /);
  rmSync(join(folder.path, "new"), { recursive: true });
  rmSync(join(folder.path, "b.sprag"));
  expect(await sprag.next("checked.")).toBe(`\nChanged: b.sprag, new/deep/c.sprag\n${NONE}`);
  mkdirSync(join(folder.path, "new"));
  expect(await sprag.rest()).toBe("");
  write(folder, "new/d.sprag", CLEAN);
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: new\/d\.sprag\n/);
});

test("so are files that a file uses, the crib, and one that was not there", async () => {
  const folder = folderWith({
    "job/a.sprag": `use "../shop/parts.sprag"
use "../later/more.sprag"
procedure Close "Close" {
  step install Screw
  step tighten Screw to 45 N·m with Wrench
}
`,
    "shop/parts.sprag": `tool Wrench "torque wrench" { torque 8 .. 60 N·m }\npart Screw "cover screw"\n`,
    "stock/crib.sprag": `use "../shop/parts.sprag"
crib MainShop "tool crib" {
  item "TW-0117" for Wrench { torque 10 .. 60 N·m  calibrated until 2027-01-31 }
}
`,
  });
  const sprag = watching(folder, "job/a.sprag", "--crib", "stock/crib.sprag", "--on", "2026-05-04");
  const first = await sprag.next("checked.");
  expect(first).toContain("later/more.sprag");
  expect(first).not.toContain("trace.calibration");
  const crib = folder.read("stock/crib.sprag");
  write(folder, "stock/crib.sprag", crib.replace("2027-01-31", "2026-01-31"));
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: stock\/crib\.sprag\n[\s\S]*trace\.calibration/);
  write(folder, "shop/parts.sprag", folder.read("shop/parts.sprag").replace("8 .. 60", "8 .. 30"));
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: shop\/parts\.sprag\n[\s\S]*limits\.tool-range/);
  mkdirSync(join(folder.path, "later"));
  await sprag.rest();
  write(folder, "later/more.sprag", 'part More "more"\n');
  expect(await sprag.next("checked.")).toMatch(/^\nChanged: later\/more\.sprag\n/);
  // A crib that cannot be used is told of, and waited for.
  write(folder, "stock/crib.sprag", crib.replace("for Wrench", "for Wrnch"));
  expect(await sprag.next("Changed: ")).toBe("\nChanged: stock/crib.sprag\n");
  await pause(QUIET);
  expect(sprag.err()).toContain("--crib: stock/crib.sprag has 1 error.");
  write(folder, "stock/crib.sprag", crib);
  expect(await sprag.next("checked.")).toContain("limits.tool-range");
});

test("what is saved at once is checked once; what is no file of the call, or the same again, not at all", async () => {
  const files = Object.fromEntries(["a", "b", "c", "d", "e"].map((name) => [`${name}.sprag`, CLEAN]));
  const folder = folderWith(files);
  const sprag = watching(folder, ".");
  await sprag.next("checked.");
  for (const name of Object.keys(files)) write(folder, name, TWICE);
  const found = await sprag.next("checked.");
  expect(found.match(/Changed: /g)).toHaveLength(1);
  expect(found).toContain("Changed: a.sprag, b.sprag, c.sprag and 2 more\n");
  write(folder, "notes.txt", "of no matter");
  mkdirSync(join(folder.path, "node_modules"));
  write(folder, "node_modules/x.sprag", TWICE);
  expect(await sprag.rest()).toBe("");
});

test("each run says what a check by itself says, whatever was changed before it", async () => {
  const part = (name: string): string => `part ${name} "${name}"\n`;
  const user = `use "lib.sprag"\nprocedure Fit "Fit" {\n  step install Seal\n}\n`;
  const folder = folderWith({ "lib.sprag": part("Seal"), "a.sprag": user, "b.sprag": CLEAN });
  const sprag = watching(folder, ".");
  await sprag.next("checked.");
  const changes: readonly (readonly [string, string])[] = [
    ["lib.sprag", part("Ring")],
    ["a.sprag", user.replace("install", "remove")],
    ["b.sprag", `use "a.sprag"\n${CLEAN}`],
    ["lib.sprag", part("Seal") + part("Ring")],
    ["a.sprag", `${part("Spare")}${user}`],
    ["b.sprag", CLEAN],
  ];
  for (const [path, text] of changes) {
    write(folder, path, text);
    expect(await sprag.next("checked.")).toBe(`\nChanged: ${path}\n${folder.sprag("check", ".").out}`);
  }
});

/** As where a machine has no more watches to give away; the code is that of inotify_add_watch(2). */
const NO_WATCHES = `data:text/javascript,import fs from "node:fs"; import { syncBuiltinESMExports } from "node:module";
fs.watch = () => { throw Object.assign(new Error("no"), { code: "ENOSPC" }); }; syncBuiltinESMExports();`;

test("where the machine does not say what changes, it looks by itself", async () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const sprag = watchingOn(["--import", NO_WATCHES], folder, ["."]);
  expect(await sprag.next("checked.")).toBe(NONE);
  write(folder, "a.sprag", TWICE);
  expect(await sprag.next("checked.")).toContain("order.already-installed");
  mkdirSync(join(folder.path, "sub"));
  write(folder, "sub/b.sprag", CLEAN);
  expect(await sprag.next("checked.")).toContain("in 2 files");
  expect(await sprag.end()).toBe(1);
});
