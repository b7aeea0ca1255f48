// The shops of the random procedures: some parts that every shop has, and more for each theme that is drawn, each with the
// actions that can be done there. Knows nothing of the checker.
import type { Picker } from "./picker.ts";
import {
  type Direction,
  instances,
  type PartAct,
  PLAIN_PART,
  type SimAct,
  type SimPart,
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
] as const;

export type Theme = (typeof THEMES)[number];

export interface Scene {
  readonly shop: SimShop;
  /** One list for each theme, and one for the parts that every shop has. */
  readonly acts: readonly (readonly SimAct[])[];
  /** What is usually done one after the other. */
  readonly customs: readonly (readonly SimAct[])[];
}

const OPTIONS = [
  { name: "Extent", values: ["Full", "Part", "None"] },
  { name: "Kept", values: ["yes", "no"] },
];

const part = (name: string, says: Partial<SimPart> = {}): SimPart => ({ ...PLAIN_PART, name, ...says });
const act = (verb: PartAct["verb"], of: string, more: Partial<PartAct> = {}): SimAct => ({ verb, part: of, ...more });
const inAndOut = (...names: readonly string[]): SimAct[] =>
  names.flatMap((name) => [act("install", name), act("remove", name)]);
const grips = (...names: readonly string[]): SimAct[] =>
  names.flatMap((name) => [act("tighten", name), act("loosen", name)]);

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
        heavy: has("heavy") && name === "Cover",
      });
    }),
    part("ScrewA", { secures: ["Cover"] }),
    part("ScrewB", { secures: ["Cover"], singleUse: has("single use") && shape.below(4) > 0 }),
    part("Pin", { temporary: true }),
    part("Valve", { states: ["shut", "open"] }),
  ];
  const rings: SimShop["rings"][number][] = [];
  const fits: SimShop["fits"][number][] = [];
  const customs: SimAct[][] = [];
  const acts: SimAct[][] = [[...inAndOut(...plain, "ScrewA", "ScrewB", "Pin"), ...grips("ScrewA", "ScrewB")]];
  const later = (...list: readonly SimAct[]): number => customs.push([...list]);
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
    parts.push(part("Plate"), part("Bolt", { count: 3, secures: ["Plate"], heavy: false }));
    const bolts = ["Bolt[1]", "Bolt[2]", "Bolt[3]"];
    acts.push([...inAndOut("Plate", ...bolts, "Bolt[all]"), ...grips(...bolts, "Bolt[all]", "Bolt[all]")]);
  }
  if (has("locks")) {
    parts.push(part("Tab", { locks: [shape.of(["ScrewA", "ScrewA", "Hub"])] }), part("Wire", { locks: ["ScrewB"] }));
    acts.push([...inAndOut("Tab", "Wire"), ...grips("ScrewA", "ScrewB")]);
    later(act("remove", "Tab"), act("loosen", "ScrewA"), act("tighten", "ScrewA"), act("install", "Tab"));
    later(act("install", "ScrewB"), act("tighten", "ScrewB"), act("install", "Wire"));
  }
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
  if (has("heavy")) {
    const alone = shape.below(3) === 0;
    parts.push(part("Block", { heavy: true }), part("Stud", { count: alone ? 1 : 2, secures: ["Block"] }));
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
    acts.push([
      ...energies,
      ...inAndOut("Motor", "Hood", "Latch"),
      ...grips("Latch"),
      act("clean", "Motor"),
      act("fill", "Motor"),
    ]);
    const only = (verb: "isolate" | "prove" | "restore"): SimAct => ({ verb, energy: "Supply" });
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
  const energies = has("energy")
    ? [
        { name: "Supply", dead: false },
        { name: "Steam", dead: shape.below(2) === 0 },
      ]
    : [];
  return { shop: { parts, rings, fits, energies, facts: ["Signed"], options: OPTIONS }, acts, customs };
}
