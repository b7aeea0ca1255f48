// Path data of SVG (SVG 1.1, 8.3) as moves, lines and curves from corner to corner, put through a transform. Knows no file.

/** `x' = a·x + c·y + e`, `y' = b·x + d·y + f`, as SVG writes it. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** First the inner, then the outer. */
export function times([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export function moved([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

type Point = readonly [x: number, y: number];

/** The same path in absolute `M`, `L`, `C` and `Z`, transformed; null where the data is not whole. */
export function transformedPath(data: string, matrix: Matrix): string | null {
  const commands = commandsIn(data);
  if (commands === null) return null;
  const out: string[] = [];
  const put = (letter: string, ...points: readonly Point[]): void => {
    out.push(
      letter +
        points
          .flatMap(([x, y]) => moved(matrix, x, y))
          .map(short)
          .join(" "),
    );
  };
  let [x, y, startX, startY] = [0, 0, 0, 0];
  // What a smooth curve goes on from: the last handle, and of which sort of curve.
  let handle: { readonly of: "c" | "q"; readonly at: Point } | null = null;
  for (const { letter, given } of commands) {
    const kind = letter.toLowerCase();
    const [fromX, fromY] = letter === kind ? [x, y] : [0, 0];
    const point = (nth: number): Point => [fromX + (given[nth] ?? 0), fromY + (given[nth + 1] ?? 0)];
    const from: Point = [x, y];
    const mirrored = (of: "c" | "q"): Point =>
      handle?.of === of ? [2 * x - handle.at[0], 2 * y - handle.at[1]] : from;
    const curve = (first: Point, second: Point, to: Point): void => {
      put("C", first, second, to);
      [x, y] = to;
    };
    const quadratic = (middle: Point, to: Point): void => {
      curve(thirds(from, middle), thirds(to, middle), to);
      handle = { of: "q", at: middle };
    };
    const cubic = (first: Point, second: Point, to: Point): void => {
      curve(first, second, to);
      handle = { of: "c", at: second };
    };
    const line = (to: Point): void => {
      put("L", to);
      [x, y] = to;
    };
    const smooth = { c: mirrored("c"), q: mirrored("q") };
    handle = null;
    switch (kind) {
      case "m":
        [x, y] = point(0);
        [startX, startY] = [x, y];
        put("M", [x, y]);
        break;
      case "l":
        line(point(0));
        break;
      case "h":
        line([point(0)[0], y]);
        break;
      case "v":
        line([x, fromY + (given[0] ?? 0)]);
        break;
      case "c":
        cubic(point(0), point(2), point(4));
        break;
      case "s":
        cubic(smooth.c, point(0), point(2));
        break;
      case "q":
        quadratic(point(0), point(2));
        break;
      case "t":
        quadratic(smooth.q, point(0));
        break;
      case "a":
        for (const [first, second, to] of arcCurves(from, given, point(5))) curve(first, second, to);
        break;
      default:
        out.push("Z");
        [x, y] = [startX, startY];
    }
  }
  return out.join("");
}

/** A quadratic curve is a cubic one whose handles lie at two thirds. */
function thirds([x, y]: Point, [middleX, middleY]: Point): Point {
  return [x + ((middleX - x) * 2) / 3, y + ((middleY - y) * 2) / 3];
}

/** To a thousandth: far finer than any printer, and the same wherever it is worked out. */
function short(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

interface PathCommand {
  readonly letter: string;
  readonly given: readonly number[];
}

/** How many numbers each command takes. */
const TAKES: ReadonlyMap<string, number> = new Map(
  Object.entries({ m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 }),
);

/** Each with one set of numbers; null where something else stands there, or a set is not whole. */
function commandsIn(data: string): readonly PathCommand[] | null {
  const found: PathCommand[] = [];
  for (const [part] of data.trim().matchAll(/[a-z][^a-df-z]*|[^a-z]+/gi)) {
    const letter = part.charAt(0);
    const takes = TAKES.get(letter.toLowerCase());
    const numbers = takes === undefined ? null : numbersIn(part.slice(1), takes === 7);
    if (takes === undefined || numbers === null || (found.length === 0 && letter.toLowerCase() !== "m")) return null;
    if (takes === 0 ? numbers.length > 0 : numbers.length === 0 || numbers.length % takes > 0) return null;
    if (takes === 0) found.push({ letter, given: [] });
    for (let at = 0; at < numbers.length; at += takes) {
      // Points that follow a move are for lines.
      const own = at === 0 ? letter : letter === "m" ? "l" : letter === "M" ? "L" : letter;
      found.push({ letter: own, given: numbers.slice(at, at + takes) });
    }
  }
  return found.length === 0 ? null : found;
}

/** @param isArc whether of seven numbers the fourth and fifth are flags, which may stand without a gap */
function numbersIn(text: string, isArc: boolean): readonly number[] | null {
  const numbers: number[] = [];
  let at = 0;
  const take = (form: RegExp): string | undefined => {
    form.lastIndex = at;
    const [found] = form.exec(text) ?? [];
    at += found?.length ?? 0;
    return found;
  };
  for (take(/[\s,]*/y); at < text.length; take(/[\s,]*/y)) {
    const isFlag = isArc && [3, 4].includes(numbers.length % 7);
    const found = take(isFlag ? /[01]/y : /[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/iy);
    if (found === undefined) return null;
    numbers.push(Number(found));
  }
  return numbers;
}

/** An arc as curves of a quarter at most (SVG 1.1, F.6.5 and F.6.6; a quarter by 4/3·tan of a quarter of its angle). */
function arcCurves(
  [x1, y1]: Point,
  given: readonly number[],
  [x2, y2]: Point,
): readonly (readonly [Point, Point, Point])[] {
  const [givenX = 0, givenY = 0, degrees = 0, isLarge = 0, isPositive = 0] = given;
  if ((x1 === x2 && y1 === y2) || givenX === 0 || givenY === 0)
    return [
      [
        [x1, y1],
        [x2, y2],
        [x2, y2],
      ],
    ];
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const [halfX, halfY] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const [px, py] = [cos * halfX + sin * halfY, cos * halfY - sin * halfX];
  const grown = Math.max(1, Math.hypot(px / givenX, py / givenY));
  const [rx, ry] = [Math.abs(givenX) * grown, Math.abs(givenY) * grown];
  const [ux, uy] = [px / rx, py / ry];
  const size = ux * ux + uy * uy;
  const root = Math.sqrt(Math.max(0, 1 / size - 1)) * (isLarge === isPositive ? -1 : 1);
  const [middleX, middleY] = [root * uy, -root * ux];
  const start = Math.atan2(uy - middleY, ux - middleX);
  const turn = Math.atan2(-uy - middleY, -ux - middleX) - start;
  const whole = isPositive === 1 ? (turn < 0 ? turn + 2 * Math.PI : turn) : turn > 0 ? turn - 2 * Math.PI : turn;
  const parts = Math.max(1, Math.ceil(Math.abs(whole) / (Math.PI / 2) - 1e-9));
  const step = whole / parts;
  const reach = (4 / 3) * Math.tan(step / 4);
  // From the circle of one to where the arc lies.
  const placed = (x: number, y: number): Point => {
    const [ownX, ownY] = [rx * (x + middleX), ry * (y + middleY)];
    return [cos * ownX - sin * ownY + (x1 + x2) / 2, sin * ownX + cos * ownY + (y1 + y2) / 2];
  };
  return Array.from({ length: parts }, (_, part) => {
    const [from, to] = [start + part * step, start + (part + 1) * step];
    const [fromX, fromY, toX, toY] = [Math.cos(from), Math.sin(from), Math.cos(to), Math.sin(to)];
    return [
      placed(fromX - reach * fromY, fromY + reach * fromX),
      placed(toX + reach * toY, toY - reach * toX),
      part === parts - 1 ? [x2, y2] : placed(toX, toY),
    ];
  });
}
