// Ways that meet again, in loops and blocks of any order: what is told once is told once, and what only was taken as so hides nothing
// that is known beside it. Each procedure is the smallest in which the follower once said something else than a plain run of it.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

function work(declarations: string, body: string): string {
  return `${declarations}\nprocedure Work "Work" {\n${body}\n}`;
}

describe("what stands on a part of which it is only taken as so that it is out", () => {
  const parts = 'part Rotor "rotor"\npart Disc "disc" { needs Rotor }\npart Clip "clip"';
  const asks = (condition: string): string => `step { needs ${condition}\n do "Look." }`;
  const out = "begin with Rotor is installed\nstep install Disc\nstep install Clip over Disc";

  // "P removed" is what `install` needs (section 5): the clip is on the disc, wherever that is.
  test("is still on it, and cannot be put there again", () => {
    expect(found(work(parts, `${out}\n${asks("Disc is removed")}\nstep install Clip over Disc`))).toEqual([
      "order.unmet-need: Disc is removed",
      "order.already-installed: install Clip",
    ]);
  });
  test("in every pass of a loop, whatever the option", () => {
    const loop = `begin with Rotor is installed
step First { install Disc }
step install Clip over Disc
when Extent is Part { ${asks("Disc is removed")} }
step { check "It seats" if it fails { return to First } }`;
    expect(found(work(`${parts}\noption Extent "extent" { Full Part }`, loop))).toEqual([
      "order.already-installed: install Disc | Extent Full",
      "order.already-installed: install Clip",
      "order.unmet-need: Disc is removed | Extent Part",
    ]);
  });
  // "An unmet `needs` … is taken as met afterwards, so that one mistake does not bring a train of others."
  test("is out with it for nobody: no need and no `finish with` fails on that", () => {
    const body = `finish with Clip is installed\n${out}\n${asks("Disc is removed")}\nstep remove Clip\nstep install Clip over Disc\n${asks("Clip is installed")}`;
    expect(found(work(parts, body))).toEqual(["order.unmet-need: Disc is removed"]);
  });
  test("is in again, and held against whom it may concern, once the part is known to be in", () => {
    const body = `${out}\n${asks("Disc is removed")}\nstep install Disc\n${asks("Clip is removed")}`;
    expect(found(work(parts, body))).toEqual([
      "order.unmet-need: Disc is removed",
      "order.unmet-need: Clip is removed",
    ]);
  });
  test("and so with one that is only taken as in", () => {
    const covered = `${parts}\npart Hood "hood" { encloses Rotor }`;
    const on = "begin with Rotor is installed\nstep install Hood over Disc";
    expect(found(work(covered, `${on}\n${asks("Disc is installed")}\nstep clean Rotor`))).toEqual([
      "order.unmet-need: Disc is installed",
    ]);
    expect(found(work(covered, `${on}\nstep install Disc\nstep clean Rotor`))).toEqual(["order.enclosed: clean Rotor"]);
  });
});

describe("who stands in a place", () => {
  const parts = `ring Circle "circle" { count 4  numbered clockwise seen from "the front"  position 1 at 12 o'clock }
part Knob[1..4] "knob" { seats in Circle by number }
part Peg[1..2] "peg" { seats in Circle }`;
  const asks = 'step { needs Knob[2] is installed\n do "Look." }';
  test("only by what was taken as met is in nobody's way, also beside another", () => {
    const body = `${asks}\nstep install Peg[1] in Circle[2]\nstep remove Peg[1]\nstep install Peg[2] in Circle[2]`;
    expect(found(work(parts, body))).toEqual(["order.unmet-need: Knob[2] is installed"]);
    const twice = `${asks}\nstep install Peg[1] in Circle[2]\nstep install Peg[1] in Circle[2]`;
    expect(found(work(parts, twice))).toEqual([
      "order.unmet-need: Knob[2] is installed",
      "order.already-installed: install Peg[1]",
    ]);
  });
  test("by somebody's doing is in the way, whatever was taken as met since", () => {
    const body = `step install Peg[1] in Circle[2]\n${asks}\nstep install Peg[2] in Circle[2]`;
    expect(found(work(parts, body))).toEqual([
      "order.unmet-need: Knob[2] is installed",
      "order.occupied: install Peg[2]",
    ]);
    const other = `step install Knob[2], Peg[1] in Circle[2]\nstep { needs Knob[2] is removed\n do "Look." }\nstep install Peg[2] in Circle[2]`;
    expect(found(work(parts, other)).filter((each) => each.includes("Peg[2]"))).toEqual([
      "order.occupied: install Peg[2]",
    ]);
  });
  test("known to be in after all", () => {
    const body = `${asks}\nstep install Knob[2]\nstep install Peg[1] in Circle[2]`;
    expect(found(work(parts, body))).toEqual([
      "order.unmet-need: Knob[2] is installed",
      "order.occupied: install Peg[1]",
    ]);
  });
});

// "An unmet … energy is taken as met afterwards": on the second pass as on the first.
test("an energy that is told to be live is taken as off in a loop too", () => {
  const parts = 'energy Steam "steam" { pressure 6 bar }\npart Motor "motor" { driven by Steam }\nconsumable Oil "oil"';
  const body = `begin with Motor is installed
step First { clean Motor }
step fill Motor with Oil
step { check "It is clean" if it fails { return to First } }`;
  expect(found(work(parts, body))).toEqual(["order.energised: clean Motor"]);
});

test("a part that is told to have lost its last fastener is taken as held in a loop too", () => {
  const parts = 'part Block "block" { mass 40 kg }\npart Stud[1..2] "stud" { secures Block }';
  const body = `step First { do "Look." }
step install Block
step install Stud[1]
step tighten Stud[1]
step loosen Stud[1]
step remove Stud[1]
step { check "It seats" if it fails { return to First } }`;
  expect(found(work(parts, body))).toEqual([
    "order.already-installed: install Block",
    "order.unsupported: loosen Stud[1]",
  ]);
});

// Each direct child at any time: in no order is a bolt that is out tightened, or one that was put in again told twice.
test("a bolt of single use that is taken out, put in and tightened in any order is told where it goes in", () => {
  const parts = 'part Cover "cover"\npart Bolt "bolt" { secures Cover  single use }';
  const inAnyOrder =
    "begin with Cover is installed\nin any order {\nstep remove Bolt\nstep install Bolt\nstep tighten Bolt\n}";
  expect(found(work(parts, inAnyOrder))).toEqual([
    "order.not-installed: remove Bolt",
    "order.reused: install Bolt",
    "order.not-installed: tighten Bolt",
  ]);
});

test("a bolt of single use that was out and is in by the word of a step is not tightened again", () => {
  const parts = 'part Cover "cover"\npart Bolt "bolt" { secures Cover  single use }';
  const put = (how: string): string =>
    `begin with Cover is secured\nstep loosen Bolt\nstep remove Bolt\nstep { ${how} }\nstep tighten Bolt\nstep tighten Bolt`;
  expect(found(work(parts, put('do "Put it back."\n gives Bolt is installed')))).toEqual([
    "order.reused: tighten Bolt",
  ]);
  // What is only taken as in is held against nobody.
  expect(found(work(parts, put('needs Bolt is installed\n do "Look."')))).toEqual([
    "order.unmet-need: Bolt is installed",
  ]);
});

describe("what an action gives is known, also where a need had taken it as so", () => {
  const asks = (condition: string): string => `step { needs ${condition}\n do "Look." }`;
  test.each([
    ["Gear is at least 100 °C", "heat Gear to 100 .. 110 °C with Heater", "Gear is at most 40 °C"],
    ["Gear is clean", "clean Gear", "Gear is lubricated"],
    ["Gear is aligned", "align Gear with Hub", "Gear is not aligned"],
  ])("%s, %s", (taken, action, wanted) => {
    const parts = 'part Gear "gear"\npart Hub "hub"\ntool Heater "heater" { heats to 300 °C }';
    const before = taken.startsWith("Gear is at least") ? "step heat Gear to 90 .. 110 °C with Heater\n" : "";
    expect(found(work(parts, `${before}${asks(taken)}\nstep ${action}\n${asks(wanted)}`))).toEqual([
      `order.unmet-need: ${taken}`,
      `order.unmet-need: ${wanted}`,
    ]);
  });
});

// "at the end of the task, and after a plain `wait`" what is hot cools (section 5, Temperature): a wait for one part says nothing of others.
test.each([
  ["wait until Hub is at most 40 °C", []],
  ["wait 5 min", ["order.unmet-need: Gear is at least 80 °C"]],
])("a performed procedure that has %s", (waits, told) => {
  const text = `part Gear "gear"
part Hub "hub"
tool Heater "heater" { heats to 300 °C }
procedure Work "Work" {
begin with Gear is installed, Hub is installed
step heat Gear to 90 .. 110 °C with Heater
perform Rest
step { needs Gear is at least 80 °C
 do "Look." }
}
procedure Rest "Rest" {
begin with Hub is installed
step ${waits}
}`;
  expect(found(text)).toEqual(told);
});
