// Renaming across files, and the sentences with which it is refused.
import { expect, test } from "vitest";
import type { WorkspaceEdit } from "vscode-languageserver-protocol";
import { type Editor, withEditor } from "#harness/editor.ts";

const LIBRARY = `role Fitter "fitter"
hazard Dust "dust"
part Cover "cover" { states open, shut }
part Foot[left, right] "foot"
part Screw[1..4] "screw" { secures Cover }
value Limit = 3 mm
option Extent "extent" { Full Reseal }
`;
const MAIN = `use "library.sprag"
part Lid "lid"
procedure Open "Open it" {
  role Helper "helper"
  warning Dust "There is dust."
  step Loosen { repeat n in 1, 2 { repeat m in 3, 4 { loosen Screw[n], Screw[m]  do "Mark screw {n} and { n }, not n." } } }
  step Second "Go on." after Loosen by Fitter
  step Third { when Extent is Full { remove Cover, Lid } needs Cover is open, Foot[left] is clean }
  step Fourth { measure Gap "Cover" expect at most Limit }
}
`;
const FILES = { "library.sprag": LIBRARY, "main.sprag": MAIN };

test.each([
  [
    "a part",
    "remove Co<|>ver",
    "Hood",
    [
      ["main.sprag", "remove Cover, Lid", "remove Hood, Lid"],
      ["main.sprag", "Cover is open", "Hood is open"],
      ["library.sprag", "part Cover", "part Hood"],
      ["library.sprag", "secures Cover", "secures Hood"],
    ],
  ],
  [
    "a step, from where it is used",
    "after Loo<|>sen",
    "Undo",
    [
      ["main.sprag", "step Loosen", "step Undo"],
      ["main.sprag", "after Loosen", "after Undo"],
    ],
  ],
  [
    "a loop variable, in own words too",
    "repeat <|>n in",
    "k",
    [
      ["main.sprag", "repeat n in", "repeat k in"],
      ["main.sprag", "Screw[n]", "Screw[k]"],
      ["main.sprag", "{n} and { n }, not n", "{k} and { k }, not n"],
    ],
  ],
  [
    "a choice",
    "is Fu<|>ll",
    "Whole",
    [
      ["main.sprag", "is Full", "is Whole"],
      ["library.sprag", "{ Full", "{ Whole"],
    ],
  ],
  [
    "a choice, by a word that no name may be",
    "is Fu<|>ll",
    "clean",
    [
      ["main.sprag", "is Full", "is clean"],
      ["library.sprag", "{ Full", "{ clean"],
    ],
  ],
  [
    "an own state",
    "Cover is op<|>en",
    "ajar",
    [
      ["main.sprag", "is open", "is ajar"],
      ["library.sprag", "states open", "states ajar"],
    ],
  ],
  [
    "a named instance",
    "Foot[le<|>ft]",
    "port",
    [
      ["main.sprag", "Foot[left]", "Foot[port]"],
      ["library.sprag", "[left,", "[port,"],
    ],
  ],
  [
    "a hazard",
    "warning Du<|>st",
    "Fluff",
    [
      ["main.sprag", "warning Dust", "warning Fluff"],
      ["library.sprag", "hazard Dust", "hazard Fluff"],
    ],
  ],
  [
    "a keyword that may be a name",
    "by Fit<|>ter",
    "factor",
    [
      ["main.sprag", "by Fitter", "by factor"],
      ["library.sprag", "role Fitter", "role factor"],
    ],
  ],
  [
    "a step by a part's name: they are kept apart",
    "after Loo<|>sen",
    "Cover",
    [
      ["main.sprag", "step Loosen", "step Cover"],
      ["main.sprag", "after Loosen", "after Cover"],
    ],
  ],
  [
    "a name with letters of two code points, kept in NFC",
    "remove Co<|>ver",
    "Ha\u0308ube",
    [
      ["main.sprag", "remove Cover, Lid", "remove H\u00e4ube, Lid"],
      ["main.sprag", "Cover is open", "H\u00e4ube is open"],
      ["library.sprag", "part Cover", "part H\u00e4ube"],
      ["library.sprag", "secures Cover", "secures H\u00e4ube"],
    ],
  ],
] as const)("renames %s", (_title, place, newName, changes) =>
  withEditor({ files: FILES }, async (editor) => {
    const wanted: Record<string, string> = { ...FILES };
    for (const [path, from, to] of changes) {
      expect(wanted[path]).toContain(from);
      wanted[path] = (wanted[path] ?? "").replace(from, () => to);
    }
    await editor.apply(await renameAt(editor, place, newName));
    expect(Object.fromEntries(Object.keys(FILES).map((path) => [path, editor.text(path)]))).toEqual(wanted);
  }),
);

test("a name in a line that cannot be read is changed with the others", () =>
  withEditor({}, async (editor) => {
    const text =
      'part Cover "cover"\nprocedure P "p" {\n  step zorp Cover at 3 // not Cover here\n  step remove Co<|>ver\n}\n';
    const { uri, cursor } = await editor.open("main.sprag", text);
    await editor.apply(await request(editor, uri, cursor, "Hood"));
    expect(editor.text("main.sprag")).toBe(
      'part Hood "cover"\nprocedure P "p" {\n  step zorp Hood at 3 // not Cover here\n  step remove Hood\n}\n',
    );
  }));

test("every file that uses it, also with CR LF and letters of two code units", () => {
  const user = 'use "library.sprag"\r\n/* 😀 */ procedure Two "t" { step "😀" by Fitter }\r\n';
  return withEditor({ files: { ...FILES, "two.sprag": user } }, async (editor) => {
    await editor.apply(await renameAt(editor, "by Fit<|>ter", "Hand_2"));
    expect(editor.text("two.sprag")).toBe(user.replace("Fitter", "Hand_2"));
  });
});

test("for a client without versions of texts", () =>
  withEditor({ files: FILES, capabilities: {} }, async (editor) => {
    const edit = await renameAt(editor, "by Fit<|>ter", "Hand");
    expect(Object.keys(edit.changes ?? {}).sort()).toEqual([editor.uri("library.sprag"), editor.uri("main.sprag")]);
    expect(editor.initialized.capabilities.renameProvider).toBe(true);
  }));

test("the same name changes nothing", () =>
  withEditor({ files: FILES }, async (editor) => {
    expect(await renameAt(editor, "by Fit<|>ter", " Fitter ")).toEqual({});
  }));

test.each([
  ["a keyword", "by Fit<|>ter", "step", "“step” is a word of the language. Choose another name."],
  ["no name", "by Fit<|>ter", "2nd", "“2nd” cannot be a name. A name is a letter, then letters, digits and _."],
  ["nothing", "by Fit<|>ter", "  ", "“” cannot be a name. A name is a letter, then letters, digits and _."],
  ["two names", "by Fit<|>ter", "A B", "“A B” cannot be a name. A name is a letter, then letters, digits and _."],
  [
    "more than a name",
    "by Fit<|>ter",
    'A "x"',
    '“A "x"” cannot be a name. A name is a letter, then letters, digits and _.',
  ],
  [
    "a letter that is none here",
    "by Fit<|>ter",
    "𝔄",
    "“𝔄” cannot be a name. A name is a letter, then letters, digits and _.",
  ],
  [
    "taken in the same file",
    "remove Cover, L<|>id",
    "Open",
    "“Open” is taken: main.sprag, line 3. Choose another name.",
  ],
  [
    "taken where it is declared",
    "remove Co<|>ver",
    "Foot",
    "“Foot” is taken: library.sprag, line 4. Choose another name.",
  ],
  ["taken where it is used", "remove Co<|>ver", "Lid", "“Lid” is taken: main.sprag, line 2. Choose another name."],
  [
    "taken inside a procedure that uses it",
    "by Fit<|>ter",
    "Helper",
    "“Helper” is taken: main.sprag, line 4. Choose another name.",
  ],
  ["a reading's name", "by Fit<|>ter", "Gap", "“Gap” is taken: main.sprag, line 9. Choose another name."],
  [
    "an outer name, by an inner declaration",
    "role Hel<|>per",
    "Fitter",
    "“Fitter” is taken: library.sprag, line 1. Choose another name.",
  ],
  [
    "a step's name, by a step",
    "after Loo<|>sen",
    "Third",
    "“Third” is taken: main.sprag, line 8. Choose another name.",
  ],
  ["an outer loop variable", "repeat <|>m in", "n", "“n” is taken: main.sprag, line 6. Choose another name."],
  ["an inner loop variable", "repeat <|>n in", "m", "“m” is taken: main.sprag, line 6. Choose another name."],
  ["another choice", "is Fu<|>ll", "Reseal", "“Reseal” is taken: library.sprag, line 7. Choose another name."],
  ["another own state", "Cover is op<|>en", "shut", "“shut” is taken: library.sprag, line 3. Choose another name."],
  [
    "a state of every part",
    "Cover is op<|>en",
    "removed",
    "“removed” is a state that every part has. Choose another name.",
  ],
  ["another instance", "Foot[le<|>ft]", "right", "“right” is taken: library.sprag, line 4. Choose another name."],
  ["a hazard of the language", "warning Du<|>st", "burn", "“burn” is a hazard of the language. Choose another name."],
])("refuses %s", (_title, place, newName, sentence) =>
  withEditor({ files: FILES }, async (editor) => {
    await expect(renameAt(editor, place, newName)).rejects.toThrow(sentence);
  }),
);

test("refuses a name that would be read as a keyword in one of its places", () =>
  withEditor({}, async (editor) => {
    const text = `ring Circle "c" { count 4  numbered clockwise seen from "front"  position 1 at 12 o'clock }
value Twelve = 12 o'clock
procedure P "p" {
  begin with Circle[1] at Twelve - 30 °
}
`;
    const sentence = "“least” would be read as a keyword in main.sprag, line 4. Choose another name.";
    await expect(renameAt(editor, "at Twe<|>lve", "least", text)).rejects.toThrow(sentence);
    await editor.apply(await renameAt(editor, "at Twe<|>lve", "cross", text));
    expect(editor.text("main.sprag")).toBe(text.replaceAll("Twelve", "cross"));
  }));

test("a name that is taken only in a file that uses the same library", () =>
  withEditor({ files: { ...FILES, "other.sprag": 'use "library.sprag"\nrole Mate "mate"\n' } }, async (editor) => {
    await expect(renameAt(editor, "by Fit<|>ter", "Mate")).rejects.toThrow("“Mate” is taken: other.sprag, line 2.");
    await editor.apply(await renameAt(editor, "after Loo<|>sen", "Mate"));
    expect(editor.text("main.sprag")).toContain("after Mate");
  }));

test("over a chain of files: those that take the name over, and a clash in any of them", () => {
  const files = {
    "a.sprag": 'part Cover "cover"\n',
    "b.sprag": 'use "a.sprag"\npart Lid "lid" { encloses Cover }\n',
    "c.sprag": 'use "b.sprag"\nrole Cover "another"\nprocedure C "c" { step inspect Lid by Cover }\n',
    "d.sprag": 'use "b.sprag"\nuse "a.sprag"\nrole Mate "mate"\npart Cap "cap" { encloses Cover }\n',
  };
  return withEditor({ files }, async (editor) => {
    await editor.atRest();
    const { uri, cursor } = await editor.open("b.sprag", files["b.sprag"].replace("Cover", "Co<|>ver"));
    const refusals = [
      ["Lid", "“Lid” is taken: b.sprag, line 2. Choose another name."],
      ["Mate", "“Mate” is taken: d.sprag, line 3. Choose another name."],
      ["Cap", "“Cap” is taken: d.sprag, line 4. Choose another name."],
    ] as const;
    for (const [taken, sentence] of refusals)
      await expect(request(editor, uri, cursor, taken)).rejects.toThrow(sentence);
    // What c declares is out of reach of all that name the part.
    await editor.apply(await request(editor, uri, cursor, "C"));
    const after = (path: keyof typeof files): string => files[path].replaceAll("Cover", "C");
    expect(editor.text("a.sprag")).toBe(after("a.sprag"));
    expect(editor.text("b.sprag")).toBe(after("b.sprag"));
    expect(editor.text("c.sprag")).toBe(files["c.sprag"]);
    expect(editor.text("d.sprag")).toBe(after("d.sprag"));
  });
});

test("a name inside a procedure that does not use the thing is free", () =>
  withEditor({ files: { ...FILES, "other.sprag": 'procedure P "p" { role Mate "mate" }\n' } }, async (editor) => {
    await editor.apply(await renameAt(editor, "by Fit<|>ter", "Mate"));
    expect(editor.text("library.sprag")).toContain("role Mate");
  }));

test.each([
  ["the name alone", "by Fit<|>ter", "Fitter"],
  ["the name it ends", "by Fitter<|>", "Fitter"],
  ["a loop variable in words", "Mark screw {<|>n}", "n"],
])("offers to change %s", (_title, place, placeholder) =>
  withEditor({ files: FILES }, async (editor) => {
    expect(await prepareAt(editor, place)).toMatchObject({ placeholder });
  }),
);

test.each([
  ["a keyword", "mea<|>sure Gap", "No name stands here."],
  ["own words", 'Gap "Co<|>ver"', "No name stands here."],
  ["a state of every part", "is cle<|>an", "“clean” is a word of the language and keeps its name."],
  ["a name that nothing bears", "step remove Ni<|>l", "Nothing in reach is called “Nil”."],
  ["a word of an unreadable line", "step zorp Ni<|>l at 3", "The line of “Nil” cannot be read."],
])("does not offer to change %s", (_title, place, sentence) =>
  withEditor({ files: FILES }, async (editor) => {
    const text = place.includes("Ni<|>l")
      ? MAIN.replace("  step Second", `  step ${place.replace("<|>", "")}\n  step Second`)
      : MAIN;
    await expect(prepareAt(editor, place, text)).rejects.toThrow(sentence);
  }),
);

async function renameAt(editor: Editor, place: string, newName: string, text = MAIN): Promise<WorkspaceEdit> {
  const { uri, cursor } = await editor.open("main.sprag", marked(text, place));
  return request(editor, uri, cursor, newName);
}

async function request(editor: Editor, uri: string, position: object, newName: string): Promise<WorkspaceEdit> {
  return editor.connection.sendRequest("textDocument/rename", { textDocument: { uri }, position, newName });
}

async function prepareAt(editor: Editor, place: string, text = MAIN): Promise<unknown> {
  const { uri, cursor } = await editor.open("main.sprag", marked(text, place));
  return editor.connection.sendRequest("textDocument/prepareRename", { textDocument: { uri }, position: cursor });
}

/** The text with the cursor where the snippet has it. */
function marked(text: string, place: string): string {
  const plain = place.replace("<|>", "");
  expect(text.split(plain)).toHaveLength(2);
  return text.replace(plain, () => place);
}
