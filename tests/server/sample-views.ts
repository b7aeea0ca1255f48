// The samples, or any texts, as features of the server see them, without a client: for properties over very many places.
import { plainTexts } from "#harness/samples.ts";
import { folderAt } from "#server/folder.ts";
import { type FileView, viewOf } from "#server/view.ts";

/** A view of each file, by path. All belong to one folder at one moment. */
export async function viewsOf(texts: ReadonlyMap<string, string> = plainTexts): Promise<ReadonlyMap<string, FileView>> {
  const uriOf = (path: string): string => `${ROOT}/${path}`;
  const textAt = (uri: string): string | null => texts.get(decodeURIComponent(uri.slice(ROOT.length + 1))) ?? null;
  const folder = folderAt(
    ROOT,
    {
      list: async () => [...texts.keys()].map(uriOf),
      read: async (uris) => uris.map(textAt),
      bytes: async (uris) => uris.map(() => null),
      present: async (uris) => uris.map(() => true),
    },
    () => "2026-05-04",
  );
  await folder.readAll(async () => true);
  const workspace = await folder.settled();
  return new Map(
    [...texts.keys()].flatMap((path) => {
      const view = viewOf(folder, workspace, path);
      return view === null ? [] : [[path, view] as const];
    }),
  );
}

const ROOT = "file:///shop";

/** Texts as they are while somebody writes, and worse: half a line, a lost brace, nothing, odd line ends and letters. */
export const ROUGH_TEXTS: readonly string[] = [
  "",
  "\r\n\r\n",
  "}",
  'use "',
  'use "library.sprag"\r\npart Cover "cover" {\r\n  needs \r\n}\r\nprocedure P "p" {\r\n  step install Cov',
  'part A[1..4] "a" { seats in B by\nring B "b" { count\nprocedure P "p" {\n  repeat n in 1, 2 { step install A[n\n  step Named { tighten A[al\n}',
  'procedure "no name" {\n  task {\n    step "Push segment {n} 🛠 into its seat" {\n      check "𝔄 fits" if it fails { return to\n',
  "procedure P {\n  step S { within 5 min after S after S before }\n  step perform P\n  when O is { step x }\n  perform\n}\n}\n}",
  'option O "o" { A B C\npart Q "q" { states open, \nprocedure P "p" { begin with O is A, Q is open, Q is\n  allow order.not because "x" }',
  '/* open comment\npart A "a"\n',
  'procedure P "p" {\n  figure "figures/a.svg\n  note """\n  two lines\n  step do """never closed\n',
  'part Ä́ "e with two marks"\r\npart 😀 "no name"\rprocedure Ω "Ω" {\r  step install Ä́\r  step install 😀 in Ä́\r}',
  `${"task {".repeat(150)}${"}".repeat(149)}`,
];
