// Branches on a reading: two on one reading are never taken independently, and a new reading may fall anywhere.
import { expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Shim "shim"
part Plate "plate"
tool Depth "depth gauge" { measures 0 .. 5 mm  resolution 0.01 mm }
option Extent "extent" { Full Part }
`;

function work(steps: string): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${steps}\n}`);
}
const measured = 'step Measure { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm }';

test("what is put in below a bound can be taken out below the same bound", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim }
    when Gap at most 0.6 mm { step remove Shim }`),
  ).toEqual([]);
});

test("it cannot be taken out where it was not put in", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim }
    when Gap at most 0.7 mm { step remove Shim }`),
  ).toEqual(["order.not-installed: remove Shim"]);
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim }
    when Gap at most 0.5 mm { step remove Shim }`),
  ).toEqual([]);
});

test("otherwise is the rest of the scale", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim } otherwise { step install Plate }
    when Gap at least 0.7 mm { step remove Plate }
    when Gap at most 0.5 mm { step remove Shim }`),
  ).toEqual([]);
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim } otherwise { step install Plate }
    when Gap at least 0.6 mm { step remove Plate }`),
  ).toEqual(["order.not-installed: remove Plate"]);
});

test("bounds in other units are the same bounds", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim }
    when Gap at most 600 µm { step remove Shim }`),
  ).toEqual([]);
});

test("a case that the cases before it leave no room for", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { step install Shim } otherwise when Gap at most 0.4 mm { step install Plate }`),
  ).toEqual(["flow.impossible-condition: Gap at most 0.4 mm", "flow.unreachable: step"]);
});

test("measured again, it may be anywhere, and what was done stays done", () => {
  expect(
    work(
      `${measured}
    when Gap at most 0.6 mm { step install Shim }
    step Again { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm }
    when Gap at most 0.6 mm { step remove Shim }`.replace("step Again { measure Gap", "step Again { measure Other"),
    ),
  ).toEqual([]);
});

test("measured again in a rework loop: the branch of the last pass says nothing of this one", () => {
  const loop = (rework: string): string => `step Measure { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm }
    when Gap at most 0.6 mm { step install Shim }
    step Test { check "It turns freely" if it fails { ${rework} return to Measure } }
    when Gap at most 0.6 mm { step remove Shim }`;
  expect(work(loop(""))).toEqual(["order.already-installed: install Shim"]);
});

test("measured again in a rework loop, what was done after a low reading meets a high one", () => {
  expect(
    work(`step Measure { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm }
    when Gap at most 0.6 mm { step install Shim } otherwise { step { needs Shim is removed
      do "Look." } }
    step Test { check "It turns freely" if it fails { return to Measure } }`),
  ).toEqual(["order.already-installed: install Shim", "order.unmet-need: Shim is removed"]);
});

test("a finding that depends on a reading alone names no options; one that depends on an option too names that", () => {
  expect(
    work(`${measured}
    when Gap at most 0.6 mm { when Extent is Full { step remove Shim } }`),
  ).toEqual(["order.not-installed: remove Shim | Extent Full"]);
});
