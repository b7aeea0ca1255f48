// What `.gitignore` files leave out, for the command and the server alike. Knows texts and paths, and reads nothing.
import ignore, { type Ignore } from "ignore";

/** What one `.gitignore` says. */
export interface IgnoreRules {
  /** The folder that holds it, from the root, with `/`; empty for the root. */
  readonly base: string;
  readonly rules: Ignore;
}

export function ignoreRules(base: string, text: string): IgnoreRules {
  return { base, rules: ignore().add(text) };
}

/**
 * Whether the rules leave out this very file or folder; the deepest rule that speaks of it decides.
 * @param path from the root; of a folder with `/` at its end
 * @param rules of the folders it lies in, from the root down
 */
export function isIgnored(path: string, rules: readonly IgnoreRules[]): boolean {
  for (const { base, rules: own } of [...rules].reverse()) {
    const verdict = own.test(base === "" ? path : path.slice(base.length + 1));
    if (verdict.ignored) return true;
    if (verdict.unignored) return false;
  }
  return false;
}

/** Whether a file or folder is left out by its name alone, whatever the rules say. */
export function isSkipped(name: string): boolean {
  return name.startsWith(".") || name === "node_modules";
}
