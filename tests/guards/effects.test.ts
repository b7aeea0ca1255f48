// The list of effects that `npm run effects` breaks one by one follows the sources: each is found once in its file.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

interface Effect {
  readonly name: string;
  /** In `language/analysis/`. */
  readonly file: string;
  readonly find: string;
}

// The list is plain JavaScript, without types.
const list: string = "../mutation/effects/index.mjs";
const { EFFECTS: effects }: { readonly EFFECTS: readonly Effect[] } = await import(list);
const ANALYSIS = join(import.meta.dirname, "..", "..", "language", "analysis");

test("what is to be broken stands once where it is looked for, and has a name of its own", () => {
  const astray = effects.filter(
    ({ file, find }) => readFileSync(join(ANALYSIS, file), "utf8").split(find).length !== 2,
  );
  expect(astray.map(({ file, find, name }) => `${name}: ${file}: ${find}`)).toEqual([]);
  expect(new Set(effects.map(({ name }) => name)).size).toBe(effects.length);
  expect(effects.length).toBeGreaterThan(200);
});
