// The brute-force run by itself: for each code one procedure made by hand that must show it, next to one that must not.
import { expect, test } from "vitest";
import { simulate } from "../paper-simulator.ts";
import {
  type PartAct,
  PLAIN_PART,
  type SimAct,
  type SimCondition,
  type SimItem,
  type SimLine,
  type SimPart,
  type SimProcedure,
} from "./shop.ts";
import { simText } from "./text.ts";

const part = (name: string, says: Partial<SimPart> = {}): SimPart => ({ ...PLAIN_PART, name, ...says });

const PARTS: readonly SimPart[] = [
  part("Hub"),
  part("Cover", { encloses: ["Hub", "Pin"], mass: 40 }),
  part("Screw", { count: 3, secures: ["Cover"] }),
  part("Tab", { locks: ["Screw"] }),
  part("Pin", { temporary: true }),
  part("Seal", { singleUse: true }),
  part("Shaft"),
  part("Gear", { needs: ["Shaft"], driven: ["Supply"] }),
  part("Lid", { encloses: ["Gear"] }),
  part("Blade", { count: 4, seats: { ring: "Seat", byNumber: true } }),
  part("Plug", { seats: { ring: "Circle", byNumber: false } }),
  part("Cap", { seats: { ring: "Circle", byNumber: false } }),
];

const EMPTY: SimProcedure = {
  parts: PARTS,
  rings: [
    { name: "Seat", count: 4, numbered: "clockwise", first: 12, fill: "counterclockwise" },
    { name: "Circle", count: 4, numbered: "counterclockwise", first: 3, fill: null },
  ],
  fits: [{ outer: "Gear", inner: "Shaft", tight: true }],
  energies: [
    { name: "Supply", dead: false },
    { name: "Steam", dead: true },
  ],
  facts: ["Signed"],
  options: [{ name: "Extent", values: ["Full", "Part"] }],
  begin: [],
  finish: [],
  items: [],
  performed: [],
};

const act = (verb: PartAct["verb"], of: string, more: Partial<PartAct> = {}): SimLine => ({
  kind: "act",
  act: { verb, part: of, ...more },
});
const other = (act: SimAct): SimLine => ({ kind: "act", act });
const energy = (verb: "isolate" | "prove" | "restore"): SimLine => other({ verb, energy: "Supply" });
const step = (name: string, ...lines: SimLine[]): SimItem => ({ kind: "step", name, lines });
const inside = (...names: string[]): SimCondition[] => names.map((name) => ({ part: name, state: "installed" }));
const out = (...names: string[]): SimCondition[] => names.map((name) => ({ part: name, state: "removed" }));
const secured: SimCondition = { part: "Cover", state: "secured" };
const all = ["Screw[1]", "Screw[2]", "Screw[3]"];

/** The codes with their lines as written, each once. */
function told(items: readonly SimItem[], more: Partial<SimProcedure> = {}): string[] {
  const procedure = { ...EMPTY, ...more, items };
  const { text, lines } = simText(procedure);
  const rows = text.split("\n");
  return [
    ...new Set(
      simulate(procedure).map(
        ({ code, at }) => `${code}: ${rows[lines.get(at) ?? -1]?.trim().replace(/^step /, "") ?? at}`,
      ),
    ),
  ].sort();
}

/** Told of one step of these lines, and of what is so at the start and asked at the end. */
const of = (lines: readonly SimLine[], begin: SimCondition[] = [], finish: SimCondition[] = []): string[] =>
  told([step("Only", ...lines)], { begin, finish });

test("parts in and out", () => {
  expect(of([act("remove", "Plug")], [], out("Plug"))).toEqual(["order.not-installed: remove Plug"]);
  expect(of([act("install", "Plug"), act("install", "Plug")])).toEqual(["order.already-installed: install Plug"]);
  expect(of([act("clean", "Hub")], inside("Cover", "Hub"))).toEqual(["order.enclosed: clean Hub"]);
  expect(of([act("press", "Gear")], [{ energy: "Supply", state: "isolated" }])).toEqual([
    "order.missing-support: press Gear",
  ]);
  expect(of([act("remove", "Cover")], [secured], out("Cover"))).toEqual(["order.retained: remove Cover"]);
  expect(
    of(
      [act("install", "Pin"), act("install", "Cover"), act("remove", "Cover"), act("remove", "Pin")],
      [],
      out("Cover"),
    ),
  ).toEqual(["order.left-behind: install Pin"]);
});

test("what is asked", () => {
  expect(of([{ kind: "needs", condition: { fact: "Signed" } }])).toEqual(["order.unmet-need: needs Signed"]);
  expect(of([other({ verb: "do" })], [], inside("Hub"))).toEqual(["order.unfinished: finish with Hub is installed"]);
  expect(of([energy("isolate")])).toEqual(["order.left-behind: isolate Supply"]);
  expect(of([energy("isolate"), energy("restore")])).toEqual([]);
});

test("places", () => {
  expect(of([act("install", "Plug", { place: "Circle[2]" }), act("install", "Cap", { place: "Circle[2]" })])).toEqual([
    "order.occupied: install Cap in Circle[2]",
  ]);
  expect(of([act("install", "Blade[2]", { place: "Seat[3]" })])).toEqual([
    "order.wrong-place: install Blade[2] in Seat[3]",
  ]);
  const turn = other({ verb: "turn", place: "Circle[2]", hour: 6 });
  // Numbered counterclockwise from 3 o'clock: position 2 stands at 12 o'clock.
  expect(of([act("install", "Plug", { place: "Circle[2]", hour: 12 })])).toEqual([]);
  expect(of([turn, act("install", "Plug", { place: "Circle[2]", hour: 12 })])).toEqual([
    "order.position: install Plug in Circle[2] at 12 o'clock",
  ]);
  expect(of([turn, act("install", "Plug", { place: "Circle[1]", hour: 9 })])).toEqual([]);
});

test("filling in one direction", () => {
  const fill = (...numbers: number[]): string[] => of(numbers.map((at) => act("install", `Blade[${at}]`)));
  expect(fill(3, 2, 1, 4)).toEqual([]);
  expect(fill(3, 4)).toEqual(["order.direction: install Blade[4]"]);
  expect(fill(3, 1)).toEqual(["order.direction: install Blade[1]"]);
  expect(fill(3, 1, 2)).toEqual(["order.direction: install Blade[2]"]);
  expect(
    of([act("install", "Blade[3]"), act("install", "Blade[1]"), act("remove", "Blade[1]")], [], out("Blade[1]")),
  ).toEqual([]);
});

test("fasteners", () => {
  const begin = [secured];
  expect(
    of([act("loosen", all[0] ?? ""), act("loosen", all[0] ?? ""), act("tighten", all[0] ?? "")], begin, out("Tab")),
  ).toEqual(["order.not-tightened: loosen Screw[1]"]);
  expect(of([act("tighten", "Screw[1]", { how: "to seat" })], begin, [secured, ...out("Tab")])).toEqual([
    "order.left-seated: tighten Screw[1] to 20 N·m to seat",
  ]);
  expect(of([act("tighten", "Screw[1]")], [...begin, ...inside("Tab")])).toEqual(["order.locked: tighten Screw[1]"]);
  expect(of([act("tighten", "Screw[1]")], begin)).toEqual(["order.locked: tighten Screw[1]"]);
  expect(of([act("tighten", "Screw[1]")], begin, out("Tab"))).toEqual([]);
  expect(of([act("remove", "Tab")], [...begin, ...inside("Tab")])).toEqual(["order.locked: remove Tab"]);
  expect(of([act("loosen", "Screw[1]", { how: "by 1/4 turn" })], begin)).toEqual([
    "order.locked: loosen Screw[1] by 1/4 turn",
  ]);
  expect(of([act("install", "Screw[1]"), act("tighten", "Screw[1]", { how: "by hand" })], inside("Cover"))).toEqual([
    "order.not-final: tighten Screw[1] by hand",
  ]);
  expect(of([act("discard", "Plug")], inside("Plug"))).toEqual(["order.not-final: discard Plug"]);
});

test("single use", () => {
  expect(of([act("remove", "Seal"), act("install", "Seal")], inside("Seal"))).toEqual(["order.reused: install Seal"]);
  expect(of([act("remove", "Seal"), act("install", "Seal", { fresh: true })], inside("Seal"))).toEqual([]);
});

test("heavy parts", () => {
  const free = (...first: SimLine[]): string[] =>
    of(
      [...first, ...all.flatMap((name) => [act("loosen", name), act("remove", name)])],
      [secured],
      [...out(...all), ...out("Tab")],
    );
  expect(free()).toEqual(["order.unsupported: loosen Screw[3]"]);
  expect(free(act("support", "Cover"))).toEqual([]);
  expect(of([act("lift", "Cover"), act("install", "Cover"), act("set down", "Cover")])).toEqual([
    "order.unsupported: set down Cover",
  ]);
  expect(of([act("lift", "Cover"), act("set down", "Cover"), act("install", "Cover")])).toEqual([]);
});

test("curing", () => {
  const coat = act("apply", "Hub", { cure: 10 });
  const close = act("install", "Cover");
  expect(of([coat, close])).toEqual(["order.uncured: install Cover"]);
  expect(of([coat, other({ verb: "wait", minutes: 9 }), act("lift", "Hub")])).toEqual([
    "order.uncured: lift Hub with Hoist",
  ]);
  expect(of([coat, other({ verb: "wait", minutes: 10 }), close])).toEqual([]);
  const takes: SimLine = { kind: "takes", low: 10, high: 12 };
  expect(told([step("One", coat, takes), step("Two", close)])).toEqual(["order.uncured: install Cover"]);
  expect(told([step("One", coat), step("Two", other({ verb: "do" }), takes), step("Three", close)])).toEqual([]);
});

test("fits", () => {
  const heat = other({ verb: "heat", part: "Gear", low: 100, high: 110 });
  const fit = act("install", "Gear", { over: "Shaft" });
  const start: SimCondition[] = [...inside("Shaft"), { energy: "Supply", state: "isolated" }];
  const cold = (...lines: SimLine[]): string[] => of(lines, start).filter((line) => line.includes("cold"));
  expect(cold(fit)).toEqual(["order.cold-fit: install Gear over Shaft"]);
  expect(cold(heat, fit)).toEqual([]);
  expect(cold(act("press", "Gear", { over: "Shaft" }))).toEqual([]);
  expect(cold(heat, other({ verb: "wait until", part: "Gear", high: 20 }), fit)).toEqual([
    "order.cold-fit: install Gear over Shaft",
  ]);
  expect(cold(other({ verb: "cool", part: "Shaft", low: -60, high: -50 }), act("install", "Gear"))).toEqual([]);
});

test("energies", () => {
  const begin = inside("Shaft", "Gear", "Lid");
  const open = [energy("isolate"), energy("prove"), act("remove", "Lid")];
  expect(of([act("clean", "Gear")], inside("Shaft", "Gear"))).toEqual(["order.energised: clean Gear"]);
  expect(of([act("inspect", "Gear")], inside("Shaft", "Gear"))).toEqual([]);
  expect(of([energy("isolate"), act("clean", "Gear"), energy("restore")], inside("Shaft", "Gear"))).toEqual([
    "order.not-proved: clean Gear",
  ]);
  expect(of([...open, act("clean", "Gear"), energy("restore"), act("install", "Lid")], begin)).toEqual([
    "order.restored-open: restore Supply",
  ]);
  expect(of([...open, act("clean", "Gear"), act("install", "Lid"), energy("restore")], begin)).toEqual([]);
});

test("work for nothing", () => {
  const turn = other({ verb: "turn", place: "Circle[2]", hour: 6 });
  const oil = act("lubricate", "Hub");
  expect(of([oil, act("clean", "Hub")])).toEqual(["order.wasted: clean Hub"]);
  expect(of([oil, act("inspect", "Plug"), act("clean", "Hub")])).toEqual([]);
  expect(of([oil, act("install", "Plug"), act("clean", "Hub")])).toEqual(["order.wasted: clean Hub"]);
  expect(of([oil, act("install", "Cover"), act("remove", "Cover"), act("clean", "Hub")], [], out("Cover"))).toEqual([]);
  expect(of([turn, turn])).toEqual(["order.wasted: turn Circle[2] to 6 o'clock"]);
  expect(of([turn, act("clean", "Hub"), turn])).toEqual([]);
  const warm = (verb: "heat" | "cool"): SimLine => other({ verb, part: "Gear", low: 5, high: 10 });
  expect(of([warm("heat"), warm("heat"), warm("cool")])).toEqual(["order.wasted: cool Gear to 5 .. 10 °C"]);
});

test("after and before", () => {
  const after: SimLine = { kind: "after", step: "Two" };
  const before: SimLine = { kind: "before", step: "One" };
  expect(told([step("One", other({ verb: "do" }), after), step("Two", other({ verb: "do" }))])).toEqual([
    "order.declared: after Two",
  ]);
  expect(told([step("One", other({ verb: "do" })), step("Two", other({ verb: "do" }), before)])).toEqual([
    "order.declared: before One",
  ]);
  expect(told([step("Two", other({ verb: "do" }), before), step("One", other({ verb: "do" }), after)])).toEqual([]);
});

test("any order: what is wrong in some order only", () => {
  const both = (...children: SimItem[]): SimItem[] => [{ kind: "any order", children }];
  const hub = step("PutHub", act("install", "Hub"));
  const cover = step("PutCover", act("install", "Cover"));
  expect(told(both(hub, step("PutLid", act("install", "Lid"))))).toEqual([]);
  expect(told(both(hub, cover))).toEqual(["order.enclosed: install Hub"]);
  expect(told(both({ kind: "task", items: [hub, cover] }, step("Oil", act("lubricate", "Hub"))))).toEqual([
    "order.enclosed: lubricate Hub with Oil",
  ]);
});

test("any order: no order mixes with another", () => {
  const swap: SimItem = {
    kind: "task",
    items: [step("Out", act("remove", "Hub")), step("Shut", act("install", "Cover"))],
  };
  const items: SimItem[] = [{ kind: "any order", children: [swap, step("Clean", act("clean", "Hub"))] }];
  expect(told(items, { begin: inside("Hub"), finish: out("Hub") })).toEqual([]);
});

test("any order: a stop in one child leaves the others undone", () => {
  const look = step("Look", { kind: "check", fails: [], jump: "stop" });
  const items: SimItem[] = [{ kind: "any order", children: [look, step("Put", act("install", "Pin"))] }];
  expect(told([...items, step("Take", act("remove", "Pin"))])).toEqual([]);
  const away = step("Look", { kind: "check", fails: [], jump: { way: "go to", to: "Take" } });
  expect(
    told(
      [
        { kind: "any order", children: [away, step("Put", act("install", "Plug"))] },
        step("Take", act("remove", "Plug")),
      ],
      { finish: out("Plug") },
    ),
  ).toEqual(["order.not-installed: remove Plug"]);
});

test("options, repeats and rework", () => {
  const procedure: SimProcedure = {
    ...EMPTY,
    items: [
      { kind: "when", option: "Extent", value: "Full", inside: [step("Put", act("install", "Plug"))], otherwise: null },
      { kind: "repeat", variable: "n", values: [4, 3], items: [step("Each", act("install", "Blade[n]"))] },
      step("Take", act("remove", "Plug")),
      step("Again", act("install", "Plug"), {
        kind: "check",
        fails: [
          { verb: "remove", part: "Plug" },
          { verb: "install", part: "Cap" },
        ],
        jump: { way: "return to", to: "Again" },
      }),
    ],
  };
  const { lines } = simText(procedure);
  const found = simulate(procedure).map(({ code, at, so }) => `${code} ${lines.get(at)} ${so.Extent}`);
  const base = lines.get("items") ?? 0;
  expect(found.sort()).toEqual([
    `order.already-installed ${base + 11} Full`,
    `order.already-installed ${base + 11} Part`,
    `order.not-installed ${base + 6} Part`,
  ]);
});

test("ways that nobody goes, and such as never end", () => {
  const [one, two, three] = ["One", "Two", "Three"].map((name) => step(name, other({ verb: "do" })));
  if (one === undefined || two === undefined || three === undefined) throw new Error("no steps");
  const back: SimItem = { kind: "jump", jump: { way: "return to", to: "One" } };
  const look = step("Look", { kind: "check", fails: [], jump: { way: "return to", to: "One" } });
  const full = (items: readonly SimItem[], otherwise: readonly SimItem[] | null = null): SimItem => ({
    ...{ kind: "when", option: "Extent", value: "Full", inside: items, otherwise },
  });
  expect(told([one, look, two])).toEqual([]);
  expect(told([one, back, two, three])).toEqual(["flow.endless: return to One", 'flow.unreachable: do "Look."']);
  expect(told([one, full([back]), two])).toEqual(["flow.endless: return to One"]);
  expect(told([full([two, full([three], [one])])])).toEqual([
    "flow.impossible-condition: } otherwise {",
    'flow.unreachable: do "Look."',
  ]);
  expect(told([{ kind: "task", items: [{ kind: "task", items: [] }] }, one])).toEqual([
    'flow.empty: task "Some work" {',
  ]);
  expect(told([{ kind: "jump", jump: { way: "go to", to: "Two" } }, full([two]), one])).toEqual([
    "flow.bad-jump: go to Two",
  ]);
});

test("readings: one value until it is measured again", () => {
  const measure = step("Measure", other({ verb: "measure", reading: "Gap" }));
  const read = (most: number, of: readonly SimItem[], otherwise: readonly SimItem[] | null = null): SimItem => ({
    ...{ kind: "when read", reading: "Gap", most, inside: of, otherwise },
  });
  const [put, take] = [step("Put", act("install", "Plug")), step("Take", act("remove", "Plug"))];
  const end = { finish: out("Plug") };
  expect(told([measure, read(1, [put]), read(1, [take])], end)).toEqual([]);
  expect(told([measure, read(1, [put]), read(2, [take])], end)).toEqual(["order.not-installed: remove Plug"]);
  expect(told([measure, read(1, [put]), { ...measure, name: "Anew" } as SimItem, read(1, [take])], end)).toContain(
    "order.not-installed: remove Plug",
  );
  expect(told([measure, read(1, [read(2, [put], [take])])], end)).toContain("flow.impossible-condition: } otherwise {");
});

test("what stands by itself", () => {
  const motor = [part("Motor", { mass: 60, stands: true }), part("Foot", { secures: ["Motor"] })];
  const [lift, down] = [act("lift", "Motor"), act("set down", "Motor")];
  const loosened = [act("install", "Motor"), act("install", "Foot"), act("tighten", "Foot"), act("loosen", "Foot")];
  const end = { finish: [{ part: "Foot", state: "loose" }] } as const;
  const falling = motor.map((each) => ({ ...each, stands: false }));
  for (const [parts, more] of [
    [motor, []],
    [falling, ["order.unsupported: loosen Foot"]],
  ] as const)
    expect(told([step("Only", ...loosened)], { parts, ...end })).toEqual(more);
  const lifted = step("Only", lift, act("install", "Motor"), down);
  expect(told([lifted], { parts: motor })).toEqual([]);
  expect(told([lifted], { parts: falling })).toEqual(["order.unsupported: set down Motor"]);
});

test("clocks", () => {
  const look = other({ verb: "do" });
  const takes = (low: number, high = low): SimLine => ({ kind: "takes", low, high });
  const wait = (minutes: number): SimLine => other({ verb: "wait", minutes });
  const within = (minutes: number, to = "One"): SimLine => ({ kind: "within", minutes, step: to });
  const leads = (way: "return to" | "go to", to: string): SimLine => ({
    ...{ kind: "check", fails: [], jump: { way, to } },
  });
  const one = step("One", look, takes(99));
  const late = "order.too-late: within 10 min after One";
  const perhaps = "order.too-late perhaps: within 10 min after One";
  const last = step("Last", look, takes(1, 4), within(10));
  // The longer end of each time, the own one too; the step counts whole, or its waits where they are longer.
  expect(told([one, step("Two", look, takes(2, 6)), last])).toEqual([]);
  expect(told([one, step("Two", look, takes(2, 7)), last])).toEqual([late]);
  expect(told([one, step("Two", look, takes(6), wait(3), wait(3)), last])).toEqual([]);
  expect(told([one, step("Two", look, takes(6), wait(3), wait(4)), last])).toEqual([late]);
  // What nobody says; it does not matter where it is too late anyway.
  expect(told([one, step("Two", look), last])).toEqual([perhaps]);
  expect(told([one, step("Two", look), step("Three", look, takes(7)), last])).toEqual([late]);
  expect(told([one, step("Two", wait(2)), last])).toEqual([]);
  // Any number of passes; anew with each end of the first.
  expect(told([one, step("Two", look, takes(1), leads("return to", "Two")), last])).toEqual([late]);
  expect(told([one, step("Two", look, takes(1), leads("return to", "One")), last])).toEqual([]);
  // A jump ends the step that it leads out of, and the one whose time runs.
  const out = step("One", look, takes(1), leads("go to", "Last"));
  expect(told([out, step("Two", look, takes(20)), last])).toEqual([late]);
  expect(told([out, step("Two", look, takes(6)), step("Last", look, takes(11), within(10))])).toEqual([late]);
  const back = step("Two", look, takes(11), leads("return to", "Four"), within(10));
  expect(told([step("Four", look, takes(1)), one, back, step("Five", look)])).toEqual([late]);
  expect(told([step("Two", look, takes(11), within(10)), one])).toEqual([]);
});

test("a state written as what it is not", () => {
  const isNot: SimLine = { kind: "needs", condition: { part: "Hub", state: "removed", not: true } };
  expect(simText({ ...EMPTY, items: [step("Only", isNot)] }).text).toContain("needs Hub is not installed");
  expect(of([isNot], inside("Hub"))).toEqual(["order.unmet-need: needs Hub is not installed"]);
  expect(of([isNot])).toEqual([]);
});
