// Whether a fit is forced: by its interference, by its letters at a diameter, by letters alone.
import { expect, test } from "vitest";
import { type FitData, interferenceOf, isInterference } from "#engineering/fit.ts";
import { show } from "#quantity/display.ts";
import { answer, given, refusal } from "./given.ts";

// Letters: ISO 286-1 (memory; 50 H7/s6 read).
test.each([
  [{ interference: "11 .. 36 µm" }, true],
  [{ interference: "0 .. 36 µm" }, false],
  [{ interference: "-5 .. 36 µm" }, false],
  [{ interference: "at least 1 µm" }, true],
  [{ interference: "at most 36 µm" }, false],
  [{ interference: "20 µm" }, true],
  [{ tolerance: "H7/s6", diameter: "50 mm" }, true],
  [{ tolerance: "H7/p6", diameter: "50 mm" }, true], // 1 µm
  [{ tolerance: "H7/p6", diameter: "3 mm" }, false], // −4 µm
  [{ tolerance: "H7/r6", diameter: "3 mm" }, false], // 0 µm
  [{ tolerance: "H7/r6", diameter: "3.01 mm" }, true], // 3 µm
  [{ tolerance: "H8/s7", diameter: "50 mm" }, true], // 4 µm
  [{ tolerance: "H9/s7", diameter: "50 mm" }, false], // −19 µm
  [{ tolerance: "S7/h6", diameter: "50 mm" }, true], // 18 µm
  [{ tolerance: "H7/k6", diameter: "50 mm" }, false],
  [{ tolerance: "H7/h6", diameter: "50 mm" }, false],
  [{ tolerance: "H7/s6" }, true],
  [{ tolerance: "H7/p6" }, false],
  [{ tolerance: "H7/s6", diameter: "600 mm" }, true],
  [{ tolerance: "H7/k6", diameter: "600 mm" }, false],
  [{ tolerance: "loose" }, false],
  [{}, false],
])("%o: %s", (said, forced) => {
  expect(isInterference(fitOf(said))).toBe(forced);
});

test("the interference is the declared one, else that of the letters at the diameter", () => {
  expect(
    show(answer(interferenceOf(fitOf({ interference: "11 .. 36 µm", tolerance: "H7/s6", diameter: "50 mm" })))),
  ).toBe("11 .. 36 µm");
  expect(show(answer(interferenceOf(fitOf({ tolerance: "H7/s6", diameter: "50 mm" }))))).toBe("18 .. 59 µm");
  expect(refusal(interferenceOf(fitOf({ tolerance: "H7/s6" })))).toEqual({ why: "missing", input: "diameter" });
  expect(refusal(interferenceOf(fitOf({})))).toEqual({ why: "missing", input: "interference" });
});

function fitOf(said: { interference?: string; tolerance?: string; diameter?: string }): FitData {
  const length = (text: string | undefined) => (text === undefined ? null : { quantity: given(text, "length").value });
  return {
    interference: length(said.interference),
    tolerance: said.tolerance === undefined ? null : { text: said.tolerance },
    diameter: length(said.diameter),
  };
}
