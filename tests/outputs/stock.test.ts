// The crib on the checklist: the items that meet each requirement, each with the setting for its own arm. 100 lbf·in at 12 + 6 in is
// 66.7 lbf·in (NAVEDTRA 14315, fig. 3-44; read); 300 lbf·ft at 18 + 6 in is 225 lbf·ft (TM 5-3810-305-23; read).
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openWorkspace } from "#workspace/workspace.ts";

const TEXT = (
  items: string,
  torque = "100 lbf·in",
  adapter = " + Crowfoot",
): string => `tool Wrench "torque wrench" { torque 1 .. 900 lbf·ft  arm 10 in }
tool Crowfoot "crowfoot" { offset 6 in }
part Screw "cover screw" { torque ${torque} dry }
crib MainShop "tool crib" {
  ${items}
  item "CF-1" for Crowfoot { offset 6 in }
}
procedure Close "Close" {
  finish with Screw is tightened
  step install Screw
  step tighten Screw to ${torque} with Wrench${adapter}
}
`;

function made(text: string, format: "md" | "html" | "xml", crib = true, as = "checklist", language = "en"): string {
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const wishes = { as, format, units: "us", repeats: "compact", draft: true, language } as const;
  return exportText(workspace, { path: "main.sprag", ...wishes, ...(crib ? { crib: "main.sprag" } : {}) });
}

const wrenchRow = (text: string): string =>
  made(text, "md")
    .split("\n")
    .find((line) => line.startsWith("| torque wrench")) ?? "";

test("each item has the setting for its own arm; without an arm there is none", () => {
  const row = wrenchRow(
    TEXT(`item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }
  item "TW-2" for Wrench { torque 1 .. 900 lbf·in  arm 18 in }
  item "TW-3" for Wrench { torque 1 .. 900 lbf·in }`),
  );
  expect(row).toMatch(/TW-1: For the cover screw, 100 lbf·in, with the crowfoot: set 66\.67 lbf·in/);
  // 100 · 18/24 (computed).
  expect(row).toMatch(/TW-2: .*set 75(\.0+)? lbf·in/);
  expect(row).toMatch(/TW-3: .*no setting, since the crib does not say its arm/);
});

test("a published pair in feet", () => {
  const row = wrenchRow(TEXT('item "TW-4" for Wrench { torque 1 .. 900 lbf·ft  arm 18 in }', "300 lbf·ft"));
  expect(row).toMatch(/TW-4: .*set 225(\.0+)? lbf·ft/);
});

test("a trainee's sheet names the items, and no setting that would tell the torque", () => {
  const text = TEXT('item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }');
  const sheet = made(text, "md", true, "trainee");
  expect(sheet).toContain("TW-1");
  expect(sheet).not.toMatch(/66\.67|100 lbf·in|A setting holds/);
});

test("what does not meet it is left out, and what is out of calibration is marked and has no setting", () => {
  const row = wrenchRow(
    TEXT(`item "TW-5" for Wrench { torque 1 .. 66 lbf·in  arm 12 in }
  item "TW-6" for Wrench { torque 1 .. 900 lbf·in  arm 12 in  calibrated until 2026-05-03 }
  item "TW-7" for Wrench { torque 1 .. 900 lbf·in  arm 12 in  calibrated until 2026-05-04 }`),
  );
  expect(row).not.toContain("TW-5");
  expect(row).toMatch(/TW-6, OUT OF CALIBRATION since 2026-05-03: do not use;/);
  expect(row).toMatch(/TW-7, calibrated until 2026-05-04: .*set 66\.67/);
});

test("the window keeps the bolt inside its band whatever the wrench's error is", () => {
  // [43/0.97, 47·0.97] = [44.330, 45.590], rounded inwards (computed).
  const text = TEXT('item "TW-8" for Wrench { torque 1 .. 90 N·m  accuracy 3 % }', "45 ± 2 N·m", "");
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const wishes = { as: "checklist", format: "md", units: "si", repeats: "compact", draft: true } as const;
  const made = exportText(workspace, { path: "main.sprag", crib: "main.sprag", ...wishes });
  const shown = /set within ([\d.]+) \.\. ([\d.]+) N·m/.exec(made);
  const [low, high] = [Number(shown?.[1]), Number(shown?.[2])];
  expect([low, high]).toEqual([44.33, 45.59]);
});

test("cautions and source stand with it; without a crib there is nothing of it", () => {
  const text = TEXT('item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }');
  for (const format of ["md", "html"] as const) {
    const page = made(text, format);
    expect(page).toContain("Items of tool crib as of 2026-05-04.");
    expect(page).toContain("A setting holds for that item alone");
    expect(page).toContain("No extension on the handle");
    expect(made(text, format, false)).not.toMatch(/TW-1|Items in the crib/);
  }
});

test("each formula that settings come from stands once in the notes, with its source, and none where none is shown", () => {
  const text = TEXT(`item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }
  item "TW-2" for Wrench { torque 1 .. 900 lbf·in  arm 18 in }`);
  const formulas = (page: string): readonly string[] => page.match(/How a setting is worked out: [^\n<]*/g) ?? [];
  const [formula, ...others] = formulas(made(text, "md"));
  expect(others).toEqual([]);
  expect(formula).toContain("Ts = T·L/(L + E), T torque, L arm, E adapter offset. From: NAVEDTRA 14315");
  expect(formulas(made(text, "html"))).toHaveLength(1);
  // An adapter at an angle has one of its own, at 90° without offset and angle; without an arm, or out of reach, no setting is shown.
  expect(formulas(made(text.replaceAll("offset 6 in", "offset 6 in  angle 90°"), "md"))).toEqual([
    "How a setting is worked out: Ts = T, T torque. From: NAVEDTRA 14315, fig. 3-44.",
  ]);
  expect(formulas(made(text.replaceAll(/ {2}arm 1[28] in/g, ""), "md"))).toEqual([]);
  expect(formulas(made(TEXT('item "TW-3" for Wrench { torque 1 .. 9 lbf·in  arm 12 in }'), "md"))).toEqual([]);
});

test("a setting that several steps ask for stands once", () => {
  const text = TEXT('item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }');
  const twice = text.replace(/ {2}step tighten .*\n/, (step) => `${step}  step loosen Screw\n${step}`);
  expect(wrenchRow(twice).match(/set 66\.67 lbf·in/g)).toHaveLength(1);
});

test("in German, what goes into a formula is said in German", () => {
  const text = TEXT('item "TW-1" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }');
  const page = made(text.replaceAll("offset 6 in", "offset 6 in  angle 30°"), "md", true, "checklist", "de");
  expect(page).toContain(
    "Ts = T·L/(L + E·cos α), T Drehmoment, L Armlänge, E Versatz des Aufsatzes, α Winkel des Aufsatzes. Nach: NAVEDTRA 14315, fig. 3-44.",
  );
});

test("the hash of the inputs counts the crib, and its texts are escaped", () => {
  const hash = (page: string) => /[0-9a-f]{64}/.exec(page)?.[0];
  const text = TEXT('item "<b>&" for Wrench { torque 1 .. 900 lbf·in  arm 12 in }');
  expect(made(text, "html")).toContain("&lt;b&gt;&amp;");
  expect(made(text, "html")).not.toContain("<b><b>");
  const shop = 'tool Wrench "wrench" { torque 1 .. 90 N·m }\n';
  const job = 'use "shop.sprag"\npart Screw "screw"\nprocedure P "P" { step install Screw with Wrench }\n';
  const pages = ["A-1", "A-2"].map((label) => {
    const crib = `use "shop.sprag"\ncrib C "crib" { item "${label}" for Wrench }\n`;
    const texts = new Map([
      ["shop.sprag", shop],
      ["job.sprag", job],
      ["crib.sprag", crib],
    ]);
    const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
    const wishes = { as: "checklist", format: "md", units: "si", repeats: "compact", draft: true } as const;
    return hash(exportText(workspace, { path: "job.sprag", crib: "crib.sprag", ...wishes }));
  });
  expect(new Set(pages).size).toBe(2);
});

test("in every form that names items one that is out of calibration is not to be taken", () => {
  // outputs.md: “tool list with the crib items that meet it”.
  const text = TEXT('item "TW-6" for Wrench { torque 1 .. 900 lbf·in  arm 12 in  calibrated until 2026-05-03 }');
  const forms = [
    ["dita", "xml"],
    ["checklist", "html"],
    ["kit", "md"],
  ] as const;
  for (const [as, format] of forms)
    expect(made(text, format, true, as).replace(/<[^>]*>/g, ""), as).toMatch(
      /TW-6,? OUT OF CALIBRATION since 2026-05-03: do not use/,
    );
});
