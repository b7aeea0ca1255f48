// Which files a call means, and what is said of those that cannot be used.
import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import { CLEAN } from "./texts.ts";

/** The files that a check of these paths lists. */
function listed(folder: Folder, ...args: string[]): readonly string[] {
  const { out } = folder.sprag("check", ...args, "--format", "json");
  return (JSON.parse(out) as { files: { path: string }[] }).files.map((file) => file.path);
}

describe("a folder", () => {
  test("means every .sprag file below it, and no other", () => {
    const folder = folderWith({
      ...{ "a.sprag": CLEAN, "sub/deep/b.sprag": CLEAN, "sub/notes.txt": "x", "c.sprag.bak": CLEAN },
      ...{ ".hidden/d.sprag": CLEAN, "node_modules/p/e.sprag": CLEAN, "sub/node_modules/f.sprag": CLEAN },
    });
    expect(listed(folder, ".")).toEqual(["a.sprag", "sub/deep/b.sprag"]);
    expect(listed(folder, "sub")).toEqual(["sub/deep/b.sprag"]);
  });

  test("leaves out what .gitignore leaves out, in its own folder and in those above and below", () => {
    const folder = folderWith({
      ".gitignore": "out/\n*.draft.sprag\n",
      ...{ "a.sprag": CLEAN, "a.draft.sprag": CLEAN, "out/b.sprag": CLEAN, "sub/c.sprag": CLEAN, "sub/d.sprag": CLEAN },
      "sub/.gitignore": "/c.sprag\n!e.draft.sprag\n",
      "sub/e.draft.sprag": CLEAN,
      "sub/below/c.sprag": CLEAN,
    });
    expect(listed(folder, ".")).toEqual(["a.sprag", "sub/below/c.sprag", "sub/d.sprag", "sub/e.draft.sprag"]);
    expect(listed(folder, "sub")).toEqual(["sub/below/c.sprag", "sub/d.sprag", "sub/e.draft.sprag"]);
  });

  test("or file that is named is looked at, whatever .gitignore says", () => {
    const folder = folderWith({ ".gitignore": "out/\n", "out/b.sprag": CLEAN });
    expect(listed(folder, "out")).toEqual(["out/b.sprag"]);
    expect(listed(folder, "out/b.sprag")).toEqual(["out/b.sprag"]);
  });

  test("that leads back to itself comes to an end", () => {
    const folder = folderWith({ "sub/a.sprag": CLEAN });
    symlinkSync("..", join(folder.path, "sub", "up"));
    symlinkSync("..", join(folder.path, "sub", "up.sprag"));
    expect(listed(folder, ".")).toEqual(["sub/a.sprag"]);
  });

  test.each([
    ["without a .sprag file", { "empty/notes.txt": "x" }, "holds no .sprag file."],
    [
      "with none that .gitignore lets through",
      { "empty/.gitignore": "*.sprag\n", "empty/a.sprag": CLEAN },
      "holds no .sprag file that .gitignore does not leave out.",
    ],
  ])("%s is told", (_title, files, message) => {
    expect(folderWith(files).sprag("check", "empty")).toEqual({ status: 2, out: "", err: `sprag: empty ${message}\n` });
  });
});

test("paths begin at the root, wherever the call is made", () => {
  const folder = folderWith({ "shop/work/a.sprag": CLEAN });
  const cwd = join(folder.path, "shop", "work");
  const { out } = folder.spragAs({ cwd }, "check", "a.sprag", "--root", "../..", "--format", "json");
  expect(out).toContain('"path": "shop/work/a.sprag"');
});

describe("what cannot be used is told with its reason, status 2", () => {
  const tell = (folder: Folder, path: string) => {
    const { status, err } = folder.sprag("check", path, "fine.sprag");
    return status === 2 ? err : `status ${status}`;
  };
  const fine = { "fine.sprag": CLEAN };

  test.each([
    ["zero bytes", Buffer.from("part\0A"), "is not text: it holds zero bytes."],
    ["UTF-16", Buffer.from("\ufeffpart A", "utf16le"), "is UTF-16 text. Save it as UTF-8."],
    [
      "Latin 1",
      Buffer.from('part A "a"\npart Größe', "latin1"),
      "is not UTF-8 text: see line 2, character 8. Save it as UTF-8.",
    ],
    [
      "a sign cut off at the end",
      Buffer.from('// é\npart A "é"').subarray(0, -2),
      "is not UTF-8 text: see line 2, character 9. Save it as UTF-8.",
    ],
  ])("%s", (_title, bytes, message) => {
    expect(tell(folderWith({ ...fine, "a.sprag": bytes }), "a.sprag")).toBe(`sprag: a.sprag ${message}\n`);
  });

  test("a file of 100 MB", () => {
    const folder = folderWith({ ...fine, "a.sprag": "" });
    truncateSync(join(folder.path, "a.sprag"), 100_000_000);
    expect(tell(folder, "a.sprag")).toBe("sprag: a.sprag is too large: 100 MB; 24 MB is the most that is read.\n");
  });

  test("a pipe, which would never end", () => {
    const folder = folderWith(fine);
    execFileSync("bash", ["-c", "mkfifo a.sprag"], { cwd: folder.path });
    expect(tell(folder, "a.sprag")).toBe("sprag: a.sprag is a pipe or a device, not a file.\n");
  });

  test("a link to nothing, in a circle, or out of the root", () => {
    const folder = folderWith({ ...fine, "root/fine.sprag": CLEAN, "secret.sprag": CLEAN });
    const root = join(folder.path, "root");
    symlinkSync("nowhere", join(root, "a.sprag"));
    symlinkSync("b.sprag", join(root, "b.sprag"));
    symlinkSync("../secret.sprag", join(root, "c.sprag"));
    const { err, status } = folder.spragAs({ cwd: root }, "check", ".");
    expect(status).toBe(2);
    expect(err).toBe(
      [
        "sprag: a.sprag is a link to a file that is not there.",
        "sprag: b.sprag is a link that leads in a circle.",
        `sprag: c.sprag is a link that leads outside the root ${root}. Name a folder that holds it with --root.`,
        "",
      ].join("\n"),
    );
  });

  test("a path outside the root, through a file, too long, or empty", () => {
    const folder = folderWith({ ...fine, "root/fine.sprag": CLEAN });
    const root = join(folder.path, "root");
    const told = (path: string, ...more: string[]) => folder.spragAs({ cwd: root }, "check", path, ...more).err;
    expect(told("../fine.sprag", "--root", ".")).toBe(
      `sprag: ../fine.sprag lies outside the root ${root}. Name a folder that holds it with --root.\n`,
    );
    expect(told("fine.sprag/a.sprag")).toContain("is not there: part of its path is a file, not a folder.");
    expect(told("a".repeat(300))).toContain("has a name too long for this machine.");
    expect(told("")).toBe("sprag: A path is empty. Give a file or a folder.\n");
  });

  test.each([
    ["nowhere", "The root nowhere is not there."],
    ["fine.sprag", "The root fine.sprag is a file. Give the folder it lies in."],
  ])("the root %s", (root, message) => {
    expect(folderWith(fine).sprag("check", ".", "--root", root)).toEqual({
      status: 2,
      out: "",
      err: `sprag: ${message}\n`,
    });
  });
});

test("names of all kinds are found, and shown so that they do no harm", () => {
  const names = [
    "two words.sprag",
    "Lager-größe.sprag",
    "軸受.sprag",
    "-flag.sprag",
    "a\nb\u001b[31m.sprag",
    "$(x).sprag",
  ];
  const folder = folderWith(Object.fromEntries(names.map((name) => [name, "value A = 3 Nn\n"])));
  expect(listed(folder, ".")).toEqual([...names].sort());
  const { out } = folder.sprag("check", ".");
  expect(out).toContain("a<0A>b<1B>[31m.sprag:1:13  error  units.unknown");
  expect(out).not.toContain("\u001b");
});

test("an empty file has no findings", () => {
  const folder = folderWith({ "a.sprag": "" });
  writeFileSync(join(folder.path, "b.sprag"), "\ufeff");
  mkdirSync(join(folder.path, "sub"));
  expect(folder.sprag("check", ".")).toMatchObject({ status: 0, err: "" });
});

test("paths outside the working directory bring the folder that holds them all as root", () => {
  const folder = folderWith({ "here/a.sprag": CLEAN, "shop/b.sprag": CLEAN, "shop/lines/c.sprag": CLEAN });
  const paths = (...given: string[]): string[] => {
    const { out, status } = folder.spragAs({ cwd: join(folder.path, "here") }, "check", ...given, "--format", "json");
    expect(status).toBe(0);
    return (JSON.parse(out) as { files: { path: string }[] }).files.map(({ path }) => path);
  };
  expect(paths("../shop/lines/c.sprag")).toEqual(["c.sprag"]);
  expect(paths("../shop/lines/c.sprag", "../shop/b.sprag")).toEqual(["b.sprag", "lines/c.sprag"]);
  expect(paths("../shop")).toEqual(["b.sprag", "lines/c.sprag"]);
  expect(paths("a.sprag", "../shop/b.sprag")).toEqual(["here/a.sprag", "shop/b.sprag"]);
  expect(paths("a.sprag")).toEqual(["a.sprag"]);
});
