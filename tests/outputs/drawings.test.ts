// Drawings of numbered places: every number clear of every other, positions the way round that the ring says, the order of tightening
// that of published sequences, and words for who cannot see it.
import { describe, expect, test } from "vitest";
import type { CircleFigure } from "#outputs/drawings/circle-figure.ts";
import { circleSvg } from "#outputs/drawings/circle-svg.ts";
import { blocksIn, make } from "./make.ts";

interface Item {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly text: string;
}

describe("on the drawing", () => {
  const counts = Array.from({ length: 60 }, (_, at) => at + 1);
  test.each(["circle", "row"] as const)("no number touches another or another's disc, %s, 1 to 60 places", (shape) => {
    let compared = 0;
    for (const count of counts) {
      const svg = circleSvg(figure(count, shape === "circle"));
      const [texts, discs] = [textsIn(svg), discsIn(svg)];
      expect(texts).toHaveLength(2 * count);
      expect(discs).toHaveLength(count);
      for (const [at, one] of texts.entries()) {
        for (const other of texts.slice(at + 1)) {
          compared++;
          if (meet(one, other)) expect.fail(`${count} places: ${one.text} meets ${other.text}`);
        }
        const foreign = discs.filter((disc) => Math.hypot(disc.x - one.x, disc.y - one.y) > 1);
        for (const disc of foreign) if (meet(one, disc)) expect.fail(`${count} places: ${one.text} meets a disc`);
      }
      const [, width = "0", height = "0"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
      for (const { x, y, halfWidth, halfHeight } of [...texts, ...discs]) {
        expect(Math.min(x - halfWidth, y - halfHeight)).toBeGreaterThanOrEqual(0);
        expect(x + halfWidth).toBeLessThanOrEqual(Number(width));
        expect(y + halfHeight).toBeLessThanOrEqual(Number(height));
      }
    }
    console.log(`drawings: ${compared} pairs of numbers on ${shape}s compared`);
    expect(compared).toBeGreaterThan(10_000);
  });

  test("position 1 stands where the ring has it, and the next goes the way the ring is numbered", () => {
    const at = (numbered: string, clock: string): readonly string[] => {
      const { html } = make(bolts(4, `numbered ${numbered} seen from "drive end"  position 1 at ${clock}`));
      return placesRound(html);
    };
    // Read from 12 o'clock, clockwise on paper.
    expect(at("clockwise", "12 o'clock")).toEqual(["1", "2", "3", "4"]);
    expect(at("counterclockwise", "12 o'clock")).toEqual(["1", "4", "3", "2"]);
    expect(at("clockwise", "6 o'clock")).toEqual(["3", "4", "1", "2"]);
    expect(at("clockwise", "3 o'clock")).toEqual(["4", "1", "2", "3"]);
    expect(at("counterclockwise", "3 o'clock")).toEqual(["2", "1", "4", "3"]);
  });

  test("stands what it is, in words, with text escaped and colours of the page", () => {
    const svg = circleSvg({ ...figure(2, true), title: 'A "<b>" & C', text: "One > two." });
    expect(svg).toContain("<title>A &quot;&lt;b&gt;&quot; &amp; C</title>");
    expect(svg).toContain('role="img" aria-label="A &quot;&lt;b&gt;&quot; &amp; C. One &gt; two."');
    expect(svg).toContain('stroke="currentColor"');
    expect(svg).not.toMatch(/#[0-9a-f]{3}|rgb|black|white/i);
    expect(circleSvg(figure(9, true))).toBe(circleSvg(figure(9, true)));
  });
});

describe("on the checklist", () => {
  test.each([
    // The order in common use for eight and for twelve places (ASME PCC-1 style tables, as quoted by others; second).
    [8, [1, 5, 3, 7, 2, 6, 4, 8]],
    [12, [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12]],
  ])("a cross pattern over %i places is drawn with its order, and said", (count, order) => {
    const { document, html, md } = make(bolts(count));
    const [drawn] = figuresIn(document.blocks);
    const sequence = [...(drawn?.marks ?? [])].sort((a, b) => (a.order ?? 0) - (b.order ?? 0));
    expect(sequence.map(({ position }) => position)).toEqual(order);
    expect(drawn?.text).toContain(order.join(" – "));
    expect(html).toContain(`Order of positions: ${order.join(" – ")}.`);
    expect(html.match(/<figure class="circle"><svg /g)).toHaveLength(1);
    expect(md).toContain(`Order of positions: ${order.join(" – ")}.`);
    expect(md).not.toContain("<svg");
  });

  test("places that are no circle stand in a row, and the drawing says so", () => {
    const { document } = make(`holes Feet "motor feet" { count 4  order 1, 4, 2, 3 }
part Bolt[1..4] "foot bolt" { seats in Feet by number  thread "M10x1.5" }
procedure P "P" { step tighten Bolt[all] in order to 30 N·m }`);
    const [drawn] = figuresIn(document.blocks);
    expect(drawn?.round).toBe(false);
    expect(drawn?.marks.map(({ order }) => order)).toEqual([1, 3, 4, 2]);
    expect(drawn?.legend).toContain("not where they lie");
  });

  test("loosening in reverse order is drawn too, the last one first", () => {
    const feet = `holes Feet "motor feet" { count 4  order 1, 4, 2, 3 }
part Bolt[1..4] "foot bolt" { seats in Feet by number }
procedure P "P" { step loosen Bolt[all] in reverse order }`;
    const [drawn] = figuresIn(make(feet).document.blocks);
    expect(drawn?.title).toBe("Order of loosening on the motor feet");
    expect(drawn?.marks.map(({ order }) => order)).toEqual([4, 2, 1, 3]);
    expect(drawn?.text).toContain("3 – 2 – 4 – 1");
    expect(drawn?.legend).toContain("1. is loosened first");
    expect(figuresIn(make(feet.replace(" in reverse order", "")).document.blocks)).toEqual([]);
    const round = make(
      bolts(8).replace("tighten Bolt[all] in cross pattern to 30 N·m", "loosen Bolt[all] in reverse order"),
    );
    expect(figuresIn(round.document.blocks)[0]?.marks.map(({ order }) => order)).toEqual([8, 7, 6, 5, 4, 3, 2, 1]);
  });

  test("no drawing without a pattern, of one bolt, of bolts without a circle, or of more than 60 places", () => {
    const drawings = (text: string): number => figuresIn(make(text).document.blocks).length;
    expect(drawings(bolts(8).replace("in cross pattern ", ""))).toBe(0);
    expect(drawings(bolts(8).replace("Bolt[all] in", "Bolt[1] in"))).toBe(0);
    expect(drawings(bolts(8).replace("seats in Circle by number", ""))).toBe(0);
    expect(drawings(bolts(61))).toBe(0);
    expect(drawings(bolts(60))).toBe(1);
    expect(make(bolts(61)).html).toContain("Order of positions: 1 – ");
  });

  test("of part of a circle all places are drawn, and those worked on have an order", () => {
    const { document } = make(bolts(8).replace("Bolt[all] in", "Bolt[1, 3, 5, 7] in"));
    const [drawn] = figuresIn(document.blocks);
    expect(drawn?.marks).toHaveLength(8);
    expect(drawn?.marks.filter(({ order }) => order !== null).map(({ position }) => position)).toEqual([1, 3, 5, 7]);
  });
});

function bolts(count: number, ring = 'numbered clockwise seen from "drive end"  position 1 at 12 o\'clock'): string {
  return `ring Circle "bolt circle" { count ${count}  ${ring} }
part Bolt[1..${count}] "bolt" { seats in Circle by number  thread "M10x1.5" }
procedure P "P" { step tighten Bolt[all] in cross pattern to 30 N·m }`;
}

function figure(count: number, round: boolean): CircleFigure {
  const marks = Array.from({ length: count }, (_, at) => ({
    position: at + 1,
    turn: at / count,
    order: ((at * 7) % count) + 1,
  }));
  return { title: "Places", text: "", legend: "", round, marks };
}

function figuresIn(blocks: Parameters<typeof blocksIn>[0]): readonly CircleFigure[] {
  return [...blocksIn(blocks)].flatMap((block) =>
    block.kind === "instruction" && block.figure !== undefined ? [block.figure] : [],
  );
}

function textsIn(svg: string): readonly Item[] {
  return [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="(\d+)"[^>]*>([^<]*)</g)].map(
    ([, x, y, size, text = ""]) => ({
      x: Number(x),
      y: Number(y) - Number(size) * 0.36,
      // Figures of common typefaces are at most 0.66 of the size wide, bold ones 0.7; a point 0.35 (measured with Chromium).
      halfWidth: ([...text].reduce((sum, sign) => sum + (sign === "." ? 0.35 : 0.7), 0) * Number(size)) / 2,
      halfHeight: Number(size) * 0.38,
      text,
    }),
  );
}

function discsIn(svg: string): readonly Item[] {
  return [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="(13)"/g)].map(([, x, y, r]) => ({
    ...{ x: Number(x), y: Number(y), halfWidth: Number(r) * 0.92, halfHeight: Number(r) * 0.92 },
    text: "disc",
  }));
}

function meet(a: Item, b: Item): boolean {
  // Of a disc the corner of its square is empty.
  if (b.text === "disc") {
    const dx = Math.max(0, Math.abs(a.x - b.x) - a.halfWidth);
    const dy = Math.max(0, Math.abs(a.y - b.y) - a.halfHeight);
    return Math.hypot(dx, dy) < 13;
  }
  return Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight;
}

/** The positions as they follow each other clockwise on paper, from 12 o'clock. */
function placesRound(html: string): readonly string[] {
  const numbers = textsIn(html).filter(({ text }) => !text.endsWith("."));
  const middle = {
    x: numbers.reduce((sum, { x }) => sum + x, 0) / numbers.length,
    y: numbers.reduce((sum, { y }) => sum + y, 0) / numbers.length,
  };
  const turn = ({ x, y }: Item): number =>
    (Math.atan2(x - middle.x, middle.y - y) + 2 * Math.PI + 1e-9) % (2 * Math.PI);
  return [...numbers].sort((a, b) => turn(a) - turn(b)).map(({ text }) => text);
}
