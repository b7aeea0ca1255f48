// The code of every finding can be written after `allow`, also where a part of it is a word of the language.
import { expect, test } from "vitest";
import { parseText } from "#syntax/parse.ts";
import { allCodes } from "#workspace/index.ts";

/** Codes of rules that come later and hold a keyword. */
const LATER = ["order.cold-fit", "limits.too-cool-to-fit", "trace.no-crib-item", "trace.no-source", "time.too-late"];

test("every code can be allowed", () => {
  const codes = [...allCodes().map((one) => one.code), ...LATER];
  expect(codes.length).toBeGreaterThan(20);
  const faulty = codes.filter((code) => {
    const text = `procedure Work { step "Look." { allow ${code} because "so" } }`;
    return parseText(text, "main.sprag").problems.length > 0;
  });
  expect(faulty).toEqual([]);
});
