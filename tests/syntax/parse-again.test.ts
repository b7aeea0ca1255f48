// A text that is read after a change of it has the tree, the problems and the damage that it has when it is read by itself; and the text before
// keeps its own.
import fc from "fast-check";
import { AstUtils } from "langium";
import { expect, test } from "vitest";
import type { File } from "#grammar/generated/ast.ts";
import { anyPlace, firstProcedure, typedInto } from "#harness/random-edit.ts";
import { isThorough } from "#harness/thorough.ts";
import { threefoldSamples } from "#harness/threefold.ts";
import { treeLines } from "#harness/tree-lines.ts";
import { type ParsedFile, parseAgain, parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";
import { keystrokesIn } from "../bench/keystroke.ts";
import { procedureText } from "../bench/procedure-text.ts";

const shops = threefoldSamples((path) => path !== "faulty/flow.too-large.sprag");

const edit = fc.record({
  place: anyPlace,
  drop: fc.constantFrom(0, 0, 0, 1, 1, 7, 60),
  put: fc.oneof(
    fc.constantFrom(
      "",
      "\n",
      "x",
      " 4 mm",
      "step ",
      "check ",
      "perform ",
      "critical\n",
      "record",
      "\u201c",
      "5 \u00b0",
    ),
    fc.constantFrom(
      "{",
      "}",
      "} {",
      "{ }",
      "(",
      ")",
      "[",
      "]",
      '"',
      '"""',
      "/*",
      "*/",
      "//",
      "// }",
      "'",
      ";",
      "&&",
      "1,5",
    ),
    fc.constantFrom(
      'note "See above."\n',
      'step do "as shown"\n',
      "}\nprocedure Other {\n",
      "procedure ",
      "\nrole X\n",
      "\r\n",
    ),
  ),
  back: fc.boolean(),
});

/** What each name means, by where that is declared. */
function meanings({ file }: ParsedFile): readonly (number | undefined)[] {
  return AstUtils.streamAst(file)
    .flatMap((node) => AstUtils.streamReferences(node))
    .map(({ reference }) => ("ref" in reference ? reference.ref?.$cstNode?.offset : undefined))
    .toArray();
}

function linked(parsed: ParsedFile, others: ReadonlyMap<string, ParsedFile>): ParsedFile {
  linkFiles(new Map(others).set(parsed.path, parsed));
  return parsed;
}

function all({ damage, file, problems }: ParsedFile) {
  return { damage, problems, lines: treeLines(file), at: file.$document?.parseResult.value === file };
}

/** How many procedures of the tree are those of another, taken along. */
function shared(before: readonly File["items"][number][], { file }: ParsedFile): number {
  return file.items.filter((item) => before.includes(item)).length;
}

test("after any edits", { timeout: 1_200_000 }, () => {
  let compared = 0;
  let again = 0;
  fc.assert(
    fc.property(fc.nat(shops.length - 1), fc.array(edit, { minLength: 6, maxLength: 6 }), (shop, edits) => {
      const { path, texts } = shops[shop] as (typeof shops)[number];
      const others = new Map(
        [...texts].filter(([one]) => one !== path).map(([one, text]) => [one, parseText(text, one)]),
      );
      let text = texts.get(path) ?? "";
      let parsed = linked(parseText(text, path), others);
      const look = (next: string): void => {
        const before = parsed;
        const { items } = before.file;
        meanings(before);
        parsed = linked(parseAgain(before, next), others);
        compared++;
        expect(parsed.text).toBe(next);
        // Else the whole text was read as ever.
        if (shared(items, parsed) === 0) return;
        again++;
        const fresh = linked(parseText(next, path), others);
        expect(all(parsed), next).toEqual(all(fresh));
        expect(meanings(parsed)).toEqual(meanings(fresh));
        if (again % 5 > 0) return;
        const old = linked(parseText(before.text, path), others);
        expect(all(before)).toEqual(all(old));
        expect(meanings(before)).toEqual(meanings(old));
      };
      for (const { back, ...edit } of edits) {
        const next = typedInto(text, edit, firstProcedure(text));
        look(next);
        // With a mistake elsewhere the whole text is read.
        if (back || parsed.problems.length > 0) look(text);
        else text = next;
      }
    }),
    { numRuns: isThorough ? 150 : 8 },
  );
  console.log(`${compared} texts, of which ${again} were read in part and compared with themselves read anew`);
  expect(again).toBeGreaterThan(compared / 4);
});

test("as a person types, only the procedure in hand is read", () => {
  const text = procedureText({ stations: 4, procedures: 5 });
  let parsed = parseText(text, "made.sprag");
  for (const { text: next } of keystrokesIn(text, 3)) {
    const { items } = parsed.file;
    parsed = parseAgain(parsed, next);
    expect(shared(items, parsed)).toBe(items.length - 1);
    expect(all(parsed)).toEqual(all(parseText(next, "made.sprag")));
  }
});

test("what is wrong with a header is told whatever is wrong in its block, and still once that is mended", () => {
  const misspelt = 'p1rocedure Work "Work" {\n  task A "a" {\n    step { wait 5 min }\n    step do "so"\n  }\n}\n';
  const placesIn = (text: string): readonly number[] =>
    parseText(text, "a.sprag").problems.map(({ span }) => span.start);
  expect(placesIn(misspelt)).toEqual([0]);
  const comma = misspelt.replace("5 min", "1,5 min");
  const unclosed = misspelt.replace(" }\n    step do", "\n    step do");
  for (const wrong of [comma, unclosed]) {
    const places = placesIn(wrong);
    expect(places).toHaveLength(2);
    expect(places[0]).toBe(0);
    const mended = parseAgain(parseAgain(parseText(misspelt, "a.sprag"), wrong), misspelt);
    expect(mended.problems.map(({ span }) => span.start)).toEqual([0]);
  }
});
