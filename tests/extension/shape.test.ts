// What a webview and the extension may say to each other: what fits passes, whatever else is there is refused.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromPage, kept, toPage } from "../../extension/client/preview/messages.ts";

const SHOWN = {
  uri: "file:///shop/a.sprag",
  procedure: "Work",
  as: "checklist",
  units: "both",
  repeats: "compact",
  set: { Extent: "full" },
};
const { uri: _, ...CHOICE } = SHOWN;

const RIGHT = {
  fromPage: [{ kind: "ready" }, { kind: "export" }, { kind: "row", id: "step-1" }, { kind: "choose", ...CHOICE }],
  toPage: [
    { kind: "here", id: "" },
    { kind: "standing", stale: true, words: "" },
    {
      ...{ kind: "content", shown: SHOWN, content: "<p>", form: "html", procedures: [] },
      outputs: [{ name: "kit", title: "Kit" }],
      options: [{ name: "Extent", title: "extent", choices: ["full"] }],
    },
  ],
  kept: [{ shown: SHOWN, row: "", below: -3.5 }],
};
const SHAPES = { fromPage, toPage, kept };
const CASES = Object.entries(RIGHT).flatMap(([name, messages]) =>
  messages.map((message) => [name as keyof typeof SHAPES, message] as const),
);

describe.each(CASES)("%s %j", (name, message) => {
  const shape = SHAPES[name];

  test("fits", () => {
    expect(shape(message)).toBe(true);
  });

  test("does not fit without a field, or with another thing in it", () => {
    for (const field of Object.keys(message)) {
      const { [field]: gone, ...rest } = message as Record<string, unknown>;
      expect(shape(rest), field).toBe(false);
      for (const odd of [null, [], {}, 7, "neither this nor that", Number.NaN, [7], { Extent: 7 }]) {
        // Any text is a text, any list of named things may be empty.
        if (typeof odd === typeof gone && typeof odd === "string" && field !== "kind" && field !== "form") continue;
        if (Array.isArray(gone) && Array.isArray(odd) && odd.length === 0) continue;
        if (typeof gone === "number" && odd === 7) continue;
        if (field === "set" && JSON.stringify(odd) === "{}") continue;
        expect(shape({ ...rest, [field]: odd }), `${field}: ${JSON.stringify(odd)}`).toBe(false);
      }
    }
  });
});

test("nothing else fits any of them", () => {
  fc.assert(
    fc.property(fc.anything(), (value) => {
      for (const shape of Object.values(SHAPES)) expect(shape(value)).toBe(false);
    }),
  );
});

test("a field that an object only inherits is not there", () => {
  expect(fromPage(Object.create({ kind: "ready" }))).toBe(false);
});
