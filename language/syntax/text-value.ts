// What a string says: without its quotes, escapes resolved, the common indentation of a block removed; what a unit says; and a
// name in the one spelling by which names are compared.

/** What a terminal of this name says. */
export function textOf(terminal: string, image: string): string {
  if (terminal === "STRING") return stringText(image);
  if (terminal === "TEXT_BLOCK") return blockText(image);
  // An accent may be written as part of its letter or behind it.
  if (terminal === "ID") return image.normalize("NFC");
  return terminal === "UNIT" ? closed(image) : image;
}

function stringText(image: string): string {
  const closed = image.length > 1 && /(?:^|[^\\])(?:\\\\)*"$/.test(image.slice(1));
  return image.slice(1, closed ? -1 : undefined).replace(/\\(.)/g, (_, letter: string) => ESCAPES[letter] ?? letter);
}

const ESCAPES: Readonly<Record<string, string>> = { n: "\n", t: "\t" };

function blockText(image: string): string {
  const isClosed = image.length >= 6 && image.endsWith('"""');
  const lines = image.slice(3, isClosed ? -3 : undefined).split(/\r\n?|\n/);
  const first = lines.shift() ?? "";
  const indents = lines.filter((line) => line.trim() !== "").map((line) => /^[ \t]*/.exec(line)?.[0].length ?? 0);
  const common = indents.length === 0 ? 0 : Math.min(...indents);
  const body = lines.map((line) => line.slice(common).trimEnd());
  if (first.trim() !== "") body.unshift(first.trim());
  while (body.length > 0 && body[body.length - 1] === "") body.pop();
  return body.join("\n");
}

/** Where each character of what a quoted text says stands in the text as written; null where the two do not belong together. */
export function offsetsOf(image: string, text: string): readonly number[] | null {
  const isBlock = image.startsWith('"""');
  const offsets: number[] = [];
  let at = isBlock ? 3 : 1;
  for (let index = 0; index < text.length; index++) {
    const sign = text.charAt(index);
    // What was left out are blanks at the ends of lines.
    while (isBlock && at < image.length && !isSign(image.charAt(at), sign)) at++;
    const isEscape = !isBlock && image.charAt(at) === "\\";
    const said = isEscape ? (ESCAPES[image.charAt(at + 1)] ?? image.charAt(at + 1)) : image.charAt(at);
    if (!isSign(said, sign)) return null;
    offsets.push(at);
    at += isEscape ? 2 : 1;
  }
  return offsets;
}

function isSign(written: string, said: string): boolean {
  return written === said || (said === "\n" && written === "\r");
}

/** A unit whose parenthesis was left open is read as if it were closed. */
function closed(unit: string): string {
  return unit.includes("(") && !unit.includes(")") ? `${unit})` : unit;
}
