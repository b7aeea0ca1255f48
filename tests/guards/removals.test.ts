// Nothing removes a folder that it reached by going up from a path: where the path is empty, that is the folder it is called from, or the
// one above it. What is removed is named as it was made.
import { expect, test } from "vitest";
import { allFiles, type SourceFile } from "./source-files.ts";

/** Put together from parts, so that this file does not find itself. */
const REMOVES = ["rm", "rmSync", "rmdir", "rmdirSync"].join("|");
const UPWARDS = new RegExp(`\\b(?:${REMOVES})\\(\\s*(?:path\\.)?(?:dir${"name"}\\(|(?:join|resolve)\\([^;]*?"\\.\\.")`);

function complaints({ path, text }: SourceFile): string[] {
  const found = UPWARDS.exec(text)?.[0];
  return found === undefined ? [] : [`${path}: removes what is above a path: ${found}`];
}

test("no file removes what is above a path", () => {
  const scripts = allFiles.filter(({ path }) => /\.m?[jt]s$/.test(path));
  expect(scripts.length).toBeGreaterThan(100);
  expect(scripts.flatMap(complaints)).toEqual([]);
});

test.each([
  `afterAll(() => rmSync(${"dirname"}(command), { recursive: true, force: true }));`,
  `${"rmSync"}(join(command, ".."), { recursive: true });`,
  `${"rmSync"}(\n  resolve(file, "..", "out"),\n  { recursive: true },\n);`,
  `await rm(path.${"dirname"}(file), { recursive: true });`,
])("says so: %s", (text) => {
  expect(complaints({ path: "tests/a.ts", text })).toHaveLength(1);
});

test.each(["rmSync(folder, { recursive: true });", 'rmSync(join(folder.path, "new"), { recursive: true });'])(
  "is silent: %s",
  (text) => {
    expect(complaints({ path: "tests/a.ts", text })).toEqual([]);
  },
);
