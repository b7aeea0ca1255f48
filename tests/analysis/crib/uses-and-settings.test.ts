// What is used of a tool, which items are there for it, what they are set to with their own arm, and where it is told that none does.
// The published setting (engineering.md): 100 lbf·in at 12 + 6 in is 66.7 lbf·in (NAVEDTRA 14315, fig. 3-44; read).
import { describe, expect, test } from "vitest";
import { cribFactsOf, stockOf, toolStocksOf } from "#analysis/crib/crib-facts.ts";
import { requirementsOf } from "#analysis/crib/uses.ts";
import { show } from "#quantity/display.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { inWords } from "../limits/whole-limits.ts";
import { DAY, job, type Match, matches, open, SHOP } from "./crib-on-paper.ts";

const one = (...given: Parameters<typeof job>): Match => {
  const [first, ...more] = matches(job(...given));
  expect(more).toEqual([]);
  if (first === undefined) throw new Error("no item for the tool");
  return first;
};
describe("what is used of a tool", () => {
  const used = (tool: string, ...steps: readonly string[]): readonly string[] => one(tool, "", ...steps).unsaid;
  test("of a tool that says what it is for, nothing else", () => {
    expect(used("measures 0 .. 9 mm", "tighten Screw to 20 N·m with Gauge + Tool")).toEqual([]);
    expect(used("torque 1 .. 9 N·m", 'measure "gap" with Gauge + Tool expect 1 .. 2 mm')).toEqual([]);
    expect(used("offset 6 in", "tighten Screw to 20 N·m with Tool")).toEqual(["offset"]);
    expect(used("lifts 900 kg", "heat Screw to 90 .. 100 °C with Tool")).toEqual(["lifts"]);
    expect(used("heats to 200 °C", "lift Frame with Tool")).toEqual(["heats to"]);
    expect(used("torque 1 .. 9 N·m", "tighten Screw with Tool")).toEqual([]);
    expect(used("resolution 1 mm", 'measure "gap" with Tool expect 1 .. 2 mm')).toEqual(["measures", "resolution"]);
    expect(used("measures 0 .. 9 mm", 'measure "gap" with Tool')).toEqual([]);
    // Legs of which nothing is said load nothing.
    expect(used("each leg lifts 900 kg", "lift Frame with Tool")).toEqual(["each leg lifts"]);
  });
  test("a check and a record, too", () => {
    const item = "measures 0 .. 1 mm";
    for (const line of ['check "gap" with Tool expect 1 .. 2 mm', 'record "gap" 1 .. 2 mm with Tool'])
      expect(one("measures 0 .. 9 mm", item, `{ inspect Frame ${line} }`)).toMatchObject({
        misses: [{ what: "reading", side: "above", asked: "2 mm" }],
      });
  });
  test("every value of it, each once: of all lines, all parts in a line, all passes and all ways", () => {
    const text = job(
      "torque 1 .. 99 N·m",
      "torque 1 .. 99 N·m",
      "tighten Screw, Nut to 20 N·m with Tool",
      "tighten Screw to 30 N·m with Tool",
    );
    const [first] = matches(text);
    expect(first?.settings.map((setting) => (setting as { fastener: string }).fastener)).toEqual([
      "Screw",
      "Nut",
      "Screw",
    ]);
    const again = job("torque 1 .. 99 N·m", "torque 1 .. 99 N·m", "tighten Screw to 20 N·m with Tool")
      .replace("  step tighten", "  repeat n from 1 to 3 { step tighten")
      .replace("with Tool\n", "with Tool }\n");
    expect(matches(again)[0]?.settings).toHaveLength(1);
    const warm = job("heats to 900 °C", "heats to 149 °C", "X", "heat Screw by 50 K with Tool").replace(
      "step X",
      "when Warm is yes { step heat Screw to 90 .. 100 °C with Tool }",
    );
    // 20 or 100 °C, and 50 K; and the 100 °C themselves.
    expect(matches(warm)[0]?.misses).toEqual([{ what: "heat", side: "above", has: "149 °C", asked: "150 °C" }]);
  });
  test("what no option values allow is not used", () => {
    const never = job("lifts 900 kg", "lifts 1 kg", "X").replace(
      "step X",
      "when Warm is yes { when Warm is no { step lift Frame with Tool } }\n  step inspect Frame with Tool",
    );
    // The requirement's own counts then.
    expect(matches(never)[0]?.misses).toMatchObject([{ asked: "900 kg" }]);
  });
  test("a tool whose declaration could not be read is none", () => {
    expect(matches(job("lifts 900 kg  arm", "lifts 1 kg", "lift Frame with Tool"))).toEqual([]);
  });
});

describe("what an item is set to", () => {
  test("with its own arm, behind the adapter of the line, at each stage, and the window at the last", () => {
    const [first] = matches(
      job(
        "torque 1 .. 900 lbf·in  arm 20 in",
        "torque 1 .. 900 lbf·in  arm 12 in  accuracy 2 %",
        "tighten Screw to 60 lbf·in, 95 .. 105 lbf·in with Tool + Crow",
      ),
    );
    expect(first?.settings).toEqual([
      {
        fastener: "Screw",
        adapters: ["Crow"],
        stages: [
          { torque: "60 lbf·in", setting: "40 lbf·in" },
          // 95 and 105 times two thirds.
          { torque: "95 .. 105 lbf·in", setting: expect.stringContaining("63.34 .. 70.00 lbf·in") },
        ],
        // 63.33/0.98 = 64.63 and 70·0.98 = 68.6 lbf·in.
        window: expect.stringMatching(/64\.63 \.\. 68\.60? lbf·in/),
        explanation: "Ts = T·L/(L + E)",
      },
    ]);
  });
  test("without an arm none behind an adapter, and none of a window", () => {
    const [first] = matches(
      job(
        "torque 1 .. 900 lbf·in",
        "torque 1 .. 900 lbf·in  accuracy 2 %",
        "tighten Screw to 95 .. 105 lbf·in with Tool + Crow",
      ),
    );
    expect(first?.settings).toEqual([
      {
        fastener: "Screw",
        adapters: ["Crow"],
        stages: [{ torque: "95 .. 105 lbf·in", setting: null }],
        window: null,
        explanation: null,
      },
    ]);
  });
  test("no accuracy, or no band: no window", () => {
    for (const [item, torque] of [
      ["torque 1 .. 99 N·m", "39 .. 41 N·m"],
      ["torque 1 .. 99 N·m  accuracy 2 %", "40 N·m"],
    ] as const) {
      const [first] = matches(job("torque 1 .. 99 N·m", item, `tighten Screw to ${torque} with Tool`));
      expect(first?.settings).toMatchObject([{ adapters: [], window: null, stages: [{ torque }] }]);
    }
  });
});

describe("which items are there for a tool", () => {
  const step = "  step lift Frame with Tool\n";
  const used = { "shop.sprag": 'tool Tool "tool" { lifts 900 kg }\ntool Other "other" { lifts 900 kg }\n' };
  test("those for its own declaration; else, where the crib has one of its own, those by its name", () => {
    const main = `use "shop.sprag"\n${SHOP}crib MainShop {
  item "X-1" for Tool { lifts 130 kg }
  item "X-2" for Other { lifts 130 kg }
}
procedure Work "Work" {\n${step}}\n`;
    expect(matches(main, "Tool", used).map(({ item }) => item)).toEqual(["X-1"]);
  });
  test("by its name", () => {
    const crib = `tool Tool "hoist" { lifts 1 kg }
tool Other "other"
part Any "any"
crib MainShop {
  item "X-1" for Tool { lifts 130 kg }
  item "X-2" for Other { lifts 130 kg }
}
procedure Look { step inspect Any with Tool + Other }
`;
    const work = `use "shop.sprag"\n${SHOP}procedure Work "Work" {\n${step}}\n`;
    const workspace = openWorkspace({
      texts: new Map([
        ["main.sprag", work],
        ["shop.sprag", used["shop.sprag"]],
        ["crib.sprag", crib],
      ]),
      present: new Set(),
      absent: new Set(),
      today: DAY,
    });
    const findings = workspace.check(["main.sprag"], { crib: "crib.sprag" }).files.flatMap((file) => file.findings);
    expect(findings.filter(({ code }) => code === "trace.no-crib-item")).toEqual([]);
  });
  test("good for the whole of its last day", () => {
    const item = (until: string) => one("lifts 900 kg", `lifts 130 kg${until}`, "lift Frame with Tool").isOut;
    expect(item("  calibrated until 2026-05-03")).toBe(true);
    expect(item("  calibrated until 2026-05-04")).toBe(false);
    expect(item("")).toBe(false);
  });
  test("also of what is performed: there, and here, together", () => {
    const main = job("lifts 900 kg", "lifts 100 kg", "lift Cap with Tool", "install Cap").replace(
      'procedure Work "Work" {',
      'procedure Inner { step lift Frame with Tool step install Frame }\nprocedure Work "Work" {\n  perform Inner',
    );
    const { run, stock } = open(main, {}, "Work");
    // 5 kg are lifted here, 120 kg there.
    const [first] = toolStocksOf(run, stock);
    expect(first?.items.map(({ misses }) => misses.map(({ what }) => what))).toEqual([["load"]]);
    // What it performs is looked at by itself.
    expect(cribFactsOf(run, stock)).toEqual([]);
  });
  test("a file without a crib has no stock", () => {
    const workspace = openWorkspace({
      texts: new Map([["main.sprag", 'part Pump "pump"\n']]),
      present: new Set(),
      absent: new Set(),
      today: DAY,
    });
    expect(stockOf(workspace.loaded.models.get("main.sprag"), DAY)).toBe(null);
    expect(stockOf(undefined, DAY)).toBe(null);
  });
});

describe("where it is told that the crib has none", () => {
  const facts = (items: string, ...steps: readonly string[]): readonly object[] => {
    const text = job("torque 1 .. 200 N·m", "", ...steps).replace('item "X-1" for Tool {  }', items);
    const { run, stock } = open(text);
    return cribFactsOf(run, stock).map(({ pass: _pass, more: _more, ...fact }) => inWords(text, fact) as object);
  };
  const item = (label: string, range: string): string => `item "${label}" for Tool { torque ${range} } `;
  const [FIRST, SECOND] = ["tighten Screw to 20 N·m with Tool", "tighten Screw to 50 N·m with Tool"] as const;
  // With 2 N·m of prevailing torque.
  const THIRD = "tighten Nut to 88 N·m with Tool";
  const miss = (has: string) => ({ what: "setting", side: "above", has, asked: "90 N·m" });

  test("at the first place that no item does, with all that each misses", () => {
    const found = facts(item("A", "10 .. 60 N·m") + item("B", "10 .. 70 N·m"), FIRST, SECOND, THIRD);
    expect(found).toEqual([
      {
        ...{ kind: "no crib item", tool: "Tool", crib: "MainShop", span: "tighten Nut" },
        items: [
          { label: "A", span: expect.stringContaining("A"), misses: [miss("10 .. 60 N·m")] },
          { label: "B", span: expect.stringContaining("B"), misses: [miss("10 .. 70 N·m")] },
        ],
      },
    ]);
  });
  test("each place is done by one, and no item does all: at the first", () => {
    const found = facts(item("A", "10 .. 60 N·m") + item("B", "40 .. 100 N·m"), FIRST, SECOND, THIRD);
    expect(found).toMatchObject([
      { kind: "no crib item", span: "tighten Screw", items: [{ label: "A" }, { label: "B" }] },
    ]);
  });
  test("one does all", () => {
    expect(facts(item("A", "10 .. 60 N·m") + item("B", "10 .. 100 N·m"), FIRST, SECOND, THIRD)).toEqual([]);
  });
  test("what an item does not say is no miss", () => {
    expect(facts('item "A" for Tool { arm 300 mm }', FIRST)).toEqual([]);
  });
  test("not where only one of them does not do it", () => {
    const found = facts(item("A", "10 .. 40 N·m") + item("B", "10 .. 70 N·m"), FIRST, SECOND, THIRD);
    expect(found).toMatchObject([{ span: "tighten Nut" }]);
  });
  test("where one of several values of a line is missed, and not where an item only does not say", () => {
    // 58 and 2 N·m for the nut.
    const both = facts(item("A", "10 .. 59 N·m"), FIRST, "tighten Nut, Screw to 58 N·m with Tool");
    expect(both).toMatchObject([{ span: "tighten Nut, Screw" }]);
    const text = job(
      "",
      "torque 10 .. 60 N·m",
      'measure "gap" with Tool expect 1 .. 2 mm',
      "tighten Screw to 90 N·m with Tool",
    );
    const { run, stock } = open(text);
    expect(cribFactsOf(run, stock).map((fact) => inWords(text, fact))).toMatchObject([{ span: "tighten Screw" }]);
  });
  test("several cribs are one stock, by all their names; with one that could not be read nothing is said", () => {
    const text = job("torque 1 .. 200 N·m", "torque 10 .. 60 N·m", THIRD);
    const two = (second: string): readonly object[] => {
      const { run, stock } = open(text.replace("procedure Work", `crib SideShop { ${second} }\nprocedure Work`));
      return cribFactsOf(run, stock);
    };
    expect(two('item "S-1" for Tool { torque 10 .. 70 N·m }')).toMatchObject([
      { crib: "MainShop, SideShop", items: [{ label: "X-1" }, { label: "S-1" }] },
    ]);
    expect(two('item "S-1" for Tool { torque 10 .. 99 N·m }')).toEqual([]);
    expect(two('item "S-1" for Tol { torque 10 .. 70 N·m }')).toEqual([]);
  });
});

describe("each use once", () => {
  /** `kind value` of all that is used of the tool. */
  const uses = (tool: string, steps: string): readonly string[] => {
    const text = job(tool, "", "X").replace("  step X\n", `${steps}\n`);
    const { run } = open(text);
    const found = requirementsOf(run).find((one) => one.tool.name === "Tool");
    return (found?.namings ?? []).flatMap((naming) =>
      naming.uses.map((use) => {
        switch (use.kind) {
          case "torque":
            return `torque ${use.fastener.name} ${use.stages.length}`;
          case "reading":
            return `reading ${show(use.expect.quantity)}`;
          case "heat":
          case "cool":
            return `${use.kind} ${show(use.temperature)}`;
          default:
            return `${use.kind} ${show(use.mass)}`;
        }
      }),
    );
  };
  test.each<[tool: string, steps: string, uses: readonly string[]]>([
    // The same of each instance, in each pass.
    ["heats to 200 °C", "repeat n from 1 to 2 { step heat Screw, Nut to 80 .. 90 °C with Tool }", ["heat 90 °C"]],
    [
      "heats to 200 °C",
      "step heat Screw to 80 .. 90 °C with Tool\nstep heat Screw to 80 .. 95 °C with Tool",
      ["heat 90 °C", "heat 95 °C"],
    ],
    ["cools to -40 °C", "repeat n from 1 to 2 { step cool Screw to -30 .. -20 °C with Tool }", ["cool -30 °C"]],
    [
      "measures 0 .. 9 mm",
      'repeat n from 1 to 2 { step measure "gap" with Tool expect 1 .. 2 mm }',
      ["reading 1 .. 2 mm"],
    ],
    ["lifts 200 kg", "repeat n from 1 to 2 { step lift Frame with Tool }", ["load 120 kg"]],
    // Two loads, by what is on it.
    [
      "lifts 200 kg",
      "when Warm is yes { step install Cap in Frame }\nstep lift Frame with Tool",
      ["load 125 kg", "load 120 kg"],
    ],
    [
      "each leg lifts 200 kg",
      "repeat n from 1 to 2 { step lift Frame with Tool on 2 legs at 30° }",
      ["leg load 120 kg"],
    ],
    // From 20 °C and, warm before, from 90 °C.
    [
      "heats to 200 °C",
      "when Warm is yes { step heat Screw to 80 .. 90 °C with Tool }\nstep heat Screw by 50 K with Tool",
      ["heat 90 °C", "heat 70 °C", "heat 140 °C"],
    ],
    ["torque 1 .. 90 N·m", "step tighten Screw, Nut to 20 N·m, 40 N·m with Tool", ["torque Screw 2", "torque Nut 2"]],
    ["", "step inspect Frame with Tool", []],
  ])("%s: %s", (tool, steps, wanted) => {
    expect([...uses(tool, steps)].sort()).toEqual([...wanted].sort());
  });
  test("a value of another sort does not take the place of what the requirement says", () => {
    const [first] = matches(
      job("heats to 200 °C  lifts 900 kg", "heats to 200 °C  lifts 100 kg", "heat Screw to 80 .. 90 °C with Tool"),
    );
    expect(first?.misses).toMatchObject([{ what: "load", asked: "900 kg" }]);
  });
});
