// In place of `vitest` in the bundle of tests: keeps the tests as a list instead of running them, with vitest's own `expect`.
// Holds as much of it as the bundled tests use; knows no mutants.
import { readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { chai, expect } from "vitest";

/** Each test of the bundle, in the order of the files: `{ file, name, run }`. */
export const tests = [];

/** Tests that are named from now on stand in this file. */
export function beginFile(path) {
  file = path;
}

let file = "";
/** The file of the test that runs. */
let inHand = "";
/** The bundle lies beside the copy. */
const tree = fileURLToPath(new URL("tree", import.meta.url));
const groups = [];

// The matchers that want vitest's own surroundings.
chai.use(({ Assertion }, { addMethod }) => {
  addMethod(Assertion.prototype, "toMatchFileSnapshot", function toMatchFileSnapshot(path) {
    expect(this._obj).toBe(readFileSync(resolve(tree, dirname(inHand), path), "utf8"));
  });
  addMethod(Assertion.prototype, "toMatchInlineSnapshot", function toMatchInlineSnapshot(wanted) {
    expect(`"${this._obj}"`).toBe(withoutIndent(wanted));
  });
});

export { expect };

export function test(name, ...rest) {
  const run = rest.find((one) => typeof one === "function");
  const of = file;
  tests.push({ file, name: [...groups, name].join(" > "), run: () => runAndFinish(run, of) });
}
test.each = (rows) => forEachOf(rows, test);

/** What the test in hand wants done behind it, last first, whether it failed or not. */
export function onTestFinished(call) {
  atEnd.push(call);
}

const atEnd = [];

async function runAndFinish(run, of) {
  inHand = of;
  try {
    await run();
  } finally {
    while (atEnd.length > 0) await atEnd.pop()();
  }
}

export function describe(name, ...rest) {
  groups.push(name);
  rest.find((one) => typeof one === "function")();
  groups.pop();
}
describe.each = (rows) => forEachOf(rows, describe);

function forEachOf(rows, make) {
  return (name, ...rest) => {
    const run = rest.find((one) => typeof one === "function");
    for (const [at, row] of rows.entries())
      make(`${name} #${at + 1}`, () => (Array.isArray(row) ? run(...row) : run(row)));
  };
}

/** A snapshot is written as far in as the code around it. */
function withoutIndent(snapshot) {
  const lines = snapshot.split("\n");
  const indent = /^\s*/.exec(lines[1] ?? "")[0];
  return lines
    .map((line) => (line.startsWith(indent) ? line.slice(indent.length) : line))
    .join("\n")
    .trim();
}
