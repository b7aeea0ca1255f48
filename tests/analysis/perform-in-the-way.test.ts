// What is in the way of a performed procedure in its caller's hands. The checker's own table of actions (language.md, section 5) says what
// each line needs; that the same holds through a `perform` as where the lines are written out is what is tested.
import { describe, expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { found } from "./run-on-paper.ts";

const SHOP = `part Chuck "chuck" { driven by Supply }
part Guard "guard" { encloses Chuck }
part Nut "nut" { secures Guard }
part Tab "tab washer" { locks Nut }
part Clip "clip" { retains Chuck }
temporary part Stay "stay"
energy Supply "supply" { voltage 400 V AC }
option Extent "extent of work" { Full Part }
consumable Solvent "solvent"
`;
const INNER: Readonly<Record<string, string>> = {
  MakeSafe: `begin with Supply is live
    finish with Supply is isolated
    step isolate Supply
    step prove Supply dead`,
  MakeLive: `begin with Supply is isolated
    finish with Supply is live
    step restore Supply`,
  Wipe: `begin with Supply is isolated
    step clean Chuck with Solvent`,
  TakeOut: `begin with Chuck is installed, Supply is isolated
    finish with Chuck is removed
    step remove Chuck`,
  Undo: `begin with Nut is tightened
    finish with Nut is loose
    step loosen Nut`,
  TwiceInside: "begin with Supply is isolated\n    step perform Wipe",
  OnlyFull: `begin with Supply is isolated
    when Extent is Full { step clean Chuck with Solvent }`,
};

function shop(outer: string): string {
  const inner = Object.entries(INNER).map(([name, lines]) => `procedure ${name} "${name}" {\n    ${lines}\n}\n`);
  return `${SHOP}${inner.join("")}procedure Outer "Outer" {\n${outer}\n}\n`;
}

const OFF = "step perform MakeSafe";

describe("told at the perform", () => {
  test.each([
    [
      "an energy restored with a guard off",
      "step remove Guard\nstep perform MakeLive\nstep install Guard",
      "order.restored-open",
      "MakeLive",
    ],
    [
      "an energy restored with a stay in",
      "step install Stay\nstep perform MakeLive\nstep remove Stay",
      "order.restored-open",
      "MakeLive",
    ],
    ["work behind a guard", "step perform Wipe\nstep perform MakeLive", "order.enclosed", "Wipe"],
    [
      "and in a procedure that is performed there",
      "step perform TwiceInside\nstep perform MakeLive",
      "order.enclosed",
      "TwiceInside",
    ],
  ])("%s", (_, steps, code, name) => {
    const begin = "begin with Chuck is installed, Guard is installed";
    expect(found(shop(`${begin}\n${OFF}\n${steps}`))).toEqual([`${code}: perform ${name}`]);
  });
  test("what retains a part, and what locks a fastener", () => {
    const retained = `begin with Chuck is installed, Clip is installed\n${OFF}\nstep perform TakeOut\nstep perform MakeLive`;
    expect(found(shop(retained))).toEqual(["order.retained: perform TakeOut"]);
    const locked = "begin with Guard is secured, Nut is tightened, Tab is installed\nstep perform Undo";
    expect(found(shop(locked))).toEqual(["order.locked: perform Undo"]);
  });
  test("for the choices for which both are so", () => {
    const begin = `begin with Chuck is installed, Guard is installed\n${OFF}\n`;
    const half =
      "when Extent is Part { step remove Guard }\nstep perform Wipe\nwhen Extent is Part { step install Guard }";
    expect(found(shop(`${begin}${half}\nstep perform MakeLive`))).toEqual([
      "order.enclosed: perform Wipe | Extent Full",
    ]);
    expect(found(shop(`${begin}step perform OnlyFull\nstep perform MakeLive`))).toEqual([
      "order.enclosed: perform OnlyFull | Extent Full",
    ]);
  });
  test("with the line that needs it", () => {
    const text = shop(
      `begin with Chuck is installed, Guard is installed\n${OFF}\nstep perform Wipe\nstep perform MakeLive`,
    );
    const [enclosed] = findingsIn(text).filter(({ code }) => code === "order.enclosed");
    expect(enclosed?.message).toBe("Chuck is behind Guard and cannot be reached.");
    expect(
      enclosed?.related?.map(({ message, range }) => [message, text.split("\n")[range.start.line]?.trim()]),
    ).toEqual([
      ["Wipe does it here", "step clean Chuck with Solvent"],
      ["Guard encloses Chuck, as declared here", 'part Guard "guard" { encloses Chuck }'],
    ]);
  });
});

describe("an energy that the performed procedure has no word of", () => {
  const alone = 'procedure Alone "Alone" { step clean Chuck with Solvent }\n';
  const told = (outer: string): readonly string[] => found(`${shop(outer)}${alone}`);
  test("told where it is live and the part is in, and then taken as off", () => {
    const live = "begin with Chuck is installed\nstep perform Alone\nstep clean Chuck with Solvent";
    expect(told(live)).toEqual(["order.energised: perform Alone"]);
  });
  test("not told where it is isolated, or the part is out", () => {
    expect(told("begin with Chuck is installed, Supply is isolated\nstep perform Alone")).toEqual([]);
    expect(told("step perform Alone")).toEqual([]);
  });
});

describe("not told", () => {
  const begin = "begin with Chuck is installed, Guard is installed";
  test.each([
    [
      "where nothing is in the way",
      `${OFF}\nstep remove Guard\nstep perform Wipe\nstep install Guard\nstep perform MakeLive`,
    ],
    ["of a part that the caller has out", `step perform Wipe`],
  ])("%s", (_, steps) => {
    const start = steps.startsWith(OFF) ? begin : "begin with Guard is installed, Supply is isolated";
    expect(found(shop(`${start}\n${steps}`))).toEqual([]);
  });
  test("of what it puts right itself", () => {
    const itself = `procedure Alone "Alone" {
  begin with Chuck is installed, Guard is installed, Supply is live
  step isolate Supply
  step prove Supply dead
  step remove Guard
  step clean Chuck with Solvent
  step install Guard
  step restore Supply
}
`;
    expect(found(`${shop("begin with Chuck is installed, Guard is installed\nstep perform Alone")}${itself}`)).toEqual(
      [],
    );
  });
  test("twice: what the performed procedure has to say itself stays there", () => {
    const itself = `procedure Alone "Alone" { begin with Chuck is installed, Guard is installed, Supply is isolated\nstep clean Chuck with Solvent }\n`;
    const all = found(
      `${shop("begin with Chuck is installed, Guard is installed, Supply is isolated\nstep perform Alone")}${itself}`,
    );
    expect(all).toEqual(["order.enclosed: clean Chuck"]);
    const live = `procedure Alone "Alone" { begin with Chuck is installed\nstep clean Chuck with Solvent }\n`;
    expect(found(`${shop("begin with Chuck is installed\nstep perform Alone")}${live}`)).toEqual([
      "order.energised: clean Chuck",
    ]);
  });
});
