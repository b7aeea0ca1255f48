// `sprag outline`: plain lines from one file alone, and git diff that shows them.
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { CLOSING } from "./review-texts.ts";

const LINES = `use "shop/tools.sprag"
part Cover "cover"
part Screw "cover screw"
  needs Cover
  secures Cover
  torque 40 ± 3 N·m dry per Manual "6.4"
procedure Close "Close the cover"
  finish with Cover is secured
  step install Cover per Manual "6.1"
  step install Screw per Manual "6.2"
  step Torque
    tighten Screw to 40 ± 3 N·m with Wrench
    critical
    sign Fitter
    hold for Inspector
    per Manual "6.4"
`;

test("one fact on a line, without braces; what it uses need not be there", () => {
  const { out, err, status } = folderWith({ "a.sprag": CLOSING }).sprag("outline", "a.sprag");
  expect({ out, err, status }).toEqual({ out: LINES, err: "", status: 0 });
});

test("comments, layout and spellings leave no trace, but in texts", () => {
  const other = `// head\n${CLOSING.replaceAll("N·m", "N*m").replaceAll("\n  ", "\n      /* x */ ")}`.replace(
    '"Close the cover"',
    '"Close the // cover"',
  );
  const { out } = folderWith({ "a.sprag": other }).sprag("outline", "a.sprag");
  expect(out).toBe(LINES.replace('"Close the cover"', '"Close the // cover"'));
});

test("a text that cannot be read is given line by line, so that git diff goes on", () => {
  const { out, status } = folderWith({ "a.sprag": "procedure {\n   step step\n" }).sprag("outline", "a.sprag");
  expect({ out, status }).toEqual({ out: "procedure {\nstep step\n", status: 0 });
});

test("a file that is not there is refused", () => {
  const { out, status } = folderWith().sprag("outline", "a.sprag");
  expect({ out, status }).toEqual({ out: "", status: 2 });
});
