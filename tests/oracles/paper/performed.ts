// The procedures that a random one may perform. Knows nothing of the checker.
import type { Picker } from "./picker.ts";
import { act, done, look, type Sequence, takes } from "./sequences.ts";
import type { SimCondition, SimProcedure } from "./shop.ts";

/** One or two of a few, or `every` one, each with or without a word of how it begins and ends. */
export function performedIn(shape: Picker, hasEnergy: boolean, every: boolean): SimProcedure["performed"] {
  const steps = (...list: Sequence): SimProcedure["items"] =>
    list.map((step, at) => ({ kind: "step", name: `Inner${at}`, lines: "verb" in step ? [done(step)] : step }));
  const maybe = (...conditions: readonly SimCondition[]): readonly SimCondition[] =>
    shape.below(4) === 0 ? [] : conditions;
  const nuts = ["Nut[1]", "Nut[2]"];
  const all: SimProcedure["performed"] = [
    {
      name: "Close",
      begin: maybe({ part: "Bracket", state: "installed" }),
      items: steps(act("install", "Guard"), ...nuts.flatMap((name) => [act("install", name), act("tighten", name)])),
      finish: maybe({ part: "Guard", state: "secured" }),
    },
    {
      name: "Loosely",
      begin: [{ part: "Bracket", state: "installed" }],
      items: steps(act("install", "Guard"), ...nuts.map((name) => act("install", name))),
      finish: maybe(...nuts.map((name): SimCondition => ({ part: name, state: "loose" }))),
    },
    {
      // It does not do what it says.
      name: "Botch",
      begin: [{ part: "Bracket", state: "installed" }],
      items: steps(act("install", "Guard")),
      finish: [{ part: "Guard", state: "secured" }],
    },
    {
      name: "Open",
      begin: [{ part: "Guard", state: "secured" }],
      items: steps(...nuts.flatMap((name) => [act("loosen", name), act("remove", name)]), act("remove", "Guard")),
      finish: maybe({ part: "Guard", state: "removed" }),
    },
    {
      name: "Release",
      begin: [],
      items: steps([
        look,
        { kind: "gives", condition: { fact: "Signed" } },
        { kind: "gives", condition: { part: "Valve", own: "open" } },
      ]),
      finish: maybe({ fact: "Signed" }),
    },
    {
      name: "Wipe",
      begin: maybe({ part: "Bracket", state: "installed" }),
      items: steps(act("clean", "Bracket")),
      finish: [],
    },
    {
      // What secures the Guard is not spoken of.
      name: "Uncover",
      begin: [{ part: "Guard", state: "installed" }],
      items: steps(act("remove", "Guard")),
      finish: maybe({ part: "Guard", state: "removed" }),
    },
    { name: "Rest", begin: [], items: steps({ verb: "wait", minutes: 5 }, [look, takes(5)]), finish: [] },
    ...(hasEnergy
      ? [
          {
            name: "SwitchOff",
            begin: [],
            items: steps({ verb: "isolate", energy: "Supply" }, { verb: "prove", energy: "Supply" }),
            finish: maybe({ energy: "Supply", state: "isolated" }),
          },
          {
            name: "SwitchOn",
            begin: maybe({ energy: "Supply", state: "isolated" }),
            items: steps({ verb: "restore", energy: "Supply" }),
            finish: maybe({ energy: "Supply", state: "live" }),
          },
        ]
      : []),
  ];
  if (every) return all;
  const one = shape.of(all);
  const other = shape.of(all);
  return one === other ? [one] : [one, other];
}
