// Draws tagged text and lines on the pages of a PDF. With lettering.ts and scraps.ts what knows pdfkit; knows no document.
import type PDFDocument from "pdfkit";
import { type Lettering, rounded } from "./lettering.ts";

/** A node of the structure that a screen reader walks: a standard type of PDF 1.7, below its parent. */
export interface Tag {
  readonly type: string;
  readonly parent: Tag | null;
  /** Of what a heading cell is the heading. */
  readonly scope?: "Row" | "Column";
  /** Where it is not that of the document. */
  readonly language?: string;
  /** All that a picture shows. */
  readonly alt?: string;
}

export interface Look {
  readonly size: number;
  readonly bold?: boolean;
  readonly colour?: string;
}

/** Lengths in points, from the upper left corner of the page. */
export interface Pen {
  /** What is drawn belongs to the tag. */
  readonly within: (tag: Tag, draw: () => void) => void;
  /** What is drawn means nothing: lines, grounds. */
  readonly beside: (draw: () => void) => void;
  /** What is drawn stands at the head or foot of each page. */
  readonly onEachPage: (edge: "Top" | "Bottom", draw: () => void) => void;
  /** @param baseline where the letters stand */
  readonly letters: (text: string, x: number, baseline: number, look: Look) => void;
  /** @param stands for what it is, to a reader of the text */
  readonly tickBox: (x: number, top: number, size: number) => void;
  readonly line: (x1: number, y1: number, x2: number, y2: number, line: Line) => void;
  readonly box: (x: number, top: number, width: number, height: number, fill: Fill) => void;
  readonly disc: (x: number, y: number, radius: number, fill: Fill) => void;
  readonly shape: (points: readonly (readonly [number, number])[], fill: Fill) => void;
  /** Path data of SVG, with lengths of its own. */
  readonly outline: (path: string, x: number, y: number, scale: number, fill: Fill) => void;
  /** Across the page, beneath all else. */
  readonly watermark: (text: string, width: number, height: number) => void;
  readonly picture: (bytes: Uint8Array, x: number, top: number, width: number) => void;
  readonly newPage: () => void;
  /** A heading in the list of contents that viewers show. */
  readonly bookmark: (level: number, title: string) => void;
}

export interface Line {
  readonly width: number;
  readonly colour?: string;
  readonly dash?: boolean;
}

export interface Fill {
  readonly ground?: string;
  readonly edge?: Line;
}

type Doc = InstanceType<typeof PDFDocument>;
type Element = PDFKit.PDFStructureElement;
type Outline = PDFKit.PDFOutline;

const INK = "#000000";

/** What the page was told last, and need not be told again. */
interface Told {
  readonly ground: string | null;
  readonly edge: string | null;
  readonly width: number | null;
}

const NOTHING: Told = { ground: null, edge: null, width: null };

/** On one line, where the letters stand. */
const AS_IT_IS = { lineBreak: false, baseline: "alphabetic" } as const;

/** @param doc tagged, with the typefaces `regular` and `bold` */
export function penOn(doc: Doc, lettering: Lettering): Pen {
  const elements = new Map<Tag, Element>();
  const elementOf = (tag: Tag): Element => {
    const known = elements.get(tag);
    if (known !== undefined) return known;
    const { type, scope, alt, language } = tag;
    const element = doc.struct(type, {
      ...(scope === undefined ? {} : { scope }),
      ...(alt === undefined ? {} : { alt }),
      ...(language === undefined ? {} : { lang: language }),
    } as PDFKit.Mixins.StructureElementOptions);
    if (tag.parent === null) doc.addStructure(element);
    else elementOf(tag.parent).add(element);
    elements.set(tag, element);
    return element;
  };
  let told = NOTHING;
  const filling = (ground: string): void => {
    if (ground === told.ground) return;
    doc.fillColor(ground);
    told = { ...told, ground };
  };
  const edged = ({ width, colour = INK, dash = false }: Line): void => {
    if (width !== told.width) doc.lineWidth(width);
    if (colour !== told.edge) doc.strokeColor(colour);
    if (width !== told.width || colour !== told.edge) told = { ...told, width, edge: colour };
    if (dash) doc.dash(2, { space: 3 });
  };
  /** What it is told within, the page forgets behind it. */
  const apart = (draw: () => void): void => {
    doc.save();
    draw();
    doc.restore();
    told = NOTHING;
  };
  const painted = ({ ground, edge }: Fill): void => {
    if (edge !== undefined) edged(edge);
    if (ground !== undefined) filling(ground);
    if (ground !== undefined && edge !== undefined) doc.fillAndStroke();
    else if (ground !== undefined) doc.fill();
    else doc.stroke();
    if (edge?.dash === true) doc.undash();
  };
  const artifact = (options: PDFKit.Mixins.MarkingOptions, draw: () => void): void => {
    doc.markContent("Artifact", options);
    draw();
    doc.endMarkedContent();
  };
  const chapters: Outline[] = [doc.outline];
  return {
    within: (tag, draw) => {
      const element = elementOf(tag);
      const content = doc.markStructureContent(tag.type);
      draw();
      doc.endMarkedContent();
      element.add(content);
    },
    beside: (draw) => artifact({ type: "Layout" }, draw),
    onEachPage: (edge, draw) => artifact({ type: "Pagination", attached: [edge] }, draw),
    letters: (text, x, baseline, { size, bold = false, colour = INK }) => {
      filling(colour);
      const codes = lettering.codesOf(text, bold);
      if (codes === null) {
        doc.font(bold ? "bold" : "regular", size).text(text, x, baseline, AS_IT_IS);
        return;
      }
      const face = lettering.face(bold);
      (doc.page as unknown as { readonly fonts: Record<string, unknown> }).fonts[face.id] ??= face.ref();
      const at = `1 0 0 -1 ${rounded(x)} ${rounded(baseline)} Tm`;
      doc.addContent(`BT\n/${face.id} ${rounded(size)} Tf\n${at}\n[${codes}] TJ\nET`);
    },
    tickBox: (x, top, size) => {
      doc.markContent("Span", { actual: "☐" });
      doc.rect(x, top, size, size);
      painted({ ground: "#ffffff", edge: { width: 1.5 } });
      doc.endMarkedContent();
    },
    line: (x1, y1, x2, y2, line) => {
      doc.moveTo(x1, y1).lineTo(x2, y2);
      painted({ edge: line });
    },
    box: (x, top, width, height, fill) => {
      doc.rect(x, top, width, height);
      painted(fill);
    },
    disc: (x, y, radius, fill) => {
      doc.circle(x, y, radius);
      painted(fill);
    },
    shape: (points, fill) => {
      points.forEach(([x, y], at) => void (at === 0 ? doc.moveTo(x, y) : doc.lineTo(x, y)));
      doc.closePath();
      painted(fill);
    },
    outline: (path, x, y, scale, fill) => {
      apart(() => {
        doc.translate(x, y).scale(scale).path(path);
        if (fill.ground !== undefined || fill.edge !== undefined) painted(fill);
      });
    },
    watermark: (text, width, height) => {
      apart(() => {
        doc.rotate(-52, { origin: [width / 2, height / 2] });
        doc.font("bold", 130).fillColor("#ececec");
        const long = doc.widthOfString(text);
        doc.text(text, (width - long) / 2, height / 2, { lineBreak: false, baseline: "middle" });
      });
    },
    picture: (bytes, x, top, width) => {
      try {
        doc.image(bytes as Buffer, x, top, { width });
      } catch {
        // A damaged picture: what it is called stands below it all the same.
      }
    },
    newPage: () => {
      doc.addPage();
      told = NOTHING;
    },
    bookmark: (level, title) => {
      chapters.length = Math.min(chapters.length, level);
      const parent = chapters.at(-1) ?? doc.outline;
      chapters.push(parent.addItem(title));
    },
  };
}
