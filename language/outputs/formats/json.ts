// A document as data, for other programs; its form is in schema/document.schema.json. Knows nothing but the document.
import type { Document } from "../document.ts";
import type { Words } from "../words/en.ts";

/** @param words those of the document's fixed texts */
export function documentJson(document: Document, { language, direction }: Words): string {
  return `${JSON.stringify({ version: 1, language, direction, ...document }, plain, 2)}\n`;
}

/** Bytes of pictures in base 64, and without the places in the text, which change with every edit of it. */
function plain(this: Readonly<Record<string, unknown>>, key: string, given: unknown): unknown {
  // Bytes that Node has read come as its own kind of JSON; what they were is in the holder alone.
  const value = this[key] instanceof Uint8Array ? this[key] : given;
  if (key === "at" && typeof value === "object" && value !== null && "start" in value) return undefined;
  if (!(value instanceof Uint8Array)) return value;
  return btoa(Array.from(value, (byte) => String.fromCharCode(byte)).join(""));
}
