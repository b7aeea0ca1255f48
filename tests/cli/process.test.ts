// The command as it is shipped, as a process of its own: streams, statuses, permissions, and nothing left half-written.
import { type SpawnSyncOptions, spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, readdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import { shipped } from "#harness/shipped.ts";
import { CLEAN, TWICE } from "./texts.ts";

const root = join(import.meta.dirname, "..", "..");
const command = shipped();

/** Root may do anything, so that for permissions someone else has to call. */
const nobody: SpawnSyncOptions = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

function sprag(folder: Folder, args: readonly string[], options: SpawnSyncOptions = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
    ...{ cwd: folder.path, encoding: "utf8", env: { PATH: process.env.PATH } },
    ...options,
  });
  return { status, out: String(stdout), err: String(stderr) };
}

function shell(folder: Folder, script: string) {
  const { status, stdout, stderr } = spawnSync("bash", ["-c", script, "bash", process.execPath, command], {
    ...{ cwd: folder.path, encoding: "utf8" },
  });
  return { status, out: stdout, err: stderr };
}

test.each([
  [["check", "a.sprag"], 0],
  [["check", "b.sprag"], 1],
  [["check", "c.sprag"], 2],
  [["--version"], 0],
  [["chek"], 2],
])("%j ends with status %i", (args, status) => {
  expect(sprag(folderWith({ "a.sprag": CLEAN, "b.sprag": TWICE }), args).status).toBe(status);
});

test("where a part of the installation is gone, that is no finding", () => {
  const folder = folderWith({ "a.sprag": TWICE });
  cpSync(dirname(command), join(folder.path, "installed"), { recursive: true });
  const parts = join(folder.path, "installed", "parts");
  const gone = readdirSync(parts).filter((name) => name.startsWith("on-files"));
  expect(gone).not.toEqual([]);
  for (const name of gone) rmSync(join(parts, name));
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(folder.path, "installed", "sprag.js"), "check", "a.sprag"],
    {
      ...{ cwd: folder.path, encoding: "utf8" },
    },
  );
  expect(status).toBe(2);
  expect(stderr).toMatch(/^sprag: stopped by a fault of its own\./);
});

test("the bundle says the same as the sources, byte for byte", () => {
  const folder = folderWith();
  cpSync(join(root, "samples"), folder.path, { recursive: true });
  const args = ["check", ".", "--format", "json"];
  const one = sprag(folder, args).out;
  expect(one).toBe(folder.sprag(...args).out);
  expect(sprag(folder, args, { env: { PATH: process.env.PATH, LANG: "tr_TR.UTF-8", TZ: "Asia/Tokyo" } }).out).toBe(one);
});

test("a reader that goes away early ends it quietly", () => {
  const folder = folderWith({ "a.sprag": `${"value A = 3 Nn\n".repeat(1000)}` });
  const { out, err } = shell(folder, '"$1" "$2" check a.sprag --format json | head -1; exit 0');
  expect({ out, err }).toEqual({ out: "{\n", err: "" });
  expect(shell(folder, 'set -o pipefail; "$1" "$2" check a.sprag --format json | head -1').status).toBe(1);
});

test("a disk that is full is told, status 2", () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const toStream = shell(folder, '"$1" "$2" export a.sprag > /dev/full');
  expect(toStream.err).toBe("sprag: the output could not be written (ENOSPC).\n");
  expect(toStream.status).toBe(2);
  expect(sprag(folder, ["export", "a.sprag", "--out", "/dev/full"])).toEqual({
    status: 2,
    out: "",
    err: "sprag: /dev/full could not be written: the disk is full.\n",
  });
});

describe("without permission", () => {
  /** A folder that all may look into, and whose files only its owner may write. */
  function guarded(files: Readonly<Record<string, string>>): Folder {
    const folder = folderWith(files);
    for (const name of Object.keys(files)) chmodSync(join(folder.path, name), 0o444);
    return folder;
  }
  const close = (folder: Folder, mode: number) => chmodSync(folder.path, mode);

  test("to read, the file is told and the others are checked", () => {
    const folder = guarded({ "a.sprag": CLEAN, "b.sprag": CLEAN });
    chmodSync(join(folder.path, "a.sprag"), 0o000);
    close(folder, 0o755);
    const { status, out, err } = sprag(folder, ["check", "."], nobody);
    expect(err).toBe("sprag: a.sprag may not be used: no permission. Ask who owns it.\n");
    expect(out).toContain("No findings in 1 file");
    expect(status).toBe(2);
  });

  test("to look into a folder, it is told and not passed over", () => {
    const folder = guarded({ "a.sprag": CLEAN });
    mkdirSync(join(folder.path, "shut"), { mode: 0o000 });
    close(folder, 0o755);
    const { status, err } = sprag(folder, ["check", "."], nobody);
    expect({ status, err }).toEqual({
      status: 2,
      err: "sprag: shut may not be used: no permission. Ask who owns it.\n",
    });
    chmodSync(join(folder.path, "shut"), 0o755);
  });

  test("to write a file, though its folder lets files be replaced, it stays", () => {
    const folder = guarded({ "a.sprag": CLEAN, "a.html": "old" });
    close(folder, 0o777);
    expect(sprag(folder, ["export", "a.sprag", "--out", "a.html"], nobody)).toMatchObject({
      status: 2,
      err: "sprag: a.html may not be used: no permission. Ask who owns it.\n",
    });
    expect(folder.read("a.html")).toBe("old");
    expect(readdirSync(folder.path).sort()).toEqual(["a.html", "a.sprag"]);
  });

  test("to write in the folder, nothing is left behind", () => {
    const folder = guarded({ "a.sprag": CLEAN.replace("  step", "step") });
    close(folder, 0o555);
    expect(sprag(folder, ["format", "a.sprag"], nobody).status).toBe(2);
    expect(sprag(folder, ["export", "a.sprag", "--out", "b.html"], nobody).status).toBe(2);
    expect(sprag(folder, ["new", "shop"], nobody).status).toBe(2);
    close(folder, 0o755);
    expect(readdirSync(folder.path)).toEqual(["a.sprag"]);
  });
});
