// `sprag explain FILE:LINE`, and the hover that shows the same. Settings: 100 lbf·in at 12 + 6 in is 66.7 lbf·in (NAVEDTRA 14315,
// fig. 3-44; read), 300 lbf·ft at 18 + 6 in is 225 lbf·ft (TM 5-3810-305-23; read). Preload: 49 lbf·in / (0.2 · 0.25 in) is 980 lbf
// (computed).
import { describe, expect, test } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver-protocol";
import { folderWith } from "#harness/command.ts";
import { withEditor } from "#harness/editor.ts";
import { plainTexts, tables } from "#harness/samples.ts";
import { linesOf } from "#syntax/lines.ts";
import { computedValues, explanationLines, openWorkspace } from "#workspace/index.ts";

const JOB = `tool Wrench "torque wrench" { torque 1 .. 900 lbf·in  arm 12 in }
tool Crowfoot "crowfoot" { offset 6 in }
part Screw "screw" { thread "1/4-20 UNC"  grade "5"  nut factor 0.2 dry }
procedure Close "Close" {
  step install Screw
  step Torque {
    clean Screw
    tighten Screw to 100 lbf·in with Wrench + Crowfoot
    takes 3 min
  }
  step tighten Screw to 49 lbf·in with Wrench
}
`;
const explain = (line: string, text = JOB) => folderWith({ "job.sprag": text }).sprag("explain", `job.sprag:${line}`);

describe("the command", () => {
  test("prints formula, what goes in, source and caution, in the writer's units", () => {
    const { status, out } = explain("8");
    expect(status).toBe(0);
    expect(out).toContain("Wrench for Screw: setting Ts = 66.67 lbf·in");
    expect(out).toContain("formula  Ts = T·L/(L + E)");
    for (const part of ["T = 100 lbf·in, torque", "L = 12 in, arm", "E = 6 in, adapter offset"])
      expect(out).toContain(part);
    expect(out).toMatch(/source {3}NAVEDTRA 14315/);
    expect(out).toContain("caution  Only for this adapter, angle and arm");
  });

  test("any line of the step will do", () => {
    expect(new Set(["6", "7", "8", "9", "10"].map((line) => explain(line).out)).size).toBe(1);
  });

  test("a preload in the writer's unit of force", () => {
    const load = /preload F = ([\d.]+) (\S+)/.exec(explain("11").out);
    expect(load?.[2]).toBe("lbf");
    expect(Number(load?.[1])).toBeGreaterThan(979.5);
    expect(Number(load?.[1])).toBeLessThan(980.5);
  });

  test("a published setting in feet", () => {
    const text = JOB.replace("arm 12 in", "arm 18 in")
      .replace("100 lbf·in", "300 lbf·ft")
      .replace("900 lbf·in", "900 lbf·ft");
    expect(explain("8", text).out).toMatch(/setting Ts = 225(\.0+)? lbf·ft/);
  });

  test("a line without any says so, and where there are some", () => {
    expect(explain("5")).toMatchObject({
      status: 0,
      out: "Nothing is worked out in the step at line 5. See lines 8, 11.\n",
    });
    expect(explain("1", 'part Cover "cover"\n').out).toContain("Nothing is worked out in job.sprag.");
  });

  test.each([
    ["13", "job.sprag has 12 lines, and so no line 13."],
    ["0", "“0” is no line."],
    ["x", "“x” is no line."],
    ["", "“” is no line."],
    ["-1", "“-1” is no line."],
  ])("refuses line “%s”", (line, sentence) => {
    const { status, out, err } = explain(line);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toContain(sentence);
  });

  test("refuses a file that is not there", () => {
    const { status, err } = folderWith({}).sprag("explain", "nothing.sprag:3");
    expect(status).toBe(2);
    expect(err).toContain("nothing.sprag is not there.");
  });
});

test("hover and command show the same lines, for every value of every sample", async () => {
  const files = Object.fromEntries(plainTexts);
  const texts = new Map([...plainTexts, ...tables]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  let compared = 0;
  await withEditor(
    { files: { ...files, ...Object.fromEntries(tables) }, settings: { checkFolder: false } },
    async (editor) => {
      for (const [path, text] of plainTexts) {
        const values = computedValues(workspace, path);
        if (values.length === 0) continue;
        const { uri } = await editor.open(path);
        for (const { of, line, explanation } of values) {
          const position = linesOf(text).range(line.start, line.end).start;
          const answer = await editor.connection.sendRequest<Hover | null>("textDocument/hover", {
            textDocument: { uri },
            position,
          });
          const printed = folderWith(files).sprag("explain", `${path}:${position.line + 1}`).out;
          const wanted = explanationLines(explanation, of).join("\n");
          expect((answer?.contents as MarkupContent | undefined)?.value).toContain(wanted);
          expect(printed).toContain(wanted);
          compared++;
        }
        await editor.close(path);
      }
    },
  );
  console.info(`explained values: ${compared} compared between hover and command`);
  expect(compared).toBeGreaterThan(20);
}, 60_000);
