// `sprag check --watch` as a process of its own: that it checks again, and how it ends. What else makes it check again is in
// `watch.long.test.ts`.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { CLEAN, TWICE } from "./texts.ts";
import { NONE, pause, QUIET, watching, withCommand, write } from "./watching.ts";

withCommand();

test("a change is checked, findings and summary anew; Ctrl-C ends with the status of the last run", async () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const sprag = watching(folder, "a.sprag");
  expect(await sprag.next("checked.")).toBe(NONE);
  await sprag.isReady();
  expect(sprag.err()).toBe("Waiting for changes. Ctrl-C ends it.\n");
  writeFileSync(join(folder.path, "a.sprag"), TWICE);
  const found = await sprag.next("checked.");
  expect(found).toBe(`\nChanged: a.sprag\n${folder.sprag("check", "a.sprag").out}`);
  expect(found).toContain("order.already-installed");
  expect(await sprag.end()).toBe(1);
});

test("it ends with 0 where the last run was free of errors", async () => {
  const folder = folderWith({ "a.sprag": TWICE });
  const sprag = watching(folder, ".");
  expect(await sprag.next("checked.")).toContain("order.already-installed");
  // As most editors save: a new file in the place of the old one.
  write(folder, "a.sprag", CLEAN);
  expect(await sprag.next("checked.")).toBe(`\nChanged: a.sprag\n${NONE}`);
  expect(await sprag.end()).toBe(0);
});

test("a file that is not there is told of and waited for", async () => {
  const folder = folderWith();
  const sprag = watching(folder, "sub/a.sprag");
  await sprag.isReady();
  expect(await sprag.rest()).toBe("");
  expect(sprag.err()).toBe("sprag: sub/a.sprag is not there.\nWaiting for changes. Ctrl-C ends it.\n");
  mkdirSync(join(folder.path, "sub"));
  await pause(QUIET);
  write(folder, "sub/a.sprag", CLEAN);
  expect(await sprag.next("checked.")).toBe(`\nChanged: sub/a.sprag\n${NONE}`);
  rmSync(join(folder.path, "sub"), { recursive: true });
  await sprag.next("Changed: ");
  expect(await sprag.end()).toBe(2);
});

test("it ends where nobody reads on", async () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const sprag = watching(folder, ".");
  await sprag.next("checked.");
  sprag.process.stdout?.destroy();
  const ended = new Promise((done) => sprag.process.on("exit", done));
  write(folder, "a.sprag", TWICE);
  expect(await ended).toBe(1);
});

test.each([
  [["--format", "json"], "--watch prints one check after another, which is no json. Leave one of the two out."],
  [["--jobs", "2"], "--watch checks again only what has changed, which one thread does best. Leave --jobs out."],
  [["--shard", "1/2"], "--watch checks all files of the call. Leave --shard out."],
  [["--report", "trace"], "--watch goes with findings: a trace is written once."],
  [["--set", "Extend=Full"], "--set: no option is called Extend. There is none."],
  [["--crib", "none.sprag"], "--crib: none.sprag is not there."],
])("%j is refused at once", (args, message) => {
  expect(folderWith({ "a.sprag": CLEAN }).sprag("check", ".", "--watch", ...args)).toEqual({
    ...{ status: 2, out: "", err: `sprag: ${message}\n` },
  });
});
