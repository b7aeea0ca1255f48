// Ids of what is marked: the same however the checklist is laid out, each once, and every one of them on the page.
import { describe, expect, test } from "vitest";
import { openSamples, plainTexts } from "#harness/samples.ts";
import { elementsIn, readHtml } from "../html-reader.ts";
import { make, makeFrom } from "../make.ts";
import { around, COVER } from "../procedures.ts";
import { planFor } from "./fill.ts";

test("ids are the number of the step, the line in it, the pass and the round", () => {
  const ids = planFor(COVER).entries.map(({ id }) => id);
  expect(ids.slice(0, 5)).toEqual(["start:1", "1.1:1", "1.2:1", "1.3:1", "1.4:1@n=2"]);
  expect(ids).toContain("1.5:1#3");
  expect(ids.slice(-4)).toEqual(["1.6:1", "1.6:2", "1.6:record-1", "end:1"]);
  expect(ids.filter((id) => id.startsWith("1.5"))).toEqual(["1.5:1#1", "1.5:1#2", "1.5:1#3", "1.5:sign-1", "1.5:hold"]);
});

test("a plan is the same whether repeats stand once or are written out, and in whichever units", () => {
  const plan = planFor(COVER);
  expect(planFor(COVER, { repeats: "full", units: "us" })).toEqual(plan);
});

test("repeats are worked through pass by pass, also where they stand once", () => {
  const plan = planFor(around("repeat n from 1 to 2 { step inspect Screw[n] step inspect Foot[n] }"));
  const order = plan.program.flatMap((op) => (op.op === "mark" ? [op.of] : []));
  expect(order).toEqual(["1:1@n=1", "2:1@n=1", "1:1@n=2", "2:1@n=2"]);
});

test("a performed procedure has ids of its own below its step", () => {
  const text = `${around("step perform Other\nstep inspect Base")}\nprocedure Other "Other" { step inspect Base }\n`;
  expect(planFor(text).entries.map(({ id }) => id)).toEqual(["1.1:1", "1:1", "2:1"]);
});

test("limits are exact in the coherent unit, and both units carry over exactly", () => {
  const plan = planFor(around('step { record "gap" 0.2 .. 1.2 mm }'));
  expect(plan.entries[0]).toMatchObject({
    kind: "reading",
    limits: { low: "1/5000", high: "3/2500" },
    units: [
      { text: "mm", scale: "1/1000", zero: "0" },
      { text: "in", scale: "127/5000", zero: "0" },
    ],
  });
  const warm = planFor(around('step { record "oil" 10 .. 30 °C }'));
  expect(warm.entries[0]).toMatchObject({
    limits: { low: "5663/20", high: "6063/20" },
    units: [
      { text: "°C", scale: "1", zero: "5463/20" },
      { text: "°F", scale: "5/9", zero: "45967/180" },
    ],
  });
});

test("a draft and a trainee's sheet are not filled in", () => {
  expect(make(COVER, { draft: true }).document.record).toBeNull();
  expect(make(COVER, { draft: true }).html).not.toContain("<script");
});

describe("every sample without an error", () => {
  const workspace = openSamples();
  const filled = [...plainTexts.keys()].flatMap((path) =>
    (workspace.loaded.models.get(path)?.procedures ?? []).flatMap((_, at) => {
      const { document, html } = makeFrom(workspace, path, at);
      return document.record === null ? [] : [{ path, at, plan: document.record, html }];
    }),
  );

  test("there are some", () => {
    expect(filled.length).toBeGreaterThan(20);
  });

  test.each(filled)(
    "$path $at: each entry has its place on the page, each place its entry",
    ({ plan, html, path, at }) => {
      const ids = plan.entries.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const text of [html, makeFrom(workspace, path, at, { repeats: "full" }).html]) {
        const elements = [...elementsIn(readHtml(text))];
        const marks = elements.flatMap((one) => one.attributes.get("data-of") ?? []);
        const asked = elements.flatMap((one) => JSON.parse(one.attributes.get("data-ask") ?? "[]") as string[]);
        const places = new Set([...marks, ...asked]);
        expect(ids.filter((id) => !places.has(id))).toEqual([]);
        expect([...places].filter((id) => !ids.includes(id))).toEqual([]);
      }
    },
  );
});
