// The checked-in generated files are what the grammar gives today.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { root } from "./source-files.ts";

const kept = join(root, "language", "grammar", "generated");

test("the generated parser is current", () => {
  expect(staleIn(kept)).toEqual({ status: 0, output: "" });
});

test("says so: a file that was edited, one that is missing and one too many", () => {
  const copy = mkdtempSync(join(tmpdir(), "sprag-guard-"));
  try {
    cpSync(kept, copy, { recursive: true });
    writeFileSync(join(copy, "ast.ts"), "// edited\n");
    writeFileSync(join(copy, "extra.ts"), "// not from the grammar\n");
    rmSync(join(copy, "module.ts"));
    const { status, output } = staleIn(copy);
    expect(status).toBe(1);
    expect(output.match(/^\S+/gm)).toEqual(["ast.ts", "extra.ts", "module.ts"]);
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
});

function staleIn(folder: string): { status: number | null; output: string } {
  const script = join(root, ".scripts", "generated.mjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, folder], { encoding: "utf8" });
  return { status, output: stdout + stderr };
}
