// What Sprag is measured beside: the same content as YAML whose form alone is checked, and Chevrotain going through the same text without
// making a tree. Milliseconds, once the process is warm; theirs and ours are measured in turns, so that both meet the same machine.
import { langiumServices } from "#harness/langium-services.ts";
import { parseText } from "#syntax/parse.ts";
import { yamlCheck, yamlOf } from "./as-yaml.ts";
import { stageTimes, total } from "./stages.ts";
import type { Times } from "./timing.ts";

export interface Beside {
  readonly ours: Times;
  readonly theirs: Times;
}

/** The whole check of a text, and `yaml` with `ajv`. */
export function besideYaml(text: string, runs: number): Beside {
  const yaml = yamlOf(parseText(text, "bench.sprag").file);
  const fits = yamlCheck(yaml);
  return inTurns(
    runs,
    () => total(stageTimes(text)),
    () =>
      taken(() => {
        if (!fits(yaml)) throw new Error("The content does not fit the schema that was made from it");
      }),
  );
}

/** Reading a text, and Chevrotain over Langium's rules that makes nothing of it. */
export function besideChevrotain(text: string, runs: number): Beside {
  const { CompletionParser } = langiumServices().parser;
  return inTurns(
    runs,
    () => stageTimes(text).parse,
    () =>
      taken(() => {
        const { tokenIndex, tokens } = CompletionParser.parse(text);
        if (tokenIndex < tokens.length)
          throw new Error(`Chevrotain stopped at token ${tokenIndex} of ${tokens.length}`);
      }),
  );
}

function inTurns(runs: number, ours: () => number, theirs: () => number): Beside {
  const warmUp = 3;
  const times = { ours: [] as number[], theirs: [] as number[] };
  for (let run = -warmUp; run < runs; run++) {
    const [own, other] = [ours(), theirs()];
    if (run < 0) continue;
    times.ours.push(own);
    times.theirs.push(other);
  }
  return { ours: times.ours.sort((a, b) => a - b), theirs: times.theirs.sort((a, b) => a - b) };
}

function taken(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
