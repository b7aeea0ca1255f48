// The server's own requests, asked wrongly: a clear error of the protocol or the answer, never an exception, and the server goes on.
import { expect, test } from "vitest";
import { ErrorCodes } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";
import type { AskedOfServer, ExportParams } from "#server/protocol.ts";

const TEXT = `part Cover "cover"
procedure Work "Work" {
  begin with Cover is installed
  step remove Cover
}
`;

const EXPORT: ExportParams = {
  uri: "file:///shop/a.sprag",
  as: "checklist",
  format: "md",
  units: "both",
  repeats: "compact",
  draft: true,
};

/** Each request asked rightly, and the fields it cannot do without. */
const RIGHT: { readonly [Name in keyof AskedOfServer]: AskedOfServer[Name]["params"] } = {
  "sprag/outputs": { uri: EXPORT.uri },
  "sprag/export": EXPORT,
  "sprag/preview": { uri: EXPORT.uri, as: "checklist", units: "both", repeats: "compact", checked: true },
  "sprag/review": { uri: EXPORT.uri, old: [{ uri: EXPORT.uri, text: TEXT }] },
  "sprag/rule": { code: "order.retained" },
  "sprag/starter": {},
  "sprag/atRest": {},
  "sprag/checkFolders": {},
};

const NAMES = Object.keys(RIGHT) as readonly (keyof AskedOfServer)[];

/** What is no parameters at all, as it comes out of a client's JSON. */
const NO_PARAMS: readonly unknown[] = [undefined, null, {}, [], 7, true, "order.retained", [{}]];

const ODD_VALUES: readonly unknown[] = [undefined, null, 7, true, "", "a b: c", [], {}, { Size: 7 }];

/** Which of the odd values a field takes all the same; every other one is told of. */
const TAKES: Readonly<Record<string, readonly unknown[]>> = {
  procedure: [undefined, null, "", "a b: c"],
  as: ["", "a b: c"],
  format: ["", "a b: c"],
  draft: [true],
  checked: [true],
  old: [[]],
  set: [undefined, null, {}],
  code: ["", "a b: c"],
};

type Answer = { readonly result: unknown } | { readonly code: number; readonly message: string };

async function answerTo({ connection }: Editor, name: string, params: unknown): Promise<Answer> {
  try {
    return {
      result: await (params === undefined ? connection.sendRequest(name) : connection.sendRequest(name, params)),
    };
  } catch (error) {
    const { code, message } = error as { readonly code: number; readonly message: string };
    return { code, message };
  }
}

test.each(NAMES)("%s without parameters, and with what is none", (name) =>
  withEditor({}, async (editor) => {
    await editor.open("a.sprag", TEXT);
    const [needed] = Object.keys(RIGHT[name]);
    for (const params of NO_PARAMS) {
      const answer = await answerTo(editor, name, params);
      if (needed === undefined) expect(answer, JSON.stringify(params)).toHaveProperty("result");
      else expectWords(answer, name, needed, params);
    }
    expect(await answerTo(editor, name, RIGHT[name])).toHaveProperty("result");
  }),
);

const FIELDS = NAMES.flatMap((name) => {
  const optional = name === "sprag/export" || name === "sprag/preview" ? ["procedure", "set"] : [];
  return [...Object.keys(RIGHT[name]), ...optional].map((field) => [name, field] as const);
});

test.each(FIELDS)("%s with an odd %s", (name, field) =>
  withEditor({}, async (editor) => {
    await editor.open("a.sprag", TEXT);
    const taken: unknown[] = [];
    for (const value of ODD_VALUES) {
      const answer = await answerTo(editor, name, { ...RIGHT[name], [field]: value });
      if ("result" in answer) taken.push(value);
      else expectWords(answer, name, field, value);
    }
    expect(taken).toEqual(TAKES[field] ?? []);
    expect(await answerTo(editor, name, RIGHT[name])).toHaveProperty("result");
  }),
);

test("right parameters for a file, an output or a code that is not there are answered", () =>
  withEditor({}, async (editor) => {
    await editor.open("a.sprag", TEXT);
    const elsewhere = "untitled:Untitled-1";
    expect(await answerTo(editor, "sprag/outputs", { uri: elsewhere })).toMatchObject({ result: { procedures: [] } });
    for (const odd of [{ uri: elsewhere }, { as: "constructor" }, { format: "__proto__" }, { procedure: "Nobody" }])
      expect(await answerTo(editor, "sprag/export", { ...EXPORT, ...odd })).toMatchObject({
        result: { kind: "refused", remedy: expect.stringMatching(/\.$/) },
      });
    expect(await answerTo(editor, "sprag/export", { ...EXPORT, set: { Nothing: "x" } })).toHaveProperty("result");
    expect(await answerTo(editor, "sprag/rule", { code: "constructor" })).toEqual({ result: null });
  }));

function expectWords(answer: Answer, name: string, field: string, given: unknown): void {
  expect(answer, JSON.stringify(given)).toEqual({
    code: ErrorCodes.InvalidParams,
    message: expect.stringMatching(new RegExp(`^${name}: “${field}” is to be .+\\.$`)),
  });
}
