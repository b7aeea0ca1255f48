// What each action needs of the state: reach, support, what retains and secures. The rules' own tests say more of each.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
part Clip "clip" { retains Bearing }
part Screw "screw" { secures Cover }
temporary part Plug "plug"
part Lid "lid" { encloses Plug }
consumable Grease "grease"
tool Heater "heater" { heats to 200 °C }
`;

function work(steps: string): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${steps}\n}`);
}

describe("reach", () => {
  const every = [
    "clean Bearing",
    "lubricate Bearing with Grease",
    "apply Grease to Bearing",
    "drain Bearing",
    "fill Bearing with Grease",
    "bleed Bearing",
    "inspect Bearing",
    "heat Bearing to 90 .. 100 °C with Heater",
    "cool Bearing to 0 .. 10 °C",
    "align Bearing with Lid",
    "align Lid with Bearing",
    "remove Bearing",
  ];
  test.each(every)("%s: not behind what is installed", (action) => {
    const told = work(`step install Bearing, Cover\nstep ${action}`);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^order\.enclosed: /);
  });
  test.each(every.slice(0, -1))("%s: free on the bench, and in the open", (action) => {
    expect(work(`step install Cover\nstep ${action}`)).toEqual([]);
    expect(work(`step install Bearing\nstep ${action}`)).toEqual([]);
  });
});

describe("fasteners", () => {
  test("are tightened where they and what they secure are in", () => {
    expect(work("step install Cover, Screw\nstep tighten Screw")).toEqual([]);
    expect(work("step install Screw\nstep tighten Screw")).toEqual(["order.not-installed: tighten Screw"]);
    expect(work("step install Cover\nstep tighten Screw")).toEqual(["order.not-installed: tighten Screw"]);
    expect(work("step install Cover\nstep loosen Screw")).toEqual(["order.not-installed: loosen Screw"]);
  });
  test("keep in what they secure, tight or loose, until they are out", () => {
    expect(work("step install Cover, Screw\nstep tighten Screw\nstep remove Cover")).toEqual([
      "order.retained: remove Cover",
    ]);
    expect(work("step install Cover, Screw\nstep remove Cover")).toEqual(["order.retained: remove Cover"]);
    expect(
      work("step install Cover, Screw\nstep tighten Screw\nstep loosen Screw\nstep remove Screw\nstep remove Cover"),
    ).toEqual([]);
  });
});

test("what retains a part keeps it in while it is in itself", () => {
  expect(work("step install Bearing, Clip\nstep remove Bearing")).toEqual(["order.retained: remove Bearing"]);
  expect(work("step install Bearing, Clip\nstep remove Clip\nstep remove Bearing")).toEqual([]);
});

test("closing over an aid is told where the aid was put in", () => {
  expect(work("step install Plug\nstep install Lid\nstep remove Lid\nstep remove Plug")).toEqual([
    "order.left-behind: install Plug",
  ]);
  expect(work("step install Plug\nstep remove Plug\nstep install Lid")).toEqual([]);
});

test("a part that is pressed in is in", () => {
  expect(work("step press Bearing in Cover\nstep press Bearing in Cover")).toEqual([
    "order.already-installed: press Bearing",
  ]);
});
