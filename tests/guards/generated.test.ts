// What is said where a checked-in generated file is not what its source gives today; that all are is one of the checks that run beside
// the tests (`.scripts/check.mjs`).
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { PAGE_HASH, PAGE_SCRIPT } from "../../language/outputs/checklist/generated/page.ts";
import { root } from "./source-files.ts";

const parser = join(root, "language", "grammar", "generated");
const page = join(root, "language", "outputs", "checklist", "generated");

test("the script's hash is its own, and it cannot end its element", () => {
  expect(PAGE_HASH).toBe(`sha256-${createHash("sha256").update(PAGE_SCRIPT, "utf8").digest("base64")}`);
  expect(PAGE_SCRIPT).not.toMatch(/<\/script|<!--|[^\x20-\x7e\n]/i);
});

test("says so: a file that was edited, one that is missing and one too many", () => {
  const { status, output } = inCopy(parser, (copy) => {
    writeFileSync(join(copy, "ast.ts"), "// edited\n");
    writeFileSync(join(copy, "extra.ts"), "// not from the grammar\n");
    rmSync(join(copy, "module.ts"));
    return staleIn("grammar", copy);
  });
  expect(status).toBe(1);
  expect(output.match(/^\S+/gm)).toEqual(["ast.ts", "extra.ts", "module.ts"]);
});

test("says so: a script that was edited", () => {
  const { status, output } = inCopy(page, (copy) => {
    writeFileSync(join(copy, "page.ts"), "// edited\n");
    return staleIn("page", copy);
  });
  expect({ status, files: output.match(/^\S+/gm) }).toEqual({ status: 1, files: ["page.ts"] });
});

function inCopy<Result>(kept: string, work: (copy: string) => Result): Result {
  const copy = mkdtempSync(join(tmpdir(), "sprag-guard-"));
  try {
    cpSync(kept, copy, { recursive: true });
    return work(copy);
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

function staleIn(...args: readonly string[]): { status: number | null; output: string } {
  const script = join(root, ".scripts", "generated.mjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...args], { encoding: "utf8" });
  return { status, output: stdout + stderr };
}
