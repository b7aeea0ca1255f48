// Themes for the drills, each with parts of its own; and what is planted beside the themes of `themes.ts`, where one mistake shows
// one effect. Knows nothing of the checker.
import type { Picker } from "./picker.ts";
import { act, done, grips, inAndOut, look, needs, part, type Sequence, takes } from "./sequences.ts";
import type { SimAct, SimCondition, SimLine, SimPart, SimShop } from "./shop.ts";

/** `planted`: more of what `themes.ts` has begun. */
export const MORE_THEMES = ["partners", "reach", "touch", "glue", "planted"] as const;

/** A shop that is being furnished. */
export interface Furnishing {
  readonly shape: Picker;
  readonly has: (theme: string) => boolean;
  readonly parts: SimPart[];
  readonly rings: SimShop["rings"][number][];
  readonly acts: SimAct[][];
  readonly later: (...list: Sequence) => number;
  readonly wrong: (...list: Sequence) => number;
}

const isSo = (name: string, state: "clean" | "lubricated" | "aligned" | "installed" | "removed"): readonly SimLine[] =>
  needs({ part: name, state });
const given = (condition: SimCondition): readonly SimLine[] => [look, { kind: "gives", condition }];
const wait = (minutes: number): SimAct => ({ verb: "wait", minutes });

export function furnishMore(shop: Furnishing): void {
  if (shop.has("partners")) partners(shop);
  if (shop.has("reach")) reach(shop);
  if (shop.has("touch")) touch(shop);
  if (shop.has("glue")) glue(shop);
  if (shop.has("planted")) plantMore(shop);
}

/** Like-numbered parts in one position, and a ring that none of them belongs in. */
function partners({ parts, rings, acts, later, wrong, shape }: Furnishing): void {
  const numbered = shape.of(["clockwise", "counterclockwise"] as const);
  for (const name of ["Bore", "Dial"]) rings.push({ name, count: 3, numbered, first: 12, fill: null });
  const inBore = { count: 3, seats: { ring: "Bore", byNumber: true } };
  parts.push(
    part("Insert", inBore),
    part("Shim", { ...inBore, needs: ["Insert[same]"] }),
    part("Lid", { ...inBore, encloses: ["Insert[same]"] }),
    part("Dummy", inBore),
    part("Rod", { seats: { ring: "Bore", byNumber: false } }),
  );
  const put = (name: string): SimAct => act("install", name);
  acts.push([
    ...inAndOut("Insert[1]", "Insert[2]", "Shim[1]", "Shim[2]", "Lid[1]", "Lid[2]", "Dummy[2]"),
    act("install", "Rod", { place: "Bore[2]" }),
    act("remove", "Rod"),
  ]);
  later(put("Insert[1]"), put("Shim[1]"), put("Lid[1]"));
  later(put("Insert[2]"), put("Lid[2]"), act("remove", "Lid[2]"), put("Shim[2]"));
  later(put("Insert[1]"), put("Lid[1]"), put("Insert[2]"), act("clean", "Insert[2]"));
  wrong(put("Insert[1]"), put("Shim[2]"));
  wrong(put("Insert[1]"), put("Lid[1]"), act("clean", "Insert[1]"));
  wrong(put("Insert[1]"), put("Dummy[1]"));
  wrong(put("Shim[1]"), put("Lid[1]"));
  wrong(put("Lid[1]"), act("install", "Rod", { place: "Bore[1]" }));
  wrong(act("install", "Rod", { place: "Dial[1]" }));
  wrong(act("install", "Insert[1]", { place: "Dial[1]" }), act("install", "Insert[1]", { place: "Bore[1]" }));
}

/** A fastener that is closed over and driven. */
function reach({ parts, acts, later, wrong }: Furnishing): void {
  parts.push(
    part("Base"),
    part("Rivet", { secures: ["Base"], driven: ["Supply"] }),
    part("Shutter", { encloses: ["Rivet", "Base"] }),
    part("Fence", { driven: ["Supply"] }),
    // Nothing that is done names it.
    part("Grille", { encloses: ["Fence"], secures: ["Fence"] }),
  );
  const off: SimAct = { verb: "isolate", energy: "Supply" };
  const dead: SimAct = { verb: "prove", energy: "Supply" };
  const on: SimAct = { verb: "restore", energy: "Supply" };
  const align = act("align", "Base", { with: "Fence" });
  acts.push([...inAndOut("Base", "Rivet", "Shutter", "Fence"), ...grips("Rivet"), off, dead, on, align]);
  const rivet = [act("install", "Base"), act("install", "Rivet"), act("tighten", "Rivet")];
  const shut = act("install", "Shutter");
  later(off, dead, ...rivet, shut, on);
  later(off, dead, act("install", "Fence"), act("install", "Base"), align, on);
  later(off, dead, act("install", "Fence"), on);
  later(off, dead, ...rivet, shut, act("remove", "Shutter"), act("loosen", "Rivet"));
  wrong(off, dead, ...rivet, shut, act("loosen", "Rivet"), act("tighten", "Rivet"));
  wrong(off, dead, act("install", "Rivet"), on, act("tighten", "Rivet"));
  wrong(off, dead, ...rivet, on, act("loosen", "Rivet"));
  wrong(off, dead, act("install", "Base"), shut, align);
  wrong(act("install", "Base"), off, dead, act("install", "Fence"), on, align);
  wrong(off, act("install", "Fence"), act("install", "Base"), align, align);
  // Work on what is only taken as in switches nothing off.
  wrong(
    on,
    needs({ part: "Fence", state: "installed" }),
    act("clean", "Fence"),
    needs({ energy: "Supply", state: "live" }),
    act("install", "Fence"),
  );
}

/** Clean, lubricated, aligned. */
function touch({ parts, acts, later, wrong }: Furnishing): void {
  parts.push(part("Bed"), part("Table"));
  const [clean, oil, coat] = [act("clean", "Bed"), act("lubricate", "Bed"), act("apply", "Bed")];
  const align = act("align", "Table", { with: "Bed" });
  acts.push([clean, oil, coat, align, ...inAndOut("Bed", "Table")]);
  later(clean, isSo("Bed", "clean"), oil, isSo("Bed", "lubricated"));
  later(clean, coat, isSo("Bed", "clean"));
  later(align, isSo("Bed", "aligned"), isSo("Table", "aligned"));
  later(given({ part: "Bed", state: "clean" }), isSo("Bed", "clean"));
  wrong(oil, isSo("Bed", "clean"), isSo("Bed", "clean"), isSo("Bed", "lubricated"));
  wrong(clean, isSo("Bed", "lubricated"), clean, isSo("Bed", "lubricated"));
  wrong(isSo("Bed", "aligned"), isSo("Bed", "aligned"), isSo("Table", "aligned"));
  wrong(isSo("Bed", "clean"), isSo("Bed", "lubricated"));
  wrong(isSo("Bed", "clean"), clean, isSo("Bed", "lubricated"));
}

/** A consumable that says itself how long it cures. */
function glue({ parts, acts, later, wrong }: Furnishing): void {
  parts.push(
    part("Anvil"),
    part("Pan", { driven: ["Supply"] }),
    part("Rim", { encloses: ["Pan"] }),
    part("Dowel", { secures: ["Pan"] }),
  );
  const on: SimAct = { verb: "restore", energy: "Supply" };
  const [coat, said] = [act("apply", "Pan", { glue: true }), act("apply", "Pan", { glue: true, cure: 20 })];
  const [fill, lift, turnIn] = [act("fill", "Pan"), act("lift", "Pan"), act("tighten", "Dowel")];
  acts.push([coat, said, fill, lift, turnIn, wait(5), wait(10), ...inAndOut("Pan", "Rim", "Dowel"), on]);
  later(coat, lift, wait(10), fill);
  later(said, wait(10), wait(10), lift);
  wrong(act("install", "Pan"), act("install", "Dowel"), coat, turnIn, fill);
  wrong(act("install", "Dowel"), act("install", "Pan"), said, turnIn, turnIn);
  wrong(said, lift, lift, fill);
  wrong(said, coat, lift, fill);
  wrong(coat, said, wait(10), lift);
  wrong(coat, wait(5), act("install", "Rim"), fill);
  wrong(coat, on, fill);
  wrong(coat, act("press", "Pan", { over: "Anvil" }));
}

/** Who stands in a place, known or only taken as so. */
function seats(wrong: Furnishing["wrong"]): void {
  const [one, other] = ["Peg[1]", "Peg[2]"].map((name) => act("install", name, { place: "Circle[2]" }));
  const knob = (state: "installed" | "removed"): SimCondition => ({ part: "Knob[2]", state });
  if (one === undefined || other === undefined) return;
  wrong(given(knob("installed")), one);
  wrong(needs(knob("installed")), one, act("remove", "Peg[1]"), other);
  wrong(one, needs(knob("installed")), other);
  wrong(act("install", "Knob[2]"), one, needs(knob("removed")), other);
}

/** Of themes that `themes.ts` furnishes: one mistake for one effect. */
function plantMore({ has, parts, rings, wrong, later, acts }: Furnishing): void {
  const put = (name: string): SimAct => act("install", name);
  const [out, tight, loose] = [
    (name: string) => act("remove", name),
    (name: string) => act("tighten", name),
    (name: string) => act("loosen", name),
  ];
  wrong(put("Hub"), put("Pin"), put("Cover"), out("Cover"), out("Pin"));
  wrong(put("Hub"), put("Cover"), put("Plug"), out("Cover"), out("Hub"));
  wrong(put("Hub"), put("Cover"), needs({ part: "ScrewA", state: "loose" }), out("ScrewA"), out("Cover"));
  for (const loosely of [given, needs])
    wrong(
      given({ part: "ScrewA", state: "installed" }),
      loosely({ part: "ScrewA", state: "loose" }),
      act("loosen", "ScrewA"),
    );
  if (has("single use"))
    wrong(put("ScrewB"), out("ScrewB"), given({ part: "ScrewB", state: "installed" }), tight("ScrewB"));
  // The second comes after the first only as written.
  wrong([look], [look, { kind: "after", step: "Drill0" }]);
  if (has("locks")) {
    wrong(put("Hub"), put("Cover"), put("ScrewB"), tight("ScrewB"), tight("ScrewB"));
    wrong(put("Hub"), put("Cover"), put("ScrewB"), tight("ScrewB"), put("Wire"), out("Wire"), tight("ScrewB"));
  }
  if (has("heavy")) {
    parts.push(part("Tie", { secures: ["Hub"] }));
    acts.push([...inAndOut("Tie"), ...grips("Tie")]);
    const [up, down] = [act("lift", "Block"), act("set down", "Block")];
    later(put("Hub"), put("Tie"), tight("Tie"), loose("Tie"), out("Tie"));
    wrong(up, put("Block"), act("lift", "Cover"), act("lift", "Cover"));
    wrong(up, put("Block"), put("Stud[1]"), down, down);
    wrong(put("Block"), put("Stud[1]"), tight("Stud[1]"), loose("Stud[1]"), out("Stud[1]"));
    wrong(put("Block"), put("Stud[1]"), out("Stud[1]"), down);
    wrong([put("Block"), put("Stud[1]"), tight("Stud[1]")].map(done), loose("Stud[1]"), out("Stud[1]"));
    wrong(put("Block"), put("Stud[1]"), tight("Stud[1]"), act("loosen", "Stud[1]", { how: "by 1/4 turn" }));
    wrong(up, down, put("Block"), put("Stud[1]"), tight("Stud[1]"), loose("Stud[1]"));
    parts.push(part("Engine", { mass: 60, stands: true }), part("Foot", { count: 2, secures: ["Engine"] }));
    const [lift, feet] = [act("lift", "Engine"), ["Foot[1]", "Foot[2]"].flatMap((name) => [put(name), tight(name)])];
    acts.push([lift, act("set down", "Engine"), ...inAndOut("Engine", "Foot[all]"), ...grips("Foot[all]")]);
    later(lift, put("Engine"), act("set down", "Engine"), ...feet);
    later(put("Engine"), ...feet, loose("Foot[all]"), out("Foot[all]"));
    later(lift, put("Engine"), up, put("Block"), put("Stud[1]"));
    wrong(up, put("Block"), lift, down);
    const last = `Stud[${parts.find(({ name }) => name === "Stud")?.count}]`;
    wrong(up, put("Stud[1]"), put(last), out(last), put("Block"), down);
    wrong(put("Stud[1]"), tight("Stud[1]"), put("Block"), loose("Stud[1]"), out("Stud[1]"), down);
  }
  if (has("energy")) {
    const on: SimAct = { verb: "restore", energy: "Supply" };
    const off: readonly SimAct[] = [
      { verb: "isolate", energy: "Supply" },
      { verb: "prove", energy: "Supply" },
    ];
    wrong(...off, put("Motor"), put("Hood"), out("Hood"), on);
    wrong(...off, put("Motor"), put("Hood"), put("Latch"), on);
    wrong(...off, put("Motor"), put("Hood"), put("Latch"), out("Latch"), on);
    wrong(...off, put("Motor"), put("Hood"), put("Latch"), tight("Latch"), put("Pin"), on, out("Pin"));
    wrong(put("Motor"), put("Hood"), put("Latch"), on);
  }
  if (has("fits")) {
    const heat = (name: string): SimAct => ({ verb: "heat", part: name, low: 100, high: 110 });
    const isCool = needs({ part: "Shaft", most: 40 });
    wrong(heat("Gear"), needs({ part: "Gear", least: 105 }));
    wrong(put("Shaft"), put("Bush"), heat("Bush"), isCool);
    wrong(out("Shaft"), act("install", "Bush", { over: "Shaft" }), heat("Bush"), isCool);
    wrong(out("Shaft"), act("install", "Bush", { over: "Shaft" }), heat("Bush"), put("Shaft"), isCool);
  }
  if (has("stacks")) {
    parts.push(part("Tray"), part("Cup"));
    const [disc, cup] = [act("install", "Disc", { over: "Rotor" }), act("install", "Cup", { over: "Tray" })];
    acts.push([cup, ...inAndOut("Tray", "Cup")]);
    const move = [disc, out("Disc"), act("install", "Disc", { over: "Tray" })];
    wrong(...move, put("Rotor"), isSo("Disc", "installed"));
    // Where the tray is is only taken as so; that the cup is on it is known.
    wrong(put("Tray"), cup, isSo("Tray", "removed"), isSo("Cup", "installed"));
    wrong(put("Tray"), cup, isSo("Tray", "removed"), cup);
    wrong(put("Tray"), isSo("Tray", "removed"), cup, isSo("Cup", "installed"));
    wrong(cup, disc, put("Rotor"), isSo("Cup", "installed"), isSo("Disc", "installed"));
    wrong(disc, cup, put("Tray"), put("Rotor"), out("Tray"), isSo("Disc", "installed"), isSo("Cup", "installed"));
  }
  if (has("wasted")) later(act("lubricate", "Hub"), [{ kind: "check", fails: [], jump: null }], act("clean", "Hub"));
  if (has("cure")) later(act("apply", "Hub", { cure: 10 }), [look, takes(10)], act("fill", "Hub"));
  if (has("places")) seats(wrong);
  if (has("turning"))
    for (const at of [1, 2]) {
      const turn: SimAct = { verb: "turn", place: `Circle[${at}]`, hour: 3 };
      wrong(turn, needs({ place: `Circle[${at}]`, hour: 3 }), needs({ place: `Circle[${at + 1}]`, hour: 6 }));
    }
  const ring = rings.find(({ name }) => name === "Seat");
  if (ring === undefined) return;
  const { count, fill, numbered } = ring;
  parts.push(part("Spacer", { count, temporary: true, seats: { ring: "Seat", byNumber: true } }));
  const blades = Array.from({ length: count }, (_, at) => `Blade[${at + 1}]`);
  const [a = "", b = "", c = "", d = ""] = fill === numbered ? blades : blades.reverse();
  const spacer = (blade: string): SimAct => put(blade.replace("Blade", "Spacer"));
  wrong(put(b), put(a));
  wrong(put(a), put(c), put(b), put(d));
  wrong(put(b), put(a), put(d), put(c));
  wrong(put(a), put(c));
  wrong(put(a), put(b), out(a), put(a));
  wrong(put(a), put(b), put(c), out(c), out(b), put(c));
  later(put(a), put(b), put(c), out(b), put(b));
  later(given({ part: b, state: "installed" }), put(a), put(c));
  later(given({ part: b, state: "installed" }), put(a), put(c), out(b), put(b));
  wrong(put(a), given({ part: b, state: "removed" }), put(c), put(b));
  wrong(put(a), put(b), given({ part: b, state: "removed" }), put(c));
  later(spacer(b), spacer(a));
}
