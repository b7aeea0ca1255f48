// Completion at marked places: what is offered, what comes first, and what is not offered.

import { describe, expect, test } from "vitest";
import type { CompletionItem, CompletionList } from "vscode-languageserver-protocol/node";
import { type Editor, withEditor } from "#harness/editor.ts";
import { askEverywhere, roughTexts } from "#harness/everywhere.ts";

const SHOP = `source Manual "pump manual" revision "9"
role Fitter "fitter"
option Extent "extent of work" { Full "full overhaul"  Reseal "reseal only" }
energy MotorSupply "motor supply" { voltage 400 V AC }
energy Coast "flywheel" { rotating }
fact Signed "the sheet is signed"
hazard Lint "lint"
ring Circle "bolt circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
tool Small "small torque wrench" { torque 1 .. 5 N·m }
tool Hoist "chain hoist" { lifts 250 kg }
tool Sling "light hoist" { lifts 20 kg }
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm }
consumable Grease "grease"
consumable Soap "soap"
part Rotor "rotor" { mass 64 kg  driven by MotorSupply }
part Bush "bush" { states open, shut }
part Cover "bearing cover" { mass 9 kg  encloses Bush }
part Screw[1..4] "cover screw" { seats in Circle by number  secures Cover  torque 45 ± 2 N·m with Grease }
part Foot[left, right] "foot"
value Final = 45 ± 2 N·m
procedure Other "another one" { step inspect Cover }
`;

const procedure = (lines: string): string =>
  `${SHOP}procedure Open "Open the housing" {\n  begin with Cover is secured\n${lines}\n}\n`;

async function listAt(editor: Editor, path: string, text: string): Promise<readonly CompletionItem[]> {
  const { uri, cursor } = await editor.open(path, text);
  const answer = await editor.connection.sendRequest<CompletionList>("textDocument/completion", {
    textDocument: { uri },
    position: cursor,
  });
  return [...answer.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
}

function itemsAt(text: string): Promise<readonly CompletionItem[]> {
  return withEditor({}, (editor) => listAt(editor, "open.sprag", text));
}

async function labelsAt(text: string): Promise<readonly string[]> {
  return (await itemsAt(text)).map(({ label }) => label);
}

/** What stands beside a label, and what is said of it. */
async function saidOf(text: string, label: string): Promise<readonly unknown[]> {
  const item = (await itemsAt(text)).find((one) => one.label === label);
  return [item?.detail, item?.documentation];
}

/** How much of the line the item replaces. */
function replacedLength(item: CompletionItem | undefined): number {
  const edit = item?.textEdit;
  if (edit === undefined || !("range" in edit)) return -1;
  return edit.range.end.character - edit.range.start.character;
}

/** Whether the labels come in this order, others between them. */
function inOrder(labels: readonly string[], wanted: readonly string[]): boolean {
  const places = wanted.map((label) => labels.indexOf(label));
  return places.every((place, at) => place >= 0 && (at === 0 || place > (places[at - 1] as number)));
}

describe("statements that may begin here", () => {
  test.each([
    ["in a file", "<|>\n", ["part", "procedure", "use", "ring"], ["step", "install", "mass"]],
    [
      "in a part",
      'part A "a" {\n  <|>\n}\n',
      ["mass", "seats in", "heat limit", "secures"],
      ["voltage", "part", "step"],
    ],
    ["in a tool", 'tool A "a" {\n  <|>\n}\n', ["lifts", "measures", "torque", "heats to"], ["mass", "encloses"]],
    [
      "in a ring",
      'ring A "a" {\n  <|>\n}\n',
      ["count", "numbered clockwise", "position", "fill counterclockwise"],
      ["mass", "part"],
    ],
    [
      "in a crib item",
      `${SHOP}crib Main { item "1" for Wrench {\n  <|>\n} }\n`,
      ["accuracy", "calibrated until"],
      ["count"],
    ],
    [
      "at the head of a procedure",
      'procedure P "p" {\n  <|>\n}\n',
      ["document", "begin with", "step", "part"],
      ["install", "mass"],
    ],
    [
      "between steps",
      procedure("  step inspect Cover\n  <|>\n  step inspect Cover"),
      ["step", "task", "when", "in any order"],
      ["document-x", "mass"],
    ],
    ["behind `step`", procedure("  step <|>"), ["install", "loosen", "set down", "perform"], ["step", "sign", "task"]],
    [
      "in a step",
      procedure("  step {\n    <|>\n  }"),
      ["install", "check", "sign", "hold for", "takes"],
      ["step", "task", "document"],
    ],
    [
      "in a check's failing block",
      procedure('  step { check "x" if it fails {\n    <|>\n  } }'),
      ["stop", "return to", "remove"],
      ["task", "step"],
    ],
    [
      "behind a check",
      procedure('  step {\n    check "x" <|>\n  }'),
      ["if it fails", "if not", "with", "expect", "record"],
      ["to"],
    ],
    [
      "behind an object",
      procedure("  step tighten Screw[all] <|>"),
      ["in cross pattern", "in order", "by hand", "to", "to seat", "with"],
      ["over"],
    ],
  ])("%s", async (_, text, offered, not) => {
    const labels = await labelsAt(text);
    expect(offered.filter((label) => !labels.includes(label))).toEqual([]);
    expect(not.filter((label) => labels.includes(label))).toEqual([]);
  });
  test("a block that is left open further up does not matter below", async () => {
    const labels = await labelsAt(procedure("  step {\n    inspect Cover\n  step Two {\n    <|>\n  }"));
    expect(labels).toContain("install");
    expect(labels).not.toContain("task");
  });
});

describe("what is said of a word", () => {
  test("of a line what it is for; of an action its form, what it needs and does", async () => {
    expect(await saidOf("<|>\n", "fact")).toEqual([
      "Something that a step brings about and others depend on.",
      undefined,
    ]);
    expect(await saidOf(procedure("  step <|>"), "remove")).toEqual([
      "remove P",
      {
        kind: "plaintext",
        value:
          "Needs: P is in, in reach; nothing retains it, no fastener holds it.\nDoes: P is out, with all that is on it; of single use it is used.",
      },
    ]);
  });
  test("nothing where the same word only goes on with a line", async () => {
    const text = 'role Fitter "fitter"\nprocedure P "p" { step { do "x" hold <|> } }\n';
    expect(await saidOf(text, "for")).toEqual([undefined, undefined]);
  });
  test("a first procedure is offered whole before its word alone", async () => {
    expect((await labelsAt("pro<|>")).slice(0, 2)).toEqual(["procedure …", "procedure"]);
  });
});

describe("what could be acted on in the state reached here", () => {
  const groupOf = async (lines: string, label: string): Promise<string> => {
    const found = (await itemsAt(procedure(lines))).find((item) => item.label === label);
    return found?.sortText?.[0] ?? "none";
  };
  test("remove: what is in and held by nothing", async () => {
    const held = "  step remove <|>";
    const free = "  step loosen Screw[all]\n  step remove Screw[all]\n  step remove <|>";
    expect(inOrder(await labelsAt(procedure(held)), ["Screw", "Cover"])).toBe(true);
    expect((await itemsAt(procedure(held))).find(({ label }) => label === "Cover")?.detail).toContain(
      "held by Screw[1]",
    );
    expect(inOrder(await labelsAt(procedure(free)), ["Cover", "Screw"])).toBe(true);
    expect((await itemsAt(procedure(free))).find(({ label }) => label === "Screw")?.detail).toContain("is not in");
  });
  test("loosen: what is tight", async () => {
    expect(await groupOf("  step loosen <|>", "Screw")).toBe("0");
    expect(await groupOf("  step loosen Screw[all]\n  step loosen <|>", "Screw")).toBe("3");
  });
  test("tighten: what is loose comes before what is tight", async () => {
    expect(await groupOf("  step loosen Screw[all]\n  step tighten <|>", "Screw")).toBe("0");
    expect(await groupOf("  step tighten <|>", "Screw")).toBe("1");
  });
  test("install: what is out", async () => {
    const labels = await labelsAt(procedure("  step install <|>"));
    expect(inOrder(labels, ["Foot", "Cover"])).toBe(true);
  });
  test("what is behind a cover says so", async () => {
    const items = await itemsAt(procedure("  step install <|>"));
    expect(items.find(({ label }) => label === "Bush")?.detail).toContain("behind Cover");
  });
  test("what is driven says which energy is live", async () => {
    const items = await itemsAt(procedure("  step install <|>"));
    expect(items.find(({ label }) => label === "Rotor")?.detail).toContain("MotorSupply is live");
  });
  test("energies that are live to be isolated, and only energies", async () => {
    const labels = await labelsAt(procedure("  step isolate MotorSupply\n  step isolate <|>"));
    expect(inOrder(labels, ["Coast", "MotorSupply"])).toBe(true);
    expect(labels).not.toContain("Cover");
  });
  test("behind the steps that come later it does not matter what they do", async () => {
    const lines = "  step remove <|>\n  step loosen Screw[all]\n  step remove Screw[all]\n  step remove Cover";
    expect(await groupOf(lines, "Cover")).toBe("3");
  });
  test("in a repeat the index is its variable", async () => {
    const items = await itemsAt(procedure("  step loosen Screw[all]\n  repeat n in 1, 2 { step remove <|> }"));
    const screw = items.find(({ label }) => label === "Screw");
    expect(screw?.textEdit?.newText).toMatch(/^Screw\[\$\{1:n\}\]$/);
  });
});

describe("tools and consumables", () => {
  test("a torque that the wrench holds", async () => {
    const labels = await labelsAt(procedure("  step tighten Screw[all] to 40 ± 2 N·m with <|>"));
    expect(inOrder(labels, ["Wrench", "Hoist", "Small"])).toBe(true);
  });
  test("a torque by the name of its value, and why not", async () => {
    const items = await itemsAt(procedure("  step tighten Screw[all] to 30 %, 100 % of Final with <|>"));
    expect(items[0]?.label).toBe("Wrench");
    expect(items.find(({ label }) => label === "Small")?.detail).toContain("does not hold 45 ± 2 N·m");
  });
  test.each([
    [
      "tighten Screw[all] to 40 ± 4 N·m",
      ["holds 40 ± 4 N·m · 8 .. 60 N·m · torque wrench", "does not hold 40 ± 4 N·m · 1 .. 5 N·m · small torque wrench"],
    ],
    ["loosen Screw[all]", ["8 .. 60 N·m · torque wrench", "1 .. 5 N·m · small torque wrench"]],
    ["lift Rotor", ["torque wrench", "small torque wrench"]],
  ])("the verdict stands first, where a long line is not cut off: %s", async (action, expected) => {
    const items = await itemsAt(procedure(`  step ${action} with <|>`));
    expect(["Wrench", "Small"].map((name) => items.find(({ label }) => label === name)?.detail)).toEqual(expected);
  });
  test("a torque small enough for the small one", async () => {
    const labels = await labelsAt(procedure("  step tighten Screw[all] to 3 N·m with <|>"));
    expect(inOrder(labels, ["Small", "Wrench"])).toBe(true);
  });
  test("a hoist that lifts the mass", async () => {
    const labels = await labelsAt(procedure("  step lift Rotor with <|>"));
    expect(inOrder(labels, ["Hoist", "Wrench", "Sling"])).toBe(true);
    expect(inOrder(await labelsAt(procedure("  step lift Cover with <|>")), ["Sling", "Wrench"])).toBe(true);
  });
  test("a gauge that measures what is expected behind it", async () => {
    const labels = await labelsAt(procedure('  step { check "gap" with <|> expect at most 0.05 mm }'));
    expect(labels[0]).toBe("Feeler");
  });
  test("consumables, not tools", async () => {
    const labels = await labelsAt(procedure("  step lubricate Screw[all] with <|>"));
    expect(inOrder(labels, ["Grease", "Soap"])).toBe(true);
    expect(labels).not.toContain("Wrench");
  });
});

describe("units", () => {
  test("of the kind wanted, those of the file first", async () => {
    expect((await labelsAt(procedure("  step tighten Screw[all] to 45 <|>")))[0]).toBe("N·m");
    const customary =
      'part A "a" { secures B  torque 30 lbf·ft }\npart B "b"\nprocedure P "p" { step tighten A to 3 <|> }\n';
    expect((await labelsAt(customary))[0]).toBe("lbf·ft");
  });
  test("none of another kind", async () => {
    const labels = await labelsAt(procedure("  step wait 3 <|>"));
    expect(labels).toContain("min");
    expect(labels).not.toContain("N·m");
    expect(labels).not.toContain("kg");
  });
  test("while a part of it has been typed", async () => {
    const items = await itemsAt(procedure("  step tighten Screw[all] to 45 N<|>"));
    const unit = items.find(({ label }) => label === "N·m");
    expect(unit?.textEdit).toMatchObject({ newText: "N·m" });
    expect(replacedLength(unit)).toBe(1);
  });
  test("behind the number itself with a blank", async () => {
    const items = await itemsAt(procedure("  step tighten Screw[all] to 45<|>"));
    expect(items.find(({ label }) => label === "N·m")?.textEdit).toMatchObject({ newText: " N·m" });
    expect(items.map(({ label }) => label)).not.toContain("with");
  });
  test("of a temperature for a part's condition, a clock for a ring's", async () => {
    expect((await labelsAt(procedure("  step wait until Cover is at most 40 <|>")))[0]).toBe("°C");
    expect((await labelsAt(procedure("  step turn Circle[1] to 6 <|>")))[0]).toBe("o'clock");
  });
  test("a count takes none", async () => {
    const labels = await labelsAt('ring A "a" { count 8 <|> }\n');
    expect(labels).toContain("numbered clockwise");
    expect(labels).not.toContain("N·m");
  });
});

describe("what belongs to a word", () => {
  test.each([
    ["states of a part, its own first", "  when Bush is <|> { }", ["open", "shut", "installed"], ["isolated", "Full"]],
    ["states of an energy", "  when MotorSupply is <|> { }", ["isolated", "live"], ["installed"]],
    ["choices", "  when Extent is <|> { }", ["Full", "Reseal"], ["installed"]],
    ["sources", "  step inspect Cover per <|>", ["Manual"], ["Cover", "Wrench"]],
    ["roles", "  step { inspect Cover sign <|> }", ["Fitter"], ["Manual", "Cover"]],
    ["hazards for people", '  warning <|> "x"', ["Lint", "burn"], ["Cover"]],
    ["procedures", "  step perform <|>", ["Other"], ["Open", "Cover"]],
    ["conditions", "  when <|> { }", ["Extent", "Cover", "MotorSupply", "Signed", "not"], ["Wrench", "Manual"]],
    ["indices", "  repeat n in 1, 2 { step remove Screw[<|>] }", ["n", "1..4", "1", "4", "all"], ["Cover"]],
    ["instances by name", "  step remove Foot[<|>]", ["left", "right", "all"], ["Cover"]],
    ["values", "  step tighten Screw[all] to <|>", ["Final", "at least", "at most"], ["Cover", "Wrench"]],
    ["places", "  step install Screw[1] in <|>", ["Circle"], ["Wrench", "Manual"]],
  ])("%s", async (_, lines, offered, not) => {
    const labels = await labelsAt(procedure(lines));
    expect(offered.filter((label) => !labels.includes(label))).toEqual([]);
    expect(not.filter((label) => labels.includes(label))).toEqual([]);
  });
  test("steps: back to those before, on to those behind", async () => {
    const lines = (jump: string): string =>
      `  step First { inspect Cover }\n  step Here { check "x" if it fails { ${jump} <|> } }\n  step Last { inspect Cover }`;
    expect(inOrder(await labelsAt(procedure(lines("return to"))), ["First", "Last"])).toBe(true);
    expect(inOrder(await labelsAt(procedure(lines("go to"))), ["Last", "First"])).toBe(true);
  });
  test("a new name is not offered another's", async () => {
    expect(await labelsAt(`${SHOP}part <|>`)).toEqual([]);
  });
  test("codes, those found here first, as one word", async () => {
    const items = await itemsAt(procedure("  step { remove Cover  allow order.<|> }"));
    expect(items[0]?.label).toBe("order.retained");
    expect(items.map(({ label }) => label)).not.toContain("syntax.unexpected");
    expect(replacedLength(items[0])).toBe("order.".length);
  });
});

describe("texts", () => {
  test("files to use, from where this one stands", () =>
    withEditor({ files: { "shop/tools.sprag": 'tool Wrench "w"\n', "b.sprag": "" } }, async (editor) => {
      await editor.connection.sendRequest("sprag/checkFolders", {});
      const items = await listAt(editor, "work/a.sprag", 'use "<|>\n');
      expect(items.map(({ label }) => label).sort()).toEqual(["../b.sprag", "../shop/tools.sprag"]);
      expect(items.every(({ label, textEdit }) => textEdit?.newText === label)).toBe(true);
    }));
  test.each([
    ["another text", 'part A "co<|>'],
    ["a text over lines", 'part A """\n  co<|>\n'],
    ["a comment", "// pa<|>\n"],
    ["a comment over lines", "/* pa<|>\n"],
  ])("nothing in %s", async (_, text) => {
    expect(await labelsAt(text)).toEqual([]);
  });
});

describe("snippets", () => {
  test("only for clients that can", () =>
    withEditor({ capabilities: {} }, async (editor) => {
      const items = await listAt(editor, "a.sprag", procedure("  step loosen Screw[all]\n  <|>"));
      expect(items.some(({ textEdit }) => textEdit?.newText.includes("${"))).toBe(false);
      expect(items.map(({ label }) => label)).toContain("step");
    }));
});

test.each(roughTexts(SHOP, procedure))("it answers at every place, on the line of the cursor: %s", (_, text) =>
  withEditor({}, async (editor) => {
    const answers = await askEverywhere<CompletionList>(editor, "textDocument/completion", text);
    expect(answers.length).toBeGreaterThan(0);
    for (const { position, answer } of answers)
      for (const { label, textEdit } of answer.items) {
        expect(label).not.toBe("");
        const { start, end } =
          textEdit !== undefined && "range" in textEdit ? textEdit.range : { start: null, end: null };
        expect(end, label).toEqual(position);
        expect(start?.line, label).toBe(position.line);
      }
  }),
);
