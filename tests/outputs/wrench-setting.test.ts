// What the wrench is set to stands at the step that tightens with an adapter, and that its torque is the one at the fastener.
// Source: outputs.md, checklist: “the wrench setting where an adapter changes it”. Ts = T · L/(L + E), here with L = 400 mm and
// E = 60 mm (computed by hand: 30 · 400/460 = 26.087); 100 lbf·in at 12 + 6 in is 66.67 lbf·in (NAVEDTRA 14315, fig. 3-44; read).
import { expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import type { Instruction } from "#outputs/document.ts";
import { de } from "#outputs/words/de.ts";
import { en, type Words } from "#outputs/words/en.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { blocksIn, documentAs } from "./make.ts";

interface Given {
  readonly action?: string;
  readonly arm?: string;
  readonly prevailing?: string;
  readonly items?: string;
}

const textWith = ({
  action = "30 ± 2 N·m with Wrench + Crowfoot",
  arm = "arm 400 mm",
  prevailing = "",
  items = "",
}: Given) =>
  `part Base "base"
part Bolt "bolt" { secures Base ${prevailing} }
part Nut[1..2] "locking nut" { secures Base prevailing torque 5 N·m }
tool Wrench "torque wrench" { torque 1 .. 60 N·m ${arm} }
tool Crowfoot "crowfoot" { offset 60 mm }
tool Square "square head" { offset 60 mm angle 90° }
${items === "" ? "" : `crib Shop "tool crib" { ${items} item "CF-1" for Crowfoot { offset 60 mm } }`}
procedure Close "Close" {
  begin with Base is installed
  step install Bolt
  step { tighten Bolt to ${action} }
}
`;

function tightened(
  text: string,
  as = "checklist",
  words: Words = en,
): Pick<Instruction, "text" | "rounds" | "details"> {
  const all = [...blocksIn(documentAs(as, text, { units: "si" }, words).blocks)];
  const instructions = all.filter((block) => block.kind === "instruction");
  const { text: sentence, rounds, details } = instructions.at(-1) as Instruction;
  return { text: sentence, rounds, details };
}

test("a torque with an adapter", () => {
  expect(tightened(textWith({})).details).toEqual([
    "The torque is that at the fastener. Set the torque wrench to 26.09 N·m, which holds for its arm of 400 mm alone.",
  ]);
});

test("each round has its own setting", () => {
  // 9 · 400/460 = 7.826, 30 · 400/460 = 26.087.
  expect(tightened(textWith({ action: "9 ± 1 N·m, 30 ± 2 N·m with Wrench + Crowfoot" }))).toMatchObject({
    rounds: ["9 ± 1 N·m, set 7.826 N·m", "30 ± 2 N·m, set 26.09 N·m"],
    details: [
      "The torques are those at the fastener.",
      "What the torque wrench is to be set to stands with each round, and holds for its arm of 400 mm alone.",
    ],
  });
});

test("in German", () => {
  expect(tightened(textWith({}), "checklist", de).details).toEqual([
    "Das Drehmoment gilt an der Schraube. Torque wrench einstellen auf 26.09 N·m, nur für die Armlänge 400 mm.",
  ]);
});

test.each([
  ["no adapter", { action: "30 ± 2 N·m with Wrench" }],
  ["an adapter at a right angle", { action: "30 ± 2 N·m with Wrench + Square" }],
  ["no wrench of which anything is known", { action: "30 ± 2 N·m with Crowfoot" }],
])("the torque itself is set, or nothing is known: %s", (_, given) => {
  expect(tightened(textWith(given)).details).toEqual([]);
});

test("a prevailing torque is added, for any arm", () => {
  const given = { action: "30 ± 2 N·m with Wrench", prevailing: "prevailing torque 5 N·m", arm: "" };
  expect(tightened(textWith(given)).details).toEqual([
    "The torque is that at the fastener. Set the torque wrench to 35 N·m.",
  ]);
});

test("at a right angle the arm does not count, a prevailing torque does", () => {
  const given = { action: "30 ± 2 N·m with Wrench + Square", prevailing: "prevailing torque 5 N·m" };
  expect(tightened(textWith(given)).details).toEqual([
    "The torque is that at the fastener. Set the torque wrench to 35 N·m.",
  ]);
});

test("where the arm is not declared it has to be worked out", () => {
  expect(tightened(textWith({ arm: "" })).details).toEqual([
    "The torque is that at the fastener.",
    "Work out what the torque wrench is to be set to with its own arm.",
  ]);
});

test("fasteners with different settings in one line", () => {
  const text = textWith({}).replace("tighten Bolt to", "tighten Bolt, Nut[all] to");
  // (30 + 5) · 400/460 = 30.43.
  expect(tightened(text).details).toEqual([
    "The torque is that at the fastener.",
    "For the bolt, set the torque wrench to 26.09 N·m, which holds for its arm of 400 mm alone.",
    "For the locking nut, set the torque wrench to 30.43 N·m, which holds for its arm of 400 mm alone.",
  ]);
});

const ITEMS = `item "TW-1" for Wrench { torque 1 .. 60 N·m arm 300 mm calibrated until 2027-01-01 }
  item "TW-2" for Wrench { torque 1 .. 60 N·m }
  item "TW-3" for Wrench { torque 1 .. 60 N·m arm 500 mm calibrated until 2026-01-01 }
  item "TW-4" for Wrench { torque 1 .. 5 N·m arm 500 mm }`;

function exported(text: string, format: string, as = "checklist"): string {
  const texts = new Map([["main.sprag", text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const wishes = { as, format, units: "si", repeats: "compact", draft: true } as const;
  return exportText(workspace, {
    path: "main.sprag",
    ...wishes,
    ...(text.includes("crib") ? { crib: "main.sprag" } : {}),
  });
}

test("with a crib each item that may be taken has its own", () => {
  const md = exported(textWith({ items: ITEMS }), "md");
  const step = md.slice(md.indexOf("### Step 2"));
  // 30 · 300/360 = 25. One without an arm has none; one out of calibration and one that is too small are not taken.
  expect(step).toContain("  - TW-1: set 25.00 N·m.\n");
  expect(step).toContain("  - TW-2: no setting, since the crib does not say its arm.\n");
  expect(step).not.toMatch(/TW-3|TW-4|26\.09/);
});

test("a trainee's sheet has a gap in its place", () => {
  for (const text of [textWith({}), textWith({ items: ITEMS })]) {
    const sheet = exported(text, "md", "trainee");
    expect(sheet).not.toMatch(/26\.09|set 25/);
    expect(sheet).toMatch(/Set the torque wrench to \(2\) /);
  }
});

test.each(["html", "md", "csv", "json"])("%s", (format) => {
  expect(exported(textWith({}), format)).toContain("Set the torque wrench to 26.09 N·m");
});

test("a data module for other systems has it too", () => {
  expect(exported(textWith({}), "xml", "dita")).toContain("Set the torque wrench to 26.09 N·m");
});
