// What completion puts first where several things of one sort could stand: tools beside tools, units behind a bare number, the names
// that snippets begin with.
import { describe, expect, test } from "vitest";
import { type CompletionItem, CompletionItemKind, type CompletionList } from "vscode-languageserver-protocol/node";
import { withEditor } from "#harness/editor.ts";

// In an order in which the first of each sort is the wrong one.
const SHOP = `source Manual "manual" revision "1"
option Extent "extent" { Full Quick }
tool Adapter "crowfoot" { offset 50 mm }
tool Pan "drip pan"
tool Sling "sling" { each leg lifts 100 kg }
tool Hoist "hoist" { lifts 250 kg }
tool Small "small wrench" { torque 1 .. 5 N·m }
tool Wrench "wrench" { torque 8 .. 60 N·m }
tool Oven "oven" { heats to 150 °C }
part Frame "frame"
part Seal[left, right] "seal"
part Plate[1..3] "plate"
part Shaft "shaft" { mass 30 kg }
part Gear "gear" { heat limit 150 °C per Manual "2" }
part Screw[1..4] "screw" { secures Gear }
fit Gear over Shaft { diameter 50 mm  tolerance "H7/s6" } per Manual "3"
`;

function itemsAt(text: string): Promise<readonly CompletionItem[]> {
  return withEditor({}, async (editor) => {
    const { uri, cursor } = await editor.open("a.sprag", text);
    const answer = await editor.connection.sendRequest<CompletionList>("textDocument/completion", {
      textDocument: { uri },
      position: cursor,
    });
    return [...answer.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
  });
}

const work = (lines: string): string => `${SHOP}procedure P "p" {\n${lines}\n}\n`;
const labelsAt = async (text: string): Promise<readonly string[]> => (await itemsAt(text)).map(({ label }) => label);

describe("tools", () => {
  test("behind a wrench and “+” an adapter, what is named already last", async () => {
    const labels = await labelsAt(work("  step tighten Screw[all] to 20 N·m with Wrench + <|>"));
    expect(labels[0]).toBe("Adapter");
    expect(labels.at(-1)).toBe("Wrench");
    expect(labels).toContain("Pan");
  });
  test("behind a hoist and “+” a sling", async () => {
    const labels = await labelsAt(work("  step lift Shaft with Hoist + <|>"));
    expect(labels[0]).toBe("Sling");
    expect(labels.at(-1)).toBe("Hoist");
  });
  test("without “+” what does it alone", async () => {
    expect((await labelsAt(work("  step tighten Screw[all] to 20 N·m with <|>")))[0]).toBe("Wrench");
    expect((await labelsAt(work("  step lift Shaft with <|>")))[0]).toBe("Hoist");
  });
});

test.each([
  ["a value of any kind", "value A = 3 <|>\n"],
  ["a sum", "value A = 2 mm + 3 <|>\n"],
])("behind the number of %s a unit comes before words", async (_, text) => {
  const items = await itemsAt(text);
  expect(items[0]).toMatchObject({ label: "mm", detail: "length" });
  expect(items.map(({ label }) => label)).toContain("of");
});

describe("snippets begin with names that suit them", () => {
  const textOf = async (label: string): Promise<string> => {
    const item = (await itemsAt(work("  <|>"))).find((one) => one.label === label);
    return item?.textEdit?.newText ?? "";
  };
  test("a hot fit: what goes over what, and what heats", async () => {
    const text = await textOf("hot fit");
    expect(text).toContain(`heat \${2:Gear} to \${3:100 .. 112} °C with \${4:Oven}`);
    expect(text).toContain(`install \${2:Gear} over \${6:Shaft}`);
  });
  test("a bolt circle: fasteners of which there are several, and a wrench", async () => {
    const text = await textOf("bolt circle: install, tighten");
    expect(text).toContain(`install \${1:Screw}[all]`);
    expect(text).toContain(`with \${4:Small}`);
  });
  test("the wrench is one that holds their torque, where that is declared", async () => {
    const declared = SHOP.replace("{ secures Gear }", "{ secures Gear  torque 20 ± 2 N·m dry }");
    const items = await itemsAt(`${declared}procedure P "p" {\n  <|>\n}\n`);
    const text = items.find(({ label }) => label === "bolt circle: install, tighten")?.textEdit?.newText;
    expect(text).toContain(`with \${4:Wrench}`);
  });
  test("a repeat: fasteners by number", async () => {
    expect(await textOf("repeat … from … to")).toContain(`install \${4:Screw}[`);
  });
  test("a choice: one that the option has", async () => {
    expect(await textOf("when … otherwise")).toContain(`when \${1:Extent} is \${2:Full} {`);
  });
  test("what is fastened: a part that holds nothing itself", async () => {
    const items = await itemsAt(`${SHOP}<|>\n`);
    const circle = items.find(({ label }) => label === "bolt circle: ring, screws");
    expect(circle?.textEdit?.newText).toContain(`secures \${7:Frame}`);
  });
  test("without anything declared they stand as examples", async () => {
    const items = await itemsAt('procedure P "p" {\n  <|>\n}\n');
    const text = items.find(({ label }) => label === "hot fit")?.textEdit?.newText ?? "";
    expect(text).toContain(`heat \${2:Bearing} to \${3:100 .. 112} °C with \${4:Heater}`);
    expect(text).toContain(`over \${6:Shaft}`);
  });
});

describe("what stands behind the cursor already is not written twice", () => {
  const textFor = async (text: string, label: string): Promise<string | undefined> =>
    (await itemsAt(text)).find((one) => one.label === label)?.textEdit?.newText;
  test.each([
    ["step install <|>[left]", "Seal"],
    ["step install Se<|>[left]", "Seal"],
    ["step install Se<|>al[left]", "Seal"],
  ])("an index: %s", async (line, expected) => {
    expect(await textFor(work(`  ${line}`), expected)).toBe(expected);
    expect(await textFor(work(`  ${line.replace("[left]", "")}`), expected)).toBe(`Seal[\${1:all}]`);
  });
  test.each([
    ['step { check "x" <|> { stop "y" } }', "if it fails"],
    ['when Extent is Full { step "One." } <|>{ step "Two." }', "otherwise"],
  ])("a block: %s", async (line, expected) => {
    expect(await textFor(work(`  ${line}`), expected)).toBe(expected);
    expect(await textFor(work(`  ${line.replace(/<\|> ?\{.*/, "<|>")}`), expected)).toBe(`${expected} {\n\t$0\n}`);
  });
});

test("where a check failed, the ways on come first; elsewhere work does", async () => {
  expect((await labelsAt(work('  step { check "x" if not { <|> } }'))).slice(0, 3)).toEqual([
    "go to",
    "return to",
    "stop",
  ]);
  expect((await labelsAt(work("  step { <|> }")))[0]).toBe("install");
});

test.each([
  ["a ring", 'ring R "r" { <|> }'],
  ["a part", 'part A "a" { <|> }'],
  ["a fit", "fit Gear over Shaft { <|> }"],
  ["a tool", 'tool T "t" { <|> }'],
  ["an item of the crib", 'crib C "c" { item "1" for Wrench { <|> } }'],
  ["a consumable", 'consumable C "c" { <|> }'],
  ["an energy", 'energy E "e" { <|> }'],
  ["a material", 'material M "m" { <|> }'],
  ["an arrangement", "arrangement A of Screw in R { <|> }"],
  ["a procedure", 'procedure P "p" { <|> }'],
])("each line that %s may have says what it is for", async (_, text) => {
  const items = await itemsAt(`${SHOP}${text}\n`);
  const lines = items.filter(
    ({ kind, sortText }) => kind === CompletionItemKind.Keyword && /^[14]/.test(sortText ?? ""),
  );
  expect(lines.length).toBeGreaterThan(0);
  expect(lines.filter(({ detail }) => detail === undefined).map(({ label }) => label)).toEqual([]);
});
