// `--crib` and `--on` of check and export: what is found and printed, the day of expiry, and what is refused with a sentence.
import { describe, expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";

const TOOLS = `tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Screw "cover screw"
`;
const JOB = `use "tools.sprag"
procedure Close "Close" {
  step install Screw
  step tighten Screw to 45 N·m with Wrench
}
`;
const CRIB = `use "tools.sprag"
crib MainShop "tool crib" {
  item "TW-0117" for Wrench { torque 10 .. 60 N·m  calibrated until 2027-01-31 }
}
`;
const folder = () => folderWith({ "tools.sprag": TOOLS, "job.sprag": JOB, "crib.sprag": CRIB, "sub/x.txt": "" });

describe("check", () => {
  test.each([
    ["2027-01-31", false],
    ["2027-02-01", true],
  ])("on %s the calibration is over: %s", (day, isOver) => {
    const { status, out } = folder().sprag("check", "job.sprag", "--crib", "crib.sprag", "--on", day);
    expect(out.includes("trace.calibration")).toBe(isOver);
    expect(status).toBe(0);
  });

  test("a warning counts with --fail-on, and only the files asked for are told of", () => {
    const args = ["--crib", "crib.sprag", "--on", "2027-02-01", "--fail-on", "warning", "--format", "json"];
    const { status, out } = folder().sprag("check", "job.sprag", ...args);
    const { files } = JSON.parse(out) as { files: { path: string; findings: { code: string }[] }[] };
    expect(files.map(({ path }) => path)).toEqual(["job.sprag"]);
    expect(files[0]?.findings.map(({ code }) => code)).toContain("trace.calibration");
    expect(status).toBe(1);
  });

  test("without --crib nothing is held against anything", () => {
    expect(folder().sprag("check", ".", "--on", "2027-02-01").out).not.toMatch(/trace\.(?:no-crib-item|calibration)/);
  });
});

describe("export", () => {
  test("names the item, the crib and the day", () => {
    const args = ["--crib", "crib.sprag", "--on", "2026-05-04", "--format", "md"];
    const { status, out } = folder().sprag("export", "job.sprag", ...args);
    expect(status).toBe(0);
    expect(out).toContain("TW-0117, calibrated until 2027-01-31");
    expect(out).toContain("Items of tool crib as of 2026-05-04.");
    expect(folder().sprag("export", "job.sprag", "--format", "md").out).not.toContain("TW-0117");
  });

  test("the crib is not written over", () => {
    const { status, err } = folder().sprag("export", "job.sprag", "--crib", "crib.sprag", "--out", "crib.sprag");
    expect(status).toBe(2);
    expect(err).toContain("crib.sprag is what the document is made from");
  });
});

describe.each(["check", "export"])("%s refuses", (command) => {
  test.each([
    [["--crib", "tools.sprag"], "--crib: tools.sprag holds no crib."],
    [["--crib", "nothing.sprag"], "--crib: nothing.sprag is not there."],
    [["--crib", "sub"], "--crib: sub is a folder."],
    [["--crib", "broken.sprag"], "--crib: broken.sprag has 1 error."],
    [["--crib", "crib.sprag", "--on", "2026-02-30"], "--on takes a date such as 2026-05-04; “2026-02-30” is none."],
    [["--crib", "crib.sprag", "--on", "tomorrow"], "--on takes a date such as 2026-05-04; “tomorrow” is none."],
    [["--crib"], "--crib wants a value behind it."],
  ])("%j", (args, sentence) => {
    const broken = CRIB.replace("for Wrench", "for Wrnch");
    const files = {
      "tools.sprag": TOOLS,
      "job.sprag": JOB,
      "crib.sprag": CRIB,
      "broken.sprag": broken,
      "sub/x.txt": "",
    };
    const { status, out, err } = folderWith(files).sprag(command, "job.sprag", ...args);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toContain(sentence);
  });
});
