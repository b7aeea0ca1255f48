// Figures as pictures: which sort of picture a file is, by its first bytes. A file that is no picture that browsers show, or a too
// large one, stays a caption. Knows no format.
import type { Picture } from "./document.ts";

/** Larger pictures are left out: a checklist goes onto a tablet. In bytes. */
const LARGEST_PICTURE = 4_000_000;

/** @param text what stands below it */
export function pictureOf(text: string, path: string, bytes: Uint8Array | null): Picture {
  const type = bytes === null || bytes.length > LARGEST_PICTURE ? null : typeOf(bytes, path);
  return { text, image: bytes === null || type === null ? null : { type, bytes } };
}

/** In base 64, as a data URI wants it. */
export function base64(bytes: Uint8Array): string {
  let signs = "";
  // A call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8192) signs += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(signs);
}

function typeOf(bytes: Uint8Array, path: string): string | null {
  const known = SIGNATURES.find(({ starts }) => starts.every((byte, at) => byte === null || bytes[at] === byte));
  if (known !== undefined) return known.type;
  return /\.svg$/i.test(path) ? "image/svg+xml" : null;
}

/** First bytes; null is any. PNG: ISO/IEC 15948, 5.2; JPEG: ISO/IEC 10918-1, B.1.1.3; GIF: GIF89a, 17; WebP: RFC 9649, 2.4. */
const SIGNATURES: readonly { readonly type: string; readonly starts: readonly (number | null)[] }[] = [
  { type: "image/png", starts: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { type: "image/jpeg", starts: [0xff, 0xd8, 0xff] },
  { type: "image/gif", starts: [0x47, 0x49, 0x46, 0x38] },
  { type: "image/webp", starts: [0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50] },
];
