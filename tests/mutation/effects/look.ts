// One process that tries broken followers: reads each procedure of the plan once, and follows all of them with one bundle after the
// other until what it finds differs from what must be found. Knows nothing of what is broken.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { OnPaper } from "../../analysis/followed.ts";
import { readOnPaper } from "../../analysis/run-on-paper.ts";
import { differencesIn, type Wanted } from "../../oracles/comparison.ts";

/** After so many procedures a sign of life is due. */
const FEW = 20;

const [path = "", show] = process.argv.slice(2);
const plan: readonly Wanted[] = JSON.parse(readFileSync(path, "utf8"));
const read: OnPaper[] = [];

process.on("disconnect", () => process.exit());
process.on("message", async (bundle: string) => process.send?.({ said: await look(bundle) }));

async function look(bundle: string): Promise<string> {
  const { followed }: typeof import("../../analysis/followed.ts") = await import(pathToFileURL(bundle).href);
  for (const [at, wanted] of plan.entries()) {
    const one = read[at] ?? readOnPaper(wanted.text);
    read[at] = one;
    const different = differencesOf(() => differencesIn(wanted, followed(one).facts));
    if (at % FEW === 0) process.send?.({ at });
    const [first] = different;
    if (first === undefined) continue;
    const said = `caught after ${at + 1}: ${first.slice(0, 60)}`;
    return show === "show" ? [said, ...different, wanted.text].join("\n") : said;
  }
  return "NOT CAUGHT";
}

/** That it fails is a difference, too. */
function differencesOf(look: () => readonly string[]): readonly string[] {
  try {
    return look();
  } catch (error) {
    return [`fails: ${error}`.split("\n")[0] ?? ""];
  }
}
