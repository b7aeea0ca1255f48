// Energies: off, shown to be dead, on again, and what must be closed before they are on.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Foot "foot bolt" { secures Motor }
part Hood "hood" { encloses Motor }
part Screw[1..2] "hood screw" { secures Hood }
part Unseen "screw that nobody speaks of" { secures Motor }
part Shield "shield that nobody speaks of" { encloses Motor }
part Base "base"
temporary part Pin "locating pin"
`;
/** The motor is in under its hood, with every screw of both tight, and dead. */
const CLOSED =
  "begin with Motor is installed, Foot is tightened, Hood is installed, Screw[1] is tightened, Screw[2] is tightened, Foot is installed, Screw[1] is installed, Screw[2] is installed";
const procedure = (steps: string): string => `${PARTS}procedure Work "Work" { ${steps} }`;
const work = (steps: string): readonly string[] => found(procedure(steps));
const whole = (steps: string): readonly object[] => wholeFacts(procedure(steps));

type Case = [steps: string, ...told: string[]];

describe("off and on", () => {
  const LIVE = 'step A { needs Supply is live do "Look." }';
  const DEAD = 'step B { needs Supply is isolated do "Look." }';
  test.each<Case>([
    [LIVE],
    [DEAD, "order.unmet-need: Supply is isolated"],
    [`step isolate Supply ${DEAD} step restore Supply ${LIVE}`],
    // Taken as live from there on, it is not left off either.
    [`step isolate Supply ${LIVE}`, "order.unmet-need: Supply is live"],
    [`step isolate Supply step prove Supply dead ${DEAD} step restore Supply`],
    ["step isolate Supply", "order.left-behind: isolate Supply"],
    ["step isolate Supply step prove Supply dead", "order.left-behind: isolate Supply"],
    ["step isolate Supply finish with Supply is isolated"],
    ["step isolate Supply step isolate Supply", "order.left-behind: isolate Supply"],
    // What was off already is not switched off by it, and nothing live is switched off by showing it.
    ["begin with Supply is isolated step isolate Supply"],
    [`step prove Supply dead ${LIVE}`],
    [`begin with Supply is isolated step restore Supply ${LIVE}`],
    ["step restore Supply step isolate Supply step restore Supply"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
  test("says where it was switched off, and what would end that", () => {
    expect(whole("step isolate Supply")).toEqual([
      {
        kind: "left behind",
        what: "Supply",
        nature: "isolated",
        closedBy: null,
        closedAt: null,
        removeText: "restore Supply",
        mendAt: { lastIn: procedure("step isolate Supply").slice(PARTS.length) },
        span: "isolate Supply",
      },
    ]);
  });
});

describe("shown to be dead", () => {
  const IN = "begin with Motor is installed";
  const NOT = "order.not-proved: clean Motor";
  test.each<Case>([
    [`${IN} step isolate Supply step prove Supply dead step clean Motor step restore Supply`],
    [`${IN} step isolate Supply step clean Motor step restore Supply`, NOT],
    // Before it is off it shows nothing.
    [`${IN} step prove Supply dead step isolate Supply step clean Motor step restore Supply`, NOT],
    // Isolated once more, it is still the one that was shown.
    [`${IN} step isolate Supply step prove Supply dead step isolate Supply step clean Motor step restore Supply`],
    [
      `${IN} step isolate Supply step prove Supply dead step restore Supply step isolate Supply step clean Motor step restore Supply`,
      NOT,
    ],
    [`${IN}, Supply is isolated step prove Supply dead step isolate Supply step clean Motor`],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });
});

describe("on again", () => {
  const open = (what: string): string => `order.restored-open: restore ${what}`;
  const DEAD = "step isolate Supply step prove Supply dead";
  test.each<Case>([
    [`${CLOSED} ${DEAD} step restore Supply`],
    // A cover that is off.
    [
      `${CLOSED} ${DEAD} step loosen Screw[1..2] step remove Screw[1..2] step remove Hood step restore Supply`,
      open("Supply"),
    ],
    // On the bench with another part it is not off, and not on either: nothing is said.
    [`begin with Motor is installed step isolate Supply step install Hood on Base step restore Supply`],
    // A fastener that is loose, or out, of the part or of a cover that is on.
    [`${CLOSED} ${DEAD} step loosen Foot step restore Supply`, open("Supply")],
    [`${CLOSED} ${DEAD} step loosen Foot step remove Foot step restore Supply`, open("Supply")],
    [`${CLOSED} ${DEAD} step loosen Screw[2] step restore Supply`, open("Supply")],
    [`${CLOSED} ${DEAD} step loosen Screw[2] by 90° step restore Supply`],
    // Out is out, though it was tightened there.
    [
      "begin with Motor is installed step isolate Supply step prove Supply dead step tighten Foot step restore Supply",
      "order.not-installed: tighten Foot",
      open("Supply"),
    ],
    // As found counts as tight.
    ["begin with Motor is installed, Foot is installed step isolate Supply step restore Supply"],
    // All screws of one name are one finding.
    [`${CLOSED} ${DEAD} step loosen Screw[1..2] step restore Supply`, open("Supply")],
    // A part that is not in is no matter, and neither is what is already live.
    ["step isolate Supply step install Hood step install Screw[1] step remove Screw[1] step restore Supply"],
    ["begin with Motor is installed, Foot is loose step restore Supply"],
    ["begin with Motor is installed, Foot is loose, Supply is isolated step restore Supply", open("Supply")],
    [`begin with Motor is installed, Foot is loose ${DEAD} step restore Supply`, open("Supply")],
    // An aid that is in, on the bench too.
    [`${CLOSED} ${DEAD} step install Pin step restore Supply step remove Pin`, open("Supply")],
    [`${CLOSED} ${DEAD} step install Pin on Base step restore Supply step remove Pin`, open("Supply")],
    [`${CLOSED} ${DEAD} step install Pin step remove Pin step restore Supply`],
    ["step isolate Supply step install Pin step restore Supply step remove Pin"],
  ])("%s", (steps, ...told) => {
    expect(work(steps)).toEqual(told);
  });

  test("two at once, each by itself", () => {
    const text = `energy Supply "supply" { pressure 6 bar } energy Air "air" { pressure 6 bar }
      part Fan "fan" { driven by Supply, Air } part Hood "hood" { encloses Fan }
      procedure Work "Work" { begin with Fan is installed, Hood is installed, Supply is isolated, Air is isolated
        step remove Hood step restore Supply, Air step install Hood }`;
    expect(wholeFacts(text)).toMatchObject([
      { kind: "restored open", energy: "Supply", what: "Hood" },
      { kind: "restored open", energy: "Air", what: "Hood" },
    ]);
  });

  const since = (step: string | null, span: string) => ({ step, span });
  test("says what is open, how and since when", () => {
    const openFact = { kind: "restored open", energy: "Supply", part: "Motor", span: "restore Supply" };
    const steps = `${CLOSED} ${DEAD} step install Pin step loosen Screw[1..2] step remove Screw[1..2] step remove Hood
      step loosen Foot step restore Supply step remove Pin
      finish with Hood is removed, Screw[1] is removed, Screw[2] is removed, Foot is loose`;
    expect(whole(steps)).toEqual([
      { ...openFact, what: "Hood", how: "out", since: since("6", "remove Hood") },
      { ...openFact, what: "Foot", how: "loose", since: since("7", "loosen Foot") },
      { ...openFact, what: "Pin", how: "temporary", since: since("3", "install Pin") },
    ]);
  });
  test("a screw of the hood is told once, with the first of its name", () => {
    expect(whole(`${CLOSED} ${DEAD} step loosen Screw[2] step loosen Screw[1] step restore Supply`)).toEqual([
      {
        kind: "restored open",
        energy: "Supply",
        part: "Motor",
        what: "Screw[1]",
        how: "loose",
        span: "restore Supply",
        since: since("4", "loosen Screw[1]"),
      },
    ]);
  });
});
