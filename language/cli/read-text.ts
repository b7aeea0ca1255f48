// Reads one file as text, or says why it is none; or as bytes. Knows no language.
import { isUtf8 } from "node:buffer";
import { readFileSync, type Stats, statSync } from "node:fs";
import { systemWords } from "./system-error.ts";

export type TextRead =
  /** `marked`: a byte order mark stood before the text. */
  | { readonly ok: true; readonly text: string; readonly marked: boolean }
  | { readonly ok: false; readonly message: string };

/** Far above any procedure, and what a machine can still hold as a tree. */
const MOST_BYTES = 24_000_000;

/**
 * The text without a byte order mark; a message to stand behind the path where there is none. Never waits for a pipe.
 * @param most bytes that are read
 */
export function readText(path: string, most = MOST_BYTES): TextRead {
  try {
    const stats = statSync(path);
    const message = unusable(stats, most);
    return message === null ? decode(readFileSync(path)) : { ok: false, message };
  } catch (error) {
    return { ok: false, message: systemWords(error) };
  }
}

/** The bytes of a file of at most so many; null where it is none, or none that can be read. */
export function readBytes(path: string, most: number): Uint8Array | null {
  try {
    const stats = statSync(path);
    return stats.isFile() && stats.size <= most ? readFileSync(path) : null;
  } catch {
    return null;
  }
}

/** As {@link readText}, of bytes that come from elsewhere. */
export function textIn(bytes: Buffer): TextRead {
  const message = tooLarge(bytes.length, MOST_BYTES);
  return message === null ? decode(bytes) : { ok: false, message };
}

function unusable(stats: Stats, most: number): string | null {
  if (stats.isDirectory()) return "is a folder, not a file.";
  return stats.isFile() ? tooLarge(stats.size, most) : "is a pipe or a device, not a file.";
}

function tooLarge(size: number, most: number): string | null {
  if (size <= most) return null;
  return `is too large: ${megabytes(size)} MB; ${megabytes(most)} MB is the most that is read.`;
}

function megabytes(bytes: number): string {
  const tenths = Math.ceil(bytes / 100_000);
  return tenths % 10 === 0 ? String(tenths / 10) : (tenths / 10).toFixed(1);
}

function decode(bytes: Buffer): TextRead {
  if (startsWith(bytes, 0xff, 0xfe) || startsWith(bytes, 0xfe, 0xff)) {
    return { ok: false, message: "is UTF-16 text. Save it as UTF-8." };
  }
  if (bytes.includes(0)) return { ok: false, message: "is not text: it holds zero bytes." };
  if (isUtf8(bytes)) {
    const text = bytes.toString("utf8");
    const marked = text.startsWith("\ufeff");
    return { ok: true, text: marked ? text.slice(1) : text, marked };
  }
  const { line, column } = firstNoUtf8(bytes);
  return { ok: false, message: `is not UTF-8 text: see line ${line}, character ${column}. Save it as UTF-8.` };
}

function startsWith(bytes: Buffer, first: number, second: number): boolean {
  return bytes[0] === first && bytes[1] === second;
}

/** Where the bytes stop to be UTF-8, counted from 1. */
function firstNoUtf8(bytes: Buffer): { line: number; column: number } {
  // What was not UTF-8 comes back as another sign, so the first difference is the place.
  const again = Buffer.from(bytes.toString("utf8"), "utf8");
  let at = 0;
  while (at < bytes.length && bytes[at] === again[at]) at++;
  // The difference may lie within a sign; its first byte counts.
  while (at > 0 && isContinuation(again[at])) at--;
  const before = bytes
    .subarray(0, at)
    .toString("utf8")
    .split(/\r\n|\n|\r/);
  return { line: before.length, column: (before[before.length - 1]?.length ?? 0) + 1 };
}

function isContinuation(byte: number | undefined): boolean {
  return byte !== undefined && byte >= 0x80 && byte < 0xc0;
}
