// An SVG picture as outlines and lines of text, for formats that cannot show the file itself: paths, basic shapes and plain text in plain
// colours. Where anything else would be seen (patterns, style sheets, turned text, pictures within) there is no drawing, rather than
// one that shows something else. Knows no format.
import type { Picture } from "../document.ts";
import { readSvg, type SvgElement } from "./svg-elements.ts";
import { IDENTITY, type Matrix, moved, times, transformedPath } from "./svg-path.ts";

/** Lengths in pixels of a screen, from the upper left corner. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

export type Shape = Outline | Lettering;

export interface Outline {
  readonly kind: "outline";
  /** Absolute `M`, `L`, `C` and `Z`. */
  readonly path: string;
  /** `#rrggbb` */
  readonly fill: string | null;
  readonly edge: { readonly colour: string; readonly width: number; readonly dash: boolean } | null;
}

export interface Lettering {
  readonly kind: "lettering";
  readonly text: string;
  /** Where the letters stand. */
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  readonly size: number;
  readonly bold: boolean;
  readonly colour: string;
}

/** Null for another sort of picture, and where not all of it can be drawn. */
export function drawingOf(image: Picture["image"]): Drawing | null {
  const root = image?.type === "image/svg+xml" ? readSvg(new TextDecoder().decode(image.bytes)) : null;
  if (root === null) return null;
  const view = viewOf(root);
  if (view === null) return null;
  const { x, y, width, height, scale } = view;
  const shapes: Shape[] = [];
  const look: Look = { matrix: [scale, 0, 0, scale, -x * scale, -y * scale], style: INITIAL };
  const isWhole = childrenDrawn(root, look, shapes) && shapes.length <= MOST_SHAPES;
  return isWhole && shapes.length > 0 ? { width: width * scale, height: height * scale, shapes } : null;
}

const MOST_SHAPES = 3000;

interface View {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** From its own units to pixels. */
  readonly scale: number;
}

/** Its box, and how large it is to be shown; without a box of its own it has pixels. */
function viewOf({ attributes }: SvgElement): View | null {
  const [shownWidth, shownHeight] = [lengthIn(attributes.get("width")), lengthIn(attributes.get("height"))];
  const box = attributes
    .get("viewBox")
    ?.trim()
    .split(/[\s,]+/)
    .map(Number) ?? [0, 0, shownWidth ?? 0, shownHeight ?? 0];
  const [x = Number.NaN, y = Number.NaN, width = 0, height = 0] = box;
  if (![x, y, width, height].every(Number.isFinite) || width <= 0 || height <= 0) return null;
  const fits = Math.min((shownWidth ?? Infinity) / width, (shownHeight ?? Infinity) / height);
  if (fits <= 0) return null;
  return { x, y, width, height, scale: Number.isFinite(fits) ? fits : 1 };
}

/** Pixels of a length; null where it is none, or a share of something. */
function lengthIn(text: string | undefined): number | null {
  const [, number, unit = ""] = /^\s*([+-]?[\d.]+(?:e[+-]?\d+)?)(px|mm|cm|in|pt|)\s*$/i.exec(text ?? "") ?? [];
  const perUnit = UNITS.get(unit.toLowerCase());
  return number === undefined || perUnit === undefined ? null : Number(number) * perUnit;
}

/** CSS Values and Units 3, 6.2: an inch has 96 pixels. */
const UNITS: ReadonlyMap<string, number> = new Map([
  ["", 1],
  ["px", 1],
  ["in", 96],
  ["cm", 96 / 2.54],
  ["mm", 96 / 25.4],
  ["pt", 96 / 72],
]);

/** Properties that come down from what is around, as written. */
type Style = ReadonlyMap<string, string>;

interface Look {
  readonly matrix: Matrix;
  readonly style: Style;
}

const INITIAL: Style = new Map([
  ["fill", "black"],
  ["stroke", "none"],
  ["stroke-width", "1"],
  ["stroke-dasharray", "none"],
  ["font-size", "16"],
  ["font-weight", "normal"],
  ["text-anchor", "start"],
]);

/** Those that change what is seen in ways that are not drawn, with the value that changes nothing. */
const PLAIN: ReadonlyMap<string, readonly string[]> = new Map([
  ["opacity", ["1"]],
  ["fill-opacity", ["1"]],
  ["stroke-opacity", ["1"]],
  ["visibility", ["visible"]],
  ["clip-path", ["none"]],
  ["mask", ["none"]],
  ["filter", ["none"]],
  ["marker-start", ["none"]],
  ["marker-mid", ["none"]],
  ["marker-end", ["none"]],
  ["dominant-baseline", ["auto", "alphabetic"]],
  ["fill-rule", ["nonzero"]],
]);

/** False where something in it cannot be drawn. */
function childrenDrawn({ children }: SvgElement, look: Look, shapes: Shape[]): boolean {
  return children.every((child) => typeof child === "string" || drawn(child, look, shapes));
}

/** Says something of the drawing, and shows nothing. */
const UNSEEN: ReadonlySet<string> = new Set(["title", "desc", "metadata"]);

function drawn(element: SvgElement, around: Look, shapes: Shape[]): boolean {
  const { name, children } = element;
  // Elements with a prefix are notes of the program that wrote the file.
  if (UNSEEN.has(name) || name.includes(":")) return true;
  if (name === "defs") return children.every((child) => typeof child === "string");
  const look = lookOf(element, around);
  if (look === null) return false;
  if (look.style.get("display") === "none") return true;
  if (name === "g" || name === "a") return childrenDrawn(element, look, shapes);
  const shape = name === "text" ? letteringOf(element, look) : outlineOf(element, look);
  if (shape === null) return false;
  shapes.push(shape);
  return true;
}

/** With its own attributes and style; null where one of them is not drawn. */
function lookOf({ attributes }: SvgElement, { matrix, style }: Look): Look | null {
  const declared = (attributes.get("style") ?? "").split(";").flatMap((one) => {
    const [name = "", value = ""] = one.split(/:(.*)/s);
    return name.trim() === "" ? [] : [[name.trim(), value.trim()] as const];
  });
  const own = new Map([...attributes, ...declared]);
  if (attributes.has("class") || [...PLAIN].some(([name, plain]) => !plain.includes(own.get(name) ?? plain[0] ?? "")))
    return null;
  const transform = transformOf(own.get("transform") ?? "");
  if (transform === null) return null;
  const inherited = [...INITIAL.keys(), "display"].flatMap((name) => {
    const value = own.get(name);
    return value === undefined || value === "inherit" ? [] : [[name, value] as const];
  });
  return { matrix: times(matrix, transform), style: new Map([...style, ...inherited]) };
}

function transformOf(text: string): Matrix | null {
  let rest = text.trim();
  let matrix = IDENTITY;
  while (rest !== "") {
    const [whole = "", name = "", given = ""] = /^(\w+)\s*\(([^)]*)\)[\s,]*/.exec(rest) ?? [];
    const one =
      whole === ""
        ? null
        : oneTransform(
            name,
            given
              .trim()
              .split(/[\s,]+/)
              .map(Number),
          );
    if (one === null || !one.every(Number.isFinite)) return null;
    matrix = times(matrix, one);
    rest = rest.slice(whole.length);
  }
  return matrix;
}

function oneTransform(name: string, given: readonly number[]): Matrix | null {
  const [first = Number.NaN, second, third] = given;
  switch (name) {
    case "translate":
      return [1, 0, 0, 1, first, second ?? 0];
    case "scale":
      return [first, 0, 0, second ?? first, 0, 0];
    case "rotate": {
      const [sin, cos] = [Math.sin((first * Math.PI) / 180), Math.cos((first * Math.PI) / 180)];
      const [x, y] = [second ?? 0, third ?? 0];
      return times([1, 0, 0, 1, x, y], times([cos, sin, -sin, cos, 0, 0], [1, 0, 0, 1, -x, -y]));
    }
    case "matrix":
      return given.length === 6 ? (given as unknown as Matrix) : null;
    default:
      return null;
  }
}

function outlineOf(element: SvgElement, { matrix, style }: Look): Outline | null {
  const data = dataOf(element);
  const path = data === null ? null : transformedPath(data, matrix);
  const fill = colourOf(style.get("fill"));
  const stroke = colourOf(style.get("stroke"));
  const width = lengthIn(style.get("stroke-width"));
  if (path === null || fill === undefined || stroke === undefined || width === null) return null;
  const dash = style.get("stroke-dasharray") !== "none";
  const edge = stroke === null || width === 0 ? null : { colour: stroke, width: width * growth(matrix), dash };
  return { kind: "outline", path, fill: element.name === "line" ? null : fill, edge };
}

/** How much longer lines become. */
function growth([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** What an element draws, as path data; null for one that is none of those that are drawn, or is not whole. */
function dataOf({ name, attributes }: SvgElement): string | null {
  const of = (attribute: string): number => lengthIn(attributes.get(attribute) ?? "0") ?? Number.NaN;
  const whole = (data: string): string | null => (data.includes("NaN") ? null : data);
  switch (name) {
    case "path":
      return attributes.get("d") ?? null;
    case "line":
      return whole(`M${of("x1")} ${of("y1")}L${of("x2")} ${of("y2")}`);
    case "polyline":
    case "polygon":
      return `M${attributes.get("points") ?? ""}${name === "polygon" ? "Z" : ""}`;
    case "circle":
      return whole(ellipse(of("cx"), of("cy"), of("r"), of("r")));
    case "ellipse":
      return whole(ellipse(of("cx"), of("cy"), of("rx"), of("ry")));
    case "rect": {
      // Round corners are drawn by nobody here; a rectangle without them would be another.
      if (attributes.has("rx") || attributes.has("ry")) return null;
      return whole(`M${of("x")} ${of("y")}h${of("width")}v${of("height")}h${-of("width")}Z`);
    }
    default:
      return null;
  }
}

function ellipse(x: number, y: number, rx: number, ry: number): string {
  return `M${x - rx} ${y}A${rx} ${ry} 0 1 1 ${x + rx} ${y}A${rx} ${ry} 0 1 1 ${x - rx} ${y}Z`;
}

/** One line of upright text. */
function letteringOf({ attributes, children }: SvgElement, { matrix, style }: Look): Lettering | null {
  const [a, b, c, d] = matrix;
  const size = lengthIn(style.get("font-size"));
  const colour = colourOf(style.get("fill"));
  const anchor = style.get("text-anchor") ?? "";
  const [x, y] = [lengthIn(attributes.get("x") ?? "0"), lengthIn(attributes.get("y") ?? "0")];
  const isUpright = b === 0 && c === 0 && a > 0 && Math.abs(a - d) < 1e-9;
  const isPlain =
    children.every((child) => typeof child === "string") && !attributes.has("dx") && !attributes.has("dy");
  if (!isUpright || !isPlain || size === null || colour == null || x === null || y === null || !isAnchor(anchor))
    return null;
  const [atX, atY] = moved(matrix, x, y);
  const text = children.join("").replace(/\s+/g, " ").trim();
  const bold = /^(?:bold|bolder|[6-9]00)$/.test(style.get("font-weight") ?? "");
  return { kind: "lettering", text, x: atX, y: atY, anchor, size: size * a, bold, colour };
}

function isAnchor(text: string): text is Lettering["anchor"] {
  return text === "start" || text === "middle" || text === "end";
}

/** `#rrggbb`; null for none, undefined for one that is not known. */
function colourOf(text = ""): string | null | undefined {
  const name = text.trim().toLowerCase();
  if (name === "none" || name === "transparent") return null;
  if (/^#[\da-f]{6}$/.test(name)) return name;
  if (/^#[\da-f]{3}$/.test(name)) return `#${[...name.slice(1)].map((digit) => digit + digit).join("")}`;
  const [, ...parts] = /^rgb\(\s*(\d{1,3})\s*,\s*(\d{1,3})\s*,\s*(\d{1,3})\s*\)$/.exec(name) ?? [];
  if (parts.length === 3)
    return `#${parts.map((part) => Math.min(255, Number(part)).toString(16).padStart(2, "0")).join("")}`;
  return COLOURS.get(name);
}

/** The basic colours of CSS Color 3, 4.1, its greys (4.3), and what `currentColor` is on paper. */
const COLOURS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    currentcolor: "#000000",
    black: "#000000",
    silver: "#c0c0c0",
    gray: "#808080",
    grey: "#808080",
    white: "#ffffff",
    maroon: "#800000",
    red: "#ff0000",
    purple: "#800080",
    fuchsia: "#ff00ff",
    green: "#008000",
    lime: "#00ff00",
    olive: "#808000",
    yellow: "#ffff00",
    navy: "#000080",
    blue: "#0000ff",
    teal: "#008080",
    aqua: "#00ffff",
    orange: "#ffa500",
    lightgray: "#d3d3d3",
    lightgrey: "#d3d3d3",
    darkgray: "#a9a9a9",
    darkgrey: "#a9a9a9",
    dimgray: "#696969",
    dimgrey: "#696969",
    whitesmoke: "#f5f5f5",
  }),
);
