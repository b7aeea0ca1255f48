// Quick fixes as an editor asks for them: which are offered, which is preferred, all of a kind, `allow`, versions, poor clients.
// That each fix mends is in quick-fixes.test.ts.

import { describe, expect, test } from "vitest";
import type { CodeAction, Diagnostic } from "vscode-languageserver-protocol";
import { type Editor, type EditorSetting, edited, withEditor } from "#harness/editor.ts";
import { offsetsIn } from "#harness/thorough.ts";
import { linesOf } from "#syntax/lines.ts";
import { HURT } from "./hurt-texts.ts";

interface Asked {
  readonly only?: readonly string[];
  readonly diagnostics?: readonly Diagnostic[];
}

async function actionsFor(editor: Editor, path: string, asked: Asked = {}): Promise<readonly CodeAction[]> {
  const diagnostics = asked.diagnostics ?? (await editor.diagnostics(path));
  return editor.connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: editor.uri(path) },
    range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
    context: { diagnostics, ...(asked.only === undefined ? {} : { only: asked.only }) },
  });
}

const titles = (actions: readonly CodeAction[]): readonly string[] => actions.map(({ title }) => title);

/** The text after the action whose title begins so. */
async function textAfter(text: string, title: string, setting: EditorSetting = {}): Promise<string> {
  return withEditor(setting, async (editor) => {
    await editor.open("a.sprag", text);
    const found = (await actionsFor(editor, "a.sprag")).find((action) => action.title.startsWith(title));
    expect(found, title).toBeDefined();
    await editor.apply(found?.edit ?? {});
    return editor.text("a.sprag");
  });
}

const SHOP = `part Cover "cover"
part Casing "casing"
procedure Work "Work" {
  begin with Casing is installed
  step remove Cavor
  step remove Casing
  step install Casing
}
`;

describe("what is offered", () => {
  test("the nearest names; the one fix is preferred, of several none", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP.replace("remove Cavor", "inspect Covr"));
      const [one, ...others] = await actionsFor(editor, "a.sprag");
      expect(one).toMatchObject({ title: "Write Cover", kind: "quickfix", isPreferred: true });
      expect(one?.diagnostics).toMatchObject([{ code: "names.unknown" }]);
      expect(titles(others)).not.toContain("Write Cover");
      await editor.change("a.sprag", SHOP.replace('part Casing "casing"', 'part Caver "other"\npart Casing "casing"'));
      const several = (await actionsFor(editor, "a.sprag")).filter(({ title }) => title.startsWith("Write"));
      expect(several.length).toBeGreaterThan(1);
      expect(several.some(({ isPreferred }) => isPreferred === true)).toBe(false);
    }));

  test("nothing where no finding is asked about", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP);
      expect(await actionsFor(editor, "a.sprag", { diagnostics: [] })).toEqual([]);
    }));

  test("nothing of other kinds than are asked for", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP);
      expect(await actionsFor(editor, "a.sprag", { only: ["refactor"] })).toEqual([]);
      expect(await actionsFor(editor, "a.sprag", { only: ["quickfix"] })).not.toEqual([]);
    }));

  test("another checker's findings are left to it", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP);
      const diagnostics = (await editor.diagnostics("a.sprag")).map((one) => ({ ...one, source: "speller" }));
      expect(await actionsFor(editor, "a.sprag", { diagnostics })).toEqual([]);
    }));
});

describe("texts that move", () => {
  test("edits carry the version of the text they are for", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP);
      await editor.change("a.sprag", SHOP.replace("Cavor", "Covr"));
      const [action] = await actionsFor(editor, "a.sprag");
      expect(action?.edit?.documentChanges).toMatchObject([{ textDocument: { version: 2 } }]);
    }));

  test("findings of an older text are looked for in the one of now", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP.replace("Cavor", "Covr"));
      const old = await editor.diagnostics("a.sprag");
      await editor.change("a.sprag", SHOP.replace("Cavor", "Casng"));
      const now = await actionsFor(editor, "a.sprag", { diagnostics: old });
      // It is at another place now, or it is no more: in no case is the old fix offered.
      expect(titles(now)).not.toContain("Write Cover");
    }));

  test("where a client keeps nothing of what came along, the same is offered", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", SHOP.replace("Cavor", "Covr"));
      const whole = await editor.diagnostics("a.sprag");
      const bare = whole.map(({ data: _, ...rest }) => rest);
      expect(titles(await actionsFor(editor, "a.sprag", { diagnostics: bare }))).toEqual(
        titles(await actionsFor(editor, "a.sprag", { diagnostics: whole })),
      );
    }));
});

describe("all of a kind", () => {
  const STYLE = "value A = 4 Nm\nvalue B = 5 Nm\nvalue C = 6 degC\n";
  const MENDED = "value A = 4 N·m\nvalue B = 5 N·m\nvalue C = 6 °C\n";

  test("is offered where there are several, and mends them", async () => {
    expect(await textAfter(STYLE, "Mend all 3 of this kind")).toBe(MENDED);
  });

  test("is not offered for one, nor where each wants a thought", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", "value A = 4 Nm\n");
      expect(titles(await actionsFor(editor, "a.sprag")).join()).not.toContain("Mend all");
      await editor.open("b.sprag", SHOP.replace("remove Cavor", "inspect Covr, Covr"));
      expect(titles(await actionsFor(editor, "b.sprag")).join()).not.toContain("Mend all");
    }));

  test("on saving, where the editor asks for it", () =>
    withEditor({}, async (editor) => {
      const { text } = await editor.open("a.sprag", `${STYLE}value D = 1,5 mm\n`);
      const [action, ...others] = await actionsFor(editor, "a.sprag", { only: ["source.fixAll"], diagnostics: [] });
      expect(others).toEqual([]);
      expect(action).toMatchObject({ kind: "source.fixAll.sprag" });
      await editor.apply(action?.edit ?? {});
      expect(editor.text("a.sprag")).not.toBe(text);
      expect(await editor.diagnostics("a.sprag")).toEqual([]);
    }));
});

describe("a name that no declaration gives", () => {
  const files = {
    "shop/tools.sprag": 'tool Wrench "wrench" { torque 8 .. 60 N·m }\nprocedure Wash "Wash" {\n  step "Wash it."\n}\n',
    "other.sprag": 'procedure Other "Other" {\n  tool Wrench "wrench of its own"\n  step do "Look." with Wrench\n}\n',
  };
  const work = (line: string): string => `// Work.\n\n// It is short.\nprocedure Work "Work" {\n  step ${line}\n}\n`;

  test.each([
    ["a tool", "tighten Screw to 20 N·m with Wrench"],
    ["a procedure", "perform Wash"],
  ])("%s of a file that is not used: its “use” goes on top", async (_, line) => {
    const text = work(line).replace("step perform", "perform");
    expect(await textAfter(text, 'Put in use "shop/tools.sprag"', { files })).toBe(
      text.replace("// It is short", 'use "shop/tools.sprag"\n\n// It is short'),
    );
  });

  test("behind the other “use” lines, and only for what the file gives to others", () =>
    withEditor(
      { files: { ...files, "shop/parts.sprag": 'part Screw "screw" { torque 20 N·m }\n' } },
      async (editor) => {
        const text = `use "shop/parts.sprag" // ours\n${work("tighten Screw to 20 N·m with Wrench")}`;
        await editor.open("a.sprag", text);
        const puts = (await actionsFor(editor, "a.sprag")).filter(({ title }) => /^(?:Put in use|Declare)/.test(title));
        expect(titles(puts)).toEqual(['Put in use "shop/tools.sprag"']);
        await editor.apply(puts[0]?.edit ?? {});
        expect(editor.text("a.sprag")).toBe(text.replace("// ours\n", '// ours\nuse "shop/tools.sprag"\n'));
      },
    ));

  test.each([
    ["remove ShaftSeal", "Declare part ShaftSeal", 'part ShaftSeal "shaft seal"'],
    ["install Screw[6]", "Declare part Screw", 'part Screw[1..6] "screw"'],
    ["isolate Supply", "Declare energy Supply", 'energy Supply "supply"'],
  ])("%s: declared in a line before its procedure", async (line, title, declared) => {
    const text = work(line);
    expect(await textAfter(text, title)).toBe(text.replace("// It is short", `${declared}\n\n// It is short`));
  });

  test("beside others of its sort, with the line ends of the text and a title to fill in", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", `part Cover "cover"\n${work("remove Seal")}`.replaceAll("\n", "\r\n"));
      const found = (await actionsFor(editor, "a.sprag")).find(({ title }) => title.startsWith("Declare"));
      expect(found?.edit?.documentChanges?.[0]).toMatchObject({
        edits: [{ snippet: { value: `\r\npart Seal "\${1:seal}"` }, range: { start: { line: 0, character: 18 } } }],
      });
    }));

  test.each([
    [
      "behind “use” lines that stand close",
      'use "shop/x.sprag" // ours\n',
      'crib C "crib" { item "1" for Torch { torque 2 N·m } }',
    ],
    [
      "behind another procedure with empty lines in it",
      `${'procedure A "a" {\n\n  step "One."\n}'} // so\n`,
      'procedure B "b" { step do "It." with Torch }',
    ],
    ["not into a comment", "/* Of the shop:\n\n   all of it. */\n", 'procedure B "b" { step do "It." with Torch }'],
    ["between statements of one line", 'use "shop/x.sprag" ', 'procedure B "b" { step do "It." with Torch }'],
  ])("declared %s", async (_, above, rest) => {
    const files = { "shop/x.sprag": 'role Fitter "fitter"\n' };
    const after = await textAfter(`${above}${rest}\n`, "Declare tool Torch", { files });
    const isHead = above.startsWith("/*");
    const line = 'tool Torch "torch"\n\n';
    expect(after).toBe(
      isHead ? `${line}${above}${rest}\n` : `${above}${above.endsWith("\n") ? "" : "\n"}${line}${rest}\n`,
    );
    await withEditor({ files }, async (editor) => {
      await editor.open("a.sprag", after);
      const codes = (await editor.diagnostics("a.sprag")).map(({ code }) => code);
      expect(codes.filter((code) => /^(?:syntax|names\.unknown)/.test(String(code)))).toEqual([]);
    });
  });

  test.each([
    [
      "a long comment at the end of the last “use” line",
      'use "x.sprag" /* for\n all */\n',
      'use "x.sprag" /* for\n all */\nuse "shop/tools.sprag"\n',
    ],
    ["a statement on the line of the last “use”", 'use "x.sprag" ', 'use "x.sprag"\nuse "shop/tools.sprag"\n '],
  ])("“use” is put in right behind %s", async (_, above, expected) => {
    const text = `${above}procedure B "b" {\n  perform Wash\n}\n`;
    expect(await textAfter(text, 'Put in use "shop/tools.sprag"', { files: { ...files, "x.sprag": "" } })).toBe(
      text.replace(above, expected),
    );
  });

  test("nothing is declared that is probably a slip, or that takes more than a line", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", `part Cover "cover"\n${work("remove Covr")}`);
      expect(titles(await actionsFor(editor, "a.sprag"))).not.toContainEqual(expect.stringMatching(/^Declare/));
      await editor.open("b.sprag", work("turn Circle[1] to 6 o'clock"));
      expect(titles(await actionsFor(editor, "b.sprag"))).not.toContainEqual(expect.stringMatching(/^Declare/));
    }));
});

describe("allow", () => {
  const ALLOW = 'allow order.already-installed because "…"';
  const work = (lines: string): string => `part A "a"\nprocedure W "w" {\n  step install A\n${lines}\n}\n`;

  test.each([
    ["a step of one line", "  step install A", `  step install A ${ALLOW}`],
    [
      "a step with a block",
      '  step Again {\n    install A\n    why "Twice."\n  }',
      `  step Again {\n    install A\n    why "Twice."\n    ${ALLOW}\n  }`,
    ],
    ["a step with a short block", "  step Again { install A }", `  step Again {\n    install A\n    ${ALLOW}\n  }`],
    [
      "a step of one line that grows too long",
      '  step install A why "A reason that takes a good part of the line it stands on."',
      `  step install A\n    why "A reason that takes a good part of the line it stands on."\n    ${ALLOW}`,
    ],
    ["a step in a repeat", "  repeat n in 1, 2 { step install A }", `  repeat n in 1, 2 { step install A ${ALLOW} }`],
  ])("%s", async (_title, lines, wanted) => {
    expect(await textAfter(work(lines), "Allow order.already-installed for this step")).toBe(work(wanted));
  });

  test("what stands in no step goes to the head of its task or procedure", async () => {
    const text =
      'part A "a"\nprocedure W "w" {\n  begin with A is removed\n  finish with A is installed\n  step "One."\n}\n';
    expect(await textAfter(text, "Allow order.unfinished for this procedure")).toBe(
      text.replace('  step "One."', '  allow order.unfinished because "…"\n  step "One."'),
    );
    const task = 'procedure W "w" {\n  task Idle "Idle" {\n  }\n  step "One."\n}\n';
    expect(await textAfter(task, "Allow flow.empty")).toContain('allow flow.empty because "…"');
  });

  test("the reason is a place to fill in, where the editor knows such places", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", work("  step install A"));
      const allow = (await actionsFor(editor, "a.sprag")).find(({ title }) => title.startsWith("Allow"));
      expect(JSON.stringify(allow?.edit?.documentChanges)).toContain(`because \\"\${1:…}\\"`);
    }));

  test("a plain text for a client without them", async () => {
    const capabilities = {
      textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
    };
    await withEditor({ capabilities }, async (editor) => {
      const { text } = await editor.open("a.sprag", work("  step install A"));
      const allow = (await actionsFor(editor, "a.sprag")).find(({ title }) => title.startsWith("Allow"));
      expect(allow?.edit?.documentChanges).toBeUndefined();
      expect(edited(text, allow?.edit?.changes?.[editor.uri("a.sprag")] ?? [])).toBe(work(`  step install A ${ALLOW}`));
    });
  });

  test.each([
    ["a form that cannot be read", "part part {"],
    ["a name", SHOP],
    ["a kind of quantity", 'part A "a" { mass 3 mm }\n'],
    ["an allow without work", work('  step "x" allow order.enclosed because "Yes."')],
    ["what stands in no procedure", 'part A "a" { thread "M10x1.5" torque 4 lb }\n'],
  ])("is not offered for %s", (_title, text) =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", text);
      expect(await editor.diagnostics("a.sprag")).not.toEqual([]);
      expect(titles(await actionsFor(editor, "a.sprag")).filter((title) => title.startsWith("Allow"))).toEqual([]);
    }),
  );

  test("is not offered for what is allowed", () =>
    withEditor({}, async (editor) => {
      await editor.open("a.sprag", work('  step install A allow order.already-installed because "Two of them."'));
      expect(await editor.diagnostics("a.sprag")).toHaveLength(1);
      expect(titles(await actionsFor(editor, "a.sprag")).filter((title) => title.startsWith("Allow"))).toEqual([]);
    }));
});

test("at every place of damaged texts, whatever is claimed to be found there, it answers", () =>
  withEditor({}, async (editor) => {
    for (const [name, text] of Object.entries(HURT)) {
      const path = `${name}.sprag`;
      await editor.open(path);
      await editor.change(path, text);
      const lines = linesOf(text);
      for (const offset of offsetsIn(text, 4)) {
        const range = lines.range(offset, Math.min(offset + 4, text.length));
        const data = { fixes: [], version: 2, isAllowed: false };
        const diagnostics = [{ range, code: "order.enclosed", source: "sprag", message: "x", data }];
        for (const { edit } of await actionsFor(editor, path, { diagnostics: diagnostics as Diagnostic[] })) {
          const [change] = edit?.documentChanges ?? [];
          expect(change).toMatchObject({ textDocument: { version: 2 } });
        }
      }
    }
  }));
