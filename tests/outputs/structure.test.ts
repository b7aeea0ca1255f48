// What stands in a checklist and where: every step once and in order, statements ahead of what they guard, options, ways
// back, sign-offs, lists.
import { describe, expect, test } from "vitest";
import { isFaulty, openSamples, plainTexts } from "#harness/samples.ts";
import { elementsIn, readHtml, textOf } from "./html-reader.ts";
import { blocksIn, instructionsIn, make, makeFrom, stepsIn } from "./make.ts";
import { around, COVER } from "./procedures.ts";

const cover = make(COVER);

describe("steps", () => {
  test("every step stands once, in the order of the text", () => {
    expect(stepsIn(cover.document).map((step) => step.number)).toEqual(["1.1", "1.2", "1.3", "1.4", "1.5", "1.6"]);
    const headings = [...elementsIn(readHtml(cover.html))].filter((element) => /^h[1-6]$/.test(element.name));
    const numbers = headings.map(textOf).filter((text) => text.startsWith("Step "));
    expect(numbers.map((text) => text.trim())).toEqual(stepsIn(cover.document).map((step) => `Step ${step.number}`));
    const lines = cover.md.split("\n").filter((line) => /^(> )*#+ Step /.test(line));
    expect(lines).toHaveLength(6);
  });

  test("a repeat stands once with a tick for each pass, or is written out", () => {
    const [group] = [...blocksIn(cover.document.blocks)].filter((block) => block.kind === "group");
    expect(group?.heading).toBe("Once for each n, in this order: 2, 3, 4, 6, 7, 8, 1, 5");
    const [row] = [...blocksIn(group?.blocks ?? [])].filter((block) => block.kind === "instruction");
    expect(row).toMatchObject({ text: "Install cover screw n." });
    expect(row?.ticks.map((tick) => tick.label)).toEqual(["2", "3", "4", "6", "7", "8", "1", "5"]);
    const full = make(COVER, { repeats: "full" });
    const passes = stepsIn(full.document).filter((step) => step.number === "1.4");
    expect(passes.map((step) => step.pass)).toEqual([2, 3, 4, 6, 7, 8, 1, 5].map((n) => `n = ${n}`));
    expect(new Set(stepsIn(full.document).map((step) => step.id)).size).toBe(13);
  });

  test("passes that one sentence cannot say are written out in one row", () => {
    const { document } = make(around("step { repeat n from 1 to 6 by 2 { inspect Screw[n], Screw[n + 1] } }"));
    expect(instructionsIn(document)).toEqual([
      "n = 1: Inspect screws 1 and 2.",
      "n = 3: Inspect screws 3 and 4.",
      "n = 5: Inspect screws 5 and 6.",
    ]);
  });

  test("a step of own words is what is to be ticked; with an action below, its heading", () => {
    const { document } = make(around('step "Look round."\nstep "Put the base down." { install Base }'));
    expect(stepsIn(document).map((step) => step.words)).toEqual([null, "Put the base down."]);
    expect(instructionsIn(document)).toEqual(["Look round.", "Install the base."]);
  });

  test("terms, records, sign-offs and the hold point stand with their step", () => {
    const torque = stepsIn(cover.document).find((step) => step.name === "Torque");
    expect(torque).toMatchObject({ critical: true, signs: [{ role: "fitter" }], hold: [{ role: "inspector" }] });
    const seated = stepsIn(cover.document).find((step) => step.name === "Seated");
    expect(seated?.fields).toMatchObject([
      { label: "air temperature", limits: "10 .. 30 °C (50 .. 86 °F)", tools: null },
    ]);
    expect(stepsIn(cover.document).find((step) => step.name === "Place")?.terms).toEqual(["Takes about 3 min."]);
  });
});

describe("safety statements", () => {
  test("each stands ahead of what it guards, in every format", () => {
    for (const text of [cover.html, cover.md]) {
      const places = [
        "The supply can kill.",
        "The cover is heavy.",
        "Install a new gasket.",
        "The gasket tears.",
        "Install the bearing cover.",
      ].map((words) => text.lastIndexOf(words));
      expect(places.every((place) => place > 0)).toBe(true);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  test("the signal word is text, and the key explains every one that occurs", () => {
    const boxes = [...elementsIn(readHtml(cover.html))].filter((one) =>
      one.attributes.get("class")?.startsWith("statement"),
    );
    expect(boxes.map((box) => textOf(box).trim().split(/\s/)[0])).toEqual(["DANGER", "WARNING", "CAUTION"]);
    expect(cover.document.signals).toEqual(["danger", "warning", "caution", "note"]);
    expect(cover.md).toContain("| CAUTION | Equipment can be damaged.");
  });

  test("only warnings for people have the triangle", () => {
    const boxes = [...elementsIn(readHtml(cover.html))].filter((one) =>
      one.attributes.get("class")?.startsWith("statement"),
    );
    const drawn = boxes.map((box) => [...elementsIn(box)].some((one) => one.name === "svg"));
    expect(drawn).toEqual([true, true, false]);
  });
});

describe("options", () => {
  const text = around(`
    when Extent is Full { step "Do all." } otherwise when Kept is yes { step "Keep." } otherwise { step "Renew." }
    step "End."`);

  test("open, every branch stands under its condition", () => {
    const { document } = make(text);
    const [branch] = document.blocks;
    expect(branch).toMatchObject({
      arms: [
        { heading: "If extent of work is “full overhaul”:" },
        { heading: "Otherwise, if the seals are kept:" },
        { heading: "Otherwise:" },
      ],
    });
    expect(document.head.facts).toContainEqual({
      label: "Options to be decided before the start",
      values: ["extent of work: full overhaul or reseal only", "the seals are kept: yes or no"],
    });
  });

  test.each([
    [{ Extent: "Full" }, ["Do all.", "End."], 1],
    [{ Extent: "Reseal", Kept: "yes" }, ["Keep.", "End."], 2],
    [{ Extent: "Reseal", Kept: "no" }, ["Renew.", "End."], 2],
  ])("chosen %j, only its steps stand, and what is left out is named", (options, wanted, leftOut) => {
    const { document, md } = make(text, { options });
    expect(instructionsIn(document)).toEqual(wanted);
    const directions = document.blocks.filter((block) => block.kind === "direction");
    expect(directions.filter((block) => block.sense === "left out").length).toBeGreaterThanOrEqual(leftOut);
    expect(md).not.toContain("If extent of work");
  });

  test("half chosen, what is open stays", () => {
    const { document } = make(text, { options: { Extent: "Reseal" } });
    expect(document.blocks.find((block) => block.kind === "branch")).toMatchObject({
      arms: [{ heading: "If the seals are kept:" }, { heading: "Otherwise:" }],
    });
  });

  test("a choice that is no property of the text counts as none", () => {
    expect(instructionsIn(make(text, { options: { toString: "Full" } }).document)).toHaveLength(4);
  });

  test.each([
    ["Extent is Full and Kept is no", { Kept: "yes" }, false],
    ["Extent is Full or Kept is no", { Kept: "no" }, true],
    ["not (Extent is Full or Kept is no)", { Kept: "no" }, false],
    ["Extent is not Full", { Extent: "Reseal" }, true],
    ["Extent is Full and Kept is no", { Extent: "Full" }, null],
  ])("%s with %j", (condition, options, wanted) => {
    const { document } = make(around(`when ${condition} { step "Inside." }`), { options });
    const [first] = document.blocks;
    expect(first?.kind).toBe(wanted === null ? "branch" : wanted ? "step" : "direction");
  });
});

test("what to do if a check fails names the step to go back to, and links to it", () => {
  const failing = [...blocksIn(cover.document.blocks)].flatMap((block) =>
    block.kind === "instruction" && block.failing !== null ? [block.failing] : [],
  );
  expect(failing).toHaveLength(1);
  expect(failing[0]?.blocks.at(-1)).toMatchObject({
    text: "Go back to step 1.5 (Torque) and do the work again from there.",
    link: "step-1-5",
  });
});

test("the tools say what is asked of them and what is used, the parts how many", () => {
  const { parts, tools } = cover.document;
  expect(tools.find((tool) => tool.name === "Wrench")?.used).toEqual(["12.9 .. 47 N·m (9.51 .. 34.67 lbf·ft)"]);
  expect(tools.find((tool) => tool.name === "Feeler")?.used).toEqual(["at most 0.05 mm (at most 0.0019 in)"]);
  expect(parts.map(({ name, count }) => [name, count])).toEqual([
    ["Gasket", 1],
    ["Cover", 1],
    ["Screw[1..8]", 8],
  ]);
  expect(parts[0]?.remarks).toEqual(["new: 1"]);
});

test("only the cautions that apply are printed, and those for everything", () => {
  const plain = make(around('step "Look."')).document.cautions.join("\n");
  expect(plain).toContain("A printed copy is uncontrolled.");
  expect(plain).not.toMatch(/Lifting|Heating|Prove it dead|adapter/);
  expect(cover.document.cautions.join("\n")).toContain("Nobody stands under or beside the load.");
});

test("what boils off brings the caution that no computation clears entry, and the air of the room to the head", () => {
  const { document } = make(
    around("room 60 m³\nstep fill Base with 10 L of Nitrogen", 'consumable Nitrogen "liquid nitrogen" { expands 694 }'),
  );
  expect(document.cautions.join("\n")).toContain("entry is never cleared by a computation");
  expect(document.head.facts.find(({ label }) => label === "Air of the room")?.values.join()).toMatch(/^60 m³/);
  const water = make(around("step fill Base with 10 L of Water", 'consumable Water "water"')).document;
  expect(water.cautions.join("\n")).not.toContain("Gases");
  expect(water.head.facts.find(({ label }) => label === "Air of the room")).toBeUndefined();
});

test("a procedure that is performed stands where it is done, under numbers of its own", () => {
  const text = `${around("step perform Other\nstep install Cover")}\nprocedure Other "Set the base" { step install Base }\n`;
  const { document } = make(text);
  expect(stepsIn(document).map((step) => step.number)).toEqual(["1", "1.1", "2"]);
  expect(instructionsIn(document)).toEqual(["Do all of “Set the base”.", "Install the base.", "Install the cover."]);
});

test("procedures that perform each other come to an end", () => {
  const text = `${around("step perform Other")}\nprocedure Other "Other" { step perform Work }\n`;
  expect(instructionsIn(make(text).document)).toEqual(["Do all of “Other”.", "Do all of “Do the work”."]);
});

describe("every sample", () => {
  const workspace = openSamples();
  const procedures = [...plainTexts.keys()].flatMap((path) =>
    (workspace.loaded.models.get(path)?.procedures ?? []).map((procedure, at) => ({ path, at, name: procedure.name })),
  );

  test.each(procedures)("$path $name reads back as HTML whose links lead somewhere", ({ path, at }) => {
    for (const repeats of ["compact", "full"] as const) {
      const { document, html, md } = makeFrom(workspace, path, at, { repeats });
      const elements = [...elementsIn(readHtml(html))];
      const ids = elements.flatMap((element) => element.attributes.get("id") ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      const links = elements.flatMap((element) => element.attributes.get("href")?.slice(1) ?? []);
      expect(links.filter((link) => !ids.includes(link))).toEqual([]);
      expect(ids.filter((id) => id.startsWith("step-")).length).toBe(stepsIn(document).length);
      // Every instruction has somewhere to be ticked.
      const boxes = elements.filter((element) => element.attributes.get("type") === "checkbox").length;
      expect(boxes).toBeGreaterThanOrEqual(instructionsIn(document).length);
      const shown = html.replaceAll(/<script[\s\S]*?<\/script>/g, "");
      for (const text of [shown, md]) expect(text).not.toMatch(/undefined|\[object|NaN/);
    }
  });

  test("each step of the text is on the compact checklist once", () => {
    for (const { path, at } of procedures.filter((one) => !isFaulty(one.path))) {
      const { document } = makeFrom(workspace, path, at);
      const numbers = stepsIn(document).map((step) => step.number);
      expect(new Set(numbers).size, path).toBe(numbers.length);
      expect(numbers.length, path).toBeGreaterThan(0);
    }
  });
});
