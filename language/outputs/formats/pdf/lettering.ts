// Words in their typefaces, each shaped once by the library: how wide it is, and what a page shows for it. Knows no document.

/** What the library keeps of a typeface and what it works out with it, which its types leave out. */
export interface Face {
  readonly id: string;
  readonly ref: () => unknown;
  /** Codes of letters, in hexadecimal, with where they stand in thousandths of their size. */
  readonly encode: (text: string) => readonly [readonly string[], readonly Position[]];
  readonly font: { readonly hasGlyphForCodePoint: (code: number) => boolean };
}

interface Position {
  readonly xAdvance: number;
  /** Of the letter where nothing stands beside it. */
  readonly advanceWidth: number;
  readonly xOffset: number;
  readonly yOffset: number;
}

interface Shape {
  /** In thousandths of its size. */
  readonly width: number;
  /** What the operator TJ shows; null where a letter stands out of its line. */
  readonly codes: string | null;
}

/** Of texts without breaks. */
export interface Lettering {
  readonly face: (bold: boolean) => Face;
  /** In thousandths of its size. */
  readonly widthOf: (text: string, bold: boolean) => number;
  /** What the operator TJ shows; null where a letter stands out of its line. */
  readonly codesOf: (text: string, bold: boolean) => string | null;
  /** The characters of a text that have no letter: an empty box stands for each. */
  readonly missingIn: (text: string) => readonly string[];
}

/** @param doc with the typefaces `regular` and `bold` */
export function letteringOf(doc: PDFKit.PDFDocument): Lettering {
  const opened = (name: string): { readonly face: Face; readonly shapes: Map<string, Shape> } => ({
    face: (doc.font(name) as unknown as { readonly _font: Face })._font,
    shapes: new Map(),
  });
  const [strong, regular] = [opened("bold"), opened("regular")];
  const shapeOf = (word: string, bold: boolean): Shape => {
    const { face, shapes } = bold ? strong : regular;
    let shape = shapes.get(word);
    if (shape === undefined) {
      shape = shapedBy(face, word);
      shapes.set(word, shape);
    }
    return shape;
  };
  return {
    face: (bold) => (bold ? strong : regular).face,
    widthOf: (text, bold) => {
      let width = 0;
      for (const word of wordsIn(text)) width += shapeOf(word, bold).width;
      return width;
    },
    codesOf: (text, bold) => {
      let codes = "";
      for (const word of wordsIn(text)) {
        const shape = shapeOf(word, bold);
        if (shape.codes === null) return null;
        codes += shape.codes;
      }
      return codes.replaceAll("><", "");
    },
    missingIn: (text) =>
      [...new Set(text)].filter(
        (sign) => !UNSEEN.test(sign) && !regular.face.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0),
      ),
  };
}

/** Spaces are words too: no letter is drawn nearer to them or becomes one with them. */
function wordsIn(text: string): readonly string[] {
  return SPACE.test(text) ? text.split(SPACE) : [text];
}

const SPACE = /([ \u00a0])/;

/** What leaves no mark on paper in any typeface. */
const UNSEEN = /[\s\p{Cc}\p{Default_Ignorable_Code_Point}]/u;

function shapedBy(face: Face, word: string): Shape {
  const [letters, positions] = face.encode(word);
  let [width, codes, run] = [0, "", ""];
  positions.forEach(({ xAdvance, advanceWidth }, at) => {
    width += xAdvance;
    run += letters[at];
    const apart = advanceWidth - xAdvance;
    if (apart === 0) return;
    codes += `<${run}>${rounded(apart)}`;
    run = "";
  });
  if (run !== "") codes += `<${run}>`;
  const isInLine = positions.every(({ xOffset, yOffset }) => xOffset === 0 && yOffset === 0);
  return { width, codes: isInLine ? codes : null };
}

/** As exact as the library writes numbers. */
export function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
