// A procedure as records: its head, its steps and their lines, the numbers a reader sees, the places findings stand at.
import { describe, expect, test } from "vitest";
import type { Action, Item, Line, Step } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { modelOf, problemsIn, procedureOf } from "./model-of.ts";

const SHOP = `source Manual revision "9"
role Fitter
role Inspector
ring Circle { count 8 }
part Cover { states open, shut }
part Bearing
part Shaft
part Screw[1..8] { seats in Circle by number }
tool Wrench
tool Crowfoot
consumable Grease
energy Supply
fact Signed
value Torque = 45 ± 2 N·m
`;

function stepOf(lines: string): Step {
  const [item] = procedureOf(`${SHOP}procedure P { step Own { ${lines} } }`).items;
  if (item?.kind !== "step") throw new Error("no step");
  return item;
}

describe("the head", () => {
  const procedure = procedureOf(`${SHOP}term "a" not "b"
procedure P "Close it" {
  document "WI-1" revision "D" dated 2026-05-04
  applies to "P-220" serial 2200 .. 2318
  applies to "P-221"
  based on Manual revision "9"
  ambient 15 .. 25 °C
  crew 2
  begin with Cover is open, Signed
  begin with Supply is isolated
  finish with Cover is shut and not Signed, no temporary parts
  per Manual "1"
  allow order.left-behind because "why" by "who"
  warning burn, eye "hot" avoid "wait" wear "gloves", "glasses"
  note "look"
  step "x"
}`);
  test("the document, what it applies to and rests on", () => {
    expect(procedure).toMatchObject({ id: "main.sprag#P", title: "Close it", path: "main.sprag", crew: 2 });
    expect(procedure.document).toMatchObject({ number: "WI-1", revision: "D", date: "2026-05-04" });
    expect(procedure.applies).toMatchObject([
      { model: "P-220", firstSerial: 2200, lastSerial: 2318 },
      { model: "P-221", firstSerial: null, lastSerial: null },
    ]);
    expect(procedure.basedOn).toMatchObject([{ source: { name: "Manual" }, revision: "9" }]);
    expect(procedure.ambient?.quantity.kind).toBe("temperature");
  });
  test("begin with adds up; finish with is there", () => {
    expect(procedure.begin.map(({ form }) => form)).toEqual(["state", "fact", "state"]);
    expect(procedure.finish.map(({ form }) => form)).toEqual(["all", "no temporary parts"]);
    expect(procedure.hasFinish).toBe(true);
    expect(procedureOf('procedure P { step "x" }').hasFinish).toBe(false);
  });
  test("statements, notes, sources and allows", () => {
    expect(procedure.statements).toMatchObject([
      {
        signal: "warning",
        hazards: [{ name: "burn" }, { name: "eye" }],
        text: "hot",
        avoid: "wait",
        wear: ["gloves", "glasses"],
      },
    ]);
    expect(procedure.notes.map(({ text }) => text)).toEqual(["look"]);
    expect(procedure.cites).toMatchObject([{ source: { name: "Manual" }, section: "1" }]);
    expect(procedure.allows).toMatchObject([
      { code: "order.left-behind", reason: "why", by: "who", scope: procedure.extent },
    ]);
    expect(procedure.items.map(({ kind }) => kind)).toEqual(["statement", "note", "step"]);
  });
  test("what is in reach, innermost first, and the terms that hold", () => {
    const inner = procedureOf("part A\nprocedure P { part B step install A, B }");
    expect(inner.declarations.map(({ name }) => name)).toEqual(["B", "A"]);
    expect(procedure.terms).toMatchObject([{ approved: "a" }]);
  });
  test.each([
    ["document", 'document "a" document "b"'],
    ["ambient", "ambient 20 °C ambient 21 °C"],
    ["crew", "crew 1 crew 2"],
  ])("%s twice is told of", (word, lines) => {
    const [first] = problemsIn(`procedure P { ${lines} step "x" }`);
    expect(first).toContain(`a second \`${word}\` belongs only once here`);
  });
  test("half a man is no crew", () => {
    expect(problemsIn('procedure P { crew 1.5 step "x" }')).toEqual(["whole number «1.5» of 1..10000"]);
  });
});

describe("a step", () => {
  test("gathers what holds for the whole of it", () => {
    const step = stepOf(`needs Cover is open, Signed
      install Bearing
      gives Cover is shut
      record "gap" at most 1 mm with Wrench
      sign Fitter, Inspector  hold for Inspector  by Fitter  critical  takes 6 min
      within 90 s after Own  after Own, Own  before Own
      raises burn, noise  per Manual "2"  why "since"  figure "f.svg" "caption"
      allow order.enclosed because "r"`);
    expect(step.needs.map(({ form }) => form)).toEqual(["state", "fact"]);
    expect(step.gives).toHaveLength(1);
    expect(step.records).toMatchObject([{ label: "gap", tools: [{ name: "Wrench" }] }]);
    expect(step.signs.map(({ name }) => name)).toEqual(["Fitter", "Inspector"]);
    expect([step.hold?.name, step.by?.name, step.critical]).toEqual(["Inspector", "Fitter", true]);
    expect(step.takes?.quantity.kind).toBe("time");
    expect(step.within).toMatchObject({ step: { name: "Own", target: step.span } });
    expect([step.after.length, step.before.length]).toEqual([2, 1]);
    expect(step.raises.map(({ name }) => name)).toEqual(["burn", "noise"]);
    expect(step.cites).toMatchObject([{ section: "2" }]);
    expect([step.whys, step.figures[0]?.caption]).toEqual([["since"], "caption"]);
    expect(step.allows).toMatchObject([{ code: "order.enclosed", scope: step.span }]);
    expect(step.lines.map(({ kind }) => kind)).toEqual(["action"]);
  });
  test("takes lines of its inner blocks for its own, but not what it needs and gives", () => {
    const step = stepOf("when Signed { sign Fitter raises burn needs Cover is open }");
    expect([step.signs.length, step.raises.length, step.needs.length]).toEqual([1, 1, 0]);
    expect(problemsIn(`${SHOP}procedure P { step { when Signed { needs Cover is open } } }`)).toContain(
      "misplaced «needs Cover is open»: `needs` belongs among the step's own lines, outside inner blocks",
    );
  });
  test.each([
    ["takes 1 min takes 2 min", "takes"],
    ["hold for Fitter hold for Inspector", "hold for"],
    ["by Fitter by Inspector", "by"],
  ])("says once: %s", (lines, word) => {
    const told = problemsIn(`${SHOP}procedure P { step Own { ${lines} } }`).filter((problem) =>
      problem.startsWith("misplaced"),
    );
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(`a second \`${word}\``);
  });
  test("checks: with a way for failing, and without", () => {
    const step = stepOf(
      'check "a" with Wrench expect at most 1 mm record check "b" if it fails { remove Bearing return to Own } check "c" if not { }',
    );
    const checks = step.lines.filter((line) => line.kind === "check");
    expect(checks.map(({ fails }) => fails?.map(({ kind }) => kind) ?? null)).toEqual([null, ["action", "return"], []]);
    expect(checks[0]).toMatchObject({
      record: true,
      tools: [{ tool: { name: "Wrench" } }],
      expect: { quantity: { form: "at most" } },
    });
  });
  test("words of several lines lose their common indentation", () => {
    const [step] = procedureOf('procedure P { step """\n    One.\n      Two.\n    """ }').items;
    expect(step).toMatchObject({ words: "One.\n  Two.", name: null });
  });
});

describe("actions", () => {
  const actionOf = (line: string): Action => {
    const [action] = stepOf(line).lines;
    if (action?.kind !== "action") throw new Error("no action");
    return action;
  };
  test.each([
    [
      "install new Bearing over Shaft with Wrench",
      { verb: "install", fresh: true, relation: "over", on: { name: "Shaft" }, tools: [{ tool: { name: "Wrench" } }] },
    ],
    [
      "install Screw[1] in Circle[1] at 12 o'clock",
      { relation: "in", on: { name: "Circle" }, clock: { quantity: { kind: "clock position" } } },
    ],
    ["press Bearing in Cover", { verb: "press", relation: "in", on: { name: "Cover" } }],
    ["discard Bearing", { verb: "discard" }],
    [
      "tighten Screw[all] in cross pattern to 30 %, 100 % of Torque then 90° to seat with Wrench + Crowfoot",
      { verb: "tighten", pattern: "cross", toSeat: true, byHand: false, tools: [{}, { tool: { name: "Crowfoot" } }] },
    ],
    [
      "tighten Screw[all] in order by hand",
      { pattern: "order", byHand: true, stages: [], stagesSpan: null, angle: null },
    ],
    ["loosen Screw[1] by 1/4 turn", { verb: "loosen", back: { quantity: { kind: "angle" } }, reverse: false }],
    ["loosen Screw[all] in reverse order", { back: null, reverse: true }],
    ["heat Bearing to 100 .. 112 °C", { verb: "heat", to: { quantity: { form: "range" } }, by: null }],
    ["cool Bearing by 20 K", { verb: "cool", to: null, by: { quantity: { kind: "temperature difference" } } }],
    ["wait 5 min", { verb: "wait", time: { quantity: { kind: "time" } }, until: null }],
    ["wait until Bearing is at most 40 °C", { verb: "wait", time: null, until: { form: "bound" } }],
    ["clean Bearing", { verb: "clean", with: null }],
    ["lubricate Bearing with Grease", { verb: "lubricate", with: { name: "Grease" } }],
    [
      "apply 5 g of Grease to Bearing cure 10 min",
      {
        verb: "apply",
        dose: { consumable: { name: "Grease" }, amount: { quantity: { kind: "mass" } } },
        cure: { quantity: { kind: "time" } },
      },
    ],
    ["drain Cover into Wrench", { verb: "drain", into: { name: "Wrench" } }],
    ["fill Cover with 0.5 L of Grease", { verb: "fill", dose: { amount: { quantity: { kind: "volume" } } } }],
    ["bleed Cover", { verb: "bleed", into: null }],
    ["turn Circle[3] to 6 o'clock", { verb: "turn", put: null, clock: { quantity: { kind: "clock position" } } }],
    ["turn Circle to put Circle[3] at 6 o'clock", { put: { name: "Circle" } }],
    ['align Shaft with Bearing mark "m"', { verb: "align", other: { name: "Bearing" }, mark: "m" }],
    ["lift Cover by hand", { verb: "lift", byHand: true }],
    ["set down Cover", { verb: "set down", byHand: false }],
    ["prove Supply dead with Wrench", { verb: "prove", objects: [{ name: "Supply" }] }],
    ['inspect Cover "for cracks"', { verb: "inspect", words: "for cracks" }],
    [
      'measure Gap "the gap" with Wrench expect 1 mm record',
      {
        verb: "measure",
        reading: { name: "Gap" },
        words: "the gap",
        record: true,
        expect: { quantity: { kind: "length" } },
      },
    ],
    ['measure "the gap"', { reading: null, expect: null }],
    ['do "Turn it." with Wrench', { verb: "do", words: "Turn it." }],
    ["perform P", { verb: "perform", procedure: { id: "main.sprag#P", name: "P" } }],
  ])("%s", (line, record) => {
    expect(actionOf(line)).toMatchObject(record);
  });
  test("choosing by a reading", () => {
    const [, action] = stepOf(
      'measure Gap "g" expect 0 .. 1 mm choose Bearing by Gap { 0 .. 0.5 mm: 0.5 mm  0.5 .. 1 mm: Shaft }',
    ).lines;
    expect(action).toMatchObject({
      verb: "choose",
      subject: { name: "Bearing" },
      reading: { name: "Gap" },
      rows: [{ result: { quantity: { kind: "length" } } }, { result: { name: "Shaft" } }],
    });
  });
});

describe("places", () => {
  const text = `${SHOP}procedure P {
  task Closing "Close" {
    step Torque "Tighten." { tighten Screw[1..4], Screw[5] to 30 %, 70 % of Torque with Wrench }
    step "Own words." { install new Bearing over Shaft with Wrench }
    step turn Circle to put Circle[1] at 6 o'clock
    step do "Look." with Wrench
    step { measure Gap "gap" with Wrench }
    step wait until Bearing is at most 40 °C
    repeat n from 1 to 2 by 1 { step install Screw[n] }
    repeat n in 1, 2 { step remove Screw[n] }
    when Signed { step install Cover } otherwise when Supply is live { step "x" } otherwise { step "y" }
  }
}`;
  const slice = (span: Span | null): string => (span === null ? "-" : text.slice(span.start, span.end));
  const items = ((procedureOf(text).items[0] ?? { items: [] }) as { items: readonly Item[] }).items;
  const lineOf = (at: number): Line => (items[at] as Step).lines[0] as Line;

  test("an action stands from its verb to its last object", () => {
    const places = [0, 1, 2, 3, 4, 5].map((at) => slice((lineOf(at) as Action).place));
    expect(places).toEqual([
      "tighten Screw[1..4], Screw[5]",
      "install new Bearing",
      "turn Circle",
      'do "Look."',
      'measure Gap "gap"',
      "wait until Bearing is at most 40 °C",
    ]);
  });
  test("stages, heads, repeats and branches", () => {
    const tighten = lineOf(0);
    expect(slice("stagesSpan" in tighten ? tighten.stagesSpan : null)).toBe("30 %, 70 % of Torque");
    expect([0, 1, 2].map((at) => slice((items[at] as Step).headSpan))).toEqual([
      "step Torque",
      'step "Own words."',
      "step",
    ]);
    expect([6, 7].map((at) => slice(items[at]?.span ?? null))).toEqual([
      "repeat n from 1 to 2 by 1",
      "repeat n in 1, 2",
    ]);
    const branch = items[8];
    expect(slice(branch?.span ?? null)).toBe("when Signed");
    expect(slice(branch?.kind === "when" ? branch.otherwiseSpan : null)).toBe("otherwise");
  });
});

describe("numbers", () => {
  /** Steps and tasks as `number kind`. */
  const numbers = (items: readonly Item[]): readonly string[] =>
    items.flatMap((item): readonly string[] => {
      if (item.kind === "task") return [`${item.number} task`, ...numbers(item.items)];
      if (item.kind === "step" || item.kind === "perform") return [`${item.number} ${item.kind}`];
      if (item.kind === "repeat" || item.kind === "any order") return numbers(item.items);
      if (item.kind === "when")
        return [...item.arms.flatMap((arm) => numbers(arm.items)), ...numbers(item.otherwise ?? [])];
      return [];
    });
  test("tasks and steps are counted together, blocks open no level", () => {
    const text = `procedure P {
      step "a"
      task T { step "b" note "n" step "c" task U { step "d" } step "e" }
      repeat n from 1 to 9 { step "f" task V { step "g" } }
      when Signed { step "h" } otherwise { step "i" }
      in any order { step "j" step "k" }
      perform P
      step "l"
    }`;
    expect(numbers(procedureOf(`${SHOP}${text}`).items)).toEqual([
      ...[
        "1 step",
        "2 task",
        "2.1 step",
        "2.2 step",
        "2.3 task",
        "2.3.1 step",
        "2.4 step",
        "3 step",
        "4 task",
        "4.1 step",
      ],
      ...["5 step", "6 step", "7 step", "8 step", "9 perform", "10 step"],
    ]);
  });
});

test("jumps: back, on, and stop", () => {
  const [step] = procedureOf(
    'procedure P { step A { check "x" if it fails { go to B stop "call" } return to A } task B { step "y" } }',
  ).items;
  const lines = step?.kind === "step" ? step.lines : [];
  const fails = lines[0]?.kind === "check" ? lines[0].fails : null;
  expect(fails).toMatchObject([
    { kind: "go", step: { name: "B" } },
    { kind: "stop", text: "call" },
  ]);
  expect(lines[1]).toMatchObject({ kind: "return", step: { name: "A", target: step?.span } });
});

test("an allow in a block holds for the block", () => {
  const text = 'procedure P { repeat n from 1 to 2 { allow order.enclosed because "r" step "x" } }';
  const [allow] = procedureOf(text).allows;
  expect(text.slice(allow?.scope.start, allow?.scope.end)).toBe(text.slice(14, -2));
});

test("a file says what it uses, and its procedures in order", () => {
  const model = modelOf('procedure A { step "x" }\nprocedure B { step "y" }');
  expect([model.path, model.uses, model.procedures.map(({ name }) => name), model.damaged]).toEqual([
    "main.sprag",
    [],
    ["A", "B"],
    false,
  ]);
});
