// trace.calibration: an item is good for the whole of its last day; one that is still good is enough.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

// Checks are made on 2026-05-04.
const TEXT = (items: string): string => `source Manual "manual"
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
part Screw "cover screw"
crib MainShop { ${items} }
procedure Close "Close" {
  per Manual "3"
  step install Screw
  step tighten Screw to 80 N·m with Wrench
}
`;
const item = (label: string, until: string | null): string =>
  `item "${label}" for Wrench { torque 10 .. 110 N·m ${until === null ? "" : `calibrated until ${until}`} }`;
const found = (items: string, crib = true) =>
  findingsIn(TEXT(items), {}, crib ? { crib: "main.sprag" } : {}).filter(({ code }) => code.startsWith("trace."));

test.each([
  ["2026-05-03", ["trace.calibration"]],
  ["2025-12-31", ["trace.calibration"]],
  ["2026-05-04", []],
  ["2026-05-05", []],
  [null, []],
])("calibrated until %s, on 2026-05-04", (until, codes) => {
  expect(found(item("TW-0117", until)).map(({ code }) => code)).toEqual(codes);
});

test("one good item is enough; all that are out are named", () => {
  const [old, older] = [item("TW-0117", "2026-05-03"), item("TW-0118", "2025-01-31")];
  expect(found(old + older + item("TW-0119", "2026-05-04"))).toEqual([]);
  const [finding] = found(old + older);
  expect(finding).toMatchObject({
    severity: "warning",
    message: "No Wrench in MainShop is in calibration on 2026-05-04.",
    why: "TW-0117 was good until 2026-05-03.\nTW-0118 was good until 2025-01-31.",
  });
  expect(finding?.related?.map(({ message }) => message)).toEqual(["TW-0117 stands here", "TW-0118 stands here"]);
});

test("an item that does not do the work does not count, however good", () => {
  const short = 'item "TW-0200" for Wrench { torque 10 .. 60 N·m  calibrated until 2030-01-31 }';
  expect(found(short + item("TW-0117", "2026-05-03")).map(({ code }) => code)).toEqual(["trace.calibration"]);
});

test("silent without a crib, and an allow of it is then not held to be idle", () => {
  expect(found(item("TW-0117", "2026-05-03"), false)).toEqual([]);
  const text = TEXT(item("TW-0117", "2026-05-03"))
    .replace("step tighten", 'step { allow trace.calibration because "Sent out, back on the day."\n tighten')
    .replace("with Wrench\n", "with Wrench }\n");
  const codes = (crib: boolean) =>
    findingsIn(text, {}, crib ? { crib: "main.sprag" } : {}).map(({ code, allowed }) => [code, allowed !== undefined]);
  expect(codes(false)).not.toContainEqual(["trace.unused-allow", false]);
  expect(codes(true)).toContainEqual(["trace.calibration", true]);
  expect(codes(true)).not.toContainEqual(["trace.unused-allow", false]);
});
