// Samples with their procedures three times over, beside what they use: one that is edited has others in front of it and behind it.
import { isUse } from "#grammar/generated/ast.ts";
import { parseText } from "#syntax/parse.ts";
import { resolveUse } from "#syntax/scope.ts";
import { plainTexts } from "./samples.ts";

export interface Threefold {
  readonly path: string;
  /** Of the sample and of all that it uses. */
  readonly texts: ReadonlyMap<string, string>;
}

/** @param isWanted of samples without a procedure nothing is made */
export function threefoldSamples(isWanted: (path: string) => boolean): readonly Threefold[] {
  return [...plainTexts]
    .filter(([path, text]) => isWanted(path) && /^procedure /m.test(text))
    .map(([path, text]) => ({ path, texts: new Map(usedBy(path)).set(path, threefold(text)) }));
}

/** The texts that a sample uses, by whatever way. */
function usedBy(path: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const waiting = [path];
  for (const one of waiting) {
    for (const item of parseText(plainTexts.get(one) ?? "", one).file.items) {
      const used = isUse(item) ? (resolveUse(one, item.path) ?? "") : "";
      const text = plainTexts.get(used);
      if (text === undefined || found.has(used)) continue;
      found.set(used, text);
      waiting.push(used);
    }
  }
  return found;
}

function threefold(text: string): string {
  const [declared = "", ...procedures] = text.split(/^(?=procedure )/m);
  const named = (nth: string) =>
    procedures.map((one) => one.replace(/^procedure (\w+)/, `procedure $1${nth}`)).join("\n");
  return [declared, named(""), "\n", named("Again"), "\n", named("Last")].join("");
}
