// Snippets as they stand before anything is typed into them: they parse in every block they are offered in, and are laid out
// as the formatter lays them out.
import { describe, expect, test } from "vitest";
import { placeAt } from "#server/completion/place.ts";
import { filled, SNIPPETS, snippetCandidates } from "#server/completion/snippets.ts";
import { parseText } from "#syntax/parse.ts";
import { formatText } from "#workspace/index.ts";

/** A text round the place for each block, with the place's indentation. */
const AROUND: Readonly<Record<string, readonly [before: string, after: string, indent: string]>> = {
  file: ["", "", ""],
  procedure: ['procedure P "p" {\n  ', "\n}\n", "  "],
  flow: ['procedure P "p" {\n  task "t" {\n    ', "\n  }\n}\n", "    "],
  step: ['procedure P "p" {\n  step {\n    ', '\n    do "x"\n  }\n}\n', "    "],
};

const cases = SNIPPETS.flatMap((snippet) => snippet.blocks.map((block) => [snippet.label, block, snippet] as const));

describe("each snippet", () => {
  test.each(cases)("%s in a %s", (_, block, { body }) => {
    const [before, after, indent] = AROUND[block] ?? ["", "", ""];
    const lines = filled(body((__, otherwise) => otherwise))
      .replaceAll("\t", "  ")
      .split("\n");
    const text = `${before}${lines.join(`\n${indent}`)}${after === "" ? "\n" : after}`;
    expect(parseText(text, "a.sprag").problems).toEqual([]);
    const formatted = formatText(parseText(text, "a.sprag"));
    expect(formatted.ok && formatted.text).toBe(text);
  });
  test("names what is declared where there is something", () => {
    const place = placeAt('procedure P "p" {\n  \n}\n', 20);
    if (place === null) throw new Error("no place");
    const instances = { form: "single" };
    const part = { kind: "part", name: "Impeller", fastener: false, heatLimit: null, instances } as Parameters<
      typeof snippetCandidates
    >[1][number];
    const found = snippetCandidates(place, [part]).find(({ label }) => label === "hot fit");
    expect(found?.snippet).toContain("Impeller");
  });
  test.each([
    ["behind something on its line", 'procedure P "p" { step ', false],
    ["in a declaration", "part A {\n  ", false],
    ["where a step may begin", 'procedure P "p" {\n  ', true],
  ])("%s", (_, text, offered) => {
    const place = placeAt(text, text.length);
    expect(place !== null && snippetCandidates(place, []).length > 0).toBe(offered);
  });
});
