// The review's request: the server asks for the older texts it wants, compares, and names both sides of each change.
import { describe, expect, test } from "vitest";
import { type Editor, withEditor } from "#harness/editor.ts";
import type { OldText, ReviewAnswer } from "#server/protocol.ts";

const TOOLS = 'tool Wrench "torque wrench" { torque 8 .. 60 N·m accuracy 4 % }\n';
const TEXT = `use "tools.sprag"

role Inspector "inspector"
part Cover "cover"
part Screw "screw" { secures Cover thread "M10x1.5" torque 40 N·m }

procedure Close "Close it" {
  finish with Cover is secured
  step install Cover
  step install Screw
  step Torque {
    tighten Screw to 40 N·m with Wrench
    hold for Inspector
  }
}
`;

async function reviewed(now: string, old: readonly (readonly [string, string | null])[]): Promise<ReviewAnswer> {
  return withEditor({ files: { "a.sprag": now, "tools.sprag": TOOLS } }, async (editor) => {
    await editor.open("a.sprag");
    return ask(editor, old);
  });
}

function ask(editor: Editor, old: readonly (readonly [string, string | null])[]): Promise<ReviewAnswer> {
  const texts: readonly OldText[] = old.map(([path, text]) => ({ uri: editor.uri(path), text }));
  return editor.connection.sendRequest<ReviewAnswer>("sprag/review", { uri: editor.uri("a.sprag"), old: texts });
}

const ALL = [
  ["a.sprag", TEXT],
  ["tools.sprag", TOOLS],
] as const;

async function changesOf(now: string): Promise<(ReviewAnswer & { kind: "done" })["changes"]> {
  const answer = await reviewed(now, ALL);
  if (answer.kind !== "done") throw new Error(JSON.stringify(answer));
  return answer.changes;
}

test("it wants the older text of what was used, and then no more", async () => {
  expect(await reviewed(TEXT, ALL.slice(0, 1))).toEqual({ kind: "wanted", uris: ["file:///shop/tools.sprag"] });
  expect(await reviewed(TEXT, ALL)).toEqual({ kind: "done", changes: [], unread: [] });
});

describe("a change", () => {
  test("names both sides, and the gravest comes first", async () => {
    const changes = await changesOf(
      TEXT.replace("    hold for Inspector\n", "").replace('"Close it"', '"Close the cover"'),
    );
    expect(changes[0]).toMatchObject({ group: "safety", step: expect.stringMatching(/^3 Torque$/) });
    expect(changes[0]?.old).toMatchObject({ uri: "file:///shop/a.sprag" });
    expect(changes.map(({ group }) => group)).toContain("words");
  });

  test("of a value stands at the line on each side", async () => {
    const now = `// One line more.\n${TEXT}`.replace("to 40 N·m with", "to 42 N·m with");
    const [value] = (await changesOf(now)).filter(({ group }) => group === "values");
    expect(value?.old?.range.start.line).toBe(11);
    expect(value?.new?.range.start.line).toBe(12);
  });

  test("brings findings, as sentences with their codes", async () => {
    const changes = await changesOf(TEXT.replace("  step install Cover\n", ""));
    expect(changes.flatMap(({ came }) => came)).toContainEqual(
      expect.stringMatching(/\. ?\(order\.[\w-]+\)$|\(order\.[\w-]+\)$/),
    );
  });
});

test("a file that was not there is refused with what to do", async () => {
  expect(await reviewed(TEXT, [["a.sprag", null]])).toMatchObject({
    kind: "refused",
    remedy: expect.stringMatching(/\.$/),
  });
});

test("what can be read in part only is named", async () => {
  const answer = await reviewed(TEXT.replace("install Screw\n", "install Screw to to\n"), ALL);
  expect(answer).toMatchObject({ kind: "done", unread: ["file:///shop/a.sprag"] });
});
