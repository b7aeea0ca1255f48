// Hints beside the text: step numbers, values in the other system, repeats; each with its setting, only in the range asked for.

import { describe, expect, test } from "vitest";
import type { InlayHint, Range } from "vscode-languageserver-protocol";
import { type Editor, type EditorSetting, withEditor } from "#harness/editor.ts";
import { offsetsIn } from "#harness/thorough.ts";
import { linesOf } from "#syntax/lines.ts";
import { convertText } from "#workspace/index.ts";
import { HURT } from "./hurt-texts.ts";

async function hintsOf(editor: Editor, path: string, range: Range): Promise<readonly InlayHint[]> {
  const textDocument = { uri: editor.uri(path) };
  return editor.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", { textDocument, range });
}

/** The text, or the lines selected in it, with each hint where it is shown. */
async function shown(marked: string, setting: EditorSetting = {}): Promise<string> {
  return withEditor(setting, async (editor) => {
    const { text, selection } = await editor.open("a.sprag", marked);
    const lines = linesOf(text);
    const hints = await hintsOf(editor, "a.sprag", selection);
    let made = text;
    for (const { position, label, paddingLeft } of [...hints].reverse()) {
      const at = lines.offset(position.line) + position.character;
      made = `${made.slice(0, at)}${paddingLeft === true ? " " : ""}‹${label}›${made.slice(at)}`;
    }
    return made;
  });
}

const only = (which: "stepNumbers" | "otherUnits" | "repeats" | "settings", units = "both"): EditorSetting => ({
  settings: {
    units,
    inlayHints: { stepNumbers: false, otherUnits: false, repeats: false, settings: false, [which]: true },
  },
});

describe("step numbers", () => {
  test("behind the keyword of tasks, steps and performs, as the checklist counts", async () => {
    const text = `part Cover "cover"
procedure Look "Look" {
  step inspect Cover
}
procedure Work "Work" {
  task "Open" {
    step remove Cover
    step Look { inspect Cover }
  }
  perform Look
  repeat n in 1, 2 {
    step "Turn it."
  }
  when Cover is installed { step "Stop." } otherwise { step "Go on." }
}
`;
    expect(await shown(text, only("stepNumbers"))).toBe(
      text
        .replace("step inspect Cover\n", "step ‹1› inspect Cover\n")
        .replace('task "Open"', 'task ‹1› "Open"')
        .replace("step remove", "step ‹1.1› remove")
        .replace("step Look", "step ‹1.2› Look")
        .replace("perform Look", "perform ‹2› Look")
        .replace('step "Turn', 'step ‹3› "Turn')
        .replace('step "Stop', 'step ‹4› "Stop')
        .replace('step "Go', 'step ‹5› "Go'),
    );
  });
});

describe("values in the other system", () => {
  // 1 lbf·ft = 1.3558179483314004 N·m, 1 in = 25.4 mm, 1 lb = 0.45359237 kg exactly (NIST SP 811, appendix B).
  test.each([
    ["a nominal value", "value A = 45 N·m", "≈ 33.2 lbf·ft"],
    ["a band that must be met, inwards", "value A = 38 .. 42 N·m", "≈ 28.1 .. 30.9 lbf·ft"],
    ["one written in customary units", "value A = 30 lbf·ft", "≈ 41 N·m"],
    ["a limit that must not be passed, downwards", 'material M "m" { heat limit 200 °C }', "≈ 392 °F"],
    ["a mass, upwards", 'part P "p" { mass 31 kg }', "≈ 69 lb"],
    ["at most so much: the words are there already", "value A = at most 3 mm", "≈ 0.11 in"],
    ["at least so much", "value A = at least 45 N·m", "≈ 33.2 lbf·ft"],
    ["what occurs, outwards", 'tool T "t" { measures 0.03 .. 1 mm }', "≈ 0.0011 .. 0.0394 in"],
  ])("%s", async (_title, text, hint) => {
    const made = await shown(text, only("otherUnits"));
    expect(made).toContain(`‹${hint}›`);
    expect(made.replace(/ ?‹[^›]*›/, "")).toBe(text);
  });

  test("the same as sprag convert says", async () => {
    const conversion = convertText("45 ± 2 N·m", "lbf·ft");
    const [reading] = conversion.ok ? conversion.readings : [];
    expect(await shown("value A = 45 ± 2 N·m", only("otherUnits"))).toBe(
      `value A = 45 ± 2 N·m ‹≈ ${reading?.inwards}›`,
    );
  });

  test("also in steps, behind each of several; once for a reading", async () => {
    const text = `part Screw "screw" { thread "M10x1.5" }
procedure Work "Work" {
  step tighten Screw to 20 N·m, 45 N·m
  step measure Gap "gap" expect at most 3 mm
}
`;
    expect(await shown(text, only("otherUnits"))).toBe(
      text
        .replace("20 N·m", "20 N·m ‹≈ 177 lbf·in›")
        .replace("45 N·m", "45 N·m ‹≈ 33.2 lbf·ft›")
        .replace("3 mm", "3 mm ‹≈ 0.11 in›"),
    );
  });

  test.each([
    ["times", "value A = 5 min"],
    ["shares", "value A = 12 %"],
    ["what nobody can read", "value A = 12 foo"],
  ])("none for %s", async (_title, text) => {
    expect(await shown(text, only("otherUnits"))).toBe(text);
  });

  test("only what is not in the reader's own units", async () => {
    const text = "value A = 45 N·m\nvalue B = 30 lbf·ft\n";
    expect(await shown(text, only("otherUnits", "si"))).toBe(text.replace("30 lbf·ft", "30 lbf·ft ‹≈ 41 N·m›"));
    expect(await shown(text, only("otherUnits", "us"))).toBe(text.replace("45 N·m", "45 N·m ‹≈ 33.2 lbf·ft›"));
  });
});

describe("wrench settings", () => {
  const shop = `tool Wrench "wrench" { torque 8 .. 60 N·m accuracy 4 % arm 400 mm }
tool Crowfoot "crowfoot" { offset 100 mm }
part Screw "screw" { thread "M10x1.5" }
`;
  const work = (line: string): string => `${shop}procedure Work "Work" {\n  step ${line}\n}\n`;

  // M1 = M2 · L1 / (L1 + L2): the rule for an extension in line with the wrench, as wrench makers print it. 400 / 500 = 0.8.
  test.each([
    ["50 N·m", "40 N·m"],
    ["20 N·m, 50 N·m", "16 N·m, 40 N·m"],
    // Set to one value each, whatever the tolerance and the wrench's own error leave.
    ["50 ± 5 N·m", "40 N·m"],
    ["40 %, 100 % of 50 ± 5 N·m", "16.0 N·m, 40 N·m"],
  ])("behind the line, for %s", async (torque, setting) => {
    const text = work(`tighten Screw to ${torque} with Wrench + Crowfoot`);
    expect(await shown(text, only("settings"))).toBe(text.replace("Crowfoot\n", `Crowfoot ‹set to ${setting}›\n`));
  });

  test("none where nothing changes the setting", async () => {
    const text = work("tighten Screw to 50 N·m with Wrench");
    expect(await shown(text, only("settings"))).toBe(text);
  });
});

describe("repeats", () => {
  test.each([
    ["repeat n in 2, 3, 4, 6 { step inspect P[n] }", "n in 2, 3, 4, 6 ‹4 steps› {"],
    ["repeat n from 1 to 8 { step inspect P[n] step inspect P[1] }", "1 to 8 ‹8 times, 16 steps› {"],
    ["repeat n from 1 to 8 by 3 { step inspect P[n] }", "by 3 ‹3 steps› {"],
    ["repeat n from 8 down to 1 { repeat m in 1, 2 { step inspect P[n] } }", "down to 1 ‹8 times, 16 steps› {"],
    ["step { repeat n in 1..8 { inspect P[n] } }", "1..8 ‹8 times› {"],
    ["repeat n in 4 { step inspect P[n] }", "n in 4 ‹1 step› {"],
  ])("%s", async (lines, wanted) => {
    const made = await shown(`part P[1..8] "p"\nprocedure W "w" {\n  ${lines}\n}\n`, only("repeats"));
    expect(made).toContain(wanted);
  });

  test.each(["repeat n from 1 to m { step inspect P[n] }", "repeat n from 4 to 1 { step inspect P[n] }"])(
    "nothing where it cannot be told, or is never done: %s",
    async (lines) => {
      const text = `part P[1..8] "p"\nprocedure W "w" {\n  ${lines}\n}\n`;
      expect(await shown(text, only("repeats"))).toBe(text);
    },
  );
});

test("only in the range", async () => {
  const marked = 'procedure W "w" {\n  step "One."\n<[  step "Two."\n]>  step "Three."\n}\n';
  const made = await shown(marked);
  expect(made).toContain('step ‹2› "Two."');
  expect(made.match(/‹/g)).toHaveLength(1);
});

test("a setting that changes is asked for anew", async () => {
  const inlayHints = { stepNumbers: true };
  await withEditor({ settings: { inlayHints } }, async (editor) => {
    const { selection } = await editor.open("a.sprag", 'procedure W "w" { step "One." }\n');
    expect(await hintsOf(editor, "a.sprag", selection)).toHaveLength(1);
    inlayHints.stepNumbers = false;
    await editor.connection.sendNotification("workspace/didChangeConfiguration", { settings: null });
    await editor.atRest();
    expect(await hintsOf(editor, "a.sprag", selection)).toEqual([]);
  });
});

test("at every place of damaged texts it answers, inside the text", () =>
  withEditor({}, async (editor) => {
    for (const [name, text] of Object.entries(HURT)) {
      await editor.open(`${name}.sprag`);
      await editor.change(`${name}.sprag`, text);
      const lines = linesOf(text);
      for (const offset of offsetsIn(text, 4)) {
        const [start, end] = [lines.position(offset), lines.position(offset + 20)];
        for (const { position } of await hintsOf(editor, `${name}.sprag`, { start, end }))
          expect(lines.offset(position.line) + position.character).toBeLessThanOrEqual(text.length);
      }
    }
  }));
