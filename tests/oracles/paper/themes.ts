// The shops of the random procedures: some parts that every shop has, and more for each theme that is drawn, each with the
// actions that can be done there. Knows nothing of the checker.
import { furnishMore, type MORE_THEMES } from "./more-themes.ts";
import { performedIn } from "./performed.ts";
import type { Picker } from "./picker.ts";
import { act, done, grips, inAndOut, look, needs, part, type Sequence, takes } from "./sequences.ts";
import {
  type Direction,
  instances,
  type SimAct,
  type SimLine,
  type SimPart,
  type SimProcedure,
  type SimShop,
} from "./shop.ts";

export const THEMES = [
  "bolts",
  "locks",
  "grip",
  "single use",
  "heavy",
  "cure",
  "fill",
  "turning",
  "places",
  "fits",
  "energy",
  "wasted",
  "stacks",
  "perform",
] as const;

export type Theme = (typeof THEMES)[number] | (typeof MORE_THEMES)[number];

export interface Scene {
  readonly shop: SimShop;
  /** One list for each theme, and one for the parts that every shop has. */
  readonly acts: readonly (readonly SimAct[])[];
  /** What is usually done one after the other: each a step, of one action or of the lines given. */
  readonly customs: readonly Sequence[];
  /** What would be found fault with, in itself or by what it leaves. */
  readonly mistakes: readonly Sequence[];
  readonly performed: SimProcedure["performed"];
}

const OPTIONS = [
  { name: "Extent", values: ["Full", "Part", "None"] },
  { name: "Kept", values: ["yes", "no"] },
];

export function sceneOf(themes: ReadonlySet<Theme>, shape: Picker): Scene {
  const some = (list: readonly string[]): string[] => (shape.below(3) === 0 ? [] : [shape.of(list)]);
  const has = (theme: Theme): boolean => themes.has(theme);
  const plain = ["Hub", "Cover", "Plug"];
  const driven = (): string[] => (has("energy") ? [shape.of(["Supply", "Supply", "Steam"])] : []);
  const parts: SimPart[] = [
    ...plain.map((name, at): SimPart => {
      const before = plain.slice(0, at);
      return part(name, {
        needs: at === 0 ? [] : [shape.of(before)],
        encloses: [
          ...(at === 0 ? [] : name === "Cover" ? [shape.of(before)] : some(before)),
          ...(name === "Cover" && shape.below(2) === 0 ? ["Pin"] : []),
        ],
        retains: name === "Plug" && shape.below(4) > 0 ? [shape.of(before)] : [],
        driven: shape.below(2) === 0 ? driven() : [],
        mass: name === "Cover" && has("heavy") ? 40 : name === "Hub" && has("heavy") ? 20 : null,
      });
    }),
    part("ScrewA", { secures: ["Cover"] }),
    part("ScrewB", { secures: ["Cover"], singleUse: has("single use") && shape.below(4) > 0 }),
    part("Pin", { temporary: true }),
    part("Valve", { states: ["shut", "open"] }),
  ];
  const rings: SimShop["rings"][number][] = [];
  const fits: SimShop["fits"][number][] = [];
  const customs: Sequence[] = [];
  const mistakes: Sequence[] = [];
  const acts: SimAct[][] = [[...inAndOut(...plain, "ScrewA", "ScrewB", "Pin"), ...grips("ScrewA", "ScrewB")]];
  const later = (...list: Sequence): number => customs.push(list);
  const wrong = (...list: Sequence): number => mistakes.push(list);
  later(act("install", "Hub"), act("install", "Cover"), act("install", "ScrewA"), act("tighten", "ScrewA"));
  later(act("install", "Hub"), act("install", "Cover"), act("install", "Plug"), act("remove", "Plug"));
  later(act("install", "Hub"), act("install", "Plug"));
  later(
    act("loosen", "ScrewA"),
    act("remove", "ScrewA"),
    act("remove", "Plug"),
    act("remove", "Cover"),
    act("inspect", "Hub"),
  );
  const way = (): Direction => shape.of(["clockwise", "counterclockwise"]);

  if (has("bolts")) {
    parts.push(part("Plate"), part("Bolt", { count: 3, secures: ["Plate"] }));
    const bolts = ["Bolt[1]", "Bolt[2]", "Bolt[3]"];
    acts.push([...inAndOut("Plate", ...bolts, "Bolt[all]"), ...grips(...bolts, "Bolt[all]", "Bolt[all]")]);
  }
  if (has("locks")) {
    parts.push(part("Tab", { locks: [shape.of(["ScrewA", "ScrewA", "Hub"])] }), part("Wire", { locks: ["ScrewB"] }));
    acts.push([...inAndOut("Tab", "Wire"), ...grips("ScrewA", "ScrewB")]);
    later(act("remove", "Tab"), act("loosen", "ScrewA"), act("tighten", "ScrewA"), act("install", "Tab"));
    later(act("install", "ScrewB"), act("tighten", "ScrewB"), act("install", "Wire"));
  }
  // Done to what lies on the bench, and what comes of it once it is in.
  wrong(act("loosen", "ScrewA"), act("install", "Hub"), act("install", "Cover"), act("install", "ScrewA"));
  wrong(needs({ part: "Plug", state: "installed" }), act("install", "Plug"), act("install", "Plug"));
  wrong(act("install", "ScrewA"), act("install", "ScrewA"));
  wrong(needs({ part: "Plug", state: "removed" }), act("remove", "Plug"), needs({ part: "Plug", state: "installed" }));
  if (has("grip")) {
    acts.push(
      ["ScrewA", "ScrewB"].flatMap((name) => [
        act("tighten", name, { how: "by hand" }),
        act("tighten", name, { how: "to seat" }),
        act("tighten", name),
        act("loosen", name, { how: "by 1/4 turn" }),
        act("loosen", name),
      ]),
    );
    for (const name of ["ScrewA", "ScrewB"]) {
      later(act("install", name), act("tighten", name, { how: "to seat" }), act("loosen", name), act("tighten", name));
      later(
        act("tighten", name, { how: "by hand" }),
        act("tighten", name),
        act("loosen", name, { how: "by 1/4 turn" }),
      );
    }
  }
  if (has("single use")) {
    parts.push(part("Seal", { singleUse: true }));
    acts.push([
      ...inAndOut("Seal"),
      ...["Seal", "ScrewB"].map((name) => act("install", name, { fresh: true })),
      act("discard", "Seal"),
      ...inAndOut("ScrewB"),
      ...grips("ScrewB", "ScrewB", "ScrewB"),
    ]);
    later(act("install", "ScrewB"), act("tighten", "ScrewB"), act("loosen", "ScrewB"));
    later(act("remove", "Seal"), act("install", "Seal", { fresh: true }));
    later(act("install", "Seal"), act("discard", "Seal"), act("install", "Seal", { fresh: true }));
    later(
      act("loosen", "ScrewB"),
      act("remove", "ScrewB"),
      act("install", "ScrewB", { fresh: true }),
      act("tighten", "ScrewB"),
    );
  }
  if (has("single use")) {
    // Of several mistakes with one part each is told once.
    wrong(act("loosen", "ScrewB"), act("tighten", "ScrewB"), act("tighten", "ScrewB"));
    wrong(
      act("remove", "Seal"),
      act("install", "Seal"),
      act("remove", "Seal"),
      act("install", "Seal", { fresh: true }),
    );
    wrong(act("remove", "ScrewB"), act("install", "ScrewB"), act("tighten", "ScrewB"));
    wrong(act("loosen", "ScrewB", { how: "by 1/4 turn" }), act("tighten", "ScrewB"));
  }
  if (has("heavy")) {
    const alone = shape.below(3) === 0;
    parts.push(
      part("Block", { mass: 40, stands: shape.below(4) === 0 }),
      part("Stud", { count: alone ? 1 : 2, secures: ["Block"] }),
    );
    const studs = instances({ parts }, "Stud");
    acts.push([
      ...["Cover", "Block"].flatMap((name) => [act("lift", name), act("support", name), act("set down", name)]),
      ...inAndOut("Block", ...studs),
      ...grips(...studs),
    ]);
    later(
      act("lift", "Block"),
      act("install", "Block"),
      ...studs.map((name) => act("install", name)),
      act("set down", "Block"),
    );
    later(
      act("support", "Block"),
      ...studs.flatMap((name) => [act("loosen", name), act("remove", name)]),
      act("remove", "Block"),
      act("set down", "Block"),
    );
    const screws = ["ScrewA", "ScrewB"].flatMap((name) => [act("loosen", name), act("remove", name)]);
    later(act("support", "Cover"), ...screws, act("remove", "Cover"), act("set down", "Cover"));
  }
  if (has("cure")) {
    // It stays where it is: what stands on a part that is moved goes with it, and the brute-force run knows nothing of that.
    parts.push(part("Frame"));
    acts.push([
      ...["Hub", "Cover", "Plug"].flatMap((name) => [
        act("apply", name, { cure: 10 }),
        act("apply", name),
        act("fill", name),
      ]),
      act("lift", "Cover"),
      act("lift", "Hub"),
      act("press", "Plug", { over: "Frame" }),
      act("apply", "Frame", { cure: 10 }),
      ...[5, 10, 10].map((minutes): SimAct => ({ verb: "wait", minutes })),
    ]);
    const wait: SimAct = { verb: "wait", minutes: 10 };
    later(act("apply", "Frame", { cure: 10 }), wait, act("press", "Plug", { over: "Frame" }));
    later(act("apply", "Plug", { cure: 10 }), wait, act("press", "Plug", { over: "Frame" }));
    later(act("apply", "Hub", { cure: 15 }), wait, { verb: "wait", minutes: 5 }, act("install", "Cover"));
    later(act("apply", "Cover", { cure: 10 }), wait, act("install", "ScrewA"), act("tighten", "ScrewA"));
    later(act("apply", "Plug", { cure: 5 }), act("install", "Hub"), { verb: "wait", minutes: 5 }, act("fill", "Plug"));
  }
  if (has("cure")) {
    // Time that steps take counts as any other, but not for what the step itself coats.
    const coat = act("apply", "Hub", { cure: 10 });
    later(coat, [look, takes(10)], act("fill", "Hub"));
    later(coat, [look, takes(5)], [look, takes(5)], act("install", "Cover"));
    wrong([done(coat), takes(10)], act("fill", "Hub"));
    wrong(coat, { verb: "wait", minutes: 5 }, act("fill", "Hub"), act("fill", "Hub"));
    wrong(act("apply", "Frame", { cure: 10 }), act("press", "Plug", { over: "Frame" }));
    wrong(act("apply", "Cover", { cure: 10 }), act("lift", "Cover"));
  }
  if (has("stacks")) {
    parts.push(
      part("Rotor"),
      part("Disc", { needs: ["Rotor"], driven: driven() }),
      part("Cap", { encloses: ["Disc"], needs: some(["Rotor"]) }),
      part("Clip", { retains: [shape.of(["Disc", "Rotor"])] }),
    );
    const onRotor = act("install", "Disc", { over: "Rotor" });
    const clip = act("install", "Clip", { over: shape.of(["Disc", "Rotor"]) });
    acts.push([
      ...inAndOut("Rotor", "Disc", "Cap", "Clip"),
      onRotor,
      clip,
      act("clean", "Disc"),
      act("inspect", "Disc"),
    ]);
    later(onRotor, act("install", "Rotor"), act("install", "Cap"), act("remove", "Cap"));
    later(onRotor, clip, act("install", "Rotor"));
    later(act("remove", "Rotor"), act("clean", "Disc"), act("install", "Rotor"));
    later(onRotor, act("install", "Cap"), act("inspect", "Disc"), act("install", "Rotor"));
    const isIn = (name: string): readonly SimLine[] => needs({ part: name, state: "installed" });
    wrong(onRotor, isIn("Disc"));
    wrong(onRotor, act("install", "Rotor"), act("remove", "Rotor"), isIn("Disc"));
    wrong(onRotor, act("install", "Rotor"), act("install", "Cap"), act("clean", "Disc"));
    wrong(onRotor, clip, act("remove", "Disc"), act("install", "Disc"));
    wrong(onRotor, act("install", "Rotor"), act("remove", "Rotor"), needs({ part: "Disc", state: "removed" }));
  }
  if (has("fill")) {
    const count = 4 + shape.below(3);
    rings.push({ name: "Seat", count, numbered: way(), first: shape.of([12, 6]), fill: way() });
    parts.push(part("Blade", { count, seats: { ring: "Seat", byNumber: true } }));
    acts.push([
      ...instances({ parts }, "Blade").flatMap((name) => inAndOut(name)),
      ...instances({ parts }, "Blade").map((name) => act("install", name)),
    ]);
    const ring = rings[0];
    const from = shape.below(count);
    const upwards = instances({ parts }, "Blade");
    const round = [...upwards.slice(from), ...upwards.slice(0, from)];
    const filled = ring?.fill === ring?.numbered ? round : round.reverse();
    later(...filled.map((name) => act("install", name)));
    later(
      ...filled.slice(0, 3).map((name) => act("install", name)),
      ...filled.slice(1, 3).map((name) => act("remove", name)),
    );
  }
  if (has("turning") || has("places")) {
    rings.push({ name: "Circle", count: 4, numbered: way(), first: shape.of([12, 3, 6, 9]), fill: null });
    parts.push(
      part("Knob", { count: 4, seats: { ring: "Circle", byNumber: true } }),
      part("Peg", { count: 2, seats: { ring: "Circle", byNumber: false } }),
    );
    const hours = [12, 3, 6, 9];
    const positions = [1, 2, 3, 4];
    if (has("turning"))
      acts.push([
        ...hours.map((hour): SimAct => ({ verb: "turn", place: `Circle[${shape.of(positions)}]`, hour })),
        ...hours.map((hour) => act("install", `Knob[${shape.of(positions)}]`, { hour })),
        ...hours.map((hour) => act("install", "Peg[1]", { place: `Circle[${shape.of(positions)}]`, hour })),
        act("remove", "Peg[1]"),
        ...positions.map((at) => act("remove", `Knob[${at}]`)),
      ]);
    if (has("turning"))
      for (const at of positions) {
        const hour = shape.of(hours);
        later({ verb: "turn", place: `Circle[${at}]`, hour }, act("install", `Knob[${at}]`, { hour }));
      }
    if (has("places")) {
      const [one, two] = [shape.of(positions), shape.of(positions)];
      const peg = act("install", "Peg[1]", { place: `Circle[${one}]` });
      later(
        peg,
        act("remove", "Peg[1]"),
        act("install", `Knob[${one}]`),
        act("install", "Peg[2]", { place: `Circle[${two}]` }),
      );
      // What was in elsewhere is not there any more, and what another stands in is not free.
      const [here, there] = [`Circle[${one}]`, `Circle[${(one % 4) + 1}]`];
      wrong(peg, act("install", "Peg[1]", { place: there }), act("install", "Peg[2]", { place: here }));
      wrong(peg, act("install", `Knob[${one}]`, { place: here }), act("remove", "Peg[1]"));
      wrong(act("install", `Knob[${one}]`, { place: there }), act("install", "Peg[2]", { place: here }));
      later(act("install", `Knob[${two}]`, { place: `Circle[${two}]` }), act("remove", `Knob[${two}]`), peg);
      acts.push([
        ...positions.map((at) => act("install", "Peg[1]", { place: `Circle[${at}]` })),
        ...positions.map((at) => act("install", "Peg[2]", { place: `Circle[${at}]` })),
        ...positions.map((at) => act("install", `Knob[${at}]`, shape.below(2) === 0 ? {} : { place: `Circle[${at}]` })),
        ...["Peg[1]", "Peg[2]", "Knob[1]", "Knob[2]", "Knob[3]", "Knob[4]"].map((name) => act("remove", name)),
      ]);
    }
  }
  if (has("fits")) {
    parts.push(
      part("Spindle"),
      part("Shaft"),
      part("Gear", { driven: driven() }),
      part("Bush", { needs: some(["Shaft"]) }),
    );
    fits.push(
      { outer: "Gear", inner: "Spindle", tight: true },
      { outer: "Bush", inner: "Shaft", tight: shape.below(2) === 0 },
    );
    acts.push([
      ...["Gear", "Bush"].flatMap((name): SimAct[] => [
        { verb: "heat", part: name, low: 100, high: 110 },
        { verb: "heat", part: name, low: 60, high: 80 },
        { verb: "wait until", part: name, high: 20 },
        { verb: "wait until", part: name, high: 40 },
        act("install", name),
        act("remove", name),
      ]),
      act("install", "Gear", { over: "Spindle" }),
      act("press", "Gear", { over: "Spindle" }),
      ...["Shaft", "Spindle"].map((name): SimAct => ({ verb: "cool", part: name, low: -60, high: -50 })),
      ...inAndOut("Shaft"),
      { verb: "wait", minutes: 5 },
    ]);
    const heat: SimAct = { verb: "heat", part: "Gear", low: 100, high: 110 };
    later(heat, act("install", "Gear", { over: "Spindle" }), {
      verb: "wait until",
      part: "Gear",
      high: 20,
    });
    later(
      { verb: "cool", part: "Shaft", low: -60, high: -50 },
      act("install", "Shaft"),
      act("install", "Gear"),
      act("remove", "Gear"),
    );
    const atLeast = (name: string, least: number): readonly SimLine[] => needs({ part: name, least });
    const atMost = (name: string, most: number): readonly SimLine[] => needs({ part: name, most });
    const wait: SimAct = { verb: "wait", minutes: 5 };
    const over = act("install", "Gear", { over: "Spindle" });
    const until = (name: string, high: number): SimAct => ({ verb: "wait until", part: name, high });
    const rise: SimAct = { verb: "heat by", part: "Gear", low: 40, high: 60 };
    const frost: SimAct = { verb: "cool", part: "Spindle", low: -60, high: -50 };
    later(heat, atLeast("Gear", 100), over, until("Gear", 40), atMost("Spindle", 40));
    later(heat, over, until("Spindle", 40), atMost("Gear", 40));
    later(heat, until("Gear", 90), atLeast("Gear", 90));
    // In one step with what sets it anew, so that no loop heats for ever.
    const risen: readonly SimLine[] = [done({ verb: "heat", part: "Gear", low: 20, high: 25 }), done(rise)];
    later(risen, atLeast("Gear", 60), atMost("Gear", 85), over);
    later(over, act("remove", "Gear"), heat, atMost("Spindle", 20));
    // Time cools, what touches gets hot, and nobody knows that it has cooled before somebody looks.
    wrong(heat, wait, atLeast("Gear", 100));
    wrong(heat, [look, takes(5)], atMost("Gear", 40));
    wrong(heat, wait, atMost("Gear", 40), atMost("Gear", 30));
    wrong(heat, over, atMost("Spindle", 40));
    wrong(over, heat, atMost("Spindle", 40), until("Gear", 40), atMost("Spindle", 30));
    wrong(heat, until("Gear", 40), atLeast("Gear", 60), atMost("Gear", 50));
    wrong(heat, over, atLeast("Spindle", 60));
    wrong({ verb: "heat", part: "Spindle", low: 60, high: 80 }, over, atMost("Gear", 40));
    wrong(frost, over, wait, atLeast("Spindle", 0));
    wrong(risen, atLeast("Gear", 80), atMost("Gear", 60));
    wrong(heat, frost, over);
    wrong({ verb: "heat", part: "Spindle", low: 60, high: 80 }, over);
    later(act("install", "Shaft"), { verb: "heat", part: "Bush", low: 60, high: 80 }, act("install", "Bush"));
  }
  if (has("energy")) {
    parts.push(part("Motor", { driven: shape.of([["Supply"], ["Supply"], ["Supply", "Steam"]]) }));
    parts.push(part("Hood", { encloses: ["Motor"] }), part("Latch", { secures: [shape.of(["Hood", "Motor"])] }));
    const energies = ["Supply", "Supply", "Steam"].flatMap((energy): SimAct[] => [
      { verb: "isolate", energy },
      { verb: "prove", energy },
      { verb: "restore", energy },
    ]);
    const only = (verb: "isolate" | "prove" | "restore"): SimAct => ({ verb, energy: "Supply" });
    wrong(only("isolate"), act("clean", "Motor"), only("prove"), act("fill", "Motor"), only("restore"));
    wrong(only("isolate"), only("isolate"), only("prove"));
    wrong(
      needs({ energy: "Supply", state: "isolated" }),
      act("clean", "Motor"),
      needs({ energy: "Supply", state: "live" }),
    );
    wrong(
      only("isolate"),
      needs({ energy: "Supply", state: "live" }),
      only("restore"),
      needs({ energy: "Supply", state: "isolated" }),
    );
    wrong(act("clean", "Motor"), act("clean", "Motor"), needs({ energy: "Supply", state: "live" }));
    acts.push([
      ...energies,
      ...inAndOut("Motor", "Hood", "Latch"),
      ...grips("Latch"),
      act("clean", "Motor"),
      act("fill", "Motor"),
    ]);
    const hood = [act("install", "Hood"), act("install", "Latch"), act("tighten", "Latch")];
    const opened = [act("loosen", "Latch"), act("remove", "Latch"), act("remove", "Hood")];
    const dead = [only("isolate"), only("prove")];
    later(...dead, act("clean", "Motor"), only("restore"));
    later(...dead, ...opened, act("fill", "Motor"), ...hood, only("restore"));
    later(...dead, act("install", "Motor"), ...hood, only("restore"));
    later(...dead, ...opened, act("clean", "Motor"), ...hood, only("restore"));
  }
  if (has("wasted")) {
    const ring = rings[0];
    const rest: SimAct = { verb: "wait", minutes: 5 };
    const warm: SimAct = { verb: "heat", part: "Hub", low: 60, high: 80 };
    const chill: SimAct = { verb: "cool", part: "Hub", low: 0, high: 10 };
    wrong(warm, chill);
    wrong(act("lubricate", "Hub"), act("clean", "Hub"), act("clean", "Hub"));
    later(act("lubricate", "Hub"), act("install", "Cover"), act("clean", "Hub"));
    later(warm, rest, chill);
    later(act("apply", "Hub"), rest, act("clean", "Hub"));
    later(warm, [{ kind: "check", fails: [], jump: null }], chill);
    wrong(act("lubricate", "Hub"), act("clean", "Cover"), act("clean", "Hub"));
    if (ring !== undefined) {
      const turn: SimAct = { verb: "turn", place: `${ring.name}[1]`, hour: 12 };
      wrong(turn, turn, turn);
      wrong(turn, rest, turn);
      if (has("energy")) wrong(turn, { verb: "isolate", energy: "Supply" }, turn);
      later(turn, act("install", "Hub"), turn);
      later(turn, { verb: "do" }, turn);
    }
    acts.push([
      ...["Hub", "Cover", "ScrewA"].flatMap((name) => [
        act("lubricate", name),
        act("apply", name),
        act("clean", name),
        act("inspect", name),
      ]),
      { verb: "heat", part: "Hub", low: 60, high: 80 },
      { verb: "cool", part: "Hub", low: 0, high: 10 },
      { verb: "do" },
      ...(ring === undefined
        ? []
        : [1, 2].map((at): SimAct => ({ verb: "turn", place: `${ring.name}[${at}]`, hour: 12 }))),
    ]);
    for (const name of ["Hub", "Cover"]) {
      later(act("lubricate", name), act("inspect", name), act("clean", name));
      later(act("apply", name), act("install", name), act("clean", name));
    }
    later({ verb: "heat", part: "Hub", low: 60, high: 80 }, act("install", "Hub"), {
      verb: "cool",
      part: "Hub",
      low: 0,
      high: 10,
    });
  }
  const furnishing = { shape, has: (theme: string) => themes.has(theme as Theme), parts, rings, acts, later, wrong };
  furnishMore(furnishing);
  const performed = has("perform") ? performedIn(shape, has("energy"), has("planted")) : [];
  if (has("perform")) {
    parts.push(
      part("Bracket", { driven: driven() }),
      part("Guard", { encloses: ["Bracket"], needs: ["Bracket"] }),
      part("Nut", { count: 2, secures: ["Guard"] }),
    );
    const perform = performed.map(({ name }): SimAct => ({ verb: "perform", procedure: name }));
    acts.push([...inAndOut("Bracket", "Guard", "Nut[all]"), ...grips("Nut[all]"), ...perform, ...perform]);
    for (const one of perform) {
      later(act("install", "Bracket"), one);
      wrong(one, one);
      wrong(one, needs({ part: "Bracket", state: "installed" }));
      if (has("fits"))
        wrong({ verb: "heat", part: "Gear", low: 100, high: 110 }, one, needs({ part: "Gear", least: 100 }));
      wrong(act("install", "Bracket"), one, act("clean", "Bracket"), needs({ part: "Guard", state: "secured" }));
      wrong(act("install", "Bracket"), act("install", "Guard"), one, act("remove", "Guard"));
      wrong(one, needs({ fact: "Signed" }), needs({ part: "Valve", own: "open" }));
    }
  }
  const energies =
    has("energy") || has("reach") || has("glue")
      ? [
          { name: "Supply", dead: false },
          { name: "Steam", dead: shape.below(2) === 0 },
        ]
      : [];
  return {
    shop: { parts, rings, fits, energies, facts: ["Signed"], options: OPTIONS },
    acts,
    customs,
    mistakes,
    performed,
  };
}
