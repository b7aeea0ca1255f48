// The library's document, written into scraps of bytes with less to do for each line. Knows no document of ours.
import PDFDocument from "pdfkit";

export interface BlankDocument {
  readonly doc: PDFKit.PDFDocument;
  /** All that is written, once the document has ended. */
  readonly bytes: () => Uint8Array;
}

/**
 * The library by itself hands out each scrap that it writes, and turns each line of a page or of an object into bytes of its own: as long
 * for that as for the rest.
 */
export function blankDocument(options: PDFKit.PDFDocumentOptions): BlankDocument {
  const scraps: Uint8Array[] = [];
  let lines: string[] = [];
  let letters = 0;
  const handOver = (): void => {
    scraps.push(bytesOf(lines, letters));
    lines = [];
    letters = 0;
  };
  let page: string[] = [];
  const doc = new (class extends PDFDocument {
    /** How many bytes are written. */
    declare _offset: number;
    _write(scrap: string | Uint8Array): void {
      if (typeof scrap === "string") {
        lines.push(scrap);
        letters += scrap.length + 1;
        this._offset += scrap.length + 1;
        if (letters > AT_ONCE) handOver();
      } else {
        handOver();
        scraps.push(scrap);
        this._offset += scrap.length;
      }
    }
    /** Nobody waits for what is written. */
    override push(): boolean {
      return true;
    }
    override addContent(line: string): this {
      page.push(line);
      return this;
    }
    /** Ends the page that there is. */
    override flushPages(): void {
      if (page.length > 0) this.page.write(page.join("\n"));
      page = [];
      super.flushPages();
    }
  })(options);
  const bytes = (): Uint8Array => {
    handOver();
    return joined(scraps);
  };
  return { doc, bytes };
}

/** Letters that are turned into bytes in one go. */
const AT_ONCE = 60_000;

/** Each letter is a byte. @param letters of the lines and of their ends */
function bytesOf(lines: readonly string[], letters: number): Uint8Array {
  const bytes = new Uint8Array(letters);
  let at = 0;
  for (const line of lines) {
    for (let nth = 0; nth < line.length; nth++) bytes[at++] = line.charCodeAt(nth);
    bytes[at++] = 10;
  }
  return bytes;
}

function joined(scraps: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(scraps.reduce((sum, scrap) => sum + scrap.length, 0));
  let at = 0;
  for (const scrap of scraps) {
    bytes.set(scrap, at);
    at += scrap.length;
  }
  return bytes;
}
