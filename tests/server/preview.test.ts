// The preview's request: the export's own content, the lines of each row, choices that the text still has, and what was found last
// while the text is being written.
import { describe, expect, test } from "vitest";
import { type Editor, type EditorSetting, withEditor } from "#harness/editor.ts";
import type { ExportAnswer, ExportParams, PreviewAnswer, PreviewParams } from "#server/protocol.ts";

const TEXT = `use "common.sprag"

option Extent "extent" { reseal full }

part Cover "cover"

procedure Work "Work" {
  begin with Cover is installed
  task Open "Open it" {
    step remove Cover
    step Look "Look at it." {
      critical
      takes 2 min
    }
  }
  when Extent is full { step "Measure." }
  perform Wash
  repeat n in 1, 2 { step "Turn to {n}." }
}
`;
const COMMON = `part Rag "rag"

procedure Wash "Wash it" {
  step clean Rag
}
`;

const files = { "a.sprag": TEXT, "common.sprag": COMMON };

async function previewed(editor: Editor, given: Partial<PreviewParams> = {}): Promise<PreviewAnswer> {
  const params: PreviewParams = {
    ...{ uri: editor.uri("a.sprag"), procedure: "Work", as: "checklist" },
    ...{ units: "both", repeats: "compact", checked: true },
    ...given,
  };
  return editor.connection.sendRequest<PreviewAnswer>("sprag/preview", params);
}

async function done(editor: Editor, given: Partial<PreviewParams> = {}): Promise<PreviewAnswer & { kind: "done" }> {
  const answer = await previewed(editor, given);
  if (answer.kind !== "done") throw new Error(answer.message);
  return answer;
}

function withFile<Result>(work: (editor: Editor) => Promise<Result>, setting: EditorSetting = {}): Promise<Result> {
  return withEditor({ files, ...setting }, async (editor) => {
    await editor.open("a.sprag");
    return work(editor);
  });
}

describe("what is shown", () => {
  test.each(["en", "de"])(
    "is what the export in “%s” writes, with nothing in it that runs or is filled in",
    (language) =>
      withFile(async (editor) => {
        const { content, form, whole } = await done(editor, { set: { Extent: "full" }, repeats: "full", language });
        const params: ExportParams = {
          ...{ uri: editor.uri("a.sprag"), procedure: "Work", as: "checklist", format: "html" },
          ...{ units: "both", repeats: "full", language, set: { Extent: "full" }, draft: false },
        };
        const exported = await editor.connection.sendRequest<ExportAnswer>("sprag/export", params);
        if (exported.kind !== "done") throw new Error(exported.message);
        const work = (page: string): string =>
          page.slice(page.indexOf("<h1"), page.indexOf("</main>")).replace(/<[^>]*>/g, "");
        expect(content).toContain(`<html lang="${language}"`);
        expect(work(content).length).toBeGreaterThan(500);
        expect(work(content)).toBe(work(exported.content));
        expect(content).not.toMatch(/<script|<[^>]+ on\w+=/);
        expect([form, whole]).toEqual(["html", true]);
      }),
  );

  test("each row leads to its lines, also into another file; a task to its first row", () =>
    withFile(async (editor) => {
      const { rows, content } = await done(editor);
      const lines = rows.map(
        ({ id, uri, first, last }) => `${id} ${uri.slice("file:///shop/".length)} ${first}-${last}`,
      );
      expect(lines).toEqual([
        "step-1-1 a.sprag 8-14",
        "step-1-1 a.sprag 9-9",
        "step-1-2 a.sprag 10-13",
        "step-2 a.sprag 15-15",
        "step-3-1 common.sprag 2-2",
        "step-3-1 common.sprag 3-3",
        "step-4 a.sprag 17-17",
      ]);
      for (const { id } of rows) expect(content).toContain(`id="${id}"`);
    }));

  test("names the pictures in the folder and carries none; what is outside, gone or no picture stays a caption", () => {
    const named = ["seat.svg", "shop/seat.svg", "../seat.svg", "gone.svg", "text.png"];
    const text = `procedure Look "Look" {\n  step "Look." {\n${named.map((one) => `    figure "${one}"\n`).join("")}  }\n}\n`;
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="8" height="8"><circle cx="4" cy="4" r="3"/></svg>';
    const pictures = { "seat.svg": svg, "shop/seat.svg": svg, "text.png": "a word" };
    return withFile(
      async (editor) => {
        for (const checked of [true, false]) {
          const { figures, content } = await done(editor, { procedure: "Look", checked });
          expect(figures.map(({ uri }) => uri)).toEqual([editor.uri("seat.svg"), editor.uri("shop/seat.svg")]);
          for (const { src } of figures) expect(content).toContain(`<img src="${src}"`);
          expect(new Set(figures.map(({ src }) => src)).size).toBe(2);
          expect(content.match(/<img /g)).toHaveLength(2);
          expect(content).not.toContain(Buffer.from(svg).toString("base64").slice(0, 60));
          for (const one of named) expect(content).toContain(one);
        }
      },
      { files: { "a.sprag": text, ...pictures } },
    );
  });

  test("offers what there is, and leaves out choices that the text has no more", () =>
    withFile(async (editor) => {
      const { outputs, procedures, options, set } = await done(editor, { set: { Extent: "full", Size: "large" } });
      expect(outputs).toContain("checklist");
      expect(outputs).not.toContain("dita");
      expect(procedures).toEqual([{ name: "Work", title: "Work" }]);
      expect(options).toEqual([{ name: "Extent", title: "extent", choices: ["reseal", "full"] }]);
      expect(set).toEqual({ Extent: "full" });
    }));

  test.each([
    ["a procedure that is gone", { procedure: "Gone" }],
    ["an output that is none", { as: "constructor" }],
    ["neither", {}],
  ])("is the first where it is asked for %s", (_title, given) =>
    withFile(async (editor) => {
      expect(await done(editor, given)).toMatchObject({ procedure: "Work", as: "checklist" });
    }),
  );

  test("every output that has a page or a picture", () =>
    withFile(async (editor) => {
      const { outputs } = await done(editor);
      for (const as of outputs) {
        const { content, form, as: shown } = await done(editor, { as });
        expect(shown).toBe(as);
        expect(content).toMatch(form === "html" ? /<html/ : /<svg/);
      }
    }));
});

describe("while it is written", () => {
  const isDraft = ({ content }: { readonly content: string }): boolean => content.includes('class="draft"');

  test("what was found last is said, until it is checked again", () =>
    withFile(async (editor) => {
      expect(isDraft(await done(editor))).toBe(false);
      await editor.change(
        "a.sprag",
        TEXT.replace("    step remove Cover", "    step remove Cover\n    step remove Cover"),
      );
      const quick = await done(editor, { checked: false });
      expect(isDraft(quick)).toBe(false);
      expect(quick.rows).toHaveLength(8);
      expect(isDraft(await done(editor))).toBe(true);
      await editor.change("a.sprag", TEXT);
      expect(isDraft(await done(editor, { checked: false }))).toBe(true);
      expect(isDraft(await done(editor))).toBe(false);
    }));

  test("the first time it is checked in any case", () =>
    withFile(async (editor) => {
      await editor.change(
        "a.sprag",
        TEXT.replace("    step remove Cover", "    step remove Cover\n    step remove Cover"),
      );
      expect(isDraft(await done(editor, { checked: false }))).toBe(true);
    }));

  test("a line that cannot be read is told of", () =>
    withFile(async (editor) => {
      await editor.change("a.sprag", TEXT.replace("remove Cover", "remove Cover to to"));
      expect((await done(editor)).whole).toBe(false);
    }));

  test("a file without a procedure is refused with what to do", () =>
    withFile(async (editor) => {
      await editor.change("a.sprag", 'part Cover "cover"\n');
      expect(await previewed(editor)).toMatchObject({ kind: "refused", remedy: expect.stringMatching(/\.$/) });
    }));
});
