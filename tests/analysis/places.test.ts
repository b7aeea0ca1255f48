// Where parts stand: numbered places and who holds them, parts that stack, parts that stand on others.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const CIRCLE = `ring Circle "bolt circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
holes Feet "foot bolts" { count 2 }
`;

/** One procedure of the steps given, after the declarations. */
function work(declarations: string, steps: string): string {
  return `${CIRCLE}${declarations}\nprocedure Work "Work" {\n${steps}\n}`;
}

describe("a numbered place", () => {
  const parts = `part Pin[1..2] "pin" { seats in Circle }\npart Plug "plug" { seats in Circle }`;
  test("holds one part", () => {
    expect(found(work(parts, "step install Pin[1] in Circle[2]\nstep install Plug in Circle[2]"))).toEqual([
      "order.occupied: install Plug",
    ]);
  });
  test("is one of several", () => {
    expect(
      found(
        work(
          parts,
          "step install Pin[1] in Circle[2]\nstep install Plug in Circle[3]\nstep install Pin[2] in Circle[1]",
        ),
      ),
    ).toEqual([]);
  });
  test("is free once its part is removed", () => {
    expect(
      found(work(parts, "step install Pin[1] in Circle[2]\nstep remove Pin[1]\nstep install Plug in Circle[2]")),
    ).toEqual([]);
  });
  test("is free once its part is discarded", () => {
    expect(
      found(work(parts, "step install Pin[1] in Circle[2]\nstep discard Pin[1]\nstep install Plug in Circle[2]")),
    ).toEqual([]);
  });
  test("is not free when another part is removed", () => {
    expect(
      found(
        work(
          parts,
          "step install Pin[1] in Circle[2]\nstep install Pin[2] in Circle[1]\nstep remove Pin[2]\nstep install Plug in Circle[2]",
        ),
      ),
    ).toEqual(["order.occupied: install Plug"]);
  });
  test("is free of a part that was put elsewhere, though that was wrong", () => {
    expect(
      found(
        work(
          parts,
          "step install Pin[1] in Circle[1]\nstep install Pin[1] in Circle[2]\nstep install Pin[2] in Circle[1]",
        ),
      ),
    ).toEqual(["order.already-installed: install Pin[1]"]);
  });
  test("is free of a part that a need takes as removed, though it was not", () => {
    const steps =
      'step install Pin[1] in Circle[1]\nstep Look { needs Pin[1] is removed\n do "Look." }\nstep install Pin[2] in Circle[1]';
    expect(found(work(parts, steps))).toEqual(["order.unmet-need: Pin[1] is removed"]);
  });
  test("counts as taken after a part was put in it, though it was taken before", () => {
    expect(
      found(
        work(
          parts,
          "step install Pin[1] in Circle[1]\nstep install Plug in Circle[1]\nstep remove Pin[1]\nstep install Pin[2] in Circle[1]",
        ),
      ),
    ).toEqual(["order.occupied: install Plug", "order.occupied: install Pin[2]"]);
  });
  test("of holes is kept like one of a ring", () => {
    const bolts = 'part Bolt[1..2] "bolt" { seats in Feet by number }\npart Plug "plug" { seats in Feet }';
    expect(found(work(bolts, "step install Bolt[all]\nstep install Plug in Feet[2]"))).toEqual([
      "order.occupied: install Plug",
    ]);
  });
  test("is taken on one path only", () => {
    const steps = "when Extent is Full { step install Pin[1] in Circle[2] }\nstep install Plug in Circle[2]";
    expect(found(work(`${parts}\noption Extent "extent" { Full Part }`, steps))).toEqual([
      "order.occupied: install Plug | Extent Full",
    ]);
  });
});

describe("where a part belongs", () => {
  test("by number: its own place without a word", () => {
    const text = work(
      'part Screw[1..4] "screw" { seats in Circle by number }\npart Plug "plug" { seats in Circle }',
      "step install Screw[3]\nstep install Plug in Circle[3]",
    );
    expect(found(text)).toEqual(["order.occupied: install Plug"]);
  });
  test("by number: the place written, and no other", () => {
    const screws = 'part Screw[1..4] "screw" { seats in Circle by number }';
    expect(found(work(screws, "step install Screw[3] in Circle[3]"))).toEqual([]);
    expect(found(work(screws, "step install Screw[3] in Circle[2]"))).toEqual(["order.wrong-place: install Screw[3]"]);
  });
  test("by number: several at once into the ring", () => {
    expect(
      found(work('part Screw[1..4] "screw" { seats in Circle by number }', "step install Screw[all] in Circle[all]")),
    ).toEqual([]);
  });
  test("at listed positions: the n-th of them", () => {
    const pins = 'part Pin[1..2] "pin" { seats in Circle at 1, 3 }\npart Plug "plug" { seats in Circle }';
    expect(found(work(pins, "step install Pin[2]\nstep install Plug in Circle[3]"))).toEqual([
      "order.occupied: install Plug",
    ]);
    expect(found(work(pins, "step install Pin[2]\nstep install Plug in Circle[2]"))).toEqual([]);
    expect(found(work(pins, "step install Pin[2] in Circle[2]"))).toEqual(["order.wrong-place: install Pin[2]"]);
  });
  test("in another ring than its own", () => {
    expect(found(work('part Pin "pin" { seats in Circle }', "step install Pin in Feet[1]"))).toEqual([
      "order.wrong-place: install Pin",
    ]);
  });
  test("anywhere, where nothing is said", () => {
    expect(found(work('part Pin "pin"', "step install Pin in Circle[4]"))).toEqual([]);
  });
});

describe("a part that is in at the start", () => {
  const parts = 'part Screw[1..4] "screw" { seats in Circle by number }\npart Plug "plug" { seats in Circle }';
  const started = (steps: string): readonly string[] =>
    found(work(parts, `begin with Screw[2] is installed\n${steps}`));
  test("stands in its own place, and no other", () => {
    expect(started("step install Plug in Circle[2]")).toEqual(["order.occupied: install Plug"]);
    expect(started("step install Plug in Circle[3]")).toEqual([]);
    expect(started("step remove Screw[2]\nstep install Plug in Circle[2]")).toEqual([]);
  });
  test("likewise one that a need takes as in", () => {
    const steps = 'step Look { needs Screw[4] is installed\n do "Look." }\nstep install Plug in Circle[4]';
    // Nobody put it in: the step that needs it is told, and nothing after it.
    expect(started(steps)).toEqual(["order.unmet-need: Screw[4] is installed"]);
  });
});

describe("like-numbered partners", () => {
  const stack =
    'part Washer[1..4] "washer" { seats in Circle by number }\npart Nut[1..4] "nut" { seats in Circle by number  needs Washer[same] }\npart Cap "cap" { seats in Circle }';
  test("share a position", () => {
    expect(found(work(stack, "step install Washer[2]\nstep install Nut[2]"))).toEqual([]);
  });
  test("need their own partner", () => {
    expect(found(work(stack, "step install Washer[2]\nstep install Nut[3]"))).toEqual([
      "order.missing-support: install Nut[3]",
    ]);
  });
  test("leave no room for others", () => {
    expect(
      found(
        work(stack, "step install Washer[2]\nstep install Nut[2]\nstep remove Nut[2]\nstep install Cap in Circle[2]"),
      ),
    ).toEqual(["order.occupied: install Cap"]);
  });
  test("leave room once both are out", () => {
    expect(
      found(
        work(
          stack,
          "step install Washer[2]\nstep install Nut[2]\nstep remove Nut[2]\nstep remove Washer[2]\nstep install Cap in Circle[2]",
        ),
      ),
    ).toEqual([]);
  });
});

describe("parts that stand on others", () => {
  const parts = 'part Shaft "shaft"\npart Bearing "bearing"\npart Ring "ring"\npart Cap "cap"';
  const ask = (condition: string, name = "Look"): string => `step ${name} { needs ${condition}\n do "Look." }`;
  const unmet = (condition: string): string[] => [`order.unmet-need: ${condition}`];

  test("on the bench: not installed, and not free to be put in again", () => {
    expect(found(work(parts, `step install Bearing over Shaft\n${ask("Bearing is installed")}`))).toEqual(
      unmet("Bearing is installed"),
    );
    expect(found(work(parts, "step install Bearing over Shaft\nstep install Bearing over Shaft"))).toEqual([
      "order.already-installed: install Bearing",
    ]);
  });
  test("on the bench: can be taken off again", () => {
    expect(
      found(work(parts, `step install Bearing over Shaft\nstep remove Bearing\n${ask("Bearing is removed")}`)),
    ).toEqual([]);
  });
  test("go in with what carries them", () => {
    expect(
      found(work(parts, `step install Bearing over Shaft\nstep install Shaft\n${ask("Bearing is installed")}`)),
    ).toEqual([]);
  });
  test("are in at once on what is in", () => {
    expect(
      found(work(parts, `step install Shaft\nstep install Bearing over Shaft\n${ask("Bearing is installed")}`)),
    ).toEqual([]);
  });
  test("come out with what carries them, and stay on it", () => {
    const steps = "step install Shaft\nstep install Bearing over Shaft\nstep remove Shaft";
    expect(found(work(parts, `${steps}\n${ask("Bearing is not installed")}`))).toEqual([]);
    expect(found(work(parts, `${steps}\n${ask("Bearing is installed")}`))).toEqual(unmet("Bearing is installed"));
    expect(found(work(parts, `${steps}\nstep install Bearing`))).toEqual(["order.already-installed: install Bearing"]);
    expect(found(work(parts, `${steps}\nstep remove Bearing`))).toEqual([]);
  });
  test("stay where they are when something else is moved", () => {
    expect(
      found(
        work(
          parts,
          `step install Shaft, Cap\nstep install Bearing over Shaft\nstep remove Cap\n${ask("Bearing is installed")}`,
        ),
      ),
    ).toEqual([]);
  });
  test("a pile of four goes out and in as one", () => {
    const pile = "step install Bearing over Shaft\nstep install Ring over Bearing\nstep install Cap over Ring";
    expect(
      found(
        work(parts, `${pile}\n${ask("Cap is not installed")}\nstep install Shaft\n${ask("Cap is installed", "In")}`),
      ),
    ).toEqual([]);
    expect(found(work(parts, `${pile}\nstep install Shaft\nstep remove Shaft\n${ask("Cap is installed")}`))).toEqual(
      unmet("Cap is installed"),
    );
  });
  test("the top of a pile moves only where the pile stands on what moves", () => {
    const steps = `step install Shaft
      when Extent is Full { step install Bearing over Shaft } otherwise { step install Bearing }
      step install Ring over Bearing
      step install Cap over Ring
      step remove Shaft
      ${ask("Cap is installed")}`;
    expect(found(work(`${parts}\noption Extent "extent" { Full Part }`, steps))).toEqual([
      "order.unmet-need: Cap is installed | Extent Full",
    ]);
  });
  test("are taken as in with what a need takes as in", () => {
    const steps = `step install Bearing over Shaft\n${ask("Shaft is installed")}\n${ask("Bearing is installed", "Then")}`;
    expect(found(work(parts, steps))).toEqual(unmet("Shaft is installed"));
  });
  test("what carries a part is support enough on the bench, other support is not", () => {
    const needy = 'part Shaft "shaft"\npart Key "key"\npart Gear "gear" { needs Shaft, Key }';
    expect(found(work(needy, "step install Key over Shaft\nstep install Gear over Shaft"))).toEqual([
      "order.missing-support: install Gear",
    ]);
    expect(found(work(needy, "step install Shaft\nstep install Key over Shaft\nstep install Gear over Shaft"))).toEqual(
      [],
    );
  });
  test("two that each may stand on the other come to an end", () => {
    const steps =
      "step install Bearing over Ring\nstep remove Bearing\nstep install Ring over Bearing\nstep install Bearing\nstep remove Bearing";
    expect(found(work(parts, steps))).toEqual([]);
  });
});
