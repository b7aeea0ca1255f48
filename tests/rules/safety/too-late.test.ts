// safety.too-late: after the line in its step, after the step in its task; and not where another statement comes in time.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

const HEAD = `part Blade[1..4] "blade" { sharp }
procedure Work "Work" {
`;
const CUT = 'warning cutting "Sharp." avoid "Hold it by its back." wear "cut-resistant gloves"';
const MARK = CUT.replace(/./g, "^");

test.each([
  ["in the step", `  step {\n    install Blade[1]\n    ${CUT}\n//  ${MARK} safety.too-late\n  }`],
  [
    "in the task",
    `  task A "A" {\n    step install Blade[1]\n    ${CUT}\n//  ${MARK} safety.too-late\n    step inspect Blade[1]\n  }`,
  ],
  [
    "in the procedure",
    `  task A "A" { step install Blade[1] }\n  ${CUT}\n//${MARK} safety.too-late\n  step install Blade[2]`,
  ],
  [
    "in a later pass too",
    `  repeat n from 1 to 4 {\n    step install Blade[n]\n    ${CUT}\n//  ${MARK} safety.too-late\n  }`,
  ],
])("found: after what it warns of, %s", (_where, lines) => {
  expectFindings(`${HEAD}${lines}\n}\n`);
});

test("it takes the place of safety.missing", () => {
  const codes = findingsIn(`${HEAD}  step {\n    install Blade[1]\n    ${CUT}\n  }\n}\n`).map(({ code }) => code);
  expect(codes).toEqual(["safety.too-late"]);
});

test.each([
  ["one stands before as well", `  ${CUT}\n  step {\n    install Blade[1]\n    ${CUT}\n    install Blade[2]\n  }`],
  [
    "it is before the line, though not the first",
    `  step {\n    inspect Blade[1]\n    ${CUT}\n    install Blade[1]\n  }`,
  ],
])("silent: %s", (_why, lines) => {
  expectFindings(`${HEAD}${lines}\n}\n`);
});

test("one that stands in another block is not this one", () => {
  expectFindings(`${HEAD}  task A "A" {
    step install Blade[1]
//       ^^^^^^^^^^^^^^^^ safety.missing
  }
  task B "B" {
    ${CUT}
    step install Blade[2]
  }
}
`);
});
