// The sub-commands: what each is for, and the file that defines it. A call loads only those that it names, since to load all takes longer
// than most have to do.
import type { Definition } from "./call.ts";

interface Listed {
  readonly purpose: string;
  readonly load: () => Promise<Definition>;
}

/** By name, in the order of the help. */
export const COMMANDS: Readonly<Record<string, Listed>> = {
  check: {
    purpose: "Find what is wrong in files and folders.",
    load: async () => (await import("./on-files.ts")).defineCheck,
  },
  merge: {
    purpose: "Put the shards of a check together.",
    load: async () => (await import("./on-files.ts")).defineMerge,
  },
  export: {
    purpose: "Write a document from a procedure.",
    load: async () => (await import("./on-documents.ts")).defineExport,
  },
  review: {
    purpose: "Tell what a change means: safety, values, order, items, words.",
    load: async () => (await import("./on-documents.ts")).defineReview,
  },
  format: {
    purpose: "Lay files out the standard way: one fact on a line, units in their standard spelling.",
    load: async () => (await import("./on-files.ts")).defineFormat,
  },
  explain: {
    purpose: "Print the page of a rule, or how the values at a line came about; without either, list all rules.",
    load: async () => (await import("./on-files.ts")).defineExplain,
  },
  convert: {
    purpose: "Convert one quantity to another unit.",
    load: async () => (await import("./convert.ts")).defineConvert,
  },
  new: {
    purpose: "Begin a shop library and a first procedure in a new folder.",
    load: async () => (await import("./new.ts")).defineNew,
  },
  arrange: {
    purpose: "Propose which part goes where on a ring, for the least unbalance.",
    load: async () => (await import("./on-files.ts")).defineArrange,
  },
  verify: {
    purpose: "Hold a filled checklist against the procedure it was made from.",
    load: async () => (await import("./on-documents.ts")).defineVerify,
  },
  outline: {
    purpose: "Print the steps of a file as plain lines, one fact on each, for git diff.",
    load: async () => (await import("./on-files.ts")).defineOutline,
  },
  serve: {
    purpose: "Serve an editor: findings, completion, quick fixes and the rest, as you write.",
    load: async () => (await import("./serve.ts")).defineServe,
  },
};

/** Definitions by the name of their sub-command. */
export type Definitions = ReadonlyMap<string, Definition>;

/** The definitions of the sub-commands that a call can mean: those that are among its words. */
export async function definitionsFor(args: readonly string[]): Promise<Definitions> {
  const named = Object.entries(COMMANDS).filter(([name]) => args.includes(name));
  return new Map(await Promise.all(named.map(async ([name, { load }]) => [name, await load()] as const)));
}
