// How large a picture is that pages can hold: PNG (ISO/IEC 15948, 11.2.2) and JPEG (ITU-T T.81, B.2.2). Knows no document.

export interface SizedPicture {
  readonly type: "png" | "jpg";
  /** In pixels. */
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

/** Null for pictures of other kinds, and for those that are not whole. */
export function sizedPicture(image: { readonly type: string; readonly bytes: Uint8Array } | null): SizedPicture | null {
  if (image === null) return null;
  const { bytes } = image;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = image.type === "image/png" ? pngSize(view) : image.type === "image/jpeg" ? jpegSize(view) : null;
  if (size === null || size.width === 0 || size.height === 0) return null;
  return { type: image.type === "image/png" ? "png" : "jpg", ...size, bytes };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function pngSize(view: DataView): Size | null {
  return view.byteLength < 24 ? null : { width: view.getUint32(16), height: view.getUint32(20) };
}

/** From the first frame header; segments before it are passed over by their lengths. */
function jpegSize(view: DataView): Size | null {
  let at = 2;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    // C4, C8 and CC are tables and the like; the rest of C0 to CF begin a frame.
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}
