// Runs one test file of the suite on a follower of which one effect is broken. Changes the source only in vitest's memory.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { startVitest } from "vitest/node";

/** Whether the test that the effect names fails. */
export async function failsBroken(root, { file, find, by, test }) {
  const broken = join(root, "language", "analysis", file);
  const plugin = {
    name: "break",
    enforce: "pre",
    load: (id) => (id === broken ? readFileSync(id, "utf8").replace(find, () => by) : null),
  };
  const options = { watch: false, root, config: join(root, "tests", "vitest.config.ts"), reporters: [{}] };
  const vitest = await startVitest("test", [test], options, { plugins: [plugin] });
  const ran = vitest.state.getFiles();
  await vitest.close();
  if (ran.length !== 1) throw new Error(`${test}: ${ran.length} files of that name`);
  return ran.some(({ result }) => result?.state === "fail");
}
