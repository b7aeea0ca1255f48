// names.outside-workspace: paths of `use` and `figure` lines.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

test.each([
  ["at the root of a disk", "/shop/tools.sprag", "begins at the root of a disk"],
  ["on a drive", "C:/shop/tools.sprag", "begins at the root of a disk"],
  ["on the web", "https://shop/tools.sprag", "begins at the root of a disk"],
  ["above the workspace", "../tools.sprag", "leads out of the workspace"],
  ["above the workspace, by a detour", "shop/../../tools.sprag", "leads out of the workspace"],
  ["not there", "shop/tool.sprag", "is not there"],
  ["nothing at all", "", "is not there"],
])("%s", (_title, path, said) => {
  const found = findingsIn(`use "${path}"\n\npart Cover "cover"\n`, { "shop/tools.sprag": 'tool Puller "puller"\n' });
  expect(found.map(({ code }) => code)).toEqual(["names.outside-workspace"]);
  expect(found[0]?.message).toContain(said);
  expect(found[0]?.range).toMatchObject({ start: { line: 0, character: 4 } });
});

test("a figure that is not there", () => {
  expectFindings(`part Cover "cover"

procedure Look "Look at the cover" {
  step {
    inspect Cover
    figure "figures/cover.svg" "The cover"
    //     ^^^^^^^^^^^^^^^^^^^ names.outside-workspace
  }
}`);
});

test("silent: beside, below and above the file, inside the workspace", () => {
  expectFindings(`// file: work/close.sprag
use "../shop/tools.sprag"
use "parts.sprag"

procedure CloseUp "Close the housing" {
  step inspect Cover with Lamp
}
// file: work/parts.sprag
part Cover "cover"
// file: shop/tools.sprag
tool Lamp "lamp"
`);
});

test("a use behind a declaration is told of at its place, and what it brings is known", () => {
  expectFindings(`part Cover "cover" { needs Seal }
    use "seals.sprag"
//  ^^^^^^^^^^^^^^^^^ syntax.unexpected
// file: seals.sprag
part Seal "seal"
`);
});
