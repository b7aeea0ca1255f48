// SVG pictures as outlines and lettering: shapes and paths against the geometry that they are of, and nothing drawn where not all of it
// can be.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Drawing, drawingOf } from "#outputs/drawings/svg-drawing.ts";
import { IDENTITY, transformedPath } from "#outputs/drawings/svg-path.ts";

const drawn = (text: string): Drawing | null =>
  drawingOf({ type: "image/svg+xml", bytes: new TextEncoder().encode(text) });
const svg = (inner: string, box = 'viewBox="0 0 100 50"'): string =>
  `<?xml version="1.0"?>\n<!-- a picture -->\n<svg xmlns="http://www.w3.org/2000/svg" ${box}>${inner}</svg>\n`;
const pathOf = (inner: string, box?: string): string | undefined => {
  const [shape] = drawn(svg(inner, box))?.shapes ?? [];
  return shape?.kind === "outline" ? shape.path : undefined;
};

describe("paths", () => {
  // SVG 1.1, 8.3: each right side says the same in absolute commands.
  test.each([
    ["m1 1 2 0 0 2z", "M1 1L3 1L3 3Z"],
    ["M1,1H5V4h-2v-1", "M1 1L5 1L5 4L3 4L3 3"],
    ["M0 0c1 0 2 1 2 2s1 2 2 2", "M0 0C1 0 2 1 2 2C2 3 3 4 4 4"],
    ["M0 0q3 0 3 3t3 3", "M0 0C2 0 3 1 3 3C3 5 4 6 6 6"],
    ["M0 0s1 1 2 2", "M0 0C0 0 1 1 2 2"],
    ["M-1-2l.5.5-1e1 0", "M-1 -2L-0.5 -1.5L-10.5 -1.5"],
    ["M1 1zl1 1", "M1 1ZL2 2"],
  ])("%s", (data, plain) => {
    expect(transformedPath(data, IDENTITY)).toBe(plain);
  });

  test.each(["", "L1 1", "M1", "M1 1 L2", "M1 1 X", "M1 1 z 3", "M1 1 a1 1 0 2 0 3 3", "M1 1 L one 2"])(
    "not whole: %j",
    (data) => {
      expect(transformedPath(data, IDENTITY)).toBeNull();
    },
  );

  test("flags of an arc may stand without a gap", () => {
    expect(transformedPath("M0 0a5 5 0 0110 0", IDENTITY)).toBe(transformedPath("M0 0 a 5 5 0 0 1 10 0", IDENTITY));
  });

  test("every corner and middle of an arc lies on its ellipse, turned, moved, on the side that it says", () => {
    const size = fc.integer({ min: 1, max: 50 });
    const any = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(size, size, fc.integer({ min: 0, max: 179 }), any, any, fc.boolean(), fc.boolean(), (...given) => {
        const [rx, ry, turn, x, y, isLarge, isPositive] = given;
        fc.pre(x !== 0 || y !== 0);
        const flags = `${Number(isLarge)} ${Number(isPositive)}`;
        const path = transformedPath(`M0 0A${rx} ${ry} ${turn} ${flags} ${x} ${y}`, IDENTITY) ?? "";
        const curves = [...path.matchAll(/C([^A-Z]+)/g)].map(([, numbers = ""]) => numbers.split(" ").map(Number));
        expect(curves.at(-1)?.slice(-2)).toEqual([x, y]);
        // In the ellipse's own directions, with both axes one long, all points are one away from one middle.
        const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
        let from = [0, 0];
        const points = curves.flatMap((curve) => {
          const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = curve;
          const [x0 = 0, y0 = 0] = from;
          from = [x3, y3];
          const half = [(x0 + 3 * x1 + 3 * x2 + x3) / 8, (y0 + 3 * y1 + 3 * y2 + y3) / 8];
          return [[x0, y0], half, [x3, y3]];
        });
        const own = points.map(([px = 0, py = 0]) => [(cos * px + sin * py) / rx, (cos * py - sin * px) / ry] as const);
        const grown = Math.max(1, Math.hypot((cos * x + sin * y) / 2 / rx, (cos * y - sin * x) / 2 / ry));
        const [middleX, middleY] = middleOf(own);
        // Of few points far apart the middle is known to about a thousandth of a pixel, and these axes are one long.
        for (const [px, py] of own)
          expect(Math.abs(Math.hypot(px - middleX, py - middleY) - grown)).toBeLessThan(0.02 * grown);
      }),
      { numRuns: 200 },
    );
  });

  /** Of the circle through the first, the second and the last point. */
  function middleOf(points: readonly (readonly [number, number])[]): readonly [number, number] {
    const [[ax, ay], [bx, by], [cx, cy]] = [points[0], points[1], points.at(-1)] as [number, number][] as [
      [number, number],
      [number, number],
      [number, number],
    ];
    const twice = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by));
    const [a, b, c] = [ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy];
    return [
      (a * (by - cy) + b * (cy - ay) + c * (ay - by)) / twice,
      (a * (cx - bx) + b * (ax - cx) + c * (bx - ax)) / twice,
    ];
  }
});

describe("shapes", () => {
  test("a line, a rectangle, corners", () => {
    expect(pathOf('<line x1="1" y1="2" x2="3" y2="4" stroke="black"/>')).toBe("M1 2L3 4");
    expect(pathOf('<rect x="1" y="2" width="3" height="4"/>')).toBe("M1 2L4 2L4 6L1 6Z");
    expect(pathOf('<polygon points="0,0 4,0 4,3"/>')).toBe("M0 0L4 0L4 3Z");
    expect(pathOf('<polyline points="0 0 4 0" fill="none" stroke="red"/>')).toBe("M0 0L4 0");
  });

  test("a circle is four curves between its outermost points", () => {
    const ends = [...(pathOf('<circle cx="10" cy="20" r="5"/>') ?? "").matchAll(/(-?[\d.]+) (-?[\d.]+)(?=C|Z)/g)];
    expect(ends.map(([, x, y]) => `${x} ${y}`)).toEqual(["5 20", "10 15", "15 20", "10 25", "5 20"]);
  });

  test("its box, its size and every transform around it move it", () => {
    const inner =
      '<g transform="translate(10 5)"><line x1="0" y1="0" x2="2" y2="0" transform="rotate(90) scale(2)"/></g>';
    expect(pathOf(inner)).toBe("M10 5L10 9");
    expect(pathOf(inner, 'viewBox="10 5 20 20" width="40"')).toBe("M0 0L0 8");
    expect(drawn(svg(inner, 'width="1in" height="25.4mm"'))).toMatchObject({ width: 96, height: 96 });
    expect(pathOf('<line x2="1" transform="rotate(180, 5, 5)"/>')).toBe("M10 10L9 10");
    expect(pathOf('<line x2="1" transform="matrix(0 1 1 0 3 4)"/>')).toBe("M3 4L3 5");
  });

  test("colours and widths come down from what is around, and own style counts most", () => {
    const { shapes } = drawn(
      svg(
        '<g fill="none" stroke="#f00" stroke-width="2" transform="scale(3)"><rect width="1" height="1"/><rect width="1" height="1" fill="blue" style="fill: rgb(1, 2, 3); stroke-dasharray: 4 2"/></g>',
      ),
    ) as Drawing;
    expect(shapes).toMatchObject([
      { fill: null, edge: { colour: "#ff0000", width: 6, dash: false } },
      { fill: "#010203", edge: { colour: "#ff0000", width: 6, dash: true } },
    ]);
  });

  test("text stands where it is tied", () => {
    const { shapes } = drawn(
      svg(
        '<g text-anchor="middle" font-size="4"><text x="5" y="6" font-weight="bold"> A &amp;\n&#66; </text></g>',
        'viewBox="0 0 10 10" width="20"',
      ),
    ) as Drawing;
    expect(shapes).toEqual([
      { kind: "lettering", text: "A & B", x: 10, y: 12, anchor: "middle", size: 8, bold: true, colour: "#000000" },
    ]);
  });
});

test.each([
  ["no SVG", "<html/>"],
  ["not closed", "<svg viewBox='0 0 1 1'><g></svg>"],
  ["an entity of its own", '<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 1 1"><text>&a;</text></svg>'],
  ["an entity that is not known", svg("<text>&nbsp;</text>")],
  ["no size", "<svg><rect width='1' height='1'/></svg>"],
  ["nothing in it", svg("<title>Empty</title>")],
  ["a style sheet", svg("<style>rect { fill: red }</style><rect width='1' height='1'/>")],
  ["a class", svg("<rect class='a' width='1' height='1'/>")],
  ["a gradient", svg("<rect fill='url(#a)' width='1' height='1'/>")],
  ["a colour that is not known", svg("<rect fill='chucknorris' width='1' height='1'/>")],
  ["half seen through", svg("<rect opacity='.5' width='1' height='1'/>")],
  ["a picture within", svg("<image href='a.png'/>")],
  ["turned text", svg("<text transform='rotate(90)'>A</text>")],
  ["text in parts", svg("<text>A<tspan dy='3'>B</tspan></text>")],
  ["round corners", svg("<rect rx='1' width='3' height='3'/>")],
  ["a script", svg("<script>alert(1)</script><rect width='1' height='1'/>")],
])("it is left to its caption: %s", (_title, text) => {
  expect(drawn(text)).toBeNull();
});

test("whatever stands in it, there is an answer", () => {
  const scrap = fc.constantFrom(
    "<svg viewBox='0 0 9 9'>",
    "</svg>",
    "<g>",
    "</g>",
    "<path d='M0 0",
    "'/>",
    "&#",
    "<!--",
    "-->",
    "A1 1",
  );
  fc.assert(
    fc.property(fc.array(fc.oneof(scrap, fc.string()), { maxLength: 12 }), (scraps) => {
      const drawing = drawn(scraps.join(""));
      expect(drawing === null || drawing.shapes.length > 0).toBe(true);
    }),
    { numRuns: 500 },
  );
});

test("the figures of the samples are drawn whole", () => {
  for (const [path, outlines, letterings] of [
    ["figures/cover-circle.svg", 10, 8],
    ["language/figures/lever.svg", 3, 0],
  ] as const) {
    const text = readFileSync(join(import.meta.dirname, "..", "..", "samples", path), "utf8");
    const { shapes = [] } = drawn(text) ?? {};
    const count = (kind: string): number => shapes.filter((shape) => shape.kind === kind).length;
    expect([count("outline"), count("lettering")]).toEqual([outlines, letterings]);
  }
});
