// Hazards after a signal word: first those raised behind the place that nothing warns of yet.
import { expect, test } from "vitest";
import type { CompletionList } from "vscode-languageserver-protocol/node";
import { withEditor } from "#harness/editor.ts";

const SHOP = `energy Supply "motor supply" { voltage 400 V AC }
consumable Cleaner "cleaner" { hazard skin, eye }
hazard Dust "dust"
part Blade "blade" { sharp  driven by Supply  hazard Dust }
part Cover "cover" { mass 40 kg }
`;

/** The first so many labels offered at the mark. */
function firstAt(count: number, lines: string): Promise<readonly string[]> {
  return withEditor({}, async ({ connection, open }) => {
    const { uri, cursor } = await open("work.sprag", `${SHOP}procedure Work "Work" {\n${lines}\n}\n`);
    const answer = await connection.sendRequest<CompletionList>("textDocument/completion", {
      textDocument: { uri },
      position: cursor,
    });
    const sorted = [...answer.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
    return sorted.slice(0, count).map(({ label }) => label);
  });
}

test.each([
  [
    "what the procedure raises, in the order of the work",
    "  warning <|>\n  step clean Cover with Cleaner\n  step install Cover",
    ["skin", "eye", "lifting"],
  ],
  [
    "of a step what it raises itself",
    "  step install Cover\n  step {\n    warning <|>\n    clean Cover with Cleaner\n  }",
    ["skin", "eye"],
  ],
  [
    "a hazard of the shop's own",
    "  begin with Supply is isolated\n  warning <|>\n  step install Blade",
    ["cutting", "Dust"],
  ],
  [
    "while the statement is rewritten",
    '  warning sk<|> "Wet." avoid "Wash."\n  step clean Cover with Cleaner',
    ["skin", "eye"],
  ],
  ["after danger too", "  danger <|>\n  step install Blade", ["cutting", "Dust", "electric"]],
])("first comes %s", async (_what, lines, wanted) => {
  expect(await firstAt(wanted.length, lines)).toEqual(wanted);
});

test.each([
  [
    "another statement warns of it",
    '  warning lifting "Heavy." avoid "Use the hoist."\n  warning <|>\n  step install Cover',
  ],
  ["it is raised before the place", "  step install Cover\n  warning <|>\n  step inspect Cover"],
  ["it is raised in another step", "  step { warning <|> inspect Cover }\n  step install Cover"],
])("lifting is not first where %s", async (_what, lines) => {
  expect(await firstAt(2, lines)).toEqual(["Dust", "burn"]);
});
