// The printer of groups and breaks, on documents written by hand.
import { expect, test } from "vitest";
import { buildDoc, type DocBuilder, newLine, printDoc, softBreak } from "#syntax/layout.ts";

function printed(width: number, write: (doc: DocBuilder) => void): string {
  const doc = buildDoc();
  write(doc);
  return printDoc(doc.parts(), width, "  ");
}

/** `a { b }` with the block as a group. */
function block(doc: DocBuilder, header: string, content: (doc: DocBuilder) => void): void {
  doc.put(header);
  doc.open("group");
  doc.put("{");
  doc.open("indent");
  doc.put(softBreak(" "));
  content(doc);
  doc.close();
  doc.put(softBreak(" "));
  doc.put("}");
  doc.close();
}

test("a group stays on one line up to the last column and breaks beyond it", () => {
  const short = (doc: DocBuilder) => block(doc, "step ", (inner) => inner.put("do it"));
  expect(printed(14, short)).toBe("step { do it }");
  expect(printed(13, short)).toBe("step {\n  do it\n}");
});

test("what follows a group up to the next new line counts", () => {
  const followed = (doc: DocBuilder) => {
    block(doc, "fit ", (inner) => inner.put("60 mm"));
    doc.put(" per X");
    doc.put(newLine(false));
    doc.put("a line that is longer");
  };
  expect(printed(19, followed)).toBe("fit { 60 mm } per X\na line that is longer");
  expect(printed(18, followed)).toBe("fit {\n  60 mm\n} per X\na line that is longer");
});

test("a certain new line breaks all groups around it and none beside it", () => {
  const text = printed(80, (doc) =>
    block(doc, "task ", (inner) => {
      block(inner, "step ", (one) => one.put("a"));
      inner.put(newLine(true));
      block(inner, "step ", (one) => one.put("b"));
    }),
  );
  expect(text).toBe("task {\n  step { a }\n\n  step { b }\n}");
});

test("the outer group breaks first, the inner one only where it must", () => {
  const nested = (doc: DocBuilder) =>
    block(doc, "repeat ", (inner) => block(inner, "step ", (one) => one.put("install Cover")));
  expect(printed(40, nested)).toBe("repeat { step { install Cover } }");
  expect(printed(25, nested)).toBe("repeat {\n  step { install Cover }\n}");
  expect(printed(20, nested)).toBe("repeat {\n  step {\n    install Cover\n  }\n}");
});

test("an aside takes no room, and a line may go deeper than its surroundings", () => {
  const text = printed(16, (doc) => {
    block(doc, "part ", (inner) => inner.put("2 kg"));
    doc.put({ kind: "aside", text: "  // a long remark" });
    doc.put(newLine(false, 1));
    doc.put("per X");
  });
  expect(text).toBe("part { 2 kg }  // a long remark\n  per X");
});

test("a text of several lines breaks the groups around it and is printed as it is", () => {
  expect(printed(80, (doc) => block(doc, "step ", (inner) => inner.put('"""\nab\n  """')))).toBe(
    'step {\n  """\nab\n  """\n}',
  );
});

test("empty lines hold no blanks", () => {
  const text = printed(80, (doc) => {
    doc.open("indent");
    doc.put(newLine(false));
    doc.put("");
    doc.put(newLine(false));
    doc.put("x");
    doc.close();
  });
  expect(text).toBe("\n\n  x");
});

test("many groups in a row print in time that grows with their number", () => {
  const text = printed(40, (doc) => {
    for (let n = 0; n < 50_000; n++) {
      block(doc, "step ", (inner) => inner.put("install Cover"));
      doc.put(newLine(false));
    }
  });
  expect(text.split("\n").length).toBe(50_001);
});
