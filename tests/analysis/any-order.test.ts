// Work in any order: it says what all its orders written out say, each finding with an order that has it, and costs no more
// than it must.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { AFTER, BEFORE, block, CHILDREN, CHOICES, keyOf, PARTS, type Told, told } from "./any-order-told.ts";
import { onPaper } from "./run-on-paper.ts";

/** What is found in the block, as `order.enclosed: install Bearing [2 1]`, the order in brackets where it is not that of the text. */
function found(children: readonly string[], before = "", after = ""): readonly string[] {
  const [own = []] = told([`${before}\n${block(children)}\n${after}`], children);
  return own.map(
    ({ code, words, so, order }) =>
      `${code}: ${words.slice(0, words.lastIndexOf(" in "))}${order === null ? "" : ` [${order.join(" ")}]`}${so.length === CHOICES.length ? "" : ` | ${so.join()}`}`,
  );
}

/* ---- against the orders written out ---- */

const ORDERS = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

/** Every finding with the choices for which one of the lists has it. */
function table(lists: readonly (readonly Told[])[]): readonly string[] {
  const rows = new Map<string, Set<string>>();
  for (const one of lists.flat()) {
    const so = rows.get(keyOf(one)) ?? new Set();
    rows.set(keyOf(one), so);
    for (const choice of one.so) so.add(choice);
  }
  return [...rows].map(([key, so]) => `${key} | ${[...so].sort().join()}`).sort();
}

test("three children say what their six orders say, and each finding shows an order that has it", () => {
  let wrong = 0;
  let shown = 0;
  const RUNS = Number(process.env.N ?? 120);
  const blocks = fc.record({
    children: fc.uniqueArray(fc.constantFrom(...CHILDREN), { minLength: 3, maxLength: 3 }),
    before: fc.constantFrom(...BEFORE),
    after: fc.constantFrom(...AFTER),
  });
  fc.assert(
    fc.property(blocks, ({ children, before, after }) => {
      const bodies = [block(children), ...ORDERS.map((order) => order.map((at) => children[at] ?? "").join("\n"))];
      const [own = [], ...written] = told(
        bodies.map((body) => `${before}\n${body}\n${after}`),
        children,
      );
      const where = bodies[0] ?? "";
      const wanted = table(written);
      if (wanted.length > 0) wrong++;
      expect(table([own]), where).toEqual(wanted);
      for (const one of own) {
        const order = one.order?.map((number) => number - 1) ?? [0, 1, 2];
        if (one.order !== null) shown++;
        const having = ORDERS.filter((_, which) => written[which]?.map(keyOf).includes(keyOf(one)));
        const fits = having.filter((each) => order.every((at, place) => each[place] === at));
        expect(
          fits.length,
          `${keyOf(one)} in order ${order.map((at) => at + 1).join(" ")} of\n${where}`,
        ).toBeGreaterThan(0);
      }
    }),
    { numRuns: RUNS },
  );
  console.info(
    `any order: ${RUNS} blocks compared with their orders, ${wrong} with findings, ${shown} of which only another order shows`,
  );
  expect(wrong).toBeGreaterThan(0.4 * RUNS);
  expect(shown).toBeGreaterThan(0.1 * RUNS);
});

describe("what has to do with each other is tried both ways", () => {
  test("what one leaves and the other needs", () => {
    expect(found(["step install Bearing", "step install Hub", "step install Seal"])).toEqual([]);
    expect(found(["step install Bearing", "step install Cover"])).toEqual(["order.enclosed: install Bearing [2 1]"]);
    expect(found(["step install Cover", "step install Bearing"])).toEqual(["order.enclosed: install Bearing"]);
    expect(found(["step install Hub", "step install Seal", "step install Gear"])).toEqual([
      "order.missing-support: install Gear [3]",
    ]);
  });
  test("what rests on three: neither as written nor the reverse", () => {
    const removes = "when Valve is open { step remove Hub }";
    const asks = 'step { needs Hub is installed  do "Look." }';
    const opens = 'step { do "Open it."  gives Valve is open }';
    const wanted = ["order.unmet-need: Hub is installed [3 1 2]"];
    expect(found([removes, asks, opens], " step install Hub")).toEqual(wanted);
    // Twelve more that look at it, so that there are far too many for all orders of all.
    const more = Array.from(
      { length: 12 },
      (_, at) => `step { needs Valve is shut or Valve is open  do "Look ${at}." }`,
    );
    const shut = ' step install Hub\n step { do "Shut it."  gives Valve is shut }';
    expect(found([removes, asks, opens, ...more], shut)).toEqual(wanted);
  });
  test("where a third decides what one of them does", () => {
    const children = [
      "step remove Sleeve",
      "step heat Sleeve to 100 .. 110 °C with Heater",
      'step { needs Spindle at most 40 °C  do "Take hold of it." }',
    ];
    // Taken off, the sleeve warms nothing.
    expect(found(children, " step install Sleeve on Spindle")).toEqual([
      "order.unmet-need: Spindle at most 40 °C [2 3]",
    ]);
  });
  test("of three, what is asked behind them", () => {
    const children = [
      'step { do "Open it."  gives Valve is open }',
      'when Valve is open { step { do "Shut it."  gives Gate is shut } }',
      'step { do "Open it."  gives Gate is open }',
    ];
    const shut = ' step { do "Shut it."  gives Valve is shut }';
    expect(found(children, shut, 'step { needs Gate is open  do "Look." }')).toEqual([
      "order.unmet-need: Gate is open [1 3 2]",
    ]);
  });
  test("of three, where a jump out leads", () => {
    const children = [
      'when Valve is open { step { do "Shut it."  gives Gate is shut } }',
      'step { do "Open it."  gives Valve is open }',
      'step { check "It fits" if it fails { go to Out } }',
    ];
    const open = ' step { do "Open it."  gives Gate is open }';
    const shut = ' step { do "Shut it."  gives Valve is shut }';
    expect(found(children, `${open}\n${shut}`, `${open}\n step Out { needs Gate is open  do "Look." }`)).toEqual([
      "order.unmet-need: Gate is open [2 1]",
    ]);
  });
  test("what is only taken as met counts where it had to be", () => {
    const ask = 'step { needs Signed  do "Look." }';
    expect(found([ask, ask.replace("Look", "Look again")])).toEqual([
      "order.unmet-need: Signed",
      "order.unmet-need: Signed [2]",
    ]);
    expect(found(["step clean Motor", "step align Motor with Hub"])).toEqual([
      "order.energised: clean Motor",
      "order.energised: align Motor [2]",
    ]);
    expect(found(["perform Asking", 'step { needs Hub is installed  do "Look." }'])).toEqual([
      "order.unmet-need: perform Asking",
      "order.unmet-need: Hub is installed [2]",
    ]);
  });
  test("a jump out sees what the others may have done", () => {
    const leave = 'step { check "It fits" if it fails { go to Out } }';
    const out = 'step install Seal\nstep Out { needs Cover is installed  do "Look." }';
    expect(found(["step install Cover", leave], "", out)).toEqual(["order.unmet-need: Cover is installed"]);
    expect(found([leave, "step install Cover"], "", out)).toEqual(["order.unmet-need: Cover is installed"]);
    // What stands between the block and where it leads is left out.
    expect(
      found(
        [leave, "step install Hub"],
        " step install Cover",
        'step remove Cover\nstep Out { needs Cover is installed  do "Look." }',
      ),
    ).toEqual(["order.unmet-need: Cover is installed"]);
  });
  test("a jump inside a child leaves the others alone", () => {
    const child =
      'task "Fit" { step Fit { install Hub }  step { check "It fits" if it fails { remove Hub  return to Fit } } }';
    expect(found([child, "step install Seal"])).toEqual([]);
    expect(found([child.replace("remove Hub  ", ""), "step install Seal"])).toEqual([
      "order.already-installed: install Hub",
    ]);
  });
  test("a stop in a child ends the path whatever was done before", () => {
    const stop = 'step { check "It fits" if it fails { stop "Call the engineer." } }';
    expect(found([stop, "step install Hub"], "", 'step { needs Hub is installed  do "Look." }')).toEqual([]);
    expect(
      found(['task "End" { step "Look."  stop "Call the engineer." }', "step install Hub"], "", "step remove Cover"),
    ).toEqual([]);
  });
  test("a declared order", () => {
    expect(found(["step One { inspect Hub }", "step Two { inspect Seal  after One }"])).toEqual([
      "order.declared: after One [2 1]",
    ]);
    expect(found(["step One { inspect Hub  before Two }", "step Two { inspect Seal }"])).toEqual([
      "order.declared: before Two [2 1]",
    ]);
    expect(
      found(["step One { inspect Hub }", "step Two { inspect Seal }"], "", "step { inspect Hub  after One, Two }"),
    ).toEqual([]);
  });
  test("time that is counted", () => {
    const two = "step Two { inspect Seal  within 4 min after One  takes 1 min }";
    const one = "step One { inspect Hub }";
    expect(found([one, two, "step { inspect Gear  takes 2 min }"])).toEqual([]);
    expect(found([one, two, "step { inspect Gear  takes 10 min }"])).toEqual([
      "order.too-late: within 4 min after One [1 3 2]",
    ]);
    expect(found(["step wait 10 min", one, two])).toEqual(["order.too-late: within 4 min after One [2 1 3]"]);
  });
  test("a reading and the branch on it", () => {
    const measure = 'step { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm }';
    const low = "when Gap at most 0.6 mm { step install Hub }";
    const lowAgain = "when Gap at most 0.6 mm { step remove Hub }";
    expect(found([measure, low], "", ` ${lowAgain}`)).toEqual(["order.not-installed: remove Hub"]);
    expect(found([low, "step install Seal"], ` ${measure}`, ` ${lowAgain}`)).toEqual([]);
    expect(found([low, lowAgain], ` ${measure}`)).toEqual(["order.not-installed: remove Hub [2]"]);
  });
  test("options only: each finding for its own", () => {
    expect(found(["when Extent is Full { step install Hub }", "step install Gear"])).toEqual([
      "order.missing-support: install Gear",
    ]);
    expect(found(["when Extent is Full { step install Cover }", "step install Bearing"])).toEqual([
      "order.enclosed: install Bearing | Full",
    ]);
    expect(found(["step install Bearing", "when Extent is Full { step install Cover }"])).toEqual([
      "order.enclosed: install Bearing [2 1] | Full",
    ]);
  });
  test("a block in a block", () => {
    expect(found(["in any order { step install Bearing  step install Hub }", "step install Cover"])).toEqual([
      "order.enclosed: install Bearing [2 1]",
    ]);
    expect(found(["in any order { step install Bearing  step install Cover }", "step install Hub"])).toHaveLength(1);
    expect(found(["in any order { step install Cover  step install Hub }", "step install Seal"])).toEqual([]);
  });
});

test("a stop that is a child comes before or after each of the others", () => {
  const [put, take] = ["step install Hub", "step remove Hub"];
  const wanted = ["order.not-installed: remove Hub [3]"];
  expect(found(['stop "Call the engineer."', put, take])).toEqual(wanted);
  expect(found(['when Extent is Full { stop "Call the engineer." }', put, take])).toEqual(wanted);
});

describe("a line that cannot be read", () => {
  const work = (children: string): readonly string[] =>
    onPaper(procedureOf(children), { damaged: true }).facts.map(({ code }) => code);
  const procedureOf = (children: string): string =>
    `${PARTS}procedure Work "Work" {\nfinish with Hub is removed\nstep install Hub\nin any order {\n${children}\n}\n}`;
  test("leaves in doubt what it mentions, in whatever order", () => {
    expect(work("step remove Hub\nstep remove Hub")).toContain("order.not-installed");
    expect(work("step remove Hub\nstep install Hub")).toContain("order.already-installed");
    expect(work("step { frobnicate Hub }\nstep install Hub\nstep remove Hub")).toEqual([
      "order.already-installed",
      "order.unfinished",
    ]);
    expect(work("step { frobnicate Seal }\nstep remove Hub")).toEqual([]);
  });
});

describe("lines of one step", () => {
  const step = (lines: string): readonly string[] =>
    onPaper(
      `${PARTS}procedure Work "Work" {\nfinish with Cover is installed\nstep Fit {\nin any order {\n${lines}\n}\n}\n}`,
    ).facts.map(({ code, fact: { inOrder } }) =>
      `${code} ${inOrder?.map(({ step }) => step ?? "-").join() ?? ""}`.trim(),
    );
  test("in all orders too; they have no numbers", () => {
    expect(step("install Hub\ninstall Gear\ninstall Cover")).toEqual(["order.missing-support -"]);
    expect(step("install Cover\ninstall Hub")).toEqual([]);
    expect(step('install Hub\ncheck "It fits" if it fails { remove Hub }\ninstall Cover')).toEqual([
      "order.not-installed -",
    ]);
  });
});

describe("what it costs", () => {
  const nodes = (items: string): number => {
    const { runs } = onPaper(`${PARTS}procedure Work "Work" {\nfinish with Hub is removed\n${items}\n}`);
    return runs.find((run) => run.expanded.procedure.name === "Work")?.graph.nodes.length ?? 0;
  };
  const posts = Array.from({ length: 20 }, (_, at) => `step install Post[${at + 1}]`);
  const EMPTY = 2;
  /** What a step of one line comes to. */
  const STEP = 3;
  test("steps that have nothing to do with each other: as those steps", () => {
    expect(nodes(posts.join("\n"))).toBe(EMPTY + 20 * STEP);
    expect(nodes(block(posts))).toBe(EMPTY + 20 * STEP);
  });
  test("two that have, among others: those two in both orders", () => {
    const children = [...posts.slice(0, 5), "step install Bearing", "step install Cover"];
    // Five, and the two in both orders, with the meetings of ways round them.
    expect(nodes(block(children))).toBe(EMPTY + 5 * STEP + 4 + 4 * STEP);
  });
  test("looking is no work, and time that nobody counts makes no order", () => {
    expect(nodes(block(["step inspect Hub", "step inspect Hub", "step { inspect Hub  takes 5 min }"]))).toBe(
      EMPTY + 3 * STEP,
    );
  });
  const asking = (count: number): string[] =>
    Array.from({ length: count }, (_, at) => `step { needs Valve is open  do "Look at it ${at}." }`);
  const open = 'step { do "Open it."  gives Valve is open }';
  const opening = (count: number): string[] =>
    Array.from({ length: count }, (_, at) => `step { do "Open it ${at}."  gives Valve is open }`);
  test("eight that one answer rests on: every set of them once", () => {
    // As written and the reverse; then 2^8 sets, and from each every child that is left; each child stands behind half of the sets.
    const both = 2 * (1 + 8 * STEP);
    const children = [...asking(1), ...opening(7)];
    expect(nodes(`${open}\n${block(children)}`)).toBe(EMPTY + STEP + 2 + both + 1 + 256 + 8 * 128 * STEP);
  });
  test("any number of which each rests on one other: as written and the reverse", () => {
    const children = [open, ...asking(12)];
    expect(nodes(`${open}\n${block(children)}`)).toBe(EMPTY + STEP + 2 + 2 * (1 + 13 * STEP));
  });
  test("nine that one answer rests on: each of them right before and long before the one that asks", () => {
    const all = nodes(`${open}\n${block([...asking(1), ...opening(8)])}`) - EMPTY - STEP - 2;
    const orders = all / (9 * STEP + 1);
    expect(Number.isInteger(orders), String(orders)).toBe(true);
    expect(orders).toBeGreaterThan(2 * 8);
    expect(orders).toBeLessThanOrEqual(2 + 9 * (1 + 2 * 8));
  });
  test("large ones: fewer orders the larger they are", () => {
    const task = (at: number, steps: number): string =>
      `task "T ${at}" { ${open} ${Array.from({ length: steps }, () => 'step { needs Valve is open  do "Look." }').join(" ")} }`;
    const tasks = (steps: number): string[] => Array.from({ length: 8 }, (_, at) => task(at, steps));
    const one = (steps: number): number => nodes(tasks(steps).join("\n")) - EMPTY;
    for (const [steps, least, most] of [
      [40, 3, 30],
      [160, 2, 8],
    ] as const) {
      const orders = (nodes(block(tasks(steps))) - EMPTY - 2) / (one(steps) + 1);
      expect(Number.isInteger(orders), String(orders)).toBe(true);
      expect(orders).toBeGreaterThanOrEqual(least);
      expect(orders).toBeLessThanOrEqual(most);
    }
  });
});

describe("nine and more: orders that are real", () => {
  const ask = (at: number): string => `step { needs Valve is open  do "Look at it ${at}." }`;
  const SHUT = 'step { do "Shut it."  gives Valve is shut }';
  const OPEN = 'step { do "Open it."  gives Valve is open }';
  test("each of seven is found right after what spoils it, and the order shown spoils it", () => {
    const children = [OPEN, ...[1, 2, 3, 4, 5, 6, 7].map(ask), SHUT];
    const [own = []] = told([block(children)], children);
    expect(own.map(({ code }) => code)).toEqual(Array.from({ length: 7 }, () => "order.unmet-need"));
    for (const { words, order } of own) {
      const asked = Number(/ in (\d+)$/.exec(words)?.[1]);
      expect(order?.at(-1), words).toBe(asked);
      const done = order?.slice(0, -1) ?? [];
      const lastOf = Math.max(done.indexOf(1), done.indexOf(9));
      // Nothing done that opens it, or shut behind that.
      expect(lastOf < 0 || done[lastOf] === 9, `${order}`).toBe(true);
    }
  });
  test("what lies long before counts all the time between", () => {
    const waits = Array.from({ length: 8 }, (_, at) => `step { inspect Post[${at + 1}]  takes 1 min }`);
    const children = [
      "step One { inspect Hub }",
      "step Two { inspect Seal  within 7 min after One  takes 0 s }",
      ...waits,
    ];
    expect(found(children)).toEqual(["order.too-late: within 7 min after One [1 3 4 5 6 7 8 9 10 2]"]);
    expect(found([children[0] ?? "", children[1]?.replace("7 min", "8 min") ?? "", ...waits])).toEqual([]);
  });
});
