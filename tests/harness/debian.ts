// Programs of Debian that some tests compare with. Where one is missing that is said aloud, and under CI=true it is a failure.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished } from "vitest";

/** Whether it can be run; `what` is left out where not. */
export function isInstalled(program: string, debianPackage: string, what: string): boolean {
  if (spawnSync(program, ["--version"]).error === undefined) return true;
  console.log(`${program} is not installed (Debian package ${debianPackage}): ${what} left out`);
  expect(process.env.CI ?? "").not.toBe("true");
  return false;
}

/** What it prints; fails where it does. */
export function printedBy(program: string, ...args: readonly string[]): string {
  const { stdout, stderr, status, error } = spawnSync(program, args, { encoding: "utf8", maxBuffer: 1 << 26 });
  if (error !== undefined || status !== 0) throw new Error(`${program}: ${error?.message ?? stderr}`);
  return stdout;
}

/** A folder that is gone after the test. */
export function folderForTest(): string {
  const folder = mkdtempSync(join(tmpdir(), "sprag-format-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
