// Which names are near one: the time that takes must not hang on how long a name is.
import { expect, test } from "vitest";
import { told } from "#harness/check.ts";
import { nearestNames } from "#syntax/edit-distance.ts";

const LETTERS = 10_000;

test("a name of ten thousand letters is looked up at once, and told short", () => {
  const long = "A".repeat(LETTERS);
  const from = performance.now();
  const said = told(`part ${long} "part"\nprocedure P { step inspect ${long}B }\n`, "names.unknown");
  // Letter by letter it takes seconds.
  expect(performance.now() - from).toBeLessThan(2_000);
  expect(said).toContain(`“${"A".repeat(60)}…” is not declared.`);
  expect(said.length).toBeLessThan(500);
});

test("names of two hundred letters are still compared", () => {
  const name = (last: string): string => "Left".repeat(49) + last;
  expect(name("Foot")).toHaveLength(200);
  expect(nearestNames(name("Foto"), [name("Foot"), "Foot"])).toEqual([name("Foot")]);
});
