// `begin with` and `finish with`: what is so at the start, and what is asked at the end of every path that has one.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Cover "cover"
part Screw[1..2] "screw" { secures Cover }
temporary part Pin "guide pin"
energy Supply "supply" { voltage 400 V AC }
energy Steam "steam" { pressure 6 bar  off }
fact Signed "the sheet is signed"
option Extent "extent of work" { Full Part None }
`;

function work(head: string, steps: string): string {
  return `${PARTS}procedure Work "Work" {\n${head}\n${steps}\n}`;
}
const unfinished = (condition: string): string[] => [`order.unfinished: ${condition}`];

describe("at the start", () => {
  test("every part is out", () => {
    expect(found(work("", "step remove Bearing"))).toEqual(["order.not-installed: remove Bearing"]);
    expect(found(work("begin with Bearing is installed", "step remove Bearing"))).toEqual([]);
  });
  test("what is secured is in, with its fasteners tight", () => {
    expect(
      found(work("begin with Cover is secured", "step loosen Screw[all]\nstep remove Screw[all]\nstep remove Cover")),
    ).toEqual([]);
    expect(found(work("begin with Cover is secured", "step remove Cover"))).toEqual(["order.retained: remove Cover"]);
    expect(found(work("begin with Cover is secured", "step install Screw[1]"))).toEqual([
      "order.already-installed: install Screw[1]",
    ]);
  });
  test("what is only installed has no fasteners", () => {
    expect(found(work("begin with Cover is installed", "step remove Cover"))).toEqual([]);
    expect(found(work("begin with Cover is installed", "step loosen Screw[1]"))).toEqual([
      "order.not-installed: loosen Screw[1]",
    ]);
  });
  test("energies are live, but for those that start dead", () => {
    expect(found(work("", 'step Look { needs Supply is live, Steam is isolated\n do "Look." }'))).toEqual([]);
    expect(found(work("begin with Supply is isolated", 'step Look { needs Supply is live\n do "Look." }'))).toEqual([
      "order.unmet-need: Supply is live",
    ]);
    expect(found(work("", 'step restore Steam\nstep Look { needs Steam is isolated\n do "Look." }'))).toEqual([
      "order.unmet-need: Steam is isolated",
    ]);
  });
  test("an option that is ruled out leaves no path", () => {
    expect(found(work("begin with Extent is not None", "when Extent is None { step remove Bearing }"))).toEqual([
      "flow.impossible-condition: Extent is None",
      "flow.unreachable: step",
    ]);
    expect(
      found(work("begin with Extent is Full or Extent is Part", "when Extent is None { step remove Bearing }"))[0],
    ).toMatch(/^flow.impossible-condition: Extent is None/);
    expect(found(work("begin with not Extent is None", "when Extent is Part { step remove Bearing }"))).toEqual([
      "order.not-installed: remove Bearing | Extent Part",
    ]);
  });
});

describe("at the end", () => {
  test("a part that is to be in, and one that is to be out", () => {
    expect(found(work("finish with Bearing is installed", "step inspect Bearing"))).toEqual(
      unfinished("Bearing is installed"),
    );
    expect(found(work("finish with Bearing is removed", "step install Bearing"))).toEqual(
      unfinished("Bearing is removed"),
    );
    expect(found(work("finish with Bearing is not installed", "step install Bearing"))).toEqual(
      unfinished("Bearing is not installed"),
    );
    expect(found(work("finish with Bearing is installed, Cover is removed", "step install Bearing"))).toEqual([]);
  });
  test("secured asks for every fastener, tight", () => {
    const finish = "finish with Cover is secured";
    expect(found(work(finish, "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[all]"))).toEqual([]);
    expect(found(work(finish, "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[1]"))).toEqual(
      unfinished("Cover is secured"),
    );
    expect(found(work(finish, "step install Cover, Screw[1]\nstep tighten Screw[1]"))).toEqual(
      unfinished("Cover is secured"),
    );
    expect(found(work(finish, "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[all] by hand"))).toEqual(
      unfinished("Cover is secured"),
    );
    expect(
      found(work(finish, "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[all] by hand to 5 N·m")),
    ).toEqual([]);
    expect(
      found(work(finish, "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[all]\nstep loosen Screw[1]")),
    ).toEqual(unfinished("Cover is secured"));
    expect(
      found(
        work(
          finish,
          "step install Cover, Screw[1], Screw[2]\nstep tighten Screw[all]\nstep loosen Screw[1] by 1/4 turn",
        ),
      ),
    ).toEqual([]);
  });
  test("and, or, not", () => {
    expect(found(work("finish with Bearing is installed or Cover is installed", "step install Cover"))).toEqual([]);
    expect(found(work("finish with Bearing is installed and Cover is installed", "step install Cover"))).toEqual(
      unfinished("Bearing is installed and Cover is installed"),
    );
    expect(
      found(work("finish with not (Bearing is installed or Cover is installed)", "step install Cover")),
    ).toHaveLength(1);
    expect(found(work("finish with not (Bearing is installed and Cover is installed)", "step install Cover"))).toEqual(
      [],
    );
  });
  test("depending on what was chosen", () => {
    const finish = "finish with Extent is not Full or Bearing is installed";
    expect(found(work(finish, "when Extent is Full { step install Bearing }"))).toEqual([]);
    expect(found(work(finish, "when Extent is Part { step install Bearing }"))).toEqual([
      "order.unfinished: Extent is not Full or Bearing is installed | Extent Full",
    ]);
  });
  test("nothing is asked where the work stops", () => {
    expect(
      found(
        work(
          "finish with Bearing is installed",
          'step { check "It fits" if it fails { stop "Ask the engineer." } }\nstep install Bearing',
        ),
      ),
    ).toEqual([]);
  });
});

describe("aids and energies at the end", () => {
  test("an aid left in is told at its install, and not again as unfinished", () => {
    expect(found(work("finish with no temporary parts", "step install Pin"))).toEqual([
      "order.left-behind: install Pin",
    ]);
    expect(found(work("finish with Pin is removed", "step install Pin"))).toEqual(["order.left-behind: install Pin"]);
    expect(found(work("finish with no temporary parts", "step install Pin\nstep remove Pin"))).toEqual([]);
  });
  test("an aid that was in at the start is told there", () => {
    expect(found(work("begin with Pin is installed", "step inspect Bearing"))).toEqual([
      "order.left-behind: Pin is installed",
    ]);
  });
  test("and so is one that is put once more into the place in which it was: nothing about it changed", () => {
    const parts =
      'holes Feet "feet" { count 2 }\ntemporary part Pin[1..2] "pin" { seats in Feet by number }\nprocedure Work "Work" {';
    expect(found(`${parts}\nbegin with Pin[1] is installed\nstep install Pin[1]\n}`)).toEqual([
      "order.left-behind: Pin[1] is installed",
      "order.already-installed: install Pin[1]",
    ]);
  });
  test("an aid that stays by what the procedure says", () => {
    expect(found(work("finish with Pin is installed", "step install Pin"))).toEqual([]);
  });
  test("each install that left it in, on its own path", () => {
    expect(
      found(work("", "when Extent is Full { step install Pin } otherwise when Extent is Part { step install Pin }")),
    ).toEqual(["order.left-behind: install Pin | Extent Full", "order.left-behind: install Pin | Extent Part"]);
  });
  test("an aid that is on the bench on something is still somewhere", () => {
    expect(found(work("", "step install Pin in Cover"))).toEqual(["order.left-behind: install Pin"]);
  });
  test("an energy isolated here is to be restored, one isolated at the start is not", () => {
    expect(found(work("", "step isolate Supply"))).toEqual(["order.left-behind: isolate Supply"]);
    expect(found(work("begin with Supply is isolated", "step inspect Bearing"))).toEqual([]);
    expect(found(work("finish with Supply is isolated", "step isolate Supply"))).toEqual([]);
    expect(found(work("finish with Supply is live", "step isolate Supply"))).toEqual([
      "order.left-behind: isolate Supply",
    ]);
    expect(found(work("", "step isolate Supply\nwhen Extent is Full { step restore Supply }"))).toEqual([
      "order.left-behind: isolate Supply | Extent Part or Extent None",
    ]);
  });
});
