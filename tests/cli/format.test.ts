// `sprag format` on files: what is written, what is left alone, and what is said of it.
import { chmodSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { CLEAN } from "./texts.ts";

const UNTIDY = CLEAN.replace("  step", "step").replaceAll("\n", "\r\n");
const OPEN = 'part Seal "shaft seal"\nprocedure Fit "Fit" {\n  step install Seal\n';

describe("a file that is not laid out", () => {
  test("is written the standard way and named", () => {
    const folder = folderWith({ "a.sprag": UNTIDY, "b.sprag": CLEAN });
    expect(folder.sprag("format", ".")).toEqual({
      status: 0,
      out: "a.sprag\n",
      err: "2 files: 1 changed, 1 as they should be.\n",
    });
    expect(folder.read("a.sprag")).toBe(CLEAN);
  });

  test("is only named with --check, status 1", () => {
    const folder = folderWith({ "a.sprag": UNTIDY });
    expect(folder.sprag("format", "a.sprag", "--check")).toEqual({
      status: 1,
      out: "a.sprag\n",
      err: "1 file: 1 would be changed, 0 as they should be.\n",
    });
    expect(folder.read("a.sprag")).toBe(UNTIDY);
  });

  test("keeps its mode", () => {
    const folder = folderWith({ "a.sprag": UNTIDY });
    chmodSync(join(folder.path, "a.sprag"), 0o600);
    folder.sprag("format", "a.sprag");
    expect(statSync(join(folder.path, "a.sprag")).mode & 0o777).toBe(0o600);
  });

  test("loses its byte order mark, and that is a change", () => {
    const folder = folderWith({ "a.sprag": `\ufeff${CLEAN}` });
    expect(folder.sprag("format", "a.sprag").out).toBe("a.sprag\n");
    expect(folder.read("a.sprag")).toBe(CLEAN);
    expect(folder.sprag("format", "a.sprag").out).toBe("");
  });
});

test("a file that is laid out is not written at all", () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const before = statSync(join(folder.path, "a.sprag"));
  expect(folder.sprag("format", "a.sprag", "--check").status).toBe(0);
  expect(folder.sprag("format", "a.sprag").status).toBe(0);
  const after = statSync(join(folder.path, "a.sprag"));
  expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
});

test("a file that does not parse stays as it is, what is in the way is shown, and the others are done", () => {
  const folder = folderWith({ "a.sprag": OPEN, "b.sprag": UNTIDY });
  const { status, out, err } = folder.sprag("format", ".");
  expect({ status, out }).toEqual({ status: 2, out: "b.sprag\n" });
  expect(err).toContain("sprag: a.sprag stays as it is: not all of it can be read.\n");
  expect(err).toContain("a.sprag:2:21  error  syntax.unclosed");
  expect(folder.read("a.sprag")).toBe(OPEN);
  expect(folder.read("b.sprag")).toBe(CLEAN);
});

test("only what is in the way of the layout is shown, not what else is wrong", () => {
  const text = `${OPEN}  step install Sael\n`;
  const { err } = folderWith({ "a.sprag": text }).sprag("format", "a.sprag");
  expect(err).toContain("syntax.unclosed");
  expect(err).not.toContain("names.unknown");
});

test("errors of meaning are no hindrance", () => {
  const text = 'procedure Fit "Fit" {\n  step install Seal\n}\n';
  expect(folderWith({ "a.sprag": text }).sprag("format", "a.sprag")).toMatchObject({ status: 0, out: "" });
});

test("what cannot be read or found is told, status 2", () => {
  const folder = folderWith({ "a.sprag": Buffer.from([0x70, 0]), "b.sprag": UNTIDY });
  const { status, out, err } = folder.sprag("format", "a.sprag", "b.sprag", "c.sprag", "--check");
  expect({ status, out }).toEqual({ status: 2, out: "b.sprag\n" });
  expect(err).toContain("sprag: c.sprag is not there.\n");
  expect(err).toContain("sprag: a.sprag is not text: it holds zero bytes.\n");
});
