// The order of work, drawn: which boxes there are, how the ways lead, and that nothing lies over anything else.
import { describe, expect, test } from "vitest";
import { graphOf, type WorkGraph } from "#outputs/diagram/graph.ts";
import { placed, type Rectangle } from "#outputs/diagram/layout.ts";
import { diagramSvg } from "#outputs/diagram/svg.ts";
import { linesOf } from "#outputs/diagram/text-size.ts";
import { en } from "#outputs/words/en.ts";
import { documentAs, make } from "./make.ts";
import { around, COVER } from "./procedures.ts";

function graph(lines: string, declarations = ""): WorkGraph {
  return graphOf(documentAs("diagram", around(lines, declarations)), en);
}

/** Ways by what stands in their boxes; `~` goes back. */
function waysOf({ boxes, ways }: WorkGraph): readonly string[] {
  const name = (id: string): string => {
    const box = boxes.find((one) => one.id === id);
    return box?.number ?? box?.kind ?? "";
  };
  return ways.map(({ from, to, label, back }) => `${name(from)} ${back ? "~" : "-"}${label ?? ""}> ${name(to)}`);
}

describe("the ways", () => {
  test("steps follow one another, a hold point behind its step", () => {
    expect(waysOf(graph('step "a." step { do "b." hold for Fitter } step "c."'))).toEqual([
      "start -> 1",
      "1 -> 2",
      "2 -> hold",
      "hold -> 3",
      "3 -> end",
    ]);
  });

  test("arms part and come together; without an otherwise one way passes them by", () => {
    const option = 'option Size "size" { Big "big" Small "small" Odd "odd" }';
    const arms = 'when Size is Big { step "a." } otherwise when Size is Small { step "b." }';
    expect(waysOf(graph(`${arms} step "c."`, option))).toEqual([
      "start -> parting",
      "parting -If size is “big”> 1",
      "parting -Otherwise, if size is “small”> 2",
      "1 -> 3",
      "2 -> 3",
      "parting -Otherwise> 3",
      "3 -> end",
    ]);
    expect(waysOf(graph(`when Size is Big { step "a." } otherwise { step "b." }`, option))).toEqual([
      "start -> parting",
      "parting -If size is “big”> 1",
      "parting -Otherwise> 2",
      "1 -> end",
      "2 -> end",
    ]);
  });

  test("a failed check leads back to what is done again, and on from the check where it held", () => {
    const lines = 'step A "a." step { check "b" if it fails { return to A } } step "c."';
    expect(waysOf(graph(lines))).toEqual(["start -> 1", "1 -> 2", "2 -> 3", "3 -> end", "2 ~If it fails> 1"]);
  });

  test("a stop ends its way", () => {
    const lines = 'step { check "b" if it fails { stop "Send it back." } } step "c."';
    expect(waysOf(graph(lines))).toEqual(["start -> 1", "1 -If it fails> stop", "1 -> 2", "2 -> end"]);
  });

  test("a jump forwards passes by what lies between", () => {
    const lines = 'step { check "b" if it fails { go to C } } step "x." step C "c."';
    expect(waysOf(graph(lines))).toContain("1 -If it fails> 3");
  });
});

describe("the places", () => {
  const overlap = (a: Rectangle, b: Rectangle): boolean =>
    Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;

  test("no box lies over another, and all lie on the page", () => {
    const { boxes, width, height } = placed(graphOf(make(COVER).document, en));
    expect(boxes.length).toBeGreaterThan(8);
    for (const [at, a] of boxes.entries()) {
      expect(a.x - a.width / 2).toBeGreaterThanOrEqual(0);
      expect(a.x + a.width / 2).toBeLessThanOrEqual(width);
      expect(a.y + a.height / 2).toBeLessThanOrEqual(height);
      for (const b of boxes.slice(at + 1)) expect(overlap(a, b), `${a.box.text} / ${b.box.text}`).toBe(false);
    }
  });

  test("what comes later lies lower, but for ways back", () => {
    const { boxes, ways } = placed(graphOf(make(COVER).document, en));
    const top = new Map(boxes.map(({ box, y }) => [box.id, y]));
    const down = ways.map(({ way }) => [way.back, (top.get(way.to) ?? 0) > (top.get(way.from) ?? 0)]);
    expect(down.filter(([back]) => back)).toEqual([[true, false]]);
    expect(down.filter(([back, isDown]) => !back && !isDown)).toEqual([]);
  });

  test("a way back to the very step it comes from begins and ends at its box", () => {
    const { boxes, ways } = placed(graph('step A { check "b" if it fails { return to A } }'));
    const box = boxes.find((one) => one.box.number === "1");
    const way = ways.find((one) => one.way.from === one.way.to);
    const side = (box?.x ?? 0) + (box?.width ?? 0) / 2;
    const ends = [way?.points[0], way?.points.at(-1)];
    expect(ends.map((end) => end?.x)).toEqual([side, side]);
    for (const end of ends) expect(Math.abs((end?.y ?? 0) - (box?.y ?? 0))).toBeLessThan((box?.height ?? 0) / 2);
    expect(Math.max(...(way?.points ?? []).map(({ x }) => x))).toBeGreaterThan(side);
  });

  test("texts are broken between words, and long ones in themselves", () => {
    expect(linesOf("Install the cover over the pins", 12)).toEqual(["Install the", "cover over", "the pins"]);
    expect(linesOf("a ".repeat(2) + "x".repeat(25), 10)).toEqual([
      "a a",
      "x".repeat(10),
      "x".repeat(10),
      "x".repeat(5),
    ]);
    expect(linesOf("", 10)).toEqual([]);
  });
});

describe("the drawing", () => {
  test("names each step for links, marks what is critical, and says DRAFT", () => {
    const { document } = make(COVER, { draft: true });
    const svg = diagramSvg(document, en);
    expect(svg).toContain('<g class="step critical" id="box-step-1-5" data-step="step-1-5">');
    expect(svg).toContain("Hold for inspector");
    expect(svg).toContain('<text class="draft"');
    expect(diagramSvg(document, en)).toBe(svg);
  });

  test("text is never markup", () => {
    const svg = diagramSvg(documentAs("diagram", around('step "</text><script>alert(1)</script> & \\u0001."')), en);
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;/text&gt;&lt;script&gt;");
  });
});
